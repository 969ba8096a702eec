/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rows of results: what an answer tells to programs. One row a member of a result struct; JSON,
 * its schema and CSV are walked from the same rows, so that they cannot differ. Results differ
 * from the shapes of files (model/shape.h) in what matters here: they are only written, every key
 * is always there, null means not known, and decimals are fixed a row.
 */
#ifndef TS_REPORT_RESULT_H
#define TS_REPORT_RESULT_H

#include <tapshoal/catalogue.h>

#include "report/json.h"

enum ts_result_kind {
	TS_R_TEXT,   /* const char *; NULL is null */
	TS_R_TEXTS,  /* struct ts_texts */
	TS_R_WORD,   /* const char *, one of `words`; NULL is null */
	TS_R_BOOL,   /* bool */
	TS_R_NUMBER, /* double with `decimals`; not finite is null */
	TS_R_SHARE,  /* the same, of no unit: 0 to 1 */
	TS_R_COUNT,  /* size_t */
	TS_R_RANGE,  /* struct ts_range: [low, high], each may be null */
	TS_R_SUB,    /* a struct of result shape `sub` */
	TS_R_MAYBE,  /* pointer to one; NULL is null */
	TS_R_LIST    /* pointer to many + size_t count */
};

struct ts_result_shape;

struct ts_result_field {
	const char *key; /* snake_case, the unit at the end */
	enum ts_result_kind kind;
	int decimals;
	size_t offset, count_offset;
	const char *const *words; /* NULL-terminated */
	const struct ts_result_shape *sub;
	const char *says; /* one sentence, for the schema */
};

struct ts_result_shape {
	const char *name;
	const struct ts_result_field *fields;
	size_t count, size;
};

/* Rows; a member of another type than the row's does not compile. */
#define TS_R_AT(S, m, T) (offsetof(S, m) + 0 * sizeof(&((S *)0)->m == (T *)0))
#define TS_R_ROW_TEXT(S, key, m, says)                                                             \
	{                                                                                          \
		key, TS_R_TEXT, 0, TS_R_AT(S, m, const char *), 0, NULL, NULL, says                \
	}
#define TS_R_ROW_TEXTS(S, key, m, says)                                                            \
	{                                                                                          \
		key, TS_R_TEXTS, 0, TS_R_AT(S, m, struct ts_texts), 0, NULL, NULL, says            \
	}
#define TS_R_ROW_WORD(S, key, m, words, says)                                                      \
	{                                                                                          \
		key, TS_R_WORD, 0, TS_R_AT(S, m, const char *), 0, words, NULL, says               \
	}
#define TS_R_ROW_BOOL(S, key, m, says)                                                             \
	{                                                                                          \
		key, TS_R_BOOL, 0, TS_R_AT(S, m, bool), 0, NULL, NULL, says                        \
	}
#define TS_R_ROW_NUMBER(S, key, m, decimals, says)                                                 \
	{                                                                                          \
		key, TS_R_NUMBER, decimals, TS_R_AT(S, m, double), 0, NULL, NULL, says             \
	}
#define TS_R_ROW_SHARE(S, key, m, decimals, says)                                                  \
	{                                                                                          \
		key, TS_R_SHARE, decimals, TS_R_AT(S, m, double), 0, NULL, NULL, says              \
	}
#define TS_R_ROW_COUNT(S, key, m, says)                                                            \
	{                                                                                          \
		key, TS_R_COUNT, 0, TS_R_AT(S, m, size_t), 0, NULL, NULL, says                     \
	}
#define TS_R_ROW_RANGE(S, key, m, decimals, says)                                                  \
	{                                                                                          \
		key, TS_R_RANGE, decimals, TS_R_AT(S, m, struct ts_range), 0, NULL, NULL, says     \
	}
#define TS_R_ROW_SUB(S, key, m, T, sub, says)                                                      \
	{                                                                                          \
		key, TS_R_SUB, 0, TS_R_AT(S, m, T), 0, NULL, sub, says                             \
	}
#define TS_R_ROW_MAYBE(S, key, m, T, sub, says)                                                    \
	{                                                                                          \
		key, TS_R_MAYBE, 0, TS_R_AT(S, m, T *), 0, NULL, sub, says                         \
	}
#define TS_R_ROW_LIST(S, key, m, count, T, sub, says)                                              \
	{                                                                                          \
		key, TS_R_LIST, 0, TS_R_AT(S, m, T *), TS_R_AT(S, count, size_t), NULL, sub, says  \
	}
#define TS_R_SHAPE(name, fields, S)                                                                \
	{                                                                                          \
		name, fields, sizeof(fields) / sizeof *(fields), sizeof(S)                         \
	}

/*
 * Adds the whole answer of a command as one JSON document: "tapshoal" (version), "format" 1,
 * "command", "taken" where a name was not taken as it stands (NULL or empty: left out), then the
 * shape's members of `result`.
 */
void ts_result_json(struct ts_text *out, const char *version, const char *command,
	const struct ts_texts *taken, const struct ts_result_shape *shape, const void *result);

/* The same on one line, for answers of many such documents (JSON Lines). */
void ts_result_json_line(struct ts_text *out, const char *version, const char *command,
	const struct ts_result_shape *shape, const void *result);

/* Adds the JSON Schema (draft 2020-12) of that document. */
void ts_result_schema(
	struct ts_text *out, const char *command, const struct ts_result_shape *shape);

#endif
