/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings over time, and a season chosen out of them.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include "water/series.h"

static struct ts_reading ph_at(const char *date, const char *time, double ph)
{
	return (struct ts_reading){
		.date = date, .time = time, .ph = {ph, ph, ph, TS_MEASURE_VALUE}};
}

static struct ts_series_facts ph_series(struct ts_reading *readings, size_t count)
{
	struct ts_water w = {.readings = readings, .reading_count = count};
	struct ts_series_facts f;

	ts_series_make(&w, TS_PH, &f);
	return f;
}

static bool close_to(double a, double b)
{
	return fabs(a - b) < 1e-9;
}

static void test_series__a_day_swing_is_no_trend(void **state)
{
	struct ts_reading r[] = {ph_at("2026-03-01", "08:00", 6.9),
		ph_at("2026-03-01", "20:10", 7.4), ph_at("2026-03-08", "07:50", 6.8),
		ph_at("2026-03-08", "19:50", 7.4)};
	struct ts_series_facts f = ph_series(r, 4);

	(void)state;
	assert_int_equal(f.readings, 4);
	assert_true(close_to(f.spread, 0.6));
	assert_true(close_to(f.same_hour_spread, 0.1));
	assert_true(close_to(f.day_swing, 0.6));
	assert_true(close_to(f.days, 7));
	assert_false(f.trend);
}

/* 0.2 down a week, read every week at eight. */
static void test_series__a_drift_beyond_swing_and_doubt_is_a_trend(void **state)
{
	struct ts_reading r[] = {ph_at("2026-03-01", "08:00", 7.6),
		ph_at("2026-03-08", "08:00", 7.4), ph_at("2026-03-15", "08:00", 7.2),
		ph_at("2026-03-22", "08:00", 7.0)};
	struct ts_series_facts f = ph_series(r, 4);

	(void)state;
	assert_true(close_to(f.drift_per_week, -0.2));
	assert_true(f.trend);
	f = ph_series(r, 3);
	assert_true(close_to(f.drift_per_week, -0.2));
	assert_false(f.trend);
}

static void test_series__undated_readings_give_a_spread_alone(void **state)
{
	struct ts_reading r[] = {
		ph_at(NULL, NULL, 7.0), ph_at(NULL, "25:00", 7.5), ph_at("2026-13-01", "x", 8.0)};
	struct ts_series_facts f = ph_series(r, 3);

	(void)state;
	assert_true(close_to(f.spread, 1));
	assert_true(isnan(f.same_hour_spread) && isnan(f.day_swing) && isnan(f.drift_per_week));
	assert_false(f.trend);
	f = ph_series(r, 0);
	assert_int_equal(f.readings, 0);
	assert_true(isnan(f.low));
}

static void test_series__season_by_name_and_by_date(void **state)
{
	struct ts_reading r[] = {ph_at("2025-01-10", NULL, 7.0), ph_at("2025-07-10", NULL, 7.5),
		ph_at("2024-12-20", NULL, 7.1), {.season = "Summer"}, {.season = "winter"}};
	struct ts_water w = {.readings = r, .reading_count = 5};

	(void)state;
	assert_int_equal(ts_water_take_season(&w, "autumn"), 0);
	assert_int_equal(w.reading_count, 5);
	assert_int_equal(ts_water_take_season(&w, "2026-01-01"), 2);
	assert_true(close_to(w.readings[0].ph.value, 7.0));
	assert_true(close_to(w.readings[1].ph.value, 7.1));
}

static void test_series__season_without_regard_to_case(void **state)
{
	struct ts_reading r[] = {{.season = "Summer"}, {.season = "summers"}, {.season = NULL}};
	struct ts_water w = {.readings = r, .reading_count = 3};

	(void)state;
	assert_int_equal(ts_water_take_season(&w, "summer"), 1);
	assert_string_equal(w.readings[0].season, "Summer");
}

static size_t seasons_of(struct ts_reading *readings, size_t count, const char **ret)
{
	const struct ts_water water = {.readings = readings, .reading_count = count};

	return ts_water_seasons(&water, ret);
}

