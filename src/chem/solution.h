/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A water as chemistry sees it: temperature, dissolved ions, alkalinity, inorganic carbon. All
 * members are conserved when waters mix; pH is not and is therefore no member (carbonate.h
 * computes it). A litre of water is taken as a kilogram: the error is below 0.6 % at 35 C.
 */
#ifndef TS_CHEM_SOLUTION_H
#define TS_CHEM_SOLUTION_H

#include <stddef.h>

#include "tapshoal/base.h"

/* The range in which the equations hold; anything outside is refused with TS_BAD_INPUT. */
#define TS_CHEM_TEMP_LOW_C 0.0
#define TS_CHEM_TEMP_HIGH_C 50.0
#define TS_CHEM_ION_HIGH_MMOL_L 100.0
#define TS_CHEM_ALK_LOW_MEQ_L (-20.0)
#define TS_CHEM_ALK_HIGH_MEQ_L 60.0
#define TS_CHEM_DIC_HIGH_MMOL_L 150.0

/*
 * A water. Not known is 0 for an ion (it is not counted); alkalinity counts carbonate, hydroxide
 * and acid only, negative = strong acid left over. `dic_mmol_l` is CO2 + bicarbonate +
 * carbonate; functions that do not need it ignore it.
 */
struct ts_solution {
	double temp_c;
	double ca_mmol_l, mg_mmol_l, na_mmol_l, k_mmol_l, cl_mmol_l, so4_mmol_l, no3_mmol_l;
	double alk_meq_l;
	double dic_mmol_l;
};

/*
 * A plausible water from general and carbonate hardness alone, both in dH, 0..100, at temp_c.
 * Assumed: Ca and Mg 3 to 1 by mole (5 to 1 by mass: common practice, no source; the public
 * supplies of tests/checks lie at 2.5 to 3.3). Charge is balanced with sodium where the
 * alkalinity exceeds the hardness, else half chloride, half sulphate by charge (estimate from
 * memory). Inorganic carbon as at four times the CO2 of air. TS_BAD_INPUT outside the ranges.
 */
TS_MUST_USE enum ts_status ts_solution_from_hardness(
	double gh_dh, double kh_dh, double temp_c, struct ts_solution *ret);

/*
 * The water that `n` waters make, each in parts[i] (litres or fractions, >= 0, their sum > 0).
 * Every member, temperature too, is the average weighted by volume. Without any part (n 0, or
 * sum 0) `ret` is left as it was. `ret` may be one of the waters.
 */
void ts_chem_mix(const struct ts_solution *const *waters, const double *parts, size_t n,
	struct ts_solution *ret);

/* TS_OK when every member is a number inside the ranges above, else TS_BAD_INPUT. */
TS_MUST_USE enum ts_status ts_solution_check(const struct ts_solution *s);

/* Charge of the cations and of the anions (alkalinity included), meq/L. */
double ts_chem_cations_meq_l(const struct ts_solution *s);
double ts_chem_anions_meq_l(const struct ts_solution *s);
/*
 * How far an analysis misses neutrality: 100 (cations - anions) / (cations + anions), in
 * percent; 0 for a water without ions.
 */
double ts_chem_charge_error_percent(const struct ts_solution *s);

#endif
