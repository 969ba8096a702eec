/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings of one water held against one another: which of them cannot all be right, and which of
 * them to read again.
 */
#ifndef TS_WATER_DOUBTS_H
#define TS_WATER_DOUBTS_H

#include <tapshoal/profile.h>

#include "chem/solution.h"

/*
 * Bits of TS_UNUSUAL__CONTRADICTIONS. `solution` NULL: it could not be had, and nor could `gas`, of
 * which pH and gas are reckoned; `assumed` are its bits of enum ts_assumed. The profile's
 * parameters, contents and pH read are filled.
 */
unsigned ts_profile_doubts(const struct ts_water *water, const struct ts_profile *profile,
	const struct ts_solution *solution, const struct ts_solution *gas, unsigned assumed);

#endif
