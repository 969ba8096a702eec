/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: a titration of 2 mmol/L NaHCO3 with hydrochloric acid, closed and in air of
 * 420 ppm, against USGS PHREEQC 3 with database phreeqc.dat, an independent public code.
 * Tolerances: 0.02 pH away from the end point, 0.05 within 0.25 meq/L of it; 2 % CO2.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

#include "care/titrate.h"
#include "chem/carbonate.h"
#include "table.h"

#define NEAR_END_MEQ_L 0.25

static void test_titrate__soda_with_acid(void **state)
{
	struct table *t = table_open("acid_titration_phreeqc.csv");
	struct ts_practice practice;
	struct ts_solution s = {.temp_c = 25, .na_mmol_l = 2, .alk_meq_l = 2, .dic_mmol_l = 1.9808};
	struct worst far = {.what = "titration pH away from the end point", .limit = 0.02},
		     near_end = {.what = "titration pH near the end point", .limit = 0.05},
		     gas = {.what = "titration CO2, relative", .limit = 0.02},
		     alk = {.what = "titration alkalinity, meq/L", .limit = 1e-4};

	(void)state;
	ts_practice_defaults(&practice);
	for (size_t i = 0; i < t->rows; i++) {
		const char *system = table_text(t, i, "system");
		double left = table_number(t, i, "alk_meq");
		struct ts_titration_step step;
		char where[80];

		snprintf(where, sizeof where, "%s, %s meq", system,
			table_text(t, i, "HCl_meq_added"));
		assert_int_equal(ts_titrate_step(&s, table_number(t, i, "HCl_meq_added"), 4,
					 &practice, &step),
			TS_OK);
		worst_note(left > NEAR_END_MEQ_L ? &far : &near_end,
			strcmp(system, "closed") == 0 ? step.ph_closed : step.ph_air,
			table_number(t, i, "pH"), where);
		worst_note(&alk, step.alkalinity_meq_l, left, where);
		if (strcmp(system, "closed") == 0)
			worst_note_relative(
				&gas, step.co2_mg_l, table_number(t, i, "CO2_mg"), where);
	}
	worst_assert(&far);
	worst_assert(&near_end);
	worst_assert(&gas);
	worst_assert(&alk);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_titrate__soda_with_acid),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
