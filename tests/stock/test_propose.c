/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Proposing from the shipped records in typical waters: what holds for every list, whatever
 * records there are. What single species do is shown on the frozen catalogue in tests/cli.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>
#include <tapshoal/tapshoal.h>

#include "../random.h"
#include "../stingy.h"
#include "base/arena.h"
#include "model/practice.h"
#include "stock/check.h"
#include "stock/community.h"
#include "stock/propose.h"

/* Invented waters and tanks of the usual kinds. */
struct scene {
	const char *name;
	double gh_dh, kh_dh, ph, temp_c, length_cm, width_cm, height_cm;
};
static const struct scene scenes[] = {
	{"soft water, 100 cm", 4, 3, 6.8, 25, 100, 40, 50},
	{"middle water, 120 cm", 9, 6, 7.4, 25, 120, 50, 50},
	{"hard water, 80 cm", 16, 12, 7.8, 25, 80, 35, 40},
	{"cool room, 100 cm", 10, 7, 7.5, 20, 100, 40, 50},
	{"lake water, 150 cm", 11, 13, 8.4, 26, 150, 60, 60},
	{"black water, 80 cm", 2, 1, 5.8, 26, 80, 35, 40},
	{"a small tank, 54 L", 8, 5, 7.2, 24, 60, 30, 30},
};
#define SCENES (sizeof scenes / sizeof *scenes)

static struct ts_measure exactly(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

struct asked {
	struct ts_catalogue *catalogue;
	struct ts_reading reading;
	struct ts_water water;
	struct ts_keeping keeping;
	struct ts_tank tank;
	struct ts_plan plan;
	struct ts_profile profile;
	struct ts_practice practice;
	struct ts_wish wish;
	struct ts_arena arena;
	struct ts_proposal p;
};

static void ask(struct asked *a, struct ts_catalogue *catalogue, const struct scene *s)
{
	*a = (struct asked){.catalogue = catalogue,
		.reading = {.gh_dh = exactly(s->gh_dh),
			.kh_dh = exactly(s->kh_dh),
			.ph = exactly(s->ph)},
		.keeping = {.temperature = exactly(s->temp_c)},
		.tank = {.length_cm = s->length_cm,
			.width_cm = s->width_cm,
			.height_cm = s->height_cm,
			.cover = TS_COVER_YES,
			.filter = TS_FILTER_MATURE,
			.plants = TS_PLANTS_SOME,
			.feeding = {.word = TS_FEEDING_ORDINARY}}};
	a->water = (struct ts_water){
		.kind = TS_WATER_TANK, .readings = &a->reading, .reading_count = 1};
	ts_practice_defaults(&a->practice);
	ts_profile_make(&a->water, &a->keeping, &a->practice, -1, &a->profile);
	a->plan = (struct ts_plan){.water = a->water, .tank = a->tank};
	a->plan.tank.temp_c = a->keeping.temperature;
	a->wish = (struct ts_wish){.catalogue = catalogue,
		.plan = &a->plan,
		.today = -1,
		.profile = &a->profile,
		.keeping = &a->keeping,
		.tank = &a->tank,
		.practice = &a->practice,
		.lists = 5};
	ts_arena_open(&a->arena, NULL);
}

static void answer(struct asked *a)
{
	assert_true(ts_propose(&a->wish, &a->arena, &a->p));
}

/* No rule says conflict or concern, alone or of two. */
static void assert_sound(const struct asked *a, const struct ts_community *c)
{
	for (size_t i = 0; i < c->count; i++) {
		for (size_t j = 0; j <= i; j++) {
			struct ts_rulings r = {.count = 0};

			if (i == j)
				ts_rules_alone(&c->lines[i].group, &a->tank, NULL, &r);
			else
				ts_rules_together(
					&c->lines[i].group, &c->lines[j].group, &a->tank, NULL, &r);
			for (size_t k = 0; k < r.count; k++)
				assert_int_equal(r.at[k].severity, TS_NOTE);
		}
	}
}

/* The whole plan, as check judges it: water, company, load, room, filter. */
static void assert_check_says_sound(struct asked *a, const struct ts_community *c)
{
	struct ts_plan base = {.water = a->water, .tank = a->tank}, plan;
	const struct ts_species *species[64];
	struct ts_check check;

	base.tank.temp_c = a->keeping.temperature;
	assert_true(ts_community_plan(c, &base, &a->keeping, &a->arena, &plan));
	assert_true(plan.stock_count <= 64);
	for (size_t i = 0; i < plan.stock_count; i++)
		species[i] = ts_catalogue_species(a->catalogue, plan.stock[i].species, NULL);
	assert_int_equal(ts_check_plan(&plan, species, -1, NULL, &a->arena, &check), TS_OK);
	for (size_t i = 0; i < check.count; i++) {
		if (check.rulings[i].severity > TS_NOTE)
			print_error("%s: %s, %s\n", ts_rule_rows[check.rulings[i].rule].code,
				check.rulings[i].subject ? check.rulings[i].subject->species
							 : "all",
				check.rulings[i].other ? check.rulings[i].other->species : "alone");
	}
	assert_int_equal(check.verdict, TS_PLAN_SOUND);
}

static void assert_list(const struct asked *a, const struct ts_community *c)
{
	double nitrogen = 0;

	size_t mains = 0;

	for (size_t i = 0; i < c->count; i++)
		mains += c->lines[i].group.species->kind == TS_ANIMAL_FISH;
	assert_true(c->count >= 1 && mains <= a->p.species_most && c->count <= mains + 2);
	assert_true(c->proven);
	assert_sound(a, c);
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_match *m = &c->lines[i].candidacy->match;

		assert_true(m->verdict <= TS_TOLERATES);
		assert_true(m->order >= c->lines[c->limiting].candidacy->match.order - 1e-6);
		nitrogen += ts_group_nitrogen_mg_day(
			&c->lines[i].group, &a->tank, a->keeping.temperature.value, NULL);
	}
	assert_true(nitrogen <= a->p.nitrogen_most_mg_day);
	assert_true(c->order_count == c->count);
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		assert_true(
			!c->shared[p].known || c->shared[p].range.low <= c->shared[p].range.high);
}

