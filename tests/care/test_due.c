/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is due: one case a reason of the table, and the rules of dates and order around them. The
 * intervals are read from the practice table, so that a test says which row decides, not its value.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "../given.h"
#include "base/date.h"
#include "care/due.h"
#include "care/due_look.h"

#define TODAY "2026-03-10"

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

static double every(enum ts_practice_id id)
{
	return ts_practice_rows[id].value;
}

/* Everything read, nothing unusual, on one day. */
static struct ts_reading settled(const char *date)
{
	return (struct ts_reading){.date = date,
		.gh_dh = value(9),
		.kh_dh = value(6),
		.ph = value(7.6),
		.tan_mg_l = value(0),
		.no2_mg_l = value(0),
		.no3_mg_l = value(20),
		.method = TS_METHOD_DROPS};
}

static struct ts_plan plan_of(struct ts_reading *readings, size_t count)
{
	return (struct ts_plan){
		.tank = {.filter = TS_FILTER_MATURE, .readings = readings, .reading_count = count}};
}

static void ask(const struct ts_plan *plan, const struct ts_water *supply, struct ts_due *ret)
{
	const struct ts_due_case c = {
		.plan = plan, .supply = supply, .today = day(TODAY), .buffer_days = (double)NAN};

	ts_due_make(&c, NULL, ret);
}

/* The item that asks for a value; each value is asked for exactly once. */
static const struct ts_due_item *item_of(
	const struct ts_due *due, enum ts_due_where where, enum ts_due_what what)
{
	const struct ts_due_item *found = NULL;

	for (size_t i = 0; i < due->count; i++) {
		if (due->items[i].where != where || !(due->items[i].what & 1u << what))
			continue;
		assert_null(found);
		found = &due->items[i];
	}
	assert_non_null(found);
	return found;
}

static void assert_reason(const struct ts_due *due, enum ts_due_what what,
	enum ts_due_reason reason, const char *date)
{
	const struct ts_due_item *item = item_of(due, TS_DUE_TANK, what);

	assert_string_equal(ts_due_rows[item->reason].id, ts_due_rows[reason].id);
	assert_int_equal(item->day, day(date));
}

static void test_settled_tank__the_usual_rows(void **state)
{
	struct ts_reading r = settled("2026-03-01");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	ask(&plan, NULL, &due);
	assert_int_equal(due.count, 3);
	assert_reason(&due, TS_DUE_NITRATE, TS_DUE_NITRATE_USUAL, "2026-03-15");
	assert_reason(&due, TS_DUE_KH, TS_DUE_MINERALS, "2026-03-29");
	assert_reason(&due, TS_DUE_NITRITE, TS_DUE_AMMONIA_USUAL, "2026-03-29");
	assert_int_equal(due.items[0].reason, TS_DUE_NITRATE_USUAL); /* the soonest first */
	assert_true(due.items[0].every_days == every(TS_P_DUE_NITRATE));
}

static void test_never_read__due_today(void **state)
{
	struct ts_plan plan = plan_of(NULL, 0);
	struct ts_due due;

	(void)state;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_MINERALS, TODAY);
	assert_false(item_of(&due, TS_DUE_TANK, TS_DUE_GH)->read);
}

static void test_never_read_in_a_tank_to_come__due_when_it_is_filled(void **state)
{
	struct ts_plan plan = plan_of(NULL, 0);
	struct ts_due due;

	(void)state;
	plan.tank.running_since = "2026-04-01";
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_AMMONIA_USUAL, "2026-04-01");
}

static void test_reading_without_a_date__due_today(void **state)
{
	struct ts_reading r = settled(NULL);
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_MINERALS, TODAY);
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_GH)->read);
	assert_false(item_of(&due, TS_DUE_TANK, TS_DUE_GH)->dated);
}

static void test_each_value_has_its_own_last_reading(void **state)
{
	struct ts_reading r[] = {settled("2026-02-01"), {.date = "2026-03-09", .kh_dh = value(6)}};
	struct ts_plan plan = plan_of(r, 2);
	struct ts_due due;

	(void)state;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_MINERALS, "2026-03-01");
	assert_reason(&due, TS_DUE_KH, TS_DUE_MINERALS, "2026-04-06");
}

static void test_other_forms_of_a_value_count(void **state)
{
	struct ts_reading r = {.date = "2026-03-01",
		.ca_mg_l = value(50),
		.mg_mg_l = value(8),
		.alkalinity_meq_l = value(2),
		.no2_n_mg_l = value(0),
		.no3_n_mg_l = value(4)};
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	ask(&plan, NULL, &due);
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_GH)->read);
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_KH)->read);
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_NITRITE)->read);
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_NITRATE)->read);
	assert_false(item_of(&due, TS_DUE_TANK, TS_DUE_PH)->read);
}

