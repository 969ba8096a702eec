/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A notebook that was kept elsewhere, as a table: a row a day, its columns named as people name
 * them. Columns become keys of a reading, with the unit of their head, or what happened; days are
 * read in the common forms. What could mean two things is asked and not guessed, and a row that is
 * not understood leaves the whole untaken: nothing gets lost on the way.
 */
#ifndef TS_RECORDS_NOTEBOOK_H
#define TS_RECORDS_NOTEBOOK_H

#include "model/shape.h"
#include "records/extend.h"

/* In which order a day like 3/4/2026 stands. */
enum ts_day_order { TS_DAYS_ASKED, TS_DAYS_DAY_FIRST, TS_DAYS_MONTH_FIRST };

struct ts_notebook_how {
	enum ts_day_order order; /* ASKED: told by the table itself, or refused */
	const char *const
		*columns; /* "Nitrat=NO3 mg/L NO3", "Lamp=remark", "Page=": what a head is */
	size_t column_count;
};

/* A reading, or something that happened. */
struct ts_notebook_entry {
	const char *list;      /* "readings" or "events" */
	struct ts_pair *pairs; /* the day first */
	size_t count;
	unsigned line;
};

struct ts_notebook {
	struct ts_notebook_entry *entries; /* in the order of their days */
	size_t count, rows;
	struct ts_texts columns;  /* heads of those that were taken */
	struct ts_texts means;    /* what each is: "NO3, mg/L NO3" */
	struct ts_texts left_out; /* heads of columns that the call leaves out */
};

/*
 * Reads the table. Texts are the arena's. TS_BAD_INPUT: the findings say every column that is not
 * understood, or each sort of mistake in the cells with its first line. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_notebook_read(const char *bytes, size_t len, const char *file,
	const struct ts_notebook_how *how, struct ts_arena *arena, struct ts_notebook *ret,
	struct ts_findings *findings);

/*
 * A day as notebooks have it, to YYYY-MM-DD: 2026-03-01, 1.3.2026, 01.03.26, 3/1/2026, 1 March
 * 2026. TS_NO: it may be two days and `order` does not say which. TS_BAD_INPUT: it is none.
 */
TS_MUST_USE enum ts_status ts_notebook_day(const char *text, enum ts_day_order order, char out[11]);

/* Which order a day proves by a figure beyond 12; ASKED: none. */
enum ts_day_order ts_notebook_order(const char *text);

#endif
