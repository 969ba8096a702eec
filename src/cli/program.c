/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One call of the program: finds the command, runs it, prints its answer and its findings once. The
 * exit code is a look-up over the status: 0 yes or given, 1 no or cannot be given, 2 wrong call or
 * input, 3 the system failed. main.c calls it once, the page (src/page) and the library's ask.h
 * again and again.
 */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"
#include "cli/kept.h"
#include "cli/results.h"
#include "cli/standing.h"
#include "home/paths.h"
#include "home/tap.h"
#include "records/practice.h"
#include "report/lint_result.h"
#include "report/output.h"
#include "words/glossary.h"

static const int exit_codes[] = {
	[TS_OK] = 0, [TS_NO] = 1, [TS_BAD_INPUT] = 2, [TS_NO_MEMORY] = 3, [TS_SYSTEM] = 3};

static void add_finding(struct ts_text *line, const struct ts_finding *f)
{
	if (f->place.file)
		ts_text_puts(line, f->place.file, ":", NULL);
	if (f->place.line) {
		ts_text_number(line, f->place.line, 0);
		ts_text_put(line, ":");
		ts_text_number(line, f->place.column, 0);
		ts_text_put(line, ":");
	}
	ts_text_puts(line, " ", f->place.path ? f->place.path : "", f->place.path ? ": " : "",
		f->what, "; ", f->remedy, " [", ts_severity_words[f->code->severity], ", ",
		f->code->id, "]", NULL);
}

/* Mostly one line; a pattern is shown below what is wrong with it. */
static void add_error(const struct session *s, struct ts_text *out)
{
	const char *error = ts_text_get(s->error);

	ts_text_put(out, "tapshoal: ");
	while (*error) {
		size_t len = strcspn(error, "\n");

		output_message(s->system, out, error, len);
		error += len + (error[len] == '\n');
	}
}

/* The same for programs, on one line. */
static void add_json(struct ts_text *out, const struct session *s)
{
	struct ts_messages_result rows = {.of = s->name};

	if (s->error->len)
		rows.error = ts_text_get(s->error);
	if (!s->told) {
		rows.finding_count = result_findings(s->arena, s->findings, &rows.findings);
		rows.more = s->findings->more;
	}
	if (rows.error || rows.finding_count)
		ts_result_json_line(out, TS_VERSION, "messages", &ts_result_messages, &rows);
}

/* All that is said beside the answer: the findings, the error of the call. */
static void add_messages(struct ts_text *out, const struct session *s)
{
	const bool no_place = s->options->format == FORMAT_CSV || s->options->format == FORMAT_ICS;
	struct ts_text line;

	if (s->json) {
		add_json(out, s);
		return;
	}
	ts_text_open(&line, NULL);
	for (size_t i = 0; i < s->findings->count && !s->told; i++) {
		ts_text_clear(&line);
		add_finding(&line, &s->findings->items[i]);
		output_message(s->system, out, ts_text_get(&line), line.len);
	}
	if (s->findings->more && !s->told) {
		ts_text_put(out, "and ");
		ts_text_number(out, (double)s->findings->more, 0);
		ts_text_put(out, " more\n");
	}
	out->failed |= line.failed;
	ts_text_drop(&line);
	/* A table of rows has no place for it. */
	for (size_t i = 0; no_place && i < s->taken.count; i++)
		output_message(s->system, out, s->taken.items[i], strlen(s->taken.items[i]));
	if (s->error->len)
		add_error(s, out);
}

static enum ts_status dispatch(
	struct session *s, const char *name, const struct command *command, struct options *options)
{
	const struct ts_screen screen = output_screen(
		s->system, s->options->output, s->options->no_color, s->options->ascii);
	enum ts_status status = TS_OK;
	const char *near;

