/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of why, against one water and against several.
 */
#include "report/why_result.h"

#include "words/sentence.h"

/* clang-format off */
#define P struct ts_why_parameter
static const struct ts_result_field parameter_fields[] = {
	TS_R_ROW_TEXT(P, "name", name, "which"),
	TS_R_ROW_TEXT(P, "says", says, "the reading beside what is comfortable"),
	TS_R_ROW_TEXT(P, "tolerated", tolerated_says, "what is tolerated, and who says so"),
};
#undef P
static const struct ts_result_shape parameter_shape = TS_R_SHAPE("parameter said", parameter_fields, struct ts_why_parameter);

#define F struct ts_why_fact
static const struct ts_result_field fact_fields[] = {
	TS_R_ROW_TEXT(F, "label", label, "what it is about"),
	TS_R_ROW_TEXT(F, "says", says, "in words"),
};
#undef F
static const struct ts_result_shape fact_shape = TS_R_SHAPE("fact", fact_fields, struct ts_why_fact);

#define A struct ts_why_animal
static const struct ts_result_field animal_fields[] = {
	TS_R_ROW_TEXT(A, "species", species, "accepted name"),
	TS_R_ROW_TEXT(A, "headline", headline, "the answer in a line"),
	TS_R_ROW_TEXT(A, "decides", decides, "the number that decides"),
	TS_R_ROW_TEXT(A, "caution", caution, "what is to be feared of it; null: nothing"),
	TS_R_ROW_TEXT(A, "change", change, "in which water, or warmth, it would live; null: none to name, or it lives in this"),
	TS_R_ROW_LIST(A, "water", water, water_count, struct ts_why_parameter, &parameter_shape, "each parameter in words"),
	TS_R_ROW_LIST(A, "facts", facts, fact_count, struct ts_why_fact, &fact_shape, "what else is to be known of it"),
};
#undef A
static const struct ts_result_shape animal_shape = TS_R_SHAPE("animal", animal_fields, struct ts_why_animal);

#define M struct ts_match_result
#define Y struct ts_why_result
static const struct ts_result_field why_fields[] = {
	TS_R_ROW_SUB(Y, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "the water that was asked about"),
	TS_R_ROW_LIST(Y, "animals", animals, animal_count, struct ts_why_animal, &animal_shape, "each in full, in the order of the call"),
	TS_R_ROW_TEXT(Y, "water_says", water_says, "the water in a line"),
	TS_R_ROW_TEXT(Y, "animals_say", animals_say, "how they are kept"),
	TS_R_ROW_TEXTS(Y, "notes", notes, "what is to be said of the water"),
	TS_R_ROW_TEXT(Y, "measure", measure, "what to measure next; null: no water was given"),
	TS_R_ROW_LIST(Y, "ranked", ranked, ranked_count, M, &ts_result_match, "not excluded, in the order of the call"),
	TS_R_ROW_LIST(Y, "excluded", excluded, excluded_count, M, &ts_result_match, "excluded, likewise"),
	TS_R_ROW_LIST(Y, "near_misses", near_misses, near_miss_count, M, &ts_result_match, "excluded by one parameter alone and by little"),
};
#undef Y
#undef M

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
	TS_R_ROW_TEXT(C, "in_short", in_short, "verdict and reason in a few words"),
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
	TS_R_ROW_TEXT(W, "in_a_line", in_a_line, "all of this in a line"),
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
	TS_R_ROW_TEXT(N, "says", says, "the water in a line"),
	TS_R_ROW_MAYBE(N, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "by all its readings"),
};
#undef N
static const struct ts_result_shape named_water_shape = TS_R_SHAPE("named water", named_water_fields, struct ts_why_water_result);

#define A struct ts_why_waters_result
static const struct ts_result_field waters_fields[] = {
	TS_R_ROW_TEXT(A, "headline", headline, "the answer in a line"),
	TS_R_ROW_TEXT(A, "decides", decides, "the worst of all"),
	TS_R_ROW_LIST(A, "waters", waters, water_count, struct ts_why_water_result, &named_water_shape, "in the order of the call"),
	TS_R_ROW_LIST(A, "species", species, species_count, struct ts_why_species_result, &species_shape, "in the order of the call"),
	TS_R_ROW_LIST(A, "cells", cells, cell_count, struct ts_why_cell_result, &ts_result_why_cell, "each species against each water"),
	TS_R_ROW_TEXT(A, "animals_say", animals_say, "how they are kept"),
	TS_R_ROW_TEXTS(A, "notes", notes, "what is to be said of the waters"),
	TS_R_ROW_TEXT(A, "closing", closing, "how to see one of them in full"),
};
#undef A

#define C struct ts_why_short_cell
static const struct ts_result_field short_cell_fields[] = {
	TS_R_ROW_TEXT(C, "name", name, "stem of the record's file"),
	TS_R_ROW_WORD(C, "verdict", verdict, ts_verdict_words, "does the water suit it? null: the row was not matched"),
	TS_R_ROW_TEXT(C, "limiting", limiting, "the parameter that decides"),
	TS_R_ROW_NUMBER(C, "uncomfortable_by", uncomfortable_by, 2, "how far that lies beyond preferred, negative below"),
	TS_R_ROW_TEXT(C, "says", says, "the number that decides"),
};
#undef C
static const struct ts_result_shape short_cell_shape = TS_R_SHAPE("species in short", short_cell_fields, struct ts_why_short_cell);

#define S struct ts_why_short_result
static const struct ts_result_field short_fields[] = {
	TS_R_ROW_TEXT(S, "name", name, "of the row"),
	TS_R_ROW_COUNT(S, "line", line, "on which the row starts"),
	TS_R_ROW_TEXTS(S, "findings", findings, "what is wrong in the row or to be said of it, each with its remedy"),
	TS_R_ROW_MAYBE(S, "water", water, struct ts_water_short_result, &ts_result_water_short, "null: the row was not matched"),
	TS_R_ROW_LIST(S, "species", cells, cell_count, struct ts_why_short_cell, &short_cell_shape, "each in the order of the call"),
};
#undef S
const struct ts_result_shape ts_result_why_short = TS_R_SHAPE("why in short", short_fields, struct ts_why_short_result);
/* clang-format on */
const struct ts_result_shape ts_result_why_waters =
	TS_R_SHAPE("why several waters", waters_fields, struct ts_why_waters_result);
const struct ts_result_shape ts_result_why = TS_R_SHAPE("why", why_fields, struct ts_why_result);
