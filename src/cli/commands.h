/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What main hands to a command and what the commands share. One command, one file; the table of
 * commands stands in commands.c.
 */
#ifndef TS_CLI_COMMANDS_H
#define TS_CLI_COMMANDS_H

#include <tapshoal/plan.h>

#include "cli/options.h"
#include "cli/settings.h"
#include "report/document.h"
#include "report/output.h"
#include "report/result.h"

struct session {
	const struct options *options;
	const char *name;               /* of the command; NULL: none was named */
	bool json;                      /* messages are JSON, as the answer is */
	const struct ts_system *system; /* whose files, day and terminal these are */
	struct ts_arena *arena;
	struct ts_catalogue *catalogue;
	struct ts_findings *findings;
	struct ts_practice *practice;
	long today;        /* days since 1970-01-01: the clock's, or --today */
	const char *first; /* what stands above everything else of a text answer; NULL: nothing */
	struct ts_texts taken;     /* names that were not taken as they stand, each in a sentence */
	unsigned long taken_below; /* bits of those that on a screen stand below the answer */
	bool told;                 /* the answer holds the findings: none of them on stderr */
	struct ts_text *out;       /* the answer, printed once at the end */
	struct ts_text *error;     /* one line when the call itself is wrong */
	struct output
		*stream;   /* an answer written piece by piece, closed last of all; NULL: none */
	bool keep;         /* it is whole */
	const char *wrote; /* what was done to a file, should the answer not come through; NULL */
	struct settings settings; /* of the user; zeroed: none */
};

/*
 * One call of the program, its words in `argv` behind the program's name: answer to the system's
 * standard output, what is said beside it added to `messages`. A catalogue that is empty is read
 * when a command wants it; one that is not is taken as it is, unless the call names records of its
 * own, which are read for this call alone.
 */
enum ts_status program_ask(const struct ts_system *system, int argc, char **argv,
	struct ts_catalogue *catalogue, struct ts_text *messages);
/* The same with the messages on standard error, the exit code back. */
int program_run(
	const struct ts_system *system, int argc, char **argv, struct ts_catalogue *catalogue);

/*
 * Whether an argument of a call is a file, and not a name: that of an animal has no folder and no
 * ending, but people name files as they like.
 */
bool file_is(const struct session *session, const char *argument);

/*
 * A file of ours, its findings in the session's; one of another kind is called by its name in the
 * error. Stays as the library's loaders leave it on failure.
 */
enum ts_status file_water(struct session *session, const char *file, struct ts_water *ret);
enum ts_status file_tank(struct session *session, const char *file, struct ts_tank *ret);
enum ts_status file_plan(struct session *session, const char *file, struct ts_plan *ret);

/* What to ask whoever asks. */
enum ts_status command_ask_back(struct session *session);
/* A plan or tank judged. */
enum ts_status command_check(struct session *session);
/* Where a tank goes under its feeding and water changes. */
enum ts_status command_drift(struct session *session);
/* What to test next, and when. */
enum ts_status command_due(struct session *session);
/* Carrying animals home. */
enum ts_status command_arrive(struct session *session);
/* What a shell may complete. */
enum ts_status command_complete(struct session *session);
/* The catalogue searched. */
enum ts_status command_find(struct session *session);
/* What is settled for all calls. */
enum ts_status command_config(struct session *s);
/* Files to begin with. */
enum ts_status command_init(struct session *session);
/* A water remembered. */
enum ts_status command_keep(struct session *session);
/* Species records checked. */
enum ts_status command_lint(struct session *session);
enum ts_status command_log(struct session *session);
/* A reading added to a file. */
enum ts_status command_note(struct session *session);
/* The program as a page, with the user's own in it. */
enum ts_status command_page(struct session *session);
/* Communities for a water and a tank. */
enum ts_status command_propose(struct session *session);
/* The water that several waters make. */
enum ts_status command_mix(struct session *session);
/* The ranked answer over the whole catalogue. */
enum ts_status command_rank(struct session *session);
/* A report to a water file. */
enum ts_status command_read(struct session *session);
/* Another water: recipe and stages. */
enum ts_status command_remake(struct session *session);
/* What acid or base does to a water, dose by dose. */
enum ts_status command_titrate(struct session *session);
/* What one water is. */
enum ts_status command_water(struct session *session);
/* What fails in a tank, or becomes of it: how long it lasts, what to do by when. */
enum ts_status command_what_if(struct session *session);
/* Some species in full. */
enum ts_status command_why(struct session *session);

