/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What holds of every answer of check, whatever is asked: random plans over the shipped records,
 * random tanks and waters. Pairs of sentences that exclude each other are a table; a yes is never
 * gained by knowing less, by a wider doubt, by a worse figure or by a danger. A case that fails
 * prints its seed and number.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tapshoal/catalogue.h>

#include "../given.h"
#include "../random.h"
#include "../shipped.h"
#include "answers/check.h"

#define LINES 5

struct scene {
	const struct ts_species *species[LINES];
	struct ts_candidates candidates[LINES];
	struct ts_stock_line lines[LINES];
	struct ts_reading supply, tank;
	struct ts_sign sign;
	struct ts_plan plan;
};

static struct ts_measure maybe(
	struct random *r, unsigned percent, double low, double high, double step)
{
	struct ts_measure none = {.kind = TS_MEASURE_NONE};

	return any_percent(r, percent) ? value(any_in(r, low, high, step)) : none;
}

static void any_reading(struct random *r, struct ts_reading *ret)
{
	*ret = (struct ts_reading){.method = TS_METHOD_DROPS};
	ret->gh_dh = maybe(r, 85, 0, 30, 0.5);
	ret->kh_dh = maybe(r, 85, 0, 20, 0.5);
	ret->ph = maybe(r, 60, 5, 9.5, 0.1);
}

static void any_scene(struct random *r, struct scene *s)
{
	static const char *const since[] = {NULL, NULL, "2026-02-20", "2025-01-01"};

	*s = (struct scene){.sign = {.sign = TS_SIGN_GASPING, .onset = TS_ONSET_NOW}};
	any_reading(r, &s->supply);
	any_reading(r, &s->tank);
	s->tank.date = "2026-03-09";
	s->tank.tan_mg_l = maybe(r, 60, 0, 1, 0.25);
	s->tank.no2_mg_l = maybe(r, 60, 0, 0.5, 0.1);
	s->tank.no3_mg_l = maybe(r, 60, 0, 120, 10);
	s->plan = (struct ts_plan){
		.water = {.readings = &s->supply, .reading_count = any_percent(r, 90)},
		.stock = s->lines,
		.stock_count = any_below(r, LINES) + 1};
	s->plan.tank.readings = &s->tank;
	s->plan.tank.reading_count = any_percent(r, 50);
	s->plan.tank.temp_c = maybe(r, 85, 18, 30, 1);
	if (any_percent(r, 70)) {
		s->plan.tank.length_cm = any_in(r, 40, 200, 20);
		s->plan.tank.width_cm = any_in(r, 30, 70, 10);
		s->plan.tank.height_cm = any_in(r, 30, 60, 10);
	} else {
		s->plan.tank.volume_l = any_in(r, 0, 400, 40);
	}
	s->plan.tank.filter = (int)any_below(r, 3);
	if (any_percent(r, 15)) {
		s->plan.signs = &s->sign;
		s->plan.sign_count = 1;
	}
	s->tank.oxygen_mg_l = maybe(r, 20, 2, 9, 0.5);
	s->plan.tank.cover = (int)any_below(r, 3);
	s->plan.tank.plants = (int)any_below(r, 4);
	s->plan.tank.feeding.word = (int)any_below(r, 4);
	s->plan.tank.water_change =
		any_percent(r, 60) ? (struct ts_every){30, 7} : (struct ts_every){0, 0};
	for (size_t i = 0; i < s->plan.stock_count; i++) {
		s->species[i] = catalogue.items[any_below(r, (unsigned)catalogue.count)];
		s->lines[i] = (struct ts_stock_line){.species = s->species[i]->species,
			.count = any_below(r, 15) + 1,
			.sex = (int)any_below(r, 3),
			.since = since[any_below(r, 4)]};
	}
}

static struct ts_check_result answered(
	const struct scene *s, struct ts_arena *arena, const struct ts_practice *practice)
{
	struct ts_check_question question = {"a plan", &s->plan, s->species, s->candidates, NULL,
		NULL, 0, 0, (double)NAN, NULL, 0};
	struct ts_asking asking = {.arena = arena, .practice = practice, .today = 20522};
	struct ts_check_result result;

	assert_int_equal(ts_answer_check(&question, &asking, &result), TS_OK);
	return result;
}

/* Every sentence of an answer, one after the other; NULL behind the last. */
static const char *sentence(const struct ts_check_result *r, size_t index)
{
	const char *heads[] = {
		r->headline, r->decides, r->shared_says, r->room_says, r->waste_says};
	size_t each = 4;

	if (index < 5)
		return heads[index] ? heads[index] : "";
	index -= 5;
	if (index / each < r->judgement_count) {
		const struct ts_check_judgement *j = &r->judgements[index / each];
		const char *parts[] = {
			j->says, j->because, j->condition, j->remedy ? j->remedy->says : NULL};

		return parts[index % each] ? parts[index % each] : "";
	}
	return NULL;
}

static bool says(const struct ts_check_result *r, const char *words)
{
	const char *at;

	for (size_t i = 0; (at = sentence(r, i)); i++) {
		if (strstr(at, words))
			return true;
	}
	return false;
}

