/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What must be said of one animal wherever it is named: dangers to people, law, and what it needs.
 * One sentence a caution, one a way of feeding; the words of records are for files.
 */
#ifndef TS_WORDS_ANIMAL_H
#define TS_WORDS_ANIMAL_H

#include <tapshoal/catalogue.h>

#include "base/text.h"

/* Kinds of cautions, in the order in which they are said; bits of `kinds` below. */
enum ts_caution_kind {
	TS_CAUTIONS_DANGER = 1 << 0, /* to people: stings, shocks, bites */
	TS_CAUTIONS_LAW = 1 << 1,    /* forbidden, licensed, protected */
	TS_CAUTIONS_HOME = 1 << 2,   /* no tank at home is large enough, or few are */
	TS_CAUTIONS_NEEDS = 1 << 3,  /* land, salt, food, water without errors, a lid */
	TS_CAUTIONS_KNOW = 1 << 4,   /* spines, young without end, a short life, caught wild */
	TS_CAUTIONS_ALL = (1 << 5) - 1,
	TS_CAUTIONS_TANK = 1 << 5 /* habits that the tank must bear: no cautions of the record */
};

/* What stands in the second line of every answer that names the animal. */
#define TS_CAUTIONS_SECOND_LINE (TS_CAUTIONS_DANGER | TS_CAUTIONS_LAW | TS_CAUTIONS_HOME)

/* The kinds of which the animal has cautions. */
unsigned ts_caution_kinds(const struct ts_species *species);

/*
 * Adds the sentences of those kinds, one behind the other: "its sting needs a hospital: not for a
 * home tank; forbidden or licensed in some countries: ask your authority first". Nothing where
 * there are none.
 */
void ts_say_cautions(struct ts_text *text, const struct ts_species *species, unsigned kinds);

/* Adds what its keeper must give it: "sinking tablets and worms, in the evening if it is shy". */
void ts_say_feeding(struct ts_text *text, const struct ts_species *species);

/* Adds "chases its like when it breeds"; "leaves others alone" where that is so. */
void ts_say_temper(struct ts_text *text, const struct ts_species *species);

/* Adds what it eats of its company: "fish that fit its mouth, shrimps, snails". */
void ts_say_hunts(struct ts_text *text, const struct ts_species *species);

/* Adds "3 to 5 years". */
void ts_say_lives(struct ts_text *text, const struct ts_species *species);

/* Adds "neon tetra (Paracheirodon innesi)". */
void ts_say_name(struct ts_text *text, const struct ts_species *species);

/* Adds "keep 6 or more, better 10". */
void ts_say_company(struct ts_text *text, const struct ts_species *species);

/* Adds "grows to 4 cm; grown it needs 60 cm of length". */
void ts_say_room_of(struct ts_text *text, const struct ts_species *species);

#endif
