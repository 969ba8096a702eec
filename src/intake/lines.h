/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Bytes to plain lines: line ends, UTF-8 with a fall-back to Latin-1, accents folded, the many
 * signs for degree, micro and dash made one. lexer.c reads the plain text; what was printed stays
 * beside it for the answer.
 */
#ifndef TS_INTAKE_LINES_H
#define TS_INTAKE_LINES_H

#include "intake/report.h"

/* What is longer than a line of any report is cut, so that memory stays bounded. */
#define TS_LINE_MOST 8192

struct ts_report_line {
	unsigned number;
	char raw[TS_LINE_MOST];
	size_t raw_len;
	bool cut;                              /* the line was longer */
	bool latin;                            /* it is not UTF-8 and was read as Latin-1 */
	bool scanned;                          /* this line or one before is a scan's; stays */
	char plain[TS_LINE_MOST + 1];          /* ASCII with case; NUL-terminated */
	char lower[TS_LINE_MOST + 1];          /* the same in lower case */
	unsigned short from[TS_LINE_MOST + 1]; /* byte of raw behind each byte of plain */
	size_t len;
};

/* Makes plain, lower and from of what stands in raw. */
void ts_line_fold(struct ts_report_line *line);

/* What the first bytes are when they are no text; NULL when they may be a report. */
const struct ts_report_refusal *ts_bytes_refused(const char *bytes, size_t len);

/* The same for a byte that no text holds; NULL for every other. */
const struct ts_report_refusal *ts_byte_refused(char byte);

/*
 * Writes a piece of the raw line as UTF-8, runs of blanks as one, none at the ends, cut with " ..."
 * where `room` bytes do not hold it. `room` is at least 16.
 */
void ts_line_show(
	const struct ts_report_line *line, size_t start, size_t end, char *out, size_t room);

/* End of the cell that starts at `at`; quotes hold a delimiter back. */
size_t ts_line_cell_end(const struct ts_report_line *line, size_t at, char delimiter);

/* True when the commas of a line separate cells: every cell is a word or one whole figure. */
bool ts_comma_separated(const struct ts_report_line *line);

#endif
