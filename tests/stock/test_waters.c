/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One tank, three waters: now, poured in, settled. Figures of settled levels: closed forms.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../given.h"
#include "base/date.h"
#include "model/practice.h"
#include "stock/waters.h"

struct fixture {
	struct ts_reading tap, log[4];
	struct ts_plan plan;
	struct ts_waters w;
};

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

/* Tap GH 4, KH 2; a tank of 100 L, 25 % a week, covered, topped up with pure water. */
static void open_fixture(struct fixture *f)
{
	*f = (struct fixture){0};
	f->tap = (struct ts_reading){.gh_dh = value(4), .kh_dh = value(2), .no3_mg_l = value(5)};
	f->plan.water = (struct ts_water){.readings = &f->tap, .reading_count = 1};
	f->plan.tank.readings = f->log;
	f->plan.tank.volume_l = 100;
	f->plan.tank.temp_c = value(25);
	f->plan.tank.water_change = (struct ts_every){25, 7};
	f->plan.tank.cover = TS_COVER_YES;
	f->plan.tank.top_up = TS_TOP_UP_PURE;
	f->plan.tank.plants = TS_PLANTS_NONE;
}

static void make(struct fixture *f)
{
	const struct ts_waters_case asked = {&f->plan, NULL, 0, day("2026-05-10"), NULL};

	ts_waters_make(&asked, NULL, &f->w);
}

/* A new home: the tank is still the old one's water and goes to the new tap's. */
static void test_waters__moved_house(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.log[0] = (struct ts_reading){
		.date = "2026-05-09", .gh_dh = value(15), .kh_dh = value(8), .ph = value(7.8)};
	f.plan.tank.reading_count = 1;
	make(&f);
	assert_true(f.w.now.at[TS_GH].value == 15 && f.w.now.at[TS_KH].value == 8);
	assert_true(f.w.poured.at[TS_GH].value == 4);
	assert_true(f.w.settled_known);
	assert_true(fabs(f.w.settled.at[TS_GH].value - 4) < 0.01);
	assert_true(fabs(f.w.settled.at[TS_KH].value - 2) < 0.01);
	assert_int_equal(f.w.as_poured & 1u << TS_GH, 0);
}

/* What the tank's log lacks is taken from the tap, and marked. */
static void test_waters__gaps_are_as_poured(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	make(&f);
	assert_true(f.w.never_read && f.w.now.at[TS_GH].value == 4);
	f.log[0] = (struct ts_reading){.date = "2026-05-09", .kh_dh = value(3)};
	f.plan.tank.reading_count = 1;
	make(&f);
	assert_false(f.w.never_read);
	assert_true(f.w.now.at[TS_GH].value == 4 && f.w.now.at[TS_KH].value == 3);
	assert_true(f.w.as_poured & 1u << TS_GH && !(f.w.as_poured & 1u << TS_KH));
}

/* 8 % a week of an open tank beside 25 % changed: a third more, before a change. */
static void test_waters__top_up_with_tap_piles_minerals_up(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.plan.tank.cover = TS_COVER_NO;
	f.plan.tank.top_up = TS_TOP_UP_SUPPLY;
	make(&f);
	assert_true(fabs(f.w.settles.gh_dh.value - 4 * 1.32) < 0.02);
	f.plan.tank.top_up = TS_TOP_UP_UNKNOWN; /* from nothing to all of it */
	make(&f);
	assert_true(fabs(f.w.settles.gh_dh.low - 4) < 0.02);
	assert_true(fabs(f.w.settles.gh_dh.high - 4 * 1.32) < 0.02);
}

/*
 * What the tank bears: nitrate from 5 to 50 is 45 mg/L, 10.16 as nitrogen, in 100 L of which 25 %
 * are changed in 7 days: 36.3 mg a day. The buffer: 0.9 dKH to the floor, 0.2002 for a mg/L, in 28
 * days.
 */
static void test_bears__nitrate_or_buffer_whichever_is_less(void **state)
{
	struct ts_bearing wanted = {50, 0};
	struct ts_practice practice;
	struct fixture f;
	double most;

	(void)state;
	ts_practice_defaults(&practice);
	open_fixture(&f);
	most = ts_waters_bears_mg_day(&f.plan, -1, &wanted, 100, &practice);
	assert_true(fabs(most - 36.3) < 0.2);
	wanted.buffer_days = 14;
	most = ts_waters_bears_mg_day(&f.plan, -1, &wanted, 100, &practice);
	assert_true(fabs(most - 16.06) < 0.2);
	f.plan.tank.plants = TS_PLANTS_SOME; /* they take 0.15 of it */
	most = ts_waters_bears_mg_day(&f.plan, -1, &wanted, 100, &practice);
	assert_true(fabs(most - 16.06 / 0.85) < 0.2);
	f.plan.tank.plants = TS_PLANTS_NONE;
	f.plan.tank.substrate = TS_SUBSTRATE_ARAGONITE; /* gives back what the filter takes */
	assert_true(ts_waters_bears_mg_day(&f.plan, -1, &wanted, 100, &practice) > most);
	assert_true(ts_waters_bears_mg_day(&f.plan, -1, &wanted, 10, &practice) == 10);
	f.plan.tank.volume_l = 0;
	assert_true(isnan(ts_waters_bears_mg_day(&f.plan, -1, &wanted, 10, &practice)));
}

/* No change at all is a routine: GH 12 topped up with 5 % a week is 31.2 more after 52 weeks. */
static void test_waters__no_change_never_settles(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.tap.gh_dh = value(12);
	f.plan.tank.water_change = (struct ts_every){0, 7};
	f.plan.tank.evaporation = (struct ts_every){5, 7};
	f.plan.tank.top_up = TS_TOP_UP_SUPPLY;
	make(&f);
	assert_true(f.w.settles.no_end);
	assert_true(fabs(f.w.settles.gh_dh.value - (12 + 12 * 0.05 * 365 / 7)) < 0.1);
}

static void test_waters__nothing_known_is_nothing_said(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.tap = (struct ts_reading){0};
	f.plan.water.reading_count = 0;
	make(&f);
	assert_false(f.w.now.at[TS_GH].given || f.w.settled.at[TS_GH].given);
	assert_true(isnan(f.w.settles.kh_dh.value) && isnan(f.w.settles.buffer_days.value));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_waters__moved_house),
		cmocka_unit_test(test_waters__gaps_are_as_poured),
		cmocka_unit_test(test_waters__top_up_with_tap_piles_minerals_up),
		cmocka_unit_test(test_bears__nitrate_or_buffer_whichever_is_less),
		cmocka_unit_test(test_waters__no_change_never_settles),
		cmocka_unit_test(test_waters__nothing_known_is_nothing_said),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
