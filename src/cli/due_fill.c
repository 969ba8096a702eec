/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What due found out, as the result that every format is written from.
 */
#include "answers/cautions.h"
#include "base/arena.h"
#include "base/date.h"
#include "cli/due.h"
#include "words/due.h"

static const char *take(struct due_call *c)
{
	return care_take(c->s, &c->text);
}

static const char *day_of(struct due_call *c, long day)
{
	char iso[TS_DATE_ROOM];

	return ts_date_write(iso, day) ? ts_arena_text(c->s->arena, iso, sizeof iso - 1) : NULL;
}

static struct ts_due_test_line test_line(struct due_call *c, const struct ts_due_item *item)
{
	long today = c->s->today;
	struct ts_due_test_line line = {.where = ts_due_where_words[item->where],
		.due = day_of(c, item->day),
		.when = ts_due_when(item->day, today),
		.reason = ts_due_rows[item->reason].id,
		.last_read = item->read && item->dated ? day_of(c, item->last) : NULL,
		.in_days = (double)(item->day - today),
		.every_days = item->every_days,
		.day = item->day};

	for (unsigned i = 0; i < TS_DUE_WHAT__COUNT; i++)
		care_note(c->s, &line.what, item->what & 1u << i ? ts_due_what_words[i] : NULL);
	ts_say_due(&c->text, item, today);
	line.says = take(c);
	ts_say_due_because(&c->text, item, today);
	line.because = take(c);
	return line;
}

static void fill_tests(struct due_call *c)
{
	c->r.tests = ts_arena_array(c->s->arena, c->due.count + 1, sizeof *c->r.tests);
	for (size_t i = 0; c->r.tests && i < c->due.count; i++)
		c->r.tests[c->r.test_count++] = test_line(c, &c->due.items[i]);
}

static struct ts_due_stage_line stage_line(struct due_call *c, size_t i)
{
	const struct ts_stage *g = &c->remake->remake.stages.stages[i];
	long day = c->s->today + (long)g->day;
	struct ts_due_stage_line line = {.number = i + 1,
		.due = day_of(c, day),
		.when = ts_due_when(day, c->s->today),
		.in_days = g->day,
		.day = day};

	if (g->change >= 1) {
		ts_text_put(&c->text, "move the animals over");
	} else {
		ts_text_put(&c->text, "change ");
		ts_text_number_short(&c->text, 100 * g->change, 0);
		ts_text_put(&c->text, " % of the water");
		if (c->remake->volume_known) {
			ts_text_put(&c->text, ", ");
			ts_say_amount(&c->text, g->change * c->remake->volume_l, "L");
		}
		ts_text_put(&c->text, ", made up by the recipe of tapshoal remake");
	}
	line.says = take(c);
	ts_text_put(&c->text,
		g->raises_ph ? "First test ammonia and nitrite: both must read nil. " : "");
	if (g->stop) {
		ts_text_put(&c->text, "Then stop for ");
		ts_text_number_short(&c->text, c->s->practice->value[TS_P_STAGE_STOP_DAYS], 0);
		ts_text_put(&c->text, " days and test everything before the next one.");
	} else {
		ts_text_put(&c->text, "Then test GH and KH, and watch the animals.");
	}
	line.test = take(c);
	return line;
}

/* The stages, or why there are none. */
static void fill_stages(struct due_call *c)
{
	const struct remake_call *k = c->remake;
	struct ts_asking asking = care_asking(c->s);

	if (!k || c->r.danger)
		return;
	if (k->verdict == TS_VERDICT_LEAVE) {
		care_note(c->s, &c->r.notes, "The water is what was wished: no stage is left.");
		return;
	}
	if (k->verdict == TS_VERDICT_REMAKE) {
		care_note(c->s, &c->r.notes,
			"No animal is said to be in the tank: the new water needs no stages. "
			"tapshoal remake has its recipe.");
		return;
	}
	if (k->verdict != TS_VERDICT_STAGES) {
		ts_text_put(&c->text, "Of the re-making: ");
		ts_say_refusal(&c->text, &k->remake);
		care_note(c->s, &c->r.notes, take(c));
		return;
	}
	c->r.stages = ts_arena_array(c->s->arena, k->remake.stages.count, sizeof *c->r.stages);
	for (size_t i = 0; c->r.stages && i < k->remake.stages.count; i++)
		c->r.stages[c->r.stage_count++] = stage_line(c, i);
	care_note(c->s, &c->r.cautions, ts_treatment(k->answer.water.disinfectant));
	ts_answer_cautions(&asking, TS_CAUTION_CHANGES, &c->r.cautions);
}

/* What the file leaves open. */
static void fill_notes(struct due_call *c)
{
	if (c->has_tank && !c->has_supply)
		care_note(c->s, &c->r.notes,
			"The water poured in is not known here: -w FILE, or a plan with its water, "
			"adds its tests and how long the buffer lasts.");
	for (size_t i = 0; i < c->due.count && !c->r.danger; i++) {
		if (c->due.items[i].reason != TS_DUE_FOUND)
			continue;
		care_note(c->s, &c->r.notes,
			"Ammonia or nitrite stands in the tank: if animals live in it, make it "
			"safe first; tapshoal check of a plan with its animals says how.");
		break;
	}
	care_note(c->s, &c->r.cautions, ts_caution_due);
}

/* The first day after today that asks for something; 0: none. */
static long next_day(const struct due_call *c)
{
	long next = 0;

	for (size_t i = 0; i < c->r.test_count; i++) {
		if (c->r.tests[i].day > c->s->today && (!next || c->r.tests[i].day < next))
			next = c->r.tests[i].day;
	}
	for (size_t i = 0; i < c->r.stage_count; i++) {
		if (c->r.stages[i].day > c->s->today && (!next || c->r.stages[i].day < next))
			next = c->r.stages[i].day;
	}
	return next;
}

static void fill_verdict(struct due_call *c)
{
	const struct ts_due_test_line *first = c->r.test_count ? &c->r.tests[0] : NULL;
	bool stage = c->r.stage_count && c->r.stages[0].day == c->s->today;
	long next = next_day(c);
	bool due = first && first->day <= c->s->today;

	c->r.today = day_of(c, c->s->today);
	c->r.next = next ? day_of(c, next) : NULL;
	c->r.verdict = ts_due_verdict_words[c->r.danger                       ? 0
					    : due && first->day < c->s->today ? 1
					    : due || stage                    ? 2
									      : 3];
	c->r.says = due ? first->says : stage ? "Today a stage of the re-making is due" : NULL;
	if (!c->r.says) {
		ts_text_put(&c->text, "Nothing is due before ");
		ts_say_day(&c->text, next, c->s->today);
		c->r.says = take(c);
		ts_text_puts(&c->text, first ? first->says : "", NULL);
		c->r.because = take(c);
		return;
	}
	c->r.because = due ? first->because : c->r.stages[0].says;
}

/* A way that is open, or waits on a test. */

void due_fill(struct due_call *c)
{
	fill_tests(c);
	fill_stages(c);
	fill_notes(c);
	fill_verdict(c);
}
