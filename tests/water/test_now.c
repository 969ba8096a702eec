/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The state of a tank out of its log: of each value the newest reading, whatever other rows lack.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../given.h"
#include "../random.h"
#include "base/date.h"
#include "water/now.h"

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

static bool close_to(double a, double b)
{
	return fabs(a - b) < 1e-9;
}

static void test_now__a_row_of_ammonia_forgets_nothing(void **state)
{
	struct ts_reading log[] = {{.date = "2026-05-08",
					   .gh_dh = value(8),
					   .kh_dh = value(4),
					   .ph = value(7.4),
					   .no3_mg_l = value(20)},
		{.date = "2026-05-10", .tan_mg_l = value(0)}};
	struct ts_now now;

	(void)state;
	ts_now_make(log, 2, day("2026-05-11"), table(), &now);
	assert_true(ts_now_figure(&now, TS_NOW_GH) == 8 && ts_now_figure(&now, TS_NOW_KH) == 4);
	assert_true(ts_now_figure(&now, TS_NOW_NO3) == 20 && ts_now_figure(&now, TS_NOW_TAN) == 0);
	assert_true(now.from[TS_NOW_GH].age_days == 3 && now.from[TS_NOW_TAN].age_days == 1);
	assert_true(isnan(ts_now_figure(&now, TS_NOW_NO2)));
	assert_null(now.from[TS_NOW_NO2].reading);
	assert_int_equal(now.read, 5);
	assert_int_equal(ts_now_water(&now).kind, TS_WATER_TANK);
}

static void test_now__newest_by_day_hour_and_place(void **state)
{
	struct ts_reading log[] = {{.date = "2026-05-10", .time = "18:00", .kh_dh = value(3)},
		{.date = "2026-05-10", .time = "08:00", .kh_dh = value(2)},
		{.date = "2026-03-01", .kh_dh = value(8)}};
	struct ts_now now;

	(void)state;
	ts_now_make(log, 3, day("2026-05-11"), table(), &now);
	assert_true(ts_now_figure(&now, TS_NOW_KH) == 3);
	log[1].time = "18:00"; /* the same moment: the one written last */
	ts_now_make(log, 3, day("2026-05-11"), table(), &now);
	assert_true(ts_now_figure(&now, TS_NOW_KH) == 2);
	log[2].date = NULL; /* at the end of the log without a day: the newest, of unknown age */
	ts_now_make(log, 3, day("2026-05-11"), table(), &now);
	assert_true(ts_now_figure(&now, TS_NOW_KH) == 8 && isnan(now.from[TS_NOW_KH].age_days));
}

static void test_now__readings_ahead_are_left_out(void **state)
{
	struct ts_reading log[] = {{.date = "2026-05-01", .kh_dh = value(4)},
		{.date = "2026-05-12", .kh_dh = value(9)}};
	struct ts_now now;

	(void)state;
	ts_now_make(log, 2, day("2026-05-11"), table(), &now);
	assert_true(ts_now_figure(&now, TS_NOW_KH) == 4 && now.ahead == 1);
	ts_now_make(log, 2, -1, table(), &now);
	assert_true(ts_now_figure(&now, TS_NOW_KH) == 9 && now.ahead == 0);
}

/* Older than eight weeks: an answer asks. */
static void test_now__old_readings_are_marked(void **state)
{
	struct ts_reading log[] = {{.date = "2026-03-01", .kh_dh = value(4)}};
	struct ts_now now;

	(void)state;
	ts_now_make(log, 1, day("2026-03-01") + 56, table(), &now);
	assert_false(now.from[TS_NOW_KH].old);
	ts_now_make(log, 1, day("2026-03-01") + 57, table(), &now);
	assert_true(now.from[TS_NOW_KH].old);
}

