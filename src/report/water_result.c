/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/water_result.h"

#include "words/advice.h"
#include "words/water.h"

/* clang-format off */
#define A struct ts_advice_line
static const struct ts_result_field advice_fields[] = {
	TS_R_ROW_TEXT(A, "id", id, "its name, which never changes meaning"),
	TS_R_ROW_WORD(A, "outcome", outcome, ts_outcome_words, "what to do, in a word"),
	TS_R_ROW_WORD(A, "urgency", urgency, ts_urgency_words, "when"),
	TS_R_ROW_TEXT(A, "says", says, "what to do"),
	TS_R_ROW_TEXTS(A, "because", because, "the number that decides"),
	TS_R_ROW_TEXT(A, "source", source, "where the rule comes from"),
};
#undef A
static const struct ts_result_shape advice_shape =
	TS_R_SHAPE("advice", advice_fields, struct ts_advice_line);

#define U struct ts_unknown_result
static const struct ts_result_field unknown_fields[] = {
	TS_R_ROW_WORD(U, "fact", fact, ts_water_fact_words, "what is not known"),
	TS_R_ROW_TEXT(U, "why", why, "the reason"),
};
#undef U
static const struct ts_result_shape unknown_shape = TS_R_SHAPE("unknown", unknown_fields, struct ts_unknown_result);

#define D struct ts_danger_result
static const struct ts_result_field danger_fields[] = {
	TS_R_ROW_WORD(D, "poison", poison, ts_water_poison_words, "which"),
	TS_R_ROW_WORD(D, "danger", danger, ts_danger_words, "how bad it is"),
	TS_R_ROW_NUMBER(D, "value", value, 4, "highest reading (of oxygen the lowest), or computed from it"),
	TS_R_ROW_NUMBER(D, "limit", limit, 4, "the last limit passed, else the first"),
	TS_R_ROW_TEXT(D, "unit", unit, "of both"),
	TS_R_ROW_TEXT(D, "says", says, "in words; null where there is no danger"),
};
#undef D
static const struct ts_result_shape danger_shape = TS_R_SHAPE("danger", danger_fields, struct ts_danger_result);

#define T struct ts_over_time_result
static const struct ts_result_field over_time_fields[] = {
	TS_R_ROW_TEXT(T, "name", name, "gh, kh or ph"),
	TS_R_ROW_COUNT(T, "readings", readings, "how many there are"),
	TS_R_ROW_NUMBER(T, "days", days, 0, "from the first dated reading to the last"),
	TS_R_ROW_NUMBER(T, "low", low, 2, "least"),
	TS_R_ROW_NUMBER(T, "high", high, 2, "most"),
	TS_R_ROW_NUMBER(T, "spread", spread, 2, "between the two"),
	TS_R_ROW_NUMBER(T, "same_hour_spread", same_hour_spread, 2, "the greatest at one hour of the day"),
	TS_R_ROW_NUMBER(T, "day_swing", day_swing, 2, "the greatest within one day"),
	TS_R_ROW_NUMBER(T, "drift_per_week", drift_per_week, 3, "slope through the dated readings"),
	TS_R_ROW_BOOL(T, "trend", trend, "more than swing and doubt make"),
};
#undef T
static const struct ts_result_shape over_time_shape = TS_R_SHAPE("over_time", over_time_fields, struct ts_over_time_result);

