/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Small linear programs, solved exactly: the recipe search (recipe.c) asks for every set of
 * ingredients whether it can hold the limits at all, and with how little. Nothing is allocated.
 */
#ifndef TS_CARE_LINEAR_H
#define TS_CARE_LINEAR_H

#include <stdbool.h>
#include <stddef.h>

#define TS_LINEAR_VARIABLES 16
#define TS_LINEAR_ROWS 24

/*
 * Minimise cost . x, where every row . x <= bound and every x >= 0. Zeroed: no row, no variable.
 * Figures are best of the order of 1 to 1000.
 */
struct ts_linear {
	size_t variables, rows;
	double cost[TS_LINEAR_VARIABLES];
	double row[TS_LINEAR_ROWS][TS_LINEAR_VARIABLES];
	double bound[TS_LINEAR_ROWS];
};

/* Adds a row, zeroed, with this bound; NULL when there is no room. */
double *ts_linear_row(struct ts_linear *program, double bound);

/*
 * Solves by the simplex method in two phases, with Bland's rule, which cannot go in circles
 * (Bland 1977, Math. Oper. Res. 2:103-107). False when nothing satisfies the rows or the cost has
 * no least value; `ret_x` (`variables` numbers) and `ret_cost` are then untouched.
 */
bool ts_linear_solve(const struct ts_linear *program, double *ret_x, double *ret_cost);

#endif
