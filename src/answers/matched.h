/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One animal against the water, and the water itself, as parts of several answers (rank, why):
 * result structs whose rows stand in report/rank_result.c. NAN and NULL are not known.
 */
#ifndef TS_ANSWERS_MATCHED_H
#define TS_ANSWERS_MATCHED_H

#include <tapshoal/match.h>
#include <tapshoal/plan.h>

#include "answers/asking.h"

struct ts_parameter_result {
	const char *name, *unit;
	double reading, reading_low, reading_high;
	struct ts_range tolerated, preferred;
	struct ts_texts source;
	double suitability, outside_by, uncomfortable_by;
	bool follows; /* a pH that follows from KH: it decides nothing; no row */
};

struct ts_excluded_result {
	const char *name;
	double outside_by;
	const char *unit;
	double would_fit_if;
};

struct ts_match_result {
	const char *species, *id, *common, *form, *verdict;
	double fit;
	const char *limiting;
	struct ts_parameter_result *parameters;
	size_t parameter_count;
	struct ts_excluded_result *excluded_by;
	size_t excluded_by_count;
	double adult_length_cm, group_least, group_comfortable, tank_length_cm, tank_volume_l;
	const char *family, *kind, *swims, *sold;
	double distance;         /* to the nearest limit, in units of the reading's doubt */
	const char *says;        /* the number that decides, in one sentence */
	struct ts_texts reasons; /* what speaks against it, and what nearly would not */
	struct ts_texts to_know; /* what a buyer must know, most important first */
	const char *no_room; /* why it does not fit the tank; NULL: it fits, or none was given */
	const char *no_home; /* why no ordinary home suits it; NULL: one does */
};

struct ts_span_result {
	const char *unit;
	double value, low, high;
};

struct ts_water_asked_result {
	const char *name;
	double kept_age_days;
	struct ts_span_result gh, kh, ph, temp, salinity;
	double ph_read;
	bool ph_computed;
	double ph_tank_low, ph_tank, ph_tank_high;
	struct ts_texts unusual, poisons;
	const char *next_to_measure;
};

/* The rows of every parameter; NULL when memory failed. */
struct ts_parameter_result *ts_answer_parameters(struct ts_arena *arena,
	const struct ts_match *match, const struct ts_profile *profile, size_t *ret_count);

/* One animal; room and home are left NULL, and stand with who asks for them. */
void ts_answer_match(const struct ts_asking *asking, const struct ts_match *match,
	const struct ts_profile *profile, struct ts_match_result *ret);

/* The water that was asked about. */
struct ts_water_asked_result ts_answer_water(struct ts_arena *arena, const char *name,
	double kept_age_days, const struct ts_profile *profile);

/* What programs call a record: the stem of its file. The first English name; NULL: it has none. */
const char *ts_answer_id(struct ts_arena *arena, const char *file);
const char *ts_answer_common(const struct ts_species *species);

/* One of them, which a group of males does not. */
extern const char ts_to_know_breeds[];

/*
 * What a buyer must know of the animal in a few plain words each, most important first.
 */
struct ts_texts ts_answer_to_know(struct ts_arena *arena, const struct ts_species *species);

/* Why no ordinary home suits an animal, a sentence; NULL: one does. Common practice, no source. */
const char *ts_answer_no_home(const struct ts_asking *asking, const struct ts_species *species);

/*
 * Why an animal, in the least number it lives in, has no room in a tank; NULL: it has.
 */
const char *ts_answer_no_room(const struct ts_asking *asking, const struct ts_species *species,
	const struct ts_tank *tank);

#endif
