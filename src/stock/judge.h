/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What proposing asks of the rules and of the load: one group alone in the tank, two groups
 * together, and how much waste the tank bears.
 */
#ifndef TS_STOCK_JUDGE_H
#define TS_STOCK_JUDGE_H

#include "stock/propose.h"

/*
 * What the rules say of a group alone (`b` NULL) or of two together. `conditions`: concerns cost
 * points; else they forbid like conflicts. False: it is forbidden, and `*ret_ruling`, unless NULL,
 * is the gravest ruling.
 */
bool ts_judge(const struct ts_wish *wish, bool conditions, const struct ts_group *a,
	const struct ts_group *b, unsigned *ret_points, struct ts_ruling *ret_ruling);

/* Which rules of two are asked: all, those whose answer hangs on how many there are, the others. */
enum ts_numbers { TS_NUMBERS_TOO, TS_NUMBERS_LEFT_OUT, TS_NUMBERS_ALONE };

/* The same of two, and of some of the rules. */
bool ts_judge_pair(const struct ts_wish *wish, bool conditions, const struct ts_group *a,
	const struct ts_group *b, enum ts_numbers numbers, unsigned *ret_points,
	struct ts_ruling *ret_ruling);

/* Whether a rule of these two could hang on how many there are. */
bool ts_judge_asks_numbers(const struct ts_group *a, const struct ts_group *b);

/* The middle of what the tank runs at, C; NAN: not given. */
double ts_judge_temperature(const struct ts_wish *wish);

/* Nitrogen that the group gives to the water, mg/day. */
double ts_judge_nitrogen_mg_day(const struct ts_wish *wish, const struct ts_group *group);
/*
 * The most that a proposal may give, mg/day; NAN: the litres are not known. Without conditions, it
 * leaves nitrate and buffer where a check has nothing to say of them.
 */
double ts_judge_nitrogen_most_mg_day(const struct ts_wish *wish, bool conditions);

/* So little KH that only lists of black water are sound, and those with a light load. */
bool ts_judge_hardly_any_kh(const struct ts_wish *wish);

/*
 * Whether the species bears the nitrate there is and will be with a full list, and hardly any KH
 * where that is so; else why not.
 */
enum ts_left_out ts_judge_load(
	const struct ts_wish *wish, bool conditions, const struct ts_species *species);

#endif
