/* SPDX-License-Identifier: Apache-2.0 */
/* What leads a printed page. */
#ifndef TS_SHOW_SHEET_H
#define TS_SHOW_SHEET_H

#include <tapshoal/profile.h>

#include "report/document.h"

/* Adds the water to show in the shop, and what to ask and look at there. `name` NULL: none. */
void ts_show_sheet(struct ts_document *doc, const char *name, const struct ts_profile *profile);

#endif
