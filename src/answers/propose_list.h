/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the two halves of the answer of propose: the whole (propose.c) and one list
 * (propose_list.c).
 */
#ifndef TS_ANSWERS_PROPOSE_LIST_H
#define TS_ANSWERS_PROPOSE_LIST_H

#include "answers/propose.h"

struct ts_proposing {
	const struct ts_asking *asking;
	const struct ts_propose_question *question;
	struct ts_wish wish;
	struct ts_profile read;    /* the water as it was read */
	struct ts_profile profile; /* that the animals meet: what was not read is taken */
	struct ts_tank tank;       /* with a lid, where nothing was said of one */
	struct ts_proposal p;
	struct ts_propose_result *out;
	bool filter_young, filter_unknown; /* unknown: nothing was said of it */
	struct ts_text text;               /* scratch */
};

/* Tells one list. */
void ts_propose_list(
	struct ts_proposing *work, size_t place, struct ts_propose_community_result *ret);

/* Adds "neon tetras"; one alone keeps its name. */
void ts_propose_put_kind(struct ts_proposing *work, const struct ts_company *line);
/* What is bought when. */
void ts_propose_purchases(struct ts_proposing *work, const struct ts_community *community,
	struct ts_propose_community_result *ret);

/* On what condition a list works that no list works without. */
void ts_propose_conditions(
	struct ts_proposing *w, const struct ts_community *c, struct ts_texts *ret);

/* Lid and buffer that the lists rest on, and the weeks before any animal. */
void ts_propose_notes(struct ts_proposing *work);
/* Who waits for a surer reading, by parameter. */
void ts_propose_waiting(struct ts_proposing *work);

/* Adds why an animal is no candidate; cautions in words, of one that nobody is advised to buy. */
void ts_propose_say_left_out(struct ts_proposing *work, const struct ts_candidacy *candidacy);
/* All of them. */
void ts_propose_left_out(struct ts_proposing *work);

/* Adds "10 neon tetra (Paracheirodon innesi)", with the sexes where they matter. */
void ts_propose_say_company(struct ts_text *text, const struct ts_company *line);
/* Adds the animal that a list serves worst and by what. */
void ts_propose_say_limiting(struct ts_text *text, const struct ts_community *community);

#endif
