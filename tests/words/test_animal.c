/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is said of an animal: every caution and every way of feeding has a sentence, dangers stand
 * before the rest, and figures are those of the record.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "model/shape.h"
#include "words/animal.h"

static struct ts_species made_up(void)
{
	struct ts_species s = {.species = "Exempla una",
		.adult_length_cm = 60,
		.lives_years = {3, 5},
		.needs = {.tank_length_cm = 300}};

	s.water.usual.salinity_g_l.tolerated = (struct ts_range){2, 20};
	return s;
}

static const char *said(struct ts_text *text, const struct ts_species *s, unsigned kinds)
{
	ts_text_drop(text);
	ts_text_open(text, NULL);
	ts_say_cautions(text, s, kinds);
	return ts_text_get(text);
}

static void test_cautions__each_has_a_sentence_of_one_kind(void **state)
{
	struct ts_text text;

	(void)state;
	ts_text_open(&text, NULL);
	for (unsigned i = 0; ts_words_cautions[i]; i++) {
		struct ts_species s = made_up();
		unsigned kinds;

		s.cautions = 1u << i;
		kinds = ts_caution_kinds(&s);
		assert_true(kinds && !(kinds & (kinds - 1)));
		assert_true(strlen(said(&text, &s, kinds)) > 20);
		assert_string_equal(said(&text, &s, TS_CAUTIONS_ALL & ~kinds), "");
		assert_null(strchr(said(&text, &s, kinds), '{'));
	}
	ts_text_drop(&text);
}

static void test_cautions__order_and_figures(void **state)
{
	struct ts_species s = made_up();
	struct ts_text text;

	(void)state;
	ts_text_open(&text, NULL);
	s.cautions = 1u << TS_CAUTION_GROWS_TOO_BIG | 1u << TS_CAUTION_NO_HOME_SUITS |
		     1u << TS_CAUTION_RESTRICTED | 1u << TS_CAUTION_VENOMOUS |
		     1u << TS_CAUTION_SHORT_LIVED;
	assert_string_equal(said(&text, &s, TS_CAUTIONS_SECOND_LINE),
		"its sting needs a hospital: not for a home tank; forbidden or licensed in some "
		"countries: ask your authority before you buy; grown it is 60 cm and needs 300 cm "
		"of length: hardly any home has that");
	assert_string_equal(said(&text, &s, TS_CAUTIONS_KNOW),
		"lives 3 to 5 years: a grown one is old already");
	s.cautions = 1u << TS_CAUTION_NEEDS_SALT;
	assert_string_equal(
		said(&text, &s, TS_CAUTIONS_ALL), "lives in salted water for good: 2..20 g/L");
	s.cautions = 0;
	assert_string_equal(said(&text, &s, TS_CAUTIONS_ALL), "");
	s.needs.land = 1;
	assert_string_equal(said(&text, &s, TS_CAUTIONS_NEEDS),
		"needs land above the water: in a filled tank it drowns or wastes away");
	ts_text_drop(&text);
}

static void test_feeding__every_word_has_a_sentence_of_its_own(void **state)
{
	char seen[32][160];
	int count = 0;

	(void)state;
	for (; ts_words_feeding[count]; count++) {
		struct ts_species s = made_up();
		struct ts_text text;

		s.feeding = count;
		ts_text_open(&text, NULL);
		ts_say_feeding(&text, &s);
		assert_true(text.len > 10 && text.len < sizeof seen[0]);
		strcpy(seen[count], ts_text_get(&text));
		for (int i = 0; i < count; i++)
			assert_string_not_equal(seen[i], seen[count]);
		ts_text_drop(&text);
	}
	assert_int_equal(count, 13);
}

static void test_temper__towards_whom(void **state)
{
	static const struct {
		int to_others, when, own, own_when, nips;
		unsigned temper;
		const char *says;
	} rows[] = {
		{0, 0, 0, 0, 0, 0, "leaves others alone"},
		{0, 0, 1, 1, 0, 0, "leaves others alone, chases its own kind when it breeds"},
		{1, 1, 0, 0, 0, 1 << 4, "chases those that live at the bottom when it breeds"},
		{2, 0, 2, 0, 0, 1, "injures all others, injures its own kind"},
		{1, 2, 0, 0, 2, 1 << 1 | 1 << 2 | 1 << 3,
			"chases fish that look like it, smaller ones and slow and long-finned ones "
			"where room is short, bites fins"},
		{1, 0, 0, 0, 1, 0, "chases all others, bites fins at times"},
	};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_species s = made_up();
		struct ts_text text;

		s.to_others = rows[i].to_others;
		s.others_when = rows[i].when;
		s.to_own_kind = rows[i].own;
		s.own_kind_when = rows[i].own_when;
		s.temper = rows[i].temper;
		s.nips = rows[i].nips;
		ts_text_open(&text, NULL);
		ts_say_temper(&text, &s);
		assert_string_equal(ts_text_get(&text), rows[i].says);
		ts_text_drop(&text);
	}
}

static void test_hunts__and_lives(void **state)
{
	struct ts_species s = made_up();
	struct ts_text text;

	(void)state;
	s.hunts = 4;
	s.preys_on = 3;
	ts_text_open(&text, NULL);
	ts_say_hunts(&text, &s);
	assert_string_equal(
		ts_text_get(&text), "eats fish that fit its mouth, eats shrimps, eats snails");
	ts_text_drop(&text);
	s.lives_years = (struct ts_range){1, 1};
	ts_text_open(&text, NULL);
	ts_say_lives(&text, &s);
	assert_string_equal(ts_text_get(&text), "1 year");
	ts_text_drop(&text);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_cautions__each_has_a_sentence_of_one_kind),
		cmocka_unit_test(test_cautions__order_and_figures),
		cmocka_unit_test(test_feeding__every_word_has_a_sentence_of_its_own),
		cmocka_unit_test(test_temper__towards_whom),
		cmocka_unit_test(test_hunts__and_lives),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
