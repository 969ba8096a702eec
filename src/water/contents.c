/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One pass over the readings for each kind: poisons count their highest, oxygen its lowest, ions
 * their mean.
 */
#include "water/contents.h"

#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/oxygen.h"
#include "chem/salinity.h"
#include "model/practice.h"
#include "water/analysis.h"
#include "water/newest.h"

/*
 * The least that home kits tell from nothing, in the unit of the reading: "<0.25" of ammonia is
 * such a kit's nil, "<5 mg/L N" of nitrate is none, and counts to its open end (kits as they are
 * usual; common practice, no source).
 */
#define NIL_TAN_MG_L 0.25
#define NIL_NO2_MG_L 0.3
#define NIL_NO3_MG_L 12.5
#define NIL_CHLORINE_MG_L 0.5

/* Of an open end ("2..") what was written; copper keeps both ends. */
static void keep_highest(double *highest, const struct ts_measure *m, double factor, double nil)
{
	double written = factor * (isfinite(m->high) ? m->high : m->value);

	if (m->kind == TS_MEASURE_NONE)
		return;
	if (m->kind == TS_MEASURE_BELOW && written <= nil)
		written = 0;
	*highest = fmax(isnan(*highest) ? 0 : *highest, written);
}

#define NO3_PER_N (TS_MASS_NO3 / TS_WEIGHT_N)
#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)

