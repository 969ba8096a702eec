/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Round trips of every conversion: degrees, ions, CO2, conductivity.
 */
#include "waters.h"

#include "chem/conductivity.h"

static void test_hardness__degrees_round_trip(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		double x = random_water(i).alk_meq_l;

		near(ts_chem_mmol_l_from_dh(ts_chem_dh_from_mmol_l(x)), x, 1e-14 * 20, i);
		near(ts_chem_meq_l_from_dkh(ts_chem_dkh_from_meq_l(x)), x, 1e-14 * 20, i);
		near(ts_chem_co2_mmol_l_from_mg_l(ts_chem_co2_mg_l_from_mmol_l(x)), x, 1e-14 * 20,
			i);
		near(ts_chem_ec20_from_ec25(ts_chem_ec25_from_ec20(x)), x, 1e-14 * 20, i);
		near(2 * ts_chem_mg_caco3_from_meq_l(x), ts_chem_mg_caco3_from_mmol_l(x),
			1e-12 * 20, i);
	}
}

static void test_hardness__ions_round_trip(void **state)
{
	(void)state;
	for (int ion = 0; ion < TS_ION__COUNT; ion++) {
		double mg_l = ts_chem_mg_l_from_mmol_l((enum ts_ion_id)ion, 1.25);

		near(ts_chem_mmol_l_from_mg_l((enum ts_ion_id)ion, mg_l), 1.25, 1e-15,
			(unsigned)ion);
		assert_true(ts_ions[ion].symbol && ts_ions[ion].charge != 0);
	}
}

/* One degree of hardness out of either metal: 7.147 mg/L Ca or 4.334 mg/L Mg. */
static void test_hardness__one_degree_in_metal(void **state)
{
	double mmol_l = ts_chem_mmol_l_from_dh(1);

	(void)state;
	near(ts_chem_mg_l_from_mmol_l(TS_ION_CA, mmol_l), 7.14696, 1e-5, 0);
	near(ts_chem_mg_l_from_mmol_l(TS_ION_MG, mmol_l), 4.33422, 1e-5, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_hardness__degrees_round_trip),
		cmocka_unit_test(test_hardness__ions_round_trip),
		cmocka_unit_test(test_hardness__one_degree_in_metal),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
