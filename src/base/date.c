/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Gregorian days counted by years that start in March, so that the leap day comes last.
 */
#include "base/date.h"

#include <stddef.h>
#include <string.h>

/* Days before a year that starts on March 1st, from that of year 0. */
static long days_before(long year)
{
	return 365 * year + year / 4 - year / 100 + year / 400;
}

/* Days from March 1st of year 0 to 1970-01-01. */
#define EPOCH 719468

static long day_of(long year, long month, long day)
{
	long from_march = (month + 9) % 12;
	long march_year = year - (month <= 2);

	return days_before(march_year) + (153 * from_march + 2) / 5 + day - 1 - EPOCH;
}

static bool digits(const char *text, size_t count, long *ret)
{
	long value = 0;

	for (size_t i = 0; i < count; i++) {
		if (text[i] < '0' || text[i] > '9')
			return false;
		value = value * 10 + (text[i] - '0');
	}
	*ret = value;
	return true;
}

static long length_of(long year, long month)
{
	return day_of(month == 12 ? year + 1 : year, month == 12 ? 1 : month + 1, 1) -
	       day_of(year, month, 1);
}

bool ts_date_read(const char *text, long *ret)
{
	long year, month, day;

	if (!digits(text, 4, &year) || text[4] != '-' || !digits(text + 5, 2, &month) ||
		text[7] != '-' || !digits(text + 8, 2, &day) || text[10])
		return false;
	if (year < 1900 || month < 1 || month > 12 || day < 1 || day > length_of(year, month))
		return false;
	*ret = day_of(year, month, day);
	return true;
}

static void put(char *at, long value, size_t count)
{
	while (count--) {
		at[count] = (char)('0' + value % 10);
		value /= 10;
	}
}

bool ts_date_write(char out[TS_DATE_ROOM], long day)
{
	long year, month = 1;

	out[0] = '\0';
	if (day < day_of(1900, 1, 1) || day > day_of(9999, 12, 31))
		return false;
	year = day < 0 ? 1900 : 1970 + day / 366; /* never too late */
	while (day >= day_of(year + 1, 1, 1))
		year++;
	while (day >= day_of(year, month, 1) + length_of(year, month))
		month++;
	put(out, year, 4);
	out[4] = '-';
	put(out + 5, month, 2);
	out[7] = '-';
	put(out + 8, day - day_of(year, month, 1) + 1, 2);
	out[10] = '\0';
	return true;
}

static bool write_day(long year, long month, long day, char out[TS_DATE_ROOM])
{
	return year >= 1900 && month >= 1 && month <= 12 && day >= 1 &&
	       day <= length_of(year, month) && ts_date_write(out, day_of(year, month, day));
}

/* 1 to 12 by the first three letters of an English name, moved behind it; 0: none. */
static long month_at(const char **at)
{
	static const char names[] = "janfebmaraprmayjunjulaugsepoctnovdec";

	for (long month = 1; month <= 12; month++) {
		const char *name = names + 3 * (month - 1);
		size_t same = 0;

		while (same < 3 && ((*at)[same] | 32) == name[same])
			same++;
		if (same < 3)
			continue;
		while (((**at) | 32) >= 'a' && ((**at) | 32) <= 'z')
			(*at)++;
		*at += strspn(*at, " .,");
		return month;
	}
	return 0;
}

/* One or two digits, moved behind them and what parts them; -1: none. */
static long short_at(const char **at)
{
	size_t count = strspn(*at, "0123456789");
	long value;

	if (count < 1 || count > 2 || !digits(*at, count, &value))
		return -1;
	*at += count;
	*at += strspn(*at, " .,-");
	return value;
}

/* "1 May 2024", "May 1, 2024", "May 2024", "01.05.2024" */
static bool date_in_words(const char *text, char out[TS_DATE_ROOM])
{
	const char *at = text;
	bool dots = strchr(text, '.');
	long day = short_at(&at), month = month_at(&at), year;

	if (!month && day >= 0 && dots)
		month = short_at(&at);
	else if (month && day < 0 && strspn(at, "0123456789") < 4)
		day = short_at(&at);
	return month && digits(at, 4, &year) && !at[4] &&
	       write_day(year, month, day < 0 ? 1 : day, out);
}

bool ts_date_meant(const char *text, char out[TS_DATE_ROOM])
{
	size_t len = strlen(text);
	long year, month = 1, day = 1;

	if (len < 4 || !digits(text, 4, &year))
		return date_in_words(text, out);
	if (len > 4 && (len < 7 || !strchr("-/.", text[4]) || !digits(text + 5, 2, &month)))
		return false;
	if (len > 7 && (len != 10 || text[7] != text[4] || !digits(text + 8, 2, &day)))
		return false;
	return write_day(year, month, day, out);
}

bool ts_date_is_ahead(const char *text, long today)
{
	long day;

	return today >= 0 && text && ts_date_read(text, &day) && day > today;
}

int ts_clock_read(const char *text)
{
	long hours, minutes;

	if (!digits(text, 2, &hours) || text[2] != ':' || !digits(text + 3, 2, &minutes) ||
		text[5] || hours > 23 || minutes > 59)
		return -1;
	return (int)(hours * 60 + minutes);
}
