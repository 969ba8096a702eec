/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of due for programs.
 */
#ifndef TS_REPORT_DUE_RESULT_H
#define TS_REPORT_DUE_RESULT_H

#include "answers/due_all.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_due;
/* Of several tanks. */
extern const struct ts_result_shape ts_result_due_all;

#endif
