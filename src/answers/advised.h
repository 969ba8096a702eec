/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Advice on a state as a part of answers.
 */
#ifndef TS_ANSWERS_ADVISED_H
#define TS_ANSWERS_ADVISED_H

#include "base/arena.h"
#include "care/advice.h"

struct ts_advice_line {
	const char *id, *outcome, *urgency, *says;
	struct ts_texts because;
	const char *source;
};

/* Which groups of the table (1..10) are wanted; bit 1 << group. */
#define TS_ADVICE_OF_WATERS (1u << 2 | 1u << 5 | 1u << 6) /* where no animals are known */

/*
 * The advice on a state as lines in `arena`, the answer first; how many. Without any row of the
 * groups wanted: none.
 */
size_t ts_advice_lines(struct ts_arena *arena, const struct ts_care_state *state, unsigned groups,
	const struct ts_practice *practice, struct ts_advice_line **ret_lines);

#endif
