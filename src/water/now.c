/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The newest of each value. Values that say one thing in several forms (GH or calcium with
 * magnesium, KH or alkalinity, NO3 or NO3-N) are one row and are taken together: an old calcium
 * must not outvote a new GH.
 */
#include "water/now.h"

#include <stddef.h>

#include "base/date.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/oxygen.h"
#include "model/practice.h"
#include "water/analysis.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)
#define NO3_PER_N (TS_MASS_NO3 / TS_WEIGHT_N)

/* The members of a reading that tell a value, taken together; 0 ends (pH stands first in none). */
#define M(member) offsetof(struct ts_reading, member)
#define FORMS_MOST 3

static const size_t forms[TS_NOW__COUNT][FORMS_MOST] = {
	[TS_NOW_GH] = {M(gh_dh), M(ca_mg_l), M(mg_mg_l)},
	[TS_NOW_KH] = {M(kh_dh), M(alkalinity_meq_l)},
	[TS_NOW_PH] = {M(ph)},
	[TS_NOW_TEMPERATURE] = {M(temp_c)},
	[TS_NOW_SALINITY] = {M(salinity_g_l), M(specific_gravity)},
	[TS_NOW_CONDUCTIVITY] = {M(conductivity_us_cm), M(tds_mg_l)},
	[TS_NOW_TAN] = {M(tan_mg_l)},
	[TS_NOW_NO2] = {M(no2_mg_l), M(no2_n_mg_l)},
	[TS_NOW_NO3] = {M(no3_mg_l), M(no3_n_mg_l)},
	[TS_NOW_OXYGEN] = {M(oxygen_mg_l), M(oxygen_percent)},
	[TS_NOW_CHLORINE] = {M(chlorine_mg_l)},
	[TS_NOW_COPPER] = {M(cu_mg_l)},
	[TS_NOW_CHLORIDE] = {M(cl_mg_l)},
	[TS_NOW_SODIUM] = {M(na_mg_l)},
	[TS_NOW_POTASSIUM] = {M(k_mg_l)},
	[TS_NOW_SULPHATE] = {M(so4_mg_l)},
	[TS_NOW_PHOSPHATE] = {M(phosphate_mg_l)},
};

static const struct ts_measure *at(const struct ts_reading *r, size_t offset)
{
	return (const struct ts_measure *)((const char *)r + offset);
}

static double figure(const struct ts_measure *m, double factor)
{
	return m->kind == TS_MEASURE_NONE ? (double)NAN : factor * m->value;
}

static double first(double a, double b)
{
	return isnan(a) ? b : a;
}

static double gh_of(const struct ts_reading *r)
{
	double ions = figure(&r->ca_mg_l, 1 / TS_WEIGHT_CA) + figure(&r->mg_mg_l, 1 / TS_WEIGHT_MG);

	return first(figure(&r->gh_dh, 1), ts_chem_dh_from_mmol_l(ions));
}

/* In mg/L, from percent at its temperature, else that of a warm tank. */
static double oxygen_of(const struct ts_reading *r)
{
	double temp_c = first(figure(&r->temp_c, 1), TS_TANK_TEMPERATURE_C), full;

	if (ts_chem_oxygen_saturation_mg_l(temp_c, 0, &full) != TS_OK)
		full = (double)NAN;
	return first(figure(&r->oxygen_mg_l, 1), figure(&r->oxygen_percent, full / 100));
}

double ts_reading_value(const struct ts_reading *r, enum ts_now_value value)
{
	switch (value) {
	case TS_NOW_GH:
		return gh_of(r);
	case TS_NOW_KH:
		return first(figure(&r->kh_dh, 1),
			figure(&r->alkalinity_meq_l, ts_chem_dkh_from_meq_l(1)));
	case TS_NOW_NO2:
		return first(figure(&r->no2_mg_l, 1), figure(&r->no2_n_mg_l, NO2_PER_N));
	case TS_NOW_NO3:
		return first(figure(&r->no3_mg_l, 1), figure(&r->no3_n_mg_l, NO3_PER_N));
	case TS_NOW_OXYGEN:
		return oxygen_of(r);
	default:
		return figure(at(r, forms[value][0]), 1);
	}
}

double ts_now_figure(const struct ts_now *now, enum ts_now_value value)
{
	return now->from[value].reading ? ts_reading_value(now->from[value].reading, value)
					: (double)NAN;
}

static bool day_of(const struct ts_reading *r, long *ret)
{
	return r->date && ts_date_read(r->date, ret);
}

bool ts_reading_is_ahead(const struct ts_reading *r, long today)
{
	return ts_date_is_ahead(r->date, today);
}

