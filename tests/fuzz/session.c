/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Texts write "?" for a figure that is not finite, JSON null and CSV nothing. The linker's --wrap
 * brings every such call here first, so that a target fails on it. Null is an honest answer where
 * something is not known: that is the NAN of our own sources, whose sign is clear. One that comes
 * of a sum that has no answer (0/0, infinity less infinity) has it set on x86-64, and is a fault.
 * An infinity is the open end of a range, which has no key or is called low or high, or one of two
 * values whose schema says that null may mean without end.
 */
#include "session.h"

#include <stdio.h>
#include <string.h>

#include "base/number.h"
#include "cli/commands.h"
#include "records/practice.h"
#include "system/memory.h"

#define ARGUMENTS_MOST 16

/* NOLINTBEGIN(bugprone-reserved-identifier): the names are the linker's */
bool __real_ts_number_write_short(char out[TS_NUMBER_ROOM], double value, int decimals);
bool __wrap_ts_number_write_short(char out[TS_NUMBER_ROOM], double value, int decimals);
void __real_ts_json_number(struct ts_json *json, const char *key, double value, int decimals);
void __wrap_ts_json_number(struct ts_json *json, const char *key, double value, int decimals);
enum ts_status __wrap_output_add(
	struct output *output, const struct ts_text *text, struct ts_text *error);
void __real_ts_text_number(struct ts_text *text, double value, int decimals);
void __wrap_ts_text_number(struct ts_text *text, double value, int decimals);
void __real_ts_text_number_short(struct ts_text *text, double value, int decimals);
void __wrap_ts_text_number_short(struct ts_text *text, double value, int decimals);

/* Finite, and of no more digits than are written. */
static void hold_written(double value, int decimals)
{
	char digits[TS_NUMBER_ROOM];

	hold(ts_number_write(digits, value, decimals));
}

bool __wrap_ts_number_write_short(char out[TS_NUMBER_ROOM], double value, int decimals)
{
	hold(!(isnan(value) && signbit(value)));
	return __real_ts_number_write_short(out, value, decimals);
}

void __wrap_ts_json_number(struct ts_json *json, const char *key, double value, int decimals)
{
	static const char *const endless[] = {"low", "high", "no3_steady_mg_l", "buffer_days"};
	bool may_be = !key || isfinite(value) || isnan(value);

	for (size_t i = 0; key && i < sizeof endless / sizeof *endless; i++)
		may_be |= strcmp(key, endless[i]) == 0;
	hold(may_be);
	if (isfinite(value))
		hold_written(value, decimals);
	__real_ts_json_number(json, key, value, decimals);
}

/* An answer that comes piece by piece: whole lines of JSON, or of a table. */
enum ts_status __wrap_output_add(
	struct output *output, const struct ts_text *text, struct ts_text *error)
{
	const char *at = ts_text_get(text), *end;
	bool table = *at != '{';

	(void)output;
	(void)error;
	hold_utf8(at, text->len);
	hold(!text->len || at[text->len - 1] == '\n');
	for (; *at == '{' && (end = strchr(at, '\n')); at = end + 1) {
		struct ts_text line;

		ts_text_open(&line, NULL);
		ts_text_add(&line, at, (size_t)(end - at) + 1);
		hold_json(ts_text_get(&line));
		ts_text_drop(&line);
	}
	hold(table || !*at);
	return TS_OK;
}

void __wrap_ts_text_number(struct ts_text *text, double value, int decimals)
{
	hold_written(value, decimals);
	__real_ts_text_number(text, value, decimals);
}

void __wrap_ts_text_number_short(struct ts_text *text, double value, int decimals)
{
	hold_written(value, decimals);
	__real_ts_text_number_short(text, value, decimals);
}
/* NOLINTEND(bugprone-reserved-identifier) */

const struct ts_catalogue *frozen_catalogue(void)
{
	static struct ts_catalogue catalogue;

	if (!catalogue.count) {
		ts_catalogue_open(&catalogue, NULL);
		hold(ts_catalogue_add_folder(&catalogue, TEST_DATA "/catalogue", NULL) == TS_OK);
	}
	return &catalogue;
}

/* All that an input can reach: its own files. */
static struct ts_memory *memory(void)
{
	static struct ts_memory files;

	if (!files.system.state)
		ts_memory_open(&files);
	return &files;
}

const struct ts_system *memory_system(void)
{
	return &memory()->system;
}

const char *file_of(int slot, const void *bytes, size_t size)
{
	static const char *const names[] = {"one", "two"};

	hold(ts_memory_put(memory(), names[slot], bytes, size));
	return names[slot];
}

/* The records are lent; the list of them is the command's own. */
static void lend(struct ts_catalogue *to, const struct ts_catalogue *from)
{
	ts_catalogue_open(to, NULL);
	to->system = memory_system();
	to->items = ts_arena_array(&to->arena, from->count, sizeof *to->items);
	hold(to->items != NULL);
	memcpy(to->items, from->items, from->count * sizeof *to->items);
	to->count = to->room = from->count;
}

