/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Now, poured in and settled. Settled is simulated three times, with the waste that is expected,
 * the least and the most; where nothing is said of top-up, the two ends differ in that as well.
 */
#include "stock/waters.h"

#include <math.h>

#include "chem/carbonate.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "stock/waters_log.h"

struct work {
	const struct ts_waters_case *asked;
	const struct ts_practice *practice;
	struct ts_waters *ret;
};

/* One run of the three. */
struct run {
	double gh_dh, kh_dh, no3_mg_l, buffer_days, reserve_days;
};

bool ts_plan_unwell(const struct ts_plan *plan)
{
	for (size_t i = 0; i < plan->sign_count; i++) {
		if (plan->signs[i].sign < TS_SIGN_ALGAE)
			return true;
	}
	return plan->deaths.kind != TS_MEASURE_NONE && plan->deaths.value > 0;
}

double ts_net_nitrogen_mmol_l(double no3_rise_mg_l_week)
{
	return no3_rise_mg_l_week / 7 / TS_MASS_NO3;
}

/* The log's readings were gathered out of several days: each has its own age. */
static void take_ages(struct ts_waters *w)
{
	static const enum ts_now_value values[TS_PARAMETER__COUNT] = {
		TS_NOW_GH, TS_NOW_KH, TS_NOW_PH, TS_NOW_TEMPERATURE, TS_NOW_SALINITY};

	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		if (w->log.from[values[i]].reading)
			w->now.at[i].age_days = w->log.from[values[i]].age_days;
	}
}

static void fill_gaps(struct ts_waters *w)
{
	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		if (w->now.at[i].given || !w->poured.at[i].given)
			continue;
		w->now.at[i] = w->poured.at[i];
		w->now.at[i].from = TS_FROM_ASSUMED;
		w->as_poured |= 1u << i;
	}
	w->now.unusual |= w->poured.unusual & (TS_UNUSUAL_SOFTENED | TS_UNUSUAL_MAYBE_SOFTENED);
	w->now.poisons.copper_mg_l =
		fmax(w->now.poisons.copper_mg_l, w->poured.poisons.copper_mg_l);
	w->now.poisons.copper_low_mg_l =
		fmax(w->now.poisons.copper_low_mg_l, w->poured.poisons.copper_low_mg_l);
}

void ts_waters_now(const struct ts_plan *plan, long today, const struct ts_practice *practice,
	struct ts_waters *ret)
{
	const struct ts_keeping keeping = {.temperature = plan->tank.temp_c,
		.acids = plan->tank.substrate == TS_SUBSTRATE_ACTIVE ||
			 plan->tank.substrate == TS_SUBSTRATE_PEAT};

	*ret = (struct ts_waters){0};
	ts_now_make(plan->tank.readings, plan->tank.reading_count, today, practice, &ret->log);
	ret->tank = ts_now_water(&ret->log);
	ret->never_read = !ret->tank.reading_count;
	ts_profile_make(ts_plan_poured(plan), &keeping, practice, today, &ret->poured);
	if (ret->never_read) {
		ret->now = ret->poured;
		ret->as_poured = (1u << TS_PARAMETER__COUNT) - 1;
	} else {
		ts_profile_make(&ret->tank, &keeping, practice, today, &ret->now);
		take_ages(ret);
		fill_gaps(ret);
	}
	ret->settled = ret->poured;
}

static double value_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

static bool measured(const struct ts_waters *w)
{
	return w->measured.value > 0;
}

static void take_load(struct work *w)
{
	const struct ts_waters_case *asked = w->asked;
	struct ts_waters *ret = w->ret;
	const struct ts_load_case input = {.groups = asked->groups,
		.count = asked->group_count,
		.tank = &asked->plan->tank,
		.temp_c = value_of(&ret->now, TS_TEMPERATURE),
		.kh_dh = value_of(&ret->now, TS_KH),
		.kh_new_dh = value_of(&ret->poured, TS_KH),
		.no3_new_mg_l = ret->poured.poisons.no3_mg_l,
		.measured_no3_rise_mg_l_week = measured(ret) ? &ret->measured : NULL,
		.measured_times = ret->measured_times};

	ret->load_known = ts_load_of(&input, w->practice, &ret->load) == TS_OK;
}

