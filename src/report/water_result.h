/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What water and mix tell to programs: one struct, its rows, and how it is filled from the facts.
 * NAN is null.
 */
#ifndef TS_REPORT_WATER_RESULT_H
#define TS_REPORT_WATER_RESULT_H

#include "base/arena.h"
#include "report/advice_result.h"
#include "report/result.h"
#include "water/dangers.h"

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
	struct ts_texts says;
	struct ts_advice_line
		*advice; /* this water as the tank's, the other as what is poured in */
	size_t advice_count;
};

struct ts_water_result {
	const char *name;
	double kept_age_days;
	struct ts_water_facts facts;
	double nh3_n_mg_l;
	struct ts_texts unusual, assumed, drinking_water;
	struct ts_unknown_result *unknown;
	size_t unknown_count;
	struct ts_danger_result *dangers;
	size_t danger_count;
	struct ts_over_time_result *over_time;
	size_t over_time_count;
	const char *next_to_measure, *how_to_sample;
	struct ts_against_result *against; /* NULL: no other water was given */
};

extern const struct ts_result_shape ts_result_water, ts_result_mix;

/*
 * Fills all but name, kept_age_days and against. `profile` and `water` NULL: a mixture, of which
 * nothing was read and nothing is to be measured. Texts and lists live in `arena`.
 */
void ts_water_result_fill(struct ts_arena *arena, const struct ts_water *water,
	const struct ts_profile *profile, const struct ts_water_facts *facts,
	const struct ts_practice *practice, struct ts_water_result *ret);

#endif
