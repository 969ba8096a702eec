/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Re-making a water: the fewest ingredients, then the least grams, that bring GH and KH into a
 * wished band. Minerals are changed and nothing else: pH follows from them. How a tank with
 * animals gets there is stages.h; which animals would need no recipe at all is the match room's.
 */
#ifndef TS_CARE_RECIPE_H
#define TS_CARE_RECIPE_H

#include <tapshoal/match.h>

#include "chem/minerals.h"
#include "chem/solution.h"
#include "model/practice.h"

/* What may go into a recipe; the rows stand in recipe.c. */
enum ts_ingredient_id {
	TS_MINERAL_FREE, /* reverse osmosis, distilled or rain water */
	TS_CALCIUM_CHLORIDE,
	TS_GYPSUM,
	TS_MAGNESIUM_SULPHATE,
	TS_MAGNESIUM_CHLORIDE,
	TS_SODIUM_BICARBONATE,
	TS_POTASSIUM_BICARBONATE,
	TS_INGREDIENT__COUNT
};

struct ts_ingredient {
	const char *key;     /* in JSON and after --have: "CaCl2.2H2O" */
	const char *says;    /* as people call it: "calcium chloride" */
	const char *names;   /* other spellings of --have, separated by '|', lower case */
	const char *formula; /* row of chem/substances.h; NULL: water without minerals */
	bool usual;          /* considered when nothing is said about what is at hand */
	bool hardness;       /* adds calcium or magnesium */
};

extern const struct ts_ingredient ts_ingredients[TS_INGREDIENT__COUNT];

/* The ingredient of a name, compared without regard to ASCII case; -1: there is none. */
int ts_ingredient_named(const char *name);

/* How much sodium, potassium and chloride the animals bear: practice rows recipe.*. */
enum ts_recipe_kind { TS_RECIPE_SOFT, TS_RECIPE_GENERAL, TS_RECIPE_LAKE };

struct ts_recipe_wish {
	struct ts_solution base;      /* the water at hand, at the tank's temperature */
	struct ts_range gh_dh, kh_dh; /* where the new water must lie; high INFINITY: open */
	/*
	 * Where in the band it should lie, so that a kit's error does not leave it: the band itself
	 * where it is a point. ts_recipe_aim() makes it.
	 */
	struct ts_range gh_aim_dh, kh_aim_dh;
	unsigned have; /* bits 1 << enum ts_ingredient_id; 0: the usual ones */
	enum ts_recipe_kind kind;
};

/* The limit that stood in the way of a recipe. */
enum ts_recipe_limit {
	TS_LIMIT_NONE,
	TS_LIMIT_SODIUM,
	TS_LIMIT_POTASSIUM,
	TS_LIMIT_CHLORIDE,
	TS_LIMIT_CA_MG,
	TS_LIMIT_INGREDIENTS /* no amount of what is at hand would do */
};

#define TS_RECIPE_PARTS_MOST 6

struct ts_recipe_part {
	enum ts_ingredient_id ingredient;
	double mmol_l;          /* of the finished water; 0 for water without minerals */
	double grams_per_100_l; /* likewise */
};

struct ts_recipe {
	struct ts_recipe_part parts[TS_RECIPE_PARTS_MOST]; /* in the order of the rows */
	size_t count;                                      /* 0: the water at hand will do */
	double mineral_free;    /* share of water without minerals, 0..1 */
	double grams_per_100_l; /* of all salts */
	struct ts_solution water;
	double gh_dh, kh_dh;
	double ph_low, ph, ph_high; /* of a tank of it; NAN: cannot be computed (KH < 0.5) */
	double ec_us_cm;            /* at 25 C; NAN: cannot be computed */
};

/*
 * A band drawn in by a fifth of its width at both ends (a rule of this program), then widened to
 * `now` where that lies in the band: water that is good enough is not changed. Points and open
 * ends stay.
 */
struct ts_range ts_recipe_aim(struct ts_range band, double now);

/*
 * The recipe: of all sets of at most six ingredients those with the fewest that can hold every
 * limit (bands, sodium, potassium, chloride; Ca to Mg 2:1..5:1 by mass wherever a hardness salt
 * is used), of these the one nearest to the aims, and of equals the least grams. Its amounts: as
 * near as possible to the aims and to the middle of Ca to Mg (3.2:1), then the least grams, then
 * the least water without minerals. Exact: each set is a linear program. TS_NO: no set does;
 * `ret_limit` (may be NULL) then names the first limit without which one would. TS_BAD_INPUT: a
 * base outside the equations.
 */
TS_MUST_USE enum ts_status ts_recipe_find(const struct ts_recipe_wish *wish,
	const struct ts_practice *practice, struct ts_recipe *ret, enum ts_recipe_limit *ret_limit);

/* Fills GH, KH, pH and conductivity of `recipe->water`. */
void ts_recipe_predict(struct ts_recipe *recipe);

/* The water that a recipe makes of any water, to see what the other end of a range gives. */
void ts_recipe_apply(
	const struct ts_recipe *recipe, const struct ts_solution *base, struct ts_solution *ret);

/* How far limestone and aragonite bring a water by themselves, in weeks, and no further. */
struct ts_lime_reach {
	double kh_air_dh, kh_tank_dh, kh_gassy_dh; /* at 1, 4 and 12 times the CO2 of air */
	double gh_tank_dh;
};

/* TS_NO where nothing dissolves any more or the equations end; `ret` then untouched. */
TS_MUST_USE enum ts_status ts_lime_reach(
	const struct ts_solution *base, enum ts_mineral mineral, struct ts_lime_reach *ret);

#endif
