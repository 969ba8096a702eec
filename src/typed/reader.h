/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of this room share: the sentence as words, each with what became of it, and where
 * the reading stands. Private to the room.
 */
#ifndef TS_TYPED_READER_H
#define TS_TYPED_READER_H

#include "catalogue/name_heads.h"
#include "typed/sentence.h"

#define TS_TYPED_WORDS_MOST 240

/* Who is named behind a cut lives in the tank, is planned, or as before. */
enum ts_typed_then { TS_TYPED_AS_BEFORE, TS_TYPED_LIVES, TS_TYPED_PLANNED };

/* Sides of a tank as people say them. */
enum ts_typed_side {
	TS_TYPED_LONG,
	TS_TYPED_WIDE,
	TS_TYPED_DEEP,
	TS_TYPED_HIGH,
	TS_TYPED_CUBE,
	TS_TYPED_SIDE__COUNT
};

/* What became of a word. */
enum ts_typed_mark {
	TS_TYPED_OPEN,   /* nothing, so far */
	TS_TYPED_USED,   /* something was made of it */
	TS_TYPED_PASSED, /* it asks or joins */
};

/* What a word is to an everyday question of care. */
enum ts_typed_care {
	TS_TYPED_NO_CARE,
	TS_TYPED_CARE_KEY,    /* by it the question is known */
	TS_TYPED_CARE_BESIDE, /* of the same thought, which tells nothing that happened */
};

struct ts_typed {
	const struct ts_catalogue *catalogue;
	struct ts_name_heads heads;
	struct ts_arena *arena;
	struct ts_sentence *out;
	const char *word[TS_TYPED_WORDS_MOST];
	unsigned char mark[TS_TYPED_WORDS_MOST];
	unsigned char care[TS_TYPED_WORDS_MOST]; /* enum ts_typed_care */
	size_t count, at;
	bool long_one;              /* more words than are read */
	size_t pending;             /* first of the counts and sexes before `at` */
	size_t strange;             /* first of the words before `at` of which nothing was made */
	bool living, found, within; /* `within`: brackets */
	const char *size;           /* "5 cm ", of the name that comes; NULL: not said */
	const char *last;           /* the name that was taken last */
	size_t ended;               /* the word behind it */
	bool last_living;
	size_t clause;        /* planned animals before this one are of an earlier thought */
	bool owns;            /* "my", "I have" was said: a tank is somebody\'s */
	bool asked;           /* "will they": what follows is no sign that is seen */
	size_t thought_flags; /* flags before this one are of an earlier thought */
	bool tap;             /* what is read now is the tap's */
	const char
		*about; /* the reading that was named last, with a figure or without; NULL: none */
	double side[TS_TYPED_SIDE__COUNT]; /* cm; 0: not said */
	double aim;         /* to which figure something is to be brought; 0: not said */
	bool wished;        /* it asks how something comes up or down */
	bool bought;        /* "I bought": who is named came lately */
	const char *set_to; /* what the heater is set to; NULL: not said */
	bool uncounted;     /* they keep dying, and how many did is not said */
	bool keeper;        /* it asks what those ask that keep them */
	bool buys;          /* "I want": who is named does not live there yet */
	size_t signed_at;   /* the word behind the last sign */
	const char *sign, *how_many, *since, *after; /* NULL: not said */
	double deaths;                               /* negative: not said */
	double of_them;    /* "2 of my 6": of so many something is told; 0: not said */
	double last_count; /* of the name that was taken last; 0: not said */
};

/* A list of words as an array of a table. */
#define TS_TYPED_AMONG(word, list) ts_typed_among(word, list, sizeof list / sizeof *list)

bool ts_typed_is(const char *a, const char *b);
bool ts_typed_among(const char *word, const char *const *list, size_t count);

/* Digits with a point or comma within, at the start of a word; bytes. */
size_t ts_typed_figure_len(const char *at);
bool ts_typed_is_figure(const char *word);
/* "6", "6x". */
bool ts_typed_is_count(const char *word);
/* "ten": 10; 0: no number. A figure too. */
double ts_typed_number(const char *word);

