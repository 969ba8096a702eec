/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The integer model of a proposal: candidates in their numbers become items with points, load and
 * floor, the rules between them conflicts and frictions.
 */
#include "stock/propose_work.h"

#include <stdlib.h>

#include "base/arena.h"
#include "base/number.h"
#include "stock/compose.h"
#include "stock/judge.h"
#include "stock/rules.h"

/* The model's units of load and floor: 0.01 mg of nitrogen a day, cm2. */
#define LOAD_UNITS 100.0
#define FLOOR_UNITS 1e4
#define SPECIES_MOST ((size_t)(TS_MODEL_SPECIES_MOST - TS_EXTRAS_MOST))

size_t ts_proposer_species_most(const struct ts_proposer *b)
{
	double litres = ts_tank_net_l(b->wish->tank, b->wish->practice);
	enum ts_practice_id id = TS_P_SPECIES_60;
	size_t most;

	if (litres >= 60)
		id = TS_P_SPECIES_120;
	if (litres >= 120)
		id = TS_P_SPECIES_250;
	if (litres > 250)
		id = TS_P_SPECIES_MORE;
	most = b->wish->species_most ? b->wish->species_most : (size_t)ts_proposer_value(b, id);
	if (b->wish->theme == TS_THEME_ONE_SPECIES)
		most = 1;
	if (most < b->wish->resident_count + b->wish->with_count)
		most = b->wish->resident_count + b->wish->with_count;
	return most < SPECIES_MOST ? most : SPECIES_MOST;
}

#define POINTS_MOST 1e9

/* A whole number whatever a record holds: beyond all bounds the bound, of no figure none. */
static int whole(double x)
{
	if (isnan(x))
		return 0;
	return (int)fmin(fmax(x, -POINTS_MOST), POINTS_MOST);
}

static int rounded(double x)
{
	return whole(floor(x + 0.5));
}

/* A limit of the model; where it is not known, as of a tank without measures, nothing may be used.
 */
static int64_t within(double limit)
{
	return limit >= 0 ? (int64_t)fmin(floor(limit), 1e12) : 0;
}

/* The levels in which a candidate may be asked about; residents stay or become more. */
static size_t levels_of(const struct ts_candidacy *c, struct ts_level ret[TS_LEVELS_MOST + 1])
{
	struct ts_level usual[TS_LEVELS_MOST];
	size_t n = ts_levels(c->match.species, usual), count = 0;
	const struct ts_group *there = c->resident;

	if (there)
		ret[count++] = (struct ts_level){.group = *there,
			.comfortable =
				ts_group_count(there) >= c->match.species->group.comfortable};
	for (size_t i = 0; i < n; i++) {
		const struct ts_group *g = &usual[i].group;

		if (!there || (g->males >= there->males && g->females >= there->females &&
				      g->either >= there->either &&
				      ts_group_count(g) > ts_group_count(there)))
			ret[count++] = usual[i];
	}
	return count;
}

/* What a group takes of what the tank bears: of waste, or of room to swim where that is more. */
static double weight_of(const struct ts_proposer *b, const struct ts_group *alone)
{
	double most = ts_proposer_value(b, TS_P_CROWDED_NOTE);
	double crowding = ts_rule_crowding(alone, 1, b->wish->tank, &b->practice);

	return fmax(ts_judge_nitrogen_mg_day(b->wish, alone),
		b->p->nitrogen_most_mg_day * crowding / most);
}

/* Adds one level of a candidate as an item, unless it cannot live alone in this tank. */
static bool add_item(struct ts_proposer *b, struct ts_candidacy *c, const struct ts_level *level)
{
	double load = weight_of(b, &level->group);
	double floor_m2 = ts_group_floor_m2(&level->group, &b->practice);
	unsigned points;

	if (!ts_judge(b->wish, b->p->conditions, &level->group, NULL, &points, &c->ruling) ||
		floor_m2 * FLOOR_UNITS >= TS_MODEL_FIGURE_MOST) {
		c->left_out = TS_LEFT_BY_ROOM;
		return false;
	}
	if (!(load <= b->p->nitrogen_most_mg_day) || load * LOAD_UNITS >= TS_MODEL_FIGURE_MOST) {
		c->left_out = TS_LEFT_BY_LOAD;
		return false;
	}
	b->p->who[b->count] = c;
	b->p->levels[b->count++] = *level;
	return true;
}

