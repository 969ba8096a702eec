/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Which animals may be named to somebody who did not ask for them: a list that the water alone
 * decides would begin with giants.
 */
#include <tapshoal/match.h>

static const unsigned never_unasked =
	1u << TS_CAUTION_VENOMOUS | 1u << TS_CAUTION_ELECTRIC | 1u << TS_CAUTION_GROWS_TOO_BIG |
	1u << TS_CAUTION_NO_HOME_SUITS | 1u << TS_CAUTION_HARD_TO_FEED |
	1u << TS_CAUTION_DIES_OF_SMALL_ERRORS | 1u << TS_CAUTION_RESTRICTED |
	1u << TS_CAUTION_PROTECTED | 1u << TS_CAUTION_STINGS;

bool ts_match_advised_unasked(const struct ts_species *species)
{
	bool overruns = species->kind == TS_ANIMAL_SNAIL &&
			species->cautions & 1u << TS_CAUTION_BREEDS_UNASKED;

	return !(species->cautions & never_unasked) && !species->needs.land && !overruns;
}
