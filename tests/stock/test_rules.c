/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Each rule of living together where it holds and where it does not, over made-up animals: the
 * peaceful pair below differs in one trait at a time.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "scene.h"

/* What to change for a rule to hold, with its severity; and the nearest scene where it does not. */
struct row {
	enum ts_rule_id rule;
	const char *name;
	void (*change)(struct scene *s);
	int severity; /* -1: the rule does not hold */
};

/* clang-format off */
WHEN(nothing, (void)s)
WHEN(caution, s->x.cautions = 1u << TS_CAUTION_BITES)
WHEN(restricted, s->x.cautions = 1u << TS_CAUTION_RESTRICTED)
WHEN(on_a_list, (restricted(s), s->x.listed.count = 1))
WHEN(jumper_open, (s->x.needs.cover = 1, s->tank.cover = TS_COVER_NO))
WHEN(jumper_unsaid, (s->x.needs.cover = 1, s->tank.cover = TS_COVER_UNKNOWN))
WHEN(jumper_covered, s->x.needs.cover = 1)
WHEN(plant_eater, s->x.habits = TS_HABIT_EATS_PLANTS)
WHEN(plant_eater_dense, (s->x.habits = TS_HABIT_EATS_PLANTS, s->tank.plants = TS_PLANTS_DENSE))
WHEN(plant_eater_bare, (s->x.habits = TS_HABIT_EATS_PLANTS, s->tank.plants = TS_PLANTS_NONE))
WHEN(five, s->a.either = 5)
WHEN(six, s->a.either = 6)
WHEN(two_rough, (s->a.either = 2, s->x.to_own_kind = TS_INJURES))
WHEN(still_in_brisk, (s->x.needs.flow = TS_NEEDS_STILL, s->tank.flow = TS_FLOW_BRISK))
WHEN(still_in_gentle, (s->x.needs.flow = TS_NEEDS_STILL, s->tank.flow = TS_FLOW_GENTLE))
WHEN(still_in_still, (s->x.needs.flow = TS_NEEDS_STILL, s->tank.flow = TS_FLOW_STILL))
WHEN(shade_in_bright, (s->x.needs.light = TS_NEEDS_SHADE, s->tank.light = TS_LIGHT_BRIGHT))
WHEN(shade_in_shade, (s->x.needs.light = TS_NEEDS_SHADE, s->tank.light = TS_LIGHT_SHADE))
WHEN(old_in_new, (s->x.habits = TS_HABIT_OLD_TANK, s->tank.filter = TS_FILTER_NEW))
WHEN(old_in_mature, s->x.habits = TS_HABIT_OLD_TANK)
WHEN(two_alone, (s->x.group.sexes = TS_SEXES_ALONE, s->x.to_own_kind = TS_INJURES, s->a.either = 2, s->x.group.least = 1))
WHEN(two_females_alone, (s->x.group.sexes = TS_SEXES_ALONE, s->x.to_own_kind = TS_INJURES, s->a.either = 0, s->a.females = 2, s->x.group.least = 1))
WHEN(one_alone, (s->x.group.sexes = TS_SEXES_ALONE, s->x.to_own_kind = TS_INJURES, s->a.either = 1, s->x.group.least = 1))
WHEN(three_of_a_pair, (s->x.group.sexes = TS_SEXES_PAIR, s->x.to_own_kind = TS_CHASES, s->a.either = 3))
WHEN(a_pair, (s->x.group.sexes = TS_SEXES_PAIR, s->x.to_own_kind = TS_CHASES, s->a.either = 2))
WHEN(four_males_two_females, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, s->a = (struct ts_group){.species = &s->x, .males = 4, .females = 2}))
WHEN(two_males_four_females, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, s->a = (struct ts_group){.species = &s->x, .males = 2, .females = 4}))
WHEN(males_only, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, s->a = (struct ts_group){.species = &s->x, .males = 6}))
WHEN(three_males_of_one, (s->x.group.sexes = TS_SEXES_ONE_MALE, s->x.to_own_kind = TS_INJURES, s->a = (struct ts_group){.species = &s->x, .males = 3}))
WHEN(specialist, s->x.habits = TS_HABIT_SPECIALIST)
WHEN(low_tank, (s->x.body = TS_BODY_DEEP, s->x.adult_length_cm = 40, s->tank.height_cm = 40))
WHEN(high_tank, (s->x.body = TS_BODY_DEEP, s->x.adult_length_cm = 14))
WHEN(short_tank, s->tank.length_cm = 40)
WHEN(shortish_tank, s->tank.length_cm = 55)
WHEN(unmeasured, s->tank = (struct ts_tank){.volume_l = 40})
WHEN(unmeasured_any_would_do, s->tank = (struct ts_tank){.volume_l = 100})
WHEN(unmeasured_far_too_small, (s->tank = (struct ts_tank){.volume_l = 20}, s->x.adult_length_cm = 30))
WHEN(narrow_tank, (s->x.adult_length_cm = 30))
WHEN(eel_in_it, (s->x.adult_length_cm = 25, s->x.body = TS_BODY_EEL))
WHEN(territories, (s->x.territory.floor_m2 = 0.2, s->x.territory.per = TS_PER_MALE, s->x.to_own_kind = TS_INJURES, s->a.males = 3, s->a.either = 0))
WHEN(territories_chased, (s->x.territory.floor_m2 = 0.2, s->x.territory.per = TS_PER_MALE, s->x.to_own_kind = TS_CHASES, s->a.males = 3, s->a.either = 0))
WHEN(territories_fit, (s->x.territory.floor_m2 = 0.2, s->x.territory.per = TS_PER_MALE, s->x.to_own_kind = TS_INJURES, s->a.males = 2, s->a.either = 0))
WHEN(eight, s->a.either = 8)
WHEN(injures_always, s->y.to_others = TS_INJURES)
WHEN(injures_breeding, (s->y.to_others = TS_INJURES, s->y.others_when = TS_WHEN_BREEDING))
WHEN(injures_cramped, (s->y.to_others = TS_INJURES, s->y.others_when = TS_WHEN_CRAMPED, s->y.territory.floor_m2 = 0.35))
WHEN(injures_roomy, (s->y.to_others = TS_INJURES, s->y.others_when = TS_WHEN_CRAMPED))
WHEN(chases_always, s->y.to_others = TS_CHASES)
WHEN(many_chase_small, (s->y.to_others = TS_CHASES, s->y.adult_length_cm = 10))
WHEN(chases_cramped, (s->y.to_others = TS_CHASES, s->y.others_when = TS_WHEN_CRAMPED, s->y.territory.floor_m2 = 0.3))
WHEN(chases_roomy, (s->y.to_others = TS_CHASES, s->y.others_when = TS_WHEN_CRAMPED))
WHEN(big_mouth, (s->y.gape = 2, s->y.adult_length_cm = 14))
WHEN(big_mouth_deep_prey, (s->y.gape = 2, s->y.adult_length_cm = 14, s->x.body = TS_BODY_DEEP, s->x.adult_length_cm = 6, s->a.size_cm = 6))
WHEN(only_as_sold, (s->y.gape = 3, s->y.adult_length_cm = 9.3, s->x.adult_length_cm = 7))
WHEN(only_as_sold_no_predator, (s->y.gape = 2, s->y.adult_length_cm = 14, s->x.adult_length_cm = 7))
WHEN(fits_nearly, (s->y.gape = 1, s->y.adult_length_cm = 14, s->x.adult_length_cm = 4))
WHEN(eel_before_a_picker, (s->y.gape = 1, s->y.adult_length_cm = 14, s->x.adult_length_cm = 8, s->x.body = TS_BODY_EEL))
WHEN(spiny_before_a_predator, (s->y.gape = 3, s->y.adult_length_cm = 12, s->x.adult_length_cm = 8, s->x.habits = TS_HABIT_SPINY))
WHEN(spiny_before_one_that_engulfs, (s->y.gape = 4, s->y.adult_length_cm = 12, s->x.adult_length_cm = 8, s->x.habits = TS_HABIT_SPINY))
WHEN(eel_like_hunter, (s->y.gape = 3, s->y.adult_length_cm = 12, s->y.body = TS_BODY_EEL, s->x.adult_length_cm = 8))
WHEN(sold_grown, (s->y.gape = 2, s->y.adult_length_cm = 14, s->x.adult_length_cm = 7, s->a.size_cm = 7))
WHEN(small_mouth, (s->y.gape = 0, s->y.adult_length_cm = 14))
WHEN(electric, s->y.cautions = 1u << TS_CAUTION_ELECTRIC)
WHEN(nips_long, (s->y.nips = TS_NIPS_YES, s->x.fins = 1))
WHEN(nips_long_sometimes, (s->y.nips = TS_NIPS_SOMETIMES, s->x.fins = 1))
WHEN(nips_long_sometimes_few, (s->y.nips = TS_NIPS_SOMETIMES, s->x.fins = 1, s->b.either = 3))
WHEN(nips_short, s->y.nips = TS_NIPS_YES)
WHEN(nips_short_few, (s->y.nips = TS_NIPS_YES, s->b.either = 3))
WHEN(still_and_brisk, (s->x.needs.flow = TS_NEEDS_STILL, s->y.needs.flow = TS_NEEDS_BRISK))
WHEN(gentle_and_brisk, (s->x.needs.flow = TS_NEEDS_GENTLE, s->y.needs.flow = TS_NEEDS_BRISK))
WHEN(hard_and_soft, (s->x.water.usual.gh_dh.tolerated = (struct ts_range){0, 8}, s->y.water.usual.gh_dh.tolerated = (struct ts_range){10, 30}))
WHEN(hardly_shared_gh, s->y.water.usual.gh_dh.tolerated = ((struct ts_range){13, 30}))
WHEN(shared_soft, (s->x.water.usual.gh_dh.tolerated = (struct ts_range){0, 5}, s->y.water.usual.gh_dh.tolerated = (struct ts_range){3, 12}))
WHEN(shade_and_bright, (s->x.needs.light = TS_NEEDS_SHADE, s->y.needs.light = TS_NEEDS_BRIGHT))
WHEN(hunts_at_night, (s->y.habits = TS_HABIT_NOCTURNAL, s->y.gape = 2, s->y.adult_length_cm = 9))
WHEN(hunts_by_day, (s->y.gape = 2, s->y.adult_length_cm = 9))
WHEN(quick_and_slow, (s->x.habits = TS_HABIT_SLOW_EATER, s->y.habits = TS_HABIT_QUICK_EATER))
WHEN(slow_and_slow, (s->x.habits = TS_HABIT_SLOW_EATER, s->y.habits = TS_HABIT_SLOW_EATER))
WHEN(acid_and_alkaline, s->y.water.usual.ph.tolerated = ((struct ts_range){8.5, 9.5}))
WHEN(acid_and_middle, s->y.water.usual.ph.tolerated = ((struct ts_range){7.6, 9.0}))
WHEN(ph_meets, s->y.water.usual.ph.tolerated = ((struct ts_range){7.5, 9.0}))
WHEN(rivals_cramped, (s->x.to_own_kind = s->y.to_own_kind = TS_INJURES, s->x.territory.floor_m2 = s->y.territory.floor_m2 = 0.3, s->x.territory.per = s->y.territory.per = TS_PER_GROUP, s->y.species = "Exempla varia"))
WHEN(rivals_roomy, (s->x.to_own_kind = s->y.to_own_kind = TS_INJURES, s->x.territory.floor_m2 = s->y.territory.floor_m2 = 0.1, s->x.territory.per = s->y.territory.per = TS_PER_GROUP, s->y.species = "Exempla varia"))
WHEN(rivals_of_one_species, (s->x.to_own_kind = s->y.to_own_kind = TS_INJURES, s->x.territory.floor_m2 = s->y.territory.floor_m2 = 0.3, s->x.territory.per = s->y.territory.per = TS_PER_GROUP, s->y.species = s->x.species, s->y.form = "long-finned"))
WHEN(no_kin, (s->x.to_own_kind = s->y.to_own_kind = TS_INJURES, s->x.territory.floor_m2 = s->y.territory.floor_m2 = 0.3, s->x.territory.per = s->y.territory.per = TS_PER_GROUP))
WHEN(brackish, s->y.water.usual.salinity_g_l.tolerated = ((struct ts_range){2, 20}))
WHEN(bears_salt, s->y.water.usual.salinity_g_l.tolerated = ((struct ts_range){0, 20}))
WHEN(shrimps_large, (s->x.kind = TS_ANIMAL_SHRIMP, s->y.preys_on = TS_PREYS_SHRIMPS, s->y.adult_length_cm = 12))
WHEN(shrimps_small, (s->x.kind = TS_ANIMAL_SHRIMP, s->y.preys_on = TS_PREYS_SHRIMPS))
WHEN(shrimps_safe, s->x.kind = TS_ANIMAL_SHRIMP)
WHEN(snails, (s->x.kind = TS_ANIMAL_SNAIL, s->y.preys_on = TS_PREYS_SNAILS))
WHEN(snails_safe, s->x.kind = TS_ANIMAL_SNAIL)
WHEN(cold_and_warm, s->x.water.usual.temp_c = ((struct ts_envelope){.tolerated = {4, 20}, .preferred = {10, 18}}))
WHEN(cool_and_warm, s->x.water.usual.temp_c = ((struct ts_envelope){.tolerated = {14, 25}, .preferred = {16, 23}}))
WHEN(warm_and_warm, s->y.water.usual.temp_c = ((struct ts_envelope){.tolerated = {22, 30}, .preferred = {24, 28}}))

