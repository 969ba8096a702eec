/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: real analyses. A public supplier's laboratory calculation (water-01),
 * conductivity of a dozen supplies and springs, conductivity measured on natural waters. pH, CO2
 * and calcite by PHREEQC stand in test_chem_phreeqc.c.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "chem/carbonate.h"
#include "chem/conductivity.h"
#include "chem/ions.h"
#include "chem/minerals.h"
#include "waters_table.h"

/*
 * What the supplier's laboratory printed for 17.6 C and pH 7.34: free CO2 25.4 mg/L, calcite
 * index +0.24, pH after precipitation 7.16, dissolving capacity -23 mg/L, CO2 in balance 35.20
 * mg/L, ionic strength 9.81 mmol/L, cations 6.88 and anions 7.05 meq/L.
 */
static void test_waters__laboratory_calculation(void **state)
{
	struct ts_solution s = waters_01(17.6), saturated;
	struct ts_chem_constants k = {0};
	struct ts_ion_species species = {0};
	double co2, si, ccpp, ph, co2_saturated;

	(void)state;
	ts_chem_constants_at(&k, s.temp_c);
	assert_int_equal(ts_chem_speciate_at_ph(&k, &s, 7.34, &species), TS_OK);
	assert_int_equal(ts_chem_co2_from_ph(&s, 7.34, &co2), TS_OK);
	assert_int_equal(ts_chem_calcite_si(&s, 7.34, &si), TS_OK);
	assert_int_equal(ts_chem_dic_from_ph(&s, 7.34, &s.dic_mmol_l), TS_OK);
	assert_int_equal(ts_chem_ccpp_mg_l(&k, &s, &ccpp), TS_OK);
	assert_int_equal(ts_chem_saturate_closed(&k, &s, TS_CALCITE, &saturated), TS_OK);
	assert_int_equal(ts_chem_ph_closed(&saturated, &ph, &co2_saturated), TS_OK);
	co2 = ts_chem_co2_mg_l_from_mmol_l(co2);
	co2_saturated = ts_chem_co2_mg_l_from_mmol_l(co2_saturated);
	printf("# water-01: CO2 %.2f, SI %.3f, pH(calcite) %.3f, CCPP %.1f, CO2 there %.2f, "
	       "I %.5f\n",
		co2, si, ph, ccpp, co2_saturated, species.ionic_strength);
	assert_true(fabs(co2 / 25.4 - 1) < 0.02);
	assert_true(fabs(si - 0.24) < 0.03);
	assert_true(fabs(ph - 7.16) < 0.02);
	assert_true(fabs(ccpp - 23) < 1.5);
	assert_true(fabs(co2_saturated / 35.20 - 1) < 0.02);
	assert_true(fabs(species.ionic_strength / 9.81e-3 - 1) < 0.01);
	assert_true(fabs(ts_chem_cations_meq_l(&s) - 6.88) < 0.03);
	assert_true(fabs(ts_chem_anions_meq_l(&s) - 7.05) < 0.03);
}

/* USGS PHREEQC 3 on eleven waters. */
static void test_waters__conductivity_by_phreeqc(void **state)
{
	struct table *t = table_open("waters.csv");
	struct worst ec = {.what = "conductivity at 25 C against PHREEQC, relative", .limit = 0.07};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		double printed = table_number(t, i, "temp_C"), ph = table_number(t, i, "pH"), got;
		const char *where = table_text(t, i, "label");
		struct ts_solution s = waters_row(t, i, isnan(printed) ? 12 : printed);

		if (isnan(table_number(t, i, "phreeqc_EC25")) || !(s.alk_meq_l > 0))
			continue;
		assert_int_equal(ts_chem_conductivity_25_us_cm(&s, ph, &got), TS_OK);
		worst_note_relative(&ec, got, table_number(t, i, "phreeqc_EC25"), where);
	}
	worst_assert(&ec);
	table_close(t);
}

