/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about acid and base, shown.
 */
#ifndef TS_SHOW_TITRATE_H
#define TS_SHOW_TITRATE_H

#include "answers/titrate.h"
#include "report/document.h"

void ts_show_titrate(struct ts_document *doc, const struct ts_titrate_result *result);

#endif
