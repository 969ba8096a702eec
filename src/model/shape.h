/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Field tables. A shape is a named array of rows, each telling key, kind, unit, place in the
 * struct, bounds, words and one sentence of help. The loader, the flags, the schemas and the docs
 * walk the same rows: a new field is one row. The rows stand in model/shapes.c.
 */
#ifndef TS_MODEL_SHAPE_H
#define TS_MODEL_SHAPE_H

#include <tapshoal/catalogue.h>
#include <tapshoal/plan.h>

#include "units/units.h"

enum ts_kind {
	TS_TEXT,    /* const char * */
	TS_TEXTS,   /* struct ts_texts: a list of texts */
	TS_WORD,    /* int: index into `words` */
	TS_WORDS,   /* unsigned: bit set over `words` */
	TS_YESNO,   /* bool */
	TS_NUMBER,  /* double, canonical unit */
	TS_RANGE,   /* struct ts_range */
	TS_MEASURE, /* struct ts_measure */
	TS_CHOICE,  /* struct ts_choice: one of `words`, or a figure */
	TS_EVERY,   /* struct ts_every: "30 % every 7 days" */
	TS_SUB,     /* a struct of shape `sub` */
	TS_FILE, /* the same, or the name of a file of that shape (const char * at count_offset) */
	TS_LIST  /* pointer + size_t count: list of structs of shape `sub` */
};

enum ts_need { TS_OPTIONAL, TS_REQUIRED };

struct ts_shape;

/* Rows of one shape at the most: the reader keeps one mark a row. */
#define TS_FIELDS_MOST 512

struct ts_field {
	const char *key;
	enum ts_kind kind;
	enum ts_need need;
	enum ts_quantity quantity;
	size_t offset, count_offset;
	const char *const *words; /* NULL-terminated */
	const struct ts_shape *sub;
	const char *says; /* one sentence */
};

struct ts_shape {
	const char *name;
	const struct ts_field *fields;
	size_t count, size;
	bool lenient; /* of the keeper's own files: keys are taken as people write them */
};

/*
 * The row of a key, compared exactly, or without regard to ASCII case; NULL: none. `next`: the row
 * to look at first, 0 or the one behind the last find (files are mostly written in this order).
 */
const struct ts_field *ts_shape_field(const struct ts_shape *shape, const char *key);
const struct ts_field *ts_shape_field_from(
	const struct ts_shape *shape, const char *key, size_t next);
const struct ts_field *ts_shape_field_caseless(const struct ts_shape *shape, const char *key);

/*
 * The row of a key as people write it, of a lenient shape: upper or lower case, a blank or hyphen
 * for '_', a plural, or a key of ts_keys_also; NULL: none, or the shape is strict.
 */
const struct ts_field *ts_shape_field_meant(const struct ts_shape *shape, const char *key);

/* The key or word nearest to `text` (at most a third of its letters off), NULL: none is near. */
const char *ts_shape_nearest_key(const struct ts_shape *shape, const char *text);
const char *ts_nearest_word(const char *const *words, const char *text);

extern const struct ts_shape ts_shape_water, ts_shape_reading, ts_shape_species;
extern const struct ts_shape ts_shape_tank, ts_shape_event, ts_shape_stock_line, ts_shape_sign,
	ts_shape_plan;

/*
 * Is `text` this word of a list? Upper or lower case, a blank, hyphen or '_', singular or plural
 * are the same.
 */
bool ts_same_word(const char *word, const char *text);

/* Words that people write for one of a list, in files; ends with `words` NULL. */
struct ts_also {
	const char *const *words; /* the list */
	const char *also, *word;
};
extern const struct ts_also ts_words_also[];

/* The word of a list that `text` is, or is written for; -1: none. */
int ts_word_meant(const char *const *words, const char *text);

/* Keys that people write for one of a shape; ends with `shape` NULL. */
struct ts_also_key {
	const struct ts_shape *shape;
	const char *also, *key;
};
extern const struct ts_also_key ts_keys_also[];

/*
 * Where a key goes that a block has not: into the block, or the one entry of the list, that stands
 * under `key` in it. Looked at in this order; ends with `shape` NULL.
 */
struct ts_home {
	const struct ts_shape *shape;
	const char *key;
};
extern const struct ts_home ts_homes[];

/* A word behind which a value of another key may stand ("off 12 h"); ends with `words` NULL. */
struct ts_tail {
	const char *const *words;
	int word;
	const struct ts_shape *shape;
	const char *key;
};
extern const struct ts_tail ts_tails[];

/* The words of a sign, as a phrase: what is seen, how many show it, since when. */
struct ts_phrase {
	const char *text;
	enum {
		TS_PHRASE_SIGN,
		TS_PHRASE_BREADTH,
		TS_PHRASE_ONSET,
		TS_PHRASE_AFTER,
		TS_PHRASE_NOTHING
	} part;
	int word;
};
extern const struct ts_phrase ts_phrases[]; /* ends with `text` NULL */

/*
 * What happened, as a phrase. `needs`: without an amount it says nothing ("changed" alone).
 */
struct ts_happened_phrase {
	const char *text;
	int what; /* enum ts_happened */
	bool needs;
};
extern const struct ts_happened_phrase ts_happened_phrases[]; /* ends with `text` NULL */
/* What was poured in at a change or a topping up; `what`: enum ts_top_up. */
extern const struct ts_happened_phrase ts_poured_phrases[]; /* ends with `text` NULL */

/*
 * The one key of a shape that a bare word in a list fills ("signs: [gasping]"): a word, and nothing
 * else is required; NULL: there is none.
 */
const struct ts_field *ts_shape_alone(const struct ts_shape *shape);

/* Word lists that are no public enum's; those stand in the public headers. */
extern const char *const ts_words_home_water_said[], *const ts_words_swims[],
							     *const ts_words_sexes[];
extern const char *const ts_words_feeding[], *const ts_words_tank_cover[];
extern const char *const ts_words_yesno[], *const ts_words_nothing[];

#endif
