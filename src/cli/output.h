/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where an answer goes: standard output, or a file that is complete or not there at all.
 */
#ifndef TS_CLI_OUTPUT_H
#define TS_CLI_OUTPUT_H

#include "base/text.h"
#include "report/screen.h"

/*
 * Writes the text to standard output (`path` NULL) or to a file: beside it first, then renamed, so
 * that a failure leaves no half a file; pipes and devices are written through. False with a reason
 * in `error`.
 */
bool output_write(const char *path, const struct ts_text *text, struct ts_text *error);

/* How this terminal, or no terminal, is written to. */
struct ts_screen output_screen(bool to_file, bool no_color, bool ascii);

#endif
