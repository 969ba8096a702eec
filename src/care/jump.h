/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One large change of water, looked at before anybody makes it.
 */
#ifndef TS_CARE_JUMP_H
#define TS_CARE_JUMP_H

#include "stock/drift.h"

/* What a change of `share` of the water would do on one day to animals used to the old water. */
struct ts_drift_jump {
	double share;                                                         /* 0..1 */
	double gh_dh[2], kh_dh[2], ph[2], conductivity_us_cm[2], no3_mg_l[2]; /* before, after */
	double nh3_n_mg_l[2]; /* un-ionised ammonia as N; NAN: ammonia not measured */
	bool safe_step;       /* within what ordinary animals bear at once */
};

/*
 * What changing `share` of the water (temperatures alike) would do today; pH is the aired tank's.
 * `tan_known` false: ammonia was not measured.
 */
TS_MUST_USE enum ts_status ts_drift_jump(const struct ts_drift_tank *tank, double share,
	bool tan_known, const struct ts_practice *practice, struct ts_drift_jump *ret);

#endif
