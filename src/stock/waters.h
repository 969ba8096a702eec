/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One tank, three waters: what it is *now* (the newest reading of each value), what is *poured in*,
 * and where feed, plants, water changes, evaporation and top-up let it *settle*. Every answer about
 * a plan asks here, so that none contradicts another: residents live in the water of now and are
 * told where it goes; animals that are only planned will live in the settled one.
 */
#ifndef TS_STOCK_WATERS_H
#define TS_STOCK_WATERS_H

#include "stock/fit.h"
#include "stock/plan_drift.h"
#include "water/now.h"

/* Where a routine leads, at the waste that is expected and at the least and most that it may be. */
struct ts_settled {
	/* Before a water change, once nothing moves from one to the next; NAN: not known. Where no
	 * water is changed nothing settles, and they are the values after settled.days (practice).
	 */
	struct ts_estimate gh_dh, kh_dh, no3_mg_l, ph;
	bool no_end;
	/* Days until KH is below the floor, by this routine and where water is no longer changed.
	 * INFINITY: not within settled.days; NAN: not known. `low` is the soonest. */
	struct ts_estimate buffer_days, reserve_days;
};

/* Filled in place: it points into itself and stays where it is. */
struct ts_waters {
	struct ts_now log;         /* of the tank's own readings */
	struct ts_water tank;      /* them as a water */
	struct ts_profile now;     /* with gaps filled by what is poured in */
	unsigned as_poured;        /* bits 1 << enum ts_parameter: filled so */
	bool never_read;           /* the tank: it is taken as what is poured in */
	struct ts_profile poured;  /* at the tank's temperature */
	struct ts_profile settled; /* as `poured` where nothing is known of where it goes */
	bool settled_known;
	struct ts_settled settles;
	struct ts_load load; /* its buffer and steady values are those of `settles` */
	bool load_known;     /* the litres are */
	struct ts_past past; /* what was done to the tank, by its log */
	struct ts_fit fit;   /* all that the log teaches */
	/* Of it what counts before the model; readings 0: too thin. */
	struct ts_rate gh_rate, kh_rate, no3_rate;
	struct ts_estimate measured; /* rise of nitrate, mg/L a week, where no3_rate tells it */
	double measured_times; /* all animals beside those that it was read of, by their waste */
	/* The log moves as no tank of this routine and supply does: one of them is another. */
	bool strange;
	struct ts_plan_drift drift; /* the tank made ready for a simulation */
	bool drift_known;
};

/* What is asked about. */
struct ts_waters_case {
	const struct ts_plan *plan;
	const struct ts_group *groups; /* all its animals as adults, those planned too */
	size_t group_count;
	long today; /* days since 1970-01-01; -1: not known, then readings are of today */
	/* Of each line of the plan's stock; NULL, or a line's NULL: not known. Animals that came
	 * and went are then left aside. */
	const struct ts_species *const *species;
};

/* `practice` NULL: the table's own values. Never fails: what is missing is not known. */
void ts_waters_make(const struct ts_waters_case *asked, const struct ts_practice *practice,
	struct ts_waters *ret);

/* The same from what ts_waters_now() said of this plan, or of one with the same water and day. */
void ts_waters_make_from(const struct ts_waters *now, const struct ts_waters_case *asked,
	const struct ts_practice *practice, struct ts_waters *ret);

/* Now and poured in alone, without animals and where it goes: a tenth of the work. */
void ts_waters_now(const struct ts_plan *plan, long today, const struct ts_practice *practice,
	struct ts_waters *ret);

/*
 * The tank of one of the three runs behind `settles`, of waters whose drift is known: 0 with the
 * waste that is expected, 1 with the least and 2 with the most, its filter matured.
 */
void ts_waters_run(const struct ts_waters *waters, int run, struct ts_drift_tank *ret);

/* Puts the buffer where all readings together have it, and not the last drop alone: so the days
 * until it is gone are counted. */
void ts_waters_start_at_level(const struct ts_waters *waters, struct ts_drift_tank *io);

/*
 * How far the KH of a log lies above what its kit tells, in the middle: four drops are more than
 * three and no more than four, in the tank as in the supply. By so much sooner a buffer that was
 * followed is gone.
 */
double ts_waters_kh_over(const struct ts_waters *waters);

/* How a tank is to settle. */
struct ts_bearing {
	double no3_mg_l;    /* nitrate before a change, at the most */
	double buffer_days; /* until KH is below the floor, at the least; 0: KH is not asked for */
};

/*
 * The most nitrogen, mg/day, with which the tank of the plan settles so, as far as `most`; its
 * stock is left aside. NAN: it is not known where the tank goes.
 */
double ts_waters_bears_mg_day(const struct ts_plan *plan, long today,
	const struct ts_bearing *wanted, double most, const struct ts_practice *practice);

/* Signs of animals (algae are none) or deaths are in the plan. */
bool ts_plan_unwell(const struct ts_plan *plan);

/* mmol/L of nitrogen that end as nitrate in a day, of a rise by the week. */
double ts_net_nitrogen_mmol_l(double no3_rise_mg_l_week);

#endif