#define A struct ts_against_result
static const struct ts_result_field against_fields[] = {
	TS_R_ROW_TEXT(A, "name", name, "what the other water is called"),
	TS_R_ROW_RANGE(A, "ph", ph, 2, "this water, the other"),
	TS_R_ROW_RANGE(A, "gh_dh", gh_dh, 2, "this water, the other"),
	TS_R_ROW_RANGE(A, "kh_dh", kh_dh, 2, "this water, the other"),
	TS_R_ROW_RANGE(A, "conductivity_us_cm", conductivity_us_cm, 0, "this water, the other"),
	TS_R_ROW_RANGE(A, "no3_mg_l", no3_mg_l, 1, "this water, the other"),
	TS_R_ROW_NUMBER(A, "ph_apart", ph_apart, 2, "this water above the other"),
	TS_R_ROW_NUMBER(A, "gh_apart_dh", gh_apart_dh, 2, "this water above the other"),
	TS_R_ROW_NUMBER(A, "kh_apart_dh", kh_apart_dh, 2, "this water above the other"),
	TS_R_ROW_NUMBER(A, "conductivity_apart_us_cm", conductivity_apart_us_cm, 0, "this water above the other"),
	TS_R_ROW_NUMBER(A, "no3_apart_mg_l", no3_apart_mg_l, 1, "this water above the other"),
	TS_R_ROW_TEXTS(A, "says", says, "what the difference means"),
	TS_R_ROW_LIST(A, "advice", advice, advice_count, struct ts_advice_line, &advice_shape, "what to do where this water is a tank's and the other is poured into it"),
};
#undef A
static const struct ts_result_shape against_shape = TS_R_SHAPE("against", against_fields, struct ts_against_result);

#define H struct ts_hardness_result
static const struct ts_result_field hardness_fields[] = {
	TS_R_ROW_TEXT(H, "name", name, "GH or KH"),
	TS_R_ROW_NUMBER(H, "dh", dh, 2, "degrees of the trade"),
	TS_R_ROW_NUMBER(H, "mmol_l", mmol_l, 3, "of calcium and magnesium; of KH meq/L"),
	TS_R_ROW_NUMBER(H, "mg_l_caco3", mg_l_caco3, 1, "as calcium carbonate"),
	TS_R_ROW_NUMBER(H, "french", french, 2, "French degrees"),
	TS_R_ROW_NUMBER(H, "english", english, 2, "English degrees"),
	TS_R_ROW_NUMBER(H, "grains_us_gal", grains_us_gal, 2, "grains to a US gallon"),
};
#undef H
static const struct ts_result_shape hardness_shape = TS_R_SHAPE("hardness", hardness_fields, struct ts_hardness_result);

#define I struct ts_ion_result
static const struct ts_result_field ion_fields[] = {
	TS_R_ROW_TEXT(I, "name", name, "its symbol"),
	TS_R_ROW_NUMBER(I, "mg_l", mg_l, 1, "as read"),
	TS_R_ROW_NUMBER(I, "mmol_l", mmol_l, 3, "the same in mmol/L"),
};
#undef I
static const struct ts_result_shape ion_shape = TS_R_SHAPE("ion", ion_fields, struct ts_ion_result);

