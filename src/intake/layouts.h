/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In which order figures stand behind a label, as rows: patterns over one letter a figure. And the
 * legal limits by which a printed limit is known. entry.c writes the letters and reads the roles.
 */
#ifndef TS_INTAKE_LAYOUTS_H
#define TS_INTAKE_LAYOUTS_H

#include <stddef.h>

/*
 * Letters: n a figure, q one that looks like a detection limit, g a legal limit of this quantity,
 * p one of the two figures of a legal range, r a range, G a legal range printed as one, b "<", h
 * "<" of a legal limit, v "<" of the detection limit before it, a ">", d a dash; m i x w words for
 * mean, lowest, highest, range.
 *
 * Roles, one a group: R the result, M mean, W range, T the next of lowest, mean and highest, which
 * must stand in that order, L a legal limit, D a detection limit. `named` rows pair each figure
 * with the word before (-1) or behind (+1) it instead.
 */
struct ts_layout {
	const char *id, *pattern, *roles;
	int named;
	const char *says;
};

extern const struct ts_layout ts_layouts[];
extern const size_t ts_layouts_count;

/* A legal limit as it is printed; the form that a figure of this limit counts. */
struct ts_legal {
	const char *key, *unit;
	double value;
	const char *form;
};

extern const struct ts_legal ts_legals[];
extern const size_t ts_legals_count;

/* A legal or recommended range as it is printed; no unit for pH. */
struct ts_legal_range {
	const char *key, *unit;
	double low, high;
};

extern const struct ts_legal_range ts_legal_ranges[];
extern const size_t ts_legal_ranges_count;

#endif
