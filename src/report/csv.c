/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The CSV walker. Header and lines come from one descent, which either names a column or fills it,
 * so that they cannot fall apart.
 */
#include "report/csv.h"

#include <math.h>
#include <string.h>

#include "base/number.h"

struct csv {
	struct ts_text *out;
	const struct ts_result_shape *shape; /* of a line */
	const char *items;
	size_t count;
	bool header, filled; /* a column stands in this line already */
};

/* What stands around a column's key: "gh_" and "_dh". */
struct around {
	const char *before, *after;
	bool entry; /* of a list: its name and unit stand in the header */
};

/* Controls but tabs and line ends, and what is no UTF-8, have no way to stand in a table. */
static void put_cell(struct csv *c, const char *value)
{
	bool quoted = strpbrk(value, ",\"\r\n");
	size_t len;

	ts_text_put(c->out, c->filled ? "," : "");
	c->filled = true;
	ts_text_put(c->out, quoted ? "\"" : "");
	for (; *value; value += len ? len : 1) {
		bool fit = !ts_text_control(value) || strchr("\t\r\n", *value);

		len = ts_text_sequence(value);
		ts_text_put(c->out, *value == '"' ? "\"" : "");
		if (len && fit)
			ts_text_add(c->out, value, len);
		else
			ts_text_put(c->out, "\xef\xbf\xbd");
	}
	ts_text_put(c->out, quoted ? "\"" : "");
}

/*
 * A text that a spreadsheet would take for a formula has an apostrophe before it, which shows it as
 * text there; figures are figures, with their sign.
 */
static void put_text(struct csv *c, const char *value)
{
	struct ts_text text;

	if (!*value || !strchr("=+-@\t\r", *value)) {
		put_cell(c, value);
		return;
	}
	ts_text_open(&text, &c->out->allocator);
	ts_text_puts(&text, "'", value, NULL);
	put_cell(c, ts_text_get(&text));
	c->out->failed |= text.failed;
	ts_text_drop(&text);
}

/* "gh_tolerated_low_dh": units in small letters, as in every key. */
static void put_name(struct csv *c, const struct around *a, const char *key, const char *end)
{
	struct ts_text name;

	ts_text_open(&name, &c->out->allocator);
	ts_text_puts(&name, a->before, key, end, *a->after ? "_" : "", NULL);
	for (const char *at = a->after; *at; at++) {
		char letter = (char)(*at >= 'A' && *at <= 'Z' ? *at + 32 : *at == '/' ? '_' : *at);

		ts_text_add(&name, &letter, 1);
	}
	put_cell(c, ts_text_get(&name));
	c->out->failed |= name.failed;
	ts_text_drop(&name);
}

static void put_number(struct csv *c, double value, int decimals)
{
	char digits[TS_NUMBER_ROOM];

	put_cell(c, ts_number_write_short(digits, value, decimals) ? digits : "");
}

static void put_joined(struct csv *c, const char *const *texts, size_t count)
{
	struct ts_text joined;

	ts_text_open(&joined, &c->out->allocator);
	for (size_t i = 0; i < count; i++)
		ts_text_puts(&joined, i ? "; " : "", texts[i], NULL);
	put_text(c, ts_text_get(&joined));
	c->out->failed |= joined.failed;
	ts_text_drop(&joined);
}

static const struct ts_result_field *row_named(const struct ts_result_shape *shape, const char *key)
{
	for (size_t i = 0; i < shape->count; i++) {
		if (strcmp(shape->fields[i].key, key) == 0)
			return &shape->fields[i];
	}
	return NULL;
}

/* The text that a struct has under that key; "" where it has none. */
static const char *text_of(const struct ts_result_shape *shape, const char *at, const char *key)
{
	const struct ts_result_field *f = row_named(shape, key);
	const char *text = NULL;

	if (f && (f->kind == TS_R_TEXT || f->kind == TS_R_WORD))
		memcpy(&text, at + f->offset, sizeof text);
	return text ? text : "";
}

static const char *list_of(const struct ts_result_field *f, const char *base, size_t *ret_count)
{
	const char *items;

	memcpy(&items, base + f->offset, sizeof items);
	memcpy(ret_count, base + f->count_offset, sizeof *ret_count);
	return items;
}

/* Has the list the same named entries in every line? Only lists of a line itself can. */
static bool steady(const struct csv *c, const struct ts_result_field *f)
{
	size_t first_count, count;
	const char *first, *items;

	if (!c->count || f < c->shape->fields || f >= c->shape->fields + c->shape->count ||
		!row_named(f->sub, "name"))
		return false;
	first = list_of(f, c->items, &first_count);
	for (size_t i = 1; i < c->count; i++) {
		items = list_of(f, c->items + i * c->shape->size, &count);
		if (count != first_count)
			return false;
		for (size_t j = 0; j < count; j++) {
			if (strcmp(text_of(f->sub, first + j * f->sub->size, "name"),
				    text_of(f->sub, items + j * f->sub->size, "name")) != 0)
				return false;
		}
	}
	return first_count > 0;
}

static void put_struct(struct csv *c, const struct ts_result_shape *shape, const char *base,
	const struct around *a);

static void put_entries(
	struct csv *c, const struct ts_result_field *f, const char *base, const struct around *a)
{
	size_t count;
	const char *items = list_of(f, base, &count);

