/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One parameter of one species against the water: suitability, by how much, verdict.
 */
#ifndef TS_MATCH_PARAMETER_H
#define TS_MATCH_PARAMETER_H

#include <tapshoal/match.h>

/* Bands are given (ts_bands_choose()); fills the rest. `practice`: the values of the table. */
void ts_parameters_meet(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const double *practice,
	struct ts_parameter_fit io[TS_PARAMETER__COUNT]);

/*
 * The GH that an animal is judged by. Too soft a water is by all its hardness; too hard an animal
 * of which a record says how much salt it bears finds it by the fresh water's own, without what the
 * salt brings: of that the salt itself tells.
 */
struct ts_span ts_parameter_gh(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_parameter_fit *gh, const double *practice);

#endif
