/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How far two spellings lie apart: behind every "did you mean", of keys, flags and commands as of
 * species names. It compares bytes; accents are folded before (catalogue/fold.h).
 */
#ifndef TS_BASE_EDITS_H
#define TS_BASE_EDITS_H

#include <stddef.h>

/* Longer texts are never near. */
#define TS_EDITS_LONGEST 64

/*
 * Letters to insert, drop, change or swap with their neighbour, ASCII case apart, to come from `a`
 * to `b`. TS_EDITS_LONGEST when one of them is longer than that.
 */
size_t ts_edits(const char *a, size_t a_len, const char *b, size_t b_len);

#endif
