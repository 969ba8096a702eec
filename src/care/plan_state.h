/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From a plan, as somebody wrote it, to the state that advice.h judges. What the plan does not say
 * stays "not known".
 */
#ifndef TS_CARE_PLAN_STATE_H
#define TS_CARE_PLAN_STATE_H

#include <tapshoal/plan.h>

#include "care/advice.h"
#include "stock/waters.h"

/* The state points into `tank_solution`, so it stays put. */
struct ts_plan_state {
	const struct ts_waters *waters; /* lent */
	struct ts_solution tank_solution;
	struct ts_care_state state;
	int ill_line; /* of the stock: those that are ill; -1: not said which */
};

/*
 * `waters`: of this plan (ts_waters_make(), or ts_waters_now() where nobody asks how long the
 * buffer lasts). `today`: days since 1970-01-01, or -1: not known, then readings are of today.
 * Never fails.
 */
void ts_plan_state_make(const struct ts_plan *plan, const struct ts_waters *waters, long today,
	struct ts_plan_state *ret);
/*
 * `residents`: a match of each line of the stock that is in the tank, against waters->now.
 */
void ts_plan_state_residents(
	struct ts_plan_state *state, const struct ts_match *residents, size_t count);

/*
 * A tank's water beside what is poured into it, of which no plan tells: EC as read at 25 C, NAN
 * not known. Only the rows about danger, waters apart and the buffer (groups 2, 5, 6) speak then.
 */
void ts_care_state_of_waters(const struct ts_profile *tank, double tank_ec_us_cm,
	const struct ts_profile *change, double change_ec_us_cm, struct ts_care_state *ret);

/* Whether a line of the stock is in the tank already. */
bool ts_in_tank(const struct ts_stock_line *line);

#endif
