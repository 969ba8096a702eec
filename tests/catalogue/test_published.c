/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The shipped records against what is published of each: how far the two overlap, and what share of
 * the ranges a publication stands for. The overlap is the shared length over the published length
 * (at least 4 dH, 0.5 pH); a lone figure, or one with an open low end, is overlapped when it is
 * contained. test_records.c has the rules that every single record keeps.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <tapshoal/catalogue.h>
#include <tapshoal/stock.h>

enum { MOST = 4096, FISH = 0 };

struct state {
	struct ts_catalogue catalogue;
	double overlaps[MOST];
	size_t count, lone, low_with_why, low_without;
};

static bool lone(const struct ts_range *published)
{
	return !isfinite(published->low) || published->low == published->high;
}

static double overlap(const struct ts_range *ours, const struct ts_range *published, double least)
{
	double shared = fmin(ours->high, published->high) - fmax(ours->low, published->low);

	if (lone(published))
		return ours->low <= published->high && published->high <= ours->high ? 1 : 0;
	return fmax(0, shared) / fmax(published->high - published->low, least);
}

static void add(struct state *s, const struct ts_species *species, const char *parameter,
	const struct ts_envelope *ours, const struct ts_range *published, double least)
{
	double share;

	if (isnan(published->high))
		return;
	share = overlap(&ours->tolerated, published, least);
	assert_true(s->count < MOST);
	s->overlaps[s->count++] = share;
	s->lone += lone(published);
	if (share >= 0.3)
		return;
	if (ours->why) {
		s->low_with_why++;
		return;
	}
	s->low_without++;
	print_message("# %s: %s overlaps what is published by %.2f and says no why\n",
		species->species, parameter, share);
}

static int by_size(const void *a, const void *b)
{
	double x = *(const double *)a, y = *(const double *)b;

	return (x > y) - (x < y);
}

static void test_overlap__low_ones_say_why(void **state)
{
	struct state *s = *state;

	for (size_t i = 0; i < s->catalogue.count; i++) {
		const struct ts_species *one = s->catalogue.items[i];

		if (!one->water.published.source)
			continue;
		add(s, one, "pH", &one->water.usual.ph, &one->water.published.ph, 0.5);
		add(s, one, "GH", &one->water.usual.gh_dh, &one->water.published.gh_dh, 4);
	}
	assert_true(s->count > 300);
	print_message("# under 0.3: %zu, each with its why\n", s->low_with_why);
	assert_int_equal(s->low_without, 0);
}

static void test_overlap__median_is_at_least_half(void **state)
{
	struct state *s = *state;
	double median;

	qsort(s->overlaps, s->count, sizeof *s->overlaps, by_size);
	median = s->overlaps[s->count / 2];
	print_message("# median overlap %.2f of %zu ranges, %zu of them a lone figure\n", median,
		s->count, s->lone);
	assert_true(median >= 0.5);
}

static bool from_publication(const struct ts_envelope *e)
{
	return e->source.count && strcmp(e->source.items[0], "practice") != 0 &&
	       strcmp(e->source.items[0], "derived") != 0 &&
	       strcmp(e->source.items[0], "memory") != 0;
}

static void test_shares__enough_is_published(void **state)
{
	struct state *s = *state;
	size_t fish = 0, ph = 0, gh = 0, temperature = 0;

	for (size_t i = 0; i < s->catalogue.count; i++) {
		const struct ts_species *one = s->catalogue.items[i];

		if (one->kind != FISH)
			continue;
		fish++;
		ph += from_publication(&one->water.usual.ph);
		gh += from_publication(&one->water.usual.gh_dh);
		temperature += from_publication(&one->water.usual.temp_c);
	}
	print_message("# %zu fish, tolerated range published: pH %zu, GH %zu, temperature %zu\n",
		fish, ph, gh, temperature);
	assert_true(fish >= 280);
	assert_true(100 * ph >= 55 * fish);
	assert_true(100 * gh >= 45 * fish);
	assert_true(100 * temperature >= 50 * fish);
}

/* A range that is graded by a publication lies near it; nearer than a limit without a reason. */
static void test_grades__published_ones_are_near(void **state)
{
	struct state *s = *state;
	size_t graded = 0;

	for (size_t i = 0; i < s->catalogue.count; i++) {
		const struct ts_species *one = s->catalogue.items[i];
		const struct ts_published *p = &one->water.published;
		const struct ts_range *t = &one->water.usual.temp_c.tolerated;

		if (!p->temp_source || !from_publication(&one->water.usual.temp_c))
			continue;
		graded++;
		if (fabs(t->low - p->temp_c.low) > 2 || fabs(t->high - p->temp_c.high) > 2)
			fail_msg("%s: temperature is graded by a publication it is far from",
				one->species);
	}
	print_message("# %zu temperatures within 2 C of their publication\n", graded);
	assert_true(graded > 200);
}

/* What the shape of a body says of mass, beside what was measured of that species. */
static void test_mass__by_shape_is_near_what_was_measured(void **state)
{
	struct state *s = *state;
	size_t measured = 0, within = 0;

	for (size_t i = 0; i < s->catalogue.count; i++) {
		struct ts_species by_shape = *s->catalogue.items[i];
		double ratio, doubt;

		if (!(by_shape.weight.factor > 0))
			continue;
		ratio = ts_mass_g(&by_shape, by_shape.adult_length_cm);
		by_shape.weight.factor = 0;
		ratio /= ts_mass_g(&by_shape, by_shape.adult_length_cm);
		doubt = ts_mass_doubt(&by_shape);
		measured++;
		within += ratio < doubt && ratio > 1 / doubt;
		if (ratio > 6 || ratio < 1.0 / 6)
			fail_msg(
				"%s: weighs %g times what its shape says", by_shape.species, ratio);
	}
	print_message("# %zu species were weighed, %zu within the doubt of their shape\n", measured,
		within);
	assert_true(measured >= 50);
	assert_true(100 * within >= 60 * measured);
}

static int open_records(void **state)
{
	static struct state s;

	ts_catalogue_open(&s.catalogue, NULL);
	*state = &s;
	return ts_catalogue_add_folder(&s.catalogue, TS_SPECIES_DIR, NULL) == TS_OK ? 0 : -1;
}

static int close_records(void **state)
{
	struct state *s = *state;

	ts_catalogue_close(&s->catalogue);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_overlap__low_ones_say_why),
		cmocka_unit_test(test_overlap__median_is_at_least_half),
		cmocka_unit_test(test_shares__enough_is_published),
		cmocka_unit_test(test_grades__published_ones_are_near),
		cmocka_unit_test(test_mass__by_shape_is_near_what_was_measured),
	};

	return cmocka_run_group_tests_name("published", tests, open_records, close_records);
}
