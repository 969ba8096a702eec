/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The change is care/next_change.h's; where advice orders one, it is that. What to bring is the
 * water poured in, by its name, and the salts that advice mends it with. The limits that come are
 * those of drift, so that both name one day.
 */
#include "answers/due_change.h"

#include <math.h>
#include <string.h>

#include "answers/drift.h"
#include "care/next_change.h"
#include "care/plan_state.h"
#include "stock/rules.h"
#include "words/due.h"
#include "words/next_change.h"
#include "words/remake.h"

/* Water, pure water, three salts. */
#define BRING_MOST 5
#define ALARMS_MOST 2
/* Less than a kitchen balance shows, g. */
#define GRAMS_LEAST 0.05

struct work {
	const struct ts_asking *asking;
	const struct ts_due_change_case *asked;
	struct ts_next_change change;
	struct ts_text text;
	struct ts_due_result *r;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static bool says(const struct ts_advice_row *row, const char *what)
{
	return strstr(row->says, what) || (row->week && strstr(row->week, what));
}

/* How often a row orders a change of water, in its own words; NAN: it orders none. */
static double ordered(const struct ts_advice *a)
{
	const double often = 2, seldom = 3;

	if (a->row->group < 4 || a->row->group > 6)
		return (double)NAN;
	if (says(a->row, "{small}"))
		return a->figures.small_changes && !a->figures.small_often ? seldom : often;
	if (!says(a->row, "10 to 15 %"))
		return (double)NAN;
	return says(a->row, "twice a week") ? seldom : often;
}

static bool has_row(const struct work *w, const char *id)
{
	for (size_t i = 0; i < w->asked->advice_count; i++) {
		if (strcmp(w->asked->advice[i].row->id, id) == 0)
			return true;
	}
	return false;
}

static bool lives(const struct ts_due_question *q)
{
	for (size_t i = 0; i < q->plan->stock_count; i++) {
		if (ts_in_tank(&q->plan->stock[i]))
			return true;
	}
	return q->residents;
}

static bool sensitive(const struct ts_due_question *q)
{
	for (size_t i = 0; q->species && i < q->plan->stock_count; i++) {
		if (q->species[i]->habits & TS_HABIT_NITRATE_SENSITIVE ||
			q->plan->stock[i].origin == TS_ORIGIN_WILD)
			return true;
	}
	return false;
}

static void find_change(struct work *w)
{
	const struct ts_due_question *q = w->asked->question;
	const double *p = w->asking->practice->value;
	/* Who is well in little buffer, or in a bed that holds it down, needs no more of it. */
	bool little = has_row(w, "black-water") || has_row(w, "leave.acid-bed") ||
		      has_row(w, "buffer.borne");
	struct ts_next_change_case c = {.plan = q->plan,
		.waters = w->asked->waters,
		.today = w->asking->today,
		.lives = lives(q),
		.no3_most = p[sensitive(q) ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN],
		.kh_least = little ? (double)NAN : p[TS_P_KH_ACT],
		.small = w->asked->advice_count && w->asked->advice[0].figures.small_changes,
		.ordered_days = (double)NAN};

	/* The answer of check behind what it asks for: what comes later it may have folded away. */
	for (size_t i = 0; i < w->asked->advice_count; i++) {
		if (w->asked->advice[i].row->group < 4)
			continue;
		c.ordered_days = ordered(&w->asked->advice[i]);
		c.small |= says(w->asked->advice[i].row, "10 to 15 %");
		break;
	}
	ts_next_change_make(&c, w->asking->practice, &w->change);
}

static void put_line(struct work *w)
{
	struct ts_due_change_line *line = ts_arena_take(w->asking->arena, sizeof *line);
	const struct ts_next_change *c = &w->change;

	if (!line)
		return;
	*line = (struct ts_due_change_line){.due = ts_asking_day(w->asking, c->day),
		.when = ts_due_when(c->day, w->asking->today),
		.reason = ts_change_reason_words[c->reason],
		.last = c->noted ? ts_asking_day(w->asking, c->last) : NULL,
		.in_days = (double)(c->day - w->asking->today),
		.litres = c->litres,
		.percent = 100 * c->share,
		.every_days = c->every_days,
		.no3_mg_l = c->no3_now,
		.kh_dh = c->kh_now,
		.day = c->day};
	ts_say_change_amount(&w->text, c);
	line->amount = keep(w);
	ts_say_next_change(&w->text, c, w->asking->today);
	line->says = keep(w);
	ts_say_next_change_because(&w->text, c);
	line->because = keep(w);
	w->r->change = line;
}

static void bring(struct work *w, const char *what, double amount, const char *unit, double least)
{
	if (!(amount > least))
		return;
	w->r->bring[w->r->bring_count++] = (struct ts_due_bring_line){what, unit, amount};
}

static const char *name_of(const struct ts_water *water)
{
	static const char *const kinds[] = {[TS_WATER_TAP] = "tap water",
		[TS_WATER_WELL] = "well water",
		[TS_WATER_RAIN] = "rain water",
		[TS_WATER_REVERSE_OSMOSIS] = "water from reverse osmosis",
		[TS_WATER_MIXED] = "mixed water",
		[TS_WATER_TANK] = "new water"};

	return water->name ? water->name : water->reading_count ? kinds[water->kind] : "new water";
}

/* The minerals of the new water, as the first row of advice mends them that does. */
static const struct ts_mend *mend_of(const struct work *w)
{
	for (size_t i = 0; i < w->asked->advice_count; i++) {
		const struct ts_advice *a = &w->asked->advice[i];

		if (says(a->row, "{mend}") && a->figures.mends)
			return &a->figures.mend;
		if (says(a->row, "{kh_recipe}") && a->figures.kh_short)
			return &a->figures.kh_mend;
	}
	return NULL;
}

static void put_bring(struct work *w)
{
	const struct ts_mend none = {0}, *mend = mend_of(w);
	double hundreds = w->change.litres / 100;

	w->r->bring = ts_arena_array(w->asking->arena, BRING_MOST, sizeof *w->r->bring);
	if (!w->r->bring || isnan(hundreds))
		return;
	mend = mend ? mend : &none;
	bring(w, name_of(ts_due_poured(w->asked->question->plan)), hundreds * (100 - mend->pure_l),
		"L", 0);
	bring(w, "water from reverse osmosis or clean rain", hundreds * mend->pure_l, "L", 0);
	bring(w, "baking soda", hundreds * mend->bicarbonate_g, "g", GRAMS_LEAST);
	bring(w, "calcium chloride", hundreds * mend->calcium_chloride_g, "g", GRAMS_LEAST);
	bring(w, "Epsom salt", hundreds * mend->epsom_g, "g", GRAMS_LEAST);
}

/*
 * "KH 2 is reached between 3 and 12 March": drift's limit. One that is behind us by now is a matter
 * of the test, which is due, and of the change.
 */
static void put_alarm(
	struct work *w, const struct ts_drift_limit_result *l, const struct ts_drift_result *drift)
{
	double floor = w->asking->practice->value[TS_P_KH_FLOOR];
	bool gone = strcmp(l->parameter, "kh") == 0 && l->limit == floor && drift->gone_says;
	double days = l->day - l->age_days;
	long day = w->asking->today + (long)days;
	struct ts_due_alarm_line *line = &w->r->alarms[w->r->alarm_count];

