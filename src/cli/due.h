/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the parts of due share: due.c asks, due_fill.c makes the result of it, due_say.c writes that
 * as text, page and calendar.
 */
#ifndef TS_CLI_DUE_H
#define TS_CLI_DUE_H

#include "care/due.h"
#include "cli/remake.h"
#include "report/due_result.h"

struct due_call {
	struct session *s;
	struct ts_plan plan; /* of a plan; of a tank or a water what there is of one */
	bool has_tank, has_supply;
	struct ts_waters *waters;
	struct remake_call *remake; /* NULL: none was asked for */
	struct ts_due due;
	struct ts_text text; /* scratch */
	struct ts_due_result r;
};

/* Fills the rest of the result: tests, stages, notes and the verdict. */
void due_fill(struct due_call *call);

/* Writes the answer as a document. */
void due_write(struct session *session, const struct ts_due_result *r);

/* Writes the answer as a calendar. */
void due_calendar(struct session *session, const struct ts_due_result *r);

#endif
