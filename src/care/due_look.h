/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the two halves of due: due.c knows readings, days and their order, due_reasons.c the
 * table of reasons and when each holds. A condition looks at one value at a time, so that what
 * moves is tested sooner than what stands still.
 */
#ifndef TS_CARE_DUE_LOOK_H
#define TS_CARE_DUE_LOOK_H

#include "care/due.h"

/* What is known of one place, and the value of it that is looked at. */
struct ts_due_look {
	const struct ts_due_case *c;
	const struct ts_plan *plan; /* of a supply alone an empty one */
	const double *practice;
	const struct ts_practice *all;
	struct ts_reading *readings; /* lent, read alone */
	size_t count;
	enum ts_due_what what;
	const struct ts_reading *last; /* the newest with this value; NULL: none */
	struct ts_due_item *item;
};

/* A value in the unit that people read it in; false: not in this reading. */
bool ts_due_value(const struct ts_reading *reading, enum ts_due_what what, double *ret);
/* The newest reading with this value: by date, of those without one the last written. */
void ts_due_find_last(struct ts_due_look *look);
/* Whether a reason holds for the value looked at; fills in what it quotes. */
bool ts_due_holds(struct ts_due_look *look, enum ts_due_reason reason);

#endif
