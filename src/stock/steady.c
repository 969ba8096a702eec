/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where a routine ends: in closed form where the day is a straight line, by simulation where bed
 * and filter bend it, and the smallest water change that ends inside given bounds.
 */
#include <math.h>

#include "chem/hardness.h"
#include "chem/nitrogen.h"
#include "stock/drift.h"

/* A simulated level is settled when a whole round of changes moves it by less than this share. */
#define SETTLED 1e-5
#define DAYS_MOST (10 * 365)
/* Changes every 3.5 days fall on whole days 3 and 4 apart: levels repeat after a few of them. */
#define ROUND 4
#define SHARE_STEP 0.001

/* What one day adds to a quantity, what the new water comes to once nitrified, and what it reads
 * when it is poured in. */
struct gain {
	double a_day, new_water, poured;
};

/* Before and after a change once it repeats: C = (1 - f)(C + n g) + f C_new. */
static struct ts_drift_level level_of(
	const struct ts_drift_tank *t, struct gain gain, double to_unit)
{
	double n = t->change_days, f = t->change_share;
	double before = gain.new_water + n * gain.a_day / f;
	double after = (1 - f) * before + f * gain.poured;
	struct ts_drift_level none = {(double)NAN, (double)NAN};

	if (!(n > 0) || !(f > 0) || before < 0)
		return none;
	return (struct ts_drift_level){before * to_unit, after * to_unit};
}

struct gains {
	struct gain alk, hardness, no3;
};

static struct gains gains_of(const struct ts_drift_tank *t)
{
	const struct ts_drift_supply *supply = &t->supplies[t->supply_count - 1];
	const struct ts_nitrogen_process *p = ts_nitrogen_processes;
	double n = (1 - t->plant_share) * t->nitrogen_mmol_l;
	double refill = t->pure_top_up ? 0 : t->evaporated_share;
	double to_nitrate = p[TS_NITRITATION].alk_eq + p[TS_NITRATATION].alk_eq;
	double hardness;
	struct ts_solution w = supply->water;

	/* Ammonium of the new water is nitrified too; the feed's is released first. */
	w.no3_mmol_l += supply->tan_mmol_l;
	w.alk_meq_l += to_nitrate * supply->tan_mmol_l;
	hardness = w.ca_mmol_l + w.mg_mmol_l;
	return (struct gains){
		.alk = {n * (p[TS_RELEASE].alk_eq + to_nitrate) + refill * w.alk_meq_l +
				t->alk_gain_meq_l,
			w.alk_meq_l, supply->water.alk_meq_l},
		.hardness = {refill * hardness + t->hardness_gain_mmol_l, hardness, hardness},
		.no3 = {n + refill * w.no3_mmol_l, w.no3_mmol_l, supply->water.no3_mmol_l},
	};
}

void ts_drift_steady(const struct ts_drift_tank *tank, struct ts_drift_steady *ret)
{
	struct gains g = gains_of(tank);

	ret->kh_dh = level_of(tank, g.alk, ts_chem_dkh_from_meq_l(1));
	ret->gh_dh = level_of(tank, g.hardness, ts_chem_dh_from_mmol_l(1));
	ret->no3_mg_l = level_of(tank, g.no3, TS_MASS_NO3);
}

bool ts_drift_is_linear(const struct ts_drift_tank *t)
{
	return t->bed == TS_BED_INERT && t->supply_count == 1 && t->filter_share == 1;
}

unsigned ts_drift_linear_days(const struct ts_drift_tank *t, double alk_least_meq_l, unsigned most)
{
	const struct ts_nitrogen_process *p = ts_nitrogen_processes;
	struct gain alk = gains_of(t).alk;
	/* Ammonia that stands in the tank is nitrified on the first day. */
	double level = t->water.alk_meq_l +
		       (p[TS_NITRITATION].alk_eq + p[TS_NITRATATION].alk_eq) * t->tan_mmol_l;

	if (t->water.alk_meq_l < alk_least_meq_l)
		return 0;
	if (ts_drift_change_due(t, 0))
		level += t->change_share * (alk.new_water - level);
	for (unsigned day = 1; day <= most; day++) {
		level += alk.a_day;
		if (level < alk_least_meq_l)
			return day;
		if (ts_drift_change_due(t, day))
			level += t->change_share * (alk.new_water - level);
	}
	return most + 1;
}

void ts_drift_linear_after(const struct ts_drift_tank *t, unsigned days, struct ts_drift_day *ret)
{
	struct gains g = gains_of(t);
	const struct gain *of[] = {&g.alk, &g.hardness, &g.no3};
	double level[] = {t->water.alk_meq_l, t->water.ca_mmol_l + t->water.mg_mmol_l,
		t->water.no3_mmol_l + t->tan_mmol_l};

	for (unsigned day = 0; day <= days; day++) {
		for (int i = 0; i < 3; i++) {
			level[i] = fmax(0, level[i] + (day ? of[i]->a_day : 0));
			if (day < days && ts_drift_change_due(t, day))
				level[i] += t->change_share * (of[i]->new_water - level[i]);
		}
	}
	*ret = (struct ts_drift_day){.day = days,
		.kh_dh = level[0] * ts_chem_dkh_from_meq_l(1),
		.gh_dh = level[1] * ts_chem_dh_from_mmol_l(1),
		.no3_mg_l = level[2] * TS_MASS_NO3};
}

