/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In which numbers a species is proposed: the least that is settled, a comfortable group, half as
 * many again, twice and three times as many; the sexes are fixed by the record. The community
 * search chooses among these.
 */
#ifndef TS_STOCK_LEVELS_H
#define TS_STOCK_LEVELS_H

#include <tapshoal/stock.h>

#define TS_LEVELS_MOST 10

struct ts_level {
	struct ts_group group;
	bool comfortable; /* at least a comfortable group */
	bool crowd;  /* so many are for a large tank: never what a full one is brought down to */
	bool rivals; /* large males among themselves: for a tank in which they keep out of sight */
};

/*
 * The levels of a species, smallest first; returns how many, 1..TS_LEVELS_MOST. A species kept
 * alone or as a pair has one; one that is settled as a pair as well begins with it. Those that bear
 * young are had as males alone too, so that nobody has to find homes for the young. Ratios of the
 * sexes are common practice, no source: one male in a harem, but one to each four females in the
 * crowds of ten and more that divide the blows; two females to a male at the least otherwise.
 */
size_t ts_levels(const struct ts_species *species, struct ts_level ret[TS_LEVELS_MOST]);

#endif