/* Nothing that would steer a terminal or turn words around; a page holds tabs. */
static void hold_harmless(const char *text)
{
	for (const char *at = text; *at; at++) {
		bool turns = strncmp(at, "\xe2\x80", 2) == 0 && at[2] >= '\xaa' && at[2] <= '\xae';

		hold(!turns && (!ts_text_control(at) || *at == '\n' || *at == '\t'));
	}
}

static void hold_answer(const struct session *s, enum ts_status status)
{
	hold(status == TS_OK || status == TS_NO || status == TS_BAD_INPUT);
	hold(!s->arena->failed && !s->out->failed && !s->error->failed && !s->findings->no_memory);
	hold(status != TS_BAD_INPUT || s->findings->errors || s->error->len);
	hold(status == TS_BAD_INPUT || s->out->len || s->stream ||
		(status == TS_NO && s->error->len)); /* read says there that nothing was found */
	hold_utf8(ts_text_get(s->out), s->out->len);
	if (s->options->format == FORMAT_TEXT || s->options->format == FORMAT_HTML)
		hold_harmless(ts_text_get(s->out));
	else if (s->options->format == FORMAT_JSON && s->out->len)
		hold_json(ts_text_get(s->out));
	hold_findings(s->findings);
}

enum ts_status run_command(const char *const *arguments, const struct ts_catalogue *catalogue)
{
	const struct command *command = command_named(arguments[0]);
	char *argv[ARGUMENTS_MOST];
	struct options options = {0};
	struct ts_arena arena;
	struct ts_catalogue own;
	struct ts_findings findings;
	struct ts_practice practice;
	struct ts_text out, error;
	struct session s = {.options = &options,
		.system = memory_system(),
		.arena = &arena,
		.catalogue = &own,
		.findings = &findings,
		.practice = &practice,
		.today = 20000,
		.out = &out,
		.error = &error};
	enum ts_status status;
	int argc = 0;

	ts_practice_defaults(&practice);
	ts_arena_open(&arena, NULL);
	for (; arguments[argc]; argc++)
		argv[argc] = ts_arena_text(&arena, arguments[argc], strlen(arguments[argc]));
	lend(&own, catalogue ? catalogue : frozen_catalogue());
	ts_findings_open(&findings, NULL);
	ts_text_open(&out, NULL);
	ts_text_open(&error, NULL);
	hold(command && options_parse(command, argc, argv, &options, &error));
	status = options.practice_file ? ts_practice_load(s.system, options.practice_file, &arena,
						 &practice, &findings)
				       : TS_OK;
	status = status ? status : command->run(&s);
	hold_answer(&s, status);
	if (s.stream)
		hold(output_close(s.stream, s.keep, &error) == TS_OK);
	ts_text_drop(&error);
	ts_text_drop(&out);
	ts_findings_drop(&findings);
	ts_catalogue_close(&own);
	ts_arena_drop(&arena);
	return status;
}

/* The word of that number among those that a command's row names, as often as there are. */
static const char *format_of(const struct command *command, unsigned number, char room[8])
{
	const char *at = command->formats;
	unsigned count = 1;
	size_t len;

	for (const char *blank = at; (blank = strchr(blank, ' ')); blank++)
		count++;
	for (number %= count; number; number--)
		at = strchr(at, ' ') + 1;
	len = strcspn(at, " ");
	memcpy(room, at, len);
	room[len] = '\0';
	return room;
}

static const char *share_of(char room[80], const char *file)
{
	size_t len = strlen(file);

	memcpy(room, file, len);
	memcpy(room + len, "=0.5", 5);
	return room;
}

static void run_call(const char *const *call, unsigned format, const char *one, const char *two)
{
	const char *words[CALL_WORDS_MOST + 3];
	char room[8], shares[2][80];
	size_t count = 0;

	for (; count < CALL_WORDS_MOST && call[count]; count++) {
		switch (*call[count]) {
		case 1:
			words[count] = one;
			break;
		case 2:
			words[count] = two;
			break;
		case 3:
			words[count] = share_of(shares[0], one);
			break;
		case 4:
			words[count] = share_of(shares[1], two);
			break;
		default:
			words[count] = call[count];
		}
	}
	words[count++] = "--format";
	words[count++] = format_of(command_named(call[0]), format, room);
	words[count] = NULL;
	run_command(words, NULL);
}

void run_input(const call_words *calls, size_t count, const uint8_t *data, size_t size)
{
	static const char border[] = "\n%%\n";
	const uint8_t *split;
	const char *one, *two;

	if (size < 2)
		return;
	split = memmem(data + 2, size - 2, border, sizeof border - 1);
	one = file_of(0, data + 2, split ? (size_t)(split - data) - 2 : size - 2);
	two = file_of(1, split ? split + sizeof border - 1 : data,
		split ? size - (size_t)(split - data) - (sizeof border - 1) : 0);
	run_call(calls[data[0] % count], data[1], one, two);
}
