/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Between the parts of rank: the answer for one water (rank.c), for a table of them (batch.c), and
 * what programs are told (rank_fill.c).
 */
#ifndef TS_CLI_RANK_H
#define TS_CLI_RANK_H

#include "cli/commands.h"

/* Room for a match a species of the catalogue; false: no memory. */
bool rank_open(const struct session *session, struct answer *answer);
/* Every species against the profile of the answer, best first; used again for the next water. */
void rank_match(const struct session *session, struct answer *answer);

/* rank --batch: one line of JSON a row. */
enum ts_status rank_batch(struct session *session);

/* Adds one such line; `answer` NULL: the row was not ranked, the findings of the session say why.
 */
void rank_line_json(
	struct session *session, const char *name, unsigned line, const struct answer *answer);

#endif
