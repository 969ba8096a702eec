/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Files that somebody opens on the page: read strictly, and written back in the one plain form that
 * the page's script reads.
 */
#ifndef TS_PAGE_PLAIN_H
#define TS_PAGE_PLAIN_H

#include "base/text.h"

/*
 * Adds "# KIND" and the file as ts_records_write() writes it. False: it cannot be read; the
 * findings are added instead, one a line.
 */
bool page_plain_write(struct ts_text *out, const char *file);

#endif
