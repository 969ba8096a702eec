/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings to profile: one interval a parameter with where it comes from, the pH that counts (of
 * the tank, of a sample that stood, or computed from KH), and what is unusual about the whole. Each
 * figure's doubt: spans.c; ions and poisons: contents.c; contradictions: doubts.c.
 */
#include <tapshoal/profile.h>

#include <math.h>

#include "base/date.h"
#include "chem/ammonia.h"
#include "chem/carbonate.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/salinity.h"
#include "model/practice.h"
#include "water/analysis.h"
#include "water/contents.h"
#include "water/doubts.h"
#include "water/newest.h"
#include "water/spans.h"

/* Where KH was not read: what part of GH it mostly is in waters (estimate from memory). */
#define KH_OF_GH_LEAST 0.25
#define KH_OF_GH_MOST 1.0
/* KH from which pH tells CO2, dH. */
#define CO2_TELLS_KH_DH 2.0
/* A pH so far above all that a tank of this KH runs at is lime and not a kit's doubt. */
#define LIMED_BY 0.3
/* Wider than a kit's drop: both ends make a tank of their own, dH. */
#define WIDE_DH 2.0
/* Half-softened: so little GH, and KH so far above it, dH (estimates from memory). */
#define HALF_SOFTENED_GH_DH 5.0
#define HALF_SOFTENED_APART_DH 5.0
#define HALF_SOFTENED_TIMES 3.0
/* Sodium that was read tells it from less. */
#define SODIUM_APART_DH 4.0
/* Sodium that stands in the place of hardness: at least so much of KH without GH, by charge. */
#define SODIUM_SHARE 0.6
/* So little room for GH in all that is dissolved that there is hardly a mineral in it, dH. */
#define BARE_BOUND_DH 2.0

struct work {
	const struct ts_water *water;
	const struct ts_keeping *keeping;
	const struct ts_practice *practice;
	long today;
	struct ts_profile p;
	double co2_mg_l;                /* at the pH read; NAN: not known */
	double middle_low, middle_high; /* pH of a tank of the KH as read, without its doubt */
	struct ts_spread of[TS_PARAMETER__COUNT];
	struct ts_spread ph[TS_FROM__COUNT]; /* by where it was read */
};

/* A sample has stood from so many hours (common practice, no source); pH moves, minerals do not. */
#define STOOD_FROM_H 12.0

/* What was sampled: the tank, or a supply that stood, did not, or does not say. */
static enum ts_number_from origin_of(const struct ts_reading *r, int kind, bool fresh)
{
	if (kind == TS_WATER_TANK)
		return TS_FROM_TANK;
	if (r->stood_h.kind != TS_MEASURE_NONE)
		return r->stood_h.value >= STOOD_FROM_H ? TS_FROM_STOOD : TS_FROM_FRESH;
	return fresh ? TS_FROM_FRESH : TS_FROM_SUPPLY;
}

/* Days since a reading; NAN: no date, or today is not known. */
static double age_of(const struct ts_reading *r, long today)
{
	long day;

	return today >= 0 && r->date && ts_date_read(r->date, &day) ? (double)(today - day)
								    : (double)NAN;
}

static struct ts_measure gh_from_ions(const struct ts_reading *r)
{
	struct ts_measure m = {0};

	if (r->ca_mg_l.kind == TS_MEASURE_NONE || r->mg_mg_l.kind == TS_MEASURE_NONE)
		return m;
	m.value = ts_chem_dh_from_mmol_l(
		r->ca_mg_l.value / TS_WEIGHT_CA + r->mg_mg_l.value / TS_WEIGHT_MG);
	m.low = ts_chem_dh_from_mmol_l(
		r->ca_mg_l.low / TS_WEIGHT_CA + r->mg_mg_l.low / TS_WEIGHT_MG);
	m.high = ts_chem_dh_from_mmol_l(
		r->ca_mg_l.high / TS_WEIGHT_CA + r->mg_mg_l.high / TS_WEIGHT_MG);
	m.kind = m.low < m.high ? TS_MEASURE_DOUBT : TS_MEASURE_VALUE;
	return m;
}

