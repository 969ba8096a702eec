/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reading a whole file, bounded; the only place of records/ that opens one.
 */
#ifndef TS_RECORDS_FILE_H
#define TS_RECORDS_FILE_H

#include <tapshoal/base.h>

#include "system/system.h"

/*
 * Reads `file` whole, from the machine where `system` is NULL, opened as `how` says; `*ret_bytes`
 * is freed with the allocator's resize to 0. A finding and TS_SYSTEM when it cannot be read or is a
 * folder, TS_BAD_INPUT beyond `most` bytes.
 */
TS_MUST_USE enum ts_status ts_file_read(const struct ts_system *system, const char *file,
	enum ts_opening how, size_t most, const struct ts_allocator *allocator, char **ret_bytes,
	size_t *ret_len, struct ts_findings *findings);

/*
 * A file of at most `most` bytes into the arena, in one piece and in one reading: for what is kept
 * as it is. TS_NO: it is not there, not so, or changed while it was read; TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_file_keep(const struct ts_system *system, const char *file,
	size_t most, struct ts_arena *arena, const char **ret_bytes, size_t *ret_len);

/* The same from a file that is open already, to its end. */
TS_MUST_USE enum ts_status ts_file_read_open(const struct ts_system *system, int handle,
	const char *file, size_t most, const struct ts_allocator *allocator, char **ret_bytes,
	size_t *ret_len, struct ts_findings *findings);

#endif
