/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows. Keys never change meaning; a new one is a new row.
 */
#include "report/due_result.h"

#include "report/learned_result.h"

#include "words/due.h"
#include "words/next_change.h"

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

#define C struct ts_due_change_line
static const struct ts_result_field change_fields[] = {
	TS_R_ROW_TEXT(C, "due", due, "by this day, YYYY-MM-DD"),
	TS_R_ROW_NUMBER(C, "in_days", in_days, 0, "days from today, negative where it is overdue"),
	TS_R_ROW_WORD(C, "when", when, ts_due_when_words, "beside today"),
	TS_R_ROW_WORD(C, "reason", reason, ts_change_reason_words, "who asks for it: the routine, nitrate, the buffer, advice"),
	TS_R_ROW_NUMBER(C, "litres", litres, 1, "how much; null: the litres of the tank are not known"),
	TS_R_ROW_NUMBER(C, "percent", percent, 1, "the same, of its water"),
	TS_R_ROW_NUMBER(C, "every_days", every_days, 1, "and again so often; null: no routine is given"),
	TS_R_ROW_TEXT(C, "amount", amount, "how much, in words"),
	TS_R_ROW_TEXT(C, "says", says, "what to do"),
	TS_R_ROW_TEXT(C, "because", because, "why then"),
	TS_R_ROW_TEXT(C, "last", last, "the newest change that was noted; null: none was"),
	TS_R_ROW_NUMBER(C, "no3_mg_l", no3_mg_l, 1, "nitrate of today, reckoned from its last reading; null: not known"),
	TS_R_ROW_NUMBER(C, "kh_dh", kh_dh, 2, "KH likewise"),
};
#undef C
static const struct ts_result_shape change_shape = TS_R_SHAPE("change", change_fields, struct ts_due_change_line);

#define B struct ts_due_bring_line
static const struct ts_result_field bring_fields[] = {
	TS_R_ROW_TEXT(B, "what", what, "a water or a salt"),
	TS_R_ROW_NUMBER(B, "amount", amount, 1, "of it"),
	TS_R_ROW_TEXT(B, "unit", unit, "L or g"),
};
#undef B
static const struct ts_result_shape bring_shape = TS_R_SHAPE("bring", bring_fields, struct ts_due_bring_line);

#define A struct ts_due_alarm_line
static const struct ts_result_field alarm_fields[] = {
	TS_R_ROW_TEXT(A, "parameter", parameter, "gh, kh or no3"),
	TS_R_ROW_TEXT(A, "due", due, "the day on which its limit is reached, YYYY-MM-DD"),
	TS_R_ROW_NUMBER(A, "in_days", in_days, 0, "days from today"),
	TS_R_ROW_TEXT(A, "says", says, "the limit and the day"),
	TS_R_ROW_TEXT(A, "because", because, "the cheapest remedy; null: none is known, or that of the first"),
};
#undef A
static const struct ts_result_shape alarm_shape = TS_R_SHAPE("alarm", alarm_fields, struct ts_due_alarm_line);

#define R struct ts_due_result
static const struct ts_result_field due_fields[] = {
	TS_R_ROW_TEXT(R, "name", name, "of the tank, water or plan"),
	TS_R_ROW_TEXT(R, "supply", supply, "the name of what is poured in; null: it has none, or is not known here"),
	TS_R_ROW_TEXT(R, "today", today, "the day it was asked on, YYYY-MM-DD"),
	TS_R_ROW_WORD(R, "verdict", verdict, ts_due_verdict_words, "the most pressing of all"),
	TS_R_ROW_TEXT(R, "says", says, "what to do first"),
	TS_R_ROW_TEXT(R, "because", because, "why"),
	TS_R_ROW_TEXT(R, "next", next, "the first day that something is due after today; null: nothing is"),
	TS_R_ROW_TEXT(R, "danger", danger, "what to do before any test; null: nothing is known to be wrong"),
	TS_R_ROW_TEXT(R, "danger_because", danger_because, "the number that decides that"),
	TS_R_ROW_SUB(R, "learned", learned, struct ts_learned, &ts_result_learned, "what the tank's log has taught"),
	TS_R_ROW_MAYBE(R, "change", change, struct ts_due_change_line, &change_shape, "the next change of water; null: none is asked for"),
	TS_R_ROW_LIST(R, "bring", bring, bring_count, struct ts_due_bring_line, &bring_shape, "what that takes"),
	TS_R_ROW_LIST(R, "alarms", alarms, alarm_count, struct ts_due_alarm_line, &alarm_shape, "limits that this routine reaches, as drift has them"),
	TS_R_ROW_LIST(R, "tests", tests, test_count, struct ts_due_test_line, &test_shape, "a danger first, then by day"),
	TS_R_ROW_LIST(R, "stages", stages, stage_count, struct ts_due_stage_line, &stage_shape, "of the re-making, where one was asked for"),
	TS_R_ROW_TEXT(R, "stages_say", stages_say, "what the days of the stages hold for; null: there are none"),
	TS_R_ROW_TEXTS(R, "notes", notes, "what was left out, or could not be said"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "each once"),
};
#undef R

#define T struct ts_due_thing
static const struct ts_result_field thing_fields[] = {
	TS_R_ROW_TEXT(T, "tank", tank, "which, as it was asked for; several where they share a supply"),
	TS_R_ROW_WORD(T, "kind", kind, ts_due_kind_words, "what it is"),
	TS_R_ROW_TEXT(T, "due", due, "by this day, YYYY-MM-DD"),
	TS_R_ROW_NUMBER(T, "in_days", in_days, 0, "days from today, negative where it is overdue"),
	TS_R_ROW_WORD(T, "when", when, ts_due_when_words, "beside today"),
	TS_R_ROW_TEXT(T, "says", says, "what to do, or the limit that is reached"),
};
#undef T
static const struct ts_result_shape thing_shape = TS_R_SHAPE("thing", thing_fields, struct ts_due_thing);

#define U struct ts_due_unanswered
static const struct ts_result_field unanswered_fields[] = {
	TS_R_ROW_TEXT(U, "tank", tank, "which"),
	TS_R_ROW_TEXT(U, "says", says, "why"),
};
#undef U
static const struct ts_result_shape unanswered_shape = TS_R_SHAPE("unanswered", unanswered_fields, struct ts_due_unanswered);

#define R struct ts_due_all_result
static const struct ts_result_field all_fields[] = {
	TS_R_ROW_TEXT(R, "today", today, "the day it was asked on, YYYY-MM-DD"),
	TS_R_ROW_WORD(R, "verdict", verdict, ts_due_verdict_words, "the most pressing of all"),
	TS_R_ROW_TEXT(R, "says", says, "how much is due now"),
	TS_R_ROW_TEXT(R, "because", because, "the first of it"),
	TS_R_ROW_TEXT(R, "next", next, "the first day that something is due after today; null: nothing is"),
	TS_R_ROW_LIST(R, "things", things, thing_count, struct ts_due_thing, &thing_shape, "dangers first, then by day"),
	TS_R_ROW_LIST(R, "bring", bring, bring_count, struct ts_due_bring_line, &bring_shape, "what the changes of this week take, all together"),
	TS_R_ROW_LIST(R, "unanswered", unanswered, unanswered_count, struct ts_due_unanswered, &unanswered_shape, "tanks that could not be read"),
	TS_R_ROW_TEXTS(R, "cautions", cautions, "each once"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_due_all =
	TS_R_SHAPE("due", all_fields, struct ts_due_all_result);
const struct ts_result_shape ts_result_due = TS_R_SHAPE("due", due_fields, struct ts_due_result);
