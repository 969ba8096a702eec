/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The head of a table is read first, then all its days, which together tell whether the day or the
 * month stands in front, then the cells.
 */
#include "records/notebook.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "base/text.h"
#include "model/codes.h"
#include "records/cells.h"
#include "records/happened.h"
#include "records/rules.h"
#include "records/value.h"

/* What stands in a column. */
enum role { ROLE_SKIP, ROLE_DATE, ROLE_TIME, ROLE_READING, ROLE_CHANGED, ROLE_HAPPENED };

struct column {
	enum role role;
	const struct ts_field *field; /* of a READING */
	const char *unit, *head;      /* unit NULL: cells carry theirs */
	bool said;                    /* of this column a mistake has been told */
};

struct book {
	const char *bytes, *file;
	size_t len, at;
	const struct ts_notebook_how *how;
	struct ts_arena *arena;
	struct ts_findings *findings;
	struct ts_cells cells;
	struct column columns[TS_ROW_CELLS_MOST];
	size_t column_count, date, room;
	enum ts_day_order order;
	bool ok, pair_said;
	struct ts_notebook *ret;
};

static void say(struct book *b, enum ts_code_id code, unsigned line, const char *path,
	const char *what, const char *remedy)
{
	struct ts_place place = {b->file, line, line ? 1 : 0, path};

	b->ok = false;
	ts_finding_add(b->findings, &ts_codes[code], &place, what, remedy);
}

static size_t hand_over(void *state, char *bytes, size_t room)
{
	struct book *b = state;
	size_t len = b->len - b->at < room ? b->len - b->at : room;

	memcpy(bytes, b->bytes + b->at, len);
	b->at += len;
	return len;
}

static const char *trimmed(struct book *b, const char *text, size_t len)
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
		words = trimmed(b, head, cut);
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
	const char *words = trimmed(b, head, plain), *unit = NULL;

	if (head[plain]) {
		size_t len = strcspn(head + plain + 1, ")]");

		unit = trimmed(b, head + plain + 1, len);
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

	say(b, TS_C_RECORDS_UNKNOWN_KEY, cell->line, NULL,
		*head ? ts_arena_join(b->arena, "the column '", head, "' is not known", NULL)
		      : "a column has no head",
		ts_arena_join(b->arena, near ? "did you mean " : "", near ? near : "",
			near ? "? " : "", "say it with --column \"", *head ? head : "its head",
			"=NO3 mg/L NO3\" (a key and its unit), \"", *head ? head : "its head",
			"=remark\" to keep it in words, \"", *head ? head : "its head",
			"=\" to leave it out", NULL));
}

/* Columns are few: each list has room for all of them. */
static void add_text(struct book *b, struct ts_texts *list, const char *text)
{
	const char **items = list->count
				     ? (const char **)(uintptr_t)list->items
				     : ts_arena_array(b->arena, TS_ROW_CELLS_MOST, sizeof *items);

	if (!items || !text)
		return;
	items[list->count++] = text;
	list->items = items;
}

static void take_head(struct book *b, const struct ts_cell *cell)
{
	const char *head = trimmed(b, cell->text, cell->len), *means;
	struct column *c = &b->columns[b->column_count++];
	bool any = false;

	*c = (struct column){.head = head};
	if (!head)
		return;
	means = told(b, head, &any);
	if (any && !*means) {
		add_text(b, &b->ret->left_out, head);
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
			say(b, TS_C_RECORDS_DUPLICATE_KEY, cell->line, c->field->key,
				ts_arena_join(b->arena, "the columns '", b->columns[i].head,
					"' and '", head, "' are both ", c->field->key, NULL),
				"leave one of them out: --column \"HEAD=\"");
	}
	add_text(b, &b->ret->columns, head);
	add_text(b, &b->ret->means,
		ts_arena_join(b->arena,
			c->role == ROLE_READING   ? c->field->key
			: c->role == ROLE_DATE    ? "the day"
			: c->role == ROLE_TIME    ? "the hour"
			: c->role == ROLE_CHANGED ? "water changed"
						  : "what happened",
			c->unit ? ", " : "", c->unit ? c->unit : "", NULL));
}

static const char *cell_text(struct book *b, size_t column)
{
	return column < b->cells.count
		       ? trimmed(b, b->cells.cell[column].text, b->cells.cell[column].len)
		       : "";
}

static bool rewind_to_rows(struct book *b)
{
	b->at = 0;
	b->cells = (struct ts_cells){.source = hand_over, .state = b};
	return ts_cells_next(&b->cells);
}

