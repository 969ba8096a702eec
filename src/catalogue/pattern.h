/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A regular expression over names, without case and accents, that cannot hang whatever somebody
 * types: its steps are counted, over all names together.
 */
#ifndef TS_CATALOGUE_PATTERN_H
#define TS_CATALOGUE_PATTERN_H

#include <tapshoal/catalogue.h>

#include "base/text.h"

struct ts_pattern;

/* Longest pattern, bytes. */
#define TS_PATTERN_BYTES_MOST 1000

/* What is wrong with a pattern. */
struct ts_pattern_fault {
	size_t column; /* of the pattern as it was given, in characters from 1 */
	char says[160];
};

/*
 * Compiles a pattern (PCRE2 syntax; `fixed`: plain text) into `*ret`, to be closed. TS_BAD_INPUT:
 * `*ret_fault` tells what and where; `*ret` is untouched on any failure. `allocator` NULL: malloc.
 */
TS_MUST_USE enum ts_status ts_pattern_open(const char *text, bool fixed,
	const struct ts_allocator *allocator, struct ts_pattern **ret,
	struct ts_pattern_fault *ret_fault);

/* Frees a pattern; NULL is nothing. */
void ts_pattern_close(struct ts_pattern *pattern);

/*
 * TS_OK when the text holds the pattern, as written or with hyphens as blanks and without
 * apostrophes; else TS_NO. TS_BAD_INPUT once the pattern has used up the steps it has for one
 * search, TS_NO_MEMORY.
 */
TS_MUST_USE enum ts_status ts_pattern_meets(struct ts_pattern *pattern, const char *text);

/* The first name, else the family, of a species that holds the pattern; status as above. */
TS_MUST_USE enum ts_status ts_pattern_species(
	struct ts_pattern *pattern, const struct ts_species *species, const char **ret_name);

/* Adds the version of PCRE2 that is running, "10.42", without its date. */
void ts_pattern_library(struct ts_text *out);

#endif
