/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How long a tank lasts when something fails: oxygen without any movement of the water, warmth
 * without a heater, clean water without a filter. Each with its doubt, which is wide: the figures
 * behind it are published ones for fish and lakes, recalled and not re-checked, and estimates.
 */
#ifndef TS_CARE_LASTS_H
#define TS_CARE_LASTS_H

#include <tapshoal/stock.h>

#include "model/practice.h"

/* What breathes in a tank. */
struct ts_breathing {
	const struct ts_group *groups; /* as adults, unless their size is known */
	size_t count;
	double nitrogen_mg_day; /* of the feed: what bacteria of the bed make of it takes oxygen */
	double temp_c;
};

/* Oxygen that it takes, mg/h: at rest and without the bed, as usual, in alarm. */
void ts_breathing_mg_h(const struct ts_breathing *breathing, struct ts_estimate *ret);

/* A body of still water. */
struct ts_still_water {
	double net_l, surface_m2; /* 0: it is closed, as a bag is */
	double temp_c;
	double oxygen_mg_l; /* at the beginning; NAN: 90 % of what air keeps in it */
};

/*
 * Hours until oxygen is down to `least_mg_l`, where nothing moves the water: `low` with the most
 * that may be breathed and the least that the surface may let in. INFINITY: the still surface lets
 * in enough. TS_BAD_INPUT: a figure outside its range.
 */
TS_MUST_USE enum ts_status ts_oxygen_lasts_h(const struct ts_still_water *water,
	const struct ts_estimate *breathing_mg_h, double least_mg_l, struct ts_estimate *ret_h);

/* Panes around, m2, bottom and surface among them; 0 where sides are not known. */
double ts_tank_panes_m2(double length_cm, double width_cm, double height_cm);

/*
 * Hours until water of `from_c` in a room of `room_c` has come to `to_c`, warmer or cooler.
 * INFINITY: it never does. `panes_m2`: as above.
 */
void ts_warmth_lasts_h(double net_l, double panes_m2, double from_c, double to_c, double room_c,
	struct ts_estimate *ret_h);

/* Ammonia without a filter. */
struct ts_unfiltered {
	double net_l, nitrogen_mg_day; /* of the feed as usual */
	double ph, temp_c;             /* of the tank; pH NAN: 8 */
	double tan_mg_l;               /* now */
};

struct ts_unfiltered_lasts {
	double limit_tan_mg_l;       /* what they bear at this pH and warmth */
	double fed_days, unfed_days; /* until it is reached */
	double change_percent;       /* a day, with which an unfed tank stays at half of it */
};

void ts_unfiltered_lasts(const struct ts_unfiltered *tank, const struct ts_practice *practice,
	struct ts_unfiltered_lasts *ret);

/* Water to carry animals in, L, for so many hours: by their mass (common practice, no source). */
double ts_carrying_l(double mass_g, double hours);

#endif
