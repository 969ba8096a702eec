/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of check, over the result of its answer (answers/check.h).
 */
#ifndef TS_REPORT_CHECK_RESULT_H
#define TS_REPORT_CHECK_RESULT_H

#include "answers/check.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_check;

#endif