	if (s->options->version) {
		command_version(s->out);
		return TS_OK;
	}
	if (command && s->options->help) {
		const char *part = s->options->argument_count ? s->options->arguments[0] : NULL;

		return options_help(s->out, command, part, &screen, s->error) ? TS_OK
									      : TS_BAD_INPUT;
	}
	if (!tap_today(s->system, s->options->today, &s->today)) {
		ts_text_puts(s->error, "--today '", s->options->today,
			"' is no day; write it like 2026-11-25", NULL);
		return TS_BAD_INPUT;
	}
	if (command)
		status = kept_resolve(s, command, options);
	if (command && !status && s->options->practice_file)
		status = ts_practice_load(
			s->system, s->options->practice_file, s->arena, s->practice, s->findings);
	if (command)
		return status ? status : command->run(s);
	if (!name) {
		if (s->options->help) {
			command_overview(s->out, &screen);
			return TS_OK;
		}
		status = standing(s);
		if (status != TS_NO)
			return status;
		command_first_words(
			s->out, paths_example(s->system, s->arena, "plans/livebearers.yaml"));
		return TS_BAD_INPUT;
	}
	near = command_nearest(name);
	ts_text_puts(s->error, "'", name, "' is no command; ", near ? "did you mean " : "",
		near ? near : "", near ? "? " : "", "tapshoal --help lists them", NULL);
	return TS_BAD_INPUT;
}

static bool no_memory(const struct session *s, const struct ts_text *messages)
{
	return s->out->failed || s->error->failed || s->arena->failed || s->findings->no_memory ||
	       messages->failed;
}

/* An answer that came piece by piece takes its place, unless something failed. */
static enum ts_status close_stream(struct session *s, enum ts_status status)
{
	return s->stream ? output_close(s->stream, s->keep && status <= TS_BAD_INPUT, s->error)
			 : TS_OK;
}

/* No file takes its place before it is known that all that is to be said can be. */
static enum ts_status finish(struct session *s, enum ts_status status, struct ts_text *messages)
{
	enum ts_status written = TS_OK, closed;

	settings_decimal(s);
	output_left_over(s->system, s->options->output, s->findings);
	add_messages(messages, s);
	if (status == TS_NO_MEMORY || no_memory(s, messages))
		status = TS_NO_MEMORY;
	else if (s->out->len && (status <= TS_NO || s->told) &&
		 (s->options->output ||
			 !s->system->paged(s->system->state, ts_text_get(s->out), s->out->len)))
		written = answer_may_replace(s, s->options->output)
				  ? TS_BAD_INPUT
				  : output_write(s->system, s->options->output, s->out, s->error);
	closed = close_stream(s, status);
	written = written ? written : closed;
	if (written) {
		if (s->wrote && written != TS_NO_MEMORY)
			ts_text_puts(s->error, "\n", s->wrote, NULL);
		ts_text_clear(messages);
		add_messages(messages, s);
		status = no_memory(s, messages) ? TS_NO_MEMORY : written;
	}
	if (status == TS_BAD_INPUT && !s->told && !written)
		ts_text_put(messages, ts_text_get(s->out)); /* no pipe takes it for an answer */
	return messages->failed ? TS_NO_MEMORY : status;
}

#define HELP_WORDS 4

/* "help", "help why" and "help why readings" are what these words are with "--help". */
static void take_help(int *argc, char ***argv, char *words[HELP_WORDS])
{
	static char flag[] = "--help";

	if (*argc < 2 || strcmp((*argv)[1], "help") != 0)
		return;
	words[0] = (*argv)[0];
	words[1] = *argc > 2 ? (*argv)[2] : flag;
	words[2] = flag;
	words[3] = *argc > 3 ? (*argv)[3] : NULL;
	*argc = words[3] ? 4 : 3;
	*argv = words;
}

/* Flags before the command are flags behind it. */
static const char *take_command(int argc, char **argv)
{
	int at = options_command_at(argc, argv);
	char *name = at ? argv[at] : NULL;

	if (!name)
		return NULL;
	for (; at > 1; at--)
		argv[at] = argv[at - 1];
	argv[1] = name;
	return name;
}

/* "help KH": what a word of the trade means; "help terms": which there are. */
static enum ts_status explain(struct session *s, const struct ts_term *term)
{
	const struct ts_screen screen = output_screen(s->system, NULL, false, false);
	struct ts_text all;

