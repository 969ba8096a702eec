/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Properties of the pH functions that hold for every water, the tank's pH interval, and what is
 * refused. Numbers from outside are in tests/checks/test_chem_carbonate.c.
 */
#include "waters.h"

#include "chem/conductivity.h"
#include "chem/hardness.h"

#include "chem/substances.h"

/* The solver is good to 4e-6 pH; each of two calls may be off by that. */
#define PH_EQUAL 1e-5
#define SHARE_EQUAL 5e-5

static void test_carbonate__three_ways_agree(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		double ph, co2, ph_again, co2_again, dic;

		assert_int_equal(ts_chem_ph_closed(&s, &ph, &co2), TS_OK);
		assert_int_equal(ts_chem_ph_at_co2(&s, co2, &ph_again), TS_OK);
		assert_int_equal(ts_chem_co2_from_ph(&s, ph, &co2_again), TS_OK);
		assert_int_equal(ts_chem_dic_from_ph(&s, ph, &dic), TS_OK);
		near(ph_again, ph, PH_EQUAL, i);
		near(co2_again, co2, SHARE_EQUAL * co2, i);
		near(dic, s.dic_mmol_l, SHARE_EQUAL * s.dic_mmol_l, i);
	}
}

static void test_carbonate__acid_never_raises_ph(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		double open_before, closed_before, co2 = ts_chem_air_co2_mmol_l(s.temp_c), gas;

		assert_int_equal(ts_chem_ph_at_co2(&s, co2, &open_before), TS_OK);
		assert_int_equal(ts_chem_ph_closed(&s, &closed_before, &gas), TS_OK);
		for (int dose = 0; dose < 10; dose++) {
			double open, closed;

			ts_chem_dissolve(&s, ts_chem_substance("HCl"), 0.02 + s.alk_meq_l / 20, &s);
			assert_int_equal(ts_chem_ph_at_co2(&s, co2, &open), TS_OK);
			assert_int_equal(ts_chem_ph_closed(&s, &closed, &gas), TS_OK);
			at_most(open, open_before, 0, i);
			at_most(closed, closed_before, 0, i);
			open_before = open;
			closed_before = closed;
		}
	}
}

static void test_carbonate__co2_never_raises_ph(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		double before = 14;

		for (double co2 = 0.005; co2 < 3; co2 *= 2) {
			double ph;

			assert_int_equal(ts_chem_ph_at_co2(&s, co2, &ph), TS_OK);
			at_most(ph, before, 0, i);
			before = ph;
		}
	}
}

/* Airing a water moves carbon, not alkalinity: summed over the species it is what went in. */
static void test_carbonate__gas_exchange_keeps_alkalinity(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_chem_constants k = {0};
		struct ts_ion_species now = {0};
		double alk;

		ts_chem_constants_at(&k, s.temp_c);
		assert_int_equal(
			ts_chem_speciate_at_co2(&k, &s, ts_chem_air_co2_mmol_l(s.temp_c), &now),
			TS_OK);
		alk = now.hco3 + now.ca_hco3 + now.mg_hco3 +
		      2 * (now.co3 + now.ca_co3 + now.mg_co3) + now.oh - now.h;
		near(1000 * alk, s.alk_meq_l, SHARE_EQUAL * (s.alk_meq_l + 0.1), i);
		s.dic_mmol_l = ts_chem_species_dic_mmol_l(&now);
		assert_int_equal(ts_chem_speciate_closed(&k, &s, &now), TS_OK);
		near(1000 * now.co2, ts_chem_air_co2_mmol_l(s.temp_c), SHARE_EQUAL * 1000 * now.co2,
			i);
	}
}

static void test_carbonate__index_rises_with_ph(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i += 10) {
		struct ts_solution s = random_water(i);
		double before = -99, calcite, aragonite;

		for (double ph = 6; ph < 9; ph += 0.25) {
			if (ts_chem_calcite_si(&s, ph, &calcite) != TS_OK)
				continue;
			assert_int_equal(ts_chem_aragonite_si(&s, ph, &aragonite), TS_OK);
			at_most(before, calcite, 0, i);
			at_most(aragonite, calcite, 0, i);
			before = calcite;
		}
	}
}

/* KH 9 at 25 C: 7.6 .. 8.07 .. 8.5, computed from the published equations for soda water. */
static void test_carbonate__tank_ph_of_kh_9(void **state)
{
	struct ts_solution s;
	double low, mid, high;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(0, 9, 25, &s), TS_OK);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_OK);
	assert_true(fabs(low - 7.6) < 0.02);
	assert_true(fabs(mid - 8.07) < 0.01);
	assert_true(fabs(high - 8.5) < 0.02);
}

