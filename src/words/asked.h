/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Everyday questions of care that no reading decides: by which words each is known, and what a
 * friend says who keeps fish. All of it is common practice, no source.
 */
#ifndef TS_WORDS_ASKED_H
#define TS_WORDS_ASKED_H

#include <stddef.h>

/* More questions than this are not answered at once. */
#define TS_CARE_MOST 3

/* What of the tank's own goes behind the first line, where it is known: bits. */
enum ts_care_puts {
	TS_CARE_QUARTER = 1 << 0, /* "A quarter is 15 L of the 60 L." */
	TS_CARE_WATTS = 1 << 1,   /* of a heater */
	TS_CARE_WARMTH = 1 << 2,  /* what the animals like, and whether that needs a heater */
	TS_CARE_YEARS = 1 << 3,   /* how old the animals grow */
	TS_CARE_COMPANY = 1 << 4, /* how many of them together */
};

struct ts_care_row {
	const char *id; /* a word of --asks */
	/*
	 * Ways to ask it, parted by ";". Of each group of words, parted by a blank, one stands in
	 * the thought, in any order: "filter|sponge wash|clean". "*" behind a word: any end; "_":
	 * words side by side. "-" before a group: none of it stands there; "?": it may, and belongs
	 * to the question; "!" before a way: told, and not asked, it is a question all the same;
	 * "+":
	 * what else the thought tells is read as ever.
	 */
	const char *words;
	const char *says, *more; /* the first line, and what goes behind it */
	unsigned puts;           /* enum ts_care_puts */
};
extern const struct ts_care_row ts_care_rows[];
extern const size_t ts_care_row_count;

/* The row of that id, which ends at a blank or the end; NULL: none. */
const struct ts_care_row *ts_care_row(const char *id);

#endif
