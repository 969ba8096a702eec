/* SPDX-License-Identifier: Apache-2.0 */
/*
 * "Which animals are called so, or are so?" What was found, nearest name first, then what every
 * shop has, and what the catalogue holds of it.
 */
#ifndef TS_ANSWERS_FIND_H
#define TS_ANSWERS_FIND_H

#include "answers/matched.h"

/* One species found. */
struct ts_find_hit {
	const struct ts_species *species;
	const char *name; /* the one that holds the pattern; NULL: none was asked for */
	int far;          /* 0: it is called just so, 1: as words of a name, 2: within a word */
};

struct ts_find_band_result {
	const char *name, *unit;
	struct ts_range tolerated, preferred;
	const char *tolerated_source, *preferred_source;
};

struct ts_find_species_result {
	const char *species, *form, *id, *common, *matched, *family, *home_water, *sold, *swims,
		*file;
	double adult_length_cm, group_least, group_comfortable, tank_length_cm;
	const char *says, *lives_in, *also; /* also: called so; NULL: by no other name */
	struct ts_texts cautions;
	const struct ts_find_band_result *bands;
	size_t band_count;
	/* The water asked for across its bands, for a page. */
	struct ts_parameter_result *parameters;
	size_t parameter_count;
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
	const char *pattern, *headline;
	const char *unknown_says, *overlays_say; /* NULL: nothing */
	size_t species_count;
	struct ts_find_species_result *found;
	size_t found_count;
	struct ts_texts did_you_mean;
	struct ts_find_tally_result *groups, *home_waters, *values;
	size_t group_count, home_water_count, value_count;
	size_t values_in_all; /* the sum of `values` */
	size_t fish, fish_ph_published, fish_gh_published, fish_temp_published;
	struct ts_find_folder_result *folders;
	size_t folder_count;
};

/* What was looked for and found; everything is lent. */
struct ts_find_question {
	const char *pattern; /* NULL: none */
	const struct ts_catalogue *catalogue;
	const struct ts_profile *profile; /* of the water asked for; nothing given: any */
	const struct ts_keeping *keeping;
	const struct ts_find_hit *hits;
	size_t hit_count;
	const struct ts_candidates *candidates; /* where nothing was found */
	bool unknown;                           /* nobody is called like the pattern: say so */
	const char *overlays_say;
	struct ts_find_result counts; /* groups, waters, sources, folders, as they are counted */
};

/* Answers; false when memory ran out (the arena says so). */
bool ts_answer_find(const struct ts_asking *asking, const struct ts_find_question *question,
	struct ts_find_result *ret);

#endif
