/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Header and rows of a table of waters. The cells are read by records/value.c, so that a cell is
 * refused in the words in which a file is.
 */
#include "records/waters.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/findings.h"
#include "base/text.h"
#include "model/codes.h"
#include "records/rules.h"
#include "records/value.h"

struct column {
	const struct ts_field *field;
	bool of_water;    /* of the water, not of its reading */
	const char *unit; /* of its cells; NULL = they carry theirs */
};

struct ts_waters {
	struct ts_cells cells;
	struct column columns[TS_ROW_CELLS_MOST];
	size_t count;
	const char *file;
};

/* One row on its way. */
struct row {
	const struct ts_waters *w;
	struct ts_arena *arena;
	struct ts_findings *findings;
	bool ok;
	struct ts_scan_pair pair;
};

static void say(struct row *r, enum ts_code_id code, unsigned line, unsigned column,
	const char *path, const char *what, const char *remedy)
{
	struct ts_place place = {r->w->file, line, column, path};

	r->ok = false;
	ts_finding_add(r->findings, &ts_codes[code], &place, what, remedy);
}

static void say_fault(struct row *r)
{
	static const struct {
		enum ts_code_id code;
		const char *what, *remedy;
	} says[] = {
		[TS_CELLS_STRAY_QUOTE] = {TS_C_TABLE_QUOTES,
			"a quote stands inside a cell that does not start with one", NULL},
		[TS_CELLS_AFTER_QUOTE] = {TS_C_TABLE_QUOTES,
			"something stands behind the quote that ends a cell", NULL},
		[TS_CELLS_NOT_CLOSED] = {TS_C_TABLE_QUOTES,
			"the quote that opens here is not closed", NULL},
		[TS_CELLS_TOO_MUCH] = {TS_C_RECORDS_TOO_MUCH,
			"more than 64 cells or 8,192 bytes in a row", "one water is one line"},
		[TS_CELLS_NOT_TEXT] = {TS_C_RECORDS_NOT_UTF8, "this is not UTF-8 text", NULL},
	};
	const struct ts_cells *c = &r->w->cells;
	const char *what = says[c->fault].what;
	struct ts_text text;

	ts_text_open(&text, &r->arena->allocator);
	ts_text_put(&text, what);
	if (c->fault == TS_CELLS_NOT_CLOSED && c->next_line > c->fault_line + 1) {
		ts_text_put(&text, "; all up to line ");
		ts_text_number(&text, (double)c->next_line - 1, 0);
		ts_text_put(&text, " was taken for one cell");
	} else if (c->fault == TS_CELLS_AFTER_QUOTE && c->fault_line > c->line) {
		ts_text_put(&text, " of the row from line ");
		ts_text_number(&text, (double)c->line, 0);
		ts_text_put(&text, " on");
	}
	say(r, says[c->fault].code, c->fault_line, c->fault_column, NULL, ts_text_get(&text),
		says[c->fault].remedy);
	r->arena->failed |= text.failed;
	ts_text_drop(&text);
}

static const char *trimmed(struct ts_arena *arena, const char *text, size_t len)
{
	while (len && (text[len - 1] == ' ' || text[len - 1] == '\t'))
		len--;
	while (len && (*text == ' ' || *text == '\t')) {
		text++;
		len--;
	}
	return ts_arena_text(arena, text, len);
}

/* A key of the water itself that a row may hold: not the list of readings, nor the kept tap's day.
 */
static const struct ts_field *water_field(const char *key)
{
	static const struct ts_field label = {.key = "label"};
	static const struct ts_shape other_name = {"", &label, 1, 0, false};
	const struct ts_field *field = ts_shape_field_caseless(
		&ts_shape_water, ts_shape_field_caseless(&other_name, key) ? "name" : key);

	return field && field->kind != TS_LIST && strcmp(field->key, "kept") != 0 ? field : NULL;
}

