/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of one species at their limits: on the limit, just beyond it, and the figures that the
 * ruling quotes, each worked out by hand from the practice values of docs/methods.md.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>

#include "scene.h"

static const double none = (double)NAN;

/* clang-format off */
#define MALES(m, f, e) s->a = (struct ts_group){.species = &s->x, .males = m, .females = f, .either = e}
WHEN(jumper_open, (s->x.needs.cover = 1, s->tank.cover = TS_COVER_NO))
WHEN(rough_two, (s->a.either = 2, s->x.to_own_kind = TS_INJURES))
WHEN(rough_three, (s->a.either = 3, s->x.to_own_kind = TS_INJURES))
WHEN(rough_one, (s->a.either = 1, s->x.to_own_kind = TS_INJURES))
WHEN(mild_two, (s->a.either = 2, s->x.to_own_kind = TS_CHASES))
WHEN(gentle_in_brisk, (s->x.needs.flow = TS_NEEDS_GENTLE, s->tank.flow = TS_FLOW_BRISK))
WHEN(brisk_in_gentle, (s->x.needs.flow = TS_NEEDS_BRISK, s->tank.flow = TS_FLOW_GENTLE))
WHEN(brisk_in_still, (s->x.needs.flow = TS_NEEDS_BRISK, s->tank.flow = TS_FLOW_STILL))
WHEN(brisk_unsaid, s->x.needs.flow = TS_NEEDS_BRISK)
WHEN(any_in_brisk, s->tank.flow = TS_FLOW_BRISK)
WHEN(bright_in_shade, (s->x.needs.light = TS_NEEDS_BRIGHT, s->tank.light = TS_LIGHT_SHADE))
WHEN(bright_unsaid, s->x.needs.light = TS_NEEDS_BRIGHT)
WHEN(any_in_shade, s->tank.light = TS_LIGHT_SHADE)
#define ALONE(how) s->x.group.sexes = TS_SEXES_ALONE, s->x.group.least = 1, s->x.to_own_kind = how
WHEN(loners_injuring, (ALONE(TS_INJURES), MALES(1, 0, 1)))
WHEN(loners_one_male, (ALONE(TS_INJURES), MALES(1, 1, 0)))
WHEN(loners_chasing, (ALONE(TS_CHASES), MALES(2, 0, 0)))
WHEN(loners_peaceful, (ALONE(TS_IGNORES), MALES(2, 0, 0)))
WHEN(three_of_a_pair, (s->x.group.sexes = TS_SEXES_PAIR, s->x.to_own_kind = TS_CHASES, s->a.either = 3))
WHEN(three_peaceful, (s->x.group.sexes = TS_SEXES_PAIR, s->a.either = 3))
WHEN(harem_two_males, (s->x.group.sexes = TS_SEXES_HAREM, s->x.to_own_kind = TS_INJURES, MALES(2, 2, 0)))
WHEN(harem_two_males_enough, (harem_two_males(s), MALES(2, 6, 0)))
WHEN(harem_one_male, (s->x.group.sexes = TS_SEXES_HAREM, MALES(1, 6, 0)))
WHEN(harem_of_nine, (s->x.group.sexes = TS_SEXES_HAREM, s->x.group.least = 9, MALES(3, 3, 0)))
WHEN(harem_of_ten, (s->x.group.sexes = TS_SEXES_HAREM, s->x.group.least = 10, MALES(3, 7, 0)))
WHEN(one_male_chasing, (s->x.group.sexes = TS_SEXES_ONE_MALE, s->x.to_own_kind = TS_CHASES, MALES(4, 0, 0)))
WHEN(one_male_injuring, (s->x.group.sexes = TS_SEXES_ONE_MALE, s->x.to_own_kind = TS_INJURES, MALES(2, 4, 0)))
WHEN(two_males_two_females, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, MALES(2, 2, 0)))
WHEN(two_males_two_unknown, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, MALES(2, 0, 2)))
WHEN(two_males_four_unknown, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, MALES(2, 0, 4)))
#define DEEP(height) s->x.body = TS_BODY_DEEP, s->x.adult_length_cm = 40, s->tank.height_cm = height
WHEN(deep_in_45, (DEEP(45)))
WHEN(deep_in_36, (DEEP(36)))
WHEN(deep_in_35, (DEEP(35)))
WHEN(tall_in_35, (s->x.needs.tank_height_cm = 50, s->tank.height_cm = 35))
WHEN(deep_unsaid, (DEEP(0)))
WHEN(long_shrimp_low, (DEEP(10), s->x.kind = TS_ANIMAL_SHRIMP))
#define LENGTH(needs_, has) s->x.needs.tank_length_cm = needs_, s->tank.length_cm = has
WHEN(needs_80_has_64, (LENGTH(80, 64)))
WHEN(needs_80_has_63, (LENGTH(80, 63)))
WHEN(needs_80_has_80, (LENGTH(80, 80)))
WHEN(needs_80_has_79, (LENGTH(80, 79)))
WHEN(litres_for_42, (s->tank = (struct ts_tank){.volume_l = 16}, s->x.needs.tank_length_cm = 42))
WHEN(litres_for_41, (s->tank = (struct ts_tank){.volume_l = 16}, s->x.needs.tank_length_cm = 41))
WHEN(no_width, s->tank.width_cm = 0)
WHEN(no_width_small, (s->tank.width_cm = 0, s->tank.volume_l = 2))
WHEN(nothing_said, (s->tank = (struct ts_tank){0}, s->x.needs.tank_length_cm = 80))
WHEN(wide_20, s->x.adult_length_cm = 20)
WHEN(wide_24, s->x.adult_length_cm = 24)
WHEN(wide_30, s->x.adult_length_cm = 30)
WHEN(eel_30, (s->x.adult_length_cm = 30, s->x.body = TS_BODY_EEL))
#define PLACE(floor, per_) s->x.territory.floor_m2 = floor, s->x.territory.per = per_, s->x.to_own_kind = TS_INJURES
WHEN(five_unknown_per_male, (PLACE(0.15, TS_PER_MALE), s->a.either = 5))
WHEN(five_unknown_in_harems, (PLACE(0.2, TS_PER_MALE), s->x.group.sexes = TS_SEXES_HAREM, s->a.either = 5))
WHEN(three_pairs_chasing, (PLACE(0.3, TS_PER_PAIR), s->x.to_own_kind = TS_CHASES, s->a.either = 6))
WHEN(three_per_pair, (PLACE(0.25, TS_PER_PAIR), s->a.either = 3))
WHEN(three_per_animal, (PLACE(0.2, TS_PER_ANIMAL), s->a.either = 3))
WHEN(three_per_group, (PLACE(0.5, TS_PER_GROUP), s->a.either = 3))
WHEN(two_per_animal, (PLACE(0.2, TS_PER_ANIMAL), s->a.either = 2))
WHEN(unmeasured_floor, (PLACE(0.2, TS_PER_ANIMAL), s->tank.width_cm = 0))
#define THUMB(least_, cm) s->x.group.least = least_, s->x.adult_length_cm = cm, s->x.to_own_kind = TS_INJURES
WHEN(thumb_three_of_10, (THUMB(1, 10), s->a.either = 3))
WHEN(thumb_four_at_least, (THUMB(4, 10), s->a.either = 6))
WHEN(thumb_twenty_two, (THUMB(4, 10), s->a.either = 22))
WHEN(thumb_shoal, (THUMB(5, 10), s->a.either = 6))
WHEN(thumb_injures_others, (s->x.group.least = 1, s->x.adult_length_cm = 12, s->x.needs.tank_length_cm = 100, s->x.to_others = TS_INJURES, s->a.either = 4))
WHEN(eight, s->a.either = 8)
WHEN(six, s->a.either = 6)
WHEN(five, s->a.either = 5)

