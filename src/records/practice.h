/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A user's own figures of practice: a YAML file of keys of the practice table, read strictly.
 */
#ifndef TS_RECORDS_PRACTICE_H
#define TS_RECORDS_PRACTICE_H

#include "model/practice.h"
#include "records/load.h"

/*
 * Replaces values of `io` by those of the file, each a bare number of 0 or more in the row's unit.
 * Findings and TS_BAD_INPUT for unknown keys or unreadable figures; `io` is untouched then.
 */
TS_MUST_USE enum ts_status ts_practice_load(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_practice *io, struct ts_findings *findings);

#endif
