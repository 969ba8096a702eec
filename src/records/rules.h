/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What must hold in a file beyond what its rows can say: a date is a day, a tank has a size.
 */
#ifndef TS_RECORDS_RULES_H
#define TS_RECORDS_RULES_H

#include <tapshoal/plan.h>

/* False with findings where something does not hold; `file` names where it was read. */
bool ts_water_holds(const struct ts_water *water, const char *file, struct ts_findings *findings);
/* The same of a tank; texts of findings are made in `arena`, whose failure is no answer. */
bool ts_tank_holds(const struct ts_tank *tank, const char *file, struct ts_arena *arena,
	struct ts_findings *findings);

/* Was anything of the water measured? Date, method and the like are not it. */
bool ts_reading_measured(const struct ts_reading *reading);

#endif
