/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Numbers to text and back, the same in every locale and on every machine: the reason why neither
 * printf nor strtod is used for data.
 */
#ifndef TS_BASE_NUMBER_H
#define TS_BASE_NUMBER_H

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

/* Bytes that hold any number written here, with its NUL. */
#define TS_NUMBER_ROOM 32
/* Decimals that can be asked for: 0..9. */
#define TS_DECIMALS_MOST 9

/*
 * Writes `value` rounded to `decimals` (0..9, half away from zero), never "-0". False, and an empty
 * string, when it is not finite or has more than 18 digits in all.
 */
bool ts_number_write(char out[TS_NUMBER_ROOM], double value, int decimals);

/* The same with trailing zeros of the fraction left out. */
bool ts_number_write_short(char out[TS_NUMBER_ROOM], double value, int decimals);

/*
 * Reads an unsigned decimal number at the start of `text` (`len` bytes): digits, at most one of
 * '.' or ',' followed by digits; no exponent, no sign, no hex. Returns the bytes read, 0 when there
 * is no digit. `*ret` is exact to the last bit up to 15 digits. `*ret_comma_thousands`, if given,
 * tells that the only separator is followed by exactly three digits ("1,200": two readings).
 */
size_t ts_number_read(const char *text, size_t len, double *ret, bool *ret_comma_thousands);

/*
 * The lesser, and the greater, of two; where one is not a number, the second. In C's own fmin() and
 * fmax() the other one counts then, so that they are calls.
 */
static inline double ts_min(double a, double b)
{
	return a < b ? a : b;
}

static inline double ts_max(double a, double b)
{
	return a > b ? a : b;
}

/* A value on the grid of 1e-6, for sort keys that must not depend on the last bits. */
double ts_number_quantised(double value);

/* 10 to the power of 0 to 18, exactly. */
double ts_number_tens(int power);

/*
 * Of a base that is not negative. C's own pow() and log2() each bring tables of 5 kB along, which
 * cannot be compressed, and are more exact than anything here asks for.
 */
static inline double ts_power(double base, double exponent)
{
	return exp(exponent * log(base));
}

static inline double ts_log2(double value)
{
	return log(value) / 0.693147180559945309;
}

#endif
