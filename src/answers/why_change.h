/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Why an animal does not live in a water, and what would change it.
 */
#ifndef TS_ANSWERS_WHY_CHANGE_H
#define TS_ANSWERS_WHY_CHANGE_H

#include "base/text.h"
#include "stock/misfit.h"

/* How far the water is from being its own: what check decides by, too (stock/misfit.h). */
enum ts_misfit ts_why_misfit(const struct ts_match *match, const struct ts_profile *profile);

/* Adds every figure that speaks against it, warmth first; false: nothing that was read does. */
bool ts_why_not(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

/* Adds the warmth and the recipe with which it would live there; false: there is none to name. */
bool ts_why_change(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

#endif