static void find_poisons(struct ts_poisons *p, const struct ts_water *water, const double *practice)
{
	for (size_t i = 0; i < water->reading_count; i++) {
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(water, i, &scratch);

		keep_highest(&p->tan_mg_l, &r->tan_mg_l, 1, NIL_TAN_MG_L);
		keep_highest(&p->no2_mg_l, &r->no2_mg_l, 1, NIL_NO2_MG_L);
		keep_highest(&p->no2_mg_l, &r->no2_n_mg_l, NO2_PER_N, NIL_NO2_MG_L);
		keep_highest(&p->no3_mg_l, &r->no3_mg_l, 1, NIL_NO3_MG_L);
		keep_highest(&p->no3_mg_l, &r->no3_n_mg_l, NO3_PER_N, NIL_NO3_MG_L);
		keep_highest(&p->chlorine_mg_l, &r->chlorine_mg_l, 1, NIL_CHLORINE_MG_L);
		keep_highest(&p->copper_low_mg_l, &r->cu_mg_l, 1, (double)INFINITY);
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
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(water, i, &scratch);

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
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(water, i, &scratch);

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

void ts_contents_read(const struct ts_water *water, const struct ts_measure *tank_temp,
	const struct ts_practice *practice, struct ts_profile *io)
{
	find_contents(&io->contents, water);
	find_poisons(&io->poisons, water, practice->value);
	find_oxygen(io, water, tank_temp, practice->value);
}

/* Conductivity that a degree of hardness makes, uS/cm at 25 C, and solids, mg/L: least and most. */
#define EC_PER_DH_LEAST 25.0
#define EC_PER_DH_MOST 35.0
#define SOLIDS_PER_DH_LEAST 18.0
#define SOLIDS_PER_DH_MOST 30.0
/* Degrees that a water may have in which neither GH nor KH was read (estimate from memory). */
#define UNREAD_DH 30.0
/* Salt of sea water for each gram of its chloride (Knudsen's relation), and sodium as its salt. */
#define SALT_PER_CL 1.80655
#define SALT_PER_NA ((TS_WEIGHT_NA + TS_WEIGHT_CL) / TS_WEIGHT_NA)

/* Beyond what the scale reaches. */
#define SALT_MOST_G_L 50.0

struct salt {
	double low, high;
};

static void at_least(struct salt *salt, double low, double high)
{
	salt->low = fmax(salt->low, low);
	salt->high = fmax(salt->high, high);
}

static double of_conductivity(double us_cm)
{
	double g_l = ts_chem_salinity_from_conductivity_g_l(fmax(0, us_cm));

	return isnan(g_l) ? SALT_MOST_G_L : g_l;
}

struct ts_span ts_contents_salt(
	const struct ts_water *water, const struct ts_profile *p, double fresh_g_l)
{
	const struct ts_span *gh = &p->at[TS_GH], *kh = &p->at[TS_KH];
	bool known = gh->given || kh->given;
	double dh = fmax(gh->given ? gh->value : 0, kh->given ? kh->value : 0);
	double most_dh = known ? dh : UNREAD_DH;
	struct salt salt = {0, 0};
	struct ts_span none = {.age_days = (double)NAN};

	for (size_t i = 0; i < water->reading_count; i++) {
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(water, i, &scratch);
		double tds = r->tds_mg_l.value, ec = r->conductivity_us_cm.value;

		if (r->conductivity_us_cm.kind != TS_MEASURE_NONE)
			at_least(&salt, of_conductivity(ec - EC_PER_DH_MOST * most_dh),
				of_conductivity(ec - EC_PER_DH_LEAST * dh));
		if (r->tds_mg_l.kind != TS_MEASURE_NONE)
			at_least(&salt, (tds - SOLIDS_PER_DH_MOST * most_dh) / 1000,
				(tds - SOLIDS_PER_DH_LEAST * dh) / 1000);
		if (r->cl_mg_l.kind != TS_MEASURE_NONE)
			at_least(&salt, SALT_PER_CL * r->cl_mg_l.value / 1000,
				SALT_PER_CL * r->cl_mg_l.value / 1000);
		else if (r->na_mg_l.kind != TS_MEASURE_NONE)
			at_least(&salt, 0, SALT_PER_NA * r->na_mg_l.value / 1000);
	}
	if (!(salt.high > fresh_g_l))
		return none;
	return (struct ts_span){true, false, (salt.low + salt.high) / 2, salt.low, salt.high,
		TS_FROM_COMPUTED, (double)NAN};
}

/* What a degree makes usually, and the part of conductivity that a pen shows as solids, at least:
 * estimates from memory. */
#define EC_PER_DH_USUAL 33.0
#define SOLIDS_PEN_LEAST 0.5
#define SOLIDS_PEN_USUAL 0.6

struct ts_span ts_contents_hardness(const struct ts_water *water, const struct ts_profile *p)
{
	double most = (double)INFINITY, usual = (double)NAN;
	struct ts_span none = {.age_days = (double)NAN};

	if (p->at[TS_GH].given || p->unusual & TS_UNUSUAL_SALTY)
		return none;
	for (size_t i = 0; i < water->reading_count; i++) {
		struct ts_reading scratch;
		const struct ts_reading *r = ts_reading_counted(water, i, &scratch);
		double ec = (double)NAN, high = (double)NAN;

		if (r->conductivity_us_cm.kind != TS_MEASURE_NONE) {
			ec = r->conductivity_us_cm.value;
			high = r->conductivity_us_cm.high / EC_PER_DH_LEAST;
		} else if (r->tds_mg_l.kind != TS_MEASURE_NONE) {
			ec = r->tds_mg_l.value / SOLIDS_PEN_USUAL;
			high = r->tds_mg_l.high / SOLIDS_PEN_LEAST / EC_PER_DH_LEAST;
		}
		if (isnan(ec) || !isfinite(high) || !(high < most))
			continue;
		most = high;
		usual = ec / EC_PER_DH_USUAL;
	}
	if (isnan(usual))
		return none;
	return (struct ts_span){
		true, false, fmin(usual, most), 0, most, TS_FROM_COMPUTED, (double)NAN};
}

/*
 * GH of a g/L of sea salt, dH: sea water of 35.2 g/L holds 0.0103 mol of calcium and 0.0528 of
 * magnesium in a kilogram (reference composition of sea water, from memory).
 */
#define SEA_GH_DH 10.1
/* As of brines and salts for tanks that differ, share of it. */
#define SEA_DOUBT 0.2

struct ts_span ts_contents_gh_of_salt(const struct ts_profile *profile, double fresh_g_l)
{
	const struct ts_span *salt = &profile->at[TS_SALINITY];

	if (!salt->given || salt->from == TS_FROM_ASSUMED || !(salt->low > fresh_g_l))
		return (struct ts_span){.given = false};
	return (struct ts_span){true, salt->exposure, SEA_GH_DH * (salt->value - fresh_g_l),
		(1 - SEA_DOUBT) * SEA_GH_DH * (salt->low - fresh_g_l),
		(1 + SEA_DOUBT) * SEA_GH_DH * (salt->high - fresh_g_l), TS_FROM_COMPUTED,
		(double)NAN};
}

bool ts_contents_sea_gh(struct ts_profile *io, double fresh_g_l)
{
	struct ts_span *gh = &io->at[TS_GH];
	const struct ts_span *salt = &io->at[TS_SALINITY];

	if (gh->given || !salt->given || salt->from == TS_FROM_ASSUMED || !(salt->low > fresh_g_l))
		return false;
	*gh = (struct ts_span){true, false, SEA_GH_DH * salt->value,
		(1 - SEA_DOUBT) * SEA_GH_DH * salt->low, (1 + SEA_DOUBT) * SEA_GH_DH * salt->high,
		TS_FROM_ASSUMED, (double)NAN};
	return true;
}
