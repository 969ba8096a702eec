/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What may happen to a tank, and what to do by when: one row a question, one row a step. What the
 * model reaches stands in the sentences as a figure ("{oxygen}"); the rest is common practice.
 */
#ifndef TS_CARE_WHAT_IF_H
#define TS_CARE_WHAT_IF_H

#include <stdbool.h>
#include <stddef.h>

enum ts_what_if {
	TS_IF_POWER_CUT,
	TS_IF_FILTER,
	TS_IF_HEATER_OFF,
	TS_IF_HEATER_STUCK,
	TS_IF_HOLIDAY,
	TS_IF_MOVE,
	TS_IF_TAKEN_OVER,
	TS_IF_NEW_SUPPLY,
	TS_IF_HALF_YEAR,
	TS_IF__COUNT
};

/* What is reckoned for a question. Bits. */
enum ts_what_if_lasts {
	TS_LASTS_OXYGEN = 1 << 0,
	TS_LASTS_WARMTH = 1 << 1,
	TS_LASTS_COOLING = 1 << 2, /* from too warm back to its warmth */
	TS_LASTS_AMMONIA = 1 << 3,
	TS_LASTS_AWAY = 1 << 4,
	TS_LASTS_CARRIED = 1 << 5, /* in bags and boxes */
	TS_LASTS_GROWTH = 1 << 6,  /* numbers and sizes */
	TS_LASTS_OTHER_WATER = 1 << 7
};

struct ts_what_if_row {
	const char *id;     /* never changes meaning */
	const char *asks;   /* the question, as somebody would ask it */
	unsigned reckons;   /* bits of enum ts_what_if_lasts */
	const char *expert; /* whom to call when; NULL: nobody but the vet below */
};

extern const struct ts_what_if_row ts_what_if_rows[TS_IF__COUNT];

/* The row of a word, as people write it ("power cut", "Holiday"); NULL: none is near. */
const struct ts_what_if_row *ts_what_if_of(const char *word);

/* When a step is of use. */
enum ts_what_if_holds {
	TS_HOLDS_ALWAYS,
	TS_HOLDS_OXYGEN_ENDS, /* the still surface does not let in enough */
	TS_HOLDS_OXYGEN_STAYS,
	TS_HOLDS_COOLS, /* the room is colder than somebody bears */
	TS_HOLDS_YOUNG, /* some are not grown */
	TS_HOLDS_AWAY_LONG,
	TS_HOLDS_FAR, /* the other water is more than a safe step away */
	TS_HOLDS_NEAR,
	TS_HOLDS_OVER, /* and there are stages over to it */
	TS_HOLDS_BREEDS,
	TS_HOLDS_BEARS,   /* fish that bear young */
	TS_HOLDS_SHRIMPS, /* invertebrates do, whose sexes nobody parts */
	TS_HOLDS_OUTGROWS,
	TS_HOLDS_STAYS,   /* nobody breeds, and nobody grows out of it */
	TS_HOLDS_LONG_WAY /* a filter that is on its way so long is rinsed first */
};

struct ts_what_if_step {
	unsigned of; /* bits 1 << enum ts_what_if */
	enum ts_what_if_holds holds;
	bool card; /* of the card to print: that day and the first hours */
	const char *when, *says;
};

extern const struct ts_what_if_step ts_what_if_steps[];
extern const size_t ts_what_if_step_count;

/* Stands below every such answer. */
extern const char ts_what_if_vet[];

#endif
