/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings to profile: one interval a parameter, with the doubt of the method, the spread of
 * several readings, and what is unusual about the whole. The verdicts are next door in verdict.c.
 */
#include <tapshoal/profile.h>

#include "base/date.h"
#include "chem/carbonate.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/oxygen.h"
#include "model/practice.h"
#include "water/analysis.h"

#define METHODS 6

/* Half-widths of pH by method, index enum ts_method; estimates from memory. */
static const double ph_doubt[METHODS] = {0.3, 0.5, 0.3, 0.1, 0.2, 0.2};

/* An interval around one hardness figure, by method. n drops of 1 dH mean more than n - 1. */
static void hardness_doubt(struct ts_span *s, int method)
{
	switch (method) {
	case TS_METHOD_STRIP: /* between neighbouring blocks; their usual distance, from memory */
		s->low = fmax(0, s->value - fmax(2, s->value * 0.3));
		s->high = s->value + fmax(2, s->value * 0.3);
		break;
	case TS_METHOD_LABORATORY:
		s->low = s->value * 0.97;
		s->high = s->value * 1.03;
		break;
	case TS_METHOD_UTILITY_REPORT:
		s->low = s->value * 0.85;
		s->high = s->value * 1.15;
		break;
	default:
		s->low = fmax(0, s->value - 1);
		s->high = s->value;
		break;
	}
}

static void widen(struct ts_span *s, double by)
{
	s->low = s->value - by;
	s->high = s->value + by;
}

static struct ts_span span_of(const struct ts_measure *m, enum ts_parameter p, int method,
	const struct ts_practice *practice)
{
	struct ts_span s = {m->kind != TS_MEASURE_NONE, m->kind == TS_MEASURE_RANGE, m->value,
		m->low, m->high, TS_FROM_NONE, (double)NAN};

	if (!s.given)
		return s;
	if (!isfinite(s.high))
		s.high = p == TS_PH ? 14 : fmax(practice->value[TS_P_GH_OPEN_END], s.value);
	if (!isfinite(s.low))
		s.low = 0;
	if (m->kind == TS_MEASURE_BELOW)
		s.value = (s.low + s.high) / 2;
	if (m->kind != TS_MEASURE_VALUE)
		return s;
	if (p == TS_PH)
		widen(&s, ph_doubt[method]);
	else if (p == TS_TEMPERATURE)
		widen(&s, 0.5);
	else if (p != TS_SALINITY)
		hardness_doubt(&s, method);
	return s;
}

/* Several readings: the animal meets all of them. A strip's block range is doubt, not exposure. */
static void merge(struct ts_span *into, const struct ts_span *one)
{
	if (!one->given)
		return;
	if (!into->given) {
		*into = *one;
		return;
	}
	into->low = fmin(into->low, one->low);
	into->high = fmax(into->high, one->high);
	into->value = (into->low + into->high) / 2;
	into->exposure = true;
	into->from = one->from < into->from ? one->from : into->from;
	into->age_days = fmin(into->age_days, one->age_days); /* the newest; NAN gives way */
}

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

static void add_reading(struct ts_profile *p, const struct ts_reading *r,
	enum ts_number_from origin, double age_days, const struct ts_practice *practice)
{
	struct ts_measure gh = r->gh_dh, kh = r->kh_dh;
	bool gh_computed = false, kh_computed = false;
	const struct ts_measure *all[TS_PARAMETER__COUNT] = {
		[TS_GH] = &gh,
		[TS_KH] = &kh,
		[TS_PH] = &r->ph,
		[TS_SALINITY] = &r->salinity_g_l,
	};

	if (gh.kind == TS_MEASURE_NONE) {
		gh = gh_from_ions(r);
		p->gh_from_ions |= gh_computed = gh.kind != TS_MEASURE_NONE;
	}
	if (kh.kind == TS_MEASURE_NONE && r->alkalinity_meq_l.kind != TS_MEASURE_NONE) {
		kh = kh_from_alkalinity(r);
		p->kh_from_alkalinity = kh_computed = true;
	}
	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		struct ts_span one;

		if (!all[i])
			continue;
		one = span_of(all[i], (enum ts_parameter)i, r->method, practice);
		if (r->method == TS_METHOD_STRIP)
			one.exposure = false;
		one.from = all[i] == &gh && gh_computed   ? TS_FROM_COMPUTED
			   : all[i] == &kh && kh_computed ? TS_FROM_COMPUTED
							  : origin;
		one.age_days = age_days;
		merge(&p->at[i], &one);
	}
}

