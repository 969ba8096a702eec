/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The search for a recipe. Everything a litre holds is linear in the amounts, so each set of
 * ingredients is a small linear program (linear.h), and all sets up to six are looked at.
 */
#include "care/recipe.h"

#include <math.h>
#include <string.h>

#include "care/linear.h"
#include "chem/carbonate.h"
#include "chem/conductivity.h"
#include "chem/substances.h"

/* clang-format off */
const struct ts_ingredient ts_ingredients[TS_INGREDIENT__COUNT] = {
	[TS_MINERAL_FREE] = {"mineral-free", "reverse osmosis, distilled or clean rain water", "reverse-osmosis|reverse osmosis|ro|distilled|rain", NULL, true, false},
	[TS_CALCIUM_CHLORIDE] = {"CaCl2.2H2O", "calcium chloride", "calcium chloride|cacl2", "CaCl2.2H2O", true, true},
	[TS_GYPSUM] = {"CaSO4.2H2O", "gypsum", "gypsum|calcium sulphate|calcium sulfate|caso4", "CaSO4.2H2O", true, true},
	[TS_MAGNESIUM_SULPHATE] = {"MgSO4.7H2O", "Epsom salt", "epsom salt|magnesium sulphate|magnesium sulfate|mgso4", "MgSO4.7H2O", true, true},
	[TS_MAGNESIUM_CHLORIDE] = {"MgCl2.6H2O", "magnesium chloride", "magnesium chloride|mgcl2", "MgCl2.6H2O", false, true},
	[TS_SODIUM_BICARBONATE] = {"NaHCO3", "sodium bicarbonate", "sodium bicarbonate|bicarbonate|baking soda", "NaHCO3", true, false},
	[TS_POTASSIUM_BICARBONATE] = {"KHCO3", "potassium bicarbonate", "potassium bicarbonate", "KHCO3", true, false},
};
/* clang-format on */

static bool same(const char *a, size_t len, const char *b)
{
	for (size_t i = 0; i < len; i++) {
		char x = a[i], y = b[i];

		x = x >= 'A' && x <= 'Z' ? (char)(x + 32) : x;
		y = y >= 'A' && y <= 'Z' ? (char)(y + 32) : y;
		if (x != y)
			return false;
	}
	return !b[len];
}

int ts_ingredient_named(const char *name)
{
	for (int i = 0; i < TS_INGREDIENT__COUNT; i++) {
		const char *at = ts_ingredients[i].names;

		if (same(ts_ingredients[i].key, strlen(ts_ingredients[i].key), name))
			return i;
		while (*at) {
			size_t len = strcspn(at, "|");

			if (same(at, len, name))
				return i;
			at += len + (at[len] == '|');
		}
	}
	return -1;
}

struct ts_range ts_recipe_aim(struct ts_range band, double now)
{
	double margin = isfinite(band.high) ? (band.high - band.low) / 5 : 0;
	struct ts_range aim = {band.low + margin, band.high - margin};

	if (now >= band.low && now <= band.high) {
		aim.low = fmin(aim.low, now);
		aim.high = fmax(aim.high, now);
	}
	return aim;
}

/* Recipes so alike in what they miss, dH, are equal. */
#define MISS_EQUAL 0.05

/* What a litre holds that a recipe is judged by. */
enum amount { GH, KH, SODIUM, POTASSIUM, CHLORIDE, CALCIUM, MAGNESIUM, AMOUNT__COUNT };

static void amounts_of(const struct ts_solution *s, double ret[AMOUNT__COUNT])
{
	ret[GH] = ts_chem_dh_from_mmol_l(s->ca_mmol_l + s->mg_mmol_l);
	ret[KH] = ts_chem_dkh_from_meq_l(s->alk_meq_l);
	ret[SODIUM] = s->na_mmol_l * TS_WEIGHT_NA;
	ret[POTASSIUM] = s->k_mmol_l * TS_WEIGHT_K;
	ret[CHLORIDE] = s->cl_mmol_l * TS_WEIGHT_CL;
	ret[CALCIUM] = s->ca_mmol_l * TS_WEIGHT_CA;
	ret[MAGNESIUM] = s->mg_mmol_l * TS_WEIGHT_MG;
}

/* One search: what an ingredient adds per unit (share of water, or mmol/L), and the limits. */
struct search {
	const struct ts_recipe_wish *wish;
	double base[AMOUNT__COUNT];
	double unit[TS_INGREDIENT__COUNT][AMOUNT__COUNT];
	double grams[TS_INGREDIENT__COUNT]; /* in 100 L */
	double most[AMOUNT__COUNT];         /* sodium, potassium, chloride; INFINITY: none */
	double ca_mg_low, ca_mg_high;       /* by mass; low 0, high INFINITY: none */
	double ca_mg_aim;
};