static void test_seasons__words_once_whatever_their_case(void **state)
{
	struct ts_reading r[] = {{.season = "summer"}, {.season = "winter", .date = "2026-01-10"},
		{.season = "Summer"}, {.date = NULL}};
	const char *seasons[TS_SEASONS_MOST];

	(void)state;
	assert_int_equal(seasons_of(r, 4, seasons), 2);
	assert_string_equal(seasons[0], "summer");
	assert_string_equal(seasons[1], "winter");
}

static void test_seasons__dates_far_apart_in_the_year(void **state)
{
	struct ts_reading r[] = {{.date = "2025-08-01"}, {.date = "2025-08-20"},
		{.date = "2026-01-20"}, {.date = "2024-08-05"}, {.date = "soon"}};
	const char *seasons[TS_SEASONS_MOST];

	(void)state;
	assert_int_equal(seasons_of(r, 5, seasons), 2);
	assert_string_equal(seasons[0], "2025-08-01");
	assert_string_equal(seasons[1], "2026-01-20");
}

static void test_seasons__one_is_none(void **state)
{
	struct ts_reading r[] = {{.season = "summer"}, {.season = "summer"}};
	const char *seasons[TS_SEASONS_MOST];

	(void)state;
	assert_int_equal(seasons_of(r, 2, seasons), 0);
	assert_int_equal(seasons_of(r, 0, seasons), 0);
}

static void test_seasons__no_more_than_there_is_room_for(void **state)
{
	static const char *const words[] = {
		"a", "b", "c", "d", "e", "f", "g", "h", "i", "j", "k", "l", "m", "n"};
	struct ts_reading r[14] = {{0}};
	const char *seasons[TS_SEASONS_MOST];

	(void)state;
	for (size_t i = 0; i < 14; i++)
		r[i].season = words[i];
	assert_int_equal(seasons_of(r, 14, seasons), TS_SEASONS_MOST);
}

static void test_varies__beyond_swing_and_doubt(void **state)
{
	const struct ts_measure soft = {8, 8, 8, TS_MEASURE_VALUE},
				near = {9, 9, 9, TS_MEASURE_VALUE},
				hard = {12, 12, 12, TS_MEASURE_VALUE};
	struct ts_reading r[] = {{.gh_dh = soft}, {.gh_dh = near}, {.gh_dh = hard}};
	struct ts_water water = {.readings = r, .reading_count = 2};
	struct ts_series_facts facts;

	(void)state;
	ts_series_make(&water, TS_GH, &facts);
	assert_false(facts.varies);
	water.reading_count = 3;
	ts_series_make(&water, TS_GH, &facts);
	assert_true(facts.varies);
	water.reading_count = 0;
	ts_series_make(&water, TS_GH, &facts);
	assert_false(facts.varies);
}

/* pH tells which reading it is. */
static void order(struct ts_reading *r, size_t count, const double *want)
{
	struct ts_arena arena;
	struct ts_reading *sorted = r;

	ts_arena_open(&arena, NULL);
	ts_readings_by_date(&sorted, count, &arena);
	for (size_t i = 0; i < count; i++)
		assert_true(sorted[i].ph.value == want[i]);
	ts_arena_drop(&arena);
}

static void test_series__dated_readings_stand_oldest_first(void **state)
{
	struct ts_reading newest_first[] = {ph_at("2025-03-02", "08:00", 7.3), ph_at(NULL, NULL, 9),
		ph_at("2025-03-01", "18:00", 7.2), ph_at("2025-03-01", "08:00", 7.1)};
	struct ts_reading no_hour[] = {ph_at("2025-03-02", "18:00", 7.2),
		ph_at("2025-03-02", NULL, 7.3), ph_at("2025-03-02", "08:00", 7.4),
		ph_at("2025-03-01", NULL, 7.1)};

	(void)state;
	order(newest_first, 4, (double[]){7.1, 9, 7.2, 7.3});
	order(no_hour, 4, (double[]){7.1, 7.2, 7.3, 7.4});
	order(no_hour, 0, NULL);
}

