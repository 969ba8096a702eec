/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What happened, as keepers write it: every phrase of the table alone and with an amount, amounts
 * by their unit, and what is refused.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "base/arena.h"
#include "model/shape.h"
#include "records/happened.h"

static const struct {
	const char *words;
	int what;
	double litres, share, count, hours;
} said[] = {
	{"changed 40 L", TS_HAPPENED_CHANGED, 40, 0, 0, 0},
	{"Changed 12.5L with rain", TS_HAPPENED_CHANGED, 12.5, 0, 0, 0},
	{"water change 30%", TS_HAPPENED_CHANGED, 0, 30, 0, 0},
	{"30 % water change, 25 L", TS_HAPPENED_CHANGED, 25, 30, 0, 0},
	{"topped up 3 L", TS_HAPPENED_TOPPED_UP, 3, 0, 0, 0},
	{"2 neons died", TS_HAPPENED_DIED, 0, 0, 2, 0},
	{"a neon died", TS_HAPPENED_DIED, 0, 0, 0, 0},
	{"found 1 dead shrimp", TS_HAPPENED_DIED, 0, 0, 1, 0},
	{"added 6 neon tetras and 2 snails", TS_HAPPENED_ADDED, 0, 0, 6, 0},
	{"power cut 6 h", TS_HAPPENED_POWER_CUT, 0, 0, 0, 6},
	{"power-cut of 2 hours", TS_HAPPENED_POWER_CUT, 0, 0, 0, 2},
	{"away 10 days", TS_HAPPENED_AWAY, 0, 0, 0, 240},
	{"cleaned the filter", TS_HAPPENED_CLEANED, 0, 0, 0, 0},
	{"remark: the lamp is new", TS_HAPPENED_REMARK, 0, 0, 0, 0},
};

static const char *const refused[] = {"", " ", "GH14", "painted the stand", "changed the lamp",
	"changed 3", "unfed", "diedrich", "40 L"};

static bool reads(const char *words, struct ts_tank_event *ret, char error[200])
{
	static struct ts_arena arena;
	struct ts_text text;
	bool ok;

	ts_arena_open(&arena, NULL);
	ts_text_open(&text, NULL);
	ok = ts_happened_words(&arena, words, ret, &text);
	snprintf(error, 200, "%s", ts_text_get(&text));
	if (ok)
		assert_string_equal(ret->says, words);
	ts_text_drop(&text);
	ts_arena_drop(&arena);
	return ok;
}

static void test_happened__is_what_was_said(void **state)
{
	struct ts_tank_event e;
	char error[200];

	(void)state;
	for (size_t i = 0; i < sizeof said / sizeof *said; i++) {
		if (!reads(said[i].words, &e, error))
			fail_msg("%s: %s", said[i].words, error);
		if (e.what != said[i].what || e.litres != said[i].litres ||
			e.share_percent != said[i].share || e.count != said[i].count ||
			e.lasted_h != said[i].hours)
			fail_msg("%s: %s, %g L, %g %%, %g, %g h", said[i].words,
				ts_words_happened[e.what], e.litres, e.share_percent, e.count,
				e.lasted_h);
	}
}

static void test_happened__every_phrase_means_what_its_row_says(void **state)
{
	struct ts_tank_event e;
	char error[200], words[80];

	(void)state;
	for (const struct ts_happened_phrase *p = ts_happened_phrases; p->text; p++) {
		assert_int_equal(reads(p->text, &e, error), !p->needs);
		snprintf(words, sizeof words, "today %s 20 L.", p->text);
		assert_true(reads(words, &e, error));
		assert_int_equal(e.what, p->what);
		assert_true(e.litres == 20);
	}
}

static void test_happened__refuses_what_no_phrase_tells(void **state)
{
	struct ts_tank_event e = {.what = -1};
	char error[200];

	(void)state;
	for (size_t i = 0; i < sizeof refused / sizeof *refused; i++) {
		if (reads(refused[i], &e, error))
			fail_msg("'%s' is taken for %s", refused[i], ts_words_happened[e.what]);
		assert_true(strlen(error) > 0);
		assert_int_equal(e.what, -1);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_happened__is_what_was_said),
		cmocka_unit_test(test_happened__every_phrase_means_what_its_row_says),
		cmocka_unit_test(test_happened__refuses_what_no_phrase_tells),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
