/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/log_result.h"

#include "report/learned_result.h"

/* clang-format off */
#define L struct ts_log_line
static const struct ts_result_field line_fields[] = {
	TS_R_ROW_TEXT(L, "date", date, "YYYY-MM-DD; null: not written"),
	TS_R_ROW_TEXT(L, "time", time, "HH:MM; null: not written"),
	TS_R_ROW_NUMBER(L, "gh_dh", gh_dh, 2, "as it was read; null: not read"),
	TS_R_ROW_NUMBER(L, "kh_dh", kh_dh, 2, "the same"),
	TS_R_ROW_NUMBER(L, "ph", ph, 2, "the same"),
	TS_R_ROW_NUMBER(L, "temp_c", temp_c, 1, "the same"),
	TS_R_ROW_NUMBER(L, "no3_mg_l", no3_mg_l, 2, "the same, as NO3"),
	TS_R_ROW_NUMBER(L, "no2_mg_l", no2_mg_l, 3, "the same, as NO2"),
	TS_R_ROW_NUMBER(L, "tan_mg_l", tan_mg_l, 3, "the same, ammonia as nitrogen"),
	TS_R_ROW_TEXTS(L, "happened", happened, "what happened, in its keeper's words"),
};
#undef L
const struct ts_result_shape ts_result_log_line = TS_R_SHAPE("line", line_fields, struct ts_log_line);

#define C struct ts_log_course
static const struct ts_result_field course_fields[] = {
	TS_R_ROW_TEXT(C, "name", name, "KH, GH, nitrate or pH"),
	TS_R_ROW_COUNT(C, "readings", readings, "that tell it"),
	TS_R_ROW_NUMBER(C, "first", first, 2, "the earliest figure, dH or pH"),
	TS_R_ROW_NUMBER(C, "last", last, 2, "the newest"),
	TS_R_ROW_NUMBER(C, "low", low, 2, "the lowest"),
	TS_R_ROW_NUMBER(C, "high", high, 2, "the highest"),
	TS_R_ROW_NUMBER(C, "days", days, 0, "from the first dated reading to the last"),
	TS_R_ROW_NUMBER(C, "drift_per_week", drift_per_week, 3, "slope of the least squares line; null: cannot be said"),
	TS_R_ROW_BOOL(C, "moves", moves, "by more than the usual swing and the doubt of a reading make"),
	TS_R_ROW_TEXT(C, "says", says, "the same in words"),
};
#undef C
static const struct ts_result_shape course_shape = TS_R_SHAPE("course", course_fields, struct ts_log_course);

#define V struct ts_log_value
static const struct ts_result_field value_fields[] = {
	TS_R_ROW_TEXT(V, "name", name, "KH, GH, pH, NO3 or temperature"),
	TS_R_ROW_TEXT(V, "unit", unit, "of the figures"),
	TS_R_ROW_COUNT(V, "readings", readings, "that have it"),
	TS_R_ROW_NUMBER(V, "first", first, 2, "the earliest figure"),
	TS_R_ROW_NUMBER(V, "last", last, 2, "the newest"),
	TS_R_ROW_RANGE(V, "likes", likes, 2, "what all who live there like; of nitrate what they bear; null: nothing shared, or nobody named"),
	TS_R_ROW_BOOL(V, "outside", outside, "the newest is, of that"),
	TS_R_ROW_NUMBER(V, "expected_now", expected_now, 2, "today, by the model from the first reading on; null: nothing follows"),
	TS_R_ROW_RANGE(V, "expected", expected, 2, "the same, at the least and most that animals and plants may do"),
	TS_R_ROW_NUMBER(V, "comes", comes, 2, "in eight weeks by this routine, as drift has it; null: nothing follows"),
};
#undef V
static const struct ts_result_shape value_shape = TS_R_SHAPE("value", value_fields, struct ts_log_value);

#define P struct ts_log_point
static const struct ts_result_field point_fields[] = {
	TS_R_ROW_TEXT(P, "date", date, "YYYY-MM-DD"),
	TS_R_ROW_BOOL(P, "comes", comes, "by the routine from today on; else expected from the first reading"),
	TS_R_ROW_NUMBER(P, "kh_dh", kh_dh, 2, "null: nothing follows"),
	TS_R_ROW_NUMBER(P, "gh_dh", gh_dh, 2, "the same"),
	TS_R_ROW_NUMBER(P, "no3_mg_l", no3_mg_l, 1, "the same, as NO3"),
};
#undef P
static const struct ts_result_shape point_shape = TS_R_SHAPE("point", point_fields, struct ts_log_point);

#define R struct ts_log_result
static const struct ts_result_field log_fields[] = {
	TS_R_ROW_TEXT(R, "name", name, "of the tank, water or plan"),
	TS_R_ROW_TEXT(R, "today", today, "the day it was asked on, YYYY-MM-DD"),
	TS_R_ROW_WORD(R, "verdict", verdict, ts_log_verdict_words, "of the course"),
	TS_R_ROW_TEXT(R, "headline", headline, "the course in a sentence"),
	TS_R_ROW_TEXT(R, "span", span, "how much was noted, from which day to which"),
	TS_R_ROW_TEXT(R, "next", next, "what follows from it; null: nothing"),
	TS_R_ROW_LIST(R, "courses", courses, course_count, struct ts_log_course, &course_shape, "the buffer first"),
	TS_R_ROW_LIST(R, "lines", lines, line_count, struct ts_log_line, &ts_result_log_line, "the oldest first"),
	TS_R_ROW_LIST(R, "values", values, value_count, struct ts_log_value, &value_shape, "each value that was read, over the whole time"),
	TS_R_ROW_LIST(R, "points", points, point_count, struct ts_log_point, &point_shape, "the model, a week apart: past, then coming"),
	TS_R_ROW_TEXT(R, "comes_says", comes_says, "where the routine goes, as drift says it; null: nothing follows"),
	TS_R_ROW_TEXT(R, "gone_says", gone_says, "between which days the buffer is gone, by this routine; null: it is not"),
	TS_R_ROW_SUB(R, "learned", learned, struct ts_learned, &ts_result_learned, "what a tank's log has taught"),
	TS_R_ROW_TEXTS(R, "notes", notes, "what was left out"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_log = TS_R_SHAPE("log", log_fields, struct ts_log_result);
