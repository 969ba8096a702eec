/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of a stage, as remake and arrive have it.
 */
#ifndef TS_REPORT_STAGE_RESULT_H
#define TS_REPORT_STAGE_RESULT_H

#include "answers/stage_line.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_stage;

#endif
