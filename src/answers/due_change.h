/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Of what is due the change of water, what to bring for it, and the limits that come.
 */
#ifndef TS_ANSWERS_DUE_CHANGE_H
#define TS_ANSWERS_DUE_CHANGE_H

#include "answers/due.h"
#include "care/advice.h"

/* What is known when the change is asked for. */
struct ts_due_change_case {
	const struct ts_due_question *question;
	const struct ts_waters *waters;
	const struct ts_advice *advice; /* of the tank as it is, the answer first */
	size_t advice_count;
};

/*
 * Fills change, bring and alarms of `io`; a tank that is in danger, or in which nobody lives yet,
 * gets none. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_due_change_fill(const struct ts_asking *asking,
	const struct ts_due_change_case *asked, struct ts_due_result *io);

#endif
