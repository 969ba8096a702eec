/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/what_if_result.h"

#include "report/stage_result.h"

/* clang-format off */
#define L struct ts_what_if_line
static const struct ts_result_field lasts_fields[] = {
	TS_R_ROW_TEXT(L, "what", what, "oxygen, warmth, cooling, ammonia, away, carried, other-water, numbers, sizes, room, load"),
	TS_R_ROW_NUMBER(L, "hours_low", low, 1, "at the worst; null: it does not end"),
	TS_R_ROW_NUMBER(L, "hours", hours, 1, "as is likely; null: it does not end"),
	TS_R_ROW_NUMBER(L, "hours_high", high, 1, "at the best; null: it does not end"),
	TS_R_ROW_NUMBER(L, "limit", limit, 2, "down to which, or up to which: mg/L or C; how many, or how long in cm"),
	TS_R_ROW_TEXT(L, "says", says, "the same in words"),
};
#undef L
static const struct ts_result_shape lasts_shape = TS_R_SHAPE("lasts", lasts_fields, struct ts_what_if_line);

#define D struct ts_what_if_deed
static const struct ts_result_field deed_fields[] = {
	TS_R_ROW_TEXT(D, "when", when, "by when"),
	TS_R_ROW_TEXT(D, "says", says, "what to do"),
	TS_R_ROW_BOOL(D, "card", card, "of that day and its first hours"),
};
#undef D
static const struct ts_result_shape deed_shape = TS_R_SHAPE("step", deed_fields, struct ts_what_if_deed);

#define R struct ts_what_if_result
static const struct ts_result_field what_if_fields[] = {
	TS_R_ROW_TEXT(R, "id", id, "which question; null: none was named"),
	TS_R_ROW_TEXT(R, "asks", asks, "the same as a question"),
	TS_R_ROW_TEXT(R, "says", says, "the answer in a sentence"),
	TS_R_ROW_TEXT(R, "because", because, "the figure that decides"),
	TS_R_ROW_LIST(R, "lasts", lasts, lasts_count, struct ts_what_if_line, &lasts_shape, "what lasts how long"),
	TS_R_ROW_LIST(R, "steps", steps, step_count, struct ts_what_if_deed, &deed_shape, "what to do by when, in order"),
	TS_R_ROW_NUMBER(R, "carry_l", carry_l, 1, "water to carry the animals in; null: nobody is carried"),
	TS_R_ROW_NUMBER(R, "old_water_l", old_water_l, 0, "of the old water for the first fill, where no salts are used; null: not needed"),
	TS_R_ROW_LIST(R, "stages", stages, stage_count, struct ts_stage_line, &ts_result_stage, "of going over to the water there; day 0 is the move"),
	TS_R_ROW_TEXTS(R, "call", call, "whom to call when"),
	TS_R_ROW_TEXTS(R, "notes", notes, "what was assumed, or would tell more"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "each once"),
	TS_R_ROW_TEXTS(R, "ids", ids, "the questions there are"),
	TS_R_ROW_TEXTS(R, "questions", questions, "the same as questions"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_what_if =
	TS_R_SHAPE("what-if", what_if_fields, struct ts_what_if_result);
