/* SPDX-License-Identifier: Apache-2.0 */
/*
 * rank --batch holds no more memory for a long table than for a short one: counted at the
 * allocator, so that neither a sanitizer nor the C library's own habits come into it.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/rank.h"
#include "system/machine.h"

struct counted {
	size_t now, most;
};

#define FRONT 16 /* where the size of a block stands, as malloc aligns */

static void *counted_resize(void *state, void *old, size_t size)
{
	struct counted *c = state;
	char *block = old ? (char *)old - FRONT : NULL;
	size_t before = 0;

	if (block)
		memcpy(&before, block, sizeof before);
	if (size == 0) {
		c->now -= before;
		free(block);
		return NULL;
	}
	block = realloc(block, size + FRONT);
	assert_non_null(block);
	memcpy(block, &size, sizeof size);
	c->now += size - before;
	c->most = c->now > c->most ? c->now : c->most;
	return block + FRONT;
}

static void write_table(const char *path, size_t rows)
{
	static const char *const waters[] = {"soft,3,2,6.5,\n", "hard,14,9,7.6,drops\n",
		"wrong,x,9 furlongs,77,dorps\n", "short,3\n", "\"quoted \"\"x\"\"\",5,3,7,meter\n"};
	FILE *file = fopen(path, "w");

	assert_non_null(file);
	fputs("name,GH dH,KH dH,pH,method\n", file);
	for (size_t i = 0; i < rows; i++)
		fputs(waters[i % (sizeof waters / sizeof *waters)], file);
	assert_int_equal(fclose(file), 0);
}

/* The most bytes that were held at once over a table of so many rows, in this form. */
static size_t most_held(size_t rows, int format)
{
	char path[] = "/tmp/tapshoal-batch-XXXXXX";
	struct counted counted = {0, 0};
	const struct ts_allocator allocator = {counted_resize, &counted};
	struct options options = {
		.only_catalogue = true, .format = format, .folders = {{TS_CATALOGUE}, 1}};
	struct ts_arena arena;
	struct ts_catalogue catalogue;
	struct ts_findings findings;
	struct ts_practice practice;
	struct ts_text out, error;
	struct ts_machine machine;
	struct session s = {.options = &options,
		.arena = &arena,
		.catalogue = &catalogue,
		.findings = &findings,
		.system = &machine.system,
		.practice = &practice,
		.out = &out,
		.error = &error};
	int made = mkstemp(path);

	ts_machine_open(&machine);
	machine.system.together = ts_system_alone; /* the counter is one for all */
	assert_true(made >= 0);
	close(made);
	write_table(path, rows);
	options.batch_file = path;
	options.output = "/dev/null";
	ts_practice_defaults(&practice);
	ts_arena_open(&arena, &allocator);
	ts_catalogue_open(&catalogue, &allocator);
	ts_findings_open(&findings, &allocator);
	ts_text_open(&out, &allocator);
	ts_text_open(&error, &allocator);
	assert_int_equal(rank_batch(&s, 0), TS_BAD_INPUT);
	assert_non_null(strstr(ts_text_get(&error), "rows cannot be read"));
	ts_text_drop(&error);
	ts_text_drop(&out);
	ts_findings_drop(&findings);
	ts_catalogue_close(&catalogue);
	ts_arena_drop(&arena);
	ts_machine_close(&machine);
	unlink(path);
	assert_int_equal(counted.now, 0);
	return counted.most;
}

static void hold_the_same(const char *what, int format, size_t few_rows, size_t many_rows)
{
	size_t few = most_held(few_rows, format), many = most_held(many_rows, format);

	print_message("# %s: %zu bytes at the most over %zu rows, %zu over %zu\n", what, few,
		few_rows, many, many_rows);
	assert_true(few > 100000); /* the catalogue alone: what is counted is what is held */
	assert_int_equal(few, many);
}

/* Once as many rows are there as are held at once. */
static void test_batch__memory_does_not_grow_with_the_table(void **state)
{
	(void)state;
	hold_the_same("lines", FORMAT_LINES, 2000, 20000);
	hold_the_same("CSV", FORMAT_CSV, 2000, 20000);
	hold_the_same("whole answers", FORMAT_JSON, 100, 1000);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_batch__memory_does_not_grow_with_the_table),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
