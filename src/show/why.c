/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Animals in full against one water: of each the verdict, its parameters with their outlines, what
 * else is to be known; then the water itself.
 */
#include "show/why.h"

#include <string.h>

#include "base/arena.h"
#include "show/rank.h"
#include "words/care.h"

static void parameters(struct ts_document *doc, const struct ts_why_animal *a)
{
	ts_doc_heading(doc, 1, "The water");
	for (size_t i = 0; i < a->water_count; i++) {
		const struct ts_why_parameter *p = &a->water[i];
		/* What decides stands above. */
		bool said = a->decides && strstr(a->decides, p->says);
		const char *value = ts_arena_text(doc->arena, p->says, strcspn(p->says, ","));
		struct ts_node *entry = ts_doc_entry(
			doc, said && value ? ts_arena_join(doc->arena, value, ": see above", NULL)
					   : p->says);

		if (entry)
			entry->hue = ts_show_hue(p->parameter);
		ts_doc_line(doc, entry, p->tolerated_says, NULL);
		ts_show_bar(doc, entry, &a->match->parameters[p->parameter], p->parameter);
	}
}

static void one(struct ts_document *doc, const struct ts_why_animal *a)
{
	struct ts_node *facts;

	ts_doc_verdict(doc, a->headline, a->decides);
	if (a->caution)
		ts_doc_caution(doc, a->caution);
	parameters(doc, a);
	facts = ts_doc_facts(doc, 1);
	for (size_t i = 0; i < a->fact_count; i++)
		ts_doc_line(doc, facts, a->facts[i].label, a->facts[i].says, NULL);
	if (a->change) {
		ts_doc_heading(doc, 1, "What would change it");
		ts_doc_paragraph(doc, a->change);
	}
}

void ts_show_why(struct ts_document *doc, const struct ts_why_result *r)
{
	struct ts_node *facts;

	for (size_t i = 0; i < r->animal_count; i++)
		one(doc, &r->animals[i]);
	if (r->water_says) {
		ts_doc_medium(doc, TS_OFF_PAPER); /* which leads with it */
		facts = ts_doc_facts(doc, 0);
		ts_doc_medium(doc, TS_EVERYWHERE);
		ts_doc_line(doc, facts, "Water", r->water_says, NULL);
		ts_doc_line(doc, facts, "Animals", r->animals_say, NULL);
	}
	for (size_t i = 0; i < r->notes.count; i++)
		ts_doc_paragraph(doc, r->notes.items[i]);
	if (r->measure)
		ts_doc_paragraph(doc, r->measure);
	ts_doc_see(doc, r->ph_alone ? ts_guide_alone : ts_guide_suits);
}
