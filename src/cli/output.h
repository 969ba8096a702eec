/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where an answer goes: standard output, or a file that is complete or not there at all.
 */
#ifndef TS_CLI_OUTPUT_H
#define TS_CLI_OUTPUT_H

#include <stdio.h>

#include "base/text.h"
#include "report/screen.h"

#define OUTPUT_PATH_MOST 4096

/*
 * An answer that is written piece by piece. A file is written beside its place and renamed when it
 * is closed, so that a failure leaves no half a file; it keeps the rights and the owner of the one
 * before, and behind a link it is the file that is replaced and not the link. Pipes and devices are
 * written through. An interrupted program takes its unfinished files with it.
 */
struct output {
	FILE *stream;
	const char *path; /* as it was named; NULL: standard output */
	bool through;     /* a pipe or a device */
	bool closed;      /* a pipe's reader has gone: what follows is dropped, and that is fine */
	char target[OUTPUT_PATH_MOST], beside[OUTPUT_PATH_MOST];
};

/* Opens a place to write to; `path` NULL or "-": standard output. False with a reason in `error`,
 * and nothing to close. `path` must outlive it. */
bool output_open(struct output *output, const char *path, struct ts_text *error);
/* Writes a piece, and hands it on at once. False with a reason in `error`. */
bool output_add(struct output *output, const struct ts_text *text, struct ts_text *error);
/* Ends it: with `keep` the file takes its place, else it is as if nothing had been written there.
 * False with a reason in `error`. */
bool output_close(struct output *output, bool keep, struct ts_text *error);

/* All three for one text. */
bool output_write(const char *path, const struct ts_text *text, struct ts_text *error);

/*
 * Adds a message for standard error as one line; what it quotes of others is shown harmlessly, the
 * end of a line inside a name as a blank.
 */
void output_message(struct ts_text *out, const char *message, size_t len);

/* How this terminal, or no terminal, is written to. */
struct ts_screen output_screen(bool to_file, bool no_color, bool ascii);

#endif
