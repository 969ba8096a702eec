/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands above a column: a key of readings or another of its names, a unit in brackets, a word
 * of other languages, or what the call tells of it.
 */
#include "records/notebook_work.h"

#include <string.h>

#include "base/text.h"
#include "records/rules.h"
#include "records/value.h"

void book_say(struct book *b, enum ts_code_id code, unsigned line, const char *path,
	const char *what, const char *remedy)
{
	struct ts_place place = {b->file, line, line ? 1 : 0, path};

	b->ok = false;
	ts_finding_add(b->findings, &ts_codes[code], &place, what, remedy);
}

const char *book_trimmed(struct book *b, const char *text, size_t len)
{
	while (len && strchr(" \t", text[len - 1]))
		len--;
	while (len && strchr(" \t", *text)) {
		text++;
		len--;
	}
	return ts_arena_text(b->arena, text, len);
}

/* Heads that are no key of a reading. */
static const struct {
	const char *word;
	enum role role;
	const char *key, *unit;
} heads[] = {
	{"date", ROLE_DATE, NULL, NULL},
	{"day", ROLE_DATE, NULL, NULL},
	{"on", ROLE_DATE, NULL, NULL},
	{"when", ROLE_DATE, NULL, NULL},
	{"time", ROLE_TIME, NULL, NULL},
	{"hour", ROLE_TIME, NULL, NULL},
	{"water change", ROLE_CHANGED, NULL, NULL},
	{"water changed", ROLE_CHANGED, NULL, NULL},
	{"changed", ROLE_CHANGED, NULL, NULL},
	{"change", ROLE_CHANGED, NULL, NULL},
	{"happened", ROLE_HAPPENED, NULL, NULL},
	{"what happened", ROLE_HAPPENED, NULL, NULL},
	{"event", ROLE_HAPPENED, NULL, NULL},
	{"events", ROLE_HAPPENED, NULL, NULL},
	{"remark", ROLE_HAPPENED, NULL, NULL},
	{"remarks", ROLE_HAPPENED, NULL, NULL},
	{"note", ROLE_HAPPENED, NULL, NULL},
	{"notes", ROLE_HAPPENED, NULL, NULL},
	{"comment", ROLE_HAPPENED, NULL, NULL},
	{"comments", ROLE_HAPPENED, NULL, NULL},
	/* As other languages have them; a unit stands in brackets. */
	{"datum", ROLE_DATE, NULL, NULL},
	{"tag", ROLE_DATE, NULL, NULL},
	{"fecha", ROLE_DATE, NULL, NULL},
	{"uhrzeit", ROLE_TIME, NULL, NULL},
	{"heure", ROLE_TIME, NULL, NULL},
	{"hora", ROLE_TIME, NULL, NULL},
	{"wasserwechsel", ROLE_CHANGED, NULL, NULL},
	{"bemerkung", ROLE_HAPPENED, NULL, NULL},
	{"bemerkungen", ROLE_HAPPENED, NULL, NULL},
	{"notiz", ROLE_HAPPENED, NULL, NULL},
	{"nitrat", ROLE_READING, "NO3", NULL},
	{"nitrit", ROLE_READING, "NO2", NULL},
	{"ammonium", ROLE_READING, "ammonia", NULL},
	{"ammoniak", ROLE_READING, "ammonia", NULL},
	{"temperatur", ROLE_READING, "temperature", NULL},
	{"karbonathärte", ROLE_READING, "KH", NULL},
	{"gesamthärte", ROLE_READING, "GH", NULL},
	{"leitwert", ROLE_READING, "conductivity", NULL},
	/* What log -f csv writes. */
	{"gh_dh", ROLE_READING, "GH", "dH"},
	{"kh_dh", ROLE_READING, "KH", "dH"},
	{"ph", ROLE_READING, "pH", NULL},
	{"temp_c", ROLE_READING, "temperature", "C"},
	{"no3_mg_l", ROLE_READING, "NO3", "mg/L NO3"},
	{"no2_mg_l", ROLE_READING, "NO2", "mg/L NO2"},
	{"tan_mg_l", ROLE_READING, "ammonia", "mg/L N"},
};

static bool is_unit(const struct ts_field *field, const char *unit, struct ts_arena *arena)
{
	const char *one = ts_arena_join(arena, "1 ", unit, NULL);
	struct ts_measure measure;
	struct ts_scan scan;

	return one && field->kind == TS_MEASURE &&
	       (ts_scan_measure(field->quantity, one, strlen(one), &measure, &scan) ||
		       scan.fault == TS_SCAN_OUTSIDE);
}

/* Of the keys of a reading those that hang on the row: its day is a column of its own. */
static const struct ts_field *key_of(const char *words)
{
	const struct ts_field *field = ts_shape_field_meant(&ts_shape_reading, words);

	return field && strcmp(field->key, "date") != 0 && strcmp(field->key, "time") != 0 ? field
											   : NULL;
}

