/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the files of the command propose share: the answer (propose.c makes it), its sentences and
 * document (propose_say.c), its JSON (propose_fill.c).
 */
#ifndef TS_CLI_PROPOSE_H
#define TS_CLI_PROPOSE_H

#include "cli/commands.h"
#include "model/practice.h"
#include "stock/propose.h"

struct propose_answer {
	struct answer answer;
	struct ts_keeping keeping; /* with the tank's temperature */
	struct ts_plan plan;       /* of --like, with the water and tank of the call */
	struct ts_practice practice;
	struct ts_wish wish;
	struct ts_proposal proposal;
	struct ts_ruling *held; /* why nothing is bought now, gravest first */
	size_t held_count;
	bool filter_young;
	const struct ts_candidacy *why; /* of --why; NULL: not asked */
	struct ts_community why_best;   /* the best list that holds it */
};

/* Adds "10 neon tetra (Paracheirodon innesi)", with the sexes where they matter. */
void propose_say_company(struct ts_text *text, const struct ts_company *line);
/* Adds "4..10 dH, from X to Y": the band that a list shares and who sets its ends. */
void propose_say_shared(struct ts_text *text, int parameter, const struct ts_shared *shared);
/* Adds why a species is no candidate, one sentence. */
void propose_say_left_out(struct ts_text *text, const struct propose_answer *answer,
	const struct ts_candidacy *candidacy);
/* Adds the animal that a list serves worst and by what. */
void propose_say_limiting(struct ts_text *text, const struct ts_community *community);

/* The whole answer as a document, or as JSON. */
void propose_document(struct session *session, const struct propose_answer *answer);
void propose_json(struct session *session, const struct propose_answer *answer);

#endif