/* Share of the modelled nitrogen that plants take. */
static double plant_share(const struct ts_load *l)
{
	double before = l->nitrogen_mg_day.value / l->net_l / TS_WEIGHT_N;
	double left = ts_net_nitrogen_mmol_l(l->modelled_no3_rise_mg_l_week);

	return before > 0 ? fmin(fmax(1 - left / before, 0), 1) : 0;
}

/* The tank made ready, but for its load. */
static void take_drift(struct work *w)
{
	struct ts_waters *ret = w->ret;

	ret->drift_known = ts_plan_drift(w->asked->plan, &ret->log, w->asked->today, 0, 0,
				   w->practice, &ret->drift) == TS_OK;
}

/* What was measured counts, plants in it, before what was modelled. */
static void put_load(struct ts_waters *w)
{
	const struct ts_load *l = &w->load;
	bool by_log = w->load_known && measured(w);

	w->drift.tank.nitrogen_mmol_l =
		!w->load_known ? 0
		: by_log       ? ts_net_nitrogen_mmol_l(l->no3_rise_mg_l_week.value)
			       : l->nitrogen_mg_day.value / l->net_l / TS_WEIGHT_N;
	w->drift.tank.plant_share = w->load_known && !by_log ? plant_share(l) : 0;
}

/* One of three: 0 as measured, 1 the most favourable that the log allows, 2 the least. */
static void put_rates(const struct ts_waters *w, int i, struct ts_drift_tank *t)
{
	const struct ts_rate *gh = &w->gh_rate, *kh = &w->kh_rate;

	if (gh->readings)
		t->hardness_gain_mmol_l = ts_chem_mmol_l_from_dh(i == 0   ? gh->a_day
								 : i == 1 ? gh->high
									  : gh->low);
	if (!kh->readings)
		return;
	t->bed = TS_BED_INERT;
	t->alk_gain_meq_l = ts_chem_meq_l_from_dkh(i == 0   ? kh->a_day
						   : i == 1 ? kh->high
							    : kh->low) +
			    (1 - t->plant_share) * t->nitrogen_mmol_l;
}

/* Days until KH is below the floor, and by so much above it; INFINITY: not within `most`. */
static double days_to_floor(const struct ts_drift_tank *tank, const struct ts_practice *practice,
	double over_dh, unsigned most)
{
	double floor_meq_l = ts_chem_meq_l_from_dkh(practice->value[TS_P_KH_FLOOR] + over_dh);
	struct ts_drift d;

	if (ts_drift_is_linear(tank)) {
		unsigned days = ts_drift_linear_days(tank, floor_meq_l, most);

		return days > most ? (double)INFINITY : days;
	}
	if (ts_drift_open(tank, practice, &d) != TS_OK)
		return (double)NAN;
	if (d.tank.water.alk_meq_l >= floor_meq_l)
		ts_drift_change(&d);
	while (d.tank.water.alk_meq_l >= floor_meq_l) {
		if (d.day >= most)
			return (double)INFINITY;
		ts_drift_live(&d);
		if (d.tank.water.alk_meq_l < floor_meq_l)
			break;
		ts_drift_change(&d);
	}
	return d.day;
}

/* Where it stands after so long: a routine that never settles. All waste counts as nitrate. */
static void read_after(const struct ts_drift_tank *tank, const struct ts_practice *practice,
	unsigned days, struct run *ret)
{
	struct ts_drift d;
	struct ts_drift_day day;

	if (ts_drift_is_linear(tank)) {
		ts_drift_linear_after(tank, days, &day);
	} else {
		if (ts_drift_open(tank, practice, &d) != TS_OK)
			return;
		while (d.day < days) {
			ts_drift_change(&d);
			ts_drift_live(&d);
		}
		ts_drift_read(&d, false, &day);
	}
	ret->gh_dh = day.gh_dh;
	ret->kh_dh = day.kh_dh;
	ret->no3_mg_l = day.no3_mg_l + day.tan_mg_l * TS_MASS_NO3 / TS_WEIGHT_N;
}