#define TS_AT(t) ((struct ts_measure){.kind = TS_MEASURE_VALUE, .value = t, .low = t, .high = t})
static const char *const genus_x[] = {"Exempla"}, *const genus_y[] = {"Olda"}, *const name_x[] = {"Exempla una"};
static const struct ts_texts own_genus = {(const char **)(uintptr_t)genus_x, 1}, other_genus = {(const char **)(uintptr_t)genus_y, 1}, own_name = {(const char **)(uintptr_t)name_x, 1};
WHEN(warm_and_cool, s->x.water.usual.temp_c = ((struct ts_envelope){.tolerated = {18, 25}, .preferred = {20, 24}}))
WHEN(labyrinths, (s->x.family = s->y.family = "Osphronemidae"))
WHEN(warm_at_22, (warm_and_cool(s), s->tank.temp_c = TS_AT(22)))
WHEN(warm_at_24, (warm_and_cool(s), s->tank.temp_c = TS_AT(24)))
WHEN(comfort_apart_at_22, (cool_and_warm(s), s->y.water.usual.temp_c.tolerated.low = 20, s->y.water.usual.temp_c.preferred.low = 24, s->tank.temp_c = TS_AT(22)))
WHEN(a_grazer, (big_mouth(s), s->y.hunts = TS_HUNTS_GRAZER))
WHEN(hunts_small_animals, (big_mouth(s), s->y.hunts = TS_HUNTS_INVERTEBRATES))
WHEN(hunts_small_animals_shrimp, (big_mouth(s), s->y.hunts = TS_HUNTS_INVERTEBRATES, s->x.kind = TS_ANIMAL_SHRIMP))
WHEN(grazes_at_night, (hunts_at_night(s), s->y.hunts = TS_HUNTS_GRAZER))
WHEN(chases_the_bottom, (s->y.to_others = TS_CHASES, s->y.temper = TS_TEMPER_BOTTOM))
WHEN(chases_the_bottom_there, (s->y.to_others = TS_CHASES, s->y.temper = TS_TEMPER_BOTTOM, s->x.swims = TS_SWIMS_BOTTOM))
WHEN(chases_the_slow_there, (s->y.to_others = TS_CHASES, s->y.temper = TS_TEMPER_SLOW, s->x.fins = 1))
WHEN(injures_its_like, (s->y.to_others = TS_INJURES, s->y.temper = TS_TEMPER_LOOK_ALIKES))
WHEN(injures_its_like_there, (s->y.to_others = TS_INJURES, s->y.temper = TS_TEMPER_LOOK_ALIKES, s->y.family = s->x.family))
WHEN(injures_smaller_there, (s->y.to_others = TS_INJURES, s->y.temper = TS_TEMPER_SMALLER, s->y.adult_length_cm = 6))
WHEN(injures_smaller, (s->y.to_others = TS_INJURES, s->y.temper = TS_TEMPER_SMALLER))
WHEN(a_pair_alone, (s->x.group.pair = 1, s->a.either = 0, s->a.males = 1, s->a.females = 1))
WHEN(two_that_may_be_a_pair, (s->x.group.pair = 1, s->a.either = 2))
WHEN(two_males, (s->x.group.pair = 1, s->a.either = 0, s->a.males = 2))
WHEN(a_pair_of_one_settled_in_two, (s->x.group.pair = 1, s->x.group.least = 2, s->a.either = 2))
WHEN(forms, (s->x.kind = TS_ANIMAL_SHRIMP, s->x.crosses_with = own_genus, s->a.forms = 2))
WHEN(one_form, (s->x.kind = TS_ANIMAL_SHRIMP, s->x.crosses_with = own_genus, s->a.forms = 1))
WHEN(land_filled, (s->x.needs.land = 1, s->tank.water_level = TS_WATER_LEVEL_FULL))
WHEN(land_unsaid, s->x.needs.land = 1)
WHEN(land_half, (s->x.needs.land = 1, s->tank.water_level = TS_WATER_LEVEL_HALF))
WHEN(barbels_on_coarse, (s->x.needs.bottom = TS_BOTTOM_SMOOTH, s->tank.substrate = TS_SUBSTRATE_COARSE_GRAVEL))
WHEN(barbels_on_gravel, (s->x.needs.bottom = TS_BOTTOM_SMOOTH, s->tank.substrate = TS_SUBSTRATE_GRAVEL))
WHEN(digger_on_gravel, (s->x.needs.bottom = TS_BOTTOM_SAND, s->tank.substrate = TS_SUBSTRATE_GRAVEL))
WHEN(digger_on_coarse, (s->x.needs.bottom = TS_BOTTOM_SAND, s->tank.substrate = TS_SUBSTRATE_COARSE_GRAVEL))
WHEN(digger_unsaid, s->x.needs.bottom = TS_BOTTOM_SAND)
WHEN(young_in_little, (s->x.young_month = 20, s->a.either = 0, s->a.males = s->a.females = 3, s->tank = (struct ts_tank){.volume_l = 40}))
WHEN(young_of_unknown_sex, (s->x.young_month = 20, s->tank = (struct ts_tank){.volume_l = 40}))
WHEN(young_in_much, (s->x.young_month = 20, s->tank = (struct ts_tank){.volume_l = 1000}))
WHEN(young_of_females, (s->x.young_month = 20, s->a.either = 0, s->a.females = 10))
WHEN(crossing, (s->x.crosses_with = other_genus, s->x.young_month = s->y.young_month = 5))
WHEN(crossing_told_apart, (crossing(s), s->x.adult_length_cm = 5, s->y.adult_length_cm = 8))
WHEN(crossing_named_by_the_other, (s->y.crosses_with = own_name, s->x.young_month = s->y.young_month = 5))
WHEN(crossing_of_egg_layers, s->x.crosses_with = other_genus)
WHEN(crossing_of_females, (crossing(s), s->a.either = s->b.either = 0, s->a.females = s->b.females = 4))
WHEN(crossing_females_with_males, (crossing_of_egg_layers(s), s->a.either = s->b.either = 0, s->a.females = 4, s->b.males = 2))
WHEN(labyrinths_in_60, (labyrinths(s), s->tank = (struct ts_tank){.length_cm = 60, .width_cm = 30, .height_cm = 33}))
WHEN(labyrinths_in_180, labyrinths(s))
WHEN(labyrinths_anywhere, (labyrinths(s), s->tank = (struct ts_tank){0}))
WHEN(lone_male_in_180, (labyrinths(s), s->y.group.sexes = TS_SEXES_ALONE))
WHEN(one_labyrinth, (labyrinths(s), s->y.family = "Exemplidae"))
WHEN(of_a_lake, (s->x.lakes_apart = TS_LAKES_OWN, s->x.home_water = TS_HOME_MALAWI))
WHEN(rough_of_a_lake, (of_a_lake(s), s->x.to_others = TS_CHASES))
WHEN(of_two_lakes, (rough_of_a_lake(s), s->y.lakes_apart = TS_LAKES_OWN, s->y.home_water = TS_HOME_TANGANYIKA))
WHEN(of_one_lake, (of_a_lake(s), s->y.home_water = TS_HOME_MALAWI))
WHEN(by_custom, (of_a_lake(s), s->y.lakes_apart = TS_LAKES_BY_CUSTOM))

