/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A sentence as words: blanks part them, marks are words of their own, a figure stands apart from
 * the unit or the key that is glued to it.
 */
#include <string.h>
#include <strings.h>

#include "base/text.h"
#include "typed/reader.h"

bool ts_typed_is(const char *a, const char *b)
{
	return strcasecmp(a, b) == 0;
}

bool ts_typed_among(const char *word, const char *const *list, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		if (ts_typed_is(word, list[i]))
			return true;
	}
	return false;
}

static bool digit(char c)
{
	return c >= '0' && c <= '9';
}

size_t ts_typed_figure_len(const char *at)
{
	size_t len = strspn(at, "0123456789");

	if (!len && *at == '.' && digit(at[1]))
		return 1 + strspn(at + 1, "0123456789");
	if (len && (at[len] == '.' || at[len] == ',') && digit(at[len + 1]))
		len += 1 + strspn(at + len + 1, "0123456789");
	return len;
}

bool ts_typed_is_figure(const char *word)
{
	size_t len = ts_typed_figure_len(word);

	return len && !word[len];
}

bool ts_typed_is_count(const char *word)
{
	size_t len = strspn(word, "0123456789");

	return len && (!word[len] || ts_typed_is(word + len, "x"));
}

static const char *const numbers[] = {"zero", "one", "two", "three", "four", "five", "six", "seven",
	"eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen",
	"seventeen", "eighteen", "nineteen", "twenty"};
static const struct {
	const char *word;
	double number;
} more_numbers[] = {{"a", 1}, {"an", 1}, {"couple", 2}, {"both", 2}, {"dozen", 12}, {"thirty", 30},
	{"forty", 40}, {"fifty", 50}, {"sixty", 60}, {"hundred", 100}};

double ts_typed_number(const char *word)
{
	double number = 0, place = 1;
	bool point = false;

	for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
		if (ts_typed_is(word, numbers[i]))
			return (double)i;
	}
	for (size_t i = 0; i < sizeof more_numbers / sizeof *more_numbers; i++) {
		if (ts_typed_is(word, more_numbers[i].word))
			return more_numbers[i].number;
	}
	if (!ts_typed_is_figure(word))
		return 0;
	for (; *word; word++) {
		if (!digit(*word)) {
			point = true;
			continue;
		}
		place /= point ? 10 : 1;
		number = point ? number + place * (*word - '0') : 10 * number + (*word - '0');
	}
	return number;
}

static void add_word(struct ts_typed *t, const char *at, size_t len)
{
	if (!len)
		return;
	if (t->count == TS_TYPED_WORDS_MOST) {
		t->long_one = true;
		return;
	}
	t->word[t->count++] = ts_arena_text(t->arena, at, len);
}

/* A figure with a decimal comma is one with a point. */
static void add_figure(struct ts_typed *t, const char *at, size_t len)
{
	char *figure = ts_arena_text(t->arena, at, len), *comma;

	if (!figure)
		return;
	comma = strchr(figure, ',');
	if (comma)
		*comma = '.';
	add_word(t, figure, len);
}

/* Keys that people glue to their figure: "pH7.2", "GH8". */
static const char *const glued[] = {"ph", "gh", "kh", "temp", "no2-", "no3-"};

static size_t glued_len(const char *at, size_t len)
{
	for (size_t i = 0; i < sizeof glued / sizeof *glued; i++) {
		size_t key = strlen(glued[i]);

		if (len > key && strncasecmp(at, glued[i], key) == 0 &&
			ts_typed_figure_len(at + key))
			return key;
	}
	return 0;
}

/* "54l", "8dH", "2 foot", "<0.05": the figure and its unit are two words. */
static void add_apart(struct ts_typed *t, const char *at, size_t len)
{
	size_t key = glued_len(at, len), digits;
	const char *rest;

	if (key) {
		add_word(t, at, key - (at[key - 1] == '-'));
		at += key;
		len -= key;
	}
	if (len > 1 && strchr("<~>", *at)) {
		if (*at != '~')
			add_word(t, at, 1);
		at++;
		len--;
	}
	digits = ts_typed_figure_len(at);
	/* "6.5-7" */
	if (digits && digits + 1 < len && at[digits] == '-' &&
		ts_typed_figure_len(at + digits + 1)) {
		add_figure(t, at, digits);
		add_word(t, "-", 1);
		add_apart(t, at + digits + 1, len - digits - 1);
		return;
	}
	if (digits && digits == len) {
		add_figure(t, at, len);
		return;
	}
	rest = ts_arena_text(
		t->arena, at + (digits < len ? digits : len), digits < len ? len - digits : 0);
	if (!digits || digits > len || !rest || (!ts_typed_unit(rest) && !ts_typed_sex(rest))) {
		add_word(t, at, len);
		return;
	}
	add_figure(t, at, digits);
	add_word(t, rest, strlen(rest));
}

