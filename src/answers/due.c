/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The tests are the care room's (care/due.h), the danger that of check, the stages those of remake.
 */
#include "answers/due.h"

#include <limits.h>
#include <string.h>

#include "answers/cautions.h"
#include "answers/due_change.h"
#include "base/arena.h"
#include "base/date.h"
#include "care/due.h"
#include "care/plan_state.h"
#include "words/advice.h"
#include "words/due.h"
#include "words/next_change.h"
#include "words/remake.h"

const char *const ts_due_verdict_words[] = {"danger", "overdue", "today", "nothing-due", NULL};

struct work {
	const struct ts_asking *asking;
	const struct ts_due_question *question;
	struct ts_waters *waters;
	const struct ts_advice *advice; /* of the tank as it is; NULL: nobody lives there */
	size_t advice_count;
	struct ts_due due;
	struct ts_text text;
	struct ts_due_result r;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static bool is(const struct ts_remake_result *remake, enum ts_remake_verdict verdict)
{
	return strcmp(remake->verdict, ts_remake_verdict_words[verdict]) == 0;
}

const struct ts_water *ts_due_poured(const struct ts_plan *plan)
{
	return plan->change_water.reading_count ? &plan->change_water : &plan->water;
}

size_t ts_due_leave_out(struct ts_plan *plan, long today)
{
	return ts_due_leave_ahead(plan->tank.readings, &plan->tank.reading_count, today) +
	       ts_due_leave_ahead(plan->water.readings, &plan->water.reading_count, today) +
	       ts_due_leave_ahead(
		       plan->change_water.readings, &plan->change_water.reading_count, today);
}

/* Readings and days that lie ahead are no news of today. */
static void note_ahead(struct work *w, size_t ahead)
{
	long today = w->asking->today, day;
	const struct ts_tank *tank = &w->question->plan->tank;

	if (ahead) {
		ts_text_number(&w->text, (double)ahead, 0);
		ts_text_put(&w->text, ahead == 1 ? " reading is dated after today and left out: is "
						   "its date right?"
						 : " readings are dated after today and left out: "
						   "are their dates right?");
		ts_asking_note(w->asking, &w->r.notes, keep(w));
	}
	if (tank->running_since && ts_date_read(tank->running_since, &day) && day > today) {
		ts_text_put(&w->text, "The tank is to run from ");
		ts_say_day(&w->text, day, today);
		ts_text_put(&w->text, " on: what was never read waits until then.");
		ts_asking_note(w->asking, &w->r.notes, keep(w));
	}
}

/* The three waters of the tank, with the animals where the plan has any. */
static bool make_waters(struct work *w)
{
	const struct ts_due_question *q = w->question;
	size_t count = q->plan->stock_count;
	struct ts_group *groups = ts_arena_array(w->asking->arena, count + 1, sizeof *groups);
	struct ts_waters_case asked = {q->plan, groups, count, w->asking->today, q->species};

	w->waters = ts_arena_take(w->asking->arena, sizeof *w->waters);
	if (!groups || !w->waters)
		return false;
	if (count && !q->species) {
		ts_text_puts(
			&w->text, "How long the buffer lasts cannot be said: ", q->unknown, NULL);
		ts_asking_note(w->asking, &w->r.notes, keep(w));
		ts_waters_now(q->plan, w->asking->today, w->asking->practice, w->waters);
		return true;
	}
	for (size_t i = 0; i < count; i++)
		groups[i] = (struct ts_group){
			.species = q->species[i], .either = (unsigned)q->plan->stock[i].count};
	ts_waters_make(&asked, w->asking->practice, w->waters);
	return true;
}

/* How long the buffer lasts from the last reading of KH; NAN: not known, or long. */
static double buffer_days(const struct work *w)
{
	const struct ts_plan *plan = w->question->plan;
	bool load = plan->stock_count || plan->tank.feeding.value > 0;

	return w->question->has_tank && w->question->has_supply && load
		       ? ts_due_buffer_days(w->waters, w->asking->practice)
		       : (double)NAN;
}

/* Whether animals live in the tank today. */
static bool has_animals(const struct work *w)
{
	const struct ts_plan *plan = w->question->plan;

	for (size_t i = 0; i < plan->stock_count; i++) {
		long day;

		if (plan->stock[i].since && ts_date_read(plan->stock[i].since, &day) &&
			day <= w->asking->today)
			return true;
	}
	return w->question->residents;
}

/* Those that live there, against the water of now: as check does. */
static struct ts_match *match_residents(struct work *w, struct ts_plan_state *state)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_match *all = ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *all);
	size_t count = 0;

	for (size_t i = 0; all && w->question->species && i < plan->stock_count; i++) {
		const struct ts_keeping keeping = {.wild = plan->stock[i].origin == TS_ORIGIN_WILD,
			.temperature = plan->tank.temp_c};

		if (ts_in_tank(&plan->stock[i]))
			ts_match_species(w->question->species[i], &w->waters->now, &keeping,
				w->asking->practice, &all[count++]);
	}
	ts_plan_state_residents(state, all, count);
	return all;
}

