/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Proposing: candidates become an integer model (propose_model.c), made up as such a tank should
 * be, and each best list becomes a community with the water that all of it shares.
 */
#include "stock/propose_work.h"

#include <string.h>

#include "base/arena.h"
#include "stock/candidates.h"
#include "stock/community.h"
#include "stock/compose.h"
#include "stock/judge.h"
#include "stock/rules.h"

/*
 * A community of its own: neither one of a theme nor the completion of what lives there; where
 * nobody is at home, the fewer the better.
 */
static bool wants_a_whole(const struct ts_wish *w)
{
	return !w->resident_count && (w->reach < TS_REACH_ANY || w->with_count) &&
	       (w->theme == TS_THEME_NONE || w->theme == TS_THEME_COOL);
}

/* How many kinds of fish a list should hold: common practice, no source. */
static size_t kinds_wanted(const struct ts_proposer *b)
{
	double litres = ts_tank_net_l(b->wish->tank, b->wish->practice);
	size_t kinds = 1;

	if (litres >= 60)
		kinds = (size_t)ts_proposer_value(b, TS_P_KINDS_120);
	if (litres >= 120)
		kinds = (size_t)ts_proposer_value(b, TS_P_KINDS_250);
	if (litres > 250)
		kinds = (size_t)ts_proposer_value(b, TS_P_KINDS_MORE);
	if (!wants_a_whole(b->wish))
		kinds = 1;
	return kinds < b->p->species_most ? kinds : b->p->species_most;
}

/* Whether some level of the candidate goes with some level of the must; else `*ret` says why not.
 */
static bool go_together(const struct ts_proposer *b, const struct ts_candidacy *c,
	const struct ts_candidacy *must, struct ts_ruling *ret)
{
	*ret = (struct ts_ruling){0};
	for (size_t i = 0; i < c->levels; i++) {
		for (size_t j = 0; j < must->levels; j++) {
			unsigned points;

			if (ts_judge(b->wish, b->p->conditions, ts_proposer_group(b, c->first + i),
				    ts_proposer_group(b, must->first + j), &points, ret))
				return true;
		}
	}
	return false;
}

