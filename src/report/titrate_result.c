/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/titrate_result.h"

#include "words/care.h"

/* clang-format off */
#define S struct ts_titrate_step_result
static const struct ts_result_field step_fields[] = {
	TS_R_ROW_NUMBER(S, "acid_meq_l", acid_meq_l, 3, "strong acid in all, negative: base"),
	TS_R_ROW_NUMBER(S, "alkalinity_meq_l", alkalinity_meq_l, 3, "what is left; negative: free acid"),
	TS_R_ROW_NUMBER(S, "kh_dh", kh_dh, 2, "the same in degrees"),
	TS_R_ROW_NUMBER(S, "ph_closed", ph_closed, 2, "at once, before any gas has left"),
	TS_R_ROW_NUMBER(S, "co2_mg_l", co2_mg_l, 1, "dissolved CO2 at that moment"),
	TS_R_ROW_WORD(S, "co2", co2, ts_co2_words, "what so much CO2 means to fish"),
	TS_R_ROW_NUMBER(S, "ph_tank", ph_tank, 2, "once the tank has aired to its usual CO2"),
	TS_R_ROW_NUMBER(S, "ph_air", ph_air, 2, "in balance with the air"),
};
#undef S
static const struct ts_result_shape step_shape = TS_R_SHAPE("step", step_fields, struct ts_titrate_step_result);

#define N struct ts_titrate_night_result
static const struct ts_result_field night_fields[] = {
	TS_R_ROW_NUMBER(N, "day", day, 0, "1 = the first evening"),
	TS_R_ROW_NUMBER(N, "dose_meq_l", dose_meq_l, 3, "this evening's acid, negative: base"),
	TS_R_ROW_SUB(N, "evening", evening, struct ts_titrate_step_result, &step_shape, "right after it; ph_tank is the next morning's"),
};
#undef N
static const struct ts_result_shape night_shape = TS_R_SHAPE("night", night_fields, struct ts_titrate_night_result);

#define K struct ts_titrate_keeper_result
static const struct ts_result_field keeper_fields[] = {
	TS_R_ROW_NUMBER(K, "dose_first_meq_l", dose_first_meq_l, 3, "what the first evening takes"),
	TS_R_ROW_NUMBER(K, "floor_day", floor_day, 0, "evening that leaves KH below the floor"),
	TS_R_ROW_NUMBER(K, "gone_day", gone_day, 0, "evening that leaves no buffer"),
	TS_R_ROW_LIST(K, "nights", nights, count, struct ts_titrate_night_result, &night_shape, "the evenings"),
};
#undef K
static const struct ts_result_shape keeper_shape = TS_R_SHAPE("keeper", keeper_fields, struct ts_titrate_keeper_result);

#define Y struct ts_titrate_nightly_result
static const struct ts_result_field nightly_fields[] = {
	TS_R_ROW_NUMBER(Y, "towards_ph", towards_ph, 2, "the pH that is chased"),
	TS_R_ROW_NUMBER(Y, "ph_start", ph_start, 2, "of the aired tank before the first dose"),
	TS_R_ROW_SUB(Y, "same_dose", same_dose, struct ts_titrate_keeper_result, &keeper_shape, "each evening what the first took"),
	TS_R_ROW_SUB(Y, "by_test", by_test, struct ts_titrate_keeper_result, &keeper_shape, "each evening what it takes to read the pH"),
};
#undef Y
static const struct ts_result_shape nightly_shape = TS_R_SHAPE("nightly", nightly_fields, struct ts_titrate_nightly_result);

#define R struct ts_titrate_result
static const struct ts_result_field titrate_fields[] = {
	TS_R_ROW_TEXT(R, "name", name, "what the water is called"),
	TS_R_ROW_NUMBER(R, "kept_age_days", kept_age_days, 0, "of the kept tap, where it was used"),
	TS_R_ROW_TEXT(R, "headline", headline, "the answer in a line"),
	TS_R_ROW_TEXT(R, "decides", decides, "what it rests on"),
	TS_R_ROW_TEXTS(R, "explains", explains, "what happens, and why"),
	TS_R_ROW_TEXT(R, "instead", instead, "what changes the pH for good"),
	TS_R_ROW_TEXT(R, "water_says", water_says, "the water in a line"),
	TS_R_ROW_TEXT(R, "airs_says", airs_says, "to what the tank airs"),
	TS_R_ROW_NUMBER(R, "ph", ph, 2, "as read"),
	TS_R_ROW_NUMBER(R, "gh_dh", gh_dh, 2, "general hardness"),
	TS_R_ROW_NUMBER(R, "kh_dh", kh_dh, 2, "carbonate hardness"),
	TS_R_ROW_NUMBER(R, "alkalinity_meq_l", alkalinity_meq_l, 3, "the same in meq/L"),
	TS_R_ROW_NUMBER(R, "temp_c", temp_c, 1, "at which all holds"),
	TS_R_ROW_NUMBER(R, "tank_co2_times_air", tank_co2_times_air, 1, "CO2 to which the tank airs"),
	TS_R_ROW_LIST(R, "steps", steps, step_count, struct ts_titrate_step_result, &step_shape, "the curve; the first step is 0"),
	TS_R_ROW_LIST(R, "line", line, line_count, struct ts_titrate_step_result, &step_shape, "the same in finer steps, as it is drawn"),
	TS_R_ROW_NUMBER(R, "co2_danger_mg_l", co2_danger_mg_l, 0, "CO2 that is a danger"),
	TS_R_ROW_NUMBER(R, "floor_acid_meq_l", floor_acid_meq_l, 3, "acid that leaves the floor of KH"),
	TS_R_ROW_NUMBER(R, "gone_acid_meq_l", gone_acid_meq_l, 3, "acid that leaves no buffer"),
	TS_R_ROW_MAYBE(R, "nightly", nightly, struct ts_titrate_nightly_result, &nightly_shape, "evening after evening, where asked for"),
	TS_R_ROW_TEXT(R, "cannot", cannot, "why there is no curve; null: there is one"),
	TS_R_ROW_TEXT(R, "caution", caution, "what goes with every such curve"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_titrate =
	TS_R_SHAPE("titrate", titrate_fields, struct ts_titrate_result);
