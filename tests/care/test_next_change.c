/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The next change of water: the routine and what was noted of it, nitrate and the buffer on their
 * way, what advice orders. The waters are put together by hand, so that the pace of each value is
 * known.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../given.h"
#include "base/date.h"
#include "care/next_change.h"
#include "words/next_change.h"

#define TODAY "2026-03-10"

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

/* A tank of 100 L that was read on one day, 1 mg/L of nitrate up and 0.1 dH of KH down a day. */
struct given {
	struct ts_reading reading;
	struct ts_tank_event events[2];
	struct ts_plan plan;
	struct ts_waters waters;
	struct ts_next_change_case asked;
};

static void open_given(struct given *g, const char *read, double no3, double kh)
{
	const double *p = table()->value;

	memset(g, 0, sizeof *g);
	g->reading = (struct ts_reading){.date = read, .no3_mg_l = value(no3), .kh_dh = value(kh)};
	g->plan.tank =
		(struct ts_tank){.volume_l = 100, .readings = &g->reading, .reading_count = 1};
	ts_now_make(&g->reading, 1, day(TODAY), table(), &g->waters.log);
	g->waters.load_known = true;
	g->waters.load.no3_rise_mg_l_week.value = 7;
	g->waters.load.kh_used_dh_week.value = 0.7;
	g->waters.poured.poisons.no3_mg_l = 5;
	g->waters.poured.at[TS_KH].given = true;
	g->waters.poured.at[TS_KH].value = 8;
	g->asked = (struct ts_next_change_case){.plan = &g->plan,
		.waters = &g->waters,
		.today = day(TODAY),
		.lives = true,
		.no3_most = p[TS_P_NITRATE_CONCERN],
		.kh_least = p[TS_P_KH_ACT],
		.ordered_days = (double)NAN};
}

static void changed(struct given *g, const char *date, double litres)
{
	g->events[g->plan.tank.event_count++] =
		(struct ts_tank_event){.date = date, .what = TS_HAPPENED_CHANGED, .litres = litres};
	g->plan.tank.events = g->events;
}

static void assert_next(
	const struct given *g, enum ts_change_reason reason, const char *date, double litres)
{
	struct ts_next_change c;

	ts_next_change_make(&g->asked, NULL, &c);
	assert_string_equal(ts_change_reason_words[c.reason], ts_change_reason_words[reason]);
	if (date) {
		assert_int_equal(c.day, day(date));
		assert_true(fabs(c.litres - litres) < 1e-9);
	}
}

static void test_routine__counted_from_the_last_change_noted(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-08", 20, 6);
	g.plan.tank.water_change = (struct ts_every){30, 7};
	changed(&g, "2026-02-20", 40);
	changed(&g, "2026-03-05", 40);
	assert_next(&g, TS_CHANGE_ROUTINE, "2026-03-12", 30);
	/* One that is noted later than today is no news. */
	g.events[1].date = "2026-03-11";
	assert_next(&g, TS_CHANGE_ROUTINE, "2026-02-27", 30);
}

static void test_routine_never_noted__counted_from_the_reading_and_not_overdue(void **state)
{
	struct given g;
	struct ts_next_change c;

	(void)state;
	open_given(&g, "2026-02-05", 20, 8);
	g.plan.tank.water_change = (struct ts_every){30, 7};
	assert_next(&g, TS_CHANGE_ROUTINE, "2026-03-12", 30);
	ts_next_change_make(&g.asked, NULL, &c);
	assert_true(c.by_reading);
	assert_false(c.noted);
	/* Four changes lie between: 20 is about what this routine keeps. */
	assert_true(c.no3_now > 20 && c.no3_now < 30);
}

static void test_no_routine__the_day_on_which_nitrate_meets_its_limit(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-10", 20, 20);
	assert_next(&g, TS_CHANGE_NITRATE, "2026-04-09", 25);
	/* A change since then puts it off: 20 to 12.5, and so 37 days. */
	open_given(&g, "2026-03-10", 20, 20);
	changed(&g, "2026-03-10", 50);
	assert_next(&g, TS_CHANGE_NITRATE, "2026-04-16", 25);
}

static void test_no_routine__the_buffer_where_it_goes_first(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-10", 20, 4);
	assert_next(&g, TS_CHANGE_BUFFER, "2026-03-30", 25);
	/* Water that has no more of it mends nothing. */
	g.waters.poured.at[TS_KH].value = 2.5;
	assert_next(&g, TS_CHANGE_NITRATE, "2026-04-09", 25);
}

