/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The schedule is greedy: each stage is the greatest change, in whole per cents, that is still
 * safe for the most delicate animal. All limits bind together.
 */
#include "care/stages.h"

#include <math.h>

#include "care/advice.h"
#include "chem/carbonate.h"
#include "chem/conductivity.h"
#include "chem/nitrogen.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)
/* Kinds of record and answers to takes_change, as in model/shapes.c. */
enum { FISH = 0 };
enum { FAIRLY, BADLY, WELL };

/* One class by the softer end; EC in shares of the water's own. */
struct step_row {
	double below_gh_dh;
	double gh_up, gh_down, kh_up, kh_down, ph_up, ph_down, ec_up, ec_down;
	double ec_up_most, ec_down_most, ec_least; /* uS/cm; 0: no such limit */
};

/* Common practice, no source; pH: FAO fisheries paper 589 (from memory). */
static const struct step_row step_rows[] = {
	{3, 1.0, 0.5, 0.7, 0.4, 0.3, 0.2, 0.20, 0.15, 60, 40, 30},
	{8, 1.5, 1.0, 1.0, 0.7, 0.3, 0.3, 0.20, 0.15, 0, 0, 0},
	{15, 2.5, 2.0, 1.5, 1.0, 0.4, 0.3, 0.20, 0.15, 0, 0, 0},
	{1000, 4.0, 3.0, 2.0, 1.5, 0.5, 0.4, 0.25, 0.20, 0, 0, 0},
};

enum ts_hardiness ts_hardiness_of(const struct ts_resident *residents, size_t count)
{
	bool all_hardy = count > 0;

	for (size_t i = 0; i < count; i++) {
		const struct ts_species *s = residents[i].species;

		if (residents[i].wild || residents[i].young || s->kind != FISH ||
			s->takes_change == BADLY)
			return TS_DELICATE;
		all_hardy &= s->takes_change == WELL;
	}
	return all_hardy ? TS_HARDY : TS_ORDINARY;
}

struct ts_safe_step ts_safe_step_of(double softer_gh_dh, double ec_us_cm,
	enum ts_hardiness hardiness, const struct ts_practice *practice)
{
	const struct step_row *r = step_rows;
	struct ts_practice own;
	double by;

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	by = hardiness == TS_DELICATE ? practice->value[TS_P_STEP_DELICATE]
	     : hardiness == TS_HARDY  ? practice->value[TS_P_STEP_HARDY]
				      : 1;
	while (softer_gh_dh >= r->below_gh_dh && r < &step_rows[3])
		r++;
	struct ts_safe_step step = {by * r->gh_up, by * r->gh_down, by * r->kh_up, by * r->kh_down,
		by * r->ph_up, by * r->ph_down, by * r->ec_up * ec_us_cm,
		by * r->ec_down * ec_us_cm};
	if (r->ec_least > 0) {
		step.ec_up_us_cm = fmax(r->ec_least, fmin(step.ec_up_us_cm, by * r->ec_up_most));
		step.ec_down_us_cm =
			fmax(r->ec_least, fmin(step.ec_down_us_cm, by * r->ec_down_most));
	}
	return step;
}

void ts_stage_water_of(
	const struct ts_solution *solution, double tan_mg_l, struct ts_stage_water *ret)
{
	struct ts_stage_water w = {.solution = *solution, .tan_mg_l = tan_mg_l};
	double co2 = TS_CHEM_TANK_CO2_USUAL * ts_chem_air_co2_mmol_l(solution->temp_c);
	double low, high;

	w.gh_dh = ts_chem_dh_from_mmol_l(solution->ca_mmol_l + solution->mg_mmol_l);
	w.kh_dh = ts_chem_dkh_from_meq_l(solution->alk_meq_l);
	if (ts_chem_tank_ph(solution, &low, &w.ph, &high) != TS_OK &&
		ts_chem_ph_at_co2(solution, co2, &w.ph) != TS_OK)
		w.ph = (double)NAN;
	if (isnan(w.ph) || ts_chem_conductivity_25_us_cm(solution, w.ph, &w.ec_us_cm) != TS_OK)
		w.ec_us_cm = (double)NAN;
	w.nh3_mg_l = ts_care_nh3_mg_l(tan_mg_l, w.ph, solution->temp_c);
	*ret = w;
}

/* Rounding of sums must not make a step that is just right unsafe. */
static bool within(double change, double up, double down)
{
	return change <= up + 1e-9 && change >= -down - 1e-9;
}

bool ts_step_is_safe(const struct ts_stage_water *from, const struct ts_stage_water *to,
	enum ts_hardiness hardiness, const struct ts_practice *practice)
{
	struct ts_safe_step s =
		ts_safe_step_of(fmin(from->gh_dh, to->gh_dh), from->ec_us_cm, hardiness, practice);

