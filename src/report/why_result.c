/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of why over several waters.
 */
#include "report/why_result.h"

#include "words/sentence.h"

/* clang-format off */
#define C struct ts_why_cell_result
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
	TS_R_ROW_LIST(C, "parameters", parameters, parameter_count, struct ts_parameter_result, &ts_result_parameter, "each parameter against the water"),
};
#undef C
const struct ts_result_shape ts_result_why_cell = TS_R_SHAPE("cell", cell_fields, struct ts_why_cell_result);

#define W struct ts_why_worst_result
static const struct ts_result_field worst_fields[] = {
	TS_R_ROW_TEXT(W, "water", water, "as in waters"),
	TS_R_ROW_TEXT(W, "season", season, "part of the year; null: its readings tell none apart"),
	TS_R_ROW_WORD(W, "verdict", verdict, ts_verdict_words, "in that season, else by all readings"),
	TS_R_ROW_TEXT(W, "limiting", limiting, "the parameter that decides there"),
	TS_R_ROW_TEXT(W, "says", says, "the number that decides there"),
};
#undef W
static const struct ts_result_shape worst_shape = TS_R_SHAPE("worst", worst_fields, struct ts_why_worst_result);

#define S struct ts_why_species_result
static const struct ts_result_field species_fields[] = {
	TS_R_ROW_TEXT(S, "species", species, "accepted name"),
	TS_R_ROW_TEXT(S, "id", id, "stem of the record's file"),
	TS_R_ROW_TEXT(S, "common", common, "first English name"),
	TS_R_ROW_COUNT(S, "waters", waters, "how many suit it or are tolerated"),
	TS_R_ROW_SUB(S, "worst", worst, struct ts_why_worst_result, &worst_shape, "where it fares worst"),
};
#undef S
static const struct ts_result_shape species_shape = TS_R_SHAPE("species", species_fields, struct ts_why_species_result);

#define N struct ts_why_water_result
static const struct ts_result_field named_water_fields[] = {
	TS_R_ROW_TEXT(N, "name", name, "what it is called in this answer"),
	TS_R_ROW_TEXT(N, "file", file, "it was read from"),
	TS_R_ROW_TEXTS(N, "seasons", seasons, "parts of the year that its readings tell apart"),
	TS_R_ROW_MAYBE(N, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "by all its readings"),
};
#undef N
static const struct ts_result_shape named_water_shape = TS_R_SHAPE("named water", named_water_fields, struct ts_why_water_result);

#define A struct ts_why_waters_result
static const struct ts_result_field waters_fields[] = {
	TS_R_ROW_LIST(A, "waters", waters, water_count, struct ts_why_water_result, &named_water_shape, "in the order of the call"),
	TS_R_ROW_LIST(A, "species", species, species_count, struct ts_why_species_result, &species_shape, "in the order of the call"),
	TS_R_ROW_LIST(A, "cells", cells, cell_count, struct ts_why_cell_result, &ts_result_why_cell, "each species against each water"),
};
#undef A
/* clang-format on */
const struct ts_result_shape ts_result_why_waters =
	TS_R_SHAPE("why several waters", waters_fields, struct ts_why_waters_result);
