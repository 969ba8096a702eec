/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Everyday questions of care (words/asked.c) found in a sentence, whatever the order of their
 * words, and with a slip in one. A thought is what stands between marks. In a thought that asks
 * such a thing nothing happened: "can I switch the filter off at night" tells of no filter that
 * stands. Where it also tells of a deed or of a sign, the question is noted and all is read as
 * ever.
 */
#include <string.h>
#include <strings.h>

#include "typed/reader.h"
#include "words/asked.h"

/* Letters from which a slip is borne: one letter wrong, missing or too many; two that changed. */
#define SLIP_FROM 6
#define SWAP_FROM 5

static bool swapped(const char *word, const char *key, size_t len)
{
	size_t at = 0;

	while (at < len && word[at] == key[at])
		at++;
	return at + 1 < len && word[at] == key[at + 1] && word[at + 1] == key[at] &&
	       strncasecmp(word + at + 2, key + at + 2, len - at - 2) == 0;
}

static bool slipped(const char *word, const char *key, size_t key_len)
{
	size_t len = strlen(word), at = 0;

	if (key_len < SWAP_FROM || strncasecmp(word, key, 1) != 0)
		return false;
	if (len == key_len && swapped(word, key, len))
		return true;
	if (key_len < SLIP_FROM || len + 1 < key_len || len > key_len + 1)
		return false;
	while (at < len && at < key_len && strncasecmp(word + at, key + at, 1) == 0)
		at++;
	if (len == key_len)
		return strncasecmp(word + at + 1, key + at + 1, len - at) == 0;
	if (len < key_len)
		return strncasecmp(word + at, key + at + 1, key_len - at - 1) == 0;
	return strncasecmp(word + at + 1, key + at, key_len - at) == 0;
}

/* One word of a key, "filter" or "almond*". */
static bool is_word(const char *word, const char *key, size_t len)
{
	if (len && key[len - 1] == '*')
		return strncasecmp(word, key, len - 1) == 0;
	return (strlen(word) == len && strncasecmp(word, key, len) == 0) || slipped(word, key, len);
}

/* "just_in_case" from `at` on; how many words, 0: not. */
static size_t key_at(const struct ts_typed *t, size_t at, size_t to, const char *key, size_t len)
{
	size_t used = 0;

	for (size_t from = 0; from <= len;) {
		size_t end = from;

		while (end < len && key[end] != '_')
			end++;
		if (at + used >= to || !is_word(t->word[at + used], key + from, end - from))
			return 0;
		used++;
		from = end + 1;
	}
	return used;
}

/* One key of a group stands in the thought; its words are marked in `key`, where it is given. */
static bool group_stands(const struct ts_typed *t, size_t from, size_t to, const char *group,
	size_t len, unsigned char *key)
{
	bool stands = false;

	for (size_t at = from; at < to; at++) {
		for (size_t start = 0; start < len;) {
			size_t end = start, used;

			while (end < len && group[end] != '|')
				end++;
			used = key_at(t, at, to, group + start, end - start);
			if (used && key)
				memset(key + at, TS_TYPED_CARE_KEY, used);
			stands |= used > 0;
			start = end + 1;
		}
	}
	return stands;
}

/* One way to ask it: every group of it stands there. */
static bool way_fits(const struct ts_typed *t, size_t from, size_t to, const char *way, size_t len,
	unsigned char *key)
{
	for (size_t at = 0; at < len;) {
		size_t end = at;
		char sign = way[at];
		size_t signs = sign == '-' || sign == '?';
		bool stands;

		while (end < len && way[end] != ' ')
			end++;
		stands = group_stands(
			t, from, to, way + at + signs, end - at - signs, sign == '-' ? NULL : key);
		if (stands == (sign == '-') && sign != '?')
			return false;
		at = end + 1;
	}
	return true;
}

static const char *const asking[] = {"how", "what", "what's", "which", "why", "where", "when",
	"who", "should", "shud", "shall", "can", "could", "may", "must", "would", "need", "needs",
	"want", "like", "ok", "okay", "help", "better", "best", "right", "safe", "any", "idea",
	"think", "recommend", "advice", "allowed", "really"};

/* They ask where a thought begins, and behind what joins. */
static const char *const beginning[] = {"is", "are", "do", "does", "will", "did"};
static const char *const joining[] = {"so", "and", "or", "but", "then", "also", "now"};

