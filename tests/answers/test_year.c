/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answers of a keeper's year: what is due in several tanks, a log beside its model, what may
 * happen. Figures of one tank are those of the rooms below; here is what the answers make of them.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include <tapshoal/catalogue.h>

#include "../given.h"
#include "../shipped.h"
#include "answers/due_all.h"
#include "answers/log_model.h"
#include "answers/what_if.h"
#include "base/date.h"

#define TODAY "2026-03-10"

static long day(const char *text)
{
	long d = 0;

	assert_true(ts_date_read(text, &d));
	return d;
}

static struct ts_asking asking_of(struct ts_arena *arena)
{
	ts_arena_open(arena, NULL);
	return (struct ts_asking){.arena = arena,
		.practice = table(),
		.today = day(TODAY),
		.species = catalogue.items,
		.species_count = catalogue.count};
}

static const struct ts_species *named(const char *name)
{
	struct ts_candidates candidates;
	const struct ts_species *s = ts_catalogue_species(&catalogue, name, &candidates);

	assert_non_null(s);
	return s;
}

/* What is due */

static const char *kh[] = {"KH"};

static struct ts_due_test_line test_of(const char *where, const char *date)
{
	return (struct ts_due_test_line){.where = where,
		.what = {.items = kh, .count = 1},
		.says = "Test KH",
		.day = day(date)};
}

static const struct ts_due_thing *thing(
	const struct ts_due_all_result *r, const char *tank, const char *kind)
{
	for (size_t i = 0; i < r->thing_count; i++) {
		if (strcmp(r->things[i].tank, tank) == 0 && strcmp(r->things[i].kind, kind) == 0)
			return &r->things[i];
	}
	return NULL;
}

static void test_due_all__one_thing_a_line_in_order(void **state)
{
	struct ts_due_test_line first[] = {
		test_of("tank", "2026-03-12"), test_of("supply", "2026-04-01")};
	struct ts_due_test_line second[] = {test_of("supply", "2026-04-01")};
	struct ts_due_change_line change = {.amount = "40 L (25 %)", .day = day("2026-03-12")};
	struct ts_due_change_line late = {.amount = "10 L (10 %)", .day = day("2026-03-30")};
	struct ts_due_bring_line bring[] = {{"tap", "L", 40}, {"baking soda", "g", 3.6}};
	struct ts_due_bring_line more[] = {{"tap", "L", 10}};
	struct ts_due_alarm_line alarm = {.says = "KH 2 is reached", .day = day(TODAY)};
	struct ts_due_result a = {.tests = first,
		.test_count = 2,
		.change = &change,
		.bring = bring,
		.bring_count = 2,
		.supply = "tap",
		.has_tank = true};
	struct ts_due_result b = {.tests = second,
		.test_count = 1,
		.change = &late,
		.bring = more,
		.bring_count = 1,
		.alarms = &alarm,
		.alarm_count = 1,
		.supply = "tap",
		.has_tank = true};
	const struct ts_due_all_tank tanks[] = {
		{"@a", &a, NULL}, {"@b", &b, NULL}, {"@c", NULL, "it cannot be read"}};
	struct ts_due_all_result r;
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);

	(void)state;
	assert_int_equal(ts_answer_due_all(&asking, tanks, 3, &r), TS_OK);
	/* A limit that comes is nothing to be done today. */
	assert_string_equal(r.verdict, "nothing-due");
	assert_true(r.nothing);
	assert_string_equal(r.next, "2026-03-12");
	/* What is read before what is poured, and one supply once. */
	assert_true(thing(&r, "@a", "test") < thing(&r, "@a", "change"));
	assert_non_null(thing(&r, "@a, @b", "test"));
	assert_null(thing(&r, "@b", "test"));
	assert_string_equal(
		thing(&r, "@a", "change")->says, "change 40 L (25 %), with 3.6 g of baking soda");
	/* Of this week alone. */
	assert_int_equal(r.bring_count, 2);
	assert_true(r.bring[0].amount == 40);
	assert_int_equal(r.unanswered_count, 1);
	ts_arena_drop(&arena);
}

static void test_due_all__danger_before_everything(void **state)
{
	struct ts_due_test_line old = test_of("tank", "2026-01-01");
	struct ts_due_result a = {.tests = &old, .test_count = 1, .has_tank = true};
	struct ts_due_result b = {.danger = "Air on, now.", .has_tank = true};
	const struct ts_due_all_tank tanks[] = {{"@a", &a, NULL}, {"@b", &b, NULL}};
	struct ts_due_all_result r;
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);

	(void)state;
	assert_int_equal(ts_answer_due_all(&asking, tanks, 2, &r), TS_OK);
	assert_string_equal(r.verdict, "danger");
	assert_string_equal(r.things[0].tank, "@b");
	assert_string_equal(r.says, "Due now: 2 things in 2 tanks");
	ts_arena_drop(&arena);
}

