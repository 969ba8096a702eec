/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The document as a short text to paste into a message: the verdict, the deciding number, what is
 * dangerous, then the rest in its order for as long as there is room. Whole pieces alone.
 */
#ifndef TS_REPORT_BRIEF_H
#define TS_REPORT_BRIEF_H

#include "report/document.h"

/* Letters at the most, the ends of lines among them. */
#define TS_BRIEF_MOST 600

/*
 * Adds the text, a piece a line. `ascii` as in shown.h.
 */
void ts_brief_write(struct ts_text *out, const struct ts_document *doc, bool ascii);

#endif
