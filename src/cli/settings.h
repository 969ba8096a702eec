/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a user has settled for all calls: one table of rows, from which the file config.yaml beside
 * the kept tap, the environment, the command config, help, man page, completion and docs are read.
 * A flag wins over the environment, the environment over the file. A page has none of it
 * (page/no_shell.c).
 */
#ifndef TS_CLI_SETTINGS_H
#define TS_CLI_SETTINGS_H

#include "model/shape.h"

struct session;
struct options;

/* Of each the first word is as it is without a setting; all zero: nothing is settled. */
struct settings {
	int hardness, temperature, volume, length; /* of figures that are typed without a unit */
	int names, decimal, color, letters;
	double lines;                   /* of a list on a terminal; 0: a dozen or so */
	const char *kept;               /* a folder; NULL: that beside the tap */
	unsigned long from_environment; /* bits of the rows */
};

extern const struct ts_shape settings_shape;

/* The file, there or not; NULL without a home folder. */
const char *settings_path(struct session *session);

/* The variable of the environment for a row: TAPSHOAL_NAMES of "names". */
void settings_variable(const struct ts_field *field, char ret[32]);

/* What would be right where a value is of its kind and yet no setting; NULL: it is one. */
const char *settings_refused(const struct ts_field *field, const struct settings *settings);

/* How many faults of a file of settings were found; each becomes a warning in `io` (NULL: none). */
size_t settings_faults(const struct ts_findings *found, struct ts_findings *io);

/* Room for a figure and its unit. */
#define SETTINGS_ROOM 64

#ifndef TS_IN_PAGE
/* The user's settings into the session. What is wrong there is a warning each, and left out. */
void settings_load(struct session *session);
/* What flags may be in their place, once these are read; and what the settings made of figures. */
void settings_take(struct session *session, struct options *options);

/* The figure with the unit that is settled for it, in `room`, where it has none of its own. */
const char *settings_unit(const struct settings *settings, enum ts_quantity quantity,
	const char *value, char room[SETTINGS_ROOM]);
/* The same of a figure inside a value; the answer tells of it. */
const char *settings_unit_told(struct session *session, enum ts_quantity quantity,
	const char *value, char room[SETTINGS_ROOM]);

/* Puts the names of the language that is settled first, for an answer that people read. */
enum ts_status settings_names(struct session *session);
/* Puts the decimal mark that is settled into an answer that people read. */
void settings_decimal(struct session *session);
/* The folder of what is kept, and the entries of a list; NULL and 0: not settled. */
const char *settings_kept(const struct session *session);
size_t settings_lines(const struct session *session);
#else
#define settings_load(session) ((void)0)
#define settings_take(session, options) ((void)0)
#define settings_unit(settings, quantity, value, room) ((void)(room), (value))
#define settings_unit_told(session, quantity, value, room) ((void)(room), (value))
#define settings_names(session) (TS_OK)
#define settings_decimal(session) ((void)0)
#define settings_kept(session) ((const char *)NULL)
#define settings_lines(session) ((size_t)0)
#endif

#endif
