/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to test next, shown as a document and as a calendar.
 */
#ifndef TS_SHOW_DUE_H
#define TS_SHOW_DUE_H

#include "answers/due_all.h"
#include "report/document.h"

void ts_show_due(struct ts_document *doc, const struct ts_due_result *result, long today);

/* What is due in several tanks; `all`: later than the next weeks too. */
void ts_show_due_all(
	struct ts_document *doc, const struct ts_due_all_result *result, long today, bool all);

/* One tank of a calendar: its file, which names the entries, and how it is called without a name.
 */
struct ts_due_calendar {
	const char *file, *called;
	const struct ts_due_result *due;
};

/* Adds the calendar of all of them to `out`; the program's version. */
void ts_show_due_calendar(struct ts_arena *arena, const struct ts_due_calendar *tanks, size_t count,
	const char *version, long today, struct ts_text *out);

#endif
