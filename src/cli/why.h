/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of why share: why.c tells some species in full against one water, why_waters.c
 * asks about several against several, why_say.c and why_fill.c tell that to people and programs.
 */
#ifndef TS_CLI_WHY_H
#define TS_CLI_WHY_H

#include "cli/commands.h"
#include "water/series.h"

/* One of several waters, and the parts of the year that its readings tell apart. */
struct why_water {
	const char *label, *file;
	struct answer answer; /* of all its readings; no matches */
	const char *seasons[TS_SEASONS_MOST];
	size_t season_count;
	struct ts_profile *of_season;
};

/* Where a species fares worst: the water by all its readings, in it the part of the year. */
struct why_worst {
	size_t water;
	const char *season; /* NULL: the water has none */
	struct ts_match match;
	const struct ts_profile *profile; /* behind the match */
};

struct why_waters {
	struct why_water *waters;
	size_t water_count;
	const struct ts_species **species;
	size_t species_count;
	struct ts_match *cells; /* by species, then by water */
	struct why_worst *worst;
};

/* The species of the call; names that are none are lines of the session's error. */
enum ts_status why_named(struct session *session, const struct ts_species ***ret);
/* Adds the number that decides. */
void why_deciding(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

/* The command where several waters were given. */
enum ts_status why_waters(struct session *session);
/* Its answer as a document; as JSON; its cells as CSV. */
void why_waters_write(struct session *session, const struct why_waters *w);
void why_waters_json(struct session *session, const struct why_waters *w);
void why_waters_csv(struct session *session, const struct why_waters *w);

const struct ts_match *why_cell(const struct why_waters *w, size_t species, size_t water);
/* Below 0: the first fares better than the second. */
int why_compare(const struct ts_match *a, const struct ts_match *b);
/* How many waters suit a species or are tolerated by it. */
size_t why_homes(const struct why_waters *w, size_t species);

#endif