static void test_propose__every_list_is_sound_in_seven_waters(void **state)
{
	for (size_t s = 0; s < SCENES; s++) {
		struct asked a;

		ask(&a, *state, &scenes[s]);
		answer(&a);
		assert_false(a.p.conditions);
		assert_true(a.p.count >= 1);
		for (size_t i = 0; i < a.p.count; i++) {
			assert_list(&a, &a.p.lists[i]);
			assert_check_says_sound(&a, &a.p.lists[i]);
			assert_true(i == 0 || a.p.lists[i].points <= a.p.lists[i - 1].points);
		}
		ts_arena_drop(&a.arena);
	}
}

/*
 * Every list for a random water and tank is sound in the eyes of check: 40 of them, 2,000 where
 * TAPSHOAL_PROPERTIES=50. What nobody recommends stays out of all of them.
 */
static void test_propose__random_waters_and_tanks_are_sound(void **state)
{
	static const double lengths[] = {45, 60, 80, 100, 120, 150, 200};
	struct random r;
	unsigned cases = random_open(&r, 7, 40);
	size_t lists = 0;

	for (unsigned n = 0; n < cases; n++) {
		double length;
		struct scene s;
		struct asked a;

		random_case(&r, n);
		length = lengths[any_below(&r, 7)];
		s = (struct scene){"random", any_in(&r, 1, 26, 0.5), any_in(&r, 0.5, 18, 0.5),
			any_in(&r, 5.8, 8.6, 0.1), any_in(&r, 18, 29, 0.5), length,
			length >= 120 ? 50 : length * 0.45, length >= 120 ? 50 : length * 0.5};
		ask(&a, *state, &s);
		a.wish.theme = (enum ts_theme)(
			any_percent(&r, 30) ? any_below(&r, TS_THEME__COUNT) : TS_THEME_NONE);
		a.wish.lists = 3;
		answer(&a);
		for (size_t i = 0; i < a.p.count && !a.p.conditions; i++) {
			const struct ts_community *c = &a.p.lists[i];

			assert_list(&a, c);
			assert_check_says_sound(&a, c);
			for (size_t k = 0; k < c->count; k++)
				assert_true(ts_match_advised_unasked(c->lines[k].group.species));
			lists++;
		}
		ts_arena_drop(&a.arena);
	}
	assert_true(lists > 20);
	printf("# %zu lists\n", lists);
}

