/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How far a water is from an animal, and what follows: the margins, that no doubt makes a misfit
 * smaller, every row of the table, and what a check makes of lists of which some suit.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include "room.h"
#include "stock/misfit.h"

static enum ts_misfit of_first(struct room *r)
{
	judge(r);
	return r->check.groups[0].misfit;
}

/* Likes GH 8 to 20, bears 5 to 25; a tenth of its band is 1.2. */
static void like_hard(struct room *r, size_t i)
{
	r->reading.method = TS_METHOD_DROPS;
	r->reading.kh_dh = value(2); /* nobody takes it for softened water */
	r->reading.ph = (struct ts_measure){0};
	r->species[i].water.usual.gh_dh = band(5, 8, 20, 25);
}

static void test_levels__from_liked_to_beyond(void **state)
{
	static const struct {
		double gh_dh;
		enum ts_misfit misfit;
	} rows[] = {
		{8, TS_MISFIT_NONE},
		{7, TS_MISFIT_EDGE},
		{6.5, TS_MISFIT_BORNE},
		{5, TS_MISFIT_OFF}, /* with a drop's doubt it is below what it bears */
		{2, TS_MISFIT_OFF},
		{21, TS_MISFIT_EDGE},
		{23, TS_MISFIT_BORNE},
		{29, TS_MISFIT_OFF},
	};
	struct room *r = *state;

	like_hard(r, 0);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->reading.gh_dh = value(rows[i].gh_dh);
		assert_int_equal(of_first(r), rows[i].misfit);
	}
}

/* A wider doubt of the same value is never a lesser misfit, but for one that is to be read again.
 */
static void test_levels__no_doubt_makes_less_of_it(void **state)
{
	struct room *r = *state;

	like_hard(r, 0);
	for (double gh = 0; gh <= 30; gh += 0.5) {
		enum ts_misfit exact, wide;

		r->reading.gh_dh = (struct ts_measure){gh, gh, gh, TS_MEASURE_VALUE};
		exact = of_first(r);
		r->reading.gh_dh =
			(struct ts_measure){gh, fmax(gh - 4, 0), gh + 4, TS_MEASURE_DOUBT};
		wide = of_first(r);
		assert_true(wide >= exact || (exact == TS_MISFIT_OFF && wide == TS_MISFIT_OPEN));
	}
}

/* Off is a no in every answer, and nothing becomes a yes by it. */
static void test_match__off_is_excluded(void **state)
{
	static const enum ts_verdict wanted[] = {
		TS_SUITS, TS_TOLERATES, TS_EXCLUDED, TS_EXCLUDED, TS_UNSURE};
	static const double gh[][3] = {{10, 10, 10}, {7, 7, 7}, {5, 4, 6}, {2, 2, 2}, {10, 2, 18}};
	struct room *r = *state;

	like_hard(r, 0);
	for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
		const struct ts_keeping keeping = {.temperature = value(25)};
		struct ts_profile profile;
		struct ts_match plain, m;

		r->reading.gh_dh =
			(struct ts_measure){gh[i][0], gh[i][1], gh[i][2], TS_MEASURE_DOUBT};
		judge(r);
		profile = r->check.profile;
		ts_match_species(&r->species[0], &profile, &keeping, NULL, &plain);
		ts_misfit_match(&r->species[0], &profile, &keeping, NULL, &m);
		assert_int_equal(m.verdict, wanted[i]);
		assert_true(m.verdict >= plain.verdict);
		assert_true(m.verdict != TS_EXCLUDED || m.at[TS_GH].verdict == TS_EXCLUDED);
	}
}

static void test_levels__a_wide_reading_is_open(void **state)
{
	struct room *r = *state;

	like_hard(r, 0);
	r->reading.gh_dh = (struct ts_measure){10, 2, 18, TS_MEASURE_DOUBT};
	assert_int_equal(of_first(r), TS_MISFIT_OPEN);
	assert_false(r->check.answered);
}

