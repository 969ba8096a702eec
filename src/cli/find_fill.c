/* SPDX-License-Identifier: Apache-2.0 */
/*
 * find for programs: fills the rows of report/find_result.h.
 */
#include <string.h>

#include "answers/matched.h"
#include "base/arena.h"
#include "cli/find.h"
#include "model/shape.h"
#include "report/csv.h"
#include "report/find_result.h"
#include "words/names.h"
#include "words/sentence.h"

#define BANDS 5

static struct ts_texts cautions_of(struct ts_arena *arena, const struct ts_species *s)
{
	struct ts_texts texts = {ts_arena_array(arena, 32, sizeof *texts.items), 0};

	for (unsigned i = 0; texts.items && ts_words_cautions[i]; i++) {
		if (s->cautions & 1u << i)
			texts.items[texts.count++] = ts_words_cautions[i];
	}
	return texts;
}

/* The record's own values, without the bands that follow from the kind of water. */
static struct ts_find_band_result *bands_of(struct ts_arena *arena, const struct ts_species *s)
{
	const struct ts_envelopes *e = &s->water.usual;
	const struct ts_envelope *const of[BANDS] = {
		&e->gh_dh, &e->kh_dh, &e->ph, &e->temp_c, &e->salinity_g_l};
	static const int parameter[BANDS] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE, TS_SALINITY};
	struct ts_find_band_result *bands = ts_arena_array(arena, BANDS, sizeof *bands);

	for (size_t i = 0; bands && i < BANDS; i++)
		bands[i] = (struct ts_find_band_result){ts_parameter_rows[parameter[i]].key,
			ts_parameter_rows[parameter[i]].unit, of[i]->tolerated, of[i]->preferred,
			of[i]->source.count ? of[i]->source.items[0] : NULL,
			of[i]->source.count > 1 ? of[i]->source.items[1] : NULL};
	return bands;
}

static void make_found(
	struct ts_arena *arena, const struct find_answer *a, struct ts_find_result *ret)
{
	ret->found = ts_arena_array(arena, a->count ? a->count : 1, sizeof *ret->found);
	for (size_t i = 0; ret->found && i < a->count; i++) {
		const struct ts_species *s = a->items[i].species;

		ret->found[ret->found_count++] = (struct ts_find_species_result){
			.species = s->species,
			.form = s->form,
			.id = ts_answer_id(arena, s->file),
			.common = ts_answer_common(s),
			.matched = a->items[i].name,
			.family = s->family,
			.home_water = ts_words_home_water[s->home_water],
			.file = s->file,
			.adult_length_cm = s->adult_length_cm,
			.group_least = s->group.least,
			.tank_length_cm = ts_match_tank_length_cm(s),
			.cautions = cautions_of(arena, s),
			.bands = bands_of(arena, s),
			.band_count = BANDS,
		};
	}
	ret->did_you_mean.items =
		ts_arena_array(arena, TS_CANDIDATES_MOST, sizeof *ret->did_you_mean.items);
	for (size_t i = 0; ret->did_you_mean.items && i < a->candidates.count; i++)
		ret->did_you_mean.items[ret->did_you_mean.count++] =
			a->candidates.items[i].species->species;
}

static void make_counts(
	struct ts_arena *arena, const struct ts_summary *s, struct ts_find_result *ret)
{
	struct ts_find_tally_result *rows = ts_arena_array(
		arena, s->group_count + TS_HOME__COUNT + TS_GRADE__COUNT, sizeof *rows);

	if (!rows)
		return;
	ret->groups = rows;
	for (size_t i = 0; i < s->group_count; i++)
		rows[ret->group_count++] =
			(struct ts_find_tally_result){s->groups[i].name, s->groups[i].count};
	rows += ret->group_count;
	ret->home_waters = rows;
	for (int w = 0; w < TS_HOME__COUNT; w++)
		rows[ret->home_water_count++] =
			(struct ts_find_tally_result){ts_words_home_water[w], s->home_water[w]};
	rows += ret->home_water_count;
	ret->values = rows;
	for (int g = 0; g < TS_GRADE__COUNT; g++)
		rows[ret->value_count++] =
			(struct ts_find_tally_result){ts_grade_words[g], s->values[g]};
	ret->fish = s->fish;
	ret->fish_ph_published = s->fish_ph_published;
	ret->fish_gh_published = s->fish_gh_published;
	ret->fish_temp_published = s->fish_temp_published;
}

static void make_folders(
	struct ts_arena *arena, const struct ts_catalogue *catalogue, struct ts_find_result *ret)
{
	size_t count = catalogue->folders.count;

	ret->folders = ts_arena_array(arena, count ? count : 1, sizeof *ret->folders);
	for (size_t i = 0; ret->folders && i < count; i++) {
		struct ts_find_folder_result *row = &ret->folders[ret->folder_count++];

		row->folder = catalogue->folders.items[i];
		ts_overlay_count(catalogue, i, &row->added, &row->replaced);
	}
}

void find_json(struct session *s, const struct find_answer *a)
{
	struct ts_find_result rows = {.pattern = a->pattern, .species_count = s->catalogue->count};

	make_found(s->arena, a, &rows);
	make_counts(s->arena, &a->summary, &rows);
	make_folders(s->arena, s->catalogue, &rows);
	session_json(s, "find", &ts_result_find, &rows);
}

void find_csv(struct session *s, const struct find_answer *a)
{
	struct ts_find_result rows = {0};

	make_found(s->arena, a, &rows);
	session_csv(s, &ts_result_find_species, rows.found, rows.found_count);
}
