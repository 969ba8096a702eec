/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of the whole plan at their limits, with the figures that the rulings quote. Limits are
 * the practice values of docs/methods.md; what is worked out from them is worked out by hand.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>

#include "room.h"

static const struct ts_measure not_read;

/* The ruling; fails the test where there is none. */
static const struct ts_ruling *ruling(struct room *r, enum ts_rule_id rule)
{
	const struct ts_check *c = judge(r);

	for (size_t i = 0; i < c->count; i++) {
		if (c->rulings[i].rule == rule)
			return &c->rulings[i];
	}
	fail_msg("%s is missing", ts_rule_rows[rule].code);
	return NULL;
}

static void assert_figure(double value, double wanted)
{
	if (!(fabs(value - wanted) <= 1e-9 * fabs(wanted)))
		fail_msg("%.12g, wanted %.12g", value, wanted);
}

/* A tank in which the first animals live. */
static void read_tank(struct room *r)
{
	r->lines[0].since = "2026-01-01";
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
}

static void test_ammonia__from_a_quarter_on(void **state)
{
	struct room *r = *state;

	read_tank(r);
	r->in_tank.tan_mg_l = value(0.249);
	assert_int_equal(severity(r, TS_RULE_AMMONIA), -1);
	r->in_tank.tan_mg_l = value(0.25);
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONCERN);
	r->lines[0].since = NULL;
	assert_int_equal(severity(r, TS_RULE_FILTER), TS_CONCERN); /* it does not cope */
}

/* Without a pH or a temperature the criterion cannot be told: all that is found counts. */
static void test_ammonia__worst_where_ph_or_temperature_is_missing(void **state)
{
	struct room *r = *state;

	read_tank(r);
	r->in_tank.tan_mg_l = value(0.3);
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONCERN);
	r->plan.tank.temp_c = not_read;
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONFLICT);
	assert_figure(ruling(r, TS_RULE_AMMONIA)->its, 0.25);
	assert_figure(ruling(r, TS_RULE_AMMONIA)->ours, 0.3);
	r->plan.tank.temp_c = value(25);
	r->reading.ph = r->reading.kh_dh = not_read;
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONFLICT);
}

/* Beyond the range of the criterion its end counts: pH 9 and 30 C are the strictest it has. */
static void test_ammonia__beyond_the_criterion(void **state)
{
	struct room *r = *state;
	double at_end;

	read_tank(r);
	r->in_tank.tan_mg_l = value(0.3);
	r->reading.kh_dh = not_read;
	r->reading.ph = value(9);
	r->plan.tank.temp_c = value(30);
	at_end = ruling(r, TS_RULE_AMMONIA)->its;
	assert_true(at_end < 0.25);
	r->reading.ph = value(9.4);
	r->plan.tank.temp_c = value(34);
	assert_figure(ruling(r, TS_RULE_AMMONIA)->its, at_end);
}

/* The conflict is 0.05 mg/L N without chloride, 0.15 from 5 mg/L, 0.3 from 20; a concern from half.
 */
static void test_nitrite__by_chloride(void **state)
{
	static const struct {
		double cl_mg_l, conflict;
	} rows[] = {{-1, 0.05}, {0, 0.05}, {4.9, 0.05}, {5, 0.15}, {19.9, 0.15}, {20, 0.3}};
	struct room *r = *state;

	read_tank(r);
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->in_tank.cl_mg_l = rows[i].cl_mg_l < 0 ? not_read : value(rows[i].cl_mg_l);
		r->in_tank.no2_n_mg_l = value(rows[i].conflict);
		assert_int_equal(severity(r, TS_RULE_NITRITE), TS_CONFLICT);
		assert_figure(ruling(r, TS_RULE_NITRITE)->ours, rows[i].conflict);
		assert_figure(ruling(r, TS_RULE_NITRITE)->its, rows[i].conflict);
		r->in_tank.no2_n_mg_l = value(rows[i].conflict * 0.999);
		assert_int_equal(severity(r, TS_RULE_NITRITE), TS_CONCERN);
		r->in_tank.no2_n_mg_l = value(rows[i].conflict * 0.34);
		assert_int_equal(severity(r, TS_RULE_NITRITE), TS_CONCERN);
		r->in_tank.no2_n_mg_l = value(rows[i].conflict * 0.33);
		assert_int_equal(severity(r, TS_RULE_NITRITE), -1);
	}
}

