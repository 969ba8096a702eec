/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tables of waters: every key of a reading is a column, in its unit or another, and memory that
 * fails is said and not lost. What is refused, with its place: tests/cli/cases/batch.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../stingy.h"
#include "base/text.h"
#include "records/waters.h"

static size_t hand_over(void *state, char *bytes, size_t room)
{
	const char **at = state;
	size_t len = strlen(*at) < room ? strlen(*at) : room;

	memcpy(bytes, *at, len);
	*at += len;
	return len;
}

/* One row, one column a measure, each 0.5 of its first unit, which stands in the header. */
static void test_waters__every_key_of_a_reading_is_a_column(void **state)
{
	struct ts_text text;
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_waters *waters;
	struct ts_water water;
	unsigned line;
	const char *bytes;
	size_t measures = 0;

	(void)state;
	ts_text_open(&text, NULL);
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];

		ts_text_puts(&text, i ? "," : "", f->key, f->kind == TS_MEASURE ? " " : "",
			f->kind == TS_MEASURE ? ts_quantities[f->quantity].unit : "", NULL);
		measures += f->kind == TS_MEASURE;
	}
	ts_text_put(&text, "\n");
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];

		ts_text_puts(&text, i ? "," : "",
			f->quantity == TS_Q_GRAVITY   ? "1.005"
			: f->kind == TS_MEASURE       ? "0.5"
			: f->kind == TS_WORD          ? f->words[1]
			: strcmp(f->key, "date") == 0 ? "2026-03-01"
						      : "x",
			NULL);
	}
	bytes = ts_text_get(&text);
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	waters = ts_waters_open(hand_over, &bytes, "table", &arena, &findings);
	assert_non_null(waters);
	assert_int_equal(ts_waters_next(waters, &arena, &water, &line, &findings), TS_OK);
	assert_int_equal(line, 2);
	assert_true(measures > 20);
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *f = &ts_shape_reading.fields[i];
		struct ts_measure m;

		memcpy(&m, (const char *)water.readings + f->offset, sizeof m);
		assert_true(f->kind != TS_MEASURE ||
			    (m.kind == TS_MEASURE_VALUE && m.value > 0.49 &&
				    m.value < (f->quantity == TS_Q_GRAVITY ? 1.01 : 0.51)));
	}
	assert_string_equal(water.readings->date, "2026-03-01");
	assert_int_equal(water.readings->method, 1);
	assert_int_equal(ts_waters_next(waters, &arena, &water, &line, &findings), TS_NO);
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	ts_text_drop(&text);
}

/* Header and rows of all kinds; the worst status met. */
static enum ts_status read_all(const struct ts_allocator *allocator)
{
	const char *bytes = "name,GH dH,method,softened,date\nA,5,drops,no,2026-01-01\n"
			    "B,x,dorps,maybe,2026-02-30\nC\n\"D\n";
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_waters *waters;
	enum ts_status status = TS_NO_MEMORY;
	struct ts_water water;
	unsigned line;

	ts_arena_open(&arena, allocator);
	ts_findings_open(&findings, allocator);
	waters = ts_waters_open(hand_over, &bytes, "table", &arena, &findings);
	if (waters) {
		do
			status = ts_waters_next(waters, &arena, &water, &line, &findings);
		while (status == TS_OK || status == TS_BAD_INPUT);
	}
	assert_true(waters || arena.failed || findings.no_memory);
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return status;
}

static void test_waters__every_allocation_fails_once(void **state)
{
	bool done = false;

	(void)state;
	for (size_t n = 0; n < 1000 && !done; n++) {
		struct stingy stingy = {.left = n};
		const struct ts_allocator allocator = {stingy_resize, &stingy};
		enum ts_status status = read_all(&allocator);

		done = !stingy.refused;
		assert_int_equal(status, done ? TS_NO : TS_NO_MEMORY);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(done);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_waters__every_key_of_a_reading_is_a_column),
		cmocka_unit_test(test_waters__every_allocation_fails_once),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
