/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The words, tables and charts of titrate.
 */
#include "cli/titrate.h"

#include <math.h>

#include "base/arena.h"
#include "chem/carbonate.h"
#include "water/analysis.h"
#include "words/care.h"

/* Lines of the table of evenings; all of them are in the chart and in JSON. */
#define EVENINGS_SHOWN 14

/* One sentence after the other, taken into the document. */
struct page {
	struct ts_document doc;
	struct ts_text text;
};

static const char *number(struct page *p, double value, int decimals)
{
	ts_text_number_short(&p->text, value, decimals);
	return ts_doc_take(&p->doc, &p->text);
}

static void paragraph(struct page *p)
{
	ts_doc_paragraph(&p->doc, ts_doc_take(&p->doc, &p->text));
}

/* "0.25": two decimals, three where the figure is small. */
static int amount_decimals(double meq_l)
{
	return fabs(meq_l) < 0.1 ? 3 : 2;
}

static void put_amount(struct page *p, double meq_l)
{
	ts_text_number_short(&p->text, fabs(meq_l), amount_decimals(meq_l));
	ts_text_put(&p->text, " meq/L");
}

/* "24 mg/L of CO2, a concern" */
static void put_gas(struct page *p, const struct ts_titrate_step_result *s)
{
	ts_text_number(&p->text, s->co2_mg_l, 0);
	ts_text_put(&p->text, " mg/L of CO2");
	if (s->co2 != ts_co2_words[TS_CO2_BORNE])
		ts_text_puts(&p->text, ", a ", s->co2, NULL);
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
	return ts_doc_take(&p->doc, &p->text);
}

static const char *ph_cell(struct page *p, double ph)
{
	put_ph(p, ph);
	return ts_doc_take(&p->doc, &p->text);
}

static const char *kh_cell(struct page *p, const struct ts_titrate_step_result *s)
{
	if (s->alkalinity_meq_l <= 0)
		return "none";
	ts_text_number(&p->text, s->kh_dh, 1);
	return ts_doc_take(&p->doc, &p->text);
}

static void steps_table(struct page *p, const struct ts_titrate_result *r, bool base)
{
	struct ts_node *table = ts_doc_table(&p->doc);

	ts_doc_line(&p->doc, table, base ? "base meq/L" : "acid meq/L", base ? "KH" : "KH left",
		"pH at once", "CO2 mg/L", "pH aired", "pH in air", NULL);
	for (size_t i = 0; i < r->step_count; i++) {
		const struct ts_titrate_step_result *s = &r->steps[i];

		ts_doc_line(&p->doc, table,
			number(p, fabs(s->acid_meq_l), amount_decimals(r->steps[1].acid_meq_l)),
			kh_cell(p, s), ph_cell(p, s->ph_closed), gas_cell(p, s),
			ph_cell(p, s->ph_tank), ph_cell(p, s->ph_air), NULL);
	}
}

/* The two pH lines over what was dosed, with the end of the buffer marked. */
static void steps_curve(struct page *p, const struct ts_titrate_result *r, bool base)
{
	struct ts_arena *arena = p->doc.arena;
	size_t n = r->step_count;
	double *x = ts_arena_array(arena, 3 * n, sizeof *x);
	struct ts_series *series = ts_arena_array(arena, 2, sizeof *series);
	struct ts_curve_mark *mark = ts_arena_take(arena, sizeof *mark);
	struct ts_curve *curve = ts_arena_take(arena, sizeof *curve);

	if (!x || !series || !mark || !curve)
		return;
	for (size_t i = 0; i < n; i++) {
		x[i] = fabs(r->steps[i].acid_meq_l);
		x[n + i] = r->steps[i].ph_tank;
		x[2 * n + i] = r->steps[i].ph_closed;
	}
	series[0] = (struct ts_series){"once the tank has aired", x, x + n, n, TS_HUE_PH};
	series[1] = (struct ts_series){"at once", x, x + 2 * n, n, TS_HUE_NONE};
	*mark = (struct ts_curve_mark){r->gone_acid_meq_l, "the buffer ends"};
	*curve = (struct ts_curve){base ? "pH after so much strong base"
					: "pH after so much "
					  "strong acid",
		"meq/L", "pH", 2, 1, series, 2, mark, base ? 0u : 1u, "at ", " meq/L"};
	ts_doc_curve(&p->doc, curve);
}