static const struct scene_row rows[] = {
	{TS_RULE_COVER, "open", jumper_open, TS_CONCERN, none, none, none},
	{TS_RULE_FEW, "two rough of six", rough_two, TS_CONFLICT, 2, 6, 4},
	{TS_RULE_FEW, "three rough of six, the half", rough_three, TS_CONCERN, 3, 6, 3},
	{TS_RULE_FEW, "a lone rough one has nobody to fight", rough_one, TS_CONCERN, 1, 6, 5},
	{TS_RULE_FEW, "two that only chase", mild_two, TS_CONCERN, 2, 6, 4},
	{TS_RULE_FLOW, "gentle in brisk, one step", gentle_in_brisk, TS_NOTE, none, none, none},
	{TS_RULE_FLOW, "brisk in gentle, one step", brisk_in_gentle, TS_NOTE, none, none, none},
	{TS_RULE_FLOW, "brisk in still, two steps", brisk_in_still, TS_CONCERN, none, none, none},
	{TS_RULE_FLOW, "not said", brisk_unsaid, -1, none, none, none},
	{TS_RULE_FLOW, "wants any", any_in_brisk, -1, none, none, none},
	{TS_RULE_LIGHT, "bright in shade", bright_in_shade, TS_NOTE, none, none, none},
	{TS_RULE_LIGHT, "not said", bright_unsaid, -1, none, none, none},
	{TS_RULE_LIGHT, "wants any", any_in_shade, -1, none, none, none},
	{TS_RULE_OWN_KIND, "a male and one that may be a male", loners_injuring, TS_CONFLICT, 2, 1, 1},
	{TS_RULE_OWN_KIND, "a male and a female", loners_one_male, TS_CONFLICT, 2, 1, 1},
	{TS_RULE_OWN_KIND, "two males that chase", loners_chasing, TS_CONCERN, 2, 1, 1},
	{TS_RULE_OWN_KIND, "two males that ignore", loners_peaceful, -1, none, none, none},
	{TS_RULE_PAIR_FORMS, "three", three_of_a_pair, TS_CONCERN, 3, 2, 1},
	{TS_RULE_PAIR_FORMS, "three that ignore", three_peaceful, -1, none, none, none},
	{TS_RULE_SEXES, "two males in a harem", harem_two_males, TS_CONCERN, 2, 1, 2},
	{TS_RULE_SEXES, "two males in a harem of six", harem_two_males_enough, -1, none, none, none},
	{TS_RULE_SEXES, "one male in a harem", harem_one_male, -1, none, none, none},
	{TS_RULE_SEXES, "three males, nine at least", harem_of_nine, TS_CONCERN, 3, 2, 3},
	{TS_RULE_SEXES, "three males in a crowd", harem_of_ten, -1, none, none, none},
	{TS_RULE_SEXES, "four males of one that chase", one_male_chasing, TS_CONCERN, 4, 1, 0},
	{TS_RULE_SEXES, "two males of one that injure", one_male_injuring, TS_CONFLICT, 2, 1, 4},
	{TS_RULE_SEXES, "two males, two females", two_males_two_females, TS_CONCERN, 2, 1, 2},
	{TS_RULE_SEXES, "two males, two unknown", two_males_two_unknown, TS_CONCERN, 2, 1, 2},
	{TS_RULE_SEXES, "two males, four unknown", two_males_four_unknown, -1, none, none, none},
	/* 2.5 depths of 0.45 lengths of 40 cm are 45 cm; four fifths of it 36 */
	{TS_RULE_TANK_HEIGHT, "45 of 45 cm", deep_in_45, -1, none, none, none},
	{TS_RULE_TANK_HEIGHT, "36 of 45 cm", deep_in_36, TS_NOTE, 36, 45, none},
	{TS_RULE_TANK_HEIGHT, "35 of 45 cm", deep_in_35, TS_CONFLICT, 35, 45, none},
	{TS_RULE_TANK_HEIGHT, "a figure of its own", tall_in_35, TS_CONFLICT, 35, 50, none},
	{TS_RULE_TANK_HEIGHT, "not said", deep_unsaid, -1, none, none, none},
	{TS_RULE_TANK_HEIGHT, "no fish", long_shrimp_low, -1, none, none, none},
	{TS_RULE_TANK_LENGTH, "64 of 80, four fifths", needs_80_has_64, TS_NOTE, 64, 80, none},
	{TS_RULE_TANK_LENGTH, "63 of 80", needs_80_has_63, TS_CONFLICT, 63, 80, none},
	{TS_RULE_TANK_LENGTH, "79 of 80", needs_80_has_79, TS_NOTE, 79, 80, none},
	{TS_RULE_TANK_LENGTH, "80 of 80", needs_80_has_80, -1, none, none, none},
	/* 16 L of water are usually 35 cm long, and 67 at the most: four fifths of 43 are less than 35, of 44 more */
	{TS_RULE_TANK_UNMEASURED, "16 L, usually 33 cm, for 42", litres_for_42, TS_CONFLICT, 33, 42, none},
	{TS_RULE_TANK_UNMEASURED, "16 L, usually 33 cm, for 41", litres_for_41, TS_NOTE, 33, 41, none},
	{TS_RULE_TANK_UNMEASURED, "length without width", no_width, TS_QUESTION, none, 60, none},
	{TS_RULE_TANK_UNMEASURED, "length counts before litres", no_width_small, -1, none, none, none},
	{TS_RULE_TANK_UNMEASURED, "nothing said", nothing_said, TS_QUESTION, none, 80, none},
	{TS_RULE_TANK_WIDTH, "20 cm fish in 40 cm", wide_20, -1, none, none, none},
	{TS_RULE_TANK_WIDTH, "24 cm fish in 40 cm", wide_24, TS_NOTE, 40, 48, none},
	{TS_RULE_TANK_WIDTH, "30 cm fish in 40 cm", wide_30, TS_CONFLICT, 40, 60, none},
	{TS_RULE_TANK_WIDTH, "30 cm eel in 40 cm", eel_30, TS_NOTE, 40, 45, none},
	/* the floor is 1.0 m times 0.4 m */
	{TS_RULE_TERRITORY, "five unknown count as three males", five_unknown_per_male, TS_NOTE, 0.4, 0.45, none},
	{TS_RULE_TERRITORY, "three are two pairs", three_per_pair, TS_NOTE, 0.4, 0.5, none},
	{TS_RULE_TERRITORY, "five unknown in harems are two males", five_unknown_in_harems, -1, none, none, none},
	{TS_RULE_TERRITORY, "three pairs that only chase share ground", three_pairs_chasing, TS_NOTE, 0.4, 0.42, none},
	{TS_RULE_TERRITORY, "three animals", three_per_animal, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_TERRITORY, "one group", three_per_group, TS_NOTE, 0.4, 0.5, none},
	{TS_RULE_TERRITORY, "two animals fill the floor", two_per_animal, -1, none, none, none},
	{TS_RULE_TERRITORY, "floor not known", unmeasured_floor, -1, none, none, none},
	{TS_RULE_UNSETTLED, "eight of ten", eight, TS_NOTE, 8, 10, 2},
	{TS_RULE_UNSETTLED, "the least number", six, TS_NOTE, 6, 10, 4},
	{TS_RULE_UNSETTLED, "fewer is another rule", five, -1, none, none, none},
};

