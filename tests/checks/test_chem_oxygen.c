/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: oxygen at saturation against the printed table of EN 25814 / ISO 5814 and its
 * salinity factor.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "chem/oxygen.h"
#include "table.h"

/* The table's factor is linear over all salinities, the equation's is not: hence compared at 35. */
static void test_oxygen__printed_table(void **state)
{
	struct table *t = table_open("oxygen_saturation.csv");
	struct worst printed = {.what = "oxygen against EN 25814, mg/L", .limit = 0.0055};
	struct worst computed = {.what = "oxygen against Benson & Krause, mg/L", .limit = 0.00051};
	struct worst salt = {.what = "loss of oxygen to 35 g/kg of salt, relative", .limit = 0.05};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		double temp_c = table_number(t, i, "t_C"), fresh, salty;
		const char *where = table_text(t, i, "t_C");

		assert_int_equal(ts_chem_oxygen_saturation_mg_l(temp_c, 0, &fresh), TS_OK);
		assert_int_equal(ts_chem_oxygen_saturation_mg_l(temp_c, 35, &salty), TS_OK);
		worst_note(&printed, fresh, table_number(t, i, "printed_EN25814"), where);
		worst_note(&computed, fresh, table_number(t, i, "computed_Benson_Krause"), where);
		worst_note_relative(&salt, (fresh - salty) / 35,
			table_number(t, i, "salinity_correction_K"), where);
	}
	worst_assert(&printed);
	worst_assert(&computed);
	worst_assert(&salt);
	table_close(t);
}

/* The equation of APHA evaluated by a public package: 8.2635 mg/L at 25 C, 14.6208 at 0 C. */
static void test_oxygen__four_decimals(void **state)
{
	struct worst worst = {.what = "oxygen at 0, 10, 20, 25 C, mg/L", .limit = 6e-5};
	static const double known[][2] = {{0, 14.6208}, {10, 11.2879}, {20, 9.0924}, {25, 8.2635}};

	(void)state;
	for (int i = 0; i < 4; i++) {
		double got;

		assert_int_equal(ts_chem_oxygen_saturation_mg_l(known[i][0], 0, &got), TS_OK);
		worst_note(&worst, got, known[i][1], "fresh");
	}
	worst_assert(&worst);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_oxygen__printed_table),
		cmocka_unit_test(test_oxygen__four_decimals),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
