/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a tank's log says of the tank as it is now: of each value the newest reading, with its day.
 * A value that was read last week is not forgotten because today's row has only ammonia. Everything
 * that asks for the state of a tank asks here; what is poured in and where it settles is
 * stock/waters.h.
 */
#ifndef TS_WATER_NOW_H
#define TS_WATER_NOW_H

#include <tapshoal/profile.h>

/* What a keeper reads in a tank, each in the unit of its name wherever it was read in another. */
enum ts_now_value {
	TS_NOW_GH, /* dH */
	TS_NOW_KH, /* dH */
	TS_NOW_PH,
	TS_NOW_TEMPERATURE,  /* C, of the sample */
	TS_NOW_SALINITY,     /* g/L */
	TS_NOW_CONDUCTIVITY, /* uS/cm */
	TS_NOW_TAN,          /* mg/L N */
	TS_NOW_NO2,          /* mg/L as NO2 */
	TS_NOW_NO3,          /* mg/L as NO3 */
	TS_NOW_OXYGEN,       /* mg/L */
	TS_NOW_CHLORINE,
	TS_NOW_COPPER,
	TS_NOW_CHLORIDE,
	TS_NOW_SODIUM,
	TS_NOW_POTASSIUM,
	TS_NOW_SULPHATE,
	TS_NOW_PHOSPHATE,
	TS_NOW__COUNT
};

/* Where the newest of a value stands. */
struct ts_now_from {
	const struct ts_reading *reading; /* of the log; NULL: never read */
	bool dated;
	long day;        /* days since 1970-01-01, where dated */
	double age_days; /* NAN: not read, not dated, or today is not known */
	bool old;        /* older than reading.old days (practice): an answer asks for a new one */
};

struct ts_now {
	/* Each value's newest, its doubt by its own method written into it as an interval. */
	struct ts_reading reading;
	struct ts_now_from from[TS_NOW__COUNT];
	size_t read;  /* values that were read */
	size_t ahead; /* readings dated after today: left out */
};

/*
 * `today`: days since 1970-01-01, or -1: not known, then nothing is ahead and nothing old. Of
 * readings of one day and hour, and of those without a date, the one that is written last counts.
 * `practice` NULL: the table's own values. Never fails.
 */
void ts_now_make(const struct ts_reading *readings, size_t count, long today,
	const struct ts_practice *practice, struct ts_now *ret);

/* The water of ret->reading, lent; without any reading it has none. */
struct ts_water ts_now_water(struct ts_now *now);

/* A value of one reading in the unit that it is quoted in; NAN: it does not tell. */
double ts_reading_value(const struct ts_reading *reading, enum ts_now_value value);

/* The newest figure as it was written; NAN: never read. */
double ts_now_figure(const struct ts_now *now, enum ts_now_value value);

/* Whether a reading is of a day after today. */
bool ts_reading_is_ahead(const struct ts_reading *reading, long today);

#endif
