/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The head of a table is read first, then all its days, which together tell whether the day or the
 * month stands in front, then the cells.
 */
#include "records/notebook_work.h"

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

static size_t hand_over(void *state, char *bytes, size_t room)
{
	struct book *b = state;
	size_t len = b->len - b->at < room ? b->len - b->at : room;

	memcpy(bytes, b->bytes + b->at, len);
	b->at += len;
	return len;
}

static const char *cell_text(struct book *b, size_t column)
{
	return column < b->cells.count
		       ? book_trimmed(b, b->cells.cell[column].text, b->cells.cell[column].len)
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
		book_say(b, TS_C_RECORDS_DATE, day_first > month_first ? day_first : month_first,
			NULL, "here the day and the month stand the other way round than above",
			"write the days of all rows in one way, like 2026-03-01");
	else if (asked && !day_first && !month_first)
		book_say(b, TS_C_RECORDS_DATE, asked, NULL,
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
			book_say(b, says.code, b->cells.line, c->head, says.what,
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
		const char *one = book_trimmed(b, text, len);

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
		book_say(b, TS_C_RECORDS_DATE, b->cells.line, NULL, "this row has no day",
			"write the day into every row");
		return false;
	}
	status = ts_notebook_day(text, b->order, r->day);
	if (status == TS_BAD_INPUT)
		book_say(b, TS_C_RECORDS_DATE, b->cells.line, NULL,
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
		book_say(b, asks.code, b->cells.line, NULL, asks.what,
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
	book_say(b, TS_C_TABLE_CELLS, b->cells.line, NULL, "more cells than the head has",
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
	book_say(b, b->cells.fault == TS_CELLS_NOT_TEXT ? TS_C_RECORDS_NOT_UTF8 : TS_C_TABLE_QUOTES,
		b->cells.fault_line, NULL, fault_says(b->cells.fault), NULL);
}

static void read_head(struct book *b)
{
	if (!rewind_to_rows(b)) {
		book_say(b, TS_C_RECORDS_MISSING_KEY, 0, NULL, "the file is empty",
			"its first line names the columns: date,GH dH,KH dH,pH,remark");
		return;
	}
	if (b->cells.fault) {
		say_fault(b);
		return;
	}
	for (size_t i = 0; i < b->cells.count; i++)
		book_head(b, &b->cells.cell[i]);
	if (b->ok && !b->date)
		book_say(b, TS_C_RECORDS_MISSING_KEY, b->cells.line, NULL, "no column is the day",
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
