/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Verdicts: the rules of thumb that the tool exists for (common practice, no source), the cases in
 * which nothing may pass, and properties over random waters and animals.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include <tapshoal/match.h>

#include "../given.h"

static const char *practice[] = {"practice", "practice"};
static const char *memory[] = {"memory", "memory"};

static struct ts_envelope band(double a, double b, double c, double d, const char **grades)
{
	return (struct ts_envelope){{a, d}, {b, c}, {grades, 2}, NULL};
}

static struct ts_envelopes none(void)
{
	struct ts_range no = {(double)NAN, (double)NAN};
	struct ts_envelope e = {no, no, {NULL, 0}, NULL};

	return (struct ts_envelopes){e, e, e, e, e};
}

/* A made-up animal. */
static struct ts_species animal(int home, struct ts_envelope ph, struct ts_envelope gh)
{
	struct ts_species s = {
		.species = "Exempla ficta", .home_water = home, .adult_length_cm = 5};

	s.water.usual = none();
	s.water.wild = s.water.breeding = none();
	s.water.usual.ph = ph;
	s.water.usual.gh_dh = gh;
	s.water.usual.temp_c = band(22, 24, 26, 28, practice);
	return s;
}

static struct ts_match matched(const struct ts_species *s, double ph, double gh, double kh)
{
	struct ts_reading r = {.ph = value(ph), .gh_dh = value(gh), .kh_dh = value(kh)};
	struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
	struct ts_keeping k = {.temperature = value(25)};
	struct ts_profile p;
	struct ts_match m;

	if (isnan(gh))
		r.gh_dh = (struct ts_measure){0};
	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_match_species(s, &p, &k, NULL, &m);
	return m;
}

static void test_listed_to_7_5_at_a_steady_8_with_hardness_in_range__not_excluded(void **state)
{
	struct ts_species s = animal(
		TS_HOME_MIXED, band(6.5, 6.8, 7.2, 7.5, practice), band(2, 5, 14, 20, practice));

	(void)state;
	assert_int_equal(matched(&s, 8.0, 9, 9).verdict, TS_TOLERATES);
}

static void test_listed_up_to_6_5_at_ph_9__excluded(void **state)
{
	struct ts_species s = animal(
		TS_HOME_CLEAR_SOFT, band(5, 5.5, 6.2, 6.5, practice), band(0, 1, 8, 14, practice));
	struct ts_match m = matched(&s, 9.0, 5, 6);

	(void)state;
	assert_int_equal(m.verdict, TS_EXCLUDED);
	assert_int_equal(m.limiting, TS_PH);
}

static void test_listed_around_7_3_at_a_tap_of_6_5_with_suitable_hardness__not_excluded(
	void **state)
{
	struct ts_species s = animal(
		TS_HOME_MIXED, band(7.0, 7.2, 7.4, 7.6, practice), band(2, 3, 12, 18, practice));

	(void)state;
	assert_int_equal(matched(&s, 6.5, 5, 4).verdict, TS_TOLERATES);
}

static void test_rift_lake_fish_in_soft_water__excluded_by_kh(void **state)
{
	struct ts_species s = animal(
		TS_HOME_MALAWI, band(7.5, 7.8, 8.6, 8.8, practice), band(4, 6, 14, 20, practice));
	struct ts_match m = matched(&s, 7.6, 6, 2);

	(void)state;
	assert_int_equal(m.verdict, TS_EXCLUDED);
	assert_int_equal(m.limiting, TS_KH);
}

static void test_low_ph_side_of_a_hard_water_fish__has_no_slack(void **state)
{
	struct ts_species s = animal(
		TS_HOME_HARD, band(7.2, 7.4, 8.2, 8.5, practice), band(8, 10, 20, 30, practice));

	(void)state;
	assert_int_equal(matched(&s, 6.6, 12, 8).verdict, TS_EXCLUDED);
}

