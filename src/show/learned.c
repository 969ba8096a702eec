/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences of answers/learned.h as they stand, in order.
 */
#include "show/learned.h"

#include "base/arena.h"

void ts_show_alarms(struct ts_document *doc, const struct ts_learned *l)
{
	struct ts_text text;

	for (size_t i = 0; i < l->alarms.count; i++)
		ts_doc_paragraph(doc, l->alarms.items[i]);
	if (!l->routine_says)
		return;
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_puts(&text, l->routine_says, ".", NULL);
	if (l->else_says)
		ts_text_puts(&text, " ", l->else_says, ".", NULL);
	if (l->back_says)
		ts_text_puts(&text, " ", l->back_says, ".", NULL);
	ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}

void ts_show_newest(struct ts_document *doc, struct ts_node *facts, const struct ts_learned *l)
{
	for (size_t i = 0; i < l->expected_count; i++)
		ts_doc_line(doc, facts, i ? "" : "Newest", l->expected[i].says, NULL);
}

void ts_show_learned(struct ts_document *doc, struct ts_node *facts, const struct ts_learned *l)
{
	for (size_t i = 0; i < l->line_count; i++)
		ts_doc_line(doc, facts, i ? "" : "By the log", l->lines[i].says, NULL);
	for (size_t i = 0; i < l->thin.count; i++)
		ts_doc_line(doc, facts, i ? "" : "Too thin", l->thin.items[i], NULL);
}
