/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How a plan becomes a tank to simulate: what was read is taken, each gap is filled by its rule
 * and said so.
 */
#include "waters.h"

#include "../given.h"
#include "base/date.h"
#include "stock/plan_drift.h"

static long day_of(const char *date)
{
	long day = 0;

	assert_true(ts_date_read(date, &day));
	return day;
}

struct fixture {
	struct ts_reading supply[3], tank[3];
	struct ts_plan plan;
	struct ts_plan_drift drift;
};

/* Hard tap, a tank of which only what a test adds was read. */
static void open_fixture(struct fixture *f)
{
	*f = (struct fixture){0};
	f->supply[0] = (struct ts_reading){
		.date = "2026-03-01", .gh_dh = value(14), .kh_dh = value(9), .no3_mg_l = value(10)};
	f->plan.water = (struct ts_water){.readings = f->supply, .reading_count = 1};
	f->plan.tank.readings = f->tank;
}

static enum ts_status made(struct fixture *f, const char *today)
{
	struct ts_now now;

	ts_now_make(
		f->plan.tank.readings, f->plan.tank.reading_count, day_of(today), table(), &now);
	return ts_plan_drift(&f->plan, &now, day_of(today), 0.05, 0.15, table(), &f->drift);
}

static double kh_of(const struct ts_solution *s)
{
	return ts_chem_dkh_from_meq_l(s->alk_meq_l);
}

static void test_plan_drift__gaps_are_filled_and_said(void **state)
{
	const unsigned said = TS_DRIFT_TANK_AS_SUPPLY | TS_DRIFT_GH_AS_SUPPLY |
			      TS_DRIFT_NO3_AS_SUPPLY | TS_DRIFT_NO_TAN | TS_DRIFT_FILTER_MATURE |
			      TS_DRIFT_CHANGE_USUAL | TS_DRIFT_COVER_OPEN | TS_DRIFT_TEMPERATURE |
			      TS_DRIFT_TOP_UP_SUPPLY;
	struct fixture f;
	struct ts_drift d;

	(void)state;
	open_fixture(&f);
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	assert_int_equal(f.drift.assumed, said);
	near(kh_of(&f.drift.tank.water), 9, 1e-9, 0);
	near(f.drift.tank.water.no3_mmol_l * TS_MASS_NO3, 10, 1e-9, 0);
	near(f.drift.tank.change_share, 0.3, 1e-12, 0);
	near(f.drift.tank.evaporated_share, 0.08 / 7, 1e-12, 0);
	assert_true(f.drift.tank.filter_share == 1 && !f.drift.tan_known);
	assert_int_equal(ts_drift_open(&f.drift.tank, table(), &d), TS_OK);
}

static void test_plan_drift__what_was_read_is_taken(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.tank[0] = (struct ts_reading){.date = "2026-03-09",
		.ph = value(7.9),
		.gh_dh = value(16),
		.kh_dh = value(5),
		.no3_mg_l = value(40),
		.tan_mg_l = value(0.5)};
	f.plan.tank.reading_count = 1;
	f.plan.tank.temp_c = (struct ts_measure){25, 24, 26, TS_MEASURE_RANGE};
	f.plan.tank.water_change = (struct ts_every){50, 3.5};
	f.plan.tank.cover = TS_COVER_YES;
	f.plan.tank.top_up = TS_TOP_UP_SUPPLY;
	f.plan.tank.filter = TS_FILTER_NEW;
	f.plan.tank.substrate = TS_SUBSTRATE_ARAGONITE;
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	assert_int_equal(f.drift.assumed & ~(unsigned)TS_DRIFT_OWN_CO2, 0);
	near(kh_of(&f.drift.tank.water), 5, 1e-9, 0);
	near(f.drift.tank.tan_mmol_l * TS_WEIGHT_N, 0.5, 1e-9, 0);
	near(f.drift.tank.water.no3_mmol_l * TS_MASS_NO3, 40, 1e-9, 0);
	near(f.drift.tank.change_share, 0.5, 1e-12, 0);
	near(f.drift.tank.change_days, 3.5, 1e-12, 0);
	near(f.drift.tank.evaporated_share, 0.03 / 7, 1e-12, 0);
	assert_true(f.drift.tank.filter_share == 0 && f.drift.tan_known);
	assert_int_equal(f.drift.tank.bed, TS_BED_ARAGONITE);
}