static void test_propose__points_are_those_of_the_model(void **state)
{
	struct asked a;
	size_t chosen[TS_MODEL_SPECIES_MOST], count = 0;
	int64_t points;

	ask(&a, *state, &scenes[0]);
	a.wish.lists = 1;
	answer(&a);
	for (size_t i = 0; i < a.p.model.count; i++) {
		const struct ts_community *c = &a.p.lists[0];

		for (size_t k = 0; k < c->count; k++) {
			if (c->lines[k].candidacy == a.p.who[i] &&
				ts_group_count(&c->lines[k].group) ==
					ts_group_count(&a.p.levels[i].group))
				chosen[count++] = i;
		}
	}
	assert_true(ts_model_points(&a.p.model, chosen, count, &points));
	assert_int_equal(points, a.p.lists[0].points);
	ts_arena_drop(&a.arena);
}

static void test_propose__twice_the_same(void **state)
{
	struct asked a, b;

	ask(&a, *state, &scenes[1]);
	ask(&b, *state, &scenes[1]);
	answer(&a);
	answer(&b);
	assert_int_equal(a.p.count, b.p.count);
	for (size_t i = 0; i < a.p.count; i++) {
		assert_int_equal(a.p.lists[i].count, b.p.lists[i].count);
		for (size_t k = 0; k < a.p.lists[i].count; k++)
			assert_ptr_equal(a.p.lists[i].lines[k].group.species,
				b.p.lists[i].lines[k].group.species);
	}
	ts_arena_drop(&a.arena);
	ts_arena_drop(&b.arena);
}

static const struct ts_species *named(struct ts_catalogue *catalogue, const char *name)
{
	const struct ts_species *s = ts_catalogue_species(catalogue, name, NULL);

	assert_non_null(s);
	return s;
}

static bool holds(const struct ts_community *c, const struct ts_species *s)
{
	for (size_t i = 0; i < c->count; i++) {
		if (c->lines[i].group.species == s)
			return true;
	}
	return false;
}

static void test_propose__with_and_without_are_kept(void **state)
{
	const struct ts_species *neon = named(*state, "Paracheirodon innesi"), *out;
	struct asked a;

	ask(&a, *state, &scenes[0]);
	answer(&a);
	out = a.p.lists[0].lines[0].group.species;
	a.wish.with = &neon;
	a.wish.without = &out;
	a.wish.with_count = a.wish.without_count = 1;
	answer(&a);
	assert_true(a.p.count >= 1);
	for (size_t i = 0; i < a.p.count; i++) {
		assert_true(holds(&a.p.lists[i], neon));
		assert_false(holds(&a.p.lists[i], out));
		assert_list(&a, &a.p.lists[i]);
	}
	ts_arena_drop(&a.arena);
}

