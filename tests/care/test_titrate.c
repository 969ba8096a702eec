/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What acid does to every water, and the evenings of somebody who chases a pH. The curves against
 * PHREEQC are in tests/checks/test_titrate.c.
 */
#include "waters.h"

#include "../given.h"
#include "care/titrate.h"
#include "water/gas.h"

#define USUAL TS_CHEM_TANK_CO2_USUAL
/* Two solves may be off by 7e-6 pH each. */
#define PH_EQUAL 2e-5

static struct ts_solution hard(double gh_dh, double kh_dh)
{
	struct ts_solution s;

	assert_int_equal(ts_solution_from_hardness(gh_dh, kh_dh, 25, &s), TS_OK);
	return s;
}

static void test_titrate__acid_never_raises_ph(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_titration_step steps[12];
		size_t count;

		assert_int_equal(
			ts_titrate(&s, 0.01 + s.alk_meq_l / 8, 12, USUAL, table(), steps, &count),
			TS_OK);
		assert_true(count > 8);
		for (size_t k = 1; k < count; k++) {
			at_most(steps[k].ph_closed, steps[k - 1].ph_closed, 0, i);
			at_most(steps[k].ph_tank, steps[k - 1].ph_tank, 0, i);
			at_most(steps[k].ph_air, steps[k - 1].ph_air, 0, i);
			at_most(steps[k - 1].co2_mg_l, steps[k].co2_mg_l, 1e-9, i);
		}
	}
}

static void test_titrate__base_never_lowers_ph(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_titration_step steps[6];
		size_t count;

		assert_int_equal(ts_titrate(&s, -0.05, 6, USUAL, table(), steps, &count), TS_OK);
		for (size_t k = 1; k < count; k++) {
			at_most(steps[k - 1].ph_closed, steps[k].ph_closed, 0, i);
			at_most(steps[k - 1].ph_air, steps[k].ph_air, 0, i);
		}
	}
}

/* Closed, ten doses are one dose of their sum: only what is in the water counts. */
static void test_titrate__doses_add_up(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i), dosed = s;
		struct ts_titration_step one, rest;
		double sum = 0;

		for (int k = 1; k <= 10; k++) {
			double dose = s.alk_meq_l * k / 60;

			dosed.cl_mmol_l += dose;
			dosed.alk_meq_l -= dose;
			sum += dose;
		}
		assert_int_equal(ts_titrate_step(&s, sum, USUAL, table(), &one), TS_OK);
		assert_int_equal(ts_titrate_step(&dosed, 0, USUAL, table(), &rest), TS_OK);
		near(one.ph_closed, rest.ph_closed, PH_EQUAL, i);
		near(one.alkalinity_meq_l, rest.alkalinity_meq_l, 1e-9, i);
		near(one.co2_mg_l, rest.co2_mg_l, 1e-4 * one.co2_mg_l, i);
	}
}

/* Each meq/L of strong acid frees up to 44 mg/L of CO2, never more. */
static void test_titrate__acid_frees_its_own_co2(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		struct ts_titration_step before, after;
		double dose = s.alk_meq_l / 3;

		assert_int_equal(ts_titrate_step(&s, 0, USUAL, table(), &before), TS_OK);
		assert_int_equal(ts_titrate_step(&s, dose, USUAL, table(), &after), TS_OK);
		at_most(after.co2_mg_l - before.co2_mg_l, 44.01 * dose, 1e-3, i);
		near(before.alkalinity_meq_l - after.alkalinity_meq_l, dose, 1e-12, i);
	}
}

static void test_titrate__danger_by_co2(void **state)
{
	(void)state;
	assert_int_equal(ts_co2_danger(19.9, table()), TS_CO2_BORNE);
	assert_int_equal(ts_co2_danger(20, table()), TS_CO2_CONCERN);
	assert_int_equal(ts_co2_danger(30, table()), TS_CO2_DANGER);
	assert_int_equal(ts_co2_danger(NAN, table()), TS_CO2_DANGER);
}

