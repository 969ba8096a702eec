/* SPDX-License-Identifier: Apache-2.0 */
/* Numbers to text and back. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "base/number.h"

static void wrote(double value, int decimals, const char *want)
{
	char out[TS_NUMBER_ROOM];

	assert_true(ts_number_write(out, value, decimals));
	assert_string_equal(out, want);
}

static void test_write__rounds_half_away_from_zero(void **state)
{
	(void)state;
	wrote(0.285, 2, "0.29");
	wrote(-0.285, 2, "-0.29");
	wrote(7.45, 1, "7.5");
	wrote(2.5, 0, "3");
}

static void test_write__keeps_decimals_and_never_minus_zero(void **state)
{
	(void)state;
	wrote(7, 2, "7.00");
	wrote(-0.001, 2, "0.00");
	wrote(0.05, 3, "0.050");
}

static void test_write__refuses_what_is_not_finite_or_too_long(void **state)
{
	char out[TS_NUMBER_ROOM];

	(void)state;
	assert_false(ts_number_write(out, (double)NAN, 1));
	assert_false(ts_number_write(out, (double)INFINITY, 1));
	assert_false(ts_number_write(out, 1e18, 0));
	assert_string_equal(out, "");
}

static void test_write_short__drops_zeros(void **state)
{
	char out[TS_NUMBER_ROOM];

	(void)state;
	assert_true(ts_number_write_short(out, 7.50, 2));
	assert_string_equal(out, "7.5");
	assert_true(ts_number_write_short(out, 100, 2));
	assert_string_equal(out, "100");
}

static void test_read__point_comma_and_exactness(void **state)
{
	double value;
	bool three;

	(void)state;
	assert_int_equal(ts_number_read("7,5 dH", 6, &value, NULL), 3);
	assert_true(value == 7.5);
	assert_int_equal(ts_number_read("0.1", 3, &value, NULL), 3);
	assert_true(value == 0.1);
	assert_int_equal(ts_number_read("5..7", 4, &value, NULL), 1);
	assert_true(value == 5);
	assert_int_equal(ts_number_read("1,200", 5, &value, &three), 5);
	assert_true(three);
	assert_int_equal(ts_number_read(".5", 2, &value, NULL), 0);
	assert_int_equal(ts_number_read("abc", 3, &value, NULL), 0);
}

static void test_round_trip__every_tenth_up_to_a_hundred(void **state)
{
	char out[TS_NUMBER_ROOM];
	double value;

	(void)state;
	for (int i = 0; i <= 1000; i++) {
		assert_true(ts_number_write(out, i / 10.0, 1));
		assert_int_equal(ts_number_read(out, strlen(out), &value, NULL), strlen(out));
		assert_true(value == i / 10.0);
	}
}

static void test_min_max__the_second_where_one_is_no_number(void **state)
{
	const double nan = (double)NAN;

	(void)state;
	assert_true(ts_min(1, 2) == 1 && ts_min(2, 1) == 1);
	assert_true(ts_max(1, 2) == 2 && ts_max(2, 1) == 2);
	assert_true(ts_min(nan, 1) == 1 && ts_max(nan, 1) == 1);
	assert_true(isnan(ts_min(1, nan)) && isnan(ts_max(1, nan)));
	assert_true(ts_min(-(double)INFINITY, 0) < 0 && ts_max((double)INFINITY, 0) > 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_write__rounds_half_away_from_zero),
		cmocka_unit_test(test_write__keeps_decimals_and_never_minus_zero),
		cmocka_unit_test(test_write__refuses_what_is_not_finite_or_too_long),
		cmocka_unit_test(test_write_short__drops_zeros),
		cmocka_unit_test(test_read__point_comma_and_exactness),
		cmocka_unit_test(test_round_trip__every_tenth_up_to_a_hundred),
		cmocka_unit_test(test_min_max__the_second_where_one_is_no_number),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