/* An old analysis must not outvote a new GH, nor NO3-N a newer NO3. */
static void test_now__forms_of_one_value_go_together(void **state)
{
	struct ts_reading log[] = {{.date = "2026-03-01",
					   .ca_mg_l = value(100),
					   .mg_mg_l = value(20),
					   .alkalinity_meq_l = value(3),
					   .no3_n_mg_l = value(10)},
		{.date = "2026-05-01", .gh_dh = value(5), .kh_dh = value(2), .no3_mg_l = value(5)}};
	const struct ts_keeping keeping = {0};
	struct ts_profile profile;
	struct ts_water water;
	struct ts_now now;

	(void)state;
	ts_now_make(log, 2, -1, table(), &now);
	assert_int_equal(now.reading.ca_mg_l.kind, TS_MEASURE_NONE);
	assert_int_equal(now.reading.alkalinity_meq_l.kind, TS_MEASURE_NONE);
	water = ts_now_water(&now);
	ts_profile_make(&water, &keeping, table(), -1, &profile);
	assert_true(close_to(profile.at[TS_GH].value, 5) && close_to(profile.at[TS_KH].value, 2));
	assert_true(profile.poisons.no3_mg_l == 5);
	ts_now_make(log, 1, -1, table(), &now);
	assert_true(fabs(ts_now_figure(&now, TS_NOW_KH) - 8.4) < 0.05);
	assert_true(fabs(ts_now_figure(&now, TS_NOW_NO3) - 44.27) < 0.05);
}

/* Each value keeps the doubt of the method with which it was read. */
/* What was read in another form alone: a hydrometer, a meter for dissolved solids. */
static void test_now__other_forms_are_readings_too(void **state)
{
	struct ts_reading log[] = {{.date = "2026-05-08",
					   .salinity_g_l = value(0.2),
					   .conductivity_us_cm = value(400)},
		{.date = "2026-05-10", .specific_gravity = value(1.01), .tds_mg_l = value(14000)}};
	struct ts_now now;

	(void)state;
	ts_now_make(log, 2, day("2026-05-11"), table(), &now);
	assert_true(now.reading.specific_gravity.value == 1.01);
	assert_int_equal(now.reading.salinity_g_l.kind, TS_MEASURE_NONE);
	assert_true(now.reading.tds_mg_l.value == 14000);
	assert_int_equal(now.reading.conductivity_us_cm.kind, TS_MEASURE_NONE);
	assert_true(now.from[TS_NOW_SALINITY].age_days == 1);
}

static void test_now__doubt_by_the_own_method(void **state)
{
	struct ts_reading log[] = {
		{.date = "2026-03-01", .method = TS_METHOD_STRIP, .gh_dh = value(10)},
		{.date = "2026-05-01", .method = TS_METHOD_METER, .ph = value(7)}};
	const struct ts_keeping keeping = {0};
	struct ts_profile profile;
	struct ts_water water;
	struct ts_now now;

	(void)state;
	ts_now_make(log, 2, -1, table(), &now);
	water = ts_now_water(&now);
	ts_profile_make(&water, &keeping, table(), -1, &profile);
	assert_true(close_to(profile.at[TS_GH].low, 7) && close_to(profile.at[TS_GH].high, 13));
	assert_true(close_to(profile.at[TS_PH].low, 6.9) && close_to(profile.at[TS_PH].high, 7.1));
	assert_false(profile.at[TS_GH].exposure || profile.at[TS_PH].exposure);
}

/* Over random logs: whoever looks for the newest of one value alone finds the same. */
static void test_now__whatever_the_log_holds(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 3, 400);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct ts_reading log[8] = {{0}};
		char dates[8][12];
		double newest = (double)NAN;
		long best = -1, today = day("2026-02-15");
		struct ts_now now;

		random_case(&r, i);
		for (int k = 0; k < 8; k++) {
			unsigned d = 1 + any_below(&r, 28);

			snprintf(dates[k], sizeof dates[k], "2026-02-%02u", d);
			log[k].date = dates[k];
			if (any_percent(&r, 50))
				log[k].kh_dh = value(k);
			if (any_percent(&r, 50))
				log[k].tan_mg_l = value(0.1);
			if (log[k].kh_dh.kind && day(dates[k]) <= today && day(dates[k]) >= best) {
				best = day(dates[k]);
				newest = k;
			}
		}
		ts_now_make(log, 8, today, table(), &now);
		CLAIM(&r, isnan(newest) ? isnan(ts_now_figure(&now, TS_NOW_KH))
					: ts_now_figure(&now, TS_NOW_KH) == newest);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_now__a_row_of_ammonia_forgets_nothing),
		cmocka_unit_test(test_now__newest_by_day_hour_and_place),
		cmocka_unit_test(test_now__readings_ahead_are_left_out),
		cmocka_unit_test(test_now__old_readings_are_marked),
		cmocka_unit_test(test_now__forms_of_one_value_go_together),
		cmocka_unit_test(test_now__other_forms_are_readings_too),
		cmocka_unit_test(test_now__doubt_by_the_own_method),
		cmocka_unit_test(test_now__whatever_the_log_holds),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