void ts_proposer_add_items(struct ts_proposer *b)
{
	for (size_t i = 0; i < b->p->species_count; i++) {
		struct ts_candidacy *c = &b->p->species[i];
		struct ts_level levels[TS_LEVELS_MOST + 1];
		size_t n = 0;

		if (c->left_out == TS_CANDIDATE)
			c->left_out = ts_judge_load(b->wish, b->p->conditions, c->match.species);
		if (c->left_out == TS_CANDIDATE)
			n = levels_of(c, levels);
		c->first = b->count;
		for (size_t l = 0; l < n; l++)
			c->levels += ts_compose_offers(b->wish, &levels[l], c->must) &&
				     add_item(b, c, &levels[l]);
		if (c->levels)
			c->left_out = TS_CANDIDATE;
	}
}

/* What one item is worth by itself, and the unasked concerns of its group alone. */
static double worth_of(const struct ts_proposer *b, size_t i)
{
	unsigned concerns;

	ts_judge(b->wish, true, ts_proposer_group(b, i), NULL, &concerns, NULL);
	return ts_compose_value(b->wish, &b->p->who[i]->match, &b->p->levels[i]) - (double)concerns;
}

static unsigned role_of(const struct ts_proposer *b, const struct ts_species *s)
{
	return s == b->wish->centre ? TS_ROLE_CENTRE : ts_compose_role(s, b->wish->theme);
}

/* A candidate by its place among its items, and the most that one of them is worth. */
struct ranked {
	struct ts_candidacy *who;
	double worth;
};

static int by_worth(const void *a, const void *b)
{
	const struct ranked *x = a, *y = b;

	if (x->worth != y->worth)
		return x->worth < y->worth ? 1 : -1;
	return x->who < y->who ? -1 : x->who > y->who;
}

/* The candidates with items, those of most worth first; fit counts as far as it may decide. */
static size_t rank_candidates(struct ts_proposer *b, struct ranked *ret)
{
	double fit = ts_proposer_value(b, TS_P_PROPOSE_FIT);
	size_t n = 0;

	for (size_t i = 0; i < b->count; i++) {
		struct ts_candidacy *c = b->p->who[i];
		double worth = worth_of(b, i);

		b->best = i && b->best > worth ? b->best : worth;
		worth += fit * ts_compose_served(&c->match, b->practice.value);
		if (!n || ret[n - 1].who != c)
			ret[n++] = (struct ranked){c, worth};
		else
			ret[n - 1].worth = fmax(ret[n - 1].worth, worth);
	}
	qsort(ret, n, sizeof *ret, by_worth);
	return n;
}

/* Leaves their items to those that still have levels. */
static void close_up(struct ts_proposer *b)
{
	size_t kept = 0;

	for (size_t i = 0; i < b->count; i++) {
		struct ts_candidacy *c = b->p->who[i];

		if (!c->levels)
			continue;
		if (i == c->first)
			c->first = kept;
		b->p->who[kept] = c;
		b->p->levels[kept++] = b->p->levels[i];
	}
	b->count = kept;
}

/* So many candidates no shop has: the records shipped are fewer than that. */
#define MANY 600
/* Nodes of a search that proves nothing anyway, many of whose candidates are equal. */
#define THINNED_NODES 20000

