/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The integer model as a text that general-purpose solvers read: the LP format with the sections
 * Maximize, Subject To, Bounds, Binaries, End. Same integers as the search, so the optimum of an
 * outside solver is compared with ==.
 */
#ifndef TS_STOCK_MODEL_LP_H
#define TS_STOCK_MODEL_LP_H

#include "base/text.h"
#include "stock/model.h"

/*
 * Adds the whole model. Item i is the variable x(i+1); `names` NULL, or one per item, explain them
 * in comments (one line each). A pair with friction is p >= xi + xj - 1 with p continuous. Zones
 * are u1, u2, u3; the least fit is m.
 */
void ts_model_write_lp(
	struct ts_text *text, const struct ts_model *model, const char *const *names);

#endif
