/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: degrees of hardness, salts in a tank's volume, alkalinity eaten by nitrification,
 * against arithmetic from definitions and atomic weights done elsewhere, and against what public
 * water suppliers print.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "chem/classes.h"
#include "chem/hardness.h"
#include "chem/nitrogen.h"
#include "chem/substances.h"
#include "table.h"

/* mmol/L of hardness that one of each unit is, in the order of the table's rows and columns. */
static const struct {
	const char *column;
	double mmol_l;
} units[] = {
	{"mmol/L", 1},
	{"meq/L", 0.5},
	{"mg/L_CaCO3", TS_MMOL_L_PER_MG_CACO3},
	{"dH", TS_MMOL_L_PER_DH},
	{"fH", TS_MMOL_L_PER_FH},
	{"eH_Clark", TS_MMOL_L_PER_CLARK},
	{"gpg_US", TS_MMOL_L_PER_GPG},
	{"mg/L_Ca", 1 / TS_WEIGHT_CA},
	{"mg/L_CaO", 1 / TS_MASS_CAO},
	{"mg/L_HCO3", 0.5 / TS_MASS_HCO3},
};

static void test_units__every_pair(void **state)
{
	/* the rows are the columns' units, with mg/L Mg put in after mg/L Ca */
	static const double row_mmol_l[] = {1, 0.5, TS_MMOL_L_PER_MG_CACO3, TS_MMOL_L_PER_DH,
		TS_MMOL_L_PER_FH, TS_MMOL_L_PER_CLARK, TS_MMOL_L_PER_GPG, 1 / TS_WEIGHT_CA,
		1 / TS_WEIGHT_MG, 1 / TS_MASS_CAO, 0.5 / TS_MASS_HCO3};
	struct table *t = table_open("units_hardness.csv");
	struct worst worst = {.what = "one unit in another, relative", .limit = 2e-5};

	(void)state;
	assert_int_equal(t->rows, sizeof(row_mmol_l) / sizeof(row_mmol_l[0]));
	for (size_t i = 0; i < t->rows; i++)
		for (size_t c = 0; c < sizeof(units) / sizeof(units[0]); c++)
			worst_note_relative(&worst, row_mmol_l[i] / units[c].mmol_l,
				table_number(t, i, units[c].column), table_text(t, i, "unit"));
	worst_assert(&worst);
	table_close(t);
}

/* Pairs of acid capacity (meq/L) and carbonate hardness (dH) printed by three public suppliers. */
static void test_units__printed_pairs(void **state)
{
	static const double printed[][2] = {{5.72, 16.0}, {3.03, 8.5}, {0.58, 1.6}};

	(void)state;
	for (int i = 0; i < 3; i++)
		assert_true(fabs(ts_chem_dkh_from_meq_l(printed[i][0]) - printed[i][1]) < 0.05);
}

/*
 * Mistakes seen on pages about water, which must not be ours: 1 dH is not 10 mg/L CaCO3, an
 * English degree is 0.80 dH and not 0.83, a French degree 10.0 mg/L and not 10.6.
 */
static void test_units__known_misprints(void **state)
{
	(void)state;
	assert_true(fabs(TS_MMOL_L_PER_DH * TS_MASS_CACO3 - 17.848) < 0.001);
	assert_true(fabs(TS_MMOL_L_PER_CLARK / TS_MMOL_L_PER_DH - 0.7986) < 0.0001);
	assert_true(fabs(TS_MMOL_L_PER_FH * TS_MASS_CACO3 - 10.0) < 1e-9);
	assert_true(fabs(ts_chem_dh_from_mmol_l(1.8) - 10.09) < 0.005);
}

/* What one gram in 100 L does, each salt of the table. */
static void test_units__remineralise(void **state)
{
	struct table *t = table_open("remineralise.csv");
	struct worst mass = {.what = "molar mass, g/mol", .limit = 0.0006};
	struct worst degrees = {.what = "dGH and dKH of 1 g in 100 L", .limit = 6e-6};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		char formula[40];
		const struct ts_substance *salt;
		struct ts_solution s = {.temp_c = 25};

		snprintf(formula, sizeof(formula), "%s", table_text(t, i, "salt"));
		formula[strcspn(formula, " ")] = '\0';
		salt = ts_chem_substance(formula);
		assert_non_null(salt);
		worst_note(&mass, salt->molar_mass, table_number(t, i, "molar_mass"), formula);
		ts_chem_dissolve(&s, salt, ts_chem_substance_mmol_l(salt, 1, 100), &s);
		worst_note(&degrees, ts_chem_dh_from_mmol_l(s.ca_mmol_l + s.mg_mmol_l),
			table_number(t, i, "dGH_per_g_100L"), formula);
		worst_note(&degrees, ts_chem_dkh_from_meq_l(s.alk_meq_l),
			table_number(t, i, "dKH_per_g_100L"), formula);
	}
	worst_assert(&mass);
	worst_assert(&degrees);
	table_close(t);
}

