/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is known of the tank beside its log is made ready for the fit, and of what that finds the
 * part that counts before the model is taken.
 */
#include "stock/waters_log.h"

#include <math.h>

/* A rate counts from so many days on, and from the second on even where it may be nothing. */
#define RATE_DAYS 14
#define RATE_DAYS_SURE 28
#define WEEK 7
/* Lines of a stock of which the days count. */
#define STOCK_LINES 64
/* A half interval in standard deviations of an even distribution. */
#define HALF_TO_DEVIATION 0.57735
/* Doubt of the new water's nitrate, half an interval; of its hardness at the least, the whole. */
#define POURED_NO3_LEAST 5.0
#define POURED_NO3_DOUBT 0.3
#define POURED_LEAST_DH 0.5
/* Deviation of what evaporates, of itself: as said or topped up, by the lid, not even by that. */
#define EVAPORATION_GIVEN 0.1
#define EVAPORATION_COVER 0.3
#define EVAPORATION_GUESSED 0.5
/* Faster than this no stone, plant or filter moves a tank by itself, dH a day (from memory). */
#define GH_RATE_MOST (1.0 / 7)
#define KH_GAIN_MOST (1.0 / 7)
#define KH_LOSS_MOST (4.0 / 7)

struct work {
	const struct ts_waters_case *asked;
	const struct ts_practice *practice;
	struct ts_waters *ret;
};

static double value_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

/* Waste of each line of the stock, as far as there are lines that many. */
static double waste_of(const struct work *w, size_t line)
{
	const struct ts_plan *plan = w->asked->plan;
	const struct ts_group group = {
		.species = w->asked->species[line], .either = (unsigned)plan->stock[line].count};

	return group.species ? ts_group_nitrogen_mg_day(&group, &plan->tank,
				       value_of(&w->ret->now, TS_TEMPERATURE), w->practice)
			     : 0;
}

/* What was done to the tank, and how much more waste its animals make once the planned ones came.
 */
static void take_past(struct work *w)
{
	const struct ts_plan *plan = w->asked->plan;
	struct ts_waters *ret = w->ret;
	double waste[STOCK_LINES], all = 0, there = 0;
	size_t count =
		w->asked->species && plan->stock_count <= STOCK_LINES ? plan->stock_count : 0;
	const struct ts_past_case asked = {&plan->tank, plan->stock, waste, count,
		ts_tank_net_l(&plan->tank, w->practice), w->asked->today};

	for (size_t i = 0; i < count; i++) {
		waste[i] = waste_of(w, i);
		all += waste[i];
		there += plan->stock[i].since ? waste[i] : 0;
	}
	ts_past_make(&asked, w->practice, &ret->past);
	ret->measured_times = there > 0 ? all / there : 1;
}

static struct ts_fit_poured poured_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	const struct ts_span *s = &p->at[parameter];

	if (!s->given)
		return (struct ts_fit_poured){(double)NAN, 0};
	return (struct ts_fit_poured){
		s->value, fmax(s->high - s->low, POURED_LEAST_DH) / 2 * HALF_TO_DEVIATION};
}

/* Water of which nitrate was never read is taken as free of it, or nearly so. */
static struct ts_fit_poured poured_no3(const struct work *w)
{
	double value = fmax(w->ret->poured.poisons.no3_mg_l, 0);

	if (!ts_plan_poured(w->asked->plan)->reading_count)
		return (struct ts_fit_poured){(double)NAN, 0};
	return (struct ts_fit_poured){
		value, fmax(POURED_NO3_LEAST, POURED_NO3_DOUBT * value) * HALF_TO_DEVIATION};
}

/* How surely the evaporation is known, of itself. */
static double evaporation_doubt(const struct work *w)
{
	const struct ts_tank *t = &w->asked->plan->tank;

	return t->evaporation.days > 0        ? EVAPORATION_GIVEN
	       : t->cover != TS_COVER_UNKNOWN ? EVAPORATION_COVER
					      : EVAPORATION_GUESSED;
}

