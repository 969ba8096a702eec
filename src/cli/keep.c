/* SPDX-License-Identifier: Apache-2.0 */
/*
 * keep: remembers a water as the user's tap, any file of ours by a name (kept.h), or says what is
 * remembered.
 */
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "cli/kept.h"
#include "cli/note.h"
#include "home/tap.h"
#include "records/kind.h"
#include "records/write.h"

/* The water of flags: one reading. */
static enum ts_status flags_water(struct session *s, struct ts_water *ret)
{
	*ret = (struct ts_water){.readings = ts_arena_array(s->arena, 1, sizeof *ret->readings),
		.reading_count = 1,
		.name = s->options->name,
		.softened = s->options->softened};
	if (!ret->readings)
		return TS_NO_MEMORY;
	ret->readings[0] = s->options->reading;
	return TS_OK;
}

/* What the flags gave was read today, unless they say when. */
static const char *today_of(struct session *s)
{
	char today[TS_DATE_ROOM];

	return ts_date_write(today, s->today) ? ts_arena_text(s->arena, today, TS_DATE_ROOM - 1)
					      : NULL;
}

/* What was done with the file that was there before. */
struct kept {
	const char *aside;     /* it lies there now; NULL: nothing of it was lost */
	struct ts_noted noted; /* the reading was added to it; count 0: it was not */
};

static void say_before(struct ts_document *doc, struct session *s, const struct kept *kept)
{
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	if (kept->aside) {
		ts_text_puts(&text,
			"The tap before had readings or notes of your own; its file is now ",
			kept->aside, NULL);
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	}
	if (kept->noted.count) {
		ts_text_put(&text, "Noted as a reading more of the same tap, which has ");
		ts_text_number(&text, (double)kept->noted.count, 0);
		ts_text_put(&text, " now. Another water: tapshoal keep with another --name, or "
				   "with a file.");
		ts_doc_paragraph(doc, ts_doc_take(doc, &text));
	}
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
}

static enum ts_status write_answer(
	struct session *s, const struct ts_water *water, const struct kept *kept)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "The kept tap");
	ts_text_open(&text, &s->arena->allocator);
	tap_say(&text, water, s->today);
	ts_doc_verdict(&doc, ts_doc_take(&doc, &text), "");
	say_before(&doc, s, kept);
	ts_doc_paragraph(&doc,
		"Every answer that is given no other water starts from it and says so "
		"first. To forget it, remove the file:");
	ts_doc_paragraph(&doc, tap_path(s->system, s->arena));
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
	return TS_OK;
}

/* A reading as KEY=VALUE: its lines as they are written, "key: value". */
static size_t pairs_of(struct session *s, const struct ts_reading *reading, struct ts_pair *ret)
{
	struct ts_text text;
	size_t count = 0;

	ts_text_open(&text, &s->arena->allocator);
	ts_records_write(&text, &ts_shape_reading, reading, false);
	for (const char *line = ts_text_get(&text); *line && count < ts_shape_reading.count;) {
		size_t len = strcspn(line, "\n"), key = strcspn(line, ":");

		if (key + 2 < len) {
			ret[count].key = ts_arena_text(s->arena, line, key);
			ret[count].value = ts_arena_text(s->arena, line + key + 2, len - key - 2);
			count += ret[count].key && ret[count].value;
		}
		line += len + (line[len] == '\n');
	}
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	return count;
}

/* Flags are a reading of the tap that is kept, unless they say that it is another water. */
static bool is_same_tap(const struct session *s, const struct ts_water *old)
{
	const struct options *o = s->options;

	return !o->argument_count && (!o->name || (old->name && strcmp(o->name, old->name) == 0)) &&
	       (!o->softened || old->softened);
}

static enum ts_status add_reading(struct session *s, const char *path, const struct ts_shape *shape,
	struct ts_reading reading, struct ts_noted *ret)
{
	struct ts_pair *pairs = ts_arena_array(s->arena, ts_shape_reading.count, sizeof *pairs);

	reading.date = reading.date ? reading.date : today_of(s);
	if (!pairs)
		return TS_NO_MEMORY;
	return note_into(s, path, shape, pairs, pairs_of(s, &reading, pairs), ret);
}

