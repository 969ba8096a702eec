/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is unusual about a water, one paragraph a mark: what it means, what to do, and, where
 * readings contradict each other, which one to read again and with what.
 */
#ifndef TS_WORDS_UNUSUAL_H
#define TS_WORDS_UNUSUAL_H

#include <tapshoal/profile.h>

#include "base/text.h"

/* What water without minerals is, and what to do before any animal meets it. */
extern const char ts_bare_says[];

/* Adds what one bit of enum ts_unusual means. `profile` NULL: a water that nobody read. */
void ts_say_unusual(struct ts_text *text, unsigned bit, const struct ts_profile *profile);

/* Adds what a fresh sample beside one that stood tells; nothing where there are not both. */
void ts_say_gas(struct ts_text *text, const struct ts_profile *profile);

/*
 * Adds that older readings were left out where the supply has changed since, and that the newest is
 * old; nothing where neither is so.
 */
void ts_say_newest(struct ts_text *text, const struct ts_profile *profile);

/* Adds what KH must be by the pH of a tank alone; nothing where pH tells nothing of it. */
void ts_say_kh_hint(struct ts_text *text, const struct ts_profile *profile);

/* Adds "8.0 (7.6..8.4)", what a tank of the water runs at. Known. */
void ts_say_tank_ph(struct ts_text *text, const struct ts_profile *profile);

/*
 * Adds which figure to read again and with what ("GH again, with drops: it decides here"), a
 * parameter of enum ts_parameter; false: it is none that is read again.
 */
bool ts_say_again(struct ts_text *text, const struct ts_profile *profile, int parameter);

/* Why nobody is called suited yet, in a few words; NULL where that is not so. */
const char *ts_nobody_yet_says(const struct ts_profile *profile);
/* The same in one word, for a cell: "bare", "softened?". */
const char *ts_nobody_yet_word(const struct ts_profile *profile);

#endif