static void test_steady__left_alone(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-10", 10, 8);
	g.waters.load.no3_rise_mg_l_week.value = 1;
	g.waters.load.kh_used_dh_week.value = 0.1;
	assert_next(&g, TS_CHANGE_NOTHING, NULL, 0);
}

static void test_limit_before_the_routine__sooner(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-09", 47, 8);
	g.plan.tank.water_change = (struct ts_every){20, 14};
	changed(&g, "2026-03-08", 20);
	assert_next(&g, TS_CHANGE_NITRATE, "2026-03-12", 20);
	/* Passed already: but one change works before the next. */
	g.reading.no3_mg_l = value(70);
	changed(&g, "2026-03-09", 20);
	ts_now_make(&g.reading, 1, day(TODAY), table(), &g.waters.log);
	assert_next(&g, TS_CHANGE_NITRATE, "2026-03-11", 20);
}

static void test_nobody_lives_there__no_limit_asks(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-10", 80, 1);
	g.asked.lives = false;
	assert_next(&g, TS_CHANGE_NOTHING, NULL, 0);
}

static void test_old_reading__reckons_nothing(void **state)
{
	struct given g;
	struct ts_next_change c;

	(void)state;
	open_given(&g, "2025-12-01", 40, 8);
	assert_next(&g, TS_CHANGE_NOTHING, NULL, 0);
	ts_next_change_make(&g.asked, NULL, &c);
	assert_true(isnan(c.no3_now));
}

/* Noted once, months ago: nobody can tell whether nothing was changed, or nothing written. */
static void test_noted_long_ago__asked_today_and_not_overdue(void **state)
{
	struct given g;
	struct ts_next_change c;

	(void)state;
	open_given(&g, "2026-03-08", 20, 6);
	g.plan.tank.water_change = (struct ts_every){30, 7};
	changed(&g, "2025-12-01", 40);
	assert_next(&g, TS_CHANGE_ROUTINE, TODAY, 30);
	ts_next_change_make(&g.asked, NULL, &c);
	assert_true(c.stale && c.noted);
	assert_true(isnan(c.no3_now));
	g.events[0].date = "2026-02-15";
	assert_next(&g, TS_CHANGE_ROUTINE, "2026-02-22", 30);
}

static void test_ordered__small_and_often(void **state)
{
	struct given g;

	(void)state;
	open_given(&g, "2026-03-10", 140, 1);
	g.plan.tank.water_change = (struct ts_every){50, 7};
	g.asked.ordered_days = 2;
	g.asked.small = true;
	assert_next(&g, TS_CHANGE_ORDERED, TODAY, 12.5);
	changed(&g, "2026-03-09", 12);
	assert_next(&g, TS_CHANGE_ORDERED, "2026-03-11", 12.5);
	g.asked.small = false;
	assert_next(&g, TS_CHANGE_ORDERED, "2026-03-11", 25);
}

static void test_litres_not_known__a_share(void **state)
{
	struct given g;
	struct ts_next_change c;

	(void)state;
	open_given(&g, "2026-03-10", 20, 6);
	g.plan.tank.volume_l = 0;
	g.plan.tank.water_change = (struct ts_every){30, 7};
	ts_next_change_make(&g.asked, NULL, &c);
	assert_true(isnan(c.litres));
	assert_true(fabs(c.share - 0.3) < 1e-9);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_routine__counted_from_the_last_change_noted),
		cmocka_unit_test(
			test_routine_never_noted__counted_from_the_reading_and_not_overdue),
		cmocka_unit_test(test_no_routine__the_day_on_which_nitrate_meets_its_limit),
		cmocka_unit_test(test_no_routine__the_buffer_where_it_goes_first),
		cmocka_unit_test(test_steady__left_alone),
		cmocka_unit_test(test_limit_before_the_routine__sooner),
		cmocka_unit_test(test_nobody_lives_there__no_limit_asks),
		cmocka_unit_test(test_old_reading__reckons_nothing),
		cmocka_unit_test(test_noted_long_ago__asked_today_and_not_overdue),
		cmocka_unit_test(test_ordered__small_and_often),
		cmocka_unit_test(test_litres_not_known__a_share),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
