/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Breathing goes with mass^0.8, oxygen through a still surface by its film, warmth through panes
 * by the difference: each an exponential with one time constant.
 */
#include "care/lasts.h"

#include <math.h>

#include "base/number.h"
#include "chem/ammonia.h"
#include "chem/nitrogen.h"
#include "chem/oxygen.h"

/*
 * Bony fishes at rest: ln of mmol O2 an hour = -5.43 + 0.80 ln of mass in g, at 15 C, and 1.83
 * times as much 10 C warmer between kinds (Clarke & Johnston 1999, J. Anim. Ecol. 68:893-905,
 * recalled and not re-checked). Who swims, eats or is alarmed takes more: estimate from memory.
 */
#define REST_MG_H 0.140
#define REST_POWER 0.80
#define REST_C 15.0
#define WARMER_TIMES 1.83
static const double awake[] = {1.3, 2, 3};
/* How much of the feed's nitrogen bacteria of bed and panes go on with: estimate from memory. */
static const double in_bed[] = {0, 0.5, 1};

/*
 * Gas through the film of a still surface, m/h: 0.02 at no wind (Cole & Caraco 1998, Limnol.
 * Oceanogr. 43:647-656, for lakes, recalled and not re-checked); around it an estimate from memory,
 * least under a lid and a skin of dust. Least first: `low` of an answer is the worst.
 */
static const double film_m_h[] = {0.005, 0.02, 0.03};
#define BEGIN_SHARE 0.9

/* W through a square metre of pane or surface for a degree, covered: estimate from memory. It comes
 * to the trade's watt a litre for ten degrees. */
static const double pane_w[] = {9, 6, 4};
/* Warmth that a litre gives for a degree, Wh. */
#define WATER_WH 1.163

/* Who eats nothing gives off about so much of what the feed would: estimate from memory. */
#define UNFED_SHARE 0.25
#define PH_NOT_READ 8.0
#define CHANGE_MOST 50.0
#define HOURS_OF_DAY 24

void ts_breathing_mg_h(const struct ts_breathing *b, struct ts_estimate *ret)
{
	double rest = 0;
	double bed = -ts_chem_nitrogen_o2_mg(TS_NITRITATION, b->nitrogen_mg_day / HOURS_OF_DAY) -
		     ts_chem_nitrogen_o2_mg(TS_NITRATATION, b->nitrogen_mg_day / HOURS_OF_DAY);

	for (size_t i = 0; i < b->count; i++) {
		const struct ts_group *g = &b->groups[i];
		double cm = g->size_cm > 0 ? g->size_cm : g->species->adult_length_cm;

		rest += ts_group_count(g) * REST_MG_H *
			ts_power(ts_mass_g(g->species, cm), REST_POWER);
	}
	rest *= ts_power(WARMER_TIMES, (b->temp_c - REST_C) / 10);
	*ret = (struct ts_estimate){rest * awake[0] + bed * in_bed[0],
		rest * awake[1] + bed * in_bed[1], rest * awake[2] + bed * in_bed[2]};
}

static double natural_log(double value)
{
	return ts_log2(value) * 0.69314718055994531;
}

/* dC/dt = film (full - C) / depth - breathing / volume. */
static double hours_to(const struct ts_still_water *w, double full, double breathing, double film,
	double begin, double least)
{
	double in = film * w->surface_m2 * 1000 / w->net_l; /* of the difference, an hour */
	double out = breathing / w->net_l, rests;

	if (begin <= least)
		return 0;
	if (!(in > 0))
		return out > 0 ? (begin - least) / out : (double)INFINITY;
	rests = full - out / in; /* where it comes to rest */
	return rests >= least ? (double)INFINITY
			      : natural_log((begin - rests) / (least - rests)) / in;
}

enum ts_status ts_oxygen_lasts_h(const struct ts_still_water *w,
	const struct ts_estimate *breathing, double least, struct ts_estimate *ret)
{
	double full, begin;

	if (!(w->net_l > 0) || !(breathing->high >= 0) ||
		ts_chem_oxygen_saturation_mg_l(w->temp_c, 0, &full) != TS_OK)
		return TS_BAD_INPUT;
	begin = isnan(w->oxygen_mg_l) ? BEGIN_SHARE * full : w->oxygen_mg_l;
	ret->low = hours_to(w, full, breathing->high, film_m_h[0], begin, least);
	ret->value = hours_to(w, full, breathing->value, film_m_h[1], begin, least);
	ret->high = hours_to(w, full, breathing->low, film_m_h[2], begin, least);
	return TS_OK;
}

double ts_tank_panes_m2(double length_cm, double width_cm, double height_cm)
{
	return 2 * (length_cm * width_cm + length_cm * height_cm + width_cm * height_cm) / 10000;
}

void ts_warmth_lasts_h(double net_l, double panes_m2, double from_c, double to_c, double room_c,
	struct ts_estimate *ret)
{
	double *to[] = {&ret->low, &ret->value, &ret->high};
	bool reaches = (from_c - to_c) * (to_c - room_c) > 0;

	for (int i = 0; i < 3; i++) {
		double hours = WATER_WH * net_l / (pane_w[i] * panes_m2);

		*to[i] = !reaches || !(panes_m2 > 0)
				 ? (double)INFINITY
				 : hours * natural_log((from_c - room_c) / (to_c - room_c));
	}
}

void ts_unfiltered_lasts(const struct ts_unfiltered *t, const struct ts_practice *practice,
	struct ts_unfiltered_lasts *ret)
{
	double ph = isnan(t->ph) ? PH_NOT_READ : t->ph, share, ccc;
	double epa_ph = fmin(fmax(ph, TS_CHEM_EPA_PH_LOW), TS_CHEM_EPA_PH_HIGH);
	double rise = t->nitrogen_mg_day / t->net_l, now = fmax(t->tan_mg_l, 0), half;

	ret->limit_tan_mg_l = practice->value[TS_P_TAN_DANGER];
	if (ts_chem_nh3_fraction(ph, t->temp_c, &share) == TS_OK)
		ret->limit_tan_mg_l = practice->value[TS_P_NH3_CONFLICT] / share;
	if (ts_chem_ammonia_ccc_mg_l(epa_ph, fmin(t->temp_c, TS_CHEM_EPA_TEMP_HIGH_C), &ccc) ==
		TS_OK)
		ret->limit_tan_mg_l = fmin(ret->limit_tan_mg_l, ccc);
	ret->fed_days = rise > 0 ? fmax(0, ret->limit_tan_mg_l - now) / rise : (double)INFINITY;
	ret->unfed_days = ret->fed_days / UNFED_SHARE;
	half = ret->limit_tan_mg_l / 2;
	/* What comes in a day is what a change takes out of half the limit. */
	ret->change_percent = fmin(CHANGE_MOST, 100 * UNFED_SHARE * rise / half);
}

double ts_carrying_l(double mass_g, double hours)
{
	double g_in_a_litre = hours <= 3 ? 20 : hours <= 8 ? 10 : 5;

	return fmax(1, mass_g / g_in_a_litre);
}
