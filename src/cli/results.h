/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The result rows of every command that answers programs: JSON is walked from them, and so are the
 * schemas in docs/schemas (tests/report/schemas.c).
 */
#ifndef TS_CLI_RESULTS_H
#define TS_CLI_RESULTS_H

#include <tapshoal/match.h>

#include "report/result.h"

extern const struct ts_result_shape check_result_shape, find_result_shape, lint_result_shape,
	rank_line_result_shape, rank_result_shape, read_result_shape, why_waters_result_shape;

/* A finding as programs are told it; all texts are the finding's own. */
struct found_row {
	const char *code, *severity, *file;
	double line, column;
	const char *path, *what, *remedy;
};
extern const struct ts_result_shape found_result_shape;

/* The rows of all findings that were kept; 0 when there are none, or memory failed. */
size_t result_findings(
	struct ts_arena *arena, const struct ts_findings *findings, struct found_row **ret);

/* The rows of one match and of the water asked about, for answers that hold several of them. */
struct answer;
struct parameter_row;
struct water_row;
extern const struct ts_result_shape parameter_result_shape, water_asked_shape;
struct parameter_row *result_parameters(struct ts_arena *arena, const struct answer *answer,
	const struct ts_match *match, size_t *ret_count);
struct water_row *result_water(struct ts_arena *arena, const struct answer *answer);

/* What programs call a record: the stem of its file. */
const char *result_id(struct ts_arena *arena, const char *file);

#endif
