/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Another water for other animals, or for those that live there: who needs no work, whether anybody
 * needs it at all, the recipe, and how a tank with animals gets there.
 */
#ifndef TS_ANSWERS_REMAKE_H
#define TS_ANSWERS_REMAKE_H

#include <tapshoal/plan.h>

#include "answers/asking.h"
#include "answers/stage_line.h"
#include "care/remake.h"

struct ts_remake_question {
	const struct ts_water *water; /* at hand */
	const struct ts_plan
		*plan; /* its tank, and signs; of a call of words what there is of one */
	bool has_plan;
	struct ts_keeping keeping;
	const struct ts_species *const *wanted;
	size_t wanted_count;
	const struct ts_resident *residents;
	size_t resident_count;
	struct ts_range gh_dh, kh_dh;    /* wished outright; low NAN: not */
	unsigned have;                   /* see struct ts_recipe_wish */
	double volume_l, change_percent; /* NAN: the plan's, else 100 L and a usual change */
};

/* A water that was mixed or dosed; numbers that cannot be computed are NAN. */
struct ts_made_water {
	double gh_dh, kh_dh, ph_low, ph, ph_high, conductivity_us_cm;
	double ca_mg_l, mg_mg_l, na_mg_l, k_mg_l, cl_mg_l, so4_mg_l;
	double ca_to_mg; /* by mass; NAN: not known, or no magnesium */
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
	const char *slow; /* lime that does it by itself; NULL: none does */
	const char *bare; /* the water at hand is no water yet; NULL: it is one */
	struct ts_texts wished_as_it_is, suits_as_it_is;
	struct ts_texts as_it_is_says; /* both, and where to see all, in sentences */
	double volume_l, change_percent;
	bool volume_known;
	const char *treatment; /* of all new water */
	struct ts_recipe_line *recipe;
	size_t recipe_count;
	const struct ts_made_water *result; /* NULL: no recipe */
	struct ts_texts notes;
	struct ts_stage_line *stages;
	size_t stage_count;
	const char *stages_say; /* how to read them; NULL: there are none */
	const char
		*stages_none; /* why a recipe has no stages; NULL: it has, or there is no recipe */
	const char *routine;
	struct ts_group_line *groups;
	size_t group_count;
	struct ts_texts cautions;
	bool as_it_is;         /* GH is known: who needs no work can be said; no row */
	bool asks_alone;       /* something else is done first, and nothing else is said; no row */
	enum ts_status status; /* TS_OK: there is a way; TS_NO; no row */
	struct ts_remake remake; /* as computed; no row */
};

/*
 * Answers. TS_BAD_INPUT: the figures are outside what the equations hold for, `*ret` untouched, as
 * with TS_NO_MEMORY. All belongs to the arena of `asking`.
 */
TS_MUST_USE enum ts_status ts_answer_remake(const struct ts_asking *asking,
	const struct ts_remake_question *question, struct ts_remake_result *ret);

#endif
