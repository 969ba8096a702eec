/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A plan as the words of a call give it, a file or animals and flags, for check and for what-if.
 */
#ifndef TS_CLI_CHECK_CALL_H
#define TS_CLI_CHECK_CALL_H

#include "cli/commands.h"

/*
 * The plan of a call and what its animals' names mean. A name that nobody knows, or that is of
 * several animals, leaves the plan and is told; NULL: there is none. Without a file and without
 * animals the plan is empty.
 */
TS_MUST_USE enum ts_status check_call_plan(struct session *session, struct ts_plan *ret_plan,
	const struct ts_species ***ret_species, const char **ret_unknown);

#endif
