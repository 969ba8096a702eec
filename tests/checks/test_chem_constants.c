/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: equilibrium constants, gas solubility and the activity constant against
 * published equations evaluated elsewhere (sources at the head of each table).
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "chem/carbonate.h"
#include "table.h"

/* Plummer & Busenberg 1982; Kw: phreeqc.dat. The table has four decimals. */
static void test_constants__plummer_busenberg(void **state)
{
	struct table *t = table_open("carbonate_constants.csv");
	struct worst worst = {.what = "log K, 0-35 C", .limit = 6e-5};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_chem_constants k = {0};
		const char *where = table_text(t, i, "t_C");

		ts_chem_constants_at(&k, table_number(t, i, "t_C"));
		worst_note(&worst, log10(k.kh), table_number(t, i, "log_KH"), where);
		worst_note(&worst, log10(k.k1), table_number(t, i, "log_K1"), where);
		worst_note(&worst, log10(k.k2), table_number(t, i, "log_K2"), where);
		worst_note(&worst, log10(k.kw), table_number(t, i, "log_Kw_phreeqc"), where);
		worst_note(&worst, log10(k.mineral[TS_CALCITE]),
			table_number(t, i, "log_K_calcite"), where);
		worst_note(&worst, log10(k.mineral[TS_ARAGONITE]),
			table_number(t, i, "log_K_aragonite"), where);
		worst_note(&worst, log10(k.ca_hco3), table_number(t, i, "log_K_CaHCO3+"), where);
		worst_note(&worst, log10(k.ca_co3), table_number(t, i, "log_K_CaCO3_0"), where);
	}
	worst_assert(&worst);
	table_close(t);
}

/* The values that Plummer & Busenberg 1982 print in their abstract for 25 C, with their doubt. */
static void test_constants__printed_at_25(void **state)
{
	struct ts_chem_constants k = {0};

	(void)state;
	ts_chem_constants_at(&k, 25);
	assert_true(fabs(log10(k.mineral[TS_CALCITE]) + 8.480) < 0.001);
	assert_true(fabs(log10(k.mineral[TS_ARAGONITE]) + 8.336) < 0.001);
	assert_true(fabs(log10(k.ca_hco3) - 1.11) < 0.005);
	assert_true(fabs(log10(k.ca_co3) - 3.22) < 0.005);
}

/* Every row of the published set says what it is and holds where fish are kept. */
static void test_constants__rows_cover_0_to_30(void **state)
{
	(void)state;
	for (size_t i = 0; i < ts_chem_published.n; i++) {
		const struct ts_chem_constant *row = &ts_chem_published.rows[i];

		if (!*row->reaction || !*row->source || !(row->low_c <= 0) || !(row->high_c >= 30))
			fail_msg("row %zu: %s", i, row->reaction);
	}
	assert_int_equal(ts_chem_published.n, 12);
}

/* log K at 25 C of Nordstrom et al. 1990, ACS Symposium Series 416:398-413; from memory. */
static void test_constants__magnesium_and_sulphate_pairs_at_25(void **state)
{
	struct ts_chem_constants k = {0};

	(void)state;
	ts_chem_constants_at(&k, 25);
	assert_true(fabs(log10(k.mg_hco3) - 1.07) < 0.005);
	assert_true(fabs(log10(k.mg_co3) - 2.98) < 0.005);
	assert_true(fabs(log10(k.ca_so4) - 2.30) < 0.005);
	assert_true(fabs(log10(k.mg_so4) - 2.37) < 0.005);
}

/* USGS PHREEQC 3 reports A and B for its own activity model. B stands with the size, 5.4 A. */
static void test_constants__debye_hueckel(void **state)
{
	struct table *t = table_open("debye_huckel.csv");
	struct worst classic = {
		.what = "Debye-Hueckel A and B against the classic form", .limit = 1e-5};
	struct worst phreeqc = {
		.what = "Debye-Hueckel A and B against PHREEQC 3, relative", .limit = 0.003};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_chem_constants k = {0};
		const char *where = table_text(t, i, "t_C");

		ts_chem_constants_at(&k, table_number(t, i, "t_C"));
		worst_note(&classic, k.dh_a, table_number(t, i, "A_classic"), where);
		worst_note(&classic, k.dh_b_size / 5.4,
			table_number(t, i, "B_classic_per_angstrom"), where);
		worst_note_relative(&phreeqc, k.dh_a, table_number(t, i, "A_phreeqc3"), where);
		worst_note_relative(
			&phreeqc, k.dh_b_size / 5.4, table_number(t, i, "B_phreeqc3"), where);
	}
	worst_assert(&classic);
	worst_assert(&phreeqc);
	table_close(t);
}

/* Plummer & Busenberg's CO2 solubility to the digit; Weiss 1974 as an independent measurement. */
static void test_constants__co2_in_air(void **state)
{
	struct table *t = table_open("co2_solubility.csv");
	struct worst own = {.what = "CO2 in air, mg/L, against Plummer & Busenberg", .limit = 6e-5};
	struct worst weiss = {.what = "CO2 in air against Weiss 1974, relative", .limit = 0.006};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		double got = ts_chem_co2_mg_l_from_mmol_l(
			ts_chem_air_co2_mmol_l(table_number(t, i, "t_C")));
		const char *where = table_text(t, i, "t_C");

		worst_note(&own, got, table_number(t, i, "CO2_mg_L_420ppm_PB"), where);
		worst_note_relative(
			&weiss, got, table_number(t, i, "CO2_mg_L_420ppm_Weiss"), where);
	}
	worst_assert(&own);
	worst_assert(&weiss);
	table_close(t);
}

/* USGS PHREEQC 3, last column of the table. */
static void test_constants__pure_water(void **state)
{
	struct table *t = table_open("debye_huckel.csv");
	struct worst worst = {.what = "pH of pure water", .limit = 0.001};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution s = {.temp_c = table_number(t, i, "t_C")};
		double ph, co2;

		assert_int_equal(ts_chem_ph_closed(&s, &ph, &co2), TS_OK);
		worst_note(&worst, ph, table_number(t, i, "pH_pure_water_phreeqc3"),
			table_text(t, i, "t_C"));
	}
	worst_assert(&worst);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_constants__plummer_busenberg),
		cmocka_unit_test(test_constants__printed_at_25),
		cmocka_unit_test(test_constants__rows_cover_0_to_30),
		cmocka_unit_test(test_constants__magnesium_and_sulphate_pairs_at_25),
		cmocka_unit_test(test_constants__debye_hueckel),
		cmocka_unit_test(test_constants__co2_in_air),
		cmocka_unit_test(test_constants__pure_water),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
