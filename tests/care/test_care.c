/* SPDX-License-Identifier: Apache-2.0 */
/* The public functions: they refuse what the engine refuses, and agree with it otherwise. */
#include "waters.h"

#include <tapshoal/care.h>

#include "../given.h"

static struct ts_profile profile_of(double gh_dh, double kh_dh, double ph)
{
	struct ts_reading reading = {.gh_dh = value(gh_dh), .ph = value(ph)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	const struct ts_keeping keeping = {0};
	struct ts_profile profile;

	if (!isnan(kh_dh))
		reading.kh_dh = value(kh_dh);
	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	return profile;
}

static void test_care__steps(void **state)
{
	struct ts_profile p = profile_of(9, 9, 8);
	struct ts_titration_step steps[8];
	size_t count = 0;

	(void)state;
	assert_int_equal(ts_titration_steps(&p, NAN, false, 0.5, 8, NULL, steps, &count), TS_OK);
	assert_int_equal(count, 8);
	near(steps[0].ph_closed, 8, 1e-3, 0);
	assert_true(steps[7].alkalinity_meq_l < 0 && steps[7].ph_closed < 4);
}

static void test_care__evenings(void **state)
{
	struct ts_profile p = profile_of(9, 9, 8);
	struct ts_titration_nights n;

	(void)state;
	assert_int_equal(
		ts_titration_evenings(&p, 25, false, 7, TS_KEEPER_SAME_DOSE, NULL, &n), TS_OK);
	assert_int_equal(n.gone_day, 6);
	assert_int_equal(
		ts_titration_evenings(&p, 25, false, 8, TS_KEEPER_SAME_DOSE, NULL, &n), TS_NO);
}

static void test_care__no_buffer_no_answer(void **state)
{
	struct ts_profile none = profile_of(9, NAN, 7), little = profile_of(2, 0.3, 6.5);
	struct ts_titration_step step;
	struct ts_titration_nights n;
	size_t count = 77;

	(void)state;
	assert_int_equal(ts_titration_steps(&none, NAN, false, 1, 1, NULL, &step, &count), TS_NO);
	assert_int_equal(ts_titration_steps(&little, NAN, false, 1, 1, NULL, &step, &count), TS_NO);
	assert_int_equal(
		ts_titration_evenings(&none, 25, false, 7, TS_KEEPER_BY_TEST, NULL, &n), TS_NO);
	assert_int_equal(count, 77);
}

static void test_care__days(void **state)
{
	struct ts_reading supply = {.gh_dh = value(6), .kh_dh = value(3)};
	struct ts_plan plan = {.water = {.readings = &supply, .reading_count = 1},
		.tank = {.volume_l = 100, .water_change = {1, 1000}, .cover = TS_COVER_YES}};
	struct ts_drift_day days[61];
	unsigned gone = 0;

	(void)state;
	assert_int_equal(ts_drift_days(&plan, 0, 70, 0, 60, NULL, days, &gone), TS_OK);
	assert_true(gone > 10 && gone < 20);
	assert_true(days[60].tan_mg_l > 1);
	plan.tank.volume_l = 0;
	assert_int_equal(ts_drift_days(&plan, 0, 70, 0, 60, NULL, days, &gone), TS_BAD_INPUT);
	plan.tank.volume_l = 100;
	supply.kh_dh = (struct ts_measure){0};
	assert_int_equal(ts_drift_days(&plan, 0, 70, 0, 60, NULL, days, &gone), TS_NO);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_care__steps),
		cmocka_unit_test(test_care__evenings),
		cmocka_unit_test(test_care__no_buffer_no_answer),
		cmocka_unit_test(test_care__days),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
