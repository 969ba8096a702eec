/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The way from the bag into the tank as a document: whether at all, the steps in order, the stages.
 */
#include "show/arrive.h"

#include "show/stages.h"

static void maybe(struct ts_document *doc, const char *says)
{
	if (says)
		ts_doc_paragraph(doc, says);
}

void ts_show_arrive(struct ts_document *doc, const struct ts_arrive_result *r)
{
	struct ts_node *steps;

	ts_doc_verdict(doc, r->says, r->because);
	maybe(doc, r->keeps);
	maybe(doc, r->instead);
	maybe(doc, r->meanwhile);
	ts_doc_heading(doc, 0, r->meanwhile ? "If they are here already" : "In this order");
	steps = ts_doc_steps(doc);
	for (size_t i = 0; i < r->step_count; i++)
		ts_doc_line(doc, steps, r->steps[i].when, r->steps[i].says, NULL);
	if (r->stage_count) {
		ts_doc_heading(doc, 0, "From the shop's water to yours");
		ts_doc_paragraph(doc, r->stages_say);
		ts_show_stages(doc, r->stages, r->stage_count, false);
	}
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(doc, r->notes.items[i]);
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(doc, r->cautions.items[i]);
}
