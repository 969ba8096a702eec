/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a log tells of how fast a value moves by itself: feed and filter behind nitrate and KH, a
 * stone behind GH. Two readings at any distance give it, through the water changes between them;
 * more of them give it closer. What was measured over months beats any model.
 */
#ifndef TS_STOCK_RATE_H
#define TS_STOCK_RATE_H

#include "model/practice.h"
#include "water/now.h"

/* What is known of the time between the readings. */
struct ts_rate_case {
	const struct ts_reading *readings;
	size_t count;
	long today;                       /* -1: not known */
	double change_share, change_days; /* share 0: no water is changed */
	double poured;                    /* the value in the new water; NAN: not known */
	double known_a_day; /* what is added anyway and does not count, as by topping up */
};

struct ts_rate {
	size_t readings;         /* that it was fitted to; 0: there is no rate */
	double days;             /* from the first of them to the last */
	double first, last;      /* as they were read */
	double a_day, low, high; /* in the unit of the value a day; two deviations to either side */
};

/*
 * The rate behind TS_NOW_GH, TS_NOW_KH or TS_NOW_NO3: of all dated figures of the newest
 * rate.days days (practice; the last two, where only one lies in them) the least squares line
 * through the water changes, each reading with the doubt of its method. Up to one round of changes
 * none is taken to lie between. False: fewer than two days with a figure, or what is poured in is
 * not known where it matters.
 */
bool ts_rate_of(const struct ts_rate_case *asked, enum ts_now_value value,
	const struct ts_practice *practice, struct ts_rate *ret);

#endif
