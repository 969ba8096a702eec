/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Three rising limits a poison. Fixed ones come from the practice table; those of total ammonia
 * and nitrite are computed in the chemistry room.
 */
#include "water/dangers.h"

#include "chem/ammonia.h"
#include "chem/nitrogen.h"
#include "model/practice.h"

/* Un-ionised ammonia that is a concern, mg/L N (published, figure recalled, not re-checked). */
#define NH3_CONCERN_MG_L 0.01
/* From this many times the chronic criterion on total ammonia is a danger now (estimate). */
#define CCC_TIMES_NOW 2.5
/* US EPA acute criterion for chlorine in fresh water, mg/L (from memory). */
#define CHLORINE_ACUTE_MG_L 0.019
/* Drinking-water limits: EU 2020/2184 nitrite 0.50 mg/L; WHO copper 2 mg/L (both from memory). */
#define DRINKING_NO2_MG_L 0.5
#define DRINKING_COPPER_MG_L 2.0

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)

/* Limits of concern, conflict and now; INFINITY where there is none. */
static struct ts_water_danger against(double value, double concern, double conflict, double now)
{
	struct ts_water_danger d = {TS_DANGER_NONE, value, concern};

	if (value >= concern)
		d = (struct ts_water_danger){TS_DANGER_CONCERN, value, concern};
	if (value >= conflict)
		d = (struct ts_water_danger){TS_DANGER_CONFLICT, value, conflict};
	if (value >= now)
		d = (struct ts_water_danger){TS_DANGER_NOW, value, now};
	return d;
}

/* The same for what must not fall: less is worse. */
static struct ts_water_danger below(double value, double concern, double conflict, double now)
{
	struct ts_water_danger d = against(-value, -concern, -conflict, -now);

	d.value = value;
	d.limit = -d.limit;
	return d;
}

static double bounded(double value, double low, double high)
{
	return fmin(fmax(value, low), high);
}

/* Total ammonia: any is trouble of the filter; the criterion where pH is known. */
static struct ts_water_danger judge_tan(
	double tan_mg_l, double ph, double temp_c, const double *practice)
{
	double ccc = (double)INFINITY;

	if (!isnan(ph) && !isnan(temp_c) &&
		ts_chem_ammonia_ccc_mg_l(bounded(ph, TS_CHEM_EPA_PH_LOW, TS_CHEM_EPA_PH_HIGH),
			bounded(temp_c, 0, TS_CHEM_EPA_TEMP_HIGH_C), &ccc) != TS_OK)
		ccc = (double)INFINITY;
	return against(tan_mg_l, fmin(practice[TS_P_TAN_DANGER], ccc), ccc, CCC_TIMES_NOW * ccc);
}

static struct ts_water_danger judge_nitrite(double no2_mg_l, double cl_mg_l)
{
	double concern, conflict;

	ts_chem_nitrite_limits(isnan(cl_mg_l) ? -1 : cl_mg_l, &concern, &conflict);
	return against(no2_mg_l / NO2_PER_N, concern, conflict, (double)INFINITY);
}

void ts_water_judge(const struct ts_profile *profile, const struct ts_water_facts *f,
	const struct ts_practice *practice, struct ts_water_danger ret[TS_DANGER_ID__COUNT])
{
	const struct ts_poisons *p = &profile->poisons;
	const double never = (double)INFINITY;
	struct ts_practice own;
	const double *v;

	ts_practice_defaults(&own);
	v = (practice ? practice : &own)->value;
	ret[TS_D_NH3] =
		against(p->nh3_n_mg_l, NH3_CONCERN_MG_L, v[TS_P_NH3_CONFLICT], v[TS_P_NH3_NOW]);
	ret[TS_D_TAN] = judge_tan(p->tan_mg_l,
		profile->at[TS_PH].given ? profile->at[TS_PH].value : f->ph, f->temp_c, v);
	ret[TS_D_NITRITE] = judge_nitrite(p->no2_mg_l, f->cl_mg_l);
	ret[TS_D_NITRATE] =
		against(p->no3_mg_l, v[TS_P_NITRATE_CONCERN], v[TS_P_NITRATE_CONFLICT], never);
	ret[TS_D_CHLORINE] =
		against(p->chlorine_mg_l, v[TS_P_CHLORINE_DANGER], CHLORINE_ACUTE_MG_L, never);
	ret[TS_D_COPPER] =
		against(p->copper_mg_l, v[TS_P_COPPER_INVERTEBRATES], v[TS_P_COPPER_FISH], never);
	ret[TS_D_OXYGEN] = below(isnan(p->oxygen_mg_l) ? p->oxygen_mg_l : f->oxygen_mg_l,
		v[TS_P_OXYGEN_CONCERN], v[TS_P_OXYGEN_CONFLICT], v[TS_P_OXYGEN_NOW]);
	ret[TS_D_CO2] = against(profile->co2_tells ? f->co2_low_mg_l : (double)NAN,
		v[TS_P_CO2_CONCERN], v[TS_P_CO2_DANGER], never);
}

unsigned ts_water_drinking(const struct ts_water *water, const struct ts_profile *profile)
{
	const struct ts_poisons *p = &profile->poisons;
	unsigned found = 0;

	if (water->kind == TS_WATER_TANK)
		return 0;
	if (p->found & TS_POISON_NITRATE)
		found |= TS_DRINKING_NITRATE;
	if (p->no2_mg_l > DRINKING_NO2_MG_L)
		found |= TS_DRINKING_NITRITE;
	if (p->copper_mg_l > DRINKING_COPPER_MG_L)
		found |= TS_DRINKING_COPPER;
	return found;
}

/* pH read in a sample that was full of gas, or limed, says little before it has aired. */
static bool ph_wants_air(const struct ts_profile *p, const struct ts_water *water)
{
	if (p->unusual & (TS_UNUSUAL_LIMED | TS_UNUSUAL_GASSY))
		return true;
	return p->ph_computed && water->kind != TS_WATER_TANK;
}

enum ts_next ts_water_next(
	const struct ts_water *water, const struct ts_profile *p, const struct ts_water_facts *f)
{
	const unsigned doubtful = TS_UNUSUAL__CONTRADICTIONS | TS_UNUSUAL_DEGREES;
	enum ts_next next = ts_profile_next(p);

	if (next != TS_NEXT_NOTHING && next != TS_NEXT_TANK_TEMPERATURE && next != TS_NEXT_PH)
		return next;
	if (f->unusual & doubtful)
		return TS_NEXT_AGAIN;
	if (water->kind == TS_WATER_TANK && isnan(p->poisons.tan_mg_l))
		return TS_NEXT_AMMONIA;
	if (water->kind == TS_WATER_TANK && isnan(p->poisons.no2_mg_l))
		return TS_NEXT_NITRITE;
	if (!p->at[TS_PH].given || isnan(f->ph))
		return TS_NEXT_PH;
	if (ph_wants_air(p, water))
		return TS_NEXT_PH_AIRED;
	if (water->kind == TS_WATER_WELL && isnan(p->poisons.no3_mg_l))
		return TS_NEXT_NITRATE;
	return TS_NEXT_NOTHING;
}
