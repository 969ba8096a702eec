/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Fixed-decimal numbers without locale and without stdio. Neighbours: units/ reads quantities
 * with ts_number_read(), every screen writes with ts_number_write().
 */
#include "base/number.h"

#include <math.h>
#include <stdint.h>

static const double powers[] = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12,
	1e13, 1e14, 1e15, 1e16, 1e17, 1e18};

static bool write_scaled(char out[TS_NUMBER_ROOM], bool minus, uint64_t scaled, int decimals)
{
	char digits[24];
	int count = 0;
	char *at = out;

	do {
		digits[count++] = (char)('0' + scaled % 10);
		scaled /= 10;
	} while (scaled || count <= decimals);
	if (minus)
		*at++ = '-';
	for (int i = count - 1; i >= 0; i--) {
		*at++ = digits[i];
		if (i == decimals && i > 0)
			*at++ = '.';
	}
	*at = '\0';
	return true;
}

bool ts_number_write(char out[TS_NUMBER_ROOM], double value, int decimals)
{
	double scaled;
	uint64_t whole;

	out[0] = '\0';
	if (decimals < 0 || decimals > TS_DECIMALS_MOST || !isfinite(value))
		return false;
	/* The nudge makes 0.285 at two decimals 0.29, as a reader of decimals expects. */
	scaled = fabs(value) * powers[decimals] * (1 + 4e-16) + 0.5;
	if (scaled >= 1e18)
		return false;
	whole = (uint64_t)scaled;
	return write_scaled(out, value < 0 && whole > 0, whole, decimals);
}

bool ts_number_write_short(char out[TS_NUMBER_ROOM], double value, int decimals)
{
	char *end;

	if (!ts_number_write(out, value, decimals))
		return false;
	if (decimals == 0)
		return true;
	for (end = out; *end; end++)
		;
	while (end[-1] == '0')
		*--end = '\0';
	if (end[-1] == '.')
		*--end = '\0';
	return true;
}

size_t ts_number_read(const char *text, size_t len, double *ret, bool *ret_comma_thousands)
{
	uint64_t digits = 0;
	int kept = 0, scale = 0, whole_digits = 0;
	size_t at = 0, after = 0;
	bool fraction = false;

	for (; at < len; at++) {
		char c = text[at];

		if ((c == '.' || c == ',') && !fraction && whole_digits && at + 1 < len &&
			text[at + 1] >= '0' && text[at + 1] <= '9') {
			fraction = true;
			continue;
		}
		if (c < '0' || c > '9')
			break;
		whole_digits += !fraction;
		after += fraction;
		if (kept < 18) {
			digits = digits * 10 + (uint64_t)(c - '0');
			kept += digits > 0;
			scale -= fraction;
		} else {
			scale += !fraction;
		}
	}
	if (!whole_digits)
		return 0;
	*ret = (double)digits;
	for (; scale > 18; scale -= 18)
		*ret *= powers[18];
	for (; scale < -18; scale += 18)
		*ret /= powers[18];
	*ret = scale < 0 ? *ret / powers[-scale] : *ret * powers[scale];
	if (ret_comma_thousands)
		*ret_comma_thousands = after == 3;
	return at;
}

double ts_number_quantised(double value)
{
	return floor(value * 1e6 + 0.5) / 1e6;
}

double ts_number_tens(int power)
{
	return powers[power];
}
