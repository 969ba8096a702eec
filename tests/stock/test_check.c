/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The plan as a whole: rules of the plan one by one, verdicts, and the remedies in their order.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "room.h"

static void test_check__sound(void **state)
{
	const struct ts_check *c = judge(*state);

	assert_int_equal(c->verdict, TS_PLAN_SOUND);
	assert_int_equal(c->repair_count, 0);
	assert_true(c->load_known && c->water_known);
}

static void test_check__ammonia(void **state)
{
	struct room *r = *state;

	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->in_tank.tan_mg_l = value(3); /* nobody lives there: a filter that matures */
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONCERN);
	r->lines[0].since = "2026-01-01";
	r->in_tank.tan_mg_l = value(0);
	assert_int_equal(severity(r, TS_RULE_AMMONIA), -1);
	r->in_tank.tan_mg_l = value(0.3); /* under the CCC of 0.6 at pH 8.1, 25 C */
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONCERN);
	assert_int_not_equal(r->check.verdict, TS_PLAN_SOUND);
	r->in_tank.tan_mg_l = value(3);
	assert_int_equal(severity(r, TS_RULE_AMMONIA), TS_CONFLICT);
	assert_int_equal(r->check.rulings[0].rule, TS_RULE_AMMONIA);
}

static void test_check__nitrite_and_chloride(void **state)
{
	struct room *r = *state;

	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->lines[0].since = "2026-01-01";
	assert_int_equal(severity(r, TS_RULE_NITRITE), -1);
	r->in_tank.no2_n_mg_l = value(0.06);
	assert_int_equal(severity(r, TS_RULE_NITRITE), TS_CONFLICT);
	r->in_tank.cl_mg_l = value(30);
	assert_int_equal(severity(r, TS_RULE_NITRITE), -1);
	r->in_tank.no2_n_mg_l = value(0); /* written both ways: the worse counts */
	r->in_tank.no2_mg_l = value(3);
	assert_int_equal(severity(r, TS_RULE_NITRITE), TS_CONFLICT);
}

/* Labyrinth fish bear a step less; one other animal and its need counts. Taps are poured: no rule.
 */
static void test_check__oxygen(void **state)
{
	struct room *r = *state;

	r->reading.oxygen_mg_l = value(2);
	assert_int_equal(severity(r, TS_RULE_OXYGEN), -1);
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	assert_int_equal(severity(r, TS_RULE_OXYGEN), -1);
	r->in_tank.oxygen_mg_l = value(5.1);
	assert_int_equal(severity(r, TS_RULE_OXYGEN), -1);
	r->in_tank.oxygen_mg_l = value(4.5);
	assert_int_equal(severity(r, TS_RULE_OXYGEN), TS_CONCERN);
	assert_int_not_equal(r->check.verdict, TS_PLAN_SOUND);
	r->species[0].family = "Osphronemidae";
	assert_int_equal(severity(r, TS_RULE_OXYGEN), -1);
	r->plan.stock_count = 2;
	assert_int_equal(severity(r, TS_RULE_OXYGEN), TS_CONCERN);
	r->in_tank.oxygen_mg_l = value(3.9);
	assert_int_equal(severity(r, TS_RULE_OXYGEN), TS_CONFLICT);
	/* 50 % of the 8.26 mg/L that air keeps at 25 C (EN 25814): 4.13. */
	r->in_tank.oxygen_mg_l = (struct ts_measure){0};
	r->in_tank.oxygen_percent = value(50);
	assert_int_equal(severity(r, TS_RULE_OXYGEN), TS_CONCERN);
	r->in_tank.oxygen_percent = value(47);
	assert_int_equal(severity(r, TS_RULE_OXYGEN), TS_CONFLICT);
}

static void test_check__chlorine(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_CHLORINE), -1);
	r->reading.chlorine_mg_l = value(0.3);
	assert_int_equal(severity(r, TS_RULE_CHLORINE), TS_NOTE);
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->in_tank.chlorine_mg_l = value(0.3);
	assert_int_equal(severity(r, TS_RULE_CHLORINE), TS_CONFLICT);
}

static void test_check__copper_reaches_invertebrates(void **state)
{
	struct room *r = *state;

	r->species[0].kind = TS_ANIMAL_SHRIMP;
	assert_int_equal(severity(r, TS_RULE_WATER), -1);
	r->reading.cu_mg_l = value(0.05);
	assert_int_equal(severity(r, TS_RULE_WATER), TS_CONFLICT);
}

