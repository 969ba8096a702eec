/* SPDX-License-Identifier: Apache-2.0 */
/* Edits between two spellings, counted by hand. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <string.h>

#include "base/edits.h"

static size_t edits(const char *a, const char *b)
{
	assert_int_equal(
		ts_edits(a, strlen(a), b, strlen(b)), ts_edits(b, strlen(b), a, strlen(a)));
	return ts_edits(a, strlen(a), b, strlen(b));
}

static void test_edits__by_hand(void **state)
{
	(void)state;
	assert_int_equal(edits("", ""), 0);
	assert_int_equal(edits("guppy", "guppy"), 0);
	assert_int_equal(edits("guppy", "GUPPY"), 0);
	assert_int_equal(edits("", "abc"), 3);
	assert_int_equal(edits("gupy", "guppy"), 1);
	assert_int_equal(edits("gupyp", "guppy"), 1); /* neighbours swapped */
	assert_int_equal(edits("kitten", "sitting"), 3);
	assert_int_equal(edits("abcd", "badc"), 2);
	assert_int_equal(edits("ca", "abc"), 3); /* a swapped pair is not edited again */
}

static void test_edits__long_texts_are_never_near(void **state)
{
	char a[TS_EDITS_LONGEST + 1], b[TS_EDITS_LONGEST + 1];

	(void)state;
	memset(a, 'a', sizeof a);
	memset(b, 'a', sizeof b);
	assert_int_equal(ts_edits(a, TS_EDITS_LONGEST, b, TS_EDITS_LONGEST), 0);
	assert_int_equal(ts_edits(a, sizeof a, b, sizeof b), TS_EDITS_LONGEST);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_edits__by_hand),
		cmocka_unit_test(test_edits__long_texts_are_never_near),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
