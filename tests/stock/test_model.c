/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The integer model by its definition: what a list is worth, what it may not hold, and which items
 * may be left out of the search. Every figure is added up by hand.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/arena.h"
#include "stock/model.h"

struct small {
	struct ts_arena arena;
	struct ts_model m;
};

/* Three groups: two numbers of the first, one of each other; room for all of them. */
static int set_up(void **state)
{
	static struct small s;

	ts_arena_open(&s.arena, NULL);
	assert_true(ts_model_open(&s.m, &s.arena, 4, 3, 3));
	s.m.species_most = 3;
	s.m.extras_most = 1;
	s.m.weight_most = 100;
	s.m.floor_most = 50;
	s.m.fit_points = 2;
	for (int r = 0; r < TS_ROLE__COUNT; r++)
		s.m.role_points[r] = 10;
	s.m.items[0] = (struct ts_model_item){0, 0, 500, 900, 20, 5, TS_ROLE_SHOAL, false};
	s.m.items[1] = (struct ts_model_item){0, 0, 700, 900, 30, 5, TS_ROLE_SHOAL, false};
	s.m.items[2] = (struct ts_model_item){1, 1, 400, 800, 40, 20, TS_ROLE_BOTTOM, false};
	s.m.items[3] = (struct ts_model_item){2, 2, 300, 950, 50, 30, TS_ROLE_TOP, false};
	*state = &s;
	return 0;
}

static int tear_down(void **state)
{
	struct small *s = *state;

	ts_arena_drop(&s->arena);
	return 0;
}

/* -1 where the list is not allowed. */
static int64_t worth(const struct small *s, size_t a, size_t b, size_t c, size_t count)
{
	const size_t chosen[] = {a, b, c};
	int64_t points = -1;

	ts_model_points(&s->m, chosen, count, &points);
	return points;
}

static void test_points__values_least_fit_and_roles(void **state)
{
	struct small *s = *state;

	assert_int_equal(worth(s, 0, 0, 0, 1), 500 + 2 * 900 + 10);
	assert_int_equal(worth(s, 1, 2, 0, 2), 700 + 400 + 2 * 800 + 20);
	assert_int_equal(worth(s, 0, 3, 0, 2), 500 + 300 + 2 * 900 + 20);
	ts_model_friction(&s->m, 3, 0, 150);
	assert_int_equal(ts_model_friction_of(&s->m, 0, 3), 150);
	assert_int_equal(worth(s, 0, 3, 0, 2), 500 + 300 + 2 * 900 + 20 - 150);
	assert_int_equal(worth(s, 3, 0, 0, 2), 500 + 300 + 2 * 900 + 20 - 150);
}

static void test_points__limits_may_be_used_up(void **state)
{
	struct small *s = *state;

	s->m.weight_most = 110;
	s->m.floor_most = 55;
	assert_int_equal(worth(s, 0, 2, 3, 3), 500 + 400 + 300 + 2 * 800 + 30);
	s->m.weight_most = 109;
	assert_int_equal(worth(s, 0, 2, 3, 3), -1);
	s->m.weight_most = 110;
	s->m.floor_most = 54;
	assert_int_equal(worth(s, 0, 2, 3, 3), -1);
	s->m.floor_most = 55;
	s->m.species_most = 2;
	assert_int_equal(worth(s, 0, 2, 3, 3), -1);
	assert_int_equal(worth(s, 0, 2, 3, 2), 500 + 400 + 2 * 800 + 20);
	assert_int_equal(worth(s, 0, 0, 0, 0), -1);
}

static void test_points__conflicts_groups_and_musts(void **state)
{
	struct small *s = *state;

	assert_int_equal(worth(s, 0, 1, 0, 2), -1); /* two numbers of one species */
	ts_model_conflict(&s->m, 0, 2);
	assert_true(ts_model_conflicts(&s->m, 2, 0) && !ts_model_conflicts(&s->m, 2, 1));
	assert_int_equal(worth(s, 0, 2, 0, 2), -1);
	assert_int_equal(worth(s, 2, 0, 0, 2), -1);
	assert_true(worth(s, 1, 2, 0, 2) > 0);
	s->m.must[1] = true;
	assert_int_equal(worth(s, 1, 0, 0, 1), -1);
	assert_true(worth(s, 1, 2, 0, 2) > 0);
	s->m.must[2] = true;
	assert_int_equal(worth(s, 1, 2, 0, 2), -1);
}

static void test_points__least_kinds_and_roles_that_must_be(void **state)
{
	struct small *s = *state;

	s->m.species_least = 2;
	assert_int_equal(worth(s, 0, 0, 0, 1), -1);
	assert_true(worth(s, 0, 2, 0, 2) > 0);
	s->m.items[2].extra = true; /* beside the others: no kind of them */
	assert_int_equal(worth(s, 0, 2, 0, 2), -1);
	s->m.items[2].extra = false;
	s->m.roles_must = TS_ROLE_BOTTOM;
	assert_true(worth(s, 0, 2, 0, 2) > 0);
	assert_int_equal(worth(s, 0, 3, 0, 2), -1);
	s->m.roles_must = TS_ROLE_BOTTOM | TS_ROLE_TOP;
	assert_int_equal(worth(s, 0, 2, 0, 2), -1);
	assert_true(worth(s, 2, 3, 0, 2) > 0);
}

