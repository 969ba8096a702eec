/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is given to a question in the tests of several rooms: a figure as a meter reads it, and the
 * practice values as they are shipped.
 */
#ifndef TS_TESTS_GIVEN_H
#define TS_TESTS_GIVEN_H

#include <tapshoal/water.h>

#include "model/practice.h"

/* The bare figure, without doubt. */
static inline struct ts_measure value(double v)
{
	return (struct ts_measure){v, v, v, TS_MEASURE_VALUE};
}

static inline const struct ts_practice *table(void)
{
	static struct ts_practice practice;

	ts_practice_defaults(&practice);
	return &practice;
}

#endif
