/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Three courses: as read, and both ends.
 */
#include "stock/band.h"

#include <math.h>

#include "chem/hardness.h"
#include "chem/ions.h"

#define DEVIATIONS 2.0

/* One end of a value today; the figure as it was read lies inside. */
static double end_of(const struct ts_fit_level *l, double read, bool high)
{
	double end = l->value + (high ? DEVIATIONS : -DEVIATIONS) * l->deviation;

	if (!l->known)
		return read;
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
static void start_at_end(const struct ts_waters *w, int run, struct ts_drift_tank *tank)
{
	const struct ts_fit_level *levels = w->fit.level;
	struct ts_solution *s = &tank->water;
	double gh = ts_chem_dh_from_mmol_l(s->ca_mmol_l + s->mg_mmol_l);

	set_gh(s, end_of(&levels[TS_FIT_GH], gh, run == 1));
	set_kh(s, end_of(&levels[TS_FIT_KH], ts_chem_dkh_from_meq_l(s->alk_meq_l), run == 1));
	set_no3(s, end_of(&levels[TS_FIT_NO3], s->no3_mmol_l * TS_MASS_NO3, run == 2));
}

static void widen(struct ts_estimate *e, double value, bool first)
{
	if (first)
		*e = (struct ts_estimate){value, value, value};
	e->low = fmin(e->low, value);
	e->high = fmax(e->high, value);
}

enum ts_status ts_waters_bands(const struct ts_waters *waters, unsigned days,
	const struct ts_practice *practice, struct ts_drift_band *ret)
{
	enum ts_status status = TS_OK;

	for (int run = 0; run < 3 && status == TS_OK; run++) {
		struct ts_drift_tank tank;
		struct ts_drift_day day;
		struct ts_drift d;

		ts_waters_run(waters, run, &tank);
		tank.filter_share = waters->drift.tank.filter_share;
		if (run)
			start_at_end(waters, run, &tank);
		status = ts_drift_open(&tank, practice, &d);
		for (unsigned n = 0; n <= days && status == TS_OK; n++) {
			if (n)
				ts_drift_live(&d);
			ts_drift_read(&d, false, &day);
			widen(&ret[n].gh_dh, day.gh_dh, run == 0);
			widen(&ret[n].kh_dh, day.kh_dh, run == 0);
			widen(&ret[n].no3_mg_l, day.no3_mg_l, run == 0);
			ts_drift_change(&d);
		}
	}
	return status;
}
