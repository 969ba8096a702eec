/* SPDX-License-Identifier: Apache-2.0 */
/*
 * note: writes what was measured behind the last reading of a water or tank file, and what happened
 * behind the last event of a tank. Everything else
 * in the file stays, to the byte; what is put in, and where, is records/note.c's.
 */
#include <errno.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "cli/kept.h"
#include "cli/note_work.h"
#include "model/codes.h"
#include "records/file.h"
#include "records/happened.h"
#include "records/kind.h"
#include "records/load.h"
#include "records/value.h"
#include "report/output.h"

/* KEY=VALUE of the call in two; false: it is none. */
static bool split(struct noting *n, struct entry *reading, const char *argument)
{
	const char *sign = strchr(argument, '=');
	const char *value = sign ? sign + 1 + strspn(sign + 1, " ") : NULL;
	size_t len = value ? strlen(value) : 0, key = strcspn(argument, " :=");
	struct ts_pair *pair = &reading->pairs[reading->count];

	if (!sign || sign == argument || argument + key + strspn(argument + key, " ") != sign)
		return false;
	while (len && value[len - 1] == ' ')
		len--;
	pair->key = ts_arena_text(n->s->arena, argument, key);
	pair->value = ts_arena_text(n->s->arena, value, len);
	reading->count += pair->key && pair->value;
	return true;
}

/* The pairs of an event, as they are written. */
static void pairs_of(struct noting *n, const struct ts_tank_event *e, struct entry *ret)
{
	struct ts_arena *arena = n->s->arena;
	const struct {
		const char *key;
		double value;
	} numbers[] = {{"litres", e->litres}, {"share", e->share_percent}, {"count", e->count},
		{"lasted", e->lasted_h}};

	ret->list = "events";
	ret->pairs = ts_arena_array(arena, ts_shape_event.count, sizeof *ret->pairs);
	if (!ret->pairs)
		return;
	ret->pairs[ret->count++] = (struct ts_pair){"date", n->day};
	ret->pairs[ret->count++] = (struct ts_pair){"what", ts_words_happened[e->what]};
	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
		const struct ts_field *field = ts_shape_field(&ts_shape_event, numbers[i].key);
		const char *unit = ts_quantities[field->quantity].unit;
		struct ts_text text;

		if (!(numbers[i].value > 0))
			continue;
		ts_text_open(&text, &arena->allocator);
		ts_text_number_short(&text, numbers[i].value, 2);
		ts_text_puts(&text, *unit ? " " : "", unit, NULL);
		ret->pairs[ret->count++] = (struct ts_pair){
			field->key, ts_arena_text(arena, ts_text_get(&text), text.len)};
		arena->failed |= text.failed;
		ts_text_drop(&text);
	}
	if (e->with)
		ret->pairs[ret->count++] = (struct ts_pair){"with", ts_words_top_up[e->with]};
	ret->pairs[ret->count++] = (struct ts_pair){"says", e->says};
}

/* The day of the call: --on, else date=, else today. */
static const char *day_of(struct session *s)
{
	const struct options *o = s->options;
	char today[TS_DATE_ROOM];

	if (o->on)
		return o->on;
	for (size_t i = 1; i < o->argument_count; i++) {
		if (strncmp(o->arguments[i], "date=", 5) == 0)
			return o->arguments[i] + 5;
	}
	return ts_date_write(today, s->today) ? ts_arena_text(s->arena, today, TS_DATE_ROOM - 1)
					      : NULL;
}

/* What was measured is one reading, its day first; whatever else happened is an event each. */
static enum ts_status take_arguments(struct noting *n)
{
	const struct options *o = n->s->options;
	struct entry reading = {.list = "readings"};
	size_t places = o->argument_count + 1;
	bool measured = false;

