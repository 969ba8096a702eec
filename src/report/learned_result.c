/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of what a log has taught. A further member is a further row.
 */
#include "report/learned_result.h"

/* clang-format off: one row a line */
#define L struct ts_learned_line
static const struct ts_result_field line_fields[] = {
	TS_R_ROW_WORD(L, "what", what, ts_learned_words,
		"nitrate between changes; gh and kh by themselves, beside changes and topping up; "
		"what stones give; what evaporates; what plants take"),
	TS_R_ROW_NUMBER(L, "value", value, 3, "as fitted"),
	TS_R_ROW_NUMBER(L, "low", low, 3, "two deviations below"),
	TS_R_ROW_NUMBER(L, "high", high, 3, "two deviations above"),
	TS_R_ROW_TEXT(L, "unit", unit, "of these"),
	TS_R_ROW_NUMBER(L, "modelled", modelled, 3,
		"the same without the log; null: there is no model of it"),
	TS_R_ROW_NUMBER(L, "readings", readings, 0, "that it rests on"),
	TS_R_ROW_NUMBER(L, "days", days, 0, "from the first of them to the last"),
	TS_R_ROW_TEXT(L, "says", says, "the same in a sentence"),
};
#undef L
static const struct ts_result_shape line_shape =
	TS_R_SHAPE("line", line_fields, struct ts_learned_line);

#define E struct ts_learned_expected
static const struct ts_result_field expected_fields[] = {
	TS_R_ROW_TEXT(E, "parameter", parameter, "gh, kh (dH) or no3 (mg/L)"),
	TS_R_ROW_TEXT(E, "date", date, "of the newest reading"),
	TS_R_ROW_NUMBER(E, "read", read, 2, "that reading"),
	TS_R_ROW_NUMBER(E, "low", low, 2, "what the readings before it let expect, at the least"),
	TS_R_ROW_NUMBER(E, "high", high, 2, "at the most"),
	TS_R_ROW_BOOL(E, "outside", outside, "it lies outside"),
	TS_R_ROW_TEXT(E, "says", says, "the same in a sentence"),
};
#undef E
static const struct ts_result_shape expected_shape =
	TS_R_SHAPE("expected", expected_fields, struct ts_learned_expected);

#define R struct ts_learned
static const struct ts_result_field learned_fields[] = {
	TS_R_ROW_LIST(R, "lines", lines, line_count, struct ts_learned_line, &line_shape,
		"what follows from the log; it counts before the model"),
	TS_R_ROW_LIST(R, "expected", expected, expected_count, struct ts_learned_expected,
		&expected_shape, "newest readings beside what those before them let expect"),
	TS_R_ROW_TEXTS(R, "alarms", alarms, "readings that lie outside, and what may be behind"),
	TS_R_ROW_TEXTS(
		R, "thin", thin, "what does not follow from the log yet, and what would make it"),
	TS_R_ROW_TEXT(R, "else_says", else_says,
		"what comes of it where nothing is done; null: no less is changed"),
	TS_R_ROW_TEXT(R, "back_says", back_says,
		"the way back to the file's routine, and where it leads; null: no less is changed"),
	TS_R_ROW_TEXT(R, "routine_says", routine_says,
		"the routine by the log, where the file says another; null: they agree, or one of "
		"them says nothing"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_learned =
	TS_R_SHAPE("learned", learned_fields, struct ts_learned);
