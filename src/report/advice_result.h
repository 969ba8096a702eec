/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Advice as check and water tell it to programs, and as their pages read it.
 */
#ifndef TS_REPORT_ADVICE_RESULT_H
#define TS_REPORT_ADVICE_RESULT_H

#include "care/advice.h"
#include "report/result.h"

struct ts_advice_line {
	const char *id, *outcome, *urgency, *says;
	struct ts_texts because;
	const char *source;
};

extern const struct ts_result_shape ts_result_advice;

/* Which groups of the table (1..10) are wanted; bit 1 << group. */
#define TS_ADVICE_ALL_GROUPS 0x7feu
#define TS_ADVICE_OF_WATERS (1u << 2 | 1u << 5 | 1u << 6) /* where no animals are known */

/* One advice as a line; its texts are taken from `arena`. `residents`: those it was given for. */
void ts_advice_line_fill(struct ts_arena *arena, const struct ts_advice *advice,
	const struct ts_match *residents, struct ts_advice_line *ret);

/*
 * The advice on a state as lines in `arena`, the answer first; how many. Without any row of the
 * groups wanted: none.
 */
size_t ts_advice_lines(struct ts_arena *arena, const struct ts_care_state *state, unsigned groups,
	const struct ts_practice *practice, struct ts_advice_line **ret_lines);

#endif
