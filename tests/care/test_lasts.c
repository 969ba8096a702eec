/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How long a tank lasts: the closed forms beside a walk in small steps, the limits where nothing
 * ends, and what must make it last longer or shorter.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../given.h"
#include "care/lasts.h"
#include "stock/rules.h"

static const struct ts_species fish = {
	.species = "Exempla mollis", .adult_length_cm = 4, .body = TS_BODY_FUSIFORM};

static struct ts_estimate breathes(unsigned count, double temp_c, double nitrogen)
{
	const struct ts_group g = {.species = &fish, .either = count};
	const struct ts_breathing b = {&g, 1, nitrogen, temp_c};
	struct ts_estimate e;

	ts_breathing_mg_h(&b, &e);
	return e;
}

static struct ts_estimate oxygen(
	double net_l, double surface_m2, double begin, struct ts_estimate out, double least)
{
	const struct ts_still_water w = {net_l, surface_m2, 25, begin};
	struct ts_estimate h;

	assert_int_equal(ts_oxygen_lasts_h(&w, &out, least, &h), TS_OK);
	return h;
}

static void test_breathing__more_animals_warmer_and_fed_take_more(void **state)
{
	struct ts_estimate ten = breathes(10, 25, 0), twenty = breathes(20, 25, 0);

	(void)state;
	assert_true(ten.low < ten.value && ten.value < ten.high);
	assert_true(fabs(twenty.value - 2 * ten.value) < 1e-9);
	/* 10 C warmer: 1.83 times as much. */
	assert_true(fabs(breathes(10, 35, 0).value / ten.value - 1.83) < 1e-9);
	assert_true(breathes(10, 25, 20).value > ten.value);
	/* At rest what bacteria take of the feed does not count. */
	assert_true(fabs(breathes(10, 25, 20).low - ten.low) < 1e-9);
}

/* A gram of fish at 15 C takes 0.14 mg an hour at rest (Clarke & Johnston 1999, recalled). */
static void test_breathing__a_gram_at_fifteen(void **state)
{
	struct ts_species one = fish;
	const struct ts_group g = {.species = &one, .either = 1};
	const struct ts_breathing b = {&g, 1, 0, 15};
	struct ts_estimate e;

	(void)state;
	one.weight.factor = 1;
	one.weight.power = 3;
	one.adult_length_cm = 1;
	ts_breathing_mg_h(&b, &e);
	assert_true(fabs(e.low / 1.3 - 0.14) < 1e-9);
}

static void test_closed_water__what_there_is_by_what_is_breathed(void **state)
{
	const struct ts_estimate out = {5, 10, 20};
	struct ts_estimate h = oxygen(10, 0, 8, out, 4);

	(void)state;
	assert_true(fabs(h.value - 4) < 1e-9);
	assert_true(fabs(h.low - 2) < 1e-9 && fabs(h.high - 8) < 1e-9);
}

/* The same as a walk in steps of a thousandth of an hour. */
static void test_open_water__as_a_walk_in_small_steps(void **state)
{
	const struct ts_estimate out = {60, 60, 60};
	struct ts_estimate h = oxygen(100, 0.3, 7, out, 4);
	double at = 7, hours = 0, full = 8.26; /* air keeps so much in fresh water of 25 C */

	(void)state;
	while (at > 4 && hours < 1000) {
		at += 0.001 * (0.02 * 0.3 * 1000 / 100 * (full - at) - 60.0 / 100);
		hours += 0.001;
	}
	assert_true(isfinite(h.value));
	assert_true(fabs(h.value / hours - 1) < 0.01);
}

static void test_open_water__few_animals_never_want(void **state)
{
	const struct ts_estimate out = {1, 2, 3};
	struct ts_estimate h = oxygen(100, 0.3, 7, out, 4);

	(void)state;
	assert_true(isinf(h.low) && isinf(h.value));
	/* Below the limit already. */
	assert_true(oxygen(100, 0.3, 3.5, out, 4).value == 0);
}

static void test_oxygen__no_water_is_refused(void **state)
{
	const struct ts_still_water none = {0, 0.3, 25, (double)NAN};
	const struct ts_still_water hot = {100, 0.3, 80, (double)NAN};
	const struct ts_estimate out = {1, 2, 3};
	struct ts_estimate h;

	(void)state;
	assert_int_equal(ts_oxygen_lasts_h(&none, &out, 4, &h), TS_BAD_INPUT);
	assert_int_equal(ts_oxygen_lasts_h(&hot, &out, 4, &h), TS_BAD_INPUT);
}

