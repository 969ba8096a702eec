/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The bounds of the search. At a node: what is chosen, plus the best worths of a greedy cover of
 * the rest by cliques of conflicts (each clique gives one at the most), each role that is open paid
 * once; a loss of fit is shared evenly among the picks that are left, which never overstates it.
 */
#include "stock/search_work.h"

#include <string.h>

static bool before(const struct ts_search_candidate *a, const struct ts_search_candidate *b)
{
	return a->worth != b->worth ? a->worth > b->worth : a->item < b->item;
}

/* Shell's sort: the lists are short and nearly in order, since they are made in that order. */
void ts_search_sort(struct ts_search_candidate *list, size_t count)
{
	static const size_t gaps[] = {301, 132, 57, 23, 10, 4, 1};

	for (size_t g = 0; g < sizeof gaps / sizeof *gaps; g++) {
		size_t gap = gaps[g];

		for (size_t i = gap; i < count; i++) {
			struct ts_search_candidate c = list[i];
			size_t at = i;

			for (; at >= gap && before(&c, &list[at - gap]); at -= gap)
				list[at] = list[at - gap];
			list[at] = c;
		}
	}
}

/* A clique of candidates that exclude each other: one role, familiar genera or others. */
struct clique {
	int64_t worth; /* of its best */
	unsigned role;
	bool old, first; /* first: its best is the best of that role and kind */
	bool taken;
};

/* Takes the candidate into a clique that all of it conflicts with; false: it needs a new one. */
static bool join_clique(struct ts_search_work *w, const struct clique *list, size_t cliques,
	size_t item, unsigned role, bool old)
{
	for (size_t c = 0; c < cliques; c++) {
		uint64_t *common = w->cliques + c * w->words;

		if (list[c].old != old || list[c].role != role || !ts_search_bit(common, item))
			continue;
		for (size_t i = 0; i < w->words; i++)
			common[i] &= w->conflicts[item * w->words + i];
		return true;
	}
	return false;
}

/*
 * The most that `picks` cliques are worth together, `familiar` of the old ones at the most, where
 * the roles of `to_old` are paid to their first old clique and all others to their first new one.
 */
static int64_t paid_so(const struct ts_search_work *w, struct clique *list, size_t count,
	size_t picks, size_t familiar, unsigned to_old)
{
	int64_t sum = 0;

	for (size_t c = 0; c < count; c++)
		list[c].taken = false;
	for (; picks; picks--) {
		struct clique *best = NULL;
		int64_t most = 0;

		for (size_t c = 0; c < count; c++) {
			bool paid = list[c].first && list[c].old == ((list[c].role & to_old) != 0);
			int64_t worth =
				list[c].worth + (paid ? ts_search_role_points(w, list[c].role) : 0);

			if (worth > most && !list[c].taken && (!list[c].old || familiar)) {
				best = &list[c];
				most = worth;
			}
		}
		if (!best)
			break;
		sum += most;
		familiar -= best->old;
		best->taken = true;
	}
	return sum;
}

/* The same, whoever the roles are paid to: where both kinds have a first, each may be barred. */
static int64_t best_cliques(const struct ts_search_work *w, struct clique *list, size_t count,
	size_t picks, size_t familiar, const unsigned seen[2])
{
	unsigned only_old = seen[1] & ~seen[0], both = seen[1] & seen[0], some = both;
	int64_t best;

	for (size_t c = 0; c < count; c++) { /* a new one that is worth as much is never barred */
		for (size_t d = 0; list[c].first && !list[c].old && d < count; d++) {
			if (list[d].first && list[d].old && list[d].role == list[c].role &&
				list[d].worth <= list[c].worth)
				both &= ~list[c].role;
		}
	}
	some = both;
	best = paid_so(w, list, count, picks, familiar, only_old);
	for (; some; some = (some - 1) & both) {
		int64_t sum = paid_so(w, list, count, picks, familiar, only_old | some);

		best = sum > best ? sum : best;
	}
	return best;
}

/*
 * At the most this much can `picks` of the candidates from `from` on add. Cliques hold one role
 * only, so that a role may be paid to the first of its cliques alone: whoever else fills it is
 * worth no more. They hold familiar genera or others, never both, so that the limit on the familiar
 * ones may be counted by cliques.
 */
