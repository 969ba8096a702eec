/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Words of names against one another. Endings of plurals are rows; the rest is counting letters.
 */
#include "catalogue/name_words.h"

#include <stdint.h>
#include <string.h>

#include "base/edits.h"

/* One and many in six languages; German adjectives, what the Dutch call small. */
#define ENDING(one, many)                                                                          \
	{                                                                                          \
		one, many, sizeof one - 1, sizeof many - 1                                         \
	}
static const struct {
	const char *one, *many;
	unsigned char one_len, many_len;
} plurals[] = {ENDING("", "s"), ENDING("", "es"), ENDING("y", "ies"), ENDING("", "e"),
	ENDING("", "n"), ENDING("", "en"), ENDING("", "er"), ENDING("er", "e"), ENDING("er", "en"),
	ENDING("", "x"), ENDING("al", "aux"), ENDING("b", "bben"), ENDING("k", "kken"),
	ENDING("l", "llen"), ENDING("m", "mmen"), ENDING("n", "nnen"), ENDING("p", "ppen"),
	ENDING("t", "tten"), ENDING("s", "ssen"), ENDING("s", "zen"), ENDING("f", "ven"),
	ENDING("z", "ces"), ENDING("o", "i"), ENDING("a", "e"), ENDING("e", "i"),
	ENDING("co", "chi"), ENDING("ca", "che"), ENDING("", "je"), ENDING("", "jes"),
	ENDING("", "tje"), ENDING("", "tjes"), ENDING("io", "i")};
#define PLURALS (sizeof plurals / sizeof *plurals)

/* The last letters of the endings above: a word with another one is no plural. */
#define LAST_LETTERS "senrxi"

/* By so many letters a plural is longer at the most. */
#define ENDING_MOST 4

/* A word of fewer letters has no plural that could be told from another word. */
#define SINGULAR_LEAST 3

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

static bool has_digit(const char *word, size_t len)
{
	for (size_t i = 0; i < len; i++) {
		if (digit(word[i]))
			return true;
	}
	return false;
}

/* Letters before the number: "l" or "lda"; 0: no trade number begins so. */
static size_t trade_letters(const char *word, size_t len)
{
	if (len >= 3 && memcmp(word, "lda", 3) == 0)
		return 3;
	return len && *word == 'l' ? 1 : 0;
}

bool ts_name_trade_number(const char *word, size_t len)
{
	size_t at = trade_letters(word, len), digits = 0;

	if (!at)
		return false;
	while (at + digits < len && digit(word[at + digits]))
		digits++;
	at += digits;
	at += at < len && word[at] >= 'a' && word[at] <= 'd'; /* L10a */
	return digits && digits <= 3 && at == len;
}

static char *next_word(char *word)
{
	char *blank = strchr(word, ' ');

	return blank ? blank + 1 : NULL;
}

/* "l 046" and "l046" become "l46", in place. */
static void tidy_number(char *folded)
{
	for (char *word = folded; word; word = next_word(word)) {
		size_t len = strcspn(word, " "), letters = trade_letters(word, len);
		char *number = word + letters;

		if (!letters)
			continue;
		number += letters == len && *number == ' ';
		while (*number == '0' && digit(number[1]))
			number++;
		if (digit(*number))
			memmove(word + letters, number, strlen(number) + 1);
	}
}

/* Where one of the letters that German, Dutch and others write as two stands; its two letters. */
static const char *two_letters(const char *at, size_t len)
{
	static const struct {
		const char *letter, *two;
	} rows[] = {{"\xc3\xa4", "ae"}, {"\xc3\xb6", "oe"}, {"\xc3\xbc", "ue"}, {"\xc3\x84", "ae"},
		{"\xc3\x96", "oe"}, {"\xc3\x9c", "ue"}};

	for (size_t i = 0; len > 1 && i < sizeof rows / sizeof *rows; i++) {
		if (memcmp(at, rows[i].letter, 2) == 0)
			return rows[i].two;
	}
	return NULL;
}

