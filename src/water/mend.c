/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The arithmetic of one line. Masses come from the table of substances.
 */
#include "water/mend.h"

#include <math.h>

#include "chem/carbonate.h"
#include "chem/substances.h"
#include "water/analysis.h"

/* Mole of magnesium for each mole of hardness; nearest to natural soft water's (3 to 1). */
#define MG_SHARE 0.25
#define LITRES 100.0
/* Less than this, dH, no kit shows. */
#define NOTHING_DH 0.05

static double grams(const char *formula, double mmol_l)
{
	return ts_chem_substance_grams(ts_chem_substance(formula), mmol_l, LITRES);
}

/* The share of pure water that brings `now` down to `wish`; 0 where either is not known. */
static double thinned(double now, double wish)
{
	return now > wish + NOTHING_DH ? 1 - wish / now : 0;
}

static double missing(double have, double wish)
{
	return wish > have + NOTHING_DH ? wish - have : 0;
}

static void predict_ph(double temp_c, struct ts_mend *m)
{
	struct ts_solution s;
	double gh = isnan(m->gh_dh) ? m->kh_dh : m->gh_dh;

	m->ph_low = m->ph = m->ph_high = (double)NAN;
	if (isnan(m->kh_dh) ||
		ts_solution_from_hardness(gh, m->kh_dh,
			isnan(temp_c) ? TS_TANK_TEMPERATURE_C : temp_c, &s) != TS_OK ||
		ts_chem_tank_ph(&s, &m->ph_low, &m->ph, &m->ph_high) != TS_OK)
		m->ph_low = m->ph = m->ph_high = (double)NAN;
}

bool ts_mend_find(const struct ts_mend_wish *w, struct ts_mend *ret)
{
	struct ts_mend m = {0};
	double share = fmax(thinned(w->gh_dh, w->gh_wish_dh), thinned(w->kh_dh, w->kh_wish_dh));
	double gh, kh;

	m.pure_l = LITRES * share;
	m.gh_dh = w->gh_dh * (1 - share);
	m.kh_dh = w->kh_dh * (1 - share);
	gh = missing(m.gh_dh, w->gh_wish_dh);
	kh = missing(m.kh_dh, w->kh_wish_dh);
	m.bicarbonate_g = grams("NaHCO3", ts_chem_meq_l_from_dkh(kh));
	m.calcium_chloride_g = grams("CaCl2.2H2O", (1 - MG_SHARE) * ts_chem_mmol_l_from_dh(gh));
	m.epsom_g = grams("MgSO4.7H2O", MG_SHARE * ts_chem_mmol_l_from_dh(gh));
	m.gh_dh += gh;
	m.kh_dh += kh;
	predict_ph(w->temp_c, &m);
	*ret = m;
	return share > 0 || gh > 0 || kh > 0;
}
