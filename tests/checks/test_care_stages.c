/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside checks of stages: a series of equal water changes against its closed form
 * (water_change_examples.csv, computed elsewhere), and the ammonia that half a tank of buffered
 * water sets free in a crashed one, against the table of Emerson et al. 1975, J. Fish. Res. Board
 * Can. 32:2379-2383.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "care/stages.h"
#include "chem/carbonate.h"
#include "table.h"

static void test_changes__closed_form(void **state)
{
	struct table *t = table_open("water_change_examples.csv");
	struct worst worst = {.what = "after a series of equal changes", .limit = 1e-6};

	(void)state;
	for (size_t i = 0; i < t->rows; i++) {
		struct ts_solution tank = {.temp_c = 25, .no3_mmol_l = table_number(t, i, "C0")};
		struct ts_solution fresh = {
			.temp_c = 25, .no3_mmol_l = table_number(t, i, "C_new")};
		const struct ts_solution *waters[] = {&tank, &fresh};
		double f = table_number(t, i, "fraction"), parts[] = {1 - f, f};

		for (double n = table_number(t, i, "n"); n > 0; n--)
			ts_chem_mix(waters, parts, 2, &tank);
		worst_note(&worst, tank.no3_mmol_l, table_number(t, i, "C_n"), "series");
	}
	worst_assert(&worst);
	table_close(t);
}

/* Percent un-ionised in the table at 25 C, between its rows of 0.1 pH. */
static double emerson(struct table *t, double ph)
{
	for (size_t i = 0; i + 1 < t->rows; i++) {
		double low = table_number(t, i, "pH"), high = table_number(t, i + 1, "pH");

		if (ph < low || ph > high)
			continue;
		return table_number(t, i, "25C") +
		       (ph - low) / (high - low) *
			       (table_number(t, i + 1, "25C") - table_number(t, i, "25C"));
	}
	return (double)NAN;
}

/* KH 0.2, TAN 3; half is changed for water of KH 10: 0.054 mg/L un-ionised. */
static void test_crash__half_a_tank_sets_the_poison_free(void **state)
{
	struct table *t = table_open("emerson1975_percent_nh3.csv");
	struct ts_solution crashed, tap, mixed;
	const struct ts_solution *waters[] = {&crashed, &tap};
	const double half[] = {1, 1};
	struct ts_stage_water after;
	struct worst worst = {
		.what = "un-ionised ammonia after half a change, mg/L", .limit = 5e-4};

	(void)state;
	assert_int_equal(ts_solution_from_hardness(10, 0.2, 25, &crashed), TS_OK);
	assert_int_equal(ts_solution_from_hardness(10, 10, 25, &tap), TS_OK);
	ts_chem_mix(waters, half, 2, &mixed);
	ts_stage_water_of(&mixed, 1.5, &after);
	worst_note(&worst, after.nh3_mg_l, 1.5 * emerson(t, after.ph) / 100, "KH 5.1");
	worst_assert(&worst);
	assert_true(fabs(after.nh3_mg_l - 0.054) < 0.004);
	table_close(t);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_changes__closed_form),
		cmocka_unit_test(test_crash__half_a_tank_sets_the_poison_free),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
