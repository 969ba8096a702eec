/* SPDX-License-Identifier: Apache-2.0 */
/* What may follow from a number. */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "water/follows.h"

static const struct ts_range limits = {4, 8};

static void test_where_an_interval_lies(void **state)
{
	(void)state;
	assert_int_equal(ts_beyond_of(4, 8, &limits), TS_BEYOND_NOT);
	assert_int_equal(ts_beyond_of(3.9, 8, &limits), TS_BEYOND_PARTLY);
	assert_int_equal(ts_beyond_of(5, 8.1, &limits), TS_BEYOND_PARTLY);
	assert_int_equal(ts_beyond_of(1, 4, &limits), TS_BEYOND_PARTLY);
	assert_int_equal(ts_beyond_of(1, 20, &limits), TS_BEYOND_PARTLY);
	assert_int_equal(ts_beyond_of(1, 3.9, &limits), TS_BEYOND_WHOLLY);
	assert_int_equal(ts_beyond_of(8.1, 9, &limits), TS_BEYOND_WHOLLY);
}

static void test_not_known_is_a_question_only(void **state)
{
	(void)state;
	for (int beyond = 0; beyond < TS_BEYOND__COUNT; beyond++)
		assert_int_equal(
			ts_follows(TS_FROM_NONE, (enum ts_beyond)beyond, TS_FOLLOWS_CONFLICT),
			TS_FOLLOWS_QUESTION);
}

static void test_an_assumption_is_never_a_conflict(void **state)
{
	(void)state;
	assert_int_equal(ts_follows(TS_FROM_ASSUMED, TS_BEYOND_PARTLY, TS_FOLLOWS_CONFLICT),
		TS_FOLLOWS_NOTE);
	assert_int_equal(ts_follows(TS_FROM_ASSUMED, TS_BEYOND_WHOLLY, TS_FOLLOWS_CONFLICT),
		TS_FOLLOWS_CONCERN);
}

/* The pH that follows from KH never leads, asks or excludes. */
static void test_a_result_is_a_note_at_the_most(void **state)
{
	(void)state;
	for (int rule = 0; rule < TS_FOLLOWS__COUNT; rule++) {
		assert_int_equal(
			ts_follows(TS_FROM_RESULT, TS_BEYOND_PARTLY, (enum ts_follows)rule),
			TS_FOLLOWS_NOTHING);
		assert_true(ts_follows(TS_FROM_RESULT, TS_BEYOND_WHOLLY, (enum ts_follows)rule) <=
			    TS_FOLLOWS_NOTE);
	}
	assert_int_equal(
		ts_follows(TS_FROM_RESULT, TS_BEYOND_WHOLLY, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_NOTE);
}

static void test_a_reading_goes_as_far_as_its_interval(void **state)
{
	(void)state;
	for (int from = TS_FROM_COMPUTED; from < TS_FROM__COUNT; from++) {
		const enum ts_number_from f = (enum ts_number_from)from;

		assert_int_equal(
			ts_follows(f, TS_BEYOND_NOT, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_NOTHING);
		assert_int_equal(
			ts_follows(f, TS_BEYOND_PARTLY, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_CONCERN);
		assert_int_equal(
			ts_follows(f, TS_BEYOND_WHOLLY, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_CONFLICT);
		assert_int_equal(
			ts_follows(f, TS_BEYOND_WHOLLY, TS_FOLLOWS_CONCERN), TS_FOLLOWS_CONCERN);
	}
}

static void test_of_an_exposure_every_part_is_lived(void **state)
{
	struct ts_span span = {true, false, 8, 7, 9, TS_FROM_TANK, (double)NAN};

	(void)state;
	assert_int_equal(ts_span_follows(&span, &limits, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_CONCERN);
	span.exposure = true;
	assert_int_equal(ts_span_follows(&span, &limits, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_CONFLICT);
	span.given = false;
	assert_int_equal(ts_span_follows(&span, &limits, TS_FOLLOWS_CONFLICT), TS_FOLLOWS_QUESTION);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_where_an_interval_lies),
		cmocka_unit_test(test_not_known_is_a_question_only),
		cmocka_unit_test(test_an_assumption_is_never_a_conflict),
		cmocka_unit_test(test_a_result_is_a_note_at_the_most),
		cmocka_unit_test(test_a_reading_goes_as_far_as_its_interval),
		cmocka_unit_test(test_of_an_exposure_every_part_is_lived),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
