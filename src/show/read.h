/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A report that was read, as a water file.
 */
#ifndef TS_SHOW_READ_H
#define TS_SHOW_READ_H

#include "report/read_result.h"

/* Adds the file. */
void ts_show_read(struct ts_text *out, const struct ts_read_result *result);
/* The lines of what was not taken, from the gap `from` on: "4, 6". */
void ts_show_gap_lines(struct ts_text *out, const struct ts_report *report, size_t from);

#endif
