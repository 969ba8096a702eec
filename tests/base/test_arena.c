/* SPDX-License-Identifier: Apache-2.0 */
/* Arena, text and findings when memory runs out and when it does not. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../stingy.h"

#include "base/arena.h"
#include "base/findings.h"
#include "base/text.h"

static void test_take__is_zeroed_aligned_and_apart(void **state)
{
	struct ts_arena arena;
	char *a, *b;

	(void)state;
	ts_arena_open(&arena, NULL);
	a = ts_arena_take(&arena, 3);
	b = ts_arena_take(&arena, 100000);
	assert_non_null(a);
	assert_non_null(b);
	assert_int_equal((uintptr_t)a % 16, 0);
	assert_int_equal(a[0] | a[2] | b[0] | b[99999], 0);
	memset(b, 1, 100000);
	assert_int_equal(a[2], 0);
	ts_arena_drop(&arena);
}

/* What was taken before stays, what was taken since is given back, however many blocks it took. */
static void test_back__gives_back_what_was_taken_since(void **state)
{
	struct stingy stingy = {SIZE_MAX, 0, false};
	struct ts_allocator allocator = {stingy_resize, &stingy};
	struct ts_arena arena, mark;
	char *kept, *again;

	(void)state;
	ts_arena_open(&arena, &allocator);
	mark = arena;
	assert_non_null(ts_arena_take(&arena, 100));
	ts_arena_back(&arena, &mark);
	assert_int_equal(stingy.out, 0);
	kept = ts_arena_text(&arena, "kept", 4);
	mark = arena;
	for (size_t i = 0; i < 100; i++)
		assert_non_null(ts_arena_take(&arena, 5000));
	ts_arena_back(&arena, &mark);
	assert_string_equal(kept, "kept");
	assert_int_equal(stingy.out, 1);
	again = ts_arena_text(&arena, "again", 5);
	assert_ptr_equal(again, kept + 5);
	ts_arena_drop(&arena);
	assert_int_equal(stingy.out, 0);
}

static void test_array__overflow_is_a_failed_allocation(void **state)
{
	struct ts_arena arena;

	(void)state;
	ts_arena_open(&arena, NULL);
	assert_null(ts_arena_array(&arena, SIZE_MAX / 2, 4));
	assert_true(arena.failed);
	assert_null(ts_arena_take(&arena, 1));
	ts_arena_drop(&arena);
}

static void test_every_allocation_fails_once__nothing_leaks(void **state)
{
	(void)state;
	for (size_t n = 0; n < 12; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_findings findings;
		static const struct ts_code code = {"test.code", TS_ERROR, "says", "remedy", "0"};

		ts_findings_open(&findings, &allocator);
		for (int i = 0; i < 50; i++)
			ts_finding_addf(&findings, &code, NULL, NULL, "a", "b", NULL);
		assert_int_equal(findings.errors, 50);
		assert_true(findings.no_memory || findings.count == 50);
		ts_findings_drop(&findings);
		assert_int_equal(stingy.out, 0);
	}
}

static void test_findings__beyond_the_most_are_counted(void **state)
{
	static const struct ts_code code = {"test.code", TS_NOTE, "says", "remedy", "0"};
	struct ts_findings findings;

	(void)state;
	ts_findings_open(&findings, NULL);
	for (int i = 0; i < TS_FINDINGS_MOST + 7; i++)
		assert_true(ts_finding_add(&findings, &code, NULL, "what", NULL));
	assert_int_equal(findings.count, TS_FINDINGS_MOST);
	assert_int_equal(findings.more, 7);
	assert_int_equal(findings.errors, 0);
	assert_string_equal(findings.items[3].remedy, "remedy");
	ts_findings_drop(&findings);
}

static void test_text__grows_and_stays_terminated(void **state)
{
	struct ts_text text;

	(void)state;
	ts_text_open(&text, NULL);
	assert_string_equal(ts_text_get(&text), "");
	for (int i = 0; i < 1000; i++)
		ts_text_put(&text, "abc");
	ts_text_number(&text, 1.25, 1);
	assert_int_equal(text.len, 3003);
	assert_string_equal(ts_text_get(&text) + 3000, "1.3");
	assert_false(text.failed);
	ts_text_drop(&text);
}

static void test_text__characters_of_utf8(void **state)
{
	(void)state;
	assert_int_equal(ts_text_sequence(""), 1);
	assert_int_equal(ts_text_sequence("a"), 1);
	assert_int_equal(ts_text_sequence("é"), 2);
	assert_int_equal(ts_text_sequence("甲"), 3);
	assert_int_equal(ts_text_sequence("\xf0\x9f\x90\x9f"), 4);
	assert_int_equal(ts_text_sequence("\xe7\x94"), 0);
	assert_int_equal(ts_text_sequence("\xc0\xaf"), 0);
	assert_int_equal(ts_text_sequence("\xed\xa0\x80"), 0);
	assert_int_equal(ts_text_sequence("\xf4\x90\x80\x80"), 0);
	assert_int_equal(ts_text_sequence("\x80"), 0);
}

static void test_text__controls(void **state)
{
	(void)state;
	assert_true(ts_text_control("\033[1m"));
	assert_true(ts_text_control("\x7f"));
	assert_true(ts_text_control("\xc2\x9b"));
	assert_false(ts_text_control("\xc2\xa0"));
	assert_false(ts_text_control("\xc2"));
	assert_false(ts_text_control(" "));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_take__is_zeroed_aligned_and_apart),
		cmocka_unit_test(test_back__gives_back_what_was_taken_since),
		cmocka_unit_test(test_array__overflow_is_a_failed_allocation),
		cmocka_unit_test(test_every_allocation_fails_once__nothing_leaks),
		cmocka_unit_test(test_findings__beyond_the_most_are_counted),
		cmocka_unit_test(test_text__grows_and_stays_terminated),
		cmocka_unit_test(test_text__characters_of_utf8),
		cmocka_unit_test(test_text__controls),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
