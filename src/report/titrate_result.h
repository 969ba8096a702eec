/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about acid and base for programs.
 */
#ifndef TS_REPORT_TITRATE_RESULT_H
#define TS_REPORT_TITRATE_RESULT_H

#include "answers/titrate.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_titrate;

#endif