/* 3.2846 mg/L NO2 hold 1 mg/L N, 4.4268 mg/L NO3 likewise (14.007, 46.006, 62.005 g/mol). */
static void test_nitrogen__as_ion_or_as_nitrogen(void **state)
{
	struct room *r = *state;

	read_tank(r);
	r->in_tank.no2_mg_l = value(3.2846);
	assert_true(fabs(ruling(r, TS_RULE_NITRITE)->ours - 1) < 1e-3);
	r->in_tank.no2_n_mg_l = value(2); /* the reading as nitrogen counts first */
	assert_figure(ruling(r, TS_RULE_NITRITE)->ours, 2);
	r->in_tank.no3_n_mg_l = value(20);
	assert_true(fabs(ruling(r, TS_RULE_NITRATE)->ours - 88.54) < 0.02);
	r->in_tank.no3_mg_l = value(60);
	assert_true(fabs(ruling(r, TS_RULE_NITRATE)->ours - 88.54) < 0.02);
	r->in_tank.no3_n_mg_l = not_read;
	assert_figure(ruling(r, TS_RULE_NITRATE)->ours, 60);
}

/* A doubt counts at its upper end, "more than" at what is said, "less than" as nil. */
static void test_poison__ends_of_a_reading(void **state)
{
	struct room *r = *state;

	read_tank(r);
	r->in_tank.no3_mg_l = (struct ts_measure){60, 50, 70, TS_MEASURE_DOUBT};
	assert_figure(ruling(r, TS_RULE_NITRATE)->ours, 70);
	r->in_tank.no3_mg_l = (struct ts_measure){60, 60, (double)INFINITY, TS_MEASURE_ABOVE};
	assert_figure(ruling(r, TS_RULE_NITRATE)->ours, 60);
	r->in_tank.no3_mg_l = (struct ts_measure){60, 0, 60, TS_MEASURE_BELOW};
	assert_int_equal(severity(r, TS_RULE_NITRATE), -1);
}

/* The tank's newest reading that tells it counts; the water's only where the tank was not read. */
static void test_poison__last_reading_of_the_tank(void **state)
{
	struct ts_reading tank[3] = {
		{.no3_mg_l = value(60)}, {.no3_mg_l = value(80)}, {.date = NULL}};
	struct ts_reading water[2] = {{.no3_mg_l = value(110)}, {.no3_mg_l = value(55)}};
	struct room *r = *state;

	water[0].gh_dh = water[1].gh_dh = r->reading.gh_dh;
	water[0].kh_dh = water[1].kh_dh = r->reading.kh_dh;
	r->plan.water.readings = water;
	r->plan.water.reading_count = 2;
	assert_figure(ruling(r, TS_RULE_NITRATE)->ours, 55);
	r->plan.tank.readings = tank;
	r->plan.tank.reading_count = 3;
	assert_figure(ruling(r, TS_RULE_NITRATE)->ours, 80);
	tank[0].no3_mg_l = tank[1].no3_mg_l = not_read;
	tank[2].ph = value(7);
	assert_int_equal(severity(r, TS_RULE_NITRATE), -1);
}

/* US EPA's chronic criterion, 0.011 mg/L. */
static void test_chlorine__from_the_criterion_on(void **state)
{
	struct room *r = *state;

	r->reading.chlorine_mg_l = value(0.0109);
	assert_int_equal(severity(r, TS_RULE_CHLORINE), -1);
	r->reading.chlorine_mg_l = value(0.011);
	assert_int_equal(severity(r, TS_RULE_CHLORINE), TS_NOTE);
	assert_figure(ruling(r, TS_RULE_CHLORINE)->ours, 0.011);
	assert_figure(ruling(r, TS_RULE_CHLORINE)->its, 0.011);
}