	n->day = day_of(n->s);
	reading.pairs = ts_arena_array(n->s->arena, places, sizeof *reading.pairs);
	n->entries = ts_arena_array(n->s->arena, places, sizeof *n->entries);
	n->noted = ts_arena_array(n->s->arena, places, sizeof *n->noted);
	if (!n->day || !reading.pairs || !n->entries || !n->noted)
		return TS_NO_MEMORY;
	reading.pairs[reading.count++] = (struct ts_pair){"date", n->day};
	n->count = 1;
	for (size_t i = 1; i < o->argument_count; i++) {
		struct ts_tank_event event;

		if (strncmp(o->arguments[i], "date=", 5) == 0 && !o->on)
			continue;
		if (split(n, &reading, o->arguments[i])) {
			measured = true;
			continue;
		}
		if (!ts_happened_words(n->s->arena, o->arguments[i], &event, n->s->error))
			return n->s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
		pairs_of(n, &event, &n->entries[n->count++]);
	}
	n->entries[0] = reading;
	if (!measured && n->count > 1) {
		n->entries++;
		n->count--;
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
enum ts_status note_check(struct noting *n)
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
	for (size_t i = 0; n->kind == &ts_shape_water && i < n->count; i++) {
		if (strcmp(n->entries[i].list, "events") != 0)
			continue;
		return refuse(n, "a water", "what happened is noted of a tank or a plan");
	}
	return n->kind == &ts_shape_plan ? check_plan(n) : TS_OK;
}

/* A bare figure that could be two things is in the unit in which the file has it all along. */
static void take_unit(struct noting *n, const char *bytes, struct ts_pair *pair)
{
	const struct ts_field *field = ts_shape_field_meant(&ts_shape_reading, pair->key);
	struct ts_reading none = {0};
	struct ts_value_says says;
	const char *unit;

	if (!field || field->kind != TS_MEASURE || !ts_value_bare(pair->value) ||
		ts_value_read(field, pair->value, strlen(pair->value), n->s->arena, &none, &says))
		return;
	unit = ts_records_unit_before(n->s->arena, bytes, field->key);
	if (unit)
		pair->value = ts_arena_join(n->s->arena, pair->value, " ", unit, NULL);
}

static enum ts_status units_as_before(struct noting *n)
{
	struct session *s = n->s;
	const char *text;
	char *bytes;
	size_t len;
	enum ts_status status;

	if (!n->count || strcmp(n->entries[0].list, "readings") != 0)
		return TS_OK;
	status = ts_file_read(s->system, n->file, TS_OPEN_ORDINARY, TS_FILE_BYTES_MOST,
		&s->arena->allocator, &bytes, &len, NULL);
	if (status)
		return status == TS_NO_MEMORY ? status : TS_OK; /* told where it is written */
	text = ts_arena_text(s->arena, bytes, len);
	s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	for (size_t i = 0; text && i < n->entries[0].count; i++)
		take_unit(n, text, &n->entries[0].pairs[i]);
	return s->arena->failed ? TS_NO_MEMORY : TS_OK;
}

/* How often somebody else may come in between; each time the file is read again. */
#define TRIES_MOST 5

/* One entry more; what it takes is given back at once, for a notebook has many. */
static enum ts_status extend_by(struct noting *n, const struct entry *e, struct ts_noted *noted,
	const char *bytes, size_t len, struct ts_text *ret)
{
	struct session *s = n->s;
	struct ts_findings found;
	struct ts_arena arena;
	enum ts_status status;

	ts_arena_open(&arena, &s->arena->allocator);
	ts_findings_open(&found, &s->arena->allocator);
	status = ts_records_note(n->kind, s->system, e->list, bytes, len, n->file, e->pairs,
		e->count, s->today, &arena, ret, noted, &found);
	*noted = (struct ts_noted){.count = noted->count}; /* its texts go with the arena */
	if (status == TS_BAD_INPUT && found.count == 1 &&
		found.items[0].code == &ts_codes[TS_C_NOTE_TWICE]) {
		++*n->twice;
		ts_text_clear(ret);
		ts_text_add(ret, bytes, len);
		status = TS_OK;
	} else if (status == TS_BAD_INPUT) {
		for (size_t i = 0; i < found.count; i++)
			ts_finding_add(s->findings, found.items[i].code, &found.items[i].place,
				found.items[i].what, found.items[i].remedy);
	}
	ts_findings_drop(&found);
	ts_arena_drop(&arena);
	return status;
}

/* `len` bytes of the file with every entry in its list, one after the other. */
static enum ts_status extend(struct noting *n, const char *bytes, size_t len, struct ts_text *ret)
{
	struct session *s = n->s;
	struct ts_text before;
	enum ts_status status = TS_OK;

	ts_text_open(&before, &s->arena->allocator);
	for (size_t i = 0; status == TS_OK && i < n->count; i++) {
		const struct entry *e = &n->entries[i];

		ts_text_clear(ret);
		status = n->twice ? extend_by(n, e, &n->noted[i], i ? ts_text_get(&before) : bytes,
					    i ? before.len : len, ret)
				  : ts_records_note(n->kind, s->system, e->list,
					    i ? ts_text_get(&before) : bytes, i ? before.len : len,
					    n->file, e->pairs, e->count, s->today, s->arena, ret,
					    &n->noted[i], s->findings);
		ts_text_clear(&before);
		ts_text_add(&before, ts_text_get(ret), ret->len);
	}
	s->arena->failed |= before.failed;
	ts_text_drop(&before);
	return s->arena->failed ? TS_NO_MEMORY : status;
}

/* The open file read, and written with what is noted. */
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
	status = extend(n, bytes, len, &made);
	if (status == TS_OK)
		status = output_rewrite(s->system, n->file, handle, &made, s->error, ret_why);
	ts_text_drop(&made);
	s->arena->allocator.resize(s->arena->allocator.state, bytes, 0);
	return status;
}

