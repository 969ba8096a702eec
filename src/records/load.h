/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The strict reader: YAML events straight into a struct along the rows of its shape. Unknown and
 * doubled keys, unknown words, unreadable quantities, anchors and tags are errors of the file, all
 * collected with file, line, column, path and remedy.
 */
#ifndef TS_RECORDS_LOAD_H
#define TS_RECORDS_LOAD_H

#include "model/shape.h"
#include "system/system.h"

/* Bounds of one file; generous for a record or a water with years of readings. */
#define TS_FILE_BYTES_MOST ((size_t)4 * 1024 * 1024)
#define TS_DEPTH_MOST 16
#define TS_LIST_MOST 10000

/*
 * Reads `len` bytes of YAML into `object` (zeroed by this function, size shape->size). Texts and
 * lists are taken from `arena`. `file` names the source in findings. TS_BAD_INPUT: findings tell,
 * `object` holds what could be read. TS_NO_MEMORY likewise. A file that is named in them cannot be
 * read: they lie nowhere.
 */
TS_MUST_USE enum ts_status ts_records_parse(const struct ts_shape *shape, const char *bytes,
	size_t len, const char *file, struct ts_arena *arena, void *object,
	struct ts_findings *findings);

/* The same of the bytes of a file of `system`, where those that it names lie beside it. */
TS_MUST_USE enum ts_status ts_records_parse_beside(const struct ts_shape *shape,
	const struct ts_system *system, const char *bytes, size_t len, const char *file,
	struct ts_arena *arena, void *object, struct ts_findings *findings);

/*
 * The same from a file of `system` (NULL: the machine), opened as `how` says. TS_SYSTEM when it
 * cannot be read. Files that it names lie beside it, and are ordinary ones.
 */
TS_MUST_USE enum ts_status ts_records_load(const struct ts_shape *shape,
	const struct ts_system *system, const char *file, enum ts_opening how,
	struct ts_arena *arena, void *object, struct ts_findings *findings);

/* As the public loaders, from a system. */
TS_MUST_USE enum ts_status ts_water_load_from(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_water *ret, struct ts_findings *findings);
TS_MUST_USE enum ts_status ts_tank_load_from(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_tank *ret, struct ts_findings *findings);
TS_MUST_USE enum ts_status ts_plan_load_from(const struct ts_system *system, const char *file,
	struct ts_arena *arena, struct ts_plan *ret, struct ts_findings *findings);

/* The version of libyaml that is running, "0.2.5"; a constant. */
const char *ts_records_library(void);

#endif