bool ts_name_has_umlauts(const char *name, size_t len)
{
	for (size_t i = 0; i < len; i++) {
		if (two_letters(name + i, len - i))
			return true;
	}
	return false;
}

static size_t spell_out(const char *name, size_t len, char out[TS_FOLD_ROOM])
{
	size_t used = 0;

	for (size_t i = 0; i < len && used + 2 < TS_FOLD_ROOM; i++) {
		const char *two = two_letters(name + i, len - i);

		out[used++] = two ? two[0] : name[i];
		if (two)
			out[used++] = two[1];
		i += two != NULL;
	}
	return used;
}

void ts_name_split(const char *name, size_t len, bool umlauts, struct ts_name_words *ret)
{
	char spelled[TS_FOLD_ROOM];
	const char *at;

	if (umlauts) {
		len = spell_out(name, len, spelled);
		name = spelled;
	}
	ts_fold(TS_FOLD_NAME, name, len, ret->folded, sizeof ret->folded);
	tidy_number(ret->folded);
	at = ret->folded;
	ret->folded_len = strlen(at);
	ret->count = ret->joined_len = 0;
	while (*at) {
		size_t word = strcspn(at, " ");

		if (ret->count < TS_NAME_WORDS_MOST) {
			ret->at[ret->count] = at;
			ret->len[ret->count++] = word;
		}
		memcpy(ret->joined + ret->joined_len, at, word);
		ret->joined_len += word;
		at += word + (at[word] == ' ');
	}
	ret->joined[ret->joined_len] = '\0';
}

/* Words of six languages that stand beside a name and are none: what it is, its sex, its size. */
static const char *const fillers[] = {"fish", "fishes", "fisch", "fische", "poisson", "poissons",
	"vis", "vissen", "visje", "visjes", "pez", "peces", "pesce", "pesci", "male", "males",
	"female", "females", "mannchen", "weibchen", "femelle", "femelles", "mannetje", "vrouwtje",
	"macho", "machos", "hembra", "hembras", "maschio", "maschi", "femmina", "femmine", "baby",
	"babies", "juvenile", "juveniles", "young", "adult", "adults", "small", "large", "tropical",
	"freshwater", "aquarium", "live", "assorted", "mixed", "mix", "catfish", "sorority"};

/* What breeders call forms: colours, patterns, fins. Where a record has such a name, it goes first.
 */
static const char *const forms[] = {"tuxedo", "moscow", "dumbo", "lyretail", "lyre", "snakeskin",
	"mosaic", "leopard", "cobra", "platinum", "koi", "delta", "veiltail", "veil", "grass",
	"elephant", "ear", "double", "half", "tail", "halfmoon", "plakat", "crowntail", "rosetail",
	"dragon", "scale", "pearlscale", "super", "giant", "metallic", "galaxy", "copper", "marble",
	"butterfly", "longfin", "long", "fin", "hifin", "hi", "high", "wag", "wagtail", "albino",
	"leucistic", "calico", "lemon", "pineapple", "sunset", "pinto", "blushing", "electric",
	"red", "blue", "green", "yellow", "gold", "golden", "orange", "black", "white", "pink",
	"purple", "silver", "rot", "rote", "roter", "blau", "blaue", "blauer", "gelb", "gelbe",
	"gelber", "schwarz", "schwarze", "schwarzer", "weiss", "weisse", "weisser", "grun",
	"schleier", "rouge", "bleu", "noir", "blanc", "jaune", "dore", "voile", "rode", "blauwe",
	"zwarte", "witte", "gele", "gouden", "sluier", "rojo", "azul", "negro", "blanco",
	"amarillo", "dorado", "velo", "rosso", "nero", "giallo", "bianco", "blu"};

static bool among(const char *const *words, size_t count, const char *word, size_t len)
{
	for (size_t i = 0; i < count; i++) {
		if (strlen(words[i]) == len && memcmp(words[i], word, len) == 0)
			return true;
	}
	return false;
}

