/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a tank's log has taught, as drift, check, due and log tell it: each thing with its doubt and
 * what was modelled beside it, the newest readings beside what the log let expect, and what is too
 * thin to follow from.
 */
#ifndef TS_ANSWERS_LEARNED_H
#define TS_ANSWERS_LEARNED_H

#include <tapshoal/plan.h>

#include "answers/asking.h"
#include "stock/waters.h"

/* One thing; `low` to `high`: two deviations to either side. */
struct ts_learned_line {
	const char *what; /* one of ts_learned_words */
	const char *unit;
	double value, low, high;
	double modelled; /* NAN: there is no model of it */
	double readings, days;
	const char *says;
};

/* The newest reading of a value. */
struct ts_learned_expected {
	const char *parameter; /* "gh", "kh", "no3" */
	const char *date;
	double read, low, high; /* low to high: what the readings before it let expect */
	bool outside;
	const char *says;
};

struct ts_learned {
	struct ts_learned_line *lines;
	size_t line_count;
	struct ts_learned_expected *expected;
	size_t expected_count;
	struct ts_texts alarms;   /* what lies outside, and what is to be looked at */
	struct ts_texts thin;     /* what does not follow yet, and what would make it */
	const char *routine_says; /* changes by the log, where the file says otherwise; NULL */
	const char
		*else_says; /* what comes of it where nothing is done: the buffer, nitrate; NULL */
	const char *back_says; /* the way back, where that is less, and where it leads; NULL */
};

/* "nitrate", "gh", "kh", "stones", "evaporation", "plants"; NULL. */
extern const char *const ts_learned_words[];

/* When the buffer is gone by the calendar; NULL: not within sight, or no day is known. In the arena
 * of `asking`. */
const char *ts_learned_gone(const struct ts_asking *asking, const struct ts_waters *waters);

/* By the log less is changed than the file says: the way back is the first remedy. */
bool ts_learned_less_is_changed(const struct ts_plan *plan);

/* All belongs to the arena of `asking`. `plan`: with the routine of its log (care/happened.h). */
void ts_learned_make(const struct ts_asking *asking, const struct ts_plan *plan,
	const struct ts_waters *waters, struct ts_learned *ret);

#endif
