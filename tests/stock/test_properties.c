/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What holds of a plan's verdict whatever animals, tank and water it has: random records, tanks and
 * stock lists. A case that fails prints its seed and number.
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

#include "../given.h"
#include "../random.h"
#include "stock/check.h"

#define ANIMALS 6

static const char *grades[] = {"practice", "practice"};

struct scene {
	struct ts_species species[ANIMALS];
	char names[ANIMALS][24];
	const struct ts_species *named[ANIMALS];
	struct ts_stock_line lines[ANIMALS];
	struct ts_reading supply, in_tank;
	struct ts_plan plan;
};

static struct ts_envelope any_band(struct random *r, double least, double most, double step)
{
	double low = any_in(r, least, (least + most) / 2, step);
	double high = any_in(r, low, most, step);
	double from = any_in(r, low, high, step);

	return (struct ts_envelope){
		{low, high}, {from, any_in(r, from, high, step)}, {grades, 2}, NULL};
}

static struct ts_envelopes no_bands(void)
{
	const struct ts_range none = {(double)NAN, (double)NAN};
	const struct ts_envelope e = {none, none, {NULL, 0}, NULL};

	return (struct ts_envelopes){e, e, e, e, e};
}

static void any_ways(struct random *r, struct ts_species *s)
{
	s->group.least = 1 + any_below(r, 12);
	s->group.comfortable = s->group.least + any_below(r, 6);
	s->group.sexes = (int)any_below(r, 6);
	s->swims = (int)any_below(r, 4);
	s->to_own_kind = (int)any_below(r, 3);
	s->own_kind_when = (int)any_below(r, 3);
	s->to_others = (int)any_below(r, 3);
	s->others_when = (int)any_below(r, 3);
	s->gape = (int)any_below(r, 5);
	s->preys_on = any_percent(r, 20) ? any_below(r, 8) : 0;
	s->diet = (int)any_below(r, 3);
	s->fins = (int)any_below(r, 2);
	s->nips = (int)any_below(r, 3);
	s->territory.floor_m2 = any_percent(r, 30) ? any_in(r, 0.05, 1, 0.05) : 0;
	s->territory.per = (int)any_below(r, 4);
	s->needs.flow = (int)any_below(r, 4);
	s->needs.light = (int)any_below(r, 3);
	s->needs.cover = (int)any_below(r, 2);
	s->needs.activity = (int)any_below(r, 4);
	s->habits = any_percent(r, 30) ? 1u << any_below(r, 10) : 0;
	s->cautions = any_percent(r, 20) ? 1u << any_below(r, 13) : 0;
}

static void any_species(struct random *r, struct scene *s, size_t i)
{
	struct ts_species *one = &s->species[i];

	/* Genera and families meet, and sometimes two forms of one species. */
	snprintf(s->names[i], sizeof s->names[i], "Exempla%c %c", (char)('a' + any_below(r, 3)),
		(char)('a' + any_below(r, 9)));
	*one = (struct ts_species){.species = s->names[i],
		.form = i ? "other" : NULL,
		.family = any_percent(r, 50) ? "Unidae" : "Duidae",
		.kind = any_percent(r, 70) ? 0 : (int)any_below(r, 5),
		.home_water = (int)any_below(r, TS_HOME__COUNT),
		.body = (int)any_below(r, 4),
		.adult_length_cm = any_in(r, 1, 30, 0.5)};
	one->greatest_length_cm = one->adult_length_cm;
	one->water.usual = one->water.wild = one->water.breeding = no_bands();
	one->water.usual.gh_dh = any_band(r, 0, 30, 1);
	one->water.usual.ph = any_band(r, 5, 9, 0.5);
	one->water.usual.temp_c = any_band(r, 15, 32, 1);
	any_ways(r, one);
	s->named[i] = any_percent(r, 97) ? one : NULL;
	s->lines[i] = (struct ts_stock_line){.species = s->names[i],
		.count = 2 * (1 + any_below(r, 10)),
		.sex = (int)any_below(r, 4),
		.since = any_percent(r, 30) ? "2026-01-01" : NULL,
		.origin = any_percent(r, 10) ? TS_ORIGIN_WILD : TS_ORIGIN_UNKNOWN,
		.size_cm = any_percent(r, 20) ? any_in(r, 1, 10, 0.5) : 0};
}

static struct ts_measure maybe(struct random *r, unsigned percent, double most)
{
	return any_percent(r, percent) ? value(any_in(r, 0, most, most / 40))
				       : (struct ts_measure){0};
}

static struct ts_reading any_reading(struct random *r)
{
	struct ts_reading one = {.date = "2026-03-01", .gh_dh = value(any_in(r, 0, 25, 1))};

	one.kh_dh = maybe(r, 80, 20);
	one.ph = maybe(r, 80, 10);
	one.no3_mg_l = maybe(r, 60, 150);
	one.tan_mg_l = maybe(r, 60, 1);
	one.no2_mg_l = maybe(r, 60, 1);
	one.chlorine_mg_l = maybe(r, 10, 1);
	one.cl_mg_l = maybe(r, 30, 60);
	return one;
}

