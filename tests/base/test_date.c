/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Days against the calendar of the C library (time.h), every day of two centuries.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <time.h>

#include "base/date.h"

static void test_date__every_day_as_the_c_library_counts(void **state)
{
	(void)state;
	for (long day = -25567; day < 47482; day++) { /* 1900-01-01 to 2099-12-31 */
		time_t seconds = (time_t)day * 86400;
		char wanted[TS_DATE_ROOM], got[TS_DATE_ROOM];
		long back = 0;

		strftime(wanted, sizeof wanted, "%Y-%m-%d", gmtime(&seconds));
		assert_true(ts_date_write(got, day));
		assert_string_equal(got, wanted);
		assert_true(ts_date_read(got, &back));
		assert_int_equal(back, day);
	}
}

static void test_date__what_is_no_day(void **state)
{
	static const char *const texts[] = {"", "2026", "2026-11", "2026-11-31", "2026-02-29",
		"1900-02-29", "2026-13-01", "2026-00-01", "2026-01-00", "26-01-01", "2026/01/01",
		"2026-1-1", "2026-01-01 ", "1899-12-31", "yesterday", "2026-1x-01"};
	char out[TS_DATE_ROOM];

	(void)state;
	for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
		long day = 77;

		assert_false(ts_date_read(texts[i], &day));
		assert_int_equal(day, 77);
	}
	assert_false(ts_date_write(out, -25568));
	assert_string_equal(out, "");
	assert_false(ts_date_write(out, 100000000));
}

static void test_date__as_people_write_it(void **state)
{
	static const char *const names[] = {"January", "February", "March", "April", "May", "June",
		"July", "August", "September", "October", "November", "December"};
	static const char *const meant[][2] = {{"2024-05-01", "2024-05-01"},
		{"2024-05", "2024-05-01"}, {"2024", "2024-01-01"}, {"1 May 2024", "2024-05-01"},
		{"31 dec 2023", "2023-12-31"}, {"May 2024", "2024-05-01"},
		{"29 Feb 2024", "2024-02-29"}, {"7. Sept. 2024", "2024-09-07"}};
	static const char *const none[] = {"", "Xay 2024", "Ma 2024", "Fan 2024", "Maz 2024",
		"30 Feb 2024", "32 May 2024", "0 May 2024", "May", "5", "May 24", "1 2024",
		"2024-13", "2024-00", "1899", "soon"};
	char out[TS_DATE_ROOM], text[40], want[40];

	(void)state;
	for (size_t i = 0; i < 12; i++) {
		snprintf(want, sizeof want, "2025-%02zu-09", i + 1);
		snprintf(text, sizeof text, "9 %s 2025", names[i]);
		assert_true(ts_date_meant(text, out));
		assert_string_equal(out, want);
		snprintf(text, sizeof text, "9 %.3s 2025", names[i]);
		assert_true(ts_date_meant(text, out));
		assert_string_equal(out, want);
	}
	for (size_t i = 0; i < sizeof meant / sizeof *meant; i++) {
		assert_true(ts_date_meant(meant[i][0], out));
		assert_string_equal(out, meant[i][1]);
	}
	for (size_t i = 0; i < sizeof none / sizeof *none; i++) {
		if (ts_date_meant(none[i], out))
			fail_msg("'%s' is taken for %s", none[i], out);
	}
}

static void test_date__hours_of_the_day(void **state)
{
	static const char *const none[] = {
		"", "8", "8:30", "24:00", "12:60", "12.30", "12:3", "12:30 ", "-1:00", "noon"};

	(void)state;
	assert_int_equal(ts_clock_read("00:00"), 0);
	assert_int_equal(ts_clock_read("08:30"), 510);
	assert_int_equal(ts_clock_read("23:59"), 1439);
	for (size_t i = 0; i < sizeof none / sizeof *none; i++)
		assert_int_equal(ts_clock_read(none[i]), -1);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_date__every_day_as_the_c_library_counts),
		cmocka_unit_test(test_date__what_is_no_day),
		cmocka_unit_test(test_date__as_people_write_it),
		cmocka_unit_test(test_date__hours_of_the_day),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
