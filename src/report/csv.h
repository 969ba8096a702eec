/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Result rows as comma-separated values (RFC 4180): one table, one line a struct, the units in the
 * header. Walked from the same rows as the JSON, so that a new member is a new column.
 */
#ifndef TS_REPORT_CSV_H
#define TS_REPORT_CSV_H

#include "report/result.h"

/*
 * Adds the table of `count` structs. Inner structs become columns with the struct's key in front; a
 * list whose entries have the same names in every line (the parameters of a match) becomes columns
 * with those names in front and their unit behind, any other list its names in one column. What is
 * not known is empty. Lines end with CR LF.
 */
void ts_csv_write(
	struct ts_text *out, const struct ts_result_shape *shape, const void *items, size_t count);

/*
 * The same as it comes, a line at a time: the header of lines like `item`, and one line. Lists have
 * the same names in every line.
 */
void ts_csv_head(struct ts_text *out, const struct ts_result_shape *shape, const void *item);
void ts_csv_line(struct ts_text *out, const struct ts_result_shape *shape, const void *item);

#endif
