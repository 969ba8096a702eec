/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a command takes, as its --help shows it: the rows of options.c in 80 columns.
 */
#include "cli/commands.h"
#include "report/screen.h"

#define SAYS_AT 29 /* the column at which a flag is explained */

struct help {
	struct ts_text *text;
	int group; /* the last one that had its heading */
};

static void help_line(void *state, const struct option_view *option)
{
	static const char *const headings[] = {"flags:\n",
		"readings of the water, as flags (ions need a unit; GH and KH bare are dH):\n",
		"words of a record, as flags:\n"};
	struct help *help = state;
	size_t start;

	if (help->group != (int)option->group)
		ts_text_put(help->text, headings[option->group]);
	help->group = (int)option->group;
	start = help->text->len;
	ts_text_puts(help->text, "  ", option->short_name ? option->short_name : "",
		option->short_name ? ", " : "", option->name, option->takes ? " " : "",
		option->takes, NULL);
	if (help->text->len - start > SAYS_AT - 1) {
		ts_text_put(help->text, "\n");
		start = help->text->len;
	}
	ts_text_fill(help->text, ' ', SAYS_AT - (help->text->len - start));
	ts_screen_wrap(help->text, option->says, SAYS_AT, SAYS_AT, &ts_screen_plain);
}

void options_help(struct ts_text *text, const struct command *command)
{
	struct help help = {text, -1};

	ts_text_puts(text, "tapshoal ", command->usage, "\n    ", NULL);
	ts_screen_wrap(text, command->says, 4, 4, &ts_screen_plain);
	ts_text_put(text, "\n");
	options_each(command, help_line, &help);
}
