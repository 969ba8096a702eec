/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The tables and charts of titrate around the sentences of its result.
 */
#include "show/titrate.h"

#include <math.h>

#include "base/arena.h"
#include "chem/hardness.h"
#include "words/care.h"

/* Lines of the table of evenings; all of them are in the chart and in JSON. */
#define EVENINGS_SHOWN 14

/* One sentence after the other, taken into the document. */
struct page {
	struct ts_document *doc;
	struct ts_text text;
};

static const char *number(struct page *p, double value, int decimals)
{
	ts_text_number_short(&p->text, value, decimals);
	return ts_doc_take(p->doc, &p->text);
}

/* "0.25": two decimals, three where the figure is small. */
static int amount_decimals(double meq_l)
{
	return fabs(meq_l) < 0.1 ? 3 : 2;
}

static void put_ph(struct page *p, double ph)
{
	ts_text_number(&p->text, ph, 1);
}

static const char *gas_cell(struct page *p, const struct ts_titrate_step_result *s)
{
	ts_text_number(&p->text, s->co2_mg_l, 0);
	if (s->co2 != ts_co2_words[TS_CO2_BORNE])
		ts_text_puts(&p->text, " ", s->co2, NULL);
	return ts_doc_take(p->doc, &p->text);
}

static const char *ph_cell(struct page *p, double ph)
{
	put_ph(p, ph);
	return ts_doc_take(p->doc, &p->text);
}

static const char *kh_cell(struct page *p, const struct ts_titrate_step_result *s)
{
	if (s->alkalinity_meq_l <= 0)
		return "none";
	ts_text_number(&p->text, s->kh_dh, 1);
	return ts_doc_take(p->doc, &p->text);
}

static void steps_table(struct page *p, const struct ts_titrate_result *r, bool base)
{
	struct ts_node *table = ts_doc_table(p->doc);

	ts_doc_line(p->doc, table, base ? "KH" : "KH left", "pH at once", "CO2 mg/L", "pH aired",
		"pH in air", base ? "base meq/L" : "acid meq/L", NULL);
	for (size_t i = 0; i < r->step_count; i++) {
		const struct ts_titrate_step_result *s = &r->steps[i];

		ts_doc_line(p->doc, table, kh_cell(p, s), ph_cell(p, s->ph_closed), gas_cell(p, s),
			ph_cell(p, s->ph_tank), ph_cell(p, s->ph_air),
			number(p, fabs(s->acid_meq_l), amount_decimals(r->steps[1].acid_meq_l)),
			NULL);
	}
}

/* One chart: `count` series of `n` points, from the arrays behind `x`. A mark that is NAN is none.
 */
struct chart {
	const char *title, *x_label, *y_label, *mark_lead, *mark_unit, *mark_says;
	const char *names[2];
	enum ts_hue hues[2];
	double mark;
	int y_decimals;
};

static void draw(struct page *p, const struct chart *c, const double *x, const double *y, size_t n)
{
	struct ts_arena *arena = p->doc->arena;
	size_t count = c->names[1] ? 2 : 1;
	struct ts_series *series = ts_arena_array(arena, 2, sizeof *series);
	struct ts_curve_mark *mark = ts_arena_take(arena, sizeof *mark);
	struct ts_curve *curve = ts_arena_take(arena, sizeof *curve);

	if (!series || !mark || !curve)
		return;
	for (size_t i = 0; i < count; i++)
		series[i] = (struct ts_series){c->names[i], x, y + i * n, n, c->hues[i]};
	*mark = (struct ts_curve_mark){c->mark, c->mark_says};
	*curve = (struct ts_curve){c->title, c->x_label, c->y_label, 1, c->y_decimals, series,
		count, mark, isnan(c->mark) ? 0u : 1u, c->mark_lead, c->mark_unit};
	ts_doc_curve(p->doc, curve);
}

/* The two pH lines over what was dosed, and on pages the gas that it frees at once. */
static void steps_curve(struct page *p, const struct ts_titrate_result *r, bool base)
{
	struct chart chart = {
		.title = base ? "pH after so much strong base" : "pH after so much strong acid",
		.x_label = "dH of KH",
		.y_label = "pH",
		.mark_lead = "at ",
		.mark_unit = " dH of KH",
		.mark_says = "the buffer ends",
		.y_decimals = 1,
		.names = {"once the tank has aired", "at once"},
		.hues = {TS_HUE_PH, TS_HUE_NONE},
		.mark = base ? (double)NAN : ts_chem_dkh_from_meq_l(r->gone_acid_meq_l)};
	size_t n = r->line_count;
	double *x = ts_arena_array(p->doc->arena, 5 * n, sizeof *x);

	if (!x)
		return;
	for (size_t i = 0; i < n; i++) {
		x[i] = ts_chem_dkh_from_meq_l(fabs(r->line[i].acid_meq_l));
		x[n + i] = r->line[i].ph_tank;
		x[2 * n + i] = r->line[i].ph_closed;
		x[3 * n + i] = r->line[i].co2_mg_l;
		x[4 * n + i] = r->co2_danger_mg_l;
	}
	draw(p, &chart, x, x + n, n);
	if (base)
		return;
	chart.title = "CO2 that the acid frees at once";
	chart.y_label = "mg/L";
	chart.names[0] = "CO2 at once";
	chart.names[1] = "from here on a danger to fish";
	chart.hues[0] = TS_HUE_NONE;
	chart.y_decimals = 0;
	ts_doc_medium(p->doc, TS_ON_PAGES);
	draw(p, &chart, x, x + 3 * n, n);
	ts_doc_medium(p->doc, TS_EVERYWHERE);
}

