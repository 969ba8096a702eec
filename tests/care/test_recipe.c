/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Recipes: the figures of whole cases, what blocks one, and properties over random waters and
 * wishes: mixed and dissolved by the chemistry room, a recipe gives what it promises and holds
 * every limit; fewer ingredients would not do.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "care/recipe.h"
#include "chem/carbonate.h"
#include "chem/substances.h"

static struct ts_recipe_wish wish_of(double gh, double kh, struct ts_range to_gh,
	struct ts_range to_kh, enum ts_recipe_kind kind)
{
	struct ts_recipe_wish w = {.gh_dh = to_gh, .kh_dh = to_kh, .kind = kind};

	assert_int_equal(ts_solution_from_hardness(gh, kh, 25, &w.base), TS_OK);
	w.gh_aim_dh = ts_recipe_aim(to_gh, gh);
	w.kh_aim_dh = ts_recipe_aim(to_kh, kh);
	return w;
}

static double grams_of(const struct ts_recipe *r, enum ts_ingredient_id id)
{
	for (size_t i = 0; i < r->count; i++) {
		if (r->parts[i].ingredient == id)
			return r->parts[i].grams_per_100_l;
	}
	return 0;
}

/* Tap of GH 3, KH 2 for animals of Lake Tanganyika. */
static void test_find__soft_tap_for_shell_dwellers(void **state)
{
	struct ts_recipe_wish w =
		wish_of(3, 2, (struct ts_range){9, 18}, (struct ts_range){8, 18}, TS_RECIPE_LAKE);
	struct ts_recipe r;

	(void)state;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, NULL), TS_OK);
	assert_int_equal(r.count, 3);
	assert_true(fabs(grams_of(&r, TS_SODIUM_BICARBONATE) - 24) < 0.5);
	assert_true(fabs(grams_of(&r, TS_CALCIUM_CHLORIDE) - 13) < 0.5);
	assert_true(fabs(grams_of(&r, TS_MAGNESIUM_SULPHATE) - 13) < 0.5);
	assert_true(fabs(r.gh_dh - 10.8) < 1e-6 && fabs(r.kh_dh - 10) < 1e-6);
	assert_true(r.ph > 8.0 && r.ph < 8.2 && r.ph_low > 7.5 && r.ph_high < 8.6);
}

/* Tap of GH 18, KH 14 for rams that are to breed: blending alone, down to the KH floor. */
static void test_find__hard_tap_for_breeding_rams(void **state)
{
	struct ts_recipe_wish w =
		wish_of(18, 14, (struct ts_range){0, 3}, (struct ts_range){2, 3}, TS_RECIPE_SOFT);
	struct ts_recipe r;

	(void)state;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, NULL), TS_OK);
	assert_int_equal(r.count, 1);
	assert_true(fabs(r.mineral_free - 0.857) < 0.001);
	assert_true(fabs(r.gh_dh - 2.57) < 0.01 && fabs(r.kh_dh - 2.0) < 0.01);
	assert_true(r.grams_per_100_l == 0);
}

static void test_find__good_enough_as_it_is__nothing_to_do(void **state)
{
	struct ts_recipe_wish w = wish_of(
		9, 6, (struct ts_range){8, 20}, (struct ts_range){4, 12}, TS_RECIPE_GENERAL);
	struct ts_recipe r;

	(void)state;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, NULL), TS_OK);
	assert_int_equal(r.count, 0);
	assert_true(fabs(r.gh_dh - 9) < 1e-9);
}

/* GH and KH are separate levers: a wish for KH alone leaves GH where it is. */
static void test_find__kh_alone_leaves_gh(void **state)
{
	struct ts_recipe_wish w =
		wish_of(8, 2, (struct ts_range){8, 8}, (struct ts_range){5, 5}, TS_RECIPE_GENERAL);
	struct ts_recipe r;

	(void)state;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, NULL), TS_OK);
	assert_int_equal(r.count, 1);
	assert_int_equal(r.parts[0].ingredient, TS_SODIUM_BICARBONATE);
	assert_true(fabs(r.gh_dh - 8) < 1e-9 && fabs(r.kh_dh - 5) < 1e-9);
}

static void test_find__what_is_not_at_hand_is_not_used(void **state)
{
	struct ts_recipe_wish w = wish_of(
		18, 14, (struct ts_range){4, 6}, (struct ts_range){3, 4}, TS_RECIPE_GENERAL);
	struct ts_recipe r;
	enum ts_recipe_limit limit = TS_LIMIT_NONE;

	(void)state;
	w.have = 1u << TS_CALCIUM_CHLORIDE | 1u << TS_SODIUM_BICARBONATE;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, &limit), TS_NO);
	assert_int_equal(limit, TS_LIMIT_INGREDIENTS);
}

