/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What may follow from a number, by where it comes from and where its interval lies: the one place
 * that decides it. A rule says what it would make of a number that is surely beyond its limit, and
 * ts_follows() says how far it may go: what is not known is a question and never a fault, what is
 * only assumed is a note and never a conflict, what may lie on either side is a concern and never a
 * conflict, nor a yes. The pH that follows from KH is the result of what is judged already: it
 * never leads, excludes or asks, and is a note where even its middle is far beyond (a band's
 * slack).
 *
 * Where life is in danger, act on the doubt: but only by what is right under every state that the
 * readings allow (test, air, feed nothing, a matched change). An order that would harm if the
 * reading is wrong needs TS_FOLLOWS_CONFLICT.
 */
#ifndef TS_WATER_FOLLOWS_H
#define TS_WATER_FOLLOWS_H

#include <tapshoal/profile.h>

/* Rising. */
enum ts_follows {
	TS_FOLLOWS_NOTHING,  /* it is in order, and a yes may rest on it */
	TS_FOLLOWS_QUESTION, /* ask for it, and say what the answer would change */
	TS_FOLLOWS_NOTE,     /* name the assumption, and the key that replaces it */
	TS_FOLLOWS_CONCERN,  /* with the measurement that settles it, where that is open */
	TS_FOLLOWS_CONFLICT,
	TS_FOLLOWS__COUNT
};

/* Where an interval lies to a range of limits. */
enum ts_beyond {
	TS_BEYOND_NOT,    /* all of it inside */
	TS_BEYOND_PARTLY, /* a limit lies inside it */
	TS_BEYOND_WHOLLY, /* all of it outside */
	TS_BEYOND__COUNT
};

/* Of low..high (low <= high) and a range with both ends, open ones infinite. */
enum ts_beyond ts_beyond_of(double low, double high, const struct ts_range *limits);

/* The most that may follow; `rule`: what the rule says of a number surely beyond. */
enum ts_follows ts_follows(enum ts_number_from from, enum ts_beyond beyond, enum ts_follows rule);

/*
 * The same of a parameter of a profile. An exposure, of which the animal lives every part, that is
 * partly beyond is beyond.
 */
enum ts_follows ts_span_follows(
	const struct ts_span *span, const struct ts_range *limits, enum ts_follows rule);

#endif
