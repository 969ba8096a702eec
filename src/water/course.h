/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The course that a value of a tank is on now: since another water began, since it left the level
 * on which it stood, or since it came to rest. A rise of last spring is no rise of today.
 */
#ifndef TS_WATER_COURSE_H
#define TS_WATER_COURSE_H

#include <limits.h>

#include "water/now.h"

/* A course that begins where the readings do. */
#define TS_COURSE_FROM_FIRST LONG_MIN

/* NAN: cannot be said from these readings. */
struct ts_course {
	size_t readings; /* of the course; 0: none has a day */
	long from, to;
	double first, last, low, high;
	double a_week; /* slope of the least squares line */
	bool moves;    /* that is more than swing and doubt of the method make */
	bool rests;    /* it moved before, and stands since */
	long moved_from;
	double moved_first; /* where it moved from, if it rests */
};

/*
 * GH, KH, pH or nitrate over the dated readings of a tank, in the order of their days. `since`: the
 * day on which its newest supply began, from which the last reading before it is the first that
 * counts. Three readings over a week make a slope; after a new supply two do. It moves where the
 * line rises or falls by more than the usual swing and the doubt of one reading (estimates from
 * memory: pH 0.5, hardness 1.5 dH, nitrate 15 mg/L or a third). It rests where for two weeks and
 * three readings it stood within one step of a kit, and had moved by three in as long before.
 */
void ts_course_make(const struct ts_reading *readings, size_t count, enum ts_now_value value,
	long since, struct ts_course *ret);

#endif
