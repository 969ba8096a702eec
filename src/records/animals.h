/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Animals as somebody types them: "10 neon tetra", "2 angelfish", "a pair of rams", "betta".
 */
#ifndef TS_RECORDS_ANIMALS_H
#define TS_RECORDS_ANIMALS_H

#include <tapshoal/plan.h>

#include "base/text.h"

/*
 * One line of a stock: count before or behind the name, "male", "female", "a pair of"; "living:"
 * before it all, "5 cm" before the name, "for 2 years" or "since 2024-05-01" behind it: they are in
 * the tank already. No count: 0. `today`: days since 1970-01-01; -1: not known, and then no "for 2
 * years". Texts are taken from `arena`. False with one line in `error`.
 */
bool ts_animal_words(struct ts_arena *arena, const char *words, long today,
	struct ts_stock_line *ret, struct ts_text *error);

/* "2 years", "a month" in days; negative: it is no time. */
double ts_days_of(const char *words);

/*
 * Is a name that nobody knows a reading, a sign or a sentence? Then one line in `error` says how
 * each is typed. `near`: names like it are known, so that many words are no sentence yet.
 */
bool ts_animal_words_astray(const char *words, bool near, struct ts_text *error);

#endif