	if (term) {
		ts_text_puts(s->out, term->forms[0], "\n    ", NULL);
		ts_screen_wrap(s->out, term->says, 4, 4, &screen);
		ts_text_put(s->out, "\n    ");
		ts_screen_wrap(s->out, term->more, 4, 4, &screen);
		return TS_OK;
	}
	ts_text_open(&all, &s->arena->allocator);
	for (term = ts_glossary; term->says; term++)
		ts_text_puts(&all, all.len ? ", " : "tapshoal help TERM explains: ", term->forms[0],
			NULL);
	ts_screen_wrap(s->out, ts_text_get(&all), 0, 0, &screen);
	s->out->failed |= all.failed;
	ts_text_drop(&all);
	return TS_OK;
}

/* Records of the call's own are no part of a catalogue that is kept from call to call. */
static bool own_records(const struct options *options)
{
	return options->folders.count || options->only_catalogue;
}

static enum ts_status run(
	struct session *s, int argc, char **argv, struct options *options, struct ts_text *messages)
{
	char *words[HELP_WORDS];
	const struct command *command;
	const struct ts_term *term;
	enum ts_status status = TS_BAD_INPUT;
	struct ts_catalogue of_call;
	bool own, sentence;

	take_help(&argc, &argv, words);
	settings_load(s);
	options->settings = &s->settings;
	s->json = options_want_json(argc, argv);
	s->name = take_command(argc, argv);
	command = s->name ? command_named(s->name) : NULL;
	/* Words with a blank are no command: a sentence is asked of check. */
	sentence = s->name && !command && argv != words && strchr(s->name, ' ');
	if (sentence) {
		s->name = "check";
		command = command_named(s->name);
	}
	term = s->name && !command && argv == words ? ts_glossary_find(s->name) : NULL;
	ts_catalogue_open(&of_call, NULL);
	of_call.system = s->system;
	if (term || (s->name && argv == words && strcmp(s->name, "terms") == 0))
		status = explain(s, term);
	else if (s->name && !command)
		status = dispatch(s, s->name, NULL, options);
	else if (options_parse(command, s->name && !sentence ? argc - 1 : argc,
			 s->name && !sentence ? argv + 1 : argv, options, s->error)) {
		settings_take(s, options);
		own = s->catalogue->count && own_records(options);
		s->catalogue = own ? &of_call : s->catalogue;
		status = dispatch(s, s->name, command, options);
	}
	status = finish(s, status, messages);
	ts_catalogue_close(&of_call);
	return status;
}

enum ts_status program_ask(const struct ts_system *system, int argc, char **argv,
	struct ts_catalogue *catalogue, struct ts_text *messages)
{
	struct options options = {0};
	struct ts_arena arena;
	struct ts_findings findings;
	struct ts_practice practice;
	struct ts_text out, error;
	struct session session = {.options = &options,
		.system = system,
		.arena = &arena,
		.catalogue = catalogue,
		.findings = &findings,
		.practice = &practice,
		.out = &out,
		.error = &error};
	enum ts_status status;

	ts_practice_defaults(&practice);
	ts_arena_open(&arena, NULL);
	ts_findings_open(&findings, NULL);
	ts_text_open(&out, NULL);
	ts_text_open(&error, NULL);
	status = run(&session, argc, argv, &options, messages);
	ts_text_drop(&error);
	ts_text_drop(&out);
	ts_findings_drop(&findings);
	ts_arena_drop(&arena);
	return status;
}

int program_run(
	const struct ts_system *system, int argc, char **argv, struct ts_catalogue *catalogue)
{
	struct ts_text messages;
	enum ts_status status;

	ts_text_open(&messages, NULL);
	status = program_ask(system, argc, argv, catalogue, &messages);
	fputs(status == TS_NO_MEMORY ? "tapshoal: out of memory\n" : ts_text_get(&messages),
		stderr);
	ts_text_drop(&messages);
	return exit_codes[status];
}
