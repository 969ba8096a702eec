/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Stages: what refuses a schedule, and over random tanks, waters and animals: no stage exceeds a
 * safe step or takes an animal out of a tolerated band that it was in, the changes add up to the
 * closed form, and no ammonia or nitrite reading that rises or is left out opens the gate.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "care/stages.h"
#include "chem/carbonate.h"

static const char *practice[] = {"practice", "practice"};

static struct ts_envelope band(double a, double b, double c, double d)
{
	return (struct ts_envelope){{a, d}, {b, c}, {practice, 2}, NULL};
}

static struct ts_species animal(double gh_low, double gh_high)
{
	struct ts_envelope no = {
		{(double)NAN, (double)NAN}, {(double)NAN, (double)NAN}, {NULL, 0}, NULL};
	struct ts_species s = {.species = "Exempla ficta", .home_water = TS_HOME_MIXED};

	s.water.usual = s.water.wild = s.water.breeding = (struct ts_envelopes){no, no, no, no, no};
	s.water.usual.ph = band(5.5, 6, 8.5, 9);
	s.water.usual.gh_dh = band(gh_low, gh_low, gh_high, gh_high);
	s.water.usual.temp_c = band(22, 24, 26, 28);
	return s;
}

/* A tank with one animal, tested today, on the way between two hardnesses. */
static struct ts_stages_wish wish_of(
	double gh, double kh, double to_gh, double to_kh, const struct ts_resident *resident)
{
	struct ts_stages_wish w = {.gh_dh = {to_gh - 0.5, to_gh + 0.5},
		.kh_dh = {to_kh - 0.5, to_kh + 0.5},
		.residents = resident,
		.resident_count = resident ? 1 : 0,
		.cl_mg_l = (double)NAN};

	assert_int_equal(ts_solution_from_hardness(gh, kh, 25, &w.now), TS_OK);
	assert_int_equal(ts_solution_from_hardness(to_gh, to_kh, 25, &w.poured), TS_OK);
	return w;
}

static void test_plan__empty_tank_needs_no_stage(void **state)
{
	struct ts_stages_wish w = wish_of(3, 2, 11, 10, NULL);
	struct ts_stages s;

	(void)state;
	w.tan_mg_l = w.no2_mg_l = (double)NAN;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_OK);
	assert_int_equal(s.count, 0);
}

static void test_plan__days_between_stages_and_stops(void **state)
{
	struct ts_species fish = animal(0, 30);
	struct ts_resident r = {&fish, false, false};
	struct ts_stages_wish w = wish_of(3, 2, 11, 10, &r);
	struct ts_stages s;
	size_t stops = 0;

	(void)state;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_OK);
	assert_true(s.count > 6);
	assert_int_equal(s.stages[0].day, 0);
	for (size_t i = 0; i + 1 < s.count; i++) {
		assert_int_equal(s.stages[i + 1].day - s.stages[i].day, s.stages[i].stop ? 7 : 2);
		assert_true((i + 1) % 3 != 0 || s.stages[i].stop);
		stops += s.stages[i].stop;
	}
	assert_false(s.stages[s.count - 1].stop);
	assert_true(stops > s.count / 3 - 1);
	assert_int_equal(s.last_day, s.stages[s.count - 1].day);
}

static void test_plan__ammonia_missing__test_first(void **state)
{
	struct ts_species fish = animal(0, 30);
	struct ts_resident r = {&fish, false, false};
	struct ts_stages_wish w = wish_of(3, 2, 11, 10, &r);
	struct ts_stages s;

	(void)state;
	w.tan_mg_l = (double)NAN;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
	assert_int_equal(s.refusal, TS_STAGES_TEST_FIRST);
	w.tan_mg_l = 0;
	w.reading_age_days = 4;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
	assert_int_equal(s.refusal, TS_STAGES_TEST_FIRST);
	w.reading_age_days = 3;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_OK);
}

