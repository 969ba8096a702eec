/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands in a water against what is borne, each from its limit on, drinking water, and what to
 * measure next. Limits: docs/methods.md, "One water described"; they are named there with their
 * sources.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include "water/dangers.h"

/* Facts and a profile of which only what is asked about is known. */
struct judged {
	struct ts_water water;
	struct ts_profile p;
	struct ts_water_facts f;
	struct ts_water_danger d[TS_DANGER_ID__COUNT];
};

static void set_clean(struct judged *j)
{
	static const struct ts_span known = {true, false, 7, 7, 7, TS_FROM_SUPPLY, 0};
	const double no = (double)NAN;

	*j = (struct judged){.p.poisons = {0, no, no, no, no, no, no, no, no}};
	j->p.at[TS_GH] = j->p.at[TS_KH] = j->p.at[TS_PH] = j->p.at[TS_TEMPERATURE] = known;
	j->f = (struct ts_water_facts){.ph = 7,
		.temp_c = 20,
		.nh3_fraction = 0.1,
		.cl_mg_l = no,
		.co2_mg_l = no,
		.co2_low_mg_l = no};
}

static const struct ts_water_danger *danger(struct judged *j, enum ts_danger_id id)
{
	ts_water_judge(&j->p, &j->f, NULL, j->d);
	return &j->d[id];
}

/* From each limit on, and not before it: one figure, up to three limits. */
static void assert_limits(
	struct judged *j, enum ts_danger_id id, double *figure, double per, const double limits[3])
{
	static const int levels[] = {TS_DANGER_CONCERN, TS_DANGER_CONFLICT, TS_DANGER_NOW};
	int before = TS_DANGER_NONE;

	for (int i = 0; i < 3 && isfinite(limits[i]); i++) {
		*figure = limits[i] * per * (1 - 1e-9);
		assert_int_equal(danger(j, id)->danger, before);
		*figure = limits[i] * per * (1 + 1e-9);
		assert_int_equal(danger(j, id)->danger, levels[i]);
		assert_true(fabs(danger(j, id)->limit - limits[i]) < 1e-6 * limits[i]);
		assert_true(fabs(danger(j, id)->value - limits[i]) < 1e-6 * limits[i]);
		before = levels[i];
	}
	*figure = 1e6;
	assert_int_equal(danger(j, id)->danger, before);
	*figure = (double)NAN;
	assert_int_equal(danger(j, id)->danger, TS_DANGER_NONE);
}

static void test_dangers__from_their_limits_on(void **state)
{
	static const double nh3[] = {0.01, 0.02, 0.05}, no3[] = {50, 100, INFINITY};
	static const double chlorine[] = {0.011, 0.019, INFINITY}, co2[] = {20, 30, INFINITY};
	static const double copper[] = {0.008, 0.02, INFINITY};
	struct judged j;

	(void)state;
	set_clean(&j);
	assert_limits(&j, TS_D_NH3, &j.p.poisons.nh3_n_mg_l, 1, nh3);
	assert_limits(&j, TS_D_NITRATE, &j.p.poisons.no3_mg_l, 1, no3);
	assert_limits(&j, TS_D_CHLORINE, &j.p.poisons.chlorine_mg_l, 1, chlorine);
	assert_limits(&j, TS_D_COPPER, &j.p.poisons.copper_mg_l, 1, copper);
	j.p.co2_tells = true;
	assert_limits(&j, TS_D_CO2, &j.f.co2_low_mg_l, 1, co2); /* by the low end */
	j.f.co2_low_mg_l = 60;
	j.p.co2_tells = false; /* of no tank, or of one with other acids */
	assert_int_equal(danger(&j, TS_D_CO2)->danger, TS_DANGER_NONE);
}