static void test_nitrate__concern_and_conflict(void **state)
{
	static const struct {
		double no3;
		int usual, sensitive;
	} rows[] = {{39.9, -1, -1}, {40, -1, TS_CONCERN}, {49.9, -1, TS_CONCERN},
		{50, TS_CONCERN, TS_CONCERN}, {59.9, TS_CONCERN, TS_CONCERN},
		{60, TS_CONCERN, TS_CONFLICT}, {99.9, TS_CONCERN, TS_CONFLICT},
		{100, TS_CONFLICT, TS_CONFLICT}};
	struct room *r = *state;

	read_tank(r);
	r->plan.stock_count = 2;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->in_tank.no3_mg_l = value(rows[i].no3);
		r->species[1].habits = 0;
		assert_int_equal(severity(r, TS_RULE_NITRATE), rows[i].usual);
		assert_false(r->check.nitrate_sensitive);
		r->species[1].habits = TS_HABIT_NITRATE_SENSITIVE;
		assert_int_equal(severity(r, TS_RULE_NITRATE), rows[i].sensitive);
		assert_true(r->check.nitrate_sensitive);
	}
	r->species[1].habits = 0;
	r->lines[1].origin = TS_ORIGIN_WILD; /* animals from the wild count as sensitive */
	r->in_tank.no3_mg_l = value(45);
	assert_int_equal(severity(r, TS_RULE_NITRATE), TS_CONCERN);
	assert_figure(ruling(r, TS_RULE_NITRATE)->its, 40);
}

/* Net litres: a measured volume is taken as it is. */
static void test_many_species__by_litres(void **state)
{
	static const struct {
		double litres;
		size_t most;
	} rows[] = {{59.9, 2}, {60, 3}, {119.9, 3}, {120, 4}, {250, 4}, {250.1, 5}};
	struct room *r = *state;

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->plan.tank.volume_l = rows[i].litres;
		r->plan.stock_count = rows[i].most;
		assert_int_equal(severity(r, TS_RULE_MANY_SPECIES), -1);
		r->plan.stock_count = rows[i].most + 1;
		assert_figure(ruling(r, TS_RULE_MANY_SPECIES)->ours, (double)rows[i].most + 1);
		assert_figure(ruling(r, TS_RULE_MANY_SPECIES)->its, (double)rows[i].most);
	}
}

/* The floor is 1.0 m times 0.4 m; four fifths of 0.49 are less, of 0.51 more. */
static void test_floor__of_two_owners(void **state)
{
	static const struct {
		double first, second;
		int severity;
	} rows[] = {{0.2, 0.2, -1}, {0.21, 0.2, TS_NOTE}, {0.29, 0.2, TS_NOTE},
		{0.31, 0.2, TS_CONFLICT}, {0.6, 0, -1}};
	struct room *r = *state;

	r->plan.stock_count = 2;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->species[0].territory.floor_m2 = rows[i].first;
		r->species[1].territory.floor_m2 = rows[i].second;
		r->species[0].territory.per = r->species[1].territory.per = TS_PER_GROUP;
		assert_int_equal(severity(r, TS_RULE_FLOOR), rows[i].severity);
		if (rows[i].severity < 0)
			continue;
		assert_figure(ruling(r, TS_RULE_FLOOR)->ours, 0.4);
		assert_figure(ruling(r, TS_RULE_FLOOR)->its, rows[i].first + rows[i].second);
	}
}