static void test_find__sodium_stands_in_the_way(void **state)
{
	struct ts_recipe_wish w =
		wish_of(4, 1, (struct ts_range){4, 5}, (struct ts_range){6, 7}, TS_RECIPE_SOFT);
	struct ts_recipe r;
	enum ts_recipe_limit limit = TS_LIMIT_NONE;

	(void)state;
	w.have = 1u << TS_SODIUM_BICARBONATE;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, &limit), TS_NO);
	assert_int_equal(limit, TS_LIMIT_SODIUM);
}

static void test_find__one_hardness_salt_would_upset_calcium_to_magnesium(void **state)
{
	struct ts_recipe_wish w =
		wish_of(2, 3, (struct ts_range){10, 10}, (struct ts_range){3, 3}, TS_RECIPE_LAKE);
	struct ts_recipe r;
	enum ts_recipe_limit limit = TS_LIMIT_NONE;

	(void)state;
	w.have = 1u << TS_MAGNESIUM_SULPHATE;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, &limit), TS_NO);
	assert_int_equal(limit, TS_LIMIT_CA_MG);
}

static void test_find__not_a_number__refused(void **state)
{
	struct ts_recipe_wish w =
		wish_of(5, 5, (struct ts_range){5, 6}, (struct ts_range){5, 6}, TS_RECIPE_SOFT);
	struct ts_recipe r;

	(void)state;
	w.base.ca_mmol_l = (double)NAN;
	assert_int_equal(ts_recipe_find(&w, NULL, &r, NULL), TS_BAD_INPUT);
}

static void test_aim__a_fifth_inside_but_never_away_from_a_good_value(void **state)
{
	struct ts_range aim = ts_recipe_aim((struct ts_range){8, 18}, 3);

	(void)state;
	assert_true(aim.low == 10 && aim.high == 16);
	aim = ts_recipe_aim((struct ts_range){8, 18}, 8.5);
	assert_true(aim.low == 8.5);
	aim = ts_recipe_aim((struct ts_range){5, 5}, 3);
	assert_true(aim.low == 5 && aim.high == 5);
}

static void test_ingredient_named__other_spellings(void **state)
{
	(void)state;
	assert_int_equal(ts_ingredient_named("epsom salt"), TS_MAGNESIUM_SULPHATE);
	assert_int_equal(ts_ingredient_named("NAHCO3"), TS_SODIUM_BICARBONATE);
	assert_int_equal(ts_ingredient_named("Rain"), TS_MINERAL_FREE);
	assert_int_equal(ts_ingredient_named("acid"), -1);
	assert_int_equal(ts_ingredient_named("calcium"), -1);
}

static void test_lime_reach__stops_below_what_rift_lake_fish_need(void **state)
{
	struct ts_solution s;
	struct ts_lime_reach r;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(3, 2, 25, &s), TS_OK);
	assert_int_equal(ts_lime_reach(&s, TS_ARAGONITE, &r), TS_OK);
	assert_true(r.kh_air_dh > 3 && r.kh_air_dh < 4.5);
	assert_true(r.kh_tank_dh > r.kh_air_dh && r.kh_tank_dh < 7);
	assert_true(r.gh_tank_dh > 3);
	assert_int_equal(ts_solution_from_hardness(18, 14, 25, &s), TS_OK);
	assert_int_equal(ts_lime_reach(&s, TS_ARAGONITE, &r), TS_NO);
}

static double random_in(unsigned *seed, double low, double high)
{
	*seed = *seed * 1664525u + 1013904223u;
	return low + (double)(*seed >> 8) / 16777216.0 * (high - low);
}

static struct ts_range random_band(unsigned *seed, double high)
{
	double low = random_in(seed, 0, high);

	return (struct ts_range){low, low + random_in(seed, 0, 5)};
}

/* Mixes and dissolves with the chemistry room's own functions, ingredient by ingredient. */
static struct ts_solution made(const struct ts_recipe *r, const struct ts_solution *base)
{
	struct ts_solution none = {.temp_c = 25}, s;
	const struct ts_solution *waters[] = {base, &none};
	const double litres[] = {100 - 100 * r->mineral_free, 100 * r->mineral_free};