static void test_new_filter__ammonia_soon_and_the_buffer(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	plan.tank.filter = TS_FILTER_NEW;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_CYCLING, "2026-03-11");
	assert_reason(&due, TS_DUE_KH, TS_DUE_CYCLING_BUFFER, "2026-03-16");
	assert_reason(&due, TS_DUE_GH, TS_DUE_MINERALS, "2026-04-06");
}

static void test_unknown_filter__young_until_time_or_animals_prove_it(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_stock_line line = {.since = "2025-12-01", .count = 3};
	struct ts_due due;

	(void)state;
	plan.tank.filter = TS_FILTER_UNKNOWN;
	plan.tank.running_since = "2026-01-20";
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_CYCLING, "2026-03-11");
	plan.tank.running_since = "2025-12-01";
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_AMMONIA_USUAL, "2026-04-06");
	plan.tank.running_since = "2026-01-20";
	plan.stock = &line;
	plan.stock_count = 1;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_AMMONIA_USUAL, "2026-04-06");
}

static void test_unknown_filter_never_tested__as_new(void **state)
{
	struct ts_plan plan = plan_of(NULL, 0);
	struct ts_due due;

	(void)state;
	plan.tank.filter = TS_FILTER_UNKNOWN;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_NITRITE, TS_DUE_CYCLING, TODAY);
}

static void test_ammonia_or_nitrite_found__both_every_day(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	r.tan_mg_l = value(0.5);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_FOUND, TODAY);
	assert_reason(&due, TS_DUE_NITRITE, TS_DUE_FOUND, TODAY);
	assert_int_equal(item_of(&due, TS_DUE_TANK, TS_DUE_NITRITE)->of, TS_DUE_AMMONIA);
	r.tan_mg_l = value(0);
	r.no2_mg_l = value(1);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_FOUND, TODAY);
	assert_int_equal(item_of(&due, TS_DUE_TANK, TS_DUE_AMMONIA)->of, TS_DUE_NITRITE);
}

static void test_danger_stands_before_what_is_longer_overdue(void **state)
{
	struct ts_reading r[] = {settled("2025-12-01"),
		{.date = "2026-03-09", .tan_mg_l = value(1), .no2_mg_l = value(0)}};
	struct ts_plan plan = plan_of(r, 2);
	struct ts_due due;

	(void)state;
	ask(&plan, NULL, &due);
	assert_int_equal(due.items[0].reason, TS_DUE_FOUND);
	assert_true(due.items[1].day < day(TODAY));
	assert_true(ts_due_is_danger(TS_DUE_FOUND) && !ts_due_is_danger(TS_DUE_MINERALS));
}

static void test_signs_or_deaths__everything_every_day(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_sign sign = {
		TS_SIGN_LISTLESS, TS_ONSET_DAYS, TS_BREADTH_ONE, TS_AFTER_UNKNOWN, NULL};
	struct ts_due due;

	(void)state;
	plan.signs = &sign;
	plan.sign_count = 1;
	ask(&plan, NULL, &due);
	assert_int_equal(due.count, 1);
	assert_reason(&due, TS_DUE_GH, TS_DUE_DISTRESS, TODAY);
	plan.sign_count = 0;
	plan.deaths = value(2);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_NITRATE, TS_DUE_DISTRESS, TODAY);
	plan.deaths = value(0);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_MINERALS, "2026-04-06");
}

static void test_newcomers__for_a_fortnight_and_not_before_they_come(void **state)
{
	static const struct {
		const char *since;
		enum ts_due_reason reason;
	} cases[] = {{"2026-03-08", TS_DUE_NEWCOMERS}, {"2026-02-20", TS_DUE_AMMONIA_USUAL},
		{"2026-03-20", TS_DUE_AMMONIA_USUAL}};
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	for (size_t i = 0; i < 3; i++) {
		struct ts_stock_line line = {.since = cases[i].since, .count = 3};

		plan.stock = &line;
		plan.stock_count = 1;
		ask(&plan, NULL, &due);
		assert_int_equal(
			item_of(&due, TS_DUE_TANK, TS_DUE_AMMONIA)->reason, cases[i].reason);
	}
}

