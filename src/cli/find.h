/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What find tells: the species that meet everything asked for, and what the catalogue holds. Shared
 * by the command (find.c) and its rows for programs (find_fill.c).
 */
#ifndef TS_CLI_FIND_H
#define TS_CLI_FIND_H

#include "catalogue/summary.h"
#include "cli/commands.h"

/* One species found. */
struct found {
	const struct ts_species *species;
	const char *name; /* the one that holds the pattern; NULL: none was asked for */
	int far;          /* 0: it is called just so, 1: as words of a name, 2: within a word */
};

struct find_answer {
	const char *pattern;     /* NULL: none */
	struct ts_profile asked; /* the water asked for; nothing given: any */
	struct ts_keeping keeping;
	struct found *items;
	size_t count;
	const struct ts_species *named; /* whose name it is; NULL: of none, or it was found by it */
	struct ts_candidates candidates; /* where nothing was found */
	struct ts_summary summary;       /* over what was found */
};

/* The answer as JSON, or the species found as CSV. */
void find_json(struct session *session, const struct find_answer *answer);
void find_csv(struct session *session, const struct find_answer *answer);

#endif
