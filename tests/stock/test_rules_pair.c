/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of two species at their limits: on the limit, just beyond it, and the figures that the
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
#define EATER(cm) s->y.gape = 3, s->y.adult_length_cm = cm, s->x.adult_length_cm = 10
WHEN(mouth_to_3_7, (EATER(7.4)))
WHEN(mouth_to_3_75, (EATER(7.5)))
WHEN(mouth_to_7_45, (EATER(14.9)))
WHEN(mouth_to_7_5, (EATER(15)))
WHEN(grown_but_tight, (EATER(14), s->x.adult_length_cm = 8, s->a.size_cm = 8))
WHEN(larger_than_grown, (EATER(14), s->x.adult_length_cm = 8, s->a.size_cm = 12))
WHEN(small_species_as_sold, (EATER(4.6), s->x.adult_length_cm = 4))
WHEN(eel_as_prey, (EATER(10), s->x.body = TS_BODY_EEL))
WHEN(deep_as_prey, (EATER(20), s->x.body = TS_BODY_DEEP))
WHEN(shrimp_as_prey, (EATER(15), s->x.kind = TS_ANIMAL_SHRIMP, s->x.body = TS_BODY_DEEP))
WHEN(snail_as_prey, (EATER(15), s->x.kind = TS_ANIMAL_SNAIL))
WHEN(snail_as_eater, (EATER(15), s->y.kind = TS_ANIMAL_SNAIL))
#define NIGHT(cm) s->y.habits = TS_HABIT_NOCTURNAL, s->y.gape = 3, s->y.adult_length_cm = cm
WHEN(night_just_fits, (NIGHT(4.5)))
WHEN(night_too_small, (NIGHT(4.4)))
WHEN(night_nearly_grown, (NIGHT(7.9)))
WHEN(night_fits_by_day, (NIGHT(8)))
WHEN(night_wide, (NIGHT(9), s->y.gape = 2))
WHEN(night_ordinary_mouth, (NIGHT(14), s->y.gape = 1))
WHEN(night_both, (NIGHT(5), s->x.habits = TS_HABIT_NOCTURNAL))
WHEN(night_snail, (NIGHT(5), s->x.kind = TS_ANIMAL_SNAIL))
#define SHRIMP(cm) s->x.kind = TS_ANIMAL_SHRIMP, s->y.preys_on = TS_PREYS_SHRIMPS, s->y.adult_length_cm = cm
WHEN(shrimp_8, (SHRIMP(8)))
WHEN(shrimp_7, (SHRIMP(7)))
WHEN(shrimp_of_snail_eater, (SHRIMP(8), s->y.preys_on = TS_PREYS_SNAILS))
WHEN(fish_of_shrimp_eater, s->y.preys_on = TS_PREYS_SHRIMPS)
WHEN(snail_of_shrimp_eater, (s->x.kind = TS_ANIMAL_SNAIL, s->y.preys_on = TS_PREYS_SHRIMPS))
WHEN(fish_of_snail_eater, s->y.preys_on = TS_PREYS_SNAILS)
WHEN(nips_six_of_six, (s->y.nips = TS_NIPS_SOMETIMES, s->x.fins = 1, s->b.either = 6))
WHEN(nips_five_of_six, (s->y.nips = TS_NIPS_SOMETIMES, s->x.fins = 1, s->b.either = 5))
WHEN(nips_short_sometimes, (s->y.nips = TS_NIPS_SOMETIMES, s->b.either = 3))
WHEN(nips_no, (s->x.fins = 1, s->b.either = 3))
WHEN(nips_shrimp, (s->y.nips = TS_NIPS_YES, s->x.kind = TS_ANIMAL_SHRIMP, s->x.fins = 1))
/* y's floor is 0.16 m2 by rule of thumb, or what is said; the tank has 0.4 */
#define ROUGH(how, when) s->y.to_others = how, s->y.others_when = when, s->y.adult_length_cm = 10, s->x.adult_length_cm = 10
#define FLOOR(m2) s->y.territory.floor_m2 = m2, s->y.territory.per = TS_PER_GROUP
#define EQUALS s->x.to_others = TS_CHASES
WHEN(attacks_thumb, (ROUGH(TS_INJURES, TS_ALWAYS)))
WHEN(attacks_equal_roomy, (ROUGH(TS_INJURES, TS_ALWAYS), EQUALS))
WHEN(attacks_equal_two_floors, (ROUGH(TS_INJURES, TS_ALWAYS), EQUALS, FLOOR(0.2)))
WHEN(attacks_equal_cramped, (ROUGH(TS_INJURES, TS_ALWAYS), EQUALS, FLOOR(0.21)))
WHEN(attacks_six_tenths, (ROUGH(TS_INJURES, TS_ALWAYS), EQUALS, s->x.adult_length_cm = 6))
WHEN(attacks_smaller, (ROUGH(TS_INJURES, TS_ALWAYS), EQUALS, s->x.adult_length_cm = 5.9))
WHEN(attacks_of_other_water, (ROUGH(TS_INJURES, TS_ALWAYS), EQUALS, s->x.home_water = 1))
WHEN(attacks_snail, (ROUGH(TS_INJURES, TS_ALWAYS), s->x.kind = TS_ANIMAL_SNAIL))
WHEN(attacks_breeding_cramped, (ROUGH(TS_INJURES, TS_WHEN_BREEDING), FLOOR(0.3)))
WHEN(attacks_breeding_other_level, (ROUGH(TS_INJURES, TS_WHEN_BREEDING), FLOOR(0.3), s->x.swims = TS_SWIMS_TOP))
WHEN(attacks_breeding_x_everywhere, (ROUGH(TS_INJURES, TS_WHEN_BREEDING), FLOOR(0.3), s->x.swims = TS_SWIMS_EVERYWHERE))
WHEN(attacks_breeding_y_everywhere, (ROUGH(TS_INJURES, TS_WHEN_BREEDING), FLOOR(0.3), s->y.swims = TS_SWIMS_EVERYWHERE))
WHEN(attacks_cramped_equal, (ROUGH(TS_INJURES, TS_WHEN_CRAMPED), EQUALS, FLOOR(0.3)))
WHEN(attacks_cramped_two_floors, (ROUGH(TS_INJURES, TS_WHEN_CRAMPED), FLOOR(0.2)))
WHEN(chases_equal_roomy, (ROUGH(TS_CHASES, TS_ALWAYS), EQUALS))
WHEN(chases_equal_cramped, (ROUGH(TS_CHASES, TS_ALWAYS), EQUALS, FLOOR(0.3), s->b.either = 4))
WHEN(chases_half_length, (ROUGH(TS_CHASES, TS_ALWAYS), s->x.adult_length_cm = 5))
WHEN(chases_under_half, (ROUGH(TS_CHASES, TS_ALWAYS), s->x.adult_length_cm = 4.9))
WHEN(five_chase, (ROUGH(TS_CHASES, TS_ALWAYS), s->x.adult_length_cm = 4.9, s->b.either = 5))
WHEN(four_chase, (ROUGH(TS_CHASES, TS_ALWAYS), s->x.adult_length_cm = 4.9, s->b.either = 4))
WHEN(chases_snail, (ROUGH(TS_CHASES, TS_ALWAYS), s->x.kind = TS_ANIMAL_SNAIL))
WHEN(chases_breeding_cramped, (ROUGH(TS_CHASES, TS_WHEN_BREEDING), FLOOR(0.3)))
WHEN(chases_breeding_roomy, (ROUGH(TS_CHASES, TS_WHEN_BREEDING), FLOOR(0.2)))
WHEN(chases_breeding_other_level, (ROUGH(TS_CHASES, TS_WHEN_BREEDING), FLOOR(0.3), s->x.swims = TS_SWIMS_TOP))
#define WARMTH(t0, p0, p1, t1) s->y.water.usual.temp_c = (struct ts_envelope){.tolerated = {t0, t1}, .preferred = {p0, p1}}
WHEN(degree_shared, (WARMTH(27, 28, 31, 33)))
WHEN(less_than_a_degree, (WARMTH(27.5, 28, 31, 33)))
WHEN(two_comfortable, (WARMTH(22, 24, 28, 30)))
WHEN(under_two_comfortable, (WARMTH(22, 24.5, 28, 30)))
WHEN(equal_tops, (WARMTH(22, 25, 27, 28)))
#define HARD(x0, x1, y0, y1) s->x.water.usual.gh_dh.tolerated = (struct ts_range){x0, x1}, s->y.water.usual.gh_dh.tolerated = (struct ts_range){y0, y1}
WHEN(three_dh_shared, (HARD(1, 15, 12, 30)))
WHEN(two_dh_shared, (HARD(1, 15, 13, 30)))
WHEN(gh_touches, (HARD(1, 15, 15, 30)))
WHEN(soft_to_5, (HARD(0, 5, 3, 12)))
WHEN(soft_to_5_narrow, (HARD(0, 5, 3.5, 12)))
WHEN(soft_to_6, (HARD(0, 6, 4, 12)))
WHEN(gh_equal_tops, (HARD(0, 8, 6, 8)))
WHEN(ph_0_75_apart, s->y.water.usual.ph.tolerated = ((struct ts_range){8.25, 9.5}))
WHEN(ph_0_85_apart, s->y.water.usual.ph.tolerated = ((struct ts_range){8.35, 9.5}))
WHEN(salt_from_0_5, s->y.water.usual.salinity_g_l.tolerated = ((struct ts_range){0.5, 20}))
WHEN(salt_from_0_6, s->y.water.usual.salinity_g_l.tolerated = ((struct ts_range){0.6, 20}))
WHEN(both_need_salt, (s->x.water.usual.salinity_g_l.tolerated = (struct ts_range){1, 5}, s->y.water.usual.salinity_g_l.tolerated = (struct ts_range){2, 20}))
WHEN(brisk_and_still, (s->x.needs.flow = TS_NEEDS_BRISK, s->y.needs.flow = TS_NEEDS_STILL))
WHEN(still_alone, s->x.needs.flow = TS_NEEDS_STILL)
WHEN(shade_alone, s->x.needs.light = TS_NEEDS_SHADE)
WHEN(specialist_and_quick, (s->x.habits = TS_HABIT_SPECIALIST, s->y.habits = TS_HABIT_QUICK_EATER))
WHEN(quick_alone, s->y.habits = TS_HABIT_QUICK_EATER)
#define KIN(how, m2) s->x.to_own_kind = s->y.to_own_kind = how, s->y.species = "Exempla varia", \
	s->x.territory.floor_m2 = s->y.territory.floor_m2 = m2, s->x.territory.per = s->y.territory.per = TS_PER_GROUP
