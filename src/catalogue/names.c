/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From a name as somebody types it to the one species that is called so, or to the few that may be
 * meant. Common names hide several species each, so nothing but the very name is ever taken.
 */
#include <tapshoal/catalogue.h>

#include <limits.h>
#include <stdint.h>
#include <string.h>

#include "base/edits.h"
#include "catalogue/fold.h"

/* How far off a name is, nearest first; edits count on behind EDITED. */
enum tier { SAME, FOLDED, PLURAL, WORDS, EDITED, PARTLY = EDITED + 3, TIERS };

/* One tier is that many misses; within it, words that were left out count. */
#define TIER 16u
#define NEVER UINT_MAX
#define WORDS_MOST 12

struct words {
	const char *at[WORDS_MOST];
	size_t len[WORDS_MOST], count;
};

/* What is asked for, folded once. */
struct asked {
	const char *name;
	char cased[TS_FOLD_ROOM], folded[TS_FOLD_ROOM];
	size_t cased_len, folded_len;
	struct words words;
};

static const struct ts_texts *list_of(const struct ts_species *s, size_t list)
{
	const struct ts_texts *const lists[] = {&s->synonyms, &s->common.en, &s->common.de,
		&s->common.fr, &s->common.nl, &s->common.es, &s->common.it};

	return list < sizeof lists / sizeof *lists ? lists[list] : NULL;
}

const char *ts_species_name(const struct ts_species *species, size_t index)
{
	const struct ts_texts *texts;

	if (!index--)
		return species->species;
	for (size_t list = 0; (texts = list_of(species, list)); list++) {
		if (index < texts->count)
			return texts->items[index];
		index -= texts->count;
	}
	return NULL;
}

static void split(const char *folded, struct words *ret)
{
	ret->count = 0;
	while (*folded && ret->count < WORDS_MOST) {
		size_t len = strcspn(folded, " ");

		ret->at[ret->count] = folded;
		ret->len[ret->count++] = len;
		folded += len + (folded[len] == ' ');
	}
}

/* Length of a word without the ending of an English plural: tetra-s, fish-es; "guppies" is 4. */
static size_t singular(const char *word, size_t len)
{
	if (len < 4 || word[len - 1] != 's' || strchr("sui", word[len - 2]))
		return len;
	if (len > 4 && word[len - 2] == 'e' && strchr("hxs", word[len - 3]))
		return len - 2;
	if (len > 5 && word[len - 2] == 'e' && word[len - 3] == 'i')
		return len - 3;
	return len - 1;
}

static bool same_word(const char *a, size_t a_len, const char *b, size_t b_len)
{
	size_t a_stem = singular(a, a_len), b_stem = singular(b, b_len);

	if (a_stem + 3 == a_len && b_len == b_stem && b[b_len - 1] == 'y') /* guppies, guppy */
		b_stem--;
	if (b_stem + 3 == b_len && a_len == a_stem && a[a_len - 1] == 'y')
		a_stem--;
	return a_stem == b_stem && memcmp(a, b, a_stem) == 0;
}

/* Slips that a word of that length may have and still be meant. */
static size_t slips(size_t len)
{
	return len < 4 ? 0 : len < 6 ? 1 : len < 10 ? 2 : 3;
}

/* Edits from the asked word to the nearest free word of the name; SIZE_MAX: none is near. */
static size_t word_edits(const char *word, size_t len, const struct words *name, unsigned *taken)
{
	size_t best = SIZE_MAX, best_at = 0;

	for (size_t i = 0; i < name->count; i++) {
		size_t edits;

		if (*taken & 1u << i)
			continue;
		if (same_word(word, len, name->at[i], name->len[i]) ||
			(len == 1 && name->count > 1 && *word == *name->at[i])) /* P. innesi */
			edits = 0;
		else
			edits = ts_edits(word, len, name->at[i], name->len[i]);
		if (edits < best && edits <= slips(len)) {
			best = edits;
			best_at = i;
		}
	}
	if (best != SIZE_MAX)
		*taken |= 1u << best_at;
	return best;
}

static unsigned words_miss(const struct asked *asked, const struct words *name)
{
	unsigned taken = 0;
	size_t edits = 0;
	bool in_order = asked->words.count == name->count;

	if (!asked->words.count || asked->words.count > name->count)
		return NEVER;
	for (size_t i = 0; i < asked->words.count; i++) {
		size_t one = word_edits(asked->words.at[i], asked->words.len[i], name, &taken);

		if (one == SIZE_MAX)
			return NEVER;
		edits += one;
		in_order = in_order && same_word(asked->words.at[i], asked->words.len[i],
					       name->at[i], name->len[i]);
	}
	if (in_order)
		return PLURAL * TIER;
	if (edits >= PARTLY - WORDS)
		return NEVER;
	return (unsigned)((WORDS + edits) * TIER + (name->count - asked->words.count));
}

/* The last straw: the longest word asked for stands in the name. "siamese fighter" */
static unsigned part_miss(const struct asked *asked, const struct words *name)
{
	size_t longest = 0;

	for (size_t i = 1; i < asked->words.count; i++) {
		if (asked->words.len[i] > asked->words.len[longest])
			longest = i;
	}
	for (size_t i = 0; asked->words.count > 1 && i < name->count; i++) {
		if (same_word(asked->words.at[longest], asked->words.len[longest], name->at[i],
			    name->len[i]))
			return (unsigned)(PARTLY * TIER + name->count - 1);
	}
	return NEVER;
}

