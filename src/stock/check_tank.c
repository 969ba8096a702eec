/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What was read of the tank and what its animals make of its water: poisons, oxygen, nitrate,
 * buffer; whether the filter is mature and all are well.
 */
#include "stock/judging.h"

#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "chem/ammonia.h"
#include "chem/ions.h"
#include "chem/nitrogen.h"

/* Whose wants of nitrate count: the most sensitive animal's. */
static bool nitrate_sensitive(const struct ts_check *c)
{
	for (size_t i = 0; i < c->group_count; i++) {
		if (c->groups[i].group.species->habits & TS_HABIT_NITRATE_SENSITIVE ||
			c->groups[i].wild)
			return true;
	}
	return false;
}

static double highest(const struct ts_measure *m, double factor)
{
	if (m->kind == TS_MEASURE_NONE)
		return (double)NAN;
	if (m->kind == TS_MEASURE_BELOW)
		return 0;
	return factor * (isfinite(m->high) ? m->high : m->value); /* ">2", "2..": as written */
}

/* The newest readings of the tank; without any, the water's last that tells this. */
static double last(const struct ts_judging *w, double (*of)(const struct ts_reading *))
{
	const struct ts_waters *waters = w->out->waters;
	const struct ts_water *water = ts_plan_poured(w->plan);

	if (waters->log.read)
		return of(&waters->log.reading);
	for (size_t i = water->reading_count; i-- > 0;) {
		double value = of(&water->readings[i]);

		if (!isnan(value))
			return value;
	}
	return (double)NAN;
}

static double tan_in(const struct ts_reading *r)
{
	return highest(&r->tan_mg_l, 1);
}

static double no2_n_in(const struct ts_reading *r)
{
	return fmax(highest(&r->no2_n_mg_l, 1), highest(&r->no2_mg_l, TS_WEIGHT_N / TS_MASS_NO2));
}

static double no3_in(const struct ts_reading *r)
{
	return fmax(highest(&r->no3_n_mg_l, TS_MASS_NO3 / TS_WEIGHT_N), highest(&r->no3_mg_l, 1));
}

static double chlorine_in(const struct ts_reading *r)
{
	return highest(&r->chlorine_mg_l, 1);
}

static double chloride_in(const struct ts_reading *r)
{
	return r->cl_mg_l.kind == TS_MEASURE_NONE ? (double)NAN : r->cl_mg_l.low;
}

/* Where nothing lives yet, nothing is harmed: the filter is maturing. */
static enum ts_severity harm(const struct ts_judging *w)
{
	return w->out->living_groups || !w->plan->stock_count ? TS_CONFLICT : TS_CONCERN;
}

static void check_ammonia(struct ts_judging *w)
{
	const double *p = w->practice->value;
	const struct ts_span *ph = &w->out->profile.at[TS_PH];
	const struct ts_span *temp = &w->out->profile.at[TS_TEMPERATURE];
	double tan = last(w, tan_in), limit = 0;

	if (!(tan >= p[TS_P_TAN_DANGER]))
		return;
	if (!ph->given || !temp->given ||
		ts_chem_ammonia_ccc_mg_l(
			fmin(fmax(ph->high, TS_CHEM_EPA_PH_LOW), TS_CHEM_EPA_PH_HIGH),
			fmin(fmax(temp->high, 0), TS_CHEM_EPA_TEMP_HIGH_C), &limit) != TS_OK)
		limit = p[TS_P_TAN_DANGER];
	ts_judging_say(w, TS_RULE_AMMONIA, tan > limit ? harm(w) : TS_CONCERN, tan, limit);
}

static void check_nitrite(struct ts_judging *w)
{
	double no2_n = last(w, no2_n_in), chloride = last(w, chloride_in), concern, conflict;

	ts_chem_nitrite_limits(isnan(chloride) ? -1 : chloride, &concern, &conflict);
	if (no2_n >= concern)
		ts_judging_say(w, TS_RULE_NITRITE, no2_n >= conflict ? harm(w) : TS_CONCERN, no2_n,
			conflict);
}

