/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The stages of a way from one water to another, shown.
 */
#ifndef TS_SHOW_STAGES_H
#define TS_SHOW_STAGES_H

#include "answers/stage_line.h"
#include "report/document.h"

/* A table on the screen, steps on a page. `with_nh3`: with pH and ammonia gas. */
void ts_show_stages(
	struct ts_document *doc, const struct ts_stage_line *stages, size_t count, bool with_nh3);

#endif