static void test_check__buffer(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_BUFFER), -1);
	r->reading.kh_dh = value(3);
	assert_int_equal(severity(r, TS_RULE_BUFFER), TS_NOTE);
	r->lines[0].count = 400;
	assert_int_equal(severity(r, TS_RULE_BUFFER), TS_CONFLICT);
	r->species[0].home_water = TS_HOME_BLACK;
	assert_int_equal(severity(r, TS_RULE_BUFFER), -1);
	r->reading.kh_dh = (struct ts_measure){0};
	assert_int_equal(severity(r, TS_RULE_KH_UNKNOWN), TS_QUESTION);
	assert_true(isnan(r->check.load.buffer_days.value));
}

static void test_check__kh_known(void **state)
{
	assert_int_equal(severity(*state, TS_RULE_KH_UNKNOWN), -1);
}

static void test_check__distress_and_newcomers(void **state)
{
	struct ts_sign sign = {.sign = TS_SIGN_GASPING};
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_DISTRESS), -1);
	assert_int_equal(severity(r, TS_RULE_NEWCOMERS), -1);
	r->plan.signs = &sign;
	r->plan.sign_count = 1;
	assert_int_equal(severity(r, TS_RULE_DISTRESS), TS_CONCERN);
	assert_int_equal(severity(r, TS_RULE_NEWCOMERS), TS_CONFLICT);
	r->lines[0].since = "2026-01-01";
	assert_int_equal(severity(r, TS_RULE_NEWCOMERS), -1);
	assert_int_equal(r->check.verdict, TS_PLAN_SOUND_IF);
	r->plan.sign_count = 0;
	r->plan.deaths = value(2);
	assert_int_equal(severity(r, TS_RULE_DISTRESS), TS_CONCERN);
}

static void test_check__empty(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_EMPTY), -1);
	r->plan.stock_count = 0;
	assert_int_equal(severity(r, TS_RULE_EMPTY), TS_QUESTION);
	assert_int_equal(r->check.verdict, TS_PLAN_ASKS);
}

static void test_check__filter(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_FILTER), -1);
	r->plan.tank.filter = TS_FILTER_NEW;
	assert_int_equal(severity(r, TS_RULE_FILTER), TS_CONCERN);
	r->plan.tank.filter = TS_FILTER_UNKNOWN;
	assert_int_equal(severity(r, TS_RULE_FILTER_UNKNOWN), TS_QUESTION);
	assert_int_equal(r->check.verdict, TS_PLAN_ASKS);
	assert_true(r->check.answered);
}

/* Nine weeks with both poisons nil show it; seven do not, nor does one poison left out. */
static void test_check__filter_shown_by_stock(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->plan.tank.filter = TS_FILTER_UNKNOWN;
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->in_tank.date = "2026-06-01";
	r->lines[0].since = "2026-03-30";
	assert_int_equal(severity(r, TS_RULE_FILTER_UNKNOWN), -1);
	r->lines[0].since = "2026-04-13";
	assert_int_equal(severity(r, TS_RULE_FILTER_UNKNOWN), TS_QUESTION);
	r->lines[0].since = "2026-03-30";
	r->in_tank.no2_mg_l = (struct ts_measure){0};
	assert_int_equal(severity(r, TS_RULE_FILTER_UNKNOWN), TS_QUESTION);
}

static void test_check__floor_of_all(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 3;
	assert_int_equal(severity(r, TS_RULE_FLOOR), -1);
	for (size_t i = 0; i < 3; i++) {
		r->species[i].territory.floor_m2 = 0.15;
		r->species[i].territory.per = TS_PER_GROUP;
	}
	assert_int_equal(severity(r, TS_RULE_FLOOR), TS_NOTE);
	for (size_t i = 0; i < 3; i++)
		r->species[i].territory.floor_m2 = 0.3;
	assert_int_equal(severity(r, TS_RULE_FLOOR), TS_CONFLICT);
}

/* 24 of 4 cm want 96 litres; in 65 they are more than one and a half times as many as that. */
static void test_check__crowding(void **state)
{
	static const struct {
		double count;
		int severity;
	} rows[] = {{20, -1}, {21, TS_NOTE}, {24, TS_NOTE}, {25, TS_CONFLICT}};
	struct room *r = *state;

	r->plan.tank.length_cm = 60;
	r->plan.tank.width_cm = 30;
	r->plan.tank.height_cm = 36;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		r->lines[0].count = rows[i].count;
		assert_int_equal(severity(r, TS_RULE_CROWDED), rows[i].severity);
	}
}