/* The row of a command; NULL: there is none of that name. */
const struct command *command_named(const char *name);
/* The nearest name of a command, NULL: none is near. */
const char *command_nearest(const char *name);
/* The rows in their order; NULL behind the last. */
const struct command *command_at(size_t index);
/* Adds what somebody reads who typed the bare name: the three most useful commands. */
void command_first_words(struct ts_text *text, const char *plan);
/* Adds the version, and on a second line those of the libraries that are running. */
void command_version(struct ts_text *text);
/* Adds the overview of all commands. */
void command_overview(struct ts_text *text, const struct ts_screen *screen);

/*
 * The species of a name. One that was taken for another name is told by every answer that is
 * written from here on. NULL: `*ret` says why, see ts_catalogue_species().
 */
const struct ts_species *session_species(
	struct session *session, const char *name, struct ts_candidates *ret);
/* The same of an animal that a call names, with or without how many: "10 neon tetra". */
const struct ts_species *session_animal(
	struct session *session, const char *words, struct ts_candidates *ret);

/* A sentence above the answer, once: of something that was not taken as it stands. */
void session_tell(struct session *session, const char *says);

/* Whether somebody reads the answer on a terminal: as text, and not in a file. */
bool session_terminal(const struct session *session);
/* How many of a long list are shown: as the user has set it, else `otherwise`; 0: all. */
size_t session_lines(const struct session *session, size_t otherwise);
/* Adds the document in the format asked for, as this terminal takes it. */
void session_write(struct session *session, const struct ts_document *doc);
/* Adds the answer as one JSON document. */
void session_json(struct session *session, const char *command, const struct ts_result_shape *shape,
	const void *result);
/* Adds rows as CSV. */
void session_csv(struct session *session, const struct ts_result_shape *shape, const void *rows,
	size_t count);

/* One question answered: the water, its profile, and a match per species asked about. */
struct answer {
	struct ts_water water;
	struct ts_reading reading; /* what reading flags gave */
	double kept_age_days;      /* of the kept tap; NAN: another water, or no date */
	struct ts_tank tank;       /* of --tank, --size or --volume; zeroed: none was given */
	double assumed_litres; /* the sides of the tank were assumed from these; 0: they were not */
	struct ts_keeping keeping; /* of the flags, the temperature of the tank where none is */
	struct ts_profile profile;
	struct ts_match *matches;
	size_t count;
	size_t of[TS_VERDICT__COUNT]; /* how many of each verdict */
};

/* The water of the call: from its file or from reading flags. */
/*
 * Narrows waters to --season, where it was given. One that no season tells apart (a tank, a reading
 * without season) stays as it is, but one of them must have it. TS_BAD_INPUT with an error that
 * names the seasons there are.
 */
enum ts_status answer_season(struct session *session, struct ts_water *const *waters, size_t count);
enum ts_status answer_water(struct session *session, struct answer *ret);
/* The same; where none was given and none is kept, a water of which nothing is known. */
enum ts_status answer_water_if_any(struct session *session, struct answer *ret);
/* The kept tap, told above the answer; TS_NO: none is kept. */
enum ts_status answer_kept(struct session *session, struct answer *ret);
/* The same where the water is the command's subject: its argument names the file. */
enum ts_status answer_subject(struct session *session, struct answer *ret);
/* The tank of the call, from its file or --size; `*ret` stays as it is where none was given. */
enum ts_status answer_tank(struct session *session, struct ts_tank *ret);
/* Sets a key of a tank as a file of it would, unless `value` is NULL. */
enum ts_status answer_value(struct session *session, const char *flag, const char *key,
	const char *value, struct ts_tank *io);
/*
 * Whether an answer may be written there: TS_BAD_INPUT with an error where it would replace a
 * record of the catalogue, which need not have been opened by this call (catalogue/compiled.h).
 */
enum ts_status answer_may_replace(struct session *session, const char *path);
/* The catalogue: the shipped records, then the folders of the call. */
enum ts_status answer_catalogue(struct session *session);
/* The tank that the animals are for, where one was given, and how they are kept. */
enum ts_status answer_keeping(struct session *session, struct answer *ret);
/* All of these, and the profile; matches are left empty. */
enum ts_status answer_open(struct session *session, struct answer *ret);
/* The same of answer_water_if_any(). */
enum ts_status answer_open_if_any(struct session *session, struct answer *ret);
/* The same with the water of one file, narrowed to the season of the call; with one at hand. */
enum ts_status answer_open_file(struct session *session, const char *file, struct answer *ret);
enum ts_status answer_open_water(
	struct session *session, const struct ts_water *water, struct answer *ret);

/* The water, how the animals are kept, and records of others, a sentence each; NULL: none. */
const char *say_water_kept(struct session *session, const struct answer *answer);
const char *say_animals_kept(struct session *session);
const char *say_overlays_kept(struct session *session);

/* Every finding as JSON. */
void lint_json(struct session *session, size_t files, size_t with_findings);

#endif
