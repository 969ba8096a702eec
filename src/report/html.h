/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The document as one page that stands alone: style and script are inside, nothing is fetched, and
 * it is whole without script. It is well-formed as XML too, so that a test can take it apart.
 */
#ifndef TS_REPORT_HTML_H
#define TS_REPORT_HTML_H

#include "report/document.h"

/* Adds the whole page, from its doctype to its last line's end. */
void ts_html_write(struct ts_text *out, const struct ts_document *doc);

#endif
