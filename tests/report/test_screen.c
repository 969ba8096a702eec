/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Screens: what is shown of texts by others, how wide it is, and that columns, lines and charts
 * stand whatever is in them. Names are invented.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "report/curve.h"
#include "report/shown.h"

#define CJK "\u7532\u4e59\u4e19" /* three ideographs, six columns */
#define ACUTE "\u0301"           /* a combining accent, no column */
#define ODD "\xef\xbf\xbd"

static void assert_shown(const char *text, bool ascii, const char *want, size_t width)
{
	struct ts_text out;

	ts_text_open(&out, NULL);
	ts_shown_add(&out, text, strlen(text), ascii);
	assert_string_equal(ts_text_get(&out), want);
	assert_int_equal(ts_shown_width(text, strlen(text), ascii), width);
	ts_text_drop(&out);
}

static void test_shown__wide_and_combining_characters(void **state)
{
	(void)state;
	assert_shown("", false, "", 0);
	assert_shown("tap", false, "tap", 3);
	assert_shown(CJK, false, CJK, 6);
	assert_shown("e" ACUTE "a", false, "e" ACUTE "a", 2);
	assert_shown("\u00e9", false, "\u00e9", 1);
}

static void test_shown__in_plain_letters(void **state)
{
	(void)state;
	assert_shown("\u00e9e" ACUTE "\u00df", true, "eess", 4);
	assert_shown("\u00c6r\u00f8", true, "AEro", 4);
	assert_shown(CJK, true, "???", 3);
	assert_shown("a\u2013b\u2019c", true, "a-b'c", 5);
	assert_shown("5 \u00b5S, 3 \u00b0C", true, "5 uS, 3 degC", 12);
	assert_shown("\uff21\uff22", true, "AB", 2);
}

static void test_shown__no_control_reaches_the_terminal(void **state)
{
	(void)state;
	assert_shown("\033[31m", false, ODD "[31m", 5);
	assert_shown("\033[31m", true, "?[31m", 5);
	assert_shown("a\tb\nc\rd\x7f", false, "a b c" ODD "d" ODD, 8);
	assert_shown("\xc2\x9b"
		     "2J",
		false, ODD "2J", 3);                     /* the control in one character */
	assert_shown("a\u202eb", false, "a" ODD "b", 3); /* turns the line around */
}

static void test_shown__no_broken_utf8(void **state)
{
	(void)state;
	assert_shown("\xff\xfe", false, ODD ODD, 2);
	assert_shown("\xc3(", false, ODD "(", 2);
	assert_shown("\xe7\x94", false, ODD ODD, 2);       /* cut off */
	assert_shown("\xed\xa0\x80", true, "???", 3);      /* half a surrogate pair */
	assert_shown("\xc0\xaf", false, ODD ODD, 2);       /* longer than it need be */
	assert_shown("\xf4\x90\x80\x80", true, "????", 4); /* beyond the last character */
}

static void test_shown__what_fits_keeps_accents_and_takes_one_at_least(void **state)
{
	(void)state;
	assert_int_equal(ts_shown_fit(CJK, strlen(CJK), 5, false), 6);
	assert_int_equal(ts_shown_fit(CJK, strlen(CJK), 1, false), 3);
	assert_int_equal(ts_shown_fit("e" ACUTE "e" ACUTE, 6, 1, false), 3);
	assert_int_equal(ts_shown_fit("ab", 2, 9, false), 2);
	assert_int_equal(ts_shown_fit("", 0, 9, false), 0);
}

