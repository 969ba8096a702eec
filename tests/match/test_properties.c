/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What holds of a verdict whatever the animal and the water: random records and readings, on a grid
 * so that limits are met exactly. A case that fails prints its seed and number.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include <tapshoal/match.h>

#include "../random.h"
#include "units/units.h"

#define READINGS_MOST 3

struct parameter {
	double low, high, step;
};

/* Of the five parameters; a record's limits and a reading's figures are multiples of the step. */
static const struct parameter grid[TS_PARAMETER__COUNT] = {
	{0, 30, 0.5}, {0, 25, 0.5}, {4, 10, 0.1}, {8, 36, 0.5}, {0, 20, 0.25}};

struct animal {
	struct ts_species species;
	const char *grades[3 * TS_PARAMETER__COUNT][2];
};

struct scene {
	struct animal animal;
	struct ts_reading readings[READINGS_MOST];
	struct ts_water water;
	struct ts_keeping keeping;
};

static const char *any_grade(struct random *r)
{
	static const char *const grades[] = {
		"Nobody 2000 (invented)", "practice", "derived", "memory"};

	return grades[any_below(r, 4)];
}

static struct ts_envelope *envelope(struct ts_envelopes *e, int p)
{
	struct ts_envelope *const all[] = {
		&e->gh_dh, &e->kh_dh, &e->ph, &e->temp_c, &e->salinity_g_l};

	return all[p];
}

static struct ts_envelope any_envelope(struct random *r, int p, const char **grades)
{
	const struct parameter *g = &grid[p];
	double low = any_in(r, g->low, g->high, g->step);
	double high = any_in(r, low, g->high, g->step);
	struct ts_envelope e = {{low, high}, {(double)NAN, (double)NAN}, {grades, 2}, NULL};

	grades[0] = any_grade(r);
	grades[1] = any_grade(r);
	if (any_percent(r, 80)) {
		e.preferred.low = any_in(r, low, high, g->step);
		e.preferred.high = any_in(r, e.preferred.low, high, g->step);
	}
	return e;
}

static void any_envelopes(
	struct random *r, struct ts_envelopes *e, const char *(*grades)[2], const unsigned *percent)
{
	const struct ts_range none = {(double)NAN, (double)NAN};

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (any_percent(r, percent[p]))
			*envelope(e, p) = any_envelope(r, p, grades[p]);
		else
			*envelope(e, p) = (struct ts_envelope){none, none, {NULL, 0}, NULL};
	}
}

static void any_animal(struct random *r, struct animal *a)
{
	static const unsigned usual[] = {100, 30, 100, 100, 15}, other[] = {30, 15, 30, 30, 5};

	a->species = (struct ts_species){.species = "Exempla fortuita",
		.home_water = (int)any_below(r, TS_HOME__COUNT),
		.kind = (int)any_below(r, 5),
		.adult_length_cm = any_in(r, 1, 40, 0.5)};
	any_envelopes(r, &a->species.water.usual, a->grades, usual);
	any_envelopes(r, &a->species.water.wild, a->grades + TS_PARAMETER__COUNT, other);
	any_envelopes(r, &a->species.water.breeding, a->grades + 2 * TS_PARAMETER__COUNT, other);
}

/* Around a figure, `half` to either side, never below what the quantity can be. */
static struct ts_measure around(int p, double value, double half)
{
	return (struct ts_measure){value, fmax(p == TS_TEMPERATURE ? -50 : 0, value - half),
		p == TS_PH ? fmin(14, value + half) : value + half, TS_MEASURE_DOUBT};
}

static struct ts_measure any_measure(struct random *r, int p)
{
	const struct parameter *g = &grid[p];
	double low = any_in(r, g->low, g->high, g->step);
	double high = any_in(r, low, g->high, g->step);