/* The tank with every ion at its closed-form level after a change: settling begins near its end. */
static struct ts_drift_tank at_closed_form(const struct ts_drift_tank *tank)
{
	struct ts_drift_tank t = *tank;
	const struct ts_solution *new_water = &t.supplies[t.supply_count - 1].water;
	double n = t.change_days, f = t.change_share;
	double refill = t.pure_top_up ? 0 : t.evaporated_share;
	double grows = 1 + n * refill * (1 - f) / f;
	struct gains g = gains_of(tank);
	double temp_c = t.water.temp_c;

	t.change_gone_days = 0;
	t.supplies += t.supply_count - 1;
	t.supply_count = 1;
	t.water = *new_water;
	t.water.temp_c = temp_c;
	t.water.dic_mmol_l = 0;
	t.water.ca_mmol_l *= grows;
	t.water.mg_mmol_l *= grows;
	t.water.na_mmol_l *= grows;
	t.water.k_mmol_l *= grows;
	t.water.cl_mmol_l *= grows;
	t.water.so4_mmol_l *= grows;
	t.water.ca_mmol_l += fmax(0, n * t.hardness_gain_mmol_l * (1 - f) / f);
	t.water.no3_mmol_l = (1 - f) * (g.no3.new_water + n * g.no3.a_day / f) + f * g.no3.poured;
	t.water.alk_meq_l =
		fmax(0, (1 - f) * (g.alk.new_water + n * g.alk.a_day / f) + f * g.alk.poured);
	t.tan_mmol_l = f * tank->supplies[tank->supply_count - 1].tan_mmol_l;
	return t;
}

static bool still(const struct ts_drift_day *a, const struct ts_drift_day *b)
{
	return fabs(a->kh_dh - b->kh_dh) <= SETTLED * (1 + b->kh_dh) &&
	       fabs(a->gh_dh - b->gh_dh) <= SETTLED * (1 + b->gh_dh) &&
	       fabs(a->no3_mg_l - b->no3_mg_l) <= SETTLED * (1 + b->no3_mg_l);
}

static bool soil_at_work(const struct ts_drift_tank *t)
{
	return t->bed == TS_BED_ACTIVE_SOIL && t->soil_left_meq_l > 0;
}

enum ts_status ts_drift_settle(const struct ts_drift_tank *tank, const struct ts_practice *practice,
	struct ts_drift_steady *ret)
{
	const struct ts_drift_level none = {(double)NAN, (double)NAN};
	struct ts_drift_day before = {.kh_dh = -1}, now = {0}, after;
	struct ts_drift_tank start;
	struct ts_drift d;
	bool settled = false;
	unsigned changes = 0;

	*ret = (struct ts_drift_steady){none, none, none};
	if (!(tank->change_days > 0) || !(tank->change_share > 0))
		return TS_OK;
	start = at_closed_form(tank);
	if (ts_drift_open(&start, practice, &d) != TS_OK)
		return TS_BAD_INPUT;
	while (!settled && d.day < DAYS_MOST) {
		ts_drift_live(&d);
		if (!ts_drift_change_due(&d.tank, d.day))
			continue;
		ts_drift_read(&d, false, &now);
		if (++changes % ROUND == 0) {
			settled = still(&before, &now) && !soil_at_work(&d.tank);
			before = now;
		}
		ts_drift_change(&d);
	}
	if (!settled)
		return TS_OK;
	ts_drift_read(&d, false, &after);
	ret->kh_dh = (struct ts_drift_level){now.kh_dh, after.kh_dh};
	ret->gh_dh = (struct ts_drift_level){now.gh_dh, after.gh_dh};
	ret->no3_mg_l = (struct ts_drift_level){now.no3_mg_l, after.no3_mg_l};
	return TS_OK;
}

static bool inside(const struct ts_drift_tank *tank, double share,
	const struct ts_drift_bounds *bounds, const struct ts_practice *practice)
{
	struct ts_drift_tank t = *tank;
	struct ts_drift_steady s;

	t.change_share = share;
	return ts_drift_settle(&t, practice, &s) == TS_OK &&
	       s.kh_dh.before_change >= bounds->kh_low_dh &&
	       s.no3_mg_l.before_change <= bounds->no3_high_mg_l;
}

enum ts_status ts_drift_smallest_change(const struct ts_drift_tank *tank,
	const struct ts_drift_bounds *bounds, const struct ts_practice *practice, double *ret_share)
{
	struct ts_drift checked;
	double low = 0, high = 1;

	if (ts_drift_open(tank, practice, &checked) != TS_OK || !(tank->change_days > 0))
		return TS_BAD_INPUT;
	if (!inside(tank, high, bounds, practice))
		return TS_NO;
	while (high - low > SHARE_STEP) {
		double middle = (low + high) / 2;

		if (inside(tank, middle, bounds, practice))
			high = middle;
		else
			low = middle;
	}
	*ret_share = high;
	return TS_OK;
}
