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
	TS_FROM_NONE,    /* not known */
	TS_FROM_ASSUMED, /* a default, taken for want of a reading */
	TS_FROM_RESULT,  /* a pH that follows from KH, which is judged itself: shown, and no more */
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
	TS_UNUSUAL_SOFTENED = 1 << 0, /* softened: said, or sodium stands where hardness was */
	TS_UNUSUAL_LIMED = 1 << 1,    /* a supply of higher pH than its KH holds: airs down */
	TS_UNUSUAL_GASSY = 1 << 2,    /* a supply of lower pH than its KH holds: CO2, airs up */
	TS_UNUSUAL_KH_OVER_GH = 1 << 3,
	TS_UNUSUAL_NO_PH_FROM_KH = 1 << 4,   /* hardly any KH: pH cannot be computed */
	TS_UNUSUAL_BARE = 1 << 5,            /* hardly any minerals at all */
	TS_UNUSUAL_MAYBE_SOFTENED = 1 << 6,  /* looks so; asked */
	TS_UNUSUAL_PH_AGAINST_KH = 1 << 7,   /* the two cannot both be right */
	TS_UNUSUAL_GH_AGAINST_IONS = 1 << 8, /* GH read is not what Ca and Mg make */
	TS_UNUSUAL_CHARGE = 1 << 9,          /* the ions read do not add up */
	TS_UNUSUAL_CONDUCTIVITY = 1 << 10,   /* conductivity read is not what the ions make */
	TS_UNUSUAL_DEGREES = 1 << 11,        /* more degrees than fresh water has: the unit? */
	TS_UNUSUAL_ALKALINITY = 1 << 12,     /* KH and alkalinity, both read, differ */
	TS_UNUSUAL_SALTY = 1 << 13, /* more salt than fresh water has, from other readings */
	TS_UNUSUAL__ALL = (1 << 14) - 1,

	/* Readings that cannot all be right: no verdict on such water is sure. */
	TS_UNUSUAL__CONTRADICTIONS = TS_UNUSUAL_PH_AGAINST_KH | TS_UNUSUAL_GH_AGAINST_IONS |
				     TS_UNUSUAL_CHARGE | TS_UNUSUAL_CONDUCTIVITY |
				     TS_UNUSUAL_ALKALINITY,
	/*
	 * Water that suits nobody yet: bare (until minerals are back), softened or perhaps softened
	 * (until the other line was read), or of readings that contradict each other. One rule for
	 * rank, why, propose and check: with one of these there is no yes.
	 */
	TS_UNUSUAL__NOBODY_YET = TS_UNUSUAL_BARE | TS_UNUSUAL_SOFTENED | TS_UNUSUAL_MAYBE_SOFTENED |
				 TS_UNUSUAL__CONTRADICTIONS
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
	double nh3_n_mg_l;  /* un-ionised ammonia, at the pH and temperature that count */
};

struct ts_profile {
	struct ts_span at[TS_PARAMETER__COUNT];
	unsigned unusual;
	bool ph_computed;                          /* at[TS_PH] is the tank's, computed from KH */
	bool gh_from_ions, kh_from_alkalinity;     /* computed from other readings */
	double ph_read, ph_read_low, ph_read_high; /* as read, with its doubt; NAN = not given */
	double ph_fresh;                           /* of a fresh sample beside a stood one; NAN */
	double ph_tank_low, ph_tank, ph_tank_high; /* what a tank will run at; NAN = unknown */
	/* Where KH was not read but GH was: what KH, and with it pH, may be. Else not given. */
	struct ts_span kh_assumed, ph_assumed;
	/* Where GH was not read: what conductivity or dissolved solids leave room for. */
	struct ts_span gh_bound;
	int method[TS_PARAMETER__COUNT]; /* enum ts_method of the last reading of each */
	/* As read more than 13 months before what counts, and its day since 1970; NAN: not read. */
	double gh_before_dh, kh_before_dh, before_day;
	bool ph_fresh_sample; /* the pH read is of a sample that was fresh, as it says */
	/* The pH read in a tank tells its CO2: KH from 2 up, and no other acid in it. */
	bool co2_tells;
	bool acids; /* of ts_keeping */
	struct ts_poisons poisons;
	struct ts_contents contents;
};

/* How the animals are kept, and what the sample was. Zeroed: farmed, display. */
struct ts_keeping {
	bool wild, breeding;
	bool fresh; /* samples of a supply that do not say so themselves are fresh */
	bool acids; /* peat, wood, leaves or active soil in the tank: there pH tells no CO2 */
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
