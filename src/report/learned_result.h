/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of what a log has taught, as drift, check, due and log have it.
 */
#ifndef TS_REPORT_LEARNED_RESULT_H
#define TS_REPORT_LEARNED_RESULT_H

#include "answers/learned.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_learned;

#endif