static struct ts_measure kh_from_alkalinity(const struct ts_reading *r)
{
	struct ts_measure m = r->alkalinity_meq_l;

	m.value = ts_chem_dkh_from_meq_l(m.value);
	m.low = ts_chem_dkh_from_meq_l(m.low);
	m.high = ts_chem_dkh_from_meq_l(m.high);
	return m;
}

/* Of a hydrometer at the sample's temperature, else 25 C. */
static struct ts_measure salt_from_gravity(const struct ts_reading *r)
{
	struct ts_measure m = r->specific_gravity;
	double temp = r->temp_c.kind == TS_MEASURE_NONE ? TS_TANK_TEMPERATURE_C : r->temp_c.value;

	if (m.kind == TS_MEASURE_NONE)
		return m;
	m.value = ts_chem_salinity_from_gravity_g_l(m.value, temp);
	m.low = isfinite(m.low) ? ts_chem_salinity_from_gravity_g_l(m.low, temp) : 0;
	m.high = isfinite(m.high) ? ts_chem_salinity_from_gravity_g_l(m.high, temp) : m.high;
	if (isnan(m.value))
		m.kind = TS_MEASURE_NONE;
	return m;
}

/* GH, KH and salt of one reading, from others of it where they were not read themselves. */
static void take_hardness(struct work *w, const struct ts_reading *r, enum ts_number_from from)
{
	struct ts_measure gh = r->gh_dh, kh = r->kh_dh, salt = r->salinity_g_l;
	const struct {
		enum ts_parameter at;
		const struct ts_measure *measure;
		bool computed;
	} all[] = {{TS_GH, &gh, r->gh_dh.kind == TS_MEASURE_NONE},
		{TS_KH, &kh, r->kh_dh.kind == TS_MEASURE_NONE},
		{TS_SALINITY, &salt, r->salinity_g_l.kind == TS_MEASURE_NONE}};

	if (all[0].computed)
		gh = gh_from_ions(r);
	if (all[1].computed)
		kh = kh_from_alkalinity(r);
	if (all[2].computed)
		salt = salt_from_gravity(r);
	w->p.gh_from_ions |= all[0].computed && gh.kind != TS_MEASURE_NONE;
	w->p.kh_from_alkalinity |= all[1].computed && kh.kind != TS_MEASURE_NONE;
	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		struct ts_span one =
			ts_span_read(all[i].measure, all[i].at, r->method, w->practice);

		one.from = all[i].computed ? TS_FROM_COMPUTED : from;
		one.age_days = age_of(r, w->today);
		ts_spread_add(&w->of[all[i].at], &one);
		if (one.given)
			w->p.method[all[i].at] = r->method;
	}
}

/* What a later reading has superseded is kept for telling: the newest of it. */
static void take_before(
	struct work *w, const struct ts_reading *whole, const struct ts_reading *counted)
{
	struct ts_profile *p = &w->p;
	double age = age_of(whole, 0);

	if (!isnan(p->before_day) && -age < p->before_day)
		return;
	if (whole->gh_dh.kind != counted->gh_dh.kind)
		p->gh_before_dh = whole->gh_dh.value;
	if (whole->kh_dh.kind != counted->kh_dh.kind)
		p->kh_before_dh = whole->kh_dh.value;
	p->before_day = -age;
}

static void take_readings(struct work *w)
{
	for (size_t i = 0; i < w->water->reading_count; i++) {
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(w->water, i, &scratch);
		enum ts_number_from from = origin_of(r, w->water->kind, w->keeping->fresh);
		struct ts_span ph = ts_span_read(&r->ph, TS_PH, r->method, w->practice);

		take_hardness(w, r, from);
		if (r == &scratch)
			take_before(w, &w->water->readings[i], r);
		ph.from = from;
		ph.age_days = age_of(r, w->today);
		ts_spread_add(&w->ph[from], &ph);
		if (ph.given)
			w->p.method[TS_PH] = r->method;
	}
	w->p.at[TS_GH] = w->of[TS_GH].span;
	w->p.at[TS_KH] = w->of[TS_KH].span;
	w->p.at[TS_SALINITY] = w->of[TS_SALINITY].span;
}

