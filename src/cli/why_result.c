/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of why over several waters: each cell complete, and where each species fares worst.
 */
#include "base/arena.h"
#include "cli/results.h"
#include "cli/why.h"
#include "report/csv.h"
#include "words/sentence.h"

struct cell_row {
	const char *species, *id, *common, *water, *verdict;
	double fit;
	const char *limiting, *says;
	bool worst;
	const char *worst_season;
	struct parameter_row *parameters;
	size_t parameter_count;
};

struct worst_row {
	const char *water, *season, *verdict, *limiting, *says;
};

struct species_row {
	const char *species, *id, *common;
	size_t waters;
	struct worst_row worst;
};

struct named_water_row {
	const char *name, *file;
	struct ts_texts seasons;
	struct water_row *water;
};

struct waters_rows {
	struct named_water_row *waters;
	struct species_row *species;
	struct cell_row *cells;
	size_t water_count, species_count, cell_count;
};

/* clang-format off */
#define C struct cell_row
static const struct ts_result_field cell_fields[] = {
	TS_R_ROW_TEXT(C, "species", species, "accepted name"),
	TS_R_ROW_TEXT(C, "id", id, "stem of the record's file"),
	TS_R_ROW_TEXT(C, "common", common, "first English name"),
	TS_R_ROW_TEXT(C, "water", water, "as in waters"),
	TS_R_ROW_WORD(C, "verdict", verdict, ts_verdict_words, "does the water suit it, by all its readings?"),
	TS_R_ROW_SHARE(C, "fit", fit, 3, "0 to 1, for sorting"),
	TS_R_ROW_TEXT(C, "limiting", limiting, "the parameter that decides"),
	TS_R_ROW_TEXT(C, "says", says, "the number that decides"),
	TS_R_ROW_BOOL(C, "worst", worst, "the species fares worst in this water"),
	TS_R_ROW_TEXT(C, "worst_season", worst_season, "there, in this part of the year; null: none is told apart"),
	TS_R_ROW_LIST(C, "parameters", parameters, parameter_count, struct parameter_row, &parameter_result_shape, "each parameter against the water"),
};
#undef C
static const struct ts_result_shape cell_shape = TS_R_SHAPE("cell", cell_fields, struct cell_row);

#define W struct worst_row
static const struct ts_result_field worst_fields[] = {
	TS_R_ROW_TEXT(W, "water", water, "as in waters"),
	TS_R_ROW_TEXT(W, "season", season, "part of the year; null: its readings tell none apart"),
	TS_R_ROW_WORD(W, "verdict", verdict, ts_verdict_words, "in that season, else by all readings"),
	TS_R_ROW_TEXT(W, "limiting", limiting, "the parameter that decides there"),
	TS_R_ROW_TEXT(W, "says", says, "the number that decides there"),
};
#undef W
static const struct ts_result_shape worst_shape = TS_R_SHAPE("worst", worst_fields, struct worst_row);

#define S struct species_row
static const struct ts_result_field species_fields[] = {
	TS_R_ROW_TEXT(S, "species", species, "accepted name"),
	TS_R_ROW_TEXT(S, "id", id, "stem of the record's file"),
	TS_R_ROW_TEXT(S, "common", common, "first English name"),
	TS_R_ROW_COUNT(S, "waters", waters, "how many suit it or are tolerated"),
	TS_R_ROW_SUB(S, "worst", worst, struct worst_row, &worst_shape, "where it fares worst"),
};
#undef S
static const struct ts_result_shape species_shape = TS_R_SHAPE("species", species_fields, struct species_row);

#define N struct named_water_row
static const struct ts_result_field named_water_fields[] = {
	TS_R_ROW_TEXT(N, "name", name, "what it is called in this answer"),
	TS_R_ROW_TEXT(N, "file", file, "it was read from"),
	TS_R_ROW_TEXTS(N, "seasons", seasons, "parts of the year that its readings tell apart"),
	TS_R_ROW_MAYBE(N, "water", water, struct water_row, &water_asked_shape, "by all its readings"),
};
#undef N
static const struct ts_result_shape named_water_shape = TS_R_SHAPE("named water", named_water_fields, struct named_water_row);

