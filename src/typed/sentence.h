/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A whole sentence read: "I have a 54 litre tank and my tap is 8 dH, can I add 6 neons and a
 * betta?". Names that the catalogue knows are taken out of it with their counts and sexes; readings
 * with their figures, what happened to the tank and what is seen become flags; the asking words are
 * passed over. Words of a known danger and figures of which nothing was made are told, so that no
 * answer stands as if they had not been said.
 */
#ifndef TS_TYPED_SENTENCE_H
#define TS_TYPED_SENTENCE_H

#include <tapshoal/catalogue.h>

#include "base/arena.h"

#define TS_SENTENCE_MOST 64

struct ts_sentence_flag {
	const char *flag, *value; /* "--GH", "8 dH" */
	const char *taken;        /* what was taken for granted, a sentence's end; NULL: nothing */
	bool poured;              /* said of the tap; where nothing differs it is one water */
};

/* What nothing was made of, and must not be passed over. */
struct ts_sentence_alarm {
	const char *words; /* as typed, with what stands beside them */
	const char *say;   /* how it is said so that it is understood */
	bool danger;       /* of a known danger; else a figure */
};

/* What was found, in its order; texts are the arena's. */
struct ts_sentence {
	/* "2 male guppies", as ts_animal_words() reads them */
	const char *planned[TS_SENTENCE_MOST], *living[TS_SENTENCE_MOST];
	struct ts_sentence_flag flags[TS_SENTENCE_MOST];
	const char *unread[TS_SENTENCE_MOST]; /* words of which nothing was made */
	struct ts_sentence_alarm alarms[TS_SENTENCE_MOST];
	size_t planned_count, living_count, flag_count, unread_count, alarm_count;
	bool wanted; /* it says of some of them that they are to come */
};

/* False: nothing of it was understood (or no memory). */
bool ts_sentence_read(const struct ts_catalogue *catalogue, struct ts_arena *arena,
	const char *words, struct ts_sentence *ret);

#endif
