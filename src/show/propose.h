/* SPDX-License-Identifier: Apache-2.0 */
/* The proposed communities as a document. */
#ifndef TS_SHOW_PROPOSE_H
#define TS_SHOW_PROPOSE_H

#include "answers/propose.h"
#include "report/document.h"

/*
 * Adds everything below what leads a printed page. `doc->drawn`: a page. `all`: with who sets the
 * ends of the shared water, waste, buffer, days of purchase; else a list and a line for each of the
 * rest.
 */
void ts_show_propose(struct ts_document *doc, const struct ts_propose_result *result, bool all);

#endif
