/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Ranks an invented water against a folder of species records with the library alone.
 * Usage: rank_water FOLDER
 */
#include <stdio.h>
#include <tapshoal/tapshoal.h>

static struct ts_measure value(double v)
{
	struct ts_measure m = {v, v, v, TS_MEASURE_VALUE};

	return m;
}

int main(int argc, char **argv)
{
	struct ts_reading reading = {.ph = value(7.6), .gh_dh = value(14), .kh_dh = value(9)};
	struct ts_water water = {.readings = &reading, .reading_count = 1};
	struct ts_keeping keeping = {.temperature = value(25)};
	struct ts_profile profile;
	struct ts_catalogue catalogue;
	size_t suits = 0;

	ts_catalogue_open(&catalogue, NULL);
	if (argc != 2 || ts_catalogue_add_folder(&catalogue, argv[1], NULL) != TS_OK)
		return 2;
	ts_profile_make(&water, &keeping, NULL, -1, &profile);
	for (size_t i = 0; i < catalogue.count; i++) {
		struct ts_match match;

		ts_match_species(catalogue.items[i], &profile, &keeping, NULL, &match);
		if (match.verdict == TS_SUITS && ++suits)
			puts(match.species->species);
	}
	ts_catalogue_close(&catalogue);
	return suits ? 0 : 1;
}
