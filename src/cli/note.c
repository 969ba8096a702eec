/* SPDX-License-Identifier: Apache-2.0 */
/*
 * note: writes what was measured behind the last reading of a water or tank file. Everything else
 * in the file stays, to the byte; what is put in, and where, is records/note.c's.
 */
#include <errno.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "cli/note.h"
#include "cli/output.h"
#include "model/codes.h"
#include "records/file.h"
#include "records/kind.h"
#include "records/load.h"

struct noting {
	struct session *s;
	const char *file;
	const struct ts_shape *kind;
	struct ts_pair *pairs;
	size_t count;
	struct ts_noted noted;
};

/* KEY=VALUE of the call in two; false: it is none. */
static bool split(struct noting *n, const char *argument)
{
	const char *sign = strchr(argument, '=');
	const char *value = sign ? sign + 1 + strspn(sign + 1, " ") : NULL;
	size_t len = value ? strlen(value) : 0;

	if (!sign || sign == argument)
		return false;
	while (len && value[len - 1] == ' ')
		len--;
	n->pairs[n->count].key = ts_arena_text(n->s->arena, argument, (size_t)(sign - argument));
	n->pairs[n->count].value = ts_arena_text(n->s->arena, value, len);
	n->count += n->pairs[n->count].key && n->pairs[n->count].value;
	return true;
}

/* The day of the call: --on, else date=, else today. It stands first. */
static enum ts_status take_pairs(struct noting *n)
{
	const struct options *o = n->s->options;
	char today[TS_DATE_ROOM];
	bool dated = o->on;

	n->pairs = ts_arena_array(n->s->arena, o->argument_count + 1, sizeof *n->pairs);
	if (!n->pairs)
		return TS_NO_MEMORY;
	for (size_t i = 1; i < o->argument_count; i++)
		dated |= strncmp(o->arguments[i], "date=", 5) == 0;
	if (o->on)
		n->pairs[n->count++] = (struct ts_pair){"date", o->on};
	else if (!dated && ts_date_write(today, n->s->today))
		n->pairs[n->count++] = (struct ts_pair){
			"date", ts_arena_text(n->s->arena, today, TS_DATE_ROOM - 1)};
	for (size_t i = 1; i < o->argument_count; i++) {
		if (split(n, o->arguments[i]))
			continue;
		ts_text_puts(n->s->error, "'", o->arguments[i],
			"' is no KEY=VALUE; write it like GH=14 or \"NO3=20 mg/L\"", NULL);
		return TS_BAD_INPUT;
	}
	return n->s->arena->failed ? TS_NO_MEMORY : TS_OK;
}

static enum ts_status refuse(struct noting *n, const char *what, const char *remedy)
{
	ts_text_puts(n->s->error, n->file, " is ", what, "; ", remedy, NULL);
	return TS_BAD_INPUT;
}

/* A reading noted for a plan is its tank's: in it, or in the file that it names. */
static enum ts_status check_plan(struct noting *n)
{
	struct ts_plan plan;
	enum ts_status status = file_plan(n->s, n->file, &plan);

	if (status || !plan.tank_file)
		return status;
	n->file = plan.tank_file;
	n->kind = &ts_shape_tank;
	return TS_OK;
}

/* A file in which readings stand; a pipe could be read once and not be written back. */
static enum ts_status check_file(struct noting *n)
{
	const struct ts_system *system = n->s->system;
	struct ts_place place = {.file = n->file};
	struct ts_seen seen;
	int why = system->look(system->state, n->file, &seen);

	if (why) {
		ts_finding_add(n->s->findings, &ts_codes[TS_C_RECORDS_UNREADABLE], &place,
			ts_system_says(why), NULL);
		return TS_SYSTEM;
	}
	if (seen.entry != TS_ENTRY_FILE)
		return refuse(n, "no ordinary file",
			"note takes a water, tank or plan file that lies on a disk");
	if (ts_records_kind(system, n->file, &n->s->arena->allocator, &n->kind) != TS_OK)
		return TS_NO_MEMORY;
	if (n->kind == &ts_shape_species)
		return refuse(n, "neither a water nor a tank nor a plan",
			"note takes one of the three, docs/formats.md has their keys");
	return n->kind == &ts_shape_plan ? check_plan(n) : TS_OK;
}

/* How often somebody else may come in between; each time the file is read again. */
#define TRIES_MOST 5

/* The open file read, and written with the reading. */
static enum ts_status rewrite(struct noting *n, int handle, int *ret_why)
{
	struct session *s = n->s;
	struct ts_text made;
	char *bytes;
	size_t len;
	enum ts_status status = ts_file_read_open(s->system, handle, n->file, TS_FILE_BYTES_MOST,
		&s->arena->allocator, &bytes, &len, s->findings);

