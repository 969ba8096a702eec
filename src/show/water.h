/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer about one water, shown; and the parts that a mixture shares with it.
 */
#ifndef TS_SHOW_WATER_H
#define TS_SHOW_WATER_H

#include "answers/water.h"
#include "report/document.h"

void ts_show_water(struct ts_document *doc, const struct ts_water_result *result);

/* The verdict, dangers, and what is unusual. */
void ts_show_water_lead(struct ts_document *doc, const struct ts_water_result *result);
/* The values in all usual units, and what follows from them; `ph_label` names its pH. */
void ts_show_water_values(
	struct ts_document *doc, const struct ts_water_result *result, const char *ph_label);
/* What was assumed. */
void ts_show_water_rest(struct ts_document *doc, const struct ts_water_result *result);

#endif
