/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a day does and where days end: mass and charge are kept, the simulation meets the closed
 * form, and the properties that hold for every tank. Figures from outside: tests/checks.
 */
#include "waters.h"

#include "../given.h"
#include "stock/drift.h"

#define TANKS 300
#define YEAR 365
#define MASS_EQUAL 1e-9

static struct ts_solution hard(double gh_dh, double kh_dh)
{
	struct ts_solution s;

	assert_int_equal(ts_solution_from_hardness(gh_dh, kh_dh, 25, &s), TS_OK);
	s.dic_mmol_l = 0;
	return s;
}

/* A tank of hard water, 2 mg/L of nitrogen a day, a third changed every week. */
static struct ts_drift_tank plain(const struct ts_drift_supply *supply)
{
	return (struct ts_drift_tank){.water = supply->water,
		.supplies = supply,
		.supply_count = 1,
		.nitrogen_mmol_l = 0.05,
		.filter_share = 1,
		.change_share = 0.3,
		.change_days = 7,
		.co2_most = TS_CHEM_TANK_CO2_MOST,
		.co2_usual = TS_CHEM_TANK_CO2_USUAL,
		.co2_least = TS_CHEM_TANK_CO2_LEAST};
}

/* Tank `i` that nobody chose, with its two supplies in `supplies`. */
static struct ts_drift_tank random_tank(unsigned i, struct ts_drift_supply supplies[2])
{
	uint64_t seed = 0xD1F7u + 77777u * i;
	struct ts_drift_tank t;

	for (int k = 0; k < 9; k++)
		chance(&seed);
	supplies[0] = (struct ts_drift_supply){0, random_water(i), 0.02 * chance(&seed)};
	supplies[1] = (struct ts_drift_supply){
		(unsigned)(90 * chance(&seed)), random_water(i + 500), 0.02 * chance(&seed)};
	t = plain(supplies);
	t.supply_count = 1 + i % 2;
	t.water = random_water(i + 250);
	t.water.dic_mmol_l = 0;
	t.tan_mmol_l = 0.3 * chance(&seed);
	t.nitrogen_mmol_l = 0.2 * chance(&seed);
	t.plant_share = chance(&seed);
	t.filter_share = i % 5 ? 1 : chance(&seed);
	t.change_share = 0.6 * chance(&seed);
	t.change_days = 1 + (double)(int)(14 * chance(&seed));
	t.evaporated_share = 0.02 * chance(&seed);
	t.pure_top_up = i % 3 == 0;
	t.bed = (enum ts_bed)(i % 4);
	t.soil_left_meq_l = t.bed == TS_BED_ACTIVE_SOIL ? 5 * chance(&seed) : 0;
	return t;
}

/* Charge of the dissolved ions less the alkalinity, ammonium counted; every step keeps it. */
static double charge(const struct ts_solution *w, double tan_mmol_l)
{
	return 2 * w->ca_mmol_l + 2 * w->mg_mmol_l + w->na_mmol_l + w->k_mmol_l + tan_mmol_l -
	       w->cl_mmol_l - 2 * w->so4_mmol_l - w->no3_mmol_l - w->alk_meq_l;
}

/* What went in less what went out, beside the simulation. */
struct ledger {
	double nitrogen, chloride, charge;
};

static void book(struct ledger *l, const struct ts_drift_supply *s, double part)
{
	l->nitrogen += part * (s->water.no3_mmol_l + s->tan_mmol_l);
	l->chloride += part * s->water.cl_mmol_l;
	l->charge += part * charge(&s->water, s->tan_mmol_l);
}

