/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Arrival: which of the three ways, the worked case, and properties: no stage of a quarantine
 * tank beyond a safe step; neither a longer way, nor more ammonia, nor a missing value turns
 * "straight over" or "quarantine" into mixing.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "care/arrive.h"
#include "chem/carbonate.h"

struct trip {
	struct ts_solution shop, tank;
	struct ts_arrive_wish wish;
};

static void open_trip(
	struct trip *t, double gh, double kh, double ec, double to_gh, double to_kh, double to_ec)
{
	assert_int_equal(ts_solution_from_hardness(gh, kh, 25, &t->shop), TS_OK);
	assert_int_equal(ts_solution_from_hardness(to_gh, to_kh, 25, &t->tank), TS_OK);
	t->wish = (struct ts_arrive_wish){.shop = &t->shop,
		.tank = &t->tank,
		.shop_gh_dh = gh,
		.tank_gh_dh = to_gh,
		.shop_ec_us_cm = ec,
		.tank_ec_us_cm = to_ec,
		.hours = 0.75,
		.bag_tan_mg_l = (double)NAN,
		.bag_ph = (double)NAN,
		.temp_c = 25};
}

static enum ts_arrive_way way(const struct trip *t)
{
	struct ts_arrival a;

	ts_arrive_plan(&t->wish, NULL, &a);
	return a.way;
}

static void test_hard_shop_water_soft_tank__quarantine_and_eight_stages(void **state)
{
	struct trip t;
	struct ts_arrival a;

	(void)state;
	open_trip(&t, 16, 9, 720, 5, 3, 220);
	ts_arrive_plan(&t.wish, NULL, &a);
	assert_int_equal(a.way, TS_ARRIVE_QUARANTINE);
	assert_int_equal(a.count, 8 + 1); /* eight in the quarantine tank, then over */
	assert_false(a.too_far);
	assert_int_equal(a.stages[8].day, 16);
	assert_true(a.stages[8].change == 1 && a.stages[7].change < 1);
	for (size_t i = 0; i < a.count; i++) {
		double before = i ? a.stages[i - 1].ec_us_cm : 720;

		assert_true(a.stages[i].ec_us_cm >= before * 0.85 - 1e-6);
		assert_true(a.stages[i].portions <= 4);
	}
}

static void test_waters_alike_and_a_short_way__mix(void **state)
{
	struct trip t;

	(void)state;
	open_trip(&t, 10, 6, 420, 11, 6, 460);
	assert_int_equal(way(&t), TS_ARRIVE_MIX);
	t.wish.bag_tan_mg_l = 2;
	assert_int_equal(way(&t), TS_ARRIVE_STRAIGHT);
}

static void test_posted__straight_over(void **state)
{
	struct trip t;
	struct ts_arrival a;

	(void)state;
	open_trip(&t, 10, 8, 420, 10, 8, 430);
	t.wish.hours = 24;
	ts_arrive_plan(&t.wish, NULL, &a);
	assert_int_equal(a.way, TS_ARRIVE_STRAIGHT);
	assert_true(a.tan_assumed);
	assert_true(fabs(a.nh3_bag_mg_l - 0.007) < 0.0005);
	assert_true(fabs(a.nh3_aired_mg_l - 0.25) < 0.05);
}

/* A degree more in soft water is a large share and yet a safe step. */
static void test_small_step_in_soft_water__no_quarantine(void **state)
{
	struct trip t;

	(void)state;
	open_trip(&t, 3.0, 2, 120, 3.9, 2.2, 140);
	assert_int_equal(way(&t), TS_ARRIVE_MIX);
}

/* Twice or half in a short time: dripped, but not animals that take change badly. */
static void test_twice_or_half__dripped(void **state)
{
	struct ts_species one = {.species = "Exempla ficta", .kind = TS_ANIMAL_SHRIMP};
	struct ts_resident animal = {&one, false, false};
	struct trip t;

	(void)state;
	open_trip(&t, 16, 10, 700, 8, 5, 360);
	assert_int_equal(way(&t), TS_ARRIVE_DRIP);
	t.wish.animals = &animal;
	t.wish.animal_count = 1;
	assert_int_equal(way(&t), TS_ARRIVE_DRIP);
	t.wish.bag_tan_mg_l = 2;
	assert_int_equal(way(&t), TS_ARRIVE_STRAIGHT);
	t.wish.bag_tan_mg_l = (double)NAN;
	t.wish.hours = 10;
	assert_int_equal(way(&t), TS_ARRIVE_STRAIGHT);
	animal.wild = true;
	assert_int_equal(way(&t), TS_ARRIVE_QUARANTINE);
}

/* Shrimps from GH 16 to 4: stages from half way, within the quarantine's own four weeks. */
static void test_stages_that_outlast_the_quarantine__start_half_way(void **state)
{
	struct ts_species one = {.species = "Exempla ficta", .kind = TS_ANIMAL_SHRIMP};
	struct ts_resident animal = {&one, false, false};
	struct ts_arrival a;
	struct trip t;

	(void)state;
	open_trip(&t, 16, 10, 700, 4, 2, 180);
	t.wish.animals = &animal;
	t.wish.animal_count = 1;
	ts_arrive_plan(&t.wish, NULL, &a);
	assert_int_equal(a.way, TS_ARRIVE_HALFWAY);
	assert_true(a.start_ec_us_cm >= 350 - 1e-6 && a.start_gh_dh >= 8 - 1e-6);
	assert_true(a.count > 1 && a.stages[a.count - 1].day <= 28);
	assert_true(fabs(a.stages[a.count - 1].gh_dh - 4) < 1e-6);
}

