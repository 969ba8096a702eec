/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What to ask back, as JSON.
 */
#ifndef TS_REPORT_ASK_BACK_RESULT_H
#define TS_REPORT_ASK_BACK_RESULT_H

#include "answers/ask_back.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_ask_back;

#endif