static void any_scene(struct random *r, struct scene *s)
{
	memset(s, 0, sizeof *s);
	for (size_t i = 0; i < ANIMALS; i++)
		any_species(r, s, i);
	s->supply = any_reading(r);
	s->in_tank = any_reading(r);
	s->plan.water.readings = &s->supply;
	s->plan.water.reading_count = any_percent(r, 90);
	s->plan.tank.readings = &s->in_tank;
	s->plan.tank.reading_count = any_percent(r, 60);
	s->plan.stock = s->lines;
	s->plan.stock_count = 1 + any_below(r, ANIMALS);
	s->plan.tank.length_cm = any_in(r, 0, 200, 20);
	s->plan.tank.width_cm = any_in(r, 0, 70, 10);
	s->plan.tank.height_cm = any_in(r, 20, 60, 10);
	s->plan.tank.volume_l = any_in(r, 20, 400, 20);
	s->plan.tank.temp_c = maybe(r, 90, 40);
	s->plan.tank.water_change = any_percent(r, 60) ? (struct ts_every){any_in(r, 0, 50, 10), 7}
						       : (struct ts_every){0, 0};
	s->plan.tank.plants = (int)any_below(r, 4);
	s->plan.tank.flow = (int)any_below(r, 4);
	s->plan.tank.light = (int)any_below(r, 3);
	s->plan.tank.cover = (int)any_below(r, 3);
	s->plan.tank.filter = (int)any_below(r, 3);
	s->plan.tank.feeding.word = (int)any_below(r, 4);
}

static struct ts_check checked(const struct scene *s, struct ts_arena *arena)
{
	struct ts_check check;

	assert_int_equal(ts_check_faults(&s->plan, s->named, -1, NULL, NULL, arena, &check), TS_OK);
	return check;
}

/* The verdict is in this order; a yes that was none before is better, whatever the verdict. */
static int badness(const struct ts_check *c)
{
	bool passes = c->answered && c->verdict <= TS_PLAN_SOUND_IF;

	return 10 * !passes + (passes || c->verdict == TS_PLAN_UNSOUND ? (int)c->verdict : 0);
}

static bool has(const struct ts_check *c, const struct ts_ruling *r)
{
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *own = &c->rulings[i];

		if (own->rule == r->rule && own->subject == r->subject && own->other == r->other &&
			own->severity == r->severity)
			return true;
	}
	return false;
}

/* Who wants a buffer is left out for another, which wants none: then nobody's is short. */
static bool without_its_buffer(const struct ts_check *c, const struct ts_ruling *r)
{
	bool left_out = false;

	for (size_t i = 0; i < c->group_count; i++)
		left_out |= c->groups[i].way == TS_WAY_LEAVE;
	return r->rule == TS_RULE_BUFFER && left_out;
}

/* More feed settles a tank at other water, which may be unsure for whom the first was none. */
static bool of_settled_water(const struct ts_ruling *r)
{
	return r->rule == TS_RULE_WATER && r->rests == TS_RESTS_COMPUTED;
}

/* The same species added to a plan: nothing gets better, and no conflict goes away. */
static void test_one_more_species__never_makes_a_plan_sounder(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 11, 1500);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check with, without;

		random_case(&r, i);
		any_scene(&r, &s);
		s.plan.stock_count += s.plan.stock_count < 2;
		s.lines[s.plan.stock_count - 1].since =
			NULL; /* who lived there long shows a filter */
		ts_arena_open(&arena, NULL);
		with = checked(&s, &arena);
		s.plan.stock_count--;
		without = checked(&s, &arena);
		CLAIM(&r, badness(&with) >= badness(&without));
		for (size_t k = 0; k < without.count; k++)
			CLAIM(&r, without.rulings[k].severity < TS_CONFLICT ||
					  has(&with, &without.rulings[k]) ||
					  without_its_buffer(&with, &without.rulings[k]) ||
					  of_settled_water(&without.rulings[k]));
		ts_arena_drop(&arena);
	}
}

static void test_one_animal_less__makes_no_conflict_between_two_but_by_nippers(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 12, 1500);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check more, less;

		random_case(&r, i);
		any_scene(&r, &s);
		s.lines[0].sex = (int)any_below(&r, 3);
		ts_arena_open(&arena, NULL);
		more = checked(&s, &arena);
		s.lines[0].count--;
		less = checked(&s, &arena);
		for (size_t k = 0; k < less.count; k++) {
			const struct ts_ruling *one = &less.rulings[k];

			/* Too few nippers nip twice as much: said so, and meant. */
			if (one->severity == TS_CONFLICT &&
				ts_rule_rows[one->rule].scope == TS_SCOPE_PAIR &&
				one->rule != TS_RULE_FIN_NIPPER)
				CLAIM(&r, has(&more, one));
		}
		ts_arena_drop(&arena);
	}
}

