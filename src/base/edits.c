/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Edit distance over three rows of a fixed size: no allocation, so that it can serve the engine.
 */
#include "base/edits.h"

#include <stdbool.h>
#include <string.h>

static char lower(char c)
{
	return (char)(c >= 'A' && c <= 'Z' ? c + 32 : c);
}

static size_t least(size_t a, size_t b)
{
	return a < b ? a : b;
}

size_t ts_edits(const char *a, size_t a_len, const char *b, size_t b_len)
{
	size_t rows[3][TS_EDITS_LONGEST + 1];
	size_t *before = rows[0], *above = rows[1], *row = rows[2];

	if (a_len > TS_EDITS_LONGEST || b_len > TS_EDITS_LONGEST)
		return TS_EDITS_LONGEST;
	memset(before, 0, sizeof rows[0]);
	for (size_t j = 0; j <= b_len; j++)
		above[j] = j;
	for (size_t i = 1; i <= a_len; i++) {
		size_t *oldest = before;

		row[0] = i;
		for (size_t j = 1; j <= b_len; j++) {
			bool same = lower(a[i - 1]) == lower(b[j - 1]);

			row[j] = least(least(row[j - 1], above[j]) + 1, above[j - 1] + !same);
			if (i > 1 && j > 1 && lower(a[i - 1]) == lower(b[j - 2]) &&
				lower(a[i - 2]) == lower(b[j - 1]))
				row[j] = least(row[j], before[j - 2] + 1);
		}
		before = above;
		above = row;
		row = oldest;
	}
	return above[b_len];
}
