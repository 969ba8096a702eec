/* SPDX-License-Identifier: Apache-2.0 */
/*
 * keep: remembers a water as the user's tap, or says which one is remembered.
 */
#include "base/arena.h"
#include "base/date.h"
#include "cli/commands.h"
#include "cli/tap.h"

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

static enum ts_status write_answer(struct session *s, const struct ts_water *water, long today)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "The kept tap");
	ts_text_open(&text, &s->arena->allocator);
	tap_say(&text, water, today);
	ts_doc_verdict(&doc, ts_doc_take(&doc, &text), "");
	ts_doc_paragraph(&doc,
		"Every answer that is given no other water starts from it and says so "
		"first. To forget it, remove the file:");
	ts_doc_paragraph(&doc, tap_path(s->system, s->arena));
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
	return TS_OK;
}

enum ts_status command_keep(struct session *s)
{
	struct ts_water water;
	char today[TS_DATE_ROOM];
	enum ts_status status = water_of(s, &water);
	bool new = status == TS_OK;

	if (status == TS_NO)
		status = tap_load(s->system, s->arena, &water, s->findings);
	if (status == TS_NO) {
		ts_text_put(s->error, "no tap is kept yet; tapshoal keep FILE remembers one");
		return status;
	}
	if (status)
		return status;
	if (new) {
		water.softened |= s->options->softened;
		water.name = s->options->name ? s->options->name : water.name;
		if (ts_date_write(today, s->today))
			water.kept = ts_arena_text(s->arena, today, TS_DATE_ROOM - 1);
		status = tap_keep(s->system, s->arena, &water, s->error);
	}
	return status ? status : write_answer(s, &water, s->today);
}
