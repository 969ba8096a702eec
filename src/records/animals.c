/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Counts and sexes are rows; what is left of the words is the name, which the catalogue knows.
 */
#include "records/animals.h"

#include <string.h>
#include <strings.h>

#include "base/arena.h"
#include "base/date.h"
#include "model/shape.h"
#include "records/signs.h"
#include "units/units.h"

/* Longest first, where one begins with another. */
static const struct {
	const char *words;
	double count; /* 0: how many is not said */
	int sex;
} counts[] = {
	{"a breeding pair of", 2, TS_SEX_PAIRS},
	{"a pair of", 2, TS_SEX_PAIRS},
	{"pair of", 2, TS_SEX_PAIRS},
	{"a pair", 2, TS_SEX_PAIRS},
	{"pair", 2, TS_SEX_PAIRS},
	{"a trio of", 3, TS_SEX_UNKNOWN},
	{"trio of", 3, TS_SEX_UNKNOWN},
	{"a couple of", 2, TS_SEX_UNKNOWN},
	{"a shoal of", 0, TS_SEX_UNKNOWN},
	{"a school of", 0, TS_SEX_UNKNOWN},
	{"a group of", 0, TS_SEX_UNKNOWN},
	{"some", 0, TS_SEX_UNKNOWN},
	{"a few", 0, TS_SEX_UNKNOWN},
	{"a dozen", 12, TS_SEX_UNKNOWN},
	{"a", 1, TS_SEX_UNKNOWN},
	{"an", 1, TS_SEX_UNKNOWN},
	{"one", 1, TS_SEX_UNKNOWN},
	{"two", 2, TS_SEX_UNKNOWN},
	{"three", 3, TS_SEX_UNKNOWN},
	{"four", 4, TS_SEX_UNKNOWN},
	{"five", 5, TS_SEX_UNKNOWN},
	{"six", 6, TS_SEX_UNKNOWN},
	{"seven", 7, TS_SEX_UNKNOWN},
	{"eight", 8, TS_SEX_UNKNOWN},
	{"nine", 9, TS_SEX_UNKNOWN},
	{"ten", 10, TS_SEX_UNKNOWN},
	{"twelve", 12, TS_SEX_UNKNOWN},
	{"twenty", 20, TS_SEX_UNKNOWN},
};

/* Behind a count: "2 pairs of angelfish", "1 male betta". */
static const struct {
	const char *words;
	double times;
	int sex;
} sexes[] = {
	{"pairs of", 2, TS_SEX_PAIRS},
	{"pair of", 2, TS_SEX_PAIRS},
	{"pairs", 2, TS_SEX_PAIRS},
	{"pair", 2, TS_SEX_PAIRS},
	{"males of", 1, TS_SEX_MALE},
	{"females of", 1, TS_SEX_FEMALE},
	{"males", 1, TS_SEX_MALE},
	{"male", 1, TS_SEX_MALE},
	{"females", 1, TS_SEX_FEMALE},
	{"female", 1, TS_SEX_FEMALE},
	{"m", 1, TS_SEX_MALE},
	{"f", 1, TS_SEX_FEMALE},
};

static const char *after_blanks(const char *at)
{
	return at + strspn(at, " \t");
}

/* Moves behind a word that ends there; the same place where it does not stand there. */
static const char *behind(const char *at, const char *word)
{
	size_t len = strlen(word);

	if (strncasecmp(at, word, len) != 0 || (at[len] && at[len] != ' '))
		return at;
	return after_blanks(at + len);
}

/* Digits, "10x", "10 x"; the same place: no figure stands there. */
static const char *behind_figure(const char *at, double *ret)
{
	size_t digits = strspn(at, "0123456789");
	double count = 0;

	if (!digits || digits > 6)
		return at;
	for (size_t i = 0; i < digits; i++)
		count = 10 * count + (at[i] - '0');
	at += digits;
	if (*at == 'x' || *at == 'X')
		at++;
	if (*at && *at != ' ')
		return at - 1; /* "2.5", "10th": no count */
	*ret = count;
	return behind(after_blanks(at), "x");
}

