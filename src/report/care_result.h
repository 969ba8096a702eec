/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What titrate and drift tell to programs: plain result structs and the rows from which their JSON
 * and schemas are walked. NAN is null. The commands fill them.
 */
#ifndef TS_REPORT_CARE_RESULT_H
#define TS_REPORT_CARE_RESULT_H

#include "report/result.h"

struct ts_titrate_step_result {
	double acid_meq_l, alkalinity_meq_l, kh_dh, ph_closed, co2_mg_l, ph_tank, ph_air;
	const char *co2;
};

struct ts_titrate_night_result {
	double day, dose_meq_l;
	struct ts_titrate_step_result evening;
};

struct ts_titrate_keeper_result {
	double dose_first_meq_l, floor_day, gone_day;
	struct ts_titrate_night_result *nights;
	size_t count;
};

struct ts_titrate_nightly_result {
	double towards_ph, ph_start;
	struct ts_titrate_keeper_result same_dose, by_test;
};

struct ts_titrate_result {
	const char *name;
	double kept_age_days;
	double ph, gh_dh, kh_dh, alkalinity_meq_l, temp_c, tank_co2_times_air;
	struct ts_titrate_step_result *steps;
	size_t step_count;
	double floor_acid_meq_l, gone_acid_meq_l;
	struct ts_titrate_nightly_result *nightly;
	const char *cannot; /* why there is no curve; NULL: there is one */
	const char *caution;
};

extern const struct ts_result_shape ts_result_titrate;

#endif
