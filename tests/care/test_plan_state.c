/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From a plan to the state that advice judges: the last reading counts, signs are sorted by what
 * they point to, and what a plan does not say stays unknown.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../given.h"
#include "../random.h"
#include "base/arena.h"
#include "base/date.h"
#include "care/plan_state.h"
#include "stock/check.h"

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

static void make(const struct ts_plan *plan, long today, struct ts_plan_state *ret)
{
	static struct ts_waters waters;

	ts_waters_now(plan, today, NULL, &waters);
	ts_plan_state_make(plan, &waters, today, ret);
}

static void test_empty_plan__everything_unknown(void **state)
{
	struct ts_plan plan = {0};
	struct ts_plan_state s;

	(void)state;
	make(&plan, 20000, &s);
	assert_true(isnan(s.state.gh_dh) && isnan(s.state.tan_mg_l) && isnan(s.state.deaths));
	assert_true(isnan(s.state.co2_mg_l));
	assert_null(s.state.tank);
	assert_int_equal(s.state.filter_mature, TS_NOT_KNOWN);
	assert_false(s.state.lived_long);
}

static void test_last_reading_of_the_tank_counts(void **state)
{
	struct ts_reading readings[] = {
		{.date = "2026-04-01", .gh_dh = value(12), .kh_dh = value(9), .ph = value(7.8)},
		{.date = "2026-05-08",
			.gh_dh = value(8),
			.kh_dh = value(4),
			.ph = value(6.4),
			.temp_c = value(25),
			.tan_mg_l = value(0.5)}};
	struct ts_reading poured = {.kh_dh = value(10), .gh_dh = value(14)};
	struct ts_plan plan = {
		.tank = {.readings = readings, .reading_count = 2, .co2 = TS_CO2_INJECTED},
		.water = {.readings = &poured, .reading_count = 1}};
	struct ts_plan_state s;

	(void)state;
	make(&plan, day("2026-05-10"), &s);
	assert_true(s.state.gh_dh == 8 && s.state.kh_dh == 4 && s.state.ph == 6.4);
	assert_true(s.state.tan_mg_l == 0.5 && s.state.temp_c == 25);
	assert_true(s.state.change_kh_dh == 10);
	assert_true(s.waters->log.from[TS_NOW_TAN].age_days == 2);
	assert_true(s.state.co2_injected);
	assert_true(fabs(s.state.co2_mg_l - 53) < 2); /* KH 4 at pH 6.4 */
	assert_ptr_equal(s.state.tank, &s.tank_solution);
}

static void test_tank_never_read__as_its_supply_but_no_poison_is_known(void **state)
{
	struct ts_reading tap = {.kh_dh = value(9), .gh_dh = value(12), .tan_mg_l = value(0)};
	struct ts_plan plan = {.water = {.readings = &tap, .reading_count = 1}};
	struct ts_plan_state s;

	(void)state;
	make(&plan, 20000, &s);
	assert_true(s.waters->never_read);
	assert_true(s.state.gh_dh == 12 && s.state.kh_dh == 9 && fabs(s.state.ph - 8.05) < 0.1);
	assert_true(isnan(s.state.tan_mg_l)); /* the tap's nil is not the tank's */
}

static unsigned signs_of(struct ts_sign sign)
{
	struct ts_plan plan = {.signs = &sign, .sign_count = 1};
	struct ts_plan_state s;

	make(&plan, 20000, &s);
	return s.state.signs;
}

static void test_signs__sorted_by_onset_and_breadth(void **state)
{
	(void)state;
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_GASPING, TS_ONSET_NOW, TS_BREADTH_ONE,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_GASPING);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_DARTING, TS_ONSET_NOW, TS_BREADTH_ALL,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_SUDDEN_ALL);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_SPOTS, TS_ONSET_DAYS,
				 TS_BREADTH_ONE_SPECIES, TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_ONE | TS_SIGNS_SPOTS);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_TORN_FINS, TS_ONSET_WEEKS,
				 TS_BREADTH_ONE_SPECIES, TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_ONE | TS_SIGNS_FIGHT);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_CHASED, TS_ONSET_DAYS, TS_BREADTH_ALL,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_OTHER | TS_SIGNS_FIGHT);
	/* Who hides may be ill as well. */
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_HIDING, TS_ONSET_DAYS, TS_BREADTH_ONE,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_ONE);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_CLAMPED_FINS, TS_ONSET_WEEKS,
				 TS_BREADTH_ONE, TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_SLOW);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_WASTING, TS_ONSET_WEEKS, TS_BREADTH_ALL,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_SLOW);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_LISTLESS, TS_ONSET_UNKNOWN,
				 TS_BREADTH_UNKNOWN, TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_OTHER);
}

static void test_signs__spots_and_balance_are_kept_beside_the_breadth(void **state)
{
	(void)state;
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_FLOATING, TS_ONSET_DAYS, TS_BREADTH_ONE,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_ONE | TS_SIGNS_FLOATING);
	assert_int_equal(signs_of((struct ts_sign){TS_SIGN_BLOATED, TS_ONSET_WEEKS, TS_BREADTH_ONE,
				 TS_AFTER_UNKNOWN, NULL}),
		TS_SIGNS_ONE | TS_SIGNS_FLOATING);
}