static const char *take_count(const char *at, struct ts_stock_line *ret, bool *ret_given)
{
	const char *rest = behind_figure(at, &ret->count);

	*ret_given = rest != at;
	if (*ret_given)
		return rest;
	for (size_t i = 0; i < sizeof counts / sizeof *counts; i++) {
		rest = behind(at, counts[i].words);
		if (rest == at)
			continue;
		ret->count = counts[i].count;
		ret->sex = counts[i].sex;
		*ret_given = counts[i].count > 0;
		return rest;
	}
	return at;
}

static const char *take_sex(const char *at, struct ts_stock_line *ret)
{
	for (size_t i = 0; i < sizeof sexes / sizeof *sexes; i++) {
		const char *rest = behind(at, sexes[i].words);

		if (rest == at || !*rest)
			continue;
		ret->sex = sexes[i].sex;
		ret->count *= sexes[i].times;
		return rest;
	}
	return at;
}

/* "5 cm ", "2 inch " before a name: how long they are now. */
static const char *take_size(const char *at, struct ts_stock_line *ret)
{
	static const char *const units[] = {"cm", "mm", "inch", "inches"};
	size_t digits = strspn(at, "0123456789."), blank = strspn(at + digits, " ");
	const char *unit = at + digits + blank;
	struct ts_scan scan;
	double size_cm;

	for (size_t i = 0; digits && i < sizeof units / sizeof *units; i++) {
		const char *rest = behind(unit, units[i]);

		if (rest == unit || !*rest ||
			!ts_scan_value(TS_Q_SIDE, at, (size_t)(unit - at) + strlen(units[i]),
				&size_cm, &scan))
			continue;
		ret->size_cm = size_cm;
		return rest;
	}
	return at;
}

/* "dwarf gourami males", "one honey gourami pair": cuts the sex off. */
static size_t take_sex_behind(const char *at, size_t len, struct ts_stock_line *ret, bool *given)
{
	for (size_t i = 0; ret->sex == TS_SEX_UNKNOWN && i < sizeof sexes / sizeof *sexes; i++) {
		size_t word = strlen(sexes[i].words);

		if (strstr(sexes[i].words, " of") || word < strlen("male") || len <= word + 1 ||
			at[len - word - 1] != ' ' ||
			strncasecmp(at + len - word, sexes[i].words, word) != 0)
			continue;
		ret->sex = sexes[i].sex;
		if (sexes[i].times > 1) {
			ret->count = *given ? ret->count * sexes[i].times : sexes[i].times;
			*given = true;
		}
		return len - word - 1;
	}
	return len;
}

/* "neon tetra 10", "neon tetra x10": cuts the figure off. */
static size_t take_count_behind(const char *at, size_t len, struct ts_stock_line *ret, bool *given)
{
	size_t digits = 0, cut;

	while (digits < len && strchr("0123456789", at[len - 1 - digits]))
		digits++;
	cut = len - digits;
	if (!digits || digits == len)
		return len;
	if (cut && (at[cut - 1] == 'x' || at[cut - 1] == 'X'))
		cut--;
	if (!cut || (at[cut - 1] != ' ' && at[cut - 1] != ':'))
		return len;
	(void)behind_figure(at + len - digits, &ret->count);
	*given = true;
	while (cut && strchr(" :,", at[cut - 1]))
		cut--;
	return cut;
}

/* Behind the name: how long they have lived there, in days of a unit. */
static const struct {
	const char *word;
	double days;
} spans[] = {{"hour", 1.0 / 24}, {"hours", 1.0 / 24}, {"day", 1}, {"days", 1}, {"week", 7},
	{"weeks", 7}, {"month", 30.4}, {"months", 30.4}, {"year", 365.25}, {"years", 365.25}};

double ts_days_of(const char *at)
{
	struct ts_stock_line count = {0};
	bool given = false;

	at = take_count(at, &count, &given);
	for (size_t i = 0; given && i < sizeof spans / sizeof *spans; i++) {
		if (strcasecmp(at, spans[i].word) == 0)
			return count.count * spans[i].days;
	}
	return -1;
}

/* Cuts " for 2 years", " since 2024" off the end of a name, and says from which day they live
 * there. */
