/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The order of animals of one verdict: how commonly sold, farthest from its limits, name, form.
 */
#ifndef TS_MATCH_ORDER_H
#define TS_MATCH_ORDER_H

#include <tapshoal/match.h>

/* The distance as it sorts: on a grid, and what has none last. */
double ts_match_distance_key(const struct ts_match *match);

/* Below 0: the first goes first. */
int ts_match_compare(const struct ts_species *a, double distance_a, const struct ts_species *b,
	double distance_b);

#endif
