/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The public way in: readings and plans to the waters that titrate.h and drift.h work on.
 */
#include <math.h>
#include <tapshoal/care.h>

#include "care/titrate.h"
#include "chem/carbonate.h"
#include "stock/plan_drift.h"
#include "water/analysis.h"
#include "water/gas.h"

/* A profile as a water with its tank's gas; `own` holds the table where no practice was given. */
struct opened {
	struct ts_practice own;
	const struct ts_practice *practice;
	struct ts_solution water;
	double times_air;
};

static enum ts_status open_profile(const struct ts_profile *profile, double temp_c, bool tank,
	const struct ts_practice *practice, struct opened *ret)
{
	unsigned assumed;
	enum ts_status status = ts_solution_from_profile(
		profile, isnan(temp_c) ? TS_TANK_TEMPERATURE_C : temp_c, &ret->water, &assumed);

	if (status != TS_OK)
		return status;
	ts_practice_defaults(&ret->own);
	ret->practice = practice ? practice : &ret->own;
	ret->times_air = ts_tank_co2_times_air(profile, &ret->water, tank);
	return ts_chem_dkh_from_meq_l(ret->water.alk_meq_l) < TS_CHEM_TANK_KH_LOW_DH ? TS_NO
										     : TS_OK;
}

enum ts_status ts_titration_steps(const struct ts_profile *profile, double temp_c, bool tank,
	double dose_meq_l, size_t count, const struct ts_practice *practice,
	struct ts_titration_step *ret_steps, size_t *ret_count)
{
	struct opened o;
	enum ts_status status = open_profile(profile, temp_c, tank, practice, &o);

	return status == TS_OK ? ts_titrate(&o.water, dose_meq_l, count, o.times_air, o.practice,
					 ret_steps, ret_count)
			       : status;
}

enum ts_status ts_titration_evenings(const struct ts_profile *profile, double temp_c, bool tank,
	double towards_ph, enum ts_titration_keeper keeper, const struct ts_practice *practice,
	struct ts_titration_nights *ret)
{
	struct opened o;
	enum ts_status status = open_profile(profile, temp_c, tank, practice, &o);

	return status == TS_OK ? ts_titrate_nights(
					 &o.water, towards_ph, keeper, o.times_air, o.practice, ret)
			       : status;
}

enum ts_status ts_drift_days(const struct ts_plan *plan, long today, double nitrogen_mg_day,
	double plant_share, unsigned days, const struct ts_practice *practice,
	struct ts_drift_day *ret_days, unsigned *ret_gone_day)
{
	struct ts_plan_drift drift = {0};
	struct ts_now now;
	struct ts_practice own;
	double net_l = ts_tank_net_l(&plan->tank, practice);
	enum ts_status status;

	ts_practice_defaults(&own);
	if (!practice)
		practice = &own;
	if (!(net_l > 0))
		return TS_BAD_INPUT;
	ts_now_make(plan->tank.readings, plan->tank.reading_count, today, practice, &now);
	status = ts_plan_drift(plan, &now, today, nitrogen_mg_day / net_l / TS_WEIGHT_N,
		plant_share, practice, &drift);
	if (status == TS_OK && drift.assumed & TS_DRIFT_NO_KH)
		return TS_NO;
	return status == TS_OK ? ts_drift_run(&drift.tank, practice, days, ret_days, ret_gone_day)
			       : status;
}