static void test_gh_missing__nothing_passes(void **state)
{
	struct ts_species s =
		animal(TS_HOME_MIXED, band(6, 6.5, 7.5, 8, practice), band(2, 5, 14, 20, practice));

	(void)state;
	assert_int_equal(matched(&s, 7, (double)NAN, 5).verdict, TS_UNSURE);
}

static void test_softened_water__caps_every_verdict(void **state)
{
	struct ts_species s = animal(
		TS_HOME_CLEAR_SOFT, band(6, 6.5, 8, 8.5, practice), band(0, 0, 10, 14, practice));

	(void)state;
	assert_int_equal(matched(&s, 7.5, 0.5, 14).verdict, TS_UNSURE);
}

/* A strip cannot tell 0 from 2, and softened water reads 0. */
static void test_softened_water_by_a_strip__caps_every_verdict(void **state)
{
	struct ts_species s = animal(
		TS_HOME_CLEAR_SOFT, band(6, 6.5, 8, 8.5, practice), band(0, 0, 10, 14, practice));
	struct ts_reading r = {
		.ph = value(7.5), .gh_dh = value(0), .kh_dh = value(10), .method = TS_METHOD_STRIP};
	struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
	struct ts_keeping k = {.temperature = value(25)};
	struct ts_profile p;
	struct ts_match m;

	(void)state;
	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_match_species(&s, &p, &k, NULL, &m);
	assert_int_equal(m.verdict, TS_UNSURE);
}

static enum ts_verdict with(
	int home, struct ts_envelope gh, struct ts_measure ph, struct ts_measure kh)
{
	struct ts_species s = animal(home, band(7.7, 7.8, 8.2, 8.4, practice), gh);
	struct ts_reading r = {.ph = ph, .gh_dh = value(12), .kh_dh = kh};
	struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
	struct ts_keeping k = {.temperature = value(25)};
	struct ts_profile p;
	struct ts_match m;

	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_match_species(&s, &p, &k, NULL, &m);
	return m.verdict;
}

/* Too much buffer at one end of the year is no excuse for too little at the other. */
static void test_kh_of_a_rift_lake_too_low_and_too_high__is_as_bad_as_too_low(void **state)
{
	struct ts_envelope gh = band(4, 6, 14, 20, practice);
	struct ts_measure low = {5.5, 1, 10, TS_MEASURE_RANGE};
	struct ts_measure both = {15.5, 1, 30, TS_MEASURE_RANGE};

	(void)state;
	assert_int_equal(with(TS_HOME_MALAWI, gh, value(8), low), TS_EXCLUDED);
	assert_int_equal(with(TS_HOME_MALAWI, gh, value(8), both), TS_EXCLUDED);
}

/* The narrower band cannot exclude by being narrow. */
static void test_a_doubt_across_the_whole_band__is_unsure(void **state)
{
	struct ts_envelope gh = band(4, 6, 14, 20, practice);
	struct ts_measure sharp = {6.5, 6.4, 6.6, TS_MEASURE_DOUBT};
	struct ts_measure blurred = {6.5, 0, 14, TS_MEASURE_DOUBT};

	(void)state;
	assert_int_equal(with(TS_HOME_HARD, gh, sharp, value(8)), TS_EXCLUDED);
	assert_int_equal(with(TS_HOME_HARD, gh, blurred, value(8)), TS_UNSURE);
}

static void test_lone_limit_from_memory__excludes_only_when_missed_twice_its_doubt(void **state)
{
	struct ts_species s =
		animal(TS_HOME_MIXED, band(5, 6, 8, 9, practice), band(2, 4, 10, 12, memory));

	(void)state;
	assert_int_equal(matched(&s, 7, 16.5, 7).verdict, TS_UNSURE);
	assert_int_equal(matched(&s, 7, 19.5, 7).verdict, TS_EXCLUDED);
	s.water.usual.gh_dh = band(2, 4, 10, 12, practice);
	assert_int_equal(matched(&s, 7, 16.5, 7).verdict, TS_EXCLUDED);
}

