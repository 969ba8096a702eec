/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The order is that of the enum: from what no reading mends to what the next reading tells.
 */
#include "water/first.h"

enum ts_water_first ts_water_first(const struct ts_profile *p)
{
	bool gh = p->at[TS_GH].given, kh = p->at[TS_KH].given;

	if (p->at[TS_SALINITY].given && p->at[TS_SALINITY].low > TS_SEA_FROM_G_L)
		return TS_FIRST_SEA;
	if (p->unusual & TS_UNUSUAL_BARE)
		return TS_FIRST_BARE;
	if (p->unusual & TS_UNUSUAL_SOFTENED)
		return TS_FIRST_SOFTENED;
	if (ts_water_contradiction(p))
		return TS_FIRST_CONTRADICTION;
	if (p->unusual & TS_UNUSUAL_MAYBE_SOFTENED)
		return TS_FIRST_MAYBE_SOFTENED;
	return gh ? TS_FIRST_NOTHING : kh ? TS_FIRST_GH : TS_FIRST_MINERALS;
}

unsigned ts_water_contradiction(const struct ts_profile *p)
{
	/* What two readings of one thing contradict before what is computed from many. */
	static const unsigned order[] = {TS_UNUSUAL_GH_AGAINST_IONS, TS_UNUSUAL_ALKALINITY,
		TS_UNUSUAL_PH_AGAINST_KH, TS_UNUSUAL_CONDUCTIVITY, TS_UNUSUAL_CHARGE};

	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		if (p->unusual & order[i])
			return order[i];
	}
	return 0;
}
