/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Ammonia, nitrite, oxygen, conductivity: direction, ranges, and what is refused. Their numbers
 * are checked in tests/checks.
 */
#include "waters.h"

#include "chem/conductivity.h"
#include "chem/nitrogen.h"
#include "chem/oxygen.h"

static void test_ammonia__share_rises_with_ph_and_warmth(void **state)
{
	double before = 0, fraction;

	(void)state;
	for (double ph = 2; ph <= 12; ph += 0.5) {
		assert_int_equal(ts_chem_nh3_fraction(ph, 25, &fraction), TS_OK);
		assert_true(fraction > before && fraction < 1);
		before = fraction;
	}
	before = 0;
	for (double temp_c = 0; temp_c <= 50; temp_c += 5) {
		assert_int_equal(ts_chem_nh3_fraction(8, temp_c, &fraction), TS_OK);
		assert_true(fraction > before);
		before = fraction;
	}
}

static void test_ammonia__out_of_range_is_refused(void **state)
{
	double value = -1;

	(void)state;
	assert_int_equal(ts_chem_nh3_fraction(NAN, 25, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_nh3_fraction(7, 51, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ammonia_ccc_mg_l(6.4, 25, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ammonia_ccc_mg_l(7, 31, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ammonia_cmc_mg_l(9.1, 25, true, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ammonia_cmc_mg_l(7, NAN, false, &value), TS_BAD_INPUT);
	assert_true(value == -1);
}

/* A 3 mg/L TAN water at pH 5.6 is harmless, half of it in water of KH 10 is not: eighty-fold. */
static void test_ammonia__raising_ph_kills(void **state)
{
	double acid, mixed;

	(void)state;
	assert_int_equal(ts_chem_nh3_fraction(5.6, 25, &acid), TS_OK);
	assert_int_equal(ts_chem_nh3_fraction(7.8, 25, &mixed), TS_OK);
	assert_true(fabs(3 * acid - 0.0007) < 0.00005);
	assert_true(1.5 * mixed / (3 * acid) > 70);
}

static void test_nitrogen__feed_to_nitrate_costs_one_equivalent(void **state)
{
	double meq = 0, o2 = 0;

	(void)state;
	for (int p = TS_RELEASE; p <= TS_NITRATATION; p++) {
		meq += ts_chem_nitrogen_alk_meq((enum ts_nitrogen_process_id)p, 14.007);
		o2 += ts_chem_nitrogen_o2_mg((enum ts_nitrogen_process_id)p, 14.007);
	}
	near(meq, -1, 1e-12, 0);
	near(o2, -64, 0.01, 0);
}

/* Alkalinity is the charge of what is made and taken: it must follow from the nitrogen columns. */
static void test_nitrogen__alkalinity_follows_from_charge(void **state)
{
	(void)state;
	for (int p = 0; p < TS_NITROGEN_PROCESS__COUNT; p++) {
		const struct ts_nitrogen_process *row = &ts_nitrogen_processes[p];

		assert_true(row->name != NULL);
		near(row->alk_eq, row->tan_mol - row->no2_mol - row->no3_mol, 1e-12, (unsigned)p);
	}
}

static void test_nitrite__chloride_protects(void **state)
{
	double concern, conflict;

	(void)state;
	ts_chem_nitrite_limits(20, &concern, &conflict);
	near(conflict, 0.3, 1e-12, 0);
	near(concern, 0.1, 1e-12, 0);
	ts_chem_nitrite_limits(19.9, NULL, &conflict);
	near(conflict, 0.15, 1e-12, 0);
	ts_chem_nitrite_limits(4.9, NULL, &conflict);
	near(conflict, 0.05, 1e-12, 0);
	ts_chem_nitrite_limits(-1, NULL, &conflict);
	near(conflict, 0.05, 1e-12, 0);
	ts_chem_nitrite_limits(NAN, NULL, &conflict);
	near(conflict, 0.05, 1e-12, 0);
}

static void test_oxygen__percent_and_refusals(void **state)
{
	double mg_l, percent, value = -1;

	(void)state;
	assert_int_equal(ts_chem_oxygen_saturation_mg_l(25, 0, &mg_l), TS_OK);
	assert_int_equal(ts_chem_oxygen_percent(mg_l / 2, 25, 0, &percent), TS_OK);
	near(percent, 50, 1e-12, 0);
	assert_int_equal(ts_chem_oxygen_saturation_mg_l(41, 0, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_saturation_mg_l(25, -1, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_percent(NAN, 25, 0, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_percent(8, NAN, 0, &value), TS_BAD_INPUT);
	assert_true(value == -1);
}

/* More of any ion conducts more; pure water next to nothing (0.055 uS/cm at 25 C). */
static void test_conductivity__rises_with_ions(void **state)
{
	struct ts_solution pure = {.temp_c = 25};
	double ec, more;

	(void)state;
	assert_int_equal(ts_chem_conductivity_25_us_cm(&pure, 6.997, &ec), TS_OK);
	near(ec, 0.055, 0.002, 0);
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		double ph, co2;

		assert_int_equal(ts_chem_ph_closed(&s, &ph, &co2), TS_OK);
		assert_int_equal(ts_chem_conductivity_25_us_cm(&s, ph, &ec), TS_OK);
		s.na_mmol_l += 0.5;
		s.cl_mmol_l += 0.5;
		assert_int_equal(ts_chem_conductivity_25_us_cm(&s, ph, &more), TS_OK);
		at_most(ec + 30, more, 0, i);
	}
}

/* The plain sum is close to the full solve, and never below it by more than the acidity. */
static void test_conductivity__ionic_strength_of_all_ions(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_chem_constants k = {0};
		struct ts_ion_species now = {0};

		ts_chem_constants_at(&k, s.temp_c);
		assert_int_equal(ts_chem_speciate_closed(&k, &s, &now), TS_OK);
		near(ts_chem_ionic_strength_mol_l(&s), now.ionic_strength,
			0.25 * now.ionic_strength, i);
	}
}

/* The ends of every range themselves are answered. */
static void test_ends__are_answered(void **state)
{
	static const struct {
		double low, high;
	} ph = {2, 12}, temp = {0, 50}, epa_ph = {6.5, 9}, epa_temp = {0, 30}, oxygen = {0, 40};
	double value;

	(void)state;
	for (int i = 0; i < 4; i++) {
		double p = i & 1 ? ph.high : ph.low, t = i & 2 ? temp.high : temp.low;
		double ep = i & 1 ? epa_ph.high : epa_ph.low,
		       et = i & 2 ? epa_temp.high : epa_temp.low;
		double ot = i & 1 ? oxygen.high : oxygen.low, os = i & 2 ? 40 : 0;

		assert_int_equal(ts_chem_nh3_fraction(p, t, &value), TS_OK);
		assert_int_equal(ts_chem_ammonia_ccc_mg_l(ep, et, &value), TS_OK);
		assert_int_equal(ts_chem_ammonia_cmc_mg_l(ep, et, false, &value), TS_OK);
		assert_int_equal(ts_chem_oxygen_saturation_mg_l(ot, os, &value), TS_OK);
		assert_int_equal(ts_chem_oxygen_percent(i & 1 ? 100 : 0, ot, os, &value), TS_OK);
	}
	assert_int_equal(ts_chem_nh3_fraction(1.99, 25, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_nh3_fraction(12.01, 25, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_nh3_fraction(7, -0.1, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ammonia_ccc_mg_l(7, -0.1, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_saturation_mg_l(-0.1, 0, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_saturation_mg_l(25, 40.1, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_percent(-0.1, 25, 0, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_oxygen_percent(100.1, 25, 0, &value), TS_BAD_INPUT);
}

/* Un-ionised share at 25 C, pKa 9.246 (Emerson and others 1975): a half at that pH. */
static void test_ammonia__a_half_at_the_pka(void **state)
{
	double value;

	(void)state;
	assert_int_equal(ts_chem_nh3_fraction(9.2463, 25, &value), TS_OK);
	near(value, 0.5, 1e-3, 0);
}

/* 1.5 mol of O2 for a mol to nitrite, 0.5 on to nitrate: 3.43 and 1.14 mg a mg of nitrogen. */
static void test_nitrogen__oxygen_of_each_step(void **state)
{
	(void)state;
	near(ts_chem_nitrogen_o2_mg(TS_NITRITATION, 1), -3.427, 0.002, 0);
	near(ts_chem_nitrogen_o2_mg(TS_NITRATATION, 1), -1.142, 0.002, 0);
	near(ts_chem_nitrogen_o2_mg(TS_RELEASE, 1), 0, 0, 0);
	near(ts_chem_nitrogen_o2_mg(TS_DENITRIFICATION, 1), 0, 0, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_ammonia__share_rises_with_ph_and_warmth),
		cmocka_unit_test(test_ammonia__out_of_range_is_refused),
		cmocka_unit_test(test_ammonia__raising_ph_kills),
		cmocka_unit_test(test_nitrogen__feed_to_nitrate_costs_one_equivalent),
		cmocka_unit_test(test_nitrogen__alkalinity_follows_from_charge),
		cmocka_unit_test(test_nitrite__chloride_protects),
		cmocka_unit_test(test_oxygen__percent_and_refusals),
		cmocka_unit_test(test_conductivity__rises_with_ions),
		cmocka_unit_test(test_conductivity__ionic_strength_of_all_ions),
		cmocka_unit_test(test_ends__are_answered),
		cmocka_unit_test(test_ammonia__a_half_at_the_pka),
		cmocka_unit_test(test_nitrogen__oxygen_of_each_step),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
