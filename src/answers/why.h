/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Some animals in full against one water: whether it suits each, the number that decides, every
 * parameter, and what else is to be known of it. Without a water: what it needs.
 */
#ifndef TS_ANSWERS_WHY_H
#define TS_ANSWERS_WHY_H

#include <tapshoal/plan.h>

#include "answers/matched.h"

struct ts_why_question {
	const struct ts_species *const *species;
	size_t count;
	const struct ts_profile *profile;
	const struct ts_keeping *keeping;
	bool water_given;           /* something was read; else their needs are the answer */
	const struct ts_tank *tank; /* NULL: none was given */
	double assumed_litres; /* its sides were assumed from so many litres; 0: they are known */
	const char *water_name;
	double kept_age_days;
	const char *water_says, *animals_say, *overlays_say; /* overlays NULL: none */
};

struct ts_why_parameter {
	const char *name, *says, *tolerated_says;
	int parameter; /* of enum ts_parameter; no row */
};

struct ts_why_fact {
	const char *label, *says;
};

struct ts_why_animal {
	const char *species, *headline, *decides, *caution; /* caution NULL: none */
	const char *change; /* the water, or the warmth, in which it would live; NULL */
	struct ts_why_parameter *water;
	size_t water_count;
	struct ts_why_fact *facts;
	size_t fact_count;
	const struct ts_match_result *match; /* of the lists; no row */
};

struct ts_why_result {
	struct ts_water_asked_result water;
	struct ts_why_animal *animals; /* in the order of the call */
	size_t animal_count;
	struct ts_match_result *matches; /* likewise; no row */
	struct ts_match_result *ranked, *excluded, *near_misses;
	size_t ranked_count, excluded_count, near_miss_count;
	const char *water_says, *animals_say;
	struct ts_texts notes;
	const char *measure;              /* what to measure next */
	const struct ts_profile *profile; /* for what leads a printed page; no row */
	bool suits;    /* some of them it suits, or they can live in it; no row */
	bool ph_alone; /* some are held up by pH and by nothing else; no row */
};

/* TS_NO_MEMORY, `*ret` then untouched. All of it belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_why(const struct ts_asking *asking,
	const struct ts_why_question *question, struct ts_why_result *ret);

/* Adds the number that decides of one match. */
void ts_why_deciding(
	struct ts_text *text, const struct ts_match *match, const struct ts_profile *profile);

#endif
