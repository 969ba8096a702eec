/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules that species records must keep beyond being readable: one function each, named by the code
 * of its finding, run alike by the lint command and by the tests over every record. Rules of one
 * record stand in lint_record.c (values) and lint_habits.c (how it lives), those that need other
 * files in lint_across.c.
 */
#ifndef TS_CATALOGUE_LINT_H
#define TS_CATALOGUE_LINT_H

#include <tapshoal/catalogue.h>

#include "base/text.h"
#include "model/codes.h"

/* Whose name a record claims: accepted, or as a synonym. */
struct ts_claim {
	const char *name;
	const struct ts_species *by;
};

/* A run over a catalogue, and what its rules look up. */
struct ts_lint {
	const struct ts_catalogue *catalogue;
	struct ts_arena arena;
	struct ts_claim *claims; /* sorted by name, case apart */
	size_t claim_count;
	struct ts_texts sources; /* ids of the publications that are described; count 0: unknown */
	size_t source_room;
};

struct ts_lint_rule {
	enum ts_code_id code;
	const char *path; /* of the key it is about; NULL: the whole file */
	/* True when the record keeps the rule; else what is wrong is added to `what`. */
	bool (*keeps)(
		const struct ts_lint *lint, const struct ts_species *species, struct ts_text *what);
};

extern const struct ts_lint_rule ts_lint_record_rules[], ts_lint_habit_rules[],
	ts_lint_across_rules[];
extern const size_t ts_lint_record_rules_count, ts_lint_habit_rules_count,
	ts_lint_across_rules_count;

/* The index-th of all rules, from 0; NULL at the end. */
const struct ts_lint_rule *ts_lint_rule_at(size_t index);

/*
 * Opens a run over a catalogue that was read with ts_catalogue_read(), so that species which stand
 * twice are seen. Publications are those in the `sources` folder of each of its folders; further
 * ones are added below. TS_NO_MEMORY; ts_lint_close() in any case.
 */
TS_MUST_USE enum ts_status ts_lint_open(struct ts_lint *lint, const struct ts_catalogue *catalogue,
	const struct ts_allocator *allocator);
void ts_lint_close(struct ts_lint *lint);

/* Adds the publications of a folder of records (FOLDER/sources); none where there is no such. */
TS_MUST_USE enum ts_status ts_lint_know_sources(struct ts_lint *lint, const char *folder);

/* Runs every rule on one record; each broken one is a finding. True when all are kept. */
bool ts_lint_species(
	const struct ts_lint *lint, const struct ts_species *species, struct ts_findings *findings);

/*
 * Where a key stands in a record: `path` is "group" or "water.GH" at the most. Sets line and column
 * of `io`, from 1; they stay when it is not there, or the file cannot be read. False: no memory.
 */
TS_MUST_USE bool ts_lint_line(
	const struct ts_system *system, const char *file, const char *path, struct ts_place *io);

#endif
