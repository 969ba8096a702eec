/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The smallest change of the stock list that leaves no conflict which the list can mend: for every
 * species keep, another number, or none. Up to 16 species all of it is searched; beyond that the
 * species with most conflicts goes until none is left, and the answer says that it is not proven.
 */
#include "stock/check.h"

#include <string.h>

#include "base/arena.h"
#include "stock/levels.h"
#include "stock/rules.h"

/* What a step costs; estimates: a change of number is easier than a farewell. */
#define COST_NUMBER 10
#define COST_LEAVE_OUT 30
#define COST_REHOME 40

#define OPTIONS_MOST (TS_LEVELS_MOST + 2)

struct option {
	struct ts_group group; /* no animals: left out */
	unsigned count;
	int cost;
	bool conflict; /* alone */
	double nitrogen_mg, floor_m2;
};

struct item {
	struct option options[OPTIONS_MOST];
	size_t count;
};

struct work {
	const struct ts_plan *plan;
	const struct ts_practice *practice;
	const struct ts_check *check;
	struct item *items;
	size_t count;
	bool *conflicts; /* of option o of item i and option p of item j */
	double nitrogen_most_mg, floor_most_m2;
	size_t chosen[TS_REPAIR_EXACT], best[TS_REPAIR_EXACT];
	int best_cost;
	int rest[TS_REPAIR_EXACT + 1]; /* what the items from here on cost at the least */
	size_t nodes;
};

/* Nodes after which the best so far is taken, and said to be not proven. */
#define NODES_MOST 50000000

static size_t place(const struct work *w, size_t i, size_t o, size_t j, size_t p)
{
	return ((i * OPTIONS_MOST + o) * w->count + j) * OPTIONS_MOST + p;
}

static bool alone_conflicts(const struct work *w, const struct ts_group *g)
{
	struct ts_rulings all = {.count = 0};

	ts_rules_alone(g, &w->plan->tank, w->practice, &all);
	return ts_rules_cost(&all, w->practice).conflict;
}

static void add_option(struct work *w, size_t i, struct ts_group g, int cost)
{
	const struct ts_plan_group *from = &w->check->groups[i];
	struct item *item = &w->items[i];
	struct option *o = &item->options[item->count];
	double temp_c = w->check->profile.at[TS_TEMPERATURE].given
				? w->check->profile.at[TS_TEMPERATURE].value
				: (double)NAN;

	*o = (struct option){.group = g, .count = ts_group_count(&g), .cost = cost};
	for (size_t k = 0; k < item->count; k++) {
		if (item->options[k].count == o->count && k > 0)
			return;
	}
	if (o->count) {
		o->conflict = alone_conflicts(w, &g) ||
			      (w->check->water_known && from->match.verdict == TS_EXCLUDED);
		o->nitrogen_mg = ts_group_nitrogen_mg_day(&g, &w->plan->tank, temp_c, w->practice);
		o->floor_m2 = ts_group_floor_m2(&g, w->practice);
	}
	item->count++;
}

/* Keep; the numbers in which the species is proposed; leave out. */
static void add_item(struct work *w, size_t i)
{
	const struct ts_plan_group *from = &w->check->groups[i];
	struct ts_level levels[TS_LEVELS_MOST];
	size_t count = ts_levels(from->group.species, levels);

	add_option(w, i, from->group, 0);
	for (size_t l = 0; l < count; l++) {
		struct ts_group g = levels[l].group;

		g.size_cm = from->group.size_cm;
		if (from->group.males && !from->group.females && !from->group.either) {
			g.males = ts_group_count(&g);
			g.females = g.either = 0;
		}
		add_option(w, i, g, COST_NUMBER);
	}
	add_option(w, i, (struct ts_group){.species = from->group.species},
		from->planned ? COST_LEAVE_OUT : COST_REHOME);
}

