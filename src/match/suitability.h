/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Suitability curves: broken lines over a parameter, and their mean over an interval.
 */
#ifndef TS_MATCH_SUITABILITY_H
#define TS_MATCH_SUITABILITY_H

#include <stdbool.h>
#include <stddef.h>

struct ts_corner {
	double x, y;
};

/*
 * A broken line through corners with x not falling; constant beyond its ends. Two corners at one x
 * are a step, taken at its higher value.
 */
struct ts_curve {
	struct ts_corner at[8];
	size_t count; /* 1..8 */
};

/* The curve's value at x. */
double ts_curve_at(const struct ts_curve *curve, double x);

/* The curve's mean over low..high (low <= high, both finite), exact; its value where they meet. */
double ts_curve_mean(const struct ts_curve *curve, double low, double high);

/*
 * Weighted geometric mean of suitabilities with the limiting rule: with m the lowest of `limited`
 * (a list of its own), the mean counts fully from full + span up, m (or the mean, if it is less) at
 * and below full. Items with weight 0 are left out; no item at all gives NAN.
 */
double ts_fit_combine(const double *suitability, const double *weight, size_t count,
	const double *limited, size_t limited_count, double full, double span);

#endif
