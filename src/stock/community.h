/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is said of one list once it is chosen: the water it shares, who decides, what is bought
 * first.
 */
#ifndef TS_STOCK_COMMUNITY_H
#define TS_STOCK_COMMUNITY_H

#include "stock/propose.h"

/*
 * Fills shared, limiting and order from the lines, which are there already. False when memory ran
 * out.
 */
bool ts_community_describe(struct ts_community *community, struct ts_arena *arena);

/*
 * The list as a plan on the water and tank of `base`, whose stock keeps its lines. `keeping` tells
 * whether newcomers are wild-caught. False when memory ran out.
 */
bool ts_community_plan(const struct ts_community *community, const struct ts_plan *base,
	const struct ts_keeping *keeping, struct ts_arena *arena, struct ts_plan *ret);

#endif
