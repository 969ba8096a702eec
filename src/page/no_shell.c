/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In the place of cli/complete.c, cli/init.c, cli/help.c and cli/lint_records.c: a page has no
 * shell whose words could be completed, no folder to begin in, no flags to look up and no records
 * to mend.
 */
#include "cli/commands.h"
#include "cli/lint_records.h"

enum ts_status command_complete(struct session *s)
{
	ts_text_put(s->error, "only on a terminal");
	return TS_BAD_INPUT;
}

enum ts_status command_init(struct session *s)
{
	return command_complete(s);
}

bool options_help(struct ts_text *text, const struct command *command, const char *part,
	const struct ts_screen *screen, struct ts_text *error)
{
	(void)text, (void)command, (void)part, (void)screen;
	ts_text_put(error, "only on a terminal");
	return false;
}

enum ts_status lint_records(struct session *s, size_t *io_broken)
{
	(void)io_broken;
	return s->catalogue->count ? command_complete(s) : TS_OK;
}
