/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the files of the fit: the readings that it is made of, with the doubt of each.
 */
#ifndef TS_STOCK_FIT_POINTS_H
#define TS_STOCK_FIT_POINTS_H

#include "stock/fit.h"

/* Readings of one value that count, the newest. */
#define TS_FIT_POINTS_MOST 128

/* One reading. `half`: of its interval; NAN: a share of the level. */
struct ts_fit_point {
	long day;
	int minutes; /* -1: no hour is told */
	double value, half, share;
};

struct ts_fit_points {
	struct ts_fit_point at[TS_FIT_POINTS_MOST]; /* in the order of their days */
	size_t count;
	bool usable; /* enough of them, through water that is known */
};

/* Those of the newest rate.days days (practice), or of the last two; `usable` is left. */
void ts_fit_points_take(const struct ts_fit_case *asked, enum ts_fit_what what,
	const struct ts_practice *practice, struct ts_fit_points *ret);

#endif