/* A grown angelfish takes slim fish some day: they are not proposed beside it. */
static void test_propose__slim_fish_stay_out_of_mouths(void **state)
{
	const struct ts_species *angel = named(*state, "Pterophyllum scalare");
	const struct ts_species *slim[] = {
		named(*state, "Nannostomus beckfordi"), named(*state, "Hemigrammus erythrozonus")};
	struct asked a;

	ask(&a, *state, &scenes[1]);
	a.tank.length_cm = 150;
	a.tank.width_cm = 60;
	a.wish.with = &angel;
	a.wish.with_count = 1;
	answer(&a);
	assert_true(a.p.count >= 1);
	for (size_t i = 0; i < a.p.species_count; i++) {
		const struct ts_candidacy *c = &a.p.species[i];

		if (c->match.species != slim[0] && c->match.species != slim[1])
			continue;
		assert_int_equal(c->left_out, TS_LEFT_BY_RESIDENT);
		assert_ptr_equal(c->other, angel);
		assert_non_null(c->asks);
	}
	for (size_t i = 0; i < a.p.count; i++)
		assert_false(holds(&a.p.lists[i], slim[0]) || holds(&a.p.lists[i], slim[1]));
	ts_arena_drop(&a.arena);
}

/* Fish for 450 L of soft water: no shoal so few that they are lost. No dwarf gourami to look at. */
static void test_propose__shoals_grow_with_the_tank(void **state)
{
	const struct ts_species *sick = named(*state, "Trichogaster lalius");

	for (size_t s = 0; s < 2; s++) {
		struct asked small, large;
		unsigned few = 0, many = 0;

		ask(&small, *state, &scenes[5 * s + 1]);
		ask(&large, *state, &scenes[5 * s + 1]);
		small.tank.length_cm = 80;
		small.tank.width_cm = 35;
		small.tank.height_cm = 40;
		large.tank.length_cm = 150;
		large.tank.width_cm = 60;
		large.tank.height_cm = 50;
		answer(&small);
		answer(&large);
		for (size_t i = 0; i < small.p.lists[0].count; i++)
			few += ts_group_count(&small.p.lists[0].lines[i].group);
		for (size_t i = 0; i < large.p.lists[0].count; i++)
			many += ts_group_count(&large.p.lists[0].lines[i].group);
		assert_true(many >= 30 && many > few);
		assert_false(holds(&small.p.lists[0], sick) || holds(&large.p.lists[0], sick));
		ts_arena_drop(&small.arena);
		ts_arena_drop(&large.arena);
	}
}

/* Males of one kind court the females of the other, or both fill the tank with young. */
static void test_propose__two_livebearers_are_males_alone(void **state)
{
	struct scene hard = {"very hard water", 24, 17, 8.2, 25, 80, 35, 40};
	size_t two = 0;

	for (size_t n = 0; n < 3; n++, hard.length_cm += 35, hard.width_cm += 12) {
		struct asked a;

		ask(&a, *state, &hard);
		answer(&a);
		assert_true(a.p.count > 0);
		for (size_t l = 0; l < a.p.count; l++) {
			size_t kinds = 0, females = 0;

			for (size_t i = 0; i < a.p.lists[l].count; i++) {
				const struct ts_group *g = &a.p.lists[l].lines[i].group;

				if (strcmp(g->species->family, "Poeciliidae") == 0) {
					kinds++;
					females += g->females + g->either;
				}
			}
			two += kinds > 1;
			assert_true(kinds < 2 || females == 0);
		}
		ts_arena_drop(&a.arena);
	}
	assert_true(two > 0);
}

static void test_propose__what_the_water_excludes_is_not_had_by_asking(void **state)
{
	const struct ts_species *mbuna = named(*state, "Maylandia lombardoi");
	struct asked a;

	ask(&a, *state, &scenes[0]);
	a.wish.with = &mbuna;
	a.wish.with_count = 1;
	answer(&a);
	assert_int_equal(a.p.count, 0);
	assert_true(a.p.of[TS_LEFT_BY_WATER] > 0);
	ts_arena_drop(&a.arena);
}

