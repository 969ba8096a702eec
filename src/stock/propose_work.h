/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the parts of proposing: the whole (propose.c) and the integer model that candidates
 * and rules become (propose_model.c), with the fish of the lakes (propose_lake.c). For these files
 * only.
 */
#ifndef TS_STOCK_PROPOSE_WORK_H
#define TS_STOCK_PROPOSE_WORK_H

#include "model/practice.h"
#include "stock/propose.h"

/* A kind of snail and one of shrimp beside the others. */
#define TS_EXTRAS_MOST 2

struct ts_proposer {
	const struct ts_wish *wish;
	struct ts_proposal *p;
	struct ts_arena *arena;
	struct ts_practice practice;
	size_t count; /* items so far */
	struct ts_search_limits limits;
	bool thinned; /* of a large catalogue those of most worth alone are searched */
	double best;  /* the most that one item is worth */
};

/* One attempt: with concerns forbidden, or at a cost (propose.c). False when memory ran out. */
bool ts_proposer_attempt(const struct ts_wish *wish, bool conditions, struct ts_arena *arena,
	struct ts_proposal *ret);

/*
 * Hard water is made for the fish of the rift lakes, which are a list by themselves: where fewer
 * lists than asked for are worth it, one of theirs stands behind them (propose_lake.c).
 */
bool ts_proposer_add_lake(
	const struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *io);

static inline double ts_proposer_value(const struct ts_proposer *b, enum ts_practice_id id)
{
	return b->practice.value[id];
}

static inline const struct ts_group *ts_proposer_group(const struct ts_proposer *b, size_t item)
{
	return &b->p->levels[item].group;
}

/* How many species by litres: common practice, no source. Unknown litres count as a small tank. */
size_t ts_proposer_species_most(const struct ts_proposer *proposer);

/* Makes the items of every candidate; a candidate of whom no level is left has its reason. */
void ts_proposer_add_items(struct ts_proposer *proposer);

/*
 * Of a catalogue with many more candidates than any shop has, those of most worth in each role are
 * searched, and no list of theirs is called proven. False when memory ran out.
 */
bool ts_proposer_thin_out(struct ts_proposer *proposer);

/* No list of all candidates has more points than this, also where they were thinned out. */
int64_t ts_proposer_at_most(const struct ts_proposer *proposer);

/* Fills the model of the items; false when memory ran out. */
bool ts_proposer_build_model(struct ts_proposer *proposer);

/* Why two are not proposed together though no rule forbids it; NULL: they may be. */
const char *ts_proposer_apart(const struct ts_proposer *proposer, const struct ts_candidacy *x,
	const struct ts_candidacy *y);

#endif
