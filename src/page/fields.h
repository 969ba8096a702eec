/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What can be filled in on the page: the rows of readings, tanks and animals, with their units,
 * words and sentences, so that a new key is a new field without a line of script.
 */
#ifndef TS_PAGE_FIELDS_H
#define TS_PAGE_FIELDS_H

#include "base/text.h"

/* Adds one JSON document with a member a shape, and one with all units. */
void page_fields_write(struct ts_text *out);

#endif
