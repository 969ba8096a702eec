/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A check as a document: the answer, what is to be feared, what would put it right, then what else
 * there is, short unless all of it is asked for.
 */
#ifndef TS_SHOW_CHECK_H
#define TS_SHOW_CHECK_H

#include "answers/check.h"
#include "report/document.h"

/* Adds everything below what leads a printed page. `all`: every judgement, and the load in full. */
void ts_show_check(struct ts_document *doc, const struct ts_check_result *result, bool all);

#endif
