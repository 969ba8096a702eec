/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The order of the questions: is the water known, what do the wished animals share, is there a
 * recipe, and may the tank be taken there.
 */
#include "care/remake.h"

#include <math.h>

#include "chem/carbonate.h"
#include "water/analysis.h"

/* What a kit can tell, dH. */
#define KIT_DH 0.5

static bool is_lake(int home)
{
	return home == TS_HOME_MALAWI || home == TS_HOME_TANGANYIKA || home == TS_HOME_VICTORIA;
}

static bool is_soft(int home)
{
	return home == TS_HOME_BLACK || home == TS_HOME_CLEAR_SOFT || home == TS_HOME_BEE_SHRIMP;
}

/* The most sensitive decide how much sodium the water may get. */
static enum ts_recipe_kind kind_of(const struct ts_remake_wish *w)
{
	bool lake = w->wanted_count > 0;

	for (size_t i = 0; i < w->wanted_count; i++) {
		if (is_soft(w->wanted[i]->home_water))
			return TS_RECIPE_SOFT;
		lake &= is_lake(w->wanted[i]->home_water);
	}
	return lake ? TS_RECIPE_LAKE : TS_RECIPE_GENERAL;
}

static bool only_black_water(const struct ts_remake_wish *w)
{
	for (size_t i = 0; i < w->wanted_count; i++) {
		if (w->wanted[i]->home_water != TS_HOME_BLACK)
			return false;
	}
	return w->wanted_count > 0;
}

static void narrow(struct ts_range *band, const struct ts_range *by)
{
	if (isnan(by->low))
		return;
	band->low = fmax(band->low, by->low);
	band->high = fmin(band->high, by->high);
}

/* What all wished animals prefer (or tolerate) in one parameter. */
static struct ts_range shared_band(const struct ts_remake_wish *w, enum ts_parameter p,
	bool comfortable, const struct ts_practice *practice)
{
	struct ts_range band = {0, (double)INFINITY};

	for (size_t i = 0; i < w->wanted_count; i++) {
		struct ts_match m;

		ts_match_species(w->wanted[i], w->water, &w->keeping, practice, &m);
		narrow(&band, comfortable && !isnan(m.at[p].preferred.low) ? &m.at[p].preferred
									   : &m.at[p].tolerated);
	}
	return band;
}

/* The buffer floor for everybody but animals of black water alone. */
static void raise_kh_floor(
	struct ts_range *kh, const struct ts_remake_wish *w, const struct ts_practice *practice)
{
	double floor_dh = practice->value[TS_P_KH_ACT];

	if (only_black_water(w) || kh->low >= floor_dh)
		return;
	kh->low = floor_dh;
	kh->high = fmax(kh->high, floor_dh);
}

/* A wish so narrow is one figure. */
static bool is_figure(const struct ts_range *wish)
{
	return wish->high - wish->low < 2 * KIT_DH;
}

/* A wish of one figure is met within what a kit can tell. */
static struct ts_range within_a_kit(struct ts_range wish)
{
	if (is_figure(&wish)) {
		wish.low = fmax(0, wish.low - KIT_DH);
		wish.high += KIT_DH;
	}
	return wish;
}

/* Wished outright goes before what the animals share. */
static void choose_bands(const struct ts_remake_wish *w, bool comfortable,
	const struct ts_practice *practice, struct ts_remake *r)
{
	const struct ts_range any = {0, (double)INFINITY};

	r->gh_dh = r->gh_unknown         ? any
		   : isnan(w->gh_dh.low) ? shared_band(w, TS_GH, comfortable, practice)
					 : within_a_kit(w->gh_dh);
	r->kh_dh = r->kh_unknown         ? any
		   : isnan(w->kh_dh.low) ? shared_band(w, TS_KH, comfortable, practice)
					 : within_a_kit(w->kh_dh);
	if (isnan(w->kh_dh.low) && !r->kh_unknown)
		raise_kh_floor(&r->kh_dh, w, practice);
	r->comfortable = comfortable;
}