static void test_nothing_known_of_the_shop__taken_as_far(void **state)
{
	struct trip t;
	struct ts_arrival a;

	(void)state;
	open_trip(&t, 10, 6, 420, 11, 6, 460);
	t.wish.shop = NULL;
	t.wish.shop_gh_dh = t.wish.shop_ec_us_cm = (double)NAN;
	ts_arrive_plan(&t.wish, NULL, &a);
	assert_int_equal(a.way, TS_ARRIVE_QUARANTINE);
	assert_true(a.unknown_gap);
	assert_int_equal(a.count, 0);
}

static void test_steps__every_way_has_its_order(void **state)
{
	(void)state;
	for (int w = 0; w < TS_ARRIVE_WAY__COUNT; w++) {
		size_t found = 0;

		for (size_t i = 0; i < ts_arrive_step_count; i++)
			found += ts_arrive_steps[i].ways >> w & 1;
		assert_true(found >= 5);
	}
}

static double random_in(unsigned *seed, double low, double high)
{
	*seed = *seed * 1664525u + 1013904223u;
	return low + (double)(*seed >> 8) / 16777216.0 * (high - low);
}

static void random_trip(struct trip *t, unsigned *seed)
{
	double gh = random_in(seed, 1, 20), kh = random_in(seed, 1, 12);
	double to_gh = random_in(seed, 1, 20), to_kh = random_in(seed, 1, 12);

	open_trip(t, gh, kh, 30 * gh + 20 * kh, to_gh, to_kh, 30 * to_gh + 20 * to_kh);
}

static void test_property__no_stage_beyond_a_safe_step(void **state)
{
	unsigned seed = 41, stages = 0;

	(void)state;
	for (int i = 0; i < 60; i++) {
		struct trip t;
		struct ts_arrival a;
		double gh, kh, ec;

		random_trip(&t, &seed);
		ts_arrive_plan(&t.wish, NULL, &a);
		gh = t.wish.shop_gh_dh;
		kh = ts_chem_dkh_from_meq_l(t.shop.alk_meq_l);
		ec = t.wish.shop_ec_us_cm;
		for (size_t n = 0; n < a.count; n++) {
			const struct ts_arrive_stage *s = &a.stages[n];
			struct ts_safe_step most =
				ts_safe_step_of(fmin(gh, s->gh_dh), ec, TS_ORDINARY, NULL);

			assert_true(s->gh_dh - gh <= most.gh_up_dh + 1e-6);
			assert_true(gh - s->gh_dh <= most.gh_down_dh + 1e-6);
			assert_true(s->kh_dh - kh <= most.kh_up_dh + 1e-6);
			assert_true(kh - s->kh_dh <= most.kh_down_dh + 1e-6);
			assert_true(s->ec_us_cm - ec <= most.ec_up_us_cm + 1e-6);
			assert_true(ec - s->ec_us_cm <= most.ec_down_us_cm + 1e-6);
			gh = s->gh_dh;
			kh = s->kh_dh;
			ec = s->ec_us_cm;
			stages++;
		}
		if (a.count && !a.too_far)
			assert_true(fabs(gh - t.wish.tank_gh_dh) < 1e-6);
	}
	assert_true(stages > 75);
}

static void test_property__worse_or_unknown_never_becomes_mixing(void **state)
{
	unsigned seed = 43;

	(void)state;
	for (int i = 0; i < 100; i++) {
		struct trip t;
		enum ts_arrive_way before;

		random_trip(&t, &seed);
		t.wish.hours = random_in(&seed, 0, 5);
		t.wish.bag_tan_mg_l = random_in(&seed, 0, 2);
		before = way(&t);
		t.wish.bag_tan_mg_l += random_in(&seed, 0, 3);
		assert_true(way(&t) >= before);
		t.wish.hours += random_in(&seed, 0, 10);
		assert_true(way(&t) >= before);
		t.wish.hours = (double)NAN;
		assert_true(way(&t) >= before);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_hard_shop_water_soft_tank__quarantine_and_eight_stages),
		cmocka_unit_test(test_waters_alike_and_a_short_way__mix),
		cmocka_unit_test(test_posted__straight_over),
		cmocka_unit_test(test_small_step_in_soft_water__no_quarantine),
		cmocka_unit_test(test_twice_or_half__dripped),
		cmocka_unit_test(test_stages_that_outlast_the_quarantine__start_half_way),
		cmocka_unit_test(test_nothing_known_of_the_shop__taken_as_far),
		cmocka_unit_test(test_steps__every_way_has_its_order),
		cmocka_unit_test(test_property__no_stage_beyond_a_safe_step),
		cmocka_unit_test(test_property__worse_or_unknown_never_becomes_mixing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
