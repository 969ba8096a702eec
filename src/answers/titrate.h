/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What strong acid or base does to a water, dose by dose, or evening by evening while the tank airs
 * every night. A teaching curve: amounts are per litre, and no answer says how much would bring a
 * tank to a pH.
 */
#ifndef TS_ANSWERS_TITRATE_H
#define TS_ANSWERS_TITRATE_H

#include "answers/asking.h"
#include "care/titrate.h"

struct ts_titrate_question {
	const struct ts_water *water;
	const struct ts_keeping *keeping;
	double kept_age_days; /* of the kept tap; NAN: another water, or no date */
	bool base, nightly;
	double dose_meq_l; /* NAN: a step that reads well */
	double towards_ph; /* of nightly; NAN: 7 */
};

struct ts_titrate_step_result {
	double acid_meq_l, alkalinity_meq_l, kh_dh, ph_closed, co2_mg_l, ph_tank, ph_air;
	const char *co2;
};

struct ts_titrate_night_result {
	double day, dose_meq_l;
	struct ts_titrate_step_result evening;
};

struct ts_titrate_keeper_result {
	double dose_first_meq_l, floor_day, gone_day;
	struct ts_titrate_night_result *nights;
	size_t count;
};

struct ts_titrate_nightly_result {
	double towards_ph, ph_start;
	struct ts_titrate_keeper_result same_dose, by_test;
};

struct ts_titrate_result {
	const char *name;
	double kept_age_days;
	const char *headline, *decides;     /* the answer in a line; what it rests on, or NULL */
	struct ts_texts explains;           /* what happens, and why */
	const char *instead;                /* what changes the pH for good; NULL: not to be said */
	const char *water_says, *airs_says; /* the water in a line; to what it airs */
	bool base;                          /* no row */
	double ph, gh_dh, kh_dh, alkalinity_meq_l, temp_c, tank_co2_times_air;
	struct ts_titrate_step_result *steps;
	size_t step_count;
	struct ts_titrate_step_result *line; /* the same in finer steps, as it is drawn */
	size_t line_count;
	double co2_danger_mg_l; /* from here on CO2 is a danger */
	double floor_acid_meq_l, gone_acid_meq_l;
	struct ts_titrate_nightly_result *nightly;
	const char *cannot; /* why there is no curve; NULL: there is one */
	const char *caution;
};

/* TS_NO_MEMORY, `*ret` then untouched. All of it belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_titrate_answer(const struct ts_asking *asking,
	const struct ts_titrate_question *question, struct ts_titrate_result *ret);

#endif