/* "mg/l", "uS/cm", "NH3/NH4": the stroke is of the word. */
static bool stroke_within(const char *start, const char *at)
{
	static const char *const before[] = {
		"mg", "ug", "g", "us", "ms", "mmol", "meq", "nh3", "nh4"};
	static const char *const behind[] = {
		"l", "lt", "ltr", "liter", "litre", "cm", "m", "nh3", "nh4", "nh4+"};
	size_t len = (size_t)(at - start), digits = ts_typed_figure_len(start);
	bool is_before = false;

	digits = digits < len ? digits : 0;
	for (size_t i = 0; i < sizeof before / sizeof *before; i++)
		is_before |= strlen(before[i]) == len - digits &&
			     strncasecmp(start + digits, before[i], len - digits) == 0;
	for (size_t i = 0; is_before && i < sizeof behind / sizeof *behind; i++) {
		size_t word = strlen(behind[i]);
		char end = strncasecmp(at + 1, behind[i], word) == 0 ? at[1 + word] : 'x';

		if (!end || strchr(" \t\n,;.?!)-:", end))
			return true;
	}
	return false;
}

/* "7,5", but not "6 guppies,4 tetras" nor "6, 4". */
static bool comma_within(const char *start, const char *at)
{
	return at > start && *at == ',' && digit(at[-1]) && digit(at[1]);
}

static size_t word_len(const char *start)
{
	const char *at = start;

	for (;;) {
		at += strcspn(at, " \t\n,;?!()+&/=:");
		if (*at && (comma_within(start, at) || (*at == '/' && stroke_within(start, at)) ||
				   (*at == '/' && at > start && at[-1] == '%') ||
				   (*at == '+' && at > start && digit(at[-1]))))
			at++;
		else
			return (size_t)(at - start);
	}
}

void ts_typed_cut(struct ts_typed *t, const char *at)
{
	while (*at) {
		size_t len = word_len(at);

		/* A point only where no figure goes on. */
		while (len && strchr(".+", at[len - 1]))
			len--;
		add_apart(t, at, len);
		at += len;
		if (*at && strchr("()=", *at))
			add_word(t, at, 1);
		else if (*at == ':')
			add_word(t, "=", 1);
		else if (*at && strchr(",;?!+&/.", *at))
			add_word(t, ",", 1);
		at += *at != '\0';
	}
}

size_t ts_typed_phrase(const struct ts_typed *t, size_t at, const char *words)
{
	size_t count = 0;

	while (*words) {
		size_t len = strcspn(words, " ");

		if (at + count >= t->count || strlen(t->word[at + count]) != len ||
			strncasecmp(t->word[at + count], words, len) != 0)
			return 0;
		count++;
		words += len;
		words += *words == ' ';
	}
	return count;
}

const char *ts_typed_joined(const struct ts_typed *t, size_t from, size_t to)
{
	struct ts_text text;
	const char *all;

	ts_text_open(&text, &t->arena->allocator);
	for (size_t i = from; i < to; i++)
		ts_text_puts(&text, i > from ? " " : "", t->word[i], NULL);
	all = text.failed ? NULL : ts_arena_text(t->arena, ts_text_get(&text), text.len);
	t->arena->failed |= text.failed;
	ts_text_drop(&text);
	return all ? all : "";
}

const char *ts_typed_number_text(const struct ts_typed *t, double number)
{
	struct ts_text text;
	const char *all;

	ts_text_open(&text, &t->arena->allocator);
	ts_text_number_short(&text, number, 1);
	all = text.failed ? NULL : ts_arena_text(t->arena, ts_text_get(&text), text.len);
	t->arena->failed |= text.failed;
	ts_text_drop(&text);
	return all ? all : "";
}

bool ts_typed_ends(const struct ts_typed *t, size_t at)
{
	return at >= t->count || strpbrk(t->word[at], ",()");
}
