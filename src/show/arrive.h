/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about carrying home, shown.
 */
#ifndef TS_SHOW_ARRIVE_H
#define TS_SHOW_ARRIVE_H

#include "answers/arrive.h"
#include "report/document.h"

void ts_show_arrive(struct ts_document *doc, const struct ts_arrive_result *result);

#endif
