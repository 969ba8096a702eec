/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Animals as they are typed into the page, one at a time: what the words of a call mean.
 */
#ifndef TS_PAGE_ANIMALS_H
#define TS_PAGE_ANIMALS_H

#include <tapshoal/catalogue.h>

#include "base/text.h"

/*
 * Adds one line of JSON for words like "10 neon tetra" or "6 guppies for 2 years": the keys of a
 * stock line ("line"; null: no animal), whom the catalogue takes it for ("name"; null: nobody),
 * what is to be said of that ("says"), whether it is the name of a "group", and whom else it may
 * mean ("choices"). `today`: days since
 * 1970-01-01.
 */
void page_animals_write(
	struct ts_text *out, const struct ts_catalogue *catalogue, const char *words, long today);

/*
 * Adds one line of JSON for a sentence ("I have 54 litres and 8 dH, can I add 6 neons?"): the words
 * of the animals in it, "planned" and "living", its figures as "flags", what no field of the sheet
 * holds as the words of a call in "told", what was "unread", and of that what no calm answer may
 * stand beside as "alarms"; {} where nothing of it is understood.
 */
void page_sentence_write(
	struct ts_text *out, const struct ts_catalogue *catalogue, const char *words);

#endif
