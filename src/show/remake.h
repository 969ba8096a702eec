/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of remake, shown.
 */
#ifndef TS_SHOW_REMAKE_H
#define TS_SHOW_REMAKE_H

#include "answers/remake.h"
#include "report/document.h"

void ts_show_remake(struct ts_document *doc, const struct ts_remake_result *result);

#endif
