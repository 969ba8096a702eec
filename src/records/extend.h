/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One more entry at the end of a list of a file, in the style of the entries there, without a
 * change to any byte that stands in it. What may be noted, and whether the result is right:
 * records/note.c.
 */
#ifndef TS_RECORDS_EXTEND_H
#define TS_RECORDS_EXTEND_H

#include "base/text.h"

/* A key of the entry and what is written behind it. */
struct ts_pair {
	const char *key, *value;
};

/*
 * Adds to `out` the `len` bytes of a file with an entry of `count` pairs behind the last one of its
 * list `key`, which stands in the outermost block, or with `within` in the block of that key there;
 * a block without the list gets one behind its last key. Line ends, indentation and
 * braces are those of the file. The file must be one that records/load.h reads. TS_BAD_INPUT with a
 * finding where nothing can be put in without touching what is there: keys in braces, or the list
 * in brackets. TS_NO_MEMORY. `file` names it.
 */
TS_MUST_USE enum ts_status ts_file_extend(const char *bytes, size_t len, const char *file,
	const char *within, const char *key, const struct ts_pair *pairs, size_t count,
	struct ts_text *out, struct ts_findings *findings);

#endif