	for (size_t i = 0; i < count; i++) {
		const char *at = items + i * f->sub->size;
		struct ts_text before;
		struct around inner;

		ts_text_open(&before, &c->out->allocator);
		ts_text_puts(&before, a->before, text_of(f->sub, at, "name"), "_", NULL);
		inner = (struct around){ts_text_get(&before), text_of(f->sub, at, "unit"), true};
		put_struct(c, f->sub, at, &inner);
		c->out->failed |= before.failed;
		ts_text_drop(&before);
	}
}

static void put_list(
	struct csv *c, const struct ts_result_field *f, const char *base, const struct around *a)
{
	struct ts_text joined;
	size_t count = 0;
	const char *items;

	if (steady(c, f)) {
		put_entries(c, f, base, a);
		return;
	}
	if (c->header) {
		put_name(c, a, f->key, "");
		return;
	}
	items = base ? list_of(f, base, &count) : NULL;
	ts_text_open(&joined, &c->out->allocator);
	for (size_t i = 0; i < count; i++)
		ts_text_puts(&joined, i ? "; " : "",
			text_of(f->sub, items + i * f->sub->size, f->sub->fields[0].key), NULL);
	put_text(c, ts_text_get(&joined));
	c->out->failed |= joined.failed;
	ts_text_drop(&joined);
}

static void put_sub(
	struct csv *c, const struct ts_result_field *f, const char *at, const struct around *a)
{
	struct ts_text before;
	struct around inner;

	ts_text_open(&before, &c->out->allocator);
	ts_text_puts(&before, a->before, f->key, "_", NULL);
	inner = (struct around){ts_text_get(&before), a->after, false};
	put_struct(c, f->sub, at, &inner);
	c->out->failed |= before.failed;
	ts_text_drop(&before);
}

static void put_range(
	struct csv *c, const struct ts_result_field *f, const char *at, const struct around *a)
{
	struct ts_range r = {(double)NAN, (double)NAN};

	if (c->header) {
		put_name(c, a, f->key, "_low");
		put_name(c, a, f->key, "_high");
		return;
	}
	if (at)
		memcpy(&r, at, sizeof r);
	put_number(c, r.low, f->decimals);
	put_number(c, r.high, f->decimals);
}

/* A plain value; `at` NULL: not known. */
static void put_value(struct csv *c, const struct ts_result_field *f, const char *at)
{
	union {
		const char *text;
		struct ts_texts texts;
		bool yes;
		double number;
		size_t count;
	} u = {0};

	if (!at) {
		put_cell(c, "");
		return;
	}
	switch (f->kind) {
	case TS_R_TEXTS:
		memcpy(&u.texts, at, sizeof u.texts);
		put_joined(c, u.texts.items, u.texts.count);
		break;
	case TS_R_BOOL:
		memcpy(&u.yes, at, sizeof u.yes);
		put_cell(c, u.yes ? "yes" : "no");
		break;
	case TS_R_NUMBER:
	case TS_R_SHARE:
		memcpy(&u.number, at, sizeof u.number);
		put_number(c, u.number, f->decimals);
		break;
	case TS_R_COUNT:
		memcpy(&u.count, at, sizeof u.count);
		put_number(c, (double)u.count, 0);
		break;
	default:
		memcpy(&u.text, at, sizeof u.text);
		put_text(c, u.text ? u.text : "");
		break;
	}
}

static void put_field(
	struct csv *c, const struct ts_result_field *f, const char *base, const struct around *a)
{
	const char *at = base ? base + f->offset : NULL;

	switch (f->kind) {
	case TS_R_MAYBE: {
		const void *inner = NULL;

		if (at)
			memcpy(&inner, at, sizeof inner);
		put_sub(c, f, inner, a);
		break;
	}
	case TS_R_SUB:
		put_sub(c, f, at, a);
		break;
	case TS_R_LIST:
		put_list(c, f, base, a);
		break;
	case TS_R_RANGE:
		put_range(c, f, at, a);
		break;
	default:
		if (!c->header)
			put_value(c, f, at);
		else if (f->kind == TS_R_NUMBER)
			put_name(c, a, f->key, "");
		else
			put_name(c, &(struct around){a->before, "", false}, f->key, "");
		break;
	}
}

static void put_struct(struct csv *c, const struct ts_result_shape *shape, const char *base,
	const struct around *a)
{
	for (size_t i = 0; i < shape->count; i++) {
		const char *key = shape->fields[i].key;

		if (!a->entry || (strcmp(key, "name") != 0 && strcmp(key, "unit") != 0))
			put_field(c, &shape->fields[i], base, a);
	}
}

/* The line at `item`; NULL: the header. */
static void put_line(struct csv *c, const char *item)
{
	static const struct around nothing = {"", "", false};

	c->header = !item;
	c->filled = false;
	put_struct(c, c->shape, item ? item : c->count ? c->items : NULL, &nothing);
	ts_text_put(c->out, "\r\n");
}

void ts_csv_write(
	struct ts_text *out, const struct ts_result_shape *shape, const void *items, size_t count)
{
	struct csv c = {out, shape, items, count, true, false};

	put_line(&c, NULL);
	for (size_t i = 0; i < count; i++)
		put_line(&c, c.items + i * shape->size);
}

void ts_csv_head(struct ts_text *out, const struct ts_result_shape *shape, const void *item)
{
	struct csv c = {out, shape, item, 1, true, false};

	put_line(&c, NULL);
}

void ts_csv_line(struct ts_text *out, const struct ts_result_shape *shape, const void *item)
{
	struct csv c = {out, shape, item, 1, false, false};

	put_line(&c, item);
}
