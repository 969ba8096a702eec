/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A run of lint as a whole: its time grows with the records and not with their pairs, and failed
 * allocations are survived. What each rule finds is a case in tests/cli/cases/lint.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "../stingy.h"

#include "catalogue/folders.h"
#include "catalogue/lint.h"

/* Seconds of lint over `count` sound records that differ by name alone. */
static double seconds(size_t count)
{
	struct ts_species *species = calloc(count, sizeof *species);
	const struct ts_species **items = calloc(count, sizeof *items);
	char(*names)[2][32] = calloc(count, sizeof *names);
	const char **synonyms = calloc(count, sizeof *synonyms);
	struct ts_catalogue catalogue = {.items = items, .count = count};
	struct ts_lint lint;
	clock_t start;

	assert_true(species && items && names && synonyms);
	for (size_t i = 0; i < count; i++) {
		snprintf(names[i][0], 32, "Genus species-%zu", i * 7919 % count);
		snprintf(names[i][1], 32, "Older name-%zu", i);
		synonyms[i] = names[i][1];
		species[i] = (struct ts_species){.file = "nowhere/genus.yaml",
			.species = names[i][0],
			.synonyms = {&synonyms[i], 1},
			.family = "Exemplidae"};
		items[i] = &species[i];
	}
	start = clock();
	assert_int_equal(ts_lint_open(&lint, &catalogue, NULL), TS_OK);
	for (size_t i = 0; i < count; i++)
		ts_lint_species(&lint, items[i], NULL);
	ts_lint_close(&lint);
	free(synonyms);
	free(names);
	free(items);
	free(species);
	return (double)(clock() - start) / CLOCKS_PER_SEC;
}

static void test_lint__takes_time_in_proportion_to_the_records(void **state)
{
	double few, many;

	(void)state;
	seconds(2000);
	few = seconds(2000);
	many = seconds(16000);
	print_message("# 2,000 records %.1f ms, 16,000 records %.1f ms\n", 1e3 * few, 1e3 * many);
	assert_true(many < 24 * few); /* 8 if linear, 64 if every pair were looked at */
}

static void test_lint__every_allocation_fails_once(void **state)
{
	struct ts_catalogue catalogue;
	bool finished = false;
	size_t n;

	(void)state;
	ts_catalogue_open(&catalogue, NULL);
	assert_int_equal(ts_catalogue_read(&catalogue, TS_TEST_DATA "/catalogue", NULL), TS_OK);
	for (n = 0; !finished && n < 500; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_findings findings;
		struct ts_lint lint;
		enum ts_status status = ts_lint_open(&lint, &catalogue, &allocator);

		ts_findings_open(&findings, NULL);
		assert_int_equal(status, stingy.refused ? TS_NO_MEMORY : TS_OK);
		for (size_t i = 0; i < catalogue.count && !status; i++)
			assert_true(ts_lint_species(&lint, catalogue.items[i], &findings) ||
				    findings.no_memory || stingy.refused);
		finished = !stingy.refused;
		ts_findings_drop(&findings);
		ts_lint_close(&lint);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(finished);
	ts_catalogue_close(&catalogue);
}

static void test_lint__line_of_a_key(void **state)
{
	static const char file[] = TS_TEST_DATA "/catalogue/exempla-mollis.yaml";
	struct ts_place place = {.line = 0};

	(void)state;
	assert_true(ts_lint_line(NULL, file, "water.KH", &place));
	assert_true(ts_lint_line(NULL, file, "nowhere", &place));
	assert_true(ts_lint_line(NULL, "no-such-file", "species", &place));
	assert_int_equal(place.line, 0);
	assert_true(ts_lint_line(NULL, file, "species", &place));
	assert_int_equal(place.line, 2);
	assert_int_equal(place.column, 1);
	assert_true(ts_lint_line(NULL, file, "water.GH", &place));
	assert_int_equal(place.line, 17);
	assert_int_equal(place.column, 3);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_lint__takes_time_in_proportion_to_the_records),
		cmocka_unit_test(test_lint__every_allocation_fails_once),
		cmocka_unit_test(test_lint__line_of_a_key),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