static void take_fit(struct work *w)
{
	struct ts_waters *ret = w->ret;
	const struct ts_plan *plan = w->asked->plan;
	const struct ts_drift_tank *t = &ret->drift.tank;
	const struct ts_every *said = &plan->tank.change_said;
	const struct ts_estimate *rise = &ret->load.no3_rise_mg_l_week;
	const struct ts_fit_case asked = {.readings = plan->tank.readings,
		.count = plan->tank.reading_count,
		.today = w->asked->today,
		.past = &ret->past,
		.change_share = said->days > 0 ? said->amount / 100 : t->change_share,
		.change_days = said->days > 0 ? said->days : t->change_days,
		.poured = {[TS_FIT_GH] = poured_of(&ret->poured, TS_GH),
			[TS_FIT_KH] = poured_of(&ret->poured, TS_KH),
			[TS_FIT_NO3] = poured_no3(w)},
		.evaporated_share = t->evaporated_share,
		.evaporated_deviation = evaporation_doubt(w) * t->evaporated_share,
		.pure_top_up = t->pure_top_up,
		.bed_works = t->bed != TS_BED_INERT || plan->tank.substrate == TS_SUBSTRATE_PEAT,
		.modelled_a_day = ret->load_known ? rise->value / WEEK : 0,
		.modelled_deviation = ret->load_known ? (rise->high - rise->low) / 2 / WEEK : 0};

	ts_fit_make(&asked, w->practice, &ret->fit);
}

/* What a value of the log moves by; nothing where it does not tell. */
static struct ts_rate rate_of(const struct work *w, enum ts_fit_what what)
{
	const struct ts_rate *rate = &w->ret->fit.rate[what];
	struct ts_rate none = {0};

	if (!rate->readings || rate->days < RATE_DAYS)
		return none;
	return rate->days >= RATE_DAYS_SURE || rate->low > 0 || rate->high < 0 ? *rate : none;
}

/* Nitrate tells what the animals make where it surely rises, or was read long enough. */
static void take_measured(struct ts_waters *w)
{
	const struct ts_rate *r = &w->fit.rate[TS_FIT_NO3];

	if (r->readings && r->a_day > 0 && (r->low > 0 || r->days >= RATE_DAYS_SURE))
		w->measured = (struct ts_estimate){
			WEEK * fmax(r->low, 0), WEEK * r->a_day, WEEK * r->high};
}

static bool believable(const struct ts_rate *rate, double gain_most, double loss_most)
{
	return !rate->readings || (rate->low <= gain_most && rate->high >= -loss_most);
}

/*
 * What was measured over weeks counts before the model and before the bed, whose work is in it.
 * KH also falls by the filter's work, which the simulation does itself.
 */
static void take_rates(struct work *w)
{
	const struct ts_rate none = {0};
	struct ts_waters *ret = w->ret;

	ret->gh_rate = rate_of(w, TS_FIT_GH);
	ret->kh_rate = rate_of(w, TS_FIT_KH);
	ret->no3_rate = rate_of(w, TS_FIT_NO3);
	ret->strange = !believable(&ret->gh_rate, GH_RATE_MOST, GH_RATE_MOST) ||
		       !believable(&ret->kh_rate, KH_GAIN_MOST, KH_LOSS_MOST);
	if (ret->strange)
		ret->gh_rate = ret->kh_rate = none;
	/* The rates are those beside this evaporation. */
	if (ret->gh_rate.readings || ret->kh_rate.readings)
		ret->drift.tank.evaporated_share = fmax(ret->fit.evaporated_share.value, 0);
}

void ts_waters_learn(const struct ts_waters_case *asked, const struct ts_practice *practice,
	struct ts_waters *ret)
{
	struct work w = {asked, practice, ret};

	take_past(&w);
	take_fit(&w);
	take_measured(ret);
	take_rates(&w);
}
