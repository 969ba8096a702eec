/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Values by the kind of their row. Numbers and units are read by units/scan.c; here is what is said
 * where they cannot be.
 */
#include "records/value.h"

#include <string.h>

#include "base/arena.h"
#include "base/text.h"
#include "records/signs.h"

/* "none" is nothing every so many days. */
#define NONE_DAYS 7

/* A value on its way from text to member. */
struct value {
	const struct ts_field *field;
	const char *text;
	size_t len;
	struct ts_arena *arena;
	struct ts_value_says *says;
};

static bool say(
	struct ts_value_says *ret, enum ts_code_id code, const char *what, const char *remedy)
{
	*ret = (struct ts_value_says){.code = code, .what = what, .remedy = remedy};
	return false;
}

/* "a, b or c" */
static const char *words_joined(struct ts_arena *arena, const char *const *words)
{
	struct ts_text text;
	const char *joined;

	ts_text_open(&text, &arena->allocator);
	for (size_t i = 0; words[i]; i++)
		ts_text_puts(&text, !i ? "" : words[i + 1] ? ", " : " or ", words[i], NULL);
	joined = ts_arena_text(arena, ts_text_get(&text), text.len);
	arena->failed |= text.failed;
	ts_text_drop(&text);
	return joined ? joined : "";
}

static bool word(const char *const *words, const char *text, struct ts_arena *arena, int *ret,
	struct ts_value_says *says)
{
	int meant = ts_word_meant(words, text);
	const char *near;

	if (meant >= 0) {
		*ret = meant;
		return true;
	}
	near = ts_nearest_word(words, text);
	return say(says, TS_C_RECORDS_UNKNOWN_WORD,
		ts_arena_join(arena, "'", text, "' is not a word of this key", NULL),
		ts_arena_join(arena, near ? "did you mean " : "take ", near ? near : "",
			near ? "? It takes " : "", words_joined(arena, words), NULL));
}

bool ts_value_word(const struct ts_field *field, const char *text, struct ts_arena *arena, int *ret,
	struct ts_value_says *ret_says)
{
	*ret_says = (struct ts_value_says){0};
	return word(field->words, text, arena, ret, ret_says);
}

/* Words of anybody: a sign among them, or one that has no row. */
static bool signs_within(
	const char *phrase, const char *near, struct ts_sign *ret, const char **ret_taken)
{
	bool named;

	if (!ret_taken || !ts_sign_within(phrase, ret, &named) || (!named && near))
		return false;
	if (!named)
		*ret_taken = phrase;
	return true;
}

bool ts_value_signs(const char *text, struct ts_arena *arena, struct ts_sign *ret,
	size_t *ret_count, const char **ret_taken, struct ts_value_says *ret_says)
{
	*ret_says = (struct ts_value_says){0};
	*ret_count = 0;
	while (*text) {
		size_t len = strcspn(text, ",;");
		char *phrase = ts_arena_text(arena, text, len);
		const char *at = phrase, *near;

		text += len + (text[len] != '\0');
		if (!phrase || *ret_count == TS_SIGNS_MOST)
			return say(ret_says, TS_C_RECORDS_TOO_MUCH, "more than 16 signs", NULL);
		if (!phrase[strspn(phrase, " ")])
			continue;
		if (ts_sign_words(phrase, &ret[*ret_count], &at)) {
			++*ret_count;
			continue;
		}
		/* "clamped fins, all, for 3 days" is of one sign. */
		if (!at && *ret_count && ts_sign_more(phrase, &ret[*ret_count - 1]))
			continue;
		near = ts_nearest_word(ts_words_sign, at ? at : phrase + strspn(phrase, " "));
		if (signs_within(phrase + strspn(phrase, " "), near, &ret[*ret_count], ret_taken)) {
			++*ret_count;
			continue;
		}
		return say(ret_says, TS_C_RECORDS_UNKNOWN_WORD,
			ts_arena_join(
				arena, "'", at ? at : phrase, "' is no sign that is known", NULL),
			ts_arena_join(arena, near ? "did you mean " : "", near ? near : "",
				near ? "?" : "", near ? " Signs are " : "signs are ",
				words_joined(arena, ts_words_sign),
				"; before it how many (one, some, all), behind it since when",
				NULL));
	}
	return *ret_count || say(ret_says, TS_C_RECORDS_UNKNOWN_WORD, "no sign is named",
				     "write it like: all gasping");
}

static bool read_yesno(const struct value *v, bool *ret)
{
	int index = 0;

	if (!word(ts_words_yesno, v->text, v->arena, &index, v->says))
		return false;
	*ret = index == 1;
	return true;
}

static const char *kept(struct ts_arena *arena, struct ts_text *text)
{
	const char *in_arena = ts_arena_text(arena, ts_text_get(text), text->len);

	arena->failed |= text->failed;
	ts_text_drop(text);
	return in_arena;
}