static bool filler(const char *word, size_t len)
{
	return among(fillers, sizeof fillers / sizeof *fillers, word, len) ||
	       among(forms, sizeof forms / sizeof *forms, word, len);
}

bool ts_name_strip(struct ts_name_words *io)
{
	char kept[TS_FOLD_ROOM];
	size_t len = 0, left = 0;

	for (size_t i = 0; i < io->count; i++) {
		if (filler(io->at[i], io->len[i]))
			continue;
		if (left++)
			kept[len++] = ' ';
		memcpy(kept + len, io->at[i], io->len[i]);
		len += io->len[i];
	}
	if (!left || left == io->count)
		return false;
	ts_name_split(kept, len, false, io);
	return true;
}

static bool ends(const char *word, size_t len, const char *end, size_t end_len)
{
	if (len < end_len)
		return false;
	while (end_len && word[len - 1] == end[end_len - 1]) { /* four letters at the most */
		end_len--;
		len--;
	}
	return !end_len;
}

/* How many letters are left of a plural before its ending; 0: it is none of that row. */
static size_t stem_of(const char *many, size_t len, size_t row)
{
	size_t end = plurals[row].many_len;

	return ends(many, len, plurals[row].many, end) &&
			       len - end + plurals[row].one_len >= SINGULAR_LEAST
		       ? len - end
		       : 0;
}

static bool may_be_plural(const char *word, size_t len)
{
	return len && memchr(LAST_LETTERS, word[len - 1], sizeof LAST_LETTERS - 1);
}

static bool plural_of(const char *many, size_t many_len, const char *one, size_t one_len)
{
	for (size_t i = 0; i < PLURALS && may_be_plural(many, many_len); i++) {
		size_t stem = stem_of(many, many_len, i);

		if (stem && one_len == stem + plurals[i].one_len &&
			ends(one, one_len, plurals[i].one, plurals[i].one_len) &&
			memcmp(many, one, stem) == 0)
			return true;
	}
	return false;
}

bool ts_name_same_word(const char *a, size_t a_len, const char *b, size_t b_len)
{
	if (a_len == b_len && memcmp(a, b, a_len) == 0)
		return true;
	if (*a != *b || a_len > b_len + ENDING_MOST || b_len > a_len + ENDING_MOST ||
		has_digit(a, a_len) || has_digit(b, b_len))
		return false;
	return plural_of(a, a_len, b, b_len) || plural_of(b, b_len, a, a_len);
}

/* Slips that a word of that length may have and still be meant. */
static size_t slips(size_t len)
{
	return len < 4 ? 0 : len < 6 ? 1 : len < 10 ? 2 : 3;
}

/* A bit for each letter, others in the last places; of what a word has. */
static uint32_t letters_of(const char *word, size_t len)
{
	uint32_t letters = 0;

	for (size_t i = 0; i < len; i++)
		letters |= (uint32_t)1 << (word[i] & 31);
	return letters;
}

static size_t count_bits(uint32_t bits)
{
	size_t count = 0;

	for (; bits; bits &= bits - 1)
		count++;
	return count;
}

/* Letters off; SIZE_MAX where the lengths, or letters that one word alone has, say more than
 * `most`. */
static size_t edits_within(const char *a, size_t a_len, const char *b, size_t b_len, size_t most)
{
	uint32_t in_a, in_b;

	if (a_len > b_len + most || b_len > a_len + most)
		return SIZE_MAX;
	in_a = letters_of(a, a_len);
	in_b = letters_of(b, b_len);
	if (count_bits(in_a & ~in_b) > most || count_bits(in_b & ~in_a) > most)
		return SIZE_MAX;
	return ts_edits(a, a_len, b, b_len);
}

