/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One bit for the first letters of a word. Two heads may share a bit: then a name is looked for in
 * vain, and nothing else happens.
 */
#include "catalogue/name_heads.h"

#include <string.h>

#include "catalogue/name_rows.h"
#include "catalogue/name_words.h"

#define HEAD_LETTERS 4

/* A shorter word is kept whole, and told from the beginning of a longer one. */
static unsigned bit_of(const char *word, size_t len)
{
	unsigned hash = 2166136261u; /* FNV-1a */

	for (size_t i = 0; i < len; i++)
		hash = (hash ^ (unsigned char)word[i]) * 16777619u;
	return (hash ^ hash >> 16) % TS_NAME_HEADS_BITS;
}

static void keep(struct ts_name_heads *heads, const char *name, size_t len, bool umlauts)
{
	struct ts_name_words words;

	ts_name_split(name, len, umlauts, &words);
	for (size_t i = 0; i < words.count; i++) {
		unsigned bit = bit_of(
			words.at[i], words.len[i] < HEAD_LETTERS ? words.len[i] : HEAD_LETTERS);

		heads->bits[bit / 8] |= (unsigned char)(1u << bit % 8);
	}
}

static void keep_both(struct ts_name_heads *heads, const char *name, size_t len)
{
	keep(heads, name, len, false);
	if (ts_name_has_umlauts(name, len))
		keep(heads, name, len, true);
}

void ts_name_heads_make(const struct ts_catalogue *catalogue, struct ts_name_heads *ret)
{
	const struct ts_name_row *row;
	const char *name;

	memset(ret, 0, sizeof *ret);
	for (size_t i = 0; i < catalogue->count; i++) {
		for (size_t n = 0; (name = ts_species_name(catalogue->items[i], n)); n++)
			keep_both(ret, name, strlen(name));
	}
	for (size_t i = 0; (row = ts_name_row_at(i)); i++) {
		for (name = row->names; *name; name += *name == '|') {
			size_t len = strcspn(name, "|");

			keep_both(ret, name, len);
			name += len;
		}
	}
}

static bool has(const struct ts_name_heads *heads, const char *word, size_t len)
{
	unsigned bit = bit_of(word, len);

	return heads->bits[bit / 8] >> bit % 8 & 1;
}

/* A plural of three letters begins with a whole word: "rams". */
static bool begins(const struct ts_name_heads *heads, const char *word, size_t len)
{
	for (size_t letters = len < HEAD_LETTERS ? len : HEAD_LETTERS; letters > 1; letters--) {
		if (has(heads, word, letters))
			return true;
	}
	return len == 1 && has(heads, word, 1);
}

bool ts_name_heads_may_name(const struct ts_name_heads *heads, const char *text)
{
	struct ts_name_words words;
	bool first, last;

	ts_name_split(text, strlen(text), false, &words);
	if (!words.count)
		return false;
	first = begins(heads, words.at[0], words.len[0]);
	last = begins(heads, words.at[words.count - 1], words.len[words.count - 1]);
	return words.count > 2 ? first && last : first || last;
}
