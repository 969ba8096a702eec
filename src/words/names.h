/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Sentences about the catalogue itself: what a name may have meant, and which records did not come
 * with the program.
 */
#ifndef TS_WORDS_NAMES_H
#define TS_WORDS_NAMES_H

#include <tapshoal/catalogue.h>

#include "base/text.h"

/*
 * Adds one line for a name that ts_catalogue_species() did not take: "'gupy' is no name in the
 * catalogue; did you mean guppy (Poecilia reticulata)?"
 */
void ts_say_candidates(
	struct ts_text *text, const char *name, const struct ts_candidates *candidates);

/* Adds which animals a name of several means: "Take one of: yellow lab (...), ...". */
void ts_say_members(struct ts_text *text, const char *name, const struct ts_candidates *candidates);

/* Whether all who belong to a group threaten people, or are bound by law. */
bool ts_group_warns(const struct ts_candidates *group);

/* Adds those dangers: "its sting needs a hospital: not for a home tank". */
void ts_say_group_warning(struct ts_text *text, const struct ts_candidates *group);

/*
 * Adds one line for a name that was taken, but not as it stands: "'gupy' is taken for guppy
 * (Poecilia reticulata)". Nothing where it was the very name.
 */
void ts_say_taken(struct ts_text *text, const char *name, const struct ts_candidates *candidates);

/*
 * Counts what a folder of the catalogue gave: species that no earlier folder had, and species whose
 * record stands in the place of an earlier one.
 */
void ts_overlay_count(const struct ts_catalogue *catalogue, size_t folder, size_t *ret_added,
	size_t *ret_replaced);

/*
 * Adds one line a folder behind the first: "Records from FOLDER: 1 added (Exempla nova), 1 in place
 * of another (Exempla mollis)." Nothing where there is none.
 */
void ts_say_overlays(struct ts_text *text, const struct ts_catalogue *catalogue);

#endif