/* EPA 822-R-13-001 prints 1.9 mg/L N for pH 7 and 20 C: a conflict; 2.5 times it: now. */
static void test_ammonia__criterion(void **state)
{
	struct judged j;

	(void)state;
	set_clean(&j);
	j.p.poisons.tan_mg_l = 0.25;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_CONCERN);
	j.p.poisons.tan_mg_l = 0.249;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_NONE);
	j.p.poisons.tan_mg_l = 1.95;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_CONFLICT);
	assert_true(fabs(danger(&j, TS_D_TAN)->limit - 1.9) < 0.05);
	j.p.poisons.tan_mg_l = 1.8;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_CONCERN);
	j.p.poisons.tan_mg_l = 4.6;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_CONFLICT);
	j.p.poisons.tan_mg_l = 4.9;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_NOW);
	j.f.temp_c = (double)NAN; /* no criterion: the filter's trouble alone */
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_CONCERN);
	j.f.temp_c = 20;
	j.p.at[TS_PH].given = false;
	j.f.ph = (double)NAN;
	assert_int_equal(danger(&j, TS_D_TAN)->danger, TS_DANGER_CONCERN);
}

/* Outside pH 6.5-9 and 0-30 C the nearest end counts. */
static void test_ammonia__beyond_the_criterion(void **state)
{
	static const double rows[][4] = {
		{5, 20, 6.5, 20}, {9.6, 20, 9, 20}, {7, -1, 7, 0}, {7, 35, 7, 30}};
	struct judged j;

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		double limit;

		set_clean(&j);
		j.p.poisons.tan_mg_l = 1000;
		j.f.ph = rows[i][0];
		j.f.temp_c = rows[i][1];
		limit = danger(&j, TS_D_TAN)->limit;
		j.f.ph = rows[i][2];
		j.f.temp_c = rows[i][3];
		assert_true(isfinite(limit) && limit == danger(&j, TS_D_TAN)->limit);
	}
}

/* Nitrite as nitrogen: 1 mg/L NO2 holds 14.007 / 46.006 of it. */
static void test_nitrite__by_chloride(void **state)
{
	static const double without[] = {0.05 / 3, 0.05, INFINITY}, much[] = {0.1, 0.3, INFINITY};
	const double per = 46.0055 / 14.007;
	struct judged j;

	(void)state;
	set_clean(&j);
	assert_true(fabs(per - 3.2845) < 1e-4);
	j.p.poisons.no2_mg_l = 0.0501 * per;
	assert_int_equal(danger(&j, TS_D_NITRITE)->danger, TS_DANGER_CONFLICT);
	assert_true(fabs(danger(&j, TS_D_NITRITE)->value - 0.0501) < 1e-5);
	assert_true(danger(&j, TS_D_NITRITE)->limit == without[1]);
	j.p.poisons.no2_mg_l = 0.0499 * per;
	assert_int_equal(danger(&j, TS_D_NITRITE)->danger, TS_DANGER_CONCERN);
	j.p.poisons.no2_mg_l = 0.0166 * per;
	assert_int_equal(danger(&j, TS_D_NITRITE)->danger, TS_DANGER_NONE);
	j.f.cl_mg_l = 20;
	j.p.poisons.no2_mg_l = 0.299 * per;
	assert_int_equal(danger(&j, TS_D_NITRITE)->danger, TS_DANGER_CONCERN);
	assert_true(fabs(danger(&j, TS_D_NITRITE)->limit - much[0]) < 1e-12);
	j.p.poisons.no2_mg_l = 50;
	assert_int_equal(danger(&j, TS_D_NITRITE)->danger, TS_DANGER_CONFLICT);
}

/* Nitrate by what the profile found; more than 0.5 mg/L nitrite, more than 2 mg/L copper. */
static void test_drinking__limits(void **state)
{
	struct judged j;

	(void)state;
	set_clean(&j);
	assert_int_equal(ts_water_drinking(&j.water, &j.p), 0);
	j.p.poisons.no2_mg_l = 0.5;
	j.p.poisons.copper_mg_l = 2;
	assert_int_equal(ts_water_drinking(&j.water, &j.p), 0);
	j.p.poisons.no2_mg_l = 0.51;
	assert_int_equal(ts_water_drinking(&j.water, &j.p), TS_DRINKING_NITRITE);
	j.p.poisons.copper_mg_l = 2.1;
	j.p.poisons.found = TS_POISON_NITRATE;
	assert_int_equal(ts_water_drinking(&j.water, &j.p),
		TS_DRINKING_NITRITE | TS_DRINKING_COPPER | TS_DRINKING_NITRATE);
	j.water.kind = TS_WATER_TANK; /* nobody drinks a tank */
	assert_int_equal(ts_water_drinking(&j.water, &j.p), 0);
}