enum ts_status note_write(struct noting *n)
{
	const struct ts_system *system = n->s->system;
	struct ts_place place = {.file = n->file};
	enum ts_status status;
	int handle, why, tries = 0;

	output_left_over(system, n->file, n->s->findings);
	do {
		ts_text_clear(n->s->error);
		if (n->twice)
			*n->twice = 0;
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
	struct entry entry = {.list = "readings", .count = count};
	struct noting n = {
		.s = s, .file = file, .kind = kind, .entries = &entry, .count = 1, .noted = ret};

	entry.pairs = ts_arena_array(s->arena, count, sizeof *entry.pairs);
	if (!entry.pairs)
		return TS_NO_MEMORY;
	memcpy(entry.pairs, pairs, count * sizeof *pairs);
	*ret = (struct ts_noted){0};
	return note_write(&n);
}

/* ", GH 14 dH, NO3 20 mg/L", or of an event what its keeper says. */
static void say_pairs(struct ts_text *text, const struct entry *entry, const struct ts_noted *noted)
{
	bool event = strcmp(entry->list, "events") == 0;

	for (size_t i = 0; i < noted->pair_count; i++) {
		const char *key = noted->pairs[i].key;

		if (strcmp(key, event ? "says" : "date") == 0 ? event : !event)
			ts_text_puts(text, ", ", event ? "" : key, event ? "" : " ",
				noted->pairs[i].value, NULL);
	}
}

/* "3 readings and 2 events stand there now, from 2026-01-02 to 2026-03-01" */
static const char *counts(struct noting *n, struct ts_document *doc, struct ts_text *text)
{
	const struct ts_noted *last = &n->noted[n->count - 1];
	bool event = strcmp(n->entries[n->count - 1].list, "events") == 0;
	const struct ts_noted *reading =
		strcmp(n->entries[0].list, "readings") == 0 ? &n->noted[0] : NULL;
	double all = (double)last->count + (event && reading ? (double)reading->count : 0);

	if (reading) {
		ts_text_number(text, (double)reading->count, 0);
		ts_text_put(text, reading->count == 1 ? " reading" : " readings");
	}
	if (event) {
		ts_text_put(text, reading ? " and " : "");
		ts_text_number(text, (double)last->count, 0);
		ts_text_put(text, last->count == 1 ? " event" : " events");
	}
	ts_text_put(text, all > 1 ? " stand there now" : " stands there now");
	if (strcmp(last->first, last->last) != 0)
		ts_text_puts(text, ", from ", last->first, " to ", last->last, NULL);
	return ts_doc_take(doc, text);
}

static void write_answer(struct noting *n)
{
	struct session *s = n->s;
	const char *first, *called = kept_called(s, n->file);
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena,
		strcmp(n->entries[0].list, "readings") == 0 ? "A reading noted" : "An event noted");
	ts_text_open(&text, &s->arena->allocator);
	ts_text_puts(&text, "Noted in ", called, ": ", n->noted[0].date, NULL);
	for (size_t i = 0; i < n->count; i++)
		say_pairs(&text, &n->entries[i], &n->noted[i]);
	first = ts_doc_take(&doc, &text);
	ts_doc_verdict(&doc, first, counts(n, &doc, &text));
	ts_doc_paragraph(&doc, "Everything else in the file is as it was.");
	ts_text_puts(&text, "What to test next, and when: tapshoal due ", called, NULL);
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

	if (o->from)
		return note_notebook(&n);
	if (o->argument_count < 2 || strcmp(n.file, "-") == 0) {
		ts_text_put(s->error,
			"note takes a water, tank or plan file and what was measured or happened: "
			"tapshoal note tank.yaml GH=14 KH=9 \"NO3=20 mg/L\" \"changed 40 L\"");
		return TS_BAD_INPUT;
	}
	status = take_arguments(&n);
	if (status == TS_OK)
		status = note_check(&n);
	if (status == TS_OK)
		status = units_as_before(&n);
	if (status == TS_OK && output_same(s->system, n.file, o->output)) {
		ts_text_puts(s->error, "cannot write ", o->output,
			": the answer would replace the file with the readings; name another file",
			NULL);
		return TS_BAD_INPUT;
	}
	if (status == TS_OK)
		status = note_write(&n);
	if (status != TS_OK)
		return status;
	s->wrote = ts_arena_join(
		s->arena, "it is noted in ", n.file, "; only the answer is lost", NULL);
	write_answer(&n);
	return status;
}
