/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: the daily balance against the arithmetic of repeated water changes, against the
 * stoichiometry of nitrification (EPA 1975/1993 and the textbook equation), and against the
 * process table of Soetaert et al. 2007, Mar. Chem. 105:30-51, as quoted in Reviews of Geophysics
 * 2020, e2019RG000681: feed to nitrate costs 1 eq a mole of nitrogen, half of what ammonium does.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "chem/carbonate.h"
#include "stock/drift.h"
#include "table.h"

static struct ts_practice practice;

static struct ts_drift_tank tank(const struct ts_drift_supply *supply)
{
	return (struct ts_drift_tank){.water = supply->water,
		.supplies = supply,
		.supply_count = 1,
		.filter_share = 1,
		.co2_most = 12,
		.co2_usual = 4,
		.co2_least = 1.5};
}

static void test_drift__repeated_changes(void **state)
{
	struct table *t = table_open("water_change_examples.csv");
	struct worst worst = {.what = "repeated water changes, relative", .limit = 1e-6};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_drift_supply supply = {.water = {.temp_c = 25, .alk_meq_l = 2}};
		struct ts_drift_tank tk;
		struct ts_drift d;

		supply.water.cl_mmol_l = table_number(t, i, "C_new");
		tk = tank(&supply);
		tk.water.cl_mmol_l = table_number(t, i, "C0");
		tk.change_share = table_number(t, i, "fraction");
		tk.change_days = 1;
		assert_int_equal(ts_drift_open(&tk, &practice, &d), TS_OK);
		for (int n = 0; n < (int)table_number(t, i, "n"); n++) {
			ts_drift_live(&d);
			ts_drift_change(&d);
		}
		worst_note_relative(&worst, d.tank.water.cl_mmol_l, table_number(t, i, "C_n"),
			table_text(t, i, "C0"));
	}
	worst_assert(&worst);
	table_close(t);
}

/* A day of a tank that holds this nitrogen as ammonium, or is fed it; KH before and after. */
static void one_day(double ammonium_mmol_l, double fed_mmol_l, struct ts_drift_day days[2])
{
	struct ts_drift_supply supply = {.water = {.temp_c = 25, .na_mmol_l = 6, .alk_meq_l = 6}};
	struct ts_drift_tank t = tank(&supply);

	t.tan_mmol_l = ammonium_mmol_l;
	t.nitrogen_mmol_l = fed_mmol_l;
	assert_int_equal(ts_drift_run(&t, &practice, 1, days, NULL), TS_OK);
	assert_true(days[1].tan_mg_l == 0);
}

static void test_drift__alkalinity_by_nitrate(void **state)
{
	struct table *t = table_open("nitrate_kh.csv");
	struct worst as_such = {.what = "KH by nitrate from ammonium, relative", .limit = 5e-4},
		     fed = {.what = "KH by nitrate from feed, half of it, relative", .limit = 5e-4};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		double n = table_number(t, i, "NO3_N_mgL") / TS_WEIGHT_N;
		const char *where = table_text(t, i, "NO3_mgL");
		struct ts_drift_day days[2];

		one_day(n, 0, days);
		worst_note_relative(
			&as_such, days[0].kh_dh - days[1].kh_dh, table_number(t, i, "dKH"), where);
		one_day(0, n, days);
		worst_note_relative(
			&fed, days[0].kh_dh - days[1].kh_dh, table_number(t, i, "dKH") / 2, where);
	}
	worst_assert(&as_such);
	worst_assert(&fed);
	table_close(t);
}

static void test_drift__alkalinity_by_nitrogen(void **state)
{
	struct table *t = table_open("nitrification.csv");
	struct worst worst = {.what = "g CaCO3 a g of nitrogen, relative", .limit = 1e-4};
	struct ts_drift_day days[2];

	(void)state;
	one_day(1, 0, days);
	worst_note_relative(&worst,
		ts_chem_mg_caco3_from_meq_l(ts_chem_meq_l_from_dkh(days[0].kh_dh - days[1].kh_dh)) /
			TS_WEIGHT_N,
		table_number(t, 0, "g_CaCO3_per_g_N"), table_text(t, 0, "equation"));
	worst_assert(&worst);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_drift__repeated_changes),
		cmocka_unit_test(test_drift__alkalinity_by_nitrate),
		cmocka_unit_test(test_drift__alkalinity_by_nitrogen),
	};

	ts_practice_defaults(&practice);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
