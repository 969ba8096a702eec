/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of species records over those of a call.
 */
#ifndef TS_CLI_LINT_RECORDS_H
#define TS_CLI_LINT_RECORDS_H

#include "cli/commands.h"

/* Runs every rule over the catalogue; records that break one are added to `io_broken`. */
enum ts_status lint_records(struct session *session, size_t *io_broken);

#endif