/* A log beside its model */

struct kept {
	struct ts_reading readings[2], tap;
	struct ts_tank_event event;
	struct ts_stock_line stock;
	struct ts_plan plan;
	const struct ts_species *species[1];
	struct ts_log_line lines[2];
	struct ts_log_question question;
	struct ts_log_result r;
};

static void open_kept(struct kept *k, const char *animal, double count)
{
	memset(k, 0, sizeof *k);
	k->readings[0] = (struct ts_reading){
		.date = "2026-01-01", .gh_dh = value(8), .kh_dh = value(6), .no3_mg_l = value(10)};
	k->readings[1] = (struct ts_reading){
		.date = "2026-03-05", .gh_dh = value(8), .kh_dh = value(5), .no3_mg_l = value(60)};
	k->tap = (struct ts_reading){.gh_dh = value(8), .kh_dh = value(6), .no3_mg_l = value(0)};
	k->stock = (struct ts_stock_line){.species = animal, .count = count, .since = "2025-01-01"};
	k->plan = (struct ts_plan){.stock = &k->stock,
		.stock_count = 1,
		.water = {.readings = &k->tap, .reading_count = 1}};
	k->plan.tank = (struct ts_tank){.volume_l = 100,
		.temp_c = value(25),
		.filter = TS_FILTER_MATURE,
		.plants = TS_PLANTS_NONE,
		.top_up = TS_TOP_UP_PURE,
		.cover = TS_COVER_YES,
		.feeding = {TS_FEEDING_ORDINARY, 0},
		.water_change = {0, 7},
		.readings = k->readings,
		.reading_count = 2};
	k->species[0] = named(animal);
	k->lines[0] = (struct ts_log_line){.date = "2026-01-01",
		.gh_dh = 8,
		.kh_dh = 6,
		.ph = (double)NAN,
		.temp_c = (double)NAN,
		.no3_mg_l = 10,
		.no2_mg_l = (double)NAN,
		.tan_mg_l = (double)NAN};
	k->lines[1] = k->lines[0];
	k->lines[1].date = "2026-03-05";
	k->lines[1].kh_dh = 5;
	k->lines[1].no3_mg_l = 60;
	k->question = (struct ts_log_question){.readings = k->readings,
		.reading_count = 2,
		.plan = &k->plan,
		.species = k->species};
	k->r = (struct ts_log_result){.lines = k->lines, .line_count = 2};
}

static const struct ts_log_value *value_of(const struct kept *k, const char *name)
{
	for (size_t i = 0; i < k->r.value_count; i++) {
		if (strcmp(k->r.values[i].name, name) == 0)
			return &k->r.values[i];
	}
	fail_msg("no %s", name);
	return NULL;
}

static void test_log__expected_from_the_first_reading_on(void **state)
{
	struct kept k;
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);
	double rises, changed;

	(void)state;
	open_kept(&k, "neon tetra", 20);
	assert_int_equal(ts_log_model_fill(&asking, &k.question, &k.r), TS_OK);
	rises = value_of(&k, "NO3")->expected_now;
	assert_true(rises > 10);
	assert_true(value_of(&k, "NO3")->expected.low <= rises &&
		    rises <= value_of(&k, "NO3")->expected.high);
	assert_true(value_of(&k, "KH")->expected_now < 6);
	assert_true(value_of(&k, "NO3")->outside);
	assert_int_equal(value_of(&k, "NO3")->readings, 2);
	/* It begins with what was read, and ends today; then comes what drift has. */
	assert_string_equal(k.r.points[0].date, "2026-01-01");
	assert_true(fabs(k.r.points[0].no3_mg_l - 10) < 1e-6);
	assert_false(k.r.points[0].comes);
	assert_true(k.r.points[k.r.point_count - 1].comes);
	assert_int_equal(k.r.points[k.r.point_count - 1].day, day(TODAY) + TS_LOG_AHEAD_DAYS);
	/* Half of the water changed on the way leaves less. */
	k.event = (struct ts_tank_event){
		.date = "2026-02-20", .what = TS_HAPPENED_CHANGED, .share_percent = 50};
	k.plan.tank.events = &k.event;
	k.plan.tank.event_count = 1;
	k.r = (struct ts_log_result){.lines = k.lines, .line_count = 2};
	assert_int_equal(ts_log_model_fill(&asking, &k.question, &k.r), TS_OK);
	changed = value_of(&k, "NO3")->expected_now;
	assert_true(changed < rises);
	ts_arena_drop(&arena);
}