	return within(to->gh_dh - from->gh_dh, s.gh_up_dh, s.gh_down_dh) &&
	       within(to->kh_dh - from->kh_dh, s.kh_up_dh, s.kh_down_dh) &&
	       within(to->ph - from->ph, s.ph_up, s.ph_down) &&
	       within(to->ec_us_cm - from->ec_us_cm, s.ec_up_us_cm, s.ec_down_us_cm);
}

void ts_remade_profile(
	const struct ts_solution *water, const struct ts_practice *practice, struct ts_profile *ret)
{
	double gh = ts_chem_dh_from_mmol_l(water->ca_mmol_l + water->mg_mmol_l);
	double kh = fmax(0, ts_chem_dkh_from_meq_l(water->alk_meq_l));
	struct ts_reading r = {
		.gh_dh = {gh, gh, gh, TS_MEASURE_DOUBT}, .kh_dh = {kh, kh, kh, TS_MEASURE_DOUBT}};
	struct ts_water w = {.readings = &r, .reading_count = 1};
	struct ts_keeping k = {.fresh = true,
		.temperature = {water->temp_c, water->temp_c, water->temp_c, TS_MEASURE_DOUBT}};

	ts_profile_make(&w, &k, practice, -1, ret);
}

static bool outside(const struct ts_match *m, enum ts_parameter p)
{
	return m->at[p].known && m->at[p].outside_by != 0;
}

/* Whom the tank excludes already is not kept from less of it. */
static bool improves(const struct ts_match *was, const struct ts_match *is)
{
	return was->verdict == TS_EXCLUDED &&
	       fabs(is->at[TS_GH].outside_by) <= fabs(was->at[TS_GH].outside_by) &&
	       fabs(is->at[TS_KH].outside_by) <= fabs(was->at[TS_KH].outside_by);
}

/* The new water may neither exclude an animal nor put it out of a band that it is in. */
static bool someone_refuses(const struct ts_stages_wish *wish, const struct ts_practice *practice,
	struct ts_stages *ret)
{
	struct ts_profile before, after;

	ts_remade_profile(&wish->now, practice, &before);
	ts_remade_profile(&wish->poured, practice, &after);
	for (size_t i = 0; i < wish->resident_count; i++) {
		const struct ts_resident *one = &wish->residents[i];
		struct ts_keeping k = {.wild = one->wild};
		struct ts_match was, is;

		ts_match_species(one->species, &before, &k, practice, &was);
		ts_match_species(one->species, &after, &k, practice, &is);
		ret->parameter = outside(&is, TS_GH) && !outside(&was, TS_GH)        ? TS_GH
				 : outside(&is, TS_KH) && !outside(&was, TS_KH)      ? TS_KH
				 : is.verdict == TS_EXCLUDED && !improves(&was, &is) ? is.limiting
										     : -1;
		if (ret->parameter >= 0) {
			ret->resident = (int)i;
			return true;
		}
	}
	return false;
}

static bool all_of_black_water(const struct ts_stages_wish *wish)
{
	for (size_t i = 0; i < wish->resident_count; i++) {
		if (wish->residents[i].species->home_water != TS_HOME_BLACK)
			return false;
	}
	return true;
}

/* What must be so before anything is poured; TS_STAGES_FINE: go on. */
static enum ts_stages_refusal check_first(const struct ts_stages_wish *wish,
	const struct ts_practice *practice, struct ts_stages *ret)
{
	double kh = ts_chem_dkh_from_meq_l(wish->poured.alk_meq_l), no2_concern;

	if (someone_refuses(wish, practice, ret))
		return TS_STAGES_RESIDENT;
	if (kh < practice->value[TS_P_KH_FLOOR] && kh < ret->start.kh_dh &&
		!all_of_black_water(wish))
		return TS_STAGES_FLOOR;
	ts_chem_nitrite_limits(isnan(wish->cl_mg_l) ? -1 : wish->cl_mg_l, &no2_concern, NULL);
	if (wish->tan_mg_l >= practice->value[TS_P_TAN_DANGER] ||
		wish->no2_mg_l >= no2_concern * NO2_PER_N)
		return TS_STAGES_AMMONIA;
	return TS_STAGES_FINE;
}

/* So near the new water no kit tells the two apart, dH. */
#define NEAR_DH 0.5

static bool near_goal(const struct ts_stage_water *w, const struct ts_stages_wish *wish)
{
	double gh = ts_chem_dh_from_mmol_l(wish->poured.ca_mmol_l + wish->poured.mg_mmol_l);
	double kh = ts_chem_dkh_from_meq_l(wish->poured.alk_meq_l);

	return fabs(w->gh_dh - gh) <= NEAR_DH && fabs(w->kh_dh - kh) <= NEAR_DH;
}

static bool reached(const struct ts_stage_water *w, const struct ts_stages_wish *wish)
{
	if (near_goal(w, wish))
		return true;
	return w->gh_dh >= wish->gh_dh.low - 1e-6 && w->gh_dh <= wish->gh_dh.high + 1e-6 &&
	       w->kh_dh >= wish->kh_dh.low - 1e-6 && w->kh_dh <= wish->kh_dh.high + 1e-6;
}

