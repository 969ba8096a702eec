/* SPDX-License-Identifier: Apache-2.0 */
/* Counts over a few records in memory, made by hand. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "catalogue/summary.h"

static const char *published[] = {"fishbase", "practice"};
static const char *memory[] = {"memory", "derived"};
static const char *practice[] = {"practice", "practice"};

static void test_summary__counts(void **state)
{
	const struct ts_species species[] = {
		{.file = "x/tetras/a.yaml",
			.home_water = TS_HOME_BLACK,
			.water.usual = {.ph.source = {published, 2}, .gh_dh.source = {memory, 2}}},
		{.file = "y/barbs/b.yaml",
			.home_water = TS_HOME_BLACK,
			.water.usual = {.ph.source = {published, 2},
				.gh_dh.source = {published, 2},
				.temp_c.source = {practice, 2}}},
		{.file = "x/tetra/c.yaml", .kind = 1, .water.usual = {.ph.source = {published, 2}}},
		{.file = "y/tetras/d.yaml", .home_water = TS_HOME_HARD},
	};
	const struct ts_species *items[] = {&species[0], &species[1], &species[2], &species[3]};
	struct ts_arena arena;
	struct ts_summary s;

	(void)state;
	ts_arena_open(&arena, NULL);
	ts_summarise(items, 4, &arena, &s);
	assert_int_equal(s.species, 4);
	assert_int_equal(s.fish, 3);
	assert_int_equal(s.group_count, 3);
	assert_string_equal(s.groups[0].name, "barbs");
	assert_string_equal(s.groups[1].name, "tetra");
	assert_string_equal(s.groups[2].name, "tetras");
	assert_int_equal(s.groups[2].count, 2);
	assert_int_equal(s.home_water[TS_HOME_BLACK], 3); /* the shrimp too: the first word */
	assert_int_equal(s.home_water[TS_HOME_HARD], 1);
	assert_int_equal(s.values[TS_GRADE_PUBLISHED], 4);
	assert_int_equal(s.values[TS_GRADE_PRACTICE], 6);
	assert_int_equal(s.values[TS_GRADE_DERIVED], 1);
	assert_int_equal(s.values[TS_GRADE_MEMORY], 1);
	assert_int_equal(s.fish_ph_published, 2);
	assert_int_equal(s.fish_gh_published, 1);
	assert_int_equal(s.fish_temp_published, 0);
	ts_arena_drop(&arena);
}

static void test_summary__of_nothing(void **state)
{
	struct ts_arena arena;
	struct ts_summary s;

	(void)state;
	ts_arena_open(&arena, NULL);
	ts_summarise(NULL, 0, &arena, &s);
	assert_int_equal(s.species + s.group_count + s.fish, 0);
	ts_arena_drop(&arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_summary__counts),
		cmocka_unit_test(test_summary__of_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