/*
 * "<0.25" from a kit is its nil: only a figure, a range or ">" counts; of an open end ("2..") what
 * was written. Copper keeps both ends.
 */
static void keep_highest(double *highest, const struct ts_measure *m, double factor)
{
	double written = isfinite(m->high) ? m->high : m->value;

	if (m->kind == TS_MEASURE_NONE)
		return;
	*highest = fmax(
		isnan(*highest) ? 0 : *highest, m->kind == TS_MEASURE_BELOW ? 0 : written * factor);
}

#define NO3_PER_N (TS_MASS_NO3 / TS_WEIGHT_N)
#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)

static void find_poisons(struct ts_poisons *p, const struct ts_water *water, const double *practice)
{
	for (size_t i = 0; i < water->reading_count; i++) {
		const struct ts_reading *r = &water->readings[i];

		keep_highest(&p->tan_mg_l, &r->tan_mg_l, 1);
		keep_highest(&p->no2_mg_l, &r->no2_mg_l, 1);
		keep_highest(&p->no2_mg_l, &r->no2_n_mg_l, NO2_PER_N);
		keep_highest(&p->no3_mg_l, &r->no3_mg_l, 1);
		keep_highest(&p->no3_mg_l, &r->no3_n_mg_l, NO3_PER_N);
		keep_highest(&p->chlorine_mg_l, &r->chlorine_mg_l, 1);
		keep_highest(&p->copper_low_mg_l, &r->cu_mg_l, 1);
		if (r->cu_mg_l.kind != TS_MEASURE_NONE)
			p->copper_mg_l = fmax(isnan(p->copper_mg_l) ? 0 : p->copper_mg_l,
				isfinite(r->cu_mg_l.high) ? r->cu_mg_l.high : r->cu_mg_l.value);
	}
	p->found |= p->tan_mg_l >= practice[TS_P_TAN_DANGER] ? TS_POISON_AMMONIA : 0u;
	p->found |= p->no2_mg_l >= practice[TS_P_NITRITE_DANGER] ? TS_POISON_NITRITE : 0u;
	p->found |= p->no3_mg_l > practice[TS_P_NITRATE_DRINKING] ? TS_POISON_NITRATE : 0u;
	p->found |= p->chlorine_mg_l >= practice[TS_P_CHLORINE_DANGER] ? TS_POISON_CHLORINE : 0u;
	p->found |= p->copper_mg_l >= practice[TS_P_COPPER_INVERTEBRATES] ? TS_POISON_COPPER : 0u;
}

static void keep_lowest(double *lowest, double value)
{
	*lowest = isnan(*lowest) ? value : isnan(value) ? *lowest : fmin(*lowest, value);
}

static double low_end(const struct ts_measure *m)
{
	return m->kind == TS_MEASURE_NONE ? (double)NAN : m->low;
}

/* Oxygen of one reading in mg/L: from percent at its temperature, else the tank's, else 25 C. */
static double oxygen_mg_l(const struct ts_reading *r, const struct ts_measure *tank_temp)
{
	const struct ts_measure *temp = r->temp_c.kind != TS_MEASURE_NONE ? &r->temp_c : tank_temp;
	double full;

	if (r->oxygen_mg_l.kind != TS_MEASURE_NONE)
		return r->oxygen_mg_l.low;
	if (ts_chem_oxygen_saturation_mg_l(
		    temp->kind == TS_MEASURE_NONE ? TS_TANK_TEMPERATURE_C : temp->value, 0,
		    &full) != TS_OK)
		return (double)NAN;
	return low_end(&r->oxygen_percent) / 100 * full;
}

static void find_oxygen(struct ts_profile *p, const struct ts_water *water,
	const struct ts_measure *tank_temp, const double *practice)
{
	for (size_t i = 0; i < water->reading_count; i++) {
		const struct ts_reading *r = &water->readings[i];

		keep_lowest(&p->contents.oxygen_mg_l, low_end(&r->oxygen_mg_l));
		keep_lowest(&p->contents.oxygen_percent, low_end(&r->oxygen_percent));
		if (r->method != TS_METHOD_UTILITY_REPORT)
			keep_lowest(&p->poisons.oxygen_mg_l, oxygen_mg_l(r, tank_temp));
	}
	if (p->poisons.oxygen_mg_l < practice[TS_P_OXYGEN_CONCERN])
		p->poisons.found |= TS_POISON_NO_OXYGEN;
}

