/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where an answer goes: standard output, or a file that is complete or not there at all.
 */
#ifndef TS_REPORT_OUTPUT_H
#define TS_REPORT_OUTPUT_H

#include "base/text.h"
#include "report/screen.h"
#include "system/system.h"

/*
 * An answer that is written piece by piece. A file takes its place when it is closed, so that a
 * failure leaves no half a file; how, and what it keeps of the one before, system/system.h says.
 */
struct output {
	const struct ts_system *system;
	const char *path; /* as it was named; NULL: standard output */
	int handle;
	bool closed; /* a pipe's reader has gone: what follows is dropped, and that is fine */
};

/*
 * Opens a place to write to; `path` NULL or "-": standard output. What this call has read is
 * refused with TS_BAD_INPUT, all else that fails is TS_SYSTEM; then there is a reason in `error`,
 * and nothing to close. `path` must outlive it.
 */
enum ts_status output_open(struct output *output, const struct ts_system *system, const char *path,
	struct ts_text *error);
/* Writes a piece, and hands it on at once. */
enum ts_status output_add(struct output *output, const struct ts_text *text, struct ts_text *error);
/* Ends it: with `keep` the file takes its place, else it is as if nothing had been written there.
 */
enum ts_status output_close(struct output *output, bool keep, struct ts_text *error);

/* All three for one text. */
enum ts_status output_write(const struct ts_system *system, const char *path,
	const struct ts_text *text, struct ts_text *error);
/* The same in the place of the file that `over` was opened to rewrite; `*ret_why` is the reason. */
enum ts_status output_rewrite(const struct ts_system *system, const char *path, int over,
	const struct ts_text *text, struct ts_text *error, int *ret_why);

/* Are both names of one file that is there? NULL is none. */
bool output_same(const struct ts_system *system, const char *a, const char *b);

/* Says which unfinished file a run that was ended left beside this one, if any. */
void output_left_over(
	const struct ts_system *system, const char *path, struct ts_findings *findings);

/*
 * Adds a message for standard error as one line; what it quotes of others is shown harmlessly, the
 * end of a line inside a name as a blank.
 */
void output_message(
	const struct ts_system *system, struct ts_text *out, const char *message, size_t len);

/* How this terminal, or no terminal, is written to. */
struct ts_screen output_screen(
	const struct ts_system *system, bool to_file, bool no_color, bool ascii);

#endif
