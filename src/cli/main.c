/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The program: finds the command, runs it, prints its answer and its findings once. The exit code
 * is a look-up over the status: 0 yes or given, 1 no or cannot be given, 2 wrong call or input,
 * 3 the system failed.
 */
#include <stdio.h>
#include <string.h>

#include "cli/commands.h"
#include "model/shape.h"

struct command {
	const char *name;
	enum ts_status (*run)(struct session *session);
	const char *usage, *says;
};

static const struct command commands[] = {
	{"lint", command_lint, "lint FILE...", "checks species records, files or folders"},
	{"rank", command_rank, "rank", "which species the water suits, and what excludes the rest"},
	{"why", command_why, "why SPECIES...", "one or more species in full against the water"},
};
static const char *const command_names[] = {"lint", "rank", "why", NULL};

static const int exit_codes[] = {
	[TS_OK] = 0, [TS_NO] = 1, [TS_BAD_INPUT] = 2, [TS_NO_MEMORY] = 3, [TS_SYSTEM] = 3};

static void help(struct ts_text *out)
{
	ts_text_put(out, "tapshoal matches fish to the water you have.\n\n");
	for (size_t i = 0; i < sizeof commands / sizeof *commands; i++)
		ts_text_puts(out, "  tapshoal ", commands[i].usage, "\n      ", commands[i].says,
			"\n", NULL);
	ts_text_put(out, "\n");
	options_help(out);
	ts_text_put(out, "\nexit: 0 yes, 1 no or cannot be said, 2 wrong call or file, 3 system\n");
}

static void print_findings(const struct ts_findings *findings)
{
	static const char *const words[] = {"note", "concern", "conflict", "error"};

	for (size_t i = 0; i < findings->count; i++) {
		const struct ts_finding *f = &findings->items[i];

		if (f->place.file)
			fprintf(stderr, "%s:", f->place.file);
		if (f->place.line)
			fprintf(stderr, "%u:%u:", f->place.line, f->place.column);
		fprintf(stderr, " %s%s%s; %s [%s, %s]\n", f->place.path ? f->place.path : "",
			f->place.path ? ": " : "", f->what, f->remedy, words[f->code->severity],
			f->code->id);
	}
	if (findings->more)
		fprintf(stderr, "and %zu more\n", findings->more);
}

static const struct command *find_command(const char *name)
{
	for (size_t i = 0; i < sizeof commands / sizeof *commands; i++) {
		if (strcmp(commands[i].name, name) == 0)
			return &commands[i];
	}
	return NULL;
}

static enum ts_status dispatch(struct session *s, const char *name)
{
	const struct command *command = name ? find_command(name) : NULL;
	const char *near;

	if (s->options->version) {
		ts_text_put(s->out, "tapshoal " TS_VERSION "\n");
		return TS_OK;
	}
	if (s->options->help || (!name && !s->error->len)) {
		help(s->out);
		return s->options->help ? TS_OK : TS_BAD_INPUT;
	}
	if (command)
		return command->run(s);
	near = ts_nearest_word(command_names, name);
	ts_text_puts(s->error, "'", name, "' is no command; ", near ? "did you mean " : "",
		near ? near : "", near ? "? " : "", "tapshoal --help lists them", NULL);
	return TS_BAD_INPUT;
}

static enum ts_status finish(struct session *s, enum ts_status status)
{
	bool no_memory = s->out->failed || s->error->failed || s->arena->failed ||
			 s->findings->no_memory || status == TS_NO_MEMORY;

	print_findings(s->findings);
	if (no_memory) {
		fputs("tapshoal: out of memory\n", stderr);
		return TS_NO_MEMORY;
	}
	if (s->error->len)
		fprintf(stderr, "tapshoal: %s\n", ts_text_get(s->error));
	if (status <= TS_NO || (status == TS_BAD_INPUT && s->out->len)) {
		fputs(ts_text_get(s->out), status == TS_BAD_INPUT ? stderr : stdout);
		if (fflush(stdout) || ferror(stdout)) {
			fputs("tapshoal: the answer could not be written\n", stderr);
			return TS_SYSTEM;
		}
	}
	return status;
}

int main(int argc, char **argv)
{
	struct options options;
	struct ts_arena arena;
	struct ts_catalogue catalogue;
	struct ts_findings findings;
	struct ts_text out, error;
	struct session session = {&options, &arena, &catalogue, &findings, &out, &error};
	const char *name = argc > 1 && argv[1][0] != '-' ? argv[1] : NULL;
	enum ts_status status = TS_BAD_INPUT;

	ts_arena_open(&arena, NULL);
	ts_catalogue_open(&catalogue, NULL);
	ts_findings_open(&findings, NULL);
	ts_text_open(&out, NULL);
	ts_text_open(&error, NULL);
	if (options_parse(name ? argc - 1 : argc, name ? argv + 1 : argv, &options, &error))
		status = dispatch(&session, name);
	status = finish(&session, status);
	ts_text_drop(&error);
	ts_text_drop(&out);
	ts_findings_drop(&findings);
	ts_catalogue_close(&catalogue);
	ts_arena_drop(&arena);
	return exit_codes[status];
}
