/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Linear programs: small ones whose answer is plain, and random ones against a search over all
 * corners, which is slow and needs no cleverness.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "care/linear.h"

static void test_solve__corner_of_two_limits(void **state)
{
	struct ts_linear p = {.variables = 2, .cost = {-3, -5}};
	double *row, x[2], cost;

	(void)state;
	row = ts_linear_row(&p, 4);
	row[0] = 1;
	row = ts_linear_row(&p, 12);
	row[1] = 2;
	row = ts_linear_row(&p, 18);
	row[0] = 3;
	row[1] = 2;
	assert_true(ts_linear_solve(&p, x, &cost));
	assert_true(fabs(x[0] - 2) < 1e-9 && fabs(x[1] - 6) < 1e-9 && fabs(cost + 36) < 1e-9);
}

static void test_solve__at_least_and_at_most_the_same(void **state)
{
	struct ts_linear p = {.variables = 2, .cost = {1, 2}};
	double *row, x[2], cost;

	(void)state;
	row = ts_linear_row(&p, 5);
	row[0] = row[1] = 1;
	row = ts_linear_row(&p, -5);
	row[0] = row[1] = -1;
	assert_true(ts_linear_solve(&p, x, &cost));
	assert_true(fabs(x[0] - 5) < 1e-9 && fabs(x[1]) < 1e-9);
}

static void test_solve__nothing_satisfies__untouched(void **state)
{
	struct ts_linear p = {.variables = 1, .cost = {1}};
	double *row, x[1] = {7}, cost = 8;

	(void)state;
	row = ts_linear_row(&p, 1);
	row[0] = 1;
	row = ts_linear_row(&p, -2);
	row[0] = -1;
	assert_false(ts_linear_solve(&p, x, &cost));
	assert_true(x[0] == 7 && cost == 8);
}

static void test_solve__no_least_value(void **state)
{
	struct ts_linear p = {.variables = 1, .cost = {-1}};
	double x[1], cost;

	(void)state;
	assert_false(ts_linear_solve(&p, x, &cost));
}

static void test_row__no_room_left(void **state)
{
	struct ts_linear p = {.rows = TS_LINEAR_ROWS};

	(void)state;
	assert_null(ts_linear_row(&p, 1));
}

static double random_in(unsigned *seed, double low, double high)
{
	*seed = *seed * 1664525u + 1013904223u;
	return low + (double)(*seed >> 8) / 16777216.0 * (high - low);
}

/* The least cost over all corners of a program in two variables; INFINITY: there is none. */
static double least_corner(const struct ts_linear *p)
{
	double best = (double)INFINITY;
	double a[TS_LINEAR_ROWS + 2][3];
	size_t n = 0;

	for (size_t r = 0; r < p->rows; r++, n++) {
		a[n][0] = p->row[r][0];
		a[n][1] = p->row[r][1];
		a[n][2] = p->bound[r];
	}
	for (int v = 0; v < 2; v++, n++) {
		a[n][0] = v == 0 ? -1 : 0;
		a[n][1] = v == 1 ? -1 : 0;
		a[n][2] = 0;
	}
	for (size_t i = 0; i < n; i++) {
		for (size_t j = i + 1; j < n; j++) {
			double det = a[i][0] * a[j][1] - a[j][0] * a[i][1], x, y;
			bool inside = fabs(det) > 1e-9;

			if (!inside)
				continue;
			x = (a[i][2] * a[j][1] - a[j][2] * a[i][1]) / det;
			y = (a[i][0] * a[j][2] - a[j][0] * a[i][2]) / det;
			for (size_t r = 0; r < n; r++)
				inside &= a[r][0] * x + a[r][1] * y <= a[r][2] + 1e-7;
			if (inside)
				best = fmin(best, p->cost[0] * x + p->cost[1] * y);
		}
	}
	return best;
}

static void test_property__as_good_as_the_best_corner(void **state)
{
	unsigned seed = 5, solved = 0;

	(void)state;
	for (int i = 0; i < 4000; i++) {
		struct ts_linear p = {.variables = 2};
		size_t rows = (size_t)random_in(&seed, 1, 8);
		double x[2], cost, want;

		p.cost[0] = random_in(&seed, 0, 3);
		p.cost[1] = random_in(&seed, 0, 3);
		for (size_t r = 0; r < rows; r++) {
			double *row = ts_linear_row(&p, random_in(&seed, -6, 10));

			row[0] = random_in(&seed, -3, 3);
			row[1] = random_in(&seed, -3, 3);
		}
		want = least_corner(&p);
		if (!ts_linear_solve(&p, x, &cost)) {
			assert_true(isinf(want));
			continue;
		}
		solved++;
		assert_true(fabs(cost - want) < 1e-6);
		assert_true(fabs(p.cost[0] * x[0] + p.cost[1] * x[1] - cost) < 1e-6);
	}
	assert_true(solved > 1000 && solved < 4000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_solve__corner_of_two_limits),
		cmocka_unit_test(test_solve__at_least_and_at_most_the_same),
		cmocka_unit_test(test_solve__nothing_satisfies__untouched),
		cmocka_unit_test(test_solve__no_least_value),
		cmocka_unit_test(test_row__no_room_left),
		cmocka_unit_test(test_property__as_good_as_the_best_corner),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
