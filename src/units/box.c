/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The three sides of a tank in one word, as people say it.
 */
#include <string.h>

#include "units/units.h"

/* One side up to `end`; a bare number is in `unit`. */
static bool side(const char *at, const char *end, const char *unit, double *ret)
{
	struct ts_measure read;
	struct ts_scan scan;
	char text[32];
	size_t len = (size_t)(end - at), unit_len = strlen(unit);
	bool bare = len && strspn(at, "0123456789., ") >= len;

	if (len + unit_len >= sizeof text)
		return false;
	memcpy(text, at, len);
	memcpy(text + len, unit, bare ? unit_len : 0);
	len += bare ? unit_len : 0;
	if (!ts_scan_measure(TS_Q_SIDE, text, len, &read, &scan) || read.kind != TS_MEASURE_VALUE ||
		!(read.low > 0))
		return false;
	*ret = read.low;
	return true;
}

bool ts_scan_box(const char *text, double ret_cm[3])
{
	const char *first = strpbrk(text, "xX"), *second = first ? strpbrk(first + 1, "xX") : NULL;
	const char *end = text + strlen(text), *unit = end;

	while (unit > text && strchr("cmhesinCMIN \"", unit[-1]))
		unit--;
	return second && side(text, first, *unit ? unit : "cm", &ret_cm[0]) &&
	       side(first + 1, second, *unit ? unit : "cm", &ret_cm[1]) &&
	       side(second + 1, end, *unit ? unit : "cm", &ret_cm[2]);
}
