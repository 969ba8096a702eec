/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What remake tells to programs: result structs and their rows. The sentences in them are the ones
 * that the screen shows.
 */
#ifndef TS_REPORT_REMAKE_RESULT_H
#define TS_REPORT_REMAKE_RESULT_H

#include "answers/stage_line.h"
#include "report/result.h"

/* A water that was mixed or dosed; numbers that cannot be computed are NAN. */
struct ts_made_water {
	double gh_dh, kh_dh, ph_low, ph, ph_high, conductivity_us_cm;
	double ca_mg_l, mg_mg_l, na_mg_l, k_mg_l, cl_mg_l, so4_mg_l;
};

struct ts_recipe_line {
	const char *ingredient, *says;
	double amount, amount_change; /* for the first fill; for each change */
	const char *unit;
};

struct ts_group_line {
	const char *name;
	struct ts_texts species;
	const char *says;
};

struct ts_remake_result {
	const char *verdict, *says, *because;
	struct ts_texts wished_as_it_is, suits_as_it_is;
	double volume_l, change_percent;
	struct ts_recipe_line *recipe;
	size_t recipe_count;
	const struct ts_made_water *result; /* NULL: no recipe */
	struct ts_texts notes;
	struct ts_stage_line *stages;
	size_t stage_count;
	const char *routine;
	struct ts_group_line *groups;
	size_t group_count;
	struct ts_texts cautions;
};

extern const struct ts_result_shape ts_result_remake;

#endif
