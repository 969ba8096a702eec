/* SPDX-License-Identifier: Apache-2.0 */
/*
 * keep: remembers a water as the user's tap, or says which one is remembered.
 */
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "cli/note.h"
#include "cli/tap.h"
#include "records/write.h"

/* The water of the call; TS_NO: none was named, so it is asked which one is kept. */
static enum ts_status water_of(struct session *s, struct ts_water *ret)
{
	const struct options *o = s->options;

	if (o->argument_count > 1 || (o->argument_count && o->has_reading)) {
		ts_text_put(s->error, "keep takes one water: a file, or readings as flags");
		return TS_BAD_INPUT;
	}
	if (o->argument_count)
		return file_water(s, o->arguments[0], ret);
	if (!o->has_reading)
		return TS_NO;
	*ret = (struct ts_water){
		.readings = ts_arena_array(s->arena, 1, sizeof *ret->readings), .reading_count = 1};
	if (!ret->readings)
		return TS_NO_MEMORY;
	ret->readings[0] = o->reading;
	return TS_OK;
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

static enum ts_status add_reading(
	struct session *s, struct ts_reading reading, struct ts_noted *ret)
{
	char today[TS_DATE_ROOM];
	struct ts_pair *pairs = ts_arena_array(s->arena, ts_shape_reading.count, sizeof *pairs);

	if (!reading.date && ts_date_write(today, s->today))
		reading.date = today;
	if (!pairs)
		return TS_NO_MEMORY;
	return note_into(s, tap_path(s->system, s->arena), &ts_shape_water, pairs,
		pairs_of(s, &reading, pairs), ret);
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
		status = add_reading(s, io->readings[0], &ret->noted);
		return status ? status : tap_load(s->system, s->arena, io, s->findings);
	}
	output_left_over(s->system, tap_path(s->system, s->arena), s->findings);
	io->softened |= s->options->softened;
	io->name = s->options->name ? s->options->name : io->name;
	if (ts_date_write(today, s->today))
		io->kept = ts_arena_text(s->arena, today, TS_DATE_ROOM - 1);
	return tap_keep(s->system, s->arena, io, s->today, &ret->aside, s->error);
}

enum ts_status command_keep(struct session *s)
{
	struct ts_water water;
	struct kept kept = {0};
	enum ts_status status = water_of(s, &water);

	if (status == TS_OK) {
		status = keep(s, &water, &kept);
	} else if (status == TS_NO) {
		status = tap_load(s->system, s->arena, &water, s->findings);
		if (status == TS_NO)
			ts_text_put(
				s->error, "no tap is kept yet; tapshoal keep FILE remembers one");
	}
	return status ? status : write_answer(s, &water, &kept);
}
