/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands before every other word about a water: its order, and that each has both sentences.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <string.h>

#include "words/first.h"

static struct ts_measure read_as(double value)
{
	return (struct ts_measure){value, value, value, TS_MEASURE_VALUE};
}

static struct ts_profile of(struct ts_reading *r)
{
	struct ts_water water = {.kind = TS_WATER_TAP, .readings = r, .reading_count = 1};
	struct ts_profile p;

	ts_profile_make(&water, &(struct ts_keeping){0}, NULL, -1, &p);
	return p;
}

static void test_first__from_what_no_reading_mends_to_the_next_reading(void **state)
{
	struct ts_reading nothing = {0}, ph = {.ph = read_as(7.4)}, kh = {.kh_dh = read_as(5)};
	struct ts_reading bare = {.gh_dh = read_as(0), .kh_dh = read_as(0)};
	struct ts_reading maybe = {.gh_dh = read_as(2), .kh_dh = read_as(18)};
	struct ts_reading off = {
		.gh_dh = read_as(2), .kh_dh = read_as(18), .ca_mg_l = read_as(120)};
	struct ts_reading sea = {.salinity_g_l = read_as(35)}, fine = {.gh_dh = read_as(8)};
	const struct {
		struct ts_reading *reading;
		enum ts_water_first first;
		const char *says, *because;
	} rows[] = {{&nothing, TS_FIRST_MINERALS, "measure GH and KH: ", ""},
		{&ph, TS_FIRST_MINERALS, "measure GH and KH, and leave the pH alone", "pH 7.4"},
		{&kh, TS_FIRST_GH, "measure GH", "KH 5: a tank of it runs at about pH 7."},
		{&bare, TS_FIRST_BARE, "no animal before minerals", "GH 0, KH 0"},
		{&maybe, TS_FIRST_MAYBE_SOFTENED, "GH 2 beside KH 18", "unsoftened cold line"},
		{&off, TS_FIRST_CONTRADICTION, "read GH again", "GH 16.8"},
		{&sea, TS_FIRST_SEA, "sea water", "35 g/L"}, {&fine, TS_FIRST_NOTHING, "", ""}};

	(void)state;
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		struct ts_profile p = of(rows[i].reading);
		struct ts_text text;

		assert_int_equal(ts_water_first(&p), rows[i].first);
		ts_text_open(&text, NULL);
		ts_say_first(&text, &p);
		assert_non_null(strstr(ts_text_get(&text), rows[i].says));
		assert_int_equal(text.len > 0, rows[i].first != TS_FIRST_NOTHING);
		ts_text_clear(&text);
		ts_say_first_because(&text, &p);
		assert_non_null(strstr(ts_text_get(&text), rows[i].because));
		ts_text_drop(&text);
	}
}

static void test_first__conductivity_and_solids_bound_gh(void **state)
{
	struct ts_reading ec = {.conductivity_us_cm = read_as(250)},
			  pen = {.tds_mg_l = read_as(125)};
	struct ts_reading both = {.conductivity_us_cm = read_as(250), .gh_dh = read_as(6)};
	struct ts_reading little = {.tds_mg_l = read_as(20)},
			  salt = {.conductivity_us_cm = read_as(9000)};
	struct ts_profile p = of(&ec);

	(void)state;
	assert_true(p.gh_bound.given);
	assert_true(fabs(p.gh_bound.high - 10) < 1e-9 && p.gh_bound.low == 0);
	assert_true(p.gh_bound.value > 5 && p.gh_bound.value < p.gh_bound.high);
	p = of(&pen);
	assert_true(fabs(p.gh_bound.high - 10) < 1e-9);
	assert_false(p.unusual & TS_UNUSUAL_BARE);
	p = of(&little);
	assert_true(p.unusual & TS_UNUSUAL_BARE);
	p = of(&both);
	assert_false(p.gh_bound.given);
	p = of(&salt);
	assert_false(p.gh_bound.given);
}

static void test_first__a_stood_sample_does_not_stand_above_the_air(void **state)
{
	struct ts_reading r = {.gh_dh = read_as(6),
		.kh_dh = read_as(3),
		.ph = read_as(9.3),
		.stood_h = read_as(24)};
	struct ts_profile p = of(&r);

	(void)state;
	assert_true(p.unusual & TS_UNUSUAL_PH_AGAINST_KH);
	r.ph = read_as(8.3);
	p = of(&r);
	assert_false(p.unusual & TS_UNUSUAL_PH_AGAINST_KH);
	/* In the light a tank's plants take more gas than the air gives. */
	r.ph = read_as(9.3);
	r.stood_h = (struct ts_measure){0};
	p = of(&r);
	assert_false(p.unusual & TS_UNUSUAL_PH_AGAINST_KH);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_first__from_what_no_reading_mends_to_the_next_reading),
		cmocka_unit_test(test_first__conductivity_and_solids_bound_gh),
		cmocka_unit_test(test_first__a_stood_sample_does_not_stand_above_the_air),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
