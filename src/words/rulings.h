/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of the rules of living together: what is wrong, with our number and its number,
 * what mends it, and on which condition all are kept together. One row a rule in rulings.c.
 */
#ifndef TS_WORDS_RULINGS_H
#define TS_WORDS_RULINGS_H

#include <tapshoal/stock.h>

#include "base/text.h"

/* Adds the first English name of a species, else its scientific one; of more than one animal. */
void ts_say_animal(struct ts_text *text, const struct ts_species *species);
void ts_say_animals(struct ts_text *text, const struct ts_species *species);

/* Adds "4 neon tetras of the 6 that feel safe together". */
void ts_say_ruling(struct ts_text *text, const struct ts_ruling *ruling);

/* The same for a first line, which names the animal within: "GH 1, mollies are comfortable from 12:
 * 11 too soft". */
void ts_say_opening(struct ts_text *text, const struct ts_ruling *ruling);

/* Adds how the water fits its animal, "GH 14, comfortable to 10: 4 too hard". */
void ts_say_fit(struct ts_text *text, const struct ts_ruling *ruling);

/*
 * Adds what mends it: the remedy that was tried, "keep 10 neon tetras instead of 4", else what the
 * rule advises; nothing where there is nothing to do. `advised`: advice on the water goes before
 * the list, and what would be said of its changes gives way to it.
 */
void ts_say_remedy(struct ts_text *text, const struct ts_ruling *ruling, bool advised);

/* Adds a remedy by itself, a step of the repair. */
void ts_say_step(struct ts_text *text, const struct ts_remedy *remedy);

/*
 * Adds what all are kept together on: "the tank is covered tightly", to stand behind "together if".
 * False, and nothing is added, where there is nothing to be done while keeping all.
 */
bool ts_say_condition(struct ts_text *text, const struct ts_ruling *ruling);

#endif
