/* SPDX-License-Identifier: Apache-2.0 */
/*
 * why over several waters, of files or the rows of a table: each species against each, and for each
 * species the water, and the season of it, where it fares worst. why_say.c writes the answer.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/table.h"
#include "cli/why.h"

/* Rows of a table at the most: each stays in memory. */
#define ROWS_MOST 500

const struct ts_match *why_cell(const struct why_waters *w, size_t species, size_t water)
{
	return &w->cells[species * w->water_count + water];
}

size_t why_homes(const struct why_waters *w, size_t species)
{
	size_t homes = 0;

	for (size_t i = 0; i < w->water_count; i++)
		homes += why_cell(w, species, i)->verdict <= TS_TOLERATES;
	return homes;
}

static const char *name_of_file(const char *file)
{
	const char *slash = strrchr(file, '/');

	return slash ? slash + 1 : file;
}

/* What a water is called: its name, or its file where another has the same name. */
static void label(struct why_waters *w)
{
	for (size_t i = 0; i < w->water_count; i++) {
		const char *name = w->waters[i].answer.water.name;

		w->waters[i].label = name ? name : name_of_file(w->waters[i].file);
		for (size_t n = 0; name && n < w->water_count; n++) {
			const char *other = w->waters[n].answer.water.name;

			if (n != i && other && strcmp(other, name) == 0)
				w->waters[i].label = w->waters[i].file;
		}
	}
}

/* The profile of each part of the year, from copies of its readings. */
static enum ts_status open_seasons(struct session *s, struct why_water *one)
{
	const struct ts_water *water = &one->answer.water;
	struct ts_water part;

	one->season_count = ts_water_seasons(water, one->seasons);
	one->of_season = ts_arena_array(s->arena, one->season_count, sizeof *one->of_season);
	part.readings = ts_arena_array(s->arena, water->reading_count, sizeof *part.readings);
	if (s->arena->failed)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < one->season_count; i++) {
		struct ts_reading *copies = part.readings;

		memcpy(copies, water->readings, water->reading_count * sizeof *copies);
		part = *water;
		part.readings = copies;
		ts_water_take_season(&part, one->seasons[i]);
		ts_profile_make(
			&part, &one->answer.keeping, s->practice, s->today, &one->of_season[i]);
	}
	return TS_OK;
}

static int by_miss(const struct ts_match *a, const struct ts_match *b, int parameter)
{
	double miss_a = fabs(a->at[parameter].outside_by),
	       miss_b = fabs(b->at[parameter].outside_by);

	return miss_a < miss_b ? -1 : miss_a > miss_b;
}

int why_compare(const struct ts_match *a, const struct ts_match *b)
{
	double fit_a = isnan(a->order) ? -1 : a->order, fit_b = isnan(b->order) ? -1 : b->order;

	if (a->verdict != b->verdict)
		return a->verdict < b->verdict ? -1 : 1;
	if (fit_a != fit_b)
		return fit_a > fit_b ? -1 : 1;
	return a->limiting >= 0 && a->limiting == b->limiting ? by_miss(a, b, a->limiting) : 0;
}

/* The worst part of the year, where it is as bad as all readings together. */
static void find_season(struct session *s, const struct ts_species *species,
	const struct why_water *in, struct why_worst *worst)
{
	struct ts_match match, found = {0};
	size_t at = in->season_count;

	for (size_t i = 0; i < in->season_count; i++) {
		ts_match_species(
			species, &in->of_season[i], &in->answer.keeping, s->practice, &match);
		if (at < in->season_count && why_compare(&match, &found) <= 0)
			continue;
		found = match;
		at = i;
	}
	if (at == in->season_count || found.verdict < worst->match.verdict)
		return;
	worst->season = in->seasons[at];
	worst->match = found;
	worst->profile = &in->of_season[at];
}

static void find_worst(struct session *s, const struct why_waters *w, size_t species)
{
	struct why_worst *worst = &w->worst[species];

	for (size_t i = 1; i < w->water_count; i++) {
		if (why_compare(why_cell(w, species, i), why_cell(w, species, worst->water)) > 0)
			worst->water = i;
	}
	worst->match = *why_cell(w, species, worst->water);
	worst->profile = &w->waters[worst->water].answer.profile;
	find_season(s, w->species[species], &w->waters[worst->water], worst);
}