/* All days together: one beyond 12 in front or behind tells the order of all. */
static void find_order(struct book *b)
{
	unsigned day_first = 0, month_first = 0, asked = 0;

	b->order = b->how->order;
	if (b->order != TS_DAYS_ASKED || !rewind_to_rows(b))
		return;
	while (ts_cells_next(&b->cells) && !b->cells.fault) {
		const char *text = cell_text(b, b->date - 1);
		enum ts_day_order one = text ? ts_notebook_order(text) : TS_DAYS_ASKED;
		char out[11];

		day_first = one == TS_DAYS_DAY_FIRST && !day_first ? b->cells.line : day_first;
		month_first =
			one == TS_DAYS_MONTH_FIRST && !month_first ? b->cells.line : month_first;
		if (text && ts_notebook_day(text, TS_DAYS_ASKED, out) == TS_NO && !asked)
			asked = b->cells.line;
	}
	if (day_first && month_first)
		say(b, TS_C_RECORDS_DATE, day_first > month_first ? day_first : month_first, NULL,
			"here the day and the month stand the other way round than above",
			"write the days of all rows in one way, like 2026-03-01");
	else if (asked && !day_first && !month_first)
		say(b, TS_C_RECORDS_DATE, asked, NULL,
			"is the day or the month in front? No row of the table tells",
			"say it with --dates day-first or --dates month-first");
	b->order = day_first ? TS_DAYS_DAY_FIRST : month_first ? TS_DAYS_MONTH_FIRST : b->order;
}

/* One row on its way. */
struct row {
	char day[11];
	const char *time;
	struct ts_notebook_entry reading;
	struct ts_reading read;
	struct ts_scan_pair pair;
};

static struct ts_notebook_entry *add_entry(struct book *b)
{
	struct ts_notebook_entry *items =
		ts_arena_grow(b->arena, b->ret->entries, b->ret->count, &b->room, sizeof *items);

	if (!items)
		return NULL;
	b->ret->entries = items;
	items[b->ret->count] = (struct ts_notebook_entry){.line = b->cells.line};
	return &items[b->ret->count++];
}

/* What people write where nothing was read. */
static bool is_nothing(const char *text)
{
	static const char *const words[] = {"", "-", "--", "?", "n/a", "na", "none", "x"};

	for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
		if (ts_same_word(words[i], text) || strcmp(words[i], text) == 0)
			return true;
	}
	return false;
}

static void take_value(struct book *b, struct row *r, struct column *c, const char *text)
{
	struct ts_value_says says;

	if (c->unit && ts_value_bare(text))
		text = ts_arena_join(b->arena, text, " ", c->unit, NULL);
	if (!text)
		return;
	if (!ts_value_read(c->field, text, strlen(text), b->arena, &r->read, &says)) {
		if (!c->said)
			say(b, says.code, b->cells.line, c->head, says.what,
				ts_arena_join(b->arena, says.remedy ? says.remedy : "",
					says.remedy ? "; of the whole column: "
						    : "of the whole column: ",
					"--column \"", c->head, "=", c->field->key, " UNIT\"",
					NULL));
		c->said = true;
		return;
	}
	ts_value_pair_look(&r->pair, c->field, text, &says, b->arena);
	r->reading.pairs[r->reading.count++] = (struct ts_pair){c->field->key, text};
}

static void put_pair(struct ts_notebook_entry *e, const char *key, const char *value)
{
	if (value)
		e->pairs[e->count++] = (struct ts_pair){key, value};
}

static const char *amount(struct book *b, double value, const char *unit)
{
	struct ts_text text;
	const char *kept;

	ts_text_open(&text, &b->arena->allocator);
	ts_text_number_short(&text, value, 2);
	ts_text_puts(&text, *unit ? " " : "", unit, NULL);
	kept = ts_arena_text(b->arena, ts_text_get(&text), text.len);
	b->arena->failed |= text.failed;
	ts_text_drop(&text);
	return kept;
}

