/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Salt and hardness of every shipped record that says how much salt the animal bears: a litre of
 * sea water of a g/L holds 10 dH, so the ends of GH stand for what the water has beside its salt
 * (docs/design.md, "Salt and hardness"). Too soft is told by all the hardness there is.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>

#include <tapshoal/match.h>

#include "../shipped.h"

/* Of a g/L, and the salt of fresh water (src/water/contents.c, the practice table). */
#define SEA_GH_DH 10.1
#define FRESH_G_L 0.5

static struct ts_measure measure(double value)
{
	if (isnan(value))
		return (struct ts_measure){.kind = TS_MEASURE_NONE};
	return (struct ts_measure){
		.kind = TS_MEASURE_VALUE, .value = value, .low = value, .high = value};
}

/* The GH of the animal in such water; salinity NAN: not read. */
static struct ts_parameter_fit gh_of(const struct ts_species *s, double gh_dh, double salinity_g_l)
{
	struct ts_reading reading = {.method = TS_METHOD_LABORATORY};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	const struct ts_keeping keeping = {0};
	struct ts_profile profile;
	struct ts_match match;

	reading.gh_dh = measure(gh_dh);
	reading.salinity_g_l = measure(salinity_g_l);
	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	ts_match_species(s, &profile, &keeping, NULL, &match);
	return match.at[TS_GH];
}

static bool says_its_salt(const struct ts_species *s)
{
	return !isnan(s->water.usual.salinity_g_l.tolerated.low);
}

/* A salt content that it likes, or bears, clear of fresh water. */
static double salt_for(const struct ts_species *s)
{
	const struct ts_envelope *salt = &s->water.usual.salinity_g_l;
	double liked = (salt->preferred.low + salt->preferred.high) / 2;

	return fmin(fmax(liked, 2), salt->tolerated.high);
}

static double own_gh(const struct ts_species *s)
{
	return (s->water.usual.gh_dh.preferred.low + s->water.usual.gh_dh.preferred.high) / 2;
}

static void test_its_own_hardness_and_its_own_salt__suit_it(void **state)
{
	size_t said = 0, passed = 0;

	(void)state;
	for (size_t i = 0; i < catalogue.count; i++) {
		const struct ts_species *s = catalogue.items[i];
		double salt = says_its_salt(s) ? salt_for(s) : 0, gh;

		if (!says_its_salt(s))
			continue;
		gh = own_gh(s) + SEA_GH_DH * (salt - FRESH_G_L);
		if (gh_of(s, gh, salt).verdict != TS_SUITS)
			fail_msg("%s: GH %.1f at %.1f g/L", s->species, gh, salt);
		said++;
		passed += gh > s->water.usual.gh_dh.preferred.high;
	}
	printf("# %zu records say their salt, it passes the GH they like of %zu\n", said, passed);
	assert_true(said >= 49 && passed >= 30);
}

/* What is not from the salt is too much as in fresh water: salt excuses no more than its own. */
static void test_too_hard_beside_the_salt__is_told(void **state)
{
	(void)state;
	for (size_t i = 0; i < catalogue.count; i++) {
		const struct ts_species *s = catalogue.items[i];
		double most = s->water.usual.gh_dh.tolerated.high, salt;

		if (!says_its_salt(s))
			continue;
		salt = salt_for(s);
		/* A fifth more, as salts for tanks differ, and what the reading is doubted by. */
		if (gh_of(s, 1.05 * (most + 5 + 1.2 * SEA_GH_DH * salt), salt).verdict == TS_SUITS)
			fail_msg("%s: GH %.1f above its salt", s->species, most + 5);
		if (gh_of(s, 1.05 * (most + 5), (double)NAN).verdict == TS_SUITS)
			fail_msg("%s: GH %.1f without salt", s->species, most + 5);
	}
}

/* Salt of less hardness than the sea's is no help to who finds it too soft. */
static void test_too_soft__is_told_by_all_of_it(void **state)
{
	(void)state;
	for (size_t i = 0; i < catalogue.count; i++) {
		const struct ts_species *s = catalogue.items[i];
		double least = s->water.usual.gh_dh.tolerated.low;

		if (!says_its_salt(s) || least < 2)
			continue;
		if (gh_of(s, least / 2, salt_for(s)).verdict == TS_SUITS)
			fail_msg("%s: GH %.1f", s->species, least / 2);
		if (gh_of(s, own_gh(s), salt_for(s)).verdict != TS_SUITS)
			fail_msg("%s: GH %.1f in all", s->species, own_gh(s));
	}
}

/* Of an animal of fresh water nothing is taken off: what of its hardness is salt is too much salt.
 */
static void test_who_says_no_salt__is_judged_by_all_of_it(void **state)
{
	size_t asked = 0;

	(void)state;
	for (size_t i = 0; i < catalogue.count; i++) {
		const struct ts_species *s = catalogue.items[i];
		double gh = s->water.usual.gh_dh.tolerated.high + 8;

		if (says_its_salt(s))
			continue;
		assert_true(gh_of(s, gh, 1.5).verdict == gh_of(s, gh, (double)NAN).verdict);
		asked++;
	}
	assert_true(asked > 500);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_its_own_hardness_and_its_own_salt__suit_it),
		cmocka_unit_test(test_too_hard_beside_the_salt__is_told),
		cmocka_unit_test(test_too_soft__is_told_by_all_of_it),
		cmocka_unit_test(test_who_says_no_salt__is_judged_by_all_of_it),
	};

	return cmocka_run_group_tests_name("brackish", tests, shipped_open, shipped_close);
}
