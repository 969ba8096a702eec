/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of the answers, one place for screen, JSON and reports: the house sentence is
 * "GH 14, comfortable to 10: 4 too hard".
 */
#ifndef TS_WORDS_SENTENCE_H
#define TS_WORDS_SENTENCE_H

#include <tapshoal/match.h>

#include "base/text.h"

/* How a parameter is named and missed. */
struct ts_parameter_row {
	const char *key;           /* in JSON: "gh" */
	const char *label;         /* on screen: "GH" */
	const char *unit;          /* of its figures: "dH" */
	const char *below, *above; /* "too soft", "too hard" */
	int decimals;
};

extern const struct ts_parameter_row ts_parameter_rows[TS_PARAMETER__COUNT];

/* Decimals of a reading: of one that was read as many as it may have been read with. */
int ts_reading_decimals(enum ts_parameter parameter, bool read);

/*
 * Adds the house sentence of one parameter; "GH not given" or "no band known" where that is so.
 */
void ts_say_parameter(
	struct ts_text *text, enum ts_parameter parameter, const struct ts_parameter_fit *fit);

/*
 * Adds the band and by how much it is missed: "10 to 14"; "to 10: 4 too hard". `miss`: above 0
 * beyond the upper end, below 0 beyond the lower, 0 within.
 */
void ts_say_miss(struct ts_text *text, const struct ts_parameter_row *row,
	const struct ts_range *band, double miss);
/* Adds "near: would fit with GH 12 or less"; nothing where it is no near miss. */
void ts_say_near_miss(struct ts_text *text, const struct ts_match *match);

/* Adds "copper 0.05 mg/L, borne to 0.008: 0.042 too much"; nothing where copper does not decide. */
void ts_say_copper(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

/* Adds "oxygen 3.2 mg/L, borne from 5: 1.8 too little"; nothing where there is enough. */
void ts_say_little_oxygen(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

/* Adds "nitrate 120 mg/L, borne to 100: 20 too much"; nothing where it does not decide. */
void ts_say_much_nitrate(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

/* Adds what one poison found in the readings means, one paragraph; `bit` of enum ts_poison. */
void ts_say_poison(struct ts_text *text, unsigned bit, const struct ts_poisons *poisons);

/* Adds how much of the water: "12 L (10 %)"; "10 % of the water" where `net_l`, all of it, is not
 * known (0 or NAN). */
void ts_say_part_of(struct ts_text *text, double percent, double net_l);

/* Adds a range: "6..7.5", "to 12", "from 4". */
void ts_say_range(struct ts_text *text, const struct ts_range *range, int decimals);

/* Adds what a tank of an ordinary water runs at; nothing where that is unknown or unusual. */
void ts_say_ordinary(struct ts_text *text, const struct ts_profile *profile);

/* How animals are judged where the tank's temperature is not known. */
extern const char ts_own_temperature_says[];

/* The one next thing to measure and how, for this profile. */
const char *ts_next_to_measure(const struct ts_profile *profile);

#endif
