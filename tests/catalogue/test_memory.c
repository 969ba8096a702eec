/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The n-th allocation fails, for every n, while a catalogue and a water are loaded: the answer is
 * "no memory", nothing leaks, and what was asked for is not half there.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "../stingy.h"

#include <tapshoal/catalogue.h>

static void test_catalogue__every_allocation_fails_once(void **state)
{
	bool finished = false;
	size_t n;

	(void)state;
	for (n = 0; !finished && n < 2000; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_catalogue catalogue;
		struct ts_findings findings;
		enum ts_status status;

		ts_catalogue_open(&catalogue, &allocator);
		ts_findings_open(&findings, &allocator);
		status = ts_catalogue_add_folder(&catalogue, TS_TEST_DATA "/catalogue", &findings);
		if (stingy.refused)
			assert_int_equal(status, TS_NO_MEMORY);
		else
			assert_int_equal(status, TS_OK);
		finished = !stingy.refused;
		ts_findings_drop(&findings);
		ts_catalogue_close(&catalogue);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(finished);
	assert_true(n > 10);
}

static void test_bad_record__findings_fail_too(void **state)
{
	bool finished = false;

	(void)state;
	for (size_t n = 0; !finished && n < 2000; n++) {
		struct stingy stingy = {n, 0, false};
		struct ts_allocator allocator = {stingy_resize, &stingy};
		struct ts_arena arena;
		struct ts_findings findings;
		struct ts_water water = {.kind = 77};
		enum ts_status status;

		ts_arena_open(&arena, &allocator);
		ts_findings_open(&findings, &allocator);
		/* a species record is no water file: many findings */
		status = ts_water_load(
			TS_TEST_DATA "/catalogue/exempla-mollis.yaml", &arena, &water, &findings);
		if (stingy.refused)
			assert_int_equal(status, TS_NO_MEMORY);
		else
			assert_int_equal(status, TS_BAD_INPUT);
		assert_int_equal(water.kind, 77);
		finished = !stingy.refused;
		ts_findings_drop(&findings);
		ts_arena_drop(&arena);
		assert_int_equal(stingy.out, 0);
	}
	assert_true(finished);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_catalogue__every_allocation_fails_once),
		cmocka_unit_test(test_bad_record__findings_fail_too),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
