/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What rank and why tell to programs: the water that was asked about, and each species against it.
 * The rows of one match and of the water are parts of other answers too.
 */
#ifndef TS_REPORT_RANK_RESULT_H
#define TS_REPORT_RANK_RESULT_H

#include "report/lint_result.h"

struct ts_parameter_result {
	const char *name, *unit;
	double reading, reading_low, reading_high;
	struct ts_range tolerated, preferred;
	struct ts_texts source;
	double suitability, outside_by;
};

struct ts_excluded_result {
	const char *name;
	double outside_by;
	const char *unit;
	double would_fit_if;
};

struct ts_match_result {
	const char *species, *id, *common, *verdict;
	double fit;
	const char *limiting;
	struct ts_parameter_result *parameters;
	size_t parameter_count;
	struct ts_excluded_result *excluded_by;
	size_t excluded_by_count;
	double adult_length_cm, group_least, tank_length_cm, tank_volume_l;
};

struct ts_span_result {
	const char *unit;
	double value, low, high;
};

struct ts_water_asked_result {
	const char *name;
	double kept_age_days;
	struct ts_span_result gh, kh, ph, temp, salinity;
	double ph_read;
	bool ph_computed;
	double ph_tank_low, ph_tank, ph_tank_high;
	struct ts_texts unusual, poisons;
	const char *next_to_measure;
};

struct ts_rank_result {
	struct ts_water_asked_result water;
	struct ts_match_result *ranked, *excluded, *near_misses;
	size_t ranked_count, excluded_count, near_miss_count;
};

/* One row of a table of waters. */
struct ts_rank_line_result {
	const char *name;
	size_t line;
	struct ts_finding_result *findings;
	size_t finding_count;
	struct ts_water_asked_result *water;
	struct ts_rank_result answer; /* its water stands above */
};

extern const struct ts_result_shape ts_result_parameter, ts_result_match, ts_result_water_asked,
	ts_result_rank, ts_result_rank_line;

#endif
