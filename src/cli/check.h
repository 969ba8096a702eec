/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the two halves of the check command share: check.c asks and shows, check_fill.c tells it
 * to programs.
 */
#ifndef TS_CLI_CHECK_H
#define TS_CLI_CHECK_H

#include "care/advice.h"
#include "cli/commands.h"
#include "stock/check.h"

/* A plan, what its names mean, and what came out. */
struct check_answer {
	const char *file;
	struct ts_plan plan;
	const struct ts_species **species;
	struct ts_candidates *candidates; /* of each line without a species */
	struct ts_check check;
	/* About the water of a running tank; none for one that holds no animals yet. */
	struct ts_advice advice[TS_ADVICE_MOST];
	size_t advice_count;
	const struct ts_match *residents;
};

/* Adds what a finding says; an unknown name with what it may have meant. */
void check_say(struct ts_text *text, const struct check_answer *answer, const struct ts_ruling *r);

/* Whether advice on the water goes before any change of it that a finding would name. */
bool check_advised(const struct check_answer *answer);

/* Adds one step of the repair: "tiger barb: 8 instead of 4", "leave out tiger barb (4)". */
void check_say_step(struct ts_text *text, const struct ts_repair_step *step);

/* The whole answer as JSON. */
void check_json(struct session *session, const struct check_answer *answer);

#endif
