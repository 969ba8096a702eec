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
	const struct ts_waters_case asked = {&f->plan, NULL, 0, day("2026-05-10")};

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
		cmocka_unit_test(test_waters__no_change_never_settles),
		cmocka_unit_test(test_waters__nothing_known_is_nothing_said),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
