/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reading a whole file, bounded; the only place of records/ that knows the file system.
 */
#ifndef TS_RECORDS_FILE_H
#define TS_RECORDS_FILE_H

#include <tapshoal/base.h>

/*
 * Reads `file` ("-": standard input) whole; `*ret_bytes` is freed with the allocator's resize to 0.
 * A finding and TS_SYSTEM when it cannot be read or is a folder, TS_BAD_INPUT beyond `most` bytes.
 */
TS_MUST_USE enum ts_status ts_file_read(const char *file, size_t most,
	const struct ts_allocator *allocator, char **ret_bytes, size_t *ret_len,
	struct ts_findings *findings);

#endif