/* Several arrivals, and the days since the last one; the routine as it was given. */
static void test_newcomers_and_routine(void **state)
{
	struct ts_stock_line lines[] = {{.species = "a", .since = "2026-01-01"},
		{.species = "b", .since = NULL}, {.species = "c", .since = "2026-04-01"},
		{.species = "d", .since = "2027-01-01"}};
	struct ts_plan plan = {.stock = lines, .stock_count = 2};
	struct ts_plan_state s;

	(void)state;
	make(&plan, day("2026-05-10"), &s);
	assert_true(isnan(s.state.newcomer_days));
	assert_true(isnan(s.state.change_percent_week) && !s.state.pure_top_up);
	/* One that is only planned, or comes next year, ends the look at nobody. */
	plan.stock_count = 4;
	make(&plan, day("2026-05-10"), &s);
	assert_true(fabs(s.state.newcomer_days - 39) < 1e-9);
	plan.stock_count = 2;
	lines[1].since = "2026-05-01";
	plan.tank.water_change = (struct ts_every){20, 14};
	plan.tank.evaporation = (struct ts_every){2, 7};
	plan.tank.top_up = TS_TOP_UP_PURE;
	make(&plan, day("2026-05-10"), &s);
	assert_true(fabs(s.state.newcomer_days - 9) < 1e-9);
	assert_true(fabs(s.state.change_percent_week - 10) < 1e-9);
	assert_true(fabs(s.state.evaporation_percent_week - 2) < 1e-9);
	assert_true(s.state.pure_top_up);
}

static void test_stock_that_has_lived_there_long(void **state)
{
	struct ts_stock_line lines[] = {{.species = "a", .since = "2026-01-01"},
		{.species = "b", .since = NULL}, {.species = "c", .since = "2026-04-01"},
		{.species = "d", .since = "2027-01-01"}};
	struct ts_plan plan = {.stock = lines, .stock_count = 2};
	struct ts_plan_state s;

	(void)state;
	make(&plan, day("2026-05-10"), &s);
	assert_true(s.state.lived_long);
	make(&plan, day("2026-02-01"), &s);
	assert_false(s.state.lived_long);
	make(&plan, -1, &s);
	assert_false(s.state.lived_long);
	assert_true(ts_in_tank(&lines[0]) && !ts_in_tank(&lines[1]));
}

/* Over random logs the check, the advice and the simulation quote one and the same now. */
static void test_now__is_the_same_for_everybody(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 23, 300);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct ts_reading log[6] = {{0}}, tap = {.gh_dh = value(8), .kh_dh = value(5)};
		char dates[6][12];
		struct ts_plan plan = {.water = {.readings = &tap, .reading_count = 1},
			.tank = {.readings = log, .reading_count = 6, .volume_l = 100}};
		struct ts_arena arena;
		struct ts_check check;
		struct ts_plan_state s;
		struct ts_drift_day now;
		struct ts_drift d;
		double kh;

		random_case(&r, i);
		for (int k = 0; k < 6; k++) {
			snprintf(dates[k], sizeof dates[k], "2026-02-%02u",
				(1 + any_below(&r, 28)) % 100);
			log[k].date = dates[k];
			if (any_percent(&r, 60))
				log[k].kh_dh = value(1 + any_below(&r, 12));
			if (any_percent(&r, 60))
				log[k].gh_dh = value(1 + any_below(&r, 12));
			if (any_percent(&r, 60))
				log[k].no3_mg_l = value(any_below(&r, 90));
			if (any_percent(&r, 60))
				log[k].tan_mg_l = value(0);
		}
		ts_arena_open(&arena, NULL);
		assert_int_equal(
			ts_check_plan(&plan, NULL, day("2026-02-20"), NULL, &arena, &check), TS_OK);
		ts_plan_state_make(&plan, check.waters, day("2026-02-20"), &s);
		kh = ts_now_figure(&check.waters->log, TS_NOW_KH);
		kh = isnan(kh) ? 5 : kh;
		CLAIM(&r, check.profile.at[TS_KH].value == kh && s.state.kh_dh == kh);
		CLAIM(&r, s.state.gh_dh == check.profile.at[TS_GH].value);
		if (check.waters->drift_known) {
			assert_int_equal(
				ts_drift_open(&check.waters->drift.tank, table(), &d), TS_OK);
			ts_drift_read(&d, false, &now);
			CLAIM(&r, fabs(now.kh_dh - kh) < 1e-9);
			CLAIM(&r, fabs(now.gh_dh - s.state.gh_dh) < 1e-9);
			CLAIM(&r, isnan(s.state.no3_mg_l) ||
					  fabs(now.no3_mg_l - s.state.no3_mg_l) < 1e-9);
		}
		ts_arena_drop(&arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_empty_plan__everything_unknown),
		cmocka_unit_test(test_last_reading_of_the_tank_counts),
		cmocka_unit_test(test_tank_never_read__as_its_supply_but_no_poison_is_known),
		cmocka_unit_test(test_signs__sorted_by_onset_and_breadth),
		cmocka_unit_test(test_signs__spots_and_balance_are_kept_beside_the_breadth),
		cmocka_unit_test(test_newcomers_and_routine),
		cmocka_unit_test(test_stock_that_has_lived_there_long),
		cmocka_unit_test(test_now__is_the_same_for_everybody),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
