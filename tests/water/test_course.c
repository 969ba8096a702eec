/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The course that a value is on now, out of logs of whole drops.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include "base/date.h"
#include "water/course.h"

#define MOST 32

static char dates[MOST][TS_DATE_ROOM];

/* Read every second week from 1 January 2026 on. */
static struct ts_course course_of(
	enum ts_now_value value, const double *figures, size_t count, long since)
{
	struct ts_reading readings[MOST] = {{0}};
	struct ts_course course;
	long first = 0;

	assert_true(ts_date_read("2026-01-01", &first));
	for (size_t i = 0; i < count; i++) {
		const struct ts_measure m = {figures[i], figures[i], figures[i], TS_MEASURE_VALUE};

		assert_true(ts_date_write(dates[i], first + 14 * (long)i));
		readings[i].date = dates[i];
		if (value == TS_NOW_NO3)
			readings[i].no3_mg_l = m;
		else
			readings[i].kh_dh = m;
	}
	ts_course_make(readings, count, value,
		since < 0 ? TS_COURSE_FROM_FIRST : first + 14 * since, &course);
	return course;
}

static void test_course__one_step_of_a_kit_is_none(void **state)
{
	const double kh[] = {5, 5, 5, 4, 4, 5, 4}, no3[] = {25, 30, 30, 25, 30, 30, 35};

	(void)state;
	assert_false(course_of(TS_NOW_KH, kh, 7, -1).moves);
	assert_false(course_of(TS_NOW_NO3, no3, 7, -1).moves);
}

static void test_course__begins_where_the_level_was_left(void **state)
{
	const double kh[] = {5, 5, 5, 5, 5, 4, 4, 3, 3};
	struct ts_course c = course_of(TS_NOW_KH, kh, 9, -1);

	(void)state;
	assert_true(c.moves && !c.rests);
	assert_int_equal(c.to - c.from, 4 * 14);
	assert_true(c.first == 5 && c.last == 3);
	assert_true(c.a_week < -0.2 && c.a_week > -0.3);
}

static void test_course__a_rise_that_came_to_rest_is_over(void **state)
{
	const double gh[] = {4, 4, 4, 11, 14, 16, 17, 17, 17, 17};
	struct ts_course c = course_of(TS_NOW_KH, gh, 10, 2);

	(void)state;
	assert_false(c.moves);
	assert_true(c.rests);
	assert_true(c.moved_first == 4 && c.first == 16 && c.last == 17);
}

static void test_course__after_another_water_two_readings_tell(void **state)
{
	const double gh[] = {4, 4, 4, 11};

	(void)state;
	assert_true(course_of(TS_NOW_KH, gh, 4, 2).moves);
	assert_true(course_of(TS_NOW_KH, gh, 4, 2).first == 4);
	assert_int_equal(course_of(TS_NOW_KH, gh, 4, 2).readings, 2);
}

/* A slide by a drop in two months stands for six weeks on each, and goes on. */
static void test_course__a_slow_slide_is_no_rest(void **state)
{
	const double kh[] = {6, 6, 6, 5, 5, 5, 5, 4, 4, 4, 4, 3, 3, 3};
	struct ts_course c = course_of(TS_NOW_KH, kh, 14, -1);

	(void)state;
	assert_true(c.moves && !c.rests);
}

static void test_course__of_nothing_is_none(void **state)
{
	struct ts_course c = course_of(TS_NOW_KH, NULL, 0, -1);

	(void)state;
	assert_int_equal(c.readings, 0);
	assert_true(isnan(c.first) && isnan(c.a_week) && !c.moves);
}

/* Of too many the newest count. */
static void test_course__a_long_log_is_cut(void **state)
{
	static struct ts_reading readings[300];
	struct ts_course c;

	(void)state;
	for (size_t i = 0; i < 300; i++) {
		double kh = i < 150 ? 9 : 3;

		readings[i].date = "2026-01-01";
		readings[i].kh_dh = (struct ts_measure){kh, kh, kh, TS_MEASURE_VALUE};
	}
	ts_course_make(readings, 300, TS_NOW_KH, TS_COURSE_FROM_FIRST, &c);
	assert_int_equal(c.readings, 128);
	assert_true(c.low == 3 && c.high == 3 && !c.moves);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_course__one_step_of_a_kit_is_none),
		cmocka_unit_test(test_course__begins_where_the_level_was_left),
		cmocka_unit_test(test_course__a_rise_that_came_to_rest_is_over),
		cmocka_unit_test(test_course__after_another_water_two_readings_tell),
		cmocka_unit_test(test_course__a_slow_slide_is_no_rest),
		cmocka_unit_test(test_course__of_nothing_is_none),
		cmocka_unit_test(test_course__a_long_log_is_cut),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
