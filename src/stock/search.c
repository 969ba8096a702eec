/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Branch and bound over the integer model. Points, number of species and weight are one 64-bit
 * worth, so that a bound on it settles ties as well; a second pass, with the best worth known,
 * finds the first list by names. The bound at a node: what is chosen, plus the best worths of a
 * greedy cover of the rest by cliques of conflicts (each clique gives one at the most), plus the
 * zones that can still be reached; a loss of fit is shared evenly among the picks that are left,
 * which never overstates it.
 */
#include "stock/search.h"

#include <string.h>

#include "base/arena.h"

/* One point, one species in units of weight: a list weighs less than ONE_SPECIES, see model.h. */
#define ONE_SPECIES ((int64_t)1 << 26)
#define ONE_POINT ((int64_t)1 << 32)
_Static_assert((int64_t)TS_MODEL_SPECIES_MOST *TS_MODEL_FIGURE_MOST < ONE_SPECIES, "weights");
_Static_assert((TS_MODEL_SPECIES_MOST + 1) * ONE_SPECIES < ONE_POINT, "species");

/* Price times weight stays below this: far beyond any worth, far from an overflow. */
#define PRICES_MOST ((int64_t)1 << 50)
#define PRICES 3
#define NO_LIST INT64_MIN
#define NODES_BETWEEN_CALLS 65536

struct candidate {
	int64_t worth; /* with the share of the loss of fit taken off */
	size_t item;
};

/* What is chosen so far, summed up. */
struct node {
	size_t depth;
	int64_t sum; /* worth of the chosen but for fit and zones */
	int64_t weight_left, floor_left;
	int fit;
	unsigned zones;
	int familiar, fresh; /* chosen outside the must groups */
};

struct level {
	uint64_t *open; /* items that may still join what is chosen */
	int64_t *key;   /* by item: its worth less its frictions with the chosen */
	struct candidate *list;
	size_t count; /* of list */
	int64_t base; /* worth that is sure or within reach whatever is picked */
	size_t picks; /* how many more may be chosen */
	size_t familiar_picks;
};

/*
 * The search sees the items that matter only, in the order of their worth: `original` leads back.
 */
struct work {
	const struct ts_model *model;
	const struct ts_search_limits *limits;
	size_t count, words;
	size_t *original, *place; /* place: the other way round, model->count = left out */
	size_t *musts, must_count;
	uint64_t *conflicts; /* rows of the items that matter; the own group is in them */
	struct level levels[TS_MODEL_SPECIES_MOST + 1];
	uint64_t *cliques;        /* room for one row per pick */
	struct candidate *priced; /* room for a list */
	int64_t prices[PRICES];   /* worth of one unit of weight; 0: the weight does not bind */
	size_t chosen[TS_MODEL_SPECIES_MOST];
	size_t best_chosen[TS_MODEL_SPECIES_MOST];
	size_t best_count;
	int64_t best, upper;
	size_t nodes, nodes_most;
	bool by_names; /* second pass: the first list of worth `best`, in the order of names */
	bool found, given_up;
};

static const struct ts_model_item *item_of(const struct work *w, size_t i)
{
	return &w->model->items[w->original[i]];
}

static bool bit(const uint64_t *row, size_t i)
{
	return row[i / 64] >> (i % 64) & 1;
}

static int64_t item_worth(const struct ts_model_item *item)
{
	return item->value * ONE_POINT - ONE_SPECIES - item->weight;
}

static bool is_familiar(const struct ts_model *m, const struct ts_model_item *item)
{
	return m->familiar[item->genus] && !m->must[item->group];
}

static int64_t zone_points(const struct work *w, unsigned zones)
{
	int64_t n = 0;

	for (int z = 0; z < TS_ZONE__COUNT; z++)
		n += zones >> z & 1;
	return n * w->model->zone_points * ONE_POINT;
}

static int64_t fit_points(const struct work *w, int fit)
{
	return (int64_t)w->model->fit_points * fit * ONE_POINT;
}

