/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A titration is the same water with more chloride (or sodium) and less (or more) alkalinity:
 * closed it keeps its carbon, aired it keeps its alkalinity. The evenings alternate the two.
 */
#include "care/titrate.h"

#include <math.h>

#include "chem/carbonate.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/substances.h"
#include "water/gas.h"

#define HALVINGS 60
#define PH_LOWEST 4.0
#define PH_HIGHEST 9.5
/* Nearer than this to the wanted pH nobody doses; no kit shows less. */
#define PH_NEAR 0.1
/* Less than this is no dose, meq/L. */
#define DOSE_LEAST 0.005
/* Evenings shown after the one that used up the buffer. */
#define EVENINGS_AFTER 1

enum ts_co2_danger ts_co2_danger(double co2_mg_l, const struct ts_practice *practice)
{
	if (co2_mg_l < practice->value[TS_P_CO2_CONCERN])
		return TS_CO2_BORNE;
	return co2_mg_l < practice->value[TS_P_CO2_DANGER] ? TS_CO2_CONCERN : TS_CO2_DANGER;
}

static enum ts_status ph_in_gas(const struct ts_solution *s, double times_air, double *ret_ph)
{
	return ts_chem_ph_at_co2(s, times_air * ts_chem_air_co2_mmol_l(s->temp_c), ret_ph);
}

static struct ts_solution with_acid(const struct ts_solution *s, double acid_meq_l)
{
	struct ts_solution dosed;

	ts_chem_dissolve(
		s, ts_chem_substance(acid_meq_l < 0 ? "NaOH" : "HCl"), fabs(acid_meq_l), &dosed);
	return dosed;
}

enum ts_status ts_titrate_step(const struct ts_solution *s, double acid_meq_l,
	double tank_times_air, const struct ts_practice *practice, struct ts_titration_step *ret)
{
	struct ts_solution dosed;
	struct ts_titration_step step = {.acid_meq_l = acid_meq_l};
	double co2_mmol_l = 0;
	enum ts_status status = ts_solution_check(s);

	if (status != TS_OK || !isfinite(acid_meq_l))
		return TS_BAD_INPUT;
	dosed = with_acid(s, acid_meq_l);
	status = ts_chem_ph_closed(&dosed, &step.ph_closed, &co2_mmol_l);
	if (status == TS_OK)
		status = ph_in_gas(&dosed, tank_times_air, &step.ph_tank);
	if (status == TS_OK)
		status = ph_in_gas(&dosed, 1, &step.ph_air);
	if (status != TS_OK)
		return status;
	step.alkalinity_meq_l = dosed.alk_meq_l;
	step.kh_dh = fmax(0, ts_chem_dkh_from_meq_l(dosed.alk_meq_l));
	step.co2_mg_l = ts_chem_co2_mg_l_from_mmol_l(co2_mmol_l);
	step.danger = ts_co2_danger(step.co2_mg_l, practice);
	*ret = step;
	return TS_OK;
}

enum ts_status ts_titrate(const struct ts_solution *s, double dose_meq_l, size_t count,
	double tank_times_air, const struct ts_practice *practice,
	struct ts_titration_step *ret_steps, size_t *ret_count)
{
	enum ts_status status = ts_titrate_step(s, 0, tank_times_air, practice, &ret_steps[0]);
	size_t done = 1;

	if (status != TS_OK || !isfinite(dose_meq_l) || dose_meq_l == 0)
		return TS_BAD_INPUT;
	while (done < count && ts_titrate_step(s, (double)done * dose_meq_l, tank_times_air,
				       practice, &ret_steps[done]) == TS_OK)
		done++;
	*ret_count = done;
	return TS_OK;
}

/* The water as the night leaves it: its alkalinity, and the carbon of the tank's usual CO2. */
static enum ts_status aired(const struct ts_solution *s, double times_air, struct ts_solution *ret)
{
	struct ts_chem_constants constants = {0};
	struct ts_ion_species species = {0};
	struct ts_solution now = *s;
	enum ts_status status;

	now.dic_mmol_l = 0;
	ts_chem_constants_at(&constants, now.temp_c);
	status = ts_chem_speciate_at_co2(
		&constants, &now, times_air * ts_chem_air_co2_mmol_l(now.temp_c), &species);
	if (status != TS_OK)
		return status;
	now.dic_mmol_l = ts_chem_species_dic_mmol_l(&species);
	*ret = now;
	return TS_OK;
}

/* pH right after a dose; too low (0) or too high (14) where the equations end. */
static double ph_after(const struct ts_solution *s, double acid_meq_l)
{
	struct ts_solution dosed = with_acid(s, acid_meq_l);
	double ph, co2;

	if (ts_chem_ph_closed(&dosed, &ph, &co2) == TS_OK)
		return ph;
	return acid_meq_l < 0 ? 14 : 0;
}

