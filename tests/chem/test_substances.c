/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of salts, acids and bases: sorted, neutral, and a worked recipe.
 */
#include <string.h>

#include "waters.h"

#include "chem/substances.h"

static void test_substances__sorted_by_formula(void **state)
{
	(void)state;
	for (size_t i = 1; i < ts_substance_count; i++)
		assert_true(strcmp(ts_substances[i - 1].formula, ts_substances[i].formula) < 0);
}

/* Whatever is dissolved, as many charges of one sign as of the other. */
static void test_substances__every_row_is_neutral(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_substance_count; i++) {
		struct ts_solution s = {.temp_c = 25};

		ts_chem_dissolve(&s, &ts_substances[i], 1, &s);
		near(ts_chem_cations_meq_l(&s), ts_chem_anions_meq_l(&s), 1e-12, (unsigned)i);
		assert_true(ts_chem_cations_meq_l(&s) > 0);
	}
}

/* The mass is at least that of the ions in it, and no more than water and carbonate above. */
static void test_substances__mass_holds_its_ions(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_substance_count; i++) {
		double ions = 0;

		for (int ion = 0; ion < TS_ION__IN_SOLUTION; ion++)
			ions += ts_substances[i].ions[ion] * ts_ions[ion].molar_mass;
		assert_true(ts_substances[i].molar_mass > ions - 1e-9);
		assert_true(ts_substances[i].molar_mass < ions + 150);
	}
}

static void test_substances__found_exactly(void **state)
{
	(void)state;
	assert_string_equal(ts_chem_substance("NaHCO3")->name, "sodium hydrogen carbonate");
	assert_null(ts_chem_substance("NaHCO"));
	assert_null(ts_chem_substance(""));
}

static void test_substances__grams_round_trip(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_substance_count; i++) {
		const struct ts_substance *salt = &ts_substances[i];
		double mmol_l = ts_chem_substance_mmol_l(salt, 12.5, 80);

		near(ts_chem_substance_grams(salt, mmol_l, 80), 12.5, 1e-12, (unsigned)i);
	}
}

/*
 * GH 3, KH 2 and per 100 L 24 g NaHCO3, 13 g CaCl2.2H2O, 13 g MgSO4.7H2O: GH 11, KH 10, pH about
 * 8.1 (7.6-8.5).
 */
static void test_substances__recipe_for_shell_dwellers(void **state)
{
	static const struct {
		const char *formula;
		double grams;
	} recipe[] = {{"NaHCO3", 24}, {"CaCl2.2H2O", 13}, {"MgSO4.7H2O", 13}};
	struct ts_solution s;
	double low, mid, high;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(3, 2, 25, &s), TS_OK);
	for (int i = 0; i < 3; i++) {
		const struct ts_substance *salt = ts_chem_substance(recipe[i].formula);

		ts_chem_dissolve(
			&s, salt, ts_chem_substance_mmol_l(salt, recipe[i].grams, 100), &s);
	}
	near(ts_chem_dh_from_mmol_l(s.ca_mmol_l + s.mg_mmol_l), 11, 0.1, 0);
	near(ts_chem_dkh_from_meq_l(s.alk_meq_l), 10, 0.1, 0);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_OK);
	near(low, 7.6, 0.05, 0);
	near(mid, 8.1, 0.05, 0);
	near(high, 8.5, 0.05, 0);
}

/* Half a meq/L of acid frees nearly half a mmol/L of CO2 at once, 22 mg/L; some finds carbonate. */
static void test_substances__acid_frees_co2(void **state)
{
	struct ts_solution s;
	double ph, before, after;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(9, 9, 25, &s), TS_OK);
	assert_int_equal(ts_chem_ph_closed(&s, &ph, &before), TS_OK);
	ts_chem_dissolve(&s, ts_chem_substance("HCl"), 0.5, &s);
	assert_int_equal(ts_chem_ph_closed(&s, &ph, &after), TS_OK);
	near(ts_chem_co2_mg_l_from_mmol_l(after - before), 22, 2.5, 0);
	near(ph, 7.1, 0.15, 0);
}

/* Molar masses as handbooks print them, from the standard atomic weights (from memory). */
static void test_substances__molar_masses(void **state)
{
	static const struct {
		const char *formula;
		double g_mol, carbon;
	} rows[] = {{"Ca(OH)2", 74.09, 0}, {"CaCO3", 100.09, 1}, {"CaCl2", 110.98, 0},
		{"CaCl2.2H2O", 147.01, 0}, {"CaSO4.2H2O", 172.17, 0}, {"H2SO4", 98.08, 0},
		{"HCl", 36.46, 0}, {"HNO3", 63.01, 0}, {"K2CO3", 138.20, 1}, {"K2SO4", 174.26, 0},
		{"KCl", 74.55, 0}, {"KHCO3", 100.11, 1}, {"KNO3", 101.10, 0}, {"MgCO3", 84.31, 1},
		{"MgCl2.6H2O", 203.30, 0}, {"MgSO4", 120.37, 0}, {"MgSO4.7H2O", 246.47, 0},
		{"Na2CO3", 105.99, 1}, {"Na2SO4", 142.04, 0}, {"NaCl", 58.44, 0},
		{"NaHCO3", 84.01, 1}, {"NaOH", 40.00, 0}};

	(void)state;
	assert_int_equal(ts_substance_count, sizeof rows / sizeof *rows);
	for (size_t i = 0; i < ts_substance_count; i++) {
		const struct ts_substance *s = ts_chem_substance(rows[i].formula);

		assert_non_null(s);
		near(s->molar_mass, rows[i].g_mol, 0.02, (unsigned)i);
		near(s->carbon_mol, rows[i].carbon, 0, (unsigned)i);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_substances__sorted_by_formula),
		cmocka_unit_test(test_substances__every_row_is_neutral),
		cmocka_unit_test(test_substances__mass_holds_its_ions),
		cmocka_unit_test(test_substances__found_exactly),
		cmocka_unit_test(test_substances__grams_round_trip),
		cmocka_unit_test(test_substances__recipe_for_shell_dwellers),
		cmocka_unit_test(test_substances__acid_frees_co2),
		cmocka_unit_test(test_substances__molar_masses),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
