/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/care_result.h"

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
	TS_R_ROW_NUMBER(R, "ph", ph, 2, "as read"),
	TS_R_ROW_NUMBER(R, "gh_dh", gh_dh, 2, "general hardness"),
	TS_R_ROW_NUMBER(R, "kh_dh", kh_dh, 2, "carbonate hardness"),
	TS_R_ROW_NUMBER(R, "alkalinity_meq_l", alkalinity_meq_l, 3, "the same in meq/L"),
	TS_R_ROW_NUMBER(R, "temp_c", temp_c, 1, "at which all holds"),
	TS_R_ROW_NUMBER(R, "tank_co2_times_air", tank_co2_times_air, 1, "CO2 to which the tank airs"),
	TS_R_ROW_LIST(R, "steps", steps, step_count, struct ts_titrate_step_result, &step_shape, "the curve; the first step is 0"),
	TS_R_ROW_NUMBER(R, "floor_acid_meq_l", floor_acid_meq_l, 3, "acid that leaves the floor of KH"),
	TS_R_ROW_NUMBER(R, "gone_acid_meq_l", gone_acid_meq_l, 3, "acid that leaves no buffer"),
	TS_R_ROW_MAYBE(R, "nightly", nightly, struct ts_titrate_nightly_result, &nightly_shape, "evening after evening, where asked for"),
	TS_R_ROW_TEXT(R, "cannot", cannot, "why there is no curve; null: there is one"),
	TS_R_ROW_TEXT(R, "caution", caution, "what goes with every such curve"),
};
#undef R
#define D struct ts_drift_day_result
static const struct ts_result_field day_fields[] = {
	TS_R_ROW_NUMBER(D, "day", day, 0, "0 = now; figures are those before that day's water change"),
	TS_R_ROW_NUMBER(D, "kh_dh", kh_dh, 2, "carbonate hardness"),
	TS_R_ROW_NUMBER(D, "gh_dh", gh_dh, 2, "general hardness"),
	TS_R_ROW_NUMBER(D, "ph", ph, 2, "at the tank's usual CO2; null where it does not follow from KH"),
	TS_R_ROW_NUMBER(D, "ph_low", ph_low, 2, "lowest of day and night"),
	TS_R_ROW_NUMBER(D, "ph_high", ph_high, 2, "highest of day and night"),
	TS_R_ROW_NUMBER(D, "tan_mg_l", tan_mg_l, 2, "total ammonia as nitrogen"),
	TS_R_ROW_NUMBER(D, "no3_mg_l", no3_mg_l, 1, "nitrate as NO3"),
	TS_R_ROW_NUMBER(D, "conductivity_us_cm", conductivity_us_cm, 0, "at 25 C, from the ions"),
	TS_R_ROW_BOOL(D, "filter_doubtful", filter_doubtful, "too acid for the filter to be relied on"),
	TS_R_ROW_BOOL(D, "change_due", change_due, "water is changed on this day"),
};
#undef D
static const struct ts_result_shape day_shape = TS_R_SHAPE("day", day_fields, struct ts_drift_day_result);

#define L struct ts_drift_level_result
static const struct ts_result_field level_fields[] = {
	TS_R_ROW_NUMBER(L, "before_change", before_change, 2, "before a water change; null: there is none"),
	TS_R_ROW_NUMBER(L, "after_change", after_change, 2, "after it"),
};
#undef L
static const struct ts_result_shape level_shape = TS_R_SHAPE("level", level_fields, struct ts_drift_level_result);

#define T struct ts_drift_steady_result
static const struct ts_result_field steady_fields[] = {
	TS_R_ROW_SUB(T, "kh_dh", kh_dh, struct ts_drift_level_result, &level_shape, "carbonate hardness"),
	TS_R_ROW_SUB(T, "gh_dh", gh_dh, struct ts_drift_level_result, &level_shape, "general hardness"),
	TS_R_ROW_SUB(T, "no3_mg_l", no3_mg_l, struct ts_drift_level_result, &level_shape, "nitrate as NO3"),
};
#undef T
static const struct ts_result_shape steady_shape = TS_R_SHAPE("steady", steady_fields, struct ts_drift_steady_result);

