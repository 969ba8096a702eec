/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Salt against the check values that UNESCO prints (Technical Papers in Marine Science 44,
 * Fofonoff & Millard 1983): density of sea water at one atmosphere, and salinity 35 at the
 * conductivity ratio 1 and 15 C. Recalled from memory.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "chem/salinity.h"

static void near_to(double got, double wanted, double by)
{
	if (!(fabs(got - wanted) <= by))
		fail_msg("%.9g, wanted %.9g", got, wanted);
}

static void test_density__printed_values(void **state)
{
	(void)state;
	near_to(ts_chem_seawater_density_kg_m3(0, 5), 999.96675, 1e-5);
	near_to(ts_chem_seawater_density_kg_m3(0, 25), 997.04796, 1e-5);
	near_to(ts_chem_seawater_density_kg_m3(35, 5), 1027.67547, 1e-5);
	near_to(ts_chem_seawater_density_kg_m3(35, 25), 1023.34306, 1e-5);
}

/* Sea water of 35: 42.914 mS/cm at 15 C, and at 25 C more by the ratio rt = 1.2365. */
static void test_conductivity__of_sea_water(void **state)
{
	double sea = 42914 * (0.6766097 + 2.00564e-2 * 25 + 1.104259e-4 * 625 - 6.9698e-7 * 15625 +
				     1.0031e-9 * 390625);

	(void)state;
	near_to(ts_chem_salinity_from_conductivity_g_l(sea), 35 * 1.02334306, 0.01);
	assert_true(ts_chem_salinity_from_conductivity_g_l(0) == 0);
	near_to(ts_chem_salinity_from_conductivity_g_l(1000), 0.5, 0.03);
	assert_true(isnan(ts_chem_salinity_from_conductivity_g_l(80000)));
	for (double ec = 100; ec < 75000; ec *= 1.05)
		assert_true(ts_chem_salinity_from_conductivity_g_l(ec * 1.05) >
				    ts_chem_salinity_from_conductivity_g_l(ec) ||
			    ec * 1.05 > 75000);
}

/* There and back: the density of each salinity as its specific gravity. */
static void test_gravity__inverts_density(void **state)
{
	(void)state;
	for (double temp = 0; temp <= 40; temp += 5) {
		for (double salt = 0; salt <= 40; salt += 2.5) {
			double density = ts_chem_seawater_density_kg_m3(salt, temp);
			double gravity = density / ts_chem_seawater_density_kg_m3(0, temp);

			near_to(ts_chem_salinity_from_gravity_g_l(gravity, temp),
				salt * density / 1000, 1e-9);
		}
	}
	assert_true(ts_chem_salinity_from_gravity_g_l(0.999, 25) == 0);
	assert_true(isnan(ts_chem_salinity_from_gravity_g_l(1.05, 25)));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_density__printed_values),
		cmocka_unit_test(test_conductivity__of_sea_water),
		cmocka_unit_test(test_gravity__inverts_density),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
