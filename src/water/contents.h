/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What readings hold beside the parameters: ions as means, poisons as their highest, oxygen as the
 * lowest, and how much salt all of it may be.
 */
#ifndef TS_WATER_CONTENTS_H
#define TS_WATER_CONTENTS_H

#include <tapshoal/profile.h>

/* Fills contents and poisons of the profile. `tank_temp`: where a sample has no temperature. */
void ts_contents_read(const struct ts_water *water, const struct ts_measure *tank_temp,
	const struct ts_practice *practice, struct ts_profile *io);

/*
 * The salt of a water in which none was read, bounded by what was: conductivity (and what of it
 * hardness makes), dissolved solids, sodium and chloride; not given where these stay below what
 * fresh water holds.
 */
struct ts_span ts_contents_salt(
	const struct ts_water *water, const struct ts_profile *profile, double fresh_g_l);

/*
 * The GH of a water in which none was read, bounded by conductivity or dissolved solids: from
 * nothing to what they leave room for, `value` what they usually mean; not given where neither was
 * read, or where salt makes them.
 */
struct ts_span ts_contents_hardness(const struct ts_water *water, const struct ts_profile *profile);

/*
 * Of the GH of a brackish water, that which its salt brings, taken as of the sea: of what is above
 * the salt of fresh water; nothing where no salt was read.
 */
struct ts_span ts_contents_gh_of_salt(const struct ts_profile *profile, double fresh_g_l);

/*
 * Where salt was read and GH was not: the GH that so much sea salt makes by itself, as assumed.
 * False: nothing is to be assumed.
 */
bool ts_contents_sea_gh(struct ts_profile *io, double fresh_g_l);

#endif