static enum ts_next next(const struct judged *j)
{
	return ts_water_next(&j->water, &j->p, &j->f);
}

/* The profile's own order: unsoftened water, GH, drops in place of a strip, KH, temperature, pH. */
static void test_next__of_the_profile(void **state)
{
	struct judged j;

	(void)state;
	set_clean(&j);
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_NOTHING);
	j.p.at[TS_PH].given = false;
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_PH);
	j.p.at[TS_TEMPERATURE].given = false;
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_TANK_TEMPERATURE);
	j.p.at[TS_KH].given = false;
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_KH);
	j.p.at[TS_GH] =
		(struct ts_span){true, false, 7, 5, 9, TS_FROM_SUPPLY, (double)NAN}; /* 4 wide */
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_KH);
	j.p.at[TS_GH].high = 9.1;
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_GH_DROPS);
	j.p.at[TS_GH].exposure = true; /* the supply changes: drops tell no more */
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_KH);
	j.p.at[TS_GH].given = false;
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_GH);
	j.p.unusual = TS_UNUSUAL_SOFTENED;
	assert_int_equal(ts_profile_next(&j.p), TS_NEXT_UNSOFTENED);
}

static void test_next__of_a_water(void **state)
{
	struct judged j;

	(void)state;
	set_clean(&j);
	assert_int_equal(next(&j), TS_NEXT_NOTHING);
	j.p.at[TS_TEMPERATURE].given = false; /* a tap's is nobody's question */
	assert_int_equal(next(&j), TS_NEXT_NOTHING);
	j.water.kind = TS_WATER_WELL;
	assert_int_equal(next(&j), TS_NEXT_NITRATE);
	j.p.poisons.no3_mg_l = 10;
	assert_int_equal(next(&j), TS_NEXT_NOTHING);
	j.p.ph_computed = true;
	assert_int_equal(next(&j), TS_NEXT_PH_AIRED);
	j.p.ph_computed = false;
	j.p.unusual = TS_UNUSUAL_GASSY;
	assert_int_equal(next(&j), TS_NEXT_PH_AIRED);
	j.f.ph = (double)NAN;
	assert_int_equal(next(&j), TS_NEXT_PH);
	j.water.kind = TS_WATER_TANK;
	assert_int_equal(next(&j), TS_NEXT_AMMONIA);
	j.p.poisons.tan_mg_l = 0;
	assert_int_equal(next(&j), TS_NEXT_NITRITE);
	j.p.poisons.no2_mg_l = 0;
	assert_int_equal(next(&j), TS_NEXT_PH);
	j.f.ph = 7;
	j.p.unusual = 0;
	j.p.ph_computed = true; /* a tank's pH has aired */
	assert_int_equal(next(&j), TS_NEXT_NOTHING);
	j.f.unusual = TS_UNUSUAL_CONDUCTIVITY;
	assert_int_equal(next(&j), TS_NEXT_AGAIN);
	j.f.unusual = TS_UNUSUAL_CHARGE;
	assert_int_equal(next(&j), TS_NEXT_AGAIN);
	j.f.unusual = TS_UNUSUAL_DEGREES;
	j.p.at[TS_GH].given = false;
	assert_int_equal(next(&j), TS_NEXT_GH);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_dangers__from_their_limits_on),
		cmocka_unit_test(test_ammonia__criterion),
		cmocka_unit_test(test_ammonia__beyond_the_criterion),
		cmocka_unit_test(test_nitrite__by_chloride),
		cmocka_unit_test(test_drinking__limits),
		cmocka_unit_test(test_next__of_the_profile),
		cmocka_unit_test(test_next__of_a_water),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
