/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the parts of the page writer share: an element stack that closes what it opened and escapes
 * by where a text stands. html.c walks the nodes, html_marks.c and html_curve.c draw.
 */
#ifndef TS_REPORT_HTML_PAGE_H
#define TS_REPORT_HTML_PAGE_H

#include "report/document.h"

#define TS_ELEMENTS_MOST 16
#define TS_OUTLINES_MOST 128
#define TS_WATERS_MOST 16

struct ts_page {
	struct ts_text *out;
	const char *open[TS_ELEMENTS_MOST];
	size_t depth;
	const struct ts_bar *waters[TS_WATERS_MOST]; /* whose readings it has drawn by now */
	bool salt;                                   /* a bar of salt is drawn */
	const struct ts_bar *outlines[TS_HUE__COUNT][TS_OUTLINES_MOST]; /* written by now */
	unsigned shared_tags; /* bits of the tags that stand at the list */
	bool in_tag;          /* the start tag still takes attributes */
};

/* Opens an element; `name` is a constant. Too deep is the text's failure. */
void ts_page_open(struct ts_page *page, const char *name);
/* Closes the innermost element; one without content becomes "<name/>". */
void ts_page_close(struct ts_page *page);
/* Opens, fills and closes. */
void ts_page_element(struct ts_page *page, const char *name, const char *text);
/* An attribute of the element just opened; its value is escaped, `name` is a constant. */
void ts_page_attribute(struct ts_page *page, const char *name, const char *value);
/* Text, escaped; what is no UTF-8 or no character of a page becomes U+FFFD. NULL adds nothing. */
void ts_page_text(struct ts_page *page, const char *text);
/*
 * The same, with places to break in words that are wider than a column may be; a short one ("147
 * danger") is kept on one line, unless it heads a column.
 */
void ts_page_cell(struct ts_page *page, const char *text, bool head);
/* A figure without trailing zeros. */
void ts_page_number(struct ts_page *page, double value, int decimals);
/* Bytes as they are: our own style, script and line ends. */
void ts_page_raw(struct ts_page *page, const char *bytes);
/* The class by which a parameter is told apart: "gh"; NULL where there is none. */
const char *ts_page_hue(enum ts_hue hue);

/* The outlines of an entry and the figures below them. */
void ts_page_marks(struct ts_page *page, const struct ts_bar *bars);
/* What the outlines mean, and how far each scale goes. */
void ts_page_marks_key(struct ts_page *page);
/* A chart with its title, and its series and marks in words; nothing without a finite point. */
void ts_page_curve(struct ts_page *page, const struct ts_curve *curve);

#endif
