/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The day and what it does. Every step moves amounts so that charge stays balanced (ammonium
 * counts as a cation), which the tests check to 1e-9. Steady states and what is derived from them
 * are next door in steady.c.
 */
#include "stock/drift.h"

#include <math.h>

#include "base/number.h"
#include "chem/carbonate.h"
#include "chem/conductivity.h"
#include "chem/nitrogen.h"

/* Rounds in which the CO2 at which lime would fall out is sought; each gains two digits. */
#define LIME_ROUNDS 4
/* A gas level outside these is no tank's, times air. */
#define CO2_LEAST 0.05
#define CO2_MOST 100.0

static bool share(double value)
{
	return value >= 0 && value <= 1;
}

static bool supply_good(const struct ts_drift_supply *supply)
{
	return ts_solution_check(&supply->water) == TS_OK && supply->tan_mmol_l >= 0 &&
	       supply->tan_mmol_l <= TS_CHEM_ION_HIGH_MMOL_L;
}

static bool tank_good(const struct ts_drift_tank *t)
{
	struct ts_solution water = t->water;

	water.dic_mmol_l = 0;
	for (size_t i = 0; i < t->supply_count; i++) {
		if (!supply_good(&t->supplies[i]))
			return false;
	}
	return t->supply_count && ts_solution_check(&water) == TS_OK &&
	       share(t->tan_mmol_l / TS_CHEM_ION_HIGH_MMOL_L) &&
	       share(t->nitrogen_mmol_l / TS_CHEM_ION_HIGH_MMOL_L) && share(t->plant_share) &&
	       share(t->filter_share) && share(t->change_share) && share(t->evaporated_share) &&
	       (t->change_days == 0 || (t->change_days >= 1 && t->change_days <= 1e6)) &&
	       share(fabs(t->alk_gain_meq_l) / TS_CHEM_ION_HIGH_MMOL_L) &&
	       share(fabs(t->hardness_gain_mmol_l) / TS_CHEM_ION_HIGH_MMOL_L) &&
	       t->change_gone_days >= 0 && t->soil_left_meq_l >= 0 && t->co2_least >= CO2_LEAST &&
	       t->co2_usual >= t->co2_least && t->co2_most >= t->co2_usual &&
	       t->co2_most <= CO2_MOST;
}

/* pH at a multiple of air's CO2, held down where lime would fall out; NAN outside the equations. */
static double ph_at(struct ts_drift *d, double times_air, struct ts_ion_species *warm)
{
	double co2 = times_air * 1000 * d->constants.kh * TS_CHEM_AIR_CO2_PPM * 1e-6;

	for (int i = 0; i < LIME_ROUNDS; i++) {
		double over;

		if (ts_chem_speciate_at_co2(&d->constants, &d->tank.water, co2, warm) != TS_OK)
			return (double)NAN;
		over = ts_chem_species_si(&d->constants, warm, TS_CALCITE) -
		       TS_CHEM_TANK_CALCITE_SI_HIGH;
		if (over < 1e-3)
			break;
		co2 *= ts_power(10, over);
	}
	return warm->ph;
}

/* What the water held when its pH was last solved, or so nearly that no digit that counts moves. */
#define PH_STEP 0.0002

static bool hardly_moved(double now, double then)
{
	return fabs(now - then) <= PH_STEP * fabs(then);
}

double ts_drift_ph(struct ts_drift *d)
{
	const struct ts_solution *w = &d->tank.water;

	if (hardly_moved(w->alk_meq_l, d->solved_alk_meq_l) &&
		hardly_moved(w->ca_mmol_l, d->solved_ca_mmol_l))
		return d->at_usual.ph;
	ph_at(d, d->tank.co2_usual, &d->at_usual);
	d->solved_alk_meq_l = w->alk_meq_l;
	d->solved_ca_mmol_l = w->ca_mmol_l;
	return d->at_usual.ph;
}

/*
 * A pH that the tank's surely is not below: of its alkalinity at the least two fifths are free and
 * active bicarbonate, as long as the pH is no higher than 8. Solving for each of thousands of days
 * would take nearly all the time of an answer.
 */
static double ph_at_least(const struct ts_drift *d)
{
	double co2 = d->tank.co2_usual * 1000 * d->constants.kh * TS_CHEM_AIR_CO2_PPM * 1e-6;

	return fmin(8, log10(0.4 * fmax(0, d->tank.water.alk_meq_l) / (d->constants.k1 * co2)));
}

/* How much of the ammonia the bacteria clear at today's pH: all from 6.5 on, none at 5.5. */
static void look_at_filter(struct ts_drift *d)
{
	double none = d->practice->value[TS_P_FILTER_NONE_PH],
	       full = d->practice->value[TS_P_FILTER_FULL_PH];
	double ph;

	ph = ph_at_least(d);
	if (ph < full || d->tank.bed != TS_BED_INERT)
		ph = ts_drift_ph(d);
	d->filter_lets = ph >= full ? 1 : ph > none ? (ph - none) / (full - none) : 0;
}