static void test_log__without_animals_no_band_and_no_model(void **state)
{
	struct kept k;
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);

	(void)state;
	open_kept(&k, "neon tetra", 20);
	k.question.plan = NULL;
	k.question.species = NULL;
	assert_int_equal(ts_log_model_fill(&asking, &k.question, &k.r), TS_OK);
	assert_true(isnan(value_of(&k, "GH")->likes.low));
	assert_true(isnan(value_of(&k, "NO3")->expected_now));
	assert_int_equal(k.r.point_count, 0);
	ts_arena_drop(&arena);
}

/* What may happen */

static const struct ts_what_if_line *lasts(const struct ts_what_if_result *r, const char *what)
{
	for (size_t i = 0; i < r->lasts_count; i++) {
		if (strcmp(r->lasts[i].what, what) == 0)
			return &r->lasts[i];
	}
	return NULL;
}

static void ask_if(const struct ts_asking *asking, struct kept *k, enum ts_what_if what,
	const struct ts_water *other, struct ts_what_if_result *ret)
{
	const struct ts_what_if_question q = {.row = &ts_what_if_rows[what],
		.plan = &k->plan,
		.species = k->species,
		.other = other,
		.hours = 3,
		.room_c = 18};

	assert_int_equal(ts_answer_what_if(asking, &q, ret), TS_OK);
	assert_non_null(ret->says);
	assert_true(ret->step_count >= 1);
}

/* Whoever is added, and the longer it takes, nothing lasts longer. */
static void test_what_if__more_animals_never_last_longer(void **state)
{
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);
	double before = (double)INFINITY, fed = (double)INFINITY;
	struct kept k;

	(void)state;
	for (int count = 5; count <= 320; count *= 2) {
		struct ts_what_if_result r;

		open_kept(&k, "guppy", count);
		ask_if(&asking, &k, TS_IF_POWER_CUT, NULL, &r);
		assert_true(lasts(&r, "oxygen")->low <= before);
		assert_true(lasts(&r, "ammonia")->low <= fed);
		before = lasts(&r, "oxygen")->low;
		fed = lasts(&r, "ammonia")->low;
	}
	assert_true(isfinite(before));
	ts_arena_drop(&arena);
}

static void test_what_if__unknown_names_leave_oxygen_open(void **state)
{
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);
	struct ts_what_if_result r;
	struct ts_what_if_question q = {.row = &ts_what_if_rows[TS_IF_POWER_CUT],
		.unknown = "'unfish' is no name",
		.hours = (double)NAN,
		.room_c = (double)NAN};
	struct kept k;

	(void)state;
	open_kept(&k, "neon tetra", 2);
	q.plan = &k.plan;
	q.species = k.species;
	assert_int_equal(ts_answer_what_if(&asking, &q, &r), TS_OK);
	assert_null(lasts(&r, "oxygen"));
	assert_null(lasts(&r, "ammonia"));
	assert_non_null(strstr(r.says, "within the hour"));
	ts_arena_drop(&arena);
}

static void test_what_if__water_that_does_not_suit_has_no_stages(void **state)
{
	struct ts_arena arena;
	struct ts_asking asking = asking_of(&arena);
	struct ts_reading soft = {.gh_dh = value(2), .kh_dh = value(1)};
	struct ts_reading near = {.gh_dh = value(8), .kh_dh = value(5)};
	const struct ts_water there = {.readings = &soft, .reading_count = 1};
	const struct ts_water same = {.readings = &near, .reading_count = 1};
	struct ts_what_if_result r;
	struct kept k;

	(void)state;
	open_kept(&k, "black molly", 6);
	k.readings[1].gh_dh = value(15);
	k.readings[1].kh_dh = value(9);
	ask_if(&asking, &k, TS_IF_MOVE, &there, &r);
	assert_int_equal(r.stage_count, 0);
	assert_non_null(strstr(r.says, "does not suit"));
	assert_true(r.carry_l >= 1);
	open_kept(&k, "neon tetra", 10);
	ask_if(&asking, &k, TS_IF_MOVE, &same, &r);
	assert_int_equal(r.stage_count, 0);
	assert_non_null(strstr(r.says, "near enough"));
	ts_arena_drop(&arena);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_due_all__one_thing_a_line_in_order),
		cmocka_unit_test(test_due_all__danger_before_everything),
		cmocka_unit_test(test_log__expected_from_the_first_reading_on),
		cmocka_unit_test(test_log__without_animals_no_band_and_no_model),
		cmocka_unit_test(test_what_if__more_animals_never_last_longer),
		cmocka_unit_test(test_what_if__unknown_names_leave_oxygen_open),
		cmocka_unit_test(test_what_if__water_that_does_not_suit_has_no_stages),
	};

	return cmocka_run_group_tests(tests, shipped_open, shipped_close);
}