WHEN(kin_no_room, (KIN(TS_INJURES, 0.3)))
WHEN(kin_just_room, (KIN(TS_INJURES, 0.2)))
WHEN(kin_chasing_no_room, (KIN(TS_CHASES, 0.3)))
WHEN(kin_chasing_room, (KIN(TS_CHASES, 0.2)))
WHEN(kin_one_injures, (KIN(TS_CHASES, 0.3), s->x.to_own_kind = TS_INJURES))
WHEN(kin_one_ignores, (KIN(TS_INJURES, 0.3), s->y.to_own_kind = TS_IGNORES))
WHEN(kin_no_floor, (KIN(TS_CHASES, 0)))
WHEN(kin_by_the_first_letters, (KIN(TS_INJURES, 0.3), s->y.species = "Exemplaria una"))
#define FAMILY s->y.species = "Olda altera", s->y.family = s->x.family
WHEN(family_lone_x, (KIN(TS_INJURES, 0.3), FAMILY, s->x.group.sexes = TS_SEXES_ALONE))
WHEN(family_lone_y, (KIN(TS_INJURES, 0.3), FAMILY, s->y.group.sexes = TS_SEXES_ALONE))
WHEN(family_in_groups, (KIN(TS_INJURES, 0.3), FAMILY))
WHEN(family_other, (KIN(TS_INJURES, 0.3), s->y.species = "Olda altera", s->x.group.sexes = TS_SEXES_ALONE))
WHEN(family_without_place, (KIN(TS_INJURES, 0.3), FAMILY, s->x.group.sexes = TS_SEXES_ALONE, s->y.territory.floor_m2 = 0))

