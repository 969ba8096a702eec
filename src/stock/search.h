/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The exact search for the best list of an integer model (stock/model.h): branch and bound, so
 * that "best" is proven unless the limit of nodes was reached, and then the gap is said.
 */
#ifndef TS_STOCK_SEARCH_H
#define TS_STOCK_SEARCH_H

#include "stock/model.h"

/* Nodes of one search when the caller sets no limit: a count, not a time, so runs are alike. */
#define TS_SEARCH_NODES_MOST 2000000

struct ts_search_limits {
	size_t nodes; /* 0: TS_SEARCH_NODES_MOST */
	/* Called now and then with the nodes so far and the best points; NULL: not wanted. */
	void (*progress)(void *state, size_t nodes, int64_t points);
	void *state;
};

struct ts_search_list {
	size_t chosen[TS_MODEL_SPECIES_MOST]; /* items, ascending */
	size_t count;                         /* 0: no list exists, or none was found */
	int64_t points;
	bool proven;     /* no list has more points; with count 0: there is no list */
	int64_t at_most; /* no list has more points than this; equal to points when proven */
	size_t nodes;    /* how many were looked at */
};

/*
 * The best list of the model: most points, then fewer species, then less weight, then the names
 * first (the must groups' items, then the others, compared item by item). Working memory is taken
 * from the arena and given back. False when there is none, `*ret` untouched. `limits` NULL: the
 * usual ones.
 */
bool ts_search_best(const struct ts_model *model, const struct ts_search_limits *limits,
	struct ts_arena *arena, struct ts_search_list *ret);

#endif