/* Minutes of the day; a reading without an hour is of the day's end. */
static int minute_of(const struct ts_reading *r)
{
	const char *t = r->time;

	if (!t || !t[0] || !t[1] || t[2] != ':' || !t[3] || !t[4])
		return 24 * 60;
	return ((t[0] - '0') * 10 + t[1] - '0') * 60 + (t[3] - '0') * 10 + t[4] - '0';
}

/* Whether `r`, which stands behind `from` in the log, is to be believed rather. */
static bool newer(const struct ts_reading *r, const struct ts_now_from *from)
{
	long day;

	if (!from->reading || !from->dated || !day_of(r, &day))
		return true;
	return day != from->day ? day > from->day : minute_of(r) >= minute_of(from->reading);
}

/* One figure keeps the doubt of the method with which it was read. */
static void keep_doubt(struct ts_now *now, enum ts_now_value value, struct ts_measure *into,
	enum ts_parameter parameter, const struct ts_practice *practice)
{
	const struct ts_keeping keeping = {0};
	struct ts_reading one = {0};
	struct ts_water water = {.readings = &one, .reading_count = 1};
	struct ts_profile profile;
	struct ts_span span;
	bool strip;

	if (!now->from[value].reading)
		return;
	one.method = now->from[value].reading->method;
	strip = one.method == TS_METHOD_STRIP && into->kind == TS_MEASURE_RANGE;
	if (into->kind != TS_MEASURE_VALUE && !strip)
		return;
	*(parameter == TS_GH ? &one.gh_dh : parameter == TS_KH ? &one.kh_dh : &one.ph) = *into;
	ts_profile_make(&water, &keeping, practice, -1, &profile);
	span = profile.at[parameter];
	*into = (struct ts_measure){into->value, span.low, span.high, TS_MEASURE_DOUBT};
}

static void keep_doubts(struct ts_now *now, const struct ts_practice *practice)
{
	struct ts_reading *r = &now->reading;

	if (r->gh_dh.kind != TS_MEASURE_NONE)
		keep_doubt(now, TS_NOW_GH, &r->gh_dh, TS_GH, practice);
	if (r->kh_dh.kind != TS_MEASURE_NONE)
		keep_doubt(now, TS_NOW_KH, &r->kh_dh, TS_KH, practice);
	keep_doubt(now, TS_NOW_PH, &r->ph, TS_PH, practice);
}

/* Salt by a hydrometer and solids by a meter are read, though no figure of the row's own unit is.
 */
static bool tells(const struct ts_reading *r, enum ts_now_value value)
{
	bool any = !isnan(ts_reading_value(r, value));

	for (int f = 0; value != TS_NOW_GH && f < FORMS_MOST && forms[value][f]; f++)
		any |= at(r, forms[value][f])->kind != TS_MEASURE_NONE;
	return any;
}

static void find_newest(struct ts_now *now, enum ts_now_value value,
	const struct ts_reading *readings, size_t count, long today)
{
	struct ts_now_from *from = &now->from[value];

	for (size_t i = 0; i < count; i++) {
		const struct ts_reading *r = &readings[i];

		if (!tells(r, value) || ts_reading_is_ahead(r, today) || !newer(r, from))
			continue;
		from->reading = r;
		from->dated = day_of(r, &from->day);
	}
}

void ts_now_make(const struct ts_reading *readings, size_t count, long today,
	const struct ts_practice *practice, struct ts_now *ret)
{
	struct ts_practice own;
	struct ts_now now = {0};

	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	for (size_t i = 0; i < count; i++)
		now.ahead += ts_reading_is_ahead(&readings[i], today);
	for (int v = 0; v < TS_NOW__COUNT; v++) {
		struct ts_now_from *from = &now.from[v];

		find_newest(&now, (enum ts_now_value)v, readings, count, today);
		from->age_days = from->reading && from->dated && today >= 0
					 ? (double)(today - from->day)
					 : (double)NAN;
		from->old = from->age_days > practice->value[TS_P_READING_OLD];
		now.read += from->reading != NULL;
		for (int f = 0; from->reading && f < FORMS_MOST && forms[v][f]; f++)
			*(struct ts_measure *)((char *)&now.reading + forms[v][f]) =
				*at(from->reading, forms[v][f]);
	}
	keep_doubts(&now, practice);
	*ret = now;
}

struct ts_water ts_now_water(struct ts_now *now)
{
	return (struct ts_water){
		.kind = TS_WATER_TANK, .readings = &now->reading, .reading_count = now->read > 0};
}
