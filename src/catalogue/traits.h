/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the catalogue can be asked beside a name: every word of a record (where it swims, what it is
 * like, what warns), lengths, grades of sources, and the water it lives in.
 */
#ifndef TS_CATALOGUE_TRAITS_H
#define TS_CATALOGUE_TRAITS_H

#include <tapshoal/match.h>

#include "model/shape.h"

/* A key of a record that takes one word or several of a list, wherever it stands. */
struct ts_trait {
	const struct ts_field *field;
	size_t offset; /* in struct ts_species */
};

#define TS_WANTED_MOST 16

/* What is asked for; all of it must hold. Zeroed: every species. */
struct ts_filter {
	struct {
		struct ts_trait trait;
		int word;
	} wanted[TS_WANTED_MOST];
	size_t wanted_count;
	struct ts_measure water[TS_PARAMETER__COUNT]; /* lives in all of it; NONE: not asked */
	double least_length_cm, greatest_length_cm;   /* adults in tanks; 0: not asked */
	const char *source;  /* a grade or a publication; NULL: not asked */
	const char *family;  /* case apart; NULL: not asked */
	bool wild, breeding; /* whose water */
};

/*
 * The trait of a key ("swims", "home-water" or "home_water"; of the blocks `needs` and `group` by
 * their own key: "flow"). False: no key of a record that takes words.
 */
bool ts_trait_find(const char *key, struct ts_trait *ret);

/* The index-th trait, for help and docs; false at the end. */
bool ts_trait_at(size_t index, struct ts_trait *ret);

/* Does everything hold? What a record does not tell does not hold. */
bool ts_filter_passes(const struct ts_filter *filter, const struct ts_species *species);

/* Is any value of this grade, or taken from this publication? */
bool ts_species_has_source(const struct ts_species *species, const char *source);

#endif
