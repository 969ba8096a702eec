/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of rank and why: always complete, every species and every parameter, null where a value
 * is not known.
 */
#include "report/rank_result.h"

#include "model/shape.h"
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
	TS_R_ROW_NUMBER(P, "uncomfortable_by", uncomfortable_by, 2, "how far beyond preferred, negative below"),
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
	TS_R_ROW_NUMBER(M, "group_comfortable", group_comfortable, 0, "better this many"),
	TS_R_ROW_NUMBER(M, "tank_length_cm", tank_length_cm, 0, "least tank"),
	TS_R_ROW_NUMBER(M, "tank_volume_l", tank_volume_l, 0, "what a usual tank of that length holds"),
	TS_R_ROW_TEXT(M, "form", form, "of several of one name; null: there is one"),
	TS_R_ROW_TEXT(M, "family", family, "its family"),
	TS_R_ROW_WORD(M, "kind", kind, ts_words_kind, "kind of animal"),
	TS_R_ROW_WORD(M, "swims", swims, ts_words_swims, "where it swims"),
	TS_R_ROW_WORD(M, "sold", sold, ts_words_sold, "how easily it is bought"),
	TS_R_ROW_NUMBER(M, "distance", distance, 2, "from the water to its nearest limit, in units of the reading's doubt; null: not known"),
	TS_R_ROW_TEXT(M, "says", says, "the number that decides"),
	TS_R_ROW_TEXTS(M, "reasons", reasons, "what speaks against it"),
	TS_R_ROW_TEXTS(M, "to_know", to_know, "what a buyer must know"),
	TS_R_ROW_TEXT(M, "no_room", no_room, "why it has no room in the tank; null: it has, or none was given"),
	TS_R_ROW_TEXT(M, "no_home", no_home, "why no ordinary home suits it; null: one does, or it was not asked"),
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

#define X struct ts_rank_excluded_result
static const struct ts_result_field tally_fields[] = {
	TS_R_ROW_TEXT(X, "name", name, "the parameter that decides"),
	TS_R_ROW_COUNT(X, "species", species, "how many it excludes"),
	TS_R_ROW_TEXT(X, "says", says, "the same in words"),
};
#undef X
static const struct ts_result_shape tally_shape =
	TS_R_SHAPE("excluded by", tally_fields, struct ts_rank_excluded_result);

#define G struct ts_rank_at_gh
static const struct ts_result_field by_gh_fields[] = {
	TS_R_ROW_NUMBER(G, "gh_dh", gh_dh, 0, "general hardness"),
	TS_R_ROW_COUNT(G, "comfortable", comfortable, "species whose comfort holds it"),
};
#undef G
static const struct ts_result_shape by_gh_shape =
	TS_R_SHAPE("by hardness", by_gh_fields, struct ts_rank_at_gh);

#define M struct ts_match_result
#define SAID(S, a)                                                                                 \
	TS_R_ROW_TEXT(S, "water_says", a water_says, "the water in a line"),                        \
	TS_R_ROW_TEXT(S, "animals", a animals_say, "how the animals are kept"),                     \
	TS_R_ROW_TEXT(S, "headline", a headline, "the answer in one sentence"),                    \
	TS_R_ROW_TEXT(S, "deciding", a deciding, "what excludes most; null: nothing does"),        \
	TS_R_ROW_TEXT(S, "choices", a choices, "two or three of them with their numbers"),         \
	TS_R_ROW_TEXT(S, "order", a order, "the order of the lists, in words"),                    \
	TS_R_ROW_TEXT(S, "tank", a tank_says, "the tank as it was taken; null: none was given"),   \
	TS_R_ROW_TEXTS(S, "notes", a notes, "what is to be said of the water"),                    \
	TS_R_ROW_TEXTS(S, "measure", a measure, "what to measure next"),                           \
	TS_R_ROW_TEXT(S, "closing", a closing, "what no list knows"),                              \
	TS_R_ROW_COUNT(S, "species_count", a catalogue_count, "species of the catalogue"),         \
	TS_R_ROW_COUNT(S, "asked_count", a asked_count, "species that were asked about"),          \
	TS_R_ROW_COUNT(S, "suits_count", a suits, "of ranked, those that the water suits"),        \
	TS_R_ROW_COUNT(S, "tolerates_count", a tolerates, "of ranked, those that can live in it"), \
	TS_R_ROW_COUNT(S, "unsure_count", a unsure, "of ranked, those that wait for a measurement")
#define LISTS(S, a)                                                                                \
	TS_R_ROW_LIST(S, "ranked", a ranked, a ranked_count, M, &ts_result_match,                  \
		"not excluded, with room in the tank, in the order that is said"),                 \
	TS_R_ROW_LIST(S, "too_large", a too_large, a too_large_count, M, &ts_result_match,         \
		"not excluded, without room in the tank"),                                         \
	TS_R_ROW_LIST(S, "no_home", a no_home, a no_home_count, M, &ts_result_match,               \
		"not excluded, but no ordinary home suits them"),                                  \
	TS_R_ROW_LIST(S, "excluded", a excluded, a excluded_count, M, &ts_result_match,            \
		"excluded by the water"),                                                          \
	TS_R_ROW_LIST(S, "excluded_by", a excluded_by, a excluded_by_count,                        \
		struct ts_rank_excluded_result, &tally_shape, "how many each parameter excludes"), \
	TS_R_ROW_LIST(S, "near_misses", a near_misses, a near_miss_count, M, &ts_result_match,     \
		"excluded by one parameter alone and by little"),                                  \
	TS_R_ROW_LIST(S, "by_gh", a by_gh, a by_gh_count, struct ts_rank_at_gh, &by_gh_shape,      \
		"of those that were asked about, how many are comfortable at each hardness")