/* The dose after which closed water reads `ph`: between none and what leaves only acid or base. */
static double dose_towards(const struct ts_solution *s, double ph)
{
	bool acid = ph_after(s, 0) > ph;
	double low = 0, high = (acid ? 1 : -1) * (fabs(s->alk_meq_l) + s->dic_mmol_l + 1);

	for (int i = 0; i < HALVINGS; i++) {
		double middle = (low + high) / 2;

		if ((ph_after(s, middle) > ph) == acid)
			low = middle;
		else
			high = middle;
	}
	return low;
}

/* What the evenings share; `dose` 0: what it takes towards the wanted pH. */
struct evenings {
	const struct ts_practice *practice;
	double times_air, dose;
};

/* One evening into `water` (aired), which becomes the next morning's. */
static enum ts_status evening(const struct evenings *e, struct ts_solution *water, double dosed,
	double towards_ph, struct ts_titration_night *night)
{
	struct ts_solution after;
	enum ts_status status;

	night->dose_meq_l = e->dose != 0 ? e->dose : dose_towards(water, towards_ph);
	status = ts_titrate_step(
		water, night->dose_meq_l, e->times_air, e->practice, &night->evening);
	if (status != TS_OK)
		return status;
	night->evening.acid_meq_l = dosed + night->dose_meq_l;
	after = with_acid(water, night->dose_meq_l);
	return aired(&after, e->times_air, water);
}

static void mark_days(struct ts_titration_nights *n, const struct ts_titration_night *night,
	const struct ts_practice *practice)
{
	if (!n->floor_day && night->evening.kh_dh < practice->value[TS_P_KH_FLOOR])
		n->floor_day = night->day;
	if (!n->gone_day && night->evening.alkalinity_meq_l <= 0)
		n->gone_day = night->day;
}

static enum ts_status run_evenings(const struct ts_solution *s, double towards_ph,
	enum ts_titration_keeper keeper, struct evenings *e, struct ts_titration_nights *ret)
{
	struct ts_solution water;
	double dosed = 0;
	enum ts_status status = aired(s, e->times_air, &water);

	if (status != TS_OK)
		return status;
	ret->towards_ph = towards_ph;
	ret->ph_start = ph_after(&water, 0);
	for (unsigned day = 1; day <= TS_TITRATION_NIGHTS_MOST; day++) {
		struct ts_titration_night *night = &ret->nights[ret->count];

		night->day = day;
		status = evening(e, &water, dosed, towards_ph, night);
		if (status != TS_OK || fabs(night->dose_meq_l) < DOSE_LEAST)
			break;
		dosed += night->dose_meq_l;
		ret->count++;
		mark_days(ret, night, e->practice);
		if (ret->gone_day && day >= ret->gone_day + EVENINGS_AFTER)
			break;
		if (keeper == TS_KEEPER_SAME_DOSE)
			e->dose = night->dose_meq_l;
	}
	return ret->count ? TS_OK : TS_NO;
}

static enum ts_status given(
	enum ts_status status, const struct ts_titration_nights *n, struct ts_titration_nights *ret)
{
	if (status == TS_OK)
		*ret = *n;
	return status;
}

enum ts_status ts_titrate_nights(const struct ts_solution *s, double towards_ph,
	enum ts_titration_keeper keeper, double tank_times_air, const struct ts_practice *practice,
	struct ts_titration_nights *ret)
{
	struct evenings e = {practice, tank_times_air, 0};
	struct ts_titration_nights n = {0};
	double ph;

	if (ts_solution_check(s) != TS_OK || !(towards_ph >= PH_LOWEST) ||
		!(towards_ph <= PH_HIGHEST) || ph_in_gas(s, tank_times_air, &ph) != TS_OK)
		return TS_BAD_INPUT;
	if (fabs(ph - towards_ph) < PH_NEAR)
		return TS_NO;
	return given(run_evenings(s, towards_ph, keeper, &e, &n), &n, ret);
}

enum ts_status ts_titrate_nights_dose(const struct ts_solution *s, double dose_meq_l,
	double tank_times_air, const struct ts_practice *practice, struct ts_titration_nights *ret)
{
	struct evenings e = {practice, tank_times_air, dose_meq_l};
	struct ts_titration_nights n = {0};
	enum ts_status status;

	if (ts_solution_check(s) != TS_OK || !isfinite(dose_meq_l) || fabs(dose_meq_l) < DOSE_LEAST)
		return TS_BAD_INPUT;
	status = run_evenings(s, (double)NAN, TS_KEEPER_SAME_DOSE, &e, &n);
	n.towards_ph = n.nights[0].evening.ph_closed;
	return given(status, &n, ret);
}
