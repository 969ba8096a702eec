/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Three courses: as read, and both ends.
 */
#include "stock/band.h"

#include <math.h>

static void widen(struct ts_estimate *e, double value, bool first)
{
	if (first)
		*e = (struct ts_estimate){value, value, value};
	e->low = fmin(e->low, value);
	e->high = fmax(e->high, value);
}

enum ts_status ts_waters_bands(const struct ts_waters *waters, unsigned days,
	const struct ts_practice *practice, struct ts_drift_band *ret)
{
	enum ts_status status = TS_OK;

	for (int run = 0; run < 3 && status == TS_OK; run++) {
		struct ts_drift_tank tank;
		struct ts_drift_day day;
		struct ts_drift d;

		ts_waters_run(waters, run, &tank);
		tank.filter_share = waters->drift.tank.filter_share;
		status = ts_drift_open(&tank, practice, &d);
		for (unsigned n = 0; n <= days && status == TS_OK; n++) {
			if (n)
				ts_drift_live(&d);
			ts_drift_read(&d, false, &day);
			widen(&ret[n].gh_dh, day.gh_dh, run == 0);
			widen(&ret[n].kh_dh, day.kh_dh, run == 0);
			widen(&ret[n].no3_mg_l, day.no3_mg_l, run == 0);
			ts_drift_change(&d);
		}
	}
	return status;
}