static void test_propose__too_few_residents_are_made_a_group(void **state)
{
	struct ts_group four = {.species = named(*state, "Paracheirodon innesi"), .either = 4};
	struct asked a;

	ask(&a, *state, &scenes[0]);
	a.wish.residents = &four;
	a.wish.resident_count = 1;
	a.wish.lists = 1;
	answer(&a);
	assert_int_equal(a.p.count, 1);
	for (size_t i = 0; i < a.p.lists[0].count; i++) {
		const struct ts_company *line = &a.p.lists[0].lines[i];

		if (line->group.species != four.species)
			continue;
		assert_int_equal(line->there, 4);
		assert_true(ts_group_count(&line->group) >= 6);
	}
	assert_true(holds(&a.p.lists[0], four.species));
	assert_sound(&a, &a.p.lists[0]);
	ts_arena_drop(&a.arena);
}

static void test_propose__hardy_and_little_nitrate_narrow_it(void **state)
{
	struct asked a;

	ask(&a, *state, &scenes[0]);
	a.wish.hardy = true;
	a.wish.no3_rise_mg_l_week = 1.5;
	a.wish.species_most = 2;
	answer(&a);
	assert_true(a.p.of[TS_LEFT_NOT_HARDY] > 0);
	for (size_t i = 0; i < a.p.count; i++) {
		const struct ts_community *c = &a.p.lists[i];

		assert_list(&a, c);
		assert_true(c->count <= 2);
		assert_true(c->load.no3_rise_mg_l_week.value <= 1.5);
	}
	ts_arena_drop(&a.arena);
}

static void test_propose__nothing_is_said_without_gh(void **state)
{
	struct asked a;

	ask(&a, *state, &scenes[0]);
	a.reading.gh_dh = (struct ts_measure){0};
	ts_profile_make(&a.water, &a.keeping, &a.practice, -1, &a.profile);
	answer(&a);
	assert_int_equal(a.p.count, 0);
	assert_int_equal(a.p.candidates, 0);
	assert_true(a.p.waits[TS_GH] > 0);
	ts_arena_drop(&a.arena);
}

static void test_propose__absurd_tanks_hold_nothing(void **state)
{
	static const double sizes[][3] = {{0, 0, 0}, {1, 1, 1}, {NAN, 40, 40}};

	for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
		struct asked a;

		ask(&a, *state, &scenes[0]);
		a.tank.length_cm = sizes[i][0];
		a.tank.width_cm = sizes[i][1];
		a.tank.height_cm = sizes[i][2];
		answer(&a);
		assert_int_equal(a.p.count, 0);
		ts_arena_drop(&a.arena);
	}
}

/* Whether the answer would call this list of another one as good as its own first. */
static bool still_as_good(const struct asked *a, const struct ts_community *list)
{
	size_t chosen[TS_MODEL_SPECIES_MOST], count = 0;
	int64_t points;

	for (size_t i = 0; i < a->p.model.count; i++) {
		for (size_t k = 0; k < list->count; k++) {
			if (list->lines[k].group.species == a->p.levels[i].group.species &&
				list->lines[k].group.males == a->p.levels[i].group.males &&
				ts_group_count(&list->lines[k].group) ==
					ts_group_count(&a->p.levels[i].group))
				chosen[count++] = i;
		}
	}
	return count == list->count && ts_model_points(&a->p.model, chosen, count, &points) &&
	       (double)(a->p.lists[0].points - points) <=
		       a->practice.value[TS_P_PROPOSE_EQUAL] * (double)a->p.lists[0].points;
}

/*
 * A tenth more or less of each weight: what changes is printed; half of a list always stays, or the
 * two are called equally good. Limits too, where the list of the tighter one is as good in the
 * other.
 */