/* What happened, in its keeper's words; what has no row is a remark, and nothing is lost. */
static void take_words(struct book *b, const struct row *r, const char *words)
{
	struct ts_notebook_entry *e = add_entry(b);
	struct ts_tank_event event;
	struct ts_text error;

	if (!e)
		return;
	ts_text_open(&error, &b->arena->allocator);
	if (!ts_happened_words(b->arena, words, &event, &error))
		event = (struct ts_tank_event){.what = TS_HAPPENED_REMARK, .says = words};
	ts_text_drop(&error);
	e->list = "events";
	e->pairs = ts_arena_array(b->arena, ts_shape_event.count, sizeof *e->pairs);
	if (!e->pairs)
		return;
	put_pair(e, "date", ts_arena_text(b->arena, r->day, strlen(r->day)));
	put_pair(e, "time", r->time);
	put_pair(e, "what", ts_words_happened[event.what]);
	if (event.litres > 0)
		put_pair(e, "litres", amount(b, event.litres, "L"));
	if (event.share_percent > 0)
		put_pair(e, "share", amount(b, event.share_percent, "%"));
	if (event.count > 0)
		put_pair(e, "count", amount(b, event.count, ""));
	if (event.lasted_h > 0)
		put_pair(e, "lasted", amount(b, event.lasted_h, "h"));
	put_pair(e, "says", words);
}

/* "changed 40 L; 2 neons died": one thing each. */
static void take_happened(struct book *b, const struct row *r, const char *text)
{
	while (*text) {
		size_t len = strcspn(text, ";");
		const char *one = trimmed(b, text, len);

		if (one && *one)
			take_words(b, r, one);
		text += len + (text[len] == ';');
	}
}

static void take_changed(
	struct book *b, const struct row *r, const struct column *c, const char *text)
{
	bool bare = ts_value_bare(text),
	     none = bare && strtod(text, NULL) <= 0 && !strpbrk(text, "123456789");

	if (none)
		return;
	take_words(b, r,
		ts_arena_join(b->arena, "changed ", text, bare && c->unit ? " " : "",
			bare && c->unit ? c->unit : "", NULL));
}

static bool is_clock(const char *text)
{
	return ts_clock_read(text) >= 0;
}

/* The hour behind the day, of "2026-03-01 18:00"; NULL: none stands there. */
static const char *hour_of(struct book *b, const char *text)
{
	const char *colon = strchr(text, ':'), *from = colon;
	char clock[6] = "00:00";

	if (!colon || strspn(colon + 1, "0123456789") < 2)
		return NULL;
	while (from > text && from[-1] >= '0' && from[-1] <= '9' && colon - from < 2)
		from--;
	if (from == colon)
		return NULL;
	memcpy(clock + 2 - (colon - from), from, (size_t)(colon - from) + 3);
	return is_clock(clock) ? ts_arena_text(b->arena, clock, 5) : NULL;
}

static bool take_day(struct book *b, struct row *r)
{
	const char *text = cell_text(b, b->date - 1);
	enum ts_status status;

	if (!text)
		return false;
	if (is_nothing(text)) {
		say(b, TS_C_RECORDS_DATE, b->cells.line, NULL, "this row has no day",
			"write the day into every row");
		return false;
	}
	status = ts_notebook_day(text, b->order, r->day);
	if (status == TS_BAD_INPUT)
		say(b, TS_C_RECORDS_DATE, b->cells.line, NULL,
			ts_arena_join(b->arena, "'", text, "' is not a day", NULL), NULL);
	r->time = hour_of(b, text);
	return status == TS_OK;
}

static bool is_blank(const struct book *b)
{
	for (size_t i = 0; i < b->cells.count; i++) {
		if (strspn(b->cells.cell[i].text, " \t") < b->cells.cell[i].len)
			return false;
	}
	return true;
}

static void take_values(struct book *b, struct row *r)
{
	struct ts_value_says asks;

	for (size_t i = 0; i < b->cells.count; i++) {
		struct column *c = &b->columns[i];
		const char *text = cell_text(b, i);

		if (!text || is_nothing(text))
			continue;
		if (c->role == ROLE_TIME)
			r->time = hour_of(b, text);
		else if (c->role == ROLE_READING)
			take_value(b, r, c, text);
	}
	if (!b->pair_said && ts_value_pair_asks(&r->pair, b->arena, &asks)) {
		say(b, asks.code, b->cells.line, NULL, asks.what,
			"of a whole column: --column \"GH=GH ppm\", or dH");
		b->pair_said = true;
	}
}

static void take_events(struct book *b, const struct row *r)
{
	for (size_t i = 0; i < b->cells.count; i++) {
		const char *text = cell_text(b, i);

		if (!text || is_nothing(text))
			continue;
		if (b->columns[i].role == ROLE_HAPPENED)
			take_happened(b, r, text);
		else if (b->columns[i].role == ROLE_CHANGED)
			take_changed(b, r, &b->columns[i], text);
	}
}