/* A danger or a sign of distress goes before any test, as in check. */
static bool ask_danger(struct work *w)
{
	struct ts_plan_state *state = ts_arena_take(w->asking->arena, sizeof *state);
	struct ts_advice *all = ts_arena_array(w->asking->arena, TS_ADVICE_MOST, sizeof *all);
	struct ts_match *residents;

	if (!state || !all)
		return false;
	if (!w->question->has_tank || !has_animals(w))
		return true;
	ts_plan_state_make(w->question->plan, w->waters, w->asking->today, state);
	residents = match_residents(w, state);
	if (!residents)
		return false;
	w->advice = all;
	w->advice_count = ts_advise(&state->state, w->asking->practice, all);
	if (all[0].row->group != 2 && all[0].row->group != 3)
		return true;
	ts_say_advice_whole(&w->text, &all[0], residents);
	w->r.danger = keep(w);
	ts_say_advice_because(&w->text, &all[0], residents);
	w->r.danger_because = keep(w);
	return true;
}

static bool ask_change(struct work *w)
{
	const struct ts_due_change_case asked = {
		w->question, w->waters, w->advice, w->advice_count};

	return ts_due_change_fill(w->asking, &asked, &w->r) != TS_NO_MEMORY;
}

static bool is_remaking(const struct work *w)
{
	const struct ts_remake_result *k = w->question->remake;

	return k && (is(k, TS_VERDICT_STAGES) || is(k, TS_VERDICT_TEST_FIRST) ||
			    is(k, TS_VERDICT_SAFE_FIRST));
}

/* Another supply is made fit for who lives there. */
static bool is_mending(const struct work *w)
{
	for (size_t i = 0; i < w->advice_count; i++) {
		if (strcmp(w->advice[i].row->id, "apart.blend") == 0 && w->advice[i].figures.moved)
			return true;
	}
	return false;
}

static struct ts_due_test_line test_line(struct work *w, const struct ts_due_item *item)
{
	long today = w->asking->today;
	struct ts_due_test_line line = {.where = ts_due_where_words[item->where],
		.due = ts_asking_day(w->asking, item->day),
		.when = ts_due_when(item->day, today),
		.reason = ts_due_rows[item->reason].id,
		.last_read =
			item->read && item->dated ? ts_asking_day(w->asking, item->last) : NULL,
		.in_days = (double)(item->day - today),
		.every_days = item->every_days,
		.day = item->day};

	for (unsigned i = 0; i < TS_DUE_WHAT__COUNT; i++)
		ts_asking_note(
			w->asking, &line.what, item->what & 1u << i ? ts_due_what_words[i] : NULL);
	ts_say_due(&w->text, item, today);
	line.says = keep(w);
	ts_say_due_because(&w->text, item, today);
	line.because = keep(w);
	return line;
}

static void fill_tests(struct work *w)
{
	w->r.tests = ts_arena_array(w->asking->arena, w->due.count + 1, sizeof *w->r.tests);
	for (size_t i = 0; w->r.tests && i < w->due.count; i++)
		w->r.tests[w->r.test_count++] = test_line(w, &w->due.items[i]);
}

static struct ts_due_stage_line stage_line(struct work *w, size_t i)
{
	const struct ts_stage_line *g = &w->question->remake->stages[i];
	long day = w->asking->today + (long)g->day;
	struct ts_due_stage_line line = {.number = i + 1,
		.due = ts_asking_day(w->asking, day),
		.when = ts_due_when(day, w->asking->today),
		.in_days = (double)g->day,
		.day = day};

