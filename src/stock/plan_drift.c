/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules by which a plan's gaps are filled, one short function a subject. The newest reading of
 * each value of the tank is its state today (water/now.h).
 */
#include "stock/plan_drift.h"

#include <math.h>

#include "base/date.h"
#include "base/number.h"
#include "chem/carbonate.h"
#include "stock/past.h"
#include "water/analysis.h"
#include "water/gas.h"

/* What treated chloramine leaves: mg of nitrogen in ammonium a mg of chlorine (its formula). */
#define N_PER_CHLORINE (TS_WEIGHT_N / (2 * TS_WEIGHT_CL))
#define DAYS_OF_WEEK 7.0
#define CO2_MOST_TIMES 100.0
#define CO2_LEAST_TIMES 0.05

/* KH where none is known, dH: buffer enough for the filter; nothing is said of it. */
#define KH_UNKNOWN_DH 5.0

struct work {
	const struct ts_plan *plan;
	const struct ts_now *now;
	const struct ts_practice *practice;
	struct ts_plan_drift *ret;
	double temp_c;
	long today; /* -1: not known */
};

const struct ts_water *ts_plan_poured(const struct ts_plan *plan)
{
	return plan->change_water.reading_count ? &plan->change_water : &plan->water;
}

static void take_temperature(struct work *w)
{
	const struct ts_tank *t = &w->plan->tank;

	w->temp_c = (double)NAN;
	if (t->temp_c.kind != TS_MEASURE_NONE)
		w->temp_c = (fmax(t->temp_c.low, 0) + fmin(t->temp_c.high, 50)) / 2;
	else
		w->temp_c = ts_now_figure(w->now, TS_NOW_TEMPERATURE);
	if (!isnan(w->temp_c))
		return;
	w->temp_c = TS_TANK_TEMPERATURE_C;
	w->ret->assumed |= TS_DRIFT_TEMPERATURE;
}

/* New water of which GH was not read is not free of minerals: it is taken as what the tank holds.
 */
static void take_gh_of_tank(struct work *w, struct ts_profile *profile)
{
	double gh = ts_now_figure(w->now, TS_NOW_GH);
	struct ts_span *span = &profile->at[TS_GH];

	if (span->given || profile->unusual & TS_UNUSUAL_SOFTENED)
		return;
	w->ret->assumed |= isnan(gh) ? TS_DRIFT_NO_GH : TS_DRIFT_GH_OF_TANK;
	if (!isnan(gh))
		*span = (struct ts_span){true, false, gh, gh, gh, TS_FROM_ASSUMED, (double)NAN};
}

/* One supply from some of a water's readings, with the ammonium that treatment leaves. */
static enum ts_status make_supply(
	struct work *w, const struct ts_water *water, struct ts_drift_supply *ret)
{
	const struct ts_keeping keeping = {0};
	struct ts_profile profile;
	struct ts_drift_supply supply = {0};
	unsigned assumed;
	enum ts_status status;

	ts_profile_make(water, &keeping, w->practice, -1, &profile);
	take_gh_of_tank(w, &profile);
	status = ts_solution_from_profile(&profile, w->temp_c, &supply.water, &assumed);
	if (status == TS_NO) {
		profile.at[TS_KH].given = true;
		profile.at[TS_KH].value = KH_UNKNOWN_DH;
		w->ret->assumed |= TS_DRIFT_NO_KH;
		status = ts_solution_from_profile(&profile, w->temp_c, &supply.water, &assumed);
	}
	if (status != TS_OK)
		return status;
	if (profile.poisons.chlorine_mg_l > 0 && water->disinfectant != TS_DISINFECTANT_NONE &&
		water->disinfectant != TS_DISINFECTANT_CHLORINE) {
		supply.tan_mmol_l = N_PER_CHLORINE * profile.poisons.chlorine_mg_l / TS_WEIGHT_N;
		w->ret->assumed |= TS_DRIFT_CHLORAMINE;
	}
	*ret = supply;
	return TS_OK;
}

/* Days from today to the day of a reading in any year, 0..364; -1 where it has no date. */
static long days_ahead(const struct ts_reading *reading, long today)
{
	long day, ahead;

	if (!reading->date || !ts_date_read(reading->date, &day))
		return -1;
	ahead = (day - today) % 365;
	return ahead < 0 ? ahead + 365 : ahead;
}

static bool dated(const struct ts_water *water, long today)
{
	for (size_t i = 0; i < water->reading_count; i++) {
		if (days_ahead(&water->readings[i], today) < 0)
			return false;
	}
	return water->reading_count > 1 && water->reading_count < TS_SUPPLIES_MOST;
}

/* The reading whose day is the next after `past` days ahead; the count where there is none. */
static size_t next_reading(const struct ts_water *water, long today, long past)
{
	size_t best = water->reading_count;
	long nearest = 366;

	for (size_t i = 0; i < water->reading_count; i++) {
		long ahead = days_ahead(&water->readings[i], today);

		if (ahead > past && ahead < nearest) {
			nearest = ahead;
			best = i;
		}
	}
	return best;
}