WHEN(mbuna_on_one_floor,
	(s->x.lakes_apart = s->y.lakes_apart = TS_LAKES_OWN,
		s->x.to_others = s->y.to_others = TS_CHASES,
		s->x.others_when = s->y.others_when = TS_WHEN_CRAMPED,
		s->x.territory.floor_m2 = s->y.territory.floor_m2 = 0.3,
		s->x.territory.per = s->y.territory.per = TS_PER_GROUP))
WHEN(mbuna_that_chase_always,
	(mbuna_on_one_floor(s), s->x.others_when = s->y.others_when = TS_ALWAYS))
WHEN(brood_of_one_that_clears_the_tank, (s->y.to_others = TS_INJURES, s->y.others_when = TS_WHEN_BREEDING, s->y.temper = TS_TEMPER_ALL, s->y.swims = TS_SWIMS_BOTTOM, s->y.territory.floor_m2 = 0.3))
WHEN(brood_at_another_level, (s->y.to_others = TS_INJURES, s->y.others_when = TS_WHEN_BREEDING, s->y.swims = TS_SWIMS_BOTTOM, s->y.territory.floor_m2 = 0.3))
WHEN(chased_in_armour, (s->y.to_others = TS_CHASES, s->x.habits = TS_HABIT_SPINY, s->x.swims = TS_SWIMS_BOTTOM))
WHEN(chased_at_another_level, (s->y.to_others = TS_CHASES, s->y.swims = TS_SWIMS_BOTTOM))
WHEN(grazer_beside_quick, (s->x.habits = TS_HABIT_SLOW_EATER, s->x.hunts = TS_HUNTS_GRAZER, s->y.habits = TS_HABIT_QUICK_EATER))
WHEN(one_of_a_kind_of_pairs, (s->x.group.least = 2, s->a.either = 1))
WHEN(one_of_a_shoal, s->a.either = 1)
WHEN(harem_of_two_males, (s->x.group.sexes = TS_SEXES_HAREM, s->x.to_own_kind = TS_CHASES, s->a.either = 0, s->a.males = 2, s->a.females = 8))
WHEN(pair_where_pairs_settle, (s->x.group.sexes = TS_SEXES_TWO_FEMALES, s->x.group.pair = 1, s->a.either = 0, s->a.males = s->a.females = 1))
WHEN(comfort_nearly_at_24, (comfort_apart_at_22(s), s->x.water.usual.temp_c.preferred = (struct ts_range){18, 23}, s->y.water.usual.temp_c.preferred = (struct ts_range){24, 27}, s->tank.temp_c = (struct ts_measure){24, 24, 24, TS_MEASURE_VALUE}))
WHEN(cold_and_tropical, (comfort_nearly_at_24(s), s->x.home_water = TS_HOME_COOL))
WHEN(cold_and_temperate, (cold_and_tropical(s), s->x.water.usual.temp_c.preferred = (struct ts_range){16, 20}, s->y.water.usual.temp_c.preferred = (struct ts_range){21, 25}))
WHEN(chased_by_a_smaller_one, (s->y.to_others = TS_CHASES, s->x.adult_length_cm = 6))
WHEN(chased_by_a_nearly_as_long_one, (s->y.to_others = TS_CHASES, s->x.adult_length_cm = 5.9))
WHEN(slow_beside_quick_shrimps, (quick_and_slow(s), s->y.kind = TS_ANIMAL_SHRIMP))
WHEN(four_with_ground_for_two_pairs, (s->x.group.sexes = TS_SEXES_PAIR, s->x.to_own_kind = TS_INJURES, s->a.either = 4, s->x.territory.floor_m2 = 0.2, s->x.territory.per = TS_PER_PAIR))
WHEN(four_with_ground_for_one_pair, (four_with_ground_for_two_pairs(s), s->x.territory.floor_m2 = 0.21))
WHEN(colony_breeders, (s->x.group.least = 2, s->x.to_own_kind = TS_INJURES, s->x.own_kind_when = TS_WHEN_BREEDING, s->a.either = 6))
WHEN(chased_and_quick, (s->y.to_others = TS_CHASES, s->y.adult_length_cm = 6, s->b.either = 1, s->x.needs.activity = TS_PACE_ACTIVE))
WHEN(chased_and_quick_but_few, (chased_and_quick(s), s->b.either = 3, s->a.either = 5))
WHEN(chased_by_one, (chased_and_quick(s), s->a.either = 5))
WHEN(kin_of_another_size, (rivals_roomy(s), s->x.adult_length_cm = 4, s->y.adult_length_cm = 7.2))
WHEN(kin_of_nearly_a_size, (rivals_roomy(s), s->x.adult_length_cm = 4, s->y.adult_length_cm = 7.1))
WHEN(two_loners, (rivals_roomy(s), s->x.group.sexes = s->y.group.sexes = TS_SEXES_ALONE, s->x.territory.floor_m2 = s->y.territory.floor_m2 = 0.15))
WHEN(two_rainbows, (crossing_of_egg_layers(s), s->x.family = s->y.family = "Melanotaeniidae"))
WHEN(two_rainbows_of_a_genus, (two_rainbows(s), s->y.species = "Exempla varia", s->y.crosses_with = own_name))