static enum ts_status find_recipe(
	const struct ts_remake_wish *w, const struct ts_practice *practice, struct ts_remake *r)
{
	struct ts_recipe_wish wish = {.base = r->base,
		.gh_dh = r->gh_dh,
		.kh_dh = r->kh_dh,
		.gh_aim_dh = ts_recipe_aim(r->gh_dh, r->base_gh_dh),
		.kh_aim_dh = ts_recipe_aim(r->kh_dh, r->base_kh_dh),
		.have = w->have,
		.kind = kind_of(w)};

	/* One figure wished outright is aimed at itself. */
	if (is_figure(&w->gh_dh))
		wish.gh_aim_dh = w->gh_dh;
	if (is_figure(&w->kh_dh))
		wish.kh_aim_dh = w->kh_dh;
	return ts_recipe_find(&wish, practice, &r->recipe, &r->limit);
}

/* What they prefer first; what they tolerate where that cannot be had. */
static enum ts_status look_for_recipe(
	const struct ts_remake_wish *w, const struct ts_practice *practice, struct ts_remake *r)
{
	enum ts_status status = TS_NO;

	for (int comfortable = 1; comfortable >= 0; comfortable--) {
		choose_bands(w, comfortable != 0, practice, r);
		r->refusal = TS_REMAKE_FINE;
		if (r->gh_dh.low > r->gh_dh.high || r->kh_dh.low > r->kh_dh.high) {
			r->refusal = TS_REMAKE_NO_SHARED;
			r->parameter = r->gh_dh.low > r->gh_dh.high ? TS_GH : TS_KH;
			continue;
		}
		status = find_recipe(w, practice, r);
		if (status != TS_NO)
			return status;
		r->refusal = TS_REMAKE_UNREACHABLE;
	}
	return TS_NO;
}

static void look_at_lime_and_peat(
	const struct ts_remake_wish *w, const struct ts_practice *practice, struct ts_remake *r)
{
	struct ts_profile after;

	r->lime_helps = r->recipe.kh_dh > r->base_kh_dh + KIT_DH &&
			ts_lime_reach(&r->base, TS_CALCITE, &r->limestone) == TS_OK &&
			ts_lime_reach(&r->base, TS_ARAGONITE, &r->aragonite) == TS_OK;
	ts_remade_profile(&r->recipe.water, practice, &after);
	for (size_t i = 0; i < w->wanted_count; i++) {
		struct ts_match m;

		ts_match_species(w->wanted[i], &after, &w->keeping, practice, &m);
		r->peat |= m.at[TS_PH].known && m.at[TS_PH].uncomfortable_by >= 0.1;
	}
}

/* The same recipe where the supply is at the ends of what it was read at. */
static void look_at_ends(const struct ts_remake_wish *w, struct ts_remake *r)
{
	const struct ts_span *gh = &w->water->at[TS_GH], *kh = &w->water->at[TS_KH];
	const double ends[2][2] = {{gh->low, kh->low}, {gh->high, kh->high}};

	if ((!gh->exposure && !kh->exposure) || !r->recipe.count)
		return;
	r->has_ends = true;
	for (int i = 0; i < 2; i++) {
		struct ts_solution s;

		if (ts_solution_from_hardness(ends[i][0], ends[i][1], r->base.temp_c, &s) != TS_OK)
			r->has_ends = false;
		else
			ts_recipe_apply(&r->recipe, &s, &r->other_end[i].water);
		if (r->has_ends)
			ts_recipe_predict(&r->other_end[i]);
	}
}

static enum ts_status plan_stages(
	const struct ts_remake_wish *w, const struct ts_practice *practice, struct ts_remake *r)
{
	struct ts_stages_wish wish = {.now = r->base,
		.poured = r->recipe.water,
		.gh_dh = r->gh_dh,
		.kh_dh = r->kh_dh,
		.residents = w->residents,
		.resident_count = w->resident_count,
		.tan_mg_l = (double)NAN,
		.no2_mg_l = (double)NAN,
		.cl_mg_l = (double)NAN,
		.reading_age_days = isnan(w->reading_age_days) ? 1e6 : w->reading_age_days};
	unsigned assumed;
	enum ts_status status;

	if (w->tank) {
		wish.tan_mg_l = w->tank->poisons.tan_mg_l;
		wish.no2_mg_l = w->tank->poisons.no2_mg_l;
		if (w->tank->at[TS_KH].given && ts_solution_from_profile(w->tank, r->base.temp_c,
							&wish.now, &assumed) == TS_BAD_INPUT)
			return TS_BAD_INPUT;
	}
	if (w->chloramine_mg_l > 0)
		wish.poured_tan_mg_l = w->chloramine_mg_l * TS_WEIGHT_N / (2 * TS_WEIGHT_CL);
	/* A kit cannot tell the last half degree, which a wish of one figure has already. */
	if (!is_figure(&w->gh_dh))
		wish.gh_dh = (struct ts_range){wish.gh_dh.low - KIT_DH, wish.gh_dh.high + KIT_DH};
	if (!is_figure(&w->kh_dh))
		wish.kh_dh = (struct ts_range){wish.kh_dh.low - KIT_DH, wish.kh_dh.high + KIT_DH};
	status = ts_stages_plan(&wish, practice, &r->stages);
	if (status == TS_NO)
		r->refusal = TS_REMAKE_STAGES;
	return status;
}

