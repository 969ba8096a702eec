/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who may be named unasked, caution by caution, and that a list does not begin with the others.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <tapshoal/match.h>

static bool advised(int kind, unsigned cautions)
{
	struct ts_species s = {.kind = kind, .cautions = cautions};

	return ts_match_advised_unasked(&s);
}

/* Common practice, no source. */
static void test_each_caution__named_unasked_or_not(void **state)
{
	static const bool named[TS_CAUTION__COUNT] = {
		[TS_CAUTION_BITES] = true,
		[TS_CAUTION_SPINY_HANDS] = true,
		[TS_CAUTION_NEEDS_SALT] = true,
		[TS_CAUTION_ESCAPES] = true,
		[TS_CAUTION_BREEDS_UNASKED] = true,
		[TS_CAUTION_WILD_CAUGHT] = true,
		[TS_CAUTION_SHORT_LIVED] = true,
		[TS_CAUTION_OFTEN_SICK] = true,
	};

	(void)state;
	assert_true(advised(TS_ANIMAL_FISH, 0));
	for (int i = 0; i < TS_CAUTION__COUNT; i++) {
		assert_int_equal(advised(TS_ANIMAL_FISH, 1u << i), named[i]);
		assert_int_equal(
			advised(TS_ANIMAL_FISH, 1u << i | 1u << TS_CAUTION_SHORT_LIVED), named[i]);
	}
}

static void test_young_unasked__of_a_snail_but_not_of_a_fish_keep_it_from_being_named(void **state)
{
	(void)state;
	assert_true(advised(TS_ANIMAL_SHRIMP, 1u << TS_CAUTION_BREEDS_UNASKED));
	assert_false(advised(TS_ANIMAL_SNAIL, 1u << TS_CAUTION_BREEDS_UNASKED));
	assert_true(advised(TS_ANIMAL_SNAIL, 1u << TS_CAUTION_ESCAPES));
}

static void test_sort__what_is_sold_goes_before_distance(void **state)
{
	struct ts_species common = {.species = "Exempla d", .sold = TS_SOLD_EVERYWHERE},
			  rare = {.species = "Exempla b", .sold = TS_SOLD_RARELY},
			  far = {.species = "Exempla e", .sold = TS_SOLD_EVERYWHERE};
	struct ts_match m[] = {{.species = &rare, .distance = 5},
		{.species = &common, .distance = 1}, {.species = &far, .distance = 2}};

	(void)state;
	ts_match_sort(m, 3);
	assert_ptr_equal(m[0].species, &far);
	assert_ptr_equal(m[1].species, &common);
	assert_ptr_equal(m[2].species, &rare);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_each_caution__named_unasked_or_not),
		cmocka_unit_test(
			test_young_unasked__of_a_snail_but_not_of_a_fish_keep_it_from_being_named),
		cmocka_unit_test(test_sort__what_is_sold_goes_before_distance),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
