/* SPDX-License-Identifier: Apache-2.0 */
/*
 * When water is to be changed next. The keeper's routine says when, counted from the last change
 * that was noted; where nitrate or the buffer, reckoned on from their last reading, reach a limit
 * sooner, they say when. Without a routine they alone do, and a tank that reaches none of the
 * limits is left alone. Advice that orders changes (care/advice.h) goes before all of it.
 */
#ifndef TS_CARE_NEXT_CHANGE_H
#define TS_CARE_NEXT_CHANGE_H

#include <tapshoal/plan.h>

#include "stock/waters.h"

enum ts_change_reason {
	TS_CHANGE_NOTHING, /* none is asked for */
	TS_CHANGE_ROUTINE,
	TS_CHANGE_NITRATE,
	TS_CHANGE_BUFFER,
	TS_CHANGE_ORDERED, /* by advice */
	TS_CHANGE_REASON__COUNT
};

/* So far ahead it is looked for a limit, days. */
#define TS_CHANGE_AHEAD_DAYS 84

struct ts_next_change_case {
	const struct ts_plan *plan;
	const struct ts_waters *waters; /* of this plan */
	long today;                     /* days since 1970-01-01 */
	bool lives;                     /* animals live there today */
	double no3_most, kh_least;      /* the limits, mg/L and dH; NAN: none */
	bool small;                     /* a change is to be small */
	double ordered_days;            /* changes that advice orders, so often; NAN: none does */
};

struct ts_next_change {
	enum ts_change_reason reason;
	long day;
	double share, litres; /* of the water; litres NAN: nobody knows how many it has */
	bool small;           /* it is a small one, 10 to 15 per cent */
	double every_days;    /* NAN: no routine */
	bool noted;           /* a change is, the newest of them on the day `last` */
	long last;
	bool stale;             /* and that is so long ago that others must be missing in the log */
	bool by_reading;        /* none is: counted from the newest reading */
	double no3_now, kh_now; /* reckoned for today from the last reading; NAN: not known */
	double a_day, limit;    /* what moves it, and where to, of NITRATE and BUFFER */
};

/* `practice` NULL: the table's own values. Never fails. */
void ts_next_change_make(const struct ts_next_change_case *asked,
	const struct ts_practice *practice, struct ts_next_change *ret);

#endif
