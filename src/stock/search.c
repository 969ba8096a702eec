/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Branch and bound over the integer model. Points, number of species and weight are one 64-bit
 * worth, so that a bound on it settles ties as well; a second pass, with the best worth known,
 * finds the first list by names. The bounds stand in search_bound.c.
 */
#include "stock/search_work.h"

#include <string.h>

#include "base/arena.h"

#define NODES_BETWEEN_CALLS 65536

/* Keeps the list that the node stands for, where it is allowed and better. */
static void record(struct ts_search_work *w, const struct ts_search_node *n)
{
	int64_t worth =
		n->sum + ts_search_fit_points(w, n->fit) + ts_search_role_points(w, n->roles);

	if (n->mains < (size_t)w->model->species_least || w->model->roles_must & ~n->roles ||
		n->familiar > n->fresh || !ts_search_hopeful(w, worth))
		return;
	w->best = worth;
	w->best_count = n->depth;
	memcpy(w->best_chosen, w->chosen, sizeof w->chosen);
	w->found = w->by_names;
}

/* Notes what a part that is not looked at any more could still hold. */
static void leave_out(struct ts_search_work *w, int64_t bound)
{
	if (bound > w->upper)
		w->upper = bound;
}

static bool count_node(struct ts_search_work *w)
{
	if (w->nodes >= w->nodes_most) {
		w->given_up = true;
		return false;
	}
	w->nodes++;
	if (w->limits && w->limits->progress && w->nodes % NODES_BETWEEN_CALLS == 0)
		w->limits->progress(w->limits->state, w->nodes,
			w->best == TS_SEARCH_NO_LIST ? 0 : w->best / TS_SEARCH_ONE_POINT);
	return true;
}

static void search(struct ts_search_work *w, const struct ts_search_node *n);

/* Chooses the item below the node and searches there. */
static void choose(struct ts_search_work *w, const struct ts_search_node *n, size_t i, bool must)
{
	const struct ts_model_item *item = ts_search_item_of(w, i);
	const uint16_t *frictions = w->model->frictions + w->original[i] * w->model->count;
	const struct ts_search_level *l = &w->levels[n->depth];
	struct ts_search_level *next = &w->levels[n->depth + 1];
	bool old = ts_search_is_familiar(w->model, item);
	struct ts_search_node child = {n->depth + 1, n->sum + l->key[i],
		n->weight_left - item->weight, n->floor_left - item->floor,
		item->fit < n->fit ? item->fit : n->fit, n->roles | item->role,
		n->mains + !item->extra, n->familiar + old,
		n->fresh + (!old && !must && !item->extra)};

	w->chosen[n->depth] = i;
	for (size_t at = 0; at < w->words; at++) {
		next->open[at] = l->open[at] & ~w->conflicts[i * w->words + at];
		if (child.mains == (size_t)w->model->species_most)
			next->open[at] &= w->extras[at];
		if (child.depth - child.mains == (size_t)w->model->extras_most)
			next->open[at] &= ~w->extras[at];
		for (uint64_t bits = next->open[at]; bits; bits &= bits - 1) {
			size_t j = at * 64 + (size_t)__builtin_ctzll(bits);
			const struct ts_model_item *other = ts_search_item_of(w, j);

			next->key[j] = l->key[j] - frictions[w->original[j]] * TS_SEARCH_ONE_POINT;
			if (other->weight > child.weight_left || other->floor > child.floor_left)
				next->open[at] ^= bits & -bits;
		}
	}
	search(w, &child);
}

/* Chooses one item of the must group whose turn it is, each in turn. */
static void search_must(struct ts_search_work *w, const struct ts_search_node *n)
{
	const struct ts_search_level *l = &w->levels[n->depth];

	for (size_t o = 0; o < w->model->count; o++) {
		size_t i = w->place[o];

		if (i < w->model->count && w->model->items[o].group == w->musts[n->depth] &&
			ts_search_bit(l->open, i))
			choose(w, n, i, true);
	}
}