	switch (any_below(r, 8)) {
	case 0:
		return (struct ts_measure){0};
	case 1:
		return (struct ts_measure){(low + high) / 2, low, high, TS_MEASURE_RANGE};
	case 2:
		return around(p, low, any_in(r, 0, 5, g->step));
	case 3:
		return (struct ts_measure){high, 0, high, TS_MEASURE_BELOW};
	case 4:
		return (struct ts_measure){low, low, (double)INFINITY, TS_MEASURE_ABOVE};
	default:
		return (struct ts_measure){low, low, low, TS_MEASURE_VALUE};
	}
}

static struct ts_measure any_poison(struct random *r, double most)
{
	double value = any_in(r, 0, most, most / 50);

	return any_percent(r, 85) ? (struct ts_measure){0}
				  : (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

static struct ts_reading any_reading(struct random *r)
{
	struct ts_reading one = {.method = (int)any_below(r, 6)};

	one.gh_dh = any_measure(r, TS_GH);
	one.kh_dh = any_measure(r, TS_KH);
	one.ph = any_measure(r, TS_PH);
	one.temp_c = any_measure(r, TS_TEMPERATURE);
	if (any_percent(r, 10))
		one.salinity_g_l = any_measure(r, TS_SALINITY);
	one.tan_mg_l = any_poison(r, 2);
	one.no2_mg_l = any_poison(r, 2);
	one.no3_mg_l = any_poison(r, 200);
	one.cu_mg_l = any_poison(r, 0.1);
	return one;
}

static void any_scene(struct random *r, struct scene *s)
{
	any_animal(r, &s->animal);
	s->water = (struct ts_water){.kind = (int)any_below(r, 6),
		.softened = any_percent(r, 3),
		.readings = s->readings,
		.reading_count = 1 + any_below(r, READINGS_MOST)};
	for (size_t i = 0; i < READINGS_MOST; i++)
		s->readings[i] = any_reading(r);
	s->keeping = (struct ts_keeping){.wild = any_percent(r, 25),
		.breeding = any_percent(r, 25),
		.fresh = any_percent(r, 30),
		.temperature = any_measure(r, TS_TEMPERATURE)};
}

static struct ts_match answer(const struct scene *s)
{
	struct ts_profile profile;
	struct ts_match m;

	ts_profile_make(&s->water, &s->keeping, NULL, -1, &profile);
	ts_match_species(&s->animal.species, &profile, &s->keeping, NULL, &m);
	return m;
}

/* Readings of which not all can be right. */
static bool contradictory(const struct scene *s)
{
	struct ts_profile profile;

	ts_profile_make(&s->water, &s->keeping, NULL, -1, &profile);
	return profile.unusual & TS_UNUSUAL__CONTRADICTIONS;
}

static void test_every_figure_of_an_answer__is_a_number_or_said_to_be_unknown(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 1, 3000);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_match m;

		random_case(&r, i);
		any_scene(&r, &s);
		m = answer(&s);
		CLAIM(&r, m.verdict < TS_VERDICT__COUNT);
		CLAIM(&r, isnan(m.fit) || (m.fit >= 0 && m.fit <= 1));
		for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
			const struct ts_parameter_fit *f = &m.at[p];

			CLAIM(&r, f->known || isnan(f->suitability));
			CLAIM(&r, !f->known || (f->suitability >= 0 && f->suitability <= 1));
			CLAIM(&r, !f->known || (f->share >= 0 && f->share <= 1));
			CLAIM(&r, !f->known || (isfinite(f->reading) && isfinite(f->outside_by)));
			CLAIM(&r, !f->known || isfinite(f->uncomfortable_by));
			CLAIM(&r, !f->known || (isfinite(f->tolerated.low) &&
						       isfinite(f->tolerated.high)));
		}
	}
}

