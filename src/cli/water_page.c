/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The page of water and mix: one table of units, one list of facts, then what is to be said.
 */
#include <math.h>

#include "chem/hardness.h"
#include "cli/water.h"
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

/* "8.0 (7.6..8.4)" */
static const char *interval(struct ts_document *doc, double value, double low, double high,
	int decimals, const char *unit)
{
	struct ts_text text;
	const char *taken;

	if (isnan(value))
		return "not known";
	ts_text_open(&text, &doc->arena->allocator);
	ts_text_number(&text, value, decimals);
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

/* Wider than a kit's doubt, dH: both ends are shown. */
#define WIDE_DH 2.0

static void put_figure(
	struct ts_text *text, const char *label, double value, double low, double high)
{
	bool wide = high - low > WIDE_DH;

	ts_text_put(text, label);
	ts_text_number_short(text, wide ? low : value, 1);
	if (!wide)
		return;
	ts_text_put(text, "..");
	ts_text_number_short(text, high, 1);
}

/* "Hard by the scale of the USGS: GH 9, KH 4" */
static void put_class(struct ts_text *text, const struct ts_water_facts *f)
{
	size_t start = text->len;

	if (f->unusual & TS_UNUSUAL_SOFTENED)
		ts_text_put(text, "Softened, which is not soft: ");
	else if (f->hardness_class)
		ts_text_puts(text, f->hardness_class, " by the scale of the ", f->hardness_scale,
			": ", NULL);
	if (text->len > start && text->at[start] >= 'a' && text->at[start] <= 'z')
		text->at[start] = (char)(text->at[start] - 'a' + 'A');
	if (isnan(f->gh_dh))
		ts_text_put(text, "GH is not known");
	else
		put_figure(text, "GH ", f->gh_dh, f->gh_low_dh, f->gh_high_dh);
	if (!isnan(f->kh_dh))
		put_figure(text, ", KH ", f->kh_dh, f->kh_low_dh, f->kh_high_dh);
}

/* The worst poison that is more than a concern; NULL: there is none. */
static const struct ts_danger_result *worst(const struct ts_water_result *r)
{
	const struct ts_danger_result *found = NULL;

	for (size_t i = 0; i < r->danger_count; i++) {
		bool now = r->dangers[i].danger == ts_danger_words[TS_DANGER_NOW];

		if (now || (!found && r->dangers[i].danger == ts_danger_words[TS_DANGER_CONFLICT]))
			found = &r->dangers[i];
		if (now)
			break;
	}
	return found;
}

static void say_tank(struct ts_document *doc, struct ts_text *text, const struct ts_water_facts *f)
{
	ts_text_puts(text, "A tank of it runs at about pH ",
		interval(doc, f->ph_tank, f->ph_tank_low, f->ph_tank_high, 1, ""),
		f->unusual & TS_UNUSUAL_GASSY
			? "; what the sample reads is gas, CO2 that leaves by itself"
			: ", whatever a fresh sample reads",
		NULL);
}

void water_page_verdict(struct ts_document *doc, const struct ts_water_result *r,
	const struct ts_practice *practice)
{
	const struct ts_water_facts *f = &r->facts;
	const struct ts_danger_result *danger = worst(r);
	const char *class;
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	put_class(&text, f);
	class = ts_doc_take(doc, &text);
	if (danger) {
		ts_doc_verdict(doc, "This water harms animals as it is", danger->says);
		ts_doc_paragraph(doc, class);
	} else {
		if (!isnan(f->ph_tank))
			say_tank(doc, &text, f);
		ts_doc_verdict(doc, class, text.len ? ts_doc_take(doc, &text) : NULL);
	}
	if (!isnan(f->kh_dh)) {
		ts_say_buffer(&text, f, practice);
		ts_doc_line(doc, ts_doc_facts(doc, 0), "Buffer", ts_doc_take(doc, &text), NULL);
	}
	ts_say_oxygen(&text, f, practice);
	if (text.len)
		ts_doc_line(doc, ts_doc_facts(doc, 0), "Oxygen", ts_doc_take(doc, &text), NULL);
	doc->arena->failed |= text.failed;
	ts_text_drop(&text);
}

static void hardness_row(
	struct ts_document *doc, struct ts_node *table, const char *label, double dh, double factor)
{
	double mmol = ts_chem_mmol_l_from_dh(dh);

	if (isnan(dh))
		return;
	ts_doc_line(doc, table, label, figure(doc, dh, 1, ""), figure(doc, mmol * factor, 2, ""),
		figure(doc, ts_chem_mg_caco3_from_mmol_l(mmol), 0, ""),
		figure(doc, mmol / TS_MMOL_L_PER_FH, 1, ""),
		figure(doc, mmol / TS_MMOL_L_PER_CLARK, 1, ""),
		figure(doc, mmol / TS_MMOL_L_PER_GPG, 1, ""), NULL);
}

static void hardness_table(struct ts_document *doc, const struct ts_water_facts *f)
{
	struct ts_node *table;

	if (isnan(f->gh_dh) && isnan(f->kh_dh))
		return;
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "", "dH", "mmol/L (KH meq/L)", "mg/L CaCO3", "French", "English",
		"grains/US gal", NULL);
	hardness_row(doc, table, "GH", f->gh_dh, 1);
	hardness_row(doc, table, "KH", f->kh_dh, 2);
}

