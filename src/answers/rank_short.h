/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of rank in short, for programs that go through many waters: counts, what excludes, and
 * who suits, in the same order and with the same verdicts as answers/rank.h. What no water changes
 * is made once a call; then several waters may be asked at the same time.
 */
#ifndef TS_ANSWERS_RANK_SHORT_H
#define TS_ANSWERS_RANK_SHORT_H

#include "answers/rank.h"

/* Ids of a list at the most, where not all were asked for: keeps a line within 4 kB. */
#define TS_RANK_SHORT_IDS_MOST 100

struct ts_rank_short_animal;

/* What is asked of every water. */
struct ts_rank_short_call {
	const struct ts_practice *practice;
	const struct ts_rank_short_animal *animals;
	size_t count;
	unsigned lists;  /* bits of enum ts_verdict: whose ids are wanted */
	size_t ids_most; /* of each list */
};

/* The figures that count, and what stands before any animal. */
struct ts_water_short_result {
	double gh_dh, kh_dh, ph, temp_c, salinity_g_l, ph_tank;
	const char *first; /* what is to be done or known before any animal; NULL: nothing */
	struct ts_texts poisons;
};

struct ts_rank_short_excluded_result {
	size_t at[TS_PARAMETER__COUNT]; /* by the parameter that decides */
	size_t copper;
};

struct ts_rank_short_result {
	const char *name;
	size_t line;
	struct ts_texts findings;
	struct ts_water_short_result *water; /* NULL: the row was not ranked */
	size_t asked, of[TS_VERDICT__COUNT], too_large, no_home;
	struct ts_rank_short_excluded_result excluded_by;
	struct ts_texts ids[TS_VERDICT__COUNT];
};

/* Makes the call from the question of rank; its water counts for nothing. False: no memory. */
bool ts_rank_short_open(const struct ts_asking *asking, const struct ts_rank_question *question,
	struct ts_rank_short_call *ret);
/* The figures of a water in `arena`. */
struct ts_water_short_result *ts_answer_water_short(
	struct ts_arena *arena, const struct ts_profile *profile);
/* One water, in `arena` alone; name, line and findings are left as they are. False: no memory. */
bool ts_answer_rank_short(const struct ts_rank_short_call *call, const struct ts_profile *profile,
	const struct ts_keeping *keeping, struct ts_arena *arena, struct ts_rank_short_result *io);

#endif