/* Of litres alone: 60 x 30 x 30 cm are the smallest, 54 litres; four fifths of it are 43.2. */
static void test_check__litres(void **state)
{
	struct room *r = *state;

	r->lines[0].count = 6;
	r->species[0].needs.tank_length_cm = 45;
	r->species[0].territory.floor_m2 = 0.18;
	r->species[0].territory.per = TS_PER_GROUP;
	r->plan.tank.length_cm = r->plan.tank.width_cm = r->plan.tank.height_cm = 0;
	r->plan.tank.volume_l = 44;
	assert_int_equal(severity(r, TS_RULE_LITRES), -1);
	r->plan.tank.volume_l = 43;
	assert_int_equal(severity(r, TS_RULE_LITRES), TS_CONFLICT);
	r->plan.tank.length_cm = 60;
	assert_int_equal(severity(r, TS_RULE_LITRES), -1);
}

static void test_check__many_species(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 4; /* 170 L */
	assert_int_equal(severity(r, TS_RULE_MANY_SPECIES), -1);
	r->plan.stock_count = 5;
	assert_int_equal(severity(r, TS_RULE_MANY_SPECIES), TS_NOTE);
}

static void test_check__nitrate(void **state)
{
	struct room *r = *state;

	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->in_tank.no3_mg_l = value(40);
	assert_int_equal(severity(r, TS_RULE_NITRATE), -1);
	r->species[0].habits = TS_HABIT_NITRATE_SENSITIVE;
	assert_int_equal(severity(r, TS_RULE_NITRATE), TS_CONCERN);
	r->in_tank.no3_mg_l = value(120);
	assert_int_equal(severity(r, TS_RULE_NITRATE), TS_CONFLICT);
}

static void test_check__nitrate_of_the_load(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_NITRATE_LOAD), -1);
	r->species[0].adult_length_cm = 6; /* of whom so many eat much before they crowd the tank */
	r->lines[0].count = 40;
	assert_int_equal(severity(r, TS_RULE_NITRATE_LOAD), TS_CONCERN);
	r->lines[0].count = 10000;
	assert_int_equal(severity(r, TS_RULE_NITRATE_LOAD), TS_CONFLICT);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
	assert_int_equal(r->check.repair_count, 1);
	assert_int_equal(r->check.repair[0].remedy.to, 12);
}

/* What was not given is a question, and harms nobody: feeding, plants, changes. */
static void test_check__load_of_an_unknown_routine(void **state)
{
	struct room *r = *state;

	r->lines[0].count = 100;
	r->plan.tank.feeding.word = TS_FEEDING_UNKNOWN;
	assert_int_equal(severity(r, TS_RULE_NITRATE_LOAD), -1);
	assert_int_equal(severity(r, TS_RULE_NITRATE_OPEN), TS_QUESTION);
	r->plan.tank.feeding.word = TS_FEEDING_ORDINARY;
	r->plan.tank.water_change.days = 0;
	assert_int_equal(severity(r, TS_RULE_NITRATE_OPEN), TS_QUESTION);
	r->lines[0].count = 10000; /* beyond even with the best of routines */
	assert_int_equal(severity(r, TS_RULE_NITRATE_LOAD), TS_CONCERN);
}

static void test_check__temperature_unknown(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_TEMPERATURE_UNKNOWN), -1);
	r->plan.tank.temp_c = (struct ts_measure){0};
	assert_int_equal(severity(r, TS_RULE_TEMPERATURE_UNKNOWN), TS_QUESTION);
	assert_int_equal(r->check.verdict, TS_PLAN_ASKS);
	assert_false(r->check.answered);
}

static void test_check__unknown_species_never_passes(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_UNKNOWN_SPECIES), -1);
	r->named[0] = NULL;
	assert_int_equal(severity(r, TS_RULE_UNKNOWN_SPECIES), TS_QUESTION);
	assert_int_equal(r->check.verdict, TS_PLAN_ASKS);
	assert_false(r->check.answered);
	assert_string_equal(r->check.rulings[0].name, r->names[0]);
}

/* What is left out is asked for: it never makes the answer better. */
static void test_check__untested_running_tank(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_UNTESTED), -1); /* nothing lives there yet */
	r->lines[0].since = "2026-01-01";
	assert_int_equal(severity(r, TS_RULE_UNTESTED), TS_QUESTION);
	assert_false(r->check.answered);
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	assert_int_equal(severity(r, TS_RULE_UNTESTED), -1);
	assert_int_equal(r->check.verdict, TS_PLAN_SOUND);
	r->in_tank.no2_mg_l = (struct ts_measure){0};
	assert_int_equal(severity(r, TS_RULE_UNTESTED), TS_QUESTION);
}

static void test_check__warm_water(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_WARM_OXYGEN), -1);
	r->plan.tank.temp_c = value(28);
	assert_int_equal(severity(r, TS_RULE_WARM_OXYGEN), TS_NOTE);
}