static void ion_rows(struct ts_document *doc, const struct ts_water_facts *f)
{
	const double mg_l[TS_ION__IN_SOLUTION] = {f->ca_mg_l, f->mg_mg_l, f->na_mg_l, f->k_mg_l,
		f->cl_mg_l, f->so4_mg_l, f->no3_mg_l};
	struct ts_node *table = NULL;

	for (int ion = 0; ion < TS_ION__IN_SOLUTION; ion++) {
		if (isnan(mg_l[ion]))
			continue;
		if (!table) {
			table = ts_doc_table(doc);
			ts_doc_line(doc, table, "", "mg/L", "mmol/L", NULL);
		}
		ts_doc_line(doc, table, ts_ions[ion].symbol, figure(doc, mg_l[ion], 1, ""),
			figure(doc, mg_l[ion] / ts_ions[ion].molar_mass, 2, ""), NULL);
	}
}

static void fact(struct ts_document *doc, struct ts_node *facts, const char *label,
	const char *value, const struct ts_water_facts *f, enum ts_water_fact id)
{
	struct ts_text text;

	ts_text_open(&text, &doc->arena->allocator);
	ts_text_put(&text, value);
	if (f->why[id] != TS_WHY_KNOWN)
		ts_text_puts(&text, ": ", ts_why_says[f->why[id]], NULL);
	ts_doc_line(doc, facts, label, ts_doc_take(doc, &text), NULL);
	ts_text_drop(&text);
}

void water_page_values(
	struct ts_document *doc, const struct ts_water_result *r, const char *ph_label)
{
	const struct ts_water_facts *f = &r->facts;
	struct ts_node *facts;

	hardness_table(doc, f);
	ion_rows(doc, f);
	facts = ts_doc_facts(doc, 0);
	if (!isnan(f->ph))
		ts_doc_line(doc, facts, ph_label,
			interval(doc, f->ph, f->ph_low, f->ph_high, 1, ""), NULL);
	fact(doc, facts, "CO2",
		interval(doc, f->co2_mg_l, f->co2_low_mg_l, f->co2_high_mg_l, 1, " mg/L"), f,
		TS_FACT_CO2);
	fact(doc, facts, "pH aired", figure(doc, f->ph_air, 1, ""), f, TS_FACT_PH_AIR);
	fact(doc, facts, "pH in a tank",
		interval(doc, f->ph_tank, f->ph_tank_low, f->ph_tank_high, 1, ""), f,
		TS_FACT_PH_TANK);
	fact(doc, facts, "Calcite index", figure(doc, f->calcite_si, 2, ""), f, TS_FACT_CALCITE_SI);
	if (!isnan(f->conductivity_us_cm))
		ts_doc_line(doc, facts, "Conductivity",
			figure(doc, f->conductivity_us_cm, 0, " uS/cm"), "as read", NULL);
	else
		fact(doc, facts, "Conductivity",
			figure(doc, f->conductivity_computed_us_cm, 0, " uS/cm, computed"), f,
			TS_FACT_CONDUCTIVITY);
	ts_doc_line(doc, facts, "Temperature", figure(doc, f->temp_c, 1, " C"),
		f->assumed & TS_ASSUMED_TEMPERATURE ? "assumed" : NULL, NULL);
}

static void paragraphs(struct ts_document *doc, const struct ts_texts *texts)
{
	for (size_t i = 0; i < texts->count; i++)
		ts_doc_paragraph(doc, texts->items[i]);
}

void water_page_notes(struct ts_document *doc, const struct ts_water_result *r)
{
	struct ts_text text;

	for (size_t i = 0; i < r->danger_count; i++) {
		if (r->dangers[i].says && &r->dangers[i] != worst(r))
			ts_doc_caution(doc, r->dangers[i].says);
	}
	for (size_t i = 0; i < r->drinking_water.count; i++)
		ts_doc_caution(doc, r->drinking_water.items[i]);
	paragraphs(doc, &r->unusual);
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

void water_page_over_time(struct ts_document *doc, const struct ts_water_result *r)
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
	if (table)
		ts_doc_paragraph(doc, "A changing supply is judged by both its ends: no animal "
				      "chooses the day. --season takes the readings of one part "
				      "of the year.");
}

static void against_row(struct ts_document *doc, struct ts_node *table, const char *label,
	const struct ts_range *pair, int decimals)
{
	double apart = pair->low - pair->high;
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

void water_page_against(struct ts_document *doc, const struct ts_water_result *r)
{
	const struct ts_against_result *a = r->against;
	struct ts_node *table;

	if (!a)
		return;
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "", r->name ? r->name : "this water", a->name ? a->name : "other",
		"difference", NULL);
	against_row(doc, table, "GH dH", &a->gh_dh, 1);
	against_row(doc, table, "KH dH", &a->kh_dh, 1);
	against_row(doc, table, "pH", &a->ph, 1);
	against_row(doc, table, "EC uS/cm", &a->conductivity_us_cm, 0);
	against_row(doc, table, "NO3 mg/L", &a->no3_mg_l, 0);
	paragraphs(doc, &a->says);
	if (a->advice_count)
		ts_doc_heading(doc, 0, "WHAT TO DO");
	say_advice_lines(doc, a->advice, a->advice_count);
}