/* A buffer under the floor of 1.1 dH is a concern, under 4 a note, however long it lasts. */
static void test_buffer__by_kh(void **state)
{
	static const struct {
		double kh;
		int severity;
	} rows[] = {{1.05, TS_CONCERN}, {1.3, TS_NOTE}, {3.9, TS_NOTE}, {4, -1}};
	struct room *r = *state;

	r->lines[0].count = 6;
	r->plan.tank.length_cm = 200; /* a light load: only KH decides */
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->reading.kh_dh = value(rows[i].kh);
		assert_int_equal(severity(r, TS_RULE_BUFFER), rows[i].severity);
	}
}

/* From seven days on it is a concern, from fourteen nothing: found by adding animals. */
static void test_buffer__by_days(void **state)
{
	struct room *r = *state;
	int seen[3] = {0, 0, 0};

	r->reading.kh_dh = value(4);
	for (int count = 6; count < 1500; count += 6) {
		double days;
		int said;

		r->lines[0].count = count;
		said = severity(r, TS_RULE_BUFFER);
		days = r->check.load.buffer_days.value;
		if (days < 7)
			assert_int_equal(said, TS_CONFLICT);
		else if (days < 14)
			assert_int_equal(said, TS_CONCERN);
		else if (r->check.load.kh_steady_dh >= 1.1)
			assert_int_equal(said, -1);
		seen[days < 7 ? 0 : days < 14 ? 1 : 2]++;
	}
	assert_true(seen[0] && seen[1] && seen[2]);
}

static void test_lines__sexes_pairs_sizes_and_what_is_planned(void **state)
{
	const struct ts_plan_group *g;
	struct room *r = *state;

	r->plan.stock_count = 4;
	for (size_t i = 1; i < 4; i++)
		r->named[i] = r->named[0];
	r->lines[0] = (struct ts_stock_line){.count = 2, .sex = TS_SEX_MALE, .size_cm = 3};
	r->lines[1] = (struct ts_stock_line){.count = 3, .sex = TS_SEX_FEMALE, .size_cm = 2};
	r->lines[2] =
		(struct ts_stock_line){.count = 4, .sex = TS_SEX_PAIRS, .since = "2026-01-01"};
	r->lines[3] = (struct ts_stock_line){.count = 5, .size_cm = 4};
	judge(r);
	assert_int_equal(r->check.group_count, 1);
	g = &r->check.groups[0];
	assert_int_equal(g->group.males, 4);
	assert_int_equal(g->group.females, 5);
	assert_int_equal(g->group.either, 5);
	assert_int_equal(g->planned, 10);
	assert_figure(g->group.size_cm, 2); /* the smallest is the one that is eaten */
	assert_false(g->wild);
}

/* The filter is shown by more than 56 days of life, counted to the newest reading. */
static void test_filter__shown_from_56_days_on(void **state)
{
	struct ts_reading tank[2];
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->plan.tank.filter = TS_FILTER_UNKNOWN;
	tank[0] = tank[1] = r->in_tank;
	tank[0].date = "2026-06-01";
	tank[1].date = "2026-05-01";
	r->plan.tank.readings = tank;
	r->plan.tank.reading_count = 2;
	r->lines[0].since = "2026-04-06"; /* 56 days before */
	assert_int_equal(severity(r, TS_RULE_FILTER_UNKNOWN), TS_QUESTION);
	r->lines[0].since = "2026-04-05";
	assert_int_equal(severity(r, TS_RULE_FILTER_UNKNOWN), -1);
	r->plan.tank.filter = TS_FILTER_NEW; /* said to be new: then it is */
	assert_int_equal(severity(r, TS_RULE_FILTER), TS_CONCERN);
	r->plan.tank.filter = TS_FILTER_MATURE;
	tank[0].no2_n_mg_l = value(0.05); /* said to be mature, and it does not cope */
	assert_int_equal(severity(r, TS_RULE_FILTER), TS_CONCERN);
	tank[0].no2_n_mg_l = value(0.049);
	assert_int_equal(severity(r, TS_RULE_FILTER), -1);
}

