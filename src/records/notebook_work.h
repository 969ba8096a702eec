/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the files of a notebook that was kept elsewhere: notebook_heads.c reads what stands above
 * the columns, notebook.c the rows.
 */
#ifndef TS_RECORDS_NOTEBOOK_WORK_H
#define TS_RECORDS_NOTEBOOK_WORK_H

#include "base/arena.h"
#include "base/findings.h"
#include "model/codes.h"
#include "records/cells.h"
#include "records/notebook.h"

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

/* A finding, after which the book is not taken. `line` 0: of the whole. */
void book_say(struct book *book, enum ts_code_id code, unsigned line, const char *path,
	const char *what, const char *remedy);
/* A text without blanks around it, in the arena of the book. */
const char *book_trimmed(struct book *book, const char *text, size_t len);

/* Fills the next of the columns by its head; what nobody knows is asked about. */
void book_head(struct book *book, const struct ts_cell *cell);

#endif