enum ts_status ts_drift_open(
	const struct ts_drift_tank *tank, const struct ts_practice *practice, struct ts_drift *ret)
{
	struct ts_drift d = {.tank = *tank,
		.practice = practice,
		.solved_alk_meq_l = (double)NAN,
		.solved_ca_mmol_l = (double)NAN};

	if (!tank_good(tank))
		return TS_BAD_INPUT;
	d.tank.water.dic_mmol_l = 0;
	ts_chem_constants_at(&d.constants, tank->water.temp_c);
	if (isnan(ph_at(&d, tank->co2_usual, &d.at_usual)))
		return TS_BAD_INPUT;
	look_at_filter(&d);
	*ret = d;
	return TS_OK;
}

static const struct ts_drift_supply *supply_on(const struct ts_drift_tank *tank, unsigned day)
{
	const struct ts_drift_supply *now = &tank->supplies[0];

	for (size_t i = 1; i < tank->supply_count; i++) {
		if (tank->supplies[i].from_day <= day)
			now = &tank->supplies[i];
	}
	return now;
}

/* `n_mmol_l` of nitrogen goes through a process. */
static void turn_over(struct ts_drift_tank *t, enum ts_nitrogen_process_id process, double n_mmol_l)
{
	const struct ts_nitrogen_process *p = &ts_nitrogen_processes[process];

	t->water.alk_meq_l += p->alk_eq * n_mmol_l;
	t->tan_mmol_l += p->tan_mol * n_mmol_l;
	t->water.no3_mmol_l += p->no3_mol * n_mmol_l;
}

/* The bacteria stop where the buffer does: each ammonium costs them 2 eq. */
static void nitrify(struct ts_drift *d)
{
	struct ts_drift_tank *t = &d->tank;
	double n = fmin(t->tan_mmol_l * t->filter_share * d->filter_lets,
		fmax(0, t->water.alk_meq_l) / -ts_nitrogen_processes[TS_NITRITATION].alk_eq);

	turn_over(t, TS_NITRITATION, n);
	turn_over(t, TS_NITRATATION, n);
}

/* Evaporation takes water and leaves what is dissolved; the refill brings its own. */
static void top_up(struct ts_drift_tank *t, const struct ts_drift_supply *supply)
{
	double e = t->evaporated_share;
	struct ts_solution *w = &t->water;

	if (t->pure_top_up)
		return;
	w->ca_mmol_l += e * supply->water.ca_mmol_l;
	w->mg_mmol_l += e * supply->water.mg_mmol_l;
	w->na_mmol_l += e * supply->water.na_mmol_l;
	w->k_mmol_l += e * supply->water.k_mmol_l;
	w->cl_mmol_l += e * supply->water.cl_mmol_l;
	w->so4_mmol_l += e * supply->water.so4_mmol_l;
	w->no3_mmol_l += e * supply->water.no3_mmol_l;
	w->alk_meq_l += e * supply->water.alk_meq_l;
	t->tan_mmol_l += e * supply->tan_mmol_l;
}

/* Lime dissolves the slower the nearer it is to its balance, and does not fall out again. */
static void dissolve_lime(struct ts_drift *d, enum ts_mineral mineral)
{
	double si = ts_chem_species_si(&d->constants, &d->at_usual, mineral);
	double lime = d->practice->value[TS_P_LIME_RATE] * fmax(0, 1 - ts_power(10, si));

	d->tank.water.ca_mmol_l += lime;
	d->tank.water.alk_meq_l += 2 * lime;
}

/* Soil swaps calcium and magnesium for acid until it is spent. */
static void take_up(struct ts_drift *d)
{
	struct ts_drift_tank *t = &d->tank;
	double hardness = t->water.ca_mmol_l + t->water.mg_mmol_l;
	double eq = fmin(fmax(0, t->water.alk_meq_l) * d->practice->value[TS_P_SOIL_SHARE],
		fmin(t->soil_left_meq_l, 2 * hardness));
	double kept = hardness > 0 ? 1 - eq / 2 / hardness : 1;

	t->water.ca_mmol_l *= kept;
	t->water.mg_mmol_l *= kept;
	t->water.alk_meq_l -= eq;
	t->soil_left_meq_l -= eq;
}

/* What the log shows beside the model; sodium and chloride keep the balance of charge. */
static void gain(struct ts_drift_tank *t)
{
	struct ts_solution *w = &t->water;
	double hardness = w->ca_mmol_l + w->mg_mmol_l;
	double alk = fmax(t->alk_gain_meq_l, -fmax(w->alk_meq_l, 0));
	double eq = 2 * fmax(t->hardness_gain_mmol_l, -hardness);
	double kept = eq < 0 && hardness > 0 ? 1 + eq / 2 / hardness : 1;

	w->alk_meq_l += alk;
	w->na_mmol_l += fmax(alk, 0) + fmax(-eq, 0);
	w->cl_mmol_l += fmax(-alk, 0) + fmax(eq, 0);
	w->ca_mmol_l = w->ca_mmol_l * kept + fmax(eq, 0) / 2;
	w->mg_mmol_l *= kept;
}

