/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How far one name is from another, as people type names: case, accents, hyphens, blanks, plurals
 * of six languages, order of words, slips of the hand, words left out, numbers of the trade.
 */
#ifndef TS_CATALOGUE_NAME_WORDS_H
#define TS_CATALOGUE_NAME_WORDS_H

#include <stdbool.h>
#include <stddef.h>

#include "catalogue/fold.h"

/*
 * How far off a name is, nearest first. Up to TS_TIER_PLURAL it is the same name written another
 * way; up to TS_TIER_SLIP it can hardly be another; what follows is worth a question. Edits count
 * on behind TS_TIER_EDITED.
 */
enum ts_name_tier {
	TS_TIER_SAME,
	TS_TIER_FOLDED, /* accents, hyphens, ae for a with two dots */
	TS_TIER_JOINED, /* gold fish */
	TS_TIER_PLURAL,
	TS_TIER_ORDER, /* barb tiger */
	TS_TIER_SLIP,  /* one letter */
	TS_TIER_WORDS, /* words left out */
	TS_TIER_EDITED,
	TS_TIER_MOSTLY = TS_TIER_EDITED + 3, /* all of its words but one */
	TS_TIER_PARTLY,                      /* the longest word alone */
	TS_TIER__COUNT
};

/* One tier is that many misses; within it, words that were left out count. */
#define TS_NAME_TIER 16u
#define TS_NAME_NEVER 0xffffffffu
#define TS_NAME_WORDS_MOST 12

/* A name folded, its words and the same without blanks. */
struct ts_name_words {
	char folded[TS_FOLD_ROOM], joined[TS_FOLD_ROOM];
	const char *at[TS_NAME_WORDS_MOST];
	size_t len[TS_NAME_WORDS_MOST], count, folded_len, joined_len;
};

/* Folds `len` bytes; `umlauts` writes them as two letters, as people without the key do. */
void ts_name_split(const char *name, size_t len, bool umlauts, struct ts_name_words *ret);
/* Whether `name` has such letters, so that it can be written in two ways. */
bool ts_name_has_umlauts(const char *name, size_t len);

/* The same word, one in the singular, the other in the plural, or both alike. */
bool ts_name_same_word(const char *a, size_t a_len, const char *b, size_t b_len);
/* "L46": a number under which suckermouths are sold. */
bool ts_name_trade_number(const char *word, size_t len);

/*
 * Leaves out words that name no animal ("fish", "male", "pez"), in place; false: there was none, or
 * nothing else.
 */
bool ts_name_strip(struct ts_name_words *io);

/* How far off within the tiers of the same name, TS_TIER_PLURAL the last; else never. */
unsigned ts_name_same(const struct ts_name_words *asked, const struct ts_name_words *name);

/* How far `name` is from what is asked: tier * TS_NAME_TIER + words left out; TS_NAME_NEVER. */
unsigned ts_name_miss(const struct ts_name_words *asked, const struct ts_name_words *name);

#endif
