/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Taking memory from an arena. The public half (open, drop) stands in tapshoal/base.h; this one is
 * for the rooms of the library. Every function here may fail; the arena remembers it.
 */
#ifndef TS_BASE_ARENA_H
#define TS_BASE_ARENA_H

#include <tapshoal/base.h>

/* Zeroed memory of `size` bytes, aligned for any type. NULL on failure (arena->failed is set). */
void *ts_arena_take(struct ts_arena *arena, size_t size);

/* Zeroed memory for `count` items of `size`; an overflowing product is a failed allocation. */
void *ts_arena_array(struct ts_arena *arena, size_t count, size_t size);

/*
 * A copy of `len` bytes with a NUL behind it. NULL on failure. `text` may be NULL when len is 0.
 */
char *ts_arena_text(struct ts_arena *arena, const char *text, size_t len);

/* Copies the strings behind one another; the last argument is NULL. NULL on failure. */
char *ts_arena_join(struct ts_arena *arena, ...);

/*
 * Room for one more item in a growing array: returns the array, moved when it was full, with
 * `*room` updated; the old one stays in the arena (doubling bounds the waste). NULL on failure.
 */
void *ts_arena_grow(struct ts_arena *arena, void *items, size_t count, size_t *room, size_t size);

/*
 * Gives back what was taken since `*mark`, a copy of the arena as it was then; that an allocation
 * failed stays known.
 */
void ts_arena_back(struct ts_arena *arena, const struct ts_arena *mark);

/* The allocator to use when the caller gave `allocator` (NULL: malloc's family). */
struct ts_allocator ts_allocator_or_default(const struct ts_allocator *allocator);

/* Multiplies sizes; false on overflow, `*ret` untouched. */
bool ts_size_product(size_t a, size_t b, size_t *ret);
/* Adds sizes; false on overflow, `*ret` untouched. */
bool ts_size_sum(size_t a, size_t b, size_t *ret);

#endif
