/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The same as a calendar, in which nothing that is due stands in the past: there nobody would see
 * it.
 */
#include "show/due.h"

#include <string.h>

#include "base/arena.h"
#include "report/ics.h"

struct sheet {
	const struct ts_due_result *r;
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
	if (c->r->name)
		ts_text_puts(&c->text, c->r->name, ": ", NULL);
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

void ts_show_due_calendar(struct ts_arena *arena, const struct ts_due_result *r,
	const struct ts_due_calendar *how, struct ts_text *out)
{
	struct sheet c = {.r = r, .arena = arena, .out = out, .today = how->today};
	struct ts_ics_event danger = {.key = "danger",
		.summary = r->danger,
		.description = r->danger_because,
		.day = how->today};

	ts_text_open(&c.text, &arena->allocator);
	c.subject = subject_of(&c, how->file);
	ts_ics_open(out, how->version);
	if (r->danger)
		add(&c, &danger);
	for (size_t i = 0; i < r->test_count; i++)
		add_test(&c, &r->tests[i]);
	for (size_t i = 0; i < r->stage_count; i++)
		add_stage(&c, &r->stages[i]);
	ts_ics_close(out);
	arena->failed |= c.text.failed;
	ts_text_drop(&c.text);
}
