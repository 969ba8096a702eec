/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The bump arena: the one way in which the library holds memory. A catalogue, the load of one file
 * and the result of one command each have their own; freeing is dropping the arena. Failures are
 * sticky, so that callers check once at the end instead of after every line.
 */
#include "base/arena.h"

#include <stdarg.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* The tests of failed allocations make both 1: then each taking is an allocation, and may fail. */
#ifndef FIRST_BLOCK
#define FIRST_BLOCK ((size_t)4096)
#define LARGEST_BLOCK ((size_t)256 * 1024)
#endif
#define ALIGNMENT ((size_t)16)

struct ts_arena_block {
	struct ts_arena_block *older;
	size_t size;
};

#define HEADER ((sizeof(struct ts_arena_block) + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT)

static void *default_resize(void *state, void *old, size_t size)
{
	(void)state;
	if (size == 0) {
		free(old);
		return NULL;
	}
	return realloc(old, size);
}

struct ts_allocator ts_allocator_or_default(const struct ts_allocator *allocator)
{
	if (allocator && allocator->resize)
		return *allocator;
	return (struct ts_allocator){default_resize, NULL};
}

bool ts_size_product(size_t a, size_t b, size_t *ret)
{
	if (b != 0 && a > SIZE_MAX / b)
		return false;
	*ret = a * b;
	return true;
}

bool ts_size_sum(size_t a, size_t b, size_t *ret)
{
	if (a > SIZE_MAX - b)
		return false;
	*ret = a + b;
	return true;
}

void ts_arena_open(struct ts_arena *arena, const struct ts_allocator *allocator)
{
	*arena = (struct ts_arena){.allocator = ts_allocator_or_default(allocator)};
}

void ts_arena_drop(struct ts_arena *arena)
{
	struct ts_arena_block *block = arena->blocks;

	while (block) {
		struct ts_arena_block *older = block->older;

		arena->allocator.resize(arena->allocator.state, block, 0);
		block = older;
	}
	*arena = (struct ts_arena){.allocator = arena->allocator};
}

void ts_arena_back(struct ts_arena *arena, const struct ts_arena *mark)
{
	while (arena->blocks != mark->blocks) {
		struct ts_arena_block *older = arena->blocks->older;

		arena->allocator.resize(arena->allocator.state, arena->blocks, 0);
		arena->blocks = older;
	}
	arena->used = mark->used;
	arena->size = mark->size;
}

/* Blocks double up to a bound, so that a small answer stays small and a catalogue takes few. */
static bool new_block(struct ts_arena *arena, size_t size)
{
	size_t want = arena->size ? arena->size * 2 : FIRST_BLOCK;
	size_t whole;
	struct ts_arena_block *block;

	if (want > LARGEST_BLOCK)
		want = LARGEST_BLOCK;
	if (want < size)
		want = size;
	if (!ts_size_sum(want, HEADER, &whole))
		return false;
	block = arena->allocator.resize(arena->allocator.state, NULL, whole);
	if (!block)
		return false;
	block->older = arena->blocks;
	block->size = want;
	arena->blocks = block;
	arena->size = want;
	arena->used = 0;
	return true;
}

/* Bytes as they come, behind the last ones rounded up to `alignment`: texts need none. */
static char *take_raw(struct ts_arena *arena, size_t size, size_t alignment)
{
	size_t start = (arena->used + alignment - 1) / alignment * alignment;

	if (!arena->allocator.resize)
		arena->allocator = ts_allocator_or_default(NULL);
	if (arena->failed)
		return NULL;
	if (start > arena->size || size > arena->size - start) {
		if (!new_block(arena, size)) {
			arena->failed = true;
			return NULL;
		}
		start = 0;
	}
	arena->used = start + size;
	return (char *)arena->blocks + HEADER + start;
}

void *ts_arena_take(struct ts_arena *arena, size_t size)
{
	void *at = take_raw(arena, size ? size : 1, ALIGNMENT);

	return at ? memset(at, 0, size) : NULL;
}

void *ts_arena_array(struct ts_arena *arena, size_t count, size_t size)
{
	size_t whole;

	if (!ts_size_product(count, size, &whole)) {
		arena->failed = true;
		return NULL;
	}
	return ts_arena_take(arena, whole);
}

char *ts_arena_text(struct ts_arena *arena, const char *text, size_t len)
{
	size_t whole;
	char *copy;

	if (!ts_size_sum(len, 1, &whole)) {
		arena->failed = true;
		return NULL;
	}
	copy = take_raw(arena, whole, 1);
	if (!copy)
		return NULL;
	if (len)
		memcpy(copy, text, len);
	copy[len] = '\0';
	return copy;
}

char *ts_arena_join(struct ts_arena *arena, ...)
{
	size_t whole = 1;
	va_list args;
	char *text, *at;
	const char *part;

	va_start(args, arena);
	while ((part = va_arg(args, const char *)))
		whole += strlen(part);
	va_end(args);
	text = take_raw(arena, whole, 1);
	if (!text)
		return NULL;
	at = text;
	va_start(args, arena);
	while ((part = va_arg(args, const char *))) {
		size_t len = strlen(part);

		memcpy(at, part, len);
		at += len;
	}
	va_end(args);
	*at = '\0';
	return text;
}

void *ts_arena_grow(struct ts_arena *arena, void *items, size_t count, size_t *room, size_t size)
{
	size_t more = *room ? *room : 4;
	size_t want;
	void *moved;

	if (count < *room)
		return items;
	if (!ts_size_sum(*room, more, &want)) {
		arena->failed = true;
		return NULL;
	}
	moved = ts_arena_array(arena, want, size);
	if (!moved)
		return NULL;
	if (count)
		memcpy(moved, items, count * size);
	*room = want;
	return moved;
}