static void test_drift__mass_and_charge_are_kept(void **state)
{
	(void)state;
	for (unsigned i = 0; i < TANKS; i++) {
		struct ts_drift_supply supplies[2];
		struct ts_drift_tank t = random_tank(i, supplies);
		struct ledger l = {t.tan_mmol_l + t.water.no3_mmol_l, t.water.cl_mmol_l,
			charge(&t.water, t.tan_mmol_l)};
		struct ts_drift d;

		assert_int_equal(ts_drift_open(&t, table(), &d), TS_OK);
		for (unsigned day = 1; day <= YEAR; day++) {
			bool second = t.supply_count > 1 && day >= supplies[1].from_day;
			const struct ts_drift_supply *supply = &supplies[second];

			ts_drift_live(&d);
			l.nitrogen += (1 - t.plant_share) * t.nitrogen_mmol_l;
			if (!t.pure_top_up)
				book(&l, supply, t.evaporated_share);
			if (ts_drift_change_due(&t, day)) {
				double f = t.change_share;

				l = (struct ledger){(1 - f) * l.nitrogen, (1 - f) * l.chloride,
					(1 - f) * l.charge};
				book(&l, supply, f);
			}
			ts_drift_change(&d);
			near(d.tank.tan_mmol_l + d.tank.water.no3_mmol_l, l.nitrogen,
				MASS_EQUAL * (1 + l.nitrogen), i);
			near(d.tank.water.cl_mmol_l, l.chloride, MASS_EQUAL * (1 + l.chloride), i);
			near(charge(&d.tank.water, d.tank.tan_mmol_l), l.charge,
				MASS_EQUAL * (1 + fabs(l.charge)), i);
		}
	}
}

static void test_drift__no_amount_falls_below_nothing(void **state)
{
	(void)state;
	for (unsigned i = 0; i < TANKS; i++) {
		struct ts_drift_supply supplies[2];
		struct ts_drift_tank t = random_tank(i, supplies);
		struct ts_drift_day days[YEAR + 1];
		unsigned gone;

		assert_int_equal(ts_drift_run(&t, table(), YEAR, days, &gone), TS_OK);
		for (unsigned k = 0; k <= YEAR; k++) {
			assert_true(days[k].day == k);
			assert_true(days[k].kh_dh >= 0 && days[k].gh_dh >= 0);
			assert_true(days[k].tan_mg_l >= 0 && days[k].no3_mg_l >= 0);
			assert_true(isnan(days[k].ph) || (days[k].ph_low <= days[k].ph &&
								 days[k].ph <= days[k].ph_high));
			assert_true(days[k].conductivity_us_cm > 0);
		}
	}
}

/* The steady levels of an inert tank, run for five years, are those of the closed form. */
static void test_drift__steady_state_is_the_closed_form(void **state)
{
	unsigned compared = 0;

	(void)state;
	for (unsigned i = 0; i < TANKS; i++) {
		struct ts_drift_supply supplies[2];
		struct ts_drift_tank t = random_tank(i, supplies);
		struct ts_drift_steady want, settled;
		struct ts_drift_day days[5 * YEAR + 1];
		unsigned last = 5 * YEAR;

		t.bed = TS_BED_INERT;
		t.filter_share = 1;
		t.change_share = fmax(t.change_share, 0.2);
		ts_drift_steady(&t, &want);
		assert_int_equal(ts_drift_settle(&t, table(), &settled), TS_OK);
		assert_int_equal(ts_drift_run(&t, table(), last, days, NULL), TS_OK);
		while (!days[last].change_due)
			last--;
		near(days[last].gh_dh, want.gh_dh.before_change, 1e-3 * want.gh_dh.before_change,
			i);
		if (days[last].filter_doubtful || isnan(want.kh_dh.before_change) ||
			isnan(days[last].ph))
			continue;
		compared++;
		near(days[last].kh_dh, want.kh_dh.before_change, 1e-3 * want.kh_dh.before_change,
			i);
		near(days[last].no3_mg_l, want.no3_mg_l.before_change,
			1e-3 * want.no3_mg_l.before_change, i);
		near(settled.no3_mg_l.after_change, want.no3_mg_l.after_change,
			1e-3 * want.no3_mg_l.after_change, i);
		near(settled.kh_dh.after_change, want.kh_dh.after_change,
			1e-3 * want.kh_dh.after_change, i);
	}
	assert_true(compared > TANKS / 4);
}

