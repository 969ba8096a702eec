/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which events of a log speak of the tank today: within their days, not ahead, and only where the
 * plan says nothing itself.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/date.h"
#include "care/happened.h"

static struct ts_tank_event events[] = {
	{.date = "2026-01-31", .what = TS_HAPPENED_DIED, .count = 5}, /* four weeks and a day */
	{.date = "2026-02-01", .what = TS_HAPPENED_DIED, .count = 2},
	{.date = "2026-03-01", .what = TS_HAPPENED_DIED},
	{.date = "2026-03-02", .what = TS_HAPPENED_DIED, .count = 9}, /* ahead */
	{.date = "2026-02-27", .what = TS_HAPPENED_POWER_CUT, .lasted_h = 30},
	{.date = "2026-02-28", .what = TS_HAPPENED_POWER_CUT, .lasted_h = 6},
	{.date = "2026-03-01", .what = TS_HAPPENED_POWER_CUT, .lasted_h = 2},
	{.date = "2026-02-20", .what = TS_HAPPENED_ADDED, .count = 7},
};

static long day(const char *date)
{
	long ret = -1;

	assert_true(ts_date_read(date, &ret));
	return ret;
}

static struct ts_plan plan(void)
{
	return (struct ts_plan){
		.tank = {.events = events, .event_count = sizeof events / sizeof *events}};
}

static void test_log__tells_deaths_and_the_power_cut(void **state)
{
	struct ts_plan p = plan();

	(void)state;
	ts_happened_take(&p, day("2026-03-01"));
	assert_int_equal(p.deaths.kind, TS_MEASURE_VALUE);
	assert_true(p.deaths.value == 3 && p.deaths.low == 3 && p.deaths.high == 3);
	assert_true(p.tank.filter_stopped_h == 6);
}

static void test_log__does_not_outrank_what_the_plan_says(void **state)
{
	struct ts_plan p = plan();

	(void)state;
	p.deaths = (struct ts_measure){.kind = TS_MEASURE_VALUE};
	p.tank.filter_stopped_h = 1;
	ts_happened_take(&p, day("2026-03-01"));
	assert_true(p.deaths.value == 0 && p.tank.filter_stopped_h == 1);
}

static void test_log__says_nothing_of_what_is_long_ago(void **state)
{
	struct ts_plan p = plan();

	(void)state;
	ts_happened_take(&p, day("2026-05-01"));
	assert_int_equal(p.deaths.kind, TS_MEASURE_NONE);
	assert_true(p.tank.filter_stopped_h == 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_log__tells_deaths_and_the_power_cut),
		cmocka_unit_test(test_log__does_not_outrank_what_the_plan_says),
		cmocka_unit_test(test_log__says_nothing_of_what_is_long_ago),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