static const struct row rows[] = {
	{TS_RULE_CHASED, "a crowd of one lake on the floor of one", mbuna_on_one_floor, -1},
	{TS_RULE_CHASED, "a crowd that always chases", mbuna_that_chase_always, -1},
	{TS_RULE_ATTACKED, "whatever swims, by one that clears the tank", brood_of_one_that_clears_the_tank, TS_CONFLICT},
	{TS_RULE_ATTACKED, "of another level, by one that minds its level", brood_at_another_level, TS_CONCERN},
	{TS_RULE_RIVALS, "two loners where two groups would do", two_loners, TS_CONFLICT},
	{TS_RULE_CROSSES, "rainbowfish, which spawn every day", two_rainbows, TS_NOTE},
	{TS_RULE_CROSSES, "rainbowfish of one genus", two_rainbows_of_a_genus, TS_CONCERN},
	{TS_RULE_FEW, "a pair of what lives in pairs as well", a_pair_alone, -1},
	{TS_RULE_FEW, "two that may be one", two_that_may_be_a_pair, -1},
	{TS_RULE_FEW, "two males of it", two_males, TS_CONCERN},
	{TS_RULE_FEW, "one of what lives in pairs", one_of_a_kind_of_pairs, TS_NOTE},
	{TS_RULE_FEW, "one of a shoal", one_of_a_shoal, TS_CONCERN},
	{TS_RULE_SEXES, "two males that chase, eight females", harem_of_two_males, -1},
	{TS_RULE_SEXES, "a pair of what lives in pairs as well", pair_where_pairs_settle, -1},
	{TS_RULE_OUTCOMPETED, "one that grazes", grazer_beside_quick, -1},
	{TS_RULE_CHASED, "at the bottom, in armour", chased_in_armour, TS_NOTE},
	{TS_RULE_CHASED, "by one of two thirds its length", chased_by_a_smaller_one, TS_NOTE},
	{TS_RULE_CHASED, "by one a little longer than that", chased_by_a_nearly_as_long_one, TS_CONCERN},
	{TS_RULE_OUTCOMPETED, "by shrimps", slow_beside_quick_shrimps, -1},
	{TS_RULE_PAIR_FORMS, "four with ground for two pairs", four_with_ground_for_two_pairs, TS_NOTE},
	{TS_RULE_PAIR_FORMS, "four with ground for one", four_with_ground_for_one_pair, TS_CONCERN},
	{TS_RULE_PAIR_FORMS, "six of which two clear the tank", colony_breeders, TS_CONCERN},
	{TS_RULE_CHASED, "a shoal of swimmers with room", chased_and_quick, TS_NOTE},
	{TS_RULE_CHASED, "fewer of them, by three", chased_and_quick_but_few, TS_CONCERN},
	{TS_RULE_CHASED, "fewer of them, by one that leaves corners", chased_by_one, TS_NOTE},
	{TS_RULE_RIVALS, "one genus, of another size", kin_of_another_size, -1},
	{TS_RULE_RIVALS, "one genus, nearly of a size", kin_of_nearly_a_size, TS_CONCERN},
	{TS_RULE_CHASED, "at another level", chased_at_another_level, TS_NOTE},
	{TS_RULE_TEMPERATURE_APART, "a tank at 24, comforts that nearly meet there", comfort_nearly_at_24, TS_NOTE},
	{TS_RULE_TEMPERATURE_APART, "cold water and tropics in it", cold_and_tropical, TS_CONFLICT},
	{TS_RULE_TEMPERATURE_APART, "cold water and what likes it at 21 in it", cold_and_temperate, TS_CONCERN},
	{TS_RULE_UNSETTLED, "a pair of what lives in pairs as well", a_pair_of_one_settled_in_two, -1},
	{TS_RULE_FORMS_CROSS, "two forms of a shrimp", forms, TS_NOTE},
	{TS_RULE_FORMS_CROSS, "one", one_form, -1},
	{TS_RULE_LAND, "in a filled tank", land_filled, TS_CONFLICT},
	{TS_RULE_LAND, "in a tank of which nothing is said", land_unsaid, TS_CONFLICT},
	{TS_RULE_LAND, "half filled", land_half, -1},
	{TS_RULE_LAND, "other animals", nothing, -1},
	{TS_RULE_SAND, "barbels on coarse gravel", barbels_on_coarse, TS_CONCERN},
	{TS_RULE_SAND, "barbels on gravel", barbels_on_gravel, -1},
	{TS_RULE_SAND, "a digger on gravel", digger_on_gravel, TS_NOTE},
	{TS_RULE_SAND, "a digger on coarse gravel", digger_on_coarse, TS_CONCERN},
	{TS_RULE_SAND, "a digger, the ground not said", digger_unsaid, -1},
	{TS_RULE_YOUNG, "both sexes in a small tank", young_in_little, TS_NOTE},
	{TS_RULE_YOUNG, "of unknown sex there", young_of_unknown_sex, TS_NOTE},
	{TS_RULE_YOUNG, "in a large tank", young_in_much, TS_NOTE},
	{TS_RULE_YOUNG, "females alone", young_of_females, -1},
	{TS_RULE_YOUNG, "what does not breed by itself", nothing, -1},
	{TS_RULE_CHASED, "of the middle, by one that minds the bottom", chases_the_bottom, -1},
	{TS_RULE_CHASED, "of the bottom, by one that minds the bottom", chases_the_bottom_there, TS_CONCERN},
	{TS_RULE_CHASED, "long fins, by one that minds the slow", chases_the_slow_there, TS_CONCERN},
	{TS_RULE_ATTACKED, "another family, by one that minds its like", injures_its_like, -1},
	{TS_RULE_ATTACKED, "its family, by one that minds its like", injures_its_like_there, TS_CONFLICT},
	{TS_RULE_ATTACKED, "smaller, by one that minds smaller ones", injures_smaller_there, TS_CONFLICT},
	{TS_RULE_ATTACKED, "as large, by one that minds smaller ones", injures_smaller, -1},
	{TS_RULE_CROSSES, "livebearers of both sexes", crossing, TS_CONCERN},
	{TS_RULE_CROSSES, "livebearers that are told apart", crossing_told_apart, TS_NOTE},
	{TS_RULE_CROSSES, "named by the other's record", crossing_named_by_the_other, TS_CONCERN},
	{TS_RULE_CROSSES, "egg layers of unknown sex", crossing_of_egg_layers, TS_NOTE},
	{TS_RULE_CROSSES, "females of one, males of the other", crossing_females_with_males, TS_CONCERN},
	{TS_RULE_CROSSES, "females alone", crossing_of_females, -1},
	{TS_RULE_CROSSES, "no kin", nothing, -1},
	{TS_RULE_EATEN, "a grazer with a wide mouth", a_grazer, -1},
	{TS_RULE_EATEN, "a hunter of small animals", hunts_small_animals, -1},
	{TS_RULE_EATEN, "a shrimp, by a hunter of small animals", hunts_small_animals_shrimp, TS_CONFLICT},
	{TS_RULE_LABYRINTH, "two kinds in 60 L", labyrinths_in_60, TS_CONCERN},
	{TS_RULE_LABYRINTH, "two kinds in 180 L", labyrinths_in_180, -1},
	{TS_RULE_LABYRINTH, "two kinds, no tank", labyrinths_anywhere, TS_NOTE},
	{TS_RULE_LABYRINTH, "a lone male and another kind in 180 L", lone_male_in_180, TS_CONFLICT},
	{TS_RULE_LABYRINTH, "one kind", one_labyrinth, -1},
	{TS_RULE_LAKE_APART, "rough ones with what is not of the lake", rough_of_a_lake, TS_CONFLICT},
	{TS_RULE_LAKE_APART, "peaceful ones with what is not of the lake", of_a_lake, TS_CONCERN},
	{TS_RULE_LAKE_APART, "two lakes", of_two_lakes, TS_CONFLICT},
	{TS_RULE_LAKE_APART, "one lake", of_one_lake, -1},
	{TS_RULE_LAKE_APART, "kept there by custom", by_custom, -1},
	{TS_RULE_NIGHT_HUNTER, "grazes at night", grazes_at_night, -1},
	{TS_RULE_TEMPERATURE_APART, "a tank at 24, comfortable to both", warm_at_24, -1},
	{TS_RULE_TEMPERATURE_APART, "a tank at 22, borne by both", warm_at_22, -1},
	{TS_RULE_TEMPERATURE_APART, "a tank at 22, where comforts do not meet", comfort_apart_at_22, TS_CONCERN},
	{TS_RULE_CAUTION, "one that bites", caution, TS_NOTE},
	{TS_RULE_CAUTION, "restricted in places", restricted, TS_NOTE},
	{TS_RULE_CAUTION, "on a list", on_a_list, TS_CONCERN},
	{TS_RULE_CAUTION, "none", nothing, -1},
	{TS_RULE_COVER, "jumper, open tank", jumper_open, TS_CONCERN},
	{TS_RULE_COVER, "jumper, cover not said", jumper_unsaid, TS_QUESTION},
	{TS_RULE_COVER, "jumper, covered", jumper_covered, -1},
	{TS_RULE_EATS_PLANTS, "some plants", plant_eater, TS_NOTE},
	{TS_RULE_EATS_PLANTS, "dense plants", plant_eater_dense, TS_CONCERN},
	{TS_RULE_EATS_PLANTS, "no plants", plant_eater_bare, -1},
	{TS_RULE_FEW, "five of six", five, TS_NOTE},
	{TS_RULE_FEW, "two that injure their kind, of six", two_rough, TS_CONFLICT},
	{TS_RULE_FEW, "six of six", six, -1},
	{TS_RULE_FLOW, "still in brisk", still_in_brisk, TS_CONCERN},
	{TS_RULE_FLOW, "still in gentle", still_in_gentle, TS_NOTE},
	{TS_RULE_FLOW, "still in still", still_in_still, -1},
	{TS_RULE_LIGHT, "shade in bright", shade_in_bright, TS_NOTE},
	{TS_RULE_LIGHT, "shade in shade", shade_in_shade, -1},
	{TS_RULE_OLD_TANK, "new tank", old_in_new, TS_CONFLICT},
	{TS_RULE_OLD_TANK, "mature: still said", old_in_mature, TS_NOTE},
	{TS_RULE_OLD_TANK, "other animals", nothing, -1},
	{TS_RULE_OWN_KIND, "two of unknown sex", two_alone, TS_CONFLICT},
	{TS_RULE_OWN_KIND, "two females", two_females_alone, TS_CONCERN},
	{TS_RULE_OWN_KIND, "one", one_alone, -1},
	{TS_RULE_PAIR_FORMS, "three", three_of_a_pair, TS_CONCERN},
	{TS_RULE_PAIR_FORMS, "two", a_pair, -1},
	{TS_RULE_SEXES, "more males than females", four_males_two_females, TS_CONCERN},
	{TS_RULE_SEXES, "three males where one is borne", three_males_of_one, TS_CONFLICT},
	{TS_RULE_SEXES, "two females to a male", two_males_four_females, -1},
	{TS_RULE_SEXES, "males alone", males_only, -1},
	{TS_RULE_SPECIALIST, "special food", specialist, TS_NOTE},
	{TS_RULE_SPECIALIST, "eats all", nothing, -1},
	{TS_RULE_TANK_HEIGHT, "40 cm deep fish in 40 cm", low_tank, TS_NOTE},
	{TS_RULE_TANK_HEIGHT, "14 cm deep fish in 45 cm", high_tank, -1},
	{TS_RULE_TANK_LENGTH, "40 of 60 cm", short_tank, TS_CONFLICT},
	{TS_RULE_TANK_LENGTH, "55 of 60 cm", shortish_tank, TS_NOTE},
	{TS_RULE_TANK_LENGTH, "100 cm", nothing, -1},
	{TS_RULE_TANK_UNMEASURED, "litres only", unmeasured, TS_NOTE},
	{TS_RULE_TANK_UNMEASURED, "litres far too few", unmeasured_far_too_small, TS_CONFLICT},
	{TS_RULE_TANK_UNMEASURED, "litres that are enough in any shape", unmeasured_any_would_do, -1},
	{TS_RULE_TANK_UNMEASURED, "measured", nothing, -1},
	{TS_RULE_TANK_WIDTH, "30 cm fish in 40 cm", narrow_tank, TS_CONFLICT},
	{TS_RULE_TANK_WIDTH, "25 cm eel in 40 cm", eel_in_it, -1},
	{TS_RULE_TERRITORY, "three of 0.2 in 0.4 m2, injuring", territories, TS_CONFLICT},
	{TS_RULE_TERRITORY, "three of 0.2 in 0.4 m2, chasing", territories_chased, TS_CONCERN},
	{TS_RULE_TERRITORY, "two of 0.2 in 0.4 m2", territories_fit, -1},
	{TS_RULE_UNSETTLED, "eight of ten", eight, TS_NOTE},
	{TS_RULE_UNSETTLED, "ten of ten", nothing, -1},
	{TS_RULE_ATTACKED, "always", injures_always, TS_CONFLICT},
	{TS_RULE_ATTACKED, "when breeding, with room", injures_breeding, TS_CONCERN},
	{TS_RULE_ATTACKED, "when cramped, and it is", injures_cramped, TS_CONFLICT},
	{TS_RULE_ATTACKED, "when cramped, and it is not", injures_roomy, -1},
	{TS_RULE_CHASED, "always", chases_always, TS_CONCERN},
	{TS_RULE_CHASED, "always, by ten twice as long", many_chase_small, TS_CONFLICT},
	{TS_RULE_CHASED, "when cramped, and it is", chases_cramped, TS_CONCERN},
	{TS_RULE_CHASED, "when cramped, and it is not", chases_roomy, -1},
	{TS_RULE_EATEN, "fits grown", big_mouth, TS_CONFLICT},
	{TS_RULE_EATEN, "fits a predator only as sold", only_as_sold, TS_CONCERN},
	{TS_RULE_EATEN, "fits one that is no predator only as sold", only_as_sold_no_predator, TS_NOTE},
	{TS_RULE_EATEN, "nearly fits grown", fits_nearly, TS_CONCERN},
	{TS_RULE_EATEN, "an eel before one that is no predator", eel_before_a_picker, -1},
	{TS_RULE_EATEN, "spines before a predator", spiny_before_a_predator, -1},
	{TS_RULE_EATEN, "spines before one that engulfs", spiny_before_one_that_engulfs, TS_CONFLICT},
	{TS_RULE_EATEN, "by an eel-like hunter", eel_like_hunter, -1},
	{TS_RULE_EATEN, "deep body does not fit", big_mouth_deep_prey, -1},
	{TS_RULE_EATEN, "bought grown", sold_grown, -1},
	{TS_RULE_EATEN, "nibbler", small_mouth, -1},
	{TS_RULE_ELECTRIC, "electric", electric, TS_CONFLICT},
	{TS_RULE_ELECTRIC, "not", nothing, -1},
	{TS_RULE_FIN_NIPPER, "nipper and long fins", nips_long, TS_CONFLICT},
	{TS_RULE_FIN_NIPPER, "sometimes, long fins", nips_long_sometimes, TS_CONCERN},
	{TS_RULE_FIN_NIPPER, "sometimes, long fins, too few", nips_long_sometimes_few, TS_CONFLICT},
	{TS_RULE_FIN_NIPPER, "short fins, too few nippers", nips_short_few, TS_CONCERN},
	{TS_RULE_FIN_NIPPER, "short fins, enough nippers", nips_short, -1},
	{TS_RULE_FLOW_APART, "still and brisk", still_and_brisk, TS_CONCERN},
	{TS_RULE_FLOW_APART, "gentle and brisk", gentle_and_brisk, -1},
	{TS_RULE_GH_APART, "nothing shared", hard_and_soft, TS_CONFLICT},
	{TS_RULE_GH_APART, "2 dH shared", hardly_shared_gh, TS_CONCERN},
	{TS_RULE_GH_APART, "2 dH shared in soft water", shared_soft, -1},
	{TS_RULE_LIGHT_APART, "shade and bright", shade_and_bright, TS_NOTE},
	{TS_RULE_LIGHT_APART, "any and any", nothing, -1},
	{TS_RULE_NIGHT_HUNTER, "hunts at night", hunts_at_night, TS_CONFLICT},
	{TS_RULE_NIGHT_HUNTER, "hunts by day", hunts_by_day, -1},
	{TS_RULE_OUTCOMPETED, "quick and slow", quick_and_slow, TS_CONCERN},
	{TS_RULE_OUTCOMPETED, "slow and slow", slow_and_slow, -1},
	{TS_RULE_PH_APART, "1.0 apart", acid_and_alkaline, TS_CONFLICT},
	{TS_RULE_PH_APART, "0.1 apart", acid_and_middle, TS_CONCERN},
	{TS_RULE_PH_APART, "meets", ph_meets, -1},
	{TS_RULE_RIVALS, "one genus, no room for both", rivals_cramped, TS_CONFLICT},
	{TS_RULE_RIVALS, "one genus, room for both", rivals_roomy, TS_CONCERN},
	{TS_RULE_RIVALS, "two forms of one species", rivals_of_one_species, TS_CONFLICT},
	{TS_RULE_RIVALS, "no kin", no_kin, -1},
	{TS_RULE_SALT_APART, "needs salt", brackish, TS_CONFLICT},
	{TS_RULE_SALT_APART, "bears salt", bears_salt, -1},
	{TS_RULE_SHRIMPS_EATEN, "by one three times as long", shrimps_large, TS_CONFLICT},
	{TS_RULE_SHRIMPS_EATEN, "by one as long", shrimps_small, TS_NOTE},
	{TS_RULE_SHRIMPS_EATEN, "by none", shrimps_safe, -1},
	{TS_RULE_SNAILS_EATEN, "eater of snails", snails, TS_CONFLICT},
	{TS_RULE_SNAILS_EATEN, "none", snails_safe, -1},
	{TS_RULE_TEMPERATURE_APART, "nothing shared", cold_and_warm, TS_CONFLICT},
	{TS_RULE_TEMPERATURE_APART, "no comfort shared", cool_and_warm, TS_CONCERN},
	{TS_RULE_TEMPERATURE_APART, "shared", warm_and_warm, -1},
};
/* clang-format on */
#define ROWS (sizeof rows / sizeof *rows)