static const struct ts_titrate_night_result *first_of(const struct ts_titrate_keeper_result *k)
{
	return &k->nights[0];
}

static void nights_table(struct page *p, const struct ts_titrate_keeper_result *k)
{
	struct ts_node *table = ts_doc_table(p->doc);

	ts_doc_line(p->doc, table, "evening", first_of(k)->dose_meq_l < 0 ? "KH" : "KH left",
		"pH at once", "CO2 mg/L", "pH by morning",
		first_of(k)->dose_meq_l < 0 ? "base meq/L" : "acid meq/L", NULL);
	for (size_t i = 0; i < k->count && i < EVENINGS_SHOWN; i++) {
		const struct ts_titrate_night_result *n = &k->nights[i];

		ts_doc_line(p->doc, table, number(p, n->day, 0), kh_cell(p, &n->evening),
			ph_cell(p, n->evening.ph_closed), gas_cell(p, &n->evening),
			ph_cell(p, n->evening.ph_tank),
			number(p, fabs(n->dose_meq_l), amount_decimals(n->dose_meq_l)), NULL);
	}
}

/* Evening and morning; on pages the KH that pays for it, too. */
static void nights_curve(struct page *p, const struct ts_titrate_result *r)
{
	const struct ts_titrate_keeper_result *k = &r->nightly->same_dose;
	struct chart chart = {.title = "The same dose every evening",
		.x_label = "evening, mornings at .5",
		.y_label = "pH",
		.mark_lead = "on evening ",
		.mark_unit = "",
		.mark_says = "the buffer is gone",
		.y_decimals = 1,
		.names = {"pH, evening and morning"},
		.hues = {TS_HUE_PH},
		.mark = k->gone_day};
	size_t n = 2 * k->count + 1;
	double *x = ts_arena_array(p->doc->arena, 3 * n, sizeof *x);

	if (!x)
		return;
	x[0] = 0.5;
	x[n] = r->nightly->ph_start;
	x[2 * n] = r->kh_dh;
	for (size_t i = 0; i < k->count; i++) {
		const struct ts_titrate_step_result *s = &k->nights[i].evening;

		x[2 * i + 1] = k->nights[i].day;
		x[2 * i + 2] = k->nights[i].day + 0.5;
		x[n + 2 * i + 1] = s->ph_closed;
		x[n + 2 * i + 2] = s->ph_tank;
		x[2 * n + 2 * i + 1] = x[2 * n + 2 * i + 2] = s->kh_dh;
	}
	draw(p, &chart, x, x + n, n);
	chart.title = "What is left of the buffer";
	chart.y_label = "KH, dH";
	chart.names[0] = "KH left, dH";
	chart.hues[0] = TS_HUE_KH;
	ts_doc_medium(p->doc, TS_ON_PAGES);
	draw(p, &chart, x, x + 2 * n, n);
	ts_doc_medium(p->doc, TS_EVERYWHERE);
}

void ts_show_titrate(struct ts_document *doc, const struct ts_titrate_result *r)
{
	struct page p = {.doc = doc};
	struct ts_node *facts;

	ts_text_open(&p.text, &doc->arena->allocator);
	ts_doc_verdict(doc, r->headline, r->decides);
	if (!r->cannot && doc->brief) {
		ts_doc_paragraph(doc, r->instead);
		ts_doc_paragraph(doc, ts_caution_acid_short);
	} else if (!r->cannot) {
		if (r->nightly) {
			nights_table(&p, &r->nightly->same_dose);
			nights_curve(&p, r);
		} else {
			steps_table(&p, r, r->base);
			steps_curve(&p, r, r->base);
		}
		if (r->instead)
			ts_doc_paragraph(doc, r->instead);
		for (size_t i = 0; i < r->explains.count; i++)
			ts_doc_paragraph(doc, r->explains.items[i]);
		facts = ts_doc_facts(doc, 0);
		ts_doc_line(doc, facts, "Water", r->water_says, NULL);
		ts_doc_line(doc, facts, "Airs", r->airs_says, NULL);
		ts_doc_caution(doc, r->caution);
	}
	ts_doc_see(doc, ts_guide_chasing);
	doc->arena->failed |= p.text.failed;
	ts_text_drop(&p.text);
}
