/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What table.c and aligned.c share: headings and the rows of wide tables, whose columns are told by
 * signs or, in aligned.c, by their place.
 */
#ifndef TS_INTAKE_TABLE_H
#define TS_INTAKE_TABLE_H

#include "intake/reader.h"

/* Letters before the first name of a place, or quantity, over its column. */
#define TS_INDENT_LEAST 8
/* Letters between a figure and the middle of its heading in a table without separators. */
#define TS_NEAR_MOST 14

/* The next piece of the line that two blanks or more part from the others; false: there is none. */
bool ts_table_next_piece(const struct ts_report_line *l, size_t *io_at, size_t *ret_start);
/* A unit that says by itself that its figure is hardness. */
bool ts_table_says_hardness(const struct ts_token *t);
/* "Village | ...": the first cell of a heading says that the rows are places. */
bool ts_table_heads_places(const struct ts_intake *in);
/* The heading over the token's cell; NULL: none. */
const struct ts_heading *ts_table_over(const struct ts_intake *in, const struct ts_token *t);
/* Takes the line as a heading; false: it is none. */
bool ts_table_heading(struct ts_intake *in);
/* Adds what one token of a heading says. */
void ts_table_read_heading(struct ts_intake *in, const struct ts_token *t);
/* "Village | dH | mmol/l CaCO3": columns of which the unit alone says that they are hardness. */
void ts_table_name_hardness(struct ts_intake *in);
/* Takes a row below quantities side by side. */
bool ts_table_wide_row(struct ts_intake *in);
/* Asks where of a table only the lowest and highest were printed; what follows is another's. */
void ts_table_end(struct ts_intake *in);

/* Takes a line of quantities side by side, parted by blanks, as the heading of a table of places.
 */
bool ts_aligned_heading(struct ts_intake *in);
/* Takes a line below such a heading: units, or a place and its figures. */
bool ts_aligned_line(struct ts_intake *in);

#endif
