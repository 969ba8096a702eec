/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A folded line to tokens: terms by the table, figures by hand. It knows no layout; entry.c makes
 * sense of the order.
 */
#ifndef TS_INTAKE_LEXER_H
#define TS_INTAKE_LEXER_H

#include "intake/lines.h"
#include "intake/terms.h"

enum ts_token_kind {
	TS_TOKEN_TERM,   /* `term` tells */
	TS_TOKEN_NUMBER, /* "5,72" */
	TS_TOKEN_RANGE,  /* "98-154" */
	TS_TOKEN_BELOW,  /* "<0.1" */
	TS_TOKEN_ABOVE,  /* ">60" */
	TS_TOKEN_DASH,   /* "-" where a figure might stand */
	TS_TOKEN_OPEN,   /* "(" */
	TS_TOKEN_CLOSE,  /* ")" */
	TS_TOKEN_OTHER   /* words that no row knows */
};

#define TS_FIGURE_ROOM 48

struct ts_token {
	enum ts_token_kind kind;
	unsigned short cell;       /* 0 = first */
	unsigned short start, end; /* bytes of the plain line */
	const struct ts_term *term;
	bool torn;                   /* of a scan: a blank before or behind may be inside it */
	char figure[TS_FIGURE_ROOM]; /* as the scanner of units/ reads it: "<0.1", "98..154" */
	double first, second;        /* as printed; second = end of a range */
};

#define TS_TOKENS_MOST 256

/* Cells of a line of which the places are kept. */
#define TS_LINE_CELLS_MOST 64

struct ts_tokens {
	struct ts_token at[TS_TOKENS_MOST];
	size_t count;
	size_t cells;
	struct {
		unsigned short start, end;
	} cell_at[TS_LINE_CELLS_MOST]; /* bytes of the plain line */
	bool delimited;                /* cells were separated by a sign, not by blanks */
	char sign;                     /* that sign */
	bool overfull;                 /* the line held more */
	char bound;                    /* a lone '<' or '>' that ended a cell; 0 = none */
	size_t bound_cell;
};

struct ts_lexer;

/* Compiles the patterns of the table; NULL when there is no memory. */
struct ts_lexer *ts_lexer_open(const struct ts_allocator *allocator);
void ts_lexer_close(struct ts_lexer *lexer);

/*
 * Splits the line into tokens. `delimiter` is the sign that separates cells in this file (',', ';'
 * or tab), 0 = only what the line itself shows ('|', tab, ';'). Fillers and noise leave no token.
 */
void ts_lex(struct ts_lexer *lexer, const struct ts_report_line *line, char delimiter,
	struct ts_tokens *ret);

/* Whether memory ran out: words may have been passed over. */
bool ts_lexer_no_memory(const struct ts_lexer *lexer);

/* Words inside patterns that were refused: 0, or the table is wrong. For the tests. */
size_t ts_lexer_unsound(const struct ts_lexer *lexer);

#endif