/* Hard tap water, GH 14, KH 9: about 8.0; its calcium lowers all three by 0.03. */
static void test_carbonate__tank_ph_of_hard_tap(void **state)
{
	struct ts_solution s;
	double low, mid, high;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(14, 9, 25, &s), TS_OK);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_OK);
	assert_true(fabs(low - 7.57) < 0.01);
	assert_true(fabs(mid - 8.04) < 0.01);
	assert_true(fabs(high - 8.44) < 0.01);
}

/* Limed reservoir water of pH 9.1, KH 1.3, GH 2 airs down to about 7.2 (6.8-7.7). */
static void test_carbonate__tank_ph_of_limed_reservoir(void **state)
{
	struct ts_solution s;
	double low, mid, high;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(2, 1.3, 25, &s), TS_OK);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_OK);
	assert_true(fabs(low - 6.8) < 0.05 && fabs(mid - 7.2) < 0.05 && fabs(high - 7.7) < 0.05);
}

/* Where lime would fall out the upper end stops at a calcite index of 1.3. */
static void test_carbonate__tank_ph_capped_by_lime(void **state)
{
	struct ts_solution s;
	double low, mid, high, si;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(18, 14, 25, &s), TS_OK);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_OK);
	assert_int_equal(ts_chem_calcite_si(&s, high, &si), TS_OK);
	assert_true(fabs(si - 1.3) < 1e-4);
	assert_true(low < mid && mid < high);
}

static void test_carbonate__tank_ph_refused_without_buffer(void **state)
{
	struct ts_solution s;
	double low = 1, mid = 2, high = 3;

	(void)state;
	assert_int_equal(ts_solution_from_hardness(4, 0.49, 25, &s), TS_OK);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_NO);
	assert_true(low == 1 && mid == 2 && high == 3);
	assert_int_equal(ts_solution_from_hardness(4, 0.51, 25, &s), TS_OK);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &mid, &high), TS_OK);
}

/* pH 10.5 cannot be with 0.01 meq/L of alkalinity: the hydroxide alone is more. */
static void test_carbonate__contradiction_is_no(void **state)
{
	struct ts_solution s = {.temp_c = 25, .alk_meq_l = 0.01};
	double value = -1;

	(void)state;
	assert_int_equal(ts_chem_co2_from_ph(&s, 10.5, &value), TS_NO);
	assert_int_equal(ts_chem_dic_from_ph(&s, 10.5, &value), TS_NO);
	assert_int_equal(ts_chem_calcite_si(&s, 10.5, &value), TS_NO);
	assert_true(value == -1);
}