/* Chlorine harms where the animals are; in the water it is there to be treated. */
static void check_chlorine(struct ts_judging *w)
{
	double limit = w->practice->value[TS_P_CHLORINE_DANGER], chlorine = last(w, chlorine_in);

	if (!(chlorine >= limit))
		return;
	ts_judging_say(w, TS_RULE_CHLORINE, w->plan->tank.reading_count ? TS_CONFLICT : TS_NOTE,
		chlorine, limit);
}

/* What the animal that wants most of it bears. */
static double oxygen_enough_mg_l(const struct ts_judging *w)
{
	double most = w->out->group_count ? 0 : w->practice->value[TS_P_OXYGEN_CONCERN];

	for (size_t i = 0; i < w->out->group_count; i++)
		most = fmax(most,
			ts_match_oxygen_borne_mg_l(w->out->groups[i].group.species, w->practice));
	return most;
}

/* The tank's own; new water gains oxygen where it is poured. */
static double oxygen_now_mg_l(const struct ts_judging *w)
{
	return w->out->waters->never_read ? (double)NAN : w->out->profile.poisons.oxygen_mg_l;
}

static void check_oxygen(struct ts_judging *w)
{
	const double *p = w->practice->value;
	double enough = oxygen_enough_mg_l(w), oxygen = oxygen_now_mg_l(w);
	double harm = enough - (p[TS_P_OXYGEN_CONCERN] - p[TS_P_OXYGEN_CONFLICT]);
	struct ts_ruling *r;

	if (!(oxygen < enough))
		return;
	r = ts_judging_say(
		w, TS_RULE_OXYGEN, oxygen < harm ? TS_CONFLICT : TS_CONCERN, oxygen, enough);
	if (r)
		r->change = enough - oxygen;
}

/* The load hangs on what was not given. */
static bool load_assumed(const struct ts_load *l)
{
	bool modelled = isnan(l->measured_no3_rise_mg_l_week);

	return !l->change_known || (modelled && (!l->feeding_known || !l->plants_known));
}

/* Where the same animals have lived for long, nitrate stands where it settles: what was read
 * counts. */
static bool measured_settled(const struct ts_judging *w, double concern)
{
	if (w->out->planned_groups || !w->out->living_groups || !(last(w, no3_in) < concern))
		return false;
	for (size_t i = 0; i < w->out->group_count; i++) {
		if (!ts_lived_well(w, &w->out->groups[i]))
			return false;
	}
	return true;
}

static void check_nitrate_load(struct ts_judging *w, double concern, double conflict)
{
	const struct ts_estimate *steady = &w->out->load.no3_steady_mg_l;
	struct ts_ruling *r;

	if (!w->out->load_known || measured_settled(w, concern))
		return;
	if (!load_assumed(&w->out->load)) {
		if (steady->high >= concern)
			ts_judging_say(w, TS_RULE_NITRATE_LOAD,
				steady->value >= conflict  ? TS_CONFLICT
				: steady->value >= concern ? TS_CONCERN
							   : TS_NOTE,
				steady->value, concern);
	} else if (w->best.no3_steady_mg_l.low >= concern) {
		r = ts_judging_say(
			w, TS_RULE_NITRATE_LOAD, TS_CONCERN, w->best.no3_steady_mg_l.low, concern);
		if (r)
			r->rests = TS_RESTS_ASSUMED;
	} else if (steady->value >= concern) {
		r = ts_judging_say(
			w, TS_RULE_NITRATE_OPEN, TS_QUESTION, w->best.no3_steady_mg_l.low, concern);
		if (r)
			r->change = steady->high;
	}
}

