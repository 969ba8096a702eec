/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From a name as somebody types it to the one species that is called so, or to what may be meant.
 * The same name written another way is taken; a slip or another order of words is taken where it
 * leads to one animal alone, and is told to the caller so that it is said; everything else is a
 * question. Names that are no one animal's are rows (name_rows.c).
 */
#include <tapshoal/catalogue.h>

#include <limits.h>
#include <math.h>
#include <stdint.h>
#include <string.h>

#include "catalogue/name_rows.h"
#include "catalogue/name_words.h"

/* What is asked for, folded once. */
struct asked {
	char cased[TS_FOLD_ROOM];
	size_t cased_len;
	struct ts_name_words words;
};

static const struct ts_texts *list_of(const struct ts_species *s, size_t list)
{
	const struct ts_texts *const lists[] = {&s->synonyms, &s->trade_numbers, &s->common.en,
		&s->common.de, &s->common.fr, &s->common.nl, &s->common.es, &s->common.it};

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

static unsigned less(unsigned a, unsigned b)
{
	return a < b ? a : b;
}

/* Which of the two ways a miss is told: ts_name_miss(), or ts_name_same(). */
typedef unsigned (*measure)(const struct ts_name_words *asked, const struct ts_name_words *name);

/* How far `len` bytes of a name are from what is asked, written with umlauts or without. */
static unsigned miss_by(measure by, const struct asked *asked, const char *name, size_t len)
{
	struct ts_name_words words;
	unsigned miss;

	ts_name_split(name, len, false, &words);
	miss = by(&asked->words, &words);
	if (miss < TS_NAME_TIER * TS_TIER_JOINED || !ts_name_has_umlauts(name, len))
		return miss;
	ts_name_split(name, len, true, &words);
	return less(miss, by(&asked->words, &words));
}

static unsigned miss_of(const struct asked *asked, const char *name, size_t len)
{
	return miss_by(ts_name_miss, asked, name, len);
}

/* Most names need no folding to be told apart. */
static bool ascii_differ(char a, char b)
{
	if ((a & 0x80) || (b & 0x80))
		return false;
	return (a | 0x20) != (b | 0x20);
}

static bool called(const struct asked *asked, const char *name)
{
	char cased[TS_FOLD_ROOM];
	size_t len;

	if (ascii_differ(*name, *asked->cased))
		return false;
	len = ts_fold(TS_FOLD_CASE, name, strlen(name), cased, sizeof cased);
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

	if (ascii_differ(*stem, *given) && ascii_differ(*s->species, *given))
		return false;
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
	if (a->species->sold != b->species->sold)
		return a->species->sold - b->species->sold;
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
	struct ts_candidate best = {species, NULL, TS_NAME_NEVER};
	bool spoken = true;
	const char *name;

	for (size_t i = 0; (name = ts_species_name(species, i)); i++) {
		unsigned miss = miss_of(asked, name, strlen(name));
		bool common = i > species->synonyms.count + species->trade_numbers.count;

		/* What people call it goes before what it is called in the books. */
		if (miss < best.miss || (miss == best.miss && common && !spoken)) {
			spoken = common;
			best = (struct ts_candidate){species, name, miss};
		}
	}
	return best;
}

/* Slips are weighed against one another; a name without slips needs no slipped one beside it. */
static bool near_enough(unsigned miss, unsigned best)
{
	unsigned tier = best / TS_NAME_TIER;
	unsigned slack = tier >= TS_TIER_EDITED && tier + 1 < TS_TIER_MOSTLY;

	return miss / TS_NAME_TIER <= tier + slack;
}

static void find_near(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *ret)
{
	size_t in_tier[TS_TIER__COUNT] = {0};

	for (size_t i = 0; i < catalogue->count; i++) {
		struct ts_candidate one = nearest_name(asked, catalogue->items[i]);

		if (one.miss == TS_NAME_NEVER)
			continue;
		in_tier[one.miss / TS_NAME_TIER]++;
		keep(ret, &one);
	}
	while (ret->count && !near_enough(ret->items[ret->count - 1].miss, ret->items[0].miss))
		ret->count--;
	for (unsigned tier = 0; ret->count && tier < TS_TIER__COUNT; tier++) {
		if (near_enough(tier * TS_NAME_TIER, ret->items[0].miss))
			ret->all += in_tier[tier];
	}
}

static void find_same(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *ret)
{
	for (size_t i = 0; i < catalogue->count; i++) {
		struct ts_candidate one = {catalogue->items[i], NULL, TS_TIER_SAME};

		for (size_t n = 0; (one.name = ts_species_name(one.species, n)); n++) {
			if (!called(asked, one.name))
				continue;
			ret->all++;
			keep(ret, &one);
			break;
		}
	}
}

/* Whether one of the words asked for is this one: "dwarf frog" is a frog. */
static bool among_words(const struct asked *asked, const char *name, size_t len)
{
	struct ts_name_words words;

	ts_name_split(name, len, false, &words);
	for (size_t i = 0; words.count == 1 && i < asked->words.count; i++) {
		if (ts_name_same_word(
			    asked->words.at[i], asked->words.len[i], words.at[0], words.len[0]))
			return true;
	}
	return false;
}

/* How far a row's nearest name is; a word that stands among others counts like words left out. */
static unsigned row_miss(measure by, const struct asked *asked, const struct ts_name_row *row)
{
	unsigned best = TS_NAME_NEVER;

	for (const char *at = row->names; *at;) {
		size_t len = strcspn(at, "|");
		bool word = *at == '*';
		unsigned miss = miss_by(by, asked, at + word, len - word);

		if (miss >= TS_NAME_TIER * TS_TIER_WORDS)
			miss = word && by == ts_name_miss && among_words(asked, at + 1, len - 1)
				       ? TS_NAME_TIER * TS_TIER_WORDS
				       : TS_NAME_NEVER;
		best = less(best, miss);
		at += len + (at[len] == '|');
	}
	return best;
}

static const struct ts_name_row *nearest_row(
	measure by, const struct asked *asked, unsigned *ret_miss)
{
	const struct ts_name_row *best = NULL, *row;

	*ret_miss = TS_NAME_NEVER;
	for (size_t i = 0; (row = ts_name_row_at(i)); i++) {
		unsigned miss = row_miss(by, asked, row);

		if (miss < *ret_miss) {
			*ret_miss = miss;
			best = row;
		}
	}
	return best;
}

/* What a row says; false: it speaks of animals that this catalogue does not have. */
static bool take_row(const struct ts_catalogue *catalogue, const struct ts_name_row *row,
	unsigned miss, struct ts_candidates *ret)
{
	struct ts_candidates mine = {.how = row->how,
		.row = row,
		.says = row->says,
		.by_word = miss / TS_NAME_TIER == TS_TIER_WORDS};

	for (size_t i = 0; row->members && i < catalogue->count; i++) {
		const struct ts_species *s = catalogue->items[i];
		const char *common = s->common.en.count ? s->common.en.items[0] : s->species;
		struct ts_candidate one = {s, common, miss};

		if (!ts_name_row_holds(row, s))
			continue;
		mine.shared_cautions = mine.all ? mine.shared_cautions & s->cautions : s->cautions;
		mine.least_cm =
			mine.all ? fmin(mine.least_cm, s->adult_length_cm) : s->adult_length_cm;
		mine.most_cm = fmax(mine.most_cm, s->adult_length_cm);
		mine.all++;
		keep(&mine, &one);
	}
	if (row->how == TS_NAME_GROUP && !mine.count)
		return false;
	*ret = mine;
	return true;
}

static bool same_genus(const struct ts_species *a, const struct ts_species *b)
{
	size_t genus = strcspn(a->species, " ");

	return genus == strcspn(b->species, " ") && memcmp(a->species, b->species, genus) == 0;
}

/*
 * Sisters of one genus under one name, of which one is sold more than the others: that one, and
 * the others are told.
 */
static bool sisters(const struct ts_candidates *c)
{
	if (c->all != c->count || c->items[0].species->sold == c->items[1].species->sold)
		return false;
	for (size_t i = 1; i < c->count; i++) {
		if (!same_genus(c->items[0].species, c->items[i].species))
			return false;
	}
	return true;
}

/* A group's word that records have for their own, "bristlenose": all that it means, not one of
 * them. */
static bool take_group(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *io)
{
	struct ts_candidates mine = {.how = TS_NAME_UNKNOWN};
	unsigned miss;
	const struct ts_name_row *row = nearest_row(ts_name_same, asked, &miss);

	if (!row || row->how != TS_NAME_GROUP || !take_row(catalogue, row, miss, &mine) ||
		mine.all <= io->all)
		return false;
	if (sisters(&mine))
		mine.how = TS_NAME_GUESSED;
	*io = mine;
	return true;
}

static bool is_shared(const struct ts_candidates *candidates)
{
	return candidates->how == TS_NAME_GUESSED && candidates->all > 1 &&
	       candidates->items[0].miss / TS_NAME_TIER <= TS_TIER_PLURAL;
}

/* How a name that stands in records as it was asked is understood. */
static enum ts_name_how how_of_same(const struct ts_candidates *c)
{
	if (c->all == 1)
		return TS_NAME_SAME;
	return sisters(c) ? TS_NAME_GUESSED : TS_NAME_SHARED;
}

/* The group that is called so, "tetra" or "shell dweller"; NULL: none is. */
static const struct ts_name_row *group_called(const char *words, size_t len)
{
	struct asked group = {0};
	const struct ts_name_row *row;
	unsigned miss;

	ts_name_split(words, len, false, &group.words);
	row = nearest_row(ts_name_same, &group, &miss);
	return row && row->how == TS_NAME_GROUP ? row : NULL;
}

/*
 * Whether what was left out of a name can be left out: a word before the last ("german ram"), or
 * the last where it is a group's and nothing else stands for it ("black skirt").
 */
static bool may_be_left_out(const struct ts_name_words *asked, const char *of)
{
	struct ts_name_words name;
	const char *last = asked->at[asked->count - 1];
	size_t len = asked->len[asked->count - 1], end;

	ts_name_split(of, strlen(of), false, &name);
	if (name.count <= asked->count)
		return false; /* other words were put in */
	end = name.count - 1;
	if (ts_name_same_word(last, len, name.at[end], name.len[end]))
		return asked->count > 1;
	return name.count == asked->count + 1 && group_called(name.at[end], name.len[end]) &&
	       !group_called(last, len);
}

/* The verdict over what came near. */
static const struct ts_species *settle(const struct asked *asked, struct ts_candidates *ret)
{
	unsigned tier = ret->count ? ret->items[0].miss / TS_NAME_TIER : TS_TIER__COUNT;

	if (tier == TS_TIER__COUNT)
		ret->how = asked->words.count == 1 && ts_name_trade_number(asked->words.at[0],
							      asked->words.len[0])
				   ? TS_NAME_NUMBER
				   : TS_NAME_UNKNOWN;
	else if (tier <= TS_TIER_PLURAL)
		ret->how = how_of_same(ret);
	else if ((tier <= TS_TIER_SLIP && (ret->all == 1 || sisters(ret))) ||
		 (tier == TS_TIER_WORDS && ret->all == 1 &&
			 may_be_left_out(&asked->words, ret->items[0].name)))
		ret->how = TS_NAME_GUESSED;
	else
		ret->how = TS_NAME_NEAR;
	return ret->how == TS_NAME_SAME || ret->how == TS_NAME_GUESSED ? ret->items[0].species
								       : NULL;
}

/* "male guppy", "pez guppy": without the words that name nothing it is one animal's name. */
static const struct ts_species *look_bare(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *ret)
{
	struct ts_candidates mine = {.how = TS_NAME_UNKNOWN};
	struct asked bare = *asked;

	ts_name_split(asked->cased, asked->cased_len, false, &bare.words);
	if (!ts_name_strip(&bare.words))
		return NULL;
	find_near(catalogue, &bare, &mine);
	if (mine.all != 1 || mine.items[0].miss >= TS_NAME_TIER * TS_TIER_WORDS)
		return NULL;
	mine.how = TS_NAME_GUESSED;
	*ret = mine;
	return mine.items[0].species;
}

/* An epithet of fewer letters may be any word. */
#define EPITHET_LEAST 5

/*
 * The second half of one scientific name, by itself or beside what its group is called: "paleatum
 * cory", "barbus conchonius". `at` is the word, the first or the last.
 */
static const struct ts_species *look_epithet(const struct ts_catalogue *catalogue,
	const struct ts_name_words *asked, size_t at, struct ts_candidates *ret)
{
	struct ts_candidates mine = {.how = TS_NAME_GUESSED};
	const char *beside = asked->at[at ? 0 : asked->count > 1];
	size_t len = at ? (size_t)(asked->at[at] - beside) - 1 : strlen(beside);
	const struct ts_name_row *group = asked->count > 1 ? group_called(beside, len) : NULL;

	if (asked->len[at] < EPITHET_LEAST || (asked->count > 1 && !group))
		return NULL;
	for (size_t i = 0; i < catalogue->count; i++) {
		struct ts_candidate one = {catalogue->items[i], catalogue->items[i]->species,
			TS_NAME_TIER * TS_TIER_SLIP};
		struct ts_name_words name;

		ts_name_split(one.name, strlen(one.name), false, &name);
		if (name.count < 2 || name.len[1] != asked->len[at] ||
			memcmp(name.at[1], asked->at[at], name.len[1]) != 0 ||
			(group && !ts_name_row_holds(group, one.species)))
			continue;
		mine.all++;
		keep(&mine, &one);
	}
	if (mine.all != 1)
		return NULL;
	*ret = mine;
	return mine.items[0].species;
}

/* Names that share nothing but "fish" with what is asked are not near it. */
static void leave_empty_words(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *io)
{
	struct ts_candidates mine = {.how = io->how};
	struct asked bare = *asked;

	if (!io->count || io->items[0].miss < TS_NAME_TIER * TS_TIER_MOSTLY)
		return;
	ts_name_split(asked->cased, asked->cased_len, false, &bare.words);
	if (!ts_name_strip(&bare.words))
		return;
	find_near(catalogue, &bare, &mine);
	if (!mine.count)
		*io = mine;
}

static const struct ts_species *look_near(
	const struct ts_catalogue *catalogue, const struct asked *asked, struct ts_candidates *ret)
{
	const struct ts_species *found;
	const struct ts_name_row *row;
	unsigned best = TS_NAME_NEVER, miss;

	if (!asked->words.count)
		return NULL;
	find_near(catalogue, asked, ret);
	leave_empty_words(catalogue, asked, ret);
	if (ret->count)
		best = ret->items[0].miss;
	if (best >= TS_NAME_TIER * TS_TIER_WORDS &&
		((found = look_epithet(catalogue, &asked->words, 0, ret)) ||
			(found = look_epithet(
				 catalogue, &asked->words, asked->words.count - 1, ret))))
		return found;
	if (best < TS_NAME_TIER * TS_TIER_ORDER && take_group(catalogue, asked, ret))
		return ret->how == TS_NAME_GUESSED ? ret->items[0].species : NULL;
	row = nearest_row(ts_name_miss, asked, &miss);
	/* What is outside passes for no animal whose name is no nearer; a group gives way. */
	if (row && miss / TS_NAME_TIER < best / TS_NAME_TIER + (row->how != TS_NAME_GROUP) &&
		take_row(catalogue, row, miss, ret))
		return row->how == TS_NAME_FORM && ret->count ? ret->items[0].species : NULL;
	if (best >= TS_NAME_TIER * TS_TIER_WORDS && look_bare(catalogue, asked, ret))
		return ret->items[0].species;
	return settle(asked, ret);
}

const struct ts_species *ts_catalogue_species(
	const struct ts_catalogue *catalogue, const char *name, struct ts_candidates *ret)
{
	struct ts_candidates mine = {.how = TS_NAME_UNKNOWN};
	const struct ts_species *found = NULL;
	struct asked asked;

	asked.cased_len =
		ts_fold(TS_FOLD_CASE, name, strlen(name), asked.cased, sizeof asked.cased);
	ts_name_split(name, strlen(name), false, &asked.words);
	for (size_t i = 0; !found && i < catalogue->count; i++) {
		if (fully_called(&asked, catalogue->items[i]))
			found = catalogue->items[i];
	}
	if (!found)
		find_same(catalogue, &asked, &mine);
	if (found)
		mine.how = TS_NAME_SAME;
	else if (mine.all && !take_group(catalogue, &asked, &mine))
		mine.how = how_of_same(&mine);
	else if (!mine.all)
		found = look_near(catalogue, &asked, &mine);
	if (!found && (mine.how == TS_NAME_SAME || mine.how == TS_NAME_GUESSED))
		found = mine.items[0].species;
	mine.shared = is_shared(&mine);
	if (ret)
		*ret = mine;
	/* Nobody would say that it was guessed. */
	return ret || mine.how == TS_NAME_SAME ? found : NULL;
}