static void close_item(struct ts_search_level *l, size_t i)
{
	l->open[i / 64] &= ~((uint64_t)1 << (i % 64));
}

/* First pass: the most promising candidate first, until the rest together cannot be better. */
static void branch_by_worth(struct ts_search_work *w, const struct ts_search_node *n)
{
	struct ts_search_level *l = &w->levels[n->depth];

	for (size_t c = 0; c < l->count; c++) {
		int64_t bound = l->base + ts_search_cover(w, l, l->list, c, ts_search_all_picks(l));

		if (w->given_up)
			leave_out(w, bound);
		if (w->given_up || !ts_search_hopeful(w, bound))
			return;
		choose(w, n, l->list[c].item, false);
		close_item(l, l->list[c].item);
	}
}

/* Second pass: the candidates in the order of names. */
static void branch_by_names(struct ts_search_work *w, const struct ts_search_node *n)
{
	struct ts_search_level *l = &w->levels[n->depth];

	if (!ts_search_hopeful(
		    w, l->base + ts_search_cover(w, l, l->list, 0, ts_search_all_picks(l))))
		return;
	for (size_t c = 0; c < l->count; c++)
		l->list[c].worth = -(int64_t)w->original[l->list[c].item];
	ts_search_sort(l->list, l->count);
	for (size_t c = 0; c < l->count && !w->found && !w->given_up; c++) {
		choose(w, n, l->list[c].item, false);
		close_item(l, l->list[c].item);
	}
}

static void search(struct ts_search_work *w, const struct ts_search_node *n)
{
	struct ts_search_level *l = &w->levels[n->depth];

	if (w->found)
		return;
	if (n->depth < w->must_count) {
		search_must(w, n);
		return;
	}
	if (n->familiar > n->fresh + w->model->species_most - (int)n->mains)
		return;
	if (!count_node(w)) {
		ts_search_list_candidates(w, n);
		leave_out(w, l->base + ts_search_cover(w, l, l->list, 0, ts_search_all_picks(l)));
		return;
	}
	record(w, n);
	ts_search_list_candidates(w, n);
	memset(l->open, 0, w->words * sizeof *l->open);
	for (size_t c = 0; c < l->count; c++)
		l->open[l->list[c].item / 64] |= (uint64_t)1 << (l->list[c].item % 64);
	if (w->by_names)
		branch_by_names(w, n);
	else
		branch_by_worth(w, n);
}

/* Takes all memory; false when there is none. */
static bool open_work(struct ts_search_work *w, struct ts_arena *arena)
{
	const struct ts_model *m = w->model;

	w->original = ts_arena_array(arena, m->count, sizeof *w->original);
	w->place = ts_arena_array(arena, m->count, sizeof *w->place);
	w->musts = ts_arena_array(arena, m->group_count, sizeof *w->musts);
	w->conflicts = ts_arena_array(arena, m->count * m->words, sizeof *w->conflicts);
	w->extras = ts_arena_array(arena, m->words, sizeof *w->extras);
	w->cliques = ts_arena_array(arena, TS_SEARCH_CLIQUES_MOST * m->words, sizeof *w->cliques);
	w->priced = ts_arena_array(arena, m->count, sizeof *w->priced);
	for (int d = 0; d <= m->species_most + m->extras_most; d++) {
		w->levels[d].open = ts_arena_array(arena, m->words, sizeof(uint64_t));
		w->levels[d].key = ts_arena_array(arena, m->count, sizeof(int64_t));
		w->levels[d].list =
			ts_arena_array(arena, m->count, sizeof(struct ts_search_candidate));
	}
	return !arena->failed && w->levels[0].list;
}

