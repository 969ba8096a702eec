/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What can be said of a water without solving an equilibrium: checking, mixing, charge, and a
 * guess at the ions behind two hardness numbers. The ion members are read through ion_of(), so
 * that each ion-wise sum is a loop over the table of ions.h.
 */
#include "chem/solution.h"

#include <math.h>

#include "chem/carbonate.h"
#include "chem/hardness.h"
#include "chem/ions.h"

/* Mole of magnesium for each mole of hardness when only GH is known. */
#define MG_SHARE_GUESS 0.25
/* Share of the missing anion charge that is guessed to be sulphate. */
#define SO4_SHARE_GUESS 0.5
/* CO2 of a running tank, times air (estimate from memory, see ts_chem_tank_ph). */
#define TANK_CO2_TIMES_AIR 4.0

static double ion_of(const struct ts_solution *s, enum ts_ion_id ion)
{
	const double members[TS_ION__IN_SOLUTION] = {s->ca_mmol_l, s->mg_mmol_l, s->na_mmol_l,
		s->k_mmol_l, s->cl_mmol_l, s->so4_mmol_l, s->no3_mmol_l};

	return members[ion];
}

/* False for a NaN as well. */
static bool inside(double value, double low, double high)
{
	return value >= low && value <= high;
}

static bool inside_ion(double mmol_l)
{
	return inside(mmol_l, 0, TS_CHEM_ION_HIGH_MMOL_L);
}

enum ts_status ts_solution_check(const struct ts_solution *s)
{
	bool good = inside(s->temp_c, TS_CHEM_TEMP_LOW_C, TS_CHEM_TEMP_HIGH_C) &&
		    inside(s->alk_meq_l, TS_CHEM_ALK_LOW_MEQ_L, TS_CHEM_ALK_HIGH_MEQ_L) &&
		    inside(s->dic_mmol_l, 0, TS_CHEM_DIC_HIGH_MMOL_L) && inside_ion(s->ca_mmol_l) &&
		    inside_ion(s->mg_mmol_l) && inside_ion(s->na_mmol_l) &&
		    inside_ion(s->k_mmol_l) && inside_ion(s->cl_mmol_l) &&
		    inside_ion(s->so4_mmol_l) && inside_ion(s->no3_mmol_l);

	return good ? TS_OK : TS_BAD_INPUT;
}

double ts_chem_cations_meq_l(const struct ts_solution *s)
{
	double sum = s->alk_meq_l < 0 ? -s->alk_meq_l : 0;

	for (int ion = 0; ion < TS_ION__IN_SOLUTION; ion++)
		sum += fmax(ts_ions[ion].charge, 0) * ion_of(s, (enum ts_ion_id)ion);
	return sum;
}

double ts_chem_anions_meq_l(const struct ts_solution *s)
{
	double sum = s->alk_meq_l > 0 ? s->alk_meq_l : 0;

	for (int ion = 0; ion < TS_ION__IN_SOLUTION; ion++)
		sum += fmax(-ts_ions[ion].charge, 0) * ion_of(s, (enum ts_ion_id)ion);
	return sum;
}

double ts_chem_charge_error_percent(const struct ts_solution *s)
{
	double cations = ts_chem_cations_meq_l(s), anions = ts_chem_anions_meq_l(s);

	return cations + anions > 0 ? 100 * (cations - anions) / (cations + anions) : 0;
}

static void add_part(struct ts_solution *sum, const struct ts_solution *s, double share)
{
	sum->temp_c += share * s->temp_c;
	sum->ca_mmol_l += share * s->ca_mmol_l;
	sum->mg_mmol_l += share * s->mg_mmol_l;
	sum->na_mmol_l += share * s->na_mmol_l;
	sum->k_mmol_l += share * s->k_mmol_l;
	sum->cl_mmol_l += share * s->cl_mmol_l;
	sum->so4_mmol_l += share * s->so4_mmol_l;
	sum->no3_mmol_l += share * s->no3_mmol_l;
	sum->alk_meq_l += share * s->alk_meq_l;
	sum->dic_mmol_l += share * s->dic_mmol_l;
}

void ts_chem_mix(const struct ts_solution *const *waters, const double *parts, size_t n,
	struct ts_solution *ret)
{
	struct ts_solution sum = {0};
	double whole = 0;

	for (size_t i = 0; i < n; i++)
		whole += parts[i];
	if (!(whole > 0))
		return;
	for (size_t i = 0; i < n; i++)
		add_part(&sum, waters[i], parts[i] / whole);
	*ret = sum;
}

enum ts_status ts_solution_from_hardness(
	double gh_dh, double kh_dh, double temp_c, struct ts_solution *ret)
{
	struct ts_solution s = {.temp_c = temp_c};
	double hardness, missing, ph, co2;
	enum ts_status status;

	if (!inside(gh_dh, 0, 100) || !inside(kh_dh, 0, 100) ||
		!inside(temp_c, TS_CHEM_TEMP_LOW_C, TS_CHEM_TEMP_HIGH_C))
		return TS_BAD_INPUT;
	hardness = ts_chem_mmol_l_from_dh(gh_dh);
	s.alk_meq_l = ts_chem_meq_l_from_dkh(kh_dh);
	s.ca_mmol_l = (1 - MG_SHARE_GUESS) * hardness;
	s.mg_mmol_l = MG_SHARE_GUESS * hardness;
	missing = 2 * hardness - s.alk_meq_l;
	if (missing < 0) {
		s.na_mmol_l = -missing;
	} else {
		s.so4_mmol_l = SO4_SHARE_GUESS * missing / 2;
		s.cl_mmol_l = (1 - SO4_SHARE_GUESS) * missing;
	}
	co2 = TANK_CO2_TIMES_AIR * ts_chem_air_co2_mmol_l(temp_c);
	status = ts_chem_ph_at_co2(&s, co2, &ph);
	if (status == TS_OK)
		status = ts_chem_dic_from_ph(&s, ph, &s.dic_mmol_l);
	if (status == TS_OK)
		*ret = s;
	return status;
}
