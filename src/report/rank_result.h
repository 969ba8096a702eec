/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of rank, and those of one match and of the water that other answers hold too.
 */
#ifndef TS_REPORT_RANK_RESULT_H
#define TS_REPORT_RANK_RESULT_H

#include "answers/rank_short.h"
#include "report/lint_result.h"

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
	ts_result_rank, ts_result_rank_line, ts_result_water_short, ts_result_rank_short;

#endif
