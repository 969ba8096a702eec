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
};

/*
 * The row of a key, compared exactly, or without regard to ASCII case; NULL: none. `next`: the row
 * to look at first, 0 or the one behind the last find (files are mostly written in this order).
 */
const struct ts_field *ts_shape_field(const struct ts_shape *shape, const char *key);
const struct ts_field *ts_shape_field_from(
	const struct ts_shape *shape, const char *key, size_t next);
const struct ts_field *ts_shape_field_caseless(const struct ts_shape *shape, const char *key);

/* The key or word nearest to `text` (at most a third of its letters off), NULL: none is near. */
const char *ts_shape_nearest_key(const struct ts_shape *shape, const char *text);
const char *ts_nearest_word(const char *const *words, const char *text);

extern const struct ts_shape ts_shape_water, ts_shape_reading, ts_shape_species;
extern const struct ts_shape ts_shape_tank, ts_shape_stock_line, ts_shape_sign, ts_shape_plan;

/* Is `text` this word of a list? A blank is as good as a hyphen. */
bool ts_same_word(const char *word, const char *text);

/* Words that people write for one of a list, in files; ends with `words` NULL. */
struct ts_also {
	const char *const *words; /* the list */
	const char *also, *word;
};
extern const struct ts_also ts_words_also[];

/*
 * The one key of a shape that a bare word in a list fills ("signs: [gasping]"): a word, and nothing
 * else is required; NULL: there is none.
 */
const struct ts_field *ts_shape_alone(const struct ts_shape *shape);

/* Word lists that other rooms print. */
extern const char *const ts_words_home_water[], *const ts_words_cautions[], *const ts_words_sexes[];
extern const char *const ts_words_home_water_said[], *const ts_words_swims[];
extern const char *const ts_words_kind[];
extern const char *const ts_words_feeding[];
extern const char *const ts_words_sold[];

#endif