static void test_temperature_range_of_the_tank__worst_end_decides(void **state)
{
	struct ts_species s =
		animal(TS_HOME_MIXED, band(5, 6, 8, 9, practice), band(2, 4, 16, 20, practice));
	struct ts_reading r = {.ph = value(7), .gh_dh = value(8), .kh_dh = value(5)};
	struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
	struct ts_keeping k = {.temperature = {22, 16, 28, TS_MEASURE_RANGE}};
	struct ts_profile p;
	struct ts_match m;

	(void)state;
	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_match_species(&s, &p, &k, NULL, &m);
	assert_int_equal(m.verdict, TS_EXCLUDED);
	assert_int_equal(m.limiting, TS_TEMPERATURE);
	assert_true(m.at[TS_TEMPERATURE].reading == 16);
}

static void test_temperature_unknown__each_at_its_own(void **state)
{
	struct ts_species s =
		animal(TS_HOME_MIXED, band(5, 6, 8, 9, practice), band(2, 4, 16, 20, practice));
	struct ts_reading r = {
		.ph = value(7), .gh_dh = value(8), .kh_dh = value(5), .temp_c = value(9)};
	struct ts_water w = {.readings = &r, .reading_count = 1};
	struct ts_keeping k = {0};
	struct ts_profile p;
	struct ts_match m;

	(void)state;
	ts_profile_make(&w, &k, NULL, -1, &p);
	assert_false(p.at[TS_TEMPERATURE].given); /* the sample's 9 C meets no animal */
	ts_match_species(&s, &p, &k, NULL, &m);
	assert_int_equal(m.verdict, TS_SUITS);
	assert_true(m.own_temperature);
}

static double random_in(unsigned *seed, double low, double high)
{
	*seed = *seed * 1664525u + 1013904223u;
	return low + (double)(*seed >> 8) / 16777216.0 * (high - low);
}

/* Random animals and waters: what holds whatever the figures. */
static void test_property__wider_tolerated_never_worsens_and_nothing_is_infinite(void **state)
{
	unsigned seed = 7;

	(void)state;
	for (int i = 0; i < 5000; i++) {
		double low = random_in(&seed, 0, 15), high = low + random_in(&seed, 3, 15);
		double wider = random_in(&seed, 0, 6);
		double ph = random_in(&seed, 4, 9.5), gh = random_in(&seed, 0, 35);
		double kh = random_in(&seed, 0, 20);
		int home = (int)random_in(&seed, 0, TS_HOME__COUNT - 0.001);
		struct ts_envelope phs = band(5.5, 6.5, 7.5, 8, practice);
		struct ts_species narrow =
			animal(home, phs, band(low, low + 1, high - 1, high, practice));
		struct ts_species wide = animal(home, phs,
			band(fmax(0, low - wider), low + 1, high - 1, high + wider, practice));
		struct ts_match a = matched(&narrow, ph, gh, kh), b = matched(&wide, ph, gh, kh);

		assert_true(b.verdict <= a.verdict);
		assert_true(isfinite(a.fit) && a.fit >= 0 && a.fit <= 1);
		for (int p = 0; p < TS_PARAMETER__COUNT; p++)
			assert_true(!a.at[p].known ||
				    (a.at[p].suitability >= 0 && a.at[p].suitability <= 1));
	}
}

/* A larger doubt about GH never turns excluded or unsure into suits. */
static void test_property__doubt_never_turns_no_into_yes(void **state)
{
	unsigned seed = 11;

	(void)state;
	for (int i = 0; i < 5000; i++) {
		struct ts_species s = animal(TS_HOME_MIXED, band(5.5, 6.5, 7.5, 8, practice),
			band(4, 6, 12, 16, practice));
		double gh = random_in(&seed, 0, 30), doubt = random_in(&seed, 0, 10);
		struct ts_reading r = {.ph = value(7), .kh_dh = value(5)};
		struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
		struct ts_keeping k = {.temperature = value(25)};
		enum ts_verdict verdict[2];

		for (int round = 0; round < 2; round++) {
			double half = round ? doubt : 0.01;
			struct ts_profile p;
			struct ts_match m;

			r.gh_dh = (struct ts_measure){
				gh, fmax(0, gh - half), gh + half, TS_MEASURE_DOUBT};
			ts_profile_make(&w, &k, NULL, -1, &p);
			ts_match_species(&s, &p, &k, NULL, &m);
			verdict[round] = m.verdict;
		}
		if (verdict[0] >= TS_UNSURE)
			assert_true(verdict[1] >= TS_UNSURE);
	}
}