/* Letters off; a plural that was mistyped counts from its singular too. */
static size_t letters_off(const char *word, size_t len, const char *name, size_t name_len)
{
	size_t best;

	if (ts_name_same_word(word, len, name, name_len))
		return 0;
	if (len > name_len + ENDING_MOST + slips(len) || has_digit(word, len) ||
		has_digit(name, name_len))
		return SIZE_MAX;
	best = edits_within(word, len, name, name_len, slips(len));
	for (size_t i = 0; i < PLURALS && may_be_plural(word, len); i++) {
		size_t stem = stem_of(word, len, i), edits;
		char one[TS_FOLD_ROOM];

		if (!stem)
			continue;
		memcpy(one, word, stem);
		memcpy(one + stem, plurals[i].one, plurals[i].one_len);
		edits = edits_within(one, stem + plurals[i].one_len, name, name_len, slips(len));
		best = edits < best ? edits : best;
	}
	return best;
}

/* Letters from the asked word to the nearest free word of the name; SIZE_MAX: none is near. */
static size_t word_edits(
	const char *word, size_t len, const struct ts_name_words *name, unsigned *taken)
{
	size_t best = SIZE_MAX, best_at = 0;

	for (size_t i = 0; i < name->count; i++) {
		bool initial = len == 1 && name->count > 1 && *word == *name->at[i]; /* P. innesi */
		size_t edits;

		if (*taken & 1u << i)
			continue;
		edits = initial ? 0 : letters_off(word, len, name->at[i], name->len[i]);
		if (edits < best && edits <= slips(len)) {
			best = edits;
			best_at = i;
		}
	}
	if (best != SIZE_MAX)
		*taken |= 1u << best_at;
	return best;
}

/* How many words stand in their own place and are the same. */
static size_t in_place(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	size_t same = 0;

	for (size_t i = 0; i < asked->count && i < name->count; i++)
		same += ts_name_same_word(asked->at[i], asked->len[i], name->at[i], name->len[i]);
	return same;
}

/* A slip is taken only in a word that is long enough not to become another by it; the first letter
 * is seldom the one that slips. */
#define SLIP_LEAST 5
#define FIRST_SLIP_LEAST 7

/* A shorter name at the end of others is a word like any. */
#define NAME_AT_END_LEAST 5

static bool one_slip(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	for (size_t i = 0; asked->count == name->count && i < asked->count; i++) {
		if (ts_name_same_word(asked->at[i], asked->len[i], name->at[i], name->len[i]))
			continue;
		return asked->len[i] >=
			       (*asked->at[i] == *name->at[i] ? SLIP_LEAST : FIRST_SLIP_LEAST) &&
		       in_place(asked, name) + 1 == name->count &&
		       letters_off(asked->at[i], asked->len[i], name->at[i], name->len[i]) <= 1;
	}
	return asked->joined_len > SLIP_LEAST && !has_digit(asked->joined, asked->joined_len) &&
	       edits_within(asked->joined, asked->joined_len, name->joined, name->joined_len, 1) <=
		       1;
}

static unsigned words_miss(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	unsigned taken = 0;
	size_t edits = 0, exact = 0;

	if (!asked->count || asked->count > name->count || asked->folded_len < 2)
		return TS_NAME_NEVER;
	for (size_t i = 0; i < asked->count; i++) {
		size_t one = word_edits(asked->at[i], asked->len[i], name, &taken);

		if (one == SIZE_MAX)
			return TS_NAME_NEVER;
		edits += one;
		exact += !one && asked->len[i] > 1;
	}
	if (exact == name->count)
		return TS_TIER_ORDER * TS_NAME_TIER;
	if (edits >= TS_TIER_MOSTLY - TS_TIER_WORDS)
		return TS_NAME_NEVER;
	return (unsigned)((TS_TIER_WORDS + edits) * TS_NAME_TIER + (name->count - asked->count));
}

/* "zebra pleco L46": the number alone says which. */
static bool numbered(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	if (!ts_name_trade_number(name->folded, name->folded_len))
		return false;
	for (size_t i = 0; i < asked->count; i++) {
		if (asked->len[i] == name->folded_len &&
			memcmp(asked->at[i], name->folded, name->folded_len) == 0)
			return true;
	}
	return false;
}

