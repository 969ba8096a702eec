/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Proposing: candidates become the items of the integer model, rules become its conflicts and
 * frictions, and each best list becomes a community with the water that all of it shares.
 */
#include "stock/propose.h"

#include <string.h>

#include "base/arena.h"
#include "base/number.h"
#include "model/practice.h"
#include "stock/candidates.h"
#include "stock/community.h"
#include "stock/compose.h"
#include "stock/judge.h"
#include "stock/rules.h"

/* The model's units of load and floor: 0.01 mg of nitrogen a day, cm2. */
#define LOAD_UNITS 100.0
#define FLOOR_UNITS 1e4
/* A kind of snail and one of shrimp beside the others. */
#define EXTRAS_MOST 2
#define SPECIES_MOST ((size_t)(TS_MODEL_SPECIES_MOST - EXTRAS_MOST))

struct builder {
	const struct ts_wish *wish;
	struct ts_proposal *p;
	struct ts_arena *arena;
	struct ts_practice practice;
	size_t count; /* items so far */
};

static double value(const struct builder *b, enum ts_practice_id id)
{
	return b->practice.value[id];
}

static int rounded(double x)
{
	return (int)floor(x + 0.5);
}

/* A limit of the model; where it is not known, as of a tank without measures, nothing may be used.
 */
static int64_t within(double limit)
{
	return limit >= 0 ? (int64_t)fmin(floor(limit), 1e12) : 0;
}

static const struct ts_group *group(const struct builder *b, size_t item)
{
	return &b->p->levels[item].group;
}

/* How many species by litres: common practice, no source. Unknown litres count as a small tank. */
static size_t species_most(const struct builder *b)
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
	most = b->wish->species_most ? b->wish->species_most : (size_t)value(b, id);
	if (b->wish->theme == TS_THEME_ONE_SPECIES)
		most = 1;
	if (most < b->wish->resident_count + b->wish->with_count)
		most = b->wish->resident_count + b->wish->with_count;
	return most < SPECIES_MOST ? most : SPECIES_MOST;
}

/* The levels in which a candidate may be asked about; residents stay or become more. */
static size_t levels_of(const struct ts_candidacy *c, struct ts_level ret[TS_LEVELS_MOST + 1])
{
	struct ts_level usual[TS_LEVELS_MOST];
	size_t n = ts_levels(c->match.species, usual), count = 0;
	const struct ts_group *there = c->resident;

	if (there)
		ret[count++] = (struct ts_level){*there,
			ts_group_count(there) >= c->match.species->group.comfortable, false};
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
static double weight_of(const struct builder *b, const struct ts_group *alone)
{
	double most = value(b, TS_P_CROWDED_NOTE);
	double crowding = ts_rule_crowding(alone, 1, b->wish->tank, &b->practice);

	return fmax(ts_judge_nitrogen_mg_day(b->wish, alone),
		b->p->nitrogen_most_mg_day * crowding / most);
}

/* Adds one level of a candidate as an item, unless it cannot live alone in this tank. */
static bool add_item(struct builder *b, struct ts_candidacy *c, const struct ts_level *level)
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

/* Makes the items of every candidate; a candidate of whom no level is left has its reason. */
static void add_items(struct builder *b)
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
			c->levels += add_item(b, c, &levels[l]);
		if (c->levels)
			c->left_out = TS_CANDIDATE;
	}
}

