/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is due in several tanks, one thing a line, and what to bring for the changes of the week.
 */
#ifndef TS_ANSWERS_DUE_ALL_H
#define TS_ANSWERS_DUE_ALL_H

#include "answers/due.h"

/* One of the tanks asked about. */
struct ts_due_all_tank {
	const char *name;                /* as its keeper calls it in a call: "@living-room" */
	const struct ts_due_result *due; /* NULL: it has none */
	const char *not_answered;        /* why, then */
};

struct ts_due_thing {
	const char *tank, *kind, *due, *when, *says;
	double in_days;
	long day;    /* no row, as is: */
	bool supply; /* a test of what is poured in */
};

struct ts_due_unanswered {
	const char *tank, *says;
};

struct ts_due_all_result {
	const char *today, *verdict, *says, *because, *next;
	struct ts_due_thing *things; /* dangers first, then by day */
	size_t thing_count;
	struct ts_due_bring_line *bring; /* for what is changed within a week */
	size_t bring_count;
	struct ts_due_unanswered *unanswered;
	size_t unanswered_count;
	struct ts_texts cautions;
	bool nothing; /* is due today; no row */
};

/* "danger", "test", "change", "stage", "alarm"; NULL. */
extern const char *const ts_due_kind_words[];

/* So far ahead a first screen looks, days. */
#define TS_DUE_SHOWN_DAYS 28

/* Answers; TS_NO_MEMORY, `*ret` then untouched. All belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_due_all(const struct ts_asking *asking,
	const struct ts_due_all_tank *tanks, size_t count, struct ts_due_all_result *ret);

#endif
