/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of due as a document, and as a calendar in which nothing that is due stands in the
 * past: there nobody would see it.
 */
#include <string.h>

#include "cli/due.h"
#include "report/ics.h"
#include "words/care.h"
#include "words/due.h"

static void say_tests(struct ts_document *doc, const struct ts_due_result *r)
{
	ts_doc_heading(doc, 0, "TESTS");
	for (size_t i = 0; i < r->test_count; i++) {
		const struct ts_due_test_line *t = &r->tests[i];
		struct ts_node *entry = ts_doc_entry(doc, t->says);

		ts_doc_line(doc, entry, t->because, NULL);
		ts_doc_tag(doc, entry, "when", t->when);
	}
}

static void say_stages(
	struct ts_document *doc, struct ts_text *text, const struct ts_due_result *r, long today)
{
	if (!r->stage_count)
		return;
	ts_doc_heading(doc, 0, "STAGES OF THE RE-MAKING");
	for (size_t i = 0; i < r->stage_count; i++) {
		const struct ts_due_stage_line *g = &r->stages[i];

		ts_say_day(text, g->day, today);
		ts_text_puts(text, ": ", g->says, NULL);
		ts_doc_line(doc, ts_doc_entry(doc, ts_doc_take(doc, text)), g->test, NULL);
	}
	ts_doc_paragraph(doc, "The days hold while each test reads as it should. After each one, "
			      "write the reading into the file and ask again.");
}

void due_write(struct session *s, const struct ts_due_result *r)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "What to test next");
	ts_text_open(&text, &s->arena->allocator);
	if (r->danger)
		ts_doc_verdict(&doc, r->danger, r->danger_because);
	ts_doc_verdict(&doc, r->says, r->because);
	say_tests(&doc, r);
	say_stages(&doc, &text, r, s->today);
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(&doc, r->notes.items[i]);
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(&doc, r->cautions.items[i]);
	ts_doc_see(&doc, ts_guide_due);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}

/* "living-room.yaml/living room": what the UIDs stand on. */
static const char *subject_of(struct session *s, const struct ts_due_result *r)
{
	const char *file = s->options->arguments[0], *slash = strrchr(file, '/');

	return ts_arena_join(s->arena, slash ? slash + 1 : file, "/", r->name ? r->name : "", NULL);
}

static void add(struct session *s, struct ts_ics_event *event)
{
	if (event->day < s->today)
		event->day = s->today;
	ts_ics_event(s->out, event, s->today);
}

static void put_subject(struct ts_text *text, const struct ts_due_result *r)
{
	if (r->name)
		ts_text_puts(text, r->name, ": ", NULL);
}

static void add_test(struct session *s, struct ts_document *scratch, struct ts_text *text,
	const struct ts_due_result *r, const struct ts_due_test_line *t)
{
	struct ts_ics_event event = {.subject = subject_of(s, r), .day = t->day};

	ts_text_put(text, t->where);
	for (size_t i = 0; i < t->what.count; i++)
		ts_text_puts(text, "-", t->what.items[i], NULL);
	event.key = ts_doc_take(scratch, text);
	put_subject(text, r);
	ts_text_put(text, "test ");
	for (size_t i = 0; i < t->what.count; i++)
		ts_text_puts(text,
			!i                      ? ""
			: i + 1 < t->what.count ? ", "
						: " and ",
			t->what.items[i], NULL);
	ts_text_puts(text, " of the ", t->where, NULL);
	event.summary = ts_doc_take(scratch, text);
	ts_text_puts(text, t->says, "\n", t->because, NULL);
	event.description = ts_doc_take(scratch, text);
	add(s, &event);
}

static void add_stage(struct session *s, struct ts_document *scratch, struct ts_text *text,
	const struct ts_due_result *r, const struct ts_due_stage_line *g)
{
	struct ts_ics_event event = {.subject = subject_of(s, r), .day = g->day};

	ts_text_put(text, "stage-");
	ts_text_number(text, (double)g->number, 0);
	event.key = ts_doc_take(scratch, text);
	put_subject(text, r);
	ts_text_put(text, "stage ");
	ts_text_number(text, (double)g->number, 0);
	ts_text_puts(text, ": ", g->says, NULL);
	event.summary = ts_doc_take(scratch, text);
	event.description = g->test;
	add(s, &event);
}

void due_calendar(struct session *s, const struct ts_due_result *r)
{
	struct ts_ics_event danger = {.subject = subject_of(s, r),
		.key = "danger",
		.summary = r->danger,
		.description = r->danger_because,
		.day = s->today};
	struct ts_document scratch;
	struct ts_text text;

	ts_doc_open(&scratch, s->arena, "");
	ts_text_open(&text, &s->arena->allocator);
	ts_ics_open(s->out, TS_VERSION);
	if (r->danger)
		add(s, &danger);
	for (size_t i = 0; i < r->test_count; i++)
		add_test(s, &scratch, &text, r, &r->tests[i]);
	for (size_t i = 0; i < r->stage_count; i++)
		add_stage(s, &scratch, &text, r, &r->stages[i]);
	ts_ics_close(s->out);
	ts_text_drop(&text);
}
