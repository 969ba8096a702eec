/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What why tells to programs, of one water and of several.
 */
#ifndef TS_REPORT_WHY_RESULT_H
#define TS_REPORT_WHY_RESULT_H

#include "answers/why.h"
#include "answers/why_short.h"
#include "answers/why_waters.h"
#include "report/rank_result.h"

extern const struct ts_result_shape ts_result_why, ts_result_why_cell, ts_result_why_waters,
	ts_result_why_short;

#endif
