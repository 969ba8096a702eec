/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of what to ask back.
 */
#include "report/ask_back_result.h"

/* clang-format off: one row a line */
#define A struct ts_ask_result
static const struct ts_result_field ask_fields[] = {
	TS_R_ROW_TEXT(A, "says", says, "what to ask"),
	TS_R_ROW_TEXTS(
		A, "fields", fields, "the fields of the page that it fills, as a link calls them"),
	TS_R_ROW_TEXT(A, "takes", takes,
		"an example of an answer, or the words there are; null: the sentence says it"),
};
#undef A
static const struct ts_result_shape ask_shape = TS_R_SHAPE("ask", ask_fields, struct ts_ask_result);

#define Q struct ts_asked_question_result
static const struct ts_result_field question_fields[] = {
	TS_R_ROW_TEXT(Q, "id", id, "the word for it"),
	TS_R_ROW_TEXT(Q, "says", says, "the question"),
};
#undef Q
static const struct ts_result_shape question_shape =
	TS_R_SHAPE("question", question_fields, struct ts_asked_question_result);

#define R struct ts_ask_back_result
static const struct ts_result_field fields[] = {
	TS_R_ROW_TEXT(R, "id", id, "the question that was named; null: none"),
	TS_R_ROW_TEXT(R, "says", says, "the same in words"),
	TS_R_ROW_TEXT(
		R, "first", first, "what is to be done before anything is asked; null: nothing"),
	TS_R_ROW_LIST(R, "asks", asks, ask_count, struct ts_ask_result, &ask_shape,
		"what to ask, what decides most first"),
	TS_R_ROW_TEXT(R, "lead", lead, "what comes before the questions"),
	TS_R_ROW_TEXT(R, "closing", closing, "how to write it"),
	TS_R_ROW_TEXT(R, "link_says", link_says, "what the link is; null: there is none"),
	TS_R_ROW_TEXT(R, "link", link,
		"opens the page with these fields waiting; null: its address is not known"),
	TS_R_ROW_LIST(R, "questions", questions, question_count, struct ts_asked_question_result,
		&question_shape, "all questions there are"),
};
#undef R
/* clang-format on */
const struct ts_result_shape ts_result_ask_back =
	TS_R_SHAPE("ask-back", fields, struct ts_ask_back_result);