static unsigned gone_day(const struct ts_drift_tank *t)
{
	struct ts_drift_day days[YEAR + 1];
	unsigned gone;

	assert_int_equal(ts_drift_run(t, table(), YEAR, days, &gone), TS_OK);
	return days[0].kh_dh < 1.1 ? 0 : gone ? gone : YEAR + 1;
}

static void test_drift__more_buffer_never_brings_the_end_forward(void **state)
{
	(void)state;
	for (unsigned i = 0; i < 40; i++) {
		unsigned before = 0;

		for (double kh = 1; kh <= 12; kh += 1) {
			struct ts_drift_supply supply = {.water = hard(8, kh)};
			struct ts_drift_tank t = plain(&supply);
			unsigned now;

			t.nitrogen_mmol_l = 0.01 * i;
			t.change_share = i % 4 * 0.1;
			now = gone_day(&t);
			assert_true(now >= before);
			before = now;
		}
	}
}

static void test_drift__larger_change_never_raises_nitrate_above_tap(void **state)
{
	(void)state;
	for (unsigned i = 0; i < TANKS; i++) {
		struct ts_drift_supply supplies[2];
		struct ts_drift_tank t = random_tank(i, supplies);
		const struct ts_drift_supply *last = &supplies[t.supply_count - 1];
		double tap = (last->water.no3_mmol_l + last->tan_mmol_l) * TS_MASS_NO3;
		double before = INFINITY;

		for (t.change_share = 0.1; t.change_share <= 1; t.change_share += 0.1) {
			struct ts_drift_steady s;

			ts_drift_steady(&t, &s);
			at_most(s.no3_mg_l.before_change, fmax(before, tap), 1e-9, i);
			at_most(s.no3_mg_l.after_change, fmax(before, tap), 1e-9, i);
			before = s.no3_mg_l.before_change;
		}
	}
}

/* The settled simulation knows filters that fail; there too more change never means more nitrate
 * than the smaller change left, or than the new water brings. */
static void test_drift__larger_change_and_a_working_filter(void **state)
{
	struct ts_drift_supply supply = {.water = hard(14, 9)};
	double before = INFINITY;

	(void)state;
	supply.water.no3_mmol_l = 0.2;
	for (double f = 0.1; f <= 1; f += 0.1) {
		struct ts_drift_tank t = plain(&supply);
		struct ts_drift_steady s;

		t.change_share = f;
		assert_int_equal(ts_drift_settle(&t, table(), &s), TS_OK);
		assert_true(s.no3_mg_l.before_change < before);
		before = s.no3_mg_l.before_change;
	}
	assert_true(before > 0.2 * TS_MASS_NO3);
}

