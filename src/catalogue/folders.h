/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Reading folders without letting one record replace another: what lint needs, which has to see
 * every file. The public half stands in tapshoal/catalogue.h.
 */
#ifndef TS_CATALOGUE_FOLDERS_H
#define TS_CATALOGUE_FOLDERS_H

#include <tapshoal/catalogue.h>

/* As ts_catalogue_add_folder(), but species that stand twice are kept, next to one another. */
TS_MUST_USE enum ts_status ts_catalogue_read(
	struct ts_catalogue *catalogue, const char *folder, struct ts_findings *findings);

#endif
