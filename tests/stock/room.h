/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A plan over peaceful made-up animals in hard water, which tests of the check change in one point
 * at a time. Include after cmocka. For tests only.
 */
#ifndef TS_TESTS_STOCK_ROOM_H
#define TS_TESTS_STOCK_ROOM_H

#include <stdio.h>

#include "../given.h"
#include "../stingy.h"
#include "stock/check.h"
#include "stock/rules.h"

#define ANIMALS 24

static const char *grades[] = {"practice", "practice"};

struct room {
	struct ts_species species[ANIMALS];
	char names[ANIMALS][24];
	const struct ts_species *named[ANIMALS];
	struct ts_stock_line lines[ANIMALS];
	struct ts_reading reading, in_tank;
	struct ts_plan plan;
	struct ts_arena arena;
	struct ts_check check;
};

static inline struct ts_envelope band(double a, double b, double c, double d)
{
	return (struct ts_envelope){{a, d}, {b, c}, {grades, 2}, NULL};
}

/* Peaceful animals in hard water, and a tank that holds the first one well. */
static inline void fill(struct room *r, size_t count)
{
	static const struct ts_envelope none = {
		{(double)NAN, (double)NAN}, {(double)NAN, (double)NAN}, {NULL, 0}, NULL};

	for (size_t i = 0; i < ANIMALS; i++) {
		struct ts_species *s = &r->species[i];
		const struct ts_envelopes empty = {none, none, none, none, none};

		snprintf(r->names[i], sizeof r->names[i], "Exempla%c una", (char)('a' + i));
		*s = (struct ts_species){.species = r->names[i],
			.family = r->names[i],
			.home_water = TS_HOME_MIDDLE,
			.adult_length_cm = 4,
			.greatest_length_cm = 5,
			.group = {.least = 6, .comfortable = 6, .sexes = TS_SEXES_ANY},
			.swims = TS_SWIMS_MIDDLE};
		s->water.usual = s->water.wild = s->water.breeding = empty;
		s->water.usual.gh_dh = band(4, 6, 20, 25);
		s->water.usual.ph = band(6.5, 7, 8.5, 9);
		s->water.usual.temp_c = band(20, 22, 27, 29);
		r->named[i] = s;
		r->lines[i] = (struct ts_stock_line){.species = r->names[i], .count = 6};
	}
	r->reading = (struct ts_reading){.gh_dh = value(14), .kh_dh = value(9), .ph = value(7.8)};
	r->in_tank = (struct ts_reading){.tan_mg_l = value(0), .no2_mg_l = value(0)};
	r->plan = (struct ts_plan){.water = {.readings = &r->reading, .reading_count = 1},
		.tank = {.length_cm = 100,
			.width_cm = 40,
			.height_cm = 50,
			.temp_c = value(25),
			.cover = TS_COVER_YES,
			.plants = TS_PLANTS_NONE,
			.feeding = {TS_FEEDING_ORDINARY, 0},
			.water_change = {30, 7},
			.filter = TS_FILTER_MATURE},
		.stock = r->lines,
		.stock_count = count};
}

static inline int set_up(void **state)
{
	static struct room room;

	fill(&room, 1);
	ts_arena_open(&room.arena, NULL);
	*state = &room;
	return 0;
}

static inline int tear_down(void **state)
{
	struct room *room = *state;

	ts_arena_drop(&room->arena);
	return 0;
}

static inline const struct ts_check *judge(struct room *r)
{
	ts_arena_drop(&r->arena);
	assert_int_equal(ts_check_plan(&r->plan, r->named, -1, NULL, &r->arena, &r->check), TS_OK);
	return &r->check;
}

/* The severity of a rule in the answer; -1 when it is not there. */
static inline int severity(struct room *r, enum ts_rule_id rule)
{
	const struct ts_check *c = judge(r);

	for (size_t i = 0; i < c->count; i++) {
		if (c->rulings[i].rule == rule)
			return (int)c->rulings[i].severity;
	}
	return -1;
}

/* The plan judged with the n-th allocation refused, for every n: nothing is given, nothing leaks.
 */
static inline void refuse_each_allocation(const struct room *r)
{
	bool finished = false;

	for (size_t n = 0; !finished && n < 500; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_arena arena;
		struct ts_check check = {.count = 77};
		enum ts_status status;

		ts_arena_open(&arena, &allocator);
		status = ts_check_plan(&r->plan, r->named, -1, NULL, &arena, &check);
		assert_int_equal(status, stingy.refused ? TS_NO_MEMORY : TS_OK);
		if (stingy.refused)
			assert_int_equal(check.count, 77);
		finished = !stingy.refused;
		ts_arena_drop(&arena);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(finished);
}

#endif