/* Whether a bound leaves hope: for something better, or for an equal list in the second pass. */
static bool hopeful(const struct work *w, int64_t bound)
{
	return w->by_names ? bound >= w->best : bound > w->best;
}

static bool before(const struct candidate *a, const struct candidate *b)
{
	return a->worth != b->worth ? a->worth > b->worth : a->item < b->item;
}

/* Shell's sort: the lists are short and nearly in order, since they are made in that order. */
static void sort_candidates(struct candidate *list, size_t count)
{
	static const size_t gaps[] = {301, 132, 57, 23, 10, 4, 1};

	for (size_t g = 0; g < sizeof gaps / sizeof *gaps; g++) {
		size_t gap = gaps[g];

		for (size_t i = gap; i < count; i++) {
			struct candidate c = list[i];
			size_t at = i;

			for (; at >= gap && before(&c, &list[at - gap]); at -= gap)
				list[at] = list[at - gap];
			list[at] = c;
		}
	}
}

/* Takes the candidate into a clique that all of it conflicts with; false: it needs a new one. */
static bool join_clique(struct work *w, const bool *familiar, size_t cliques, size_t item, bool old)
{
	for (size_t c = 0; c < cliques; c++) {
		uint64_t *common = w->cliques + c * w->words;

		if (familiar[c] != old || !bit(common, item))
			continue;
		for (size_t i = 0; i < w->words; i++)
			common[i] &= w->conflicts[item * w->words + i];
		return true;
	}
	return false;
}

/*
 * At the most this much can `picks` of the candidates from `from` on add. Cliques hold familiar
 * genera or others, never both, so that the limit on the familiar ones may be counted by cliques.
 */
static int64_t cover(struct work *w, const struct level *l, const struct candidate *list,
	size_t from, size_t picks)
{
	bool familiar[TS_MODEL_SPECIES_MOST];
	size_t cliques = 0, familiar_left = l->familiar_picks;
	int64_t sum = 0;

	for (size_t i = from; i < l->count && cliques < picks && list[i].worth > 0; i++) {
		size_t item = list[i].item;
		bool old = is_familiar(w->model, item_of(w, item));

		if (join_clique(w, familiar, cliques, item, old) || (old && !familiar_left))
			continue;
		familiar_left -= old;
		familiar[cliques] = old;
		memcpy(w->cliques + cliques * w->words, w->conflicts + item * w->words,
			w->words * sizeof *w->cliques);
		cliques++;
		sum += list[i].worth;
	}
	return sum;
}

/* Keeps the list that the node stands for, where it is allowed and better. */
static void record(struct work *w, const struct node *n)
{
	int64_t worth = n->sum + fit_points(w, n->fit) + zone_points(w, n->zones);

	if (n->depth == 0 || n->familiar > n->fresh || !hopeful(w, worth))
		return;
	w->best = worth;
	w->best_count = n->depth;
	memcpy(w->best_chosen, w->chosen, sizeof w->chosen);
	w->found = w->by_names;
}

/* Notes what a part that is not looked at any more could still hold. */
static void leave_out(struct work *w, int64_t bound)
{
	if (bound > w->upper)
		w->upper = bound;
}

static bool count_node(struct work *w)
{
	if (w->nodes >= w->nodes_most) {
		w->given_up = true;
		return false;
	}
	w->nodes++;
	if (w->limits && w->limits->progress && w->nodes % NODES_BETWEEN_CALLS == 0)
		w->limits->progress(
			w->limits->state, w->nodes, w->best == NO_LIST ? 0 : w->best / ONE_POINT);
	return true;
}

/*
 * The bound once more where the weight binds: every unit of it has a price, and what is left of it
 * is sold at that price. For the right price this is the fractional knapsack; any price is valid.
 * Sorts a copy of the candidates by what they are worth beyond the price of their weight.
 */