/* How many of the words asked for stand in the name, wherever. */
static size_t shared_words(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	size_t shared = 0;

	for (size_t i = 0; i < asked->count; i++) {
		size_t n = 0;

		while (n < name->count &&
			!ts_name_same_word(asked->at[i], asked->len[i], name->at[n], name->len[n]))
			n++;
		shared += n < name->count;
	}
	return shared;
}

/* Whether the whole name stands at the end of what is asked: "moscow blue guppy". */
static bool ends_with_name(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	size_t before = asked->count - name->count;

	if (asked->count <= name->count || name->joined_len < NAME_AT_END_LEAST)
		return false;
	for (size_t i = 0; i < name->count; i++) {
		if (!ts_name_same_word(asked->at[before + i], asked->len[before + i], name->at[i],
			    name->len[i]))
			return false;
	}
	return true;
}

/* The last straw: the longest word asked for stands in the name. "siamese fighter" */
static unsigned part_miss(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	size_t longest = 0, shared;

	if (asked->count < 2)
		return TS_NAME_NEVER;
	if (numbered(asked, name))
		return TS_TIER_WORDS * TS_NAME_TIER;
	if (ends_with_name(asked, name))
		return (unsigned)(TS_TIER_PARTLY * TS_NAME_TIER + asked->count - name->count);
	shared = shared_words(asked, name);
	if (shared >= 2 && shared + 1 == asked->count)
		return (unsigned)(TS_TIER_MOSTLY * TS_NAME_TIER + name->count - shared);
	for (size_t i = 1; i < asked->count; i++) {
		if (asked->len[i] > asked->len[longest])
			longest = i;
	}
	for (size_t i = 0; i < name->count; i++) {
		if (ts_name_same_word(
			    asked->at[longest], asked->len[longest], name->at[i], name->len[i]))
			return (unsigned)(TS_TIER_PARTLY * TS_NAME_TIER + name->count - 1);
	}
	return TS_NAME_NEVER;
}

/* The words against one another where they are not the same in the same order. */
static unsigned loose_miss(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	size_t longer = name->folded_len > asked->folded_len ? name->folded_len - asked->folded_len
							     : asked->folded_len - name->folded_len;
	unsigned by_words = words_miss(asked, name);
	size_t edits;

	if (by_words == TS_TIER_ORDER * TS_NAME_TIER)
		return by_words;
	if (one_slip(asked, name))
		return TS_TIER_SLIP * TS_NAME_TIER;
	if (by_words == TS_NAME_NEVER)
		by_words = part_miss(asked, name);
	if (by_words < TS_TIER_EDITED * TS_NAME_TIER || longer > slips(asked->folded_len) ||
		has_digit(asked->joined, asked->joined_len))
		return by_words;
	edits = ts_edits(asked->folded, asked->folded_len, name->folded, name->folded_len);
	if (edits <= slips(asked->folded_len) && (TS_TIER_WORDS + edits) * TS_NAME_TIER < by_words)
		return (unsigned)(TS_TIER_WORDS + edits) * TS_NAME_TIER;
	return by_words;
}

unsigned ts_name_same(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	if (!asked->count)
		return TS_NAME_NEVER;
	if (strcmp(name->folded, asked->folded) == 0)
		return TS_TIER_FOLDED * TS_NAME_TIER;
	if (strcmp(name->joined, asked->joined) == 0)
		return TS_TIER_JOINED * TS_NAME_TIER;
	if ((asked->count == name->count && in_place(asked, name) == name->count) ||
		ts_name_same_word(asked->joined, asked->joined_len, name->joined, name->joined_len))
		return TS_TIER_PLURAL * TS_NAME_TIER;
	return TS_NAME_NEVER;
}

unsigned ts_name_miss(const struct ts_name_words *asked, const struct ts_name_words *name)
{
	unsigned miss = ts_name_same(asked, name);

	return miss == TS_NAME_NEVER && asked->count ? loose_miss(asked, name) : miss;
}
