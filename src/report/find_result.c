/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of find.
 */
#include "report/find_result.h"

/* clang-format off */
#define B struct ts_find_band_result
static const struct ts_result_field band_fields[] = {
	TS_R_ROW_TEXT(B, "name", name, "which parameter"),
	TS_R_ROW_TEXT(B, "unit", unit, "of its figures"),
	TS_R_ROW_RANGE(B, "tolerated", tolerated, 2, "what it lives in healthily"),
	TS_R_ROW_RANGE(B, "preferred", preferred, 2, "what it is comfortable in"),
	TS_R_ROW_TEXT(B, "tolerated_source", tolerated_source, "publication or grade"),
	TS_R_ROW_TEXT(B, "preferred_source", preferred_source, "publication or grade"),
};
#undef B
static const struct ts_result_shape band_shape = TS_R_SHAPE("band", band_fields, struct ts_find_band_result);

#define R struct ts_find_species_result
static const struct ts_result_field row_fields[] = {
	TS_R_ROW_TEXT(R, "species", species, "accepted name"),
	TS_R_ROW_TEXT(R, "form", form, "where one species has two records"),
	TS_R_ROW_TEXT(R, "id", id, "stem of the file"),
	TS_R_ROW_TEXT(R, "common", common, "first English name"),
	TS_R_ROW_TEXT(R, "matched", matched, "the name or family that holds the pattern"),
	TS_R_ROW_TEXT(R, "family", family, "family"),
	TS_R_ROW_TEXT(R, "home_water", home_water, "kind of water it comes from"),
	TS_R_ROW_TEXT(R, "sold", sold, "everywhere, often, seldom or rarely"),
	TS_R_ROW_NUMBER(R, "adult_length_cm", adult_length_cm, 1, "usual total length in tanks"),
	TS_R_ROW_NUMBER(R, "group_least", group_least, 0, "settled from this many"),
	TS_R_ROW_NUMBER(R, "tank_length_cm", tank_length_cm, 0, "least tank"),
	TS_R_ROW_TEXT(R, "says", says, "its name and what it needs"),
	TS_R_ROW_TEXT(R, "lives_in", lives_in, "the water it lives in, in a line"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "what the buyer must know"),
	TS_R_ROW_LIST(R, "parameters", bands, band_count, const struct ts_find_band_result, &band_shape, "the water it lives in"),
	TS_R_ROW_TEXT(R, "file", file, "where the record was read from"),
};
#undef R
const struct ts_result_shape ts_result_find_species = TS_R_SHAPE("species found", row_fields, struct ts_find_species_result);

#define T struct ts_find_tally_result
static const struct ts_result_field tally_fields[] = {
	TS_R_ROW_TEXT(T, "name", name, "what is counted"),
	TS_R_ROW_COUNT(T, "count", count, "how many"),
};
#undef T
static const struct ts_result_shape tally_shape = TS_R_SHAPE("tally", tally_fields, struct ts_find_tally_result);

#define F struct ts_find_folder_result
static const struct ts_result_field folder_fields[] = {
	TS_R_ROW_TEXT(F, "folder", folder, "folder of records, weakest first"),
	TS_R_ROW_COUNT(F, "added", added, "species that no earlier folder had"),
	TS_R_ROW_COUNT(F, "replaced", replaced, "records in the place of earlier ones"),
};
#undef F
static const struct ts_result_shape folder_shape = TS_R_SHAPE("folder", folder_fields, struct ts_find_folder_result);

#define A struct ts_find_result
static const struct ts_result_field answer_fields[] = {
	TS_R_ROW_TEXT(A, "pattern", pattern, "what was looked for"),
	TS_R_ROW_TEXT(A, "headline", headline, "how many"),
	TS_R_ROW_TEXT(A, "unknown", unknown_says, "what is said of a name that nobody has; null: somebody has it"),
	TS_R_ROW_COUNT(A, "species", species_count, "in the whole catalogue"),
	TS_R_ROW_LIST(A, "found", found, found_count, struct ts_find_species_result, &ts_result_find_species, "species that meet everything"),
	TS_R_ROW_TEXTS(A, "did_you_mean", did_you_mean, "species whose names come near, where none was found"),
	TS_R_ROW_LIST(A, "groups", groups, group_count, struct ts_find_tally_result, &tally_shape, "found, by group"),
	TS_R_ROW_LIST(A, "home_waters", home_waters, home_water_count, struct ts_find_tally_result, &tally_shape, "found, by home water"),
	TS_R_ROW_LIST(A, "values", values, value_count, struct ts_find_tally_result, &tally_shape, "values of water, by grade of source"),
	TS_R_ROW_COUNT(A, "values_in_all", values_in_all, "the sum of values"),
	TS_R_ROW_COUNT(A, "fish", fish, "fish among those found"),
	TS_R_ROW_COUNT(A, "fish_ph_published", fish_ph_published, "fish whose tolerated pH is published"),
	TS_R_ROW_COUNT(A, "fish_gh_published", fish_gh_published, "fish whose tolerated GH is published"),
	TS_R_ROW_COUNT(A, "fish_temp_published", fish_temp_published, "fish whose tolerated temperature is published"),
	TS_R_ROW_LIST(A, "folders", folders, folder_count, struct ts_find_folder_result, &folder_shape, "where the records came from"),
};
#undef A
/* clang-format on */
const struct ts_result_shape ts_result_find =
	TS_R_SHAPE("find", answer_fields, struct ts_find_result);