static int64_t priced_base(
	struct work *w, const struct node *n, const struct level *l, int64_t price)
{
	for (size_t c = 0; c < l->count; c++) {
		w->priced[c] = l->list[c];
		w->priced[c].worth -= price * item_of(w, l->list[c].item)->weight;
	}
	sort_candidates(w->priced, l->count);
	return l->base + price * n->weight_left;
}

/* Drops the candidates that the price of their weight shows to be hopeless. */
static void drop_by_price(struct work *w, const struct node *n, struct level *l, int64_t price)
{
	int64_t base = priced_base(w, n, l, price), rest;
	size_t kept = 0;

	if (!hopeful(w, base + cover(w, l, w->priced, 0, l->picks))) {
		l->count = 0;
		return;
	}
	rest = base + cover(w, l, w->priced, 0, l->picks - 1);
	for (size_t c = 0; c < l->count; c++) {
		int64_t cost = price * item_of(w, l->list[c].item)->weight;

		if (hopeful(w, rest + l->list[c].worth - cost))
			l->list[kept++] = l->list[c];
	}
	l->count = kept;
}

/* What choosing the item takes off the points for the least fit, at once and whatever follows. */
static int64_t loss_of(const struct work *w, const struct node *n, size_t i)
{
	int fit = item_of(w, i)->fit;

	return fit < n->fit ? fit_points(w, n->fit - fit) : 0;
}

/* The open items of a node; true when some of them are served worse than all chosen so far. */
static bool gather(struct work *w, const struct node *n, struct level *l)
{
	unsigned reach = n->zones;
	bool losses = false;

	l->count = 0;
	for (size_t at = 0; at < w->words && l->picks; at++) {
		for (uint64_t bits = l->open[at]; bits; bits &= bits - 1) {
			size_t i = at * 64 + (size_t)__builtin_ctzll(bits);

			reach |= item_of(w, i)->zones;
			losses |= item_of(w, i)->fit < n->fit;
			l->list[l->count++] = (struct candidate){l->key[i], i};
		}
	}
	l->base = n->sum + fit_points(w, n->fit) + zone_points(w, reach);
	return losses;
}

/*
 * Drops the items whose own loss of fit is more than the best of the others can make up; then each
 * of the rest carries its share of its loss.
 */
static void take_losses(struct work *w, const struct node *n, struct level *l)
{
	int64_t rest;
	size_t kept = 0;

	sort_candidates(l->list, l->count);
	rest = l->base + cover(w, l, l->list, 0, l->picks - 1);
	for (size_t c = 0; c < l->count; c++) {
		struct candidate one = l->list[c];
		int64_t loss = loss_of(w, n, one.item);

		if (!hopeful(w, rest + one.worth - loss))
			continue;
		one.worth -= loss / (int64_t)l->picks;
		l->list[kept++] = one;
	}
	l->count = kept;
}

/* Lists the open items of a node, best first, without those that cannot be part of a better list.
 */
static void list_candidates(struct work *w, const struct node *n)
{
	struct level *l = &w->levels[n->depth];
	int64_t rest;

	l->picks = (size_t)w->model->species_most - n->depth;
	l->familiar_picks = (size_t)((int)l->picks + n->fresh - n->familiar) / 2;
	if (gather(w, n, l))
		take_losses(w, n, l);
	sort_candidates(l->list, l->count);
	rest = l->picks ? l->base + cover(w, l, l->list, 0, l->picks - 1) : 0;
	while (l->count && !hopeful(w, rest + l->list[l->count - 1].worth))
		l->count--;
	for (size_t p = 0; p < PRICES && w->prices[0] && l->count; p++)
		drop_by_price(w, n, l, w->prices[p]);
}

static void search(struct work *w, const struct node *n);

