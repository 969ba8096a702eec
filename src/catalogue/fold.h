/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Names as people type them are compared folded: without case, accents and, where asked for,
 * hyphens. Used by the look-up of names (names.c), by search (find.c) and by lint.
 */
#ifndef TS_CATALOGUE_FOLD_H
#define TS_CATALOGUE_FOLD_H

#include <stddef.h>

enum ts_fold {
	TS_FOLD_CASE,    /* "Espléndida" -> "espléndida" */
	TS_FOLD_ACCENTS, /* -> "esplendida" */
	TS_FOLD_NAME     /* and "Endler's live-bearer" -> "endlers live bearer" */
};

/* Room for any folded name; longer texts are cut, since no name is that long. */
#define TS_FOLD_ROOM 256

/*
 * Folds `len` bytes of UTF-8 into `out` (a NUL behind it) and returns the bytes written, less than
 * `room`. A byte that is no UTF-8 becomes '?'. Allocates nothing.
 */
size_t ts_fold(enum ts_fold how, const char *text, size_t len, char *out, size_t room);

#endif