static void test_row(void **state)
{
	const struct row *row = *state;
	struct ts_rulings all = {.count = 0};
	const struct ts_ruling *r;
	struct scene s;

	set_peace(&s);
	row->change(&s);
	s.a.species = &s.x;
	if (ts_rule_rows[row->rule].scope == TS_SCOPE_PAIR)
		ts_rules_together(&s.a, &s.b, &s.tank, NULL, &all);
	else
		ts_rules_alone(&s.a, &s.tank, NULL, &all);
	r = find_ruling(&all, row->rule);
	assert_int_equal(r ? (int)r->severity : -1, row->severity);
	if (!r)
		return;
	assert_ptr_equal(r->subject, &s.x);
	assert_ptr_equal(r->other, ts_rule_rows[row->rule].scope == TS_SCOPE_PAIR ? &s.y : NULL);
}

static void test_rules__every_rule_has_a_case_for_and_against(void **state)
{
	(void)state;
	for (int id = 0; id < TS_RULE__COUNT; id++) {
		size_t with = 0, without = 0;

		if (ts_rule_rows[id].scope == TS_SCOPE_PLAN) /* test_check.c */
			continue;
		for (size_t i = 0; i < ROWS; i++) {
			with += (int)rows[i].rule == id && rows[i].severity >= 0;
			without += (int)rows[i].rule == id && rows[i].severity < 0;
		}
		if (!with || !without)
			fail_msg("%s", ts_rule_rows[id].code);
	}
}