/* Cuts a sentence into words; marks are words of their own. */
void ts_typed_cut(struct ts_typed *t, const char *sentence);

/* The words of a phrase stand from `at` on; how many, 0: not. */
size_t ts_typed_phrase(const struct ts_typed *t, size_t at, const char *words);
const char *ts_typed_joined(const struct ts_typed *t, size_t from, size_t to);

const char *ts_typed_number_text(const struct ts_typed *t, double number);

/* Whether a mark, "," or a bracket, stands there, or nothing does. */
bool ts_typed_ends(const struct ts_typed *t, size_t at);

/* The cut that stands there: how many words, and who is named behind it; 0: none. */
size_t ts_typed_cut_here(const struct ts_typed *t, enum ts_typed_then *ret);
/* Counts and sexes before a name; what stands behind one; sexes alone. */
bool ts_typed_before_name(const char *word);
bool ts_typed_behind_name(const char *word);
bool ts_typed_sex(const char *word);
/* "will", "if": what follows may come; "want", "add": it is to come. */
bool ts_typed_asks(const char *word);
bool ts_typed_buys(const char *word);
/* A sign by itself, and a common word as well. */
bool ts_typed_common(const char *word);

/* A figure with its unit or key at `t->at`, taken as flags; how many words, 0: none. */
size_t ts_typed_measure(struct ts_typed *t);
/* Whether a word is a unit of a figure, with which it may stand glued. */
bool ts_typed_unit(const char *word);
/* The flag of a reading that the words from `at` on name, how many they are; NULL: none. */
const char *ts_typed_key(const struct ts_typed *t, size_t at, size_t *ret_used);

/* "in the tank", "from the tap", at `t->at`: whose the readings are; how many words, 0: neither. */
bool ts_typed_of_water(const char *flag);
size_t ts_typed_whose(struct ts_typed *t);
/* The sides that were said become a size. */
void ts_typed_settle_sides(struct ts_typed *t);
/* One water where the two do not differ, else what is poured in as one flag. */
void ts_typed_settle_waters(struct ts_typed *t);

/* What happened, or the state of the tank, at `t->at`; how many words, 0: nothing. */
size_t ts_typed_happened(struct ts_typed *t);

/* A pattern of happened_rows.c fits at `t->at`; how many words, 0: it does not. */
size_t ts_typed_fits(struct ts_typed *t, const char *pattern);
/* What is asked, at `t->at`; how many words, 0: nothing. */
size_t ts_typed_asked(struct ts_typed *t);
/* Finds the everyday questions of care, before anything else is read. */
void ts_typed_care(struct ts_typed *t);

/* Adds a flag; false: another value of it stands already, and the words are not used. */
bool ts_typed_flag(struct ts_typed *t, const char *flag, const char *value, const char *taken);

/* Those named in this thought, planned so far, live there. */
void ts_typed_they_live(struct ts_typed *t);
/* So many died, or as many as were just named; `number` negative: not said. */
void ts_typed_died(struct ts_typed *t, double number);
/* What was seen began so long ago; false: nothing was, or a name stands between. */
bool ts_typed_since(struct ts_typed *t, const char *span);
/* "since yesterday", before or behind what it is about; false: it is no time of signs. */
bool ts_typed_onset(struct ts_typed *t, const char *words);
/* "oscar, 2 of them"; false: none was named, or with its number. */
bool ts_typed_counted(struct ts_typed *t, const char *number);
/* "for 2 years", of the animal that was named last; false: none was. */
bool ts_typed_lived(struct ts_typed *t, const char *span);

/* Names of the catalogue (typed/names.c). */
enum ts_name_how ts_typed_how(const struct ts_typed *t, const char *name);
size_t ts_typed_name_here(struct ts_typed *t, bool guess);
bool ts_typed_counts_what_follows(struct ts_typed *t);
bool ts_typed_one_genus(const struct ts_typed *t, const char *first, const char *second);

/* A word of a known danger stands among them. */
bool ts_typed_endangers(const struct ts_typed *t, size_t from, size_t to);
/* Tells what is left of dangers and figures. */
void ts_typed_alarms(struct ts_typed *t);

#endif
