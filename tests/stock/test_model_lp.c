/* SPDX-License-Identifier: Apache-2.0 */
/* The written model, every kind of row once; that solvers read it is shown by solvers.py. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/arena.h"
#include "stock/model_lp.h"

static void fill(struct ts_model *m, struct ts_arena *arena)
{
	assert_true(ts_model_open(m, arena, 4, 3, 2));
	m->items[0] = (struct ts_model_item){0, 0, 350, 750, 30, 100, TS_ROLE_BOTTOM, false};
	m->items[1] = (struct ts_model_item){0, 0, 550, 750, 60, 0, TS_ROLE_BOTTOM, false};
	m->items[2] = (struct ts_model_item){1, 1, -20, 1000, 10, 0, 0, true};
	m->items[3] = (struct ts_model_item){2, 1, 600, 1000, 0, 0, TS_ROLE_TOP, false};
	ts_model_conflict(m, 0, 2);
	ts_model_conflict(m, 1, 2);
	ts_model_conflict(m, 3, 0);
	ts_model_friction(m, 1, 3, 300);
	ts_model_friction(m, 0, 3, 200); /* apart anyway: not written */
	m->must[1] = true;
	m->familiar[1] = true;
	m->species_most = 3;
	m->extras_most = 1;
	m->weight_most = 65;
	m->floor_most = 90;
	m->fit_points = 2;
	for (int r = 0; r < TS_ROLE__COUNT; r++)
		m->role_points[r] = 100 * (r + 1);
}

static void test_write__every_kind_of_row(void **state)
{
	static const char *const names[] = {"6 a", "10 a", "1 b", "2 c"};
	struct ts_arena arena;
	struct ts_model m;
	struct ts_text text;

	(void)state;
	ts_arena_open(&arena, NULL);
	ts_text_open(&text, NULL);
	fill(&m, &arena);
	ts_model_write_lp(&text, &m, names);
	assert_string_equal(ts_text_get(&text),
		"\\ which animals together, as integers; m is the least fit of a list\n"
		"\\ x1 = 6 a\n"
		"\\ x2 = 10 a\n"
		"\\ x3 = 1 b\n"
		"\\ x4 = 2 c\n"
		"Maximize\n"
		" points: 2 m + 350 x1 + 550 x2 - 20 x3 + 600 x4 + 100 u1 + 200 u2\n"
		"  + 300 u3 + 400 u4 - 300 p2_4\n"
		"Subject To\n"
		" one1: x1 + x2 <= 1\n"
		" fit1: m + 250 x1 + 250 x2 <= 1000\n"
		" one3: x3 = 1\n"
		" fit3: m <= 1000\n"
		" one4: x4 <= 1\n"
		" fit4: m <= 1000\n"
		" apart1_3: x1 + x2 + x3 <= 1\n"
		" apart1_4: x1 + x4 <= 1\n"
		" pair2_4: x2 + x4 - p2_4 <= 1\n"
		" weight: zero + 30 x1 + 60 x2 + 10 x3 <= 65\n"
		" floor: zero + 100 x1 <= 90\n"
		" most: zero + x1 + x2 + x4 <= 3\n"
		" least: zero + x1 + x2 + x4 >= 1\n"
		" extras: zero + x3 <= 1\n"
		" role1: u1 <= 0\n"
		" role2: u2 <= 0\n"
		" role3: u3 - x1 - x2 <= 0\n"
		" role4: u4 - x4 <= 0\n"
		" familiar: zero - x1 - x2 + x4 <= 0\n"
		"Bounds\n"
		" 0 <= m <= 1000\n"
		" zero = 0\n"
		"Binaries\n"
		" x1 x2 x3 x4 u1 u2 u3 u4\n"
		"End\n");
	assert_false(text.failed);
	ts_text_drop(&text);
	ts_arena_drop(&arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {cmocka_unit_test(test_write__every_kind_of_row)};

	return cmocka_run_group_tests_name("model_lp", tests, NULL, NULL);
}
