/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of remake for programs.
 */
#ifndef TS_REPORT_REMAKE_RESULT_H
#define TS_REPORT_REMAKE_RESULT_H

#include "answers/remake.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_remake;

#endif
