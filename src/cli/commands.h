/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What main hands to a command and what the commands share. One command, one file; the table of
 * commands stands in main.c.
 */
#ifndef TS_CLI_COMMANDS_H
#define TS_CLI_COMMANDS_H

#include "cli/options.h"

struct session {
	const struct options *options;
	struct ts_arena *arena;
	struct ts_catalogue *catalogue;
	struct ts_findings *findings;
	struct ts_text *out;   /* the answer, printed once at the end */
	struct ts_text *error; /* one line when the call itself is wrong */
};

/* Species records checked. */
enum ts_status command_lint(struct session *session);
/* The ranked answer over the whole catalogue. */
enum ts_status command_rank(struct session *session);
/* Some species in full. */
enum ts_status command_why(struct session *session);

/* One question answered: the water, its profile, and a match per species asked about. */
struct answer {
	struct ts_water water;
	struct ts_reading reading; /* what reading flags gave */
	struct ts_profile profile;
	struct ts_match *matches;
	size_t count;
	size_t of[TS_VERDICT__COUNT]; /* how many of each verdict */
};

/* Loads catalogue and water and makes the profile; matches are left empty. */
enum ts_status answer_open(struct session *session, struct answer *ret);

/* Adds the water in one line; print_notes: what is unusual about it and the next thing to measure.
 */
void print_water(struct ts_text *out, const struct answer *answer, const struct options *options);
void print_notes(struct ts_text *out, const struct answer *answer);

/* "Paracheirodon innesi (neon tetra)" */
void print_name(struct ts_text *out, const struct ts_species *species);
/* "4 cm, from 6, tank from 60 cm" */
void print_room(struct ts_text *out, const struct ts_species *species);
/* "venomous, expert-only"; nothing where there is no caution. */
void print_cautions(struct ts_text *out, const struct ts_species *species);
/* Adds text wrapped at 80 columns, every line indented. */
void print_wrapped(struct ts_text *out, const char *text, size_t indent);

/* The whole answer as JSON. */
void print_json(struct ts_text *out, const struct answer *answer, const char *command);

#endif
