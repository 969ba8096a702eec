/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Lime and water: how much calcite or aragonite a water dissolves or drops until it is saturated,
 * closed (nothing goes in or out) or open to a gas. The index itself is in carbonate.h. Balance
 * says where it ends, not how long it takes: weeks for gravel in a tank.
 *
 * Common to all: `constants` are those of the temperature of `s`.
 */
#ifndef TS_CHEM_MINERALS_H
#define TS_CHEM_MINERALS_H

#include "chem/constants.h"
#include "chem/solution.h"

/*
 * The water after CaCO3 has dissolved or fallen out, in a closed vessel, until the index is 0.
 * Needs s->dic_mmol_l. TS_NO when no amount within the range of the equations gets there;
 * TS_BAD_INPUT outside the ranges. `ret` may be `s`; untouched on failure.
 */
TS_MUST_USE enum ts_status ts_chem_saturate_closed(const struct ts_chem_constants *constants,
	const struct ts_solution *s, enum ts_mineral mineral, struct ts_solution *ret);

/* The same with dissolved CO2 held at a level (mmol/L, above 0); ret gets its dic_mmol_l. */
TS_MUST_USE enum ts_status ts_chem_saturate_open(const struct ts_chem_constants *constants,
	const struct ts_solution *s, enum ts_mineral mineral, double co2_mmol_l,
	struct ts_solution *ret);

/*
 * Calcium carbonate precipitation potential, closed, as calcite, mg/L CaCO3: above 0 it would
 * fall out, below 0 it would dissolve. The calcite-dissolving capacity that German laboratories
 * print is the same number with the other sign. Status as ts_chem_saturate_closed().
 */
TS_MUST_USE enum ts_status ts_chem_ccpp_mg_l(
	const struct ts_chem_constants *constants, const struct ts_solution *s, double *ret_mg_l);

#endif
