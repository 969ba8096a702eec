/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answers of why, shown: animals against one water, and against several.
 */
#ifndef TS_SHOW_WHY_H
#define TS_SHOW_WHY_H

#include "answers/why.h"
#include "answers/why_waters.h"
#include "report/document.h"

/* Adds everything below what leads a printed page. */
void ts_show_why(struct ts_document *doc, const struct ts_why_result *result);

void ts_show_why_waters(struct ts_document *doc, const struct ts_why_waters_result *result);

#endif