struct mean {
	double sum;
	unsigned count;
};

/* A one-sided "<" counts half of what it leaves open, a one-sided ">" its figure. */
static void mean_add(struct mean *mean, const struct ts_measure *m, double factor)
{
	if (m->kind == TS_MEASURE_NONE)
		return;
	mean->sum += factor * (m->kind == TS_MEASURE_BELOW ? m->low / 2 + m->high / 2 : m->value);
	mean->count++;
}

static double mean_of(const struct mean *mean)
{
	return mean->count ? mean->sum / mean->count : (double)NAN;
}

static void find_contents(struct ts_contents *c, const struct ts_water *water)
{
	struct mean temp = {0}, ca = {0}, mg = {0}, na = {0}, k = {0}, cl = {0}, so4 = {0},
		    no3 = {0}, phosphate = {0}, conductivity = {0};

	for (size_t i = 0; i < water->reading_count; i++) {
		const struct ts_reading *r = &water->readings[i];

		mean_add(&temp, &r->temp_c, 1);
		mean_add(&ca, &r->ca_mg_l, 1);
		mean_add(&mg, &r->mg_mg_l, 1);
		mean_add(&na, &r->na_mg_l, 1);
		mean_add(&k, &r->k_mg_l, 1);
		mean_add(&cl, &r->cl_mg_l, 1);
		mean_add(&so4, &r->so4_mg_l, 1);
		if (r->no3_mg_l.kind != TS_MEASURE_NONE)
			mean_add(&no3, &r->no3_mg_l, 1);
		else
			mean_add(&no3, &r->no3_n_mg_l, NO3_PER_N);
		mean_add(&phosphate, &r->phosphate_mg_l, 1);
		mean_add(&conductivity, &r->conductivity_us_cm, 1);
	}
	*c = (struct ts_contents){mean_of(&temp), mean_of(&ca), mean_of(&mg), mean_of(&na),
		mean_of(&k), mean_of(&cl), mean_of(&so4), mean_of(&no3), mean_of(&phosphate),
		mean_of(&conductivity), (double)NAN, (double)NAN};
}

static bool sodium_over_hardness(const struct ts_water *w, double gh_dh)
{
	for (size_t i = 0; i < w->reading_count; i++) {
		const struct ts_measure *na = &w->readings[i].na_mg_l;

		if (na->kind != TS_MEASURE_NONE && na->value > 60 && gh_dh < 2)
			return true;
	}
	return false;
}

static void note_unusual(struct ts_profile *p, const struct ts_water *w, const double *practice)
{
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH], *ph = &p->at[TS_PH];

	if (w->softened)
		p->unusual |= TS_UNUSUAL_SOFTENED;
	if (ts_water_is_bare(gh->given ? gh->value : (double)NAN,
		    kh->given ? kh->value : (double)NAN, p->contents.conductivity_us_cm))
		p->unusual |= TS_UNUSUAL_BARE;
	if (gh->given && sodium_over_hardness(w, gh->value))
		p->unusual |= TS_UNUSUAL_SOFTENED;
	if (!kh->given)
		return;
	/* The figure and not its doubt: a strip's 0 may be 2, and is what softened water reads. */
	if (gh->given && (gh->exposure ? gh->high : gh->value) < practice[TS_P_SOFTENED_GH] &&
		kh->value > practice[TS_P_SOFTENED_KH])
		p->unusual |= TS_UNUSUAL_SOFTENED;
	if (gh->given && kh->low > gh->high)
		p->unusual |= TS_UNUSUAL_KH_OVER_GH;
	if (ph->given && ph->value > practice[TS_P_LIMED_PH] && kh->value < practice[TS_P_LIMED_KH])
		p->unusual |= TS_UNUSUAL_LIMED;
	if (ph->given && ph->value < practice[TS_P_GASSY_PH] && kh->value > practice[TS_P_GASSY_KH])
		p->unusual |= TS_UNUSUAL_GASSY;
}

/* One end of a changing supply: the tank's pH with its KH and GH there. */
static void widen_tank_ph(struct ts_profile *p, double temp_c, double gh_dh, double kh_dh)
{
	struct ts_profile end = *p;
	struct ts_solution s;
	double low, middle, high;
	unsigned assumed;

	end.at[TS_GH].value = gh_dh;
	end.at[TS_KH].value = kh_dh;
	if (ts_solution_from_profile(&end, temp_c, &s, &assumed) != TS_OK ||
		ts_chem_tank_ph(&s, &low, &middle, &high) != TS_OK) {
		p->unusual |= TS_UNUSUAL_NO_PH_FROM_KH;
		return;
	}
	p->ph_tank_low = fmin(p->ph_tank_low, low);
	p->ph_tank_high = fmax(p->ph_tank_high, high);
}