/* What stands behind the readings of a water is none of them. */
static void test_series__only_as_many_readings_as_there_are(void **state)
{
	struct ts_reading r[] = {{.season = "winter"}, {.season = "summer"}};
	struct ts_water w = {.readings = r, .reading_count = 1};
	struct ts_reading ph[] = {ph_at("2026-03-01", "08:00", 7), ph_at("2026-03-02", "08:00", 9)};

	(void)state;
	assert_int_equal(ts_water_take_season(&w, "summer"), 0);
	assert_int_equal(w.reading_count, 1);
	assert_true(close_to(ph_series(ph, 1).high, 7));
}

/* The season reaches 45 days to each side, over the turn of the year as well. */
static void test_series__season_of_45_days(void **state)
{
	static const struct {
		const char *date;
		size_t kept;
	} rows[] = {{"2026-03-17", 1}, {"2026-03-18", 0}, {"2025-12-17", 1}, {"2025-12-16", 0},
		{"2024-02-01", 1}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_reading r = ph_at(rows[i].date, NULL, 7);
		struct ts_water w = {.readings = &r, .reading_count = 1};

		assert_int_equal(ts_water_take_season(&w, "2026-01-31"), rows[i].kept);
	}
}

/* 08:29 is eight and 08:30 nine; 23:30 is the midnight hour, 24:00 none. */
static void test_series__hours_are_rounded(void **state)
{
	static const struct {
		const char *one, *other;
		bool same;
	} rows[] = {{"08:29", "07:30", true}, {"08:30", "08:29", false}, {"23:30", "00:10", true},
		{"24:00", "00:00", false}, {"0a:10", "0a:10", false}, {"08-10", "08-10", false},
		{"10:10", "10:10", true}, {"08:1", "08:1", false}, {"09:59", "10:01", true}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_reading r[] = {
			ph_at(NULL, rows[i].one, 7), ph_at(NULL, rows[i].other, 7.5)};
		double spread = ph_series(r, 2).same_hour_spread;

		assert_true(rows[i].same ? close_to(spread, 0.5) : isnan(spread));
	}
}

/* Least squares by hand, days from the earliest: 6/312 a day of three readings, 7.5/419 of four. */
static void test_series__slope_by_hand(void **state)
{
	struct ts_reading r[] = {ph_at("2026-03-05", NULL, 7.2), ph_at("2026-03-01", NULL, 7.0),
		ph_at("2026-03-15", NULL, 7.3), ph_at("2026-03-08", NULL, 7.0)};
	struct ts_series_facts f = ph_series(r, 3);

	(void)state;
	assert_true(close_to(f.days, 14) && close_to(f.drift_per_week, 7 * 6 / 312.0));
	f = ph_series(r, 4);
	assert_true(close_to(f.days, 14));
	assert_true(close_to(f.drift_per_week, 7 * 7.5 / 419));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_series__a_day_swing_is_no_trend),
		cmocka_unit_test(test_series__a_drift_beyond_swing_and_doubt_is_a_trend),
		cmocka_unit_test(test_series__undated_readings_give_a_spread_alone),
		cmocka_unit_test(test_series__season_by_name_and_by_date),
		cmocka_unit_test(test_series__season_without_regard_to_case),
		cmocka_unit_test(test_seasons__words_once_whatever_their_case),
		cmocka_unit_test(test_seasons__dates_far_apart_in_the_year),
		cmocka_unit_test(test_seasons__one_is_none),
		cmocka_unit_test(test_seasons__no_more_than_there_is_room_for),
		cmocka_unit_test(test_varies__beyond_swing_and_doubt),
		cmocka_unit_test(test_series__dated_readings_stand_oldest_first),
		cmocka_unit_test(test_series__only_as_many_readings_as_there_are),
		cmocka_unit_test(test_series__season_of_45_days),
		cmocka_unit_test(test_series__hours_are_rounded),
		cmocka_unit_test(test_series__slope_by_hand),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
