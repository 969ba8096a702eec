/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From a figure as it was written to the interval in which the quantity lies: the doubt of the
 * method, open ends, and what several readings say together.
 */
#ifndef TS_WATER_SPANS_H
#define TS_WATER_SPANS_H

#include <tapshoal/profile.h>

/* One parameter over several readings, on its way to a span. */
struct ts_spread {
	struct ts_span span;
	double last_low, first_high; /* the highest low end, the lowest high end */
};

/* The interval of one figure of a parameter, read by a method (enum ts_method). */
struct ts_span ts_span_read(const struct ts_measure *measure, enum ts_parameter parameter,
	int method, const struct ts_practice *practice);

/*
 * Adds one reading; the spread is opened with ts_spread_open(). Intervals that overlap may be one
 * value read twice, and stay doubt; those that do not are a change, which the animal lives through.
 */
void ts_spread_open(struct ts_spread *spread);
void ts_spread_add(struct ts_spread *spread, const struct ts_span *one);

#endif