static void say_steps(struct page *p, const struct titration *t, const struct ts_titrate_result *r)
{
	struct ts_titration_step half;

	if (t->base) {
		ts_text_put(
			&p->text, "The air takes back what base does to the pH, and leaves the KH");
		ts_doc_verdict(&p->doc, ts_doc_take(&p->doc, &p->text), NULL);
	} else if (ts_titrate_step(&t->water, t->water.alk_meq_l / 2, t->times_air,
			   t->session->practice, &half) == TS_OK) {
		struct ts_titrate_step_result s = titrate_step_result(&half);
		const char *verdict;

		ts_text_put(
			&p->text, "Acid is taken up by the buffer until the buffer is gone: KH ");
		ts_text_number_short(&p->text, r->kh_dh, 1);
		ts_text_put(&p->text, " takes ");
		put_amount(p, r->gone_acid_meq_l);
		verdict = ts_doc_take(&p->doc, &p->text);
		ts_text_put(&p->text, "Half of it spent: pH ");
		put_ph(p, s.ph_closed);
		ts_text_put(&p->text, " at once, ");
		put_ph(p, s.ph_tank);
		ts_text_put(&p->text, " again when the gas has left; at once there are ");
		put_gas(p, &s);
		ts_doc_verdict(&p->doc, verdict, ts_doc_take(&p->doc, &p->text));
	}
	steps_table(p, r, t->base);
	steps_curve(p, r, t->base);
	ts_doc_paragraph(&p->doc, t->base ? "Base takes CO2 out of the water, so the pH jumps. "
					    "Within hours the air brings the "
					    "gas back and the pH falls again; what stays is a "
					    "higher KH. Raising KH with "
					    "minerals does the same without the jump."
					  : "Each meq/L of strong acid takes 2.8 dKH and frees up "
					    "to 44 mg/L of CO2. That gas, "
					    "not the acid, holds the pH down until it has left; "
					    "then the pH climbs back and "
					    "only the buffer is gone. Where the buffer ends, the "
					    "next drop counts in whole "
					    "units.");
}

static const struct ts_titrate_night_result *first_of(const struct ts_titrate_keeper_result *k)
{
	return &k->nights[0];
}

static void nights_table(struct page *p, const struct ts_titrate_keeper_result *k)
{
	struct ts_node *table = ts_doc_table(&p->doc);

	ts_doc_line(&p->doc, table, "evening",
		first_of(k)->dose_meq_l < 0 ? "base meq/L" : "acid meq/L", "pH at once", "CO2 mg/L",
		first_of(k)->dose_meq_l < 0 ? "KH" : "KH left", "pH by morning", NULL);
	for (size_t i = 0; i < k->count && i < EVENINGS_SHOWN; i++) {
		const struct ts_titrate_night_result *n = &k->nights[i];

		ts_doc_line(&p->doc, table, number(p, n->day, 0),
			number(p, fabs(n->dose_meq_l), amount_decimals(n->dose_meq_l)),
			ph_cell(p, n->evening.ph_closed), gas_cell(p, &n->evening),
			kh_cell(p, &n->evening), ph_cell(p, n->evening.ph_tank), NULL);
	}
}

/* The seesaw: evening and morning, with the KH that pays for it. */
static void nights_curve(struct page *p, const struct ts_titrate_result *r)
{
	const struct ts_titrate_keeper_result *k = &r->nightly->same_dose;
	struct ts_arena *arena = p->doc.arena;
	size_t n = 2 * k->count + 1;
	double *x = ts_arena_array(arena, 3 * n, sizeof *x);
	struct ts_series *series = ts_arena_array(arena, 2, sizeof *series);
	struct ts_curve_mark *mark = ts_arena_take(arena, sizeof *mark);
	struct ts_curve *curve = ts_arena_take(arena, sizeof *curve);

	if (!x || !series || !mark || !curve)
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
	series[0] = (struct ts_series){"KH left, dH", x, x + 2 * n, n, TS_HUE_KH};
	series[1] = (struct ts_series){"pH, evening and morning", x, x + n, n, TS_HUE_PH};
	*mark = (struct ts_curve_mark){k->gone_day, "the buffer is gone"};
	*curve = (struct ts_curve){"The same dose every evening", "evening, mornings at .5",
		"pH and KH", 1, 1, series, 2, mark, isnan(k->gone_day) ? 0u : 1u, "on evening ",
		""};
	ts_doc_curve(&p->doc, curve);
}

