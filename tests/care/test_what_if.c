/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of what may happen: every question has an answer to do, at once or before, and steps for
 * the card; words of people find it; figures of sentences are those that the answer knows.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "care/what_if.h"

static void test_every_question__has_steps_and_a_card(void **state)
{
	(void)state;
	for (unsigned q = 0; q < TS_IF__COUNT; q++) {
		size_t steps = 0, cards = 0;

		assert_non_null(ts_what_if_rows[q].id);
		assert_non_null(strchr(ts_what_if_rows[q].asks, '?'));
		assert_int_not_equal(ts_what_if_rows[q].reckons, 0);
		for (size_t i = 0; i < ts_what_if_step_count; i++) {
			steps += ts_what_if_steps[i].of >> q & 1;
			cards += ts_what_if_steps[i].of >> q & 1 && ts_what_if_steps[i].card;
		}
		assert_true(steps >= 3);
		assert_true(cards >= 2 || q == TS_IF_NEW_SUPPLY);
	}
}

static void test_every_figure__is_known(void **state)
{
	static const char *const known[] = {
		"act", "cool_act", "stopped", "rinse", "evaporates", "daily", "recipe"};

	(void)state;
	for (size_t i = 0; i < ts_what_if_step_count; i++) {
		const char *texts[] = {ts_what_if_steps[i].when, ts_what_if_steps[i].says};

		for (size_t t = 0; t < 2; t++) {
			for (const char *at = strchr(texts[t], '{'); at; at = strchr(at + 1, '{')) {
				size_t len = strcspn(at + 1, "}"), found = 0;

				for (size_t k = 0; k < sizeof known / sizeof *known; k++)
					found += strlen(known[k]) == len &&
						 memcmp(known[k], at + 1, len) == 0;
				assert_int_equal(found, 1);
			}
		}
	}
}

static void test_words_of_people(void **state)
{
	(void)state;
	assert_string_equal(ts_what_if_of("power-cut")->id, "power-cut");
	assert_string_equal(ts_what_if_of("Power cut")->id, "power-cut");
	assert_string_equal(ts_what_if_of("outage")->id, "power-cut");
	assert_string_equal(ts_what_if_of("heater failure")->id, "heater");
	assert_string_equal(ts_what_if_of("vacation")->id, "holiday");
	assert_string_equal(ts_what_if_of("moving_house")->id, "move");
	assert_null(ts_what_if_of("powder"));
	assert_null(ts_what_if_of(""));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_every_question__has_steps_and_a_card),
		cmocka_unit_test(test_every_figure__is_known),
		cmocka_unit_test(test_words_of_people),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