static void refused(const struct ts_solution *s, double ph, double co2)
{
	double value = -7, other = -7, third = -7;

	assert_int_equal(ts_chem_co2_from_ph(s, ph, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_dic_from_ph(s, ph, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_calcite_si(s, ph, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_aragonite_si(s, ph, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ph_at_co2(s, co2, &value), TS_BAD_INPUT);
	if (ts_solution_check(s) != TS_OK) {
		assert_int_equal(ts_chem_ph_closed(s, &value, &other), TS_BAD_INPUT);
		assert_int_equal(ts_chem_tank_ph(s, &value, &other, &third), TS_BAD_INPUT);
	}
	assert_true(value == -7 && other == -7 && third == -7);
}

static void test_carbonate__out_of_range_is_refused(void **state)
{
	static const double bad[] = {NAN, INFINITY, -INFINITY, -30, 1e6};
	const struct ts_solution good = {.temp_c = 25, .alk_meq_l = 2, .dic_mmol_l = 2};

	(void)state;
	for (size_t i = 0; i < sizeof(bad) / sizeof(bad[0]); i++) {
		struct ts_solution s = good;

		refused(&good, bad[i], bad[i]);
		s.temp_c = bad[i];
		refused(&s, 7, 0.1);
		s = good;
		s.ca_mmol_l = bad[i];
		refused(&s, 7, 0.1);
		s = good;
		s.no3_mmol_l = bad[i];
		refused(&s, 7, 0.1);
		s = good;
		s.alk_meq_l = bad[i];
		refused(&s, 7, 0.1);
	}
}

/* Salty beyond the Davies equation: sea water of 500 mmol/L is refused by its ions already. */
static void test_carbonate__too_salty_is_refused(void **state)
{
	struct ts_solution s = {.temp_c = 25, .na_mmol_l = 100, .cl_mmol_l = 100, .alk_meq_l = 5};

	(void)state;
	refused(&s, 8, 0.1);
}

/* Where pH or CO2 is given, the inorganic carbon of the water is not asked for: not known will do.
 */
static void test_carbonate__own_carbon_is_not_needed(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i += 7) {
		struct ts_solution s = random_water(i), unknown = s;
		double a[8], b[8], air = ts_chem_air_co2_mmol_l(s.temp_c);

		unknown.dic_mmol_l = (double)NAN;
		assert_int_equal(ts_chem_co2_from_ph(&s, 7.5, &a[0]), TS_OK);
		assert_int_equal(ts_chem_co2_from_ph(&unknown, 7.5, &b[0]), TS_OK);
		assert_int_equal(ts_chem_dic_from_ph(&s, 7.5, &a[1]), TS_OK);
		assert_int_equal(ts_chem_dic_from_ph(&unknown, 7.5, &b[1]), TS_OK);
		assert_int_equal(ts_chem_calcite_si(&s, 7.5, &a[2]), TS_OK);
		assert_int_equal(ts_chem_calcite_si(&unknown, 7.5, &b[2]), TS_OK);
		assert_int_equal(ts_chem_ph_at_co2(&s, air, &a[3]), TS_OK);
		assert_int_equal(ts_chem_ph_at_co2(&unknown, air, &b[3]), TS_OK);
		assert_int_equal(ts_chem_conductivity_25_us_cm(&s, 7.5, &a[4]), TS_OK);
		assert_int_equal(ts_chem_conductivity_25_us_cm(&unknown, 7.5, &b[4]), TS_OK);
		s.alk_meq_l = unknown.alk_meq_l = fmax(s.alk_meq_l, 0.2);
		assert_int_equal(ts_chem_tank_ph(&s, &a[5], &a[6], &a[7]), TS_OK);
		assert_int_equal(ts_chem_tank_ph(&unknown, &b[5], &b[6], &b[7]), TS_OK);
		for (int k = 0; k < 8; k++)
			near(b[k], a[k], 1e-12 * fabs(a[k]), i);
	}
}

/* From KH 0.5 dH on a tank's pH can be told, and not before. */
static void test_carbonate__tank_ph_from_half_a_degree_on(void **state)
{
	struct ts_solution s = {.temp_c = 25};
	double low, middle, high;

	(void)state;
	s.alk_meq_l = s.na_mmol_l = ts_chem_meq_l_from_dkh(0.5) * (1 + 1e-12);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &middle, &high), TS_OK);
	assert_true(low < middle && middle < high);
	s.alk_meq_l = s.na_mmol_l = ts_chem_meq_l_from_dkh(0.499);
	assert_int_equal(ts_chem_tank_ph(&s, &low, &middle, &high), TS_NO);
}

/* The ends of pH and CO2 themselves are answered. */
static void test_carbonate__ends_are_answered(void **state)
{
	struct ts_solution lye = {.temp_c = 25, .na_mmol_l = 20, .alk_meq_l = 20};
	struct ts_solution acid = {.temp_c = 25, .cl_mmol_l = 5, .alk_meq_l = -5};
	struct ts_solution soda = {.temp_c = 25, .na_mmol_l = 20, .alk_meq_l = 20};
	double value;

	(void)state;
	assert_int_equal(ts_chem_co2_from_ph(&lye, 12, &value), TS_OK);
	assert_int_equal(ts_chem_co2_from_ph(&lye, 12.01, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_co2_from_ph(&acid, 2, &value), TS_OK);
	assert_int_equal(ts_chem_co2_from_ph(&acid, 1.99, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ph_at_co2(&soda, 100, &value), TS_OK);
	assert_int_equal(ts_chem_ph_at_co2(&soda, 100.1, &value), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ph_at_co2(&soda, 0, &value), TS_BAD_INPUT);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_carbonate__three_ways_agree),
		cmocka_unit_test(test_carbonate__acid_never_raises_ph),
		cmocka_unit_test(test_carbonate__co2_never_raises_ph),
		cmocka_unit_test(test_carbonate__gas_exchange_keeps_alkalinity),
		cmocka_unit_test(test_carbonate__index_rises_with_ph),
		cmocka_unit_test(test_carbonate__tank_ph_of_kh_9),
		cmocka_unit_test(test_carbonate__tank_ph_of_hard_tap),
		cmocka_unit_test(test_carbonate__tank_ph_of_limed_reservoir),
		cmocka_unit_test(test_carbonate__tank_ph_capped_by_lime),
		cmocka_unit_test(test_carbonate__tank_ph_refused_without_buffer),
		cmocka_unit_test(test_carbonate__contradiction_is_no),
		cmocka_unit_test(test_carbonate__out_of_range_is_refused),
		cmocka_unit_test(test_carbonate__too_salty_is_refused),
		cmocka_unit_test(test_carbonate__own_carbon_is_not_needed),
		cmocka_unit_test(test_carbonate__tank_ph_from_half_a_degree_on),
		cmocka_unit_test(test_carbonate__ends_are_answered),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
