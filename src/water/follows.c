/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table: three kinds of origin, three places of an interval.
 */
#include "water/follows.h"

/* clang-format off */
static const enum ts_follows may[TS_FROM__COUNT][TS_BEYOND__COUNT] = {
	/*                      inside               a limit in it        beyond */
	[TS_FROM_NONE]     = {TS_FOLLOWS_QUESTION, TS_FOLLOWS_QUESTION, TS_FOLLOWS_QUESTION},
	[TS_FROM_ASSUMED]  = {TS_FOLLOWS_NOTE,     TS_FOLLOWS_NOTE,     TS_FOLLOWS_CONCERN},
	[TS_FROM_RESULT]   = {TS_FOLLOWS_NOTHING,  TS_FOLLOWS_NOTHING,  TS_FOLLOWS_NOTE},
	[TS_FROM_COMPUTED] = {TS_FOLLOWS_NOTHING,  TS_FOLLOWS_CONCERN,  TS_FOLLOWS_CONFLICT},
	[TS_FROM_FRESH]    = {TS_FOLLOWS_NOTHING,  TS_FOLLOWS_CONCERN,  TS_FOLLOWS_CONFLICT},
	[TS_FROM_SUPPLY]   = {TS_FOLLOWS_NOTHING,  TS_FOLLOWS_CONCERN,  TS_FOLLOWS_CONFLICT},
	[TS_FROM_STOOD]    = {TS_FOLLOWS_NOTHING,  TS_FOLLOWS_CONCERN,  TS_FOLLOWS_CONFLICT},
	[TS_FROM_TANK]     = {TS_FOLLOWS_NOTHING,  TS_FOLLOWS_CONCERN,  TS_FOLLOWS_CONFLICT},
};
/* clang-format on */

enum ts_beyond ts_beyond_of(double low, double high, const struct ts_range *limits)
{
	if (low >= limits->low && high <= limits->high)
		return TS_BEYOND_NOT;
	return high < limits->low || low > limits->high ? TS_BEYOND_WHOLLY : TS_BEYOND_PARTLY;
}

enum ts_follows ts_follows(enum ts_number_from from, enum ts_beyond beyond, enum ts_follows rule)
{
	enum ts_follows most = may[from][beyond];

	return most < rule ? most : rule;
}

enum ts_follows ts_span_follows(
	const struct ts_span *span, const struct ts_range *limits, enum ts_follows rule)
{
	enum ts_beyond beyond;

	if (!span->given)
		return ts_follows(TS_FROM_NONE, TS_BEYOND_NOT, rule);
	beyond = ts_beyond_of(span->low, span->high, limits);
	if (span->exposure && beyond == TS_BEYOND_PARTLY)
		beyond = TS_BEYOND_WHOLLY;
	return ts_follows(span->from, beyond, rule);
}
