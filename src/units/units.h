/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Quantities as people write them: one table of units, one hand-written scanner over it. The
 * scanner says exactly which byte is wrong and takes no pattern library, so that it can live in
 * the engine. Everything inside the program has one unit per quantity, the first of its rows.
 */
#ifndef TS_UNITS_UNITS_H
#define TS_UNITS_UNITS_H

#include <tapshoal/water.h>

#include "base/text.h"

/* What is measured; the index of the rows in ts_quantities[]. */
enum ts_quantity {
	TS_Q_NUMBER,       /* a bare count or figure */
	TS_Q_PH,           /* pH */
	TS_Q_GH,           /* general hardness, dH */
	TS_Q_KH,           /* carbonate hardness, dH */
	TS_Q_ALKALINITY,   /* meq/L */
	TS_Q_TEMPERATURE,  /* C */
	TS_Q_CONDUCTIVITY, /* uS/cm at 25 C */
	TS_Q_TDS,          /* mg/L */
	TS_Q_CALCIUM,      /* mg/L Ca */
	TS_Q_MAGNESIUM,    /* mg/L Mg */
	TS_Q_ION,          /* mg/L of an ion that has no other form */
	TS_Q_TRACE,        /* mg/L of what poisons in traces: a bare number is mg/L */
	TS_Q_SALINITY,     /* g/L */
	TS_Q_GRAVITY,      /* density over that of pure water */
	TS_Q_NITRATE,      /* mg/L NO3 */
	TS_Q_NITRITE,      /* mg/L NO2 */
	TS_Q_NITROGEN,     /* mg/L N: NO3-N, NO2-N */
	TS_Q_AMMONIA,      /* mg/L N, total ammonia */
	TS_Q_OXYGEN,       /* mg/L O2 */
	TS_Q_SATURATION,   /* per cent of saturation with air; above 100 is possible */
	TS_Q_LENGTH,       /* cm */
	TS_Q_SIDE,         /* cm, of a tank: a bare number is cm */
	TS_Q_AREA,         /* m2 */
	TS_Q_VOLUME,       /* L */
	TS_Q_MASS,         /* g */
	TS_Q_TIME,         /* h */
	TS_Q_HOURS,        /* h, where nobody means days: a bare number is hours */
	TS_Q_PERCENT,      /* per cent */
	TS_Q_FEED,         /* g of dry feed a day */
	TS_Q_PRACTICE,     /* a figure of practice, in its row's unit */
	TS_Q__COUNT
};

struct ts_quantity_row {
	const char *name; /* "general hardness" */
	const char *unit; /* canonical unit as it is printed; "" = none */
	int decimals;     /* as it is printed */
	bool bare;        /* a number without a unit is taken in the canonical unit */
	double min, max;  /* canonical unit; what lies outside is a slip, not a water */
	const char *example;
	double bare_most;         /* a bare figure above is asked for its unit; 0: none is */
	const char *other;        /* the unit that such a figure usually has, as it is written */
	double bare_least;        /* a bare figure below, but nil, needs its unit; 0: none does */
	const char *bare_assumed; /* what is assumed of a bare figure; NULL: nothing is said */
};

/*
 * One spelling of a unit. `spelling` is normalised: lower case, without blanks and degree signs,
 * 'u' for micro. canonical = value * factor + offset. `assumed` tells what had to be assumed.
 * `shown` is how it is written where it can be chosen; NULL: another spelling of a unit that is
 * shown.
 */
struct ts_unit_row {
	enum ts_quantity quantity;
	const char *spelling, *shown;
	double factor, offset;
	const char *assumed;
};

extern const struct ts_quantity_row ts_quantities[TS_Q__COUNT];
extern const struct ts_unit_row ts_units[];
extern const size_t ts_units_count;

/* What can be wrong with a quantity. */
enum ts_scan_fault {
	TS_SCAN_FINE,
	TS_SCAN_EMPTY,        /* nothing written */
	TS_SCAN_NO_NUMBER,    /* a number was expected at `at` */
	TS_SCAN_UNIT_UNKNOWN, /* text at `at` is no unit of this quantity */
	TS_SCAN_UNIT_NEEDED,  /* this quantity is ambiguous without a unit */
	TS_SCAN_OTHER_UNIT,   /* a bare figure beyond what this unit usually has */
	TS_SCAN_TWO_READINGS, /* "1,200": a decimal or a thousands separator */
	TS_SCAN_BACKWARDS,    /* the low end lies above the high end */
	TS_SCAN_OUTSIDE,      /* beyond what the quantity can be */
	TS_SCAN_SINGLE_ONLY,  /* a range where one value was wanted */
	TS_SCAN__COUNT
};

struct ts_scan {
	enum ts_scan_fault fault;
	size_t at;           /* byte offset of the fault */
	const char *assumed; /* what was assumed ("ppm taken as CaCO3"), NULL = nothing */
	enum { TS_SCAN_UNIT_NONE, TS_SCAN_UNIT_OWN, TS_SCAN_UNIT_OTHER } unit; /* as written */
	size_t unit_at; /* byte at which the unit begins */
	double factor;  /* canonical = written * factor */
};

/*
 * Reads a measured value: "14", "14 dH", "12..16 dH", "6.5-7.5", "14 +- 1 dH", "<0.05 mg/L". The
 * result is in the quantity's canonical unit. False with `ret_scan->fault` set and `*ret`
 * untouched when it cannot be read. Allocates nothing.
 */
bool ts_scan_measure(enum ts_quantity quantity, const char *text, size_t len,
	struct ts_measure *ret, struct ts_scan *ret_scan);

/*
 * Reads a range, either end open: "5.5..7.5", "..12 dH", "22.. C", and one value as both ends. An
 * open end is -INFINITY or INFINITY.
 */
bool ts_scan_range(enum ts_quantity quantity, const char *text, size_t len, struct ts_range *ret,
	struct ts_scan *ret_scan);

/* Reads one value. */
bool ts_scan_value(enum ts_quantity quantity, const char *text, size_t len, double *ret,
	struct ts_scan *ret_scan);

/* What the fault means, in words; never NULL. */
const char *ts_scan_says(enum ts_scan_fault fault);

/*
 * Adds what would be right in place of `written`, by the fault: "write it like 14 dH", "if it is
 * ppm, write "160 ppm", which is 9 dH; if it is dH, write "160 dH"".
 */
void ts_scan_remedy(struct ts_text *text, enum ts_quantity quantity, const char *written,
	size_t len, const struct ts_scan *scan);

/*
 * GH and KH as they stand side by side: a kit or report gives both in one unit, so where `bare` and
 * `other` are both there the bare one has to be asked for. Opened zeroed.
 */
struct ts_scan_pair {
	const char *bare, *other;  /* the one without a unit, the one in ppm, fH or the like */
	const char *unit;          /* of `other`, inside it */
	enum ts_quantity quantity; /* of the bare one */
};

/* Looks at one more value; others than GH and KH are passed over. `written` is lent. */
void ts_scan_pair_look(struct ts_scan_pair *pair, enum ts_quantity quantity, const char *written,
	const struct ts_scan *scan);

/* Adds what is wrong with a pair that has both, and what would be right. */
void ts_scan_pair_ask(
	const struct ts_scan_pair *pair, struct ts_text *what, struct ts_text *remedy);

/*
 * "100x40x45", "40x16x18 in": length, width and height of a tank in cm; the unit of the last one
 * holds for all, cm where there is none. False: it is none.
 */
bool ts_scan_box(const char *text, double ret_cm[3]);

#endif
