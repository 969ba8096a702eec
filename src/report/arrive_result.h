/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about carrying home for programs.
 */
#ifndef TS_REPORT_ARRIVE_RESULT_H
#define TS_REPORT_ARRIVE_RESULT_H

#include "answers/arrive.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_arrive;

#endif