static void test_propose__weights_a_tenth_off_keep_the_list(void **state)
{
	static const enum ts_practice_id weights[] = {TS_P_PROPOSE_FIT, TS_P_PROPOSE_SPARE_POINTS,
		TS_P_PROPOSE_CENTRE, TS_P_PROPOSE_SHOAL, TS_P_PROPOSE_BOTTOM, TS_P_PROPOSE_SIZE,
		TS_P_PROPOSE_EVERYWHERE, TS_P_PROPOSE_ENTRY, TS_P_PROPOSE_COMFORTABLE,
		TS_P_PROPOSE_LARGER, TS_P_PROPOSE_LOAD, TS_P_PROPOSE_DELICATE, TS_P_PROPOSE_ROUGH,
		TS_P_PROPOSE_TEMPER, TS_P_PROPOSE_HOME, TS_P_PROPOSE_ALIKE, TS_P_COST_LIGHT,
		TS_P_COST_MIDDLE, TS_P_COST_HEAVY, TS_P_LOAD_SHARE};

	for (size_t s = 0; s < 3; s++) {
		struct asked first;

		ask(&first, *state, &scenes[s]);
		first.wish.lists = 1;
		answer(&first);
		for (size_t w = 0; w < 2 * sizeof weights / sizeof *weights; w++) {
			size_t kept = 0, count = first.p.lists[0].count;
			struct asked a;

			ask(&a, *state, &scenes[s]);
			a.wish.lists = 1;
			a.practice.value[weights[w / 2]] *= w % 2 ? 0.9 : 1.1;
			answer(&a);
			for (size_t i = 0; i < count; i++)
				kept += holds(
					&a.p.lists[0], first.p.lists[0].lines[i].group.species);
			if (kept < count)
				printf("# %s, %s x %s: %zu of %zu species stay\n", scenes[s].name,
					ts_practice_rows[weights[w / 2]].key, w % 2 ? "0.9" : "1.1",
					kept, count);
			assert_true(2 * kept >= count || still_as_good(&a, &first.p.lists[0]) ||
				    still_as_good(&first, &a.p.lists[0]));
			ts_arena_drop(&a.arena);
		}
		ts_arena_drop(&first.arena);
	}
}

static void test_every_allocation_fails_once__false_and_nothing_leaks(void **state)
{
	bool refused = true;

	for (size_t n = 0; refused; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct asked a;
		bool fine;

		ask(&a, *state, &scenes[2]);
		ts_arena_open(&a.arena, &allocator);
		fine = ts_propose(&a.wish, &a.arena, &a.p);
		refused = stingy.refused;
		assert_int_equal(fine, !refused);
		ts_arena_drop(&a.arena);
		assert_int_equal(stingy.out, 0);
	}
}

static int open_catalogue(void **state)
{
	static struct ts_catalogue catalogue;

	ts_catalogue_open(&catalogue, NULL);
	*state = &catalogue;
	return ts_catalogue_add_folder(&catalogue, TS_SPECIES_DIR, NULL) != TS_OK;
}

static int close_catalogue(void **state)
{
	ts_catalogue_close(*state);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_propose__every_list_is_sound_in_seven_waters),
		cmocka_unit_test(test_propose__random_waters_and_tanks_are_sound),
		cmocka_unit_test(test_propose__points_are_those_of_the_model),
		cmocka_unit_test(test_propose__twice_the_same),
		cmocka_unit_test(test_propose__with_and_without_are_kept),
		cmocka_unit_test(test_propose__slim_fish_stay_out_of_mouths),
		cmocka_unit_test(test_propose__shoals_grow_with_the_tank),
		cmocka_unit_test(test_propose__two_livebearers_are_males_alone),
		cmocka_unit_test(test_propose__what_the_water_excludes_is_not_had_by_asking),
		cmocka_unit_test(test_propose__too_few_residents_are_made_a_group),
		cmocka_unit_test(test_propose__hardy_and_little_nitrate_narrow_it),
		cmocka_unit_test(test_propose__nothing_is_said_without_gh),
		cmocka_unit_test(test_propose__absurd_tanks_hold_nothing),
		cmocka_unit_test(test_propose__weights_a_tenth_off_keep_the_list),
		cmocka_unit_test(test_every_allocation_fails_once__false_and_nothing_leaks),
	};

	return cmocka_run_group_tests_name("propose", tests, open_catalogue, close_catalogue);
}