/* One of the two is wished outright, no animal is wished for, and the other was not read. */
static bool alone(const struct ts_remake_wish *w, enum ts_parameter wished, enum ts_parameter other)
{
	const struct ts_range *range = wished == TS_GH ? &w->gh_dh : &w->kh_dh;
	const struct ts_range *left = wished == TS_GH ? &w->kh_dh : &w->gh_dh;

	return !w->wanted_count && !isnan(range->low) && isnan(left->low) &&
	       w->water->at[wished].given && !w->water->at[other].given;
}

/* Animals are wished whom the water is too hard: it is thinned by its GH, whatever its KH is. */
static bool is_thinned(const struct ts_remake_wish *w, const struct ts_practice *practice)
{
	return w->wanted_count && !w->resident_count && isnan(w->kh_dh.low) &&
	       w->water->at[TS_GH].given && !w->water->at[TS_KH].given &&
	       w->water->at[TS_GH].value > shared_band(w, TS_GH, true, practice).high;
}

static enum ts_status know_the_water(
	const struct ts_remake_wish *w, const struct ts_practice *practice, struct ts_remake *r)
{
	struct ts_profile water = *w->water;
	unsigned assumed;
	enum ts_status status;

	r->gh_unknown = alone(w, TS_KH, TS_GH);
	r->kh_unknown = alone(w, TS_GH, TS_KH) || is_thinned(w, practice);
	r->base_gh_dh = w->water->at[TS_GH].value;
	r->base_kh_dh = w->water->at[TS_KH].value;
	r->refusal = w->water->unusual & (TS_UNUSUAL_SOFTENED | TS_UNUSUAL_MAYBE_SOFTENED)
			     ? TS_REMAKE_SOFTENED
		     : !w->water->at[TS_GH].given && !r->gh_unknown ? TS_REMAKE_NO_GH
								    : TS_REMAKE_FINE;
	if (r->refusal != TS_REMAKE_FINE)
		return TS_NO;
	/* Bicarbonate does not ask for GH, nor a hardness salt for KH: any figure stands in. */
	if (r->kh_unknown)
		water.at[TS_KH] = water.at[TS_GH];
	status = ts_solution_from_profile(&water, w->temp_c, &r->base, &assumed);
	if (status == TS_NO)
		r->refusal = TS_REMAKE_NO_KH;
	if (status != TS_OK)
		return status;
	r->base_gh_dh = ts_chem_dh_from_mmol_l(r->base.ca_mmol_l + r->base.mg_mmol_l);
	r->base_kh_dh = ts_chem_dkh_from_meq_l(r->base.alk_meq_l);
	return status;
}

/* What was not read stays not known. */
static void leave_unknown(struct ts_remake *r)
{
	const double no = (double)NAN;
	struct ts_recipe *made = &r->recipe;

	if (!r->gh_unknown && !r->kh_unknown)
		return;
	made->ec_us_cm = no;
	r->lime_helps = r->has_ends = false;
	if (r->gh_unknown)
		r->base_gh_dh = made->gh_dh = no;
	else
		r->base_kh_dh = made->kh_dh = made->ph_low = made->ph = made->ph_high = no;
}

enum ts_status ts_remake_plan(const struct ts_remake_wish *wish, const struct ts_practice *practice,
	struct ts_remake *ret)
{
	struct ts_practice own;
	struct ts_remake r = {.parameter = -1, .stages = {.resident = -1, .parameter = -1}};
	enum ts_status status;

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	status = know_the_water(wish, practice, &r);
	if (status == TS_OK)
		status = look_for_recipe(wish, practice, &r);
	if (status == TS_OK) {
		look_at_lime_and_peat(wish, practice, &r);
		look_at_ends(wish, &r);
		status = plan_stages(wish, practice, &r);
		leave_unknown(&r);
	}
	if (status != TS_BAD_INPUT)
		*ret = r;
	return status;
}
