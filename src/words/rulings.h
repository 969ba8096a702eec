/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of the rules of living together: what is wrong, with our number and its number, and
 * the smallest change. One row a rule in rulings.c.
 */
#ifndef TS_WORDS_RULINGS_H
#define TS_WORDS_RULINGS_H

#include <tapshoal/stock.h>

#include "base/text.h"

/* Adds the first English name of a species, else its scientific one. */
void ts_say_animal(struct ts_text *text, const struct ts_species *species);

/* Adds "neon tetra: 4 planned, settled from 6". */
void ts_say_ruling(struct ts_text *text, const struct ts_ruling *ruling);

/*
 * Adds "add 2 or leave them out"; nothing where there is nothing to change. `advised`: advice on
 * the water goes before the list, and what would be said of its changes gives way to it.
 */
void ts_say_change(struct ts_text *text, const struct ts_ruling *ruling, bool advised);

#endif
