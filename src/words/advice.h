/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of advice: the templates of care/advice_rows.c with their figures put in, so that
 * screen, JSON and page say the same.
 */
#ifndef TS_WORDS_ADVICE_H
#define TS_WORDS_ADVICE_H

#include "base/text.h"
#include "care/advice.h"

/* Adds what to do, and the number that decides. `residents` as in the state that was asked. */
void ts_say_advice(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents);
void ts_say_advice_because(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents);

/* Adds "In the next hour: ..." and "This week: ..."; nothing where there is nothing to do then. */
void ts_say_advice_hour(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents);
void ts_say_advice_week(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents);

/* Adds what to do now, in the next hour and this week, for one paragraph. */
void ts_say_advice_whole(
	struct ts_text *text, const struct ts_advice *advice, const struct ts_match *residents);

#endif