static void fill_conflicts(struct work *w)
{
	for (size_t i = 0; i < w->count; i++) {
		for (size_t j = i + 1; j < w->count; j++) {
			for (size_t o = 0; o < w->items[i].count; o++) {
				for (size_t p = 0; p < w->items[j].count; p++) {
					const struct option *a = &w->items[i].options[o];
					const struct option *b = &w->items[j].options[p];
					struct ts_rulings all = {.count = 0};

					if (!a->count || !b->count)
						continue;
					ts_rules_together(&a->group, &b->group, &w->plan->tank,
						w->practice, &all);
					w->conflicts[place(w, i, o, j, p)] =
						w->conflicts[place(w, j, p, i, o)] =
							ts_rules_cost(&all, w->practice).conflict;
				}
			}
		}
	}
}

/* What nitrate and buffer bear before they harm. */
static void set_limits(struct work *w)
{
	const struct ts_practice *p = w->practice;
	const struct ts_load *l = &w->check->load;
	const struct ts_span *kh = &w->check->profile.at[TS_KH];
	double share = p->value[TS_P_ROOM_CONFLICT], floor_m2 = ts_tank_floor_m2(&w->plan->tank);
	double no3_new = l->no3_steady_mg_l.value -
			 l->no3_rise_mg_l_week.value / 7 * l->change_days * 100 / l->change_percent;

	enum ts_practice_id limit = w->check->nitrate_sensitive ? TS_P_NITRATE_CONFLICT_SENSITIVE
								: TS_P_NITRATE_CONFLICT;

	w->floor_most_m2 = isnan(floor_m2) ? (double)INFINITY : floor_m2 / share;
	w->nitrogen_most_mg = (double)INFINITY;
	if (!w->check->load_known)
		return;
	w->nitrogen_most_mg =
		ts_nitrogen_for_no3(&w->plan->tank, fmax(p->value[limit] - no3_new, 0), p);
	if (kh->given)
		w->nitrogen_most_mg =
			fmin(w->nitrogen_most_mg, ts_nitrogen_for_buffer(&w->plan->tank, kh->value,
							  p->value[TS_P_BUFFER_ACT], p));
}

/* An option that fails by itself is none; the cheapest of the others bound what is to come. */
static void set_bounds(struct work *w)
{
	for (size_t i = w->count; i-- > 0;) {
		struct item *item = &w->items[i];
		int least = item->options[item->count - 1].cost;

		for (size_t o = 0; o < item->count; o++) {
			struct option *option = &item->options[o];

			option->conflict |= option->nitrogen_mg > w->nitrogen_most_mg ||
					    option->floor_m2 > w->floor_most_m2;
			if (!option->conflict && option->cost < least)
				least = option->cost;
		}
		w->rest[i] = w->rest[i + 1] + least;
	}
}

static bool clashes(const struct work *w, size_t i, size_t o)
{
	if (w->items[i].options[o].conflict)
		return true;
	for (size_t j = 0; j < i; j++) {
		if (w->conflicts[place(w, i, o, j, w->chosen[j])])
			return true;
	}
	return false;
}

/* Branch and bound over the items in turn; ties go to the first found, so to keeping. */
static void search(struct work *w, size_t i, int cost, double nitrogen_mg, double floor_m2)
{
	if (++w->nodes > NODES_MOST || cost + w->rest[i] >= w->best_cost ||
		nitrogen_mg > w->nitrogen_most_mg || floor_m2 > w->floor_most_m2)
		return;
	if (i == w->count) {
		w->best_cost = cost;
		for (size_t k = 0; k < i; k++)
			w->best[k] = w->chosen[k];
		return;
	}
	for (size_t o = 0; o < w->items[i].count; o++) {
		const struct option *option = &w->items[i].options[o];

		if (clashes(w, i, o))
			continue;
		w->chosen[i] = o;
		search(w, i + 1, cost + option->cost, nitrogen_mg + option->nitrogen_mg,
			floor_m2 + option->floor_m2);
	}
}

