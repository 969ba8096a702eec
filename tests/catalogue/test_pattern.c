/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Patterns: what they find, where they are wrong, that none of them hangs, and that a failed
 * allocation is survived. The expectations are those of the expression syntax and of Unicode.
 */
#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "../stingy.h"

#include "catalogue/pattern.h"

#define COUNT(a) (sizeof(a) / sizeof *(a))

static enum ts_status meets(const char *pattern, bool fixed, const char *text)
{
	struct ts_pattern *p = NULL;
	struct ts_pattern_fault fault = {0};
	enum ts_status status;

	assert_int_equal(ts_pattern_open(pattern, fixed, NULL, &p, &fault), TS_OK);
	status = ts_pattern_meets(p, text);
	ts_pattern_close(p);
	return status;
}

static void check(const char *pattern, const char *text)
{
	if (meets(pattern, false, text) != TS_OK)
		fail_msg("%s is not found in %s", pattern, text);
}

static void check_not(const char *pattern, const char *text)
{
	if (meets(pattern, false, text) != TS_NO)
		fail_msg("%s is found in %s", pattern, text);
}

static void test_pattern__case_and_accents_do_not_count(void **state)
{
	(void)state;
	check("NEON", "neon tetra");
	check("neon", "Tétra NÉON");
	check("néon", "neon tetra");
	check("NÉ", "neon tetra");
	check("zwergbarbling", "Zwergbärbling");
	check("zwergbärbling", "Zwergbarbling");
	check("weisser", "Weißer");
}

static void test_pattern__classes_keep_their_meaning(void **state)
{
	(void)state;
	check("^neon\\Wtetra$", "neon tetra");
	check_not("^neon\\wtetra$", "neon tetra");
	check_not("\\D\\W\\D{9}", "neon tetra");
	check("\\bneon\\b", "black neon tetra");
	check_not("^neon", "black neon tetra");
	check("(cardinal|neon) tetra", "neon tetra");
	check("[à-ü]eon", "neon"); /* folded to [a-u] */
}

static void test_pattern__hyphens_and_apostrophes_may_be_left_out(void **state)
{
	(void)state;
	check("figure eight", "figure-eight puffer");
	check("figure-eight", "figure-eight puffer");
	check("endlers", "Endler's livebearer");
	assert_int_equal(meets("figure eight", true, "figure-eight puffer"), TS_OK);
	assert_int_equal(meets("Endler's", true, "Endler's livebearer"), TS_OK);
}

static void test_pattern__fixed_is_plain_text(void **state)
{
	(void)state;
	assert_int_equal(meets("sp. (", true, "Neolamprologus sp. (blue)"), TS_OK);
	assert_int_equal(meets("n.on", true, "neon"), TS_NO);
	assert_int_equal(meets("NÉON", true, "neon"), TS_OK);
}

static void check_fault(const char *pattern, size_t column)
{
	struct ts_pattern *p = NULL;
	struct ts_pattern_fault fault = {0};

	assert_int_equal(ts_pattern_open(pattern, false, NULL, &p, &fault), TS_BAD_INPUT);
	assert_null(p);
	assert_int_equal(fault.column, column);
	assert_true(fault.says[0]);
}

static void test_pattern__fault_has_its_column(void **state)
{
	char longer[TS_PATTERN_BYTES_MOST + 2];

	(void)state;
	check_fault("(neon", 6);
	check_fault("neon)", 5);
	check_fault("ne[on", 6);
	check_fault("*", 1);
	check_fault("nééé)x", 5); /* in characters of what was typed */
	check_fault("ßß)x", 3);   /* though ß folds to two letters */
	check_fault("ab\\C", 5);
	memset(longer, 'a', sizeof longer);
	longer[sizeof longer - 1] = '\0';
	check_fault(longer, TS_PATTERN_BYTES_MOST + 1);
}

/* Known shapes that take exponential or high polynomial time, or deep recursion. */
static const char *const catastrophic[] = {
	"(a+)+$",
	"(.*)*x{9}",
	"(.+)+\\1x",
	"^(([a-z])+.)+[A-Z]([a-z])+$",
	"(a|a|a|a)*(b|b|b)*z{9}",
	".*.*.*.*.*.*.*.*=",
	"(\\w+\\s*)*=",
	"(?:(?:.?.?.?)*)*!",
	"(.*?,){11}P",
	"(x+x+)+y|(?:\\w*\\w*)*!",
	"(?R)?.{2,}(?R)?=",
	"((.|\\w|[a-z])+)+(?!.)=",
	"(?:.{0,9}){1,30}#",
	"^(?:(\\w)(?=.*\\1))*(.*)*#",
	/* the same without a letter that must be there and is looked for first */
	"(a+)+[=#]",
	"(\\w+\\s*)*[=#]",
	".*.*.*.*.*.*[=#]",
	".*.*.*[=#]",
	".+.+[=#]",
	"(?:.?){30}[=#]",
	"(?:(?:.?.?.?)*)*[=#]",
	"([a-z ]*)*[=#]",
	"(?:[a-z]|[a-t]|\\w)*[=#]",
	"(.{1,3}){1,9}[=#]",
	"(?:.(?R)?)*[=#]",
	"(.)(.)?(?:\\1|\\2|.)*[=#]",
};

