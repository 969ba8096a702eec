/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One value along the row of its key, wherever it was written: in a YAML file (load.c), in a cell
 * of a table (table.c), behind key= (note.c). What is wrong is said in the same words everywhere.
 */
#ifndef TS_RECORDS_VALUE_H
#define TS_RECORDS_VALUE_H

#include "model/codes.h"
#include "model/shape.h"
#include "units/units.h"

/* What is to be said of a value; `what` NULL = nothing. All texts are the arena's or constant. */
struct ts_value_says {
	enum ts_code_id code;
	size_t at;                 /* byte of the text at which it is wrong */
	const char *what, *remedy; /* `remedy` NULL: the code's own */
	struct ts_scan scan;       /* of a quantity; zeroed: it is none */
};

/*
 * Reads `text` (NUL-terminated, `len` bytes) into the member of `object` that `field` names: a
 * text, word, yes or no, choice, quantity, or so much every so many days; other kinds are no single
 * value. False, and the member as it was, when it cannot be read or memory failed (arena->failed);
 * true with `ret->what` is a note: a unit was assumed.
 */
bool ts_value_read(const struct ts_field *field, const char *text, size_t len,
	struct ts_arena *arena, void *object, struct ts_value_says *ret);

/* The index of a word of the key; false with `*ret_says` where it is none. */
bool ts_value_word(const struct ts_field *field, const char *text, struct ts_arena *arena, int *ret,
	struct ts_value_says *ret_says);

/* Signs that one line names at the most. */
#define TS_SIGNS_MOST 16

/*
 * "all gasping since today, clamped fins": signs in one line, parted by commas, into `ret` (room
 * for TS_SIGNS_MOST). False with `*ret_says` where something of it is no sign. Where `ret_taken` is
 * given, other words may stand among them, and what names no sign is one that has no row; the last
 * such phrase is told.
 */
bool ts_value_signs(const char *text, struct ts_arena *arena, struct ts_sign *ret,
	size_t *ret_count, const char **ret_taken, struct ts_value_says *ret_says);

/*
 * Looks at a value that was read as one of a reading's two hardnesses; ts_value_pair_asks() then
 * says, once all are read, that one of them wants its unit. False: nothing is to be asked.
 */
void ts_value_pair_look(struct ts_scan_pair *pair, const struct ts_field *field, const char *text,
	const struct ts_value_says *says, struct ts_arena *arena);
bool ts_value_pair_asks(
	const struct ts_scan_pair *pair, struct ts_arena *arena, struct ts_value_says *ret);

/* Are these figures alone, without a unit of their own? */
bool ts_value_bare(const char *text);

#endif