/* Numbers groups and genera of the items; the catalogue is sorted by name. */
static void number_items(const struct builder *b, unsigned *groups, unsigned *genera,
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

static void fill_item(const struct builder *b, size_t i, struct ts_model_item *item)
{
	const struct ts_candidacy *c = b->p->who[i];
	const struct ts_species *s = c->match.species;
	const struct ts_group *alone = group(b, i);
	unsigned concerns;

	item->fit = ts_compose_served(&c->match, b->practice.value);
	ts_judge(b->wish, true, alone, NULL, &concerns, NULL);
	item->value =
		rounded(ts_compose_value(b->wish, &c->match, &b->p->levels[i]) - (double)concerns);
	item->weight = (int)ceil(LOAD_UNITS * weight_of(b, alone));
	item->floor = rounded(FLOOR_UNITS * ts_group_floor_m2(alone, &b->practice));
	item->role = s == b->wish->centre ? TS_ROLE_CENTRE : ts_compose_role(s, b->wish->theme);
	item->extra = ts_compose_extra(s, b->wish->theme) && !c->must; /* who asks has it so */
}

/* Why two are not proposed together though no rule forbids it; NULL: they may be. */
static const char *apart(
	const struct builder *b, const struct ts_candidacy *x, const struct ts_candidacy *y)
{
	if (x->must && y->must)
		return NULL;
	return ts_compose_apart(b->wish, x->match.species, y->match.species);
}

/* Whether one group of the two presses the other, and not both were asked for. */
static bool presses(const struct builder *b, const struct ts_candidacy *x,
	const struct ts_candidacy *y, size_t i, size_t j)
{
	return !(x->must && y->must) && ts_compose_press(group(b, i), group(b, j));
}

static void set_pair(struct ts_model *m, size_t i, size_t j, bool fine, double points)
{
	if (!fine)
		ts_model_conflict(m, i, j);
	else
		ts_model_friction(m, i, j, (unsigned)fmin(points, UINT16_MAX));
}

/* All levels of two species: the rules that ask for no numbers are asked once. */
static void fill_species_pair(const struct builder *b, struct ts_model *m,
	const struct ts_candidacy *x, const struct ts_candidacy *y)
{
	size_t i = x->first, j = y->first;
	unsigned once = 0;
	bool fine = !apart(b, x, y) && ts_judge_pair(b->wish, b->p->conditions, group(b, i),
					       group(b, j), TS_NUMBERS_LEFT_OUT, &once, NULL);
	bool numbers = fine && ts_judge_asks_numbers(group(b, i), group(b, j));
	double friction =
		fine ? rounded(ts_compose_friction(b->wish, x->match.species, y->match.species))
		     : 0;

	for (; i < x->first + x->levels; i++) {
		for (j = y->first; j < y->first + y->levels; j++) {
			unsigned points = 0;
			bool both = fine && !presses(b, x, y, i, j);

			if (both && numbers)
				both = ts_judge_pair(b->wish, b->p->conditions, group(b, i),
					group(b, j), TS_NUMBERS_ALONE, &points, NULL);
			set_pair(m, i, j, both, friction + once + points);
		}
	}
}

static void fill_pairs(const struct builder *b, struct ts_model *m)
{
	for (size_t x = 0; x < b->p->species_count; x++) {
		const struct ts_candidacy *one = &b->p->species[x];

		for (size_t y = x + 1; one->levels && y < b->p->species_count; y++) {
			if (b->p->species[y].levels)
				fill_species_pair(b, m, one, &b->p->species[y]);
		}
	}
}

static bool name_items(struct builder *b)
{
	for (size_t i = 0; i < b->count; i++) {
		const struct ts_species *s = b->p->who[i]->match.species;
		char number[TS_NUMBER_ROOM];

		ts_number_write(number, ts_group_count(group(b, i)), 0);
		b->p->names[i] = ts_arena_join(b->arena, number, " ", s->species,
			s->form ? ", " : "", s->form ? s->form : "", NULL);
	}
	return !b->arena->failed;
}

static bool build_model(struct builder *b)
{
	struct ts_model *m = &b->p->model;
	unsigned *groups = ts_arena_array(b->arena, b->count, sizeof *groups);
	unsigned *genera = ts_arena_array(b->arena, b->count, sizeof *genera);
	size_t group_count, genus_count;
	enum ts_practice_id centre = ts_judge_hardly_any_kh(b->wish)
					     ? TS_P_PROPOSE_CENTRE_UNBUFFERED
				     : b->wish->tank->length_cm < 100 ? TS_P_PROPOSE_CENTRE_IN_SMALL
								      : TS_P_PROPOSE_CENTRE;

	b->p->names = ts_arena_array(b->arena, b->count, sizeof *b->p->names);
	if (b->arena->failed)
		return false;
	number_items(b, groups, genera, &group_count, &genus_count);
	if (!ts_model_open(m, b->arena, b->count, group_count, genus_count))
		return false;
	m->species_most = (int)b->p->species_most;
	m->extras_most = b->wish->theme == TS_THEME_ONE_SPECIES ? 0 : EXTRAS_MOST;
	m->weight_most = within(LOAD_UNITS * b->p->nitrogen_most_mg_day);
	m->floor_most = within(FLOOR_UNITS * b->p->floor_m2);
	m->fit_points = rounded(value(b, TS_P_PROPOSE_FIT));
	m->role_points[0] = rounded(value(b, centre));
	m->role_points[1] = rounded(value(b, TS_P_PROPOSE_SHOAL));
	m->role_points[2] = rounded(value(b, TS_P_PROPOSE_BOTTOM));
	m->role_points[3] = rounded(value(b, TS_P_PROPOSE_TOP));
	for (size_t i = 0; i < b->count; i++) {
		fill_item(b, i, &m->items[i]);
		m->items[i].group = groups[i];
		m->items[i].genus = genera[i];
		m->must[groups[i]] |= b->p->who[i]->must;
	}
	fill_pairs(b, m);
	return name_items(b);
}

/* Whether some level of the candidate goes with some level of the must; else `*ret` says why not.
 */
static bool go_together(const struct builder *b, const struct ts_candidacy *c,
	const struct ts_candidacy *must, struct ts_ruling *ret)
{
	*ret = (struct ts_ruling){0};
	for (size_t i = 0; i < c->levels; i++) {
		for (size_t j = 0; j < must->levels; j++) {
			unsigned points;

			if (ts_judge(b->wish, b->p->conditions, group(b, c->first + i),
				    group(b, must->first + j), &points, ret))
				return true;
		}
	}
	return false;
}

/* Leaves out what goes with none of the numbers of something there or asked for. */
static void leave_out_by_musts(const struct builder *b, struct ts_candidacy *c)
{
	for (size_t i = 0; i < b->p->species_count; i++) {
		const struct ts_candidacy *must = &b->p->species[i];
		struct ts_ruling ruling;

		if (!must->must || !must->levels || must == c)
			continue;
		c->asks = apart(b, c, must);
		if (!c->asks && go_together(b, c, must, &ruling))
			continue;
		c->left_out = TS_LEFT_BY_RESIDENT;
		if (!c->asks)
			c->ruling = ruling;
		c->other = must->match.species;
		return;
	}
}

/* Whether every must can be met at all. */
static bool musts_stand(const struct ts_proposal *p)
{
	for (size_t i = 0; i < p->species_count; i++) {
		if (p->species[i].must && p->species[i].left_out != TS_CANDIDATE)
			return false;
	}
	return true;
}

/* Nitrate, buffer and the rest; a tank without litres has no candidates, so there is always one. */
static bool load_of(const struct ts_wish *wish, struct ts_community *c, struct ts_arena *arena)
{
	struct ts_group *groups = ts_arena_array(arena, c->count, sizeof *groups);
	const struct ts_span *kh = &wish->profile->at[TS_KH];
	double kh_dh = kh->given ? kh->value : (double)NAN;
	struct ts_load_case input = {.groups = groups,
		.count = c->count,
		.tank = wish->tank,
		.temp_c = ts_judge_temperature(wish),
		.kh_dh = kh_dh,
		.kh_new_dh = wish->kh_new_dh > 0 ? wish->kh_new_dh : kh_dh,
		.no3_new_mg_l = wish->no3_new_mg_l};

	if (!groups)
		return false;
	for (size_t i = 0; i < c->count; i++)
		groups[i] = c->lines[i].group;
	return ts_load_of(&input, wish->practice, &c->load) == TS_OK;
}

/* Turns the chosen items into lines and describes them. */
static bool community(const struct ts_wish *wish, const struct ts_proposal *p,
	const struct ts_search_list *list, struct ts_arena *arena, struct ts_community *ret)
{
	struct ts_community c = {.count = list->count,
		.points = list->points,
		.at_most = list->at_most,
		.proven = list->proven,
		.nodes = list->nodes};

	c.lines = ts_arena_array(arena, c.count, sizeof *c.lines);
	if (!c.lines)
		return false;
	for (size_t i = 0; i < c.count; i++) {
		size_t item = list->chosen[i];
		const struct ts_candidacy *who = p->who[item];

		c.lines[i] = (struct ts_company){who, p->levels[item].group,
			who->resident ? ts_group_count(who->resident) : 0,
			!who->resident && ts_compose_later(who->match.species, wish->aged)};
		c.nitrogen_mg_day += ts_judge_nitrogen_mg_day(wish, &p->levels[item].group);
	}
	if (!load_of(wish, &c, arena) || !ts_community_describe(&c, arena))
		return false;
	*ret = c;
	return true;
}

/* The lists, each remembering the genera of those before it. */
static bool make_lists(struct builder *b)
{
	struct ts_proposal *p = b->p;
	size_t most = b->wish->lists ? b->wish->lists : 1;
	struct ts_model model = p->model;
	struct ts_search_list list;

	most = most < TS_LISTS_MOST ? most : TS_LISTS_MOST;
	p->lists = ts_arena_array(b->arena, most, sizeof *p->lists);
	model.familiar = ts_arena_array(b->arena, model.genus_count, sizeof *model.familiar);
	if (b->arena->failed)
		return false;
	while (p->count < most && !p->exhausted) {
		struct ts_community *c = &p->lists[p->count];

		if (!ts_search_best(&model, b->wish->limits, b->arena, &list))
			return false;
		p->exhausted = list.count == 0;
		if (p->exhausted)
			break;
		if (!community(b->wish, p, &list, b->arena, c))
			return false;
		c->equal = (double)(p->lists[0].points - c->points) <=
			   value(b, TS_P_PROPOSE_EQUAL) * (double)p->lists[0].points;
		p->count++;
		ts_model_remember(&model, list.chosen, list.count);
	}
	return true;
}

static void count_reasons(struct ts_proposal *p)
{
	for (size_t i = 0; i < p->species_count; i++)
		p->of[p->species[i].left_out]++;
	p->candidates = p->of[TS_CANDIDATE];
}

/* One attempt: with concerns forbidden, or at a cost. */
static bool attempt(const struct ts_wish *wish, bool conditions, struct ts_arena *arena,
	struct ts_proposal *ret)
{
	struct ts_proposal p = {.species_count = wish->catalogue->count, .conditions = conditions};
	struct builder b = {.wish = wish, .p = &p, .arena = arena, .practice = *wish->practice};
	size_t room = p.species_count * (TS_LEVELS_MOST + 1);

	p.species = ts_arena_array(arena, p.species_count, sizeof *p.species);
	p.who = ts_arena_array(arena, room, sizeof *p.who);
	p.levels = ts_arena_array(arena, room, sizeof *p.levels);
	if (arena->failed)
		return false;
	p.species_most = species_most(&b);
	p.nitrogen_most_mg_day = ts_judge_nitrogen_most_mg_day(wish, conditions);
	p.floor_m2 = ts_tank_floor_m2(wish->tank);
	ts_consider_all(wish, &p);
	add_items(&b);
	if (!build_model(&b))
		return false;
	for (size_t i = 0; i < p.species_count; i++) {
		if (p.species[i].left_out == TS_CANDIDATE && !p.species[i].must)
			leave_out_by_musts(&b, &p.species[i]);
	}
	count_reasons(&p);
	if (musts_stand(&p) && !make_lists(&b))
		return false;
	*ret = p;
	return true;
}

bool ts_propose(const struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *ret)
{
	struct ts_wish filled = *wish;
	struct ts_practice own;
	struct ts_proposal p;

	ts_practice_defaults(&own);
	if (!filled.practice)
		filled.practice = &own;
	if (!attempt(&filled, wish->conditions, arena, &p))
		return false;
	/* What is asked for may use all that a check is content with. */
	filled.full_load |= !p.count && (wish->with_count || wish->resident_count);
	if (filled.full_load && !wish->full_load && !attempt(&filled, wish->conditions, arena, &p))
		return false;
	/* Where no change is given, a check judges at a good one. */
	if (!p.count && filled.full_load && !(wish->tank->water_change.days > 0)) {
		struct ts_tank changed = *wish->tank;
		struct ts_proposal better;

		changed.water_change = (struct ts_every){filled.practice->value[TS_P_CHANGE_GOOD],
			filled.practice->value[TS_P_CHANGE_DAYS]};
		filled.tank = &changed;
		if (!attempt(&filled, wish->conditions, arena, &better))
			return false;
		filled.tank = wish->tank;
		better.change_percent = changed.water_change.amount;
		p = better.count ? better : p;
	}
	if (!p.count && !wish->conditions && !attempt(&filled, true, arena, &p))
		return false;
	*ret = p;
	return true;
}

bool ts_propose_with(const struct ts_wish *wish, const struct ts_proposal *p,
	const struct ts_candidacy *candidacy, struct ts_arena *arena, struct ts_community *ret)
{
	struct ts_model m = p->model;
	struct ts_community none = {0};
	struct ts_search_list list;

	*ret = none;
	if (!candidacy->levels)
		return true;
	m.must = ts_arena_array(arena, m.group_count, sizeof *m.must);
	if (arena->failed)
		return false;
	memcpy(m.must, p->model.must, m.group_count * sizeof *m.must);
	m.must[m.items[candidacy->first].group] = true;
	if (!ts_search_best(&m, wish->limits, arena, &list))
		return false;
	return list.count == 0 || community(wish, p, &list, arena, ret);
}