/* "GH (dH)", "GH [dH]" and "GH dH" into key and unit; no unit: NULL. */
static const char *split(struct ts_arena *arena, const char *head, const char **ret_unit)
{
	size_t len = strcspn(head, " \t(["), end = strlen(head);
	size_t start = len + strspn(head + len, " \t([");

	while (end > start && strchr(")] ", head[end - 1]))
		end--;
	*ret_unit = end > start ? ts_arena_text(arena, head + start, end - start) : NULL;
	return ts_arena_text(arena, head, len);
}

static bool is_unit(const struct ts_field *field, const char *unit, struct ts_arena *arena)
{
	const char *one = ts_arena_join(arena, "1 ", unit, NULL);
	struct ts_measure measure;
	struct ts_scan scan;

	if (!one || field->kind != TS_MEASURE)
		return false;
	return ts_scan_measure(field->quantity, one, strlen(one), &measure, &scan) ||
	       scan.fault == TS_SCAN_OUTSIDE;
}

static void say_column(struct row *r, const struct ts_cell *cell, const char *key)
{
	const char *near = ts_shape_nearest_key(&ts_shape_reading, key);

	say(r, TS_C_RECORDS_UNKNOWN_KEY, cell->line, cell->column, NULL,
		ts_arena_join(r->arena, *key ? "unknown column '" : "a column has no name", key,
			*key ? "'" : "", NULL),
		near && *key ? ts_arena_join(r->arena, "did you mean ", near, "?", NULL)
			     : "columns are name, softened, kind, disinfectant and the keys of a "
			       "reading in docs/formats.md, each with its unit behind it");
}

static void read_head(struct row *r, struct ts_waters *w, const struct ts_cell *cell)
{
	const char *head = trimmed(r->arena, cell->text, cell->len), *unit = NULL;
	const char *key = head ? split(r->arena, head, &unit) : NULL;
	struct column *column = &w->columns[w->count];

	if (!key)
		return;
	*column = (struct column){ts_shape_field_caseless(&ts_shape_reading, key), false, unit};
	if (!column->field) {
		column->field = water_field(key);
		column->of_water = true;
	}
	if (!column->field) {
		say_column(r, cell, key);
		return;
	}
	if (unit && !is_unit(column->field, unit, r->arena))
		say(r, TS_C_RECORDS_QUANTITY, cell->line, cell->column, column->field->key,
			ts_arena_join(r->arena, "'", unit, "' is no unit of this column", NULL),
			column->field->kind == TS_MEASURE
				? ts_arena_join(r->arena, "take a unit as in ",
					  ts_quantities[column->field->quantity].example, NULL)
				: "write the name of the column alone");
	for (size_t i = 0; i < w->count; i++) {
		if (w->columns[i].field == column->field)
			say(r, TS_C_RECORDS_DUPLICATE_KEY, cell->line, cell->column,
				column->field->key,
				ts_arena_join(
					r->arena, "the column '", head, "' stands twice", NULL),
				NULL);
	}
	w->count++;
}

static bool read_header(struct ts_waters *w, struct ts_arena *arena, struct ts_findings *findings)
{
	struct row r = {.w = w, .arena = arena, .findings = findings, .ok = true};
	bool any = ts_cells_next(&w->cells);

	if (!any)
		say(&r, TS_C_RECORDS_MISSING_KEY, 0, 0, NULL, "the file is empty",
			"the first line names the columns: name,GH dH,KH dH,pH");
	else if (w->cells.fault)
		say_fault(&r);
	for (size_t i = 0; any && !w->cells.fault && i < w->cells.count; i++)
		read_head(&r, w, &w->cells.cell[i]);
	return r.ok && !arena->failed;
}

struct ts_waters *ts_waters_open(ts_bytes_source *source, void *state, const char *file,
	struct ts_arena *arena, struct ts_findings *findings)
{
	struct ts_waters *w = ts_arena_take(arena, sizeof *w);

	if (!w)
		return NULL;
	w->cells.source = source;
	w->cells.state = state;
	w->file = file;
	return read_header(w, arena, findings) ? w : NULL;
}

/* Letters of a text in front of one of its bytes. */
static unsigned letters(const char *text, size_t bytes)
{
	unsigned count = 0;

	for (size_t i = 0; i < bytes && text[i]; i++)
		count += ((unsigned char)text[i] & 0xc0) != 0x80;
	return count;
}

