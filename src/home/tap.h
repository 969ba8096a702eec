/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The kept tap: the one water that tapshoal remembers, in the user's own configuration folder.
 * Every answer that used it says so in its first line; TAPSHOAL_NO_CONFIG switches it off.
 */
#ifndef TS_HOME_TAP_H
#define TS_HOME_TAP_H

#include <tapshoal/catalogue.h>

#include <limits.h>

#include "base/text.h"
#include "system/system.h"

/* The user's own configuration folder of this program; NULL without a home folder. */
const char *tap_folder(const struct ts_system *system, struct ts_arena *arena);
/* Makes a folder and those above it; why it could not, as struct ts_system has it. */
int tap_make_folder(const struct ts_system *system, struct ts_arena *arena, const char *folder);

/* Where it lies: tap.yaml in XDG_CONFIG_HOME/tapshoal; NULL without a home folder. */
const char *tap_path(const struct ts_system *system, struct ts_arena *arena);

/*
 * The kept water. TS_NO when there is none, or TAPSHOAL_NO_CONFIG is set; errors of the file are
 * findings, as of any water.
 */
TS_MUST_USE enum ts_status tap_load(const struct ts_system *system, struct ts_arena *arena,
	struct ts_water *ret, struct ts_findings *findings);

/*
 * Remembers a water in the place of the one before, which a full disk leaves as it was. If the one
 * before holds more than tapshoal keep wrote itself, its file goes to `*ret_aside` first, else that
 * is NULL. TS_SYSTEM with one line in `error`.
 */
TS_MUST_USE enum ts_status tap_keep(const struct ts_system *system, struct ts_arena *arena,
	const struct ts_water *water, long today, const char **ret_aside, struct ts_text *error);

/*
 * The day it is: the one given as --today, or the clock's. False: `given` is no day.
 */
bool tap_today(const struct ts_system *system, const char *given, long *ret);

#define TAP_NO_DAY LONG_MIN
/*
 * Days from its newest dated reading, else from the day on which it was kept; TAP_NO_DAY: it has
 * none. Below 0: that day is ahead of today.
 */
long tap_age_days(const struct ts_water *water, long today, bool *ret_read);

/* Adds "The water is your kept tap, kitchen: read 12 days ago." */
void tap_say(struct ts_text *out, const struct ts_water *water, long today);

#endif
