/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The way back: a struct along the rows of its shape into the YAML that load.c reads. Used where
 * the program writes a file of its own (the kept tap) and for the example record of the docs.
 */
#ifndef TS_RECORDS_WRITE_H
#define TS_RECORDS_WRITE_H

#include "base/text.h"
#include "model/shape.h"

/*
 * Adds `object` as YAML in block style. Quantities are written in their canonical unit. What is not
 * given is left out, or, with `explain`, stands there as a comment; `explain` also puts above each
 * key what it means and which words it takes.
 */
void ts_records_write(
	struct ts_text *out, const struct ts_shape *shape, const void *object, bool explain);

/* Adds one text as a value of YAML, in double quotes where it would be read as something else. */
void ts_records_write_text(struct ts_text *out, const char *text);

/* The comment above a key that is given, its lines without their sign; NULL = none. */
typedef const char *ts_note(
	void *state, const struct ts_shape *shape, const struct ts_field *field);

/* The same without explanations, with what `note` says above each key that is given. */
void ts_records_write_noted(struct ts_text *out, const struct ts_shape *shape, const void *object,
	ts_note *note, void *state);

#endif