static void test_warmth__half_way_in_one_half_life(void **state)
{
	struct ts_estimate h;
	double panes = ts_tank_panes_m2(80, 35, 40);

	(void)state;
	assert_true(fabs(panes - 1.48) < 1e-9);
	/* 95 L, 25 to 20 C in a room of 15: ln 2 of the time constant. */
	ts_warmth_lasts_h(95, panes, 25, 20, 15, &h);
	assert_true(fabs(h.value - 1.163 * 95 / (6 * panes) * log(2)) < 1e-6);
	assert_true(h.low < h.value && h.value < h.high);
	/* It comes back as well. */
	ts_warmth_lasts_h(95, panes, 32, 28, 20, &h);
	assert_true(isfinite(h.value) && h.value > 0);
	/* A room that is warm enough, and one just so. */
	ts_warmth_lasts_h(95, panes, 25, 20, 21, &h);
	assert_true(isinf(h.low));
	ts_warmth_lasts_h(95, panes, 25, 20, 20, &h);
	assert_true(isinf(h.low));
}

static void test_unfiltered__sooner_where_more_is_fed_and_the_pH_is_higher(void **state)
{
	const struct ts_unfiltered tank = {100, 20, 7.5, 25, 0};
	struct ts_unfiltered more = tank, higher = tank, unread = tank;
	struct ts_unfiltered_lasts a, b;

	(void)state;
	ts_unfiltered_lasts(&tank, table(), &a);
	assert_true(a.fed_days > 0 && a.unfed_days > a.fed_days);
	more.nitrogen_mg_day = 40;
	ts_unfiltered_lasts(&more, table(), &b);
	assert_true(fabs(b.fed_days - a.fed_days / 2) < 1e-9);
	higher.ph = 8.3;
	ts_unfiltered_lasts(&higher, table(), &b);
	assert_true(b.limit_tan_mg_l < a.limit_tan_mg_l);
	/* Not read is taken as 8, and never as mild. */
	unread.ph = (double)NAN;
	ts_unfiltered_lasts(&unread, table(), &b);
	assert_true(b.limit_tan_mg_l < a.limit_tan_mg_l);
	unread.tan_mg_l = 5;
	ts_unfiltered_lasts(&unread, table(), &b);
	assert_true(b.fed_days == 0);
}

/* With the change that is named, ammonia of an unfed tank stays at half its limit. */
static void test_unfiltered__the_daily_change_holds_it(void **state)
{
	const struct ts_unfiltered tank = {100, 60, 7.5, 25, 0};
	struct ts_unfiltered_lasts a;
	double tan = 0;

	(void)state;
	ts_unfiltered_lasts(&tank, table(), &a);
	for (int day = 0; day < 60; day++)
		tan = (tan + 0.25 * 60 / 100) * (1 - a.change_percent / 100);
	assert_true(tan < a.limit_tan_mg_l / 2 + 1e-9);
}

static void test_carrying__more_water_for_a_longer_way(void **state)
{
	(void)state;
	assert_true(ts_carrying_l(0.1, 1) == 1);
	assert_true(ts_carrying_l(100, 2) < ts_carrying_l(100, 5));
	assert_true(ts_carrying_l(100, 5) < ts_carrying_l(100, 24));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_breathing__more_animals_warmer_and_fed_take_more),
		cmocka_unit_test(test_breathing__a_gram_at_fifteen),
		cmocka_unit_test(test_closed_water__what_there_is_by_what_is_breathed),
		cmocka_unit_test(test_open_water__as_a_walk_in_small_steps),
		cmocka_unit_test(test_open_water__few_animals_never_want),
		cmocka_unit_test(test_oxygen__no_water_is_refused),
		cmocka_unit_test(test_warmth__half_way_in_one_half_life),
		cmocka_unit_test(test_unfiltered__sooner_where_more_is_fed_and_the_pH_is_higher),
		cmocka_unit_test(test_unfiltered__the_daily_change_holds_it),
		cmocka_unit_test(test_carrying__more_water_for_a_longer_way),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
