/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Looking rows up and suggesting the nearest known spelling. The rows themselves: model/shapes.c.
 */
#include "model/shape.h"

#include <string.h>

#include "base/edits.h"

const struct ts_field *ts_shape_field_from(
	const struct ts_shape *shape, const char *key, size_t next)
{
	for (size_t i = 0; i < shape->count; i++, next++) {
		const struct ts_field *field;

		next = next < shape->count ? next : 0;
		field = &shape->fields[next];
		/* most differ in the first letter */
		if (field->key[0] == key[0] && strcmp(field->key, key) == 0)
			return field;
	}
	return NULL;
}

const struct ts_field *ts_shape_field(const struct ts_shape *shape, const char *key)
{
	return ts_shape_field_from(shape, key, 0);
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

static void keep_nearer(const char *text, const char *word, const char **best, size_t *least)
{
	size_t distance = ts_edits(text, strlen(text), word, strlen(word));

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

const struct ts_field *ts_shape_alone(const struct ts_shape *shape)
{
	const struct ts_field *alone = NULL;

	for (size_t i = 0; i < shape->count; i++) {
		if (shape->fields[i].need != TS_REQUIRED)
			continue;
		if (alone || shape->fields[i].kind != TS_WORD)
			return NULL;
		alone = &shape->fields[i];
	}
	return alone;
}

/* Letters that differ in nothing that matters. */
static char plain(char c)
{
	return (char)(c == ' ' || c == '_' ? '-' : lower(c));
}

bool ts_same_word(const char *word, const char *text)
{
	while (*word && plain(*word) == plain(*text)) {
		word++;
		text++;
	}
	if (!*word && lower(*text) == 's')
		text++;
	else if (!*text && strcmp(word, "s") == 0)
		word++;
	return !*word && !*text;
}

const struct ts_field *ts_shape_field_meant(const struct ts_shape *shape, const char *key)
{
	for (size_t i = 0; shape->lenient && i < shape->count; i++) {
		if (ts_same_word(shape->fields[i].key, key))
			return &shape->fields[i];
	}
	for (const struct ts_also_key *a = ts_keys_also; shape->lenient && a->shape; a++) {
		if (a->shape == shape && ts_same_word(a->also, key))
			return ts_shape_field(shape, a->key);
	}
	return NULL;
}

int ts_word_meant(const char *const *words, const char *text)
{
	for (const struct ts_also *a = ts_words_also; a->words; a++) {
		if (a->words == words && ts_same_word(a->also, text)) {
			text = a->word;
			break;
		}
	}
	for (int i = 0; words[i]; i++) {
		if (ts_same_word(words[i], text))
			return i;
	}
	return -1;
}
