/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The band that counts for one parameter of one species, and how sure its ends are.
 */
#ifndef TS_MATCH_BANDS_H
#define TS_MATCH_BANDS_H

#include <tapshoal/match.h>

/* The source of a KH band that no record gives; known by its address. */
extern const char ts_by_kind_of_water[];

/*
 * Fills the bands, sources and variant of `ret`: breeding before wild before usual; KH by home
 * water and salinity as fresh where none is given; else low NAN. Ends are finite. `practice`: the
 * values of the table, here and below.
 */
void ts_bands_choose(const struct ts_species *species, const struct ts_keeping *keeping,
	const double *practice, struct ts_parameter_fit ret[TS_PARAMETER__COUNT]);

/* Half-width of a limit, by the grade of its source: "memory", "practice", "derived", or a work. */
double ts_band_doubt(enum ts_parameter p, const char *source, const double *practice);

/* How far beyond tolerated a pH is still no reason to exclude. */
struct ts_range ts_band_ph_slack(const struct ts_species *species, const struct ts_range *tolerated,
	const struct ts_keeping *keeping, const double *practice);

/* KH (dH) below which a band by home water excludes; 0: never. */
double ts_band_kh_floor(const struct ts_species *species);

/* GH (dH) from which an unread KH keeps no yes back: livebearers; 0: never. */
double ts_band_gh_answers_from(const struct ts_species *species);

/* KH (dH) above which a band by home water is no yes any more; 0: never. */
double ts_band_kh_ceiling(const struct ts_species *species, const struct ts_keeping *keeping);

#endif