/* Stoichiometry: 7.1454 g CaCO3 and 4.5689 g O2 per g of ammonium nitrogen to nitrate. */
static void test_units__nitrification(void **state)
{
	struct table *t = table_open("nitrification.csv");
	double meq = ts_chem_nitrogen_alk_meq(TS_NITRITATION, 1000) +
		     ts_chem_nitrogen_alk_meq(TS_NITRATATION, 1000);
	double o2_mg = ts_chem_nitrogen_o2_mg(TS_NITRITATION, 1000) +
		       ts_chem_nitrogen_o2_mg(TS_NITRATATION, 1000);

	(void)state;
	assert_true(fabs(-ts_chem_mg_caco3_from_meq_l(meq) / 1000 -
			    table_number(t, 0, "g_CaCO3_per_g_N")) < 1e-4);
	assert_true(fabs(-o2_mg / 1000 - table_number(t, 0, "g_O2_per_g_N")) < 1e-4);
	table_close(t);
}

/* KH lost for a rise of nitrate out of ammonium (2 eq); out of feed it is half (1 eq). */
static void test_units__nitrate_and_kh(void **state)
{
	struct table *t = table_open("nitrate_kh.csv");
	struct worst worst = {
		.what = "dKH lost for nitrate out of ammonium, relative", .limit = 2e-5};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		double n_mg = table_number(t, i, "NO3_mgL") * TS_WEIGHT_N / TS_MASS_NO3;
		double meq = ts_chem_nitrogen_alk_meq(TS_NITRITATION, n_mg);
		double feed = meq + ts_chem_nitrogen_alk_meq(TS_RELEASE, n_mg);

		worst_note_relative(&worst, ts_chem_dkh_from_meq_l(-meq), table_number(t, i, "dKH"),
			table_text(t, i, "NO3_mgL"));
		worst_note_relative(&worst, 2 * ts_chem_dkh_from_meq_l(-feed),
			table_number(t, i, "dKH"), table_text(t, i, "NO3_mgL"));
	}
	worst_assert(&worst);
	table_close(t);
}

/* The first word of a scale's name here, and its name in the table of printed scales. */
static const struct {
	const char *own, *printed;
	double mmol_l_per_unit;
} scale_names[] = {{"USGS", "USGS", TS_MMOL_L_PER_MG_CACO3},
	{"WHO", "WHO 2011", TS_MMOL_L_PER_MG_CACO3},
	{"Vermont", "Sawyer-type", TS_MMOL_L_PER_MG_CACO3}, {"Germany", "Germany", 1},
	{"Switzerland", "Switzerland", TS_MMOL_L_PER_FH},
	{"UK supplies", "UK utilities", TS_MMOL_L_PER_MG_CACO3}};

/* Each printed class holds the value just under its upper limit; the one above holds more. */
static void test_units__hardness_classes(void **state)
{
	struct table *t = table_open("hardness_classes.csv");
	size_t compared = 0;

	(void)state;
	for (size_t k = 0; k < sizeof(scale_names) / sizeof(scale_names[0]); k++) {
		const struct ts_hardness_scale *scale = &ts_hardness_scales[k];

		assert_string_equal(scale->name, scale_names[k].own);
		for (size_t i = 0; i < t->rows; i++) {
			double upper = table_number(t, i, "upper");
			const char *word = table_text(t, i, "class"), *name;

			if (strncmp(table_text(t, i, "scale"), scale_names[k].printed,
				    strlen(scale_names[k].printed)) != 0)
				continue;
			upper = isnan(upper) ? 2 * table_number(t, i, "lower") : upper - 0.01;
			name = ts_hardness_class(scale, upper * scale_names[k].mmol_l_per_unit);
			assert_non_null(name);
			assert_non_null(strstr(name, word));
			compared++;
		}
	}
	printf("# hardness classes: %zu compared\n", compared);
	assert_true(compared == 27);
	assert_null(ts_hardness_class(&ts_hardness_scales[0], -1));
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_units__hardness_classes),
		cmocka_unit_test(test_units__every_pair),
		cmocka_unit_test(test_units__printed_pairs),
		cmocka_unit_test(test_units__known_misprints),
		cmocka_unit_test(test_units__remineralise),
		cmocka_unit_test(test_units__nitrification),
		cmocka_unit_test(test_units__nitrate_and_kh),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
