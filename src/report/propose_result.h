/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of propose's result, from which its JSON and schema are walked. NAN is null.
 */
#ifndef TS_REPORT_PROPOSE_RESULT_H
#define TS_REPORT_PROPOSE_RESULT_H

#include "answers/propose.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_propose;

#endif
