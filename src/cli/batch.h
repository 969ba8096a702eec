/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A table of waters answered line by line (rank --batch, why --batch): what the two ask of a row.
 */
#ifndef TS_CLI_BATCH_H
#define TS_CLI_BATCH_H

#include "cli/commands.h"

struct batch_question {
	const char *command;
	const struct ts_result_shape *shape; /* of a line */
	size_t rows;                         /* that are answered together */
	void *state;                         /* handed to both functions */
	/* What no row changes; the catalogue is loaded, `answer` holds tank and keeping. */
	enum ts_status (*open)(void *state, struct session *session, const struct answer *answer);
	/*
	 * Fills a zeroed struct of the shape, in the memory of `row`, whose findings are those of
	 * the line; `answer` NULL: it could not be read. Several rows are answered at the same
	 * time. Sets `*ret_nothing` where the water suits nothing. False: no memory.
	 */
	bool (*answer)(const void *state, struct session *row, const struct answer *answer,
		const char *name, unsigned line, void *ret, bool *ret_nothing);
};

/* Answers the table of --batch: CSV with -f csv, else a line of JSON a row. */
enum ts_status batch_run(struct session *session, const struct batch_question *question);

/* The findings of a row, each in a sentence. */
struct ts_texts batch_findings(const struct session *row);

#endif
