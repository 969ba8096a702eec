/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the two halves of the search share: its state, and what search_bound.c tells search.c of a
 * node. For these two files only.
 */
#ifndef TS_STOCK_SEARCH_WORK_H
#define TS_STOCK_SEARCH_WORK_H

#include "stock/search.h"

/* One point, one species in units of weight: a list weighs less than TS_SEARCH_ONE_SPECIES, see
 * model.h. */
#define TS_SEARCH_ONE_SPECIES ((int64_t)1 << 26)
#define TS_SEARCH_ONE_POINT ((int64_t)1 << 32)
_Static_assert(
	(int64_t)TS_MODEL_SPECIES_MOST *TS_MODEL_FIGURE_MOST < TS_SEARCH_ONE_SPECIES, "weights");
_Static_assert(
	(TS_MODEL_SPECIES_MOST + 1) * TS_SEARCH_ONE_SPECIES < TS_SEARCH_ONE_POINT, "species");

/* Price times weight stays below this: far beyond any worth, far from an overflow. */
#define TS_SEARCH_PRICES_MOST ((int64_t)1 << 50)
#define TS_SEARCH_PRICES 3
/* Of the cover at a node: those that count by their worth, of familiar genera, of others and of
 * extras, and the first of each role. */
#define TS_SEARCH_CLIQUES_MOST (3 * TS_MODEL_SPECIES_MOST + 2 * TS_ROLE__COUNT)
#define TS_SEARCH_NO_LIST INT64_MIN

struct ts_search_candidate {
	int64_t worth; /* with the share of the loss of fit taken off */
	size_t item;
};

/* What is chosen so far, summed up. */
struct ts_search_node {
	size_t depth;
	int64_t sum; /* worth of the chosen but for fit and roles */
	int64_t weight_left, floor_left;
	int fit;
	unsigned roles;
	size_t mains;        /* of depth: those that are no extras */
	int familiar, fresh; /* chosen outside the must groups, extras left out */
};

struct ts_search_level {
	uint64_t *open; /* items that may still join what is chosen */
	int64_t *key;   /* by item: its worth less its frictions with the chosen */
	struct ts_search_candidate *list;
	size_t count;              /* of list */
	int64_t base;              /* worth that is sure or within reach whatever is picked */
	unsigned open_roles;       /* not filled, and somebody open fills them */
	size_t picks, extra_picks; /* how many more may be chosen: no extras, extras */
	size_t familiar_picks;
	size_t extra_count; /* of list, before anything was dropped */
};

/*
 * The search sees the items that matter only, in the order of their worth: `original` leads back.
 */
struct ts_search_work {
	const struct ts_model *model;
	const struct ts_search_limits *limits;
	size_t count, words;
	size_t *original, *place; /* place: the other way round, model->count = left out */
	size_t *musts, must_count;
	uint64_t *conflicts; /* rows of the items that matter; the own group is in them */
	uint64_t *extras;    /* which of them are extras */
	struct ts_search_level levels[TS_MODEL_SPECIES_MOST + 1];
	uint64_t *cliques;                  /* room for TS_SEARCH_CLIQUES_MOST rows */
	struct ts_search_candidate *priced; /* room for a list */
	int64_t prices[TS_SEARCH_PRICES];   /* worth of one unit of weight; 0: the weight does not
					       bind */
	size_t chosen[TS_MODEL_SPECIES_MOST];
	size_t best_chosen[TS_MODEL_SPECIES_MOST];
	size_t best_count;
	int64_t best, upper;
	int64_t dropped; /* the highest bound of anything that was dropped in the first pass */
	size_t nodes, nodes_most;
	bool by_names; /* second pass: the first list of worth `best`, in the order of names */
	bool found, given_up;
};

static inline const struct ts_model_item *ts_search_item_of(
	const struct ts_search_work *w, size_t i)
{
	return &w->model->items[w->original[i]];
}

static inline bool ts_search_bit(const uint64_t *row, size_t i)
{
	return row[i / 64] >> (i % 64) & 1;
}

static inline int64_t ts_search_item_worth(const struct ts_model_item *item)
{
	return item->value * TS_SEARCH_ONE_POINT - TS_SEARCH_ONE_SPECIES - item->weight;
}

static inline bool ts_search_is_familiar(const struct ts_model *m, const struct ts_model_item *item)
{
	return m->familiar[item->genus] && !m->must[item->group] && !item->extra;
}

static inline int64_t ts_search_role_points(const struct ts_search_work *w, unsigned roles)
{
	int64_t points = 0;

	for (int r = 0; r < TS_ROLE__COUNT; r++)
		points += roles >> r & 1 ? w->model->role_points[r] : 0;
	return points * TS_SEARCH_ONE_POINT;
}

static inline int64_t ts_search_fit_points(const struct ts_search_work *w, int fit)
{
	return (int64_t)w->model->fit_points * fit * TS_SEARCH_ONE_POINT;
}

/* Whether a bound leaves hope: for something better, or for an equal list in the second pass. */
static inline bool ts_search_hopeful(struct ts_search_work *w, int64_t bound)
{
	if (w->by_names)
		return bound >= w->best;
	if (bound <= w->best && bound > w->dropped)
		w->dropped = bound;
	return bound > w->best;
}

/* Best first; equals in the order of the items. */
void ts_search_sort(struct ts_search_candidate *list, size_t count);

/* How many of the candidates are picked: of those that are no extras, and of extras. */
struct ts_search_picks {
	size_t mains, extras;
};

/*
 * At the most this much can so many of the candidates of `list` (as many as the level's) from
 * `from` on add to the level's base.
 */
int64_t ts_search_cover(struct ts_search_work *work, const struct ts_search_level *level,
	const struct ts_search_candidate *list, size_t from, struct ts_search_picks picks);

/* All that are left to the level. */
static inline struct ts_search_picks ts_search_all_picks(const struct ts_search_level *l)
{
	return (struct ts_search_picks){l->picks, l->extra_picks};
}

/* Lists the open items of a node, best first, without those that cannot be part of a better list.
 */
void ts_search_list_candidates(struct ts_search_work *work, const struct ts_search_node *node);

/* Finds the prices of weight; uses the root's list. */
void ts_search_find_prices(struct ts_search_work *work, const struct ts_search_node *root);

#endif
