/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is this water? Values in all usual units, what follows from them, what is unusual, what is
 * dangerous, and the one next thing to measure; beside another water what their difference means.
 */
#ifndef TS_ANSWERS_WATER_H
#define TS_ANSWERS_WATER_H

#include "answers/advised.h"
#include "answers/asking.h"
#include "water/dangers.h"

struct ts_water_question {
	const struct ts_water *water;
	const struct ts_keeping *keeping;
	double kept_age_days;           /* of the kept tap; NAN: another water, or no date */
	double sample_temp_c;           /* NAN: as the readings say */
	const struct ts_water *against; /* NULL: no other */
};

/* GH or KH in the units that people print. */
struct ts_hardness_result {
	const char *name;                                              /* "GH" */
	double dh, mmol_l, mg_l_caco3, french, english, grains_us_gal; /* of KH meq/L for mmol/L */
};

struct ts_ion_result {
	const char *name; /* "Ca" */
	double mg_l, mmol_l;
};

struct ts_unknown_result {
	const char *fact, *why;
};

struct ts_danger_result {
	const char *poison, *danger;
	double value, limit;
	const char *unit, *says;
};

/* One parameter over several readings. */
struct ts_over_time_result {
	const char *name;
	size_t readings;
	double days, low, high, spread, same_hour_spread, day_swing, drift_per_week;
	bool trend;
};

struct ts_against_result {
	const char *name;
	struct ts_range ph, gh_dh, kh_dh, conductivity_us_cm, no3_mg_l; /* this water, the other */
	double ph_apart, gh_apart_dh, kh_apart_dh, conductivity_apart_us_cm, no3_apart_mg_l;
	struct ts_texts says;
	struct ts_advice_line
		*advice; /* this water as the tank's, the other as what is poured in */
	size_t advice_count;
};

struct ts_water_result {
	const char *name;
	double kept_age_days;
	const char *headline, *decides; /* the answer in a line; what it rests on */
	const char *suits_says;         /* whose home it is like; NULL: not to be said */
	const char *class_says; /* GH and KH where the first line is not of them; NULL: it is */
	const char *buffer_says, *oxygen_says, *salt_says; /* NULL: not read */
	struct ts_texts notes; /* of `unusual` what the first lines have not said; no row */
	struct ts_water_facts facts;
	double nh3_n_mg_l;
	struct ts_hardness_result *hardness;
	struct ts_ion_result *ions;
	size_t hardness_count, ion_count; /* those that are known */
	struct ts_texts unusual, assumed, drinking_water;
	struct ts_unknown_result *unknown;
	size_t unknown_count;
	struct ts_danger_result *dangers;
	size_t danger_count;
	const struct ts_danger_result *worst; /* of them the one that leads; NULL: none; no row */
	struct ts_over_time_result *over_time;
	size_t over_time_count;
	const char *over_time_says; /* NULL: there is nothing over time */
	const char *next_to_measure, *how_to_sample;
	struct ts_against_result *against; /* NULL: no other water was given */
};

/* Of enum ts_water_fact, of enum ts_danger_id; NULL-terminated. */
extern const char *const ts_water_fact_words[];
extern const char *const ts_water_poison_words[];

/* TS_NO_MEMORY, `*ret` then untouched. All of it belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_water_answer(const struct ts_asking *asking,
	const struct ts_water_question *question, struct ts_water_result *ret);

/* Whether anything was read that says what the water is. */
bool ts_water_answered(const struct ts_water_result *result);

/*
 * Of a water that nobody read (a mixture, a recipe): all but name, dangers, what to measure and
 * `against`. `profile` NULL, or that of a part that could not be computed.
 */
void ts_water_answer_facts(const struct ts_asking *asking, const struct ts_profile *profile,
	const struct ts_water_facts *facts, struct ts_water_result *ret);

/* Which of two waters is the tank. */
enum ts_water_tank { TS_WATER_TANK_NONE, TS_WATER_TANK_FIRST, TS_WATER_TANK_SECOND };

/* Compares two answered waters into `result`->against; the profiles are those behind them. */
TS_MUST_USE enum ts_status ts_water_answer_against(const struct ts_asking *asking,
	enum ts_water_tank tank, const struct ts_profile *profile,
	const struct ts_profile *other_profile, const struct ts_water_result *other,
	struct ts_water_result *result);

/* What the difference between a tank and the water it is filled with means. */
void ts_water_compare(const struct ts_asking *asking, const struct ts_water_facts *tank,
	const struct ts_water_facts *tap, struct ts_texts *ret);

#endif
