/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of the repair share: the plan that is mended, the draft in which a change is tried
 * (draft.c), and the ladder of changes from the cheapest to the dearest (ladder.c).
 */
#ifndef TS_STOCK_MENDING_H
#define TS_STOCK_MENDING_H

#include "stock/check.h"

/* A plan whose stock is one line a species and sex, so that it can be changed. */
struct ts_draft {
	struct ts_plan plan;
	struct ts_stock_line *stock;
	const struct ts_species **species;
	struct ts_reading mended; /* the water after minerals or dilution */
	bool water_mended;
};

struct ts_mending {
	const struct ts_practice *practice;
	const struct ts_plan *plan;
	struct ts_arena *arena;
	struct ts_check *check;
	long today;
	bool sick; /* nothing new is to be bought now */
};

/* A draft of the plan as it is; false: no memory. */
bool ts_draft_open(const struct ts_mending *w, struct ts_arena *arena, struct ts_draft *d);
void ts_draft_drop(struct ts_draft *d, const struct ts_species *species);
void ts_draft_add(struct ts_draft *d, const struct ts_plan_group *g, double count, int sex,
	bool living, const struct ts_stock_line *like);
/* The line of the plan that names the species, one in the tank before one that is planned. */
const struct ts_stock_line *ts_draft_line_of(
	const struct ts_mending *w, const struct ts_plan_group *g);
/* The water of the draft is what its remedy made it. */
void ts_draft_pour(struct ts_draft *d);
/* Judges the draft: is the fault gone, and no other there? `*ret_clears`: nothing harms then. */
bool ts_draft_try(const struct ts_mending *w, struct ts_draft *d, const struct ts_ruling *fault,
	bool *ret_clears);

/* NULL: not in the plan. */
const struct ts_plan_group *ts_check_group_of(
	const struct ts_check *c, const struct ts_species *species);

/* One rung: makes its change in the draft and says what it is; false: it has none (left). */
typedef bool ts_rung(const struct ts_mending *w, const struct ts_ruling *fault, unsigned attempt,
	struct ts_draft *d, struct ts_remedy *ret);

struct ts_ladder_row {
	enum ts_remedy_kind kind;
	ts_rung *make;
};
extern const struct ts_ladder_row ts_ladder[];
extern const size_t ts_ladder_count;

#endif
