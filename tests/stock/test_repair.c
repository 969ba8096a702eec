/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Remedies: the first rung of the ladder that really mends, who goes before whom, and that a repair
 * leaves no conflict. The ladder and its order: docs/methods.md, "Remedies".
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
	assert_ptr_equal(r->check.repair[step].remedy.species, &r->species[line]);
	assert_int_equal(r->check.repair[step].remedy.from, from);
	assert_int_equal(r->check.repair[step].remedy.to, to);
	assert_true(r->check.repair[step].remedy.mends);
}

static const struct ts_remedy *remedy(struct room *r, enum ts_rule_id rule)
{
	judge(r);
	for (size_t i = 0; i < r->check.count; i++) {
		if (r->check.rulings[i].rule == rule)
			return &r->check.rulings[i].remedy;
	}
	fail_msg("%s is missing", ts_rule_rows[rule].code);
	return NULL;
}

static void test_who__the_planned_go_before_those_that_live_there(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	set_biter(r, 0, 1);
	for (size_t living = 0; living < 2; living++) {
		r->lines[living].since = "2026-01-01";
		r->lines[!living].since = NULL;
		judge(r);
		assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
		assert_int_equal(r->check.repair_count, 1);
		assert_step(r, 0, !living, 6, 0);
		assert_int_equal(r->check.repair[0].remedy.kind, TS_REMEDY_LEAVE_OUT);
		assert_true(r->check.repair_mends);
	}
}

/* Both planned, both living: the biter goes, never whom it bites, first or last in the list. */
static void test_who__the_cause_before_the_sufferer(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	for (size_t biter = 0; biter < 2; biter++) {
		for (int living = 0; living < 2; living++) {
			fill(r, 2);
			set_biter(r, biter, !biter);
			r->lines[0].since = r->lines[1].since = living ? "2026-01-01" : NULL;
			judge(r);
			assert_step(r, 0, biter, 6, 0);
			assert_int_equal(r->check.repair[0].remedy.kind,
				living ? TS_REMEDY_OTHER_HOME : TS_REMEDY_LEAVE_OUT);
		}
	}
}

/* Neither is to blame: the last of the list. */
static void test_who__the_last_before_the_first(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	r->species[0].water.usual.temp_c = band(20, 22, 27, 29);
	r->species[1].water.usual.temp_c = band(23, 24.5, 26, 27);
	r->species[0].water.usual.salinity_g_l = band(0, 0, 1, 1);
	r->species[1].water.usual.salinity_g_l = band(2, 2, 5, 5);
	judge(r);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
	assert_step(r, 0, 1, 6, 0);
}

/* One that three others suffer from goes, and the three stay. */
static void test_who__one_step_for_many(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 4;
	r->plan.tank.length_cm = 200; /* four kinds in room enough */
	for (size_t i = 0; i < 3; i++)
		r->species[i].fins = 1;
	r->species[3].nips = TS_NIPS_YES;
	judge(r);
	assert_int_equal(r->check.repair_count, 1);
	assert_step(r, 0, 3, 6, 0);
}

/* Two that injure each other, of six: they are harmed, and in a full number they are calm. */
static void test_numbers__more_of_them(void **state)
{
	struct room *r = *state;
	const struct ts_remedy *m;

	r->species[0].to_own_kind = TS_INJURES;
	r->lines[0].count = 2;
	m = remedy(r, TS_RULE_FEW);
	assert_int_equal(m->kind, TS_REMEDY_NUMBER);
	assert_int_equal(m->from, 2);
	assert_int_equal(m->to, 6);
	assert_true(m->mends);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
	assert_step(r, 0, 0, 2, 6);
}

/* A shoal eases biting and does not end it: where fins are long it is no remedy. */
static void test_numbers__no_shoal_beside_long_fins(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 2;
	set_biter(r, 1, 0);
	r->lines[1].count = 4;
	r->lines[0].since = "2026-01-01";
	assert_int_equal(remedy(r, TS_RULE_FIN_NIPPER)->kind, TS_REMEDY_LEAVE_OUT);
	assert_ptr_equal(remedy(r, TS_RULE_FIN_NIPPER)->species, &r->species[1]);
	r->species[0].fins = 0; /* short ones: more of the biters do */
	assert_int_equal(remedy(r, TS_RULE_FIN_NIPPER)->kind, TS_REMEDY_NUMBER);
	assert_int_equal(remedy(r, TS_RULE_FIN_NIPPER)->to, 6);
}