/* The reading that holds today: the last one past, which is the farthest ahead in the year. */
static size_t reading_of_today(const struct ts_water *water, long today)
{
	size_t best = 0;
	long farthest = -1;

	for (size_t i = 0; i < water->reading_count; i++) {
		long ahead = days_ahead(&water->readings[i], today);

		if (ahead == 0)
			return i;
		if (ahead > farthest) {
			farthest = ahead;
			best = i;
		}
	}
	return best;
}

static enum ts_status add_supply(
	struct work *w, const struct ts_water *water, size_t reading, unsigned from_day)
{
	struct ts_water one = *water;
	struct ts_drift_supply *supply = &w->ret->supplies[w->ret->tank.supply_count];
	enum ts_status status;

	one.readings = &water->readings[reading];
	one.reading_count = 1;
	status = make_supply(w, &one, supply);
	if (status != TS_OK)
		return status;
	supply->from_day = from_day;
	w->ret->tank.supply_count++;
	return TS_OK;
}

/* Dated readings of a supply become its seasons; any others their mean. */
static enum ts_status take_supplies(struct work *w, long today)
{
	const struct ts_water *water = ts_plan_poured(w->plan);
	struct ts_drift_tank *t = &w->ret->tank;
	enum ts_status status;
	long past = 0;

	t->supplies = w->ret->supplies;
	if (!dated(water, today)) {
		status = make_supply(w, water, &w->ret->supplies[0]);
		t->supply_count = status == TS_OK;
		return status;
	}
	w->ret->assumed |= TS_DRIFT_SEASON;
	status = add_supply(w, water, reading_of_today(water, today), 0);
	for (size_t next; status == TS_OK; past = days_ahead(&water->readings[next], today)) {
		next = next_reading(water, today, past);
		if (next == water->reading_count)
			break;
		status = add_supply(
			w, water, next, (unsigned)days_ahead(&water->readings[next], today));
	}
	return status;
}

/* A copy of the tank's newest readings, their gaps filled from the supply. */
static struct ts_reading state_of(struct work *w)
{
	const struct ts_solution *supply = &w->ret->supplies[0].water;
	struct ts_reading r = w->now->reading;

	if (r.kh_dh.kind == TS_MEASURE_NONE && r.alkalinity_meq_l.kind == TS_MEASURE_NONE) {
		double kh = ts_chem_dkh_from_meq_l(supply->alk_meq_l);

		r.kh_dh = (struct ts_measure){kh, kh, kh, TS_MEASURE_DOUBT};
		w->ret->assumed |= TS_DRIFT_TANK_AS_SUPPLY;
	}
	if (r.gh_dh.kind == TS_MEASURE_NONE && isnan(ts_now_figure(w->now, TS_NOW_GH))) {
		double gh = ts_chem_dh_from_mmol_l(supply->ca_mmol_l + supply->mg_mmol_l);

		r.gh_dh = (struct ts_measure){gh, gh, gh, TS_MEASURE_DOUBT};
		w->ret->assumed |= TS_DRIFT_GH_AS_SUPPLY;
	}
	if (r.no3_mg_l.kind == TS_MEASURE_NONE && r.no3_n_mg_l.kind == TS_MEASURE_NONE) {
		double no3 = supply->no3_mmol_l * TS_MASS_NO3;

		r.no3_mg_l = (struct ts_measure){no3, no3, no3, TS_MEASURE_DOUBT};
		w->ret->assumed |= TS_DRIFT_NO3_AS_SUPPLY;
	}
	return r;
}

/* pH by day and night: the usual tank's interval, or around the tank's own level. */
static void take_gas(struct work *w, const struct ts_profile *profile, const struct ts_solution *s)
{
	const struct ts_tank *tank = &w->plan->tank;
	struct ts_drift_tank *t = &w->ret->tank;
	double swing = w->practice->value[tank->co2 == TS_CO2_INJECTED     ? TS_P_SWING_CO2
					  : tank->plants >= TS_PLANTS_SOME ? TS_P_SWING_PLANTED
									   : TS_P_SWING_PLAIN];
	double factor;

	t->co2_most = TS_CHEM_TANK_CO2_MOST;
	t->co2_usual =
		ts_tank_co2_times_air(profile, s, isfinite(ts_now_figure(w->now, TS_NOW_PH)));
	t->co2_least = TS_CHEM_TANK_CO2_LEAST;
	if (t->co2_usual == TS_CHEM_TANK_CO2_USUAL)
		return;
	w->ret->assumed |= TS_DRIFT_OWN_CO2;
	factor = ts_power(10, swing / 2 + (profile->ph_read_high - profile->ph_read_low) / 2);
	t->co2_most = fmin(t->co2_usual * factor, CO2_MOST_TIMES);
	t->co2_least = fmax(t->co2_usual / factor, CO2_LEAST_TIMES);
}

