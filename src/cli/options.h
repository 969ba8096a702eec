/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The command line: one table of flags, and every key of a reading as a flag beside it. Help,
 * parsing and errors read the same rows.
 */
#ifndef TS_CLI_OPTIONS_H
#define TS_CLI_OPTIONS_H

#include <tapshoal/match.h>

#include "base/text.h"

#define TS_FOLDERS_MOST 16
#define TS_ARGUMENTS_MOST 256

struct options {
	const char *water_file;
	struct ts_reading reading; /* what reading flags gave */
	bool has_reading;
	struct ts_keeping keeping;
	bool softened, help, version, quiet, json, only_catalogue, no_color;
	const char *folders[TS_FOLDERS_MOST];
	size_t folder_count;
	const char *arguments[TS_ARGUMENTS_MOST]; /* what is no flag */
	size_t argument_count;
};

/*
 * Parses arguments 1..argc-1. False with one line in `error` naming the mistake and what would be
 * right. Texts of the result point into argv.
 */
bool options_parse(int argc, char **argv, struct options *ret, struct ts_text *error);

/* Adds the flags and their help, from the tables. */
void options_help(struct ts_text *text);

#endif