static void check_nitrate(struct ts_judging *w)
{
	bool sensitive = w->out->nitrate_sensitive = nitrate_sensitive(w->out);
	const double *p = w->practice->value;
	double concern = p[sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN];
	double conflict = p[sensitive ? TS_P_NITRATE_CONFLICT_SENSITIVE : TS_P_NITRATE_CONFLICT];
	double now = last(w, no3_in);

	if (now >= concern)
		ts_judging_say(w, TS_RULE_NITRATE, now >= conflict ? TS_CONFLICT : TS_CONCERN, now,
			concern);
	check_nitrate_load(w, concern, conflict);
}

/* Who likes so little KH is at home in water without a buffer: common practice, no source. */
#define LITTLE_KH_DH 2

/* Animals of waters without a buffer, which more of it would harm; who is not to be bought counts
 * not.
 */
static bool want_no_buffer(const struct ts_check *c)
{
	size_t stay = 0;

	for (size_t i = 0; i < c->group_count; i++) {
		int home = c->groups[i].group.species->home_water;

		if (c->groups[i].way == TS_WAY_LEAVE)
			continue;
		stay++;
		if (home != TS_HOME_BLACK && home != TS_HOME_BEE_SHRIMP)
			return false;
	}
	return stay > 0;
}

/* All of them are at home with hardly any buffer: more of it is no aim, its pH is watched. */
static bool like_little_buffer(const struct ts_check *c)
{
	double kh = c->profile.at[TS_KH].value;

	for (size_t i = 0; i < c->group_count; i++) {
		const struct ts_parameter_fit *f = &c->groups[i].match.at[TS_KH];

		if (c->groups[i].way != TS_WAY_LEAVE &&
			!(f->preferred.low <= LITTLE_KH_DH && kh >= f->tolerated.low))
			return false;
	}
	return true;
}

/* The buffer of a load that is known; of an assumed one at its best. */
static enum ts_severity of_buffer(const struct ts_judging *w, const struct ts_load *l, bool assumed)
{
	const double *p = w->practice->value;
	double kh = w->out->profile.at[TS_KH].value, days = l->buffer_days.value;

	if (assumed)
		days = w->best.buffer_days.high;
	if (days < p[TS_P_BUFFER_ACT])
		return assumed ? TS_CONCERN : TS_CONFLICT;
	if (days < p[TS_P_BUFFER_WARN] || kh < p[TS_P_KH_FLOOR])
		return TS_CONCERN;
	if (!assumed && l->kh_steady_dh < p[TS_P_KH_FLOOR])
		return TS_CONCERN;
	return TS_NOTE;
}

