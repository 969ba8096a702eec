/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was done to a tank, as its log of events tells it: how much water was changed when and for
 * what, what was topped up, how many animals there were, when nobody fed. The fit (fit.h) goes
 * through it day by day; the routine that it amounts to counts before the one that a file states.
 */
#ifndef TS_STOCK_PAST_H
#define TS_STOCK_PAST_H

#include <tapshoal/plan.h>

#include "model/practice.h"
#include "water/course.h"

/* Changes and steps that count, the newest. */
#define TS_PAST_MOST 128

/* A change of water with its amount. */
struct ts_past_change {
	long day;
	int minutes; /* of the day; -1: not told */
	double share;
	bool pure; /* water without minerals */
};

/* Animals that came on a day (went: below 0), as a share of the waste that today's make. */
struct ts_past_step {
	long day;
	double share;
};

/* Days on which nobody fed, the first to the last. */
struct ts_past_pause {
	long from, to;
};

struct ts_past {
	struct ts_past_change changes[TS_PAST_MOST]; /* in the order of their days */
	size_t change_count;
	bool by_log; /* two or more are noted: from the first of them on the log has all of them */
	struct ts_past_step steps[TS_PAST_MOST];
	size_t step_count;
	struct ts_past_pause pauses[TS_PAST_MOST];
	size_t pause_count;
	bool new_water;
	long new_water_day;  /* the newest on which another supply began */
	double fed_in_pause; /* waste of a day of pause beside another day's */
};

/* What is known beside the log. */
struct ts_past_case {
	const struct ts_tank *tank;
	const struct ts_stock_line *stock; /* with the days since when they are there */
	const double *waste;               /* of each line, in any unit; NULL: not known */
	size_t stock_count;
	double net_l; /* 0: litres tell no share */
	long today;   /* -1: not known */
};

/* Never fails; what is dated after today is left out. */
void ts_past_make(
	const struct ts_past_case *asked, const struct ts_practice *practice, struct ts_past *ret);

/* Waste on a day beside that of today's animals: 1 is as much. */
double ts_past_waste(const struct ts_past *past, long day);

/*
 * The routine that the changes of the last routine.days days (practice) amount to; amount 0: none
 * was made. False: the log does not tell, because it notes fewer than two or for less than half as
 * long.
 */
bool ts_past_routine(const struct ts_past *past, long today, const struct ts_practice *practice,
	struct ts_every *ret);

/* The last change of water that is noted, and when the routine has the next one. */
struct ts_past_last {
	bool noted;
	long last;
	bool stale;      /* it is so long ago that others must be missing in the log */
	bool by_reading; /* none is noted: counted from the newest reading */
	long next;       /* below today: overdue; where no routine is given today */
};

void ts_past_last_change(const struct ts_tank *tank, long today, struct ts_past_last *ret);

/* So long after another supply began nobody has lived in its water for long, days. */
#define TS_PAST_ANOTHER_DAYS 182

/* Whether it began within that time. */
bool ts_past_moved(const struct ts_tank *tank, long today);

/* The first of the newest changes that are such a routine; TS_COURSE_FROM_FIRST: none are noted. */
long ts_past_since(const struct ts_past *past, const struct ts_every *routine);

/* The day on which the newest supply began, as noted; TS_COURSE_FROM_FIRST: none is. */
long ts_past_new_water(const struct ts_tank *tank, long today);

/* What evaporates, by the litres topped up over two weeks or more; false: not noted so. */
bool ts_past_evaporation(
	const struct ts_past_case *asked, const struct ts_practice *practice, struct ts_every *ret);

#endif
