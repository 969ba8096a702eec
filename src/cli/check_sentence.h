/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A whole sentence read: "I have a 54 litre tank and my tap is 8 dH, can I add 6 neons and a
 * betta?". Names that the catalogue knows are taken out of it with their counts and sexes, figures
 * with a unit or a key become flags, the asking words are passed over.
 */
#ifndef TS_CLI_CHECK_SENTENCE_H
#define TS_CLI_CHECK_SENTENCE_H

#include <tapshoal/catalogue.h>

#include "base/arena.h"

#define TS_SENTENCE_MOST 64

struct sentence_flag {
	const char *flag, *value; /* "--GH", "8 dH" */
};

/* What was found, in its order; texts are the arena's. */
struct sentence {
	const char
		*planned[TS_SENTENCE_MOST]; /* "2 male guppies", as ts_animal_words() reads them */
	const char *living[TS_SENTENCE_MOST];
	struct sentence_flag flags[TS_SENTENCE_MOST];
	const char *unread[TS_SENTENCE_MOST]; /* words of which nothing was made */
	size_t planned_count, living_count, flag_count, unread_count;
};

/* False: no animal of the catalogue is named in it (or no memory). */
bool sentence_read(const struct ts_catalogue *catalogue, struct ts_arena *arena, const char *words,
	struct sentence *ret);

#endif
