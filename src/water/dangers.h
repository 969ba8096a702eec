/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The poisons of a water held against their limits, ammonia with the pH and temperature that make
 * it poisonous, nitrite with the chloride that protects. profile.c only finds what caps a verdict;
 * this says how bad it is. The sentences are words/water.c's.
 */
#ifndef TS_WATER_DANGERS_H
#define TS_WATER_DANGERS_H

#include "water/facts.h"

enum ts_danger { TS_DANGER_NONE, TS_DANGER_CONCERN, TS_DANGER_CONFLICT, TS_DANGER_NOW };

enum ts_danger_id {
	TS_D_NH3,      /* un-ionised ammonia, mg/L N */
	TS_D_TAN,      /* total ammonia, mg/L N, against the EPA criterion */
	TS_D_NITRITE,  /* mg/L N, by chloride */
	TS_D_NITRATE,  /* mg/L NO3 */
	TS_D_CHLORINE, /* mg/L */
	TS_D_COPPER,   /* mg/L */
	TS_D_CO2,      /* mg/L */
	TS_D_OXYGEN,   /* mg/L, the lowest: too little is the danger */
	TS_DANGER_ID__COUNT
};

struct ts_water_danger {
	enum ts_danger danger;
	double value; /* NAN: not measured, or not computable */
	double limit; /* the last limit passed; the first where none is */
};

/*
 * Judges the readings of a water. The highest reading counts, of oxygen the lowest; TAN and nitrite
 * are judged at the facts' pH and temperature, and TAN by the criterion for pH 6.5..9 and 0..30 C
 * (nearest end). Limits: the practice table (NULL: its own values); chloride not read is taken as
 * none.
 */
void ts_water_judge(const struct ts_profile *profile, const struct ts_water_facts *facts,
	const struct ts_practice *practice, struct ts_water_danger ret[TS_DANGER_ID__COUNT]);

/* What in a tap, well or rain water is a matter for the health authority. Bits. */
enum ts_drinking {
	TS_DRINKING_NITRATE = 1 << 0, /* over 50 mg/L */
	TS_DRINKING_NITRITE = 1 << 1, /* over 0.5 mg/L */
	TS_DRINKING_COPPER = 1 << 2   /* over 2 mg/L */
};

/* Bits of enum ts_drinking; 0 for a tank, which nobody drinks. */
unsigned ts_water_drinking(const struct ts_water *water, const struct ts_profile *profile);

/*
 * The one next thing to measure for a water that is itself the subject: first what leaves the most
 * open, then what contradicts the rest, then the poisons of a tank, then pH.
 */
enum ts_next ts_water_next(const struct ts_water *water, const struct ts_profile *profile,
	const struct ts_water_facts *facts);

#endif