static bool buys_more(const struct ts_check_result *r)
{
	for (size_t i = 0; i < r->judgement_count; i++) {
		const struct ts_check_remedy *m = r->judgements[i].remedy;

		if (m && strcmp(m->kind, "number") == 0 && m->to > m->from)
			return true;
	}
	return false;
}

static bool buys_nothing(const struct ts_check_result *r)
{
	return says(r, "o new animals") || says(r, "o newcomers") || says(r, "buy nothing");
}

static bool change_half(const struct ts_check_result *r)
{
	return says(r, "; change half") || says(r, "Change half");
}

static bool not_half(const struct ts_check_result *r)
{
	return says(r, "do not change half");
}

static bool left_alone(const struct ts_check_result *r)
{
	return says(r, "eave the water alone");
}

static bool sent_away(const struct ts_check_result *r)
{
	for (size_t i = 0; i < r->judgement_count; i++) {
		const struct ts_check_remedy *m = r->judgements[i].remedy;

		if (m && strcmp(m->kind, "other-home") == 0 &&
			strcmp(r->judgements[i].topic, "water") == 0)
			return true;
	}
	return false;
}

static bool good(const struct ts_check_result *r)
{
	return strncmp(r->headline, "These go together.", 18) == 0 ||
	       strncmp(r->headline, "They can live here.", 19) == 0;
}

static bool bare(const struct ts_check_result *r)
{
	return r->profile->unusual & TS_UNUSUAL_BARE && r->judgement_count &&
	       says(r, "without minerals first");
}

static bool danger(const struct ts_check_result *r)
{
	for (size_t i = 0; i < r->judgement_count; i++) {
		if (strcmp(r->judgements[i].severity, "conflict") == 0)
			return true;
	}
	return false;
}

static bool steady(const struct ts_check_result *r)
{
	return says(r, "it is steady");
}

static bool trending(const struct ts_check_result *r)
{
	return says(r, "moves from week to week");
}

static bool feeds_half(const struct ts_check_result *r)
{
	return says(r, "eed half");
}

static bool feeds_nothing(const struct ts_check_result *r)
{
	return says(r, "eed nothing");
}

static bool a_third(const struct ts_check_result *r)
{
	return says(r, "a third to half");
}

static bool a_quarter(const struct ts_check_result *r)
{
	return says(r, "change a quarter") || says(r, "Change a quarter");
}

/* What cannot wait says how much is changed. */
static bool regime(const struct ts_check_result *r)
{
	return r->first && r->first->urgency && strcmp(r->first->urgency, "now") == 0;
}

static bool recipe_of_a_rule(const struct ts_check_result *r)
{
	for (size_t i = 0; i < r->judgement_count; i++) {
		const struct ts_check_remedy *m = r->judgements[i].remedy;

		if (m && (strcmp(m->kind, "minerals") == 0 || strcmp(m->kind, "dilute") == 0))
			return true;
	}
	return false;
}

static bool grows_the_number(const struct ts_check_result *r)
{
	return says(r, "more, where there is room") || says(r, "in six months");
}

static bool passes(const struct ts_check_result *r)
{
	return r->passes;
}

static bool not_known(const struct ts_check_result *r)
{
	return !r->answered;
}

/* What no answer says at once. */
static const struct {
	const char *name;
	bool (*one)(const struct ts_check_result *result);
	bool (*other)(const struct ts_check_result *result);
} excluding[] = {
	{"add animals / no new animals", buys_more, buys_nothing},
	{"change half / do not change half", change_half, not_half},
	{"leave alone / send away", left_alone, sent_away},
	{"suits / no animal before minerals are back", good, bare},
	{"sound / danger", good, danger},
	{"a yes / danger", passes, danger},
	{"a yes / not known", passes, not_known},
	{"steady / trending", steady, trending},
	{"feed half / feed nothing", feeds_half, feeds_nothing},
	{"a third to half / a quarter", a_third, a_quarter},
	{"make safe now / another regime", regime, recipe_of_a_rule},
	{"make safe now / how many there will be", regime, grows_the_number},
};

static int severity_of(const char *word)
{
	int at = 0;

	while (strcmp(ts_check_severity_words[at], word) != 0)
		at++;
	return at;
}

static void test_no_excluding_pair_and_the_verdict_is_the_worst(void **state)
{
	struct ts_practice practice;
	struct random r;
	unsigned count = random_open(&r, 61, 150);

	(void)state;
	ts_practice_defaults(&practice);
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check_result a;

		random_case(&r, i);
		any_scene(&r, &s);
		ts_arena_open(&arena, NULL);
		a = answered(&s, &arena, &practice);
		for (size_t k = 0; k < sizeof excluding / sizeof *excluding; k++) {
			if (excluding[k].one(&a) && excluding[k].other(&a))
				print_error("%s: %s\n", excluding[k].name, a.headline);
			CLAIM(&r, !(excluding[k].one(&a) && excluding[k].other(&a)));
		}
		CLAIM(&r, a.headline && *a.headline);
		for (size_t k = 1; k < a.judgement_count; k++)
			CLAIM(&r, severity_of(a.judgements[k].severity) <=
					  severity_of(a.judgements[k - 1].severity));
		CLAIM(&r, !a.judgement_count ||
				  strcmp(a.verdict, ts_check_verdict_words[severity_of(
							    a.judgements[0].severity)]) == 0);
		ts_arena_drop(&arena);
	}
}

