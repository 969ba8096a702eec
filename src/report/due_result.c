/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/due_result.h"

#include "words/due.h"

/* clang-format off */
#define T struct ts_due_test_line
static const struct ts_result_field test_fields[] = {
	TS_R_ROW_WORD(T, "where", where, ts_due_where_words, "the tank, or the water poured into it"),
	TS_R_ROW_TEXTS(T, "what", what, "what is tested"),
	TS_R_ROW_TEXT(T, "due", due, "by this day, YYYY-MM-DD"),
	TS_R_ROW_NUMBER(T, "in_days", in_days, 0, "days from today, negative where it is overdue"),
	TS_R_ROW_WORD(T, "when", when, ts_due_when_words, "beside today"),
	TS_R_ROW_TEXT(T, "reason", reason, "code of the reason that asks soonest"),
	TS_R_ROW_TEXT(T, "says", says, "what to do"),
	TS_R_ROW_TEXT(T, "because", because, "why so soon"),
	TS_R_ROW_TEXT(T, "last_read", last_read, "day of the last reading; null: none, or without a date"),
	TS_R_ROW_NUMBER(T, "every_days", every_days, 0, "from one reading to the next"),
};
#undef T
static const struct ts_result_shape test_shape = TS_R_SHAPE("test", test_fields, struct ts_due_test_line);

#define G struct ts_due_stage_line
static const struct ts_result_field stage_fields[] = {
	TS_R_ROW_COUNT(G, "number", number, "from 1"),
	TS_R_ROW_TEXT(G, "due", due, "on this day, YYYY-MM-DD"),
	TS_R_ROW_NUMBER(G, "in_days", in_days, 0, "days from today"),
	TS_R_ROW_WORD(G, "when", when, ts_due_when_words, "beside today"),
	TS_R_ROW_TEXT(G, "says", says, "the change of water"),
	TS_R_ROW_TEXT(G, "test", test, "what is tested with it"),
};
#undef G
static const struct ts_result_shape stage_shape = TS_R_SHAPE("stage", stage_fields, struct ts_due_stage_line);

#define R struct ts_due_result
static const struct ts_result_field due_fields[] = {
	TS_R_ROW_TEXT(R, "name", name, "of the tank, water or plan"),
	TS_R_ROW_TEXT(R, "today", today, "the day it was asked on, YYYY-MM-DD"),
	TS_R_ROW_WORD(R, "verdict", verdict, ts_due_verdict_words, "the most pressing of all"),
	TS_R_ROW_TEXT(R, "says", says, "what to do first"),
	TS_R_ROW_TEXT(R, "because", because, "why"),
	TS_R_ROW_TEXT(R, "next", next, "the first day that something is due after today; null: nothing is"),
	TS_R_ROW_TEXT(R, "danger", danger, "what to do before any test; null: nothing is known to be wrong"),
	TS_R_ROW_TEXT(R, "danger_because", danger_because, "the number that decides that"),
	TS_R_ROW_LIST(R, "tests", tests, test_count, struct ts_due_test_line, &test_shape, "a danger first, then by day"),
	TS_R_ROW_LIST(R, "stages", stages, stage_count, struct ts_due_stage_line, &stage_shape, "of the re-making, where one was asked for"),
	TS_R_ROW_TEXT(R, "stages_say", stages_say, "what the days of the stages hold for; null: there are none"),
	TS_R_ROW_TEXTS(R, "notes", notes, "what was left out, or could not be said"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "each once"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_due = TS_R_SHAPE("due", due_fields, struct ts_due_result);