	ts_text_put(&w->text, "change ");
	if (!isnan(g->change_l)) {
		ts_say_amount(&w->text, g->change_l, "L");
		ts_text_put(&w->text, " (");
	}
	ts_text_number_short(&w->text, g->change_percent, 0);
	ts_text_put(&w->text, isnan(g->change_l) ? " % of the water" : " %)");
	ts_text_put(&w->text, ", made up by the recipe of tapshoal remake");
	line.says = keep(w);
	ts_text_put(&w->text,
		g->raises_ph ? "First test ammonia and nitrite: both must read nil. " : "");
	if (g->stop) {
		ts_text_put(&w->text, "Then stop for ");
		ts_text_number_short(&w->text, w->asking->practice->value[TS_P_STAGE_STOP_DAYS], 0);
		ts_text_put(&w->text, " days and test everything before the next one.");
	} else {
		ts_text_put(&w->text, "Then test GH and KH, and watch the animals.");
	}
	line.test = keep(w);
	return line;
}

/* The stages, or why there are none. */
static void fill_stages(struct work *w)
{
	const struct ts_remake_result *k = w->question->remake;

	if (!k || w->r.danger)
		return;
	if (!is(k, TS_VERDICT_STAGES)) {
		if (is(k, TS_VERDICT_LEAVE))
			ts_text_put(&w->text, "The water is what was wished: no stage is left.");
		else if (is(k, TS_VERDICT_NEW_WATER) || is(k, TS_VERDICT_REMAKE))
			ts_text_puts(
				&w->text, k->stages_none, " tapshoal remake has the recipe.", NULL);
		else
			ts_text_puts(&w->text, "Of the re-making: ", k->says, NULL);
		ts_asking_note(w->asking, &w->r.notes, keep(w));
		return;
	}
	w->r.stages_say = "The days hold while each test reads as it should. After each one, "
			  "write the reading into the file and ask again.";
	w->r.stages = ts_arena_array(w->asking->arena, k->stage_count + 1, sizeof *w->r.stages);
	for (size_t i = 0; w->r.stages && i < k->stage_count; i++)
		w->r.stages[w->r.stage_count++] = stage_line(w, i);
	ts_asking_note(w->asking, &w->r.cautions, k->treatment);
	ts_answer_cautions(w->asking, TS_CAUTION_CHANGES, &w->r.cautions);
}

/* What the file leaves open. */
static void fill_notes(struct work *w)
{
	if (w->question->has_tank && !w->question->has_supply)
		ts_asking_note(w->asking, &w->r.notes,
			"The water poured in is not known here: -w FILE, or a plan with its water, "
			"adds its tests and how long the buffer lasts.");
	for (size_t i = 0; i < w->due.count && !w->r.danger; i++) {
		if (w->due.items[i].reason != TS_DUE_FOUND)
			continue;
		ts_asking_note(w->asking, &w->r.notes,
			"Ammonia or nitrite stands in the tank: if animals live in it, make it "
			"safe first; tapshoal check of a plan with its animals says how.");
		break;
	}
	ts_asking_note(w->asking, &w->r.cautions, ts_caution_due);
}

/* The first day after today that asks for something; 0: none. */
static long next_day(const struct work *w)
{
	long next = w->r.change && w->r.change->day > w->asking->today ? w->r.change->day : 0;

	for (size_t i = 0; i < w->r.test_count; i++) {
		if (w->r.tests[i].day > w->asking->today && (!next || w->r.tests[i].day < next))
			next = w->r.tests[i].day;
	}
	for (size_t i = 0; i < w->r.stage_count; i++) {
		if (w->r.stages[i].day > w->asking->today && (!next || w->r.stages[i].day < next))
			next = w->r.stages[i].day;
	}
	return next;
}

/* A change that does not only follow the calendar, and is due. */
static bool is_rescue(const struct work *w)
{
	const struct ts_due_change_line *c = w->r.change;

	return c && c->day <= w->asking->today &&
	       strcmp(c->reason, ts_change_reason_words[TS_CHANGE_ROUTINE]) != 0;
}

