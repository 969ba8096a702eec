/* SPDX-License-Identifier: Apache-2.0 */
/*
 * why for programs: fills the rows of report/why_result.h.
 */
#include "base/arena.h"
#include "cli/results.h"
#include "cli/why.h"
#include "report/csv.h"
#include "report/why_result.h"
#include "words/sentence.h"

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

static struct ts_why_cell_result make_cell(
	struct ts_arena *arena, const struct why_waters *w, size_t species, size_t water)
{
	const struct ts_species *s = w->species[species];
	const struct answer *a = &w->waters[water].answer;
	const struct ts_match *m = why_cell(w, species, water);
	bool worst = w->worst[species].water == water;
	struct ts_why_cell_result row = {.species = s->species,
		.id = result_id(arena, s->file),
		.common = result_common(s),
		.water = w->waters[water].label,
		.verdict = ts_verdict_words[m->verdict],
		.fit = m->fit,
		.limiting = result_limiting(m),
		.says = says_of(arena, m, &a->profile),
		.worst = worst,
		.worst_season = worst ? w->worst[species].season : NULL};

	row.parameters = result_parameters(arena, a, m, &row.parameter_count);
	return row;
}

static struct ts_why_species_result make_species(
	struct ts_arena *arena, const struct why_waters *w, size_t i)
{
	const struct ts_species *s = w->species[i];
	const struct why_worst *worst = &w->worst[i];

	return (struct ts_why_species_result){.species = s->species,
		.id = result_id(arena, s->file),
		.common = result_common(s),
		.waters = why_homes(w, i),
		.worst = {w->waters[worst->water].label, worst->season,
			ts_verdict_words[worst->match.verdict], result_limiting(&worst->match),
			says_of(arena, &worst->match, worst->profile)}};
}

static struct ts_why_cell_result *make_cells(
	struct ts_arena *arena, const struct why_waters *w, size_t *ret_count)
{
	size_t count = w->species_count * w->water_count;
	struct ts_why_cell_result *rows = ts_arena_array(arena, count, sizeof *rows);

	*ret_count = rows ? count : 0;
	for (size_t i = 0; i < *ret_count; i++)
		rows[i] = make_cell(arena, w, i / w->water_count, i % w->water_count);
	return rows;
}

void why_waters_json(struct session *s, const struct why_waters *w)
{
	struct ts_arena *arena = s->arena;
	struct ts_why_waters_result rows = {
		.waters = ts_arena_array(arena, w->water_count, sizeof *rows.waters),
		.species = ts_arena_array(arena, w->species_count, sizeof *rows.species)};

	rows.cells = make_cells(arena, w, &rows.cell_count);
	if (arena->failed)
		return;
	for (size_t i = 0; i < w->water_count; i++) {
		struct why_water *one = &w->waters[i];

		rows.waters[rows.water_count++] = (struct ts_why_water_result){one->label,
			one->file, {one->seasons, one->season_count},
			result_water(arena, &one->answer)};
	}
	for (size_t i = 0; i < w->species_count; i++)
		rows.species[rows.species_count++] = make_species(arena, w, i);
	session_json(s, "why", &ts_result_why_waters, &rows);
}

void why_waters_csv(struct session *s, const struct why_waters *w)
{
	size_t count;
	struct ts_why_cell_result *rows = make_cells(s->arena, w, &count);

	session_csv(s, &ts_result_why_cell, rows, count);
}
