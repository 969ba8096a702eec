/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Values by the kind of their row. Numbers and units are read by units/scan.c; here is what is said
 * where they cannot be.
 */
#include "records/value.h"

#include <string.h>

#include "base/arena.h"
#include "base/text.h"

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

/* What people write in its place, and the word of the row for it. */
static const char *word_meant(const char *const *words, const char *text)
{
	for (const struct ts_also *a = ts_words_also; a->words; a++) {
		if (a->words == words && strcmp(a->also, text) == 0)
			return a->word;
	}
	return text;
}

static bool word(const char *const *words, const char *text, struct ts_arena *arena, int *ret,
	struct ts_value_says *says)
{
	const char *near, *meant = word_meant(words, text);

	for (int i = 0; words[i]; i++) {
		if (words[i][0] == meant[0] && ts_same_word(words[i], meant)) {
			*ret = i;
			return true;
		}
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

static bool read_yesno(const struct value *v, bool *ret)
{
	static const char *const words[] = {"no", "yes", NULL};
	int index = 0;

	if (!word(words, v->text, v->arena, &index, v->says))
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

/* "30 % every 7 days", "30 % every week", "none" */
static bool read_every(const struct value *v, struct ts_every *ret)
{
	enum ts_quantity quantity = v->field->quantity;
	const char *every = strstr(v->text, "every");
	const char *period = every ? every + strlen("every") + strspn(every + 5, " ") : NULL;
	const char *one =
		period && *period >= 'a' ? ts_arena_join(v->arena, "1 ", period, NULL) : NULL;
	size_t len = every ? (size_t)(every - v->text) : 0;
	struct ts_scan scan;
	struct ts_every read = {0, 0};

	if (strcmp(v->text, "none") == 0) {
		*ret = (struct ts_every){0, NONE_DAYS};
		return true;
	}
	period = one ? one : period;
	if (every && ts_scan_value(TS_Q_TIME, period, strlen(period), &read.days, &scan) &&
		read.days > 0 && ts_scan_value(quantity, v->text, len, &read.amount, &scan)) {
		ret->amount = read.amount;
		ret->days = read.days / 24;
		return true;
	}
	return say(v->says, TS_C_RECORDS_QUANTITY,
		ts_arena_join(v->arena, "'", v->text, "': is not so much every so many days", NULL),
		ts_arena_join(v->arena, "write it like ", ts_quantities[quantity].example,
			" every 7 days, or none", NULL));
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
		return word(field->words, text, arena, at, ret);
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
