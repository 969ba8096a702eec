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

struct ts_drift_day_result {
	double day, kh_dh, gh_dh, ph, ph_low, ph_high, tan_mg_l, no3_mg_l, conductivity_us_cm;
	bool filter_doubtful, change_due;
};

struct ts_drift_level_result {
	double before_change, after_change;
};

struct ts_drift_steady_result {
	struct ts_drift_level_result kh_dh, gh_dh, no3_mg_l;
};

struct ts_drift_change_result {
	double share_percent, every_days, kh_low_dh, no3_high_mg_l;
};

/* Pairs are before, after. */
struct ts_drift_jump_result {
	double share_percent;
	struct ts_range gh_dh, kh_dh, ph, conductivity_us_cm, no3_mg_l, nh3_n_mg_l;
	bool safe_step;
};

struct ts_drift_result {
	const char *name;
	double volume_l, nitrogen_mg_day, nitrogen_measured_mg_day, plant_share;
	bool measured_differs;
	double change_percent, change_every_days;
	struct ts_drift_day_result *days;
	size_t day_count;
	double buffer_gone_day, buffer_gone_day_early, buffer_gone_day_late;
	struct ts_drift_steady_result steady, steady_closed_form;
	struct ts_drift_change_result *smallest_safe_change;
	struct ts_drift_jump_result large_change;
	struct ts_texts assumed;
	const char *caution;
};

extern const struct ts_result_shape ts_result_titrate, ts_result_drift;

#endif
