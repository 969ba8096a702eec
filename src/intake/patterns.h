/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A set of compiled PCRE2 patterns whose memory comes from the caller's allocator. The terms of
 * lexer.c and the layouts of layouts.c are both such sets.
 */
#ifndef TS_INTAKE_PATTERNS_H
#define TS_INTAKE_PATTERNS_H

#include <tapshoal/base.h>

struct ts_patterns;

/* An empty set for `count` patterns; NULL when there is no memory. */
struct ts_patterns *ts_patterns_open(const struct ts_allocator *allocator, size_t count);
void ts_patterns_close(struct ts_patterns *set);

/*
 * Compiles `head` `pattern` `tail` as number `index`. False when there is no memory; a pattern that
 * is wrong only counts as unsound and never matches.
 */
bool ts_patterns_add(struct ts_patterns *set, size_t index, const char *head, const char *pattern,
	const char *tail);

/* How many patterns were wrong: 0, or a table is. */
size_t ts_patterns_unsound(const struct ts_patterns *set);

/* Whether memory ran out since it was opened: what did not match may have. */
bool ts_patterns_no_memory(const struct ts_patterns *set);

/*
 * Matches pattern `index` at byte `at` of `len` bytes, and nowhere else. 0 = no match, else the
 * number of groups plus one, `*ret_spans` their starts and ends in pairs until the next match.
 */
size_t ts_patterns_match(struct ts_patterns *set, size_t index, const char *text, size_t len,
	size_t at, const size_t **ret_spans);

#endif
