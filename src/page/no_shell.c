/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In the place of cli/complete.c and cli/init.c: a page has neither a shell whose words could be
 * completed nor a folder to begin in.
 */
#include "cli/commands.h"

enum ts_status command_complete(struct session *s)
{
	ts_text_put(s->error, "only on a terminal");
	return TS_BAD_INPUT;
}

enum ts_status command_init(struct session *s)
{
	return command_complete(s);
}