#define WATER_ROWS(W, a) \
	TS_R_ROW_TEXT(W, "name", a name, "what the water is called"), \
	TS_R_ROW_NUMBER(W, "kept_age_days", a kept_age_days, 0, "of the kept tap, where it was used"), \
	TS_R_ROW_TEXT(W, "headline", a headline, "the answer in a line"), \
	TS_R_ROW_TEXT(W, "decides", a decides, "what it rests on"), \
	TS_R_ROW_TEXT(W, "class_says", a class_says, "GH and KH with their class, where the first line is of something else"), \
	TS_R_ROW_TEXT(W, "home_of", a suits_says, "kinds of animals at home in such water; rank lists them"), \
	TS_R_ROW_TEXT(W, "buffer_says", a buffer_says, "what the buffer is good for"), \
	TS_R_ROW_TEXT(W, "oxygen_says", a oxygen_says, "oxygen beside what a tank should hold"), \
	TS_R_ROW_TEXT(W, "salt_says", a salt_says, "salt beside fresh water and the sea"), \
	TS_R_ROW_NUMBER(W, "ph", a facts.ph, 2, "as read; of a mixture: closed"), \
	TS_R_ROW_NUMBER(W, "ph_low", a facts.ph_low, 2, "least that the reading allows"), \
	TS_R_ROW_NUMBER(W, "ph_high", a facts.ph_high, 2, "most that the reading allows"), \
	TS_R_ROW_NUMBER(W, "gh_dh", a facts.gh_dh, 2, "general hardness"), \
	TS_R_ROW_NUMBER(W, "kh_dh", a facts.kh_dh, 2, "carbonate hardness"), \
	TS_R_ROW_NUMBER(W, "gh_low_dh", a facts.gh_low_dh, 2, "least: the reading's doubt, or the supply's softest"), \
	TS_R_ROW_NUMBER(W, "gh_high_dh", a facts.gh_high_dh, 2, "most, likewise"), \
	TS_R_ROW_NUMBER(W, "kh_low_dh", a facts.kh_low_dh, 2, "least, likewise"), \
	TS_R_ROW_NUMBER(W, "kh_high_dh", a facts.kh_high_dh, 2, "most, likewise"), \
	TS_R_ROW_NUMBER(W, "alkalinity_meq_l", a facts.alkalinity_meq_l, 3, "the same in meq/L"), \
	TS_R_ROW_LIST(W, "hardness", a hardness, a hardness_count, struct ts_hardness_result, &hardness_shape, "GH and KH in the units of reports"), \
	TS_R_ROW_LIST(W, "ions", a ions, a ion_count, struct ts_ion_result, &ion_shape, "the ions that were read"), \
	TS_R_ROW_NUMBER(W, "temp_c", a facts.temp_c, 1, "of the sample, at which the rest holds"), \
	TS_R_ROW_NUMBER(W, "ca_mg_l", a facts.ca_mg_l, 1, "calcium, null where it was not read"), \
	TS_R_ROW_NUMBER(W, "mg_mg_l", a facts.mg_mg_l, 1, "magnesium, likewise"), \
	TS_R_ROW_NUMBER(W, "na_mg_l", a facts.na_mg_l, 1, "sodium, likewise"), \
	TS_R_ROW_NUMBER(W, "k_mg_l", a facts.k_mg_l, 1, "potassium, likewise"), \
	TS_R_ROW_NUMBER(W, "cl_mg_l", a facts.cl_mg_l, 1, "chloride, likewise"), \
	TS_R_ROW_NUMBER(W, "so4_mg_l", a facts.so4_mg_l, 1, "sulphate, likewise"), \
	TS_R_ROW_NUMBER(W, "no3_mg_l", a facts.no3_mg_l, 1, "nitrate as NO3, likewise"), \
	TS_R_ROW_NUMBER(W, "conductivity_us_cm", a facts.conductivity_us_cm, 0, "as read, 25 C"), \
	TS_R_ROW_NUMBER(W, "conductivity_computed_us_cm", a facts.conductivity_computed_us_cm, 0, "from the ions, 25 C"), \
	TS_R_ROW_NUMBER(W, "oxygen_mg_l", a facts.oxygen_mg_l, 1, "dissolved oxygen, the lowest read"), \
	TS_R_ROW_NUMBER(W, "oxygen_percent", a facts.oxygen_percent, 0, "the same, of what air keeps in it; null without a temperature"), \
	TS_R_ROW_NUMBER(W, "co2_mg_l", a facts.co2_mg_l, 1, "dissolved CO2 at ph"), \
	TS_R_ROW_NUMBER(W, "co2_low_mg_l", a facts.co2_low_mg_l, 1, "at ph_high"), \
	TS_R_ROW_NUMBER(W, "co2_high_mg_l", a facts.co2_high_mg_l, 1, "at ph_low"), \
	TS_R_ROW_NUMBER(W, "ph_closed", a facts.ph_closed, 2, "before any gas has left"), \
	TS_R_ROW_NUMBER(W, "ph_air", a facts.ph_air, 2, "in balance with the air"), \
	TS_R_ROW_NUMBER(W, "ph_tank_low", a facts.ph_tank_low, 2, "of a tank of this water, least"), \
	TS_R_ROW_NUMBER(W, "ph_tank", a facts.ph_tank, 2, "of a tank of this water, usual"), \
	TS_R_ROW_NUMBER(W, "ph_tank_high", a facts.ph_tank_high, 2, "of a tank of this water, most"), \
	TS_R_ROW_NUMBER(W, "calcite_si", a facts.calcite_si, 2, "above 0 lime may fall out, below it dissolves"), \
	TS_R_ROW_NUMBER(W, "ionic_strength", a facts.ionic_strength, 5, "mol/L"), \
	TS_R_ROW_SHARE(W, "nh3_fraction", a facts.nh3_fraction, 5, "un-ionised share of total ammonia"), \
	TS_R_ROW_NUMBER(W, "nh3_n_mg_l", a nh3_n_mg_l, 4, "un-ionised ammonia as nitrogen"), \
	TS_R_ROW_TEXT(W, "hardness_class", a facts.hardness_class, "a word that means nothing without its scale"), \
	TS_R_ROW_TEXT(W, "hardness_scale", a facts.hardness_scale, "whose scale"), \
	TS_R_ROW_TEXTS(W, "unusual", a unusual, "what is unusual, explained"), \
	TS_R_ROW_TEXTS(W, "assumed", a assumed, "what was not read and had to be assumed"), \
	TS_R_ROW_LIST(W, "unknown", a unknown, a unknown_count, struct ts_unknown_result, &unknown_shape, "facts that are null, and why")
