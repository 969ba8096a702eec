/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What several commands fill into the rows of their answers for programs (report/..._result.h);
 * each does the rest in its own ..._fill.c.
 */
#ifndef TS_CLI_RESULTS_H
#define TS_CLI_RESULTS_H

#include <tapshoal/match.h>

#include "report/rank_result.h"

/* The rows of all findings that were kept; 0 when there are none, or memory failed. */
size_t result_findings(
	struct ts_arena *arena, const struct ts_findings *findings, struct ts_finding_result **ret);

/* The rows of one match and of the water asked about; NULL: memory failed. */
struct answer;
struct ts_parameter_result *result_parameters(struct ts_arena *arena, const struct answer *answer,
	const struct ts_match *match, size_t *ret_count);
struct ts_water_asked_result *result_water(struct ts_arena *arena, const struct answer *answer);

/* What programs call a record: the stem of its file. */
const char *result_id(struct ts_arena *arena, const char *file);

/* The first English name; NULL: it has none. */
const char *result_common(const struct ts_species *species);

/* The parameter that decides; NULL: none does. */
const char *result_limiting(const struct ts_match *match);

#endif
