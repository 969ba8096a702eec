/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was typed and not understood, and must not be passed over: words of a danger, figures. No
 * calm answer stands before it is said in another way; what is to be done at once, and a no, keep
 * the first line, and it stands behind them.
 */
#include "answers/check_parts.h"

#include <string.h>

#define SHOWN_MOST 3

static bool is_kind(const struct ts_check_work *w, enum ts_check_kind kind)
{
	return strcmp(w->out->kind, ts_check_kind_words[kind]) == 0;
}

/* The first line is a deed that cannot wait, or a no. */
static bool leads_all_the_same(const struct ts_check_work *w)
{
	const char *urgency = w->out->first ? w->out->first->urgency : NULL;

	return is_kind(w, TS_CHECK_DANGER) || is_kind(w, TS_CHECK_NO) ||
	       (is_kind(w, TS_CHECK_TEND) && urgency &&
		       strcmp(urgency, ts_urgency_words[TS_AT_LEISURE]) != 0);
}

/* "nitrite is high", "and 7 times" */
static void put_quoted(struct ts_check_work *w, size_t most)
{
	const struct ts_check_question *q = w->question;

	for (size_t i = 0; i < q->unread_count && i < most; i++)
		ts_text_puts(&w->text, i ? ", \"" : "\"", q->unread[i].words, "\"", NULL);
}

static void put_ways(struct ts_check_work *w)
{
	const struct ts_check_question *q = w->question;

	for (size_t i = 0; i < q->unread_count && i < SHOWN_MOST; i++) {
		bool repeated = false;

		for (size_t k = 0; k < i; k++)
			repeated |= strcmp(q->unread[k].say, q->unread[i].say) == 0;
		if (!repeated)
			ts_text_puts(&w->text, i ? "; " : "", q->unread[i].say, NULL);
	}
}

void ts_check_unread(struct ts_check_work *w)
{
	if (!w->question->unread_count)
		return;
	if (leads_all_the_same(w)) {
		ts_text_put(&w->text, "Not understood: ");
		put_quoted(w, SHOWN_MOST);
		ts_text_put(&w->text, "; say it as ");
		put_ways(w);
		ts_text_put(&w->text, ".");
		w->out->not_understood = ts_asking_keep(w->asking, &w->text);
		return;
	}
	ts_text_put(&w->text, "Not understood, and asked before anything else: ");
	put_quoted(w, SHOWN_MOST);
	ts_text_put(&w->text, ".");
	w->out->decides = NULL;
	w->out->otherwise = w->out->instead_says = w->out->root_says = NULL;
	ts_check_finish(w, TS_CHECK_QUESTION, w->entry_count, NULL);
	ts_text_put(&w->text, "Say it as ");
	put_ways(w);
	ts_text_put(&w->text, "; nothing is called well or together before");
	w->out->decides = ts_asking_keep(w->asking, &w->text);
}
