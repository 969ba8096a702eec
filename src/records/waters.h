/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A table of waters: one row a water with one reading, the header naming keys of a reading (and of
 * a water), with their unit where the cells have none. Read row by row, so that its length does not
 * matter.
 */
#ifndef TS_RECORDS_WATERS_H
#define TS_RECORDS_WATERS_H

#include "model/shape.h"
#include "records/cells.h"

struct ts_waters;

/*
 * Opens a table and reads its header. Columns are the keys of a reading in any case, with their
 * unit behind ("GH dH", "Ca (mg/L)") or with none, then cells carry theirs; beside them name (or
 * label), kind, softened and disinfectant. `file` names it in findings. All memory is the arena's.
 * NULL with findings: a column that is none, or stands twice, a unit that is none, no header at
 * all; or arena->failed.
 */
struct ts_waters *ts_waters_open(ts_bytes_source *source, void *state, const char *file,
	struct ts_arena *arena, struct ts_findings *findings);

/*
 * The next row: `*ret` with texts and its one reading in `arena`, `*ret_line` its line. TS_NO
 * behind the last. TS_BAD_INPUT: the findings tell all that is wrong in the row, `ret->name` is its
 * name where that could be read; the next call goes on behind it. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_waters_next(struct ts_waters *waters, struct ts_arena *arena,
	struct ts_water *ret, unsigned *ret_line, struct ts_findings *findings);

#endif
