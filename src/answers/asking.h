/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What every question is asked with. One file a question: a struct that says what is asked goes in,
 * a result comes out that holds all that is said, sentences included; text, page, JSON and CSV are
 * made from the result alone. No flags, no files, no printing.
 */
#ifndef TS_ANSWERS_ASKING_H
#define TS_ANSWERS_ASKING_H

#include <tapshoal/catalogue.h>

#include "base/arena.h"
#include "base/text.h"
#include "model/practice.h"

struct ts_asking {
	struct ts_arena *arena; /* all results belong to it */
	const struct ts_practice *practice;
	long today; /* days since 1970-01-01; -1: not known, then readings are of today */
	const struct ts_species *const *species; /* the catalogue; names are looked up before */
	size_t species_count;
};

/* Moves a scratch text into the arena and empties it for the next sentence; never NULL. */
const char *ts_asking_keep(const struct ts_asking *asking, struct ts_text *text);

/* The day as files have it, "2026-03-01"; NULL: it is none, or there is no memory. */
const char *ts_asking_day(const struct ts_asking *asking, long day);

/* Adds a sentence to a list of the arena; NULL and an empty one add nothing. */
void ts_asking_note(const struct ts_asking *asking, struct ts_texts *list, const char *says);

#endif
