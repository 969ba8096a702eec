/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Looking rows up and suggesting the nearest known spelling. The rows themselves: model/shapes.c.
 */
#include "model/shape.h"

#include <string.h>

const struct ts_field *ts_shape_field(const struct ts_shape *shape, const char *key)
{
	for (size_t i = 0; i < shape->count; i++) {
		if (strcmp(shape->fields[i].key, key) == 0)
			return &shape->fields[i];
	}
	return NULL;
}

static char lower(char c)
{
	return (char)(c >= 'A' && c <= 'Z' ? c + 32 : c);
}

static bool same_caseless(const char *a, const char *b)
{
	while (*a && lower(*a) == lower(*b)) {
		a++;
		b++;
	}
	return lower(*a) == lower(*b);
}

const struct ts_field *ts_shape_field_caseless(const struct ts_shape *shape, const char *key)
{
	for (size_t i = 0; i < shape->count; i++) {
		if (same_caseless(shape->fields[i].key, key))
			return &shape->fields[i];
	}
	return NULL;
}

#define LONGEST 32

/* Edits between two short words: insert, drop, change. Longer words are never near. */
static size_t edits(const char *a, const char *b)
{
	size_t row[LONGEST + 1], a_len = strlen(a), b_len = strlen(b);

	if (a_len > LONGEST || b_len > LONGEST)
		return LONGEST;
	for (size_t j = 0; j <= b_len; j++)
		row[j] = j;
	for (size_t i = 1; i <= a_len; i++) {
		size_t diagonal = row[0];

		row[0] = i;
		for (size_t j = 1; j <= b_len; j++) {
			size_t change = diagonal + (lower(a[i - 1]) != lower(b[j - 1]));
			size_t best = row[j] < row[j - 1] ? row[j] + 1 : row[j - 1] + 1;

			diagonal = row[j];
			row[j] = change < best ? change : best;
		}
	}
	return row[b_len];
}

static void keep_nearer(const char *text, const char *word, const char **best, size_t *least)
{
	size_t distance = edits(text, word);

	if (distance < *least) {
		*least = distance;
		*best = word;
	}
}

const char *ts_shape_nearest_key(const struct ts_shape *shape, const char *text)
{
	const char *best = NULL;
	size_t least = strlen(text) / 3 + 2;

	for (size_t i = 0; i < shape->count; i++)
		keep_nearer(text, shape->fields[i].key, &best, &least);
	return best;
}

const char *ts_nearest_word(const char *const *words, const char *text)
{
	const char *best = NULL;
	size_t least = strlen(text) / 3 + 2;

	for (; *words; words++)
		keep_nearer(text, *words, &best, &least);
	return best;
}
