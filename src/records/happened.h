/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What happened to a tank, as its keeper says it: "changed 40 L", "2 neons died", "power cut 6 h".
 */
#ifndef TS_RECORDS_HAPPENED_H
#define TS_RECORDS_HAPPENED_H

#include <tapshoal/plan.h>

#include "base/text.h"

/*
 * Reads one line by the phrases of model/also.c into everything of an event but its day. `says` is
 * the line itself, taken from `arena`. False with one line in `error`: nothing of it is known, or
 * its amount is missing.
 */
bool ts_happened_words(struct ts_arena *arena, const char *words, struct ts_tank_event *ret,
	struct ts_text *error);

#endif
