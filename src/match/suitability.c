/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The arithmetic of suitability: envelopes as broken lines (the trapezoid of habitat-suitability
 * models), doubt as a mean over an interval, several axes as one fit. Outside checks:
 * tests/checks/test_suitability.c.
 */
#include "match/suitability.h"

#include <math.h>

double ts_curve_at(const struct ts_curve *curve, double x)
{
	const struct ts_corner *at = curve->at;
	double y = 0;

	if (x < at[0].x)
		return at[0].y;
	if (x > at[curve->count - 1].x)
		return at[curve->count - 1].y;
	for (size_t i = 0; i < curve->count; i++) {
		if (at[i].x == x && at[i].y > y)
			y = at[i].y;
		if (i && at[i - 1].x < x && x < at[i].x)
			y = at[i - 1].y +
			    (at[i].y - at[i - 1].y) * (x - at[i - 1].x) / (at[i].x - at[i - 1].x);
	}
	return y;
}

/* The value just inside a piece, so that a step's end does not leak into its neighbour. */
static double piece(const struct ts_corner *a, const struct ts_corner *b, double low, double high)
{
	double width = b->x - a->x;
	double middle = (low + high) / 2;

	return (a->y + (b->y - a->y) * (middle - a->x) / width) * (high - low);
}

double ts_curve_mean(const struct ts_curve *curve, double low, double high)
{
	const struct ts_corner *first = &curve->at[0], *last = &curve->at[curve->count - 1];
	double sum = 0;

	if (!(high > low))
		return ts_curve_at(curve, low);
	if (low < first->x)
		sum += first->y * (fmin(high, first->x) - low);
	if (high > last->x)
		sum += last->y * (high - fmax(low, last->x));
	for (size_t i = 1; i < curve->count; i++) {
		double from = fmax(low, curve->at[i - 1].x), to = fmin(high, curve->at[i].x);

		if (to > from)
			sum += piece(&curve->at[i - 1], &curve->at[i], from, to);
	}
	return sum / (high - low);
}

double ts_fit_combine(const double *suitability, const double *weight, size_t count,
	const double *limited, size_t limited_count, double full, double span)
{
	double weights = 0, logs = 0, least = INFINITY, mean, lambda;
	bool zero = false;

	for (size_t i = 0; i < count; i++) {
		if (weight[i] <= 0)
			continue;
		weights += weight[i];
		zero |= suitability[i] <= 0;
		logs += suitability[i] > 0 ? weight[i] * log(suitability[i]) : 0;
	}
	for (size_t i = 0; i < limited_count; i++)
		least = fmin(least, limited[i]);
	if (weights <= 0)
		return (double)NAN;
	mean = zero ? 0 : exp(logs / weights);
	if (!isfinite(least))
		return mean;
	lambda = fmin(fmax((least - full) / span, 0), 1);
	return lambda * mean + (1 - lambda) * least;
}