static void test_rules__peace_has_no_ruling(void **state)
{
	struct ts_rulings all = {.count = 0};
	struct scene s;

	(void)state;
	set_peace(&s);
	ts_rules_alone(&s.a, &s.tank, NULL, &all);
	ts_rules_together(&s.a, &s.b, &s.tank, NULL, &all);
	assert_int_equal(all.count, 0);
}

static void test_rules__order_of_the_two_does_not_matter(void **state)
{
	(void)state;
	for (size_t i = 0; i < ROWS; i++) {
		struct ts_rulings one = {.count = 0}, other = {.count = 0};
		struct ts_rule_cost cost, back;
		struct scene s;

		set_peace(&s);
		rows[i].change(&s);
		ts_rules_together(&s.a, &s.b, &s.tank, NULL, &one);
		ts_rules_together(&s.b, &s.a, &s.tank, NULL, &other);
		cost = ts_rules_cost(&one, NULL);
		back = ts_rules_cost(&other, NULL);
		assert_int_equal(one.count, other.count);
		assert_int_equal(cost.conflict, back.conflict);
		assert_int_equal(cost.points, back.points);
	}
}

static void test_rules__codes_are_unique_and_graded(void **state)
{
	(void)state;
	for (int i = 0; i < TS_RULE__COUNT; i++) {
		assert_int_equal(strncmp(ts_rule_rows[i].code, "stock.", 6), 0);
		assert_non_null(ts_rule_rows[i].grade);
		for (int j = 0; j < i; j++)
			assert_string_not_equal(ts_rule_rows[i].code, ts_rule_rows[j].code);
	}
}

