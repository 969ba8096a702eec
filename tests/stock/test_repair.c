/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Repairs: what a number, leaving out and giving up cost, what floor and load bear, and the order
 * in which a stock of too many species is thinned. Costs: docs/methods.md, "Living together".
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "room.h"

/* The animals of line i bite the fins of those of line j. */
static void set_biter(struct room *r, size_t i, size_t j)
{
	r->species[i].nips = TS_NIPS_YES;
	r->species[j].fins = 1;
}

static void assert_step(const struct room *r, size_t step, size_t line, unsigned from, unsigned to)
{
	assert_true(step < r->check.repair_count);
	assert_ptr_equal(r->check.repair[step].species, &r->species[line]);
	assert_int_equal(r->check.repair[step].from, from);
	assert_int_equal(r->check.repair[step].to, to);
}

static void test_costs__the_planned_go_before_those_that_live_there(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	set_biter(r, 0, 1);
	for (size_t living = 0; living < 2; living++) {
		r->lines[living].since = "2026-01-01";
		r->lines[!living].since = NULL;
		judge(r);
		assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
		assert_int_equal(r->check.repair_count, 1);
		assert_step(r, 0, !living, 6, 0);
		assert_true(r->check.repair_proven);
	}
}

/* Three other numbers (10 each) are no better than leaving out what is planned (30), two are. */
static void test_costs__numbers_before_leaving_out(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 3;
	for (size_t i = 0; i < 3; i++) {
		r->species[i].to_own_kind = TS_INJURES;
		r->lines[i].count = 2; /* two that injure, of six: a conflict each */
	}
	judge(r);
	assert_int_equal(r->check.repair_count, 3);
	for (size_t i = 0; i < 3; i++)
		assert_step(r, i, i, 2, 6);
}

/* Males alone stay males alone in another number. */
static void test_numbers__males_alone(void **state)
{
	struct room *r = *state;

	r->species[0].to_own_kind = TS_INJURES;
	r->lines[0].count = 2;
	r->lines[0].sex = TS_SEX_MALE;
	judge(r);
	assert_int_equal(r->check.repair_count, 1);
	assert_step(r, 0, 0, 2, 6);
}

/* Neither litres nor floor known: both are no reason to give up more than the conflict wants. */
static void test_limits__tank_not_measured(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 3;
	r->plan.tank.length_cm = r->plan.tank.width_cm = r->plan.tank.height_cm = 0;
	set_biter(r, 2, 0);
	judge(r);
	assert_false(r->check.load_known);
	assert_int_equal(r->check.repair_count, 1);
	assert_true(r->check.repair_proven);
}

/* A floor of 0.4 m2 bears 0.533 of territories before it harms. */
static void test_limits__floor(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 3;
	for (size_t i = 0; i < 3; i++) {
		r->species[i].territory.floor_m2 = 0.26;
		r->species[i].territory.per = TS_PER_GROUP;
	}
	judge(r);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
	assert_int_equal(r->check.repair_count, 1); /* two of them, 0.52, are borne */
	for (size_t i = 0; i < 3; i++)
		r->species[i].territory.floor_m2 = 0.27;
	judge(r);
	assert_int_equal(r->check.repair_count, 2); /* 0.54 are not */
}

/* Nitrate that harms from 100 mg/L on, 60 for the sensitive: what is too much is made less. */
static void test_limits__load(void **state)
{
	struct room *r = *state;

	r->lines[0].count = 300;
	judge(r);
	assert_true(r->check.load.no3_steady_mg_l.value > 100);
	assert_int_equal(r->check.repair_count, 1);
	assert_step(r, 0, 0, 300, 6);
	r->species[0].group.least = r->species[0].group.comfortable = 300;
	judge(r); /* no smaller number would do */
	assert_step(r, 0, 0, 300, 0);
}

/* More than sixteen species: the one in most conflicts first, of equals the first. */
static void test_many__the_one_in_most_conflicts_goes(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 18;
	r->species[1].kind = r->species[2].kind = TS_ANIMAL_SHRIMP;
	r->species[4].preys_on = TS_PREYS_SHRIMPS;
	r->species[4].adult_length_cm = 8;
	r->species[9].kind = TS_ANIMAL_SNAIL;
	r->species[7].preys_on = TS_PREYS_SNAILS;
	judge(r);
	assert_int_equal(r->check.repair_count, 2);
	assert_step(r, 0, 4, 6, 0);
	assert_step(r, 1, 7, 6, 0);
	assert_false(r->check.repair_proven);
}

/* A conflict of one animal alone, with itself or the tank, is over when it goes. */
static void test_many__one_alone(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 17;
	r->species[0].to_own_kind = TS_INJURES;
	r->lines[0].count = 2;
	judge(r);
	assert_int_equal(r->check.repair_count, 1);
	assert_step(r, 0, 0, 2, 0);
}

static void test_many__every_allocation_fails_once(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 17;
	r->species[3].to_others = TS_INJURES;
	refuse_each_allocation(r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
		CASE(test_costs__the_planned_go_before_those_that_live_there),
		CASE(test_costs__numbers_before_leaving_out),
		CASE(test_numbers__males_alone),
		CASE(test_limits__tank_not_measured),
		CASE(test_limits__floor),
		CASE(test_limits__load),
		CASE(test_many__the_one_in_most_conflicts_goes),
		CASE(test_many__one_alone),
		CASE(test_many__every_allocation_fails_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