static struct run run(
	const struct ts_drift_tank *tank, const struct ts_practice *practice, double over_dh)
{
	const double no = (double)NAN;
	unsigned ahead = (unsigned)practice->value[TS_P_SETTLED_AHEAD];
	struct ts_drift_tank still = *tank;
	struct ts_drift_steady steady, formula;
	struct run r = {no, no, no, no, no};

	ts_drift_steady(tank, &formula);
	if (ts_drift_is_linear(tank) && !isnan(formula.gh_dh.before_change))
		steady = formula;
	else if (ts_drift_settle(tank, practice, &steady) != TS_OK)
		steady.gh_dh.before_change = (double)NAN;
	if (!isnan(steady.gh_dh.before_change)) {
		r.gh_dh = steady.gh_dh.before_change;
		/* A level below nothing is none left. */
		r.kh_dh = isnan(steady.kh_dh.before_change) ? 0 : steady.kh_dh.before_change;
		/* All waste, also that which a filter without buffer would leave as ammonia. */
		r.no3_mg_l = formula.no3_mg_l.before_change;
	} else {
		read_after(tank, practice, ahead, &r);
	}
	r.buffer_days = days_to_floor(tank, practice, over_dh, ahead);
	still.change_share = 0;
	r.reserve_days = days_to_floor(&still, practice, over_dh, ahead);
	return r;
}

static double least(double a, double b, double c)
{
	return fmin(a, fmin(b, c));
}

static double most(double a, double b, double c)
{
	return fmax(a, fmax(b, c));
}

#define SPREAD(member)                                                                             \
	(struct ts_estimate)                                                                       \
	{                                                                                          \
		least(runs[0].member, runs[1].member, runs[2].member), runs[0].member,             \
			most(runs[0].member, runs[1].member, runs[2].member)                       \
	}

void ts_waters_run(const struct ts_waters *w, int i, struct ts_drift_tank *ret)
{
	const struct ts_estimate *rise = &w->load.no3_rise_mg_l_week;
	struct ts_drift_tank tank = w->drift.tank;

	if (i) {
		tank.nitrogen_mmol_l =
			w->load_known ? ts_net_nitrogen_mmol_l(i == 1 ? rise->low : rise->high) : 0;
		tank.plant_share = 0;
	}
	/* The favourable end: the supply brings buffer along; the other: it brings none. */
	if (i == 2 && w->drift.assumed & TS_DRIFT_TOP_UP_SUPPLY)
		tank.pure_top_up = true;
	/* A filter matures; only until then it leaves ammonia. */
	tank.filter_share = 1;
	put_rates(w, i, &tank);
	if (i)
		ts_waters_start_at_end(w, i, &tank);
	else
		ts_waters_start_at_level(w, &tank);
	*ret = tank;
}

double ts_waters_kh_over(const struct ts_waters *w)
{
	const struct ts_span *kh = &w->now.at[TS_KH];

	return w->kh_rate.readings && kh->given ? fmax(0, kh->value - (kh->low + kh->high) / 2) : 0;
}

/* So far ahead a log tells when a buffer ends; beyond, it creeps along its floor. */
static double in_sight(const struct work *w, double days)
{
	return w->ret->kh_rate.readings && days > w->practice->value[TS_P_DUE_BUFFER_AHEAD]
		       ? (double)INFINITY
		       : days;
}

