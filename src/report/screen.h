/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The document as text for a terminal or a file: wrapped, indented, hues only where asked for.
 */
#ifndef TS_REPORT_SCREEN_H
#define TS_REPORT_SCREEN_H

#include "report/document.h"

/* How a terminal is written to. Zeroed is not valid: take ts_screen_plain. */
struct ts_screen {
	size_t columns; /* 40 or more */
	bool color;     /* bold verdicts, one hue a parameter; words say it all without */
	bool ascii;     /* ASCII alone: charts, and letters of names */
	bool brief;     /* entries without their lines */
	bool unbroken;  /* records stay one line each, however wide: a program reads them */
};

/* 80 columns, no colour, Unicode charts. */
extern const struct ts_screen ts_screen_plain;

/* Adds the whole document. */
void ts_screen_write(
	struct ts_text *out, const struct ts_document *doc, const struct ts_screen *screen);

/*
 * Adds a text wrapped to the screen, as it may be shown (shown.h), and a line's end: the first line
 * goes on at `column`, all further ones start at `indent`.
 */
void ts_screen_wrap(struct ts_text *out, const char *text, size_t column, size_t indent,
	const struct ts_screen *screen);

#endif
