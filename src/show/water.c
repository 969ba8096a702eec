/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answers about one water and about a mixture as documents: what it is and what it rests on,
 * what is unusual or dangerous, then one table of units and one list of facts.
 */
#include "show/water.h"

#include <math.h>

#include "base/arena.h"
#include "words/water.h"

static const char *figure(struct ts_document *doc, double value, int decimals, const char *unit)
{
	struct ts_text text;
	const char *taken;

	if (isnan(value))
		return "not known";
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_number_short(&text, value, decimals);
	ts_text_put(&text, unit);
	taken = ts_doc_take(doc, &text);
	ts_text_drop(&text);
	return taken;
}

static const char *known_or(struct ts_document *doc, double value)
{
	return isnan(value) ? "-" : figure(doc, value, 2, "");
}

/* "8.0 (7.6..8.4)"; `decimals` below 0: so many of the value at the most, as it was read. */
static const char *interval(struct ts_document *doc, double value, double low, double high,
	int decimals, const char *unit)
{
	struct ts_text text;
	const char *taken;

	if (isnan(value))
		return "not known";
	ts_text_open(&text, &doc->arena->allocator);
	if (decimals < 0)
		ts_text_number_short(&text, value, -decimals);
	else
		ts_text_number(&text, value, decimals);
	decimals = decimals < 0 ? 1 : decimals;
	ts_text_put(&text, unit);
	if (high > low) {
		ts_text_put(&text, " (");
		ts_text_number(&text, low, decimals);
		ts_text_put(&text, "..");
		ts_text_number(&text, high, decimals);
		ts_text_put(&text, ")");
	}
	taken = ts_doc_take(doc, &text);
	ts_text_drop(&text);
	return taken;
}

static void hardness_table(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_node *table;

	if (!r->hardness_count)
		return;
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "", "dH", "mmol/L (KH meq/L)", "mg/L CaCO3", "French", "English",
		"grains/US gal", NULL);
	for (size_t i = 0; i < r->hardness_count; i++) {
		const struct ts_hardness_result *h = &r->hardness[i];

		ts_doc_line(doc, table, h->name, figure(doc, h->dh, 1, ""),
			figure(doc, h->mmol_l, 2, ""), figure(doc, h->mg_l_caco3, 0, ""),
			figure(doc, h->french, 1, ""), figure(doc, h->english, 1, ""),
			figure(doc, h->grains_us_gal, 1, ""), NULL);
	}
}

static void ion_rows(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_node *table;

	if (!r->ion_count)
		return;
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "", "mg/L", "mmol/L", NULL);
	for (size_t i = 0; i < r->ion_count; i++)
		ts_doc_line(doc, table, r->ions[i].name, figure(doc, r->ions[i].mg_l, 1, ""),
			figure(doc, r->ions[i].mmol_l, 2, ""), NULL);
}

/* One computed fact as it is shown: "not known" is said once for all of one reason. */
struct shown {
	const char *label, *value;
	enum ts_water_fact id;
};

static void known_facts(struct ts_document *doc, struct ts_node *facts, const struct shown *all,
	size_t count, const struct ts_water_facts *f)
{
	for (size_t i = 0; i < count; i++) {
		if (f->why[all[i].id] == TS_WHY_KNOWN)
			ts_doc_line(doc, facts, all[i].label, all[i].value, NULL);
	}
}

static void unknown_facts(struct ts_document *doc, struct ts_node *facts, const struct shown *all,
	size_t count, const struct ts_water_facts *f)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	for (int why = TS_WHY_KNOWN + 1; ts_why_says[why]; why++) {
		for (size_t i = 0; i < count; i++) {
			if ((int)f->why[all[i].id] == why)
				ts_text_puts(&text, text.len ? ", " : "", all[i].label, NULL);
		}
		if (!text.len)
			continue;
		ts_text_puts(&text, ": ", ts_why_says[why], NULL);
		ts_doc_line(doc, facts, "Not known", ts_doc_take(doc, &text), NULL);
	}
	ts_text_drop(&text);
}

void ts_show_water_values(struct ts_document *doc, const struct ts_water_result *r, bool read)
{
	const struct ts_water_facts *f = &r->facts;
	const struct shown all[] = {
		{"CO2", interval(doc, f->co2_mg_l, f->co2_low_mg_l, f->co2_high_mg_l, 1, " mg/L"),
			TS_FACT_CO2},
		{"pH aired", figure(doc, f->ph_air, 1, ""), TS_FACT_PH_AIR},
		{"pH in a tank", interval(doc, f->ph_tank, f->ph_tank_low, f->ph_tank_high, 1, ""),
			TS_FACT_PH_TANK},
		{"Calcite index", figure(doc, f->calcite_si, 2, ""), TS_FACT_CALCITE_SI},
		{"Conductivity", figure(doc, f->conductivity_computed_us_cm, 0, " uS/cm, computed"),
			TS_FACT_CONDUCTIVITY}};
	bool ec_read = !isnan(f->conductivity_us_cm);
	size_t count = sizeof all / sizeof *all - ec_read;
	struct ts_node *facts;

	hardness_table(doc, r);
	ion_rows(doc, r);
	facts = ts_doc_facts(doc, 0);
	if (!isnan(f->ph))
		ts_doc_line(doc, facts, read ? "pH" : "pH closed",
			interval(doc, f->ph, f->ph_low, f->ph_high, read ? -2 : 1, ""), NULL);
	known_facts(doc, facts, all, count, f);
	if (ec_read)
		ts_doc_line(doc, facts, "Conductivity",
			figure(doc, f->conductivity_us_cm, 0, " uS/cm"), "as read", NULL);
	if (!isnan(f->temp_c))
		ts_doc_line(doc, facts, "Temperature", figure(doc, f->temp_c, 1, " C"),
			f->assumed & TS_ASSUMED_TEMPERATURE ? "assumed" : NULL, NULL);
	unknown_facts(doc, facts, all, count, f);
}

