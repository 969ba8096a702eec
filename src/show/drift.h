/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about drift, shown.
 */
#ifndef TS_SHOW_DRIFT_H
#define TS_SHOW_DRIFT_H

#include "answers/drift.h"
#include "report/document.h"

void ts_show_drift(struct ts_document *doc, const struct ts_drift_result *result);

#endif
