/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Suitability against the outside: published curves, worked aggregations, numerical integration.
 * Sources beside each check.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "match/suitability.h"
#include "table.h"

static struct ts_curve trapezoid(double a, double b, double c, double d)
{
	return (struct ts_curve){{{a, 0}, {b, 1}, {c, 1}, {d, 0}}, 4};
}

static struct ts_curve parsed(const char *text)
{
	struct ts_curve curve = {.count = 0};

	while (*text && curve.count < 8) {
		char *end;

		curve.at[curve.count].x = strtod(text, &end);
		curve.at[curve.count++].y = strtod(end + 1, &end);
		text = *end ? end + 1 : end;
	}
	if (*text)
		curve.count = 0; /* more corners than our curves have: two of the ten models */
	return curve;
}

/* US Fish & Wildlife Service habitat suitability models, pH curves (1982 onward). */
static void test_curve__published_ph_curves(void **state)
{
	static const double at[] = {4, 5, 5.5, 6, 6.5, 7, 7.5, 8, 8.5, 9, 9.5};
	struct table *t = table_open("usfws_pH_suitability_curves.csv");
	struct worst worst = {.what = "suitability", .limit = 6e-5};

	(void)state;
	for (size_t row = 0; row < t->rows; row++) {
		struct ts_curve curve = parsed(table_text(t, row, "breakpoints_pH:SI"));

		if (!curve.count)
			continue;
		for (size_t i = 0; i < sizeof at / sizeof *at; i++) {
			char column[16];

			snprintf(column, sizeof column, "SI_at_%.1f", at[i]);
			worst_note(&worst, ts_curve_at(&curve, at[i]), table_number(t, row, column),
				table_text(t, row, "species"));
		}
	}
	worst_assert(&worst);
	table_close(t);
}

/* Envelope rule: 1 between the preferred ends, linear to 0 at the tolerated ones. */
static void test_curve__worked_trapezoids(void **state)
{
	struct ts_curve curve = trapezoid(5, 6, 7.5, 8.5);

	(void)state;
	assert_true(fabs(ts_curve_at(&curve, 8.0) - 0.5) < 1e-12);
	curve = trapezoid(18, 22, 28, 32);
	assert_true(fabs(ts_curve_at(&curve, 20) - 0.5) < 1e-12);
	curve = trapezoid(2, 4, 12, 18);
	assert_true(fabs(ts_curve_at(&curve, 3) - 0.5) < 1e-12);
}

/* The closed form against the midpoint rule with 20,000 steps, over random curves and intervals. */
static void test_mean__against_numerical_integration(void **state)
{
	struct worst worst = {.what = "mean over an interval", .limit = 1e-4};
	unsigned seed = 20260301;

	(void)state;
	for (int round = 0; round < 200; round++) {
		double x[6], sum = 0;
		struct ts_curve curve;

		for (int i = 0; i < 6; i++) {
			seed = seed * 1664525u + 1013904223u;
			x[i] = (double)(seed >> 8) / 16777216.0 * 20;
		}
		for (int i = 0; i < 4; i++) { /* sort the four corners */
			for (int j = i + 1; j < 4; j++) {
				double low = fmin(x[i], x[j]), high = fmax(x[i], x[j]);

				x[i] = low;
				x[j] = high;
			}
		}
		curve = trapezoid(x[0], x[1], x[2], x[3]);
		if (fabs(x[4] - x[5]) < 0.01)
			continue;
		for (int i = 0; i < 20000; i++)
			sum += ts_curve_at(
				&curve, fmin(x[4], x[5]) + fabs(x[4] - x[5]) * (i + 0.5) / 20000);
		worst_note(&worst, ts_curve_mean(&curve, fmin(x[4], x[5]), fmax(x[4], x[5])),
			sum / 20000, "random trapezoid");
	}
	worst_assert(&worst);
}

static void combined(const double *s, const double *w, size_t n, double want)
{
	double all[8];

	/* `full` below every suitability: the mean alone. */
	memcpy(all, s, n * sizeof *s);
	assert_true(fabs(ts_fit_combine(s, w, n, all, n, -2, 1) - want) < 1e-5);
}

/* Geometric means as the US Army Corps' collection of habitat models defines them; the bluegill
 * model of Stuber, Gebhart & Maughan 1982, FWS/OBS-82/10.8, with its worked components. */
static void test_combine__worked_examples(void **state)
{
	static const double one[] = {1, 1, 1, 1};
	static const double weights[] = {1, 1, 2, 1};

	(void)state;
	combined((double[]){0.25, 0.25, 0.25, 0.25}, one, 4, 0.25);
	combined((double[]){0.25, 0.25, 0.0, 0.25}, one, 4, 0);
	combined((double[]){0.1, 0.25, 0.25, 0.25}, one, 4, 0.198818);
	combined((double[]){0.5, 0.8, 1, 0.5}, one, 4, 0.668740);
	combined((double[]){0.668740, 0.8, 0.7, 0.6}, weights, 4, 0.690779);
}

/* The same model: at and below 0.4 the lowest component alone is the result. */
static void test_combine__limiting_rule_at_and_below_the_published_switch(void **state)
{
	static const double weights[] = {1, 1, 2, 1};
	const double s[] = {0.668740, 0.8, 0.4, 0.6};
	double before = 0;

	(void)state;
	assert_true(fabs(ts_fit_combine(s, weights, 4, s, 4, 0.4, 0.4) - 0.4) < 1e-12);
	for (int i = 0; i <= 1000; i++) { /* and above it there is no jump */
		double value = i / 1000.0;
		double now =
			ts_fit_combine((double[]){0.9, value}, weights, 2, &value, 1, 0.4, 0.4);

		assert_true(now >= before - 1e-12);
		assert_true(now - before < 0.01 || i == 0);
		before = now;
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_curve__published_ph_curves),
		cmocka_unit_test(test_curve__worked_trapezoids),
		cmocka_unit_test(test_mean__against_numerical_integration),
		cmocka_unit_test(test_combine__worked_examples),
		cmocka_unit_test(test_combine__limiting_rule_at_and_below_the_published_switch),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
