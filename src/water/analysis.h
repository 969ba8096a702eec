/* SPDX-License-Identifier: Apache-2.0 */
/*
 * From readings to a full analysis: the bridge between what people measure (profile.c) and what
 * chemistry needs (chem/solution.h). What was not measured is completed by stated rules, and each
 * completion is recorded, so that nobody takes a guess for a measurement.
 */
#ifndef TS_WATER_ANALYSIS_H
#define TS_WATER_ANALYSIS_H

#include <tapshoal/profile.h>

#include "chem/ions.h"
#include "chem/solution.h"

/* Degrees that fresh water hardly has: often another unit (common practice, no source). */
#define TS_DEGREES_HIGH_DH 40.0

/* Where no temperature is known, C: a warm tank's (common practice, no source). */
#define TS_TANK_TEMPERATURE_C 25.0

/* What had to be assumed. Bits; bit 1 << TS_ION_x: that ion was not measured but filled in. */
enum ts_assumed {
	TS_ASSUMED_IONS = (1 << TS_ION__IN_SOLUTION) - 1, /* mask of the ions */
	TS_ASSUMED_TEMPERATURE = 1 << 8,                  /* 25 C */
	TS_ASSUMED_GH = 1 << 9,            /* no hardness at all: taken as great as KH */
	TS_ASSUMED_KH = 1 << 10,           /* from the charge of the ions */
	TS_ASSUMED_CARBON = 1 << 11,       /* CO2 as in a tank, four times air, not from a pH */
	TS_ASSUMED_BALANCE = 1 << 12,      /* ions did not add up: sodium or chloride was added */
	TS_ASSUMED_PH_AGAINST_KH = 1 << 13 /* the pH read contradicts KH and was not used */
};

/*
 * The water behind a profile's readings, charge-balanced. `temp_c` 0..50 C, or NAN: the sample's,
 * else the tank's, else 25 C. Hardness: Ca and Mg where read (one of them: the rest of GH is the
 * other), else GH as Ca and Mg 3 to 1 by mole (common practice, no source), else as great as KH.
 * Alkalinity: KH, else what the charge of Ca, Mg, Na, Cl and SO4 leaves. Missing anions: half
 * chloride, half sulphate by charge, whichever was not read; missing cations: sodium (estimates
 * from memory). Inorganic carbon: from the pH read where it and KH agree, else as at four times the
 * CO2 of air. `ret_assumed` gets bits of enum ts_assumed.
 *
 * TS_NO: no KH, and no ions to compute it from. TS_BAD_INPUT: outside the ranges of solution.h.
 * Both ret_ are untouched then.
 */
TS_MUST_USE enum ts_status ts_solution_from_profile(const struct ts_profile *profile, double temp_c,
	struct ts_solution *ret, unsigned *ret_assumed);

/* Below this conductivity, uS/cm at 25 C, there is hardly a mineral in a water. */
#define TS_BARE_US_CM 50.0
/*
 * Whether there is hardly a mineral in it, as in rain or from reverse osmosis: by GH and KH, both
 * below 1 dH (KH not known: by GH), or by its conductivity where neither says otherwise (estimates
 * from memory). NAN: not known.
 */
bool ts_water_is_bare(double gh_dh, double kh_dh, double conductivity_us_cm);

#endif
