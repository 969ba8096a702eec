/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Several animals against several waters: who of a club can keep what. Each against each, and for
 * each animal the water, and the part of its year, where it fares worst.
 */
#ifndef TS_ANSWERS_WHY_WATERS_H
#define TS_ANSWERS_WHY_WATERS_H

#include "answers/matched.h"

struct ts_why_waters_asked {
	const char *file; /* it was read from */
	const struct ts_water *water;
};

struct ts_why_waters_question {
	const struct ts_species *const *species;
	size_t species_count;
	const struct ts_why_waters_asked *waters;
	size_t water_count;
	const struct ts_keeping *keeping;
	const char *animals_say, *overlays_say; /* overlays NULL: none */
};

struct ts_why_cell_result {
	const char *species, *id, *common, *water, *verdict;
	double fit;
	const char *limiting, *says;
	const char *in_short; /* verdict and reason in a few words */
	bool worst;
	const char *worst_season;
	struct ts_parameter_result *parameters;
	size_t parameter_count;
};

struct ts_why_worst_result {
	const char *water, *season, *verdict, *limiting, *says;
	const char *in_a_line;
};

struct ts_why_species_result {
	const char *species, *id, *common;
	const char *called; /* what it is called in this answer, beside the others; no row */
	const char *named;  /* in full; no row */
	size_t waters;
	struct ts_why_worst_result worst;
};

struct ts_why_water_result {
	const char *name, *file;
	struct ts_texts seasons;
	const char *says;      /* the water in a line */
	struct ts_texts notes; /* what stands in it before any animal, what is unusual */
	struct ts_water_asked_result *water;
};

struct ts_why_waters_result {
	const char *headline, *decides;
	struct ts_why_water_result *waters;
	struct ts_why_species_result *species;
	struct ts_why_cell_result *cells; /* by species, then by water */
	size_t water_count, species_count, cell_count;
	const char *animals_say, *closing; /* how to see one of them in full */
	struct ts_texts notes;
	bool all_have_one; /* each has a water that suits it or is tolerated; no row */
};

/* TS_NO_MEMORY, `*ret` then untouched. All of it belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_why_waters(const struct ts_asking *asking,
	const struct ts_why_waters_question *question, struct ts_why_waters_result *ret);

#endif
