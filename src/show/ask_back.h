/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to ask back, as a message to paste.
 */
#ifndef TS_SHOW_ASK_BACK_H
#define TS_SHOW_ASK_BACK_H

#include "answers/ask_back.h"
#include "report/document.h"

void ts_show_ask_back(struct ts_document *doc, const struct ts_ask_back_result *result);

#endif