static void test_a_rising_danger_reading__never_betters_a_plan(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 13, 1500);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check before, after;
		struct ts_measure *dangers[5];

		random_case(&r, i);
		any_scene(&r, &s);
		s.plan.tank.reading_count = 1;
		dangers[0] = &s.in_tank.tan_mg_l;
		dangers[1] = &s.in_tank.no2_mg_l;
		dangers[2] = &s.in_tank.no2_n_mg_l;
		dangers[3] = &s.in_tank.no3_mg_l;
		dangers[4] = &s.in_tank.chlorine_mg_l;
		ts_arena_open(&arena, NULL);
		for (int d = 0; d < 5; d++) {
			double now = dangers[d]->kind == TS_MEASURE_NONE ? 0 : dangers[d]->value;

			*dangers[d] = value(now);
			before = checked(&s, &arena);
			*dangers[d] = value(now + any_in(&r, 0, d == 3 ? 200 : 3, 0.01));
			after = checked(&s, &arena);
			CLAIM(&r, badness(&after) >= badness(&before));
		}
		ts_arena_drop(&arena);
	}
}

static void test_the_order_of_lines__changes_nothing(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 14, 1500);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check a, b;
		size_t last;

		random_case(&r, i);
		any_scene(&r, &s);
		last = s.plan.stock_count - 1;
		ts_arena_open(&arena, NULL);
		a = checked(&s, &arena);
		for (size_t k = 0; k < last - k; k++) {
			struct ts_stock_line line = s.lines[k];
			const struct ts_species *name = s.named[k];

			s.lines[k] = s.lines[last - k];
			s.named[k] = s.named[last - k];
			s.lines[last - k] = line;
			s.named[last - k] = name;
		}
		b = checked(&s, &arena);
		CLAIM(&r, a.verdict == b.verdict && a.count == b.count);
		for (size_t k = 0; k < a.count; k++)
			CLAIM(&r, has(&b, &a.rulings[k]));
		ts_arena_drop(&arena);
	}
}

static void test_what_the_load_tells__is_finite_or_said_to_be_without_end(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 15, 1500);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check c;
		bool changed;

		random_case(&r, i);
		any_scene(&r, &s);
		ts_arena_open(&arena, NULL);
		c = checked(&s, &arena);
		changed =
			!(s.plan.tank.water_change.days > 0) || s.plan.tank.water_change.amount > 0;
		CLAIM(&r, !c.load_known ||
				  (isfinite(c.load.feed_g_day.high) && c.load.feed_g_day.low >= 0));
		CLAIM(&r, !c.load_known || isfinite(c.load.no3_rise_mg_l_week.high));
		CLAIM(&r, !c.load_known || !isnan(c.load.no3_steady_mg_l.low));
		CLAIM(&r, !c.load_known || !changed || isfinite(c.load.no3_steady_mg_l.high));
		ts_arena_drop(&arena);
	}
}

/* The litres of the smallest tank are known only once remedies were tried: one ruling more. */
static bool too_few_litres(const struct ts_check *c)
{
	bool some = false;

	for (size_t i = 0; i < c->count; i++)
		some |= c->rulings[i].rule == TS_RULE_LITRES;
	return some;
}

/* Of animals that nobody has bought yet a fault that another routine or a spoon clears is a
 * condition. */
static bool became_a_condition(const struct ts_check *c, const struct ts_ruling *r)
{
	bool eased = false;

	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *own = &c->rulings[i];

		eased |= own->rule == r->rule && own->subject == r->subject &&
			 own->other == r->other && r->severity == TS_CONFLICT &&
			 own->severity == TS_CONCERN && own->remedy.clears &&
			 (own->remedy.kind == TS_REMEDY_ROUTINE ||
				 own->remedy.kind == TS_REMEDY_MINERALS);
	}
	return eased;
}

/* What is tried to mend a plan leaves the judging of it as it is, but for what it clears. */
static void test_remedies__change_no_verdict(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 16, 100);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_arena arena;
		struct ts_check judged, mended;

		random_case(&r, i);
		any_scene(&r, &s);
		ts_arena_open(&arena, NULL);
		judged = checked(&s, &arena);
		assert_int_equal(ts_check_plan(&s.plan, s.named, -1, NULL, &arena, &mended), TS_OK);
		bool litres = too_few_litres(&mended), eased = false;

		for (size_t k = 0; k < judged.count; k++)
			eased |= became_a_condition(&mended, &judged.rulings[k]);
		CLAIM(&r, eased || (litres ? badness(&mended) >= badness(&judged)
					   : badness(&mended) == badness(&judged)));
		CLAIM(&r, judged.count + litres == mended.count);
		for (size_t k = 0; k < judged.count; k++)
			CLAIM(&r, has(&mended, &judged.rulings[k]) ||
					  became_a_condition(&mended, &judged.rulings[k]));
		ts_arena_drop(&arena);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_one_more_species__never_makes_a_plan_sounder),
		cmocka_unit_test(
			test_one_animal_less__makes_no_conflict_between_two_but_by_nippers),
		cmocka_unit_test(test_a_rising_danger_reading__never_betters_a_plan),
		cmocka_unit_test(test_the_order_of_lines__changes_nothing),
		cmocka_unit_test(test_remedies__change_no_verdict),
		cmocka_unit_test(test_what_the_load_tells__is_finite_or_said_to_be_without_end),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
