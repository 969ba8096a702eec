/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The command line: one table of flags, and every key of a reading as a flag beside it. Help,
 * parsing and errors read the same rows.
 */
#ifndef TS_CLI_OPTIONS_H
#define TS_CLI_OPTIONS_H

#include <tapshoal/match.h>

#include "base/text.h"
#include "catalogue/traits.h"
#include "report/screen.h"
#include "units/units.h"

#define TS_VALUES_MOST 16
#define TS_ARGUMENTS_MOST 256

struct session;
struct settings;

/* One command. */
struct command {
	const char *name;
	enum ts_status (*run)(struct session *session);
	const char *usage;
	const char *formats; /* of --format, separated by blanks; the first is the default */
	bool readings;       /* takes readings of a water as flags */
	bool traits;         /* takes what records say in words as flags (catalogue/traits.h) */
	const char *says;
	const char *file; /* a file that it takes, as an example; NULL: none is shown */
};

enum format {
	FORMAT_TEXT,
	FORMAT_JSON,
	FORMAT_CSV,
	FORMAT_HTML,
	FORMAT_ICS,
	FORMAT_BRIEF,
	FORMAT_LINES
};

/* What a flag that may be repeated gave. */
struct values {
	const char *items[TS_VALUES_MOST];
	size_t count;
};

/* A tank inside, from --size. */
struct box {
	double length_cm, width_cm, height_cm; /* 0: not given */
};

/* One member a flag (options.c has the rows). Texts point into argv. */
struct options {
	const char *water_file; /* the first of `waters`; NULL: none */
	struct values waters;   /* of why: several */
	const char *practice_file, *output, *today, *name, *family, *source, *supply_zone;
	const char *against;    /* of water */
	const char *batch_file; /* of rank and why: a table of waters */
	const char *on;         /* of note: the day of the reading */
	const char *season;
	const char *page; /* of ask-back: its address */
	const char *from; /* of page: a page of ours */
	bool own;         /* of page: the user's records and the kept tap */
	struct values folders;
	int format; /* enum format */
	int aim, origin;
	bool fresh, softened, acids, help, version, quiet, only_catalogue, no_color, ascii, fixed,
		summary;
	bool base, nightly;
	struct ts_measure dose, towards;
	const char *shop_file, *to;          /* of remake and arrive, to the next blank */
	struct values wished, have, columns; /* columns: of a notebook */
	struct ts_measure volume, change_percent, hours, room;

	size_t days;
	int top_up, dates;
	const char *only; /* of rank: verdicts with commas between them */
	bool all, any_size;
	const char *tank_file, *like, *why, *plan_out, *model_out;
	struct box size;
	struct values with, without, there;
	struct values signs;    /* of check, as a sign of a plan is written */
	struct values happened; /* of check, as a note of a tank is written */
	struct values asks;     /* of check: what else is asked */
	const char *filter, *since, *water_change;
	const char *poured; /* of check: what is poured in, as readings */
	struct ts_measure deaths;
	size_t lists, most_species;
	struct ts_measure no3_rise, buffer;
	bool hardy, small_only, lid, mature;
	int theme, bottom;
	const char *centre;
	struct ts_measure temperature, min_length_cm, max_length_cm;

	struct ts_keeping keeping; /* made from aim, origin, fresh, temperature */
	struct ts_reading reading; /* what reading flags gave */
	bool has_reading;
	struct ts_scan_pair hardness; /* how GH and KH were written */
	bool unit_asked;              /* of one of them, or both; the error says so */
	struct ts_filter traits;      /* what trait flags gave; the rest of it is empty */
	const char *arguments[TS_ARGUMENTS_MOST]; /* what is no flag */
	size_t argument_count;
	const struct settings *settings; /* set before it is parsed; NULL: none */
	bool unit_settled;               /* a figure got its unit of them */
};

/* Where the command stands: the first word that is no flag and no flag's value; 0: nowhere. */
int options_command_at(int argc, char **argv);
/* Whether a call asks for JSON, were the rest of it wrong. */
bool options_want_json(int argc, char **argv);

/*
 * Parses arguments 1..argc-1 for a command (NULL: none was named, only --help and --version are
 * taken). False with one line in `error` naming the mistake and what would be right.
 */
bool options_parse(const struct command *command, int argc, char **argv, struct options *ret,
	struct ts_text *error);

/*
 * Sets what a flag or reading would, where it was not given: of what somebody says in a sentence.
 * False: the value is none of its kind, or stands beside a water file.
 */
bool options_take(struct options *io, const char *flag, const char *value, struct ts_text *error);

/* One thing that a command takes, as help, man page and completions show it. */
struct option_view {
	enum { OPTION_FLAG, OPTION_READING, OPTION_TRAIT } group;
	const char *name, *short_name; /* "--water", "-w"; no short name: NULL */
	const char *takes, *says;      /* `takes` NULL: no value */
	const char *const *words;      /* the values there are; NULL: anything */
	bool common;                   /* every command takes it */
};

typedef void options_taker(void *state, const struct option_view *option);

/* Hands every flag of a command to `take`, in their order; the view is gone afterwards. */
void options_each(const struct command *command, options_taker *take, void *state);

/*
 * Adds what a command is, from the tables: usage, two examples, its flags; for a `part`
 * ("readings", "words", "file") that alone. False: it has no such part, and the error says which it
 * has.
 */
bool options_help(struct ts_text *text, const struct command *command, const char *part,
	const struct ts_screen *screen, struct ts_text *error);

#endif
