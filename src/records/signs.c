/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A sign is what is left of a phrase when every word of it has a row: the longest row first, so
 * that "one species" is not "one".
 */
#include "records/signs.h"

#include <string.h>

#include "model/shape.h"
#include "records/animals.h"

/* From so many days on what began then is said to have gone on for weeks. */
#define WEEKS_DAYS 14

static bool ends_word(char c)
{
	return !c || strchr(" ,;:.\t", c);
}

static char plain(char c)
{
	return (char)(c == '-' || c == '_' ? ' ' : c >= 'A' && c <= 'Z' ? c + 32 : c);
}

size_t ts_phrase_length(const char *at, const char *phrase)
{
	size_t len = 0;

	while (phrase[len] && plain(at[len]) == phrase[len])
		len++;
	return !phrase[len] && ends_word(at[len]) ? len : 0;
}

/* The longest phrase that stands there; NULL: none. */
static const struct ts_phrase *phrase_at(const char *at, size_t *ret_len)
{
	const struct ts_phrase *best = NULL;

	*ret_len = 0;
	for (const struct ts_phrase *p = ts_phrases; p->text; p++) {
		size_t len = ts_phrase_length(at, p->text);

		if (len > *ret_len) {
			*ret_len = len;
			best = p;
		}
	}
	return best;
}

/* "3 days": the figure and its unit; 0: it is none. */
static size_t span_at(const char *at, int *ret_onset)
{
	char text[32];
	size_t digits = strspn(at, "0123456789"), len = digits + strspn(at + digits, " ");
	size_t end = len + strcspn(at + len, " ,;:.\t");
	double days;

	if (!digits || end >= sizeof text)
		return 0;
	memcpy(text, at, end);
	text[end] = '\0';
	days = ts_days_of(text);
	if (days < 0)
		return 0;
	*ret_onset = days < 1 ? TS_ONSET_NOW : days < WEEKS_DAYS ? TS_ONSET_DAYS : TS_ONSET_WEEKS;
	return end;
}

static const char *after_breaks(const char *at)
{
	return at + strspn(at, " ,;:.\t");
}

/* Every word is a phrase: takes what they tell. False: one is not, and `*ret_at` points to it. */
static bool take_words(const char *words, struct ts_sign *io, bool *ret_named, const char **ret_at)
{
	struct ts_sign sign = *io;
	bool named = false;

	for (const char *at = after_breaks(words); *at; at = after_breaks(at)) {
		size_t len = span_at(at, &sign.onset);
		const struct ts_phrase *p = len ? NULL : phrase_at(at, &len);

		if (ret_at)
			*ret_at = at;
		if (!len)
			return false;
		at += len;
		if (!p)
			continue;
		named |= p->part == TS_PHRASE_SIGN;
		if (p->part == TS_PHRASE_SIGN)
			sign.sign = p->word;
		else if (p->part == TS_PHRASE_BREADTH)
			sign.breadth = p->word;
		else if (p->part == TS_PHRASE_ONSET)
			sign.onset = p->word;
		else if (p->part == TS_PHRASE_AFTER)
			sign.after = p->word;
	}
	if (ret_at)
		*ret_at = NULL;
	*io = sign;
	*ret_named = named;
	return true;
}

bool ts_sign_words(const char *words, struct ts_sign *ret, const char **ret_at)
{
	struct ts_sign sign = {0};
	bool named;

	if (!take_words(words, &sign, &named, ret_at) || !named)
		return false;
	*ret = sign;
	return true;
}

/* What turns the meaning of the word behind it. */
static bool denies(const char *at)
{
	static const char *const words[] = {"no", "not", "none", "without", "never", "nothing"};

	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		if (ts_phrase_length(at, words[i]))
			return true;
	}
	return false;
}

bool ts_sign_within(const char *words, struct ts_sign *ret, bool *ret_named)
{
	*ret = (struct ts_sign){.sign = TS_SIGN_OTHER};
	*ret_named = false;
	for (const char *at = after_breaks(words); *at; at = after_breaks(at)) {
		size_t len = span_at(at, &ret->onset);
		const struct ts_phrase *p = len ? NULL : phrase_at(at, &len);

		if (!len && denies(at))
			return false;
		at += len ? len : strcspn(at, " ,;:.\t");
		if (!p)
			continue;
		/* What is seen first is what it is about. */
		if (p->part == TS_PHRASE_SIGN && !*ret_named)
			ret->sign = p->word;
		*ret_named |= p->part == TS_PHRASE_SIGN;
		if (p->part == TS_PHRASE_BREADTH)
			ret->breadth = p->word;
		else if (p->part == TS_PHRASE_ONSET)
			ret->onset = p->word;
		else if (p->part == TS_PHRASE_AFTER)
			ret->after = p->word;
	}
	return true;
}

bool ts_sign_more(const char *words, struct ts_sign *io)
{
	struct ts_sign sign = *io;
	bool named;

	if (!take_words(words, &sign, &named, NULL) || named)
		return false;
	*io = sign;
	return true;
}

size_t ts_sign_span(const char *words, bool *ret_after)
{
	bool named = false, after = false;
	const char *at = words, *end = words;
	int onset;

	while (*at) {
		size_t len = span_at(at, &onset);
		const struct ts_phrase *p = len ? NULL : phrase_at(at, &len);

		if (!len || (p && p->part == TS_PHRASE_SIGN && named))
			break;
		named |= p && p->part == TS_PHRASE_SIGN;
		after |= p && p->part == TS_PHRASE_AFTER;
		at += len;
		/* Words that tell nothing stand within, and not at the end. */
		if (!p || p->part != TS_PHRASE_NOTHING)
			end = at;
		at = after_breaks(at);
		/* Behind what was done begins another thought. */
		if (after && !named)
			break;
	}
	*ret_after = after && !named;
	return named || after ? (size_t)(end - words) : 0;
}

size_t ts_is_sign(const char *words)
{
	size_t len;
	const struct ts_phrase *p = phrase_at(after_breaks(words), &len);

	return p && p->part == TS_PHRASE_SIGN ? len : 0;
}

/* The last word of one part, where all of the words are known and none of another part. */
static int part_of(const char *words, int part)
{
	int word = -1, onset = -1;

	for (const char *at = after_breaks(words); *at; at = after_breaks(at)) {
		size_t len = span_at(at, &onset);
		const struct ts_phrase *p = len ? NULL : phrase_at(at, &len);

		if (!len || (p && (int)p->part != part && p->part != TS_PHRASE_NOTHING))
			return -1;
		at += len;
		if (p && (int)p->part == part)
			word = p->word;
	}
	return part == TS_PHRASE_ONSET && onset >= 0 ? onset : word;
}

int ts_onset_words(const char *words)
{
	return part_of(words, TS_PHRASE_ONSET);
}

int ts_breadth_words(const char *words)
{
	return part_of(words, TS_PHRASE_BREADTH);
}
