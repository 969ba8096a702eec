/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Lime dissolving and falling out: where it ends the index is 0, and what left the water is
 * what the mineral gained.
 */
#include "waters.h"

#include "chem/minerals.h"

static struct ts_chem_constants published_at(double temp_c)
{
	struct ts_chem_constants constants = {0};

	ts_chem_constants_at(&constants, temp_c);
	return constants;
}

/* The published constants at the temperature of a water. */
#define AT(s) (&(const struct ts_chem_constants[]){published_at((s).temp_c)}[0])

static double index_of(const struct ts_solution *s, double ph, enum ts_mineral mineral)
{
	double si;

	assert_int_equal(mineral == TS_CALCITE ? ts_chem_calcite_si(s, ph, &si)
					       : ts_chem_aragonite_si(s, ph, &si),
		TS_OK);
	return si;
}

static void test_minerals__closed_ends_at_saturation(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i), after;
		enum ts_mineral mineral = i % 2 ? TS_CALCITE : TS_ARAGONITE;
		double ph, co2, gained;

		assert_int_equal(ts_chem_saturate_closed(AT(s), &s, mineral, &after), TS_OK);
		assert_int_equal(ts_chem_ph_closed(&after, &ph, &co2), TS_OK);
		near(index_of(&after, ph, mineral), 0, 1e-3, i);
		gained = after.ca_mmol_l - s.ca_mmol_l;
		near(after.alk_meq_l - s.alk_meq_l, 2 * gained, 1e-12, i);
		near(after.dic_mmol_l - s.dic_mmol_l, gained, 1e-12, i);
		near(after.mg_mmol_l, s.mg_mmol_l, 0, i);
	}
}

static void test_minerals__open_ends_at_saturation(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i), after;
		enum ts_mineral mineral = i % 2 ? TS_CALCITE : TS_ARAGONITE;
		double level = ts_chem_air_co2_mmol_l(s.temp_c) * (1 + i % 12), ph, co2;

		assert_int_equal(ts_chem_saturate_open(AT(s), &s, mineral, level, &after), TS_OK);
		assert_int_equal(ts_chem_ph_closed(&after, &ph, &co2), TS_OK);
		near(co2, level, 1e-4 * level, i);
		near(index_of(&after, ph, mineral), 0, 1e-3, i);
	}
}

/* Potential and index have the same sign: above 0 it falls out. */
static void test_minerals__ccpp_has_the_sign_of_the_index(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i++) {
		struct ts_solution s = random_water(i);
		double ph, co2, ccpp, si;

		assert_int_equal(ts_chem_ph_closed(&s, &ph, &co2), TS_OK);
		si = index_of(&s, ph, TS_CALCITE);
		if (fabs(si) < 0.01)
			continue;
		assert_int_equal(ts_chem_ccpp_mg_l(AT(s), &s, &ccpp), TS_OK);
		if ((ccpp > 0) != (si > 0))
			fail_msg("water %u: CCPP %g, index %g", i, ccpp, si);
	}
}

/*
 * Gravel of aragonite stops early, at 25 C and from pure water: 3.4 dKH in air; the rule that
 * calcium goes with the cube root of CO2 makes that 5.4 at 4 times and 7.8 at 12 times the CO2 of
 * air, and activity and ion pairs add some hundredths to each.
 */
static void test_minerals__aragonite_gravel_stops_early(void **state)
{
	static const double known[][3] = {{1, 3.4, 0.05}, {4, 5.4, 0.2}, {12, 7.8, 0.4}};
	const struct ts_solution pure = {.temp_c = 25};

	(void)state;
	for (int i = 0; i < 3; i++) {
		double co2 = known[i][0] * ts_chem_air_co2_mmol_l(25);
		struct ts_solution after;

		assert_int_equal(
			ts_chem_saturate_open(AT(pure), &pure, TS_ARAGONITE, co2, &after), TS_OK);
		near(ts_chem_dkh_from_meq_l(after.alk_meq_l), known[i][1], known[i][2],
			(unsigned)i);
	}
}

static void test_minerals__refused_untouched(void **state)
{
	struct ts_solution s = {.temp_c = NAN, .dic_mmol_l = 1}, after = {.temp_c = 7};
	double ccpp = -3;

	(void)state;
	assert_int_equal(ts_chem_saturate_closed(AT(s), &s, TS_CALCITE, &after), TS_BAD_INPUT);
	assert_int_equal(ts_chem_saturate_open(AT(s), &s, TS_CALCITE, 0.1, &after), TS_BAD_INPUT);
	assert_int_equal(ts_chem_ccpp_mg_l(AT(s), &s, &ccpp), TS_BAD_INPUT);
	s.temp_c = 25;
	assert_int_equal(ts_chem_saturate_open(AT(s), &s, TS_CALCITE, 0, &after), TS_BAD_INPUT);
	assert_int_equal(ts_chem_saturate_open(AT(s), &s, TS_CALCITE, NAN, &after), TS_BAD_INPUT);
	assert_true(after.temp_c == 7 && ccpp == -3);
}

/* Where the air sets the carbon, that of the water is not asked for. */
static void test_minerals__open_without_own_carbon(void **state)
{
	(void)state;
	for (unsigned i = 0; i < WATERS; i += 7) {
		struct ts_solution s = random_water(i), unknown = s, a, b;
		double air = ts_chem_air_co2_mmol_l(s.temp_c);

		unknown.dic_mmol_l = (double)NAN;
		assert_int_equal(ts_chem_saturate_open(AT(s), &s, TS_CALCITE, air, &a), TS_OK);
		assert_int_equal(
			ts_chem_saturate_open(AT(s), &unknown, TS_CALCITE, air, &b), TS_OK);
		near(b.ca_mmol_l, a.ca_mmol_l, 1e-9, i);
		near(b.dic_mmol_l, a.dic_mmol_l, 1e-9, i);
	}
}

/* Lime that has fallen out of a water leaves it with less than was there, never with none to spare.
 */
static void test_minerals__hard_water_in_air_loses_lime(void **state)
{
	struct ts_solution s = {.temp_c = 25, .ca_mmol_l = 4, .alk_meq_l = 8, .dic_mmol_l = 0},
			   after;

	(void)state;
	assert_int_equal(
		ts_chem_saturate_open(AT(s), &s, TS_CALCITE, ts_chem_air_co2_mmol_l(25), &after),
		TS_OK);
	assert_true(after.ca_mmol_l > 0.3 && after.ca_mmol_l < 0.8); /* about 0.5 in air */
	near(after.alk_meq_l, 2 * after.ca_mmol_l, 1e-9, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_minerals__closed_ends_at_saturation),
		cmocka_unit_test(test_minerals__open_ends_at_saturation),
		cmocka_unit_test(test_minerals__ccpp_has_the_sign_of_the_index),
		cmocka_unit_test(test_minerals__aragonite_gravel_stops_early),
		cmocka_unit_test(test_minerals__refused_untouched),
		cmocka_unit_test(test_minerals__open_without_own_carbon),
		cmocka_unit_test(test_minerals__hard_water_in_air_loses_lime),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
