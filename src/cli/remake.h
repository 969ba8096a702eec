/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The question of remake for a plan at hand, which due asks too.
 */
#ifndef TS_CLI_REMAKE_H
#define TS_CLI_REMAKE_H

#include "answers/remake.h"
#include "cli/commands.h"

/* Answers for that plan and the water poured in, with the wish of the flags. */
enum ts_status remake_of_plan(struct session *session, const struct ts_plan *plan,
	const struct ts_water *water, struct ts_remake_result *ret);

#endif