/* The screen of a document with one table or facts, which `lines` fill. */
static void assert_screen(
	bool facts, const char *const lines[][2], size_t count, bool ascii, const char *want)
{
	struct ts_screen screen = ts_screen_plain;
	struct ts_document doc;
	struct ts_arena arena;
	struct ts_node *node;
	struct ts_text out;

	screen.ascii = ascii;
	screen.columns = 40;
	ts_arena_open(&arena, NULL);
	ts_text_open(&out, NULL);
	ts_doc_open(&doc, &arena, "t");
	node = facts ? ts_doc_facts(&doc, 0) : ts_doc_table(&doc);
	for (size_t i = 0; i < count; i++)
		ts_doc_line(&doc, node, lines[i][0], lines[i][1], NULL);
	ts_screen_write(&out, &doc, &screen);
	assert_string_equal(ts_text_get(&out), want);
	ts_text_drop(&out);
	ts_arena_drop(&arena);
}

static const char *const odd_lines[][2] = {
	{"name", "KH"}, {CJK, "1"}, {"e" ACUTE "e", "2"}, {"\033[1m\xff", "3"}, {"plain", "4"}};

static void test_screen__columns_of_a_table_stand(void **state)
{
	(void)state;
	assert_screen(false, odd_lines, 5, false,
		"  name    KH\n"
		"  " CJK "  1\n"
		"  e" ACUTE "e      2\n"
		"  " ODD "[1m" ODD "   3\n"
		"  plain   4\n");
}

static void test_screen__columns_stand_in_plain_letters(void **state)
{
	(void)state;
	assert_screen(false, odd_lines, 5, true,
		"  name   KH\n"
		"  ???    1\n"
		"  ee     2\n"
		"  ?[1m?  3\n"
		"  plain  4\n");
}

static void test_screen__labels_of_facts_stand(void **state)
{
	(void)state;
	assert_screen(true, odd_lines + 1, 3, false,
		CJK "  1\n"
		    "e" ACUTE "e      2\n" ODD "[1m" ODD "   3\n");
}

static const char *const long_lines[][2] = {{"water", "KH left"},
	{"the tap behind the old greenhouse (invented)", "9"},
	{"Gartenwasserhahnverlaengerungsschlauchtrommel", "1 of 2 buckets"}, {"C", "4"}};

static void test_screen__a_long_cell_stays_in_its_column(void **state)
{
	(void)state;
	assert_screen(false, long_lines, 4, false,
		"  water                          KH left\n"
		"  the tap behind the old         9\n"
		"  greenhouse (invented)\n"
		"  Gartenwasserhahnverlaengerungs 1 of 2\n"
		"  schlauchtrommel                buckets\n"
		"  C                              4\n");
}

static void test_screen__words_are_whole_where_they_can_be(void **state)
{
	(void)state;
	assert_screen(false, long_lines, 2, false,
		"  water                          KH left\n"
		"  the tap behind the old         9\n"
		"  greenhouse (invented)\n");
}

static void test_screen__a_label_wider_than_its_column_stands_above(void **state)
{
	(void)state;
	assert_screen(true, long_lines, 4, false,
		"water          KH left\n"
		"the tap behind the old greenhouse\n"
		"  (invented)\n"
		"               9\n"
		"Gartenwasserhahnverlaengerungsschlauchtr\n"
		"  ommel\n"
		"               1 of 2 buckets\n"
		"C              4\n");
}

static void test_screen__labels_that_leave_room_stand_beside(void **state)
{
	static const char *const lines[][2] = {
		{"water behind the greenhouse", "KH 9"}, {"C", "KH 4"}};

	(void)state;
	assert_screen(true, lines, 2, false,
		"water behind the greenhouse  KH 9\n"
		"C                            KH 4\n");
}

static void assert_wrapped(const char *text, size_t columns, const char *want)
{
	struct ts_screen screen = ts_screen_plain;
	struct ts_text out;

	screen.columns = columns;
	ts_text_open(&out, NULL);
	ts_screen_wrap(&out, text, 0, 2, &screen);
	assert_string_equal(ts_text_get(&out), want);
	ts_text_drop(&out);
}

