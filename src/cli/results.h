/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The result rows of every command that answers programs: JSON is walked from them, and so are the
 * schemas in docs/schemas (tests/report/schemas.c).
 */
#ifndef TS_CLI_RESULTS_H
#define TS_CLI_RESULTS_H

#include "report/result.h"

extern const struct ts_result_shape check_result_shape, find_result_shape, lint_result_shape,
	rank_result_shape, read_result_shape;

/* What programs call a record: the stem of its file. */
const char *result_id(struct ts_arena *arena, const char *file);

#endif