static void test_little_kh__the_less_the_sooner(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	r.kh_dh = value(3);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_PH, TS_DUE_KH_SHORT, "2026-03-16");
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_AMMONIA_USUAL, "2026-04-06");
	r.kh_dh = value(1.5);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_PH, TS_DUE_KH_ACT, "2026-03-12");
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_KH_ACT, "2026-03-12");
}

static void test_buffer_goes__tested_at_half_of_its_time(void **state)
{
	struct ts_reading r = settled("2026-03-01");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due_case c = {.plan = &plan, .today = day(TODAY), .buffer_days = 31};
	struct ts_due due;

	(void)state;
	ts_due_make(&c, NULL, &due);
	assert_reason(&due, TS_DUE_KH, TS_DUE_BUFFER, "2026-03-16");
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_KH)->figure == 31);
	c.buffer_days = 170;
	ts_due_make(&c, NULL, &due);
	assert_reason(&due, TS_DUE_KH, TS_DUE_MINERALS, "2026-03-29");
}

static void test_what_takes_up_the_buffer_or_moves_the_ph(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	plan.tank.substrate = TS_SUBSTRATE_ACTIVE;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_KH, TS_DUE_SOIL, "2026-03-16");
	plan.tank.substrate = TS_SUBSTRATE_LIMESTONE;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_KH, TS_DUE_MINERALS, "2026-04-06");
	plan.tank.co2 = TS_CO2_INJECTED;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_PH, TS_DUE_CO2, "2026-03-16");
}

static void test_trend__only_the_value_that_moves(void **state)
{
	struct ts_reading r[] = {
		settled("2026-01-10"), settled("2026-02-10"), settled("2026-03-09")};
	struct ts_plan plan = plan_of(r, 3);
	struct ts_due due;

	(void)state;
	r[0].kh_dh = value(10);
	r[1].kh_dh = value(8);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_KH, TS_DUE_TREND, "2026-03-16");
	assert_reason(&due, TS_DUE_GH, TS_DUE_MINERALS, "2026-04-06");
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_KH)->figure < -0.4);
}

static void test_much_nitrate(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	r.no3_mg_l = value(80);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_NITRATE, TS_DUE_NITRATE_HIGH, "2026-03-16");
}

static void test_wide_doubt__strips_and_open_ends(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	r.method = TS_METHOD_STRIP;
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_WIDE, "2026-03-23");
	assert_reason(&due, TS_DUE_PH, TS_DUE_WIDE, "2026-03-23");
	r = settled("2026-03-09");
	r.gh_dh = (struct ts_measure){14, 14, INFINITY, TS_MEASURE_ABOVE};
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_WIDE, "2026-03-23");
	assert_reason(&due, TS_DUE_KH, TS_DUE_MINERALS, "2026-04-06");
}

static void test_re_making__the_rows_of_its_stages(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due_case c = {
		.plan = &plan, .today = day(TODAY), .buffer_days = (double)NAN, .remaking = true};
	struct ts_due due;

	(void)state;
	ts_due_make(&c, NULL, &due);
	assert_reason(&due, TS_DUE_GH, TS_DUE_REMAKE, "2026-03-11");
	assert_reason(&due, TS_DUE_AMMONIA, TS_DUE_REMAKE_AMMONIA, "2026-03-12");
	assert_true(item_of(&due, TS_DUE_TANK, TS_DUE_AMMONIA)->every_days == every(TS_P_TAN_AGE));
}

static void test_supply__usual_season_wide(void **state)
{
	struct ts_reading r[] = {settled("2025-08-01"), settled("2026-03-01")};
	struct ts_water supply = {.readings = r, .reading_count = 2};
	struct ts_due due;

	(void)state;
	ask(NULL, &supply, &due);
	assert_int_equal(due.count, 1); /* GH, KH and pH, and no poison of a tank */
	assert_int_equal(due.items[0].reason, TS_DUE_SUPPLY_USUAL);
	assert_int_equal(due.items[0].day, day("2026-05-30"));
	r[0].gh_dh = value(14);
	ask(NULL, &supply, &due);
	assert_int_equal(due.items[0].reason, TS_DUE_SEASON);
	assert_int_equal(due.items[0].what, 1u << TS_DUE_GH | 1u << TS_DUE_KH | 1u << TS_DUE_PH);
	assert_int_equal(due.items[0].day, day("2026-03-31"));
	r[1].method = TS_METHOD_STRIP;
	ask(NULL, &supply, &due);
	assert_int_equal(due.items[0].reason, TS_DUE_SUPPLY_WIDE);
}

