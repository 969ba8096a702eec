/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How each tank stands that is kept by name (kept.h): what the bare name of the program says once
 * something is kept.
 */
#ifndef TS_CLI_STANDING_H
#define TS_CLI_STANDING_H

#include "answers/check.h"
#include "answers/due.h"
#include "cli/commands.h"

/* A plan file checked, and what is due of any file of ours, without being shown. */
enum ts_status check_of(struct session *session, const char *file, struct ts_check_result *ret);
enum ts_status due_of(struct session *session, const char *file, struct ts_due_result *ret);

/* The screen; TS_NO, and nothing is written, where nothing is kept by name. */
TS_MUST_USE enum ts_status standing(struct session *session);

#endif