static void test_screen__lines_are_as_wide_as_they_look(void **state)
{
	(void)state;
	assert_wrapped(CJK " " CJK, 13, CJK " " CJK "\n");
	assert_wrapped(CJK " " CJK, 12, CJK "\n  " CJK "\n");
	assert_wrapped("e" ACUTE " e" ACUTE " e" ACUTE, 5, "e" ACUTE " e" ACUTE " e" ACUTE "\n");
}

static void test_screen__a_word_wider_than_the_line_is_broken(void **state)
{
	(void)state;
	assert_wrapped(CJK CJK, 8, CJK "\u7532\n  \u4e59\u4e19\n");
	assert_wrapped("a bcdefghij k", 6, "a bcde\n  fghi\n  j k\n");
}

static void test_curve__labels_as_wide_as_they_look(void **state)
{
	static const double x[] = {0, 10}, y[] = {1, 2};
	static const struct ts_series series = {CJK, x, y, 2, TS_HUE_NONE};
	static const struct ts_curve_mark mark = {5, "e\x1b[1m"};
	static const struct ts_curve curve = {
		CJK, CJK, "y", 0, 0, &series, 1, &mark, 1, "on day ", ""};
	struct ts_screen screen = ts_screen_plain;
	struct ts_text out;

	(void)state;
	screen.columns = 40;
	ts_text_open(&out, NULL);
	ts_curve_write(&out, &curve, &screen);
	/* 28 columns of the frame: "0 ", the label's six, and the last figure in eight. */
	assert_non_null(strstr(ts_text_get(&out), "\n          0 " CJK "                  10\n"));
	assert_non_null(strstr(ts_text_get(&out), "on day 5: e" ODD "[1m\n"));
	ts_text_drop(&out);
	ts_text_open(&out, NULL);
	screen.ascii = true;
	ts_curve_write(&out, &curve, &screen);
	for (size_t i = 0; i < out.len; i++)
		assert_true(out.at[i] == '\n' || (out.at[i] >= ' ' && out.at[i] <= '~'));
	ts_text_drop(&out);
}

static void test_curve__a_label_that_fits_not_between_stands_below(void **state)
{
	static const double x[] = {0, 10}, y[] = {1, 2};
	static const struct ts_series series = {"KH", x, y, 2, TS_HUE_NONE};
	static const struct ts_curve curve = {
		"t", "days of a very dry summer", "y", 0, 0, &series, 1, NULL, 0, "on day ", ""};
	struct ts_screen screen = ts_screen_plain;
	struct ts_text out;

	(void)state;
	screen.columns = 40;
	ts_text_open(&out, NULL);
	ts_curve_write(&out, &curve, &screen);
	assert_non_null(strstr(ts_text_get(&out), "\n          0                         10\n"
						  "          days of a very dry summer\n"));
	ts_text_drop(&out);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_shown__wide_and_combining_characters),
		cmocka_unit_test(test_shown__in_plain_letters),
		cmocka_unit_test(test_shown__no_control_reaches_the_terminal),
		cmocka_unit_test(test_shown__no_broken_utf8),
		cmocka_unit_test(test_shown__what_fits_keeps_accents_and_takes_one_at_least),
		cmocka_unit_test(test_screen__columns_of_a_table_stand),
		cmocka_unit_test(test_screen__columns_stand_in_plain_letters),
		cmocka_unit_test(test_screen__labels_of_facts_stand),
		cmocka_unit_test(test_screen__a_long_cell_stays_in_its_column),
		cmocka_unit_test(test_screen__words_are_whole_where_they_can_be),
		cmocka_unit_test(test_screen__a_label_wider_than_its_column_stands_above),
		cmocka_unit_test(test_screen__labels_that_leave_room_stand_beside),
		cmocka_unit_test(test_screen__lines_are_as_wide_as_they_look),
		cmocka_unit_test(test_screen__a_word_wider_than_the_line_is_broken),
		cmocka_unit_test(test_curve__labels_as_wide_as_they_look),
		cmocka_unit_test(test_curve__a_label_that_fits_not_between_stands_below),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
