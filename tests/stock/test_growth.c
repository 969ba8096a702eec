/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Young and sizes after half a year.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../given.h"
#include "stock/growth.h"

static const struct ts_species bearer = {
	.species = "Exempla vivipara", .adult_length_cm = 4, .young_month = 20};
static const struct ts_species still = {.species = "Exempla mollis", .adult_length_cm = 16};

static struct ts_growth of(const struct ts_group *group, double months)
{
	struct ts_growth g;

	ts_growth_of(group, months, NULL, &g);
	return g;
}

static void test_young__of_the_mothers_where_males_are(void **state)
{
	struct ts_growth g =
		of(&(struct ts_group){.species = &bearer, .males = 2, .females = 4}, 6);

	(void)state;
	assert_true(g.breeds);
	assert_int_equal(g.now, 6);
	/* 4 mothers, 20 a month, 6 months, a fifth of them. */
	assert_true(fabs(g.then.value - (6 + 96)) < 1e-9);
	assert_true(g.then.low < g.then.value && g.then.value < g.then.high);
	/* Of unknown sex half are mothers. */
	g = of(&(struct ts_group){.species = &bearer, .either = 8}, 6);
	assert_true(fabs(g.then.value - (8 + 96)) < 1e-9);
}

static void test_no_young__of_one_sex_or_of_those_that_bear_none(void **state)
{
	const struct ts_group groups[] = {{.species = &bearer, .males = 6},
		{.species = &bearer, .females = 6}, {.species = &bearer, .either = 1},
		{.species = &still, .either = 10}};

	(void)state;
	for (size_t i = 0; i < sizeof groups / sizeof *groups; i++) {
		struct ts_growth g = of(&groups[i], 6);

		assert_false(g.breeds);
		assert_true(g.then.low == g.now && g.then.value == g.now && g.then.high == g.now);
	}
}

static void test_sizes__come_near_to_the_adult_and_never_beyond(void **state)
{
	struct ts_group small = {.species = &still, .either = 2, .size_cm = 4};
	struct ts_growth half = of(&small, 6), whole = of(&small, 12), later;

	(void)state;
	assert_true(half.size_then_cm > 4 && half.size_then_cm < whole.size_then_cm);
	assert_true(whole.size_then_cm < 16);
	later = of(&small, whole.grown_months);
	assert_true(fabs(later.size_then_cm - 0.95 * 16) < 1e-6);
	/* A small kind is grown sooner than a large one of the same share of its length. */
	assert_true(of(&(struct ts_group){.species = &bearer, .either = 1, .size_cm = 1}, 6)
			    .grown_months < half.grown_months);
}

static void test_sizes__grown_or_not_known(void **state)
{
	struct ts_growth g =
		of(&(struct ts_group){.species = &still, .either = 1, .size_cm = 15.5}, 6);

	(void)state;
	assert_true(g.grown_months == 0);
	assert_true(g.size_then_cm == 15.5);
	g = of(&(struct ts_group){.species = &still, .either = 1}, 6);
	assert_true(isnan(g.size_cm) && isnan(g.grown_months));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_young__of_the_mothers_where_males_are),
		cmocka_unit_test(test_no_young__of_one_sex_or_of_those_that_bear_none),
		cmocka_unit_test(test_sizes__come_near_to_the_adult_and_never_beyond),
		cmocka_unit_test(test_sizes__grown_or_not_known),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
