/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What of a tank and of the water poured into it is to be tested next, and when. A table of
 * reasons, the most pressing first, each with its interval in the practice table; for each thing
 * that can be tested the reason that asks for it soonest counts. The sentences are words/due.c's.
 */
#ifndef TS_CARE_DUE_H
#define TS_CARE_DUE_H

#include <tapshoal/plan.h>

#include "model/practice.h"
#include "stock/waters.h"

/* What a keeper tests. */
enum ts_due_what {
	TS_DUE_GH,
	TS_DUE_KH,
	TS_DUE_PH,
	TS_DUE_AMMONIA,
	TS_DUE_NITRITE,
	TS_DUE_NITRATE,
	TS_DUE_OXYGEN,
	TS_DUE_WHAT__COUNT
};

enum ts_due_where { TS_DUE_TANK, TS_DUE_SUPPLY, TS_DUE_WHERE__COUNT };

enum ts_due_reason {
	TS_DUE_DISTRESS,
	TS_DUE_GASPING,
	TS_DUE_OXYGEN_SHORT,
	TS_DUE_FOUND,
	TS_DUE_UNEXPECTED,
	TS_DUE_REMAKE_AMMONIA,
	TS_DUE_REMAKE,
	TS_DUE_CYCLING,
	TS_DUE_NEWCOMERS,
	TS_DUE_CYCLING_BUFFER,
	TS_DUE_KH_ACT,
	TS_DUE_BUFFER,
	TS_DUE_KH_SHORT,
	TS_DUE_SOIL,
	TS_DUE_CO2,
	TS_DUE_MENDING,
	TS_DUE_TREND,
	TS_DUE_NITRATE_HIGH,
	TS_DUE_WIDE,
	TS_DUE_SEASON,
	TS_DUE_MINERALS,
	TS_DUE_NITRATE_USUAL,
	TS_DUE_AMMONIA_USUAL,
	TS_DUE_SUPPLY_WIDE,
	TS_DUE_SUPPLY_USUAL,
	TS_DUE_REASON__COUNT
};

struct ts_due_row {
	const char *id; /* never changes meaning */
	enum ts_due_where where;
	unsigned what;             /* bits 1 << enum ts_due_what */
	enum ts_practice_id every; /* days */
	const char *says;          /* "{figure}", "{other}", "{what}", "{gone}" are the item's */
};

extern const struct ts_due_row ts_due_rows[TS_DUE_REASON__COUNT];

/* What is asked about. */
struct ts_due_case {
	const struct ts_plan *plan;    /* its tank, stock, signs; NULL: there is a supply alone */
	const struct ts_water *supply; /* what is poured in; NULL: not known, and not asked about */
	long today;                    /* days since 1970-01-01 */
	double buffer_days;            /* from the tank's last reading; NAN: not known, or long */
	/* Newest readings beside what the log let expect, by enum ts_fit_what; NULL: not known. */
	const struct ts_fit_expected *expected;
	bool remaking; /* stages of another water are under way */
	bool mending;  /* the new water is made fit for who lives there: advice says so */
	bool followed; /* a log tells how fast KH falls: no kit sees a day of it */
};

/* One test: several values where they are due on one day for one reason. */
struct ts_due_item {
	enum ts_due_where where;
	unsigned what; /* bits */
	enum ts_due_reason reason;
	long day;         /* by when */
	bool read, dated; /* ever; `last` is the day of the newest reading */
	long last;
	double every_days;
	double figure, other; /* that the reason quotes; NAN: none */
	enum ts_due_what of;  /* what the figure is one of */
	int decimals;
};

#define TS_DUE_MOST (TS_DUE_WHAT__COUNT * TS_DUE_WHERE__COUNT)

struct ts_due {
	struct ts_due_item items[TS_DUE_MOST];
	size_t count;
};

/*
 * The tests, those of a danger first, then what is overdue, due today, and later, each by day. Of a
 * value that was never read, or without a date, the day is today, or the day a tank is to be
 * filled. Readings dated after today must have been left out: ts_due_leave_ahead().
 */
void ts_due_make(
	const struct ts_due_case *c, const struct ts_practice *practice, struct ts_due *ret);

/*
 * How long the buffer lasts at the least from the last reading of KH; NAN: not known, or longer
 * than due.buffer.ahead (practice). `practice` NULL: the table's own values.
 */
double ts_due_buffer_days(const struct ts_waters *waters, const struct ts_practice *practice);

/* Leaves out, in place, readings dated after today; returns how many were. */
size_t ts_due_leave_ahead(struct ts_reading *readings, size_t *io_count, long today);

/* Whether an item of a danger: never behind any other test of its day. */
bool ts_due_is_danger(enum ts_due_reason reason);

/* The day of the newest dated reading; false: none has a date. */
bool ts_due_newest(const struct ts_reading *readings, size_t count, long *ret);

#endif
