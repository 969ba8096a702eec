/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What due tells to programs: plain result structs and their rows. The sentences are the ones that
 * screen and calendar show.
 */
#ifndef TS_REPORT_DUE_RESULT_H
#define TS_REPORT_DUE_RESULT_H

#include "report/result.h"

struct ts_due_test_line {
	const char *where, *due, *when, *reason, *says, *because, *last_read;
	struct ts_texts what;
	double in_days, every_days;
	long day; /* of `due`, for the calendar */
};

struct ts_due_stage_line {
	size_t number;
	const char *due, *when, *says, *test;
	double in_days;
	long day;
};

struct ts_due_result {
	const char *name, *today, *verdict, *says, *because, *next;
	const char *danger, *danger_because;
	struct ts_due_test_line *tests;
	size_t test_count;
	struct ts_due_stage_line *stages;
	size_t stage_count;
	struct ts_texts notes, cautions;
};

extern const struct ts_result_shape ts_result_due;
/* "danger", "overdue", "today", "nothing-due"; NULL. */
extern const char *const ts_due_verdict_words[];

#endif