static void take_settled(struct work *w)
{
	struct ts_waters *ret = w->ret;
	const struct ts_estimate unknown = {(double)NAN, (double)NAN, (double)NAN};
	struct run runs[3];

	for (int i = 0; i < 3; i++) {
		struct ts_drift_tank tank;

		ts_waters_run(ret, i, &tank);
		runs[i] = run(&tank, w->practice, i == 1 ? 0 : ts_waters_kh_over(ret));
		if (!i)
			runs[i].buffer_days = in_sight(w, runs[i].buffer_days);
		if (isnan(runs[i].gh_dh))
			return;
	}
	ret->settled_known = true;
	ret->settles = (struct ts_settled){SPREAD(gh_dh), SPREAD(kh_dh), SPREAD(no3_mg_l), unknown,
		!(ret->drift.tank.change_share > 0), SPREAD(buffer_days), SPREAD(reserve_days)};
	if (ret->drift.assumed & TS_DRIFT_NO_KH)
		ret->settles.kh_dh = ret->settles.buffer_days = ret->settles.reserve_days = unknown;
	if (ret->drift.assumed & TS_DRIFT_NO_GH)
		ret->settles.gh_dh = unknown;
	if (!ret->load_known)
		ret->settles.no3_mg_l = unknown;
}

/* As far beyond what is poured in as the routine takes it; its doubt comes along. */
static void shift(struct ts_span *span, const struct ts_estimate *to)
{
	double from = span->value;

	if (!span->given || isnan(to->value))
		return;
	span->low = fmax(span->low + to->low - from, 0);
	span->high = fmax(span->high + to->high - from, 0);
	span->value = to->value;
}

/* Where topping up is only assumed, what it would gather is doubt and not the figure. */
static struct ts_estimate settles_at(
	const struct ts_waters *w, const struct ts_estimate *to, const struct ts_span *poured)
{
	struct ts_estimate e = *to;

	if (w->drift.assumed & TS_DRIFT_TOP_UP_SUPPLY)
		e.value = fmin(fmax(poured->value, e.low), e.high);
	return e;
}

/* The settled water as a profile; its pH is what its minerals make of it. */
static void take_settled_profile(struct work *w)
{
	struct ts_waters *ret = w->ret;
	struct ts_span gh = ret->poured.at[TS_GH], kh = ret->poured.at[TS_KH];
	const struct ts_keeping keeping = {
		.fresh = true, .temperature = w->asked->plan->tank.temp_c};
	struct ts_reading r = {0};
	struct ts_water water = {.kind = TS_WATER_TANK, .readings = &r, .reading_count = 1};
	const struct ts_estimate gh_to = settles_at(ret, &ret->settles.gh_dh, &gh);
	const struct ts_estimate kh_to = settles_at(ret, &ret->settles.kh_dh, &kh);
	struct ts_profile profile;

	shift(&gh, &gh_to);
	shift(&kh, &kh_to);
	if (gh.given)
		r.gh_dh = (struct ts_measure){gh.value, gh.low, gh.high, TS_MEASURE_DOUBT};
	if (kh.given)
		r.kh_dh = (struct ts_measure){kh.value, kh.low, kh.high, TS_MEASURE_DOUBT};
	ts_profile_make(&water, &keeping, w->practice, -1, &profile);
	profile.at[TS_GH].from = profile.at[TS_KH].from = TS_FROM_COMPUTED;
	profile.at[TS_SALINITY] = ret->poured.at[TS_SALINITY];
	if (!profile.at[TS_TEMPERATURE].given)
		profile.at[TS_TEMPERATURE] = ret->now.at[TS_TEMPERATURE];
	if (!profile.at[TS_PH].given)
		profile.at[TS_PH] = ret->poured.at[TS_PH];
	profile.unusual |= ret->poured.unusual & (TS_UNUSUAL_SOFTENED | TS_UNUSUAL_MAYBE_SOFTENED);
	profile.poisons.copper_mg_l = ret->poured.poisons.copper_mg_l;
	profile.poisons.copper_low_mg_l = ret->poured.poisons.copper_low_mg_l;
	profile.poisons.no3_mg_l = ret->settles.no3_mg_l.value;
	ret->settles.ph =
		(struct ts_estimate){profile.ph_tank_low, profile.ph_tank, profile.ph_tank_high};
	ret->settled = profile;
}

