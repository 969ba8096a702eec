/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The lines are those of each tank's own answer (answers/due.h), in fewer words. A supply that
 * several tanks share is tested once.
 */
#include "answers/due_all.h"

#include <stdlib.h>
#include <string.h>

#include "words/due.h"
#include "words/remake.h"

const char *const ts_due_kind_words[] = {"danger", "test", "change", "stage", "alarm", NULL};
enum { DANGER, TEST, CHANGE, STAGE, ALARM };

#define DAYS_OF_WEEK 7

struct work {
	const struct ts_asking *asking;
	const struct ts_due_all_tank *tanks;
	size_t count;
	const char **supplies; /* of each thing: whose water a test of a supply is of; else NULL */
	struct ts_text text;
	struct ts_due_all_result r;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void add(struct work *w, const char *tank, int kind, long day, const char *says)
{
	w->r.things[w->r.thing_count++] = (struct ts_due_thing){.tank = tank,
		.kind = ts_due_kind_words[kind],
		.due = ts_asking_day(w->asking, day),
		.when = ts_due_when(day, w->asking->today),
		.says = says,
		.in_days = (double)(day - w->asking->today),
		.day = day};
}

/* "change 40 L (30 %), with 3.6 g of baking soda" */
static const char *change_says(struct work *w, const struct ts_due_result *r)
{
	const struct ts_due_change_line *c = r->change;
	bool with = false;

	ts_text_puts(&w->text, "change ", c->amount, NULL);
	for (size_t i = 1; i < r->bring_count; i++) {
		ts_text_put(&w->text, with ? ", " : ", with ");
		ts_say_amount(&w->text, r->bring[i].amount, r->bring[i].unit);
		ts_text_puts(&w->text, " of ", r->bring[i].what, NULL);
		with = true;
	}
	return keep(w);
}

/* "test GH, KH and pH", "test pH of its new water" */
static const char *test_says(struct work *w, const struct ts_due_test_line *t, bool supply)
{
	ts_text_put(&w->text, "test ");
	for (size_t i = 0; i < t->what.count; i++)
		ts_text_puts(&w->text,
			!i                      ? ""
			: i + 1 < t->what.count ? ", "
						: " and ",
			t->what.items[i], NULL);
	ts_text_put(&w->text, supply ? " of the new water" : "");
	return keep(w);
}

/* One water into several tanks is one test, which names them all. */
static bool join(struct work *w, const char *tank, long day, const char *says, const char *supply)
{
	for (size_t i = 0; supply && i < w->r.thing_count; i++) {
		struct ts_due_thing *t = &w->r.things[i];

		if (!w->supplies[i] || strcmp(w->supplies[i], supply) != 0 || t->day != day ||
			strcmp(t->says, says) != 0)
			continue;
		t->tank = ts_arena_join(w->asking->arena, t->tank, ", ", tank, NULL);
		return true;
	}
	return false;
}

static void add_tests(struct work *w, const char *tank, const struct ts_due_result *r)
{
	for (size_t i = 0; i < r->test_count; i++) {
		const struct ts_due_test_line *t = &r->tests[i];
		bool supply = strcmp(t->where, ts_due_where_words[TS_DUE_SUPPLY]) == 0;
		const char *of = supply ? r->supply : NULL;
		const char *says = test_says(w, t, supply && r->has_tank);

		if (join(w, tank, t->day, says, of))
			continue;
		w->supplies[w->r.thing_count] = of;
		add(w, tank, TEST, t->day, says);
		w->r.things[w->r.thing_count - 1].supply = supply && r->has_tank;
	}
}

static void add_tank(struct work *w, const struct ts_due_all_tank *tank)
{
	const struct ts_due_result *r = tank->due;

	if (!r) {
		w->r.unanswered[w->r.unanswered_count++] =
			(struct ts_due_unanswered){tank->name, tank->not_answered};
		return;
	}
	if (r->danger)
		add(w, tank->name, DANGER, w->asking->today, r->danger);
	add_tests(w, tank->name, r);
	if (r->change)
		add(w, tank->name, CHANGE, r->change->day, change_says(w, r));
	for (size_t i = 0; i < r->stage_count; i++)
		add(w, tank->name, STAGE, r->stages[i].day, r->stages[i].says);
	for (size_t i = 0; i < r->alarm_count; i++)
		add(w, tank->name, ALARM, r->alarms[i].day, r->alarms[i].says);
	for (size_t i = 0; i < r->cautions.count; i++) {
		bool there = false;

		for (size_t k = 0; k < w->r.cautions.count && !there; k++)
			there = strcmp(w->r.cautions.items[k], r->cautions.items[i]) == 0;
		if (!there)
			ts_asking_note(w->asking, &w->r.cautions, r->cautions.items[i]);
	}
}

static size_t things_of(const struct ts_due_result *r)
{
	return r ? 2 + r->test_count + r->stage_count + r->alarm_count : 0;
}

static int kind_of(const struct ts_due_thing *t)
{
	int kind = 0;

	while (strcmp(ts_due_kind_words[kind], t->kind) != 0)
		kind++;
	return kind;
}

/* Dangers, then by day; on one day what is read before what is poured. */
static int by_day(const void *a, const void *b)
{
	const struct ts_due_thing *x = a, *y = b;
	int kinds = kind_of(x) - kind_of(y);

	if ((kind_of(x) == DANGER) != (kind_of(y) == DANGER))
		return kinds;
	/* A tap's test waits behind whatever of a tank is due. */
	if (x->supply != y->supply && strcmp(x->when, ts_due_when_words[2]) != 0 &&
		strcmp(y->when, ts_due_when_words[2]) != 0)
		return x->supply ? 1 : -1;
	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	return kinds ? kinds : strcmp(x->tank, y->tank);
}

static void add_bring(struct work *w, const struct ts_due_bring_line *line)
{
	for (size_t i = 0; i < w->r.bring_count; i++) {
		struct ts_due_bring_line *old = &w->r.bring[i];

		if (strcmp(old->what, line->what) != 0 || strcmp(old->unit, line->unit) != 0)
			continue;
		old->amount += line->amount;
		return;
	}
	w->r.bring[w->r.bring_count++] = *line;
}

/* For what is changed today or within the week. */
static void sum_bring(struct work *w)
{
	for (size_t i = 0; i < w->count; i++) {
		const struct ts_due_result *r = w->tanks[i].due;

		if (!r || !r->change || r->change->day - w->asking->today >= DAYS_OF_WEEK)
			continue;
		for (size_t k = 0; k < r->bring_count; k++)
			add_bring(w, &r->bring[k]);
	}
}

static bool begins(const struct ts_due_thing *t, int kind)
{
	return strcmp(t->kind, ts_due_kind_words[kind]) == 0;
}

/* "Due now: 3 things in 2 tanks." A limit that comes is nothing to be done on its day. */
static void say_now(struct work *w, size_t now)
{
	const char *seen = NULL;
	size_t tanks = 0;

	for (size_t i = 0; i < w->count; i++) {
		for (size_t k = 0; k < w->r.thing_count; k++) {
			const struct ts_due_thing *t = &w->r.things[k];

			if (t->day > w->asking->today || begins(t, ALARM) ||
				!strstr(t->tank, w->tanks[i].name) || seen == w->tanks[i].name)
				continue;
			seen = w->tanks[i].name;
			tanks++;
		}
	}
	ts_text_put(&w->text, "Due now: ");
	ts_text_number(&w->text, (double)now, 0);
	ts_text_put(&w->text, now == 1 ? " thing" : " things");
	if (w->count > 1) {
		ts_text_put(&w->text, " in ");
		ts_text_number(&w->text, (double)tanks, 0);
		ts_text_put(&w->text, tanks == 1 ? " tank" : " tanks");
	}
	w->r.says = keep(w);
}

static void judge(struct work *w)
{
	const struct ts_due_thing *first = NULL;
	size_t now = 0;
	long next = 0;
	bool danger = false, overdue = false;

	for (size_t i = 0; i < w->r.thing_count; i++) {
		const struct ts_due_thing *t = &w->r.things[i];

		if (begins(t, ALARM))
			continue;
		first = first ? first : t;
		now += t->day <= w->asking->today;
		danger |= begins(t, DANGER);
		overdue |= t->day < w->asking->today;
		next = t->day > w->asking->today && !next ? t->day : next;
	}
	w->r.today = ts_asking_day(w->asking, w->asking->today);
	w->r.next = next ? ts_asking_day(w->asking, next) : NULL;
	w->r.verdict = ts_due_verdict_words[danger ? 0 : overdue ? 1 : now ? 2 : 3];
	w->r.nothing = !now;
	if (now) {
		say_now(w, now);
	} else if (next) {
		ts_text_put(&w->text, "Nothing is due before ");
		ts_say_day(&w->text, next, w->asking->today);
		w->r.says = keep(w);
	} else {
		w->r.says = "Nothing is due.";
	}
	w->r.because =
		first ? ts_arena_join(w->asking->arena, first->tank, ": ", first->says, NULL) : "";
}

enum ts_status ts_answer_due_all(const struct ts_asking *asking,
	const struct ts_due_all_tank *tanks, size_t count, struct ts_due_all_result *ret)
{
	struct work w = {.asking = asking, .tanks = tanks, .count = count};
	size_t most = 1, brought = 1;

	for (size_t i = 0; i < count; i++) {
		most += things_of(tanks[i].due);
		brought += tanks[i].due ? tanks[i].due->bring_count : 0;
	}
	w.r.things = ts_arena_array(asking->arena, most, sizeof *w.r.things);
	w.supplies = ts_arena_array(asking->arena, most, sizeof *w.supplies);
	w.r.bring = ts_arena_array(asking->arena, brought, sizeof *w.r.bring);
	w.r.unanswered = ts_arena_array(asking->arena, count + 1, sizeof *w.r.unanswered);
	if (!w.r.things || !w.supplies || !w.r.bring || !w.r.unanswered)
		return TS_NO_MEMORY;
	ts_text_open(&w.text, &asking->arena->allocator);
	for (size_t i = 0; i < count; i++)
		add_tank(&w, &tanks[i]);
	if (!asking->arena->failed) {
		qsort(w.r.things, w.r.thing_count, sizeof *w.r.things, by_day);
		sum_bring(&w);
		judge(&w);
	}
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w.r;
	return TS_OK;
}
