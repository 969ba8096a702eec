/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which events of a log speak of the tank today: within their days, not ahead, and only where the
 * plan says nothing itself.
 */
#include <math.h>
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
	ts_happened_take(&p, day("2026-03-01"), NULL);
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
	ts_happened_take(&p, day("2026-03-01"), NULL);
	assert_true(p.deaths.value == 0 && p.tank.filter_stopped_h == 1);
}

static void test_log__says_nothing_of_what_is_long_ago(void **state)
{
	struct ts_plan p = plan();

	(void)state;
	ts_happened_take(&p, day("2026-05-01"), NULL);
	assert_int_equal(p.deaths.kind, TS_MEASURE_NONE);
	assert_true(p.tank.filter_stopped_h == 0);
}

/* Every second week 20 of 100 L, by the log. */
static struct ts_tank_event changes[] = {
	{.date = "2026-01-04", .what = TS_HAPPENED_CHANGED, .litres = 20},
	{.date = "2026-01-18", .what = TS_HAPPENED_CHANGED, .litres = 20},
	{.date = "2026-02-01", .what = TS_HAPPENED_CHANGED, .litres = 20},
	{.date = "2026-02-15", .what = TS_HAPPENED_CHANGED, .litres = 20},
	{.date = "2026-01-20", .what = TS_HAPPENED_TOPPED_UP, .litres = 3, .with = TS_TOP_UP_PURE},
	{.date = "2026-02-20", .what = TS_HAPPENED_TOPPED_UP, .litres = 4, .with = TS_TOP_UP_PURE},
};

static struct ts_plan changed(double amount, double days)
{
	return (struct ts_plan){.tank = {.volume_l = 100,
					.water_change = {amount, days},
					.events = changes,
					.event_count = sizeof changes / sizeof *changes}};
}

static void test_log__tells_the_routine(void **state)
{
	struct ts_plan p = changed(25, 7);

	(void)state;
	ts_happened_take(&p, day("2026-02-28"), NULL);
	assert_true(p.tank.change_said.amount == 25 && p.tank.change_said.days == 7);
	assert_true(fabs(p.tank.water_change.amount - 20) < 1e-9);
	assert_true(p.tank.water_change.days == 14);
	assert_true(p.tank.top_up == TS_TOP_UP_PURE);
	assert_true(fabs(p.tank.evaporation.amount - 4) < 1e-9);
	assert_true(p.tank.evaporation.days == 31);
	ts_happened_take(&p, day("2026-02-28"), NULL); /* once more changes nothing */
	assert_true(p.tank.change_said.amount == 25 && p.tank.water_change.days == 14);
}

static void test_log__leaves_a_routine_that_is_kept(void **state)
{
	struct ts_plan p = changed(20, 14), too_soon = changed(25, 7);

	(void)state;
	ts_happened_take(&p, day("2026-02-28"), NULL);
	assert_true(p.tank.water_change.amount == 20 && p.tank.water_change.days == 14);
	assert_true(p.tank.change_said.days == 0);
	ts_happened_take(&too_soon, day("2026-01-19"), NULL);
	assert_true(too_soon.tank.water_change.amount == 25);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_log__tells_deaths_and_the_power_cut),
		cmocka_unit_test(test_log__does_not_outrank_what_the_plan_says),
		cmocka_unit_test(test_log__says_nothing_of_what_is_long_ago),
		cmocka_unit_test(test_log__tells_the_routine),
		cmocka_unit_test(test_log__leaves_a_routine_that_is_kept),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