static void change_water(const struct ts_stage_water *from, const struct ts_stages_wish *wish,
	double share, struct ts_stage_water *ret)
{
	const struct ts_solution *waters[] = {&from->solution, &wish->poured};
	const double parts[] = {1 - share, share};
	struct ts_solution mixed;

	ts_chem_mix(waters, parts, 2, &mixed);
	ts_stage_water_of(
		&mixed, from->tan_mg_l * (1 - share) + wish->poured_tan_mg_l * share, ret);
}

/* The greatest safe change in whole per cents; 0: none is. */
static double greatest_change(const struct ts_stage_water *from, const struct ts_stages_wish *wish,
	enum ts_hardiness hardiness, const struct ts_practice *practice,
	struct ts_stage_water *ret_after)
{
	double most =
		practice->value[hardiness == TS_HARDY ? TS_P_CHANGE_MOST_HARDY : TS_P_CHANGE_MOST];

	for (int percent = (int)most; percent >= 1; percent--) {
		change_water(from, wish, percent / 100.0, ret_after);
		if (ts_step_is_safe(from, ret_after, hardiness, practice))
			return percent / 100.0;
	}
	return 0;
}

/* How much of the way is done, 0..1, by the parameter that has the longest. */
static double progress(const struct ts_stage_water *start, const struct ts_stage_water *w,
	const struct ts_stage_water *goal)
{
	double gh = goal->gh_dh - start->gh_dh, kh = goal->kh_dh - start->kh_dh;

	return fabs(gh) >= fabs(kh) ? (w->gh_dh - start->gh_dh) / gh
				    : (w->kh_dh - start->kh_dh) / kh;
}

/* Less than this no kit shows, and no ammonia cares for. */
#define PH_RISES 0.05

/* Whether ammonia and nitrite are not known today. */
static bool untested(const struct ts_stages_wish *wish, const struct ts_practice *practice)
{
	return isnan(wish->tan_mg_l) || isnan(wish->no2_mg_l) ||
	       wish->reading_age_days > practice->value[TS_P_TAN_AGE];
}

static enum ts_stages_refusal add_stages(const struct ts_stages_wish *wish,
	const struct ts_practice *practice, struct ts_stages *ret)
{
	struct ts_stage_water at = ret->start, goal;
	unsigned day = 0;
	bool half = false;

	ts_stage_water_of(&wish->poured, wish->poured_tan_mg_l, &goal);
	while (!reached(&at, wish)) {
		struct ts_stage *stage = &ret->stages[ret->count];

		if (ret->count == TS_STAGES_MOST)
			return TS_STAGES_TOO_FAR;
		stage->change = greatest_change(&at, wish, ret->hardiness, practice, &stage->after);
		if (!(stage->change > 0))
			return TS_STAGES_TOO_FAR;
		stage->raises_ph = stage->after.ph > at.ph + PH_RISES / 5;
		ret->raises_ph |= stage->after.ph > ret->start.ph + PH_RISES;
		if (stage->after.nh3_mg_l > practice->value[TS_P_NH3_CONFLICT])
			return TS_STAGES_AMMONIA_ON_WAY;
		at = stage->after;
		stage->day = day;
		ret->last_day = day;
		ret->count++;
		stage->stop =
			ret->count % 3 == 0 || (!half && progress(&ret->start, &at, &goal) >= 0.5);
		half |= progress(&ret->start, &at, &goal) >= 0.5;
		stage->stop &= !reached(&at, wish);
		day += (unsigned)practice
			       ->value[stage->stop ? TS_P_STAGE_STOP_DAYS : TS_P_STAGE_DAYS];
	}
	return TS_STAGES_FINE;
}

enum ts_status ts_stages_plan(const struct ts_stages_wish *wish, const struct ts_practice *practice,
	struct ts_stages *ret)
{
	struct ts_practice own;
	struct ts_stages s = {.resident = -1, .parameter = -1};

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	if (ts_solution_check(&wish->now) != TS_OK || ts_solution_check(&wish->poured) != TS_OK)
		return TS_BAD_INPUT;
	ts_stage_water_of(&wish->now, wish->tan_mg_l, &s.start);
	s.hardiness = ts_hardiness_of(wish->residents, wish->resident_count);
	if (wish->resident_count) {
		s.refusal = check_first(wish, practice, &s);
		if (s.refusal == TS_STAGES_FINE)
			s.refusal = add_stages(wish, practice, &s);
		if (s.refusal == TS_STAGES_FINE && untested(wish, practice))
			s.refusal = TS_STAGES_TEST_FIRST;
	}
	*ret = s;
	return s.refusal == TS_STAGES_FINE ? TS_OK : TS_NO;
}
