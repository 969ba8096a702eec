/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Stands in for cmocka where there is none: the checks of tests/checks as WebAssembly. One run
 * does one test, the one whose number is in $TEST; a failed assertion ends it with exit code 1,
 * a number beyond the last test with 99. run.js counts them.
 */
#ifndef TS_TESTS_WASM_CMOCKA_H
#define TS_TESTS_WASM_CMOCKA_H

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct CMUnitTest {
	const char *name;
	void (*run)(void **state);
};

#define cmocka_unit_test(test)                                                                     \
	{                                                                                          \
#test, test                                                                        \
	}

#define fail_msg(...) (printf("# " __VA_ARGS__), printf("\n"), exit(1))
#define assert_true(holds)                                                                         \
	((holds) ? (void)0 : fail_msg("%s:%d: %s does not hold", __FILE__, __LINE__, #holds))
#define assert_null(pointer) assert_true(!(pointer))
#define assert_non_null(pointer) assert_true(pointer)
#define assert_int_equal(got, want) assert_true((long long)(got) == (long long)(want))
#define assert_string_equal(got, want) assert_true(strcmp(got, want) == 0)

#define cmocka_run_group_tests(tests, setup, teardown)                                             \
	run_one(tests, sizeof(tests) / sizeof((tests)[0]))

static int run_one(const struct CMUnitTest *tests, size_t count)
{
	const char *wanted = getenv("TEST");
	size_t number = wanted ? (size_t)strtoul(wanted, NULL, 10) : count;
	void *state = NULL;

	if (number >= count)
		return 99;
	printf("name %s\n", tests[number].name);
	tests[number].run(&state);
	return 0;
}

#endif
