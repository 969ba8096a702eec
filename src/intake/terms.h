/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The words of reports, one row each: labels, units, chemical forms, headings, classes. Patterns
 * are PCRE2, met at the start of a word in text that lines.c has made plain (lower case, accents
 * folded, '@' for the degree sign, 'u' for micro); the longest match of all rows wins.
 */
#ifndef TS_INTAKE_TERMS_H
#define TS_INTAKE_TERMS_H

#include <stddef.h>

enum ts_term_kind {
	TS_TERM_LABEL,   /* a quantity; `key` of the reading, NULL = known and not for us */
	TS_TERM_FORMULA, /* Ca, NO3, CaCO3: a form behind a label, a label where there is none */
	TS_TERM_UNIT,    /* `unit`: a spelling of units/table.c */
	TS_TERM_COLUMN,  /* a heading or a word beside a figure; `role` */
	TS_TERM_NONE,    /* stands for "no figure": NR, n.b. */
	TS_TERM_CLASS,   /* soft, hard */
	TS_TERM_SCALE,   /* "hardness level": what follows are classes */
	TS_TERM_ZONE,    /* the rest of the cell names a supply zone */
	TS_TERM_BELOW,   /* "less than": the figure behind it is a bound */
	TS_TERM_FILLER,  /* and, of, ranges: says nothing */
	TS_TERM_NOISE    /* standards, dates: figures that are no values */
};

/* Roles of columns; letters, since layouts are patterns over them. */
enum ts_role {
	TS_ROLE_NONE = 0,
	TS_ROLE_PARAMETER = 'P',
	TS_ROLE_UNIT = 'U',
	TS_ROLE_LEGAL = 'l',
	TS_ROLE_DETECTION = 't',
	TS_ROLE_RESULT = 'R',
	TS_ROLE_MEAN = 'm',
	TS_ROLE_LOWEST = 'i',
	TS_ROLE_HIGHEST = 'x',
	TS_ROLE_RANGE = 'w',
	TS_ROLE_COUNT = 'c', /* figures that are no values: number of samples, year */
	TS_ROLE_TEXT = 's',  /* method, remark */
	TS_ROLE_ELSE = 'e',  /* of another time or place than the water of today */
	TS_ROLE_ZONE = 'z'
};

/* Marks of a row. */
#define TS_TERM_CASE 1u     /* only in the case written in `as_printed` */
#define TS_TERM_IMPLIES 2u  /* a unit of hardness alone: says its quantity without a label */
#define TS_TERM_DEGREE 4u   /* likewise, where the line holds nothing else */
#define TS_TERM_UNFOUND 16u /* NONE: nothing was found, and not: there is no limit */
#define TS_TERM_PART 8u     /* LABEL: a part of what the key counts, no contradiction to it */

struct ts_term {
	enum ts_term_kind kind;
	const char *pattern;
	const char *key;  /* LABEL, FORMULA: key of the reading */
	const char *form; /* what the figure counts: "caco3", "n", "hco3" ... */
	const char *unit; /* UNIT: spelling in units/table.c */
	const char *says; /* UNIT: as it is shown; CASE: as it must be printed */
	double scale;     /* UNIT: figure times this is in `unit`; LABEL: rank, lower is better */
	int role;
	unsigned marks;
};

extern const struct ts_term ts_terms[];
extern const size_t ts_terms_count;

#endif
