/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings of a supply over years: works change their wells, and what was true then is no part of
 * what comes out of the tap. The newest of each figure counts, with all that was read within
 * thirteen months before it (a year's swing is lived through); what is older is told and not used.
 */
#ifndef TS_WATER_NEWEST_H
#define TS_WATER_NEWEST_H

#include <tapshoal/profile.h>

/* Older than a later reading by more: superseded. A year, and a month for the date of a report. */
#define TS_NEWEST_DAYS 400

/*
 * Reading `i` of the water without what later ones have superseded: the reading itself, or
 * `scratch` with those figures left out. Readings without a date, and a tank's, are never
 * superseded.
 */
const struct ts_reading *ts_reading_counted(
	const struct ts_water *water, size_t i, struct ts_reading *scratch);

#endif
