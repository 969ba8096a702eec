/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands before every other word about a water, in one order for all answers: what forbids to
 * choose animals for it, or is to be read before. Poisons stand above it (dangers.h).
 */
#ifndef TS_WATER_FIRST_H
#define TS_WATER_FIRST_H

#include <tapshoal/profile.h>

enum ts_water_first {
	TS_FIRST_NOTHING,        /* it is known well enough to choose by */
	TS_FIRST_SEA,            /* sea water, or near it */
	TS_FIRST_BARE,           /* hardly a mineral */
	TS_FIRST_SOFTENED,       /* by a household softener */
	TS_FIRST_CONTRADICTION,  /* readings that cannot all be right */
	TS_FIRST_MAYBE_SOFTENED, /* looks so; asked */
	TS_FIRST_MINERALS,       /* neither GH nor KH was read */
	TS_FIRST_GH,             /* KH was read, GH not */
	TS_WATER_FIRST__COUNT
};

/* Salt from which it is sea water, g/L (the sea has 35; common practice, no source). */
#define TS_SEA_FROM_G_L 25.0

enum ts_water_first ts_water_first(const struct ts_profile *profile);

/* The contradiction that is told first, one bit of TS_UNUSUAL__CONTRADICTIONS; 0: there is none. */
unsigned ts_water_contradiction(const struct ts_profile *profile);

#endif