/* Poisons: whatever the rest of the water, a higher danger value never betters a verdict. */
static void test_property__a_rising_danger_value_never_betters_a_verdict(void **state)
{
	unsigned seed = 23;

	(void)state;
	for (int i = 0; i < 3000; i++) {
		struct ts_species s = animal(TS_HOME_MIXED, band(5.5, 6.5, 7.5, 8, practice),
			band(2, 4, 12, 18, practice));
		struct ts_reading r = {.ph = value(random_in(&seed, 5, 9)),
			.gh_dh = value(random_in(&seed, 0, 25)),
			.kh_dh = value(random_in(&seed, 0, 15))};
		struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
		struct ts_keeping k = {.temperature = value(25)};
		struct ts_measure *danger[] = {&r.tan_mg_l, &r.no2_mg_l, &r.no2_n_mg_l, &r.cu_mg_l};
		struct ts_measure *one = danger[i % 4];
		double figure = 0;
		enum ts_verdict before = TS_SUITS;

		s.kind = i % 5;
		for (int step = 0; step < 6; step++) {
			struct ts_profile p;
			struct ts_match m;

			ts_profile_make(&w, &k, NULL, -1, &p);
			ts_match_species(&s, &p, &k, NULL, &m);
			assert_true(m.verdict >= before);
			before = m.verdict;
			figure += random_in(&seed, 0, 0.3);
			*one = value(figure);
		}
	}
}

static enum ts_verdict with_oxygen(const char *family, const struct ts_reading *oxygen)
{
	struct ts_species s = animal(
		TS_HOME_MIXED, band(5.5, 6.5, 7.5, 8, practice), band(2, 4, 12, 18, practice));
	struct ts_reading r = *oxygen;
	struct ts_water w = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
	struct ts_keeping k = {.temperature = value(25)};
	struct ts_profile p;
	struct ts_match m;

	s.family = family;
	r.ph = value(7);
	r.gh_dh = value(8);
	r.kh_dh = value(4);
	ts_profile_make(&w, &k, NULL, -1, &p);
	ts_match_species(&s, &p, &k, NULL, &m);
	assert_int_equal(isnan(m.oxygen_borne_mg_l), m.verdict == TS_SUITS);
	return m.verdict;
}

static void test_oxygen__too_little_caps_and_labyrinth_fish_bear_a_step_less(void **state)
{
	struct ts_reading r = {.oxygen_mg_l = {0}};

	(void)state;
	assert_int_equal(with_oxygen("Characidae", &r), TS_SUITS);
	r.oxygen_mg_l = value(5);
	assert_int_equal(with_oxygen("Characidae", &r), TS_SUITS);
	r.oxygen_mg_l = value(4.9);
	assert_int_equal(with_oxygen("Characidae", &r), TS_UNSURE);
	assert_int_equal(with_oxygen(NULL, &r), TS_UNSURE);
	assert_int_equal(with_oxygen("Osphronemidae", &r), TS_SUITS);
	r.oxygen_mg_l = value(3.9);
	assert_int_equal(with_oxygen("Osphronemidae", &r), TS_UNSURE);
	/* "<4" may be anything down to nothing; ">6" is at least that. */
	r.oxygen_mg_l = (struct ts_measure){4, 0, 4, TS_MEASURE_BELOW};
	assert_int_equal(with_oxygen("Characidae", &r), TS_UNSURE);
	r.oxygen_mg_l = (struct ts_measure){6, 6, (double)INFINITY, TS_MEASURE_ABOVE};
	assert_int_equal(with_oxygen("Characidae", &r), TS_SUITS);
}

