/* SPDX-License-Identifier: Apache-2.0 */
/* What read.c and its answer for programs share. */
#ifndef TS_CLI_READ_H
#define TS_CLI_READ_H

#include "cli/commands.h"
#include "intake/report.h"

/* The whole answer of read as JSON. */
void read_json(struct session *session, const struct ts_report *report, const char *file);

#endif