static void put_steps(const struct work *w, struct ts_arena *arena, struct ts_check *check)
{
	check->repair = ts_arena_array(arena, w->count, sizeof *check->repair);
	if (!check->repair)
		return;
	for (size_t i = 0; i < w->count; i++) {
		const struct option *o = &w->items[i].options[w->best[i]];

		if (w->best[i] == 0)
			continue;
		check->repair[check->repair_count++] = (struct ts_repair_step){
			o->group.species, w->items[i].options[0].count, o->count};
	}
	check->repair_proven = w->nodes <= NODES_MOST;
}

static void exact(const struct ts_plan *plan, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *check)
{
	struct work w = {
		.plan = plan, .practice = practice, .check = check, .count = check->group_count};
	size_t options = check->group_count * OPTIONS_MOST;

	w.items = ts_arena_array(arena, w.count, sizeof *w.items);
	w.conflicts = ts_arena_array(arena, options * options, sizeof *w.conflicts);
	if (!w.items || !w.conflicts)
		return;
	for (size_t i = 0; i < w.count; i++) {
		add_item(&w, i);
		w.best[i] = w.items[i].count - 1; /* an empty tank has no conflict */
		w.best_cost += w.items[i].options[w.best[i]].cost;
	}
	fill_conflicts(&w);
	set_limits(&w);
	set_bounds(&w);
	search(&w, 0, 0, 0, 0);
	put_steps(&w, arena, check);
}

/* A conflict between two groups, or of one alone (`other` = count of groups). */
struct clash {
	size_t subject, other;
};

static size_t index_of(const struct ts_check *c, const struct ts_species *species)
{
	size_t i = 0;

	while (species && i < c->group_count && c->groups[i].group.species != species)
		i++;
	return species ? i : c->group_count;
}

static size_t list_clashes(const struct ts_check *c, struct clash *ret)
{
	size_t count = 0;

	for (size_t k = 0; k < c->count && c->rulings[k].severity >= TS_CONFLICT; k++) {
		if (c->rulings[k].subject)
			ret[count++] = (struct clash){index_of(c, c->rulings[k].subject),
				index_of(c, c->rulings[k].other)};
	}
	return count;
}

/* Drops the clashes that are over with this group, and counts what each is left in. */
static size_t count_clashes(
	struct clash *clashes, size_t count, size_t gone, size_t groups, size_t *in)
{
	size_t left = 0;

	memset(in, 0, (groups + 1) * sizeof *in);
	for (size_t k = 0; k < count; k++) {
		if (clashes[k].subject == gone || clashes[k].other == gone)
			continue;
		in[clashes[k].subject]++;
		in[clashes[k].other]++;
		clashes[left++] = clashes[k];
	}
	return left;
}

/* Too many species to try all: the one in most conflicts goes, again and again. */
static void greedy(struct ts_arena *arena, struct ts_check *check)
{
	size_t groups = check->group_count, none = groups + 1, count;
	struct clash *clashes = ts_arena_array(arena, check->count + 1, sizeof *clashes);
	size_t *in = ts_arena_array(arena, groups + 1, sizeof *in);

	check->repair = ts_arena_array(arena, groups, sizeof *check->repair);
	if (!clashes || !in || !check->repair)
		return;
	count = count_clashes(clashes, list_clashes(check, clashes), none, groups, in);
	while (count) {
		size_t worst = 0;

		for (size_t i = 1; i < groups; i++)
			worst = in[i] > in[worst] ? i : worst;
		check->repair[check->repair_count++] =
			(struct ts_repair_step){check->groups[worst].group.species,
				ts_group_count(&check->groups[worst].group), 0};
		count = count_clashes(clashes, count, worst, groups, in);
	}
}

void ts_check_repair(const struct ts_plan *plan, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *check)
{
	if (!check->group_count)
		return;
	if (check->group_count <= TS_REPAIR_EXACT)
		exact(plan, practice, arena, check);
	else
		greedy(arena, check);
}
