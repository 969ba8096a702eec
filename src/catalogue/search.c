/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Searching a catalogue: which animals pass, how near their names come, and what is counted of
 * them.
 */
#include "catalogue/search.h"

#include <string.h>

#include "base/arena.h"
#include "catalogue/folders.h"
#include "catalogue/name_rows.h"
#include "catalogue/name_words.h"
#include "catalogue/summary.h"
#include "words/names.h"

/* The pattern may be the name of one animal, or of a group, however it is written. */
static bool meant(const struct ts_search *a, const struct ts_species *species)
{
	if (a->named)
		return a->named == species;
	return a->candidates->how == TS_NAME_GROUP &&
	       ts_name_row_holds(a->candidates->row, species);
}

/* How near the names of an animal come to what was typed, as people would say it. */
static int far_from(const struct ts_name_words *asked, const struct ts_species *species)
{
	const char *name;
	int far = 2;

	for (size_t i = 0; far && (name = ts_species_name(species, i)); i++) {
		struct ts_name_words words;
		unsigned miss;

		ts_name_split(name, strlen(name), false, &words);
		miss = ts_name_miss(asked, &words) / TS_NAME_TIER;
		if (miss <= TS_TIER_PLURAL)
			far = 0;
		else if (miss <= TS_TIER_WORDS)
			far = 1;
	}
	return far;
}

enum ts_status ts_search(const struct ts_catalogue *catalogue, const struct ts_search *search,
	struct ts_arena *arena, struct ts_find_hit **ret, size_t *ret_count)
{
	struct ts_name_words asked = {.count = 0};
	struct ts_find_hit *hits =
		ts_arena_array(arena, catalogue->count ? catalogue->count : 1, sizeof *hits);

	*ret = hits;
	*ret_count = 0;
	if (!hits)
		return TS_NO_MEMORY;
	if (search->words)
		ts_name_split(search->words, strlen(search->words), false, &asked);
	for (size_t i = 0; i < catalogue->count; i++) {
		struct ts_find_hit one = {catalogue->items[i], NULL, 0};
		enum ts_status status = TS_OK;

		if (!ts_filter_passes(search->filter, one.species))
			continue;
		if (search->pattern && !meant(search, one.species))
			status = ts_pattern_species(search->pattern, one.species, &one.name);
		if (status > TS_NO)
			return status;
		if (status != TS_OK)
			continue;
		one.far = search->words ? far_from(&asked, one.species) : 0;
		hits[(*ret_count)++] = one;
	}
	return TS_OK;
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
	for (int g = 0; g < TS_GRADE__COUNT; g++)
		ret->values_in_all += s->values[g];
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

bool ts_search_counts(const struct ts_catalogue *catalogue, const struct ts_find_hit *hits,
	size_t count, struct ts_arena *arena, struct ts_find_result *ret)
{
	const struct ts_species **species =
		ts_arena_array(arena, count ? count : 1, sizeof *species);
	struct ts_summary summary;

	for (size_t i = 0; species && i < count; i++)
		species[i] = hits[i].species;
	if (!species)
		return false;
	ts_summarise(species, count, arena, &summary);
	make_counts(arena, &summary, ret);
	make_folders(arena, catalogue, ret);
	return !arena->failed;
}
