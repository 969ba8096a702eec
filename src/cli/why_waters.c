/* SPDX-License-Identifier: Apache-2.0 */
/*
 * why over several waters, of files or the rows of a table; answers/why_waters.c compares them.
 */
#include <string.h>

#include "answers/why_waters.h"
#include "base/arena.h"
#include "cli/care_answer.h"
#include "cli/table.h"
#include "cli/why.h"
#include "report/csv.h"
#include "report/why_result.h"
#include "show/why.h"

/* The waters of the call: `answers` hold what `asked` lends. */
struct opened {
	struct answer *answers;
	struct ts_why_waters_asked *asked;
	size_t count;
};

static bool make_room(struct session *s, size_t most, struct opened *ret)
{
	ret->answers = ts_arena_array(s->arena, most, sizeof *ret->answers);
	ret->asked = ts_arena_array(s->arena, most, sizeof *ret->asked);
	return ret->answers && ret->asked;
}

/* All of them, so that the faults of every file are found. */
static enum ts_status open_files(struct session *s, struct opened *ret)
{
	const struct values *files = &s->options->waters;
	enum ts_status status = TS_OK;

	if (!make_room(s, files->count, ret))
		return TS_NO_MEMORY;
	for (; ret->count < files->count && !s->error->len; ret->count++) {
		const char *file = files->items[ret->count];
		struct answer *a = &ret->answers[ret->count];
		enum ts_status one = answer_open_file(s, file, a);

		if (one && s->error->len)
			ts_text_puts(s->error, " (", file, ")", NULL);
		ret->asked[ret->count] = (struct ts_why_waters_asked){file, &a->water};
		status = one > status ? one : status;
	}
	return status;
}

/* Rows of a table, each a water with one reading. */
struct rows {
	struct ts_water *items;
	size_t count, room;
};

/* A row without a name is called after its line. */
static void name_row(struct session *s, struct ts_water *water, unsigned line)
{
	struct ts_text name;

	if (water->name)
		return;
	ts_text_open(&name, &s->arena->allocator);
	ts_text_put(&name, "line ");
	ts_text_number(&name, line, 0);
	water->name = ts_arena_text(s->arena, ts_text_get(&name), name.len);
	s->arena->failed |= name.failed;
	ts_text_drop(&name);
}

static enum ts_status read_rows(struct session *s, struct ts_waters *waters, struct rows *rows)
{
	enum ts_status status = TS_OK, worst = TS_OK;
	struct ts_water water;
	unsigned line;

	while (status != TS_NO) {
		status = ts_waters_next(waters, s->arena, &water, &line, s->findings);
		if (status == TS_NO_MEMORY)
			return status;
		worst = status == TS_BAD_INPUT ? status : worst;
		if (status != TS_OK)
			continue;
		name_row(s, &water, line);
		rows->items = ts_arena_grow(
			s->arena, rows->items, rows->count, &rows->room, sizeof *rows->items);
		if (!rows->items)
			return TS_NO_MEMORY;
		rows->items[rows->count++] = water;
	}
	if (rows->count || worst)
		return worst;
	table_find(s, TS_C_RECORDS_MISSING_KEY, "no row stands below the header",
		"write one row a water");
	return TS_BAD_INPUT;
}

static bool same_name(const struct ts_water *a, const struct ts_water *b)
{
	return a->name && b->name && strcmp(a->name, b->name) == 0;
}

/* The row and those below it of the same name become one water: they are its readings. */
static struct ts_water gather(struct session *s, const struct rows *rows, size_t first)
{
	struct ts_water water = rows->items[first];

	water.readings = ts_arena_array(s->arena, rows->count - first, sizeof *water.readings);
	water.reading_count = 0;
	for (size_t i = first; water.readings && i < rows->count; i++) {
		const struct ts_water *row = &rows->items[i];

		if (!same_name(row, &rows->items[first]))
			continue;
		water.softened |= row->softened;
		water.readings[water.reading_count++] = row->readings[0];
	}
	return water;
}

static bool is_first(const struct rows *rows, size_t i)
{
	for (size_t n = 0; n < i; n++) {
		if (same_name(&rows->items[n], &rows->items[i]))
			return false;
	}
	return true;
}

static enum ts_status open_rows(struct session *s, const struct rows *rows, struct opened *ret)
{
	enum ts_status status = TS_OK;

	if (!make_room(s, rows->count, ret))
		return TS_NO_MEMORY;
	for (size_t i = 0; i < rows->count && !status; i++) {
		struct answer *a = &ret->answers[ret->count];
		struct ts_water water;

		if (!is_first(rows, i))
			continue;
		water = gather(s, rows, i);
		if (s->arena->failed)
			return TS_NO_MEMORY;
		status = answer_open_water(s, &water, a);
		ret->asked[ret->count++] =
			(struct ts_why_waters_asked){s->options->batch_file, &a->water};
	}
	return status;
}

static enum ts_status open_batch(struct session *s, struct opened *ret)
{
	struct table table;
	struct ts_waters *waters;
	struct rows rows = {0};
	enum ts_status status, closed;

	if (!table_agrees(s))
		return TS_BAD_INPUT;
	status = table_open(s, &table);
	if (status)
		return status;
	waters = ts_waters_open(table_read, &table, table.file, s->arena, s->findings);
	status = waters ? read_rows(s, waters, &rows) : TS_BAD_INPUT;
	closed = table_close(s, &table);
	status = closed ? closed : status;
	return status == TS_OK ? open_rows(s, &rows, ret) : status;
}

static void write_answer(struct session *s, const struct ts_why_waters_result *r)
{
	struct ts_document doc;

	ts_doc_open(&doc, s->arena, "Species against several waters");
	ts_show_why_waters(&doc, r);
	session_write(s, &doc);
}

enum ts_status why_waters(struct session *s)
{
	const struct ts_asking asking = care_asking(s);
	struct opened opened = {0};
	struct ts_why_waters_question q = {.species_count = s->options->argument_count};
	struct ts_why_waters_result r;
	const struct ts_species **species = NULL;
	enum ts_status status =
		s->options->batch_file ? open_batch(s, &opened) : open_files(s, &opened);

	if (!status)
		status = why_named(s, &species);
	if (status)
		return status;
	q.species = species;
	q.waters = opened.asked;
	q.water_count = opened.count;
	q.keeping = &opened.answers[0].keeping;
	q.animals_say = say_animals_kept(s);
	q.overlays_say = say_overlays_kept(s);
	status = ts_answer_why_waters(&asking, &q, &r);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		session_json(s, "why", &ts_result_why_waters, &r);
	else if (s->options->format == FORMAT_CSV)
		session_csv(s, &ts_result_why_cell, r.cells, r.cell_count);
	else
		write_answer(s, &r);
	return r.all_have_one ? TS_OK : TS_NO;
}
