/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What find tells to programs: the species found, and what they are by groups, waters and sources.
 */
#ifndef TS_REPORT_FIND_RESULT_H
#define TS_REPORT_FIND_RESULT_H

#include "report/result.h"

struct ts_find_band_result {
	const char *name, *unit;
	struct ts_range tolerated, preferred;
	const char *tolerated_source, *preferred_source;
};

struct ts_find_species_result {
	const char *species, *form, *id, *common, *matched, *family, *home_water, *file;
	double adult_length_cm, group_least, tank_length_cm;
	struct ts_texts cautions;
	const struct ts_find_band_result *bands;
	size_t band_count;
};

struct ts_find_tally_result {
	const char *name;
	size_t count;
};

struct ts_find_folder_result {
	const char *folder;
	size_t added, replaced;
};

struct ts_find_result {
	const char *pattern;
	size_t species_count;
	struct ts_find_species_result *found;
	size_t found_count;
	struct ts_texts did_you_mean;
	struct ts_find_tally_result *groups, *home_waters, *values;
	size_t group_count, home_water_count, value_count;
	size_t fish, fish_ph_published, fish_gh_published, fish_temp_published;
	struct ts_find_folder_result *folders;
	size_t folder_count;
};

extern const struct ts_result_shape ts_result_find_species, ts_result_find;

#endif
