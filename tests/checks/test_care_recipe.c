/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside checks of recipes: grams per degree against arithmetic from atomic weights done
 * elsewhere (remineralise.csv), where limestone and aragonite stop against USGS PHREEQC 3
 * (open_system_minerals_phreeqc.csv), and dilution with pure water against PHREEQC 3
 * (blend_water01_phreeqc.csv).
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "care/recipe.h"
#include "chem/carbonate.h"
#include "table.h"

static double per_degree(struct table *t, const char *formula, const char *column)
{
	for (size_t i = 0; i < t->rows; i++) {
		if (strcmp(table_text(t, i, "salt"), formula) == 0)
			return table_number(t, i, column);
	}
	return (double)NAN;
}

/* The degrees that the grams of a found recipe are worth by the table. */
static void test_recipe__grams_are_worth_their_degrees(void **state)
{
	struct table *t = table_open("remineralise.csv");
	struct worst worst = {.what = "degrees that a recipe's grams give, dH", .limit = 1e-3};

	(void)state;
	for (unsigned seed = 1; seed <= 40; seed++) {
		double gh = 4 + seed % 9, kh = 2 + seed % 7, gh_given = 0, kh_given = 0;
		struct ts_recipe_wish w = {
			.gh_dh = {gh, gh}, .kh_dh = {kh, kh}, .kind = TS_RECIPE_LAKE};
		struct ts_recipe r;

		w.gh_aim_dh = w.gh_dh;
		w.kh_aim_dh = w.kh_dh;
		w.base.temp_c = 25;
		w.have = seed % 2 ? 0
				  : 1u << TS_GYPSUM | 1u << TS_MAGNESIUM_CHLORIDE |
					    1u << TS_POTASSIUM_BICARBONATE |
					    1u << TS_SODIUM_BICARBONATE;
		assert_int_equal(ts_recipe_find(&w, NULL, &r, NULL), TS_OK);
		for (size_t i = 0; i < r.count; i++) {
			const char *formula = ts_ingredients[r.parts[i].ingredient].formula;
			double grams = r.parts[i].grams_per_100_l;
			double g_gh = per_degree(t, formula, "g_per_100L_per_dGH");
			double g_kh = per_degree(t, formula, "g_per_100L_per_dKH");

			gh_given += isnan(g_gh) ? 0 : grams / g_gh;
			kh_given += isnan(g_kh) ? 0 : grams / g_kh;
		}
		worst_note(&worst, gh_given, gh, "GH");
		worst_note(&worst, kh_given, kh, "KH");
	}
	worst_assert(&worst);
	table_close(t);
}

/*
 * Lime in pure water under air of 420 ppm. Calcite is allowed more: the table's constants are not
 * Plummer & Busenberg's (docs/methods.md, "Where we differ from PHREEQC").
 */
static void test_lime__stops_where_phreeqc_stops(void **state)
{
	struct table *t = table_open("open_system_minerals_phreeqc.csv");
	struct worst aragonite = {.what = "KH over aragonite in air, dKH", .limit = 0.12};
	struct worst calcite = {.what = "KH over calcite in air, dKH", .limit = 0.3};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		const char *mineral = table_text(t, i, "mineral");
		bool is_aragonite = strcmp(mineral, "Aragonite") == 0;
		struct ts_solution pure = {.temp_c = table_number(t, i, "t_C")};
		struct ts_lime_reach reach;

		if (strcmp(table_text(t, i, "pCO2"), "420ppm") != 0 || strcmp(mineral, "None") == 0)
			continue;
		assert_int_equal(
			ts_lime_reach(&pure, is_aragonite ? TS_ARAGONITE : TS_CALCITE, &reach),
			TS_OK);
		worst_note(is_aragonite ? &aragonite : &calcite, reach.kh_air_dh,
			ts_chem_dkh_from_meq_l(table_number(t, i, "alk_meq")), mineral);
	}
	worst_assert(&aragonite);
	worst_assert(&calcite);
	table_close(t);
}

/* A recipe that only dilutes: hardness and alkalinity follow the share of the water at hand. */
static void test_recipe__dilution_is_linear(void **state)
{
	struct table *t = table_open("blend_water01_phreeqc.csv");
	struct worst alk = {.what = "alkalinity of a diluted water, meq/L", .limit = 2e-4};
	struct worst ca = {.what = "calcium of a diluted water, mmol/L", .limit = 2e-4};
	struct ts_solution base = {.temp_c = 20,
		.ca_mmol_l = table_number(t, 0, "Ca_mmol"),
		.mg_mmol_l = table_number(t, 0, "Mg_mmol"),
		.alk_meq_l = table_number(t, 0, "alk_meq")};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		const char *name = table_text(t, i, "case");
		struct ts_recipe r = {.count = 0};
		struct ts_solution s;
		double share = name[1] == '.'
				       ? (double)(name[2] - '0') / 10 +
						 (double)(name[3] - '0') / 100 + (name[0] == '1')
				       : (double)NAN;

		if (isnan(share))
			continue;
		r.mineral_free = 1 - share;
		ts_recipe_apply(&r, &base, &s);
		worst_note(&alk, s.alk_meq_l, table_number(t, i, "alk_meq"), name);
		worst_note(&ca, s.ca_mmol_l, table_number(t, i, "Ca_mmol"), name);
	}
	worst_assert(&alk);
	worst_assert(&ca);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_recipe__grams_are_worth_their_degrees),
		cmocka_unit_test(test_lime__stops_where_phreeqc_stops),
		cmocka_unit_test(test_recipe__dilution_is_linear),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
