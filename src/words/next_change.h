/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of the next change of water (care/next_change.h).
 */
#ifndef TS_WORDS_NEXT_CHANGE_H
#define TS_WORDS_NEXT_CHANGE_H

#include "base/text.h"
#include "care/next_change.h"

extern const char *const ts_change_reason_words[TS_CHANGE_REASON__COUNT + 1]; /* "routine"; NULL */

/* Adds "40 L (30 %)", or "30 % of the water" where its litres are not known. */
void ts_say_change_amount(struct ts_text *text, const struct ts_next_change *change);

/* Adds what to do: "Change 40 L (30 %) by 12 March: the last change was 3 days ago". */
void ts_say_next_change(struct ts_text *text, const struct ts_next_change *change, long today);

/* Adds why: "your routine, every 7 days; nitrate is reckoned at 24 mg/L now". */
void ts_say_next_change_because(struct ts_text *text, const struct ts_next_change *change);

#endif
