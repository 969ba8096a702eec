/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the parts of rank: the call as a question (rank.c), a table of waters (batch.c).
 */
#ifndef TS_CLI_RANK_H
#define TS_CLI_RANK_H

#include "answers/rank_short.h"
#include "cli/commands.h"

/* What the call asks of the catalogue, whatever the water. */
struct rank_call {
	struct ts_asking asking;
	struct ts_rank_question question; /* without the water */
	struct ts_tank tank;
	struct ts_show_list *show;
};

/* Fills the call from the flags; the catalogue is loaded, `answer` holds tank and keeping. */
enum ts_status rank_call(
	struct session *session, const struct answer *answer, struct rank_call *ret);
/* The answer for the water of `answer`, in the memory of `session`. False: no memory. */
bool rank_answer(struct session *session, const struct rank_call *call, const struct answer *answer,
	struct ts_rank_result *ret);

/* rank --batch: a line a row; `only`: bits of the verdicts that are named, 0: those it suits. */
enum ts_status rank_batch(struct session *session, unsigned only);

#endif
