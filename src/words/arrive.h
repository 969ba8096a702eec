/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of carrying home.
 */
#ifndef TS_WORDS_ARRIVE_H
#define TS_WORDS_ARRIVE_H

#include "base/text.h"
#include "care/arrive.h"

extern const char *const ts_arrive_way_words[TS_ARRIVE_WAY__COUNT + 1]; /* and NULL */

/* Adds what to do, and the number that decides. */
void ts_say_arrival(
	struct ts_text *text, const struct ts_arrive_wish *wish, const struct ts_arrival *arrival);
void ts_say_arrival_because(
	struct ts_text *text, const struct ts_arrive_wish *wish, const struct ts_arrival *arrival);

#endif
