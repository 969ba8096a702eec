/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answers about one water and about a mixture, shown.
 */
#ifndef TS_SHOW_WATER_H
#define TS_SHOW_WATER_H

#include "answers/mix.h"
#include "answers/water.h"
#include "report/document.h"

void ts_show_mix(struct ts_document *doc, const struct ts_mix_result *result);
void ts_show_water(struct ts_document *doc, const struct ts_water_result *result);

/* The verdict, dangers, and what is unusual. */
void ts_show_water_lead(struct ts_document *doc, const struct ts_water_result *result);
/* The values in all usual units, and what follows from them; `read`: its pH was. */
void ts_show_water_values(struct ts_document *doc, const struct ts_water_result *result, bool read);
/* What was assumed. */
void ts_show_water_rest(struct ts_document *doc, const struct ts_water_result *result);

#endif