/* How far the name is from what is asked. */
static unsigned miss_of(const struct asked *asked, const char *name)
{
	char folded[TS_FOLD_ROOM];
	size_t len = ts_fold(TS_FOLD_NAME, name, strlen(name), folded, sizeof folded), edits;
	size_t longer = len > asked->folded_len ? len - asked->folded_len : asked->folded_len - len;
	struct words words;
	unsigned by_words;

	if (strcmp(folded, asked->folded) == 0)
		return FOLDED * TIER;
	split(folded, &words);
	by_words = words_miss(asked, &words);
	if (by_words == NEVER)
		by_words = part_miss(asked, &words);
	if (by_words < EDITED * TIER || longer > slips(asked->folded_len))
		return by_words;
	edits = ts_edits(asked->folded, asked->folded_len, folded, len);
	if (edits <= slips(asked->folded_len) && (WORDS + edits) * TIER < by_words)
		return (unsigned)(WORDS + edits) * TIER;
	return by_words;
}

static bool called(const struct asked *asked, const char *name)
{
	char cased[TS_FOLD_ROOM];
	size_t len = ts_fold(TS_FOLD_CASE, name, strlen(name), cased, sizeof cased);

	return len == asked->cased_len && memcmp(cased, asked->cased, len) == 0;
}

/* The full name: "Genus species", "Genus species form" or "Genus species, form"; the file stem. */
static bool fully_called(const struct asked *asked, const struct ts_species *s)
{
	const char *slash = strrchr(s->file, '/'), *form = s->form ? s->form : "";
	const char *stem = slash ? slash + 1 : s->file, *dot = strrchr(stem, '.');
	const char *given = asked->cased;
	char cased[TS_FOLD_ROOM];
	size_t len = dot ? (size_t)(dot - stem) : strlen(stem);

	len = ts_fold(TS_FOLD_CASE, stem, len, cased, sizeof cased);
	if (len == asked->cased_len && memcmp(cased, given, len) == 0)
		return true;
	len = ts_fold(TS_FOLD_CASE, s->species, strlen(s->species), cased, sizeof cased);
	if (strncmp(given, cased, len) != 0)
		return false;
	given += len;
	if (*form) {
		given += *given == ',';
		if (*given++ != ' ')
			return false;
	}
	ts_fold(TS_FOLD_CASE, form, strlen(form), cased, sizeof cased);
	return strcmp(given, cased) == 0;
}

static int compare(const struct ts_candidate *a, const struct ts_candidate *b)
{
	if (a->miss != b->miss)
		return a->miss < b->miss ? -1 : 1;
	return strcmp(a->species->species, b->species->species);
}

static void keep(struct ts_candidates *c, const struct ts_candidate *candidate)
{
	size_t at = c->count;

	while (at > 0 && compare(candidate, &c->items[at - 1]) < 0)
		at--;
	if (at == TS_CANDIDATES_MOST)
		return;
	c->count += c->count < TS_CANDIDATES_MOST;
	for (size_t i = c->count - 1; i > at; i--)
		c->items[i] = c->items[i - 1];
	c->items[at] = *candidate;
}

static struct ts_candidate nearest_name(const struct asked *asked, const struct ts_species *species)
{
	struct ts_candidate best = {species, NULL, NEVER};
	const char *name;

	for (size_t i = 0; (name = ts_species_name(species, i)); i++) {
		unsigned miss = miss_of(asked, name);

		if (miss < best.miss)
			best = (struct ts_candidate){species, name, miss};
	}
	return best;
}

/* Slips are weighed against one another; a name without slips needs no slipped one beside it. */
static bool near_enough(unsigned miss, unsigned best)
{
	unsigned slack = best >= EDITED * TIER && best + TIER < PARTLY * TIER;

	return miss / TIER <= best / TIER + slack;
}

static void find_near(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *ret)
{
	size_t in_tier[TIERS] = {0};

	for (size_t i = 0; i < catalogue->count; i++) {
		struct ts_candidate one = nearest_name(asked, catalogue->items[i]);

		if (one.miss == NEVER)
			continue;
		in_tier[one.miss / TIER]++;
		keep(ret, &one);
	}
	while (ret->count && !near_enough(ret->items[ret->count - 1].miss, ret->items[0].miss))
		ret->count--;
	for (unsigned tier = 0; ret->count && tier < TIERS; tier++) {
		if (near_enough(tier * TIER, ret->items[0].miss))
			ret->all += in_tier[tier];
	}
}

static void find_same(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *ret)
{
	for (size_t i = 0; i < catalogue->count; i++) {
		struct ts_candidate one = {catalogue->items[i], NULL, SAME};

		for (size_t n = 0; (one.name = ts_species_name(one.species, n)); n++) {
			if (!called(asked, one.name))
				continue;
			ret->all++;
			keep(ret, &one);
			break;
		}
	}
}

const struct ts_species *ts_catalogue_species(
	const struct ts_catalogue *catalogue, const char *name, struct ts_candidates *ret)
{
	struct ts_candidates mine = {.count = 0};
	struct asked asked = {.name = name};

	asked.cased_len =
		ts_fold(TS_FOLD_CASE, name, strlen(name), asked.cased, sizeof asked.cased);
	asked.folded_len =
		ts_fold(TS_FOLD_NAME, name, strlen(name), asked.folded, sizeof asked.folded);
	split(asked.folded, &asked.words);
	for (size_t i = 0; i < catalogue->count; i++) {
		if (fully_called(&asked, catalogue->items[i]))
			return catalogue->items[i];
	}
	find_same(catalogue, &asked, &mine);
	if (mine.all == 1)
		return mine.items[0].species;
	if (ret) {
		if (!mine.all && asked.folded_len)
			find_near(catalogue, &asked, &mine);
		*ret = mine;
	}
	return NULL;
}