/* Of the samples of a supply those that stood go before the others; a fresh one tells the gas. */
static void choose_ph(struct work *w)
{
	const struct ts_span *chosen = NULL;

	for (int from = TS_FROM_TANK; from >= TS_FROM_FRESH; from--) {
		const struct ts_span *one = &w->ph[from].span;

		if (!one->given)
			continue;
		if (!chosen)
			chosen = one;
		else if (isnan(w->p.ph_fresh))
			w->p.ph_fresh = one->value;
	}
	if (!chosen)
		return;
	w->p.at[TS_PH] = *chosen;
	w->p.ph_fresh_sample = chosen->from == TS_FROM_FRESH;
	w->p.ph_read = chosen->value;
	w->p.ph_read_low = chosen->low;
	w->p.ph_read_high = chosen->high;
}

/* The sample's temperature meets an animal only where the sample is the tank itself. */
static void take_temperature(struct work *w)
{
	const struct ts_water *water = w->water;
	struct ts_span *temp = &w->p.at[TS_TEMPERATURE];
	struct ts_spread *of = &w->of[TS_TEMPERATURE];

	if (w->keeping->temperature.kind != TS_MEASURE_NONE) {
		*temp = ts_span_read(&w->keeping->temperature, TS_TEMPERATURE, 0, w->practice);
		temp->from = TS_FROM_TANK;
		return;
	}
	for (size_t i = 0; water->kind == TS_WATER_TANK && i < water->reading_count; i++) {
		struct ts_span one =
			ts_span_read(&water->readings[i].temp_c, TS_TEMPERATURE, 0, w->practice);

		one.from = TS_FROM_TANK;
		one.age_days = age_of(&water->readings[i], w->today);
		ts_spread_add(of, &one);
	}
	*temp = of->span;
}

/* Salt not read: what other readings leave room for, else as little as fresh water has. */
static void take_salt(struct work *w)
{
	double fresh = w->practice->value[TS_P_SALT_FRESH];
	struct ts_span *salt = &w->p.at[TS_SALINITY];

	if (salt->given)
		return;
	*salt = ts_contents_salt(w->water, &w->p, fresh);
	if (salt->given)
		w->p.unusual |= TS_UNUSUAL_SALTY;
	else
		*salt = (struct ts_span){
			true, false, fresh / 2, 0, fresh, TS_FROM_ASSUMED, (double)NAN};
}

/* Does sodium stand where hardness was? 1 yes, 0 no, -1 none was read. */
static int sodium_for_hardness(const struct ts_profile *p)
{
	double na = p->contents.na_mg_l / TS_WEIGHT_NA;
	double missing = ts_chem_meq_l_from_dkh(p->at[TS_KH].value - p->at[TS_GH].value);

	return isnan(na) ? -1 : na >= SODIUM_SHARE * missing;
}

static void note_softened(struct work *w)
{
	const double *practice = w->practice->value;
	struct ts_profile *p = &w->p;
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];
	bool none;
	double apart;
	int sodium;

	if (w->water->softened)
		p->unusual |= TS_UNUSUAL_SOFTENED;
	if (!gh->given)
		return;
	if (gh->value < 2 && p->contents.na_mg_l > 60)
		p->unusual |= TS_UNUSUAL_SOFTENED;
	if (!kh->given)
		return;
	/* The figure and not its doubt: a strip's 0 may be 2, and is what softened water reads. */
	none = (gh->exposure ? gh->high : gh->value) < practice[TS_P_SOFTENED_GH] &&
	       kh->value > practice[TS_P_SOFTENED_KH];
	apart = gh->value <= HALF_SOFTENED_GH_DH ? kh->value - gh->value : 0;
	sodium = sodium_for_hardness(p);
	if (p->unusual & TS_UNUSUAL_SOFTENED || sodium == 0)
		return;
	if (sodium == 1 && (none || (apart >= SODIUM_APART_DH && kh->value >= 2 * gh->value)))
		p->unusual |= TS_UNUSUAL_SOFTENED;
	else if (sodium < 0 && (none || (apart >= HALF_SOFTENED_APART_DH &&
						kh->value >= HALF_SOFTENED_TIMES * gh->value)))
		p->unusual |= TS_UNUSUAL_MAYBE_SOFTENED;
}

