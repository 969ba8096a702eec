/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which animals may be named to somebody who did not ask for them: a list that the water alone
 * decides would begin with giants.
 */
#include <tapshoal/match.h>

static const unsigned never_unasked =
	1u << TS_CAUTION_VENOMOUS | 1u << TS_CAUTION_ELECTRIC | 1u << TS_CAUTION_GROWS_TOO_BIG |
	1u << TS_CAUTION_EXPERT_ONLY | 1u << TS_CAUTION_RESTRICTED | 1u << TS_CAUTION_PROTECTED;

bool ts_match_advised_unasked(const struct ts_species *species)
{
	bool overruns = species->kind == TS_ANIMAL_SNAIL &&
			species->cautions & 1u << TS_CAUTION_BREEDS_UNASKED;

	return !(species->cautions & never_unasked) && !overruns;
}