#define W struct ts_water_result
static const struct ts_result_field water_fields[] = {
	WATER_ROWS(W, ),
	TS_R_ROW_LIST(W, "dangers", dangers, danger_count, struct ts_danger_result, &danger_shape, "each poison that was measured, and oxygen"),
	TS_R_ROW_TEXTS(W, "drinking_water", drinking_water, "what is a matter for the health authority"),
	TS_R_ROW_LIST(W, "over_time", over_time, over_time_count, struct ts_over_time_result, &over_time_shape, "parameters with several readings"),
	TS_R_ROW_TEXT(W, "over_time_says", over_time_says, "how a changing water is judged; null: it has no readings over time"),
	TS_R_ROW_TEXT(W, "next_to_measure", next_to_measure, "the one next thing"),
	TS_R_ROW_TEXT(W, "how_to_sample", how_to_sample, "how to take that sample"),
	TS_R_ROW_MAYBE(W, "against", against, struct ts_against_result, &against_shape, "the other water, where one was given"),
};
#undef W
#define P struct ts_mix_part_result
static const struct ts_result_field part_fields[] = {
	TS_R_ROW_TEXT(P, "name", name, "of the water, or its file"),
	TS_R_ROW_NUMBER(P, "amount", amount, 3, "litres, or a share of the whole"),
	TS_R_ROW_RANGE(P, "gh_dh", gh_dh, 2, "least, most"),
	TS_R_ROW_RANGE(P, "kh_dh", kh_dh, 2, "least, most"),
};
#undef P
static const struct ts_result_shape part_shape = TS_R_SHAPE("part", part_fields, struct ts_mix_part_result);

#define M struct ts_mix_result
static const struct ts_result_field mix_fields[] = {
	WATER_ROWS(M, water.),
	TS_R_ROW_LIST(M, "parts", parts, part_count, struct ts_mix_part_result, &part_shape, "as they were given"),
	TS_R_ROW_TEXTS(M, "advice", advice, "what the mixture does not mend, and how to go about it"),
};
#undef M
/* clang-format on */
const struct ts_result_shape ts_result_water =
	TS_R_SHAPE("water", water_fields, struct ts_water_result);
const struct ts_result_shape ts_result_mix = TS_R_SHAPE("mix", mix_fields, struct ts_mix_result);
