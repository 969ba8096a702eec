/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answers about one water, and about a mixture, for programs.
 */
#ifndef TS_REPORT_WATER_RESULT_H
#define TS_REPORT_WATER_RESULT_H

#include "answers/mix.h"
#include "answers/water.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_water, ts_result_mix;

#endif