/* Males alone stay males alone in another number. */
static void test_numbers__males_alone(void **state)
{
	struct room *r = *state;

	r->species[0].group.sexes = TS_SEXES_TWO_FEMALES;
	r->species[0].to_own_kind = TS_INJURES;
	r->lines[0].count = 2;
	r->lines[0].sex = TS_SEX_MALE;
	assert_int_equal(remedy(r, TS_RULE_FEW)->to, 6);
	assert_true(remedy(r, TS_RULE_FEW)->mends);
}

/* Too many: fewer, as the record wants them; where no number would do they are not bought. */
static void test_load__changes_first_then_fewer(void **state)
{
	struct room *r = *state;

	r->lines[0].count = 300;
	judge(r);
	assert_true(r->check.load.no3_steady_mg_l.value > 100);
	assert_int_equal(remedy(r, TS_RULE_NITRATE_LOAD)->kind, TS_REMEDY_ROUTINE);
	assert_true(remedy(r, TS_RULE_NITRATE_LOAD)->percent > 30 ||
		    remedy(r, TS_RULE_NITRATE_LOAD)->days < 7);
	r->lines[0].count = 3000;
	assert_int_equal(remedy(r, TS_RULE_NITRATE_LOAD)->kind, TS_REMEDY_NUMBER);
	assert_int_equal(remedy(r, TS_RULE_NITRATE_LOAD)->to, 12);
	r->species[0].group.least = r->species[0].group.comfortable = 3000;
	assert_int_equal(remedy(r, TS_RULE_NITRATE_LOAD)->kind, TS_REMEDY_LEAVE_OUT);
}

/*
 * KH 4 for animals that live from 8: into 100 L so much sodium bicarbonate as 5 degrees are, 0.3567
 * meq/L and 84.007 g/mol each: 14.98 g; a degree inside. Calcium they have.
 */
static void test_minerals__grams_by_hand(void **state)
{
	struct room *r = *state;
	const struct ts_remedy *m;

	r->species[0].water.usual.kh_dh = band(8, 8, 20, 25);
	r->reading.kh_dh = value(4);
	r->reading.ph = (struct ts_measure){0};
	m = remedy(r, TS_RULE_WATER);
	assert_int_equal(m->kind, TS_REMEDY_MINERALS);
	assert_true(fabs(m->nahco3_g - 14.98) < 0.01);
	assert_true(m->cacl2_g == 0 && m->mgso4_g == 0);
	assert_true(m->kh_dh == 9);
	assert_int_equal(r->check.verdict, TS_PLAN_SOUND_IF); /* planned: done before they come */
}

/*
 * Who lives there stays, and the water comes to it: 5 degrees in weekly changes that move it by 2
 * at the most, 40 % rounded down to 25; after 7 of them less than a degree is left (6 * 0.75^7 =
 * 0.8). Until eight weeks have shown that it is borne, nothing is answered.
 */
static void test_minerals__residents_stay(void **state)
{
	struct room *r = *state;
	const struct ts_remedy *m;

	r->species[0].water.usual.kh_dh = band(8, 8, 20, 25);
	r->reading.kh_dh = value(3);
	r->reading.ph = (struct ts_measure){0};
	r->lines[0].since = "2026-01-01";
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	ts_arena_drop(&r->arena);
	assert_int_equal(ts_check_plan(&r->plan, r->named, 20500, NULL, &r->arena, &r->check),
		TS_OK); /* 2026-02-16: 46 days */
	assert_int_equal(r->check.verdict, TS_PLAN_SOUND_IF);
	assert_false(r->check.answered);
	assert_int_equal(r->check.rulings[0].rule, TS_RULE_WATER);
	m = &r->check.rulings[0].remedy;
	assert_int_equal(m->kind, TS_REMEDY_MINERALS);
	assert_true(m->kh_dh == 9 && m->step_percent == 25 && m->step_count == 7);
	ts_arena_drop(&r->arena);
	assert_int_equal(ts_check_plan(&r->plan, r->named, 20519, NULL, &r->arena, &r->check),
		TS_OK); /* 2026-03-07: 65 days */
	assert_int_equal(r->check.verdict, TS_PLAN_SOUND_IF);
}

/* Over ammonia nothing is done that raises the pH. */
static void test_minerals__not_over_ammonia(void **state)
{
	struct room *r = *state;

	r->species[0].water.usual.kh_dh = band(8, 8, 20, 25);
	r->reading.kh_dh = value(3);
	r->reading.ph = (struct ts_measure){0};
	r->plan.tank.readings = &r->in_tank;
	r->plan.tank.reading_count = 1;
	r->in_tank.tan_mg_l = value(2);
	assert_int_not_equal(remedy(r, TS_RULE_WATER)->kind, TS_REMEDY_MINERALS);
}