static void test_plan__ammonia_read__make_safe_first(void **state)
{
	struct ts_species fish = animal(0, 30);
	struct ts_resident r = {&fish, false, false};
	struct ts_stages_wish w = wish_of(3, 2, 11, 10, &r);
	struct ts_stages s;

	(void)state;
	w.tan_mg_l = 1;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
	assert_int_equal(s.refusal, TS_STAGES_AMMONIA);
	w.tan_mg_l = 0.2; /* below what a kit shows as a colour, but the pH rises */
	w.poured_tan_mg_l = 0.4;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
	assert_int_equal(s.refusal, TS_STAGES_AMMONIA_ON_WAY);
}

static void test_plan__resident_that_the_new_water_does_not_suit__refused(void **state)
{
	struct ts_species fish = animal(0, 8);
	struct ts_resident r = {&fish, false, false};
	struct ts_stages_wish w = wish_of(3, 2, 14, 10, &r);
	struct ts_stages s;

	(void)state;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
	assert_int_equal(s.refusal, TS_STAGES_RESIDENT);
	assert_int_equal(s.resident, 0);
	assert_int_equal(s.parameter, TS_GH);
}

static void test_plan__never_under_the_buffer_floor_but_in_black_water(void **state)
{
	struct ts_species fish = animal(0, 30);
	struct ts_resident r = {&fish, false, false};
	struct ts_stages_wish w = wish_of(6, 4, 2, 0.8, &r);
	struct ts_stages s;

	(void)state;
	fish.water.usual.kh_dh = band(0, 0, 10, 10);
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
	assert_int_equal(s.refusal, TS_STAGES_FLOOR);
	fish.home_water = TS_HOME_BLACK;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_OK);
}

static void test_plan__not_a_number__refused(void **state)
{
	struct ts_stages_wish w = wish_of(6, 4, 2, 2, NULL);
	struct ts_stages s;

	(void)state;
	w.poured.alk_meq_l = (double)NAN;
	assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_BAD_INPUT);
}

static void test_safe_step__rows_and_factors(void **state)
{
	struct ts_safe_step s = ts_safe_step_of(10, 400, TS_ORDINARY, NULL);

	(void)state;
	assert_true(s.gh_up_dh == 2.5 && s.gh_down_dh == 2.0 && s.ec_down_us_cm == 60);
	s = ts_safe_step_of(10, 400, TS_DELICATE, NULL);
	assert_true(s.gh_up_dh == 1.25 && s.kh_down_dh == 0.5 && s.ec_down_us_cm == 30);
	s = ts_safe_step_of(1, 100, TS_DELICATE, NULL);
	assert_true(s.ec_up_us_cm == 30 && s.ec_down_us_cm == 30); /* never under 30 */
	s = ts_safe_step_of(20, 800, TS_HARDY, NULL);
	assert_true(s.gh_up_dh == 6 && s.ec_up_us_cm == 300);
}

static void test_hardiness__the_most_delicate_decides(void **state)
{
	struct ts_species hardy = animal(0, 30), fair = hardy, shrimp = hardy;
	struct ts_resident all[] = {
		{&hardy, false, false}, {&fair, false, false}, {&shrimp, false, false}};

	(void)state;
	hardy.takes_change = 2;
	shrimp.kind = 1;
	assert_int_equal(ts_hardiness_of(all, 1), TS_HARDY);
	assert_int_equal(ts_hardiness_of(all, 2), TS_ORDINARY);
	assert_int_equal(ts_hardiness_of(all, 3), TS_DELICATE);
	all[0].wild = true;
	assert_int_equal(ts_hardiness_of(all, 1), TS_DELICATE);
	assert_int_equal(ts_hardiness_of(NULL, 0), TS_ORDINARY);
}

static double random_in(unsigned *seed, double low, double high)
{
	*seed = *seed * 1664525u + 1013904223u;
	return low + (double)(*seed >> 8) / 16777216.0 * (high - low);
}

static bool in(const struct ts_range *r, double value)
{
	return value >= r->low - 1e-9 && value <= r->high + 1e-9;
}

