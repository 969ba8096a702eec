/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where species records lie: the shipped ones beside an installed program, or in the source tree of
 * a program that is run from its build folder; then those of the machine and of the user.
 */
#ifndef TS_HOME_PATHS_H
#define TS_HOME_PATHS_H

#include <tapshoal/catalogue.h>

#include "system/system.h"

/*
 * The folders to read, weakest first: the shipped one; tapshoal/species in each of XDG_DATA_DIRS,
 * last to first; the user's own in XDG_DATA_HOME. Those that are not there are left out, and a
 * folder met twice is read once. False when there is no shipped folder; the others are
 * there all the same where the records are inside the program. Texts are taken from
 * `arena`.
 */
bool paths_species(const struct ts_system *system, struct ts_arena *arena, struct ts_texts *ret);

/* The image of the shipped folder's records, where the build made one; NULL: it is not there. */
const char *paths_image(const struct ts_system *system, struct ts_arena *arena);

/* The page, where it was built and installed, or lies in the build folder; NULL: it is not there.
 */
const char *paths_page(const struct ts_system *system, struct ts_arena *arena);

/*
 * A file of examples/ by a name that opens it from where the caller stands: the working folder's,
 * the source tree's, the installed one. NULL: there is none, or no memory.
 */
const char *paths_example(const struct ts_system *system, struct ts_arena *arena, const char *name);
/* The same of a folder of examples/. */
const char *paths_examples(
	const struct ts_system *system, struct ts_arena *arena, const char *folder);

#endif
