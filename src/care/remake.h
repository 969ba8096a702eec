/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Another water for other animals, as a whole: whether it is needed, the band that the wished
 * animals share, the recipe (recipe.h), and how a tank with animals gets there (stages.h).
 */
#ifndef TS_CARE_REMAKE_H
#define TS_CARE_REMAKE_H

#include "care/recipe.h"
#include "care/stages.h"

struct ts_remake_wish {
	const struct ts_profile *water; /* the water at hand */
	double temp_c;                  /* of the tank; NAN: the profile's, else 25 */
	const struct ts_species *const *wanted;
	size_t wanted_count; /* 0: the two ranges alone */
	struct ts_keeping keeping;
	struct ts_range gh_dh, kh_dh;  /* wished outright; low NAN: not */
	unsigned have;                 /* see struct ts_recipe_wish */
	const struct ts_profile *tank; /* readings of the tank; NULL: it holds the water at hand */
	const struct ts_resident *residents; /* in the tank now */
	size_t resident_count;
	double reading_age_days; /* of the tank's ammonia; NAN: as if not read */
	double chloramine_mg_l;  /* chlorine bound in the supply; 0 or NAN: none known */
};

enum ts_remake_refusal {
	TS_REMAKE_FINE,
	TS_REMAKE_SOFTENED, /* softened water: use the unsoftened line */
	TS_REMAKE_NO_GH,    /* GH of the water at hand is not known */
	TS_REMAKE_NO_KH,
	TS_REMAKE_NO_SHARED,   /* the wished animals share no band; `parameter` says of what */
	TS_REMAKE_UNREACHABLE, /* no recipe; `limit` says what stands in the way */
	TS_REMAKE_STAGES       /* a recipe, but no safe way there; stages.refusal says why */
};

struct ts_remake {
	enum ts_remake_refusal refusal;
	int parameter;
	enum ts_recipe_limit limit;
	bool comfortable; /* the band is what they prefer; else only what they tolerate */
	struct ts_range gh_dh, kh_dh;
	struct ts_solution base;
	double base_gh_dh, base_kh_dh; /* NAN: not known */
	bool gh_unknown, kh_unknown;   /* and not wished: the other alone is mended, exactly;
					  residents   are judged by that one */
	struct ts_recipe recipe;
	struct ts_recipe other_end[2]; /* the same recipe where the supply is at its ends */
	bool has_ends;
	struct ts_lime_reach limestone, aragonite;
	bool lime_helps; /* KH is to rise, and lime dissolves */
	bool peat;       /* pH lies above what the wished animals prefer */
	struct ts_stages stages;
};

/*
 * TS_OK: a recipe (without parts: the water will do as it is) and, with residents, its stages.
 * TS_NO: `ret->refusal`; what was found up to there is filled in. TS_BAD_INPUT: figures outside
 * the equations, `ret` untouched.
 */
TS_MUST_USE enum ts_status ts_remake_plan(const struct ts_remake_wish *wish,
	const struct ts_practice *practice, struct ts_remake *ret);

#endif
