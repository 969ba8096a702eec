/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In which numbers a species is proposed: the least that is settled, a comfortable group, and half
 * as many again; the sexes are fixed by the record. The community search chooses among these.
 */
#ifndef TS_STOCK_LEVELS_H
#define TS_STOCK_LEVELS_H

#include <tapshoal/catalogue.h>

#define TS_LEVELS_MOST 3

/* So many animals of one species; `either`: sex does not matter or cannot be told. */
struct ts_level {
	unsigned males, females, either;
	bool comfortable; /* at least a comfortable group */
};

/* How many animals a level holds. */
unsigned ts_level_count(const struct ts_level *level);

/*
 * The levels of a species, smallest first; returns how many, 1..TS_LEVELS_MOST. A species kept
 * alone or as a pair has one. Ratios of the sexes are common practice, no source: one male to four
 * females at the most in a harem, two females to a male at the least.
 */
size_t ts_levels(const struct ts_species *species, struct ts_level ret[TS_LEVELS_MOST]);

#endif