static const struct scene_row rows[] = {
	/* a predator takes half its own length; prey of 10 cm is sold at 5, and from 75 % on it counts */
	{TS_RULE_EATEN, "takes 3.7 of 5 cm", mouth_to_3_7, -1, none, none, none},
	{TS_RULE_EATEN, "takes 3.75 of 5 cm", mouth_to_3_75, TS_CONCERN, 5, 3.75, none},
	{TS_RULE_EATEN, "takes 7.45 of 10 cm grown", mouth_to_7_45, TS_CONCERN, 5, 7.45, none},
	{TS_RULE_EATEN, "takes 7.5 of 10 cm grown", mouth_to_7_5, TS_CONFLICT, 5, 7.5, none},
	{TS_RULE_EATEN, "grown, and only nearly fits", grown_but_tight, TS_CONCERN, 8, 7, none},
	{TS_RULE_EATEN, "none is larger than grown", larger_than_grown, TS_CONCERN, 8, 7, none},
	{TS_RULE_EATEN, "4 cm is sold at 2.4", small_species_as_sold, TS_CONCERN, 2.4, 2.3, none},
	/* an eel is 0.08 deep and not 0.25: 10 cm count as 3.2; a deep body 0.45: 10 count as 18 */
	{TS_RULE_EATEN, "an eel counts as a shorter fish", eel_as_prey, TS_CONFLICT, 5, 15.625, none},
	{TS_RULE_EATEN, "a deep body as a longer one", deep_as_prey, TS_CONCERN, 5, 10 / 1.8, none},
	{TS_RULE_EATEN, "a shrimp as itself", shrimp_as_prey, TS_CONFLICT, 5, 7.5, none},
	{TS_RULE_EATEN, "a snail", snail_as_prey, -1, none, none, none},
	{TS_RULE_EATEN, "by a snail", snail_as_eater, -1, none, none, none},
	/* 75 % of 75 % of 4 cm are 2.25 */
	{TS_RULE_NIGHT_HUNTER, "takes 2.25 of 4 cm", night_just_fits, TS_CONFLICT, 4, 2.25, none},
	{TS_RULE_NIGHT_HUNTER, "takes 2.2 of 4 cm", night_too_small, -1, none, none, none},
	{TS_RULE_NIGHT_HUNTER, "takes 3.95 of 4 cm", night_nearly_grown, TS_CONFLICT, 4, 3.95, none},
	{TS_RULE_NIGHT_HUNTER, "what fits is eaten by day", night_fits_by_day, -1, none, none, none},
	{TS_RULE_NIGHT_HUNTER, "wide mouth", night_wide, TS_CONFLICT, 4, 2.97, none},
	{TS_RULE_NIGHT_HUNTER, "ordinary mouth", night_ordinary_mouth, -1, none, none, none},
	{TS_RULE_NIGHT_HUNTER, "both are awake", night_both, -1, none, none, none},
	{TS_RULE_NIGHT_HUNTER, "a snail", night_snail, -1, none, none, none},
	{TS_RULE_SHRIMPS_EATEN, "by one twice as long", shrimp_8, TS_CONCERN, 4, 8, none},
	{TS_RULE_SHRIMPS_EATEN, "by one less than that", shrimp_7, TS_CONCERN, 4, 7, none},
	{TS_RULE_SHRIMPS_EATEN, "by an eater of snails", shrimp_of_snail_eater, -1, none, none, none},
	{TS_RULE_SHRIMPS_EATEN, "a fish", fish_of_shrimp_eater, -1, none, none, none},
	{TS_RULE_SNAILS_EATEN, "by an eater of shrimps", snail_of_shrimp_eater, -1, none, none, none},
	{TS_RULE_SNAILS_EATEN, "a fish", fish_of_snail_eater, -1, none, none, none},
	{TS_RULE_FIN_NIPPER, "six of six", nips_six_of_six, TS_CONCERN, 6, 6, none},
	{TS_RULE_FIN_NIPPER, "five of six", nips_five_of_six, TS_CONFLICT, 5, 6, none},
	{TS_RULE_FIN_NIPPER, "short fins, sometimes", nips_short_sometimes, -1, none, none, none},
	{TS_RULE_FIN_NIPPER, "no nipper", nips_no, -1, none, none, none},
	{TS_RULE_FIN_NIPPER, "a shrimp", nips_shrimp, -1, none, none, none},
	{TS_RULE_ATTACKED, "floor by rule of thumb", attacks_thumb, TS_CONFLICT, 0.4, 0.32, none},
	{TS_RULE_ATTACKED, "equals with room", attacks_equal_roomy, TS_CONCERN, 0.4, 0.32, none},
	{TS_RULE_ATTACKED, "equals with two floors", attacks_equal_two_floors, TS_CONCERN, 0.4, 0.4, none},
	{TS_RULE_ATTACKED, "equals without", attacks_equal_cramped, TS_CONFLICT, 0.4, 0.42, none},
	{TS_RULE_ATTACKED, "six tenths as long is an equal", attacks_six_tenths, TS_CONCERN, 0.4, 0.32, none},
	{TS_RULE_ATTACKED, "shorter is none", attacks_smaller, TS_CONFLICT, 0.4, 0.32, none},
	{TS_RULE_ATTACKED, "of other water is none", attacks_of_other_water, TS_CONFLICT, 0.4, 0.32, none},
	{TS_RULE_ATTACKED, "a snail", attacks_snail, -1, none, none, none},
	{TS_RULE_ATTACKED, "breeding, cramped", attacks_breeding_cramped, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_ATTACKED, "breeding on another level", attacks_breeding_other_level, TS_CONCERN, 0.4, 0.6, none},
	{TS_RULE_ATTACKED, "breeding, it swims everywhere", attacks_breeding_x_everywhere, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_ATTACKED, "breeding, the other does", attacks_breeding_y_everywhere, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_ATTACKED, "cramped equals", attacks_cramped_equal, TS_CONCERN, 0.4, 0.6, none},
	{TS_RULE_ATTACKED, "two floors are not cramped", attacks_cramped_two_floors, -1, none, none, none},
	{TS_RULE_CHASED, "equals with room", chases_equal_roomy, TS_NOTE, 0.4, 0.32, none},
	{TS_RULE_CHASED, "equals without", chases_equal_cramped, TS_CONCERN, 0.4, 0.6, none},
	{TS_RULE_CHASED, "half as long", chases_half_length, TS_CONCERN, 0.4, 0.32, none},
	{TS_RULE_CHASED, "less, by ten", chases_under_half, TS_CONFLICT, 0.4, 0.32, none},
	{TS_RULE_CHASED, "less, by five", five_chase, TS_CONFLICT, 0.4, 0.32, none},
	{TS_RULE_CHASED, "less, by four", four_chase, TS_CONCERN, 0.4, 0.32, none},
	{TS_RULE_CHASED, "a snail", chases_snail, -1, none, none, none},
	{TS_RULE_CHASED, "breeding, cramped", chases_breeding_cramped, TS_NOTE, 0.4, 0.6, none},
	{TS_RULE_CHASED, "breeding with room", chases_breeding_roomy, -1, none, none, none},
	{TS_RULE_CHASED, "breeding on another level", chases_breeding_other_level, -1, none, none, none},
	{TS_RULE_TEMPERATURE_APART, "one degree shared", degree_shared, TS_CONCERN, 26, 28, none},
	{TS_RULE_TEMPERATURE_APART, "half a degree", less_than_a_degree, TS_CONFLICT, 28, 27.5, none},
	{TS_RULE_TEMPERATURE_APART, "two comfortable", two_comfortable, -1, none, none, none},
	{TS_RULE_TEMPERATURE_APART, "one and a half", under_two_comfortable, TS_CONCERN, 26, 24.5, none},
	{TS_RULE_TEMPERATURE_APART, "equal tops are told once", equal_tops, TS_CONCERN, 26, 25, none},
	{TS_RULE_GH_APART, "3 dH shared", three_dh_shared, -1, none, none, none},
	{TS_RULE_GH_APART, "2 dH shared", two_dh_shared, TS_CONCERN, 15, 13, none},
	{TS_RULE_GH_APART, "one point shared", gh_touches, TS_CONFLICT, 15, 15, none},
	{TS_RULE_GH_APART, "2 dH shared to 5 dH", soft_to_5, -1, none, none, none},
	{TS_RULE_GH_APART, "1.5 dH shared to 5 dH", soft_to_5_narrow, TS_CONCERN, 5, 3.5, none},
	{TS_RULE_GH_APART, "2 dH shared to 6 dH", soft_to_6, TS_CONCERN, 6, 4, none},
	{TS_RULE_GH_APART, "equal tops are told once", gh_equal_tops, TS_CONCERN, 8, 6, none},
	{TS_RULE_PH_APART, "slack bridges 0.75", ph_0_75_apart, TS_CONCERN, 7.5, 8.25, none},
	{TS_RULE_PH_APART, "not 0.85", ph_0_85_apart, TS_CONFLICT, 7.5, 8.35, none},
	{TS_RULE_SALT_APART, "0.5 g/L is fresh", salt_from_0_5, -1, none, none, none},
	{TS_RULE_SALT_APART, "0.6 g/L is not", salt_from_0_6, TS_CONFLICT, 0.5, 0.6, none},
	{TS_RULE_SALT_APART, "both need salt", both_need_salt, -1, none, none, none},
	{TS_RULE_FLOW_APART, "brisk and still", brisk_and_still, TS_CONCERN, none, none, none},
	{TS_RULE_FLOW_APART, "one does not mind", still_alone, -1, none, none, none},
	{TS_RULE_LIGHT_APART, "one does not mind", shade_alone, -1, none, none, none},
	{TS_RULE_OUTCOMPETED, "special food", specialist_and_quick, TS_CONCERN, none, none, none},
	{TS_RULE_OUTCOMPETED, "neither slow", quick_alone, -1, none, none, none},
	{TS_RULE_RIVALS, "no room for both", kin_no_room, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_RIVALS, "just room for both", kin_just_room, TS_CONCERN, 0.4, 0.4, none},
	{TS_RULE_RIVALS, "chasing, no room", kin_chasing_no_room, TS_CONCERN, 0.4, 0.6, none},
	{TS_RULE_RIVALS, "chasing, room", kin_chasing_room, -1, none, none, none},
	{TS_RULE_RIVALS, "one injures", kin_one_injures, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_RIVALS, "one ignores its kind", kin_one_ignores, -1, none, none, none},
	{TS_RULE_RIVALS, "no place to defend", kin_no_floor, -1, none, none, none},
	{TS_RULE_RIVALS, "a genus with the same first letters", kin_by_the_first_letters, -1, none, none, none},
	{TS_RULE_RIVALS, "a loner of the family", family_lone_x, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_RIVALS, "the other is the loner", family_lone_y, TS_CONFLICT, 0.4, 0.6, none},
	{TS_RULE_RIVALS, "no loner in the family", family_in_groups, -1, none, none, none},
	{TS_RULE_RIVALS, "a loner of another family", family_other, -1, none, none, none},
	{TS_RULE_RIVALS, "one defends nothing", family_without_place, -1, none, none, none},
};
/* clang-format on */
#define ROWS (sizeof rows / sizeof *rows)

/* Where neither is to blame, the one that comes first by name is the subject, whatever the order.
 */
static void test_equal_tops__told_once_and_of_the_first_by_name(void **state)
{
	(void)state;
	for (int turned = 0; turned < 2; turned++) {
		struct ts_rulings all = {.count = 0};
		struct scene s;

		set_peace(&s);
		equal_tops(&s);
		gh_equal_tops(&s);
		ts_rules_together(turned ? &s.b : &s.a, turned ? &s.a : &s.b, &s.tank, NULL, &all);
		assert_int_equal(all.count, 2);
		assert_string_equal(all.at[0].subject->species, "Exempla una");
		assert_string_equal(all.at[1].subject->species, "Exempla una");
	}
}

int main(void)
{
	static struct CMUnitTest tests[ROWS + 1];
	static char names[ROWS][CASE_NAME];

	for (size_t i = 0; i < ROWS; i++) {
		tests[i] =
			scene_case(names[i], rows[i].rule, rows[i].name, test_scene_row, &rows[i]);
	}
	tests[ROWS] = (struct CMUnitTest)cmocka_unit_test(
		test_equal_tops__told_once_and_of_the_first_by_name);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
