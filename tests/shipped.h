/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The shipped records as a group of tests asks of them: read once before it, dropped behind it.
 * TS_SPECIES_DIR is their folder.
 */
#ifndef TS_TESTS_SHIPPED_H
#define TS_TESTS_SHIPPED_H

#include <tapshoal/catalogue.h>

static struct ts_catalogue catalogue;

static inline int shipped_open(void **state)
{
	(void)state;
	ts_catalogue_open(&catalogue, NULL);
	return ts_catalogue_add_folder(&catalogue, TS_SPECIES_DIR, NULL) == TS_OK ? 0 : -1;
}

static inline int shipped_close(void **state)
{
	(void)state;
	ts_catalogue_close(&catalogue);
	return 0;
}

#endif
