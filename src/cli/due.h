/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the two halves of due share: due.c asks and fills the result, due_say.c writes it as text,
 * page and calendar.
 */
#ifndef TS_CLI_DUE_H
#define TS_CLI_DUE_H

#include "cli/commands.h"
#include "report/due_result.h"

/* Writes the answer as a document. */
void due_write(struct session *session, const struct ts_due_result *r);

/* Writes the answer as a calendar. */
void due_calendar(struct session *session, const struct ts_due_result *r);

#endif