/* The header's unit stands behind a cell that is nothing but figures; others have their own. */
static const char *with_unit(struct row *r, const struct column *column, const char *text)
{
	return column->unit && ts_value_bare(text)
		       ? ts_arena_join(r->arena, text, " ", column->unit, NULL)
		       : text;
}

static void read_cell(
	struct row *r, const struct column *column, const struct ts_cell *cell, void *object)
{
	const char *text = trimmed(r->arena, cell->text, cell->len);
	struct ts_value_says says;
	struct ts_place place = {r->w->file, cell->line, cell->column, column->field->key};

	if (text && *text)
		text = with_unit(r, column, text);
	if (!text || !*text)
		return;
	r->ok &= ts_value_read(column->field, text, strlen(text), r->arena, object, &says);
	ts_value_pair_look(&r->pair, column->field, text, &says, r->arena);
	if (!says.what)
		return;
	if (!strpbrk(cell->text, "\"\r\n"))
		place.column += letters(cell->text, strspn(cell->text, " \t") + says.at);
	ts_finding_add(r->findings, &ts_codes[says.code], &place, says.what, says.remedy);
}

static void say_count(struct row *r)
{
	const struct ts_cells *c = &r->w->cells;
	bool more = c->count > r->w->count;
	const struct ts_cell *cell = &c->cell[more ? r->w->count : c->count - 1];
	struct ts_text text;

	ts_text_open(&text, &r->arena->allocator);
	ts_text_number(&text, (double)c->count, 0);
	ts_text_put(&text,
		c->count == 1 ? " cell where the header has " : " cells where the header has ");
	ts_text_number(&text, (double)r->w->count, 0);
	say(r, TS_C_TABLE_CELLS, cell->line, cell->column, NULL, ts_text_get(&text), NULL);
	r->arena->failed |= text.failed;
	ts_text_drop(&text);
}

/* What no cell shows alone. */
static void check_row(struct row *r, const struct ts_reading *reading)
{
	const struct ts_cells *c = &r->w->cells;
	struct ts_value_says asks;
	long day;

	if (ts_value_pair_asks(&r->pair, r->arena, &asks))
		say(r, asks.code, c->line, 1, NULL, asks.what, asks.remedy);
	for (size_t i = 0; reading->date && i < r->w->count; i++) {
		if (strcmp(r->w->columns[i].field->key, "date") == 0 &&
			!ts_date_read(reading->date, &day))
			say(r, TS_C_RECORDS_DATE, c->cell[i].line, c->cell[i].column, "date",
				ts_arena_join(r->arena, "'", reading->date, "' is not a day", NULL),
				NULL);
	}
	if (r->ok && !ts_reading_measured(reading))
		say(r, TS_C_RECORDS_MISSING_KEY, c->line, 1, NULL,
			"nothing was measured in this row",
			"fill in what was, GH first, or leave the row out");
}

enum ts_status ts_waters_next(struct ts_waters *w, struct ts_arena *arena, struct ts_water *ret,
	unsigned *ret_line, struct ts_findings *findings)
{
	struct row r = {.w = w, .arena = arena, .findings = findings, .ok = true};
	struct ts_reading *reading = ts_arena_take(arena, sizeof *reading);
	size_t cells;

	*ret = (struct ts_water){.readings = reading, .reading_count = 1};
	if (!reading)
		return TS_NO_MEMORY;
	if (!ts_cells_next(&w->cells))
		return TS_NO;
	*ret_line = w->cells.line;
	cells = w->cells.count -
		(w->cells.fault && w->cells.count); /* the last is the faulty one */
	for (size_t i = 0; i < cells && i < w->count; i++)
		read_cell(&r, &w->columns[i], &w->cells.cell[i],
			w->columns[i].of_water ? (void *)ret : (void *)reading);
	if (w->cells.fault)
		say_fault(&r);
	else if (w->cells.count != w->count)
		say_count(&r);
	else
		check_row(&r, reading);
	if (arena->failed || (findings && findings->no_memory))
		return TS_NO_MEMORY;
	return r.ok ? TS_OK : TS_BAD_INPUT;
}