bool ts_proposer_thin_out(struct ts_proposer *b)
{
	size_t most = (size_t)ts_proposer_value(b, TS_P_PROPOSE_SEARCHED);
	size_t in_role[1u << TS_ROLE__COUNT] = {0}, n;
	struct ranked *ranked = ts_arena_array(b->arena, b->count, sizeof *ranked);

	if (b->arena->failed)
		return false;
	n = rank_candidates(b, ranked);
	if (n <= MANY)
		return true;
	for (size_t i = 0; i < n; i++) {
		struct ts_candidacy *c = ranked[i].who;

		if (!c->must && in_role[role_of(b, c->match.species)]++ >= most)
			c->levels = 0;
	}
	b->thinned = true;
	if (!b->limits.nodes)
		b->limits.nodes = THINNED_NODES;
	close_up(b);
	return true;
}

int64_t ts_proposer_at_most(const struct ts_proposer *b)
{
	const struct ts_model *m = &b->p->model;
	int64_t most = (int64_t)m->fit_points * 1000;

	for (size_t r = 0; r < TS_ROLE__COUNT; r++)
		most += m->role_points[r];
	return most +
	       (int64_t)(m->species_most + m->extras_most) * (int64_t)ceil(fmax(b->best, 0) + 1);
}

/* Numbers groups and genera of the items; the catalogue is sorted by name. */
static void number_items(const struct ts_proposer *b, unsigned *groups, unsigned *genera,
	size_t *ret_groups, size_t *ret_genera)
{
	*ret_groups = *ret_genera = 0;
	for (size_t i = 0; i < b->count; i++) {
		bool first = i == 0 || b->p->who[i] != b->p->who[i - 1];
		bool genus = i == 0 || !ts_rule_same_genus(b->p->who[i]->match.species,
					       b->p->who[i - 1]->match.species);

		*ret_groups += first;
		*ret_genera += genus;
		groups[i] = (unsigned)*ret_groups - 1;
		genera[i] = (unsigned)*ret_genera - 1;
	}
}

static void fill_item(const struct ts_proposer *b, size_t i, struct ts_model_item *item)
{
	const struct ts_candidacy *c = b->p->who[i];
	const struct ts_species *s = c->match.species;
	const struct ts_group *alone = ts_proposer_group(b, i);

	item->fit = ts_compose_served(&c->match, b->practice.value);
	item->value = rounded(worth_of(b, i));
	item->weight = whole(ceil(LOAD_UNITS * weight_of(b, alone)));
	item->floor = rounded(FLOOR_UNITS * ts_group_floor_m2(alone, &b->practice));
	item->role = role_of(b, s);
	item->extra = ts_compose_extra(s, b->wish->theme) && !c->must; /* who asks has it so */
}

const char *ts_proposer_apart(
	const struct ts_proposer *b, const struct ts_candidacy *x, const struct ts_candidacy *y)
{
	if (x->must && y->must)
		return NULL;
	return ts_compose_apart(b->wish, x->match.species, y->match.species);
}

/* Whether one group of the two presses the other, and not both were asked for. */
static bool presses(const struct ts_proposer *b, const struct ts_candidacy *x,
	const struct ts_candidacy *y, size_t i, size_t j)
{
	return !(x->must && y->must) &&
	       ts_compose_press(ts_proposer_group(b, i), ts_proposer_group(b, j));
}

static void set_pair(struct ts_model *m, size_t i, size_t j, bool fine, double points)
{
	if (!fine)
		ts_model_conflict(m, i, j);
	else
		ts_model_friction(m, i, j, (unsigned)fmin(points, UINT16_MAX));
}

/* All levels of two species: the rules that ask for no numbers are asked once. */
static void fill_species_pair(const struct ts_proposer *b, struct ts_model *m,
	const struct ts_candidacy *x, const struct ts_candidacy *y)
{
	size_t i = x->first, j = y->first;
	unsigned once = 0;
	bool fine = !ts_proposer_apart(b, x, y) &&
		    ts_judge_pair(b->wish, b->p->conditions, ts_proposer_group(b, i),
			    ts_proposer_group(b, j), TS_NUMBERS_LEFT_OUT, &once, NULL);
	bool numbers =
		fine && ts_judge_asks_numbers(ts_proposer_group(b, i), ts_proposer_group(b, j));
	double friction =
		fine ? rounded(ts_compose_friction(b->wish, x->match.species, y->match.species))
		     : 0;

	for (; i < x->first + x->levels; i++) {
		for (j = y->first; j < y->first + y->levels; j++) {
			unsigned points = 0;
			bool both = fine && !presses(b, x, y, i, j);

			if (both && numbers)
				both = ts_judge_pair(b->wish, b->p->conditions,
					ts_proposer_group(b, i), ts_proposer_group(b, j),
					TS_NUMBERS_ALONE, &points, NULL);
			set_pair(m, i, j, both, friction + once + points);
		}
	}
}

