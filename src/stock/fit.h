/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a tank's log teaches of it: the nitrate that its animals leave after plants and what that
 * takes of the buffer, what stones give or soil takes, what evaporates. All readings of GH, KH and
 * nitrate are fitted together, day by day through the changes of water, the toppings up, the
 * animals that came and went and the days without feed (past.h), by weighted least squares. What
 * was measured over months beats any model, and it is given with its doubt: never less than the
 * method of each reading makes, and never less than the readings themselves scatter.
 */
#ifndef TS_STOCK_FIT_H
#define TS_STOCK_FIT_H

#include <tapshoal/stock.h>

#include "stock/past.h"
#include "water/now.h"

/* What is read and fitted. */
enum ts_fit_what { TS_FIT_GH, TS_FIT_KH, TS_FIT_NO3, TS_FIT__COUNT };

extern const enum ts_now_value ts_fit_values[TS_FIT__COUNT];

/* What is poured in; NAN: not known. `deviation`: of that figure. */
struct ts_fit_poured {
	double value, deviation;
};

struct ts_fit_case {
	const struct ts_reading *readings;
	size_t count;
	long today;                 /* -1: not known */
	const struct ts_past *past; /* NULL: nothing is noted */
	/* Before the log's first change, or where it notes none: share 0: no water is changed. */
	double change_share, change_days;
	struct ts_fit_poured poured[TS_FIT__COUNT];
	double evaporated_share, evaporated_deviation; /* a day, topped up; as far as known */
	bool pure_top_up;
	bool bed_works; /* lime or soil lies on the floor: it gives or takes much */
	/* Rise of nitrate by the model, mg/L a day, where none was read; 0: none is known. */
	double modelled_a_day, modelled_deviation;
};

/* How fast a value moves by itself, beside changes and topping up. */
struct ts_rate {
	size_t readings;         /* that it was fitted to; 0: there is no rate */
	double days;             /* from the first of them to the last */
	double first, last;      /* as they were read */
	double a_day, low, high; /* in the unit of the value a day; two deviations to either side */
};

/* A value on the day of its last reading, by all readings together; by that one where no more
 * tells of it. */
struct ts_fit_level {
	bool known;
	double value, deviation;
	double half; /* of the newest reading's own interval */
	size_t days; /* on which it was read */
};

/*
 * The newest reading beside what all those before let expect of it: expected.width deviations
 * (practice) of the level to either side, and the doubt of the reading itself.
 */
struct ts_fit_expected {
	bool known;
	long day;
	double read, low,
		high; /* low to high: expected.width deviations (practice) to either side */
	bool outside;
};

struct ts_fit {
	struct ts_rate rate[TS_FIT__COUNT];
	struct ts_estimate stone_dh_day; /* GH and as much KH that a stone gives; below 0: taken */
	struct ts_estimate evaporated_share; /* a day */
	struct ts_fit_level level[TS_FIT__COUNT];
	struct ts_fit_expected expected[TS_FIT__COUNT];
	size_t readings; /* of all values; 0: nothing was fitted */
};

/*
 * Fits what the newest rate.days days (practice) hold, of a value the last two readings where only
 * one lies in them. A value with fewer than two days of readings, or whose new water is not known
 * where water was changed, is left out: rate[].readings 0.
 */
void ts_fit_make(
	const struct ts_fit_case *asked, const struct ts_practice *practice, struct ts_fit *ret);

#endif
