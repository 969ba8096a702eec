/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Random waters, each against an animal of its own: what is left out, doubted, worse,
 * contradictory, salt or poisonous never makes a verdict a yes or a fit better. tests/prove.sh runs
 * twenty times as many.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>

#include <cmocka.h>

#include <tapshoal/match.h>

#include "../random.h"

#define WATERS 1000

static struct random r;

static double between(double low, double high)
{
	return low + (double)any_below(&r, 1u << 24) / (1u << 24) * (high - low);
}

static struct ts_envelope any_band(double low, double high, double least)
{
	static const char *const practice = "practice";
	double t_low = between(low, high - least), t_high = between(t_low + least, high);
	double c_low = between(t_low, t_high), c_high = between(c_low, t_high);

	return (struct ts_envelope){
		{t_low, t_high}, {c_low, c_high}, {(const char **)(uintptr_t)&practice, 1}, NULL};
}

struct scene {
	struct ts_species s;
	struct ts_reading r;
	struct ts_water w;
	struct ts_keeping k;
};

static struct ts_measure exact(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_DOUBT};
}

/* A tank or a supply whose KH lies between a quarter of GH and all of it. */
static void any_scene(struct scene *c)
{
	const struct ts_range none = {(double)NAN, (double)NAN};
	const struct ts_envelope no = {none, none, {NULL, 0}, NULL};
	double gh = between(1.5, 25);

	*c = (struct scene){.s = {.species = "Exempla fortuita",
				    .home_water = (int)between(0, TS_HOME__COUNT - 0.01)},
		.r = {.gh_dh = exact(gh),
			.kh_dh = exact(between(gh / 4, gh)),
			.ph = exact(between(5.5, 9)),
			.no3_mg_l = exact(between(0, 90)),
			.tan_mg_l = exact(between(0, 0.2))},
		.k = {.temperature = exact(between(18, 30)),
			.wild = between(0, 1) < 0.2,
			.breeding = between(0, 1) < 0.2}};
	c->w = (struct ts_water){
		.kind = between(0, 1) < 0.6 ? TS_WATER_TANK : TS_WATER_TAP, .reading_count = 1};
	c->s.water.usual = c->s.water.wild = c->s.water.breeding = (struct ts_envelopes){
		.gh_dh = no, .kh_dh = no, .ph = no, .temp_c = no, .salinity_g_l = no};
	c->s.water.usual.gh_dh = any_band(0, 30, 4);
	c->s.water.usual.ph = any_band(5, 9, 0.6);
	c->s.water.usual.temp_c = any_band(16, 32, 3);
}

static struct ts_match matched(struct scene *c)
{
	struct ts_profile p;
	struct ts_match m;

	c->w.readings = &c->r;
	ts_profile_make(&c->w, &c->k, NULL, -1, &p);
	ts_match_species(&c->s, &p, &c->k, NULL, &m);
	return m;
}

static bool yes(const struct ts_match *m)
{
	return m->verdict <= TS_TOLERATES;
}

static void test_left_out__is_never_better(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 21, WATERS);
	for (unsigned i = 0; i < count; i++) {
		struct scene c;
		struct ts_match whole, less;

		random_case(&r, i);
		any_scene(&c);
		whole = matched(&c);
		c.r.gh_dh = (struct ts_measure){0};
		less = matched(&c);
		CLAIM(&r, !yes(&less));
		CLAIM(&r, isnan(less.fit));
		CLAIM(&r, whole.verdict <= TS_EXCLUDED);
		random_case(&r, i);
		any_scene(&c);
		whole = matched(&c);
		c.r.kh_dh = (struct ts_measure){0};
		less = matched(&c);
		CLAIM(&r, isnan(less.fit));
		/* by KH alone: the pH read stays what it is only in a tank; of livebearers GH
		 * answers where it is theirs, and an unread KH is a question beside the yes */
		CLAIM(&r, c.w.kind != TS_WATER_TANK || yes(&whole) || !yes(&less) ||
				  whole.at[TS_KH].verdict <= TS_TOLERATES ||
				  (c.s.home_water == TS_HOME_HARD && c.r.gh_dh.value >= 8));
	}
}

static void test_wider_doubt__is_never_better(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 22, WATERS);
	for (unsigned i = 0; i < count; i++) {
		struct ts_measure *wide[3];
		struct scene c;
		struct ts_match sharp, blurred;

		random_case(&r, i);
		any_scene(&c);
		sharp = matched(&c);
		wide[0] = &c.r.gh_dh;
		wide[1] = &c.k.temperature;
		wide[2] = c.w.kind == TS_WATER_TANK ? &c.r.ph : &c.r.gh_dh;
		for (int n = 0; n < 3; n++) {
			wide[n]->low = fmax(0, wide[n]->low - between(0, 2));
			wide[n]->high += between(0, 2);
		}
		blurred = matched(&c);
		CLAIM(&r, yes(&sharp) || !yes(&blurred));
		CLAIM(&r, !(sharp.verdict == TS_TOLERATES && blurred.verdict == TS_SUITS));
		CLAIM(&r, !(blurred.fit > sharp.fit + 1e-9));
	}
}

