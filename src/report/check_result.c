/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of check.
 */
#include "report/check_result.h"

#include "stock/check.h"

const char *const ts_check_verdict_words[TS_PLAN_VERDICT__COUNT + 1] = {
	"sound", "sound-if", "unsound", "cannot-say", NULL};

static const char *const severities[] = {"note", "concern", "conflict", NULL};

/* clang-format off */
#define F struct ts_check_finding_result
static const struct ts_result_field finding_fields[] = {
	TS_R_ROW_WORD(F, "severity", severity, severities, "conflict: will be harmed; concern: works on a condition"),
	TS_R_ROW_TEXT(F, "code", code, "its name, which never changes meaning"),
	TS_R_ROW_TEXTS(F, "species", species, "who suffers, then from whom"),
	TS_R_ROW_TEXT(F, "parameter", parameter, "what its numbers are about"),
	TS_R_ROW_TEXT(F, "says", says, "the finding in words"),
	TS_R_ROW_TEXT(F, "smallest_change", smallest_change, "what would mend it"),
};
#undef F
static const struct ts_result_shape finding_shape =
	TS_R_SHAPE("finding", finding_fields, struct ts_check_finding_result);

#define R struct ts_check_repair_result
static const struct ts_result_field repair_fields[] = {
	TS_R_ROW_TEXT(R, "species", species, "accepted name"),
	TS_R_ROW_TEXT(R, "id", id, "stem of the record's file"),
	TS_R_ROW_COUNT(R, "from", from, "animals in the plan"),
	TS_R_ROW_COUNT(R, "to", to, "animals after the repair; 0: left out"),
	TS_R_ROW_TEXT(R, "says", says, "the step in words"),
};
#undef R
static const struct ts_result_shape repair_shape =
	TS_R_SHAPE("repair", repair_fields, struct ts_check_repair_result);

#define L struct ts_check_load_result
static const struct ts_result_field load_fields[] = {
	TS_R_ROW_NUMBER(L, "nitrogen_mg_day", nitrogen_mg_day, 1, "nitrogen that the feed brings into the water"),
	TS_R_ROW_NUMBER(L, "no3_rise_mg_l_week", no3_rise_mg_l_week, 1, "nitrate between water changes"),
	TS_R_ROW_NUMBER(L, "no3_steady_mg_l", no3_steady_mg_l, 1, "nitrate before a change, once settled; null in a known load: without end, no water is changed"),
	TS_R_ROW_NUMBER(L, "kh_used_dh_week", kh_used_dh_week, 2, "buffer used up"),
	TS_R_ROW_NUMBER(L, "buffer_days", buffer_days, 1, "days to the floor without a change; null: KH not known, or without end, none is used"),
	TS_R_ROW_RANGE(L, "nitrogen_mg_day_range", nitrogen_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "no3_rise_mg_l_week_range", no3_rise_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "no3_steady_mg_l_range", no3_steady_range, 1, "least and most"),
	TS_R_ROW_RANGE(L, "kh_used_dh_week_range", kh_used_range, 2, "least and most"),
	TS_R_ROW_RANGE(L, "buffer_days_range", buffer_range, 1, "least and most"),
	TS_R_ROW_NUMBER(L, "volume_l", volume_l, 0, "of the water"),
	TS_R_ROW_NUMBER(L, "feed_g_day", feed_g_day, 2, "dry feed"),
	TS_R_ROW_NUMBER(L, "measured_no3_rise_mg_l_week", measured_no3_rise, 1, "from two readings; it replaces the computed one"),
	TS_R_ROW_NUMBER(L, "change_percent", change_percent, 0, "of the water, as given or as usual"),
	TS_R_ROW_NUMBER(L, "change_days", change_days, 1, "from one change to the next"),
};
#undef L
static const struct ts_result_shape load_shape = TS_R_SHAPE("load", load_fields, struct ts_check_load_result);

#define C struct ts_check_result
static const struct ts_result_field check_fields[] = {
	TS_R_ROW_TEXT(C, "name", name, "of the plan"),
	TS_R_ROW_WORD(C, "verdict", verdict, ts_check_verdict_words, "sound-if: every concern has its condition"),
	TS_R_ROW_LIST(C, "findings", findings, finding_count, struct ts_check_finding_result, &finding_shape, "harm first"),
	TS_R_ROW_COUNT(C, "more", more, "lighter findings that were left out"),
	TS_R_ROW_LIST(C, "repair", repair, repair_count, struct ts_check_repair_result, &repair_shape, "smallest change of the list that leaves no conflict it can mend"),
	TS_R_ROW_BOOL(C, "repair_proven", repair_proven, "no smaller repair exists"),
	TS_R_ROW_LIST(C, "advice", advice, advice_count, struct ts_advice_line, &ts_result_advice, "what to do about the water"),
	TS_R_ROW_SUB(C, "load", load, struct ts_check_load_result, &load_shape, "what the animals make of the water"),
};
#undef C
/* clang-format on */
const struct ts_result_shape ts_result_check =
	TS_R_SHAPE("check", check_fields, struct ts_check_result);
