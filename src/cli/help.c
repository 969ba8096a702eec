/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a command takes, as its --help shows it: the rows of options.c, wrapped to the screen.
 */
#include "cli/commands.h"

struct help {
	struct ts_text *text;
	const struct ts_screen *screen;
	size_t says_at; /* the column at which a flag is explained */
	int group;      /* the last one that had its heading */
};

static void help_line(void *state, const struct option_view *option)
{
	static const char *const headings[] = {
		"flags:", "readings of the water, as flags (GH and KH bare are dH):",
		"words of a record, as flags:"};
	struct help *help = state;
	size_t start;

	if (help->group != (int)option->group)
		ts_screen_wrap(help->text, headings[option->group], 0, 2, help->screen);
	help->group = (int)option->group;
	start = help->text->len;
	ts_text_puts(help->text, "  ", option->short_name ? option->short_name : "",
		option->short_name ? ", " : "", option->name, option->takes ? " " : "",
		option->takes, NULL);
	if (help->text->len - start + 1 > help->says_at) {
		ts_text_put(help->text, "\n");
		start = help->text->len;
	}
	ts_text_fill(help->text, ' ', help->says_at - (help->text->len - start));
	ts_screen_wrap(help->text, option->says, help->says_at, help->says_at, help->screen);
}

void options_help(
	struct ts_text *text, const struct command *command, const struct ts_screen *screen)
{
	struct help help = {text, screen, screen->columns < 70 ? 6 : 29, -1};

	ts_text_puts(text, "tapshoal ", command->usage, "\n    ", NULL);
	ts_screen_wrap(text, command->says, 4, 4, screen);
	ts_text_put(text, "\n");
	options_each(command, help_line, &help);
	if (!command->file)
		return;
	ts_text_put(text, "\n");
	ts_screen_wrap(text,
		"a tank that runs, as a file; every line but stock may be left out:", 0, 2, screen);
	ts_text_put(text, command->file);
}
