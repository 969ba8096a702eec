/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reads the reference tables of tests/data/reference (CSV; lines that open with '#' name the
 * source) and keeps the worst deviation seen in a column. A table or column that is missing fails
 * the test that asked; so does a check that compared nothing.
 */
#ifndef TS_TESTS_TABLE_H
#define TS_TESTS_TABLE_H

#include <stdbool.h>
#include <stddef.h>

#define TS_TABLE_COLUMNS 40
#define TS_TABLE_ROWS 400

struct table {
	char *text;
	const char *head[TS_TABLE_COLUMNS];
	const char *cells[TS_TABLE_ROWS][TS_TABLE_COLUMNS];
	size_t columns, rows;
};

/* Opens tests/data/reference/<name>; free with table_close(). Never NULL: fails the test. */
struct table *table_open(const char *name);
void table_close(struct table *table);
/* The cell as text, "" when the row is shorter. */
const char *table_text(const struct table *table, size_t row, const char *column);
/* The cell as a number; NaN when blank. */
double table_number(const struct table *table, size_t row, const char *column);

/* The worst deviation of one kind. */
struct worst {
	const char *what;
	double limit; /* what the check allows */
	double most;
	char where[120];
	size_t count;
};

/* Notes |got - want|; the second form relative to |want|. `where` says which row. */
void worst_note(struct worst *worst, double got, double want, const char *where);
void worst_note_relative(struct worst *worst, double got, double want, const char *where);
/* Prints the worst as a TAP comment and fails when it exceeds the limit or nothing was noted. */
void worst_assert(const struct worst *worst);

#endif