/* What a tank of this water will run at, from KH; replaces a reading that gas makes meaningless. */
static void compute_ph(struct ts_profile *p, bool fresh)
{
	struct ts_solution s;
	double temp_c =
		p->at[TS_TEMPERATURE].given ? p->at[TS_TEMPERATURE].value : TS_TANK_TEMPERATURE_C;
	unsigned assumed;

	if (!p->at[TS_KH].given)
		return;
	if (ts_solution_from_profile(p, temp_c, &s, &assumed) != TS_OK ||
		ts_chem_tank_ph(&s, &p->ph_tank_low, &p->ph_tank, &p->ph_tank_high) != TS_OK) {
		p->unusual |= TS_UNUSUAL_NO_PH_FROM_KH;
		return;
	}
	if (p->at[TS_KH].exposure) {
		widen_tank_ph(p, temp_c, p->at[TS_GH].low, p->at[TS_KH].low);
		widen_tank_ph(p, temp_c, p->at[TS_GH].high, p->at[TS_KH].high);
	}
	if (!fresh && !(p->unusual & (TS_UNUSUAL_LIMED | TS_UNUSUAL_GASSY)))
		return;
	p->ph_computed = true;
	p->at[TS_PH] = (struct ts_span){true, false, p->ph_tank, p->ph_tank_low, p->ph_tank_high,
		TS_FROM_COMPUTED, p->at[TS_KH].age_days};
}

/* The sample's temperature meets an animal only where the sample is the tank itself. */
static void take_temperature(struct ts_profile *p, const struct ts_water *water,
	const struct ts_keeping *keeping, long today, const struct ts_practice *practice)
{
	struct ts_span *temp = &p->at[TS_TEMPERATURE];

	if (keeping->temperature.kind != TS_MEASURE_NONE) {
		*temp = span_of(&keeping->temperature, TS_TEMPERATURE, 0, practice);
		temp->from = TS_FROM_TANK;
		return;
	}
	for (size_t i = 0; water->kind == TS_WATER_TANK && i < water->reading_count; i++) {
		struct ts_span one =
			span_of(&water->readings[i].temp_c, TS_TEMPERATURE, 0, practice);

		one.from = TS_FROM_TANK;
		one.age_days = age_of(&water->readings[i], today);
		merge(temp, &one);
	}
}

void ts_profile_make(const struct ts_water *water, const struct ts_keeping *keeping,
	const struct ts_practice *practice, long today, struct ts_profile *ret)
{
	struct ts_practice own;
	struct ts_profile p = {.ph_read = (double)NAN,
		.ph_read_low = (double)NAN,
		.ph_read_high = (double)NAN,
		.ph_tank_low = (double)NAN,
		.ph_tank = (double)NAN,
		.ph_tank_high = (double)NAN,
		.poisons = {0, (double)NAN, (double)NAN, (double)NAN, (double)NAN, (double)NAN,
			(double)NAN, (double)NAN}};

	ts_practice_defaults(&own);
	if (!practice)
		practice = &own;
	for (int i = 0; i < TS_PARAMETER__COUNT; i++)
		p.at[i].age_days = (double)NAN;
	for (size_t i = 0; i < water->reading_count; i++) {
		const struct ts_reading *r = &water->readings[i];

		add_reading(&p, r, origin_of(r, water->kind, keeping->fresh), age_of(r, today),
			practice);
	}
	take_temperature(&p, water, keeping, today, practice);
	if (!p.at[TS_SALINITY].given)
		p.at[TS_SALINITY] =
			(struct ts_span){true, false, practice->value[TS_P_SALT_FRESH] / 2, 0,
				practice->value[TS_P_SALT_FRESH], TS_FROM_ASSUMED, (double)NAN};
	if (p.at[TS_PH].given) {
		p.ph_read = p.at[TS_PH].value;
		p.ph_read_low = p.at[TS_PH].low;
		p.ph_read_high = p.at[TS_PH].high;
	}
	find_contents(&p.contents, water);
	note_unusual(&p, water, practice->value);
	find_poisons(&p.poisons, water, practice->value);
	find_oxygen(&p, water, &keeping->temperature, practice->value);
	compute_ph(&p, keeping->fresh);
	*ret = p;
}