static void test_pure_water__no_ph(void **state)
{
	struct ts_reading r = settled("2026-03-01");
	struct ts_water supply = {
		.kind = TS_WATER_REVERSE_OSMOSIS, .readings = &r, .reading_count = 1};
	struct ts_due due;

	(void)state;
	ask(NULL, &supply, &due);
	assert_int_equal(due.items[0].what, 1u << TS_DUE_GH | 1u << TS_DUE_KH);
}

static void test_readings_ahead_are_left_out(void **state)
{
	struct ts_reading r[] = {
		settled("2026-03-11"), settled("2026-03-10"), settled(NULL), settled("2030-01-01")};
	size_t count = 4;

	(void)state;
	assert_int_equal(ts_due_leave_ahead(r, &count, day(TODAY)), 2);
	assert_int_equal(count, 2);
	assert_string_equal(r[0].date, "2026-03-10");
	assert_null(r[1].date);
}

static void test_own_practice_counts(void **state)
{
	struct ts_reading r = settled("2026-03-01");
	struct ts_plan plan = plan_of(&r, 1);
	const struct ts_due_case c = {
		.plan = &plan, .today = day(TODAY), .buffer_days = (double)NAN};
	struct ts_practice practice;
	struct ts_due due;

	(void)state;
	ts_practice_defaults(&practice);
	practice.value[TS_P_DUE_NITRATE] = 60;
	ts_due_make(&c, &practice, &due);
	assert_reason(&due, TS_DUE_NITRATE, TS_DUE_NITRATE_USUAL, "2026-04-30");
}

/* Whether oxygen of the tank is asked for, and by which reason. */
static const struct ts_due_item *oxygen_of(const struct ts_due *due)
{
	for (size_t i = 0; i < due->count; i++) {
		if (due->items[i].what & 1u << TS_DUE_OXYGEN)
			return &due->items[i];
	}
	return NULL;
}

static void test_gasping_or_all_at_once__oxygen_too(void **state)
{
	static const struct {
		int sign;
		int breadth;
		bool asked;
	} cases[] = {{TS_SIGN_GASPING, TS_BREADTH_ONE, true},
		{TS_SIGN_LISTLESS, TS_BREADTH_ALL, true}, {TS_SIGN_SPOTS, TS_BREADTH_ONE, false},
		{TS_SIGN_WASTING, TS_BREADTH_ONE_SPECIES, false}};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		struct ts_reading r = settled(TODAY);
		struct ts_plan plan = plan_of(&r, 1);
		struct ts_sign line = {.sign = cases[i].sign, .breadth = cases[i].breadth};
		struct ts_due due;

		plan.signs = &line;
		plan.sign_count = 1;
		ask(&plan, NULL, &due);
		assert_int_equal(oxygen_of(&due) != NULL, cases[i].asked);
		if (cases[i].asked)
			assert_reason(&due, TS_DUE_OXYGEN, TS_DUE_GASPING, TODAY);
	}
}

/* 5 mg/L are a concern; at 28 C air keeps 7.83 mg/L (EN 25814), of which 60 % are 4.7. */
static void test_oxygen_that_was_short__every_day_until_it_is_enough(void **state)
{
	struct ts_reading r = settled("2026-03-09");
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	r.oxygen_mg_l = value(4.9);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_OXYGEN, TS_DUE_OXYGEN_SHORT, TODAY);
	assert_true(oxygen_of(&due)->figure == 4.9 && oxygen_of(&due)->other == 5);
	assert_true(ts_due_is_danger(oxygen_of(&due)->reason));
	r.oxygen_mg_l = value(5);
	ask(&plan, NULL, &due);
	assert_null(oxygen_of(&due));
	r.oxygen_mg_l = (struct ts_measure){0};
	r.temp_c = value(28);
	r.oxygen_percent = value(60);
	ask(&plan, NULL, &due);
	assert_reason(&due, TS_DUE_OXYGEN, TS_DUE_OXYGEN_SHORT, TODAY);
	assert_true(fabs(oxygen_of(&due)->figure - 4.7) < 0.01);
	r.oxygen_percent = value(65);
	ask(&plan, NULL, &due);
	assert_null(oxygen_of(&due));
}

/* What mends it is a moving surface, which check says; few have a test for it. */
static void test_warm_water_alone__no_oxygen_test(void **state)
{
	struct ts_reading r = settled(TODAY);
	struct ts_plan plan = plan_of(&r, 1);
	struct ts_due due;

	(void)state;
	r.temp_c = plan.tank.temp_c = value(31);
	ask(&plan, NULL, &due);
	assert_null(oxygen_of(&due));
}