/* One parameter of a tank farther from what is comfortable, on the side where it lies. */
static void test_worse_value__is_never_better(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 23, WATERS);
	for (unsigned i = 0; i < count; i++) {
		bool warm = between(0, 1) < 0.5;
		struct scene c;
		struct ts_measure *moved;
		const struct ts_range *comfort;
		struct ts_match near, far;
		double by;

		random_case(&r, i);
		any_scene(&c);
		c.w.kind = TS_WATER_TANK;
		near = matched(&c);
		moved = warm ? &c.k.temperature : &c.r.ph;
		comfort = &near.at[warm ? TS_TEMPERATURE : TS_PH].preferred;
		by = between(0, warm ? 3 : 0.5);
		by = moved->value < comfort->low ? -by : by;
		if (moved->value >= comfort->low && moved->value <= comfort->high)
			continue;
		*moved = exact(moved->value + by);
		far = matched(&c);
		CLAIM(&r, yes(&near) || !yes(&far) || near.verdict == TS_UNSURE);
		CLAIM(&r, !(far.fit > near.fit + 1e-9));
		CLAIM(&r, !(near.verdict == TS_TOLERATES && near.fit <= 0));
		CLAIM(&r, !(far.verdict == TS_TOLERATES && far.fit <= 0));
	}
}

static void test_danger__is_never_better(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 24, WATERS);
	for (unsigned i = 0; i < count; i++) {
		struct scene c;
		struct ts_match clean, foul;

		random_case(&r, i);
		any_scene(&c);
		clean = matched(&c);
		switch (i % 4) {
		case 0:
			c.r.tan_mg_l = exact(between(0.25, 5));
			break;
		case 1:
			c.r.no2_mg_l = exact(between(0.16, 5));
			break;
		case 2:
			c.r.no3_mg_l = exact(between(100, 300));
			break;
		default:
			c.r.oxygen_mg_l = exact(between(0, 3));
			break;
		}
		foul = matched(&c);
		CLAIM(&r, !yes(&foul));
		CLAIM(&r, foul.verdict >= clean.verdict);
	}
}

/* The same reading twice changes nothing. */
static void test_same_reading_twice(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 25, WATERS);
	for (unsigned i = 0; i < count; i++) {
		struct scene c;
		struct ts_match once, twice;
		struct ts_reading both[2];
		struct ts_profile p;

		random_case(&r, i);
		any_scene(&c);
		c.r.method = (int)between(0, 5.99);
		c.r.gh_dh.kind = c.r.kh_dh.kind = c.r.ph.kind = TS_MEASURE_VALUE;
		once = matched(&c);
		both[0] = both[1] = c.r;
		c.w.readings = both;
		c.w.reading_count = 2;
		ts_profile_make(&c.w, &c.k, NULL, -1, &p);
		ts_match_species(&c.s, &p, &c.k, NULL, &twice);
		CLAIM(&r, once.verdict == twice.verdict);
		CLAIM(&r, once.fit == twice.fit || (isnan(once.fit) && isnan(twice.fit)));
	}
}

/* Readings that cannot both be right keep a verdict from being sure. */
static void test_contradiction__is_never_suits(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 26, WATERS);
	for (unsigned i = 0; i < count; i++) {
		struct scene c;
		struct ts_match m;

		random_case(&r, i);
		any_scene(&c);
		c.r.gh_dh = exact(between(8, 25));
		c.r.kh_dh = exact(between(5, 8));
		switch (i % 3) {
		case 0:
			c.r.ph = exact(between(3.5, 4.8));
			break;
		case 1:
			c.r.alkalinity_meq_l = exact(between(0.05, 0.4));
			break;
		default:
			c.r.conductivity_us_cm = exact(between(5, 60));
			break;
		}
		m = matched(&c);
		CLAIM(&r, m.verdict != TS_SUITS);
	}
}

/* Sea water by whatever was read of it suits no animal of fresh water, and none lives in it. */
static void test_salt__is_never_a_yes(void **state)
{
	unsigned count;

	(void)state;
	count = random_open(&r, 27, WATERS);
	for (unsigned i = 0; i < count; i++) {
		struct scene c;
		struct ts_match m;

		random_case(&r, i);
		any_scene(&c);
		switch (i % 4) {
		case 0:
			c.r.conductivity_us_cm = exact(between(20000, 55000));
			break;
		case 1:
			c.r.tds_mg_l = exact(between(12000, 38000));
			break;
		case 2:
			c.r.na_mg_l = exact(between(4000, 11000));
			break;
		default:
			c.r.cl_mg_l = exact(between(7000, 20000));
			break;
		}
		m = matched(&c);
		CLAIM(&r, !yes(&m));
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_left_out__is_never_better),
		cmocka_unit_test(test_wider_doubt__is_never_better),
		cmocka_unit_test(test_worse_value__is_never_better),
		cmocka_unit_test(test_danger__is_never_better),
		cmocka_unit_test(test_same_reading_twice),
		cmocka_unit_test(test_contradiction__is_never_suits),
		cmocka_unit_test(test_salt__is_never_a_yes),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
