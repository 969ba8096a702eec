/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of rank and why: always complete, every species and every parameter, null where a value
 * is not known.
 */
#include "report/rank_result.h"

#include "words/sentence.h"

/* clang-format off */
#define P struct ts_parameter_result
static const struct ts_result_field parameter_fields[] = {
	TS_R_ROW_TEXT(P, "name", name, "gh, kh, ph, temp or salinity"),
	TS_R_ROW_TEXT(P, "unit", unit, "of its figures"),
	TS_R_ROW_NUMBER(P, "reading", reading, 2, "the value that counts"),
	TS_R_ROW_NUMBER(P, "reading_low", reading_low, 2, "least that the reading allows"),
	TS_R_ROW_NUMBER(P, "reading_high", reading_high, 2, "most that the reading allows"),
	TS_R_ROW_RANGE(P, "tolerated", tolerated, 2, "what the species lives in healthily"),
	TS_R_ROW_RANGE(P, "preferred", preferred, 2, "what it is comfortable in"),
	TS_R_ROW_TEXTS(P, "source", source, "publication or grade of tolerated, of preferred"),
	TS_R_ROW_SHARE(P, "suitability", suitability, 3, "1 comfortable, 0 at the limits"),
	TS_R_ROW_NUMBER(P, "outside_by", outside_by, 2, "how far beyond tolerated, negative below"),
};
#undef P
const struct ts_result_shape ts_result_parameter =
	TS_R_SHAPE("parameter", parameter_fields, struct ts_parameter_result);

#define E struct ts_excluded_result
static const struct ts_result_field excluded_fields[] = {
	TS_R_ROW_TEXT(E, "name", name, "what excludes"),
	TS_R_ROW_NUMBER(E, "outside_by", outside_by, 3, "how far beyond what is tolerated"),
	TS_R_ROW_TEXT(E, "unit", unit, "of its figures"),
	TS_R_ROW_NUMBER(E, "would_fit_if", would_fit_if, 3, "the value at which it would no longer exclude"),
};
#undef E
static const struct ts_result_shape excluded_shape =
	TS_R_SHAPE("excluded by", excluded_fields, struct ts_excluded_result);

#define M struct ts_match_result
static const struct ts_result_field match_fields[] = {
	TS_R_ROW_TEXT(M, "species", species, "accepted name"),
	TS_R_ROW_TEXT(M, "id", id, "stem of the record's file"),
	TS_R_ROW_TEXT(M, "common", common, "first English name"),
	TS_R_ROW_WORD(M, "verdict", verdict, ts_verdict_words, "does the water suit it?"),
	TS_R_ROW_SHARE(M, "fit", fit, 3, "0 to 1, for sorting"),
	TS_R_ROW_TEXT(M, "limiting", limiting, "the parameter that decides"),
	TS_R_ROW_LIST(M, "parameters", parameters, parameter_count, struct ts_parameter_result, &ts_result_parameter, "each parameter against the water"),
	TS_R_ROW_LIST(M, "excluded_by", excluded_by, excluded_by_count, struct ts_excluded_result, &excluded_shape, "what excludes it"),
	TS_R_ROW_NUMBER(M, "adult_length_cm", adult_length_cm, 1, "usual total length in tanks"),
	TS_R_ROW_NUMBER(M, "group_least", group_least, 0, "settled from this many"),
	TS_R_ROW_NUMBER(M, "tank_length_cm", tank_length_cm, 0, "least tank"),
	TS_R_ROW_NUMBER(M, "tank_volume_l", tank_volume_l, 0, "what a usual tank of that length holds"),
};
#undef M
const struct ts_result_shape ts_result_match =
	TS_R_SHAPE("match", match_fields, struct ts_match_result);

#define S struct ts_span_result
static const struct ts_result_field span_fields[] = {
	TS_R_ROW_TEXT(S, "unit", unit, "of its figures"),
	TS_R_ROW_NUMBER(S, "value", value, 2, "as it counts"),
	TS_R_ROW_NUMBER(S, "low", low, 2, "least that the readings allow"),
	TS_R_ROW_NUMBER(S, "high", high, 2, "most that the readings allow"),
};
#undef S
static const struct ts_result_shape span_shape = TS_R_SHAPE("span", span_fields, struct ts_span_result);

