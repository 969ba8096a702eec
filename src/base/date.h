/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Days of the calendar as people write them, YYYY-MM-DD, to a number and back, and hours of the
 * day. The library knows no clock: today is given by whoever asks.
 */
#ifndef TS_BASE_DATE_H
#define TS_BASE_DATE_H

#include <stdbool.h>

/* Bytes of "YYYY-MM-DD" with its NUL. */
#define TS_DATE_ROOM 11

/* Days since 1970-01-01 (Gregorian); false, `*ret` untouched, when it is no day of 1900 to 9999. */
bool ts_date_read(const char *text, long *ret);

/* Writes a day between 1900-01-01 and 9999-12-31; false and an empty text beyond. */
bool ts_date_write(char out[TS_DATE_ROOM], long day);

/*
 * A day as people write it, with a month or a year alone meaning its first day: "2024-05-01",
 * "2024-05", "2024", "1 May 2024", "May 2024"; false: it is none.
 */
bool ts_date_meant(const char *text, char out[TS_DATE_ROOM]);

/* Whether this is a day after today; `today` -1: not known, then none is. NULL is no day. */
bool ts_date_is_ahead(const char *text, long today);

/* "HH:MM" in minutes, 0 to 1439; -1: it is no hour of the day. */
int ts_clock_read(const char *text);

#endif