static void test_cost__concerns_add_up_and_notes_are_free(void **state)
{
	struct ts_rulings all = {.count = 3};
	struct ts_rule_cost cost;

	(void)state;
	all.at[0] = (struct ts_ruling){.rule = TS_RULE_FEW, .severity = TS_CONCERN};
	all.at[1] = (struct ts_ruling){.rule = TS_RULE_COVER, .severity = TS_CONCERN};
	all.at[2] = (struct ts_ruling){.rule = TS_RULE_EATEN, .severity = TS_NOTE};
	cost = ts_rules_cost(&all, NULL);
	assert_false(cost.conflict);
	assert_int_equal(cost.points, 400);
	all.at[2].severity = TS_CONFLICT;
	assert_true(ts_rules_cost(&all, NULL).conflict);
}

/* A full list drops its lightest ruling for a graver one, and nothing for one as light. */
static void test_rulings__full_list_keeps_the_gravest(void **state)
{
	struct ts_rulings all = {.count = 0};
	const size_t most = sizeof all.at / sizeof *all.at;
	struct scene s;

	(void)state;
	set_peace(&s);
	specialist(&s);
	for (size_t i = 0; i < most + 5; i++)
		ts_rules_alone(&s.a, &s.tank, NULL, &all);
	assert_int_equal(all.count, most);
	snails(&s);
	ts_rules_together(&s.a, &s.b, &s.tank, NULL, &all);
	assert_int_equal(all.count, most);
	assert_non_null(find_ruling(&all, TS_RULE_SNAILS_EATEN));
	for (size_t i = 0; i < most + 5; i++)
		ts_rules_together(&s.a, &s.b, &s.tank, NULL, &all);
	assert_int_equal(all.count, most);
	for (size_t i = 0; i < most; i++)
		assert_int_equal(all.at[i].severity, TS_CONFLICT);
}

