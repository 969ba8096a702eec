/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where the tank may stand today, by the doubt of what was read: both ends from which its days to
 * come are followed.
 */
#include "chem/hardness.h"
#include "chem/ions.h"
#include "stock/waters_log.h"

#include <math.h>

#define DEVIATIONS 2.0
/* CO2 of a tank, times air, as far as drift.h takes it. */
#define CO2_LEAST 0.05
#define CO2_MOST 100.0
/* So little that the last reading alone counts, dH. */
#define LITTLE_DH 1.5

/* One end of a value today; the figure as it was read lies inside. `span`: of a reading of which
 * no day is known; NULL: there is none. */
static double end_of(
	const struct ts_fit_level *l, const struct ts_span *span, double read, bool high)
{
	double end = l->value + (high ? DEVIATIONS : -DEVIATIONS) * l->deviation;

	if (!l->known && (!span || !span->given || span->from == TS_FROM_ASSUMED))
		return read;
	if (!l->known)
		end = high ? span->high : span->low;
	return fmax(high ? fmax(end, read) : fmin(end, read), 0);
}

static void set_gh(struct ts_solution *w, double gh_dh)
{
	double hardness = w->ca_mmol_l + w->mg_mmol_l, to = ts_chem_mmol_l_from_dh(gh_dh);

	w->cl_mmol_l += 2 * fmax(to - hardness, 0);
	w->na_mmol_l += 2 * fmax(hardness - to, 0);
	if (hardness > 0) {
		w->ca_mmol_l *= to / hardness;
		w->mg_mmol_l *= to / hardness;
	} else {
		w->ca_mmol_l = to;
	}
}

static void set_kh(struct ts_solution *w, double kh_dh)
{
	double more = ts_chem_meq_l_from_dkh(kh_dh) - w->alk_meq_l;

	w->na_mmol_l += fmax(more, 0);
	w->cl_mmol_l += fmax(-more, 0);
	w->alk_meq_l += more;
}

static void set_no3(struct ts_solution *w, double no3_mg_l)
{
	double more = no3_mg_l / TS_MASS_NO3 - w->no3_mmol_l;

	w->na_mmol_l += fmax(more, 0);
	w->cl_mmol_l += fmax(-more, 0);
	w->no3_mmol_l += more;
}

/* The run with the least waste starts with the most buffer and the least nitrate, and reversed. */
void ts_waters_start_at_end(const struct ts_waters *w, int run, struct ts_drift_tank *tank)
{
	const struct ts_fit_level *levels = w->fit.level;
	struct ts_solution *s = &tank->water;
	double gh = ts_chem_dh_from_mmol_l(s->ca_mmol_l + s->mg_mmol_l);

	set_gh(s, end_of(&levels[TS_FIT_GH], &w->now.at[TS_GH], gh, run == 1));
	set_kh(s, end_of(&levels[TS_FIT_KH], &w->now.at[TS_KH],
			  ts_chem_dkh_from_meq_l(s->alk_meq_l), run == 1));
	set_no3(s, end_of(&levels[TS_FIT_NO3], NULL, s->no3_mmol_l * TS_MASS_NO3, run == 2));
}

void ts_waters_start_at_level(const struct ts_waters *w, struct ts_drift_tank *tank)
{
	double before = tank->water.alk_meq_l, times;

	if (!w->kh_rate.readings || !w->fit.level[TS_FIT_KH].known ||
		ts_chem_dkh_from_meq_l(before) < LITTLE_DH)
		return;
	set_kh(&tank->water, w->fit.level[TS_FIT_KH].value);
	if (!(before > 0) || !(tank->water.alk_meq_l > 0))
		return;
	/* The pH that was read is still that of today. */
	times = fmin(fmax(tank->water.alk_meq_l / before, CO2_LEAST / tank->co2_least),
		CO2_MOST / tank->co2_most);
	tank->co2_least *= times;
	tank->co2_usual *= times;
	tank->co2_most *= times;
}