/* Chooses the item below the node and searches there. */
static void choose(struct work *w, const struct node *n, size_t i, bool must)
{
	const struct ts_model_item *item = item_of(w, i);
	const uint16_t *frictions = w->model->frictions + w->original[i] * w->model->count;
	const struct level *l = &w->levels[n->depth];
	struct level *next = &w->levels[n->depth + 1];
	bool old = is_familiar(w->model, item);
	struct node child = {n->depth + 1, n->sum + l->key[i], n->weight_left - item->weight,
		n->floor_left - item->floor, item->fit < n->fit ? item->fit : n->fit,
		n->zones | item->zones, n->familiar + old, n->fresh + (!old && !must)};

	w->chosen[n->depth] = i;
	for (size_t at = 0; at < w->words; at++) {
		next->open[at] = l->open[at] & ~w->conflicts[i * w->words + at];
		for (uint64_t bits = next->open[at]; bits; bits &= bits - 1) {
			size_t j = at * 64 + (size_t)__builtin_ctzll(bits);
			const struct ts_model_item *other = item_of(w, j);

			next->key[j] = l->key[j] - frictions[w->original[j]] * ONE_POINT;
			if (other->weight > child.weight_left || other->floor > child.floor_left)
				next->open[at] ^= bits & -bits;
		}
	}
	search(w, &child);
}

/* Chooses one item of the must group whose turn it is, each in turn. */
static void search_must(struct work *w, const struct node *n)
{
	const struct level *l = &w->levels[n->depth];

	for (size_t o = 0; o < w->model->count; o++) {
		size_t i = w->place[o];

		if (i < w->model->count && w->model->items[o].group == w->musts[n->depth] &&
			bit(l->open, i))
			choose(w, n, i, true);
	}
}

static void close_item(struct level *l, size_t i)
{
	l->open[i / 64] &= ~((uint64_t)1 << (i % 64));
}

/* First pass: the most promising candidate first, until the rest together cannot be better. */
static void branch_by_worth(struct work *w, const struct node *n)
{
	struct level *l = &w->levels[n->depth];

	for (size_t c = 0; c < l->count; c++) {
		int64_t bound = l->base + cover(w, l, l->list, c, l->picks);

		if (w->given_up)
			leave_out(w, bound);
		if (w->given_up || !hopeful(w, bound))
			return;
		choose(w, n, l->list[c].item, false);
		close_item(l, l->list[c].item);
	}
}

/* Second pass: the candidates in the order of names. */
static void branch_by_names(struct work *w, const struct node *n)
{
	struct level *l = &w->levels[n->depth];

	if (!hopeful(w, l->base + cover(w, l, l->list, 0, l->picks)))
		return;
	for (size_t c = 0; c < l->count; c++)
		l->list[c].worth = -(int64_t)w->original[l->list[c].item];
	sort_candidates(l->list, l->count);
	for (size_t c = 0; c < l->count && !w->found && !w->given_up; c++) {
		choose(w, n, l->list[c].item, false);
		close_item(l, l->list[c].item);
	}
}

static void search(struct work *w, const struct node *n)
{
	struct level *l = &w->levels[n->depth];

	if (w->found)
		return;
	if (n->depth < w->must_count) {
		search_must(w, n);
		return;
	}
	if (n->familiar > n->fresh + w->model->species_most - (int)n->depth)
		return;
	if (!count_node(w)) {
		list_candidates(w, n);
		leave_out(w, l->base + cover(w, l, l->list, 0, l->picks));
		return;
	}
	record(w, n);
	list_candidates(w, n);
	memset(l->open, 0, w->words * sizeof *l->open);
	for (size_t c = 0; c < l->count; c++)
		l->open[l->list[c].item / 64] |= (uint64_t)1 << (l->list[c].item % 64);
	if (w->by_names)
		branch_by_names(w, n);
	else
		branch_by_worth(w, n);
}

