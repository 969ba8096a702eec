/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What can be dissolved in a water: salts with their hydrates, lime, strong acids and bases, as
 * rows. Which of them a recipe may use, and how much, is the care room's decision; acids and
 * bases stand here so that `titrate` can show what they would do.
 */
#ifndef TS_CHEM_SUBSTANCES_H
#define TS_CHEM_SUBSTANCES_H

#include "chem/ions.h"
#include "chem/solution.h"

enum ts_substance_kind { TS_SALT, TS_LIME, TS_ACID, TS_BASE };

/* One substance; amounts per mole of the formula as weighed, crystal water included. */
struct ts_substance {
	const char *formula; /* "CaCl2.2H2O" */
	const char *name;    /* the chemical name */
	enum ts_substance_kind kind;
	double molar_mass;                /* g/mol, from the atomic weights of ions.h */
	double ions[TS_ION__IN_SOLUTION]; /* mol, in the order of enum ts_ion_id */
	double alk_eq, carbon_mol;
};

/* The rows, sorted by formula, and their number. */
extern const struct ts_substance ts_substances[];
extern const size_t ts_substance_count;

/* The row with this formula, exactly as written; NULL when there is none. */
const struct ts_substance *ts_chem_substance(const char *formula);

/*
 * The water after `mmol_l` (>= 0) of the substance has dissolved whole in it. Lime dissolves only
 * with CO2 (minerals.h): here it is taken as gone. `ret` may be `s`. No range is checked.
 */
void ts_chem_dissolve(const struct ts_solution *s, const struct ts_substance *substance,
	double mmol_l, struct ts_solution *ret);

/* Grams in a volume of litres to mmol/L and back; litres above 0. */
double ts_chem_substance_mmol_l(const struct ts_substance *substance, double grams, double litres);
double ts_chem_substance_grams(const struct ts_substance *substance, double mmol_l, double litres);

#endif
