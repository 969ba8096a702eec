/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Equilibrium constants of the carbonate system as functions of temperature. They cost more than
 * a solve, so callers that stay at one temperature hold a struct ts_chem_constants and let
 * ts_chem_constants_at() refill it only when the temperature changes. speciation.h uses them.
 */
#ifndef TS_CHEM_CONSTANTS_H
#define TS_CHEM_CONSTANTS_H

#include <stdbool.h>

/* Minerals a tank's gravel or rock may be made of. */
enum ts_mineral { TS_CALCITE, TS_ARAGONITE, TS_MINERAL__COUNT };

/*
 * The constants at one temperature, molar (not log10), at zero ionic strength. Zeroed memory is
 * a valid empty cache.
 */
struct ts_chem_constants {
	double temp_c; /* what the rest holds for, once `filled` */
	bool filled;
	double kh;                         /* CO2(gas) = CO2(aq), mol/(L atm) */
	double k1, inverse_k1, k2;         /* CO2 + H2O = H + HCO3; HCO3 = H + CO3 */
	double kw;                         /* H2O = H + OH */
	double mineral[TS_MINERAL__COUNT]; /* solubility products, = Ca + CO3 */
	double ca_hco3, ca_co3, mg_hco3, mg_co3, ca_so4, mg_so4; /* formation of ion pairs */
	double dh_a; /* Debye-Hueckel A, (kg/mol)^0.5, for log10 */
};

/*
 * Fills `cache` for temp_c (C; outside 0..50 the nearest end is taken), or leaves it alone when
 * it holds for temp_c already. The sources of each equation stand beside it in constants.c.
 */
void ts_chem_constants_at(struct ts_chem_constants *cache, double temp_c);

#endif
