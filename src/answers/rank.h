/* SPDX-License-Identifier: Apache-2.0 */
/*
 * "Which animals does this water suit, and which of them fit my tank?" A list in an order that is
 * said: verdict, room, commonly sold, fish before others, what it asks, distance to the nearest
 * limit, name.
 */
#ifndef TS_ANSWERS_RANK_H
#define TS_ANSWERS_RANK_H

#include <tapshoal/stock.h>

#include "answers/matched.h"

/* What is asked; everything is lent. The animals are those of the asking, narrowed or all. */
struct ts_rank_question {
	const char *water_name;
	const char *water_says, *animals_say; /* the water and how they are kept, in a line each */
	double kept_age_days;                 /* NAN: not the kept tap */
	const struct ts_profile *profile;
	const struct ts_keeping *keeping;
	const struct ts_tank *tank; /* NULL: none was given */
	double assumed_litres; /* its sides were assumed from so many litres; 0: they are known */
	const struct ts_species *like; /* only animals like this one; NULL: all */
	size_t catalogue_count;        /* species before anything was narrowed */
	const char *overlays_say;      /* records that did not come with the program; NULL: none */
};

/* How many one parameter excludes. */
struct ts_rank_excluded_result {
	const char *name, *label;
	size_t species;
	const char *says;
};

/* How many of those that were asked about are comfortable at one hardness. */
struct ts_rank_at_gh {
	double gh_dh;
	size_t comfortable;
};

/* From 0 up, a degree each: as far as an outline of a page goes. */
#define TS_RANK_GH_MOST 30

struct ts_rank_result {
	struct ts_water_asked_result water;
	const char *water_says, *animals_say;
	const char *headline, *deciding, *order, *tank_says, *closing;
	const char
		*choices; /* two or three of them with their numbers; NULL: none is at its best */
	struct ts_texts notes, measure;
	size_t catalogue_count, asked_count;
	size_t suits, tolerates, unsure; /* of `ranked` */
	/* Not excluded: with room for them, or no tank given; without room; no home suits them. */
	struct ts_match_result *ranked, *too_large, *no_home;
	size_t ranked_count, too_large_count, no_home_count;
	struct ts_match_result *excluded, *near_misses;
	size_t excluded_count, near_miss_count;
	struct ts_rank_excluded_result *excluded_by;
	size_t excluded_by_count;
	struct ts_rank_at_gh *by_gh;
	size_t by_gh_count;
	bool fits_asked; /* a tank was given */
	/* For pages alone, in step with the lists: what each match is drawn from. */
	const struct ts_profile *profile;
};

/* Answers; false when memory ran out (the arena says so). */
bool ts_answer_rank(const struct ts_asking *asking, const struct ts_rank_question *question,
	struct ts_rank_result *ret);

/*
 * Whether two animals serve the same end in a tank: kind, layer, company and nearly the same size.
 * Common practice, no source.
 */
bool ts_rank_alike(const struct ts_species *a, const struct ts_species *b);

/* Its turn among those of one verdict: commonly sold, asking little, fish; lower goes first. */
unsigned ts_rank_turn(const struct ts_species *species);

/* Adds what forbids every list of such a water; `none`: it suits nobody and nobody bears it. */
void ts_rank_not_now(struct ts_text *text, const struct ts_profile *profile, bool none);

#endif
