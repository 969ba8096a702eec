/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A reading noted in a water or tank file: what was measured is checked, put behind the last
 * reading (records/extend.h), and the whole read again before anybody may write it.
 */
#ifndef TS_RECORDS_NOTE_H
#define TS_RECORDS_NOTE_H

#include "model/shape.h"
#include "records/extend.h"

/* What a file holds once the reading is noted. */
struct ts_noted {
	const char *date;            /* of the new one */
	const struct ts_pair *pairs; /* as they stand there, and how many */
	size_t pair_count;
	size_t count;      /* of the list, with it */
	const char *first; /* earliest and latest day among them, NULL: none is dated */
	const char *last;
};

/*
 * Adds to `out` the `len` bytes of a water (`shape` &ts_shape_water) or tank file, or of a plan
 * whose tank stands in it, with one entry more of its `list`, "readings" or, of a tank, "events"
 * (of a plan: of its tank). `system`: where other files lie that a plan names. `pairs` are keys of
 * that list in any case, each once, with values as
 * they are written in a file; they go there as they are, bare figures with their unit behind. A
 * date is among them and lies no later than `today` (days since 1970-01-01), and of a reading
 * something was measured. The result has been read: it holds what the file held, and the entry.
 * TS_BAD_INPUT with findings, which name a pair as KEY=VALUE or the file; then `out` is of no use.
 * Texts of
 * `*ret` are the arena's. TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_records_note(const struct ts_shape *shape,
	const struct ts_system *system, const char *list, const char *bytes, size_t len,
	const char *file, const struct ts_pair *pairs, size_t count, long today,
	struct ts_arena *arena, struct ts_text *out, struct ts_noted *ret,
	struct ts_findings *findings);

/*
 * The unit behind the figures of a key, as a file's text has it everywhere: "mg/L NO3"; NULL: none
 * stands there, or not always the same. A copy in the arena.
 */
const char *ts_records_unit_before(struct ts_arena *arena, const char *bytes, const char *key);

#endif
