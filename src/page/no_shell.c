/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In the place of cli/complete.c: no shell completes words in a page.
 */
#include "cli/commands.h"

enum ts_status command_complete(struct session *s)
{
	ts_text_put(
		s->error, "a page has no shell whose words could be completed; ask on a terminal");
	return TS_BAD_INPUT;
}
