/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Animals carried home: does the water they go into suit them at all, then the way from the bag
 * into the tank, with its end.
 */
#ifndef TS_ANSWERS_ARRIVE_H
#define TS_ANSWERS_ARRIVE_H

#include <tapshoal/profile.h>

#include "answers/asking.h"
#include "answers/stage_line.h"

struct ts_arrive_question {
	const struct ts_water *tank;
	const struct ts_water *shop; /* without readings: nothing is known of it */
	struct ts_keeping keeping;   /* in the tank */
	const struct ts_species *const *animals;
	size_t animal_count; /* 0: not said */
	double hours;        /* under way; NAN: not said */
};

struct ts_arrive_line {
	const char *when, *says;
};

/* What is not known is NAN or NULL. */
struct ts_arrive_result {
	const char *fit;     /* of the animal that the tank suits least: ts_verdict_words */
	const char *species; /* which that is */
	const char *way, *says, *because;
	const char *keeps;     /* how the water is made such that it suits them */
	const char *instead;   /* who likes the water as it is, in a sentence */
	const char *meanwhile; /* where the water does not suit: what to do if they are here */
	double shop_gh_dh, tank_gh_dh, shop_ec_us_cm, tank_ec_us_cm;
	double gh_apart_percent, ec_apart_percent, bag_ammonia_mg_l;
	bool bag_ammonia_assumed;
	double nh3_bag_mg_l, nh3_aired_mg_l;
	struct ts_arrive_line *steps;
	size_t step_count;
	double start_gh_dh, start_kh_dh, start_ec_us_cm; /* of the quarantine tank */
	struct ts_stage_line *stages;
	size_t stage_count;
	const char *stages_say; /* how to read them */
	struct ts_texts notes, cautions;
	bool passes; /* they may go into this tank today */
};

/* Answers; TS_NO_MEMORY, `*ret` then untouched. All belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_arrive(const struct ts_asking *asking,
	const struct ts_arrive_question *question, struct ts_arrive_result *ret);

#endif
