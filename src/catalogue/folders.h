/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reading folders without letting one record replace another: what lint needs, which has to see
 * every file. The public half stands in tapshoal/catalogue.h.
 */
#ifndef TS_CATALOGUE_FOLDERS_H
#define TS_CATALOGUE_FOLDERS_H

#include <tapshoal/catalogue.h>

#include "system/system.h"

/* As ts_catalogue_add_folder(), but species that stand twice are kept, next to one another. */
TS_MUST_USE enum ts_status ts_catalogue_read(
	struct ts_catalogue *catalogue, const char *folder, struct ts_findings *findings);

/* Sees one record file of a folder; its status is the walk's, if it is the worst. */
typedef enum ts_status ts_record_visit(void *state, const char *path, const struct ts_seen *seen);

/*
 * Shows every record below a folder, sorted, except those of its `sources`, to `visit`; paths are
 * taken from `arena`. What is no file or cannot be looked into is a finding; so are links that lead
 * nowhere and folders below four others, which stop nothing. `seen` is NULL where a file cannot be
 * looked at. The worst status.
 */
TS_MUST_USE enum ts_status ts_catalogue_walk(const struct ts_system *system, struct ts_arena *arena,
	const char *folder, ts_record_visit *visit, void *state, struct ts_findings *findings);

/*
 * Adds records that were made elsewhere as one more folder; they belong to the catalogue's arena.
 * As ts_catalogue_add_folder() from there.
 */
TS_MUST_USE enum ts_status ts_catalogue_take(struct ts_catalogue *catalogue, const char *folder,
	struct ts_species *species, size_t count);

#endif