/* Air keeps 8.26 mg/L at 25 C and 11.29 at 10 C (EN 25814): 50 % are 4.1 and 5.6. */
static void test_oxygen__percent_counts_at_the_temperature_of_its_sample(void **state)
{
	struct ts_reading r = {.oxygen_percent = value(50)};

	(void)state;
	assert_int_equal(with_oxygen("Characidae", &r), TS_UNSURE);
	r.temp_c = value(10);
	assert_int_equal(with_oxygen("Characidae", &r), TS_SUITS);
	r.oxygen_mg_l = value(4); /* read in both forms, mg/L counts */
	assert_int_equal(with_oxygen("Characidae", &r), TS_UNSURE);
}

/* What a utility prints is the oxygen of its works, not of a tank. */
static void test_oxygen__of_a_utility_report_caps_nothing(void **state)
{
	struct ts_reading r = {.oxygen_mg_l = value(1), .method = TS_METHOD_UTILITY_REPORT};

	(void)state;
	assert_int_equal(with_oxygen("Characidae", &r), TS_SUITS);
}

/* The lowest of several readings counts, in either form. */
static void test_property__less_oxygen_never_betters_a_verdict(void **state)
{
	unsigned seed = 29;

	(void)state;
	for (int i = 0; i < 1000; i++) {
		struct ts_reading more = {.temp_c = value(random_in(&seed, 15, 30))}, less = more;
		double figure = random_in(&seed, 0, 12), lower = random_in(&seed, 0, figure);
		const char *family = i % 2 ? "Osphronemidae" : "Characidae";

		if (i % 3) {
			more.oxygen_mg_l = value(figure);
			less.oxygen_mg_l = value(lower);
		} else {
			more.oxygen_percent = value(10 * figure);
			less.oxygen_percent = value(10 * lower);
		}
		assert_true(with_oxygen(family, &less) >= with_oxygen(family, &more));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(
			test_listed_to_7_5_at_a_steady_8_with_hardness_in_range__not_excluded),
		cmocka_unit_test(test_listed_up_to_6_5_at_ph_9__excluded),
		cmocka_unit_test(
			test_listed_around_7_3_at_a_tap_of_6_5_with_suitable_hardness__not_excluded),
		cmocka_unit_test(test_rift_lake_fish_in_soft_water__excluded_by_kh),
		cmocka_unit_test(test_low_ph_side_of_a_hard_water_fish__has_no_slack),
		cmocka_unit_test(test_gh_missing__nothing_passes),
		cmocka_unit_test(test_softened_water__caps_every_verdict),
		cmocka_unit_test(test_softened_water_by_a_strip__caps_every_verdict),
		cmocka_unit_test(test_kh_of_a_rift_lake_too_low_and_too_high__is_as_bad_as_too_low),
		cmocka_unit_test(test_a_doubt_across_the_whole_band__is_unsure),
		cmocka_unit_test(
			test_lone_limit_from_memory__excludes_only_when_missed_twice_its_doubt),
		cmocka_unit_test(test_temperature_range_of_the_tank__worst_end_decides),
		cmocka_unit_test(test_temperature_unknown__each_at_its_own),
		cmocka_unit_test(
			test_property__wider_tolerated_never_worsens_and_nothing_is_infinite),
		cmocka_unit_test(test_property__doubt_never_turns_no_into_yes),
		cmocka_unit_test(test_property__a_rising_danger_value_never_betters_a_verdict),
		cmocka_unit_test(test_oxygen__too_little_caps_and_labyrinth_fish_bear_a_step_less),
		cmocka_unit_test(test_oxygen__percent_counts_at_the_temperature_of_its_sample),
		cmocka_unit_test(test_oxygen__of_a_utility_report_caps_nothing),
		cmocka_unit_test(test_property__less_oxygen_never_betters_a_verdict),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