/* The water of the call in the place of the one before, or as a reading more of it. */
static enum ts_status keep(struct session *s, struct ts_water *io, struct kept *ret)
{
	const char *off = s->system->variable(s->system->state, "TAPSHOAL_NO_CONFIG");
	char today[TS_DATE_ROOM];
	struct ts_water old;
	enum ts_status status = off && *off ? TS_NO : tap_load(s->system, s->arena, &old, NULL);

	if (status == TS_NO_MEMORY)
		return status;
	if (status == TS_OK && is_same_tap(s, &old)) {
		status = add_reading(s, tap_path(s->system, s->arena), &ts_shape_water,
			io->readings[0], &ret->noted);
		return status ? status : tap_load(s->system, s->arena, io, s->findings);
	}
	output_left_over(s->system, tap_path(s->system, s->arena), s->findings);
	io->softened |= s->options->softened;
	io->name = s->options->name ? s->options->name : io->name;
	if (ts_date_write(today, s->today))
		io->kept = ts_arena_text(s->arena, today, TS_DATE_ROOM - 1);
	return tap_keep(s->system, s->arena, io, s->today, &ret->aside, s->error);
}

/* `file` NULL: the flags hold the reading. */
static enum ts_status keep_tap(struct session *s, const char *file)
{
	struct ts_water water;
	struct kept kept = {0};
	enum ts_status status = file ? file_water(s, file, &water) : flags_water(s, &water);

	status = status ? status : keep(s, &water, &kept);
	return status ? status : write_answer(s, &water, &kept);
}

static enum ts_status say_tap(struct session *s)
{
	struct ts_water water;
	enum ts_status status = tap_load(s->system, s->arena, &water, s->findings);

	if (status == TS_NO)
		ts_text_put(s->error, "no tap is kept yet; tapshoal keep FILE remembers one");
	return status ? status : write_answer(s, &water, &(struct kept){0});
}

static const char *kind_of(const struct ts_shape *shape)
{
	if (shape == &ts_shape_water)
		return "a water";
	if (shape == &ts_shape_tank)
		return "a tank";
	return shape == &ts_shape_plan ? "a tank with its animals" : "no file of ours";
}

/* A command that makes something of it. */
static const char *use_of(const struct ts_shape *shape)
{
	if (shape == &ts_shape_water)
		return "tapshoal rank -w @";
	return shape == &ts_shape_tank ? "tapshoal propose -t @" : "tapshoal check @";
}

static void list_items(struct session *s, struct ts_document *doc, struct ts_text *text,
	const struct kept_item *items, size_t count)
{
	struct ts_node *facts = ts_doc_facts(doc, 0);

	for (size_t i = 0; i < count; i++) {
		ts_text_puts(text, "@", items[i].name, NULL);
		const char *label = ts_doc_take(doc, text);

		ts_text_puts(text, kind_of(items[i].shape), ": ", use_of(items[i].shape),
			items[i].name, NULL);
		ts_doc_line(doc, facts, label, ts_doc_take(doc, text), NULL);
	}
	ts_doc_paragraph(
		doc, "They are ordinary files of ours; to forget one, remove its file from");
	ts_doc_paragraph(
		doc, ts_arena_join(s->arena, tap_folder(s->system, s->arena), "/kept", NULL));
}

/* What is kept: the tap, and everything by name. */
static enum ts_status list_all(struct session *s)
{
	struct ts_water tap;
	struct kept_item *items;
	size_t count;
	struct ts_document doc;
	struct ts_text text;
	enum ts_status status = tap_load(s->system, s->arena, &tap, s->findings);
	bool has_tap = status == TS_OK;

	if (has_tap || status == TS_NO)
		status = kept_list(s, &items, &count);
	if (status)
		return status;
	if (!has_tap && !count) {
		ts_text_put(s->error, "nothing is kept yet; tapshoal keep FILE remembers your tap, "
				      "tapshoal keep @living-room FILE a tank by its name");
		return TS_NO;
	}
	if (!count)
		return write_answer(s, &tap, &(struct kept){0});
	ts_doc_open(&doc, s->arena, "What is kept");
	ts_text_open(&text, &s->arena->allocator);
	if (has_tap)
		tap_say(&text, &tap, s->today);
	else
		ts_text_put(&text, "No tap is kept; by name:");
	ts_doc_verdict(&doc, ts_doc_take(&doc, &text), "");
	list_items(s, &doc, &text, items, count);
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
	return TS_OK;
}

