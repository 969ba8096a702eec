/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of log for programs.
 */
#ifndef TS_REPORT_LOG_RESULT_H
#define TS_REPORT_LOG_RESULT_H

#include "answers/log.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_log, ts_result_log_line;

#endif
