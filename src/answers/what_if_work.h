/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the files of the answer: what_if.c asks and fills the steps, what_if_lasts.c reckons what
 * fails in the tank, what_if_move.c the way into another water.
 */
#ifndef TS_ANSWERS_WHAT_IF_WORK_H
#define TS_ANSWERS_WHAT_IF_WORK_H

#include "answers/what_if.h"
#include "care/lasts.h"
#include "care/stages.h"
#include "stock/waters.h"

struct ts_what_if_work {
	const struct ts_asking *asking;
	const struct ts_what_if_question *question;
	struct ts_waters *waters;
	struct ts_group *groups;
	struct ts_tank tank;         /* with its sides, usual ones where they are not given */
	double net_l, temp_c;        /* NAN: not known; 25 where it is not */
	struct ts_estimate breathes; /* mg/h */
	struct ts_estimate oxygen_h, cools_h;
	struct ts_unfiltered_lasts ammonia;
	const struct ts_species *coldest; /* who bears least cold (or warmth); NULL: nobody known */
	double room_c, limit_c;
	double away_days, evaporates_l, no3_then, kh_then;
	double mass_g, hours;
	bool far, waters_known; /* the other water: beyond a safe step; whether it can be said */
	const struct ts_species *breeds, *outgrows; /* NULL: nobody */
	bool small;                                 /* some are not grown yet */
	double young_then, young_borne;             /* of those that breed most; NAN not known */
	const char *recipe;
	const char *refuses; /* who does not bear the water there; NULL: everybody does */
	struct ts_text text;
	struct ts_what_if_result r;
};

/* "9 hours", "40 minutes", "3 days"; INFINITY is "for good". */
void ts_what_if_hours(struct ts_text *text, double hours);
/* Adds a line of what lasts; takes the text. */
void ts_what_if_add(struct ts_what_if_work *work, const char *what, const struct ts_estimate *hours,
	double limit);

void ts_what_if_oxygen(struct ts_what_if_work *work);
void ts_what_if_warmth(struct ts_what_if_work *work);
void ts_what_if_cooling(struct ts_what_if_work *work);
void ts_what_if_ammonia(struct ts_what_if_work *work);
void ts_what_if_away(struct ts_what_if_work *work);

void ts_what_if_grow(struct ts_what_if_work *work);

void ts_what_if_carried(struct ts_what_if_work *work);
enum ts_status ts_what_if_other_water(struct ts_what_if_work *work);

#endif
