/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In the place of cli/complete.c and cli/help.c: a page has no shell whose words could be
 * completed, and no flags to look up. The commands of a shell, and the settings, commands.c and
 * settings.h leave out by themselves.
 */
#include "cli/commands.h"

enum ts_status command_complete(struct session *s)
{
	(void)s; /* kept.c asks whether a call is one */
	return TS_BAD_INPUT;
}

bool options_help(struct ts_text *text, const struct command *command, const char *part,
	const struct ts_screen *screen, struct ts_text *error)
{
	(void)text, (void)command, (void)part, (void)screen;
	ts_text_put(error, "only on a terminal");
	return false;
}