/* The first test of the tank; of a supply alone, or where nothing else is due by then, its own. */
static const struct ts_due_test_line *first_test(const struct work *w)
{
	const struct ts_due_change_line *c = w->r.change;
	long now = w->asking->today;

	for (size_t i = 0; i < w->r.test_count; i++) {
		const struct ts_due_test_line *t = &w->r.tests[i];
		bool tank = w->due.items[i].where == TS_DUE_TANK;

		if (tank && (t->day <= now || i == 0))
			return t;
	}
	/* The tap waits behind a change of the same day, and of the days before. */
	if (w->r.test_count && c && c->day <= now && w->r.tests[0].day <= now)
		return NULL;
	return w->r.test_count ? &w->r.tests[0] : NULL;
}

/*
 * Whichever of the first test, the change and the stage comes first: a danger's test before all, a
 * change that is to mend something before any other test.
 */
static long first_thing(struct work *w, const char **ret_says, const char **ret_because)
{
	const struct ts_due_test_line *test = first_test(w);
	const struct ts_due_change_line *change = w->r.change;
	const struct ts_due_stage_line *stage = w->r.stage_count ? &w->r.stages[0] : NULL;
	bool danger = w->r.test_count && ts_due_is_danger(w->due.items[0].reason);
	long day = test ? test->day : LONG_MAX;

	*ret_says = test ? test->says : NULL;
	*ret_because = test ? test->because : NULL;
	if (change && !danger && (change->day < day || is_rescue(w))) {
		day = change->day;
		*ret_says = change->says;
		*ret_because = change->because;
	}
	if (stage && stage->day < day) {
		day = stage->day;
		*ret_says = day == w->asking->today ? "Today a stage of the re-making is due"
						    : stage->says;
		*ret_because = stage->says;
	}
	return day;
}

/* The earliest day of all: what is overdue is so, whatever stands in front. */
static long earliest(const struct work *w, long first)
{
	return w->r.test_count && w->r.tests[0].day < first ? w->r.tests[0].day : first;
}

static void fill_verdict(struct work *w)
{
	const char *says, *because;
	long first = earliest(w, first_thing(w, &says, &because)), next = next_day(w);

	w->r.today = ts_asking_day(w->asking, w->asking->today);
	w->r.next = next ? ts_asking_day(w->asking, next) : NULL;
	w->r.verdict = ts_due_verdict_words[w->r.danger                 ? 0
					    : first < w->asking->today  ? 1
					    : first == w->asking->today ? 2
									: 3];
	w->r.says = says;
	w->r.because = because;
	if (first <= w->asking->today)
		return;
	ts_text_put(&w->text, "Nothing is due before ");
	ts_say_day(&w->text, next, w->asking->today);
	w->r.says = keep(w);
	w->r.because = says ? says : "";
}

enum ts_status ts_answer_due(const struct ts_asking *asking, const struct ts_due_question *question,
	size_t left_out, struct ts_due_result *ret)
{
	struct work *w = ts_arena_take(asking->arena, sizeof *w);
	struct ts_due_case asked = {.plan = question->has_tank ? question->plan : NULL,
		.supply = question->has_supply ? ts_due_poured(question->plan) : NULL,
		.today = asking->today};
	bool ok;

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct work){.asking = asking, .question = question};
	w->r.name = question->name;
	w->r.supply = question->has_supply ? ts_due_poured(question->plan)->name : NULL;
	w->r.has_tank = question->has_tank;
	ts_text_open(&w->text, &asking->arena->allocator);
	note_ahead(w, left_out);
	ok = make_waters(w) && ask_danger(w) && ask_change(w);
	if (ok) {
		asked.buffer_days = buffer_days(w);
		asked.remaking = is_remaking(w);
		asked.mending = is_mending(w);
		asked.followed = w->waters->kh_rate.readings > 0;
		asked.expected = w->waters->fit.expected;
		ts_due_make(&asked, asking->practice, &w->due);
		fill_tests(w);
		fill_stages(w);
		fill_notes(w);
		ts_learned_make(asking, question->plan, w->waters, &w->r.learned);
		fill_verdict(w);
		w->r.nothing = w->r.verdict == ts_due_verdict_words[3];
	}
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (!ok || asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w->r;
	return TS_OK;
}
