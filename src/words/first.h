/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The first words about a water (water/first.h): what to do before any animal is chosen for it, and
 * the figures that say so.
 */
#ifndef TS_WORDS_FIRST_H
#define TS_WORDS_FIRST_H

#include "base/text.h"
#include "water/first.h"

/*
 * Adds what comes first, without a capital and without a full stop: "measure GH and KH, and leave
 * the pH alone"; nothing for TS_FIRST_NOTHING.
 */
void ts_say_first(struct ts_text *text, const struct ts_profile *profile);

/* Adds the same as a sentence, behind "This water suits nobody yet." where that is so. */
void ts_say_first_sentence(struct ts_text *text, const struct ts_profile *profile);

/* "test pH and KH again": of readings that contradict each other the one that is doubted. */
void ts_say_read_again(struct ts_text *text, const struct ts_profile *profile);

/* Adds why, whole sentences: the figures that decide; nothing for TS_FIRST_NOTHING. */
void ts_say_first_because(struct ts_text *text, const struct ts_profile *profile);

/* Beside the bits of enum ts_unusual: what ts_say_gh_bound() says. */
#define TS_TOLD_GH_BOUND (1u << 31)

/* Which bits of enum ts_unusual the two sentences tell. `profile` NULL: none. */
unsigned ts_first_tells(const struct ts_profile *profile, enum ts_water_first first);

/* Adds what a fresh sample's pH tells where no KH says what a tank runs at; else nothing. */
void ts_say_fresh_ph(struct ts_text *text, const struct ts_profile *profile);

/* Adds what conductivity or solids leave room for; nothing where GH was read, or neither of them.
 */
void ts_say_gh_bound(struct ts_text *text, const struct ts_profile *profile);

#endif
