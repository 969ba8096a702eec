/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The smallest tank that holds some animals.
 */
#ifndef TS_STOCK_SMALLEST_H
#define TS_STOCK_SMALLEST_H

#include <tapshoal/stock.h>

/* All 0: none was looked for, or none does. */
struct ts_smallest_tank {
	double length_cm, width_cm, height_cm, volume_l;
};

/*
 * Finds it; `like` says what else the tank offers (ground, lid, routine), `sensitive` that some
 * animal bears nitrate badly. What no room mends is left aside.
 */
void ts_smallest_tank(const struct ts_group *groups, size_t count, bool sensitive,
	const struct ts_tank *like, const struct ts_practice *practice,
	struct ts_smallest_tank *ret);

#endif