static void note_unusual(struct work *w)
{
	struct ts_profile *p = &w->p;
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];

	if (ts_water_is_bare(gh->given ? gh->value : (double)NAN,
		    kh->given ? kh->value : (double)NAN, p->contents.conductivity_us_cm) ||
		(!kh->given && p->gh_bound.given && p->gh_bound.high < BARE_BOUND_DH))
		p->unusual |= TS_UNUSUAL_BARE;
	/* Brackish water has more of it, by its salt. */
	if ((gh->given && gh->value - ts_contents_gh_of_salt(p, w->practice->value[TS_P_SALT_FRESH])
						  .value >
				  TS_DEGREES_HIGH_DH) ||
		(kh->given && kh->value > TS_DEGREES_HIGH_DH))
		p->unusual |= TS_UNUSUAL_DEGREES;
	note_softened(w);
	if (gh->given && kh->given && kh->low > gh->high &&
		!(p->unusual & (TS_UNUSUAL_SOFTENED | TS_UNUSUAL_MAYBE_SOFTENED)))
		p->unusual |= TS_UNUSUAL_KH_OVER_GH;
}

/* What a tank of this GH and KH runs at; false where its pH does not follow from KH. */
static bool tank_ph(const struct ts_profile *p, double gh_dh, double kh_dh, double ret[3])
{
	const struct ts_span *temp = &p->at[TS_TEMPERATURE];
	struct ts_profile of = *p;
	struct ts_solution s;
	unsigned assumed;

	of.contents.no3_mg_l = (double)NAN; /* see of_gas() */
	of.at[TS_GH].value = gh_dh;
	of.at[TS_KH].value = kh_dh;
	of.at[TS_KH].given = true;
	return ts_solution_from_profile(&of, temp->given ? temp->value : TS_TANK_TEMPERATURE_C, &s,
		       &assumed) == TS_OK &&
	       ts_chem_tank_ph(&s, &ret[0], &ret[1], &ret[2]) == TS_OK;
}

/* The tank's pH from KH; where KH is wide, from both its ends. */
static void compute_tank_ph(struct work *w)
{
	struct ts_profile *p = &w->p;
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];
	double middle[3], end[3];
	bool one_sided;

	if (!kh->given)
		return;
	if (!tank_ph(p, gh->value, kh->value, middle)) {
		p->unusual |= TS_UNUSUAL_NO_PH_FROM_KH;
		return;
	}
	p->ph_tank_low = middle[0];
	p->ph_tank = middle[1];
	p->ph_tank_high = middle[2];
	w->middle_low = middle[0];
	w->middle_high = middle[2];
	/* "<1 dH" has no figure but its end, whatever is taken for it. */
	one_sided = kh->low <= 0 && 2 * kh->value <= kh->high;
	if (!kh->exposure && !one_sided && kh->high - kh->low <= WIDE_DH)
		return;
	if (tank_ph(p, gh->low, kh->low, end)) {
		p->ph_tank_low = fmin(p->ph_tank_low, end[0]);
	} else {
		p->unusual |= TS_UNUSUAL_NO_PH_FROM_KH;
		p->ph_tank_low = fmin(p->ph_tank_low, w->practice->value[TS_P_PH_FLOOR]);
	}
	if (tank_ph(p, gh->high, kh->high, end))
		p->ph_tank_high = fmax(p->ph_tank_high, end[2]);
}

/* The computed pH in place of one that gas makes meaningless, or of none. */
static void take_computed(struct ts_profile *p)
{
	p->ph_computed = true;
	p->at[TS_PH] = (struct ts_span){true, false, p->ph_tank, p->ph_tank_low, p->ph_tank_high,
		TS_FROM_RESULT, p->at[TS_KH].age_days};
}

