/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Class words for hardness. Every authority draws other lines ("moderately hard" is 61-120 mg/L
 * CaCO3 to one, 151-200 to another), so a class is never printed without its scale, and never
 * accepted as a value.
 */
#ifndef TS_CHEM_CLASSES_H
#define TS_CHEM_CLASSES_H

#include <stddef.h>

/* One class: from `above_mg_caco3_l` (exclusive; the lowest class starts at 0 and holds it). */
struct ts_hardness_class {
	double above_mg_caco3_l;
	const char *name;
};

struct ts_hardness_scale {
	const char *name, *source;
	struct ts_hardness_class classes[6];
	size_t count;
};

/* The scales; the first, of the US Geological Survey, is the one that answers use. */
extern const struct ts_hardness_scale ts_hardness_scales[];
extern const size_t ts_hardness_scale_count;

/* The class of a hardness (mmol/L of Ca + Mg) on a scale; NULL below 0 or for no number. */
const char *ts_hardness_class(const struct ts_hardness_scale *scale, double ca_plus_mg_mmol_l);

#endif