/* KH 3, much feed, no changes: the buffer goes, then ammonia stays. */
static void test_drift__crash_leaves_ammonia(void **state)
{
	struct ts_drift_supply supply = {.water = hard(6, 3)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_day days[61];
	unsigned gone;

	(void)state;
	t.change_share = 0;
	assert_int_equal(ts_drift_run(&t, table(), 60, days, &gone), TS_OK);
	/* 3 - 1.1 dKH = 0.678 meq/L at 0.05 meq/L a day */
	assert_int_equal(gone, 14);
	assert_true(days[14].tan_mg_l == 0);
	assert_true(days[60].kh_dh < 0.5 && isnan(days[60].ph));
	assert_true(days[60].filter_doubtful);
	assert_true(days[60].tan_mg_l > 5);
}

static void test_drift__new_filter_nitrifies_nothing(void **state)
{
	struct ts_drift_supply supply = {.water = hard(14, 9)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_day days[8];

	(void)state;
	t.filter_share = 0;
	assert_int_equal(ts_drift_run(&t, table(), 7, days, NULL), TS_OK);
	near(days[7].tan_mg_l, 7 * 0.05 * TS_WEIGHT_N, 1e-9, 0);
	assert_true(days[7].no3_mg_l == 0);
	assert_true(days[7].kh_dh > days[0].kh_dh);
}

static void test_drift__plants_take_their_share(void **state)
{
	struct ts_drift_supply supply = {.water = hard(14, 9)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_day days[8];

	(void)state;
	t.plant_share = 0.4;
	assert_int_equal(ts_drift_run(&t, table(), 7, days, NULL), TS_OK);
	near(days[7].no3_mg_l, 0.6 * 7 * 0.05 * TS_MASS_NO3, 1e-9, 0);
	near(days[0].kh_dh - days[7].kh_dh, ts_chem_dkh_from_meq_l(0.6 * 7 * 0.05), 1e-9, 0);
}

/* Topping up with tap water makes the tank harder than the tap, pure water does not. */
static void test_drift__tap_top_up_hardens(void **state)
{
	struct ts_drift_supply supply = {.water = hard(10, 6)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_steady tap, pure;

	(void)state;
	t.evaporated_share = 0.08 / 7;
	ts_drift_steady(&t, &tap);
	t.pure_top_up = true;
	ts_drift_steady(&t, &pure);
	near(pure.gh_dh.before_change, 10, 1e-9, 0);
	/* 8 % a week over 30 % changes: 10 (1 + 0.08 / 0.3) */
	near(tap.gh_dh.before_change, 10 * (1 + 0.08 / 0.3), 1e-9, 0);
}

/* Aragonite stops at 5.4 dKH at four times the CO2 of air (computed, 25 C), after weeks. */
static void test_drift__aragonite_stops_early(void **state)
{
	struct ts_drift_supply supply = {.water = hard(1, 0.6)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_day days[YEAR + 1];

	(void)state;
	t.nitrogen_mmol_l = 0;
	t.change_share = 0;
	t.bed = TS_BED_ARAGONITE;
	assert_int_equal(ts_drift_run(&t, table(), YEAR, days, NULL), TS_OK);
	assert_true(days[7].kh_dh < 3);
	assert_true(days[60].kh_dh > 4);
	assert_true(fabs(days[YEAR].kh_dh - 5.4) < 0.15);
	assert_true(days[YEAR].kh_dh - days[YEAR - 1].kh_dh < 1e-3);
}

static void test_drift__soil_takes_the_buffer_until_spent(void **state)
{
	struct ts_drift_supply supply = {.water = hard(8, 5)};
	struct ts_drift_tank t = plain(&supply);
	struct ts_drift_day days[YEAR + 1];

	(void)state;
	t.nitrogen_mmol_l = 0.005;
	t.bed = TS_BED_ACTIVE_SOIL;
	t.soil_left_meq_l = 6;
	assert_int_equal(ts_drift_run(&t, table(), YEAR, days, NULL), TS_OK);
	assert_true(days[13].kh_dh < 0.5 && isnan(days[13].ph));
	assert_true(days[YEAR].kh_dh > 4 && !isnan(days[YEAR].ph));
}

static void test_drift__supply_changes_with_the_season(void **state)
{
	struct ts_drift_supply supplies[] = {{.water = hard(14, 9)}, {100, hard(5, 3), 0}};
	struct ts_drift_tank t = plain(supplies);
	struct ts_drift_day days[YEAR + 1];

	(void)state;
	t.supply_count = 2;
	assert_int_equal(ts_drift_run(&t, table(), YEAR, days, NULL), TS_OK);
	near(days[99].gh_dh, 14, 1e-9, 0);
	near(days[YEAR].gh_dh, 5, 0.01, 0);
}

/* The smallest change just keeps the bounds, and a little less does not. */
static void test_drift__smallest_change_is_tight(void **state)
{
	const struct ts_drift_bounds bounds = {2, 50};
	unsigned found = 0;

	(void)state;
	for (unsigned i = 0; i < 40; i++) {
		struct ts_drift_supply supply = {.water = hard(10, 5 + i % 7)};
		struct ts_drift_tank t = plain(&supply);
		struct ts_drift_steady s;
		double f = -1;

		t.nitrogen_mmol_l = 0.01 + 0.002 * i;
		assert_int_equal(ts_drift_smallest_change(&t, &bounds, table(), &f), TS_OK);
		t.change_share = f;
		assert_int_equal(ts_drift_settle(&t, table(), &s), TS_OK);
		assert_true(s.kh_dh.before_change >= 2 && s.no3_mg_l.before_change <= 50);
		t.change_share = f - 0.002;
		if (t.change_share <= 0)
			continue;
		found++;
		assert_int_equal(ts_drift_settle(&t, table(), &s), TS_OK);
		assert_false(s.kh_dh.before_change >= 2 && s.no3_mg_l.before_change <= 50);
	}
	assert_true(found > 30);
}

static void test_drift__smallest_change_out_of_reach(void **state)
{
	const struct ts_drift_bounds bounds = {2, 50};
	struct ts_drift_supply supply = {.water = hard(10, 8)};
	struct ts_drift_tank t = plain(&supply);
	double f = -1;

	(void)state;
	supply.water.no3_mmol_l = 60 / TS_MASS_NO3;
	assert_int_equal(ts_drift_smallest_change(&t, &bounds, table(), &f), TS_NO);
	supply.water = hard(10, 1.5);
	assert_int_equal(ts_drift_smallest_change(&t, &bounds, table(), &f), TS_NO);
	t.change_days = 0;
	assert_int_equal(ts_drift_smallest_change(&t, &bounds, table(), &f), TS_BAD_INPUT);
	assert_true(f == -1);
}

static void test_drift__half_weekly_changes_fall_on_whole_days(void **state)
{
	struct ts_drift_tank t = {.change_share = 0.2, .change_days = 3.5};
	unsigned count = 0;

	(void)state;
	for (unsigned day = 0; day <= 28; day++)
		count += ts_drift_change_due(&t, day);
	assert_int_equal(count, 8);
	assert_false(ts_drift_change_due(&t, 0));
}

static void test_drift__out_of_range_is_refused(void **state)
{
	static const double bad[] = {NAN, INFINITY, -1, 1e9};
	struct ts_drift_supply supply = {.water = hard(10, 8)};
	struct ts_drift d = {.day = 77};

	(void)state;
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct ts_drift_tank t[8];
		double *members[] = {&t[0].nitrogen_mmol_l, &t[1].plant_share, &t[2].filter_share,
			&t[3].change_share, &t[4].evaporated_share, &t[5].co2_usual,
			&t[6].water.ca_mmol_l, &t[7].tan_mmol_l};

		for (size_t k = 0; k < 8; k++) {
			t[k] = plain(&supply);
			*members[k] = bad[i];
			assert_int_equal(ts_drift_open(&t[k], table(), &d), TS_BAD_INPUT);
		}
	}
	assert_int_equal(d.day, 77);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_drift__mass_and_charge_are_kept),
		cmocka_unit_test(test_drift__no_amount_falls_below_nothing),
		cmocka_unit_test(test_drift__steady_state_is_the_closed_form),
		cmocka_unit_test(test_drift__more_buffer_never_brings_the_end_forward),
		cmocka_unit_test(test_drift__larger_change_never_raises_nitrate_above_tap),
		cmocka_unit_test(test_drift__larger_change_and_a_working_filter),
		cmocka_unit_test(test_drift__crash_leaves_ammonia),
		cmocka_unit_test(test_drift__new_filter_nitrifies_nothing),
		cmocka_unit_test(test_drift__plants_take_their_share),
		cmocka_unit_test(test_drift__tap_top_up_hardens),
		cmocka_unit_test(test_drift__aragonite_stops_early),
		cmocka_unit_test(test_drift__soil_takes_the_buffer_until_spent),
		cmocka_unit_test(test_drift__supply_changes_with_the_season),
		cmocka_unit_test(test_drift__smallest_change_is_tight),
		cmocka_unit_test(test_drift__smallest_change_out_of_reach),
		cmocka_unit_test(test_drift__half_weekly_changes_fall_on_whole_days),
		cmocka_unit_test(test_drift__out_of_range_is_refused),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
