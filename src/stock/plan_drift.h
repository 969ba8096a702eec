/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From a plan, as somebody wrote it, to the tank that drift.h simulates: what was measured is
 * taken, what was not is assumed by stated rules, and each assumption is recorded as a bit.
 */
#ifndef TS_STOCK_PLAN_DRIFT_H
#define TS_STOCK_PLAN_DRIFT_H

#include <tapshoal/plan.h>

#include "stock/drift.h"
#include "water/now.h"

/* Dated readings of one supply that count; more are left out. */
#define TS_SUPPLIES_MOST 12

/* What had to be assumed. Bits. */
enum ts_drift_assumed {
	TS_DRIFT_TANK_AS_SUPPLY = 1 << 0, /* the tank's KH was not read: as its supply's */
	TS_DRIFT_GH_AS_SUPPLY = 1 << 1,
	TS_DRIFT_NO3_AS_SUPPLY = 1 << 2,
	TS_DRIFT_NO_TAN = 1 << 3,        /* ammonia was not read: taken as nil */
	TS_DRIFT_FILTER_MATURE = 1 << 4, /* the filter is not known */
	TS_DRIFT_CHANGE_USUAL = 1 << 5,  /* the routine is not given: the usual one */
	TS_DRIFT_COVER_OPEN = 1 << 6,
	TS_DRIFT_TEMPERATURE = 1 << 7,    /* 25 C */
	TS_DRIFT_SEASON = 1 << 8,         /* the supply changes by its dated readings */
	TS_DRIFT_SOIL_FRESH = 1 << 9,     /* active soil is taken as not spent at all */
	TS_DRIFT_PEAT = 1 << 10,          /* peat takes more of the buffer than is shown */
	TS_DRIFT_OWN_CO2 = 1 << 11,       /* pH around the tank's own level, not the usual one */
	TS_DRIFT_CHLORAMINE = 1 << 12,    /* treated chloramine leaves ammonium in the new water */
	TS_DRIFT_NO_KH = 1 << 13,         /* of no water: nothing follows about KH and pH */
	TS_DRIFT_TOP_UP_SUPPLY = 1 << 14, /* what replaces evaporated water is not given */
	TS_DRIFT_GH_OF_TANK = 1 << 15,    /* the new water's GH was not read: as the tank's */
	TS_DRIFT_NO_GH = 1 << 16          /* of no water: nothing follows about GH */
};

/* A plan made ready; `tank` points into `supplies`, so the whole stays where it is. */
struct ts_plan_drift {
	struct ts_drift_tank tank;
	struct ts_drift_supply supplies[TS_SUPPLIES_MOST];
	unsigned assumed; /* bits of enum ts_drift_assumed */
	bool tan_known;
};

/*
 * `now`: the newest readings of the tank. `today`: days since 1970-01-01, for a supply that changes
 * with the season. `nitrogen_mmol_l` a day reaches the water and `plant_share` of it goes into
 * plants (load.c). TS_BAD_INPUT: a figure outside what the equations hold for; `ret` is then of no
 * use.
 */
TS_MUST_USE enum ts_status ts_plan_drift(const struct ts_plan *plan, const struct ts_now *now,
	long today, double nitrogen_mmol_l, double plant_share, const struct ts_practice *practice,
	struct ts_plan_drift *ret);

/* What is poured in at a change: the change water, else the water of the plan. */
const struct ts_water *ts_plan_poured(const struct ts_plan *plan);

#endif
