/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was noted of a tank or a water, day by day: each value as it was read, what happened, and
 * whether hardness, buffer or pH move by more than readings and their days make.
 */
#ifndef TS_ANSWERS_LOG_H
#define TS_ANSWERS_LOG_H

#include <tapshoal/plan.h>

#include "answers/asking.h"

struct ts_log_question {
	const char *name; /* of the tank, water or plan; NULL: it has none */
	/* In the order of their days; what is dated after today the answer leaves out. */
	struct ts_reading *readings; /* lent */
	size_t reading_count;
	const struct ts_tank_event *events;
	size_t event_count;
};

/* A day, or an hour of it. NAN: not read. */
struct ts_log_line {
	const char *date, *time;
	double gh_dh, kh_dh, ph, temp_c, no3_mg_l, no2_mg_l, tan_mg_l;
	struct ts_texts happened;
};

struct ts_log_course {
	const char *name; /* GH, KH, pH */
	size_t readings;
	double first, last, low, high;
	double days;           /* from the first to the last; NAN: not dated */
	double drift_per_week; /* NAN: cannot be said */
	bool moves;
	const char *says;
};

struct ts_log_result {
	const char *name, *today, *verdict, *headline, *span, *next;
	struct ts_log_course *courses;
	size_t course_count;
	struct ts_log_line *lines; /* the oldest first */
	size_t line_count;
	struct ts_texts notes;
};

/* "moves", "steady", "too-few"; NULL. */
extern const char *const ts_log_verdict_words[];

/* Answers; TS_NO_MEMORY, `*ret` then untouched. All belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_log(const struct ts_asking *asking,
	const struct ts_log_question *question, struct ts_log_result *ret);

#endif