static bool say_quantity(const struct value *v, const struct ts_scan *scan)
{
	struct ts_text remedy;

	ts_text_open(&remedy, &v->arena->allocator);
	ts_scan_remedy(&remedy, v->field->quantity, v->text, v->len, scan);
	say(v->says, TS_C_RECORDS_QUANTITY,
		ts_arena_join(v->arena, "'", v->text, "': ", ts_scan_says(scan->fault), NULL),
		kept(v->arena, &remedy));
	v->says->at = scan->at;
	return false;
}

static bool read_quantity(const struct value *v, enum ts_kind kind, void *at)
{
	enum ts_quantity quantity = v->field->quantity;
	struct ts_scan scan;
	bool ok;

	if (kind == TS_NUMBER)
		ok = ts_scan_value(quantity, v->text, v->len, at, &scan);
	else if (kind == TS_RANGE)
		ok = ts_scan_range(quantity, v->text, v->len, at, &scan);
	else
		ok = ts_scan_measure(quantity, v->text, v->len, at, &scan);
	if (!ok)
		return say_quantity(v, &scan);
	if (scan.assumed && kind == TS_MEASURE)
		say(v->says, TS_C_RECORDS_UNIT_ASSUMED,
			ts_arena_join(v->arena, "'", v->text, "' ", scan.assumed, NULL), NULL);
	v->says->scan = scan;
	return true;
}

static bool read_choice(const struct value *v, struct ts_choice *ret)
{
	if (v->text[0] && strchr("0123456789.,<>+-", v->text[0]))
		return read_quantity(v, TS_NUMBER, &ret->value);
	return word(v->field->words, v->text, v->arena, &ret->word, v->says);
}

/* Behind the amount: how often. */
static const struct {
	const char *word;
	double days; /* 0: a time stands behind it */
} often[] = {{" every ", 0}, {" each ", 0}, {" per ", 0}, {" a ", 0}, {" once a ", 0}, {"/", 0},
	{" daily", 1}, {" every day", 1}, {" weekly", 7}, {" every week", 7}, {" a week", 7},
	{" per week", 7}, {"/week", 7}, {" fortnightly", 14}, {" every fortnight", 14},
	{" every other week", 14}, {" monthly", 30}, {" every month", 30}, {" a month", 30},
	{" per month", 30}, {"/month", 30}};

/* "7 days", "week", "2 weeks" in days; false: it is no time. */
static bool read_period(struct ts_arena *arena, const char *text, double *ret)
{
	const char *one = *text >= 'a' ? ts_arena_join(arena, "1 ", text, NULL) : text;
	struct ts_scan scan;

	if (!one || !ts_scan_value(TS_Q_TIME, one, strlen(one), ret, &scan) || !(*ret > 0))
		return false;
	*ret /= 24;
	return true;
}

/* "half", "a third" of the water, or so much of it. */
static bool read_amount(const struct value *v, size_t len, double *ret)
{
	static const struct {
		const char *word;
		double percent;
	} parts[] = {{"half", 50}, {"a half", 50}, {"a third", 33}, {"third", 33},
		{"a quarter", 25}, {"quarter", 25}, {"a fifth", 20}, {"all", 100}};
	struct ts_scan scan;

	for (size_t i = 0; v->field->quantity == TS_Q_PERCENT && i < sizeof parts / sizeof *parts;
		i++) {
		if (strlen(parts[i].word) == len && memcmp(parts[i].word, v->text, len) == 0) {
			*ret = parts[i].percent;
			return true;
		}
	}
	return ts_scan_value(v->field->quantity, v->text, len, ret, &scan);
}

/* "30 % every 7 days", "30 % a week", "half weekly", "none". */
static bool read_every(const struct value *v, struct ts_every *ret)
{
	struct ts_every read = {0, 0};

	if (ts_word_meant(ts_words_nothing, v->text) >= 0) {
		*ret = (struct ts_every){0, NONE_DAYS};
		return true;
	}
	for (size_t i = sizeof often / sizeof *often; i-- > 0;) {
		const char *at = strstr(v->text, often[i].word);
		const char *behind = at ? at + strlen(often[i].word) : NULL;

		if (!at || (often[i].days > 0 && *behind) ||
			!read_amount(v, (size_t)(at - v->text), &read.amount))
			continue;
		read.days = often[i].days;
		if (!(read.days > 0) &&
			!read_period(v->arena, behind + strspn(behind, " "), &read.days))
			continue;
		*ret = read;
		return true;
	}
	/* How much alone is said of every week. */
	if (read_amount(v, v->len, &read.amount)) {
		*ret = (struct ts_every){read.amount, NONE_DAYS};
		return true;
	}
	return say(v->says, TS_C_RECORDS_QUANTITY,
		ts_arena_join(v->arena, "'", v->text, "': is not so much every so many days", NULL),
		ts_arena_join(v->arena, "write it like ", ts_quantities[v->field->quantity].example,
			" every 7 days, or none", NULL));
}

