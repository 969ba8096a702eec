/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A mixture: what it is, its parts, its values.
 */
#include "show/water.h"

static const char *range(struct ts_document *doc, struct ts_text *text, const struct ts_range *r)
{
	ts_text_number_short(text, r->low, 1);
	if (r->high > r->low) {
		ts_text_put(text, "..");
		ts_text_number_short(text, r->high, 1);
	}
	return ts_doc_take(doc, text);
}

void ts_show_mix(struct ts_document *doc, const struct ts_mix_result *r)
{
	struct ts_node *table;
	struct ts_text text;

	if (!r->computed) {
		ts_doc_verdict(doc, r->water.headline, r->water.decides);
		return;
	}
	ts_show_water_lead(doc, &r->water);
	ts_text_open(&text, &doc->arena->allocator);
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "part", r->litres ? "litres" : "share", "GH dH", "KH dH", NULL);
	for (size_t i = 0; i < r->part_count; i++) {
		const struct ts_mix_part_result *part = &r->parts[i];
		const char *amount, *gh;

		ts_text_number_short(&text, part->amount, 3);
		amount = ts_doc_take(doc, &text);
		gh = range(doc, &text, &part->gh_dh);
		ts_doc_line(
			doc, table, part->name, amount, gh, range(doc, &text, &part->kh_dh), NULL);
	}
	ts_text_drop(&text);
	ts_show_water_values(doc, &r->water, false);
	ts_show_water_rest(doc, &r->water);
	for (size_t i = 0; i < r->advice.count; i++)
		ts_doc_paragraph(doc, r->advice.items[i]);
}
