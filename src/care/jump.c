/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The tank before and after the change, as its animals meet it.
 */
#include "care/jump.h"

#include "care/stages.h"
#include "chem/ammonia.h"
#include "chem/ions.h"
#include "chem/nitrogen.h"

static enum ts_status read_jump(const struct ts_drift_tank *t, const struct ts_practice *practice,
	bool tan_known, int side, struct ts_drift_jump *jump)
{
	struct ts_drift d;
	struct ts_drift_day day;
	double nh3;
	enum ts_status status = ts_drift_open(t, practice, &d);

	if (status != TS_OK)
		return status;
	ts_drift_read(&d, true, &day);
	jump->gh_dh[side] = day.gh_dh;
	jump->kh_dh[side] = day.kh_dh;
	jump->ph[side] = ts_drift_ph(&d);
	jump->conductivity_us_cm[side] = day.conductivity_us_cm;
	jump->no3_mg_l[side] = day.no3_mg_l;
	jump->nh3_n_mg_l[side] = (double)NAN;
	if (tan_known && ts_chem_nh3_fraction(ts_drift_ph(&d), t->water.temp_c, &nh3) == TS_OK)
		jump->nh3_n_mg_l[side] = nh3 * day.tan_mg_l;
	return TS_OK;
}

static bool bears_step(const struct ts_drift_tank *from, const struct ts_drift_tank *to,
	const struct ts_practice *practice)
{
	struct ts_stage_water a, b;

	ts_stage_water_of(&from->water, from->tan_mmol_l * TS_WEIGHT_N, &a);
	ts_stage_water_of(&to->water, to->tan_mmol_l * TS_WEIGHT_N, &b);
	return ts_step_is_safe(&a, &b, TS_ORDINARY, practice);
}

enum ts_status ts_drift_jump(const struct ts_drift_tank *tank, double changed, bool tan_known,
	const struct ts_practice *practice, struct ts_drift_jump *ret)
{
	struct ts_drift_jump jump = {.share = changed};
	struct ts_drift_tank after = *tank;
	enum ts_status status = changed >= 0 && changed <= 1 ? TS_OK : TS_BAD_INPUT;

	if (status == TS_OK)
		status = read_jump(tank, practice, tan_known, 0, &jump);
	if (status == TS_OK) {
		ts_drift_pour(&after, changed);
		status = read_jump(&after, practice, tan_known, 1, &jump);
	}
	if (status != TS_OK)
		return status;
	jump.safe_step = bears_step(tank, &after, practice);
	*ret = jump;
	return TS_OK;
}
