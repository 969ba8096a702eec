/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a water is, before any animal is held against it: readings become a profile, one interval a
 * parameter, with what is unusual and what is poisonous. Pure computation; allocates nothing.
 * Equations: docs/methods.md, "Matching".
 */
#ifndef TAPSHOAL_PROFILE_H
#define TAPSHOAL_PROFILE_H

#include <tapshoal/water.h>

#ifdef __cplusplus
extern "C" {
#endif

struct ts_practice;

enum ts_parameter { TS_GH, TS_KH, TS_PH, TS_TEMPERATURE, TS_SALINITY, TS_PARAMETER__COUNT };

/*
 * Where a number comes from, from what may least to what may most be built on it; what may follow
 * from each is decided in one place (water/follows.h). A reading of a supply that does not say
 * whether it stood is TS_FROM_SUPPLY; GH and KH do not change by standing.
 */
enum ts_number_from {
	TS_FROM_NONE,     /* not known */
	TS_FROM_ASSUMED,  /* a default, taken for want of a reading */
	TS_FROM_COMPUTED, /* from other readings of this water */
	TS_FROM_FRESH,    /* read in a supply, before its gas had left */
	TS_FROM_SUPPLY,   /* read in a supply */
	TS_FROM_STOOD,    /* read in a supply that had stood in the air */
	TS_FROM_TANK,     /* read in the tank */
	TS_FROM__COUNT
};

/*
 * One parameter of the water. `exposure`: the animal lives the whole interval (day and night,
 * season, unheated room), so the worst end decides; else the interval is doubt about one value.
 */
struct ts_span {
	bool given, exposure;
	double value, low, high;
	enum ts_number_from from;
	double age_days; /* of its newest reading; NAN: not read, no date, or today not known */
};

/* What is unusual about the water; explained, never "impossible". Bits. */
enum ts_unusual {
	TS_UNUSUAL_SOFTENED = 1 << 0, /* softened, or looks so: every verdict is capped at unsure */
	TS_UNUSUAL_LIMED = 1 << 1,    /* high pH on hardly any buffer: airs down */
	TS_UNUSUAL_GASSY = 1 << 2,    /* low pH on much buffer: full of CO2, airs up */
	TS_UNUSUAL_KH_OVER_GH = 1 << 3,
	TS_UNUSUAL_NO_PH_FROM_KH = 1 << 4, /* hardly any KH: pH cannot be computed */
	TS_UNUSUAL_BARE = 1 << 5,          /* hardly any minerals at all */
	TS_UNUSUAL__IN_PROFILE = (1 << 6) - 1,
	/* Only a full description of a water (water/facts.h) knows these. */
	TS_UNUSUAL_PH_AGAINST_KH = 1 << 6,   /* the two cannot both be right */
	TS_UNUSUAL_GH_AGAINST_IONS = 1 << 7, /* GH read is not what Ca and Mg make */
	TS_UNUSUAL_CHARGE = 1 << 8,          /* the ions read do not add up */
	TS_UNUSUAL_CONDUCTIVITY = 1 << 9,    /* conductivity read is not what the ions make */
	TS_UNUSUAL_DEGREES = 1 << 10,        /* more degrees than fresh water has: the unit? */
	TS_UNUSUAL__ALL = (1 << 11) - 1
};

/*
 * Means over the readings of what chemistry needs beside the parameters; NAN = not given. Ions in
 * mg/L as the ion (NO3-N is counted as NO3), the temperature is the sample's.
 */
struct ts_contents {
	double temp_c;
	double ca_mg_l, mg_mg_l, na_mg_l, k_mg_l, cl_mg_l, so4_mg_l, no3_mg_l;
	double phosphate_mg_l, conductivity_us_cm;
	double oxygen_mg_l, oxygen_percent; /* the lowest of each, as read */
};

/* Poisons that a reading shows or cannot rule out. Bits. */
enum ts_poison {
	TS_POISON_AMMONIA = 1 << 0,   /* caps every verdict at unsure */
	TS_POISON_NITRITE = 1 << 1,   /* caps every verdict at unsure */
	TS_POISON_NITRATE = 1 << 2,   /* said, and a drinking-water matter */
	TS_POISON_CHLORINE = 1 << 3,  /* said: treat before any animal meets it */
	TS_POISON_COPPER = 1 << 4,    /* may exclude invertebrates, caps fish; see the two values */
	TS_POISON_NO_OXYGEN = 1 << 5, /* too little oxygen: caps every verdict at unsure */
	TS_POISON__ALL = (1 << 6) - 1
};

/*
 * The highest reading of each poison, the lowest of oxygen; NAN = not given. Oxygen in a utility's
 * report is that of its works, not of a tank, and is not counted.
 */
struct ts_poisons {
	unsigned found; /* bits of enum ts_poison */
	double tan_mg_l, no2_mg_l, no3_mg_l, chlorine_mg_l;
	double copper_low_mg_l, copper_mg_l; /* surely at least; possibly */
	double oxygen_mg_l; /* from percent at the sample's temperature, else 25 C */
};

struct ts_profile {
	struct ts_span at[TS_PARAMETER__COUNT];
	unsigned unusual;
	bool ph_computed;                          /* at[TS_PH] is the tank's, computed from KH */
	bool gh_from_ions, kh_from_alkalinity;     /* computed from other readings */
	double ph_read, ph_read_low, ph_read_high; /* as read, with its doubt; NAN = not given */
	double ph_tank_low, ph_tank, ph_tank_high; /* what a tank will run at; NAN = unknown */
	struct ts_poisons poisons;
	struct ts_contents contents;
};

/* How the animals are kept, and what the sample was. Zeroed: farmed, display, stood sample. */
struct ts_keeping {
	bool wild, breeding, fresh;
	struct ts_measure temperature; /* of the tank; NONE = not given */
};

/*
 * The profile of a water's readings. `practice` NULL: the table's own values. `today`: days since
 * 1970-01-01, for the ages; -1: not known. Never fails: what is missing stays "not given".
 */
TS_API void ts_profile_make(const struct ts_water *water, const struct ts_keeping *keeping,
	const struct ts_practice *practice, long today, struct ts_profile *ret);

#ifdef __cplusplus
}
#endif

#endif
