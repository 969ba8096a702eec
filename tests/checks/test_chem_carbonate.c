/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Outside check: pH and calcite of simple waters against published measurements. What PHREEQC
 * computed stands in test_chem_phreeqc.c.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>

#include <cmocka.h>

#include "chem/carbonate.h"
#include "chem/minerals.h"
#include "table.h"

/*
 * Bogan, Ohde, Arakaki, Mori & McLeod 2009, Water Air Soil Pollut. 196:263-271 (abstract): pure
 * water and CO2 at 25 C, pH to two decimals; calcium at calcite saturation, umol/kg.
 */
static void test_carbonate__bogan_2009(void **state)
{
	static const struct {
		double ppm, ph, ca_umol;
	} printed[] = {{280, 5.68, 466}, {384, 5.62, 516}, {700, 5.49, 633}};
	struct worst ph_worst = {.what = "Bogan 2009, pH of rain-like water", .limit = 0.01};
	struct worst ca_worst = {
		.what = "Bogan 2009, calcium at saturation, relative", .limit = 0.03};

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		struct ts_solution s = {.temp_c = 25}, lime;
		struct ts_chem_constants k = {0};
		double co2 = ts_chem_gas_co2_mmol_l(25, 1e-6 * printed[i].ppm), ph;

		assert_int_equal(ts_chem_ph_at_co2(&s, co2, &ph), TS_OK);
		ts_chem_constants_at(&k, 25);
		assert_int_equal(ts_chem_saturate_open(&k, &s, TS_CALCITE, co2, &lime), TS_OK);
		worst_note(&ph_worst, ph, printed[i].ph, "25 C");
		worst_note_relative(&ca_worst, 1000 * lime.ca_mmol_l, printed[i].ca_umol, "25 C");
	}
	worst_assert(&ph_worst);
	worst_assert(&ca_worst);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_carbonate__bogan_2009),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
