/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was noted of a tank or a water, day by day: each value as it was read, what happened, and
 * whether hardness, buffer or pH move by more than readings and their days make.
 */
#ifndef TS_ANSWERS_LOG_H
#define TS_ANSWERS_LOG_H

#include <tapshoal/plan.h>

#include "answers/asking.h"
#include "answers/learned.h"

struct ts_log_question {
	const char *name; /* of the tank, water or plan; NULL: it has none */
	/* In the order of their days; what is dated after today the answer leaves out. */
	struct ts_reading *readings; /* lent */
	size_t reading_count;
	const struct ts_tank_event *events;
	size_t event_count;
	/* Of a plan: the whole of it, and what its animals' names mean; NULL: not known. */
	const struct ts_plan *plan;
	const struct ts_species *const *species;
	const char *unknown; /* which name is not known; NULL: none */
};

/* A day, or an hour of it. NAN: not read. */
struct ts_log_line {
	const char *date, *time;
	double gh_dh, kh_dh, ph, temp_c, no3_mg_l, no2_mg_l, tan_mg_l;
	struct ts_texts happened;
	size_t order; /* as it stood: what has the same hour keeps it */
};

struct ts_log_course {
	const char *name; /* KH, GH, nitrate, pH */
	size_t readings;
	double first, last, low, high;
	double days;           /* from the first to the last; NAN: not dated */
	double drift_per_week; /* NAN: cannot be said */
	bool moves;
	const char *says;
	size_t row; /* of the table of courses; no row of the answer, as the next two */
	long from;
	double moved_first; /* where it came from, if it moved before and rests now; else NAN */
};

/* One value over the whole time. NAN: not known, or nothing follows. */
struct ts_log_value {
	const char *name, *unit;
	size_t readings;
	double first, last;
	struct ts_range likes;    /* what all who live there like; of nitrate what they bear */
	double expected_now;      /* today, by the model from the first reading on */
	struct ts_range expected; /* at the least and most that animals and plants may do */
	double comes;             /* in eight weeks by this routine, as drift has it */
	bool outside;             /* the last is, of what they like */
	bool borne;               /* outside, and within what all of them bear; no row */
	bool by_kind;             /* the kind of home water alone gives what they like; no row */
};

/* What the model has on a day, past or coming. */
struct ts_log_point {
	const char *date;
	bool comes;
	double kh_dh, gh_dh, no3_mg_l;
	long day; /* of `date`; no row */
};

struct ts_log_result {
	const char *name, *today, *verdict, *headline, *span, *next;
	struct ts_log_course *courses;
	size_t course_count;
	struct ts_log_line *lines; /* the oldest first */
	size_t line_count;
	struct ts_log_value *values; /* that were read */
	size_t value_count;
	struct ts_log_point *points; /* a week apart */
	size_t point_count;
	const char *first_day;     /* of the oldest dated line; NULL: none is; no row */
	const char *comes_says;    /* drift's own headline; NULL: nothing follows, or it leads */
	bool comes_keeps;          /* by it the routine keeps the water; no row */
	bool comes_grave;          /* it stands before all else; no row */
	const char *gone_says;     /* when the buffer is gone, as drift has it; NULL: it is not */
	size_t leads;              /* the course that does, where the verdict is "moves"; no row */
	struct ts_learned learned; /* of a tank's log */
	struct ts_texts notes;
};

/* "moves", "steady", "too-few"; NULL. */
extern const char *const ts_log_verdict_words[];

/* Answers; TS_NO_MEMORY, `*ret` then untouched. All belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_log(const struct ts_asking *asking,
	const struct ts_log_question *question, struct ts_log_result *ret);

#endif
