/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: weighted least squares against numpy (1.24.2, linalg.lstsq and inv), on 40 random
 * systems whose columns are of unlike size; the table is written by tests/data/reference/
 * least_squares.py.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "base/squares.h"
#include "table.h"

#define UNKNOWNS 6

static double cell(const struct table *t, size_t row, char letter, unsigned i)
{
	char name[8];

	snprintf(name, sizeof name, "%c%u", letter, i % 10);
	return table_number(t, row, name);
}

static bool same_system(const struct table *t, size_t a, size_t b)
{
	return b < t->rows && table_number(t, a, "system") == table_number(t, b, "system");
}

static void test_squares__numpy(void **state)
{
	struct table *t = table_open("least_squares.csv");
	struct worst x = {.what = "solution, relative", .limit = 1e-7},
		     s = {.what = "deviation, relative", .limit = 1e-7},
		     rest = {.what = "squares that are left", .limit = 1e-5};

	(void)state;
	for (size_t first = 0, row; first < t->rows; first = row) {
		const char *where = table_text(t, first, "system");
		struct ts_squares squares;
		struct ts_squares_solution solution;

		ts_squares_open(&squares, UNKNOWNS);
		for (row = first; same_system(t, first, row); row++) {
			double factors[UNKNOWNS];

			for (unsigned i = 0; i < UNKNOWNS; i++)
				factors[i] = cell(t, row, 'f', i);
			ts_squares_add(&squares, factors, table_number(t, row, "value"),
				table_number(t, row, "deviation"));
		}
		assert_true(ts_squares_solve(&squares, &solution));
		for (unsigned i = 0; i < UNKNOWNS; i++) {
			double unit[UNKNOWNS] = {0};

			unit[i] = 1;
			worst_note_relative(&x, solution.x[i], cell(t, first, 'x', i), where);
			worst_note_relative(&s, ts_squares_deviation(&solution, unit, UNKNOWNS),
				cell(t, first, 's', i), where);
		}
		worst_note(&rest, solution.rest, table_number(t, first, "rest"), where);
	}
	worst_assert(&x);
	worst_assert(&s);
	worst_assert(&rest);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_squares__numpy),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
