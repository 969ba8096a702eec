/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The arithmetic of suitability: envelopes as broken lines (the trapezoid of habitat-suitability
 * models), doubt as a mean over an interval, several axes as one fit. Outside checks:
 * tests/checks/test_suitability.c.
 */
#include "match/suitability.h"

#include <math.h>

#include "base/number.h"

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
	const struct ts_corner *at = curve->at, *last = at + curve->count - 1;
	double sum = 0;

	if (!(high > low))
		return ts_curve_at(curve, low);
	if (low < at->x)
		sum += at->y * (ts_min(high, at->x) - low);
	if (high > last->x)
		sum += last->y * (high - ts_max(low, last->x));
	while (at < last && at[1].x <= low)
		at++;
	for (; at < last && at->x < high; at++) {
		double from = ts_max(low, at[0].x), to = ts_min(high, at[1].x);

		if (to > from)
			sum += piece(&at[0], &at[1], from, to);
	}
	return sum / (high - low);
}

/* Of those that weigh anything. */
static double geometric_mean(
	const double *suitability, const double *weight, size_t count, double weights)
{
	double logs = 0;

	for (size_t i = 0; i < count; i++) {
		if (weight[i] <= 0 || suitability[i] == 1)
			continue;
		if (suitability[i] <= 0)
			return 0;
		logs += weight[i] * log(suitability[i]);
	}
	return exp(logs / weights);
}

double ts_fit_combine(const double *suitability, const double *weight, size_t count,
	const double *limited, size_t limited_count, double full, double span)
{
	double weights = 0, least = INFINITY, lambda, mean;

	for (size_t i = 0; i < count; i++)
		weights += ts_max(weight[i], 0);
	for (size_t i = 0; i < limited_count; i++)
		least = ts_min(least, limited[i]);
	if (weights <= 0)
		return (double)NAN;
	mean = geometric_mean(suitability, weight, count, weights);
	if (!isfinite(least))
		return mean;
	lambda = ts_min(ts_max((least - full) / span, 0), 1);
	/* What does not limit may draw the mean below what does: more of `least` would then be
	 * better. */
	return lambda * mean + (1 - lambda) * ts_min(least, mean);
}
