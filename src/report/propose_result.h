/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What propose tells to programs: plain result structs and the rows from which its JSON and schema
 * are walked. NAN is null. src/cli/propose_fill.c fills them.
 */
#ifndef TS_REPORT_PROPOSE_RESULT_H
#define TS_REPORT_PROPOSE_RESULT_H

#include "report/result.h"

struct ts_propose_line_result {
	const char *species, *id, *common;
	size_t count, males, females, there;
	double fit;
};

struct ts_propose_shared_result {
	const char *unit;
	double low, high;
	const char *low_set_by, *high_set_by;
	bool comfortable;
};

/* By parameter; NULL: nobody's band is known. */
struct ts_propose_shared_water_result {
	const struct ts_propose_shared_result *gh, *kh, *ph, *temp, *salinity;
};

struct ts_propose_limiting_result {
	const char *species, *name, *says;
};

/* The likely figures; NAN where they cannot be known. */
struct ts_propose_load_result {
	double nitrogen_mg_day, nitrogen_most_mg_day, no3_rise_mg_l_week, no3_steady_mg_l;
	double kh_used_dh_week, buffer_days;
};

struct ts_propose_community_result {
	size_t place;
	double objective, gap;
	bool proven, equal_to_first;
	struct ts_propose_line_result *stock;
	size_t stock_count;
	struct ts_propose_shared_water_result shared;
	struct ts_propose_limiting_result limiting;
	struct ts_propose_load_result load;
	struct ts_texts swims, order, says;
};

struct ts_propose_left_out_result {
	const char *species, *reason, *rule, *says;
};

struct ts_propose_waiting_result {
	const char *name;
	size_t species;
};

struct ts_propose_result {
	bool mature;
	size_t candidates, species_most;
	double volume_l, floor_m2;
	struct ts_propose_community_result *communities;
	size_t community_count;
	struct ts_propose_waiting_result *waiting;
	size_t waiting_count;
	struct ts_propose_left_out_result *left_out;
	size_t left_out_count;
};

extern const struct ts_result_shape ts_result_propose;

#endif