static void test_a_wider_tolerated_range__never_worsens_a_verdict(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 2, 3000);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_match before, after;
		struct ts_envelopes *all[3];
		int p;

		random_case(&r, i);
		any_scene(&r, &s);
		before = answer(&s);
		all[0] = &s.animal.species.water.usual;
		all[1] = &s.animal.species.water.wild;
		all[2] = &s.animal.species.water.breeding;
		p = (int)any_below(&r, TS_PARAMETER__COUNT);
		for (int k = 0; k < 3; k++) {
			struct ts_range *t = &envelope(all[k], p)->tolerated;

			if (isnan(t->low))
				continue;
			t->low = fmax(
				fmin(grid[p].low, t->low), t->low - any_in(&r, 0, 3, grid[p].step));
			t->high += any_in(&r, 0, 3, grid[p].step);
		}
		after = answer(&s);
		CLAIM(&r, after.verdict <= before.verdict);
	}
}

/* A no stays no or becomes unsure, unsure stays so, a yes never becomes firmer. */
static bool no_firmer(enum ts_verdict sharp, enum ts_verdict blurred)
{
	return blurred == TS_UNSURE || blurred == sharp ||
	       (sharp == TS_SUITS && blurred == TS_TOLERATES);
}

static void test_a_larger_doubt__never_makes_an_answer_firmer(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 3, 3000);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_measure *all[TS_PARAMETER__COUNT];
		enum ts_verdict sharp;
		bool contradicts;

		random_case(&r, i);
		any_scene(&r, &s);
		s.water.reading_count = 1;
		all[TS_GH] = &s.readings[0].gh_dh;
		all[TS_KH] = &s.readings[0].kh_dh;
		all[TS_PH] = &s.readings[0].ph;
		all[TS_TEMPERATURE] = &s.keeping.temperature;
		all[TS_SALINITY] = &s.readings[0].salinity_g_l;
		for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
			if (all[p]->kind != TS_MEASURE_NONE)
				*all[p] = around(p, all[p]->value, any_in(&r, 0, 2, grid[p].step));
		}
		sharp = answer(&s).verdict;
		contradicts = contradictory(&s);
		for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
			double half = all[p]->high - all[p]->value;

			if (all[p]->kind != TS_MEASURE_NONE && half > 0)
				*all[p] = around(
					p, all[p]->value, half + any_in(&r, 0, 20, grid[p].step));
		}
		/* Who cannot both be right says nothing; a doubt that lets them may exclude, and is
		 * no yes. */
		if (contradicts)
			CLAIM(&r, answer(&s).verdict >= TS_UNSURE);
		else
			CLAIM(&r, no_firmer(sharp, answer(&s).verdict));
	}
}

/* One more reading of the same supply, or a wider range that the animals live through. */
static void test_a_wider_exposure__never_betters_a_verdict(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 4, 3000);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_measure *all[TS_PARAMETER__COUNT];
		struct ts_profile profile[2];
		enum ts_verdict before;
		int p;

		random_case(&r, i);
		any_scene(&r, &s);
		s.water.reading_count = 1;
		s.keeping.fresh = false;
		s.readings[0].method = TS_METHOD_METER;
		all[TS_GH] = &s.readings[0].gh_dh;
		all[TS_KH] = &s.readings[0].kh_dh;
		all[TS_PH] = &s.readings[0].ph;
		all[TS_TEMPERATURE] = &s.keeping.temperature;
		all[TS_SALINITY] = &s.readings[0].salinity_g_l;
		p = (int)any_below(&r, TS_PARAMETER__COUNT);
		if (p == TS_SALINITY || all[p]->kind != TS_MEASURE_RANGE)
			continue;
		before = answer(&s).verdict;
		ts_profile_make(&s.water, &s.keeping, NULL, -1, &profile[0]);
		all[p]->low = fmax(grid[p].low, all[p]->low - any_in(&r, 0, 6, grid[p].step));
		all[p]->high += any_in(&r, 0, p == TS_PH ? 1 : 10, grid[p].step);
		all[p]->value = (all[p]->low + all[p]->high) / 2;
		ts_profile_make(&s.water, &s.keeping, NULL, -1, &profile[1]);
		/* Else its pH is another's, or computed for another temperature. */
		if (profile[0].unusual == profile[1].unusual && !profile[1].ph_computed)
			CLAIM(&r, answer(&s).verdict >= before);
	}
}

