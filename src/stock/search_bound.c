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

/* A clique of candidates that exclude each other: one role, familiar genera, others or extras. */
enum kind { FRESH, OLD, EXTRA, KIND__COUNT };

struct clique {
	int64_t worth; /* of its best */
	unsigned role;
	enum kind kind;
	bool first; /* its best is the best of that role and kind */
	bool taken;
};

/* Takes the candidate into a clique that all of it conflicts with; false: it needs a new one. */
static bool join_clique(struct ts_search_work *w, const struct clique *list, size_t cliques,
	size_t item, unsigned role, enum kind kind)
{
	for (size_t c = 0; c < cliques; c++) {
		uint64_t *common = w->cliques + c * w->words;

		if (list[c].kind != kind || list[c].role != role || !ts_search_bit(common, item))
			continue;
		for (size_t i = 0; i < w->words; i++)
			common[i] &= w->conflicts[item * w->words + i];
		return true;
	}
	return false;
}

/*
 * The most that `picks` cliques are worth together, extras left out, `familiar` of the old ones at
 * the most, where
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
			bool old = list[c].kind == OLD;
			bool paid = list[c].first && old == ((list[c].role & to_old) != 0);
			int64_t worth =
				list[c].worth + (paid ? ts_search_role_points(w, list[c].role) : 0);

			if (worth > most && !list[c].taken && list[c].kind != EXTRA &&
				(!old || familiar)) {
				best = &list[c];
				most = worth;
			}
		}
		if (!best)
			break;
		sum += most;
		familiar -= best->kind == OLD;
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
		for (size_t d = 0; list[c].first && list[c].kind != OLD && d < count; d++) {
			if (list[d].first && list[d].kind == OLD && list[d].role == list[c].role &&
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

/* What the best extras are worth together: they fill no role. */
static int64_t best_extras(struct clique *list, size_t count, size_t picks)
{
	int64_t sum = 0;

	/* In the order of their worth, like the list they were made from. */
	for (size_t c = 0; c < count && picks; c++) {
		if (list[c].kind != EXTRA)
			continue;
		sum += list[c].worth;
		picks--;
	}
	return sum;
}

static enum kind kind_of(const struct ts_search_work *w, const struct ts_model_item *item)
{
	return item->extra ? EXTRA : ts_search_is_familiar(w->model, item) ? OLD : FRESH;
}

/*
 * Cliques hold one role only, so that a role may be paid to the first of its cliques alone: whoever
 * else fills it is worth no more. They hold familiar genera, others or extras, never two of them,
 * so that the limits on these may be counted by cliques.
 */
int64_t ts_search_cover(struct ts_search_work *w, const struct ts_search_level *l,
	const struct ts_search_candidate *list, size_t from, struct ts_search_picks picks)
{
	struct clique cliques[TS_SEARCH_CLIQUES_MOST];
	size_t count = 0, plain[KIND__COUNT] = {0};
	size_t most[KIND__COUNT] = {picks.mains, l->familiar_picks, picks.extras};
	unsigned seen[2];
	/* whose first is still to come */
	unsigned roles[KIND__COUNT] = {l->open_roles, l->open_roles, 0};

	if (most[OLD] > picks.mains)
		most[OLD] = picks.mains;
	if (!most[OLD])
		roles[OLD] = 0;
	for (size_t i = from; i < l->count && (plain[FRESH] < most[FRESH] || roles[FRESH] ||
						      roles[OLD] || plain[EXTRA] < most[EXTRA]);
		i++) {
		size_t item = list[i].item;
		const struct ts_model_item *of = ts_search_item_of(w, item);
		enum kind kind = kind_of(w, of);
		bool first = of->role & roles[kind];

		if (list[i].worth <= 0 && !first) {
			if (!roles[FRESH] && !roles[OLD])
				break;
			continue;
		}
		if (!first && (plain[kind] >= most[kind] ||
				      join_clique(w, cliques, count, item, of->role, kind)))
			continue;
		roles[kind] &= ~of->role;
		plain[kind] += !first;
		cliques[count] = (struct clique){list[i].worth, of->role, kind, first, false};
		memcpy(w->cliques + count * w->words, w->conflicts + item * w->words,
			w->words * sizeof *w->cliques);
		count++;
	}
	seen[0] = l->open_roles & ~roles[FRESH];
	seen[1] = most[OLD] ? l->open_roles & ~roles[OLD] : 0;
	return best_cliques(w, cliques, count, picks.mains, most[OLD], seen) +
	       best_extras(cliques, count, picks.extras);
}

/* What a candidate is worth with its role, where that is still open. */
static int64_t alone(const struct ts_search_work *w, const struct ts_search_level *l,
	const struct ts_search_candidate *c)
{
	unsigned role = ts_search_item_of(w, c->item)->role & l->open_roles;

	return c->worth + ts_search_role_points(w, role);
}

/* The bound of a node with one candidate taken for granted: one that is no extra, an extra. */
struct beside {
	int64_t main, extra;
};

