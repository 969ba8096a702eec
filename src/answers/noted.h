/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What every answer says of the water that it rests on: poisons, what is unusual, what contradicts
 * itself, what a tank of it runs at. One list, so that no answer leaves one of them out.
 */
#ifndef TS_ANSWERS_NOTED_H
#define TS_ANSWERS_NOTED_H

#include <tapshoal/profile.h>

#include "answers/asking.h"

/* Adds the sentences, the gravest first; `told`: what ts_first_tells() says was said already. */
void ts_answer_note_water(const struct ts_asking *asking, const struct ts_profile *profile,
	unsigned told, struct ts_texts *list);

#endif