static void check_buffer(struct ts_judging *w)
{
	const double *p = w->practice->value;
	const struct ts_span *kh = &w->out->profile.at[TS_KH];
	const struct ts_load *l = &w->out->load;
	bool assumed = load_assumed(l), usual_short;
	enum ts_severity severity;

	if (!w->out->group_count || !w->out->water_known)
		return;
	if (!kh->given) {
		ts_judging_say(w, TS_RULE_KH_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
		return;
	}
	if (!w->out->load_known || want_no_buffer(w->out))
		return;
	severity = of_buffer(w, l, assumed);
	if (severity > TS_NOTE && like_little_buffer(w->out))
		severity = TS_NOTE;
	usual_short = l->buffer_days.value < p[TS_P_BUFFER_WARN];
	if (severity == TS_NOTE && assumed && usual_short)
		ts_judging_say(w, TS_RULE_BUFFER_OPEN, TS_QUESTION, l->buffer_days.low,
			w->best.buffer_days.high);
	else if (severity > TS_NOTE || kh->value < p[TS_P_KH_WARN])
		ts_judging_say(w, TS_RULE_BUFFER, severity, l->buffer_days.value, l->change_days);
}

static void check_warmth(struct ts_judging *w)
{
	const struct ts_span *temp = &w->out->profile.at[TS_TEMPERATURE];

	if (w->out->load_known && temp->given && temp->high >= w->practice->value[TS_P_OXYGEN_WARM])
		ts_judging_say(
			w, TS_RULE_WARM_OXYGEN, TS_NOTE, w->out->load.oxygen_mg_l, temp->high);
}

/* The newest day that the plan knows of: its readings are as old as that at the most. */
static bool newest_day(const struct ts_plan *p, long *ret)
{
	bool known = false;

	for (size_t i = 0; i < p->tank.reading_count; i++) {
		long day;

		if (p->tank.readings[i].date && ts_date_read(p->tank.readings[i].date, &day) &&
			(!known || day > *ret)) {
			*ret = day;
			known = true;
		}
	}
	return known;
}

/* Animals live there, and since when nobody says: no tale of a new tank, nor of an old one. */
static bool of_no_age(const struct ts_plan *p)
{
	bool lives = false;

	for (size_t i = 0; i < p->stock_count; i++) {
		long day;

		if (!p->stock[i].since)
			continue;
		if (ts_date_read(p->stock[i].since, &day))
			return false;
		lives = true;
	}
	return lives;
}

/* Said to be mature, or shown to be by stock that has lived there with both poisons nil. */
static bool lived_long(const struct ts_judging *w)
{
	for (size_t i = 0; i < w->out->group_count; i++) {
		if (ts_lived_well(w, &w->out->groups[i]))
			return true;
	}
	return false;
}

static bool filter_mature(struct ts_judging *w)
{
	const struct ts_plan *p = w->plan;
	double tan = last(w, tan_in), no2_n = last(w, no2_n_in);
	bool nil = tan < w->practice->value[TS_P_TAN_DANGER] && no2_n < 0.05;
	long today = 0, since = 0;

	if (tan >= w->practice->value[TS_P_TAN_DANGER] || no2_n >= 0.05)
		return false;
	if (p->tank.filter == TS_FILTER_MATURE)
		return true;
	if (p->tank.filter == TS_FILTER_NEW || !p->tank.reading_count || !nil ||
		!newest_day(p, &today))
		return false;
	for (size_t i = 0; i < p->stock_count; i++) {
		if (p->stock[i].since && ts_date_read(p->stock[i].since, &since) &&
			(double)(today - since) > w->practice->value[TS_P_SETTLED_DAYS])
			return true;
	}
	return false;
}

static void check_state(struct ts_judging *w)
{
	const struct ts_plan *p = w->plan;
	const struct ts_check *c = w->out;
	bool distress = ts_plan_unwell(p);

	if (c->living_groups && (isnan(last(w, tan_in)) || isnan(last(w, no2_n_in)))) {
		ts_judging_say(w, TS_RULE_UNTESTED, TS_QUESTION, (double)NAN, (double)NAN);
		w->cannot = true;
	}
	if (distress)
		ts_judging_say(
			w, TS_RULE_DISTRESS, TS_CONCERN, (double)p->sign_count, p->deaths.value);
	if (distress && c->planned_groups)
		ts_judging_say(
			w, TS_RULE_NEWCOMERS, TS_CONFLICT, (double)c->planned_groups, (double)NAN);
	if (c->planned_groups && !filter_mature(w)) {
		bool young = p->tank.filter == TS_FILTER_NEW || p->tank.filter == TS_FILTER_NONE ||
			     last(w, tan_in) > 0 || last(w, no2_n_in) > 0;

		/* Where animals live is no tale of a new tank to be told; what to test is said. */
		if (young || !(lived_long(w) || of_no_age(w->plan)))
			ts_judging_say(w, young ? TS_RULE_FILTER : TS_RULE_FILTER_UNKNOWN,
				young ? TS_CONCERN : TS_QUESTION, (double)NAN, (double)NAN);
	}
}

void ts_judge_tank(struct ts_judging *w)
{
	check_warmth(w);
	check_ammonia(w);
	check_nitrite(w);
	check_oxygen(w);
	check_chlorine(w);
	check_nitrate(w);
	check_buffer(w);
	check_state(w);
}
