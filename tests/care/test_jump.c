/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One large change of water: what it does to the water that animals are in.
 */
#include "waters.h"

#include "../given.h"
#include "care/jump.h"

static struct ts_solution hard(double gh_dh, double kh_dh)
{
	struct ts_solution s;

	assert_int_equal(ts_solution_from_hardness(gh_dh, kh_dh, 25, &s), TS_OK);
	s.dic_mmol_l = 0;
	return s;
}

static struct ts_drift_tank plain(const struct ts_drift_supply *supply)
{
	return (struct ts_drift_tank){.water = supply->water,
		.supplies = supply,
		.supply_count = 1,
		.filter_share = 1,
		.change_share = 0.3,
		.change_days = 7,
		.co2_most = TS_CHEM_TANK_CO2_MOST,
		.co2_usual = TS_CHEM_TANK_CO2_USUAL,
		.co2_least = TS_CHEM_TANK_CO2_LEAST};
}

/*
 * An old tank that crashed, KH 0.2 with 3 mg/L of ammonia: half of it changed for tap water of
 * KH 10 makes about 0.05 mg/L of free ammonia out of next to nothing (computed). Before it the
 * real tank stood at pH 5.6; at KH 0.2 and a tank's usual CO2 it is 6.4.
 */
static void test_jump__large_change_over_ammonia(void **state)
{
	struct ts_drift_supply supply = {.water = hard(14, 10)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_jump jump;

	(void)state;
	t.water = hard(6, 0.2);
	t.tan_mmol_l = 3 / TS_WEIGHT_N;
	assert_int_equal(ts_drift_jump(&t, 0.5, true, table(), &jump), TS_OK);
	assert_true(jump.nh3_n_mg_l[0] < 0.006);
	assert_true(jump.nh3_n_mg_l[1] > 0.045 && jump.nh3_n_mg_l[1] < 0.065);
	near(jump.kh_dh[1], 5.1, 1e-6, 0);
	near(jump.gh_dh[1], 10, 1e-6, 0);
	assert_true(jump.ph[1] - jump.ph[0] > 1);
	assert_true(jump.conductivity_us_cm[1] > jump.conductivity_us_cm[0]);
	assert_false(jump.safe_step);
	assert_int_equal(ts_drift_jump(&t, 0.5, false, table(), &jump), TS_OK);
	assert_true(isnan(jump.nh3_n_mg_l[1]));
	assert_int_equal(ts_drift_jump(&t, 1.5, true, table(), &jump), TS_BAD_INPUT);
}

static void test_jump__change_of_like_water_is_safe(void **state)
{
	struct ts_drift_supply supply = {.water = hard(14, 10)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_jump jump;

	(void)state;
	t.water = hard(14.5, 9.5);
	assert_int_equal(ts_drift_jump(&t, 0.5, true, table(), &jump), TS_OK);
	assert_true(jump.safe_step);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_jump__large_change_over_ammonia),
		cmocka_unit_test(test_jump__change_of_like_water_is_safe),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
