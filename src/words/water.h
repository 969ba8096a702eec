/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The words about one water: what is unusual about it, what was assumed, why a fact is missing,
 * how bad a poison is, what to measure next and how to take the sample.
 */
#ifndef TS_WORDS_WATER_H
#define TS_WORDS_WATER_H

#include "base/text.h"
#include "water/dangers.h"

/* Why a fact is not known; NULL for TS_WHY_KNOWN and behind the last. Indexed by enum ts_fact_why.
 */
extern const char *const ts_why_says[];
/* What to measure next, and how the sample is taken. Indexed by enum ts_next. */
extern const char *const ts_next_says[TS_NEXT__COUNT];
extern const char *const ts_next_sample[TS_NEXT__COUNT];
/* "concern", "conflict", "danger now"; NULL-terminated, the first is "none". */
extern const char *const ts_danger_words[];

/* What one bit of enum ts_assumed means, without the ions; NULL: no such bit. */
const char *ts_assumed_says(unsigned bit);

/* Adds "not read and filled in: Na, K": nothing where all ions were read. */
void ts_say_assumed_ions(struct ts_text *text, unsigned assumed);

/* Adds one poison with its limit: "Un-ionised ammonia 0.03 mg/L N, harm from 0.02: 0.01 over". */
void ts_say_danger(
	struct ts_text *text, enum ts_danger_id id, const struct ts_water_danger *danger);

/* What one bit of enum ts_drinking means. */
const char *ts_drinking_says(unsigned bit);

/* Adds "Rather hard by the scale of the aquarium trade: GH 14, KH 9". */
void ts_say_class(struct ts_text *text, const struct ts_water_facts *facts);

/*
 * Adds what a tank of the water runs at, and what the pH that was read tells beside it: one
 * sentence; nothing where no pH follows. `profile` NULL: a water that nobody read.
 */
void ts_say_runs_at(
	struct ts_text *text, const struct ts_profile *profile, const struct ts_water_facts *facts);

/* Whose home such water is like, in kinds of animals; NULL: GH is not known, or too wide to say. */
const char *ts_home_of(const struct ts_water_facts *facts);
/* What the nitrate of a water that is no tank's leaves to a tank of it; nothing where it is little.
 */
void ts_say_own_nitrate(
	struct ts_text *text, const struct ts_water_facts *f, const struct ts_practice *practice);

/* Adds what the buffer is good for: "KH 9, short under 4: 5 to spare ...". KH given. */
void ts_say_buffer(struct ts_text *text, const struct ts_water_facts *facts,
	const struct ts_practice *practice);

/*
 * Adds what was read of oxygen against what a tank should hold: "5.1 mg/L, 62 % of what air keeps
 * in it, wanted 6 mg/L: 0.9 too little". Nothing where none was read.
 */
void ts_say_oxygen(struct ts_text *text, const struct ts_water_facts *facts,
	const struct ts_practice *practice);

/* Adds how much salt there is, beside fresh water and the sea. Given. */
void ts_say_salt(
	struct ts_text *text, const struct ts_span *salt, const struct ts_practice *practice);

/* Adds what is left of chloramine, mg/L as chlorine, once it is neutralised. */
void ts_say_bound_ammonia(struct ts_text *text, double chloramine_mg_l);

#endif
