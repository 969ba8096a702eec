/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One question of remake, from the call (remake.c) to the answer (remake_say.c).
 */
#ifndef TS_CLI_REMAKE_H
#define TS_CLI_REMAKE_H

#include <tapshoal/stock.h>

#include "base/arena.h"
#include "care/plan_state.h"
#include "cli/care_answer.h"

struct remake_call {
	struct answer answer; /* the water at hand */
	struct ts_plan plan;  /* a plan's, or a tank alone */
	bool has_plan;
	struct ts_waters waters;
	struct ts_plan_state state;
	struct ts_remake_wish wish;
	struct ts_resident *residents;
	double volume_l, change_percent;
	bool volume_known;
	struct ts_remake remake;
	enum ts_remake_verdict verdict;
	struct ts_advice danger; /* row NULL: none */
};

/*
 * Puts the question of the flags and computes the answer. A caller that has plan and water at hand
 * fills them in; else they are the call's. TS_NO: `verdict` says why there is no way.
 */
enum ts_status remake_ask(struct session *session, struct remake_call *call);

/* Who needs no work: of the wished those that bear the water as it is, and at most five others. */
void remake_as_it_is(struct session *session, const struct remake_call *call,
	struct ts_texts *ret_wished, struct ts_texts *ret_others);

/* Writes the answer in the format asked for. */
void remake_say(struct session *session, struct remake_call *call);

#endif
