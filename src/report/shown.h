/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a reader is shown of a text that somebody else wrote: names come from files, flags and
 * reports, and may hold anything. Characters that command a terminal or turn its lines around
 * become a mark, as does what is no UTF-8; on a screen of plain letters all others become letters.
 */
#ifndef TS_REPORT_SHOWN_H
#define TS_REPORT_SHOWN_H

#include <stdint.h>

#include "base/text.h"

/* Whether a character may be shown as it is: none that is not seen and does something,
 * no non-character. */
bool ts_shown_harmless(int32_t point);

/*
 * Adds `len` bytes of UTF-8 as they may be shown; a tab or a line's end becomes a blank. `ascii`:
 * nothing but ASCII, accents left out, what no letter stands for as "?".
 */
void ts_shown_add(struct ts_text *out, const char *text, size_t len, bool ascii);

/* Whether it is of ASCII letters alone, each of which takes a column. */
bool ts_shown_plain(const char *text, size_t len);

/* Columns that this takes: wide characters two, combining ones none. */
size_t ts_shown_width(const char *text, size_t len, bool ascii);

/* How many of the bytes fit into `columns`: whole characters with all their accents, one at least.
 */
size_t ts_shown_fit(const char *text, size_t len, size_t columns, bool ascii);

#endif
