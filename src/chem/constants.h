/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Equilibrium constants of the carbonate system as functions of temperature: a set of rows, and
 * the rows worked out for one temperature. That costs more than a solve, so callers that stay at
 * one temperature hold a struct ts_chem_constants and let ts_chem_constants_at() refill it only
 * when the temperature changes. The solver (speciation.h) takes the constants as data: a check
 * may hand it another set than the published one and so tell the equations from the constants.
 */
#ifndef TS_CHEM_CONSTANTS_H
#define TS_CHEM_CONSTANTS_H

#include <stddef.h>

/* Minerals a tank's gravel or rock may be made of. */
enum ts_mineral { TS_CALCITE, TS_ARAGONITE, TS_MINERAL__COUNT };

/* One constant: log10 K = a + b T + c/T + d log10 T + e/T^2 + f T^2, T in kelvin. */
struct ts_chem_constant {
	size_t offset; /* its place in struct ts_chem_constants: TS_CHEM_CONSTANT(k1) */
	const char *reaction;
	const char *source;
	double low_c, high_c; /* where it holds: by its source, or 0..50 C where that prints none */
	double a, b, c, d, e, f;
};

/*
 * Constants that belong together. It needs rows for kh, k1, k2, kw and the minerals; an ion pair
 * without a row does not exist.
 */
struct ts_chem_constant_set {
	const struct ts_chem_constant *rows;
	size_t n;
};

/* What every answer of the program rests on; the sources stand in its rows. */
extern const struct ts_chem_constant_set ts_chem_published;

/*
 * The constants at one temperature, molar (not log10), at zero ionic strength. Zeroed memory is
 * a valid empty cache.
 */
struct ts_chem_constants {
	const struct ts_chem_constant_set *set; /* NULL: nothing is filled in yet */
	double temp_c;                          /* what the rest holds for */
	double kh;                              /* CO2(gas) = CO2(aq), mol/(L atm) */
	double k1, inverse_k1, k2;              /* CO2 + H2O = H + HCO3; HCO3 = H + CO3 */
	double kw;                              /* H2O = H + OH */
	double mineral[TS_MINERAL__COUNT];      /* solubility products, = Ca + CO3 */
	double ca_hco3, ca_co3, mg_hco3, mg_co3, ca_so4, mg_so4; /* formation of ion pairs */
	double dh_a;      /* Debye-Hueckel A, (kg/mol)^0.5, for log10 */
	double dh_b_size; /* Debye-Hueckel B times the size of an ion, (kg/mol)^0.5 */
};

#define TS_CHEM_CONSTANT(member) offsetof(struct ts_chem_constants, member)

/*
 * Fills `cache` for temp_c (C; outside 0..50 the nearest end is taken), or leaves it alone when
 * it holds for the set and temp_c already. `set` must outlive the cache.
 */
void ts_chem_constants_of(
	struct ts_chem_constants *cache, const struct ts_chem_constant_set *set, double temp_c);
/* The same with the published set. */
void ts_chem_constants_at(struct ts_chem_constants *cache, double temp_c);

#endif