static void put_reading(struct book *b, struct row *r)
{
	struct ts_notebook_entry *e;

	if (r->reading.count < 2)
		return;
	put_pair(&r->reading, "time", r->time);
	e = add_entry(b);
	if (e)
		*e = r->reading;
}

/* What stands beyond the head is of no column; a row may end before it. */
static bool fits_head(struct book *b)
{
	while (b->cells.count > b->column_count && !b->cells.cell[b->cells.count - 1].len)
		b->cells.count--;
	if (b->cells.count <= b->column_count)
		return true;
	say(b, TS_C_TABLE_CELLS, b->cells.line, NULL, "more cells than the head has",
		"put a cell with the separator in it into quotes");
	return false;
}

static void take_row(struct book *b)
{
	struct row r = {.reading = {.list = "readings"}};

	if (is_blank(b) || !fits_head(b) || !take_day(b, &r))
		return;
	b->ret->rows++;
	r.reading.pairs = ts_arena_array(b->arena, b->column_count + 2, sizeof *r.reading.pairs);
	if (!r.reading.pairs)
		return;
	r.reading.line = b->cells.line;
	put_pair(&r.reading, "date", ts_arena_text(b->arena, r.day, strlen(r.day)));
	take_values(b, &r);
	put_reading(b, &r);
	take_events(b, &r);
}

static const char *fault_says(enum ts_cells_fault fault)
{
	switch (fault) {
	case TS_CELLS_STRAY_QUOTE:
		return "a quote stands inside a cell that does not start with one";
	case TS_CELLS_AFTER_QUOTE:
		return "something stands behind the quote that ends a cell";
	case TS_CELLS_NOT_CLOSED:
		return "the quote that opens here is not closed";
	case TS_CELLS_NOT_TEXT:
		return "this is not UTF-8 text";
	default:
		return "more than 64 cells or 8,192 bytes in a row";
	}
}

static void say_fault(struct book *b)
{
	say(b, b->cells.fault == TS_CELLS_NOT_TEXT ? TS_C_RECORDS_NOT_UTF8 : TS_C_TABLE_QUOTES,
		b->cells.fault_line, NULL, fault_says(b->cells.fault), NULL);
}

static void read_head(struct book *b)
{
	if (!rewind_to_rows(b)) {
		say(b, TS_C_RECORDS_MISSING_KEY, 0, NULL, "the file is empty",
			"its first line names the columns: date,GH dH,KH dH,pH,remark");
		return;
	}
	if (b->cells.fault) {
		say_fault(b);
		return;
	}
	for (size_t i = 0; i < b->cells.count; i++)
		take_head(b, &b->cells.cell[i]);
	if (b->ok && !b->date)
		say(b, TS_C_RECORDS_MISSING_KEY, b->cells.line, NULL, "no column is the day",
			"say which is with --column \"HEAD=date\"");
}

/* Days sort as letters do; of one day the order of the table stays. Most tables are sorted. */
static void sort_by_day(struct ts_notebook *n)
{
	for (size_t i = 1; i < n->count; i++) {
		struct ts_notebook_entry e = n->entries[i];
		size_t at = i;

		for (; at && strcmp(n->entries[at - 1].pairs[0].value, e.pairs[0].value) > 0; at--)
			n->entries[at] = n->entries[at - 1];
		n->entries[at] = e;
	}
}

enum ts_status ts_notebook_read(const char *bytes, size_t len, const char *file,
	const struct ts_notebook_how *how, struct ts_arena *arena, struct ts_notebook *ret,
	struct ts_findings *findings)
{
	struct book *b = ts_arena_take(arena, sizeof *b);

	if (!b)
		return TS_NO_MEMORY;
	*ret = (struct ts_notebook){0};
	*b = (struct book){.bytes = bytes,
		.len = len,
		.file = file,
		.how = how,
		.arena = arena,
		.findings = findings,
		.ok = true,
		.ret = ret};
	read_head(b);
	if (b->ok)
		find_order(b);
	if (b->ok && rewind_to_rows(b)) {
		while (ts_cells_next(&b->cells)) {
			if (b->cells.fault)
				say_fault(b);
			else
				take_row(b);
		}
	}
	if (arena->failed || (findings && findings->no_memory))
		return TS_NO_MEMORY;
	if (b->ok)
		sort_by_day(ret);
	return b->ok ? TS_OK : TS_BAD_INPUT;
}
