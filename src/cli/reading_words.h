/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A second water of a call, where there is no file of it.
 */
#ifndef TS_CLI_READING_WORDS_H
#define TS_CLI_READING_WORDS_H

#include "cli/commands.h"

/* Reads "GH 3, KH 2, pH 6.8" as the one reading of a water; an error names the flag. */
enum ts_status reading_words(
	struct session *s, const char *flag, const char *text, struct ts_water *ret);

#endif
