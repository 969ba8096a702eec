/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of why share: why.c asks about one water, why_waters.c about several.
 */
#ifndef TS_CLI_WHY_H
#define TS_CLI_WHY_H

#include "cli/commands.h"

/* The species of the call; names that are none are lines of the session's error. */
enum ts_status why_named(struct session *session, const struct ts_species ***ret);

/* The command where several waters were given. */
enum ts_status why_waters(struct session *session);

#endif
