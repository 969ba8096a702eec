/* SPDX-License-Identifier: Apache-2.0 */
/*
 * lint for programs: fills the rows of report/lint_result.h.
 */
#include "base/arena.h"
#include "cli/commands.h"
#include "cli/results.h"
#include "report/lint_result.h"

size_t result_findings(
	struct ts_arena *arena, const struct ts_findings *found, struct ts_finding_result **ret)
{
	struct ts_finding_result *rows =
		ts_arena_array(arena, found->count ? found->count : 1, sizeof *rows);

	*ret = rows;
	for (size_t i = 0; rows && i < found->count; i++) {
		const struct ts_finding *f = &found->items[i];
		bool placed = f->place.line;

		rows[i] = (struct ts_finding_result){f->code->id,
			ts_severity_words[f->code->severity], f->place.file,
			placed ? (double)f->place.line : (double)NAN,
			placed ? (double)f->place.column : (double)NAN, f->place.path, f->what,
			f->remedy};
	}
	return rows ? found->count : 0;
}

void lint_json(struct session *s, size_t files, size_t with_findings)
{
	struct ts_lint_result rows = {
		.files = files, .with_findings = with_findings, .more = s->findings->more};

	rows.finding_count = result_findings(s->arena, s->findings, &rows.findings);
	session_json(s, "lint", &ts_result_lint, &rows);
}
