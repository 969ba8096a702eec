/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What check tells to programs: every finding, the repair, the load.
 */
#ifndef TS_REPORT_CHECK_RESULT_H
#define TS_REPORT_CHECK_RESULT_H

#include "report/advice_result.h"

struct ts_check_finding_result {
	const char *severity, *code;
	struct ts_texts species;
	const char *parameter, *says, *smallest_change;
};

struct ts_check_repair_result {
	const char *species, *id, *says;
	size_t from, to;
};

struct ts_check_load_result {
	double nitrogen_mg_day, no3_rise_mg_l_week, no3_steady_mg_l, kh_used_dh_week, buffer_days;
	struct ts_range nitrogen_range, no3_rise_range, no3_steady_range, kh_used_range,
		buffer_range;
	double volume_l, feed_g_day, measured_no3_rise, change_percent, change_days;
};

struct ts_check_result {
	const char *name, *verdict;
	struct ts_check_finding_result *findings;
	struct ts_check_repair_result *repair;
	struct ts_advice_line *advice;
	size_t finding_count, more, repair_count, advice_count;
	bool repair_proven;
	struct ts_check_load_result load;
};

extern const struct ts_result_shape ts_result_check;
/* In the order of enum ts_plan_verdict; NULL. */
extern const char *const ts_check_verdict_words[];

#endif
