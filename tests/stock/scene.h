/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Two peaceful made-up animals in a tank that suits both: tests of the rules change one trait at a
 * time. Include after cmocka. For tests only.
 */
#ifndef TS_TESTS_STOCK_SCENE_H
#define TS_TESTS_STOCK_SCENE_H

#include <math.h>
#include <stdio.h>

#include "stock/rules.h"

struct scene {
	struct ts_species x, y;
	struct ts_group a, b;
	struct ts_tank tank;
};

static inline struct ts_species peaceful(const char *name)
{
	static const struct ts_range none = {(double)NAN, (double)NAN};
	struct ts_species s = {.species = name,
		.family = name,
		.adult_length_cm = 4,
		.greatest_length_cm = 5,
		.group = {.least = 6, .comfortable = 10},
		.hunts = TS_HUNTS_FISH,
		.swims = TS_SWIMS_MIDDLE,
		.needs = {.flow = TS_NEEDS_ANY}};

	s.water.usual.temp_c.tolerated = (struct ts_range){20, 28};
	s.water.usual.temp_c.preferred = (struct ts_range){23, 26};
	s.water.usual.gh_dh.tolerated = (struct ts_range){1, 15};
	s.water.usual.ph.tolerated = (struct ts_range){6, 7.5};
	s.water.usual.salinity_g_l.tolerated = none;
	return s;
}

static inline void set_peace(struct scene *s)
{
	*s = (struct scene){.x = peaceful("Exempla una"), .y = peaceful("Olda altera")};
	s->a = (struct ts_group){.species = &s->x, .either = 10};
	s->b = (struct ts_group){.species = &s->y, .either = 10};
	s->tank = (struct ts_tank){.length_cm = 100,
		.width_cm = 40,
		.height_cm = 45,
		.cover = TS_COVER_YES,
		.plants = TS_PLANTS_SOME,
		.filter = TS_FILTER_MATURE};
}

/* The ruling of this code; NULL: none. */
static inline const struct ts_ruling *find_ruling(const struct ts_rulings *all, enum ts_rule_id id)
{
	for (size_t i = 0; i < all->count; i++) {
		if (all->at[i].rule == id)
			return &all->at[i];
	}
	return NULL;
}

/* What to change, and the ruling that must come of it; severity -1: none. */
struct scene_row {
	enum ts_rule_id rule;
	const char *name;
	void (*change)(struct scene *s);
	int severity;
	double ours, its, by; /* NAN: no figure */
};

#define WHEN(name, what)                                                                           \
	static void name(struct scene *s)                                                          \
	{                                                                                          \
		what;                                                                              \
	}

/* The ruling over the first animal, which suffers, as found in the changed scene. */
static inline bool judge_scene(const struct scene_row *row, struct ts_ruling *ret)
{
	struct ts_rulings all = {.count = 0};
	const struct ts_ruling *found;
	struct scene s;

	set_peace(&s);
	row->change(&s);
	if (ts_rule_rows[row->rule].scope == TS_SCOPE_PAIR)
		ts_rules_together(&s.a, &s.b, &s.tank, NULL, &all);
	else
		ts_rules_alone(&s.a, &s.tank, NULL, &all);
	found = find_ruling(&all, row->rule);
	if (found)
		*ret = *found;
	return found;
}

static inline bool is_figure(double value, double wanted)
{
	return isnan(wanted) ? isnan(value) : fabs(value - wanted) < 1e-9 * fabs(wanted) + 1e-12;
}

static inline void test_scene_row(void **state)
{
	const struct scene_row *row = *state;
	struct ts_ruling r;

	if (!judge_scene(row, &r)) {
		assert_int_equal(-1, row->severity);
		return;
	}
	assert_int_equal(r.severity, row->severity);
	if (!is_figure(r.ours, row->ours) || !is_figure(r.its, row->its) ||
		!is_figure(r.change, row->by))
		fail_msg("%g of %g by %g, wanted %g of %g by %g", r.ours, r.its, r.change,
			row->ours, row->its, row->by);
}

#define CASE_NAME 96

/* A case of a row, called after its rule and its name. */
static inline struct CMUnitTest scene_case(char called[CASE_NAME], enum ts_rule_id rule,
	const char *name, CMUnitTestFunction test, const void *row)
{
	snprintf(called, CASE_NAME, "%s: %s", ts_rule_rows[rule].code, name);
	return (struct CMUnitTest){called, test, NULL, NULL, (void *)(uintptr_t)row};
}

#endif
