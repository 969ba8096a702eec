/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to test next, shown as a document and as a calendar.
 */
#ifndef TS_SHOW_DUE_H
#define TS_SHOW_DUE_H

#include "answers/due.h"
#include "report/document.h"

void ts_show_due(struct ts_document *doc, const struct ts_due_result *result, long today);

/* The file that was asked about, which names the entries; the program's version. */
struct ts_due_calendar {
	const char *file, *version;
	long today;
};

/* Adds the calendar to `out`. */
void ts_show_due_calendar(struct ts_arena *arena, const struct ts_due_result *result,
	const struct ts_due_calendar *how, struct ts_text *out);

#endif
