/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One printed figure with its unit and chemical form to a measure in the canonical unit. The
 * factors of units are those of units/table.c; here stand only the forms that it does not know.
 */
#ifndef TS_INTAKE_CONVERT_H
#define TS_INTAKE_CONVERT_H

#include "intake/reader.h"

/* What is known about a figure beside its digits. */
struct ts_figure_context {
	const struct ts_term *label;
	const struct ts_term *unit; /* NULL = none was printed */
	const char *form;           /* "n", "caco3" ... NULL = none was printed */
	double reference_c;         /* conductivity: 0 = not printed */
	bool by_legal;              /* form or temperature follow from the legal limit */
	bool headed;                /* the figure stands in a table under a heading */
	char decimal;               /* sign of decimals in this report; 0 = not known */
};

struct ts_converted {
	const struct ts_field *field;
	struct ts_measure measure;
	const char *assumed;      /* NULL = nothing */
	int rank;                 /* added to the label's */
	const char *why, *remedy; /* of a failure */
	char decimal;             /* of the context */
};

/* False with `why` and `remedy` when it cannot be read surely. */
bool ts_convert(
	const struct ts_figure_context *context, const char *figure, struct ts_converted *ret);

#endif
