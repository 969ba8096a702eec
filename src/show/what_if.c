/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The headline, what lasts, the steps. Printed it is a card: what decides, that day and its first
 * hours, whom to call, and room for the hour and the numbers.
 */
#include "show/what_if.h"

#include <string.h>

#include "show/stages.h"
#include "words/care.h"

static void list_questions(struct ts_document *doc, const struct ts_what_if_result *r)
{
	struct ts_node *facts;

	ts_doc_verdict(doc, "What may happen to a tank: tapshoal what-if QUESTION [PLAN]", "");
	facts = ts_doc_facts(doc, 0);
	for (size_t i = 0; i < r->ids.count; i++)
		ts_doc_line(doc, facts, r->ids.items[i], r->questions.items[i], NULL);
	ts_doc_paragraph(doc,
		"For example tapshoal what-if power-cut plan.yaml, or without a file: "
		"tapshoal what-if power-cut \"10 neon tetra\" --volume 100L");
}

static void say_steps(struct ts_document *doc, const struct ts_what_if_result *r, bool card)
{
	struct ts_node *steps = ts_doc_steps(doc);

	for (size_t i = 0; i < r->step_count; i++) {
		if (r->steps[i].card || !card)
			ts_doc_line(doc, steps, r->steps[i].when, r->steps[i].says, NULL);
	}
}

/* Of a page alone, and printed: to be hung beside the tank, or to go along. */
static void say_card(struct ts_document *doc, const struct ts_what_if_result *r)
{
	ts_doc_medium(doc, TS_ON_PAPER);
	ts_doc_heading(doc, 0, r->asks);
	say_steps(doc, r, true);
	for (size_t i = 0; i < r->lasts_count; i++)
		ts_doc_paragraph(doc, r->lasts[i].says);
	ts_doc_paragraphs(doc, &r->call);
	ts_doc_paragraph(doc, "It began at ........ o'clock. Water ........ C.   Vet: "
			      "......................   Who helps: ......................");
	ts_doc_medium(doc, TS_EVERYWHERE);
}

void ts_show_what_if(struct ts_document *doc, const struct ts_what_if_result *r)
{
	if (!r->id) {
		list_questions(doc, r);
		return;
	}
	ts_doc_verdict(doc, r->says, r->because);
	if (doc->drawn)
		say_card(doc, r);
	ts_doc_medium(doc, doc->drawn ? TS_OFF_PAPER : TS_EVERYWHERE);
	ts_doc_heading(doc, 0, "What to do");
	say_steps(doc, r, false);
	if (r->lasts_count > 1)
		ts_doc_heading(doc, 0, "In figures");
	for (size_t i = 0; i < r->lasts_count && r->lasts_count > 1; i++) {
		/* What stands above already needs no second line. */
		if (strncmp(r->because, r->lasts[i].says, strlen(r->lasts[i].says)) != 0)
			ts_doc_paragraph(doc, r->lasts[i].says);
	}
	if (r->stage_count) {
		ts_doc_heading(doc, 0, "Over to the other water");
		ts_doc_paragraph(doc,
			"Each change is made with the water there, treated, as warm as the "
			"tank; the figures are those after it, the days those since the "
			"move. Before the first one ammonia and nitrite must read nil.");
		ts_show_stages(doc, r->stages, r->stage_count, false);
	}
	ts_doc_heading(doc, 0, "Whom to call");
	ts_doc_paragraphs(doc, &r->call);
	ts_doc_paragraphs(doc, &r->notes);
	ts_doc_medium(doc, TS_EVERYWHERE);
	for (size_t i = 0; i < r->cautions.count; i++)
		ts_doc_caution(doc, r->cautions.items[i]);
	ts_doc_see(doc, ts_guide_fails);
}
