/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of what-if for programs.
 */
#ifndef TS_REPORT_WHAT_IF_RESULT_H
#define TS_REPORT_WHAT_IF_RESULT_H

#include "answers/what_if.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_what_if;

#endif
