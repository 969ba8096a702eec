/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of find for programs: JSON of the whole answer, CSV of the species found.
 */
#include <string.h>

#include "base/arena.h"
#include "cli/find.h"
#include "cli/results.h"
#include "model/shape.h"
#include "report/csv.h"
#include "words/names.h"
#include "words/sentence.h"

struct band {
	const char *name, *unit;
	struct ts_range tolerated, preferred;
	const char *tolerated_source, *preferred_source;
};

#define BANDS 5

struct row {
	const char *species, *form, *id, *common, *matched, *family, *home_water, *file;
	double adult_length_cm, group_least, tank_length_cm;
	struct ts_texts cautions;
	const struct band *bands;
	size_t band_count;
};

struct tally_row {
	const char *name;
	size_t count;
};

struct folder_row {
	const char *folder;
	size_t added, replaced;
};

struct answer_rows {
	const char *pattern;
	size_t species_count;
	struct row *found;
	size_t found_count;
	struct ts_texts did_you_mean;
	struct tally_row *groups, *home_waters, *values;
	size_t group_count, home_water_count, value_count;
	size_t fish, fish_ph_published, fish_gh_published;
	struct folder_row *folders;
	size_t folder_count;
};

/* clang-format off */
#define B struct band
static const struct ts_result_field band_fields[] = {
	TS_R_ROW_TEXT(B, "name", name, "which parameter"),
	TS_R_ROW_TEXT(B, "unit", unit, "of its figures"),
	TS_R_ROW_RANGE(B, "tolerated", tolerated, 2, "what it lives in healthily"),
	TS_R_ROW_RANGE(B, "preferred", preferred, 2, "what it is comfortable in"),
	TS_R_ROW_TEXT(B, "tolerated_source", tolerated_source, "publication or grade"),
	TS_R_ROW_TEXT(B, "preferred_source", preferred_source, "publication or grade"),
};
#undef B
static const struct ts_result_shape band_shape = TS_R_SHAPE("band", band_fields, struct band);

#define R struct row
static const struct ts_result_field row_fields[] = {
	TS_R_ROW_TEXT(R, "species", species, "accepted name"),
	TS_R_ROW_TEXT(R, "form", form, "where one species has two records"),
	TS_R_ROW_TEXT(R, "id", id, "stem of the file"),
	TS_R_ROW_TEXT(R, "common", common, "first English name"),
	TS_R_ROW_TEXT(R, "matched", matched, "the name or family that holds the pattern"),
	TS_R_ROW_TEXT(R, "family", family, "family"),
	TS_R_ROW_TEXT(R, "home_water", home_water, "kind of water it comes from"),
	TS_R_ROW_NUMBER(R, "adult_length_cm", adult_length_cm, 1, "usual total length in tanks"),
	TS_R_ROW_NUMBER(R, "group_least", group_least, 0, "settled from this many"),
	TS_R_ROW_NUMBER(R, "tank_length_cm", tank_length_cm, 0, "least tank"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "what the buyer must know"),
	TS_R_ROW_LIST(R, "parameters", bands, band_count, const struct band, &band_shape, "the water it lives in"),
	TS_R_ROW_TEXT(R, "file", file, "where the record was read from"),
};
#undef R
static const struct ts_result_shape row_shape = TS_R_SHAPE("species found", row_fields, struct row);

#define T struct tally_row
static const struct ts_result_field tally_fields[] = {
	TS_R_ROW_TEXT(T, "name", name, "what is counted"),
	TS_R_ROW_COUNT(T, "count", count, "how many"),
};
#undef T
static const struct ts_result_shape tally_shape = TS_R_SHAPE("tally", tally_fields, struct tally_row);

#define F struct folder_row
static const struct ts_result_field folder_fields[] = {
	TS_R_ROW_TEXT(F, "folder", folder, "folder of records, weakest first"),
	TS_R_ROW_COUNT(F, "added", added, "species that no earlier folder had"),
	TS_R_ROW_COUNT(F, "replaced", replaced, "records in the place of earlier ones"),
};
#undef F
static const struct ts_result_shape folder_shape = TS_R_SHAPE("folder", folder_fields, struct folder_row);