static void assumed(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_text text;

	if (!r->assumed.count)
		return;
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_put(&text, "Not read, and assumed: ");
	for (size_t i = 0; i < r->assumed.count; i++)
		ts_text_puts(&text, i ? "; " : "", r->assumed.items[i], NULL);
	ts_text_put(&text, ".");
	ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	ts_text_drop(&text);
}

void ts_show_water_lead(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_node *facts;

	ts_doc_verdict(doc, r->headline, r->decides);
	if (r->class_says)
		ts_doc_paragraph(doc, r->class_says);
	for (size_t i = 0; i < r->danger_count; i++) {
		if (r->dangers[i].says && &r->dangers[i] != r->worst)
			ts_doc_caution(doc, r->dangers[i].says);
	}
	for (size_t i = 0; i < r->drinking_water.count; i++)
		ts_doc_caution(doc, r->drinking_water.items[i]);
	facts = ts_doc_facts(doc, 0);
	if (r->suits_says)
		ts_doc_line(doc, facts, "Home of", r->suits_says, NULL);
	if (r->buffer_says)
		ts_doc_line(doc, facts, "Buffer", r->buffer_says, NULL);
	if (r->oxygen_says)
		ts_doc_line(doc, facts, "Oxygen", r->oxygen_says, NULL);
	if (r->salt_says)
		ts_doc_line(doc, facts, "Salt", r->salt_says, NULL);
	ts_doc_paragraphs(doc, &r->notes);
}

void ts_show_water_rest(struct ts_document *doc, const struct ts_water_result *r)
{
	assumed(doc, r);
}

static void over_time(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_node *table = NULL;

	for (size_t i = 0; i < r->over_time_count; i++) {
		const struct ts_over_time_result *t = &r->over_time[i];

		if (!table) {
			table = ts_doc_table(doc);
			ts_doc_line(doc, table, "readings", "least", "most", "same hour",
				"in a day", "a week", "trend", NULL);
		}
		ts_doc_line(doc, table, t->name, figure(doc, t->low, 1, ""),
			figure(doc, t->high, 1, ""), known_or(doc, t->same_hour_spread),
			known_or(doc, t->day_swing), known_or(doc, t->drift_per_week),
			t->trend                   ? "yes"
			: isnan(t->drift_per_week) ? "-"
						   : "no",
			NULL);
	}
	if (r->over_time_says)
		ts_doc_paragraph(doc, r->over_time_says);
}

static void against_row(struct ts_document *doc, struct ts_node *table, const char *label,
	const struct ts_range *pair, double apart, int decimals)
{
	struct ts_text text;

	if (isnan(pair->low) && isnan(pair->high))
		return;
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_put(&text, apart > 0 ? "+" : "");
	if (!isnan(apart))
		ts_text_number_short(&text, apart, decimals);
	ts_doc_line(doc, table, label, figure(doc, pair->low, decimals, ""),
		figure(doc, pair->high, decimals, ""), ts_doc_take(doc, &text), NULL);
	ts_text_drop(&text);
}

/* What to do, when, and the number that decides; the answer first, then "also". */
static void advice_lines(struct ts_document *doc, const struct ts_advice_line *lines, size_t count)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	for (size_t i = 0; i < count; i++) {
		struct ts_node *entry;

		ts_text_puts(&text, i ? "Also, " : "", lines[i].urgency, ": ", lines[i].says, NULL);
		entry = ts_doc_entry(doc, ts_doc_take(doc, &text));
		for (size_t n = 0; n < lines[i].because.count; n++)
			ts_doc_line(doc, entry, lines[i].because.items[n], NULL);
	}
	ts_text_drop(&text);
}

static void against(struct ts_document *doc, const struct ts_water_result *r)
{
	const struct ts_against_result *a = r->against;
	struct ts_node *table;

	if (!a)
		return;
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "", r->name ? r->name : "this water", a->name ? a->name : "other",
		"difference", NULL);
	against_row(doc, table, "GH dH", &a->gh_dh, a->gh_apart_dh, 1);
	against_row(doc, table, "KH dH", &a->kh_dh, a->kh_apart_dh, 1);
	against_row(doc, table, "pH", &a->ph, a->ph_apart, 1);
	against_row(doc, table, "EC uS/cm", &a->conductivity_us_cm, a->conductivity_apart_us_cm, 0);
	against_row(doc, table, "NO3 mg/L", &a->no3_mg_l, a->no3_apart_mg_l, 0);
	/* The first of them is the answer's first line, where nothing harms. */
	for (size_t i = a->says.count && r->headline == a->says.items[0]; i < a->says.count; i++)
		ts_doc_paragraph(doc, a->says.items[i]);
	if (a->advice_count)
		ts_doc_heading(doc, 0, "What to do");
	advice_lines(doc, a->advice, a->advice_count);
}

void ts_show_water(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_text text;

	ts_show_water_lead(doc, r);
	against(doc, r);
	ts_show_water_values(doc, r, true);
	ts_show_water_rest(doc, r);
	over_time(doc, r);
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_puts(&text, "Measure next: ", r->next_to_measure, " ", r->how_to_sample, NULL);
	ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	ts_text_drop(&text);
}
