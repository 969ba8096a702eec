/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A whole plan judged: water, company, load, and the smallest repair. The rules of one and two
 * species are rules_*.c; names were looked up before (the catalogue stands above the engine).
 */
#ifndef TS_STOCK_CHECK_H
#define TS_STOCK_CHECK_H

#include "stock/waters.h"

/* Findings that are kept, gravest first; further ones are counted. */
#define TS_CHECK_MOST 1000
/* Groups up to which the repair is exact. */
#define TS_REPAIR_EXACT 16

enum ts_plan_verdict {
	TS_PLAN_SOUND,
	TS_PLAN_SOUND_IF, /* every concern has its condition */
	TS_PLAN_UNSOUND,
	TS_PLAN_CANNOT_SAY, /* a name, the water or its fit is not known */
	TS_PLAN_VERDICT__COUNT
};

/* All animals of one species in the plan. */
struct ts_plan_group {
	struct ts_group group;
	unsigned planned; /* of them, those that are not in the tank yet */
	bool wild;
	struct ts_match match;
};

/* One step of the repair: `to` of them instead of `from`; 0: leave them out. */
struct ts_repair_step {
	const struct ts_species *species;
	unsigned from, to;
};

struct ts_check {
	enum ts_plan_verdict verdict;
	struct ts_ruling *rulings; /* gravest first */
	size_t count, more;
	struct ts_plan_group *groups;
	size_t group_count;
	const struct ts_waters *waters; /* of the tank: now, poured in, settled */
	struct ts_profile profile;      /* of the water that the animals meet now: waters->now */
	bool water_known, load_known;
	bool nitrate_sensitive; /* some animal bears nitrate badly */
	struct ts_load load;
	struct ts_repair_step *repair; /* leaves no conflict that the stock list can mend */
	size_t repair_count;
	bool repair_proven; /* no smaller one exists */
};

/*
 * Judges a plan. `species[i]` is what stock[i].species means, NULL = nothing: then the verdict is
 * never sound. All results belong to `arena`. `today`: days since 1970-01-01; -1: not known, then
 * readings are of today. `practice` NULL: the table's own values. TS_NO_MEMORY, `*ret` then
 * untouched.
 */
TS_MUST_USE enum ts_status ts_check_plan(const struct ts_plan *plan,
	const struct ts_species *const *species, long today, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *ret);

/* Fills the repair of a check whose groups and load are there; used by ts_check_plan(). */
void ts_check_repair(const struct ts_plan *plan, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *check);

#endif
