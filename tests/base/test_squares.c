/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Weighted least squares on systems whose solution is known by hand; figures of another library are
 * tests/checks/test_squares.c's.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/squares.h"

/* y = 2 + 3 x through three points that lie on it. */
static void test_squares__a_line(void **state)
{
	struct ts_squares s;
	struct ts_squares_solution r;

	(void)state;
	ts_squares_open(&s, 2);
	for (int x = 0; x < 3; x++) {
		const double factors[] = {1, x};

		ts_squares_add(&s, factors, 2 + 3 * x, 0.5);
	}
	assert_true(ts_squares_solve(&s, &r));
	assert_true(fabs(r.x[0] - 2) < 1e-12 && fabs(r.x[1] - 3) < 1e-12);
	assert_true(fabs(r.rest) < 1e-20);
	/* The textbook: variance of the slope is s^2 over the sum of squares of x about its mean.
	 */
	assert_true(fabs(r.covariance[1][1] - 0.25 / 2) < 1e-12);
}

/* Two readings of one thing: the surer one counts more, by the squares of the deviations. */
static void test_squares__weights(void **state)
{
	const double one[] = {1};
	struct ts_squares s;
	struct ts_squares_solution r;

	(void)state;
	ts_squares_open(&s, 1);
	ts_squares_add(&s, one, 10, 1);
	ts_squares_add(&s, one, 20, 2);
	assert_true(ts_squares_solve(&s, &r));
	assert_true(fabs(r.x[0] - 12) < 1e-12);
	assert_true(fabs(ts_squares_deviation(&r, one, 1) - sqrt(0.8)) < 1e-12);
	assert_true(fabs(r.rest - (4 + 16)) < 1e-12); /* (2/1)^2 + (8/2)^2 */
}

static void test_squares__open_unknowns(void **state)
{
	const double together[] = {1, 1}, apart[] = {0, 1};
	struct ts_squares s;
	struct ts_squares_solution r = {.rest = -1};

	(void)state;
	ts_squares_open(&s, 2);
	assert_false(ts_squares_solve(&s, &r));
	ts_squares_add(&s, together, 5, 1);
	ts_squares_add(&s, together, 6, 1);
	assert_false(ts_squares_solve(&s, &r));
	assert_true(r.rest == -1);
	ts_squares_add(&s, apart, 2, 1);
	assert_true(ts_squares_solve(&s, &r));
	assert_true(fabs(r.x[0] - 3.5) < 1e-12 && fabs(r.x[1] - 2) < 1e-12);
	assert_true(fabs(ts_squares_value(&r, together, 2) - 5.5) < 1e-12);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_squares__a_line),
		cmocka_unit_test(test_squares__weights),
		cmocka_unit_test(test_squares__open_unknowns),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