/* Takes all memory; false when there is none. */
static bool open_work(struct work *w, struct ts_arena *arena)
{
	const struct ts_model *m = w->model;

	w->original = ts_arena_array(arena, m->count, sizeof *w->original);
	w->place = ts_arena_array(arena, m->count, sizeof *w->place);
	w->musts = ts_arena_array(arena, m->group_count, sizeof *w->musts);
	w->conflicts = ts_arena_array(arena, m->count * m->words, sizeof *w->conflicts);
	w->cliques = ts_arena_array(arena, TS_MODEL_SPECIES_MOST * m->words, sizeof *w->cliques);
	w->priced = ts_arena_array(arena, m->count, sizeof *w->priced);
	for (int d = 0; d <= m->species_most; d++) {
		w->levels[d].open = ts_arena_array(arena, m->words, sizeof(uint64_t));
		w->levels[d].key = ts_arena_array(arena, m->count, sizeof(int64_t));
		w->levels[d].list = ts_arena_array(arena, m->count, sizeof(struct candidate));
	}
	return !arena->failed && w->levels[0].list;
}

/* Lists the items that matter by their worth, and their conflicts in that order. */
static void arrange(struct work *w)
{
	const struct ts_model *m = w->model;
	struct candidate *list = w->levels[0].list;

	for (size_t i = 0; i < m->count; i++) {
		w->place[i] = m->count;
		if (m->items[i].weight <= m->weight_most && m->items[i].floor <= m->floor_most &&
			ts_model_matters(m, i))
			list[w->count++] = (struct candidate){item_worth(&m->items[i]), i};
	}
	sort_candidates(list, w->count);
	w->words = w->count / 64 + 1;
	for (size_t i = 0; i < w->count; i++) {
		w->original[i] = list[i].item;
		w->place[list[i].item] = i;
		w->levels[0].key[i] = list[i].worth;
	}
	for (size_t i = 0; i < w->count; i++) {
		for (size_t j = 0; j < w->count; j++) {
			if (item_of(w, i)->group == item_of(w, j)->group ||
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
	int64_t points = worth / ONE_POINT;

	return points * ONE_POINT < worth ? points + 1 : points;
}

/* The bound of the whole tree at a price of weight. */
static int64_t bound_at(struct work *w, const struct node *root, int64_t price)
{
	const struct level *l = &w->levels[0];
	int64_t base = priced_base(w, root, l, price);

	return base + cover(w, l, w->priced, 0, l->picks);
}

/*
 * The price with the least bound for the whole tree, by thirds (the bound is convex in it, nearly
 * so with cliques); further down more or less of it may be better.
 */
static void find_prices(struct work *w, const struct node *root)
{
	int64_t low = 0, high = PRICES_MOST / (root->weight_left > 0 ? root->weight_left : 1);

	list_candidates(w, root);
	while (high - low > 2) {
		int64_t third = (high - low) / 3;

		if (bound_at(w, root, low + third) <= bound_at(w, root, high - third))
			high -= third;
		else
			low += third;
	}
	if (bound_at(w, root, low) >= bound_at(w, root, 0))
		low = 0;
	w->prices[0] = low;
	w->prices[1] = low / 2;
	w->prices[2] = 2 * low;
}

/* One pass over the whole tree; the open items of the root are used up by it. */
static void pass(struct work *w)
{
	struct node root = {
		.weight_left = w->model->weight_most, .floor_left = w->model->floor_most};

	memset(w->levels[0].open, 0, w->words * sizeof *w->levels[0].open);
	for (size_t i = 0; i < w->count; i++) {
		w->levels[0].open[i / 64] |= (uint64_t)1 << (i % 64);
		root.fit = item_of(w, i)->fit > root.fit ? item_of(w, i)->fit : root.fit;
	}
	if (!w->by_names && w->model->species_most > 1)
		find_prices(w, &root);
	if (w->must_count <= (size_t)w->model->species_most)
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
	struct work w = {.model = model, .limits = limits, .best = NO_LIST, .upper = NO_LIST};
	struct ts_search_list list = {0};

	w.nodes_most = limits && limits->nodes ? limits->nodes : TS_SEARCH_NODES_MOST;
	if (!open_work(&w, arena))
		return false;
	arrange(&w);
	pass(&w);
	list.proven = !w.given_up;
	if (w.best_count && !w.given_up) {
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
	*ret = list;
	return true;
}