/* One set of ingredients as a linear program, its variables in the order of `of`. */
struct set {
	struct ts_linear program;
	int of[TS_RECIPE_PARTS_MOST];
	size_t count;
};

static void open_search(struct search *s, const struct ts_recipe_wish *wish,
	const struct ts_practice *practice, enum ts_recipe_limit without)
{
	static const enum ts_practice_id limits[][3] = {
		[SODIUM] = {TS_P_RECIPE_NA_SOFT, TS_P_RECIPE_NA_GENERAL, TS_P_RECIPE_NA_LAKE},
		[POTASSIUM] = {TS_P_RECIPE_K_SOFT, TS_P_RECIPE_K_GENERAL, TS_P_RECIPE_K_LAKE},
		[CHLORIDE] = {TS_P_RECIPE_CL_SOFT, TS_P_RECIPE_CL_GENERAL, TS_P_RECIPE_CL_LAKE},
	};
	bool lake = wish->kind == TS_RECIPE_LAKE;

	s->wish = wish;
	amounts_of(&wish->base, s->base);
	for (int i = 0; i < TS_INGREDIENT__COUNT; i++) {
		const struct ts_substance *salt = NULL;
		struct ts_solution none = {0};

		if (ts_ingredients[i].formula)
			salt = ts_chem_substance(ts_ingredients[i].formula);
		if (salt) {
			ts_chem_dissolve(&none, salt, 1, &none);
			amounts_of(&none, s->unit[i]);
		}
		s->grams[i] = salt ? ts_chem_substance_grams(salt, 1, 100) : 0;
		for (int a = 0; !salt && a < AMOUNT__COUNT; a++)
			s->unit[i][a] = -s->base[a];
	}
	for (int a = SODIUM; a <= CHLORIDE; a++)
		s->most[a] = (int)without == TS_LIMIT_SODIUM + a - SODIUM
				     ? (double)INFINITY
				     : fmax(s->base[a], practice->value[limits[a][wish->kind]]);
	s->ca_mg_low = practice->value[lake ? TS_P_RECIPE_CA_MG_LAKE : TS_P_RECIPE_CA_MG_LOW];
	s->ca_mg_high = practice->value[TS_P_RECIPE_CA_MG_HIGH];
	s->ca_mg_aim = sqrt(practice->value[TS_P_RECIPE_CA_MG_LOW] * s->ca_mg_high);
	if (without == TS_LIMIT_CA_MG) {
		s->ca_mg_low = 0;
		s->ca_mg_high = (double)INFINITY;
	}
}

/* sign * (weights . amounts) <= bound, as a row over the set's amounts. */
static double *limit_row(
	struct set *set, const struct search *s, const double *weights, double sign, double bound)
{
	double of_base = 0, *row;

	for (int a = 0; a < AMOUNT__COUNT; a++)
		of_base += weights[a] * s->base[a];
	row = ts_linear_row(&set->program, sign < 0 ? of_base - bound : bound - of_base);
	for (size_t i = 0; row && i < set->count; i++) {
		for (int a = 0; a < AMOUNT__COUNT; a++)
			row[i] += sign * weights[a] * s->unit[set->of[i]][a];
	}
	return row;
}

static void hold_band(struct set *set, const struct search *s, enum amount a, struct ts_range band)
{
	double weights[AMOUNT__COUNT] = {0};

	weights[a] = 1;
	limit_row(set, s, weights, -1, band.low);
	if (isfinite(band.high))
		limit_row(set, s, weights, 1, band.high);
}

/* A further variable, the miss of an aim, to be kept least. */
static void aim_at(
	struct set *set, const struct search *s, const double *weights, struct ts_range aim)
{
	size_t miss = set->program.variables++;
	double *row = limit_row(set, s, weights, -1, aim.low);

	if (row)
		row[miss] = -1;
	if (isfinite(aim.high)) {
		row = limit_row(set, s, weights, 1, aim.high);
		if (row)
			row[miss] = -1;
	}
	set->program.cost[miss] = 1;
}

static bool uses_hardness_salt(const struct set *set)
{
	for (size_t i = 0; i < set->count; i++) {
		if (ts_ingredients[set->of[i]].hardness)
			return true;
	}
	return false;
}

