/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The same as a calendar, in which nothing that is due stands in the past: there nobody would see
 * it.
 */
#include "show/due.h"

#include <math.h>
#include <string.h>

#include "base/arena.h"
#include "report/ics.h"
#include "words/remake.h"

/* A routine's changes stand in it for two months. */
#define CHANGES_SHOWN 8

struct sheet {
	const struct ts_due_result *r;
	const char *called;
	struct ts_arena *arena;
	const char *subject; /* of every entry */
	long today;
	struct ts_text text; /* scratch */
	struct ts_text *out;
};

static const char *take(struct sheet *c)
{
	const char *kept = ts_arena_text(c->arena, ts_text_get(&c->text), c->text.len);

	c->arena->failed |= c->text.failed;
	ts_text_clear(&c->text);
	return kept ? kept : "";
}

/* "living-room.yaml/living room": what the UIDs stand on. */
static const char *subject_of(struct sheet *c, const char *file)
{
	const char *slash = strrchr(file, '/');

	ts_text_puts(&c->text, slash ? slash + 1 : file, "/", c->r->name ? c->r->name : "", NULL);
	return take(c);
}

static void add(struct sheet *c, struct ts_ics_event *event)
{
	event->subject = c->subject;
	if (event->day < c->today)
		event->day = c->today;
	ts_ics_event(c->out, event, c->today);
}

static void put_subject(struct sheet *c)
{
	const char *name = c->r->name ? c->r->name : c->called;

	if (name)
		ts_text_puts(&c->text, name, ": ", NULL);
}

static void add_test(struct sheet *c, const struct ts_due_test_line *t)
{
	struct ts_ics_event event = {.day = t->day};

	ts_text_put(&c->text, t->where);
	for (size_t i = 0; i < t->what.count; i++)
		ts_text_puts(&c->text, "-", t->what.items[i], NULL);
	event.key = take(c);
	put_subject(c);
	ts_text_put(&c->text, "test ");
	for (size_t i = 0; i < t->what.count; i++)
		ts_text_puts(&c->text,
			!i                      ? ""
			: i + 1 < t->what.count ? ", "
						: " and ",
			t->what.items[i], NULL);
	ts_text_puts(&c->text, " of the ", t->where, NULL);
	event.summary = take(c);
	ts_text_puts(&c->text, t->says, "\n", t->because, NULL);
	event.description = take(c);
	add(c, &event);
}

static void add_stage(struct sheet *c, const struct ts_due_stage_line *g)
{
	struct ts_ics_event event = {.day = g->day};

	ts_text_put(&c->text, "stage-");
	ts_text_number(&c->text, (double)g->number, 0);
	event.key = take(c);
	put_subject(c);
	ts_text_put(&c->text, "stage ");
	ts_text_number(&c->text, (double)g->number, 0);
	ts_text_puts(&c->text, ": ", g->says, NULL);
	event.summary = take(c);
	event.description = g->test;
	add(c, &event);
}

/* A change by routine comes again; one that is asked for once is asked for anew. */
static void add_change(struct sheet *c, const struct ts_due_change_line *change)
{
	struct ts_ics_event event = {.key = "change", .day = change->day, .rings = true};

	if (change->every_days >= 1 && change->every_days == floor(change->every_days)) {
		event.every_days = (unsigned)change->every_days;
		event.times = CHANGES_SHOWN;
	}
	put_subject(c);
	ts_text_puts(&c->text, "change ", change->amount, NULL);
	event.summary = take(c);
	ts_text_puts(&c->text, change->says, "\n", change->because, NULL);
	for (size_t i = 0; i < c->r->bring_count; i++) {
		ts_text_put(&c->text, i ? ", " : "\nbring ");
		ts_say_amount(&c->text, c->r->bring[i].amount, c->r->bring[i].unit);
		ts_text_puts(&c->text, " of ", c->r->bring[i].what, NULL);
	}
	event.description = take(c);
	add(c, &event);
}

static void add_alarm(struct sheet *c, const struct ts_due_alarm_line *a)
{
	struct ts_ics_event event = {.day = a->day, .rings = true};

	ts_text_puts(&c->text, "limit-", a->parameter, NULL);
	event.key = take(c);
	put_subject(c);
	ts_text_put(&c->text, a->says);
	event.summary = take(c);
	event.description = a->because ? a->because : a->says;
	add(c, &event);
}

static void add_danger(struct sheet *c)
{
	struct ts_ics_event danger = {.key = "danger",
		.description = c->r->danger_because,
		.day = c->today,
		.rings = true};

	danger.summary = c->r->danger;
	add(c, &danger);
}

static void add_tank(struct sheet *c, const struct ts_due_calendar *tank)
{
	c->r = tank->due;
	c->called = tank->called;
	c->subject = subject_of(c, tank->file);
	if (c->r->danger)
		add_danger(c);
	if (c->r->change)
		add_change(c, c->r->change);
	for (size_t i = 0; i < c->r->test_count; i++)
		add_test(c, &c->r->tests[i]);
	for (size_t i = 0; i < c->r->stage_count; i++)
		add_stage(c, &c->r->stages[i]);
	for (size_t i = 0; i < c->r->alarm_count; i++)
		add_alarm(c, &c->r->alarms[i]);
}

void ts_show_due_calendar(struct ts_arena *arena, const struct ts_due_calendar *tanks, size_t count,
	const char *version, long today, struct ts_text *out)
{
	struct sheet c = {.arena = arena, .out = out, .today = today};

	ts_text_open(&c.text, &arena->allocator);
	ts_ics_open(out, version);
	for (size_t i = 0; i < count; i++)
		add_tank(&c, &tanks[i]);
	ts_ics_close(out);
	arena->failed |= c.text.failed;
	ts_text_drop(&c.text);
}