/*
 * The pH that animals will meet. A tank's own counts as read, and so does that of a sample that
 * stood. One of a supply that does not say so lies between what was read and what a tank of this
 * KH usually runs at; where it was much gas, or lime, the computed one counts.
 */
static void settle_ph(struct work *w)
{
	struct ts_profile *p = &w->p;
	struct ts_span *ph = &p->at[TS_PH];
	bool apart, gas;

	if (isnan(p->ph_tank) || (ph->given && ph->from >= TS_FROM_STOOD))
		return;
	/* By the figure and not by its doubt, which would make gas of one and not of another. */
	gas = p->at[TS_KH].value >= CO2_TELLS_KH_DH && ph->value < w->middle_low &&
	      !(w->co2_mg_l < w->practice->value[TS_P_CO2_DANGER]);
	apart = ph->given && (gas || ph->value > w->middle_high + LIMED_BY);
	/* What contradicts its KH altogether is no gas, and in bare water pH means nothing. */
	if (apart && !(p->unusual & (TS_UNUSUAL_PH_AGAINST_KH | TS_UNUSUAL_BARE)))
		p->unusual |= p->ph_read < p->ph_tank ? TS_UNUSUAL_GASSY : TS_UNUSUAL_LIMED;
	if (!ph->given || ph->from == TS_FROM_FRESH || apart) {
		take_computed(p);
		return;
	}
	ph->low = fmin(fmax(ph->low, fmin(p->ph_tank_low, ph->value)), p->ph_tank);
	ph->high = fmax(fmin(ph->high, fmax(p->ph_tank_high, ph->value)), p->ph_tank);
	ph->exposure = false;
}

/* KH was not read: what it and the pH may be by GH. Nothing that is sure follows from either. */
static void assume_kh(struct work *w)
{
	struct ts_profile *p = &w->p;
	const struct ts_span *gh = &p->at[TS_GH];
	struct ts_span *ph = &p->at[TS_PH], *kh = &p->kh_assumed;
	double floor = w->practice->value[TS_P_PH_FLOOR], least[3], most[3];
	double black = w->practice->value[TS_P_PH_FLOOR_BLACK], end[3];

	/* So little buffer that no pH follows from it: anything down to that of black water. */
	if (!ph->given && p->unusual & TS_UNUSUAL_NO_PH_FROM_KH && isnan(p->ph_tank))
		p->ph_assumed = (struct ts_span){
			true, false, (black + 7) / 2, black, 7, TS_FROM_ASSUMED, (double)NAN};
	if (p->at[TS_KH].given || !gh->given)
		return;
	*kh = (struct ts_span){.given = true,
		.low = KH_OF_GH_LEAST * gh->low,
		.high = KH_OF_GH_MOST * gh->high,
		.from = TS_FROM_ASSUMED,
		.age_days = (double)NAN};
	kh->value = (kh->low + kh->high) / 2;
	if (!tank_ph(p, gh->low, kh->low, least))
		least[0] = floor;
	if (!tank_ph(p, gh->high, kh->high, most))
		most[1] = most[2] = 7; /* hardly any buffer at all */
	/* Lime that falls out lowers it again: it may be highest between the ends. */
	for (double dh = ceil(gh->low); dh < fmin(gh->high, TS_DEGREES_HIGH_DH); dh++) {
		if (tank_ph(p, dh, KH_OF_GH_MOST * dh, end)) {
			most[1] = fmax(most[1], end[1]);
			most[2] = fmax(most[2], end[2]);
		}
	}
	if (!ph->given)
		p->ph_assumed = (struct ts_span){true, false, (least[0] + most[2]) / 2, least[0],
			fmax(least[0], most[2]), TS_FROM_RESULT, (double)NAN};
	else if (ph->from < TS_FROM_STOOD)
		ph->high = fmax(ph->high, most[1]);
}