static void test_the_order_of_readings__changes_nothing(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 5, 2000);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_match a, b;
		struct ts_reading first;

		random_case(&r, i);
		any_scene(&r, &s);
		s.water.reading_count = READINGS_MOST;
		a = answer(&s);
		first = s.readings[0];
		memmove(s.readings, s.readings + 1, (READINGS_MOST - 1) * sizeof first);
		s.readings[READINGS_MOST - 1] = first;
		b = answer(&s);
		CLAIM(&r, a.verdict == b.verdict && a.limiting == b.limiting);
		CLAIM(&r, (isnan(a.fit) && isnan(b.fit)) || fabs(a.fit - b.fit) < 1e-9);
	}
}

/* A row of the quantity's units, any of them. */
static const struct ts_unit_row *any_unit(struct random *r, enum ts_quantity q)
{
	const struct ts_unit_row *unit;

	do
		unit = &ts_units[any_below(r, (unsigned)ts_units_count)];
	while (unit->quantity != q);
	return unit;
}

/* The figure with its doubt as somebody writes it who has that unit. */
static struct ts_measure written(
	enum ts_quantity q, const struct ts_unit_row *unit, double value, double half)
{
	char text[128];
	struct ts_measure m = {0};
	struct ts_scan scan;
	int len = snprintf(text, sizeof text, "%.9f +- %.9f %s",
		(value - unit->offset) / unit->factor, half / unit->factor, unit->spelling);

	if (!ts_scan_measure(q, text, (size_t)len, &m, &scan))
		fail_msg("%s: %s", text, ts_scan_says(scan.fault));
	return m;
}

/* Off the grid: a figure exactly at a limit may fall to either side by its last digit. */
static void test_the_unit_of_a_reading__changes_nothing(void **state)
{
	struct random r;
	unsigned count = random_open(&r, 6, 3000);

	(void)state;
	for (unsigned i = 0; i < count; i++) {
		struct scene s;
		struct ts_match a[2];
		double gh, kh, temp_c, half;

		random_case(&r, i);
		any_scene(&r, &s);
		gh = any_in(&r, 3, 30, 0.5) + 0.0137;
		kh = any_in(&r, 3, 25, 0.5) + 0.0171;
		temp_c = any_in(&r, 8, 36, 0.5) + 0.0193;
		half = any_in(&r, 0.5, 2, 0.5) + 0.0119;
		for (int k = 0; k < 2; k++) {
			s.readings[0].gh_dh = written(TS_Q_GH, any_unit(&r, TS_Q_GH), gh, half);
			s.readings[0].kh_dh = written(TS_Q_KH, any_unit(&r, TS_Q_KH), kh, half);
			s.keeping.temperature = written(
				TS_Q_TEMPERATURE, any_unit(&r, TS_Q_TEMPERATURE), temp_c, half);
			a[k] = answer(&s);
		}
		CLAIM(&r, a[0].verdict == a[1].verdict && a[0].limiting == a[1].limiting);
		CLAIM(&r, (isnan(a[0].fit) && isnan(a[1].fit)) || fabs(a[0].fit - a[1].fit) < 1e-6);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_figure_of_an_answer__is_a_number_or_said_to_be_unknown),
		cmocka_unit_test(test_a_wider_tolerated_range__never_worsens_a_verdict),
		cmocka_unit_test(test_a_larger_doubt__never_makes_an_answer_firmer),
		cmocka_unit_test(test_a_wider_exposure__never_betters_a_verdict),
		cmocka_unit_test(test_the_order_of_readings__changes_nothing),
		cmocka_unit_test(test_the_unit_of_a_reading__changes_nothing),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