#define A struct answer_rows
static const struct ts_result_field answer_fields[] = {
	TS_R_ROW_TEXT(A, "pattern", pattern, "what was looked for"),
	TS_R_ROW_COUNT(A, "species", species_count, "in the whole catalogue"),
	TS_R_ROW_LIST(A, "found", found, found_count, struct row, &row_shape, "species that meet everything"),
	TS_R_ROW_TEXTS(A, "did_you_mean", did_you_mean, "species whose names come near, where none was found"),
	TS_R_ROW_LIST(A, "groups", groups, group_count, struct tally_row, &tally_shape, "found, by group"),
	TS_R_ROW_LIST(A, "home_waters", home_waters, home_water_count, struct tally_row, &tally_shape, "found, by home water"),
	TS_R_ROW_LIST(A, "values", values, value_count, struct tally_row, &tally_shape, "values of water, by grade of source"),
	TS_R_ROW_COUNT(A, "fish", fish, "fish among those found"),
	TS_R_ROW_COUNT(A, "fish_ph_published", fish_ph_published, "fish whose tolerated pH is published"),
	TS_R_ROW_COUNT(A, "fish_gh_published", fish_gh_published, "fish whose tolerated GH is published"),
	TS_R_ROW_LIST(A, "folders", folders, folder_count, struct folder_row, &folder_shape, "where the records came from"),
};
#undef A
/* clang-format on */
const struct ts_result_shape find_result_shape =
	TS_R_SHAPE("find", answer_fields, struct answer_rows);

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
static struct band *bands_of(struct ts_arena *arena, const struct ts_species *s)
{
	const struct ts_envelopes *e = &s->water.usual;
	const struct ts_envelope *const of[BANDS] = {
		&e->gh_dh, &e->kh_dh, &e->ph, &e->temp_c, &e->salinity_g_l};
	static const int parameter[BANDS] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE, TS_SALINITY};
	struct band *bands = ts_arena_array(arena, BANDS, sizeof *bands);

	for (size_t i = 0; bands && i < BANDS; i++)
		bands[i] = (struct band){ts_parameter_rows[parameter[i]].key,
			ts_parameter_rows[parameter[i]].unit, of[i]->tolerated, of[i]->preferred,
			of[i]->source.count ? of[i]->source.items[0] : NULL,
			of[i]->source.count > 1 ? of[i]->source.items[1] : NULL};
	return bands;
}

static void make_found(struct ts_arena *arena, const struct find_answer *a, struct answer_rows *ret)
{
	ret->found = ts_arena_array(arena, a->count ? a->count : 1, sizeof *ret->found);
	for (size_t i = 0; ret->found && i < a->count; i++) {
		const struct ts_species *s = a->items[i].species;

		ret->found[ret->found_count++] = (struct row){
			.species = s->species,
			.form = s->form,
			.id = result_id(arena, s->file),
			.common = s->common.en.count ? s->common.en.items[0] : NULL,
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

static void make_counts(struct ts_arena *arena, const struct ts_summary *s, struct answer_rows *ret)
{
	struct tally_row *rows = ts_arena_array(
		arena, s->group_count + TS_HOME__COUNT + TS_GRADE__COUNT, sizeof *rows);

	if (!rows)
		return;
	ret->groups = rows;
	for (size_t i = 0; i < s->group_count; i++)
		rows[ret->group_count++] =
			(struct tally_row){s->groups[i].name, s->groups[i].count};
	rows += ret->group_count;
	ret->home_waters = rows;
	for (int w = 0; w < TS_HOME__COUNT; w++)
		rows[ret->home_water_count++] =
			(struct tally_row){ts_words_home_water[w], s->home_water[w]};
	rows += ret->home_water_count;
	ret->values = rows;
	for (int g = 0; g < TS_GRADE__COUNT; g++)
		rows[ret->value_count++] = (struct tally_row){ts_grade_words[g], s->values[g]};
	ret->fish = s->fish;
	ret->fish_ph_published = s->fish_ph_published;
	ret->fish_gh_published = s->fish_gh_published;
}

static void make_folders(
	struct ts_arena *arena, const struct ts_catalogue *catalogue, struct answer_rows *ret)
{
	size_t count = catalogue->folders.count;

	ret->folders = ts_arena_array(arena, count ? count : 1, sizeof *ret->folders);
	for (size_t i = 0; ret->folders && i < count; i++) {
		struct folder_row *row = &ret->folders[ret->folder_count++];

		row->folder = catalogue->folders.items[i];
		ts_overlay_count(catalogue, i, &row->added, &row->replaced);
	}
}

void find_json(struct session *s, const struct find_answer *a)
{
	struct answer_rows rows = {.pattern = a->pattern, .species_count = s->catalogue->count};

	make_found(s->arena, a, &rows);
	make_counts(s->arena, &a->summary, &rows);
	make_folders(s->arena, s->catalogue, &rows);
	session_json(s, "find", &find_result_shape, &rows);
}

void find_csv(struct session *s, const struct find_answer *a)
{
	struct answer_rows rows = {0};

	make_found(s->arena, a, &rows);
	session_csv(s, &row_shape, rows.found, rows.found_count);
}
