/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One list described: shared water, the animal served worst, the order of purchase.
 */
#include "stock/community.h"

#include "base/arena.h"
#include "base/number.h"
#include "stock/candidates.h"

/* What all lines prefer, or tolerate; not known when nobody's band is. */
static struct ts_shared shared(const struct ts_community *c, int parameter, bool preferred)
{
	struct ts_shared s = {
		.comfortable = preferred, .range = {-(double)INFINITY, (double)INFINITY}};

	for (size_t i = 0; i < c->count; i++) {
		const struct ts_match *m = &c->lines[i].candidacy->match;
		const struct ts_parameter_fit *f = &m->at[parameter];
		const struct ts_range *r = preferred ? &f->preferred : &f->tolerated;

		if (isnan(r->low))
			continue;
		s.known = true;
		if (r->low > s.range.low) {
			s.range.low = r->low;
			s.low_by = m->species;
		}
		if (r->high < s.range.high) {
			s.range.high = r->high;
			s.high_by = m->species;
		}
	}
	return s;
}

/* Bought last: what takes change badly, then what claims ground, so that nobody is there first. */
static int lateness(const struct ts_company *line)
{
	const struct ts_species *s = line->candidacy->match.species;

	if (line->later)
		return 4;
	if (ts_is_delicate(s))
		return 3;
	if (s->territory.floor_m2 > 0 || s->to_others)
		return 2;
	return ts_is_hardy(s) ? 0 : 1;
}

static bool order_of_purchase(struct ts_community *c, struct ts_arena *arena)
{
	c->order = ts_arena_array(arena, c->count, sizeof *c->order);
	if (!c->order)
		return false;
	for (size_t i = 0; i < c->count; i++) {
		size_t at = c->order_count;

		if (c->lines[i].there == ts_group_count(&c->lines[i].group))
			continue;
		for (; at && lateness(&c->lines[i]) < lateness(&c->lines[c->order[at - 1]]); at--)
			c->order[at] = c->order[at - 1];
		c->order[at] = i;
		c->order_count++;
	}
	return true;
}

bool ts_community_describe(struct ts_community *c, struct ts_arena *arena)
{
	double least = (double)INFINITY;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		c->shared[p] = shared(c, p, true);
		if (c->shared[p].range.low > c->shared[p].range.high)
			c->shared[p] = shared(c, p, false);
	}
	for (size_t i = 0; i < c->count; i++) {
		double fit = ts_number_quantised(c->lines[i].candidacy->match.order);

		if (fit < least) {
			least = fit;
			c->limiting = i;
		}
	}
	return order_of_purchase(c, arena);
}

/* Of two forms of one name the plan says which. */
static const char *name_of(const struct ts_species *s, struct ts_arena *arena)
{
	return s->form ? ts_arena_join(arena, s->species, " ", s->form, NULL) : s->species;
}

static void put_line(struct ts_plan *plan, const struct ts_keeping *keeping, const char *name,
	unsigned count, int sex)
{
	if (count)
		plan->stock[plan->stock_count++] = (struct ts_stock_line){.species = name,
			.count = count,
			.sex = sex,
			.origin = keeping->wild ? TS_ORIGIN_WILD : TS_ORIGIN_UNKNOWN};
}

bool ts_community_plan(const struct ts_community *c, const struct ts_plan *base,
	const struct ts_keeping *keeping, struct ts_arena *arena, struct ts_plan *ret)
{
	struct ts_plan plan = *base;

	plan.stock_count = 0;
	plan.stock = ts_arena_array(arena, 3 * c->count + base->stock_count, sizeof *plan.stock);
	if (!plan.stock)
		return false;
	for (size_t i = 0; i < base->stock_count; i++)
		plan.stock[plan.stock_count++] = base->stock[i];
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_group *all = &c->lines[i].group;
		const struct ts_group *r = c->lines[i].candidacy->resident;
		struct ts_group there = r ? *r : (struct ts_group){0};
		const char *name = name_of(all->species, arena);

		put_line(&plan, keeping, name, all->males - there.males, TS_SEX_MALE);
		put_line(&plan, keeping, name, all->females - there.females, TS_SEX_FEMALE);
		put_line(&plan, keeping, name, all->either - there.either, TS_SEX_UNKNOWN);
	}
	*ret = plan;
	return !arena->failed;
}
