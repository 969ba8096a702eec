/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The day of a row, in the forms that notebooks have.
 */
#include <stdlib.h>
#include <string.h>

#include "base/date.h"
#include "records/notebook.h"

/* Three figures with one sign between them; false: it is something else. */
static bool three(const char *text, long ret[3], size_t digits[3], char *ret_sign, size_t *ret_len)
{
	const char *at = text;

	for (int i = 0; i < 3; i++) {
		digits[i] = strspn(at, "0123456789");
		if (!digits[i] || digits[i] > 4)
			return false;
		ret[i] = strtol(at, NULL, 10);
		at += digits[i];
		if (i == 2)
			break;
		if (!strchr("./-", *at) || !*at || (i && *at != *ret_sign))
			return false;
		*ret_sign = *at++;
		at += strspn(at, " ");
	}
	*ret_len = (size_t)(at - text);
	return true;
}

static bool write_day(long year, long month, long day, char out[11])
{
	char text[11];
	long number;

	if (year < 100)
		year += 2000;
	if (year < 1900 || year > 9999 || month < 1 || month > 12 || day < 1 || day > 31)
		return false;
	for (int i = 3; i >= 0; i--, year /= 10)
		text[i] = (char)('0' + year % 10);
	text[4] = text[7] = '-';
	text[5] = (char)('0' + month / 10);
	text[6] = (char)('0' + month % 10);
	text[8] = (char)('0' + day / 10);
	text[9] = (char)('0' + day % 10);
	text[10] = '\0';
	if (!ts_date_read(text, &number))
		return false;
	memcpy(out, text, sizeof text);
	return true;
}

/* Whatever stands behind the day is no part of it but an hour of its own. */
static bool ends_there(const char *text, size_t len)
{
	return text[len] == '\0' || text[len] == ' ' || text[len] == 'T' || text[len] == ',';
}

enum ts_status ts_notebook_day(const char *text, enum ts_day_order order, char out[11])
{
	long n[3] = {0};
	size_t digits[3], len;
	char sign = '\0';

	text += strspn(text, " ");
	if (!three(text, n, digits, &sign, &len) || !ends_there(text, len))
		return ts_date_meant(text, out) ? TS_OK : TS_BAD_INPUT;
	if (digits[0] == 4)
		return write_day(n[0], n[1], n[2], out) ? TS_OK : TS_BAD_INPUT;
	if (digits[2] != 4 && digits[2] != 2)
		return TS_BAD_INPUT;
	/* With dots the day stands first wherever dots are written. */
	if (sign == '.' || n[0] > 12 || order == TS_DAYS_DAY_FIRST || n[0] == n[1])
		return write_day(n[2], n[1], n[0], out) ? TS_OK : TS_BAD_INPUT;
	if (n[1] > 12 || order == TS_DAYS_MONTH_FIRST)
		return write_day(n[2], n[0], n[1], out) ? TS_OK : TS_BAD_INPUT;
	return TS_NO;
}

enum ts_day_order ts_notebook_order(const char *text)
{
	long n[3] = {0};
	size_t digits[3], len;
	char sign = '\0';

	text += strspn(text, " ");
	if (!three(text, n, digits, &sign, &len) || digits[0] == 4 || sign == '.')
		return TS_DAYS_ASKED;
	return n[0] > 12 ? TS_DAYS_DAY_FIRST : n[1] > 12 ? TS_DAYS_MONTH_FIRST : TS_DAYS_ASKED;
}
