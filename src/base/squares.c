/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The triangle, its solution backwards, and its inverse times that inverse turned: the covariance.
 */
#include "base/squares.h"

#include <math.h>
#include <string.h>

/* A diagonal this small beside the largest of its column's row is nothing. */
#define NOTHING 1e-12

void ts_squares_open(struct ts_squares *s, size_t unknowns)
{
	memset(s, 0, sizeof *s);
	s->unknowns = unknowns;
}

void ts_squares_add(struct ts_squares *s, const double *factors, double value, double deviation)
{
	double row[TS_SQUARES_MOST], y = value / deviation;

	for (size_t i = 0; i < s->unknowns; i++)
		row[i] = factors[i] / deviation;
	for (size_t i = 0; i < s->unknowns; i++) {
		double length = hypot(s->r[i][i], row[i]), cosine, sine, kept;

		if (!(fabs(row[i]) > 0))
			continue;
		cosine = s->r[i][i] / length;
		sine = row[i] / length;
		for (size_t k = i; k < s->unknowns; k++) {
			kept = s->r[i][k];
			s->r[i][k] = cosine * kept + sine * row[k];
			row[k] = cosine * row[k] - sine * kept;
		}
		kept = s->y[i];
		s->y[i] = cosine * kept + sine * y;
		y = cosine * y - sine * kept;
	}
	s->rest += y * y;
	s->rows++;
}

static bool is_open(const struct ts_squares *s, size_t i)
{
	double largest = 0;

	for (size_t k = 0; k <= i; k++)
		largest = fmax(largest, fabs(s->r[k][i]));
	return !(fabs(s->r[i][i]) > NOTHING * largest);
}

/* The inverse of the triangle, a column at a time. */
static void invert(const struct ts_squares *s, double inverse[TS_SQUARES_MOST][TS_SQUARES_MOST])
{
	size_t n = s->unknowns;

	memset(inverse, 0, TS_SQUARES_MOST * sizeof *inverse);
	for (size_t column = 0; column < n; column++) {
		for (size_t i = column + 1; i-- > 0;) {
			double sum = i == column ? 1 : 0;

			for (size_t k = i + 1; k <= column; k++)
				sum -= s->r[i][k] * inverse[k][column];
			inverse[i][column] = sum / s->r[i][i];
		}
	}
}

bool ts_squares_solve(const struct ts_squares *s, struct ts_squares_solution *ret)
{
	double inverse[TS_SQUARES_MOST][TS_SQUARES_MOST];
	size_t n = s->unknowns;

	for (size_t i = 0; i < n; i++) {
		if (is_open(s, i))
			return false;
	}
	invert(s, inverse);
	memset(ret, 0, sizeof *ret);
	ret->rest = s->rest;
	for (size_t i = 0; i < n; i++) {
		for (size_t k = i; k < n; k++)
			ret->x[i] += inverse[i][k] * s->y[k];
		for (size_t j = 0; j < n; j++) {
			for (size_t k = i > j ? i : j; k < n; k++)
				ret->covariance[i][j] += inverse[i][k] * inverse[j][k];
		}
	}
	return true;
}

double ts_squares_value(
	const struct ts_squares_solution *solution, const double *factors, size_t unknowns)
{
	double sum = 0;

	for (size_t i = 0; i < unknowns; i++)
		sum += factors[i] * solution->x[i];
	return sum;
}

double ts_squares_deviation(
	const struct ts_squares_solution *solution, const double *factors, size_t unknowns)
{
	double sum = 0;

	for (size_t i = 0; i < unknowns; i++) {
		for (size_t k = 0; k < unknowns; k++)
			sum += factors[i] * factors[k] * solution->covariance[i][k];
	}
	return sqrt(fmax(sum, 0));
}
