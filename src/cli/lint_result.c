/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of lint for programs: every finding with its place and its remedy.
 */
#include "base/arena.h"
#include "cli/commands.h"
#include "cli/results.h"

struct lint_rows {
	size_t files, with_findings, more;
	struct found_row *findings;
	size_t finding_count;
};

static const char *const severities[] = {[TS_NOTE] = "note",
	[TS_CONCERN] = "concern",
	[TS_CONFLICT] = "conflict",
	[TS_ERROR] = "error",
	[TS_SEVERITY__COUNT] = NULL};

/* clang-format off */
#define F struct found_row
static const struct ts_result_field finding_fields[] = {
	TS_R_ROW_TEXT(F, "code", code, "its name, which never changes meaning"),
	TS_R_ROW_WORD(F, "severity", severity, severities, "an error stops the file"),
	TS_R_ROW_TEXT(F, "file", file, "as it was named"),
	TS_R_ROW_NUMBER(F, "line", line, 0, "from 1"),
	TS_R_ROW_NUMBER(F, "column", column, 0, "in characters, from 1"),
	TS_R_ROW_TEXT(F, "path", path, "of the key"),
	TS_R_ROW_TEXT(F, "what", what, "what is wrong"),
	TS_R_ROW_TEXT(F, "remedy", remedy, "what would be right"),
};
#undef F
const struct ts_result_shape found_result_shape =
	TS_R_SHAPE("finding", finding_fields, struct found_row);

#define L struct lint_rows
static const struct ts_result_field lint_fields[] = {
	TS_R_ROW_COUNT(L, "files", files, "files that could be read"),
	TS_R_ROW_COUNT(L, "with_findings", with_findings, "of them, how many break a rule"),
	TS_R_ROW_LIST(L, "findings", findings, finding_count, struct found_row, &found_result_shape, "in the order of files"),
	TS_R_ROW_COUNT(L, "more", more, "findings that were counted and not kept"),
};
#undef L
/* clang-format on */
const struct ts_result_shape lint_result_shape = TS_R_SHAPE("lint", lint_fields, struct lint_rows);

size_t result_findings(
	struct ts_arena *arena, const struct ts_findings *found, struct found_row **ret)
{
	struct found_row *rows =
		ts_arena_array(arena, found->count ? found->count : 1, sizeof *rows);

	*ret = rows;
	for (size_t i = 0; rows && i < found->count; i++) {
		const struct ts_finding *f = &found->items[i];
		bool placed = f->place.line;

		rows[i] = (struct found_row){f->code->id, severities[f->code->severity],
			f->place.file, placed ? (double)f->place.line : (double)NAN,
			placed ? (double)f->place.column : (double)NAN, f->place.path, f->what,
			f->remedy};
	}
	return rows ? found->count : 0;
}

void lint_json(struct session *s, size_t files, size_t with_findings)
{
	struct lint_rows rows = {
		.files = files, .with_findings = with_findings, .more = s->findings->more};

	rows.finding_count = result_findings(s->arena, s->findings, &rows.findings);
	session_json(s, "lint", &lint_result_shape, &rows);
}
