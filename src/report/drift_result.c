/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of the answer about drift.
 */
#include "report/drift_result.h"

#include "report/learned_result.h"

/* clang-format off: one row a line */
#define D struct ts_drift_day_result
static const struct ts_result_field day_fields[] = {
	TS_R_ROW_NUMBER(
		D, "day", day, 0, "0 = now; figures are those before that day's water change"),
	TS_R_ROW_NUMBER(D, "kh_dh", kh_dh, 2, "carbonate hardness"),
	TS_R_ROW_NUMBER(D, "gh_dh", gh_dh, 2, "general hardness"),
	TS_R_ROW_NUMBER(
		D, "ph", ph, 2, "at the tank's usual CO2; null where it does not follow from KH"),
	TS_R_ROW_NUMBER(D, "ph_low", ph_low, 2, "lowest of day and night"),
	TS_R_ROW_NUMBER(D, "ph_high", ph_high, 2, "highest of day and night"),
	TS_R_ROW_NUMBER(D, "tan_mg_l", tan_mg_l, 2, "total ammonia as nitrogen"),
	TS_R_ROW_NUMBER(D, "no3_mg_l", no3_mg_l, 1, "nitrate as NO3"),
	TS_R_ROW_NUMBER(D, "conductivity_us_cm", conductivity_us_cm, 0, "at 25 C, from the ions"),
	TS_R_ROW_BOOL(
		D, "filter_doubtful", filter_doubtful, "too acid for the filter to be relied on"),
	TS_R_ROW_RANGE(
		D, "kh_band_dh", kh_band, 2, "what KH may be, by the doubt of readings and load"),
	TS_R_ROW_RANGE(D, "gh_band_dh", gh_band, 2, "what GH may be"),
	TS_R_ROW_RANGE(D, "no3_band_mg_l", no3_band, 1, "what nitrate may be"),
	TS_R_ROW_BOOL(D, "change_due", change_due, "water is changed on this day"),
};
#undef D
static const struct ts_result_shape day_shape =
	TS_R_SHAPE("day", day_fields, struct ts_drift_day_result);

#define L struct ts_drift_level_result
static const struct ts_result_field level_fields[] = {
	TS_R_ROW_NUMBER(
		L, "before_change", before_change, 2, "before a water change; null: there is none"),
	TS_R_ROW_NUMBER(L, "after_change", after_change, 2, "after it"),
};
#undef L
static const struct ts_result_shape level_shape =
	TS_R_SHAPE("level", level_fields, struct ts_drift_level_result);

#define T struct ts_drift_steady_result
static const struct ts_result_field steady_fields[] = {
	TS_R_ROW_SUB(T, "kh_dh", kh_dh, struct ts_drift_level_result, &level_shape,
		"carbonate hardness"),
	TS_R_ROW_SUB(
		T, "gh_dh", gh_dh, struct ts_drift_level_result, &level_shape, "general hardness"),
	TS_R_ROW_SUB(T, "no3_mg_l", no3_mg_l, struct ts_drift_level_result, &level_shape,
		"nitrate as NO3"),
};
#undef T
static const struct ts_result_shape steady_shape =
	TS_R_SHAPE("steady", steady_fields, struct ts_drift_steady_result);

#define C struct ts_drift_change_result
static const struct ts_result_field change_fields[] = {
	TS_R_ROW_NUMBER(C, "share_percent", share_percent, 1, "of the water, each time"),
	TS_R_ROW_NUMBER(C, "every_days", every_days, 1, "from one change to the next"),
	TS_R_ROW_NUMBER(C, "kh_low_dh", kh_low_dh, 1, "KH that it keeps for good"),
	TS_R_ROW_NUMBER(
		C, "no3_high_mg_l", no3_high_mg_l, 0, "nitrate that it keeps below for good"),
};
#undef C
static const struct ts_result_shape change_shape =
	TS_R_SHAPE("change", change_fields, struct ts_drift_change_result);

