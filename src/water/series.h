/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings over time: how far they spread, how far at the same hour, how far within a day, and
 * whether they drift. Also the choice of a season out of a file that holds several.
 */
#ifndef TS_WATER_SERIES_H
#define TS_WATER_SERIES_H

#include <tapshoal/profile.h>

/* NAN = cannot be said from these readings. */
struct ts_series_facts {
	size_t readings;         /* with this parameter */
	double days;             /* from the first dated one to the last */
	double low, high;        /* of the figures as written */
	double spread;           /* high - low */
	double same_hour_spread; /* the greatest among readings of one hour of the day */
	double day_swing;        /* the greatest within one day; readings in order of time */
	double drift_per_week;   /* slope of the least squares line through the dated readings */
	bool trend;              /* the drift is more than swing and doubt of the method make */
	bool varies;             /* so is the spread */
};

/*
 * GH, KH or pH (TS_GH, TS_KH, TS_PH) over the readings of a water. Dates are YYYY-MM-DD, hours
 * HH:MM; readings without them count for the spread alone. A drift wants three dated readings
 * over a week. A trend must exceed the usual swing (pH 0.2, hardness 0.5 dH: estimates from
 * memory) plus the doubt of one reading (pH 0.3, hardness 1 dH).
 */
void ts_series_make(
	const struct ts_water *water, enum ts_parameter parameter, struct ts_series_facts *ret);

/*
 * Puts dated readings in the order of their days and hours among the places that dated ones have:
 * a log is kept oldest first or newest first, and the last reading is the state. What has no date
 * stays where it stands. `*readings` is replaced by a list in `arena` where the order was another.
 */
void ts_readings_by_date(struct ts_reading **readings, size_t count, struct ts_arena *arena);

/* Days to either side of a date that `--season DATE` takes in. */
#define TS_SEASON_DAYS 45

/*
 * Keeps the readings of one season, in place: those whose `season` is that word (without regard to
 * case), or, where `season` is a date, those within 45 days of that day in any year. Returns how
 * many are left; with none the water is left as it was.
 */
size_t ts_water_take_season(struct ts_water *water, const char *season);

#define TS_SEASONS_MOST 12

/*
 * The parts of the year that the readings of a water tell apart, each as ts_water_take_season()
 * takes it: the words of their `season`, without regard to case, and the dates of those without,
 * where they lie more than 45 days from every one before. Lent from the readings. Returns how many,
 * at most TS_SEASONS_MOST; 0 where there are not two.
 */
size_t ts_water_seasons(const struct ts_water *water, const char *ret[TS_SEASONS_MOST]);

#endif