/* A tank full of gas keeps its own level, and its interval lies around it. */
static void test_plan_drift__own_gas(void **state)
{
	struct fixture f;
	struct ts_drift_day now;
	struct ts_drift d;

	(void)state;
	open_fixture(&f);
	f.tank[0] =
		(struct ts_reading){.method = TS_METHOD_METER, .ph = value(7.2), .kh_dh = value(6)};
	f.plan.tank.reading_count = 1;
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	assert_true(f.drift.assumed & TS_DRIFT_OWN_CO2);
	assert_int_equal(ts_drift_open(&f.drift.tank, table(), &d), TS_OK);
	ts_drift_read(&d, true, &now);
	near(now.ph, 7.2, 1e-4, 0);
	/* half the swing of a plain tank and the meter's doubt, to either side */
	near(now.ph_low, 7.0, 0.01, 0);
	near(now.ph_high, 7.4, 0.01, 0);
}

static void test_plan_drift__dated_supply_is_seasonal(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.supply[1] =
		(struct ts_reading){.date = "2025-08-01", .gh_dh = value(8), .kh_dh = value(5)};
	f.supply[2] =
		(struct ts_reading){.date = "2025-12-01", .gh_dh = value(10), .kh_dh = value(7)};
	f.plan.water.reading_count = 3;
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	assert_true(f.drift.assumed & TS_DRIFT_SEASON);
	assert_int_equal(f.drift.tank.supply_count, 4);
	near(kh_of(&f.drift.supplies[0].water), 9, 1e-9, 0);
	near(kh_of(&f.drift.supplies[1].water), 5, 1e-9, 0);
	assert_int_equal(f.drift.supplies[1].from_day, 144); /* 10 March to 1 August */
	near(kh_of(&f.drift.supplies[2].water), 7, 1e-9, 0);
	assert_int_equal(f.drift.supplies[2].from_day, 266);
	near(kh_of(&f.drift.supplies[3].water), 9, 1e-9, 0); /* and March comes again */
	assert_int_equal(f.drift.supplies[3].from_day, 356);
}

static void test_plan_drift__change_water_is_the_supply(void **state)
{
	struct ts_reading soft = {.gh_dh = value(2), .kh_dh = value(1)};
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.plan.change_water = (struct ts_water){.readings = &soft, .reading_count = 1};
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	near(kh_of(&f.drift.supplies[0].water), 1, 1e-9, 0);
}

/* 0.198 mg of nitrogen for each mg of chlorine bound in chloramine (from its formula). */
static void test_plan_drift__chloramine_leaves_ammonium(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.supply[0].chlorine_mg_l = value(1);
	f.plan.water.disinfectant = TS_DISINFECTANT_CHLORAMINE;
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	near(f.drift.supplies[0].tan_mmol_l * TS_WEIGHT_N, 0.198, 0.001, 0);
	f.plan.water.disinfectant = TS_DISINFECTANT_CHLORINE;
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	assert_true(f.drift.supplies[0].tan_mmol_l == 0);
}

static void test_plan_drift__no_kh_leaves_gh_and_nitrate(void **state)
{
	struct fixture f;

	(void)state;
	open_fixture(&f);
	f.supply[0].kh_dh = (struct ts_measure){0};
	assert_int_equal(made(&f, "2026-03-10"), TS_OK);
	assert_true(f.drift.assumed & TS_DRIFT_NO_KH);
	near(ts_chem_dh_from_mmol_l(f.drift.tank.water.ca_mmol_l + f.drift.tank.water.mg_mmol_l),
		14, 1e-9, 0);
	near(f.drift.tank.water.no3_mmol_l * TS_MASS_NO3, 10, 1e-9, 0);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_plan_drift__gaps_are_filled_and_said),
		cmocka_unit_test(test_plan_drift__what_was_read_is_taken),
		cmocka_unit_test(test_plan_drift__own_gas),
		cmocka_unit_test(test_plan_drift__dated_supply_is_seasonal),
		cmocka_unit_test(test_plan_drift__change_water_is_the_supply),
		cmocka_unit_test(test_plan_drift__chloramine_leaves_ammonium),
		cmocka_unit_test(test_plan_drift__no_kh_leaves_gh_and_nitrate),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
