/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What several commands fill into the rows of their answers for programs.
 */
#ifndef TS_CLI_RESULTS_H
#define TS_CLI_RESULTS_H

#include "base/arena.h"
#include "report/lint_result.h"

/* The rows of all findings that were kept; 0 when there are none, or memory failed. */
size_t result_findings(
	struct ts_arena *arena, const struct ts_findings *findings, struct ts_finding_result **ret);

#endif
