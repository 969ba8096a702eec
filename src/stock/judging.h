/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of a check share: the plan while it is judged. Each looks at one side of it and
 * says what it finds: who is there and who goes with whom (check_company.c), the water that they
 * meet (check_water.c), what was read of the tank and what they make of it (check_tank.c).
 */
#ifndef TS_STOCK_JUDGING_H
#define TS_STOCK_JUDGING_H

#include "stock/check.h"
#include "stock/rules.h"

struct ts_judging {
	const struct ts_plan *plan;
	const struct ts_practice *practice;
	long today;
	const struct ts_check *before; /* of the same day, or NULL */
	struct ts_arena *arena;
	struct ts_check *out;
	size_t room;
	bool cannot;         /* something is not known that a yes needs */
	struct ts_load best; /* with feeding, plants and changes that are not given at their best */
};

/* Adds a ruling of the whole plan; NULL: no memory, which the arena keeps. */
struct ts_ruling *ts_judging_say(struct ts_judging *w, enum ts_rule_id rule,
	enum ts_severity severity, double ours, double its);

/* Lines of one species become one group; names that are none are asked. */
void ts_judge_groups(struct ts_judging *w, const struct ts_species *const *species);

/* What the animals live in, what is poured in, and where it goes. */
void ts_judge_waters(struct ts_judging *w);

/* Each group against the water that decides for it. */
void ts_judge_matches(struct ts_judging *w);

/* Poisons, waste and buffer, and what is known of filter and health. */
void ts_judge_tank(struct ts_judging *w);

/* Room, and who goes with whom. */
void ts_judge_company(struct ts_judging *w);

/* For how long it has lived there without a sign or a death in the tank; 0: not known, planned. */
double ts_lived_well_days(const struct ts_judging *w, const struct ts_plan_group *group);

/* Lives there for long enough, without a sign or a death, to prove that the water is borne. */
bool ts_lived_well(const struct ts_judging *w, const struct ts_plan_group *group);

#endif