static size_t take_since(
	struct ts_arena *arena, char *at, size_t len, long today, struct ts_stock_line *ret)
{
	static const char *const words[] = {" for ", " since "};
	char date[TS_DATE_ROOM];

	at[len] = '\0';
	for (size_t from = len; from-- > 0;) {
		for (size_t i = 0; i < 2; i++) {
			const char *behind_it = at + from + strlen(words[i]);
			double days;

			if (strncasecmp(at + from, words[i], strlen(words[i])) != 0)
				continue;
			days = i ? -1 : ts_days_of(behind_it);
			if (i ? !ts_date_meant(behind_it, date)
			      : !(today >= 0 && days >= 0 &&
					ts_date_write(date, today - (long)days)))
				continue;
			ret->since = ts_arena_text(arena, date, TS_DATE_ROOM - 1);
			at[from] = '\0';
			return from;
		}
	}
	return len;
}

/* " for 2 years" at the end of a name. */
static bool tells_how_long(const char *name)
{
	const char *at = strstr(name, " for ");

	return at && ts_days_of(at + strlen(" for ")) >= 0;
}

static bool refuse(struct ts_text *error, const char *words, const char *what)
{
	ts_text_puts(error, "'", words, "' ", what,
		"; write it like \"10 neon tetra\", or name a plan file", NULL);
	return false;
}

bool ts_animal_words(struct ts_arena *arena, const char *words, long today,
	struct ts_stock_line *ret, struct ts_text *error)
{
	const char *at = after_blanks(words);
	struct ts_stock_line line = {0};
	bool given = false;
	size_t len;
	char *name;

	if (behind(at, "living:") != at || behind(at, "there:") != at) {
		at = behind(behind(at, "living:"), "there:");
		line.since = "";
	}
	at = take_size(at, &line);
	at = take_count(at, &line, &given);
	at = take_size(take_sex(at, &line), &line);
	len = strlen(at);
	while (len && at[len - 1] == ' ')
		len--;
	name = ts_arena_text(arena, at, len);
	if (!name)
		return false;
	if (today < 0 && tells_how_long(name))
		return refuse(error, words, "says for how long, and a file grows older");
	len = take_since(arena, name, len, today, &line);
	len = take_sex_behind(name, len, &line, &given);
	if (!given)
		len = take_count_behind(name, len, &line, &given);
	if (!len)
		return refuse(error, words, "names no animal");
	if (given && !(line.count >= 1))
		return refuse(error, words, "is a count of none");
	if (line.count > TS_COUNT_MOST)
		return refuse(error, words, "is more than a plan holds");
	name[len] = '\0';
	line.species = name;
	*ret = line;
	return true;
}

/* So many words are a sentence, where nothing is called so. */
#define SENTENCE_WORDS 4

/* What readings are called beside their keys; common practice. */
static const char *const readings[] = {"nitrite", "nitrate", "ammonium", "hardness",
	"general hardness", "carbonate hardness", NULL};

static bool begins_with_reading(const char *words)
{
	for (size_t i = 0; readings[i]; i++) {
		if (behind(words, readings[i]) != words)
			return true;
	}
	for (size_t i = 0; i < ts_shape_reading.count; i++) {
		const struct ts_field *field = &ts_shape_reading.fields[i];

		if (field->kind == TS_MEASURE && behind(words, field->key) != words)
			return true;
	}
	return false;
}

static size_t count_words(const char *at)
{
	size_t count = 0;

	for (at = after_blanks(at); *at; count++) {
		at += strcspn(at, " \t");
		at = after_blanks(at);
	}
	return count;
}

bool ts_animal_words_astray(const char *words, bool near, struct ts_text *error)
{
	if (!strchr(words, '/') && !begins_with_reading(words) && !ts_is_sign(words) &&
		(near || count_words(words) < SENTENCE_WORDS))
		return false;
	ts_text_puts(error, "'", words,
		"' is no animal and no file; animals stand in quotes with a number (\"10 neon "
		"tetra\"), readings behind flags (--NO2 \"1 mg/L\"), signs too (--signs gasping)",
		NULL);
	return true;
}
