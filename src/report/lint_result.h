/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What lint tells to programs: every finding with its place and its remedy. A finding is a part of
 * other answers too.
 */
#ifndef TS_REPORT_LINT_RESULT_H
#define TS_REPORT_LINT_RESULT_H

#include "report/result.h"

/* A finding as programs are told it; all texts are the finding's own. */
struct ts_finding_result {
	const char *code, *severity, *file;
	double line, column;
	const char *path, *what, *remedy;
};

struct ts_lint_result {
	size_t files, with_findings, more;
	struct ts_finding_result *findings;
	size_t finding_count;
};

/* What is said beside an answer in JSON, or in its place. */
struct ts_messages_result {
	const char *of, *error;
	struct ts_finding_result *findings;
	size_t finding_count, more;
};

extern const struct ts_result_shape ts_result_finding, ts_result_lint, ts_result_messages;

#endif