static void test_ways__every_row(void **state)
{
	(void)state;
	for (int others = 0; others < 2; others++) {
		for (int spoon = 0; spoon < 2; spoon++)
			assert_int_equal(ts_misfit_way(true, others, spoon), TS_WAY_KEEP);
	}
	assert_int_equal(ts_misfit_way(false, true, false), TS_WAY_LEAVE);
	assert_int_equal(ts_misfit_way(false, true, true), TS_WAY_LEAVE);
	assert_int_equal(ts_misfit_way(false, false, true), TS_WAY_MINERALS);
	assert_int_equal(ts_misfit_way(false, false, false), TS_WAY_OTHER_FISH);
}

/* Some suit: the other is not bought, and nobody makes other water for it. */
static void test_ways__some_suit(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->species[0].water.usual.gh_dh = band(0, 0, 20, 25);
	like_hard(r, 1);
	r->reading.gh_dh = value(1.5);
	judge(r);
	assert_int_equal(r->check.groups[0].way, TS_WAY_NONE);
	assert_int_equal(r->check.groups[1].way, TS_WAY_LEAVE);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
	assert_int_equal(r->check.rulings[0].remedy.kind, TS_REMEDY_LEAVE_OUT);
	assert_ptr_equal(r->check.rulings[0].remedy.species, &r->species[1]);
}

/* Of whom it is told not to be bought the shared water knows nothing. */
static void test_ways__shared_water_of_those_that_stay(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->species[0].water.usual.gh_dh = band(0, 0, 6, 10);
	like_hard(r, 1);
	r->reading.gh_dh = value(2);
	judge(r);
	assert_true(r->check.shared.at[TS_GH].high == 6 && r->check.shared.at[TS_GH].low == 0);
	assert_true(r->check.shared_all.at[TS_GH].low > r->check.shared.at[TS_GH].low);
}

static void test_ways__all_want_a_spoon_or_too_much(void **state)
{
	struct room *r = *state;

	like_hard(r, 0);
	r->reading.gh_dh = value(4);
	judge(r);
	assert_int_equal(r->check.groups[0].way, TS_WAY_MINERALS);
	r->reading.gh_dh = value(2.5); /* 5.5 */
	judge(r);
	assert_int_equal(r->check.groups[0].way, TS_WAY_OTHER_FISH);
	assert_int_equal(r->check.recipe.kind, TS_REMEDY_MINERALS);
	r->reading.gh_dh = value(30);
	judge(r);
	assert_int_equal(r->check.groups[0].way, TS_WAY_OTHER_FISH);
	assert_int_equal(r->check.recipe.kind, TS_REMEDY_DILUTE);
}

/* Too cold by what was set: the heater, which is no matter of other water. */
static void test_ways__warmth_is_none(void **state)
{
	struct room *r = *state;

	r->species[0].water.usual.temp_c = band(26, 28, 30, 32);
	judge(r);
	assert_int_equal(r->check.groups[0].misfit, TS_MISFIT_OFF);
	assert_int_equal(r->check.groups[0].way, TS_WAY_NONE);
	assert_int_equal(r->check.rulings[0].remedy.kind, TS_REMEDY_WARMTH);
	assert_true(r->check.rulings[0].remedy.temp_c == 28);
}

int main(void)
{
#define TEST(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
	const struct CMUnitTest tests[] = {
		TEST(test_levels__from_liked_to_beyond),
		TEST(test_levels__no_doubt_makes_less_of_it),
		TEST(test_match__off_is_excluded),
		TEST(test_levels__a_wide_reading_is_open),
		TEST(test_ways__every_row),
		TEST(test_ways__some_suit),
		TEST(test_ways__shared_water_of_those_that_stay),
		TEST(test_ways__all_want_a_spoon_or_too_much),
		TEST(test_ways__warmth_is_none),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