/* Softened water, copper and what the tank's readings leave open come from the water. */
static void test_tank_readings__lack_what_the_water_tells(void **state)
{
	struct room *r = *state;

	r->species[0].kind = TS_ANIMAL_SHRIMP;
	r->reading.cu_mg_l = value(0.05);
	read_tank(r);
	assert_int_equal(severity(r, TS_RULE_WATER), TS_CONFLICT);
	assert_figure(ruling(r, TS_RULE_WATER)->ours, 0.05);
	r->reading.cu_mg_l = not_read;
	assert_int_equal(severity(r, TS_RULE_WATER), -1);
	r->reading.gh_dh = value(0.5); /* under 1 dH with KH left: a softener */
	assert_int_equal(severity(r, TS_RULE_WATER_UNSURE), TS_CONCERN);
	r->in_tank.gh_dh = value(14);
	assert_int_equal(severity(r, TS_RULE_WATER_UNSURE), TS_CONCERN);
}

/* Deaths alone are distress; the ruling tells signs and deaths, and the groups that are planned. */
static void test_distress__figures(void **state)
{
	struct ts_sign signs[2] = {{.sign = TS_SIGN_GASPING}, {.sign = TS_SIGN_GASPING}};
	struct room *r = *state;

	r->plan.stock_count = 3;
	r->lines[0].since = "2026-01-01";
	r->plan.signs = signs;
	r->plan.sign_count = 2;
	r->plan.deaths = value(3);
	assert_figure(ruling(r, TS_RULE_DISTRESS)->ours, 2);
	assert_figure(ruling(r, TS_RULE_DISTRESS)->its, 3);
	assert_figure(ruling(r, TS_RULE_NEWCOMERS)->ours, 2);
}

/* What is alike in all else stands in the order of names, whatever the order of the lines. */
static void test_order__by_names(void **state)
{
	struct room *r = *state;
	size_t fins = 0, unknown = 0;

	r->plan.stock_count = 6;
	r->species[1].species = "Olda z";
	r->species[2].species = "Olda b";
	r->species[1].nips = r->species[2].nips = TS_NIPS_YES;
	r->species[0].fins = r->species[3].fins = 1;
	r->species[3].species = "Exempla a"; /* before the first line's */
	r->named[4] = r->named[5] = NULL;
	r->lines[4].species = "Unknown z";
	r->lines[5].species = "Unknown b";
	judge(r);
	for (size_t i = 0; i < r->check.count; i++) {
		const struct ts_ruling *one = &r->check.rulings[i];
		static const size_t subject[] = {3, 3, 0, 0}, other[] = {2, 1, 2, 1};

		if (one->rule == TS_RULE_FIN_NIPPER && fins < 4) {
			assert_ptr_equal(one->subject, &r->species[subject[fins]]);
			assert_ptr_equal(one->other, &r->species[other[fins]]);
			fins++;
		} else if (one->rule == TS_RULE_UNKNOWN_SPECIES) {
			assert_string_equal(one->name, unknown ? "Unknown z" : "Unknown b");
			unknown++;
		}
	}
	assert_int_equal(fins, 4);
	assert_int_equal(unknown, 2);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
		CASE(test_ammonia__from_a_quarter_on),
		CASE(test_ammonia__worst_where_ph_or_temperature_is_missing),
		CASE(test_ammonia__beyond_the_criterion),
		CASE(test_nitrite__by_chloride),
		CASE(test_nitrogen__as_ion_or_as_nitrogen),
		CASE(test_poison__ends_of_a_reading),
		CASE(test_poison__last_reading_of_the_tank),
		CASE(test_chlorine__from_the_criterion_on),
		CASE(test_nitrate__concern_and_conflict),
		CASE(test_many_species__by_litres),
		CASE(test_floor__of_two_owners),
		CASE(test_buffer__by_kh),
		CASE(test_buffer__by_days),
		CASE(test_lines__sexes_pairs_sizes_and_what_is_planned),
		CASE(test_filter__shown_from_56_days_on),
		CASE(test_tank_readings__lack_what_the_water_tells),
		CASE(test_distress__figures),
		CASE(test_order__by_names),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
