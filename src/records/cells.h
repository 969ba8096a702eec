/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rows of comma-separated values (RFC 4180), one at a time, whatever the length of the file: cells
 * in quotes with doubled quotes and line breaks inside, lines that end with CR LF, LF or CR, a byte
 * order mark. The separator is the first of , ; and tab that the header has outside quotes. What
 * the cells mean: records/waters.c.
 */
#ifndef TS_RECORDS_CELLS_H
#define TS_RECORDS_CELLS_H

#include <stdbool.h>
#include <stddef.h>

/* Bounds of a row; generous for every key of a reading with a long name. */
#define TS_ROW_CELLS_MOST 64
#define TS_ROW_BYTES_MOST 8192

/* Hands over up to `room` bytes; 0 is the end. */
typedef size_t ts_bytes_source(void *state, char *bytes, size_t room);

enum ts_cells_fault {
	TS_CELLS_FINE,
	TS_CELLS_STRAY_QUOTE, /* a quote inside a cell that does not start with one */
	TS_CELLS_AFTER_QUOTE, /* letters behind the quote that ends a cell */
	TS_CELLS_NOT_CLOSED,  /* a quote that does not end, or not within a row's bytes */
	TS_CELLS_TOO_MUCH,    /* more cells or bytes than a row has */
	TS_CELLS_NOT_TEXT     /* not UTF-8 */
};

/* One cell: its text without quotes, and where it starts in the file, from 1, in characters. */
struct ts_cell {
	const char *text; /* NUL-terminated */
	size_t len;
	unsigned line, column; /* of its first letter, behind the quote */
};

/* A reader; zeroed but for `source` and `state` at the start. What it hands out lives until the
 * next row. */
struct ts_cells {
	ts_bytes_source *source;
	void *state;

	struct ts_cell cell[TS_ROW_CELLS_MOST];
	size_t count;
	enum ts_cells_fault fault;
	unsigned line;                     /* on which the row starts */
	unsigned fault_line, fault_column; /* where the fault is */

	unsigned next_line, next_column; /* of the next byte */
	char separator;                  /* NUL: not met yet */
	size_t at, len, used;
	bool begun;
	char piece[16384], row[TS_ROW_BYTES_MOST + 1];
};

/*
 * The next row that is not empty; false at the end. A row with a fault has the cells in front of
 * it; reading goes on at the line behind the fault.
 */
bool ts_cells_next(struct ts_cells *cells);

#endif