/* One figure for each thing: the simulation's. */
static void agree(struct ts_waters *w)
{
	w->load.no3_steady_mg_l = w->settles.no3_mg_l;
	if (w->settles.no_end)
		w->load.no3_steady_mg_l.value = w->load.no3_steady_mg_l.high = (double)INFINITY;
	w->load.kh_steady_dh = w->settles.kh_dh.value;
	w->load.buffer_days = w->settles.buffer_days;
}

void ts_waters_make(const struct ts_waters_case *asked, const struct ts_practice *practice,
	struct ts_waters *ret)
{
	struct ts_practice own;

	ts_practice_defaults(&own);
	if (!practice)
		practice = &own;
	ts_waters_now(asked->plan, asked->today, practice, ret);
	ts_waters_make_from(ret, asked, practice, ret);
}

void ts_waters_make_from(const struct ts_waters *now, const struct ts_waters_case *asked,
	const struct ts_practice *practice, struct ts_waters *ret)
{
	struct work w = {asked, practice, ret};

	if (ret != now) {
		*ret = *now;
		ret->tank = ts_now_water(&ret->log);
	}
	take_load(&w);
	take_drift(&w);
	if (ret->drift_known) {
		ts_waters_learn(asked, w.practice, ret);
		take_load(&w);
		put_load(ret);
		take_settled(&w);
		put_rates(ret, 0, &ret->drift.tank);
	}
	if (!ret->settled_known)
		return;
	take_settled_profile(&w);
	if (ret->load_known)
		agree(ret);
}

/* Halvings of the search for what a tank bears: to a thousandth. */
#define BEARS_STEPS 10

/* Whether it settles as wanted with so much; `*ret_known`: whether anybody can say. */
static bool settles_so(
	struct work *w, const struct ts_bearing *wanted, double mg_day, bool *ret_known)
{
	struct ts_waters *of = w->ret;
	struct ts_drift_tank tank;
	struct run r;

	of->drift.tank.nitrogen_mmol_l = mg_day / of->load.net_l / TS_WEIGHT_N;
	ts_waters_run(of, 0, &tank);
	r = run(&tank, w->practice, 0);
	*ret_known = !isnan(r.no3_mg_l);
	if (!(r.no3_mg_l <= wanted->no3_mg_l))
		return false;
	return !(wanted->buffer_days > 0) || of->drift.assumed & TS_DRIFT_NO_KH ||
	       (r.buffer_days >= wanted->buffer_days &&
		       r.kh_dh >= w->practice->value[TS_P_KH_FLOOR]);
}

double ts_waters_bears_mg_day(const struct ts_plan *plan, long today,
	const struct ts_bearing *wanted, double most, const struct ts_practice *practice)
{
	struct ts_plan fed = *plan;
	struct ts_waters waters;
	const struct ts_waters_case asked = {&fed, NULL, 0, today, NULL};
	struct work w = {&asked, practice, &waters};
	double low = 0, high = most;
	bool known;

	fed.stock_count = 0;
	fed.tank.feeding.value = 1; /* some feed: what plants take of it is a share */
	ts_waters_now(&fed, today, practice, &waters);
	take_load(&w);
	if (!waters.load_known ||
		ts_plan_drift(&fed, &waters.log, today, 0, plant_share(&waters.load), practice,
			&waters.drift) != TS_OK)
		return (double)NAN;
	waters.drift_known = true;
	if (settles_so(&w, wanted, high, &known) || !known)
		return known ? high : (double)NAN;
	for (int i = 0; i < BEARS_STEPS; i++) {
		double middle = (low + high) / 2;

		if (settles_so(&w, wanted, middle, &known))
			low = middle;
		else
			high = middle;
	}
	return low;
}