/* Leaves out what goes with none of the numbers of something there or asked for. */
static void leave_out_by_musts(const struct ts_proposer *b, struct ts_candidacy *c)
{
	for (size_t i = 0; i < b->p->species_count; i++) {
		const struct ts_candidacy *must = &b->p->species[i];
		struct ts_ruling ruling;

		if (!must->must || !must->levels || must == c || (c->resident && must->resident))
			continue;
		c->asks = ts_proposer_apart(b, c, must);
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

/*
 * A tank that has room for groups wants a shoal and somebody at the bottom, a longer one something
 * to look at.
 */
static unsigned roles_wanted(const struct ts_proposer *b)
{
	double cm = b->wish->tank->length_cm;
	unsigned roles = 0;

	if (!wants_a_whole(b->wish))
		return 0;
	roles |= cm >= ts_proposer_value(b, TS_P_PROPOSE_GROUPS_FROM) ? TS_ROLE_SHOAL : 0;
	roles |= cm >= ts_proposer_value(b, TS_P_PROPOSE_FLOOR_FROM) ? TS_ROLE_BOTTOM : 0;
	roles |= cm >= ts_proposer_value(b, TS_P_PROPOSE_CENTRE_FROM) && !b->wish->small_only
			 ? TS_ROLE_CENTRE
			 : 0;
	return roles;
}

/*
 * The best list, made up as well as it can be: with as many kinds as the tank should have, then
 * with fewer, and of as many with all its roles first, then without a centre, without anybody at
 * the bottom, without a shoal. The model keeps what was possible: the lists after it are no worse
 * made up.
 */
static bool first_list(struct ts_proposer *b, struct ts_model *m, struct ts_search_list *ret)
{
	static const unsigned without[] = {0, TS_ROLE_CENTRE, TS_ROLE_BOTTOM,
		TS_ROLE_CENTRE | TS_ROLE_BOTTOM, TS_ROLE_SHOAL, TS_ROLE_SHOAL | TS_ROLE_CENTRE,
		TS_ROLE_SHOAL | TS_ROLE_BOTTOM, TS_ROLE_SHOAL | TS_ROLE_CENTRE | TS_ROLE_BOTTOM};
	unsigned roles = roles_wanted(b);

	*ret = (struct ts_search_list){.count = 0};
	for (size_t kinds = b->p->kinds_wanted; kinds && !ret->count; kinds--) {
		for (size_t i = 0; i < sizeof without / sizeof *without && !ret->count; i++) {
			if (without[i] & ~roles)
				continue;
			m->species_least = (int)kinds;
			m->roles_must = roles & ~without[i];
			if (!ts_search_best(m, &b->limits, b->arena, ret))
				return false;
		}
	}
	b->p->kinds_least = (size_t)m->species_least;
	b->p->lacks = roles & ~m->roles_must;
	b->p->model.species_least = m->species_least;
	b->p->model.roles_must = m->roles_must;
	return true;
}

/* Nothing but dwarfs, what is slim as an eel aside, in a large tank. */
static bool only_dwarfs(const struct ts_proposer *b, const struct ts_search_list *list)
{
	double cm = b->wish->tank->length_cm;

	for (size_t i = 0; i < list->count; i++) {
		const struct ts_species *s = ts_proposer_group(b, list->chosen[i])->species;

		if (s->body != TS_BODY_EEL &&
			cm <= ts_proposer_value(b, TS_P_PROPOSE_SHOAL_SMALL) * s->adult_length_cm)
			return false;
	}
	return cm >= ts_proposer_value(b, TS_P_PROPOSE_LARGE) && !b->wish->small_only;
}

/* Whether it may stand below the first: what is much poorer is no advice. */
static bool worth_it(const struct ts_proposer *b, const struct ts_search_list *list)
{
	const struct ts_proposal *p = b->p;

	/* Where nobody is at home the best is not good, and what follows is no choice. */
	if (p->count && b->wish->reach == TS_REACH_ANY && b->wish->theme == TS_THEME_NONE)
		return false;
	if (p->count && only_dwarfs(b, list))
		return false;
	return !p->count || (double)list->points >= ts_proposer_value(b, TS_P_PROPOSE_WORTH) *
							    (double)p->lists[0].points;
}

/* The lists, each remembering the genera of those before it. */
static bool make_lists(struct ts_proposer *b)
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

		if (!(p->count ? ts_search_best(&model, &b->limits, b->arena, &list)
			       : first_list(b, &model, &list)))
			return false;
		if (b->thinned) {
			list.proven = false;
			list.at_most = ts_proposer_at_most(b);
		}
		p->exhausted = list.count == 0 || !worth_it(b, &list);
		if (p->exhausted)
			break;
		if (!community(b->wish, p, &list, b->arena, c))
			return false;
		c->equal = (double)(p->lists[0].points - c->points) <=
			   ts_proposer_value(b, TS_P_PROPOSE_EQUAL) * (double)p->lists[0].points;
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

bool ts_proposer_attempt(const struct ts_wish *wish, bool conditions, struct ts_arena *arena,
	struct ts_proposal *ret)
{
	struct ts_proposal p = {.species_count = wish->catalogue->count,
		.conditions = conditions,
		.reach = wish->reach};
	struct ts_proposer b = {.wish = wish, .p = &p, .arena = arena, .practice = *wish->practice};
	size_t room = p.species_count * (TS_LEVELS_MOST + 1);

	p.species = ts_arena_array(arena, p.species_count, sizeof *p.species);
	p.who = ts_arena_array(arena, room, sizeof *p.who);
	p.levels = ts_arena_array(arena, room, sizeof *p.levels);
	if (arena->failed)
		return false;
	p.species_most = ts_proposer_species_most(&b);
	p.kinds_wanted = kinds_wanted(&b);
	p.nitrogen_most_mg_day = ts_judge_nitrogen_most_mg_day(wish, conditions);
	p.floor_m2 = ts_tank_floor_m2(wish->tank);
	ts_consider_all(wish, &p);
	ts_proposer_add_items(&b);
	if (wish->limits)
		b.limits = *wish->limits;
	if (!ts_proposer_thin_out(&b) || !ts_proposer_build_model(&b))
		return false;
	for (size_t i = 0; i < p.species_count; i++) {
		if (p.species[i].left_out == TS_CANDIDATE && p.species[i].levels)
			leave_out_by_musts(&b, &p.species[i]);
	}
	count_reasons(&p);
	if (musts_stand(&p) && !make_lists(&b))
		return false;
	*ret = p;
	return true;
}

/* Whether the one is made up better: more kinds, a shoal, the bottom, a centre, a larger one. */
static bool made_up_better(const struct ts_proposal *a, const struct ts_proposal *b)
{
	static const unsigned order[] = {TS_ROLE_SHOAL, TS_ROLE_BOTTOM, TS_ROLE_CENTRE};

	if (!a->count || !b->count)
		return a->count > 0;
	if (a->kinds_least != b->kinds_least)
		return a->kinds_least > b->kinds_least;
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		if ((a->lacks ^ b->lacks) & order[i])
			return b->lacks & order[i];
	}
	if (a->sparse != b->sparse)
		return b->sparse;
	return b->slight && !a->slight;
}

/* Nothing that such a tank should have is missing. */
static bool made_up_well(const struct ts_proposal *p)
{
	return p->count && p->kinds_least >= p->kinds_wanted && !p->lacks;
}

/* Whether a list has a single grazer; or something to look at. */
static bool any_of(const struct ts_wish *w, const struct ts_proposal *p, unsigned role)
{
	for (size_t i = 0; i < p->count; i++) {
		for (size_t k = 0; k < p->lists[i].count; k++) {
			const struct ts_species *s = p->lists[i].lines[k].group.species;

			if (ts_compose_role(s, w->theme) == role &&
				(role != TS_ROLE_BOTTOM || ts_compose_grazer(s)))
				return true;
		}
	}
	return false;
}

/* Asks once more, and keeps the answer where it is made up better. */
static bool try_wider(struct ts_wish *wish, const struct ts_wish *wider, struct ts_arena *arena,
	struct ts_proposal *io)
{
	const struct ts_arena before = *arena;
	struct ts_proposal more;

	if (!ts_proposer_attempt(wider, wish->conditions, arena, &more))
		return false;
	more.slight = wish->scale && !wider->scale && any_of(wish, &more, TS_ROLE_CENTRE);
	more.sparse = wish->groups && !wider->groups && any_of(wish, &more, TS_ROLE_BOTTOM);
	if (made_up_better(&more, io) || (!io->count && wider->reach == TS_REACH_ANY))
		*io = more;
	else
		ts_arena_back(arena, &before);
	return true;
}

/* What was asked for has no company. */
static bool alone(const struct ts_wish *w, const struct ts_proposal *p)
{
	return w->with_count && p->lists[0].count <= w->with_count;
}

/*
 * Where the lists are not what such a tank should have, further out: to a single grazer at the
 * bottom, to those at their limit, then to a centre that is small for the tank, and where nobody
 * is at home to those that can live there. What is asked for stands anyway, and gets company that
 * can live there rather than none.
 */
static bool reach_out(struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *io)
{
	const bool musts = wish->with_count || wish->resident_count;
	struct ts_wish wider = *wish;
	bool asked = true;

	for (int scale = wish->scale; scale >= 0; scale--) {
		for (int reach = (int)wish->reach; reach < TS_REACH_ANY; reach++) {
			for (int groups = wish->groups; groups >= 0; groups--) {
				wider.scale = scale;
				wider.groups = groups;
				wider.reach = (enum ts_reach)reach;
				if (!made_up_well(io) && !asked &&
					!try_wider(wish, &wider, arena, io))
					return false;
				asked = false;
			}
		}
	}
	wider.scale = wider.groups = false;
	wider.reach = TS_REACH_ANY;
	if (!made_up_well(io) && wish->reach < TS_REACH_ANY &&
		(io->count ? alone(wish, io) : !musts) && !try_wider(wish, &wider, arena, io))
		return false;
	wish->scale &= !io->slight && io->reach < TS_REACH_ANY;
	wish->groups &= !io->sparse && io->reach < TS_REACH_ANY;
	wish->reach = io->reach;
	return true;
}

/* What the first rounds insist on, where the tank has room for it. */
static void be_strict(struct ts_wish *w)
{
	const double *p = w->practice->value;
	bool whole = wants_a_whole(w) && w->reach < TS_REACH_ANY;

	w->groups = whole && w->tank->length_cm >= p[TS_P_PROPOSE_FLOOR_FROM];
	w->scale = whole && !w->small_only && w->tank->length_cm >= p[TS_P_PROPOSE_CENTRE_FROM];
}

/* Where no fish has room, shrimps, rather than fish that want a longer tank. */
static bool try_shrimps(const struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *io)
{
	const struct ts_arena before = *arena;
	struct ts_wish shrimps = *wish;
	struct ts_proposal p;

	if (io->count || wish->theme != TS_THEME_NONE || wish->with_count || wish->resident_count ||
		wish->centre)
		return true;
	shrimps.theme = TS_THEME_SHRIMPS;
	shrimps.conditions = false;
	if (!ts_proposer_attempt(&shrimps, false, arena, &p))
		return false;
	if (p.count)
		*io = p;
	else
		ts_arena_back(arena, &before);
	return true;
}

bool ts_propose(const struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *ret)
{
	struct ts_wish filled = *wish, first;
	struct ts_practice own;
	struct ts_proposal p;

	ts_practice_defaults(&own);
	if (!filled.practice)
		filled.practice = &own;
	be_strict(&filled);
	if (!ts_proposer_attempt(&filled, wish->conditions, arena, &p))
		return false;
	if (!reach_out(&filled, arena, &p))
		return false;
	/* What is asked for may use all that a check is content with. */
	filled.full_load |= !p.count && (wish->with_count || wish->resident_count);
	if (filled.full_load && !wish->full_load &&
		!ts_proposer_attempt(&filled, wish->conditions, arena, &p))
		return false;
	/* Where no change is given, a check judges at a good one. */
	if (!p.count && filled.full_load && !(wish->tank->water_change.days > 0)) {
		struct ts_tank changed = *wish->tank;
		struct ts_proposal better;

		changed.water_change = (struct ts_every){filled.practice->value[TS_P_CHANGE_GOOD],
			filled.practice->value[TS_P_CHANGE_DAYS]};
		filled.tank = &changed;
		if (!ts_proposer_attempt(&filled, wish->conditions, arena, &better))
			return false;
		filled.tank = wish->tank;
		better.change_percent = changed.water_change.amount;
		p = better.count ? better : p;
	}
	first = *wish;
	first.practice = filled.practice;
	if (!try_shrimps(&first, arena, &p))
		return false;
	if (!p.count && !wish->conditions && !ts_proposer_attempt(&filled, true, arena, &p))
		return false;
	if (!ts_proposer_add_lake(&filled, arena, &p))
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
