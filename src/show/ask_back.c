/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A greeting is left to whoever sends it: what cannot wait, the question, what is needed, how to
 * write it.
 */
#include "show/ask_back.h"

#include "base/text.h"

static void show_questions(struct ts_document *doc, const struct ts_ask_back_result *r)
{
	struct ts_node *facts;

	ts_doc_verdict(doc, r->lead, "");
	facts = ts_doc_facts(doc, 1);
	for (size_t i = 0; i < r->question_count; i++)
		ts_doc_line(doc, facts, r->questions[i].id, r->questions[i].says, NULL);
}

void ts_show_ask_back(struct ts_document *doc, const struct ts_ask_back_result *r)
{
	struct ts_node *list;
	struct ts_text text;
	const char *number;

	if (!r->id) {
		show_questions(doc, r);
		return;
	}
	ts_doc_verdict(doc, r->first ? r->first : r->says, r->first ? r->says : "");
	ts_doc_paragraph(doc, r->lead);
	list = ts_doc_facts(doc, 0);
	ts_text_open(&text, &doc->arena->allocator);
	for (size_t i = 0; i < r->ask_count; i++) {
		const struct ts_ask_result *ask = &r->asks[i];

		ts_text_number(&text, (double)(i + 1), 0);
		number = ts_doc_take(doc, &text);
		ts_text_puts(&text, ask->says, ask->takes ? " (" : "", ask->takes ? ask->takes : "",
			ask->takes ? ")" : "", NULL);
		ts_doc_line(doc, list, number, ts_doc_take(doc, &text), NULL);
	}
	ts_text_drop(&text);
	ts_doc_paragraph(doc, r->closing);
	if (!r->link)
		return;
	list = ts_doc_records(doc); /* a link is of no use in pieces */
	ts_doc_line(doc, list, r->link_says, NULL);
	ts_doc_line(doc, list, r->link, NULL);
}