static int ascending(const void *a, const void *b)
{
	double left = *(const double *)a, right = *(const double *)b;

	return (left > right) - (left < right);
}

/* A Stuyfzand row; ammonium conducts like potassium and is counted as it. */
static struct ts_solution stuyfzand(const struct table *t, size_t row)
{
	struct ts_solution s = waters_row(t, row, 20);
	double nh4 = table_number(t, row, "NH4");

	s.k_mmol_l += isnan(nh4) ? 0 : ts_chem_mmol_l_from_mg_l(TS_ION_NH4, nh4);
	return s;
}

/*
 * Natural waters measured at 20 C (P.J. Stuyfzand, in PHREEQC's test suite), those that are
 * neutral to 5 % and hold bicarbonate; the acid ones without buffer are no fish water.
 */
static void test_waters__stuyfzand_conductivity(void **state)
{
	struct table *t = table_open("stuyfzand_waters.csv");
	double off[TS_TABLE_ROWS];
	size_t n = 0, balanced = 0;

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution s = stuyfzand(t, i);
		double ec25;

		balanced += fabs(ts_chem_charge_error_percent(&s)) < 5;
		if (!(table_number(t, i, "HCO3") > 50) ||
			fabs(ts_chem_charge_error_percent(&s)) >= 5)
			continue;
		assert_int_equal(
			ts_chem_conductivity_25_us_cm(&s, table_number(t, i, "pH"), &ec25), TS_OK);
		off[n++] =
			fabs(ts_chem_ec20_from_ec25(ec25) / table_number(t, i, "EC20_uS_cm") - 1);
	}
	qsort(off, n, sizeof(off[0]), ascending);
	printf("# Stuyfzand: %zu of %zu neutral to 5 %%; EC of %zu: half within %.1f %%, nine of "
	       "ten "
	       "within %.1f %%, all within %.1f %%\n",
		balanced, t->rows, n, 100 * off[n / 2], 100 * off[n * 9 / 10], 100 * off[n - 1]);
	assert_true(n >= 80);
	assert_true(off[n / 2] < 0.05);
	assert_true(off[n * 9 / 10] < 0.10);
	assert_true(off[n - 1] < 0.20);
	table_close(t);
}

/* water-01 with pure water at 20 C, USGS PHREEQC 3: what mixes in proportion, and conductivity. */
static void test_waters__blend(void **state)
{
	struct table *t = table_open("blend_water01_phreeqc.csv");
	struct worst linear = {
		.what = "alkalinity and calcium of a blend, relative", .limit = 0.001};
	struct worst ec_worst = {
		.what = "conductivity of a blend at 20 C, relative", .limit = 0.05};
	struct ts_solution hard = waters_01(20), pure = {.temp_c = 20}, blend;
	const struct ts_solution *waters[] = {&hard, &pure};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		const char *name = table_text(t, i, "case");
		double share = waters_blend_share(t, i), ec;

		if (!(share > 0))
			continue;
		ts_chem_mix(waters, (const double[]){share, 1 - share}, 2, &blend);
		worst_note_relative(&linear, blend.alk_meq_l, table_number(t, i, "alk_meq"), name);
		worst_note_relative(&linear, blend.ca_mmol_l, table_number(t, i, "Ca_mmol"), name);
		assert_int_equal(
			ts_chem_conductivity_25_us_cm(&blend, table_number(t, i, "pH"), &ec),
			TS_OK);
		worst_note_relative(&ec_worst, ts_chem_ec20_from_ec25(ec),
			table_number(t, i, "EC_20C_uS"), name);
	}
	worst_assert(&linear);
	worst_assert(&ec_worst);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_waters__laboratory_calculation),
		cmocka_unit_test(test_waters__conductivity_by_phreeqc),
		cmocka_unit_test(test_waters__stuyfzand_conductivity),
		cmocka_unit_test(test_waters__blend),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