/*
 * Angelfish water, GH 9, KH 9, at a steady 8.0, chased to 7.0: half a meq/L of acid each evening,
 * 24 mg/L CO2 at once, 8.0 again by morning, KH 7.6 after one dose, none left within a week
 * (computed from the published equations).
 */
static void test_titrate__chasing_angelfish_water(void **state)
{
	struct ts_solution s = hard(9, 9);
	struct ts_titration_nights n = {0};

	(void)state;
	assert_int_equal(ts_titrate_nights(&s, 7, TS_KEEPER_SAME_DOSE, USUAL, table(), &n), TS_OK);
	assert_true(fabs(n.ph_start - 8.05) < 0.05);
	assert_true(fabs(n.nights[0].dose_meq_l - 0.5) < 0.05);
	assert_true(fabs(n.nights[0].evening.ph_closed - 7) < 1e-3);
	assert_true(fabs(n.nights[0].evening.co2_mg_l - 24) < 1);
	assert_int_equal(n.nights[0].evening.danger, TS_CO2_CONCERN);
	assert_true(fabs(n.nights[0].evening.kh_dh - 7.6) < 0.15);
	assert_true(fabs(n.nights[0].evening.ph_tank - 8.0) < 0.05);
	/* Within a week: six doses of 0.535 are just the 3.21 meq/L of KH 9. */
	assert_int_equal(n.gone_day, 6);
	assert_true(n.floor_day > 0 && n.floor_day <= n.gone_day);
	assert_int_equal(n.count, 7);
	assert_true(n.nights[6].evening.ph_closed < 4.5);
}

/* Dosed by test, the buffer goes down to where the tank itself stands at the wanted pH. */
static void test_titrate__dosed_by_test_ends_at_the_wanted_ph(void **state)
{
	struct ts_solution s = hard(9, 9);
	struct ts_titration_nights n = {0};
	const struct ts_titration_night *last;

	(void)state;
	assert_int_equal(ts_titrate_nights(&s, 7, TS_KEEPER_BY_TEST, USUAL, table(), &n), TS_OK);
	last = &n.nights[n.count - 1];
	assert_int_equal(n.gone_day, 0);
	assert_true(n.floor_day > 7 && n.floor_day < 21);
	assert_true(fabs(last->evening.ph_tank - 7) < 0.05);
	assert_true(last->evening.kh_dh < 1);
	for (unsigned k = 1; k < n.count; k++)
		assert_true(n.nights[k].dose_meq_l < n.nights[k - 1].dose_meq_l);
}

static unsigned day_or_never(unsigned day)
{
	return day ? day : TS_TITRATION_NIGHTS_MOST + 1;
}

static void test_titrate__more_buffer_never_brings_collapse_forward(void **state)
{
	(void)state;
	for (unsigned i = 0; i < 40; i++) {
		unsigned gone = 0, floor = 0, by_test = 0;

		for (double kh = 1; kh <= 16; kh += 0.5) {
			struct ts_solution s = hard(2 + i % 15, kh);
			struct ts_titration_nights n = {0};

			assert_int_equal(
				ts_titrate_nights_dose(&s, 0.1 + 0.03 * i, USUAL, table(), &n),
				TS_OK);
			assert_true(day_or_never(n.gone_day) >= gone);
			assert_true(day_or_never(n.floor_day) >= floor);
			gone = day_or_never(n.gone_day);
			floor = day_or_never(n.floor_day);
			n = (struct ts_titration_nights){0};
			if (ts_titrate_nights(&s, 6.5, TS_KEEPER_BY_TEST, USUAL, table(), &n))
				continue;
			assert_true(day_or_never(n.floor_day) >= by_test);
			by_test = day_or_never(n.floor_day);
		}
	}
}

/* Base: the tank takes its CO2 back from the air, and the buffer climbs instead of going. */
static void test_titrate__base_is_pulled_back_too(void **state)
{
	struct ts_solution s = hard(9, 4);
	struct ts_titration_nights n = {0};

	(void)state;
	assert_int_equal(
		ts_titrate_nights(&s, 8.5, TS_KEEPER_SAME_DOSE, USUAL, table(), &n), TS_OK);
	assert_true(n.nights[0].dose_meq_l < 0);
	assert_true(n.nights[0].evening.ph_tank < 8);
	assert_true(n.nights[0].evening.kh_dh > 4);
	assert_int_equal(n.gone_day, 0);
}

