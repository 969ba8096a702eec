/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where the shipped species records lie: beside an installed program, or in the source tree of a
 * program that is run from its build folder.
 */
#ifndef TS_CLI_PATHS_H
#define TS_CLI_PATHS_H

#include <tapshoal/base.h>

/* The shipped folder, taken from `arena`; NULL when it is in neither place. */
const char *paths_shipped_species(struct ts_arena *arena);

#endif