static void verdict_nights(struct page *p, const struct ts_titrate_result *r)
{
	const struct ts_titrate_keeper_result *k = &r->nightly->same_dose;
	const struct ts_titrate_night_result *first = first_of(k);
	const char *verdict;

	ts_text_put(&p->text, "Chasing pH ");
	ts_text_number_short(&p->text, r->nightly->towards_ph, 1);
	if (!isnan(k->gone_day)) {
		ts_text_put(&p->text, ": evening ");
		ts_text_number(&p->text, k->gone_day, 0);
		ts_text_put(&p->text, " finds no buffer left");
	} else {
		ts_text_put(&p->text, ": every morning takes it back");
	}
	verdict = ts_doc_take(&p->doc, &p->text);
	put_amount(p, first->dose_meq_l);
	ts_text_put(&p->text, first->dose_meq_l < 0 ? " of base an evening reads "
						    : " of acid an evening reads ");
	put_ph(p, first->evening.ph_closed);
	ts_text_put(&p->text, " at once, with ");
	put_gas(p, &first->evening);
	ts_text_put(&p->text, ", and ");
	put_ph(p, first->evening.ph_tank);
	ts_text_put(&p->text, " by morning; KH ");
	ts_text_number(&p->text, first->evening.kh_dh, 1);
	ts_text_put(&p->text, " after the first");
	ts_doc_verdict(&p->doc, verdict, ts_doc_take(&p->doc, &p->text));
}

/* Somebody who measures first: slower, and no better off. */
static void say_by_test(struct page *p, const struct ts_titrate_result *r)
{
	const struct ts_titrate_keeper_result *k = &r->nightly->by_test;
	const struct ts_titrate_step_result *end = &k->nights[k->count - 1].evening;

	if (first_of(k)->dose_meq_l < 0) {
		ts_text_put(&p->text, "Every night the air brings back the CO2 that the base took; "
				      "what is left of it all is KH ");
		ts_text_number(&p->text,
			r->nightly->same_dose.nights[r->nightly->same_dose.count - 1].evening.kh_dh,
			1);
		ts_text_put(&p->text, ", more with every evening.");
		paragraph(p);
		return;
	}
	ts_text_put(&p->text,
		"Dosed by test, only as much as it takes, the buffer lasts longer and ends at KH ");
	ts_text_number(&p->text, end->kh_dh, 1);
	ts_text_put(&p->text, ": only there does the aired tank stand at pH ");
	put_ph(p, end->ph_tank);
	ts_text_put(&p->text, " by itself");
	if (!isnan(k->floor_day)) {
		ts_text_put(&p->text, ". From evening ");
		ts_text_number(&p->text, k->floor_day, 0);
		ts_text_put(&p->text, " on nothing worth the name holds it there");
	}
	ts_text_put(&p->text, ".");
	paragraph(p);
}

static void say_nightly(struct page *p, const struct ts_titrate_result *r)
{
	verdict_nights(p, r);
	nights_table(p, &r->nightly->same_dose);
	nights_curve(p, r);
	ts_doc_paragraph(&p->doc,
		"Each evening the same dose as the first. The animals live through "
		"the jump and the gas every evening, and through the climb every "
		"night.");
	say_by_test(p, r);
}

static void say_sample(struct page *p, const struct titration *t, const struct ts_titrate_result *r)
{
	struct ts_node *facts = ts_doc_facts(&p->doc, 0);

	if (r->name)
		ts_text_puts(&p->text, r->name, ": ", NULL);
	ts_text_put(&p->text, "KH ");
	ts_text_number_short(&p->text, r->kh_dh, 1);
	if (!isnan(r->gh_dh)) {
		ts_text_put(&p->text, ", GH ");
		ts_text_number_short(&p->text, r->gh_dh, 1);
	}
	if (!isnan(r->ph)) {
		ts_text_put(&p->text, ", pH ");
		ts_text_number_short(&p->text, r->ph, 1);
	}
	ts_text_put(&p->text, ", ");
	ts_text_number_short(&p->text, r->temp_c, 1);
	ts_text_put(&p->text, " C");
	if (!t->answer.profile.at[TS_TEMPERATURE].given)
		ts_text_put(&p->text, " (assumed)");
	ts_doc_line(&p->doc, facts, "Water", ts_doc_take(&p->doc, &p->text), NULL);
	ts_text_put(&p->text, "to ");
	ts_text_number_short(&p->text, r->tank_co2_times_air, 1);
	ts_text_put(&p->text, " times the CO2 of air, ");
	ts_text_put(&p->text, r->tank_co2_times_air == TS_CHEM_TANK_CO2_USUAL
				      ? "as a usual tank does"
				      : "the level its own pH and KH show");
	ts_doc_line(&p->doc, facts, "Airs", ts_doc_take(&p->doc, &p->text), NULL);
}

void titrate_write(const struct titration *t, const struct ts_titrate_result *r)
{
	struct session *s = t->session;
	struct page p;

	ts_doc_open(&p.doc, s->arena, "Acid against this water");
	ts_text_open(&p.text, &s->arena->allocator);
	if (r->nightly)
		say_nightly(&p, r);
	else
		say_steps(&p, t, r);
	say_sample(&p, t, r);
	ts_doc_caution(&p.doc, ts_caution_acid);
	ts_doc_see(&p.doc, ts_guide_chasing);
	s->arena->failed |= p.text.failed;
	ts_text_drop(&p.text);
	session_write(s, &p.doc);
}
