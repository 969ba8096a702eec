/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The daily balance of a tank: what feeding, the filter, plants, the bed, evaporation and water
 * changes do to the water in the days to come, and where it ends. The plan that somebody wrote
 * becomes a struct ts_drift_tank in plan_drift.c; acid against the buffer is care/titrate.h.
 *
 * A day: feed is released as ammonia, plants take their share of it, evaporated water is replaced,
 * the filter nitrifies what the pH lets it, the bed dissolves or takes up, and at the day's end
 * the water is changed where it is due. Alkalinity moves by the process table of chem/nitrogen.h.
 * All amounts are per litre of tank water. Nothing here allocates.
 */
#ifndef TS_STOCK_DRIFT_H
#define TS_STOCK_DRIFT_H

#include <tapshoal/stock.h>

#include "chem/speciation.h"
#include "model/practice.h"

/* What lies on the floor and takes part in the chemistry. */
enum ts_bed { TS_BED_INERT, TS_BED_ACTIVE_SOIL, TS_BED_ARAGONITE, TS_BED_LIMESTONE };

/* New water from a day on; the supply may change with the season. */
struct ts_drift_supply {
	unsigned from_day; /* the first of a list is taken from day 0 on, whatever it says */
	struct ts_solution water;
	double tan_mmol_l; /* nitrogen that treated chloramine leaves as ammonium */
};

/* A tank and its routine. */
struct ts_drift_tank {
	struct ts_solution water; /* now; dic_mmol_l is ignored */
	double tan_mmol_l;        /* total ammonia now */
	const struct ts_drift_supply *supplies;
	size_t supply_count;     /* 1 or more */
	double nitrogen_mmol_l;  /* of feed that reaches the water in a day, before plants */
	double plant_share;      /* of that nitrogen, 0..1 */
	double filter_share;     /* of the ammonia that the filter clears in a day, 0 (new) .. 1 */
	double change_share;     /* 0..1 at each change */
	double change_days;      /* from one change to the next, 1 or more; 0: no changes */
	double change_gone_days; /* since the last one; change_days or more: one is due today */
	double evaporated_share; /* of the volume, a day */
	bool pure_top_up; /* evaporation is replaced by water without minerals, else supply */
	/* What was measured beside all this, a day: alkalinity and hardness gained (lost: below 0).
	 */
	double alk_gain_meq_l, hardness_gain_mmol_l;
	enum ts_bed bed;
	double soil_left_meq_l; /* what active soil can still take up */
	/* CO2 of the running tank, times air: most (pH at its lowest), usual, least. */
	double co2_most, co2_usual, co2_least;
};

/* One quantity once nothing changes any more from one water change to the next. */
struct ts_drift_level {
	double before_change, after_change; /* NAN: there is no such level */
};

/* The steady state. KH NAN: the buffer goes instead. */
struct ts_drift_steady {
	struct ts_drift_level kh_dh, gh_dh, no3_mg_l;
};

/* A running simulation; open with ts_drift_open(). */
struct ts_drift {
	struct ts_drift_tank tank; /* water, tan_mmol_l, soil_left_meq_l are today's */
	const struct ts_practice *practice;
	unsigned day;
	double filter_lets; /* share nitrified today, after pH */
	struct ts_chem_constants constants;
	struct ts_ion_species at_most, at_usual, at_least; /* warm starts */
	double solved_alk_meq_l, solved_ca_mmol_l;         /* of which at_usual is; NAN: none */
};

/*
 * The pH at the usual CO2 as things stand, solved anew once alkalinity or calcium has moved by two
 * parts in ten thousand; NAN outside the equations.
 */
double ts_drift_ph(struct ts_drift *drift);

/* TS_BAD_INPUT when a member is no number or outside its range; `ret` is then untouched. */
TS_MUST_USE enum ts_status ts_drift_open(
	const struct ts_drift_tank *tank, const struct ts_practice *practice, struct ts_drift *ret);

/* One day further: up to, but without, the water change of that day. */
void ts_drift_live(struct ts_drift *drift);
/* The water change, where one is due on this day. */
void ts_drift_change(struct ts_drift *drift);
/* True when water is changed at the end of this day; 0: of today. */
bool ts_drift_change_due(const struct ts_drift_tank *tank, unsigned day);

/* Today's figures, before the change. `solved`: pH and conductivity too, which cost most by far. */
void ts_drift_read(struct ts_drift *drift, bool solved, struct ts_drift_day *ret);

/*
 * `days` days: `ret_days[0]` is now, so there are days + 1 of them. `ret_gone_day`, if given: the
 * first day on which KH is below the floor (practice row kh.floor); 0: none, or it is so already.
 */
TS_MUST_USE enum ts_status ts_drift_run(const struct ts_drift_tank *tank,
	const struct ts_practice *practice, unsigned days, struct ts_drift_day *ret_days,
	unsigned *ret_gone_day);

/*
 * The steady state in closed form, with the last supply, an inert bed and a filter that keeps up:
 * a gain g a day and a share f changed every n days lead to C_new + n g / f before a change and
 * C_new + n g (1 - f) / f after it. Without changes, or where it would be below 0, NAN.
 */
void ts_drift_steady(const struct ts_drift_tank *tank, struct ts_drift_steady *ret);

/*
 * Whether every day is the same straight line: an inert bed, one supply, a filter that keeps up
 * (that hardly works below pH 6.5 is left out: it spares buffer). Then these tell without any
 * chemistry what the simulation does: the first day on which alkalinity is below the least before
 * that day's change (most + 1: none), and KH, GH and nitrate (all waste in it) after so many days.
 */
bool ts_drift_is_linear(const struct ts_drift_tank *tank);
unsigned ts_drift_linear_days(
	const struct ts_drift_tank *tank, double alk_least_meq_l, unsigned most);
void ts_drift_linear_after(
	const struct ts_drift_tank *tank, unsigned days, struct ts_drift_day *ret);

/* The same by simulation, bed and filter included: begins at the closed form and runs until settled
 * (at most ten years). Levels that still move are NAN. */
TS_MUST_USE enum ts_status ts_drift_settle(const struct ts_drift_tank *tank,
	const struct ts_practice *practice, struct ts_drift_steady *ret);

/* Bounds that a routine is to keep for good. */
struct ts_drift_bounds {
	double kh_low_dh, no3_high_mg_l;
};

/*
 * The smallest share changed every `tank->change_days` that keeps both bounds once settled, found
 * by halving, to 0.001. TS_NO: not even changing all of it does (the new water itself is outside).
 */
TS_MUST_USE enum ts_status ts_drift_smallest_change(const struct ts_drift_tank *tank,
	const struct ts_drift_bounds *bounds, const struct ts_practice *practice,
	double *ret_share);

/* Changes `part` (0..1) of the water for the first of the supplies, at once. */
void ts_drift_pour(struct ts_drift_tank *tank, double part);

#endif