#define J struct ts_drift_jump_result
static const struct ts_result_field jump_fields[] = {
	TS_R_ROW_NUMBER(J, "share_percent", share_percent, 0, "of the water, at once, today"),
	TS_R_ROW_RANGE(J, "gh_dh", gh_dh, 2, "before, after"),
	TS_R_ROW_RANGE(J, "kh_dh", kh_dh, 2, "before, after"),
	TS_R_ROW_RANGE(J, "ph", ph, 2, "of the aired tank before, after"),
	TS_R_ROW_RANGE(J, "conductivity_us_cm", conductivity_us_cm, 0, "before, after"),
	TS_R_ROW_RANGE(J, "no3_mg_l", no3_mg_l, 1, "before, after"),
	TS_R_ROW_RANGE(J, "nh3_n_mg_l", nh3_n_mg_l, 4,
		"un-ionised ammonia before, after; null: not measured"),
	TS_R_ROW_BOOL(J, "safe_step", safe_step, "within what ordinary animals bear at once"),
	TS_R_ROW_TEXT(J, "says", says, "the same in a sentence"),
};
#undef J
static const struct ts_result_shape jump_shape =
	TS_R_SHAPE("jump", jump_fields, struct ts_drift_jump_result);

#define N struct ts_drift_now_result
static const struct ts_result_field now_fields[] = {
	TS_R_ROW_TEXT(
		N, "parameter", parameter, "gh, kh (dH), no3 (mg/L), ph or conductivity (uS/cm)"),
	TS_R_ROW_NUMBER(N, "value", value, 2, "the newest reading"),
	TS_R_ROW_NUMBER(N, "age_days", age_days, 0, "of that reading; null: no day is known"),
	TS_R_ROW_BOOL(N, "read", read, "in the tank; else it is taken as what is poured in"),
};
#undef N
static const struct ts_result_shape now_shape =
	TS_R_SHAPE("now", now_fields, struct ts_drift_now_result);

#define M struct ts_drift_limit_result
static const struct ts_result_field limit_fields[] = {
	TS_R_ROW_TEXT(
		M, "parameter", parameter, "gh, kh (dH), no3 (mg/L), ph or conductivity (uS/cm)"),
	TS_R_ROW_NUMBER(M, "limit", limit, 2, "that is passed"),
	TS_R_ROW_BOOL(M, "above", above, "what lies above it harms; else what lies below"),
	TS_R_ROW_BOOL(
		M, "mild", mild, "told, and never first: pH by itself, and all that is dissolved"),
	TS_R_ROW_NUMBER(M, "day", day, 0, "on which it is passed; 0: it is so now"),
	TS_R_ROW_NUMBER(
		M, "early", early, 0, "the same at the most that animals and evaporation may do"),
	TS_R_ROW_NUMBER(M, "late", late, 0, "the same at the least; null: not within settled.days"),
	TS_R_ROW_TEXT(M, "species", species, "whose limit it is; null: everybody's"),
	TS_R_ROW_TEXT(M, "says", says, "the same in a sentence"),
	TS_R_ROW_TEXT(M, "by_says", by_says,
		"the same by the calendar; null: it is passed, or today is not known"),
};
#undef M
static const struct ts_result_shape limit_shape =
	TS_R_SHAPE("limit", limit_fields, struct ts_drift_limit_result);

#define M struct ts_drift_measured_result
static const struct ts_result_field measured_fields[] = {
	TS_R_ROW_TEXT(M, "parameter", parameter, "gh, kh (dH) or no3 (mg/L)"),
	TS_R_ROW_NUMBER(M, "readings", readings, 0, "that it rests on"),
	TS_R_ROW_NUMBER(M, "days", days, 0, "from the first of them to the last"),
	TS_R_ROW_NUMBER(M, "first", first, 2, "as it was read"),
	TS_R_ROW_NUMBER(M, "last", last, 2, "as it was read"),
	TS_R_ROW_RANGE(
		M, "a_week", a_week, 3, "what moves it by itself, beside changes and topping up"),
	TS_R_ROW_TEXT(M, "says", says, "the same in a sentence"),
};
#undef M
static const struct ts_result_shape measured_shape =
	TS_R_SHAPE("measured", measured_fields, struct ts_drift_measured_result);