static void open_set(struct set *set, const struct search *s, unsigned mask)
{
	double gh[AMOUNT__COUNT] = {[GH] = 1}, kh[AMOUNT__COUNT] = {[KH] = 1};
	double *row;

	memset(set, 0, sizeof *set);
	for (int i = 0; i < TS_INGREDIENT__COUNT; i++) {
		if (mask & 1u << i)
			set->of[set->count++] = i;
	}
	set->program.variables = set->count;
	hold_band(set, s, GH, s->wish->gh_dh);
	hold_band(set, s, KH, s->wish->kh_dh);
	for (int a = SODIUM; a <= CHLORIDE; a++)
		hold_band(set, s, (enum amount)a, (struct ts_range){0, s->most[a]});
	if (mask & 1u << TS_MINERAL_FREE) {
		row = ts_linear_row(&set->program, 1);
		if (row)
			row[0] = 1;
	}
	aim_at(set, s, gh, s->wish->gh_aim_dh);
	aim_at(set, s, kh, s->wish->kh_aim_dh);
	if (uses_hardness_salt(set) && isfinite(s->ca_mg_high)) {
		double low[AMOUNT__COUNT] = {[CALCIUM] = 1, [MAGNESIUM] = -s->ca_mg_low};
		double high[AMOUNT__COUNT] = {[CALCIUM] = 1, [MAGNESIUM] = -s->ca_mg_high};
		/* In dH of calcium, so that this miss weighs like the others. */
		double dh = ts_chem_dh_from_mmol_l(1 / TS_WEIGHT_CA);
		double aim[AMOUNT__COUNT] = {[CALCIUM] = dh, [MAGNESIUM] = -dh * s->ca_mg_aim};

		limit_row(set, s, low, -1, 0);
		limit_row(set, s, high, 1, 0);
		aim_at(set, s, aim, (struct ts_range){0, 0});
	}
}

/*
 * The amounts of one set, or false; `x` gets them, `ret_miss` how far they stay from the aims,
 * `ret_grams` their weight in 100 L.
 */
static bool solve_set(
	const struct search *s, unsigned mask, double *x, double *ret_miss, double *ret_grams)
{
	struct set set;
	double miss, cost, *row;
	double amounts[TS_LINEAR_VARIABLES];

	open_set(&set, s, mask);
	if (!ts_linear_solve(&set.program, amounts, &miss))
		return false;
	*ret_miss = miss;
	row = ts_linear_row(&set.program, miss + 1e-9);
	for (size_t v = 0; row && v < set.program.variables; v++) {
		row[v] = set.program.cost[v];
		set.program.cost[v] = 0;
	}
	for (size_t i = 0; i < set.count; i++)
		set.program.cost[i] = set.of[i] == TS_MINERAL_FREE ? 1e-3 : s->grams[set.of[i]];
	if (!row || !ts_linear_solve(&set.program, amounts, &cost))
		return false;
	*ret_grams = 0;
	for (size_t i = 0; i < set.count; i++) {
		x[set.of[i]] = amounts[i];
		*ret_grams += amounts[i] * s->grams[set.of[i]];
	}
	return true;
}

static size_t bits_of(unsigned mask)
{
	size_t n = 0;

	for (; mask; mask &= mask - 1)
		n++;
	return n;
}

/* The best set, or false; `best` gets its amounts, nil where an ingredient is not used. */
static bool search_sets(const struct search *s, unsigned have, double best[TS_INGREDIENT__COUNT])
{
	for (size_t n = 0; n <= TS_RECIPE_PARTS_MOST; n++) {
		double least = (double)INFINITY, nearest = (double)INFINITY;

		for (unsigned mask = 0; mask < 1u << TS_INGREDIENT__COUNT; mask++) {
			double x[TS_INGREDIENT__COUNT] = {0}, grams, miss;

			if (bits_of(mask) != n || mask & ~have)
				continue;
			/* Nearer to the wish first; of equals the lighter. */
			if (!solve_set(s, mask, x, &miss, &grams) || miss > nearest + MISS_EQUAL ||
				(miss > nearest - MISS_EQUAL && grams > least - 1e-6))
				continue;
			nearest = fmin(miss, nearest);
			least = grams;
			memcpy(best, x, sizeof x);
		}
		if (isfinite(least))
			return true;
	}
	return false;
}

void ts_recipe_apply(
	const struct ts_recipe *recipe, const struct ts_solution *base, struct ts_solution *ret)
{
	struct ts_solution none = {.temp_c = base->temp_c}, s;
	const struct ts_solution *waters[] = {base, &none};
	const double parts[] = {1 - recipe->mineral_free, recipe->mineral_free};

	ts_chem_mix(waters, parts, 2, &s);
	for (size_t i = 0; i < recipe->count; i++) {
		const struct ts_ingredient *row = &ts_ingredients[recipe->parts[i].ingredient];

		if (row->formula)
			ts_chem_dissolve(
				&s, ts_chem_substance(row->formula), recipe->parts[i].mmol_l, &s);
	}
	*ret = s;
}