/* Asks the whole catalogue for one pattern; milliseconds of the processor. */
static double ask_everything(
	const struct ts_catalogue *catalogue, const char *pattern, enum ts_status *ret)
{
	struct ts_pattern *p = NULL;
	struct ts_pattern_fault fault = {0};
	clock_t start = clock();

	*ret = TS_NO;
	assert_int_equal(ts_pattern_open(pattern, false, NULL, &p, &fault), TS_OK);
	for (size_t s = 0; s < catalogue->count && *ret != TS_BAD_INPUT; s++) {
		const char *name;

		*ret = ts_pattern_species(p, catalogue->items[s], &name);
	}
	ts_pattern_close(p);
	return 1e3 * (double)(clock() - start) / CLOCKS_PER_SEC;
}

/* The quickest of some tries counts: other work on the machine only adds. */
static void test_pattern__none_can_hang(void **state)
{
	for (size_t i = 0; i < COUNT(catastrophic); i++) {
		enum ts_status status;
		double ms = ask_everything(*state, catastrophic[i], &status);

		for (int tries = 0; tries < 20 && ms >= 100; tries++)
			ms = fmin(ms, ask_everything(*state, catastrophic[i], &status));
		print_message("# %6.1f ms, %s: %s\n", ms,
			status == TS_BAD_INPUT ? "given up" : "answered", catastrophic[i]);
		assert_true(ms < 100);
	}
}

static void test_pattern__ordinary_ones_are_never_given_up(void **state)
{
	static const char *const ordinary[] = {"tetra", ".*tetra.*", "^(neon|cardinal).*", "",
		"[aeiou].*[aeiou].*[aeiou]", "\\b\\w+\\s\\w+\\s\\w+\\b", "(?i)P.*a.*r.*a"};
	const struct ts_catalogue *catalogue = *state;

	for (size_t i = 0; i < COUNT(ordinary); i++) {
		struct ts_pattern *p = NULL;
		struct ts_pattern_fault fault = {0};

		assert_int_equal(ts_pattern_open(ordinary[i], false, NULL, &p, &fault), TS_OK);
		for (size_t s = 0; s < catalogue->count; s++) {
			const char *name;

			assert_true(ts_pattern_species(p, catalogue->items[s], &name) <= TS_NO);
		}
		ts_pattern_close(p);
	}
}

static void test_pattern__every_allocation_fails_once(void **state)
{
	bool finished = false;
	size_t n;

	(void)state;
	for (n = 0; !finished && n < 200; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_pattern *p = NULL;
		struct ts_pattern_fault fault = {0};
		enum ts_status status =
			ts_pattern_open("(n|m)é+on \\w*", false, &allocator, &p, &fault);

		if (!status)
			status = ts_pattern_meets(p, "neon tetra");
		assert_int_equal(status, stingy.refused ? TS_NO_MEMORY : TS_OK);
		finished = !stingy.refused;
		ts_pattern_close(p);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(finished);
	assert_true(n > 5);
}

static void test_pattern__species_by_any_name_or_family(void **state)
{
	static const char *english[] = {"soft exemplar"};
	static const char *older[] = {"Olda mollis"};
	const struct ts_species species = {.species = "Exempla mollis",
		.synonyms = {older, 1},
		.common.en = {english, 1},
		.family = "Exemplidae"};
	static const char *const wanted[][2] = {{"mollis", "Exempla mollis"},
		{"^olda", "Olda mollis"}, {"^soft", "soft exemplar"}, {"idae$", "Exemplidae"}};

	(void)state;
	for (size_t i = 0; i < COUNT(wanted); i++) {
		struct ts_pattern *p = NULL;
		struct ts_pattern_fault fault = {0};
		const char *name = NULL;

		assert_int_equal(ts_pattern_open(wanted[i][0], false, NULL, &p, &fault), TS_OK);
		assert_int_equal(ts_pattern_species(p, &species, &name), TS_OK);
		assert_string_equal(name, wanted[i][1]);
		ts_pattern_close(p);
	}
}

static int load(void **state)
{
	static struct ts_catalogue catalogue;

	ts_catalogue_open(&catalogue, NULL);
	*state = &catalogue;
	return ts_catalogue_add_folder(&catalogue, TS_SPECIES_DIR, NULL) != TS_OK;
}

static int unload(void **state)
{
	ts_catalogue_close(*state);
	return 0;
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_pattern__case_and_accents_do_not_count),
		cmocka_unit_test(test_pattern__classes_keep_their_meaning),
		cmocka_unit_test(test_pattern__hyphens_and_apostrophes_may_be_left_out),
		cmocka_unit_test(test_pattern__fixed_is_plain_text),
		cmocka_unit_test(test_pattern__fault_has_its_column),
		cmocka_unit_test(test_pattern__none_can_hang),
		cmocka_unit_test(test_pattern__ordinary_ones_are_never_given_up),
		cmocka_unit_test(test_pattern__every_allocation_fails_once),
		cmocka_unit_test(test_pattern__species_by_any_name_or_family),
	};

	return cmocka_run_group_tests(tests, load, unload);
}
