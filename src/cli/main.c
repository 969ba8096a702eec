/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The program: finds the command, runs it, prints its answer and its findings once. The exit code
 * is a look-up over the status: 0 yes or given, 1 no or cannot be given, 2 wrong call or input,
 * 3 the system failed.
 */
#include <signal.h>
#include <stdio.h>

#include "cli/commands.h"
#include "cli/output.h"
#include "cli/tap.h"
#include "records/practice.h"

static const int exit_codes[] = {
	[TS_OK] = 0, [TS_NO] = 1, [TS_BAD_INPUT] = 2, [TS_NO_MEMORY] = 3, [TS_SYSTEM] = 3};

static void print_findings(const struct ts_findings *findings)
{
	static const char *const words[] = {"note", "concern", "conflict", "error"};
	struct ts_text line;

	ts_text_open(&line, NULL);
	for (size_t i = 0; i < findings->count; i++) {
		const struct ts_finding *f = &findings->items[i];

		line.len = 0;
		if (f->place.file)
			ts_text_puts(&line, f->place.file, ":", NULL);
		if (f->place.line) {
			ts_text_number(&line, f->place.line, 0);
			ts_text_put(&line, ":");
			ts_text_number(&line, f->place.column, 0);
			ts_text_put(&line, ":");
		}
		ts_text_puts(&line, " ", f->place.path ? f->place.path : "",
			f->place.path ? ": " : "", f->what, "; ", f->remedy, " [",
			words[f->code->severity], ", ", f->code->id, "]", NULL);
		output_tell(&line);
	}
	ts_text_drop(&line);
	if (findings->more)
		fprintf(stderr, "and %zu more\n", findings->more);
}

static enum ts_status dispatch(struct session *s, const char *name, const struct command *command)
{
	enum ts_status status = TS_OK;
	const char *near;

	if (s->options->version) {
		command_version(s->out);
		return TS_OK;
	}
	if (command && s->options->help) {
		options_help(s->out, command);
		return TS_OK;
	}
	if (!tap_today(s->options->today, &s->today)) {
		ts_text_puts(s->error, "--today '", s->options->today,
			"' is no day; write it like 2026-11-25", NULL);
		return TS_BAD_INPUT;
	}
	if (command && s->options->practice_file)
		status = ts_practice_load(
			s->options->practice_file, s->arena, s->practice, s->findings);
	if (command)
		return status ? status : command->run(s);
	if (!name) {
		if (s->options->help)
			command_overview(s->out);
		else
			command_first_words(s->out);
		return s->options->help ? TS_OK : TS_BAD_INPUT;
	}
	near = command_nearest(name);
	ts_text_puts(s->error, "'", name, "' is no command; ", near ? "did you mean " : "",
		near ? near : "", near ? "? " : "", "tapshoal --help lists them", NULL);
	return TS_BAD_INPUT;
}

static enum ts_status finish(struct session *s, enum ts_status status)
{
	bool no_memory = s->out->failed || s->error->failed || s->arena->failed ||
			 s->findings->no_memory || status == TS_NO_MEMORY;

	if (!s->told)
		print_findings(s->findings);
	if (no_memory) {
		fputs("tapshoal: out of memory\n", stderr);
		return TS_NO_MEMORY;
	}
	if (s->out->len && (status <= TS_NO || s->told) &&
		!output_write(s->options->output, s->out, s->error))
		status = TS_SYSTEM;
	if (s->error->len) {
		struct ts_text message;

		ts_text_open(&message, NULL);
		ts_text_puts(&message, "tapshoal: ", ts_text_get(s->error), NULL);
		output_tell(&message);
		ts_text_drop(&message);
	}
	if (status == TS_BAD_INPUT && !s->told)
		fputs(ts_text_get(s->out), stderr); /* no pipe takes it for an answer */
	return status;
}

int main(int argc, char **argv)
{
	struct options options;
	struct ts_arena arena;
	struct ts_catalogue catalogue;
	struct ts_findings findings;
	struct ts_practice practice;
	struct ts_text out, error;
	struct session session = {.options = &options,
		.arena = &arena,
		.catalogue = &catalogue,
		.findings = &findings,
		.practice = &practice,
		.out = &out,
		.error = &error};
	const char *name = argc > 1 && argv[1][0] != '-' ? argv[1] : NULL;
	const struct command *command = name ? command_named(name) : NULL;
	enum ts_status status = TS_BAD_INPUT;

	signal(SIGPIPE, SIG_IGN); /* a reader that saw enough is no failure */
	ts_practice_defaults(&practice);
	ts_arena_open(&arena, NULL);
	ts_catalogue_open(&catalogue, NULL);
	ts_findings_open(&findings, NULL);
	ts_text_open(&out, NULL);
	ts_text_open(&error, NULL);
	options = (struct options){0};
	if (name && !command)
		status = dispatch(&session, name, NULL);
	else if (options_parse(
			 command, name ? argc - 1 : argc, name ? argv + 1 : argv, &options, &error))
		status = dispatch(&session, name, command);
	status = finish(&session, status);
	ts_text_drop(&error);
	ts_text_drop(&out);
	ts_findings_drop(&findings);
	ts_catalogue_close(&catalogue);
	ts_arena_drop(&arena);
	return exit_codes[status];
}