/* Floors by rule of thumb: a square of four lengths for each two animals, no more than the least tank has at 3:1. */
static const struct { const char *name; void (*change)(struct scene *s); double floor_m2; } floors[] = {
	{"floor: three of 10 cm, two of 0.12 m2, which 60 cm have", thumb_three_of_10, 0.24},
	{"floor: six of 10 cm, three of these", thumb_four_at_least, 0.36},
	{"floor: twenty-two of 10 cm, eleven", thumb_twenty_two, 1.32},
	{"floor: a shoal holds none", thumb_shoal, 0},
	{"floor: four of 12 cm that injure others, in 100 cm two squares of 0.48 m", thumb_injures_others, 0.4608},
};
/* clang-format on */
#define ROWS (sizeof rows / sizeof *rows)
#define FLOORS (sizeof floors / sizeof *floors)

static void test_floor(void **state)
{
	size_t i = (size_t)(uintptr_t)*state;
	struct scene s;

	set_peace(&s);
	floors[i].change(&s);
	assert_true(is_figure(ts_group_floor_m2(&s.a, NULL), floors[i].floor_m2));
}

static void test_floor_sum__levels_and_crowds(void **state)
{
	struct ts_floor_sum sum = {0};
	struct scene s;

	(void)state;
	set_peace(&s);
	s.x.lakes_apart = s.y.lakes_apart = TS_LAKES_OWN;
	s.x.territory.per = s.y.territory.per = TS_PER_GROUP;
	s.x.territory.floor_m2 = 0.48;
	s.y.territory.floor_m2 = 0.33;
	ts_floor_add(&sum, &s.a, NULL);
	ts_floor_add(&sum, &s.b, NULL);
	assert_true(is_figure(ts_floor_total_m2(&sum), 0.48));
	s.y.lakes_apart = TS_LAKES_NO;
	ts_floor_add(&sum, &s.b, NULL); /* in the middle */
	assert_true(is_figure(ts_floor_total_m2(&sum), 0.81));
	s.y.swims = TS_SWIMS_BOTTOM;
	ts_floor_add(&sum, &s.b, NULL);
	assert_true(is_figure(ts_floor_total_m2(&sum), 0.81));
	s.y.swims = TS_SWIMS_EVERYWHERE;
	ts_floor_add(&sum, &s.b, NULL);
	assert_true(is_figure(ts_floor_total_m2(&sum), 1.14));
}

