/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Some animals against one of many waters, in short, for programs: the verdicts of answers/why.h,
 * and the number that decides. Several waters may be asked at the same time.
 */
#ifndef TS_ANSWERS_WHY_SHORT_H
#define TS_ANSWERS_WHY_SHORT_H

#include "answers/rank_short.h"

struct ts_why_short_cell {
	const char *name; /* what programs call the record */
	const char *verdict, *limiting, *says;
	double uncomfortable_by;
};

struct ts_why_short_result {
	const char *name;
	size_t line;
	struct ts_texts findings;
	struct ts_water_short_result *water; /* NULL: the row was not matched */
	struct ts_why_short_cell *cells;
	size_t cell_count;
	size_t homes; /* animals that it suits or that can live in it; no row */
};

/*
 * Fills cells and water of `io` in the arena of `asking`, which holds the animals that are asked
 * about. `profile` NULL: cells with nothing but names. False: no memory.
 */
bool ts_answer_why_short(const struct ts_asking *asking, const struct ts_profile *profile,
	const struct ts_keeping *keeping, struct ts_why_short_result *io);

#endif
