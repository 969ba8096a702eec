/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How far the days to come may lie from the one course that is followed: the tank as it was read
 * may be another within the doubt of its readings, and so may what moves it.
 */
#ifndef TS_STOCK_BAND_H
#define TS_STOCK_BAND_H

#include "stock/waters.h"

/* Least and most of one day, before its change of water. */
struct ts_drift_band {
	struct ts_estimate gh_dh, kh_dh, no3_mg_l; /* `value`: of the course itself */
};

/*
 * `days` + 1 bands, that of today first, of waters whose drift is known. Its ends start where all
 * readings of the log together leave the tank (two deviations to either side), or else the last
 * one, and go on with the least and the most of what moves it.
 */
TS_MUST_USE enum ts_status ts_waters_bands(const struct ts_waters *waters, unsigned days,
	const struct ts_practice *practice, struct ts_drift_band *ret);

#endif