static void work_of_bed(struct ts_drift *d)
{
	if (d->tank.bed == TS_BED_ACTIVE_SOIL)
		take_up(d);
	else if (d->tank.bed != TS_BED_INERT)
		dissolve_lime(d, d->tank.bed == TS_BED_ARAGONITE ? TS_ARAGONITE : TS_CALCITE);
}

void ts_drift_live(struct ts_drift *d)
{
	struct ts_drift_tank *t = &d->tank;

	d->day++;
	turn_over(t, TS_RELEASE, t->nitrogen_mmol_l);
	turn_over(t, TS_UPTAKE_OF_AMMONIUM, t->plant_share * t->nitrogen_mmol_l);
	top_up(t, supply_on(t, d->day));
	nitrify(d);
	gain(t);
	work_of_bed(d);
	look_at_filter(d);
}

bool ts_drift_change_due(const struct ts_drift_tank *tank, unsigned day)
{
	double n = tank->change_days, gone = fmin(tank->change_gone_days, n);

	if (!(n > 0) || !(tank->change_share > 0) || (!day && gone < n))
		return false;
	/* What is overdue is made up for at once. */
	return !day || floor((day + gone) / n) > floor((day + gone - 1) / n);
}

static void pour(struct ts_drift_tank *t, const struct ts_drift_supply *supply, double part)
{
	const struct ts_solution *waters[] = {&t->water, &supply->water};
	const double parts[] = {1 - part, part};
	double temp_c = t->water.temp_c;

	ts_chem_mix(waters, parts, 2, &t->water);
	t->water.temp_c = temp_c; /* the heater brings it back */
	t->water.dic_mmol_l = 0;  /* and the air its CO2 */
	t->tan_mmol_l += part * (supply->tan_mmol_l - t->tan_mmol_l);
}

void ts_drift_pour(struct ts_drift_tank *tank, double part)
{
	pour(tank, supply_on(tank, 0), part);
}

void ts_drift_change(struct ts_drift *d)
{
	if (!ts_drift_change_due(&d->tank, d->day))
		return;
	pour(&d->tank, supply_on(&d->tank, d->day), d->tank.change_share);
	look_at_filter(d);
}

/* The bed decides pH itself, or there is no buffer to compute it from. */
static bool ph_follows(const struct ts_drift_tank *t, double kh_dh)
{
	return kh_dh >= TS_CHEM_TANK_KH_LOW_DH &&
	       !(t->bed == TS_BED_ACTIVE_SOIL && t->soil_left_meq_l > 0);
}

void ts_drift_read(struct ts_drift *d, bool solved, struct ts_drift_day *ret)
{
	const struct ts_solution *w = &d->tank.water;
	struct ts_drift_day day = {.day = d->day};

	day.kh_dh = fmax(0, ts_chem_dkh_from_meq_l(w->alk_meq_l));
	day.gh_dh = ts_chem_dh_from_mmol_l(w->ca_mmol_l + w->mg_mmol_l);
	day.tan_mg_l = d->tank.tan_mmol_l * TS_WEIGHT_N;
	day.no3_mg_l = w->no3_mmol_l * TS_MASS_NO3;
	day.filter_doubtful = d->filter_lets < 1;
	day.change_due = ts_drift_change_due(&d->tank, d->day);
	day.ph_low = day.ph = day.ph_high = day.conductivity_us_cm = (double)NAN;
	if (solved && ph_follows(&d->tank, day.kh_dh)) {
		day.ph = ts_drift_ph(d);
		day.ph_low = fmin(ph_at(d, d->tank.co2_most, &d->at_most), day.ph);
		day.ph_high = fmax(ph_at(d, d->tank.co2_least, &d->at_least), day.ph);
	}
	if (solved &&
		ts_chem_conductivity_25_us_cm(w, ts_drift_ph(d), &day.conductivity_us_cm) != TS_OK)
		day.conductivity_us_cm = (double)NAN;
	*ret = day;
}

enum ts_status ts_drift_run(const struct ts_drift_tank *tank, const struct ts_practice *practice,
	unsigned days, struct ts_drift_day *ret_days, unsigned *ret_gone_day)
{
	struct ts_drift d;
	unsigned gone = 0;
	double floor_dh = practice->value[TS_P_KH_FLOOR];
	enum ts_status status = ts_drift_open(tank, practice, &d);

	if (status != TS_OK)
		return status;
	ts_drift_read(&d, true, &ret_days[0]);
	ts_drift_change(&d);
	for (unsigned day = 1; day <= days; day++) {
		ts_drift_live(&d);
		ts_drift_read(&d, true, &ret_days[day]);
		if (!gone && ret_days[0].kh_dh >= floor_dh && ret_days[day].kh_dh < floor_dh)
			gone = day;
		ts_drift_change(&d);
	}
	if (ret_gone_day)
		*ret_gone_day = gone;
	return TS_OK;
}
