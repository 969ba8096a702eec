/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to test next as a document.
 */
#include "show/due.h"

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
	ts_doc_paragraph(doc, r->stages_say);
}

void ts_show_due(struct ts_document *doc, const struct ts_due_result *r, long today)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	if (r->danger)
		ts_doc_verdict(doc, r->danger, r->danger_because);
	ts_doc_verdict(doc, r->says, r->because);
	say_tests(doc, r);
	say_stages(doc, &text, r, today);
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(doc, r->notes.items[i]);
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(doc, r->cautions.items[i]);
	ts_doc_see(doc, ts_guide_due);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}