	if (status != TS_OK)
		return status;
	ts_text_open(&made, &s->arena->allocator);
	status = ts_records_note(n->kind, s->system, bytes, len, n->file, n->pairs, n->count,
		s->today, s->arena, &made, &n->noted, s->findings);
	if (status == TS_OK)
		status = output_rewrite(s->system, n->file, handle, &made, s->error, ret_why);
	ts_text_drop(&made);
	s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	return status;
}

static enum ts_status write_file(struct noting *n)
{
	const struct ts_system *system = n->s->system;
	struct ts_place place = {.file = n->file};
	enum ts_status status;
	int handle, why, tries = 0;

	output_left_over(system, n->file, n->s->findings);
	do {
		ts_text_clear(n->s->error);
		why = system->open(system->state, n->file, TS_OPEN_REWRITE, &handle);
		if (why == ENOMEM)
			return TS_NO_MEMORY;
		if (why) {
			ts_finding_add(n->s->findings, &ts_codes[TS_C_RECORDS_UNREADABLE], &place,
				ts_system_says(why), NULL);
			return TS_SYSTEM;
		}
		status = rewrite(n, handle, &why);
		system->close(system->state, handle);
	} while (status == TS_SYSTEM && why == TS_WHY_CHANGED && ++tries < TRIES_MOST);
	return status;
}

enum ts_status note_into(struct session *s, const char *file, const struct ts_shape *kind,
	const struct ts_pair *pairs, size_t count, struct ts_noted *ret)
{
	struct noting n = {.s = s, .file = file, .kind = kind, .count = count};
	enum ts_status status;

	n.pairs = ts_arena_array(s->arena, count, sizeof *n.pairs);
	if (!n.pairs)
		return TS_NO_MEMORY;
	memcpy(n.pairs, pairs, count * sizeof *pairs);
	status = write_file(&n);
	*ret = n.noted;
	return status;
}

/* "2026-11-28, GH 14 dH, NO3 20 mg/L" */
static void say_pairs(struct ts_text *text, const struct ts_noted *noted)
{
	ts_text_put(text, noted->reading.date);
	for (size_t i = 0; i < noted->pair_count; i++) {
		if (strcmp(noted->pairs[i].key, "date") != 0)
			ts_text_puts(
				text, ", ", noted->pairs[i].key, " ", noted->pairs[i].value, NULL);
	}
}

static void write_answer(struct noting *n)
{
	struct session *s = n->s;
	struct ts_document doc;
	struct ts_text text;
	const char *first;

	ts_doc_open(&doc, s->arena, "A reading noted");
	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, "Noted in ", n->file, ": ", NULL);
	say_pairs(&text, &n->noted);
	first = ts_doc_take(&doc, &text);
	ts_text_number(&text, (double)n->noted.count, 0);
	ts_text_put(&text,
		n->noted.count == 1 ? " reading stands there now" : " readings stand there now");
	if (strcmp(n->noted.first, n->noted.last) != 0)
		ts_text_puts(&text, ", from ", n->noted.first, " to ", n->noted.last, NULL);
	ts_doc_verdict(&doc, first, ts_doc_take(&doc, &text));
	ts_doc_paragraph(&doc, "Everything else in the file is as it was.");
	ts_text_puts(&text, "What to test next, and when: tapshoal due ", n->file, NULL);
	ts_doc_paragraph(&doc, ts_doc_take(&doc, &text));
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}

enum ts_status command_note(struct session *s)
{
	const struct options *o = s->options;
	struct noting n = {.s = s, .file = o->argument_count ? o->arguments[0] : NULL};
	enum ts_status status;

	if (o->argument_count < 2 || strcmp(n.file, "-") == 0) {
		ts_text_put(s->error,
			"note takes a water, tank or plan file and what was measured: "
			"tapshoal note tank.yaml GH=14 KH=9 \"NO3=20 mg/L\"");
		return TS_BAD_INPUT;
	}
	status = take_pairs(&n);
	if (status == TS_OK)
		status = check_file(&n);
	if (status == TS_OK && output_same(s->system, n.file, o->output)) {
		ts_text_puts(s->error, "cannot write ", o->output,
			": the answer would replace the file with the readings; name another file",
			NULL);
		return TS_BAD_INPUT;
	}
	if (status == TS_OK)
		status = write_file(&n);
	if (status != TS_OK)
		return status;
	s->wrote = ts_arena_join(
		s->arena, "the reading is noted in ", n.file, "; only the answer is lost", NULL);
	write_answer(&n);
	return status;
}
