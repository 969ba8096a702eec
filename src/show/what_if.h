/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to do by when, shown; on paper the card of the first hours alone.
 */
#ifndef TS_SHOW_WHAT_IF_H
#define TS_SHOW_WHAT_IF_H

#include "answers/what_if.h"
#include "report/document.h"

void ts_show_what_if(struct ts_document *doc, const struct ts_what_if_result *result);

#endif