/* A change of a scene after which no yes may be gained. */
struct change {
	const char *name;
	void (*make)(struct random *r, struct scene *s);
};

static void forget_gh(struct random *r, struct scene *s)
{
	(void)r;
	s->supply.gh_dh.kind = s->tank.gh_dh.kind = TS_MEASURE_NONE;
}

static void forget_kh(struct random *r, struct scene *s)
{
	(void)r;
	s->supply.kh_dh.kind = s->tank.kh_dh.kind = TS_MEASURE_NONE;
}

static void forget_temperature(struct random *r, struct scene *s)
{
	(void)r;
	s->plan.tank.temp_c.kind = TS_MEASURE_NONE;
}

static void forget_ammonia(struct random *r, struct scene *s)
{
	(void)r;
	s->tank.tan_mg_l.kind = TS_MEASURE_NONE;
}

static void forget_nitrite(struct random *r, struct scene *s)
{
	(void)r;
	s->tank.no2_mg_l.kind = TS_MEASURE_NONE;
}

static void widen(struct ts_measure *m, double by)
{
	if (m->kind == TS_MEASURE_NONE)
		return;
	*m = (struct ts_measure){m->value, fmax(m->low - by, 0), m->high + by, TS_MEASURE_DOUBT};
}

static void widen_gh(struct random *r, struct scene *s)
{
	double by = any_in(r, 2, 6, 1);

	widen(&s->supply.gh_dh, by);
	widen(&s->tank.gh_dh, by);
}

static void more_ammonia(struct random *r, struct scene *s)
{
	if (s->tank.tan_mg_l.kind != TS_MEASURE_NONE)
		s->tank.tan_mg_l = value(s->tank.tan_mg_l.value + any_in(r, 0.25, 3, 0.25));
}

static void more_nitrite(struct random *r, struct scene *s)
{
	if (s->tank.no2_mg_l.kind != TS_MEASURE_NONE)
		s->tank.no2_mg_l = value(s->tank.no2_mg_l.value + any_in(r, 0.25, 3, 0.25));
}

static void more_nitrate(struct random *r, struct scene *s)
{
	if (s->tank.no3_mg_l.kind != TS_MEASURE_NONE)
		s->tank.no3_mg_l = value(s->tank.no3_mg_l.value + any_in(r, 10, 200, 10));
}

static void add_signs(struct random *r, struct scene *s)
{
	(void)r;
	s->plan.signs = &s->sign;
	s->plan.sign_count = 1;
}

static void add_deaths(struct random *r, struct scene *s)
{
	(void)r;
	s->plan.deaths = value(2);
}

static void add_chlorine(struct random *r, struct scene *s)
{
	(void)r;
	s->tank.chlorine_mg_l = value(0.5);
}

static void add_copper(struct random *r, struct scene *s)
{
	(void)r;
	s->supply.cu_mg_l = value(0.2);
}

static const struct change changes[] = {
	{"GH left out", forget_gh},
	{"KH left out", forget_kh},
	{"temperature left out", forget_temperature},
	{"ammonia left out", forget_ammonia},
	{"nitrite left out", forget_nitrite},
	{"a wider doubt of GH", widen_gh},
	{"more ammonia", more_ammonia},
	{"more nitrite", more_nitrite},
	{"more nitrate", more_nitrate},
	{"signs of distress", add_signs},
	{"deaths", add_deaths},
	{"chlorine", add_chlorine},
	{"copper", add_copper},
};

static void test_no_yes_is_gained(void **state)
{
	struct ts_practice practice;
	struct random r;
	unsigned count = random_open(&r, 62, 20);

	(void)state;
	ts_practice_defaults(&practice);
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check_result before;

		random_case(&r, i);
		any_scene(&r, &s);
		ts_arena_open(&arena, NULL);
		before = answered(&s, &arena, &practice);
		for (size_t k = 0; k < sizeof changes / sizeof *changes; k++) {
			struct scene changed = s;
			struct ts_check_result after;

			changed.plan.stock = changed.lines;
			changed.plan.water.readings = &changed.supply;
			changed.plan.tank.readings = &changed.tank;
			changes[k].make(&r, &changed);
			after = answered(&changed, &arena, &practice);
			if (after.passes && !before.passes)
				print_error("%s: '%s' becomes '%s'\n", changes[k].name,
					before.headline, after.headline);
			CLAIM(&r, !after.passes || before.passes);
		}
		ts_arena_drop(&arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_no_excluding_pair_and_the_verdict_is_the_worst),
		cmocka_unit_test(test_no_yes_is_gained),
	};

	return cmocka_run_group_tests(tests, shipped_open, shipped_close);
}