int64_t ts_search_cover(struct ts_search_work *w, const struct ts_search_level *l,
	const struct ts_search_candidate *list, size_t from, size_t picks)
{
	struct clique cliques[TS_SEARCH_CLIQUES_MOST];
	size_t count = 0, plain[2] = {0, 0}, most[2] = {picks, l->familiar_picks};
	unsigned seen[2];
	unsigned roles[2] = {l->open_roles, l->open_roles}; /* whose first is still to come */

	if (most[1] > picks)
		most[1] = picks;
	if (!most[1])
		roles[1] = 0;
	for (size_t i = from; i < l->count && (plain[0] < most[0] || roles[0] || roles[1]); i++) {
		size_t item = list[i].item;
		const struct ts_model_item *of = ts_search_item_of(w, item);
		bool old = ts_search_is_familiar(w->model, of), first = of->role & roles[old];

		if (list[i].worth <= 0 && !first) {
			if (!roles[0] && !roles[1])
				break;
			continue;
		}
		if (!first && (plain[old] >= most[old] ||
				      join_clique(w, cliques, count, item, of->role, old)))
			continue;
		roles[old] &= ~of->role;
		plain[old] += !first;
		cliques[count] = (struct clique){list[i].worth, of->role, old, first, false};
		memcpy(w->cliques + count * w->words, w->conflicts + item * w->words,
			w->words * sizeof *w->cliques);
		count++;
	}
	seen[0] = l->open_roles & ~roles[0];
	seen[1] = most[1] ? l->open_roles & ~roles[1] : 0;
	return best_cliques(w, cliques, count, picks, most[1], seen);
}

/* What a candidate is worth with its role, where that is still open. */
static int64_t alone(const struct ts_search_work *w, const struct ts_search_level *l,
	const struct ts_search_candidate *c)
{
	unsigned role = ts_search_item_of(w, c->item)->role & l->open_roles;

	return c->worth + ts_search_role_points(w, role);
}

/*
 * The bound once more where the weight binds: every unit of it has a price, and what is left of it
 * is sold at that price. For the right price this is the fractional knapsack; any price is valid.
 * Sorts a copy of the candidates by what they are worth beyond the price of their weight.
 */
static int64_t priced_base(struct ts_search_work *w, const struct ts_search_node *n,
	const struct ts_search_level *l, int64_t price)
{
	for (size_t c = 0; c < l->count; c++) {
		w->priced[c] = l->list[c];
		w->priced[c].worth -= price * ts_search_item_of(w, l->list[c].item)->weight;
	}
	ts_search_sort(w->priced, l->count);
	return l->base + price * n->weight_left;
}

/* Drops the candidates that the price of their weight shows to be hopeless. */
static void drop_by_price(struct ts_search_work *w, const struct ts_search_node *n,
	struct ts_search_level *l, int64_t price)
{
	int64_t base = priced_base(w, n, l, price), rest;
	size_t kept = 0;

	if (!ts_search_hopeful(w, base + ts_search_cover(w, l, w->priced, 0, l->picks))) {
		l->count = 0;
		return;
	}
	rest = base + ts_search_cover(w, l, w->priced, 0, l->picks - 1);
	for (size_t c = 0; c < l->count; c++) {
		int64_t cost = price * ts_search_item_of(w, l->list[c].item)->weight;

		if (ts_search_hopeful(w, rest + alone(w, l, &l->list[c]) - cost))
			l->list[kept++] = l->list[c];
	}
	l->count = kept;
}

/* What choosing the item takes off the points for the least fit, at once and whatever follows. */
static int64_t loss_of(const struct ts_search_work *w, const struct ts_search_node *n, size_t i)
{
	int fit = ts_search_item_of(w, i)->fit;

	return fit < n->fit ? ts_search_fit_points(w, n->fit - fit) : 0;
}

/* The open items of a node; true when some of them are served worse than all chosen so far. */
static bool gather(
	struct ts_search_work *w, const struct ts_search_node *n, struct ts_search_level *l)
{
	unsigned reach = 0;
	bool losses = false;

