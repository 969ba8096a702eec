/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The reader of rows: one byte ahead, one buffer for the row, nothing that grows.
 */
#include "records/cells.h"

#include "base/text.h"

#define END (-1)

static bool fill(struct ts_cells *c)
{
	c->at = 0;
	c->len = c->source(c->state, c->piece, sizeof c->piece);
	return c->len > 0;
}

/* The next byte, which stays; END behind the last. */
static int look(struct ts_cells *c)
{
	if (c->at == c->len && !fill(c))
		return END;
	return (unsigned char)c->piece[c->at];
}

/* Past the byte that look() showed. */
static void step(struct ts_cells *c)
{
	unsigned char byte = (unsigned char)c->piece[c->at++];

	if (byte == '\n' || (byte == '\r' && look(c) != '\n')) {
		c->next_line++;
		c->next_column = 1;
	} else if (byte != '\r' && (byte & 0xc0) != 0x80) {
		c->next_column++;
	}
}

/* Passes over a byte order mark. */
static void begin(struct ts_cells *c)
{
	size_t got;

	c->begun = true;
	c->next_line = c->next_column = 1;
	while (c->len < 3 &&
		(got = c->source(c->state, c->piece + c->len, sizeof c->piece - c->len)) > 0)
		c->len += got;
	c->at = ts_text_order_mark(c->piece, c->len);
}

static void find(struct ts_cells *c, enum ts_cells_fault fault, unsigned line, unsigned column)
{
	if (c->fault)
		return;
	c->fault = fault;
	c->fault_line = line;
	c->fault_column = column;
}

static void find_here(struct ts_cells *c, enum ts_cells_fault fault)
{
	find(c, fault, c->next_line, c->next_column);
}

/* Keeps the next byte in the row; false where there is no room, or the byte is in no text. */
static bool keep(struct ts_cells *c)
{
	if (c->used == TS_ROW_BYTES_MOST || !c->piece[c->at])
		return false;
	c->row[c->used++] = c->piece[c->at];
	step(c);
	return true;
}

static void say_not_kept(struct ts_cells *c)
{
	find_here(c, c->piece[c->at] ? TS_CELLS_TOO_MUCH : TS_CELLS_NOT_TEXT);
}

/* Does a cell end here? The first separator that is met is the file's. */
static bool ends(struct ts_cells *c, int byte)
{
	if (byte == END || byte == '\r' || byte == '\n')
		return true;
	if (!c->separator && (byte == ',' || byte == ';' || byte == '\t'))
		c->separator = (char)byte;
	return c->separator && byte == c->separator;
}

static void take_quoted(struct ts_cells *c)
{
	unsigned line = c->next_line, column = c->next_column - 1;

	for (;;) {
		int byte = look(c);

		if (byte == '"') {
			step(c);
			if (look(c) != '"')
				break;
		}
		if (byte == END || c->used == TS_ROW_BYTES_MOST) {
			find(c, TS_CELLS_NOT_CLOSED, line, column);
			return;
		}
		if (!keep(c)) {
			say_not_kept(c);
			return;
		}
	}
	if (!ends(c, look(c)))
		find_here(c, TS_CELLS_AFTER_QUOTE);
}

static void take_plain(struct ts_cells *c)
{
	for (int byte = look(c); !ends(c, byte); byte = look(c)) {
		if (byte == '"')
			find_here(c, TS_CELLS_STRAY_QUOTE);
		if (c->fault)
			return;
		if (!keep(c))
			say_not_kept(c);
	}
}

static void take_cell(struct ts_cells *c)
{
	struct ts_cell *cell = &c->cell[c->count];
	size_t start = c->used;
	bool quoted = look(c) == '"';

	if (c->count == TS_ROW_CELLS_MOST) {
		find_here(c, TS_CELLS_TOO_MUCH);
		return;
	}
	if (quoted)
		step(c);
	*cell = (struct ts_cell){&c->row[start], 0, c->next_line, c->next_column};
	if (quoted)
		take_quoted(c);
	else
		take_plain(c);
	cell->len = c->used - start;
	if (c->used == TS_ROW_BYTES_MOST)
		find_here(c, TS_CELLS_TOO_MUCH);
	c->row[c->used] = '\0';
	c->used += c->used < TS_ROW_BYTES_MOST;
	for (size_t i = 0, len; i < cell->len && !c->fault; i += len) {
		len = ts_text_sequence(cell->text + i);
		if (!len)
			find(c, TS_CELLS_NOT_TEXT, cell->line, cell->column);
	}
	c->count++;
}

/* To the first byte of the next line. */
static void leave_line(struct ts_cells *c)
{
	unsigned line = c->next_line;

	while (c->next_line == line && look(c) != END)
		step(c);
}

bool ts_cells_next(struct ts_cells *c)
{
	if (!c->begun)
		begin(c);
	c->count = c->used = 0;
	c->fault = TS_CELLS_FINE;
	while (look(c) == '\n' || look(c) == '\r')
		step(c);
	c->line = c->next_line;
	if (look(c) == END)
		return false;
	take_cell(c);
	while (!c->fault && c->separator && look(c) == (unsigned char)c->separator) {
		step(c);
		take_cell(c);
	}
	c->separator = c->separator ? c->separator : (char)',';
	leave_line(c);
	return true;
}