/* Lists the items that matter by their worth, and their conflicts in that order. */
static void arrange(struct ts_search_work *w)
{
	const struct ts_model *m = w->model;
	struct ts_search_candidate *list = w->levels[0].list;

	for (size_t i = 0; i < m->count; i++) {
		w->place[i] = m->count;
		if (m->items[i].weight <= m->weight_most && m->items[i].floor <= m->floor_most &&
			ts_model_matters(m, i))
			list[w->count++] =
				(struct ts_search_candidate){ts_search_item_worth(&m->items[i]), i};
	}
	ts_search_sort(list, w->count);
	w->words = w->count / 64 + 1;
	for (size_t i = 0; i < w->count; i++) {
		w->original[i] = list[i].item;
		w->place[list[i].item] = i;
		w->levels[0].key[i] = list[i].worth;
		if (m->items[list[i].item].extra)
			w->extras[i / 64] |= (uint64_t)1 << (i % 64);
	}
	for (size_t i = 0; i < w->count; i++) {
		for (size_t j = 0; j < w->count; j++) {
			if (ts_search_item_of(w, i)->group == ts_search_item_of(w, j)->group ||
				ts_model_conflicts(m, w->original[i], w->original[j]))
				w->conflicts[i * w->words + j / 64] |= (uint64_t)1 << (j % 64);
		}
	}
	for (size_t g = 0; g < m->group_count; g++) {
		if (m->must[g])
			w->musts[w->must_count++] = g;
	}
}

/* Points that hold at least this worth: the last digits of a worth are species and weight. */
static int64_t points_above(int64_t worth)
{
	int64_t points = worth / TS_SEARCH_ONE_POINT;

	return points * TS_SEARCH_ONE_POINT < worth ? points + 1 : points;
}

/* One pass over the whole tree; the open items of the root are used up by it. */
static void pass(struct ts_search_work *w)
{
	struct ts_search_node root = {
		.weight_left = w->model->weight_most, .floor_left = w->model->floor_most};

	memset(w->levels[0].open, 0, w->words * sizeof *w->levels[0].open);
	for (size_t i = 0; i < w->count; i++) {
		if (ts_search_item_of(w, i)->extra && !w->model->extras_most)
			continue;
		w->levels[0].open[i / 64] |= (uint64_t)1 << (i % 64);
		root.fit = ts_search_item_of(w, i)->fit > root.fit ? ts_search_item_of(w, i)->fit
								   : root.fit;
	}
	if (!w->by_names && w->model->species_most > 1)
		ts_search_find_prices(w, &root);
	if (w->must_count <= (size_t)w->model->species_most + (size_t)w->model->extras_most)
		search(w, &root);
}

static void sort_places(size_t *list, size_t count)
{
	for (size_t i = 1; i < count; i++) {
		size_t at = i, item = list[i];

		for (; at && list[at - 1] > item; at--)
			list[at] = list[at - 1];
		list[at] = item;
	}
}

bool ts_search_best(const struct ts_model *model, const struct ts_search_limits *limits,
	struct ts_arena *arena, struct ts_search_list *ret)
{
	struct ts_search_work w = {.model = model,
		.limits = limits,
		.best = TS_SEARCH_NO_LIST,
		.dropped = TS_SEARCH_NO_LIST,
		.upper = TS_SEARCH_NO_LIST};
	const struct ts_arena before = *arena;
	struct ts_search_list list = {0};

	w.nodes_most = limits && limits->nodes ? limits->nodes : TS_SEARCH_NODES_MOST;
	if (!open_work(&w, arena))
		return false;
	arrange(&w);
	pass(&w);
	list.proven = !w.given_up;
	/* Where nothing was dropped that could be as good, there is no other list to choose from.
	 */
	if (w.best_count && !w.given_up && w.dropped >= w.best) {
		w.by_names = true;
		pass(&w);
	}
	list.count = w.best_count;
	for (size_t i = 0; i < list.count; i++)
		list.chosen[i] = w.original[w.best_chosen[i]];
	sort_places(list.chosen, list.count);
	if (list.count)
		list.points = points_above(w.best);
	list.at_most = list.proven || w.upper < w.best ? list.points : points_above(w.upper);
	list.nodes = w.nodes;
	ts_arena_back(arena, &before);
	*ret = list;
	return true;
}
