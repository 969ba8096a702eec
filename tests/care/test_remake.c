/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Re-making as a whole: the band that wished animals share, the buffer floor, what is asked first,
 * and that the tank is only taken where the recipe may go.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../given.h"
#include "care/remake.h"

static const char *practice[] = {"practice", "practice"};

static struct ts_envelope band(double a, double b, double c, double d)
{
	return (struct ts_envelope){{a, d}, {b, c}, {practice, 2}, NULL};
}

static struct ts_species animal(int home, double low, double high)
{
	struct ts_envelope no = {
		{(double)NAN, (double)NAN}, {(double)NAN, (double)NAN}, {NULL, 0}, NULL};
	struct ts_species s = {.species = "Exempla ficta", .home_water = home};

	s.water.usual = s.water.wild = s.water.breeding = (struct ts_envelopes){no, no, no, no, no};
	s.water.usual.ph = band(5.5, 6, 8.5, 9);
	s.water.usual.gh_dh = band(fmax(0, low - 2), low, high, high + 2);
	s.water.usual.temp_c = band(22, 24, 26, 28);
	return s;
}

/* One question about a supply of this GH and KH; GH or KH NAN: not given. */
struct question {
	struct ts_reading reading;
	struct ts_water water;
	struct ts_profile profile;
	const struct ts_species *wanted[2];
	struct ts_remake_wish wish;
};

static void ask(struct question *q, double gh, double kh)
{
	struct ts_keeping k = {.temperature = value(25)};

	*q = (struct question){.wish = {.temp_c = 25,
				       .gh_dh = {(double)NAN, (double)NAN},
				       .kh_dh = {(double)NAN, (double)NAN}}};
	if (!isnan(gh))
		q->reading.gh_dh = value(gh);
	if (!isnan(kh))
		q->reading.kh_dh = value(kh);
	q->water.readings = &q->reading;
	q->water.reading_count = 1;
	ts_profile_make(&q->water, &k, NULL, -1, &q->profile);
	q->wish.water = &q->profile;
	q->wish.wanted = q->wanted;
	q->wish.keeping = k;
}

/* 3 dKH are 1.069956 meq/L of NaHCO3 (84.007 g/mol): 8.988 g in 100 L, whatever GH is. */
static void test_kh_alone__gh_need_not_be_known(void **state)
{
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, (double)NAN, 2);
	q.wish.kh_dh = (struct ts_range){5, 5};
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_int_equal(r.recipe.count, 1);
	assert_int_equal(r.recipe.parts[0].ingredient, TS_SODIUM_BICARBONATE);
	assert_true(fabs(r.recipe.parts[0].grams_per_100_l - 8.9884) < 1e-3);
	assert_true(
		isnan(r.recipe.gh_dh) && isnan(r.base_gh_dh) && fabs(r.recipe.kh_dh - 5) < 1e-6);
}

/* 5 dGH are 0.89163 mmol/L, wherever KH stands; what was not read stays not known. */
static void test_gh_alone__kh_need_not_be_known(void **state)
{
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 3, (double)NAN);
	q.wish.gh_dh = (struct ts_range){8, 8};
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(fabs(r.recipe.gh_dh - 8) < 1e-6);
	assert_true(isnan(r.recipe.kh_dh) && isnan(r.recipe.ph) && isnan(r.base_kh_dh));
	ask(&q, 18, (double)NAN);
	q.wish.gh_dh = (struct ts_range){6, 6};
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(fabs(r.recipe.mineral_free - 2.0 / 3) < 1e-6); /* a share from GH alone */
}

/* The same with animals that live there; their way goes by what is known. */
static void test_kh_alone__with_residents(void **state)
{
	struct ts_species a = animal(TS_HOME_HARD, 8, 20);
	struct ts_resident resident = {&a, false, false};
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, (double)NAN, 2);
	q.wish.kh_dh = (struct ts_range){5, 5};
	q.wish.residents = &resident;
	q.wish.resident_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.stages.refusal, TS_STAGES_TEST_FIRST);
	assert_true(r.stages.raises_ph && r.stages.count > 0);
	assert_true(fabs(r.recipe.parts[0].grams_per_100_l - 8.9884) < 1e-3);
	assert_true(isnan(r.recipe.gh_dh));
}

/* Too hard for who is wished: thinned by GH alone; water that may do is not called so. */
static void test_thinned__without_kh(void **state)
{
	struct ts_species a = animal(TS_HOME_BLACK, 1, 4);
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 12, (double)NAN);
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(r.kh_unknown && isnan(r.recipe.kh_dh) && isnan(r.recipe.ph));
	assert_true(r.recipe.mineral_free >= 2.0 / 3 && r.recipe.gh_dh <= 4 + 1e-6);
	ask(&q, 3, (double)NAN);
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_NO_KH);
}

/* With animals to ask about, both must be known. */
static void test_alone__not_where_animals_are_asked_about(void **state)
{
	struct ts_species a = animal(TS_HOME_HARD, 8, 20);
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, (double)NAN, 2);
	q.wish.kh_dh = (struct ts_range){5, 5};
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_NO_GH);
}