static struct beside beside(struct ts_search_work *w, const struct ts_search_level *l,
	const struct ts_search_candidate *list, int64_t base)
{
	struct beside b = {TS_SEARCH_NO_LIST, TS_SEARCH_NO_LIST};

	if (l->picks)
		b.main = base + ts_search_cover(w, l, list, 0,
					(struct ts_search_picks){l->picks - 1, l->extra_picks});
	if (l->extra_picks && l->extra_count)
		b.extra = base + ts_search_cover(w, l, list, 0,
					 (struct ts_search_picks){l->picks, l->extra_picks - 1});
	return b;
}

static int64_t rest_of(
	const struct ts_search_work *w, const struct beside *b, const struct ts_search_candidate *c)
{
	return ts_search_item_of(w, c->item)->extra ? b->extra : b->main;
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
	int64_t base = priced_base(w, n, l, price);
	struct beside rest;
	size_t kept = 0;

	if (!ts_search_hopeful(
		    w, base + ts_search_cover(w, l, w->priced, 0, ts_search_all_picks(l)))) {
		l->count = 0;
		return;
	}
	rest = beside(w, l, w->priced, base);
	for (size_t c = 0; c < l->count; c++) {
		int64_t cost = price * ts_search_item_of(w, l->list[c].item)->weight;

		if (ts_search_hopeful(
			    w, rest_of(w, &rest, &l->list[c]) + alone(w, l, &l->list[c]) - cost))
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

	l->count = l->extra_count = 0;
	for (size_t at = 0; at < w->words; at++) {
		for (uint64_t bits = l->open[at]; bits; bits &= bits - 1) {
			size_t i = at * 64 + (size_t)__builtin_ctzll(bits);

			reach |= ts_search_item_of(w, i)->role;
			l->extra_count += ts_search_item_of(w, i)->extra;
			losses |= ts_search_item_of(w, i)->fit < n->fit;
			l->list[l->count++] = (struct ts_search_candidate){l->key[i], i};
		}
	}
	l->open_roles = reach & ~n->roles;
	if (w->model->roles_must & ~n->roles & ~reach)
		l->count = 0; /* nobody left fills what must be filled */
	l->base = n->sum + ts_search_fit_points(w, n->fit) + ts_search_role_points(w, n->roles);
	return losses;
}

/* The best of one kind. */
struct top {
	int64_t at[TS_MODEL_SPECIES_MOST], sum;
	size_t n, most;
};

static void put_on_top(struct top *t, int64_t worth)
{
	size_t at;

	if (worth <= 0 || !t->most || (t->n == t->most && worth <= t->at[t->n - 1]))
		return;
	t->sum += worth - (t->n == t->most ? t->at[t->n - 1] : 0);
	at = t->n < t->most ? t->n++ : t->n - 1;
	for (; at && t->at[at - 1] < worth; at--)
		t->at[at] = t->at[at - 1];
	t->at[at] = worth;
}

/*
 * Drops what is hopeless before anything is sorted: beside an item there are at most so many
 * others, and no better ones than the best, conflicts apart.
 */
static void drop_unsorted(struct ts_search_work *w, struct ts_search_level *l)
{
	struct top mains = {.most = l->picks}, extras = {.most = l->extra_picks};
	int64_t all = l->base;
	size_t kept = 0;

	for (size_t c = 0; c < l->count; c++)
		put_on_top(ts_search_item_of(w, l->list[c].item)->extra ? &extras : &mains,
			alone(w, l, &l->list[c]));
	all += mains.sum + extras.sum;
	for (size_t c = 0; c < l->count; c++) {
		const struct top *own =
			ts_search_item_of(w, l->list[c].item)->extra ? &extras : &mains;
		/* In the place of the last of its kind, where the places are filled. */
		int64_t place = own->n == own->most && own->n ? own->at[own->n - 1] : 0;

		if (ts_search_hopeful(w, all - place + alone(w, l, &l->list[c])))
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
	size_t kept = 0;
	struct beside rest;

	ts_search_sort(l->list, l->count);
	rest = beside(w, l, l->list, l->base);
	for (size_t c = 0; c < l->count; c++) {
		struct ts_search_candidate one = l->list[c];
		int64_t loss = loss_of(w, n, one.item);

		if (!ts_search_hopeful(w, rest_of(w, &rest, &one) + alone(w, l, &one) - loss))
			continue;
		one.worth -= loss / (int64_t)(l->picks + l->extra_picks);
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
	struct beside rest;
	bool losses;

	l->picks = (size_t)w->model->species_most - n->mains;
	l->extra_picks = (size_t)w->model->extras_most - (n->depth - n->mains);
	l->familiar_picks = (size_t)((int)l->picks + n->fresh - n->familiar) / 2;
	losses = gather(w, n, l);
	drop_unsorted(w, l);
	if (losses)
		take_losses(w, n, l);
	ts_search_sort(l->list, l->count);
	rest = beside(w, l, l->list, l->base);
	for (size_t c = 0; c < l->count; c++) {
		if (ts_search_hopeful(w, rest_of(w, &rest, &l->list[c]) + alone(w, l, &l->list[c])))
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

	return base + ts_search_cover(w, l, w->priced, 0, ts_search_all_picks(l));
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