static void test_what_is_named__flow_and_light(void **state)
{
	static const struct scene_row named[] = {
		{TS_RULE_FLOW, "", brisk_in_still, 0, 0, 0, 0},
		{TS_RULE_LIGHT, "", bright_in_shade, 0, 0, 0, 0},
	};
	struct ts_ruling r;

	(void)state;
	assert_true(judge_scene(&named[0], &r));
	assert_int_equal(r.word, TS_NEEDS_BRISK);
	assert_true(judge_scene(&named[1], &r));
	assert_int_equal(r.word, TS_NEEDS_BRIGHT);
}

int main(void)
{
	static struct CMUnitTest tests[ROWS + FLOORS + 2];
	static char names[ROWS][CASE_NAME];
	size_t n = 0;

	for (size_t i = 0; i < ROWS; i++, n++) {
		tests[n] =
			scene_case(names[i], rows[i].rule, rows[i].name, test_scene_row, &rows[i]);
	}
	for (size_t i = 0; i < FLOORS; i++, n++)
		tests[n] = (struct CMUnitTest){
			floors[i].name, test_floor, NULL, NULL, (void *)(uintptr_t)i};
	tests[n++] = (struct CMUnitTest)cmocka_unit_test(test_floor_sum__levels_and_crowds);
	tests[n] = (struct CMUnitTest)cmocka_unit_test(test_what_is_named__flow_and_light);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