static void fill_pairs(const struct ts_proposer *b, struct ts_model *m)
{
	for (size_t x = 0; x < b->p->species_count; x++) {
		const struct ts_candidacy *one = &b->p->species[x];

		for (size_t y = x + 1; one->levels && y < b->p->species_count; y++) {
			if (b->p->species[y].levels)
				fill_species_pair(b, m, one, &b->p->species[y]);
		}
	}
}

static bool name_items(struct ts_proposer *b)
{
	for (size_t i = 0; i < b->count; i++) {
		const struct ts_species *s = b->p->who[i]->match.species;
		char number[TS_NUMBER_ROOM];

		ts_number_write(number, ts_group_count(ts_proposer_group(b, i)), 0);
		b->p->names[i] = ts_arena_join(b->arena, number, " ", s->species,
			s->form ? ", " : "", s->form ? s->form : "", NULL);
	}
	return !b->arena->failed;
}

/* The little waste that hardly any KH bears is for shoals, unless the tank is a large one. */
static enum ts_practice_id centre_points(const struct ts_proposer *b)
{
	double cm = b->wish->tank->length_cm;

	if (ts_judge_hardly_any_kh(b->wish) && cm < ts_proposer_value(b, TS_P_PROPOSE_LARGE))
		return TS_P_PROPOSE_CENTRE_UNBUFFERED;
	return cm < 100 ? TS_P_PROPOSE_CENTRE_IN_SMALL : TS_P_PROPOSE_CENTRE;
}

bool ts_proposer_build_model(struct ts_proposer *b)
{
	struct ts_model *m = &b->p->model;
	unsigned *groups = ts_arena_array(b->arena, b->count, sizeof *groups);
	unsigned *genera = ts_arena_array(b->arena, b->count, sizeof *genera);
	size_t group_count, genus_count;
	enum ts_practice_id centre = centre_points(b);

	b->p->names = ts_arena_array(b->arena, b->count, sizeof *b->p->names);
	if (b->arena->failed)
		return false;
	number_items(b, groups, genera, &group_count, &genus_count);
	if (!ts_model_open(m, b->arena, b->count, group_count, genus_count))
		return false;
	m->species_most = (int)b->p->species_most;
	m->extras_most = b->wish->theme == TS_THEME_ONE_SPECIES ? 0 : TS_EXTRAS_MOST;
	m->weight_most = within(LOAD_UNITS * b->p->nitrogen_most_mg_day);
	m->floor_most = within(FLOOR_UNITS * b->p->floor_m2);
	m->fit_points = rounded(ts_proposer_value(b, TS_P_PROPOSE_FIT));
	m->role_points[0] = rounded(ts_proposer_value(b, centre));
	m->role_points[1] = rounded(ts_proposer_value(b, TS_P_PROPOSE_SHOAL));
	m->role_points[2] = rounded(ts_proposer_value(b, TS_P_PROPOSE_BOTTOM));
	m->role_points[3] = rounded(ts_proposer_value(b, TS_P_PROPOSE_TOP));
	for (size_t i = 0; i < b->count; i++) {
		fill_item(b, i, &m->items[i]);
		m->items[i].group = groups[i];
		m->items[i].genus = genera[i];
		m->must[groups[i]] |= b->p->who[i]->must;
	}
	fill_pairs(b, m);
	return name_items(b);
}