	ts_chem_mix(waters, litres, 2, &s);
	for (size_t i = 0; i < r->count; i++) {
		const char *formula = ts_ingredients[r->parts[i].ingredient].formula;
		const struct ts_substance *salt = formula ? ts_chem_substance(formula) : NULL;

		if (salt)
			ts_chem_dissolve(&s, salt,
				ts_chem_substance_mmol_l(salt, r->parts[i].grams_per_100_l, 100),
				&s);
	}
	return s;
}

static void test_property__applied_it_gives_the_promised_water_within_every_limit(void **state)
{
	unsigned seed = 3, found = 0;

	(void)state;
	for (int i = 0; i < 400; i++) {
		struct ts_recipe_wish w = wish_of(random_in(&seed, 0, 25), random_in(&seed, 0, 18),
			random_band(&seed, 20), random_band(&seed, 14),
			(enum ts_recipe_kind)(i % 3));
		struct ts_recipe r;
		struct ts_solution s;
		double ratio, sodium_most[] = {20, 60, 200};
		bool hardness = false;

		if (ts_recipe_find(&w, NULL, &r, NULL) != TS_OK)
			continue;
		found++;
		s = made(&r, &w.base);
		assert_true(
			fabs(ts_chem_dh_from_mmol_l(s.ca_mmol_l + s.mg_mmol_l) - r.gh_dh) < 1e-6);
		assert_true(fabs(ts_chem_dkh_from_meq_l(s.alk_meq_l) - r.kh_dh) < 1e-6);
		assert_true(r.gh_dh > w.gh_dh.low - 1e-6 && r.gh_dh < w.gh_dh.high + 1e-6);
		assert_true(r.kh_dh > w.kh_dh.low - 1e-6 && r.kh_dh < w.kh_dh.high + 1e-6);
		assert_true(s.na_mmol_l * TS_WEIGHT_NA <
			    fmax(sodium_most[i % 3], w.base.na_mmol_l * TS_WEIGHT_NA) + 1e-6);
		for (size_t p = 0; p < r.count; p++)
			hardness |= ts_ingredients[r.parts[p].ingredient].hardness;
		ratio = s.ca_mmol_l * TS_WEIGHT_CA / (s.mg_mmol_l * TS_WEIGHT_MG);
		assert_true(!hardness || (ratio > (i % 3 == 2 ? 1 : 2) - 1e-4 && ratio < 5 + 1e-4));
	}
	assert_true(found > 150);
}

/* Leaving any one ingredient of the answer out, no recipe of fewer parts is found. */
static void test_property__no_ingredient_is_superfluous(void **state)
{
	unsigned seed = 17, looked = 0;

	(void)state;
	for (int i = 0; i < 60; i++) {
		struct ts_recipe_wish w = wish_of(random_in(&seed, 0, 20), random_in(&seed, 0, 14),
			random_band(&seed, 16), random_band(&seed, 10), TS_RECIPE_LAKE);
		struct ts_recipe r, fewer;
		unsigned used = 0;

		if (ts_recipe_find(&w, NULL, &r, NULL) != TS_OK || r.count < 2)
			continue;
		for (size_t p = 0; p < r.count; p++)
			used |= 1u << r.parts[p].ingredient;
		for (size_t p = 0; p < r.count; p++) {
			w.have = used & ~(1u << r.parts[p].ingredient);
			assert_int_equal(ts_recipe_find(&w, NULL, &fewer, NULL), TS_NO);
			looked++;
		}
	}
	assert_true(looked > 20);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_find__soft_tap_for_shell_dwellers),
		cmocka_unit_test(test_find__hard_tap_for_breeding_rams),
		cmocka_unit_test(test_find__good_enough_as_it_is__nothing_to_do),
		cmocka_unit_test(test_find__kh_alone_leaves_gh),
		cmocka_unit_test(test_find__what_is_not_at_hand_is_not_used),
		cmocka_unit_test(test_find__sodium_stands_in_the_way),
		cmocka_unit_test(test_find__one_hardness_salt_would_upset_calcium_to_magnesium),
		cmocka_unit_test(test_find__not_a_number__refused),
		cmocka_unit_test(test_aim__a_fifth_inside_but_never_away_from_a_good_value),
		cmocka_unit_test(test_ingredient_named__other_spellings),
		cmocka_unit_test(test_lime_reach__stops_below_what_rift_lake_fish_need),
		cmocka_unit_test(
			test_property__applied_it_gives_the_promised_water_within_every_limit),
		cmocka_unit_test(test_property__no_ingredient_is_superfluous),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