static void test_property__no_stage_beyond_a_safe_step_nor_out_of_a_band(void **state)
{
	unsigned seed = 13, planned = 0;

	(void)state;
	for (int i = 0; i < 1500; i++) {
		double low = random_in(&seed, 0, 10);
		struct ts_species fish = animal(low, low + random_in(&seed, 3, 20));
		struct ts_resident r = {&fish, i % 5 == 0, false};
		double gh = random_in(&seed, 0.5, 22), kh = random_in(&seed, 0.5, 15);
		struct ts_stages_wish w =
			wish_of(gh, kh, random_in(&seed, 0.5, 22), random_in(&seed, 0.5, 15), &r);
		struct ts_stages s;
		const struct ts_stage_water *from = &s.start;
		double left = 1;

		fish.takes_change = i % 3;
		if (ts_stages_plan(&w, NULL, &s) != TS_OK)
			continue;
		planned++;
		for (size_t n = 0; n < s.count; n++) {
			const struct ts_stage *stage = &s.stages[n];
			const struct ts_range *gh_band = &fish.water.usual.gh_dh.tolerated;
			double goal =
				ts_chem_dh_from_mmol_l(w.poured.ca_mmol_l + w.poured.mg_mmol_l);

			assert_true(ts_step_is_safe(from, &stage->after, s.hardiness, NULL));
			assert_true(stage->change <= 0.33 && stage->change > 0);
			assert_true(!in(gh_band, s.start.gh_dh) || in(gh_band, stage->after.gh_dh));
			left *= 1 - stage->change;
			assert_true(fabs(stage->after.gh_dh -
					    (goal + (s.start.gh_dh - goal) * left)) < 1e-9);
			from = &stage->after;
		}
		assert_true(in(&w.gh_dh, from->gh_dh) && in(&w.kh_dh, from->kh_dh));
	}
	assert_true(planned > 200);
}

/* A schedule that is refused stays refused when a danger value rises or is left out. */
static void test_property__the_gate_never_opens_by_danger_or_silence(void **state)
{
	unsigned seed = 29;

	(void)state;
	for (int i = 0; i < 400; i++) {
		struct ts_species fish = animal(0, 30);
		struct ts_resident r = {&fish, false, false};
		struct ts_stages_wish w = wish_of(random_in(&seed, 1, 20), random_in(&seed, 1, 12),
			random_in(&seed, 1, 20), random_in(&seed, 1.2, 12), &r);
		double *danger = i % 2 ? &w.tan_mg_l : &w.no2_mg_l;
		struct ts_stages s;
		enum ts_status before;

		before = ts_stages_plan(&w, NULL, &s);
		for (int step = 0; step < 5; step++) {
			enum ts_status now;

			*danger += random_in(&seed, 0, 0.2);
			now = ts_stages_plan(&w, NULL, &s);
			assert_true(before == TS_OK || now == before);
			before = now;
		}
		*danger = (double)NAN;
		assert_int_equal(ts_stages_plan(&w, NULL, &s), TS_NO);
		assert_int_not_equal(s.refusal, TS_STAGES_FINE);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_plan__empty_tank_needs_no_stage),
		cmocka_unit_test(test_plan__days_between_stages_and_stops),
		cmocka_unit_test(test_plan__ammonia_missing__test_first),
		cmocka_unit_test(test_plan__ammonia_read__make_safe_first),
		cmocka_unit_test(test_plan__resident_that_the_new_water_does_not_suit__refused),
		cmocka_unit_test(test_plan__never_under_the_buffer_floor_but_in_black_water),
		cmocka_unit_test(test_plan__not_a_number__refused),
		cmocka_unit_test(test_safe_step__rows_and_factors),
		cmocka_unit_test(test_hardiness__the_most_delicate_decides),
		cmocka_unit_test(test_property__no_stage_beyond_a_safe_step_nor_out_of_a_band),
		cmocka_unit_test(test_property__the_gate_never_opens_by_danger_or_silence),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
