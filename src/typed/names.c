/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which words of a sentence are the name of an animal: the longest that the catalogue knows.
 */
#include <string.h>

#include "catalogue/name_words.h"
#include "typed/reader.h"

#define NAME_WORDS_MOST 6

/*
 * Words of every sentence that a slip of one letter would turn into a name: "change" into Channa,
 * "corner" into corys, "other" into otos. Found by asking the catalogue for every word of our
 * pages.
 */
static const char *const ordinary[] = {"other", "others", "another", "change", "changes", "changed",
	"changing", "chance", "chances", "place", "places", "placed", "piece", "pieces", "corner",
	"corners", "share", "shares", "shared", "raise", "raises", "raised", "rise", "rises",
	"rate", "rates", "better", "beats", "later", "layer", "layers", "kills", "killer", "killed",
	"seven", "severe", "copper", "core", "cores", "copies", "shape", "shapes", "super", "crazy",
	"sharp", "shark's", "angle", "angles", "plain", "state", "states", "stats", "picture",
	"pictures", "cross", "frost", "gasps", "suffers", "suffer", "buffers", "buffer", "aware",
	"require", "requires", "required", "role", "roles", "pause", "claim", "claims", "class",
	"base", "bases", "index", "endless", "ideas", "idea", "caves", "cave", "disks", "scales",
	"scale", "check", "range", "ranges", "reading", "orange", "slime", "slide", "trade",
	"traded", "texts", "text", "codes", "code", "slack", "chomp", "packs", "pack", "wince",
	"widen", "tighten", "gamble", "clamps", "clamp", "clamped"};

/* Words that begin no name with a slip in it: "now fish" is no cowfish. */
static const char *const no_start[] = {"now", "my", "the", "new", "all", "some", "more", "dead",
	"sick", "ill", "one", "these", "those", "other", "our", "his", "her", "your", "no", "any",
	"many", "few", "most", "big", "old", "poor", "last", "first", "then", "so", "and", "but"};

static bool is_ordinary(const char *words, const struct ts_candidates *c)
{
	char first[16] = "";
	size_t len = strcspn(words, " ");

	/* "snails' shells" */
	if (strstr(words, "' ") && c->how != TS_NAME_SAME)
		return true;
	if (len < sizeof first && words[len])
		memcpy(first, words, len);
	if (words[len] ? !TS_TYPED_AMONG(first, no_start) : !TS_TYPED_AMONG(words, ordinary))
		return false;
	return !c->count || c->items[0].miss / TS_NAME_TIER >= TS_TIER_SLIP;
}

/* A name of which a word alone is a group's is none, nor is a common word with a slip in it. */
enum ts_name_how ts_typed_how(const struct ts_typed *t, const char *name)
{
	struct ts_candidates c;

	(void)ts_catalogue_species(t->catalogue, name, &c);
	return (c.how == TS_NAME_GROUP && c.by_word) || is_ordinary(name, &c) ? TS_NAME_NEAR
									      : c.how;
}

/* The catalogue knows the very name; `guess`: or takes it for one, by another order of words. */
static bool names(const struct ts_typed *t, const char *words, bool guess)
{
	if (!ts_name_heads_may_name(&t->heads, words))
		return false; /* most words of a sentence: comparing them with every name is long */
	switch (ts_typed_how(t, words)) {
	case TS_NAME_SAME:
	case TS_NAME_FORM:
	case TS_NAME_SHARED:
	case TS_NAME_GROUP:
	case TS_NAME_OUTSIDE:
		return !guess;
	case TS_NAME_GUESSED:
		return guess;
	default:
		return false;
	}
}

/* No name ends with them; "pleco is" would be taken for one of another spelling. */
static const char *const no_end[] = {
	"is", "are", "and", "the", "in", "to", "with", "or", "on", "at", "has", "have", "all"};

/* "clownfish and guppies" are two; only a very name has such a word within. */
static bool joins(const struct ts_typed *t, size_t len)
{
	static const char *const words[] = {"and", "with", "or", "plus", "my", "the"};

	for (size_t i = 0; i < len; i++) {
		if (TS_TYPED_AMONG(t->word[t->at + i], words))
			return true;
	}
	return false;
}

size_t ts_typed_name_here(struct ts_typed *t, bool guess)
{
	size_t most = t->count - t->at < NAME_WORDS_MOST ? t->count - t->at : NAME_WORDS_MOST;

	for (size_t i = 0; i < most; i++) {
		if (strpbrk(t->word[t->at + i], ",()=<>") || ts_typed_is_figure(t->word[t->at + i]))
			most = i;
	}
	for (size_t len = most; len > guess; len--) {
		const char *last = t->word[t->at + len - 1];

		if (joins(t, len) &&
			ts_typed_how(t, ts_typed_joined(t, t->at, t->at + len)) != TS_NAME_SAME)
			continue;
		if (!ts_typed_before_name(last) && !TS_TYPED_AMONG(last, no_end) &&
			names(t, ts_typed_joined(t, t->at, t->at + len), guess))
			return len;
	}
	return 0;
}

/* "ryukin goldfish": the word behind is a name of the same genus. */
bool ts_typed_one_genus(const struct ts_typed *t, const char *first, const char *second)
{
	struct ts_candidates c;
	const struct ts_species *a = ts_catalogue_species(t->catalogue, first, &c);
	const struct ts_species *b = ts_catalogue_species(t->catalogue, second, &c);
	size_t len = a ? strcspn(a->species, " ") : 0;

	return a && b && strncmp(a->species, b->species, len) == 0 && b->species[len] == ' ';
}

/* "a rainbow shark", "two angelfish": the name begins behind the word; not so "three spot gourami".
 */
bool ts_typed_counts_what_follows(struct ts_typed *t)
{
	size_t behind;

	if (!ts_typed_before_name(t->word[t->at]) || t->at + 1 >= t->count)
		return false;
	t->at++;
	behind = ts_typed_name_here(t, false);
	if (!behind)
		behind = ts_typed_name_here(t, true);
	t->at--;
	return behind > 0 || strlen(t->word[t->at]) <= 2;
}