static enum ts_status take_state(struct work *w)
{
	const struct ts_keeping keeping = {0};
	struct ts_reading reading = state_of(w);
	struct ts_water water = {.kind = TS_WATER_TANK, .readings = &reading, .reading_count = 1};
	struct ts_profile profile;
	unsigned assumed;
	enum ts_status status;

	ts_profile_make(&water, &keeping, w->practice, -1, &profile);
	status = ts_solution_from_profile(&profile, w->temp_c, &w->ret->tank.water, &assumed);
	if (status != TS_OK)
		return status;
	w->ret->tan_known = reading.tan_mg_l.kind != TS_MEASURE_NONE;
	if (w->ret->tan_known)
		w->ret->tank.tan_mmol_l = fmax(profile.poisons.tan_mg_l, 0) / TS_WEIGHT_N;
	else
		w->ret->assumed |= TS_DRIFT_NO_TAN;
	take_gas(w, &profile, &w->ret->tank.water);
	return TS_OK;
}

static void take_evaporation(struct work *w)
{
	const struct ts_tank *tank = &w->plan->tank;
	struct ts_drift_tank *t = &w->ret->tank;
	const double *p = w->practice->value;

	t->pure_top_up = tank->top_up == TS_TOP_UP_PURE;
	if (tank->top_up == TS_TOP_UP_UNKNOWN)
		w->ret->assumed |= TS_DRIFT_TOP_UP_SUPPLY;
	if (tank->evaporation.days > 0) {
		t->evaporated_share =
			fmin(tank->evaporation.amount / 100 / tank->evaporation.days, 1);
		return;
	}
	if (tank->cover == TS_COVER_UNKNOWN)
		w->ret->assumed |= TS_DRIFT_COVER_OPEN;
	t->evaporated_share =
		p[tank->cover == TS_COVER_YES ? TS_P_EVAPORATION_COVERED : TS_P_EVAPORATION_OPEN] /
		100 / DAYS_OF_WEEK;
}

/*
 * Days since the last change: as it is noted, or as the routine is counted where none is; a log of
 * which some are missing tells none.
 */
static double change_gone(const struct work *w)
{
	const struct ts_tank *tank = &w->plan->tank;
	struct ts_past_last last;

	if (w->today < 0)
		return 0;
	ts_past_last_change(tank, w->today, &last);
	if (last.stale || !(last.noted || last.by_reading))
		return 0;
	return fmax(0, tank->water_change.days - (double)(last.next - w->today));
}

static void take_routine(struct work *w)
{
	const struct ts_tank *tank = &w->plan->tank;
	struct ts_drift_tank *t = &w->ret->tank;
	const double *p = w->practice->value;

	t->change_share = tank->water_change.amount / 100;
	t->change_days = tank->water_change.days;
	t->change_gone_days = change_gone(w);
	if (!(t->change_days > 0)) {
		t->change_share = p[TS_P_CHANGE_PERCENT] / 100;
		t->change_days = p[TS_P_CHANGE_DAYS];
		w->ret->assumed |= TS_DRIFT_CHANGE_USUAL;
	}
	take_evaporation(w);
	t->filter_share = tank->filter == TS_FILTER_NEW ? 0 : 1;
	if (tank->filter == TS_FILTER_UNKNOWN)
		w->ret->assumed |= TS_DRIFT_FILTER_MATURE;
}

static void take_bed(struct work *w)
{
	struct ts_drift_tank *t = &w->ret->tank;

	switch (w->plan->tank.substrate) {
	case TS_SUBSTRATE_ACTIVE:
		t->bed = TS_BED_ACTIVE_SOIL;
		t->soil_left_meq_l = w->practice->value[TS_P_SOIL_CAPACITY];
		w->ret->assumed |= TS_DRIFT_SOIL_FRESH;
		break;
	case TS_SUBSTRATE_ARAGONITE:
		t->bed = TS_BED_ARAGONITE;
		break;
	case TS_SUBSTRATE_LIMESTONE:
		t->bed = TS_BED_LIMESTONE;
		break;
	case TS_SUBSTRATE_PEAT:
		w->ret->assumed |= TS_DRIFT_PEAT;
		break;
	default:
		break;
	}
}

enum ts_status ts_plan_drift(const struct ts_plan *plan, const struct ts_now *now, long today,
	double nitrogen_mmol_l, double plant_share, const struct ts_practice *practice,
	struct ts_plan_drift *ret)
{
	struct work w = {plan, now, practice, ret, 0, today};
	enum ts_status status;

	*ret = (struct ts_plan_drift){0};
	ret->tank.nitrogen_mmol_l = nitrogen_mmol_l;
	ret->tank.plant_share = plant_share;
	take_temperature(&w);
	status = take_supplies(&w, today);
	if (status == TS_OK)
		status = take_state(&w);
	if (status != TS_OK)
		return status;
	take_routine(&w);
	take_bed(&w);
	return TS_OK;
}