	/* What the log's own paragraph says of the buffer is not said twice. */
	if (!l->by_says || days < 1 || (gone && drift->learned.else_says))
		return;
	*line = (struct ts_due_alarm_line){.parameter = l->parameter,
		.due = ts_asking_day(w->asking, day),
		.says = gone ? drift->gone_says : l->by_says,
		.because = drift->remedies.count && !w->r->alarm_count ? drift->remedies.items[0]
								       : NULL,
		.in_days = days,
		.day = day};
	w->r->alarm_count++;
}

/* Which limits this routine reaches, and when: drift's. */
static enum ts_status put_alarms(struct work *w)
{
	const struct ts_due_question *q = w->asked->question;
	const struct ts_drift_question asked = {q->plan, q->species, 1};
	struct ts_drift_result *drift = ts_arena_take(w->asking->arena, sizeof *drift);
	const char *refusal;
	enum ts_status status;

	w->r->alarms = ts_arena_array(w->asking->arena, ALARMS_MOST, sizeof *w->r->alarms);
	if (!drift || !w->r->alarms)
		return TS_NO_MEMORY;
	if (!q->plan->stock_count || !q->species || !(q->plan->tank.water_change.days > 0) ||
		!ts_due_poured(q->plan)->reading_count)
		return TS_OK;
	*drift = (struct ts_drift_result){0};
	status = ts_drift_answer(w->asking, &asked, drift, &refusal);
	if (status == TS_BAD_INPUT)
		return TS_OK; /* nothing follows, and drift says why */
	for (size_t i = 0; !status && i < drift->limit_count; i++) {
		const struct ts_drift_limit_result *l = &drift->limits[i];

		if (l->day > 0 && !l->mild && l->day <= TS_CHANGE_AHEAD_DAYS &&
			w->r->alarm_count < ALARMS_MOST)
			put_alarm(w, l, drift);
	}
	return status;
}

/* A tank in which nobody lives yet has no change before it is asked for. */
static bool only_planned(const struct ts_due_question *q)
{
	return q->plan->stock_count && !lives(q);
}

/* No routine, and no limit in sight: nothing is changed for the sake of it. */
static void note_left_alone(struct work *w)
{
	const struct ts_next_change *c = &w->change;

	if (!lives(w->asked->question) || isnan(c->no3_now) || w->asked->question->remake)
		return;
	ts_text_put(&w->text, "By its readings no change of water is needed for 12 weeks: nitrate "
			      "is reckoned at ");
	ts_text_number_short(&w->text, c->no3_now, 0);
	ts_text_put(&w->text, " mg/L now");
	if (!isnan(c->kh_now)) {
		ts_text_put(&w->text, ", KH at ");
		ts_text_number_short(&w->text, c->kh_now, 1);
	}
	ts_text_put(&w->text, ".");
	ts_asking_note(w->asking, &w->r->notes, keep(w));
}

enum ts_status ts_due_change_fill(const struct ts_asking *asking,
	const struct ts_due_change_case *asked, struct ts_due_result *io)
{
	struct work *w = ts_arena_take(asking->arena, sizeof *w);
	enum ts_status status = TS_OK;

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct work){.asking = asking, .asked = asked, .r = io};
	if (!asked->question->has_tank || io->danger || only_planned(asked->question))
		return TS_OK;
	ts_text_open(&w->text, &asking->arena->allocator);
	find_change(w);
	if (w->change.reason == TS_CHANGE_NOTHING) {
		note_left_alone(w);
	} else {
		put_line(w);
		put_bring(w);
		status = put_alarms(w);
	}
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	return asking->arena->failed ? TS_NO_MEMORY : status;
}
