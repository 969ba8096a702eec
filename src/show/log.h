/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A tank's log as a document: its course first, then day by day.
 */
#ifndef TS_SHOW_LOG_H
#define TS_SHOW_LOG_H

#include "answers/log.h"
#include "report/document.h"

/* `most`: lines that are shown, the newest; 0: all. */
void ts_show_log(struct ts_document *doc, const struct ts_log_result *result, size_t most);

#endif