#define C struct ts_drift_change_result
static const struct ts_result_field change_fields[] = {
	TS_R_ROW_NUMBER(C, "share_percent", share_percent, 1, "of the water, each time"),
	TS_R_ROW_NUMBER(C, "every_days", every_days, 1, "from one change to the next"),
	TS_R_ROW_NUMBER(C, "kh_low_dh", kh_low_dh, 1, "KH that it keeps for good"),
	TS_R_ROW_NUMBER(C, "no3_high_mg_l", no3_high_mg_l, 0, "nitrate that it keeps below for good"),
};
#undef C
static const struct ts_result_shape change_shape = TS_R_SHAPE("change", change_fields, struct ts_drift_change_result);

#define J struct ts_drift_jump_result
static const struct ts_result_field jump_fields[] = {
	TS_R_ROW_NUMBER(J, "share_percent", share_percent, 0, "of the water, at once, today"),
	TS_R_ROW_RANGE(J, "gh_dh", gh_dh, 2, "before, after"),
	TS_R_ROW_RANGE(J, "kh_dh", kh_dh, 2, "before, after"),
	TS_R_ROW_RANGE(J, "ph", ph, 2, "of the aired tank before, after"),
	TS_R_ROW_RANGE(J, "conductivity_us_cm", conductivity_us_cm, 0, "before, after"),
	TS_R_ROW_RANGE(J, "no3_mg_l", no3_mg_l, 1, "before, after"),
	TS_R_ROW_RANGE(J, "nh3_n_mg_l", nh3_n_mg_l, 4, "un-ionised ammonia before, after; null: not measured"),
	TS_R_ROW_BOOL(J, "safe_step", safe_step, "within what ordinary animals bear at once"),
};
#undef J
static const struct ts_result_shape jump_shape = TS_R_SHAPE("jump", jump_fields, struct ts_drift_jump_result);

#define R struct ts_drift_result
static const struct ts_result_field drift_fields[] = {
	TS_R_ROW_TEXT(R, "name", name, "what the plan is called"),
	TS_R_ROW_NUMBER(R, "volume_l", volume_l, 0, "water in the tank"),
	TS_R_ROW_NUMBER(R, "nitrogen_mg_day", nitrogen_mg_day, 1, "of feed that reaches the water a day, modelled"),
	TS_R_ROW_NUMBER(R, "nitrogen_measured_mg_day", nitrogen_measured_mg_day, 1, "behind two nitrate readings, plants taken off; used where known"),
	TS_R_ROW_NUMBER(R, "plant_share", plant_share, 2, "of the nitrogen that plants take"),
	TS_R_ROW_BOOL(R, "measured_differs", measured_differs, "measured and modelled are more than twofold apart"),
	TS_R_ROW_NUMBER(R, "change_percent", change_percent, 1, "of the water at each change"),
	TS_R_ROW_NUMBER(R, "change_every_days", change_every_days, 1, "from one change to the next; 0: none"),
	TS_R_ROW_LIST(R, "days", days, day_count, struct ts_drift_day_result, &day_shape, "day by day"),
	TS_R_ROW_NUMBER(R, "buffer_gone_day", buffer_gone_day, 0, "first day with KH below the floor; null: none of these"),
	TS_R_ROW_NUMBER(R, "buffer_gone_day_early", buffer_gone_day_early, 0, "the same at the most that animals may make"),
	TS_R_ROW_NUMBER(R, "buffer_gone_day_late", buffer_gone_day_late, 0, "the same at the least"),
	TS_R_ROW_SUB(R, "steady", steady, struct ts_drift_steady_result, &steady_shape, "where it settles, by simulation"),
	TS_R_ROW_SUB(R, "steady_closed_form", steady_closed_form, struct ts_drift_steady_result, &steady_shape, "the same by formula, with an inert bed and a filter that keeps up"),
	TS_R_ROW_MAYBE(R, "smallest_safe_change", smallest_safe_change, struct ts_drift_change_result, &change_shape, "keeps both bounds for good; null: none does"),
	TS_R_ROW_SUB(R, "large_change", large_change, struct ts_drift_jump_result, &jump_shape, "what changing so much at once would do today"),
	TS_R_ROW_TEXTS(R, "assumed", assumed, "what was not read and had to be assumed"),
	TS_R_ROW_TEXT(R, "caution", caution, "what goes with every forecast"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_titrate =
	TS_R_SHAPE("titrate", titrate_fields, struct ts_titrate_result);
const struct ts_result_shape ts_result_drift =
	TS_R_SHAPE("drift", drift_fields, struct ts_drift_result);
