/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of lint and of a finding.
 */
#include "report/lint_result.h"

const char *const ts_severity_words[] = {[TS_NOTE] = "note",
	[TS_QUESTION] = "question",
	[TS_CONCERN] = "concern",
	[TS_CONFLICT] = "conflict",
	[TS_ERROR] = "error",
	[TS_SEVERITY__COUNT] = NULL};

/* clang-format off */
#define F struct ts_finding_result
static const struct ts_result_field finding_fields[] = {
	TS_R_ROW_TEXT(F, "code", code, "its name, which never changes meaning"),
	TS_R_ROW_WORD(F, "severity", severity, ts_severity_words, "an error stops the file"),
	TS_R_ROW_TEXT(F, "file", file, "as it was named"),
	TS_R_ROW_NUMBER(F, "line", line, 0, "from 1"),
	TS_R_ROW_NUMBER(F, "column", column, 0, "in characters, from 1"),
	TS_R_ROW_TEXT(F, "path", path, "of the key"),
	TS_R_ROW_TEXT(F, "what", what, "what is wrong"),
	TS_R_ROW_TEXT(F, "remedy", remedy, "what would be right"),
};
#undef F
const struct ts_result_shape ts_result_finding =
	TS_R_SHAPE("finding", finding_fields, struct ts_finding_result);

#define L struct ts_lint_result
static const struct ts_result_field lint_fields[] = {
	TS_R_ROW_COUNT(L, "files", files, "files that could be read"),
	TS_R_ROW_COUNT(L, "with_findings", with_findings, "of them, how many break a rule"),
	TS_R_ROW_LIST(L, "findings", findings, finding_count, struct ts_finding_result, &ts_result_finding, "in the order of files"),
	TS_R_ROW_COUNT(L, "more", more, "findings that were counted and not kept"),
};
#undef L

#define M struct ts_messages_result
static const struct ts_result_field messages_fields[] = {
	TS_R_ROW_TEXT(M, "of", of, "the command that was called; null: none"),
	TS_R_ROW_TEXT(M, "error", error, "what is wrong with the call, or what failed, and what would be right; null: nothing"),
	TS_R_ROW_LIST(M, "findings", findings, finding_count, struct ts_finding_result, &ts_result_finding, "what is to be said of the files"),
	TS_R_ROW_COUNT(M, "more", more, "findings that were counted and not kept"),
};
#undef M
/* clang-format on */
const struct ts_result_shape ts_result_messages =
	TS_R_SHAPE("messages", messages_fields, struct ts_messages_result);
const struct ts_result_shape ts_result_lint =
	TS_R_SHAPE("lint", lint_fields, struct ts_lint_result);