static void test_check__water(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_WATER), -1);
	r->reading.gh_dh = value(35);
	assert_int_equal(severity(r, TS_RULE_WATER), TS_CONFLICT);
	assert_int_equal(r->check.rulings[0].word, TS_GH);
	assert_int_equal(r->check.repair_count, 1);
	assert_int_equal(r->check.repair[0].remedy.to, 0);
}

static void test_check__water_unsure(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_WATER_UNSURE), -1);
	r->reading.gh_dh = (struct ts_measure){0};
	assert_int_equal(severity(r, TS_RULE_WATER_UNSURE), TS_QUESTION);
	assert_false(r->check.answered);
}

static void test_check__water_unknown(void **state)
{
	struct room *r = *state;

	assert_int_equal(severity(r, TS_RULE_WATER_UNKNOWN), -1);
	r->plan.water.reading_count = 0;
	assert_int_equal(severity(r, TS_RULE_WATER_UNKNOWN), TS_QUESTION);
	assert_false(r->check.answered);
}

static void test_check__tank_readings_before_the_water(void **state)
{
	struct room *r = *state;

	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->in_tank.gh_dh = value(35);
	assert_int_equal(severity(r, TS_RULE_WATER), TS_CONFLICT);
	assert_true(r->check.profile.at[TS_KH].given); /* from the water */
}

static void test_check__lines_of_one_species_are_one_group(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->named[1] = r->named[0];
	r->lines[0].count = r->lines[1].count = 3;
	r->lines[0].sex = TS_SEX_MALE;
	assert_int_equal(severity(r, TS_RULE_FEW), -1);
	assert_int_equal(r->check.group_count, 1);
	assert_int_equal(r->check.groups[0].group.males, 3);
	assert_int_equal(r->check.groups[0].group.either, 3);
}

/* Harm first: whatever stands first is as grave as the verdict says. */
static void test_check__gravest_first(void **state)
{
	struct room *r = *state;
	const struct ts_check *c;

	r->plan.stock_count = 3;
	r->species[2].to_others = TS_INJURES;
	r->lines[0].count = 3;
	c = judge(r);
	assert_int_equal(c->verdict, TS_PLAN_UNSOUND);
	for (size_t i = 1; i < c->count; i++)
		assert_true(c->rulings[i].severity <= c->rulings[i - 1].severity);
}

/* No answer gets better when a danger value rises. */
static void test_check__danger_never_helps(void **state)
{
	static const double levels[] = {0, 0.1, 0.3, 0.6, 1, 3, 30};
	struct room *r = *state;
	enum ts_plan_verdict before = TS_PLAN_SOUND;

	r->lines[0].since = "2026-01-01";
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	for (size_t i = 0; i < sizeof levels / sizeof *levels; i++) {
		r->in_tank.tan_mg_l = value(levels[i]);
		r->in_tank.no2_mg_l = value(levels[i]);
		judge(r);
		assert_false(r->check.verdict == TS_PLAN_SOUND && before != TS_PLAN_SOUND);
		before = r->check.verdict;
	}
	assert_int_equal(before, TS_PLAN_UNSOUND);
}

static void test_check__every_allocation_fails_once(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 6;
	r->species[3].to_others = TS_INJURES;
	refuse_each_allocation(r);
}

int main(void)
{
#define CASE(f) cmocka_unit_test_setup_teardown(f, set_up, tear_down)
	const struct CMUnitTest tests[] = {
		CASE(test_check__sound),
		CASE(test_check__ammonia),
		CASE(test_check__nitrite_and_chloride),
		CASE(test_check__oxygen),
		CASE(test_check__chlorine),
		CASE(test_check__copper_reaches_invertebrates),
		CASE(test_check__buffer),
		CASE(test_check__kh_known),
		CASE(test_check__distress_and_newcomers),
		CASE(test_check__empty),
		CASE(test_check__filter),
		CASE(test_check__filter_shown_by_stock),
		CASE(test_check__floor_of_all),
		CASE(test_check__crowding),
		CASE(test_check__litres),
		CASE(test_check__many_species),
		CASE(test_check__nitrate),
		CASE(test_check__nitrate_of_the_load),
		CASE(test_check__load_of_an_unknown_routine),
		CASE(test_check__temperature_unknown),
		CASE(test_check__unknown_species_never_passes),
		CASE(test_check__untested_running_tank),
		CASE(test_check__warm_water),
		CASE(test_check__water),
		CASE(test_check__water_unsure),
		CASE(test_check__water_unknown),
		CASE(test_check__tank_readings_before_the_water),
		CASE(test_check__lines_of_one_species_are_one_group),
		CASE(test_check__gravest_first),
		CASE(test_check__danger_never_helps),
		CASE(test_check__every_allocation_fails_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
