/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a tank's log of events says of the tank as it is today, where its keeper says nothing else.
 */
#ifndef TS_CARE_HAPPENED_H
#define TS_CARE_HAPPENED_H

#include <tapshoal/plan.h>

#include "model/practice.h"

/* From so many days on a death is no news of today (as --deaths says); a power cut sooner. */
#define TS_HAPPENED_DEATHS_DAYS 28
/* A single one, with none before or since, sooner. */
#define TS_HAPPENED_DEATH_DAYS 14
#define TS_HAPPENED_POWER_DAYS 1

/*
 * Puts the routine that the log's changes of water amount to (stock/past.h) where the tank file's
 * own stands, which goes to `change_said`, unless both tell nearly the same; so with what
 * evaporates, by what was topped up, and with what, where the file says nothing of it.
 */
void ts_happened_routine(struct ts_tank *tank, long today, const struct ts_practice *practice);

/*
 * The same of a plan's tank; and fills the deaths of a plan with those of its tank's log within
 * four weeks of `today` (days since 1970-01-01), an event without a number being one animal, and
 * the hours that the filter stood with those of a power cut of today or yesterday, where the plan
 * says neither. `practice` NULL: the table's own values. Never fails.
 */
void ts_happened_take(struct ts_plan *plan, long today, const struct ts_practice *practice);

#endif
