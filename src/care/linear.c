/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The simplex method on a dense table. Columns: the variables, one slack a row, one artificial
 * variable (used in the first phase alone), the right-hand side.
 */
#include "care/linear.h"

#include <math.h>
#include <string.h>

#define COLUMNS (TS_LINEAR_VARIABLES + TS_LINEAR_ROWS + 2)
#define SMALL 1e-9
/* Far beyond what programs of this size take; Bland's rule ends by itself. */
#define PIVOTS_MOST 20000

struct table {
	size_t rows, columns;                   /* columns without the right-hand side */
	double at[TS_LINEAR_ROWS + 1][COLUMNS]; /* the last used row holds the reduced costs */
	size_t basis[TS_LINEAR_ROWS];
};

double *ts_linear_row(struct ts_linear *program, double bound)
{
	if (program->rows == TS_LINEAR_ROWS)
		return NULL;
	program->bound[program->rows] = bound;
	memset(program->row[program->rows], 0, sizeof program->row[0]);
	return program->row[program->rows++];
}

static void pivot(struct table *t, size_t row, size_t column)
{
	double by = t->at[row][column];

	for (size_t c = 0; c <= t->columns; c++)
		t->at[row][c] /= by;
	for (size_t r = 0; r <= t->rows; r++) {
		double times = t->at[r][column];

		if (r == row || times == 0)
			continue;
		for (size_t c = 0; c <= t->columns; c++)
			t->at[r][c] -= times * t->at[row][c];
		t->at[r][column] = 0;
	}
	t->basis[row] = column;
}

/* The row that limits the entering column first; the lowest basis where several do. */
static size_t leaving(const struct table *t, size_t column)
{
	size_t best = t->rows;
	double least = 0;

	for (size_t r = 0; r < t->rows; r++) {
		double ratio;

		if (t->at[r][column] <= SMALL)
			continue;
		ratio = t->at[r][t->columns] / t->at[r][column];
		if (best == t->rows || ratio < least - 1e-12 ||
			(ratio <= least + 1e-12 && t->basis[r] < t->basis[best])) {
			best = r;
			least = ratio;
		}
	}
	return best;
}

/* Lowers the cost row over the first `columns` columns; false when it has no end. */
static bool descend(struct table *t, size_t columns)
{
	for (int n = 0; n < PIVOTS_MOST; n++) {
		size_t column = 0, row;

		while (column < columns && t->at[t->rows][column] >= -SMALL)
			column++;
		if (column == columns)
			return true;
		row = leaving(t, column);
		if (row == t->rows)
			return false;
		pivot(t, row, column);
	}
	return false;
}

static void fill(struct table *t, const struct ts_linear *p)
{
	memset(t, 0, sizeof *t);
	t->rows = p->rows;
	t->columns = p->variables + p->rows + 1;
	for (size_t r = 0; r < p->rows; r++) {
		memcpy(t->at[r], p->row[r], p->variables * sizeof(double));
		t->at[r][p->variables + r] = 1;
		t->at[r][t->columns - 1] = -1;
		t->at[r][t->columns] = p->bound[r];
		t->basis[r] = p->variables + r;
	}
}

/* First phase: an artificial variable takes up every shortfall and is then driven to nil. */
static bool make_feasible(struct table *t)
{
	size_t artificial = t->columns - 1, worst = 0;

	for (size_t r = 1; r < t->rows; r++) {
		if (t->at[r][t->columns] < t->at[worst][t->columns])
			worst = r;
	}
	if (!t->rows || t->at[worst][t->columns] >= 0)
		return true;
	memset(t->at[t->rows], 0, sizeof t->at[0]);
	t->at[t->rows][artificial] = 1;
	pivot(t, worst, artificial);
	if (!descend(t, t->columns) || -t->at[t->rows][t->columns] > 1e-7)
		return false;
	for (size_t r = 0; r < t->rows; r++) {
		size_t c = 0;

		if (t->basis[r] != artificial)
			continue;
		while (c < artificial && fabs(t->at[r][c]) <= SMALL)
			c++;
		if (c < artificial)
			pivot(t, r, c);
	}
	return true;
}

/* Writes the costs and expresses them in the variables outside the basis. */
static void set_costs(struct table *t, const struct ts_linear *p)
{
	memset(t->at[t->rows], 0, sizeof t->at[0]);
	memcpy(t->at[t->rows], p->cost, p->variables * sizeof(double));
	for (size_t r = 0; r < t->rows; r++) {
		double times = t->at[t->rows][t->basis[r]];

		for (size_t c = 0; times != 0 && c <= t->columns; c++)
			t->at[t->rows][c] -= times * t->at[r][c];
	}
}

bool ts_linear_solve(const struct ts_linear *program, double *ret_x, double *ret_cost)
{
	struct table t;

	fill(&t, program);
	if (!make_feasible(&t))
		return false;
	set_costs(&t, program);
	if (!descend(&t, t.columns - 1))
		return false;
	for (size_t v = 0; v < program->variables; v++)
		ret_x[v] = 0;
	for (size_t r = 0; r < t.rows; r++) {
		if (t.basis[r] < program->variables)
			ret_x[t.basis[r]] = fmax(0, t.at[r][t.columns]);
	}
	*ret_cost = -t.at[t.rows][t.columns];
	return true;
}