/* Twice as hard as they live: half of it without minerals, rounded to their side in 5 %. */
static void test_dilute__share_by_hand(void **state)
{
	struct room *r = *state;

	r->species[0].water.usual.gh_dh = band(1, 2, 7, 8);
	r->reading.ph = (struct ts_measure){0};
	assert_int_equal(remedy(r, TS_RULE_WATER)->kind, TS_REMEDY_DILUTE);
	assert_true(remedy(r, TS_RULE_WATER)->percent == 60);
	assert_true(fabs(remedy(r, TS_RULE_WATER)->gh_dh - 5.6) < 1e-9);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND); /* other fish are the cheaper way */
}

static void test_tank__a_lid(void **state)
{
	struct room *r = *state;

	r->species[0].needs.cover = 1;
	r->plan.tank.cover = TS_COVER_NO;
	assert_int_equal(remedy(r, TS_RULE_COVER)->kind, TS_REMEDY_TANK);
	assert_true(remedy(r, TS_RULE_COVER)->mends);
}

/* The smallest tank that the rules have nothing against is the remedy of one that is too short. */
static void test_tank__long_enough(void **state)
{
	struct room *r = *state;

	r->species[0].needs.tank_length_cm = 150;
	assert_int_equal(remedy(r, TS_RULE_TANK_LENGTH)->kind, TS_REMEDY_TANK);
	assert_true(remedy(r, TS_RULE_TANK_LENGTH)->length_cm == 150);
	assert_true(r->check.smallest.length_cm == 150);
	assert_int_equal(r->check.verdict, TS_PLAN_UNSOUND);
}

/* Neither litres nor floor known: no reason to give up more than the conflict wants. */
static void test_limits__tank_not_measured(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 3;
	r->plan.tank.length_cm = r->plan.tank.width_cm = r->plan.tank.height_cm = 0;
	set_biter(r, 2, 0);
	judge(r);
	assert_false(r->check.load_known);
	assert_int_equal(r->check.repair_count, 1);
	assert_true(r->check.repair_mends);
}

/* More kinds than are tried: who is to go is said of each fault, and nothing is promised. */
static void test_many__not_tried(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 17;
	r->species[4].to_others = TS_INJURES;
	judge(r);
	assert_int_equal(r->check.repair_count, 0);
	assert_false(r->check.repair_mends);
}

/* Random biters, shrimp eaters, rough ones, living and planned: a repair leaves no conflict. */
static void test_repair__leaves_no_conflict(void **state)
{
	struct room *r = *state;
	unsigned seed = 1;

	for (int round = 0; round < 200; round++) {
		size_t count = 2 + (size_t)round % 8;

		fill(r, count);
		for (size_t i = 0; i < count; i++) {
			seed = seed * 1664525u + 1013904223u;
			r->species[i].fins = seed >> 28 & 1;
			r->species[i].nips = seed >> 24 & 1 ? TS_NIPS_YES : TS_NIPS_NO;
			r->species[i].to_others = seed >> 20 & 7 ? TS_IGNORES : TS_INJURES;
			r->lines[i].count = 1 + (seed >> 12 & 7);
			r->lines[i].since = seed >> 10 & 1 ? "2026-01-01" : NULL;
		}
		judge(r);
		assert_true(r->check.repair_mends);
		assert_true(r->check.repair_count <= count + 4);
	}
}

static void test_every_allocation_fails_once(void **state)
{
	struct room *r = *state;

	r->plan.stock_count = 3;
	r->species[2].to_others = TS_INJURES;
	refuse_each_allocation(r);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
#define CASE(name) cmocka_unit_test_setup_teardown(name, set_up, tear_down)
		CASE(test_who__the_planned_go_before_those_that_live_there),
		CASE(test_who__the_cause_before_the_sufferer),
		CASE(test_who__the_last_before_the_first),
		CASE(test_who__one_step_for_many),
		CASE(test_numbers__more_of_them),
		CASE(test_numbers__no_shoal_beside_long_fins),
		CASE(test_numbers__males_alone),
		CASE(test_load__changes_first_then_fewer),
		CASE(test_minerals__grams_by_hand),
		CASE(test_minerals__residents_stay),
		CASE(test_minerals__not_over_ammonia),
		CASE(test_dilute__share_by_hand),
		CASE(test_tank__a_lid),
		CASE(test_tank__long_enough),
		CASE(test_limits__tank_not_measured),
		CASE(test_many__not_tried),
		CASE(test_repair__leaves_no_conflict),
		CASE(test_every_allocation_fails_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