static void test_tank__net_volume_and_floor(void **state)
{
	struct ts_tank t = {.length_cm = 80, .width_cm = 35, .height_cm = 40};

	(void)state;
	assert_true(fabs(ts_tank_net_l(&t, NULL) - 95.2) < 1e-9);
	assert_true(fabs(ts_tank_floor_m2(&t) - 0.28) < 1e-12);
	t.fill.word = TS_FILL_ROCKS;
	assert_true(fabs(ts_tank_net_l(&t, NULL) - 84) < 1e-9);
	t.fill.value = 50;
	assert_true(fabs(ts_tank_net_l(&t, NULL) - 56) < 1e-9);
	t.volume_l = 70;
	assert_true(fabs(ts_tank_net_l(&t, NULL) - 70) < 1e-12);
	t = (struct ts_tank){.length_cm = 80};
	assert_true(isnan(ts_tank_net_l(&t, NULL)));
	assert_true(isnan(ts_tank_floor_m2(&t)));
}

int main(void)
{
	static struct CMUnitTest tests[ROWS + 7];
	static char names[ROWS][CASE_NAME];
	size_t n = ROWS;

	for (size_t i = 0; i < ROWS; i++) {
		tests[i] = scene_case(names[i], rows[i].rule, rows[i].name, test_row, &rows[i]);
	}
	tests[n++] = (struct CMUnitTest)cmocka_unit_test(
		test_rules__every_rule_has_a_case_for_and_against);
	tests[n++] = (struct CMUnitTest)cmocka_unit_test(test_rules__peace_has_no_ruling);
	tests[n++] =
		(struct CMUnitTest)cmocka_unit_test(test_rules__order_of_the_two_does_not_matter);
	tests[n++] = (struct CMUnitTest)cmocka_unit_test(test_rules__codes_are_unique_and_graded);
	tests[n++] =
		(struct CMUnitTest)cmocka_unit_test(test_cost__concerns_add_up_and_notes_are_free);
	tests[n++] = (struct CMUnitTest)cmocka_unit_test(test_rulings__full_list_keeps_the_gravest);
	tests[n++] = (struct CMUnitTest)cmocka_unit_test(test_tank__net_volume_and_floor);
	return cmocka_run_group_tests(tests, NULL, NULL);
}