static enum ts_status say_named(struct session *s, const char *name, const char *what)
{
	struct ts_document doc;
	const char *path = kept_path(s, name);
	const struct ts_shape *shape;

	if (!path)
		return TS_NO_MEMORY;
	if (ts_records_kind(s->system, path, &s->arena->allocator, &shape) != TS_OK)
		return TS_NO_MEMORY;
	ts_doc_open(&doc, s->arena, "Kept by name");
	ts_doc_verdict(&doc,
		ts_arena_join(s->arena, "@", name, " ", what, " ", kind_of(shape), ".", NULL), "");
	ts_doc_paragraph(&doc,
		ts_arena_join(s->arena, "Every command takes the name where it takes a file: ",
			use_of(shape), name, NULL));
	ts_doc_paragraph(&doc, "To forget it, remove the file:");
	ts_doc_paragraph(&doc, path);
	session_write(s, &doc);
	return TS_OK;
}

/* Readings for a name: of what is kept there, or a water that is new. */
static enum ts_status keep_reading(struct session *s, const char *name)
{
	const char *path = kept_path(s, name);
	const struct ts_shape *shape;
	struct ts_water water;
	struct ts_noted noted;
	struct ts_seen seen;
	enum ts_status status = path               ? flags_water(s, &water)
				: s->arena->failed ? TS_NO_MEMORY
						   : TS_BAD_INPUT;

	if (status)
		return status;
	if (s->system->look(s->system->state, path, &seen) != 0) {
		water.name = water.name ? water.name : name;
		water.readings[0].date = today_of(s);
		status = kept_water(s, name, &water);
		return status ? status : say_named(s, name, "is kept now:");
	}
	status = ts_records_kind(s->system, path, &s->arena->allocator, &shape);
	if (!status && shape != &ts_shape_water && shape != &ts_shape_tank) {
		ts_text_puts(s->error, "@", name, " is ", kind_of(shape),
			"; readings go into a water or a tank", NULL);
		return TS_BAD_INPUT;
	}
	status = status ? status : add_reading(s, path, shape, s->options->reading, &noted);
	return status ? status : say_named(s, name, "has a reading more; it is");
}

static enum ts_status keep_named(struct session *s, const char *name)
{
	const struct options *o = s->options;
	const char *path = kept_path(s, name);
	enum ts_status status;
	struct ts_seen seen;

	if (!path)
		return s->arena->failed ? TS_NO_MEMORY : TS_BAD_INPUT;
	if (o->has_reading)
		return keep_reading(s, name);
	if (o->argument_count == 2) {
		status = kept_file(s, name, o->arguments[1]);
		return status ? status : say_named(s, name, "is kept now:");
	}
	if (s->system->look(s->system->state, path, &seen) == 0)
		return say_named(s, name, "is");
	ts_text_puts(s->error, "nothing is kept as @", name, "; tapshoal keep @", name,
		" FILE keeps a file, tapshoal keep @", name, " --GH 14 --KH 9 a water", NULL);
	return TS_NO;
}

enum ts_status command_keep(struct session *s)
{
	const struct options *o = s->options;
	bool named = o->argument_count && o->arguments[0][0] == '@';
	size_t most = named ? 2 : 1;

	if (o->argument_count > most || (o->argument_count == most && o->has_reading)) {
		ts_text_put(s->error, "keep takes one water for your tap, a file or readings as "
				      "flags; or a name and a file: @living-room tank.yaml");
		return TS_BAD_INPUT;
	}
	if (named && strcmp(o->arguments[0], "@tap") == 0)
		return o->argument_count == 2 ? keep_tap(s, o->arguments[1]) : say_tap(s);
	if (named)
		return keep_named(s, o->arguments[0] + 1);
	if (o->argument_count || o->has_reading)
		return keep_tap(s, o->argument_count ? o->arguments[0] : NULL);
	return list_all(s);
}
