/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rows of find (answers/find.h).
 */
#ifndef TS_REPORT_FIND_RESULT_H
#define TS_REPORT_FIND_RESULT_H

#include "answers/find.h"
#include "report/result.h"

extern const struct ts_result_shape ts_result_find_species, ts_result_find;

#endif