#define A struct waters_rows
static const struct ts_result_field waters_fields[] = {
	TS_R_ROW_LIST(A, "waters", waters, water_count, struct named_water_row, &named_water_shape, "in the order of the call"),
	TS_R_ROW_LIST(A, "species", species, species_count, struct species_row, &species_shape, "in the order of the call"),
	TS_R_ROW_LIST(A, "cells", cells, cell_count, struct cell_row, &cell_shape, "each species against each water"),
};
#undef A
/* clang-format on */
const struct ts_result_shape why_waters_result_shape =
	TS_R_SHAPE("why several waters", waters_fields, struct waters_rows);

static const char *limiting_of(const struct ts_match *m)
{
	return m->limiting < 0 ? NULL : ts_parameter_rows[m->limiting].key;
}

static const char *says_of(
	struct ts_arena *arena, const struct ts_match *m, const struct ts_profile *profile)
{
	struct ts_text text;
	const char *kept;

	ts_text_open(&text, &arena->allocator);
	why_deciding(&text, m, profile);
	kept = ts_arena_text(arena, ts_text_get(&text), text.len);
	arena->failed |= text.failed;
	ts_text_drop(&text);
	return kept;
}

static struct cell_row make_cell(
	struct ts_arena *arena, const struct why_waters *w, size_t species, size_t water)
{
	const struct ts_species *s = w->species[species];
	const struct answer *a = &w->waters[water].answer;
	const struct ts_match *m = why_cell(w, species, water);
	bool worst = w->worst[species].water == water;
	struct cell_row row = {.species = s->species,
		.id = result_id(arena, s->file),
		.common = s->common.en.count ? s->common.en.items[0] : NULL,
		.water = w->waters[water].label,
		.verdict = ts_verdict_words[m->verdict],
		.fit = m->fit,
		.limiting = limiting_of(m),
		.says = says_of(arena, m, &a->profile),
		.worst = worst,
		.worst_season = worst ? w->worst[species].season : NULL};

	row.parameters = result_parameters(arena, a, m, &row.parameter_count);
	return row;
}

static struct species_row make_species(struct ts_arena *arena, const struct why_waters *w, size_t i)
{
	const struct ts_species *s = w->species[i];
	const struct why_worst *worst = &w->worst[i];

	return (struct species_row){.species = s->species,
		.id = result_id(arena, s->file),
		.common = s->common.en.count ? s->common.en.items[0] : NULL,
		.waters = why_homes(w, i),
		.worst = {w->waters[worst->water].label, worst->season,
			ts_verdict_words[worst->match.verdict], limiting_of(&worst->match),
			says_of(arena, &worst->match, worst->profile)}};
}

static struct cell_row *make_cells(
	struct ts_arena *arena, const struct why_waters *w, size_t *ret_count)
{
	size_t count = w->species_count * w->water_count;
	struct cell_row *rows = ts_arena_array(arena, count, sizeof *rows);

	*ret_count = rows ? count : 0;
	for (size_t i = 0; i < *ret_count; i++)
		rows[i] = make_cell(arena, w, i / w->water_count, i % w->water_count);
	return rows;
}

void why_waters_json(struct session *s, const struct why_waters *w)
{
	struct ts_arena *arena = s->arena;
	struct waters_rows rows = {
		.waters = ts_arena_array(arena, w->water_count, sizeof *rows.waters),
		.species = ts_arena_array(arena, w->species_count, sizeof *rows.species)};

	rows.cells = make_cells(arena, w, &rows.cell_count);
	if (arena->failed)
		return;
	for (size_t i = 0; i < w->water_count; i++) {
		struct why_water *one = &w->waters[i];

		rows.waters[rows.water_count++] = (struct named_water_row){one->label, one->file,
			{one->seasons, one->season_count}, result_water(arena, &one->answer)};
	}
	for (size_t i = 0; i < w->species_count; i++)
		rows.species[rows.species_count++] = make_species(arena, w, i);
	session_json(s, "why", &why_waters_result_shape, &rows);
}

void why_waters_csv(struct session *s, const struct why_waters *w)
{
	size_t count;
	struct cell_row *rows = make_cells(s->arena, w, &count);

	session_csv(s, &cell_shape, rows, count);
}
