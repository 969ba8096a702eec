/* SPDX-License-Identifier: Apache-2.0 */
/*
 * "What do I have to know to answer that?" For those who are asked by others: only what the
 * question needs, in the order in which people with experience ask it. The page asks the same rows.
 */
#ifndef TS_ANSWERS_ASK_BACK_H
#define TS_ANSWERS_ASK_BACK_H

#include <tapshoal/catalogue.h>

/* One thing to ask. */
struct ts_ask_result {
	const char *says;
	struct ts_texts fields; /* as a link of the page calls them: "reading.GH" */
	const char *takes;      /* an example or the words there are; NULL: the sentence says it */
};

struct ts_asked_question_result {
	const char *id, *says;
};

struct ts_ask_back_result {
	const char *id, *says; /* NULL: no question was named */
	const char *first;     /* what is to be done before anything is asked; NULL: nothing */
	struct ts_ask_result *asks;
	size_t ask_count;
	const char *lead; /* what comes before the questions */
	const char *closing;
	const char *link_says; /* what `link` is; NULL: there is none */
	const char *
		link; /* opens the page with those fields waiting; NULL: its address is not known */
	struct ts_asked_question_result *questions; /* all that there are */
	size_t question_count;
};

/* All questions, in the order of the page; NULL behind the last. */
const char *ts_ask_back_id(size_t index);
const char *ts_ask_back_says(size_t index);

/* The question of the page that answers it, where it is none of its own; NULL: itself. */
const char *ts_ask_back_by(size_t index);

/* What is to be done before anything is asked; NULL: nothing. */
const char *ts_ask_back_first(size_t index);

/* What a question asks, in its order: the sentence, and the fields up to a NULL; NULL behind the
 * last. */
const char *ts_ask_back_asks(size_t index, size_t ask, const char *const **fields);

/* How one field alone is asked for, such as "reading.GH"; NULL: no question asks for it. */
const char *ts_ask_back_of(const char *field);

/*
 * What to ask back; `id` NULL: only the questions that there are. `page` is the address of the
 * page, or NULL. Texts are taken from `arena`. TS_NO: there is no such question.
 */
TS_MUST_USE enum ts_status ts_ask_back(
	struct ts_arena *arena, const char *id, const char *page, struct ts_ask_back_result *ret);

#endif