/* Un-ionised ammonia at the pH and temperature that count. */
static void find_nh3(struct work *w)
{
	struct ts_profile *p = &w->p;
	double temp =
		p->at[TS_TEMPERATURE].given ? p->at[TS_TEMPERATURE].value : p->contents.temp_c;
	double share;

	if (isnan(temp))
		temp = TS_TANK_TEMPERATURE_C;
	if (!p->at[TS_PH].given || ts_chem_nh3_fraction(p->at[TS_PH].value, temp, &share) != TS_OK)
		return;
	p->poisons.nh3_n_mg_l = share * p->poisons.tan_mg_l;
	if (p->poisons.nh3_n_mg_l >= w->practice->value[TS_P_NH3_CONFLICT])
		p->poisons.found |= TS_POISON_AMMONIA;
}

/*
 * What pH and gas are reckoned from: without nitrate, which gathers in a tank and is no part of its
 * buffer. It would move a computed pH by hundredths, so that more of it would look better.
 */
static bool of_gas(const struct ts_profile *p, double temp, struct ts_solution *ret)
{
	struct ts_profile of = *p;
	unsigned assumed;

	of.contents.no3_mg_l = (double)NAN;
	return ts_solution_from_profile(&of, temp, ret, &assumed) == TS_OK;
}

static void find_doubts(struct work *w)
{
	struct ts_solution s, gas;
	unsigned assumed = 0;
	/* As it was sampled: what a tank runs at is no matter of whether its readings agree. */
	double temp = isnan(w->p.contents.temp_c) ? TS_TANK_TEMPERATURE_C : w->p.contents.temp_c;
	enum ts_status status = ts_solution_from_profile(&w->p, temp, &s, &assumed);

	if (status == TS_OK && !of_gas(&w->p, temp, &gas))
		gas = s;
	w->p.unusual |= ts_profile_doubts(w->water, &w->p, status == TS_OK ? &s : NULL,
		status == TS_OK ? &gas : NULL, assumed);
	w->co2_mg_l = (double)NAN;
	if (status == TS_OK && !isnan(w->p.ph_read) &&
		ts_chem_co2_from_ph(&gas, w->p.ph_read, &w->co2_mg_l) == TS_OK)
		w->co2_mg_l = ts_chem_co2_mg_l_from_mmol_l(w->co2_mg_l);
}

static void open_profile(struct work *w)
{
	const double no = (double)NAN;
	struct ts_profile *p = &w->p;

	*p = (struct ts_profile){.acids = w->keeping->acids,
		.ph_read = no,
		.ph_read_low = no,
		.ph_read_high = no,
		.ph_fresh = no,
		.gh_before_dh = no,
		.kh_before_dh = no,
		.before_day = no,
		.ph_tank_low = no,
		.ph_tank = no,
		.ph_tank_high = no,
		.kh_assumed = {.age_days = no},
		.ph_assumed = {.age_days = no},
		.gh_bound = {.age_days = no},
		.poisons = {0, no, no, no, no, no, no, no, no}};
	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		p->at[i].age_days = no;
		ts_spread_open(&w->of[i]);
	}
	for (int i = 0; i < TS_FROM__COUNT; i++)
		ts_spread_open(&w->ph[i]);
}

void ts_profile_make(const struct ts_water *water, const struct ts_keeping *keeping,
	const struct ts_practice *practice, long today, struct ts_profile *ret)
{
	struct ts_practice own;
	struct work w = {.water = water, .keeping = keeping, .practice = &own, .today = today};

	ts_practice_defaults(&own);
	if (practice)
		w.practice = practice;
	open_profile(&w);
	take_readings(&w);
	choose_ph(&w);
	take_temperature(&w);
	ts_contents_read(water, &keeping->temperature, w.practice, &w.p);
	take_salt(&w);
	w.p.gh_bound = ts_contents_hardness(water, &w.p);
	note_unusual(&w);
	find_doubts(&w);
	compute_tank_ph(&w);
	w.p.co2_tells = w.p.at[TS_PH].from == TS_FROM_TANK && w.p.at[TS_KH].given &&
			w.p.at[TS_KH].value >= CO2_TELLS_KH_DH && !keeping->acids;
	settle_ph(&w);
	assume_kh(&w);
	find_nh3(&w);
	*ret = w.p;
}
