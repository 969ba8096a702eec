/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of the answer remake share: the question computed (remake.c), whom the water suits
 * without any work (remake_as_it_is.c), the first lines (remake_says.c), what stands beside the
 * recipe (remake_notes.c).
 */
#ifndef TS_ANSWERS_REMAKE_WORK_H
#define TS_ANSWERS_REMAKE_WORK_H

#include "answers/remake.h"
#include "care/plan_state.h"
#include "words/remake.h"

struct ts_remake_work {
	const struct ts_asking *asking;
	const struct ts_remake_question *question;
	struct ts_profile profile; /* of the water at hand */
	struct ts_waters waters;
	struct ts_plan_state state;
	struct ts_remake_wish wish;
	double volume_l, change_percent;
	bool volume_known;
	struct ts_remake remake;
	enum ts_remake_verdict verdict;
	struct ts_advice danger; /* row NULL: none */
	struct ts_ruling apart;  /* a wished animal and a resident that do not live together */
	bool are_apart;
	bool unneeded; /* those who live there like GH and KH as they are */
	struct ts_text text;
	struct ts_remake_result r;
};

/* The scratch text as a sentence of the arena. */
const char *ts_remake_keep(struct ts_remake_work *w);

/* Whether a recipe is shown: not before the tank is made safe, since it would be used. */
bool ts_remake_has_recipe(const struct ts_remake_work *w);

/* Add what to do, and the number that decides, to the scratch text. */
void ts_remake_say_what(struct ts_remake_work *w);
void ts_remake_say_because_of(struct ts_remake_work *w);

/* Fills the wished that bear the water as it is, and at most five others that it suits. */
void ts_remake_as_it_is(struct ts_remake_work *w);

/* Fills notes, routine, groups and cautions. */
void ts_remake_notes(struct ts_remake_work *w);

#endif