	l->count = 0;
	for (size_t at = 0; at < w->words && l->picks; at++) {
		for (uint64_t bits = l->open[at]; bits; bits &= bits - 1) {
			size_t i = at * 64 + (size_t)__builtin_ctzll(bits);

			reach |= ts_search_item_of(w, i)->role;
			losses |= ts_search_item_of(w, i)->fit < n->fit;
			l->list[l->count++] = (struct ts_search_candidate){l->key[i], i};
		}
	}
	l->open_roles = reach & ~n->roles;
	l->base = n->sum + ts_search_fit_points(w, n->fit) + ts_search_role_points(w, n->roles);
	return losses;
}

/*
 * Drops what is hopeless before anything is sorted: beside an item there are at most so many
 * others, and no better ones than the best, conflicts apart.
 */
static void drop_unsorted(struct ts_search_work *w, struct ts_search_level *l)
{
	int64_t top[TS_MODEL_SPECIES_MOST], rest = l->base;
	size_t most = l->picks ? l->picks - 1 : 0, n = 0, kept = 0;

	for (size_t c = 0; c < l->count && most; c++) {
		int64_t worth = alone(w, l, &l->list[c]);
		size_t at = n;

		if (worth <= 0 || (n == most && worth <= top[n - 1]))
			continue;
		at = n < most ? n++ : n - 1;
		for (; at && top[at - 1] < worth; at--)
			top[at] = top[at - 1];
		top[at] = worth;
	}
	for (size_t i = 0; i < n; i++)
		rest += top[i];
	for (size_t c = 0; c < l->count; c++) {
		if (ts_search_hopeful(w, rest + alone(w, l, &l->list[c])))
			l->list[kept++] = l->list[c];
	}
	l->count = kept;
}

/*
 * Drops the items whose own loss of fit is more than the best of the others can make up; then each
 * of the rest carries its share of its loss.
 */
static void take_losses(
	struct ts_search_work *w, const struct ts_search_node *n, struct ts_search_level *l)
{
	int64_t rest;
	size_t kept = 0;

	ts_search_sort(l->list, l->count);
	rest = l->base + ts_search_cover(w, l, l->list, 0, l->picks - 1);
	for (size_t c = 0; c < l->count; c++) {
		struct ts_search_candidate one = l->list[c];
		int64_t loss = loss_of(w, n, one.item);

		if (!ts_search_hopeful(w, rest + alone(w, l, &one) - loss))
			continue;
		one.worth -= loss / (int64_t)l->picks;
		l->list[kept++] = one;
	}
	l->count = kept;
}

/* Lists the open items of a node, best first, without those that cannot be part of a better list.
 */
void ts_search_list_candidates(struct ts_search_work *w, const struct ts_search_node *n)
{
	struct ts_search_level *l = &w->levels[n->depth];
	size_t kept = 0;
	int64_t rest;
	bool losses;

	l->picks = (size_t)w->model->species_most - n->depth;
	l->familiar_picks = (size_t)((int)l->picks + n->fresh - n->familiar) / 2;
	losses = gather(w, n, l);
	drop_unsorted(w, l);
	if (losses)
		take_losses(w, n, l);
	ts_search_sort(l->list, l->count);
	rest = l->picks ? l->base + ts_search_cover(w, l, l->list, 0, l->picks - 1) : 0;
	for (size_t c = 0; c < l->count; c++) {
		if (ts_search_hopeful(w, rest + alone(w, l, &l->list[c])))
			l->list[kept++] = l->list[c];
	}
	l->count = kept;
	for (size_t p = 0; p < TS_SEARCH_PRICES && w->prices[0] && l->count; p++)
		drop_by_price(w, n, l, w->prices[p]);
}

/* The bound of the whole tree at a price of weight. */
static int64_t bound_at(struct ts_search_work *w, const struct ts_search_node *root, int64_t price)
{
	const struct ts_search_level *l = &w->levels[0];
	int64_t base = priced_base(w, root, l, price);

	return base + ts_search_cover(w, l, w->priced, 0, l->picks);
}

/*
 * The price with the least bound for the whole tree, by thirds (the bound is convex in it, nearly
 * so with cliques); further down more or less of it may be better.
 */
void ts_search_find_prices(struct ts_search_work *w, const struct ts_search_node *root)
{
	int64_t low = 0,
		high = TS_SEARCH_PRICES_MOST / (root->weight_left > 0 ? root->weight_left : 1);

	ts_search_list_candidates(w, root);
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
