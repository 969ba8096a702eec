/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the commands water and mix and the page they share.
 */
#ifndef TS_CLI_WATER_H
#define TS_CLI_WATER_H

#include "cli/commands.h"
#include "report/water_result.h"

/* Adds the values of a water in all usual units, and what follows from them; `ph_label` names its
 * pH. */
void water_page_values(
	struct ts_document *doc, const struct ts_water_result *result, const char *ph_label);
/* Adds what is unusual, dangerous, assumed and unknown about it. */
void water_page_notes(struct ts_document *doc, const struct ts_water_result *result);
/* Adds how the readings lie over time; nothing where there is one. */
void water_page_over_time(struct ts_document *doc, const struct ts_water_result *result);
/* Adds the two waters side by side and what their difference means. */
void water_page_against(struct ts_document *doc, const struct ts_water_result *result);

/* The first line: class with its scale, buffer, and the pH of a tank as the deciding number. */
void water_page_verdict(
	struct ts_document *doc, const struct ts_water_result *r, const struct ts_practice *p);

/* What the difference between a tank and the water it is filled with means; `ret` in `arena`. */
void water_compare(struct ts_arena *arena, const struct ts_water_facts *tank,
	const struct ts_water_facts *tap, struct ts_texts *ret);

#endif
