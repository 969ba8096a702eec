/* SPDX-License-Identifier: Apache-2.0 */
/*
 * "To take to the shop": what leads a printed page, and is on no screen. The own water, with room
 * to write the shop's beside it, then what to ask and what to look at; the animals come after it.
 */
#include <math.h>

#include "base/text.h"
#include "chem/hardness.h"
#include "show/sheet.h"
#include "words/sentence.h"
#include "words/shop.h"
#include "words/waterline.h"

static void put_figure(struct ts_text *text, const struct ts_profile *profile, enum ts_parameter p)
{
	const struct ts_span *s = &profile->at[p];

	if (!s->given || (p == TS_PH && isnan(profile->ph_read))) {
		ts_text_put(text, "not measured");
		return;
	}
	if (p == TS_PH && profile->ph_computed) {
		ts_text_number_short(text, profile->ph_read, 2);
		ts_text_put(text, " in a fresh sample");
		return;
	}
	ts_say_span(text, s, p);
	if (*ts_parameter_rows[p].unit)
		ts_text_puts(text, " ", ts_parameter_rows[p].unit, NULL);
	if (p != TS_GH && p != TS_KH)
		return;
	ts_text_put(text, ", which is ");
	ts_text_number(text, ts_chem_mg_caco3_from_mmol_l(ts_chem_mmol_l_from_dh(s->value)), 0);
	ts_text_put(text, " mg/L of calcium carbonate");
}

static void waters(struct ts_document *doc, struct ts_text *text, const struct ts_profile *profile)
{
	static const char line[] = "____________";
	static const enum ts_parameter order[] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE};
	struct ts_node *table = ts_doc_table(doc);

	ts_doc_line(doc, table, "", "in my tank", "in the shop", NULL);
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		put_figure(text, profile, order[i]);
		ts_doc_line(doc, table, ts_parameter_rows[order[i]].label, ts_doc_take(doc, text),
			line, NULL);
	}
}

static void lines(struct ts_document *doc, const char *heading, const struct ts_shop_line *line)
{
	struct ts_node *steps;

	ts_doc_heading(doc, 1, heading);
	steps = ts_doc_steps(doc);
	for (; line->says; line++)
		ts_doc_line(doc, steps, line->about, line->says, NULL);
}

void ts_show_sheet(struct ts_document *doc, const char *name, const struct ts_profile *profile)
{
	struct ts_text text;

	ts_doc_medium(doc, TS_ON_PAPER);
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_puts(&text, "To take to the shop", name ? ": " : "", name, NULL);
	ts_doc_heading(doc, 0, ts_doc_take(doc, &text));
	waters(doc, &text, profile);
	lines(doc, "Ask before you buy", ts_shop_questions);
	lines(doc, "Look before you buy", ts_shop_signs);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
	ts_doc_medium(doc, TS_EVERYWHERE);
}
