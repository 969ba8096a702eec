/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a command takes, as its --help shows it: usage, two examples, the rows of options.c wrapped
 * to the screen. What most calls do not need (every reading, every word of a record, a whole file)
 * stands in parts of its own.
 */
#include "cli/commands.h"

#include <string.h>

#include "cli/examples.h"

#define EXAMPLES_SHOWN 2

struct help {
	struct ts_text *text;
	const struct ts_screen *screen;
	size_t says_at; /* the column at which a flag is explained */
	int group;      /* the options that are shown */
	bool common;    /* of them those of every command, else the others */
};

static void help_line(void *state, const struct option_view *option)
{
	struct help *help = state;
	size_t start = help->text->len;

	if (help->group != (int)option->group || help->common != option->common)
		return;
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

static void help_options(
	struct help *help, const struct command *command, const char *head, int group, bool common)
{
	ts_screen_wrap(help->text, head, 0, 2, help->screen);
	help->group = group;
	help->common = common;
	options_each(command, help_line, help);
}

/* A call as it is typed; a line that is too long goes on behind a backslash, as a shell reads it.
 */
static void write_call(struct help *help, const char *call)
{
	size_t column = 2;
	bool quoted = false, fresh = true;

	ts_text_put(help->text, "  ");
	while (*call) {
		size_t len = 0;

		for (; call[len] && (quoted || call[len] != ' '); len++)
			quoted ^= call[len] == '"';
		if (!fresh && column + 1 + len + 2 > help->screen->columns) {
			ts_text_put(help->text, " \\\n      ");
			column = 6;
		} else if (!fresh) {
			ts_text_put(help->text, " ");
			column++;
		}
		ts_text_add(help->text, call, len);
		column += len;
		fresh = false;
		call += len + (call[len] == ' ');
	}
	ts_text_put(help->text, "\n");
}

static void help_examples(struct help *help, const struct command *command)
{
	size_t shown = 0;

	for (size_t i = 0; i < EXAMPLES && shown < EXAMPLES_SHOWN; i++) {
		if (strcmp(examples[i].command, command->name) != 0)
			continue;
		shown++;
		if (shown == 1)
			ts_text_put(help->text, "\n");
		write_call(help, examples[i].call);
		ts_text_put(help->text, "      ");
		ts_screen_wrap(help->text, examples[i].says, 6, 6, help->screen);
	}
	ts_text_put(help->text, "\n");
}

/* What a command has beside its flags. */
static bool has_readings(const struct command *command)
{
	return command->readings;
}

static bool has_words(const struct command *command)
{
	return command->traits;
}

static bool has_file(const struct command *command)
{
	return command->file;
}

static void write_readings(struct help *help, const struct command *command)
{
	help_options(help, command,
		"what was measured, as flags (GH and KH without a unit are dH):", OPTION_READING,
		false);
}

static void write_words(struct help *help, const struct command *command)
{
	help_options(help, command, "words of a record, as flags:", OPTION_TRAIT, false);
}

static void write_file(struct help *help, const struct command *command)
{
	ts_screen_wrap(help->text,
		"a tank that runs, as a file; every line but stock may be left out:", 0, 2,
		help->screen);
	ts_text_put(help->text, command->file);
}

static const struct {
	const char *name, *says;
	bool (*has)(const struct command *command);
	void (*write)(struct help *help, const struct command *command);
} parts[] = {
	{"readings", "what was measured, such as --GH 14 --KH 9 --pH 7.6", has_readings,
		write_readings},
	{"words", "words of a record, such as --swims bottom", has_words, write_words},
	{"file", "a tank that runs, as a file to fill in", has_file, write_file},
};
#define PARTS (sizeof parts / sizeof *parts)

static void help_parts(struct help *help, const struct command *command)
{
	bool any = false;

	for (size_t i = 0; i < PARTS; i++) {
		struct option_view view = {
			.name = parts[i].name, .says = parts[i].says, .group = OPTION_FLAG};
		char call[80];

		if (!parts[i].has(command))
			continue;
		if (!any)
			ts_text_put(help->text, "\nand more:\n");
		any = true;
		ts_text_fit(call, sizeof call, "tapshoal help ", command->name, " ", parts[i].name,
			NULL);
		view.name = call;
		help->group = OPTION_FLAG;
		help->common = false;
		help_line(help, &view);
	}
}

static bool help_part(
	struct help *help, const struct command *command, const char *part, struct ts_text *error)
{
	bool any = false;

	for (size_t i = 0; i < PARTS; i++) {
		if (strcmp(part, parts[i].name) != 0 || !parts[i].has(command))
			continue;
		parts[i].write(help, command);
		return true;
	}
	ts_text_puts(error, "the help of ", command->name, " has no part '", part, "'; ", NULL);
	for (size_t i = 0; i < PARTS; i++) {
		if (!parts[i].has(command))
			continue;
		ts_text_puts(error, any ? ", " : "it has ", parts[i].name, NULL);
		any = true;
	}
	if (!any)
		ts_text_puts(error, "tapshoal ", command->name, " --help is all of it", NULL);
	return false;
}

bool options_help(struct ts_text *text, const struct command *command, const char *part,
	const struct ts_screen *screen, struct ts_text *error)
{
	struct help help = {
		.text = text, .screen = screen, .says_at = screen->columns < 70 ? 6 : 29};

	if (part)
		return help_part(&help, command, part, error);
	ts_text_puts(text, "tapshoal ", command->usage, "\n    ", NULL);
	ts_screen_wrap(text, command->says, 4, 4, screen);
	help_examples(&help, command);
	help_options(&help, command, "its flags:", OPTION_FLAG, false);
	help_parts(&help, command);
	ts_text_put(text, "\n");
	help_options(&help, command, "flags of every command:", OPTION_FLAG, true);
	return true;
}