/* Of those that are no must, the familiar are at most as many as the others. */
static void test_points__extras_are_no_list_and_tell_none_apart(void **state)
{
	struct small *s = *state;

	s->m.items[2].extra = true;
	assert_int_equal(worth(s, 2, 0, 0, 1), -1);
	assert_true(worth(s, 0, 2, 0, 2) > 0);
	s->m.familiar[0] = true; /* an extra is no fresh animal beside a familiar one */
	assert_int_equal(worth(s, 0, 2, 0, 2), -1);
	s->m.familiar[0] = false;
	s->m.familiar[1] = true; /* nor a familiar one */
	assert_true(worth(s, 0, 2, 0, 2) > 0);
	s->m.species_most = 1; /* it stands beside the others */
	assert_true(worth(s, 0, 2, 0, 2) > 0);
	s->m.extras_most = 0;
	assert_int_equal(worth(s, 0, 2, 0, 2), -1);
}

static void test_points__familiar_genera(void **state)
{
	struct small *s = *state;

	s->m.weight_most = s->m.floor_most = 1000;
	s->m.familiar[0] = true;
	assert_int_equal(worth(s, 0, 0, 0, 1), -1);
	assert_true(worth(s, 0, 2, 0, 2) > 0);
	s->m.familiar[1] = true;
	assert_int_equal(worth(s, 0, 2, 3, 3), -1);
	s->m.must[1] = true; /* asked for: it counts on neither side */
	assert_true(worth(s, 0, 2, 3, 3) > 0);
	assert_int_equal(worth(s, 0, 2, 0, 2), -1);
}

static void test_remember__genera_but_not_of_musts(void **state)
{
	const size_t chosen[] = {1, 2};
	struct small *s = *state;

	s->m.must[0] = true;
	ts_model_remember(&s->m, chosen, 2);
	assert_false(s->m.familiar[0]);
	assert_true(s->m.familiar[1]);
	assert_false(s->m.familiar[2]);
}

/* Items 0 and 1 made alike, then item 1 changed in one point: does it still matter? */
static void test_matters__one_difference_at_a_time(void **state)
{
	struct small *s = *state;
	struct ts_model_item *i = s->m.items;

	assert_true(ts_model_matters(&s->m, 0)); /* lighter, if worth less */
	assert_true(ts_model_matters(&s->m, 1));
	i[1] = i[0];
	assert_true(ts_model_matters(&s->m, 0)); /* of two alike the first stays */
	assert_false(ts_model_matters(&s->m, 1));
	i[1].weight = i[0].weight + 1;
	assert_true(ts_model_matters(&s->m, 0));
	assert_false(ts_model_matters(&s->m, 1));
	i[1].value = i[0].value + 1;
	assert_true(ts_model_matters(&s->m, 1));
	i[1].value = i[0].value;
	i[1].fit = i[0].fit + 1;
	assert_true(ts_model_matters(&s->m, 1));
	i[1].fit = i[0].fit;
	i[1].floor = i[0].floor - 1;
	assert_true(ts_model_matters(&s->m, 1));
	i[1].floor = i[0].floor;
	i[1].role = TS_ROLE_TOP;
	assert_true(ts_model_matters(&s->m, 1));
	i[0].role = TS_ROLE_TOP;
	assert_false(ts_model_matters(&s->m, 1));
	i[1].extra = true;
	assert_true(ts_model_matters(&s->m, 1));
	i[1].extra = false;
	assert_true(ts_model_matters(&s->m, 2) && ts_model_matters(&s->m, 3));
}

static void test_matters__what_the_other_number_excludes(void **state)
{
	struct small *s = *state;
	struct ts_model_item *i = s->m.items;

	i[1] = i[0];
	i[1].weight++;
	ts_model_conflict(&s->m, 0, 2); /* the better one excludes more */
	assert_true(ts_model_matters(&s->m, 1));
	ts_model_conflict(&s->m, 1, 2);
	assert_false(ts_model_matters(&s->m, 1));
	ts_model_friction(&s->m, 0, 3, 100);
	assert_true(ts_model_matters(&s->m, 1));
	ts_model_friction(&s->m, 1, 3, 100);
	assert_false(ts_model_matters(&s->m, 1));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
		CASE(test_points__values_least_fit_and_roles),
		CASE(test_points__limits_may_be_used_up),
		CASE(test_points__conflicts_groups_and_musts),
		CASE(test_points__least_kinds_and_roles_that_must_be),
		CASE(test_points__familiar_genera),
		CASE(test_points__extras_are_no_list_and_tell_none_apart),
		CASE(test_remember__genera_but_not_of_musts),
		CASE(test_matters__one_difference_at_a_time),
		CASE(test_matters__what_the_other_number_excludes),
	};

	return cmocka_run_group_tests_name("model", tests, NULL, NULL);
}
