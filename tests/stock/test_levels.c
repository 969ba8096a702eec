/* SPDX-License-Identifier: Apache-2.0 */
/* Numbers and sexes in which species are proposed. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "model/shape.h"
#include "stock/levels.h"
#include "stock/rules.h"

#include <string.h>

static struct ts_species species(const char *sexes, double least, double comfortable)
{
	struct ts_species s = {0};

	s.group.least = least;
	s.group.comfortable = comfortable;
	while (strcmp(ts_words_sexes[s.group.sexes], sexes) != 0)
		s.group.sexes++;
	return s;
}

static void expect(const struct ts_level *l, unsigned males, unsigned females, unsigned either,
	bool comfortable)
{
	assert_int_equal(l->group.males, males);
	assert_int_equal(l->group.females, females);
	assert_int_equal(l->group.either, either);
	assert_int_equal(l->comfortable, comfortable);
}

static void test_levels__shoal_least_comfortable_half_again_twice(void **state)
{
	struct ts_species s = species("any", 8, 15);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	s.swims = TS_SWIMS_MIDDLE;
	assert_int_equal(ts_levels(&s, l), 4);
	expect(&l[0], 0, 0, 8, false);
	expect(&l[1], 0, 0, 15, true);
	expect(&l[2], 0, 0, 23, true);
	expect(&l[3], 0, 0, 30, true); /* more is for no home, unless comfort asks for it */
	s.group.least = 6;
	s.group.comfortable = 9;
	assert_int_equal(ts_levels(&s, l), 5);
	expect(&l[2], 0, 0, 14, true);
	expect(&l[3], 0, 0, 18, true);
	expect(&l[4], 0, 0, 27, true);
	assert_true(l[4].crowd && !l[3].crowd);
	s.swims = TS_SWIMS_BOTTOM; /* the floor of a large tank is hardly larger */
	assert_int_equal(ts_levels(&s, l), 4);
	s.group.comfortable = 36;
	assert_int_equal(ts_levels(&s, l), 4);
	expect(&l[3], 0, 0, 72, true);
}

static void test_levels__loner_and_pair_have_one(void **state)
{
	struct ts_species alone = species("alone", 1, 2), pair = species("pair", 1, 6);
	struct ts_species many = species("alone", 3, 6), many_pairs = species("pair", 4, 6);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	assert_int_equal(ts_levels(&alone, l), 1);
	expect(&l[0], 0, 0, 1, true);
	assert_int_equal(ts_levels(&pair, l), 1);
	expect(&l[0], 1, 1, 0, true);
	assert_int_equal(
		ts_levels(&many, l), 1); /* alone is alone, whatever numbers stand beside it */
	expect(&l[0], 0, 0, 1, true);
	assert_int_equal(ts_levels(&many_pairs, l), 1);
	expect(&l[0], 1, 1, 0, true);
}

static void test_levels__single_fish_that_may_have_company(void **state)
{
	struct ts_species s = species("any", 1, 1), two = species("any", 1, 2);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	assert_int_equal(ts_levels(&s, l), 1);
	expect(&l[0], 0, 0, 1, true);
	assert_int_equal(ts_levels(&two, l), 2);
	expect(&l[1], 0, 0, 2, true);
}

static void test_levels__harem_one_male_but_several_in_a_crowd(void **state)
{
	struct ts_species dwarf = species("harem", 3, 4), lake = species("harem", 12, 18);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	assert_int_equal(ts_levels(&dwarf, l), 2);
	expect(&l[0], 1, 2, 0, true); /* a male with two females is settled */
	expect(&l[1], 1, 3, 0, true);
	assert_int_equal(ts_levels(&lake, l), 4); /* of 36 no more than 30 */
	expect(&l[3], 6, 24, 0, true);
	expect(&l[0], 3, 9, 0, false);
	dwarf.group.pair = 1; /* one female would be all that he has */
	assert_int_equal(ts_levels(&dwarf, l), 2);
	expect(&l[0], 1, 2, 0, true);
}

static void test_levels__more_females_than_males_in_every_number(void **state)
{
	struct ts_species s = species("more-females", 2, 4);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	assert_int_equal(ts_levels(&s, l), 2);
	expect(&l[0], 1, 1, 0, false);
	expect(&l[1], 1, 3, 0, true);
	s.group.least = 8;
	s.group.comfortable = 12;
	assert_true(ts_levels(&s, l) >= 3);
	expect(&l[1], 4, 8, 0, true);
	expect(&l[2], 6, 12, 0, true);
}

static void test_levels__livebearers_two_females_a_male(void **state)
{
	struct ts_species s = species("two-females", 4, 8);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	s.swims = TS_SWIMS_MIDDLE;
	assert_int_equal(ts_levels(&s, l), 5);
	for (int i = 0; i < 5; i++)
		assert_true(l[i].group.females >= 2 * l[i].group.males && l[i].group.males >= 1);
	assert_int_equal(ts_group_count(&l[1].group), 8);
	s.young_month = 25; /* males alone, so that nobody has to find homes for the young */
	assert_int_equal(ts_levels(&s, l), TS_LEVELS_MOST);
	expect(&l[4], 8, 0, 0, true);
	expect(&l[5], 12, 0, 0, true);
	expect(&l[6], 16, 0, 0, true);
	expect(&l[7], 24, 0, 0, true);
	assert_true(l[7].crowd && !l[6].crowd);
	s.group.pair = true; /* one female is no company for a male */
	assert_int_equal(ts_levels(&s, l), TS_LEVELS_MOST);
	s.adult_length_cm = 8; /* large males quarrel */
	assert_int_equal(ts_levels(&s, l), 4);
}

static void test_levels__one_male_only(void **state)
{
	struct ts_species s = species("one-male", 1, 6);
	struct ts_level l[TS_LEVELS_MOST];

	(void)state;
	assert_int_equal(ts_levels(&s, l), 2);
	expect(&l[0], 1, 0, 0, false);
	expect(&l[1], 1, 5, 0, true); /* one male bears no crowd */
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_levels__shoal_least_comfortable_half_again_twice),
		cmocka_unit_test(test_levels__loner_and_pair_have_one),
		cmocka_unit_test(test_levels__single_fish_that_may_have_company),
		cmocka_unit_test(test_levels__harem_one_male_but_several_in_a_crowd),
		cmocka_unit_test(test_levels__more_females_than_males_in_every_number),
		cmocka_unit_test(test_levels__livebearers_two_females_a_male),
		cmocka_unit_test(test_levels__one_male_only),
	};

	return cmocka_run_group_tests_name("levels", tests, NULL, NULL);
}
