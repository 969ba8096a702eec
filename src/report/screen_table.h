/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tables of the text visitor: cells are wrapped inside their columns.
 */
#ifndef TS_REPORT_SCREEN_TABLE_H
#define TS_REPORT_SCREEN_TABLE_H

#include "report/screen.h"

/* Adds a TS_NODE_TABLE, no wider than the screen. */
void ts_screen_table(
	struct ts_text *out, const struct ts_node *node, const struct ts_screen *screen);

#endif
