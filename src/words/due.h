/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of what is to be tested next: the reasons of care/due_reasons.c with their figures,
 * days as people say them.
 */
#ifndef TS_WORDS_DUE_H
#define TS_WORDS_DUE_H

#include "base/text.h"
#include "care/due.h"

extern const char *const ts_due_what_words[TS_DUE_WHAT__COUNT + 1];   /* "GH" ...; NULL */
extern const char *const ts_due_where_words[TS_DUE_WHERE__COUNT + 1]; /* "tank", "supply"; NULL */
/* "overdue", "today", "later"; NULL. */
extern const char *const ts_due_when_words[];

/* The word of a day beside today. */
const char *ts_due_when(long day, long today);

/* Adds a day: "3 December", with the year where it is another than today's. */
void ts_say_day(struct ts_text *text, long day, long today);

/* Adds what is tested where: "GH, KH and pH of the tank". */
void ts_say_due_what(struct ts_text *text, const struct ts_due_item *item);

/* When something comes about: days of the calendar. */
struct ts_coming {
	const char *done, *may;  /* "is used up", "may be used up" */
	long early, about, late; /* `late` LONG_MAX: perhaps never */
};

/*
 * Adds it: "is used up between 3 March and 20 April, most likely by 1 April", "is used up by 1
 * April most likely, and from 3 March on at the soonest", "is used up about 3 March", "may be used
 * up already, and most likely is by 20 April".
 */
void ts_say_coming(struct ts_text *text, const struct ts_coming *coming, long today);

/* Adds "5 days", "9 weeks", "14 months". */
void ts_say_age(struct ts_text *text, long days);

/* Adds what to do: "Test GH and KH of the tank by 3 December: the last reading is 9 weeks old". */
void ts_say_due(struct ts_text *text, const struct ts_due_item *item, long today);

/* Adds why: "every 28 days: a tank drifts unseen". */
void ts_say_due_because(struct ts_text *text, const struct ts_due_item *item, long today);

/* What stands below every such answer. */
extern const char ts_caution_due[];

#endif
