/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The geometry of a tank: litres and floor from its measures.
 */
#include <tapshoal/stock.h>

#include "model/practice.h"

double ts_tank_net_l(const struct ts_tank *tank, const struct ts_practice *practice)
{
	struct ts_practice own;
	double share;

	if (tank->volume_l > 0)
		return tank->volume_l;
	if (!(tank->length_cm > 0 && tank->width_cm > 0 && tank->height_cm > 0))
		return (double)NAN;
	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	share = tank->fill.value > 0
			? tank->fill.value / 100
			: practice->value[tank->fill.word == TS_FILL_ROCKS ? TS_P_TANK_NET_ROCKS
									   : TS_P_TANK_NET];
	return tank->length_cm * tank->width_cm * tank->height_cm / 1000 * share;
}

double ts_tank_floor_m2(const struct ts_tank *tank)
{
	if (!(tank->length_cm > 0 && tank->width_cm > 0))
		return (double)NAN;
	return tank->length_cm * tank->width_cm / 1e4;
}