/* "Nitrate (mg/L NO3)", "KH [dH]", "GH dH": the key is as many words as make one. */
static bool head_as_key(struct book *b, const char *head, struct column *ret)
{
	size_t len = strlen(head);

	for (size_t cut = len; cut > 0; cut--) {
		const char *words, *unit;
		const struct ts_field *field;
		size_t from = cut, end = len;

		if (cut < len && !strchr(" \t([,:/", head[cut]))
			continue;
		words = book_trimmed(b, head, cut);
		field = words ? key_of(words) : NULL;
		if (!field)
			continue;
		while (from < end && strchr(" \t([,:/", head[from]))
			from++;
		while (end > from && strchr(" )]", head[end - 1]))
			end--;
		unit = from < end ? ts_arena_text(b->arena, head + from, end - from) : NULL;
		/* "in" and the like are no part of a unit. */
		if (unit && strncmp(unit, "in ", 3) == 0)
			unit += 3;
		if (unit && field->kind == TS_MEASURE && !is_unit(field, unit, b->arena))
			continue;
		*ret = (struct column){ROLE_READING, field, unit, head, false};
		return true;
	}
	return false;
}

static bool head_as_word(struct book *b, const char *head, struct column *ret)
{
	size_t plain = strcspn(head, "([");
	const char *words = book_trimmed(b, head, plain), *unit = NULL;

	if (head[plain]) {
		size_t len = strcspn(head + plain + 1, ")]");

		unit = book_trimmed(b, head + plain + 1, len);
	}
	for (size_t i = 0; words && i < sizeof heads / sizeof *heads; i++) {
		const struct ts_field *field =
			heads[i].key ? ts_shape_field(&ts_shape_reading, heads[i].key) : NULL;

		if (!ts_same_word(heads[i].word, words) && !ts_same_word(heads[i].word, head))
			continue;
		if (field && unit && !heads[i].unit && !is_unit(field, unit, b->arena))
			return false;
		*ret = (struct column){
			heads[i].role, field, heads[i].unit ? heads[i].unit : unit, head, false};
		return true;
	}
	return false;
}

/* What the call says of a head: "Nitrat=NO3 mg/L NO3"; nothing behind the sign: left out. */
static const char *told(struct book *b, const char *head, bool *ret_any)
{
	size_t len = strlen(head);

	for (size_t i = 0; i < b->how->column_count; i++) {
		const char *one = b->how->columns[i], *sign = strrchr(one, '=');
		size_t end = sign ? (size_t)(sign - one) : 0;

		while (end && one[end - 1] == ' ')
			end--;
		if (!sign || end != len || memcmp(one, head, len) != 0)
			continue;
		*ret_any = true;
		return sign + 1 + strspn(sign + 1, " ");
	}
	*ret_any = false;
	return head;
}

static void say_head(struct book *b, const struct ts_cell *cell, const char *head)
{
	const char *near = *head ? ts_shape_nearest_key(&ts_shape_reading, head) : NULL;

	book_say(b, TS_C_RECORDS_UNKNOWN_KEY, cell->line, NULL,
		*head ? ts_arena_join(b->arena, "the column '", head, "' is not known", NULL)
		      : "a column has no head",
		ts_arena_join(b->arena, near ? "did you mean " : "", near ? near : "",
			near ? "? " : "", "say it with --column \"", *head ? head : "its head",
			"=NO3 mg/L NO3\" (a key and its unit), \"", *head ? head : "its head",
			"=remark\" to keep it in words, \"", *head ? head : "its head",
			"=\" to leave it out", NULL));
}

/* Columns are few: each list has room for all of them. */
static void book_text(struct book *b, struct ts_texts *list, const char *text)
{
	const char **items = list->count
				     ? (const char **)(uintptr_t)list->items
				     : ts_arena_array(b->arena, TS_ROW_CELLS_MOST, sizeof *items);

	if (!items || !text)
		return;
	items[list->count++] = text;
	list->items = items;
}

void book_head(struct book *b, const struct ts_cell *cell)
{
	const char *head = book_trimmed(b, cell->text, cell->len), *means;
	struct column *c = &b->columns[b->column_count++];
	bool any = false;

	*c = (struct column){.head = head};
	if (!head)
		return;
	means = told(b, head, &any);
	if (any && !*means) {
		book_text(b, &b->ret->left_out, head);
		return;
	}
	if (!head_as_word(b, means, c) && !head_as_key(b, means, c)) {
		say_head(b, cell, any ? means : head);
		return;
	}
	c->head = head;
	if (c->role == ROLE_DATE)
		b->date = b->column_count; /* 0: none */
	for (size_t i = 0; i + 1 < b->column_count; i++) {
		if (c->role == ROLE_READING && b->columns[i].field == c->field)
			book_say(b, TS_C_RECORDS_DUPLICATE_KEY, cell->line, c->field->key,
				ts_arena_join(b->arena, "the columns '", b->columns[i].head,
					"' and '", head, "' are both ", c->field->key, NULL),
				"leave one of them out: --column \"HEAD=\"");
	}
	book_text(b, &b->ret->columns, head);
	book_text(b, &b->ret->means,
		ts_arena_join(b->arena,
			c->role == ROLE_READING   ? c->field->key
			: c->role == ROLE_DATE    ? "the day"
			: c->role == ROLE_TIME    ? "the hour"
			: c->role == ROLE_CHANGED ? "water changed"
						  : "what happened",
			c->unit ? ", " : "", c->unit ? c->unit : "", NULL));
}
