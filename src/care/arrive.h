/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Carrying animals home and settling them in: mixed in within the hour, dripped in over some,
 * lifted straight over, or first a quarantine tank filled to the shop's water (or to water half
 * way) and brought over by stages (stages.h).
 */
#ifndef TS_CARE_ARRIVE_H
#define TS_CARE_ARRIVE_H

#include "care/stages.h"

enum ts_arrive_way {
	TS_ARRIVE_MIX,        /* float, then mix in over half an hour or more */
	TS_ARRIVE_DRIP,       /* float, then drip the tank's water into theirs for hours */
	TS_ARRIVE_STRAIGHT,   /* match the temperature, then lift straight over */
	TS_ARRIVE_QUARANTINE, /* not today: a tank of the shop's water first */
	TS_ARRIVE_HALFWAY,    /* not today: dripped into a tank of water half way first */
	TS_ARRIVE_WAY__COUNT
};

/* Ammonia in a bag, mg/L N, from which airing it is a danger (estimate from memory). */
#define TS_ARRIVE_BAG_TAN 1.0

struct ts_arrive_wish {
	const struct ts_solution *shop, *tank; /* NULL: not enough is known of it */
	double shop_gh_dh, tank_gh_dh, shop_ec_us_cm, tank_ec_us_cm; /* as read; NAN not known */
	double hours;        /* under way; NAN: not known, taken as long */
	double bag_tan_mg_l; /* measured in the bag; NAN: not known */
	double bag_ph;       /* NAN: taken as 6.4 after a long way (estimate from memory) */
	double temp_c;       /* of the tank */
	const struct ts_resident *animals;
	size_t animal_count; /* 0: not said; ordinary steps */
};

/* One stage of the quarantine tank, which goes from the shop's water to the tank's. */
struct ts_arrive_stage {
	unsigned day;
	double change; /* share of the quarantine tank's water for the tank's own; 1: move over */
	unsigned portions; /* in how many changes of a quarter at the most, over two days */
	double gh_dh, kh_dh, ec_us_cm; /* afterwards; EC NAN: not known */
};

struct ts_arrival {
	enum ts_arrive_way way;
	bool unknown_gap; /* neither GH nor conductivity is known on both sides: taken as far */
	bool unknown_hours;
	double gh_apart_percent, ec_apart_percent; /* of the shop's; NAN not known */
	double bag_tan_mg_l;                       /* measured, or assumed after a long way */
	bool tan_assumed;
	double start_gh_dh, start_kh_dh, start_ec_us_cm; /* of the quarantine tank; NAN not known */
	double nh3_bag_mg_l, nh3_aired_mg_l; /* un-ionised as N: in the closed bag, and aired */
	size_t count; /* of stages, the last of them moving over; 0: none, or not computable */
	struct ts_arrive_stage stages[TS_STAGES_MOST];
	bool too_far; /* more stages than TS_STAGES_MOST: stages are cut off */
};

/*
 * What to do, from the rule: under 2 h and both GH and conductivity within 25 % (or within one
 * safe step) mix; longer, or with 1 mg/L of ammonia in the bag, straight over; up to twice or half,
 * drip over hours; a larger gap, one that is not known, or animals that take change badly,
 * quarantine first, and from half way where stages from the shop's water would outlast the
 * quarantine itself (common practice, no source). Never fails.
 */
void ts_arrive_plan(const struct ts_arrive_wish *wish, const struct ts_practice *practice,
	struct ts_arrival *ret);

/* What to do in order; the rows of one way are read top to bottom. */
struct ts_arrive_step {
	unsigned ways; /* bits 1 << enum ts_arrive_way */
	const char *when;
	const char *says;
};

extern const struct ts_arrive_step ts_arrive_steps[];
extern const size_t ts_arrive_step_count;

#endif
