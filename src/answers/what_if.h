/* SPDX-License-Identifier: Apache-2.0 */
/*
 * "The power is off", "we move house": how long a tank lasts, and what to do by when. The steps are
 * rows of care/what_if.h; the figures are reckoned for this tank, and left out where nothing is
 * known of it.
 */
#ifndef TS_ANSWERS_WHAT_IF_H
#define TS_ANSWERS_WHAT_IF_H

#include <tapshoal/plan.h>

#include "answers/asking.h"
#include "answers/stage_line.h"
#include "care/what_if.h"

struct ts_what_if_question {
	const struct ts_what_if_row *row;        /* NULL: which questions there are */
	const struct ts_plan *plan;              /* all its animals live there */
	const struct ts_species *const *species; /* what stock[i].species means; none NULL */
	const char *unknown; /* names that are none, and are not reckoned; NULL: all are known */
	const struct ts_water *other; /* the water there, or from now on; NULL: not known */
	double hours;                 /* it lasts, or they are under way; NAN: not said */
	double room_c;                /* the room, without heating; NAN: not said */
};

/* How long something lasts; INFINITY: it does not end. */
struct ts_what_if_line {
	const char *what, *says;
	double low, hours, high;
	double limit; /* down to which, or up to which */
};

struct ts_what_if_deed {
	const char *when, *says;
	bool card; /* of the card to print */
};

struct ts_what_if_result {
	const char *id, *asks; /* NULL: no question was named */
	const char *says, *because;
	struct ts_what_if_line *lasts;
	size_t lasts_count;
	struct ts_what_if_deed *steps;
	size_t step_count;
	double carry_l, old_water_l; /* in boxes; beside them, where nothing is mended; NAN */
	struct ts_stage_line *stages;
	size_t stage_count;
	struct ts_texts call;  /* a vet, an electrician: when */
	struct ts_texts notes; /* what was assumed, or would tell more */
	struct ts_texts cautions;
	struct ts_texts ids, questions; /* all that there are */
};

/* Answers; TS_NO_MEMORY, `*ret` then untouched. All belongs to the arena of `asking`. */
TS_MUST_USE enum ts_status ts_answer_what_if(const struct ts_asking *asking,
	const struct ts_what_if_question *question, struct ts_what_if_result *ret);

#endif
