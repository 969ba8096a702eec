/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Numbers and sizes that grow: what half a year makes of animals that bear young by themselves, and
 * of those that were bought small. The young are those of the rule of living together (rules.h), so
 * that check says the same number.
 */
#ifndef TS_STOCK_GROWTH_H
#define TS_STOCK_GROWTH_H

#include <tapshoal/stock.h>

#include "model/practice.h"

struct ts_growth {
	unsigned now;
	struct ts_estimate then;      /* animals; as now where none are born */
	bool breeds;                  /* young are born, and some grow up */
	double size_cm, size_then_cm; /* NAN: not known; taken as grown */
	double grown_months;          /* until they are nearly grown; 0: they are, NAN: not known */
};

/*
 * After so many months. The young of the mothers there now alone: their own young are not counted
 * (a livebearer bears at three to four months), so that it is rather too few. How long fish take
 * to grow is an estimate from memory.
 */
void ts_growth_of(const struct ts_group *group, double months, const struct ts_practice *practice,
	struct ts_growth *ret);

/* Young that the mothers of a group bear in a month, and males are there for; 0: none. */
double ts_growth_born_month(const struct ts_group *group);

#endif
