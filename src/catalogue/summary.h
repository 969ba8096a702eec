/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a catalogue holds and how well its figures are founded: counts by group, home water and
 * grade of source.
 */
#ifndef TS_CATALOGUE_SUMMARY_H
#define TS_CATALOGUE_SUMMARY_H

#include <tapshoal/catalogue.h>

struct ts_tally {
	const char *name;
	size_t count;
};

/* Grades of the values of water; every publication counts as one grade. */
enum ts_grade {
	TS_GRADE_PUBLISHED,
	TS_GRADE_PRACTICE,
	TS_GRADE_DERIVED,
	TS_GRADE_MEMORY,
	TS_GRADE__COUNT
};

extern const char *const ts_grade_words[TS_GRADE__COUNT];

/* The grade that a source of a value stands for. */
enum ts_grade ts_grade_of(const char *source);

struct ts_summary {
	size_t species, fish;
	struct ts_tally *groups; /* folders of family groups, by name */
	size_t group_count;
	size_t home_water[TS_HOME__COUNT];
	size_t values[TS_GRADE__COUNT]; /* both ranges of every parameter */
	size_t fish_ph_published, fish_gh_published, fish_temp_published; /* tolerated ranges */
};

/*
 * Counts over the species given (`count` 0: nothing). Groups are taken from `arena`; when that
 * fails there are none.
 */
void ts_summarise(const struct ts_species *const *species, size_t count, struct ts_arena *arena,
	struct ts_summary *ret);

#endif
