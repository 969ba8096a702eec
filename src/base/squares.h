/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Weighted least squares for a handful of unknowns: rows are taken in one at a time and turned into
 * a triangle by Givens rotations (Gentleman 1973, J. Inst. Maths Applics 12:329-336), so that
 * nothing is kept but the triangle and no normal equations lose half of the digits. A prior belief
 * is a row like any other. Nothing is allocated.
 */
#ifndef TS_BASE_SQUARES_H
#define TS_BASE_SQUARES_H

#include <stdbool.h>
#include <stddef.h>

#define TS_SQUARES_MOST 16

struct ts_squares {
	size_t unknowns, rows;
	double r[TS_SQUARES_MOST][TS_SQUARES_MOST]; /* upper triangle */
	double y[TS_SQUARES_MOST];                  /* what the triangle is equal to */
	double rest; /* weighted squares that no solution takes away */
};

struct ts_squares_solution {
	double x[TS_SQUARES_MOST];
	double covariance[TS_SQUARES_MOST][TS_SQUARES_MOST]; /* of rows with true deviations */
	double rest;
};

void ts_squares_open(struct ts_squares *squares, size_t unknowns);

/* One row: `factors` (as many as unknowns) times x is `value`, with this deviation above 0. */
void ts_squares_add(
	struct ts_squares *squares, const double *factors, double value, double deviation);

/* False where the rows leave an unknown open; `*ret` is then untouched. */
bool ts_squares_solve(const struct ts_squares *squares, struct ts_squares_solution *ret);

/* Of a sum of the unknowns, each times its factor: what it comes to, and its deviation. */
double ts_squares_value(
	const struct ts_squares_solution *solution, const double *factors, size_t unknowns);
double ts_squares_deviation(
	const struct ts_squares_solution *solution, const double *factors, size_t unknowns);

#endif