static enum ts_status match_all(struct session *s, struct why_waters *w)
{
	w->cells = ts_arena_array(s->arena, w->species_count * w->water_count, sizeof *w->cells);
	w->worst = ts_arena_array(s->arena, w->species_count, sizeof *w->worst);
	if (!w->cells || !w->worst)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < w->species_count; i++) {
		for (size_t n = 0; n < w->water_count; n++) {
			const struct answer *a = &w->waters[n].answer;

			ts_match_species(w->species[i], &a->profile, &a->keeping, s->practice,
				&w->cells[i * w->water_count + n]);
		}
		find_worst(s, w, i);
	}
	return TS_OK;
}

/* One water; what is wrong with the call itself is told with its file. */
static enum ts_status open_file(struct session *s, const char *file, struct why_water *ret)
{
	enum ts_status status;

	ret->file = file;
	status = answer_open_file(s, file, &ret->answer);
	if (!status)
		status = open_seasons(s, ret);
	if (status && s->error->len)
		ts_text_puts(s->error, " (", file, ")", NULL);
	return status;
}

/* All of them, so that the faults of every file are found. */
static enum ts_status open_files(struct session *s, struct why_waters *w)
{
	const struct values *files = &s->options->waters;
	enum ts_status status = TS_OK;

	w->waters = ts_arena_array(s->arena, files->count, sizeof *w->waters);
	if (!w->waters)
		return TS_NO_MEMORY;
	for (; w->water_count < files->count && !s->error->len; w->water_count++) {
		enum ts_status one =
			open_file(s, files->items[w->water_count], &w->waters[w->water_count]);

		status = one > status ? one : status;
	}
	return status;
}

/* Rows of a table, each a water with one reading. */
struct rows {
	struct ts_water *items;
	size_t count;
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
		if (rows->count == ROWS_MOST) {
			ts_text_put(s->error, "the table has more than 500 rows; tapshoal rank "
					      "--batch takes any number");
			return TS_BAD_INPUT;
		}
		name_row(s, &water, line);
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

static enum ts_status open_rows(struct session *s, const struct rows *rows, struct why_waters *w)
{
	enum ts_status status = TS_OK;

	w->waters = ts_arena_array(s->arena, rows->count, sizeof *w->waters);
	if (!w->waters)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < rows->count && !status; i++) {
		struct why_water *one = &w->waters[w->water_count];
		struct ts_water water;

		if (!is_first(rows, i))
			continue;
		water = gather(s, rows, i);
		if (s->arena->failed)
			return TS_NO_MEMORY;
		one->file = s->options->batch_file;
		w->water_count++;
		status = answer_open_water(s, &water, &one->answer);
		if (!status)
			status = open_seasons(s, one);
	}
	return status;
}

static enum ts_status open_batch(struct session *s, struct why_waters *w)
{
	struct table table;
	struct ts_waters *waters;
	struct rows rows = {ts_arena_array(s->arena, ROWS_MOST, sizeof *rows.items), 0};
	enum ts_status status, closed;

	if (!rows.items)
		return TS_NO_MEMORY;
	if (!table_agrees(s))
		return TS_BAD_INPUT;
	status = table_open(s, &table);
	if (status)
		return status;
	waters = ts_waters_open(table_read, &table, table.file, s->arena, s->findings);
	status = waters ? read_rows(s, waters, &rows) : TS_BAD_INPUT;
	closed = table_close(s, &table);
	status = closed ? closed : status;
	return status == TS_OK ? open_rows(s, &rows, w) : status;
}

enum ts_status why_waters(struct session *s)
{
	struct why_waters w = {.species_count = s->options->argument_count};
	enum ts_status status = s->options->batch_file ? open_batch(s, &w) : open_files(s, &w);

	label(&w);
	if (!status)
		status = why_named(s, &w.species);
	if (!status)
		status = match_all(s, &w);
	if (status)
		return status;
	if (s->options->format == FORMAT_JSON)
		why_waters_json(s, &w);
	else if (s->options->format == FORMAT_CSV)
		why_waters_csv(s, &w);
	else
		why_waters_write(s, &w);
	for (size_t i = 0; i < w.species_count; i++) {
		if (!why_homes(&w, i))
			return TS_NO;
	}
	return TS_OK;
}
