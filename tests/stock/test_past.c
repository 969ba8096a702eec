/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a log of events says was done to a tank.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../given.h"
#include "base/date.h"
#include "stock/past.h"

#define NEAR(a, b) assert_true(fabs((a) - (b)) < 1e-9)

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

struct fixture {
	struct ts_tank_event events[8];
	struct ts_tank tank;
	struct ts_stock_line stock[2];
	double waste[2];
	struct ts_past_case asked;
	struct ts_past past;
};

/* 100 L; a line since March, which makes three quarters of the waste, and one always there. */
static void open_fixture(struct fixture *f)
{
	*f = (struct fixture){.waste = {3, 1}};
	f->tank.events = f->events;
	f->tank.water_change = (struct ts_every){25, 7};
	f->stock[0] = (struct ts_stock_line){.species = "a", .count = 6, .since = "2026-03-10"};
	f->stock[1] = (struct ts_stock_line){.species = "b", .count = 2, .since = ""};
	f->asked = (struct ts_past_case){&f->tank, f->stock, f->waste, 2, 100, day("2026-05-01")};
}

static void add(struct fixture *f, const char *date, int what, double litres, double count)
{
	f->events[f->tank.event_count++] = (struct ts_tank_event){
		.date = date, .what = what, .litres = litres, .count = count};
}

static void make(struct fixture *f)
{
	ts_past_make(&f->asked, table(), &f->past);
}

static void test_past__changes_in_order(void **state)
{
	struct fixture f;
	struct ts_every routine;

	(void)state;
	open_fixture(&f);
	add(&f, "2026-03-20", TS_HAPPENED_CHANGED, 40, 0);
	add(&f, "2026-03-06", TS_HAPPENED_CHANGED, 0, 0);  /* as always */
	add(&f, "2026-05-02", TS_HAPPENED_CHANGED, 20, 0); /* after today */
	f.events[0].time = "10:30";
	f.events[0].with = TS_TOP_UP_PURE;
	make(&f);
	assert_int_equal(f.past.change_count, 2);
	assert_true(f.past.by_log);
	assert_int_equal(f.past.changes[0].day, day("2026-03-06"));
	NEAR(f.past.changes[0].share, 0.25);
	NEAR(f.past.changes[1].share, 0.4);
	assert_true(f.past.changes[1].pure && !f.past.changes[0].pure);
	assert_int_equal(f.past.changes[1].minutes, 630);
	assert_true(ts_past_routine(&f.past, f.asked.today, table(), &routine));
	NEAR(routine.amount, 32.5);
	NEAR(routine.days, 28); /* the last one is 42 days old, and only two were made in 56 */
	assert_true(ts_past_routine(&f.past, f.asked.today + 1, table(), &routine));
	NEAR(routine.amount, 40);
	NEAR(routine.days, 56);
}

static void test_past__one_change_is_no_routine_and_none_any_more_is_one(void **state)
{
	struct fixture f;
	struct ts_every routine;

	(void)state;
	open_fixture(&f);
	add(&f, "2026-01-02", TS_HAPPENED_CHANGED, 25, 0);
	make(&f);
	assert_false(f.past.by_log);
	assert_false(ts_past_routine(&f.past, f.asked.today, table(), &routine));
	add(&f, "2026-01-09", TS_HAPPENED_CHANGED, 25, 0);
	make(&f);
	assert_true(ts_past_routine(&f.past, f.asked.today, table(), &routine));
	NEAR(routine.amount, 0);
	NEAR(routine.days, 7);
	assert_false(ts_past_routine(&f.past, day("2026-01-20"), table(), &routine));
}

static void test_past__animals(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	add(&f, "2026-04-10", TS_HAPPENED_DIED, 0, 2);
	add(&f, "2026-03-11", TS_HAPPENED_ADDED, 0, 6); /* the first line of the stock */
	add(&f, "2026-02-01", TS_HAPPENED_ADDED, 0, 1);
	make(&f);
	NEAR(ts_past_waste(&f.past, day("2026-05-01")), 1);
	NEAR(ts_past_waste(&f.past, day("2026-04-10")), 1);
	NEAR(ts_past_waste(&f.past, day("2026-04-09")), 1.25); /* two of eight */
	NEAR(ts_past_waste(&f.past, day("2026-03-09")), 0.5);
	NEAR(ts_past_waste(&f.past, day("2026-01-31")), 0.375);
}

static void test_past__nobody_fed(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	add(&f, "2026-04-10", TS_HAPPENED_AWAY, 0, 0);
	make(&f);
	NEAR(ts_past_waste(&f.past, day("2026-04-12")), 1);
	f.events[0].lasted_h = 10 * 24;
	make(&f);
	NEAR(ts_past_waste(&f.past, day("2026-04-10")), 1);
	NEAR(ts_past_waste(&f.past, day("2026-04-11")), 0.3);
	NEAR(ts_past_waste(&f.past, day("2026-04-20")), 0.3);
	NEAR(ts_past_waste(&f.past, day("2026-04-21")), 1);
}

static void test_past__evaporation(void **state)
{
	struct fixture f;
	struct ts_every e;

	(void)state;
	open_fixture(&f);
	add(&f, "2026-04-11", TS_HAPPENED_TOPPED_UP, 5, 0);
	assert_false(ts_past_evaporation(&f.asked, table(), &e));
	add(&f, "2026-04-01", TS_HAPPENED_TOPPED_UP, 9, 0); /* of the days before it */
	assert_false(ts_past_evaporation(&f.asked, table(), &e));
	add(&f, "2026-04-21", TS_HAPPENED_TOPPED_UP, 5, 0);
	assert_true(ts_past_evaporation(&f.asked, table(), &e));
	NEAR(e.amount, 10);
	NEAR(e.days, 20);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_past__changes_in_order),
		cmocka_unit_test(test_past__one_change_is_no_routine_and_none_any_more_is_one),
		cmocka_unit_test(test_past__animals),
		cmocka_unit_test(test_past__nobody_fed),
		cmocka_unit_test(test_past__evaporation),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