#define R struct ts_drift_result
static const struct ts_result_field drift_fields[] = {
	TS_R_ROW_TEXT(R, "name", name, "what the plan is called"),
	TS_R_ROW_TEXT(R, "says", says, "where it goes, the first limit first"),
	TS_R_ROW_TEXT(R, "because", because, "the figures that decide"),
	TS_R_ROW_TEXTS(R, "remedies", remedies, "what keeps it, cheapest first"),
	TS_R_ROW_TEXTS(R, "asks", asks, "what to read, and what it would change"),
	TS_R_ROW_NUMBER(R, "volume_l", volume_l, 0, "water in the tank"),
	TS_R_ROW_NUMBER(R, "nitrogen_mg_day", nitrogen_mg_day, 1,
		"of feed that reaches the water a day, modelled"),
	TS_R_ROW_NUMBER(R, "nitrogen_measured_mg_day", nitrogen_measured_mg_day, 1,
		"by the log of nitrate and KH, plants taken off; used where known"),
	TS_R_ROW_NUMBER(R, "plant_share", plant_share, 2, "of the nitrogen that plants take"),
	TS_R_ROW_BOOL(R, "measured_differs", measured_differs,
		"measured and modelled are more than twofold apart"),
	TS_R_ROW_NUMBER(R, "change_percent", change_percent, 1, "of the water at each change"),
	TS_R_ROW_NUMBER(R, "change_every_days", change_every_days, 1,
		"from one change to the next; 0: none"),
	TS_R_ROW_LIST(R, "now", now, now_count, struct ts_drift_now_result, &now_shape,
		"the tank as it is, as every answer has it"),
	TS_R_ROW_LIST(R, "limits", limits, limit_count, struct ts_drift_limit_result, &limit_shape,
		"that the routine passes within settled.days, the first first"),
	TS_R_ROW_LIST(R, "measured", measured, measured_count, struct ts_drift_measured_result,
		&measured_shape, "what the log shows over weeks; it counts before the model"),
	TS_R_ROW_TEXT(R, "gone_says", gone_says,
		"between which days the buffer is gone; null: it is not, or today is not known"),
	TS_R_ROW_SUB(R, "learned", learned, struct ts_learned, &ts_result_learned,
		"what the log has taught"),
	TS_R_ROW_LIST(
		R, "days", days, day_count, struct ts_drift_day_result, &day_shape, "day by day"),
	TS_R_ROW_TEXT(R, "doubtful_says", doubtful_says,
		"of days whose ammonia is doubtful; null: none is"),
	TS_R_ROW_NUMBER(R, "buffer_gone_day", buffer_gone_day, 0,
		"days until KH is below the floor; null: not within settled.days, or it is so now"),
	TS_R_ROW_NUMBER(R, "buffer_gone_day_early", buffer_gone_day_early, 0,
		"the same at the most that animals may make"),
	TS_R_ROW_NUMBER(
		R, "buffer_gone_day_late", buffer_gone_day_late, 0, "the same at the least"),
	TS_R_ROW_SUB(R, "steady", steady, struct ts_drift_steady_result, &steady_shape,
		"where it settles, by simulation"),
	TS_R_ROW_SUB(R, "steady_closed_form", steady_closed_form, struct ts_drift_steady_result,
		&steady_shape, "the same by formula, with an inert bed and a filter that keeps up"),
	TS_R_ROW_MAYBE(R, "smallest_safe_change", smallest_safe_change,
		struct ts_drift_change_result, &change_shape,
		"keeps both bounds for good; null: none does"),
	TS_R_ROW_SUB(R, "large_change", large_change, struct ts_drift_jump_result, &jump_shape,
		"what changing so much at once would do today"),
	TS_R_ROW_TEXTS(R, "assumed", assumed, "what was not read and had to be assumed"),
	TS_R_ROW_TEXT(R, "caution", caution, "what goes with every forecast"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_drift =
	TS_R_SHAPE("drift", drift_fields, struct ts_drift_result);
