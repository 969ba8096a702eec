/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about drift for programs.
 */
#ifndef TS_REPORT_DRIFT_RESULT_H
#define TS_REPORT_DRIFT_RESULT_H

#include "answers/drift.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_drift;

#endif