static void test_shared_band__of_two_wishes(void **state)
{
	struct ts_species a = animal(TS_HOME_HARD, 8, 20), b = animal(TS_HOME_MIDDLE, 4, 12);
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 3, 2);
	q.wanted[0] = &a;
	q.wanted[1] = &b;
	q.wish.wanted_count = 2;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(r.comfortable);
	assert_true(r.gh_dh.low == 8 && r.gh_dh.high == 12);
	assert_true(r.kh_dh.low == 6 && r.kh_dh.high == 10);
	assert_true(r.recipe.gh_dh >= 8 && r.recipe.gh_dh <= 12);
}

static void test_nothing_shared__refused(void **state)
{
	struct ts_species a = animal(TS_HOME_HARD, 14, 20), b = animal(TS_HOME_CLEAR_SOFT, 1, 6);
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 3, 2);
	q.wanted[0] = &a;
	q.wanted[1] = &b;
	q.wish.wanted_count = 2;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_NO_SHARED);
	assert_int_equal(r.parameter, TS_GH);
}

static void test_buffer_floor__but_for_black_water_alone(void **state)
{
	struct ts_species soft = animal(TS_HOME_CLEAR_SOFT, 0, 3);
	struct ts_species black = animal(TS_HOME_BLACK, 0, 3);
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 18, 14);
	q.wish.wanted_count = 1;
	q.wish.keeping.breeding = true;
	q.wanted[0] = &soft;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(r.recipe.kh_dh >= 2 - 1e-6);
	q.wanted[0] = &black;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(r.recipe.kh_dh < 2);
}

static void test_what_is_asked_first(void **state)
{
	struct ts_species a = animal(TS_HOME_MIDDLE, 4, 12);
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, (double)NAN, 4);
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_NO_GH);
	ask(&q, 8, (double)NAN);
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_NO_KH);
	ask(&q, 0.1, 14);
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_SOFTENED);
}

static void test_with_residents__ammonia_unknown_is_refused_nil_is_planned(void **state)
{
	struct ts_species a = animal(TS_HOME_MIDDLE, 8, 16);
	struct ts_resident resident = {&a, false, false};
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 7, 3);
	q.wanted[0] = &a;
	q.wish.wanted_count = 1;
	q.wish.residents = &resident;
	q.wish.resident_count = 1;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
	assert_int_equal(r.refusal, TS_REMAKE_STAGES);
	assert_int_equal(r.stages.refusal, TS_STAGES_TEST_FIRST);
	assert_true(r.recipe.count > 0); /* for a second, empty tank */
	q.profile.poisons.tan_mg_l = q.profile.poisons.no2_mg_l = 0;
	q.wish.tank = &q.profile;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(r.stages.count > 0);
	q.wish.reading_age_days = (double)NAN;
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_NO);
}

static void test_one_figure_wished__met_within_what_a_kit_can_tell(void **state)
{
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 16, 10);
	q.wish.gh_dh = (struct ts_range){6, 6};
	q.wish.kh_dh = (struct ts_range){4, 4};
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_int_equal(r.recipe.count, 1);
	assert_true(fabs(r.recipe.gh_dh - 6) <= 0.5 && fabs(r.recipe.kh_dh - 4) <= 0.5);
}

static void test_supply_with_a_range__both_ends_are_foretold(void **state)
{
	struct ts_keeping k = {.temperature = value(25)};
	struct question q;
	struct ts_remake r;

	(void)state;
	ask(&q, 16, 10);
	q.reading.gh_dh = (struct ts_measure){15, 12, 18, TS_MEASURE_RANGE};
	ts_profile_make(&q.water, &k, NULL, -1, &q.profile);
	q.wish.gh_dh = (struct ts_range){6, 6};
	assert_int_equal(ts_remake_plan(&q.wish, NULL, &r), TS_OK);
	assert_true(r.has_ends);
	assert_true(r.other_end[0].gh_dh < r.recipe.gh_dh);
	assert_true(r.other_end[1].gh_dh > r.recipe.gh_dh);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_kh_alone__gh_need_not_be_known),
		cmocka_unit_test(test_gh_alone__kh_need_not_be_known),
		cmocka_unit_test(test_kh_alone__with_residents),
		cmocka_unit_test(test_thinned__without_kh),
		cmocka_unit_test(test_alone__not_where_animals_are_asked_about),
		cmocka_unit_test(test_shared_band__of_two_wishes),
		cmocka_unit_test(test_nothing_shared__refused),
		cmocka_unit_test(test_buffer_floor__but_for_black_water_alone),
		cmocka_unit_test(test_what_is_asked_first),
		cmocka_unit_test(test_with_residents__ammonia_unknown_is_refused_nil_is_planned),
		cmocka_unit_test(test_one_figure_wished__met_within_what_a_kit_can_tell),
		cmocka_unit_test(test_supply_with_a_range__both_ends_are_foretold),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
