/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The gas of a running tank: how much CO2 it keeps beside what air would leave in it.
 */
#ifndef TS_WATER_GAS_H
#define TS_WATER_GAS_H

#include <tapshoal/profile.h>

#include "chem/solution.h"

/*
 * CO2 of a running tank, times that of air: where `own` is true (the readings are the tank's own)
 * and pH was read, the level that this pH shows (0.5..30 times); else TS_CHEM_TANK_CO2_USUAL.
 */
double ts_tank_co2_times_air(
	const struct ts_profile *profile, const struct ts_solution *s, bool own);

#endif