static bool asks(const struct ts_typed *t, size_t from, size_t to)
{
	for (size_t i = from; i < to; i++) {
		bool begins = i == from || ts_typed_ends(t, i - 1) ||
			      TS_TYPED_AMONG(t->word[i - 1], joining);

		if (TS_TYPED_AMONG(t->word[i], asking) ||
			(begins && TS_TYPED_AMONG(t->word[i], beginning)))
			return true;
	}
	return false;
}

/* What tells of a deed or of a sign; `key`: words that belong to the question. */
static bool tells(const struct ts_typed *t, size_t from, size_t to, const unsigned char *key)
{
	static const char *const telling[] = {"gasping", "gasp", "gasps", "dead", "died", "dies",
		"dying", "sick", "ill", "fungus", "wounds", "bleeding", "poisoned", "washed",
		"cleaned", "rinsed", "used", "poured", "added", "fell", "dropped", "spilled",
		"spilt", "accidentally", "forgot", "forgotten", "changed", "replaced", "broke",
		"broken", "stopped", "failed", "ammonia", "nitrite", "medicated", "moved",
		"removed", "emptied", "switched", "turned", "unplugged", "died"};

	for (size_t i = from; i < to; i++) {
		if (!key[i] && TS_TYPED_AMONG(t->word[i], telling))
			return true;
	}
	return false;
}

/* A thought and what stands before and behind it; the first row that fits is taken. */
static bool take_thought(struct ts_typed *t, size_t from, size_t to, bool asked)
{
	unsigned char key[TS_TYPED_WORDS_MOST];

	for (size_t i = 0; i < ts_care_row_count; i++) {
		const struct ts_care_row *row = &ts_care_rows[i];

		for (const char *way = row->words; *way;) {
			size_t len = strcspn(way, ";"), signs = *way == '!' || *way == '+';

			memset(key, 0, sizeof key);
			if ((asked || *way == '!') &&
				way_fits(t, from, to, way + signs, len - signs, key)) {
				bool happened = *way == '+' || tells(t, from, to, key);

				(void)ts_typed_flag(t, "--asks", row->id, NULL);
				for (size_t k = from; k < to && !happened; k++)
					t->care[k] = key[k] ? key[k] : TS_TYPED_CARE_BESIDE;
				return true;
			}
			way += len + (way[len] == ';');
		}
	}
	return false;
}

/* "my nephew turns 7", "my daughter is 9 years old": no figure of a tank. */
static void pass_ages(struct ts_typed *t)
{
	static const char *const people[] = {"nephew", "niece", "son", "daughter", "kid", "child",
		"boy", "girl", "grandson", "granddaughter", "grandchild", "he", "she", "brother",
		"sister"};
	static const char *const turns[] = {"turns", "turning", "is", "was", "aged", "of", "who"};
	static const char *const years[] = {"year", "years", "yr", "yrs", "old"};

	for (size_t i = 1; i + 1 < t->count; i++) {
		size_t end = i + 2;
		bool person = TS_TYPED_AMONG(t->word[i - 1], people);

		if (!TS_TYPED_AMONG(t->word[i], turns) || !ts_typed_is_figure(t->word[i + 1]))
			continue;
		while (end < t->count && TS_TYPED_AMONG(t->word[end], years))
			end++;
		if (strncasecmp(t->word[i], "turn", 4) == 0 || (person && ts_typed_ends(t, end)) ||
			(person && end > i + 2))
			memset(t->mark + i, TS_TYPED_USED, end - i);
	}
}

void ts_typed_care(struct ts_typed *t)
{
	size_t taken = 0;

	pass_ages(t);
	for (size_t from = 0; from < t->count && taken < TS_CARE_MOST;) {
		size_t to = from, before = from, behind;

		while (to < t->count && !ts_typed_ends(t, to))
			to++;
		while (before > 0 && (before == from || !ts_typed_ends(t, before - 1)))
			before--;
		behind = to + 1;
		while (behind < t->count && !ts_typed_ends(t, behind))
			behind++;
		if (to > from)
			taken += take_thought(t, from, to,
				asks(t, before, behind < t->count ? behind : t->count));
		from = to + 1;
	}
}