void ts_recipe_predict(struct ts_recipe *recipe)
{
	const struct ts_solution *s = &recipe->water;

	recipe->gh_dh = ts_chem_dh_from_mmol_l(s->ca_mmol_l + s->mg_mmol_l);
	recipe->kh_dh = ts_chem_dkh_from_meq_l(s->alk_meq_l);
	recipe->ph_low = recipe->ph = recipe->ph_high = recipe->ec_us_cm = (double)NAN;
	if (ts_chem_tank_ph(s, &recipe->ph_low, &recipe->ph, &recipe->ph_high) != TS_OK)
		recipe->ph_low = recipe->ph = recipe->ph_high = (double)NAN;
	/* Conductivity hardly hangs on pH: 7 will do where it cannot be computed. */
	if (ts_chem_conductivity_25_us_cm(
		    s, isnan(recipe->ph) ? 7 : recipe->ph, &recipe->ec_us_cm) != TS_OK)
		recipe->ec_us_cm = (double)NAN;
}

static void write_recipe(const struct search *s, const double *x, struct ts_recipe *ret)
{
	struct ts_recipe r = {0};

	for (int i = 0; i < TS_INGREDIENT__COUNT; i++) {
		struct ts_recipe_part part = {(enum ts_ingredient_id)i, x[i], x[i] * s->grams[i]};

		if (x[i] < 1e-9)
			continue;
		if (i == TS_MINERAL_FREE) {
			r.mineral_free = fmin(1, x[i]);
			part.mmol_l = 0;
		}
		r.grams_per_100_l += part.grams_per_100_l;
		r.parts[r.count++] = part;
	}
	ts_recipe_apply(&r, &s->wish->base, &r.water);
	ts_recipe_predict(&r);
	*ret = r;
}

static unsigned at_hand(const struct ts_recipe_wish *wish)
{
	unsigned usual = 0;

	for (unsigned i = 0; i < TS_INGREDIENT__COUNT; i++)
		usual |= ts_ingredients[i].usual ? 1u << i : 0;
	return wish->have ? wish->have : usual;
}

/* The first limit without which a recipe could be had. */
static enum ts_recipe_limit what_stood_in_the_way(
	const struct ts_recipe_wish *wish, const struct ts_practice *practice)
{
	double x[TS_INGREDIENT__COUNT];
	struct search s;

	for (int limit = TS_LIMIT_SODIUM; limit < TS_LIMIT_INGREDIENTS; limit++) {
		open_search(&s, wish, practice, (enum ts_recipe_limit)limit);
		if (search_sets(&s, at_hand(wish), x))
			return (enum ts_recipe_limit)limit;
	}
	return TS_LIMIT_INGREDIENTS;
}

enum ts_status ts_recipe_find(const struct ts_recipe_wish *wish, const struct ts_practice *practice,
	struct ts_recipe *ret, enum ts_recipe_limit *ret_limit)
{
	struct ts_practice own;
	struct search s;
	double x[TS_INGREDIENT__COUNT];

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	if (ts_solution_check(&wish->base) != TS_OK || !isfinite(wish->gh_dh.low) ||
		!isfinite(wish->kh_dh.low))
		return TS_BAD_INPUT;
	open_search(&s, wish, practice, TS_LIMIT_NONE);
	if (!search_sets(&s, at_hand(wish), x)) {
		if (ret_limit)
			*ret_limit = what_stood_in_the_way(wish, practice);
		return TS_NO;
	}
	write_recipe(&s, x, ret);
	return TS_OK;
}

/* KH, and GH, where lime no longer dissolves; never below what is there already. */
static bool reach(const struct ts_solution *base, enum ts_mineral mineral, double times_air,
	double *ret_kh_dh, double *ret_gh_dh)
{
	struct ts_solution after = *base;
	struct ts_chem_constants constants = {0};
	double co2 = times_air * ts_chem_air_co2_mmol_l(base->temp_c);

	ts_chem_constants_at(&constants, base->temp_c);
	if (ts_chem_saturate_open(&constants, base, mineral, co2, &after) != TS_OK ||
		after.alk_meq_l < base->alk_meq_l)
		after = *base;
	*ret_kh_dh = ts_chem_dkh_from_meq_l(after.alk_meq_l);
	*ret_gh_dh = ts_chem_dh_from_mmol_l(after.ca_mmol_l + after.mg_mmol_l);
	return after.alk_meq_l > base->alk_meq_l;
}

enum ts_status ts_lime_reach(
	const struct ts_solution *base, enum ts_mineral mineral, struct ts_lime_reach *ret)
{
	struct ts_lime_reach r;
	double gh;

	reach(base, mineral, 1, &r.kh_air_dh, &gh);
	reach(base, mineral, TS_CHEM_TANK_CO2_USUAL, &r.kh_tank_dh, &r.gh_tank_dh);
	if (!reach(base, mineral, TS_CHEM_TANK_CO2_MOST, &r.kh_gassy_dh, &gh))
		return TS_NO;
	*ret = r;
	return TS_OK;
}