/* "all gasping since today" behind the key of the sign says the other two as well. */
static bool read_sign(const struct value *v, void *object, int *ret)
{
	struct ts_sign *sign = object, read;

	if (!ts_sign_words(v->text, &read, NULL))
		return word(v->field->words, v->text, v->arena, ret, v->says);
	*ret = read.sign;
	sign->onset = sign->onset ? sign->onset : read.onset;
	sign->breadth = sign->breadth ? sign->breadth : read.breadth;
	sign->after = sign->after ? sign->after : read.after;
	return true;
}

/* Of "power cut for 12 h" the bytes before "for", or before the figure. */
static size_t word_length(const char *text, const char *figure)
{
	static const char behind[] = " for";
	size_t len = (size_t)(figure - text), cut = strlen(behind);

	while (len && strchr(" :,", text[len - 1]))
		len--;
	if (len > cut && memcmp(text + len - cut, behind, cut) == 0)
		len -= cut;
	return len;
}

/* "off 12 h": a word, and behind it the value of another key of its block. */
static bool read_word(const struct value *v, void *object, int *ret)
{
	const char *figure = strpbrk(v->text, "0123456789");
	size_t len = figure ? word_length(v->text, figure) : 0;

	for (const struct ts_tail *t = ts_tails; len && t->words; t++) {
		struct value tail = {ts_shape_field(t->shape, t->key), figure, strlen(figure),
			v->arena, v->says};
		char *first = t->words == v->field->words
				      ? (char *)ts_arena_text(v->arena, v->text, len)
				      : NULL;

		if (!first || ts_word_meant(t->words, first) != t->word)
			continue;
		*ret = t->word;
		return read_quantity(&tail, TS_NUMBER, (char *)object + tail.field->offset);
	}
	if (v->field->words == ts_words_sign)
		return read_sign(v, object, ret);
	if (v->field->words == ts_words_onset || v->field->words == ts_words_breadth) {
		int meant = v->field->words == ts_words_onset ? ts_onset_words(v->text)
							      : ts_breadth_words(v->text);

		if (meant >= 0) {
			*ret = meant;
			return true;
		}
	}
	return word(v->field->words, v->text, v->arena, ret, v->says);
}

static bool read_text(const struct value *v, const char **ret)
{
	const char *text = ts_arena_text(v->arena, v->text, v->len);

	if (text)
		*ret = text;
	return text;
}

bool ts_value_read(const struct ts_field *field, const char *text, size_t len,
	struct ts_arena *arena, void *object, struct ts_value_says *ret)
{
	struct value v = {field, text, len, arena, NULL};
	void *at = (char *)object + field->offset;

	*ret = (struct ts_value_says){0};
	v.says = ret;
	switch (field->kind) {
	case TS_TEXT:
		return read_text(&v, at);
	case TS_WORD:
		return read_word(&v, object, at);
	case TS_YESNO:
		return read_yesno(&v, at);
	case TS_CHOICE:
		return read_choice(&v, at);
	case TS_EVERY:
		return read_every(&v, at);
	default:
		return read_quantity(&v, field->kind, at);
	}
}

void ts_value_pair_look(struct ts_scan_pair *pair, const struct ts_field *field, const char *text,
	const struct ts_value_says *says, struct ts_arena *arena)
{
	if (field->kind == TS_MEASURE &&
		(field->quantity == TS_Q_GH || field->quantity == TS_Q_KH) && !says->scan.fault &&
		(!says->what || says->code == TS_C_RECORDS_UNIT_ASSUMED))
		ts_scan_pair_look(
			pair, field->quantity, ts_arena_join(arena, text, NULL), &says->scan);
}

bool ts_value_pair_asks(
	const struct ts_scan_pair *pair, struct ts_arena *arena, struct ts_value_says *ret)
{
	struct ts_text what, remedy;
	const char *says, *right;

	*ret = (struct ts_value_says){0};
	if (!pair->bare || !pair->other)
		return false;
	ts_text_open(&what, &arena->allocator);
	ts_text_open(&remedy, &arena->allocator);
	ts_scan_pair_ask(pair, &what, &remedy);
	says = kept(arena, &what);
	right = kept(arena, &remedy);
	say(ret, TS_C_RECORDS_QUANTITY, says, right);
	return true;
}

bool ts_value_bare(const char *text)
{
	struct ts_measure measure;
	struct ts_scan scan;

	return ts_scan_measure(TS_Q_NUMBER, text, strlen(text), &measure, &scan) ||
	       scan.fault != TS_SCAN_UNIT_UNKNOWN;
}