static void test_every_row_has_an_interval_in_the_practice_table(void **state)
{
	(void)state;
	for (int i = 0; i < TS_DUE_REASON__COUNT; i++) {
		assert_non_null(ts_due_rows[i].id);
		assert_true(ts_due_rows[i].what != 0);
		assert_true(every(ts_due_rows[i].every) > 0);
		assert_non_null(ts_practice_rows[ts_due_rows[i].every].grade);
	}
}

/* By hand, of the atomic weights: 80 mg/L Ca and 12 mg/L Mg are 2.490 mmol/L, 3.2 meq/L are 8.97
 * dH. */
static void test_value__in_whatever_form_it_was_read(void **state)
{
	static const struct {
		struct ts_reading reading;
		enum ts_due_what what;
		double is;
	} rows[] = {{{.ca_mg_l = {80, 80, 80, TS_MEASURE_VALUE},
			     .mg_mg_l = {12, 12, 12, TS_MEASURE_VALUE}},
			    TS_DUE_GH, 13.96},
		{{.alkalinity_meq_l = {3.2, 3.2, 3.2, TS_MEASURE_VALUE}}, TS_DUE_KH, 8.97},
		{{.no2_n_mg_l = {0.3, 0.3, 0.3, TS_MEASURE_VALUE}}, TS_DUE_NITRITE, 0.985},
		{{.no3_n_mg_l = {4.5, 4.5, 4.5, TS_MEASURE_VALUE}}, TS_DUE_NITRATE, 19.92},
		{{.ph = {7.4, 7.4, 7.4, TS_MEASURE_VALUE}}, TS_DUE_PH, 7.4},
		{{.tan_mg_l = {0.5, 0.5, 0.5, TS_MEASURE_VALUE}}, TS_DUE_AMMONIA, 0.5}};
	struct ts_reading half = {.ca_mg_l = {80, 80, 80, TS_MEASURE_VALUE}};
	double is;

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		assert_true(ts_due_value(&rows[i].reading, rows[i].what, &is));
		assert_true(fabs(is - rows[i].is) < 0.01);
		assert_false(ts_due_value(&rows[i].reading, TS_DUE_OXYGEN, &is));
	}
	assert_false(ts_due_value(&half, TS_DUE_GH, &is));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_value__in_whatever_form_it_was_read),
		cmocka_unit_test(test_settled_tank__the_usual_rows),
		cmocka_unit_test(test_never_read__due_today),
		cmocka_unit_test(test_never_read_in_a_tank_to_come__due_when_it_is_filled),
		cmocka_unit_test(test_reading_without_a_date__due_today),
		cmocka_unit_test(test_each_value_has_its_own_last_reading),
		cmocka_unit_test(test_other_forms_of_a_value_count),
		cmocka_unit_test(test_new_filter__ammonia_soon_and_the_buffer),
		cmocka_unit_test(test_unknown_filter__young_until_time_or_animals_prove_it),
		cmocka_unit_test(test_unknown_filter_never_tested__as_new),
		cmocka_unit_test(test_ammonia_or_nitrite_found__both_every_day),
		cmocka_unit_test(test_danger_stands_before_what_is_longer_overdue),
		cmocka_unit_test(test_signs_or_deaths__everything_every_day),
		cmocka_unit_test(test_gasping_or_all_at_once__oxygen_too),
		cmocka_unit_test(test_oxygen_that_was_short__every_day_until_it_is_enough),
		cmocka_unit_test(test_warm_water_alone__no_oxygen_test),
		cmocka_unit_test(test_newcomers__for_a_fortnight_and_not_before_they_come),
		cmocka_unit_test(test_little_kh__the_less_the_sooner),
		cmocka_unit_test(test_buffer_goes__tested_at_half_of_its_time),
		cmocka_unit_test(test_what_takes_up_the_buffer_or_moves_the_ph),
		cmocka_unit_test(test_trend__only_the_value_that_moves),
		cmocka_unit_test(test_much_nitrate),
		cmocka_unit_test(test_wide_doubt__strips_and_open_ends),
		cmocka_unit_test(test_re_making__the_rows_of_its_stages),
		cmocka_unit_test(test_supply__usual_season_wide),
		cmocka_unit_test(test_pure_water__no_ph),
		cmocka_unit_test(test_readings_ahead_are_left_out),
		cmocka_unit_test(test_own_practice_counts),
		cmocka_unit_test(test_every_row_has_an_interval_in_the_practice_table),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