#define W struct ts_water_asked_result
static const struct ts_result_field water_fields[] = {
	TS_R_ROW_TEXT(W, "name", name, "of the water"),
	TS_R_ROW_NUMBER(W, "kept_age_days", kept_age_days, 0, "age of the kept tap; null: another water"),
	TS_R_ROW_SUB(W, "gh", gh, struct ts_span_result, &span_shape, "general hardness"),
	TS_R_ROW_SUB(W, "kh", kh, struct ts_span_result, &span_shape, "carbonate hardness"),
	TS_R_ROW_SUB(W, "ph", ph, struct ts_span_result, &span_shape, "pH"),
	TS_R_ROW_SUB(W, "temp", temp, struct ts_span_result, &span_shape, "temperature of the tank"),
	TS_R_ROW_SUB(W, "salinity", salinity, struct ts_span_result, &span_shape, "salt"),
	TS_R_ROW_NUMBER(W, "ph_read", ph_read, 2, "pH as it was read"),
	TS_R_ROW_BOOL(W, "ph_computed", ph_computed, "pH is the tank's, computed from KH"),
	TS_R_ROW_NUMBER(W, "ph_tank_low", ph_tank_low, 1, "least pH of a tank of this water"),
	TS_R_ROW_NUMBER(W, "ph_tank", ph_tank, 1, "pH that a tank of this water runs at"),
	TS_R_ROW_NUMBER(W, "ph_tank_high", ph_tank_high, 1, "highest pH of a tank of this water"),
	TS_R_ROW_TEXTS(W, "unusual", unusual, "what is unusual, in words"),
	TS_R_ROW_TEXTS(W, "poisons", poisons, "poisons found, in words"),
	TS_R_ROW_TEXT(W, "next_to_measure", next_to_measure, "the one next thing to measure"),
};
#undef W
const struct ts_result_shape ts_result_water_asked =
	TS_R_SHAPE("water", water_fields, struct ts_water_asked_result);

#define A struct ts_rank_result
static const struct ts_result_field answer_fields[] = {
	TS_R_ROW_SUB(A, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "the water that was asked about"),
	TS_R_ROW_LIST(A, "ranked", ranked, ranked_count, struct ts_match_result, &ts_result_match, "not excluded, best first"),
	TS_R_ROW_LIST(A, "excluded", excluded, excluded_count, struct ts_match_result, &ts_result_match, "excluded, best first"),
	TS_R_ROW_LIST(A, "near_misses", near_misses, near_miss_count, struct ts_match_result, &ts_result_match, "excluded by one parameter alone and by little"),
};
#undef A
/* clang-format on */
const struct ts_result_shape ts_result_rank =
	TS_R_SHAPE("rank", answer_fields, struct ts_rank_result);

/* clang-format off */
#define L struct ts_rank_line_result
static const struct ts_result_field line_fields[] = {
	TS_R_ROW_TEXT(L, "name", name, "of the row"),
	TS_R_ROW_COUNT(L, "line", line, "on which the row starts"),
	TS_R_ROW_LIST(L, "findings", findings, finding_count, struct ts_finding_result, &ts_result_finding, "what is to be said of the row; with an error it was not ranked"),
	TS_R_ROW_MAYBE(L, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "the water of the row; null: it was not ranked, and no list says anything"),
	TS_R_ROW_LIST(L, "ranked", answer.ranked, answer.ranked_count, struct ts_match_result, &ts_result_match, "not excluded, best first"),
	TS_R_ROW_LIST(L, "excluded", answer.excluded, answer.excluded_count, struct ts_match_result, &ts_result_match, "excluded, best first"),
	TS_R_ROW_LIST(L, "near_misses", answer.near_misses, answer.near_miss_count, struct ts_match_result, &ts_result_match, "excluded by one parameter alone and by little"),
};
#undef L
/* clang-format on */
const struct ts_result_shape ts_result_rank_line =
	TS_R_SHAPE("rank line", line_fields, struct ts_rank_line_result);
