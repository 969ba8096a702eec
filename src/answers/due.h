/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What of a tank, a plan or a water is to be tested next, and when; with a re-making asked for also
 * its stages by day. A danger goes before any test.
 */
#ifndef TS_ANSWERS_DUE_H
#define TS_ANSWERS_DUE_H

#include <tapshoal/plan.h>

#include "answers/learned.h"
#include "answers/remake.h"

struct ts_due_question {
	const char *name; /* of the tank, water or plan; NULL: it has none */
	/* Readings dated after today are left out of it, in place. */
	struct ts_plan *plan; /* of a tank or a water what there is of a plan */
	bool has_tank, has_supply;
	/* What stock[i].species means; NULL: a name is not known, and `unknown` says which. */
	const struct ts_species *const *species;
	const char *unknown;
	bool residents;                        /* animals live there beside those of the plan */
	const struct ts_remake_result *remake; /* NULL: none was asked for */
};

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

/* The next change of water. */
struct ts_due_change_line {
	const char *due, *when, *reason, *amount, *says, *because;
	const char *last; /* the newest that was noted; NULL: none was */
	double in_days, litres, percent, every_days;
	double no3_mg_l, kh_dh; /* reckoned for today from the last reading; NAN: not known */
	long day;
};

/* What that takes: "tap water", 40, "L". */
struct ts_due_bring_line {
	const char *what, *unit;
	double amount;
};

/* A limit that the routine reaches. */
struct ts_due_alarm_line {
	const char *parameter, *due, *says, *because;
	double in_days;
	long day;
};

struct ts_due_result {
	const char *name, *today, *verdict, *says, *because, *next;
	const char *danger, *danger_because;
	struct ts_learned learned;
	struct ts_due_change_line *change; /* NULL: none is asked for */
	struct ts_due_bring_line *bring;
	size_t bring_count;
	struct ts_due_alarm_line *alarms; /* the first reached first */
	size_t alarm_count;
	struct ts_due_test_line *tests;
	size_t test_count;
	struct ts_due_stage_line *stages;
	size_t stage_count;
	const char *stages_say; /* NULL: there are none */
	struct ts_texts notes, cautions;
	const char *supply; /* the name of what is poured in; NULL: it has none */
	bool has_tank;      /* no row, as is: */
	bool nothing;       /* is due today */
};

/* "danger", "overdue", "today", "nothing-due"; NULL. */
extern const char *const ts_due_verdict_words[];

/* What is poured in: the change water of a plan, else its water. */
const struct ts_water *ts_due_poured(const struct ts_plan *plan);

/* Leaves out of a plan what is dated after today; how many readings that were. */
size_t ts_due_leave_out(struct ts_plan *plan, long today);

/* Answers; TS_NO_MEMORY, `*ret` then untouched. All belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_due(const struct ts_asking *asking,
	const struct ts_due_question *question, size_t left_out, struct ts_due_result *ret);

#endif