#define A struct ts_rank_result
static const struct ts_result_field answer_fields[] = {
	TS_R_ROW_SUB(A, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "the water that was asked about"),
	SAID(A, ),
	LISTS(A, ),
};
#undef A
const struct ts_result_shape ts_result_rank =
	TS_R_SHAPE("rank", answer_fields, struct ts_rank_result);

#define L struct ts_rank_line_result
static const struct ts_result_field line_fields[] = {
	TS_R_ROW_TEXT(L, "name", name, "of the row"),
	TS_R_ROW_COUNT(L, "line", line, "on which the row starts"),
	TS_R_ROW_LIST(L, "findings", findings, finding_count, struct ts_finding_result, &ts_result_finding, "what is to be said of the row; with an error it was not ranked"),
	TS_R_ROW_MAYBE(L, "water", water, struct ts_water_asked_result, &ts_result_water_asked, "the water of the row; null: it was not ranked, and no list says anything"),
	SAID(L, answer.),
	LISTS(L, answer.),
};
#undef L
const struct ts_result_shape ts_result_rank_line =
	TS_R_SHAPE("rank line", line_fields, struct ts_rank_line_result);
#undef M

#define W struct ts_water_short_result
static const struct ts_result_field water_short_fields[] = {
	TS_R_ROW_NUMBER(W, "gh_dh", gh_dh, 2, "general hardness as it counts"),
	TS_R_ROW_NUMBER(W, "kh_dh", kh_dh, 2, "carbonate hardness as it counts"),
	TS_R_ROW_NUMBER(W, "ph", ph, 2, "pH as it counts"),
	TS_R_ROW_NUMBER(W, "temp_c", temp_c, 1, "temperature of the tank"),
	TS_R_ROW_NUMBER(W, "salinity_g_l", salinity_g_l, 2, "salt"),
	TS_R_ROW_NUMBER(W, "ph_tank", ph_tank, 1, "pH that a tank of this water runs at"),
	TS_R_ROW_TEXT(W, "first", first, "what comes before any animal; null: nothing does"),
	TS_R_ROW_TEXTS(W, "poisons", poisons, "poisons found, in words"),
};
#undef W
const struct ts_result_shape ts_result_water_short =
	TS_R_SHAPE("water in short", water_short_fields, struct ts_water_short_result);

#define X struct ts_rank_short_excluded_result
static const struct ts_result_field short_excluded_fields[] = {
	TS_R_ROW_COUNT(X, "gh", at[TS_GH], "how many GH excludes"),
	TS_R_ROW_COUNT(X, "kh", at[TS_KH], "how many KH excludes"),
	TS_R_ROW_COUNT(X, "ph", at[TS_PH], "how many pH excludes"),
	TS_R_ROW_COUNT(X, "temp", at[TS_TEMPERATURE], "how many the temperature excludes"),
	TS_R_ROW_COUNT(X, "salinity", at[TS_SALINITY], "how many salt excludes"),
	TS_R_ROW_COUNT(X, "copper", copper, "how many copper excludes"),
};
#undef X
static const struct ts_result_shape short_excluded_shape =
	TS_R_SHAPE("excluded by", short_excluded_fields, struct ts_rank_short_excluded_result);

#define S struct ts_rank_short_result
static const struct ts_result_field short_fields[] = {
	TS_R_ROW_TEXT(S, "name", name, "of the row"),
	TS_R_ROW_COUNT(S, "line", line, "on which the row starts"),
	TS_R_ROW_TEXTS(S, "findings", findings, "what is wrong in the row or to be said of it, each with its remedy"),
	TS_R_ROW_MAYBE(S, "water", water, struct ts_water_short_result, &ts_result_water_short, "null: the row was not ranked, and no count says anything"),
	TS_R_ROW_COUNT(S, "species_count", asked, "species that were asked about"),
	TS_R_ROW_COUNT(S, "suits_count", of[TS_SUITS], "those that the water suits"),
	TS_R_ROW_COUNT(S, "tolerates_count", of[TS_TOLERATES], "those that can live in it"),
	TS_R_ROW_COUNT(S, "unsure_count", of[TS_UNSURE], "those that wait for a measurement"),
	TS_R_ROW_COUNT(S, "excluded_count", of[TS_EXCLUDED], "those that the water excludes"),
	TS_R_ROW_COUNT(S, "too_large_count", too_large, "not excluded, without room in the tank"),
	TS_R_ROW_COUNT(S, "no_home_count", no_home, "not excluded, but no ordinary home suits them"),
	TS_R_ROW_SUB(S, "excluded_by", excluded_by, struct ts_rank_short_excluded_result, &short_excluded_shape, "how many each parameter excludes"),
	TS_R_ROW_TEXTS(S, "suits", ids[TS_SUITS], "ids of those that it suits, best first"),
	TS_R_ROW_TEXTS(S, "tolerates", ids[TS_TOLERATES], "ids of those that can live in it, where --only asks for them"),
	TS_R_ROW_TEXTS(S, "unsure", ids[TS_UNSURE], "ids of those that wait for a measurement, where --only asks for them"),
	TS_R_ROW_TEXTS(S, "excluded", ids[TS_EXCLUDED], "ids of those that it excludes, where --only asks for them"),
};
#undef S
const struct ts_result_shape ts_result_rank_short =
	TS_R_SHAPE("rank in short", short_fields, struct ts_rank_short_result);
/* clang-format on */