static void test_titrate__nothing_to_chase(void **state)
{
	struct ts_solution s = hard(9, 9);
	struct ts_titration_nights n = {.count = 77};

	(void)state;
	assert_int_equal(
		ts_titrate_nights(&s, 8.05, TS_KEEPER_SAME_DOSE, USUAL, table(), &n), TS_NO);
	assert_int_equal(
		ts_titrate_nights(&s, 3, TS_KEEPER_SAME_DOSE, USUAL, table(), &n), TS_BAD_INPUT);
	assert_int_equal(
		ts_titrate_nights(&s, NAN, TS_KEEPER_SAME_DOSE, USUAL, table(), &n), TS_BAD_INPUT);
	assert_int_equal(ts_titrate_nights_dose(&s, 0, USUAL, table(), &n), TS_BAD_INPUT);
	assert_int_equal(n.count, 77);
}

static void test_titrate__out_of_range_is_refused(void **state)
{
	static const double bad[] = {NAN, INFINITY, -INFINITY, 500, -500};
	struct ts_solution s = hard(9, 9);
	struct ts_titration_step step = {.kh_dh = 77};
	size_t count = 77;

	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct ts_solution water = s;

		assert_int_equal(ts_titrate_step(&s, bad[i], USUAL, table(), &step), TS_BAD_INPUT);
		water.alk_meq_l = bad[i];
		assert_int_equal(ts_titrate_step(&water, 1, USUAL, table(), &step), TS_BAD_INPUT);
	}
	assert_int_equal(ts_titrate(&s, NAN, 1, USUAL, table(), &step, &count), TS_BAD_INPUT);
	assert_true(count == 77);
}

static struct ts_profile reading(double ph)
{
	struct ts_profile p = {.ph_read = ph, .ph_read_low = ph - 0.3, .ph_read_high = ph + 0.3};

	return p;
}

/* A tank that was read is taken as it reads; one that was not as a usual one. */
static void test_titrate__own_level_of_co2(void **state)
{
	struct ts_solution s = hard(9, 9);
	struct ts_profile usual = reading(8), gassy = reading(7), none = reading(NAN);
	double ph;

	(void)state;
	assert_true(ts_tank_co2_times_air(&usual, &s, false) == USUAL);
	/* The level is that at which this water has the pH that was read. */
	assert_int_equal(
		ts_chem_ph_at_co2(&s,
			ts_tank_co2_times_air(&usual, &s, true) * ts_chem_air_co2_mmol_l(s.temp_c),
			&ph),
		TS_OK);
	assert_true(fabs(ph - 8) < 0.001);
	assert_true(ts_tank_co2_times_air(&none, &s, true) == USUAL);
	assert_true(ts_tank_co2_times_air(&gassy, &s, false) == USUAL);
	assert_true(ts_tank_co2_times_air(&gassy, &s, true) == 30);
	gassy = reading(7.3);
	assert_true(fabs(ts_tank_co2_times_air(&gassy, &s, true) - 22.9) < 0.5);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_titrate__acid_never_raises_ph),
		cmocka_unit_test(test_titrate__base_never_lowers_ph),
		cmocka_unit_test(test_titrate__doses_add_up),
		cmocka_unit_test(test_titrate__acid_frees_its_own_co2),
		cmocka_unit_test(test_titrate__danger_by_co2),
		cmocka_unit_test(test_titrate__chasing_angelfish_water),
		cmocka_unit_test(test_titrate__dosed_by_test_ends_at_the_wanted_ph),
		cmocka_unit_test(test_titrate__more_buffer_never_brings_collapse_forward),
		cmocka_unit_test(test_titrate__base_is_pulled_back_too),
		cmocka_unit_test(test_titrate__nothing_to_chase),
		cmocka_unit_test(test_titrate__own_level_of_co2),
		cmocka_unit_test(test_titrate__out_of_range_is_refused),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
