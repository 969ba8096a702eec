/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Drawing a curve in rows of characters. The grid holds a sign's number a place, so that Unicode
 * and ASCII differ in one table only.
 */
#include "report/curve.h"

#include <math.h>
#include <string.h>

#include "base/number.h"
#include "report/shown.h"

#define ROWS 12
#define COLUMNS_MOST 64
#define LABEL 8 /* columns left of the frame */
#define SERIES_MOST 4

enum { EMPTY, UPRIGHT, FIRST_SERIES };

static const char *const signs[2][FIRST_SERIES + SERIES_MOST] = {
	{" ", "\u2506", "\u25cf", "\u25cb", "\u25b2", "\u25a1"},
	{" ", ":", "*", "o", "+", "x"},
};

double ts_series_at(const struct ts_series *s, double x)
{
	for (size_t i = 0; i < s->count; i++) {
		double span, part;

		if (s->x[i] == x)
			return s->y[i];
		if (i + 1 == s->count || !(s->x[i] < x && x < s->x[i + 1]))
			continue;
		span = s->x[i + 1] - s->x[i];
		part = (x - s->x[i]) / span;
		return s->y[i] + part * (s->y[i + 1] - s->y[i]);
	}
	return (double)NAN;
}

static void widen(struct ts_range *range, double value)
{
	range->low = !(range->low <= value) ? value : range->low;
	range->high = !(range->high >= value) ? value : range->high;
}

/* The next lower value that can be written: an axis ends where its label says. */
static double down(double value, int decimals)
{
	double steps = ts_number_tens(decimals);

	return floor(value * steps + 1e-9) / steps;
}

/* A line that hardly moves does not fill the height. */
#define LEAST_STEPS 10

bool ts_curve_extent(const struct ts_curve *curve, struct ts_range *ret_x, struct ts_range *ret_y)
{
	struct ts_range x = {(double)NAN, (double)NAN}, y = x;

	for (size_t i = 0; i < curve->series_count; i++) {
		const struct ts_series *s = &curve->series[i];

		for (size_t k = 0; k < s->count; k++) {
			if (!isfinite(s->x[k]) || !isfinite(s->y[k]))
				continue;
			widen(&x, s->x[k]);
			widen(&y, s->y[k]);
		}
	}
	if (isnan(x.low))
		return false;
	*ret_x = (struct ts_range){
		down(x.low, curve->x_decimals), -down(-x.high, curve->x_decimals)};
	*ret_y = (struct ts_range){
		down(y.low, curve->y_decimals), -down(-y.high, curve->y_decimals)};
	ret_y->high =
		fmax(ret_y->high, ret_y->low + LEAST_STEPS / ts_number_tens(curve->y_decimals));
	return true;
}

struct grid {
	unsigned char at[ROWS][COLUMNS_MOST];
	size_t columns;
	struct ts_range x, y;
};

/* The row of a value; ROWS where it is none. */
static size_t row_of(const struct grid *g, double y)
{
	double span = g->y.high - g->y.low;
	double part = span > 0 ? (g->y.high - y) / span : 0.5;

	return isfinite(part) && part >= 0 && part <= 1 ? (size_t)(part * (ROWS - 1) + 0.5) : ROWS;
}

static void fill(struct grid *g, const struct ts_curve *curve)
{
	double step = (g->x.high - g->x.low) / (double)(g->columns - 1);

	for (size_t i = 0; i < curve->mark_count; i++) {
		double part = step > 0 ? (curve->marks[i].x - g->x.low) / step : 0;

		if (!(part >= 0 && part <= (double)(g->columns - 1)))
			continue;
		for (size_t row = 0; row < ROWS; row++)
			g->at[row][(size_t)(part + 0.5)] = UPRIGHT;
	}
	for (size_t i = 0; i < curve->series_count && i < SERIES_MOST; i++) {
		for (size_t column = 0; column < g->columns; column++) {
			double x = column + 1 == g->columns ? g->x.high
							    : g->x.low + step * (double)column;
			size_t row = row_of(g, ts_series_at(&curve->series[i], x));

			if (row < ROWS)
				g->at[row][column] = (unsigned char)(FIRST_SERIES + i);
		}
	}
}

static void put_label(struct ts_text *out, double value, int decimals)
{
	size_t start = out->len;

	ts_text_number(out, value, decimals);
	if (out->len - start < LABEL) {
		struct ts_text label;

		ts_text_open(&label, &out->allocator);
		ts_text_add(&label, ts_text_get(out) + start, out->len - start);
		out->len = start;
		ts_text_fill(out, ' ', LABEL - label.len);
		ts_text_put(out, ts_text_get(&label));
		out->failed |= label.failed;
		ts_text_drop(&label);
	}
}

static void put_rows(struct ts_text *out, const struct grid *g, const struct ts_curve *curve,
	const struct ts_screen *screen)
{
	for (size_t row = 0; row < ROWS; row++) {
		if (row == 0 || row == ROWS - 1)
			put_label(out, row ? g->y.low : g->y.high, curve->y_decimals);
		else
			ts_text_fill(out, ' ', LABEL);
		ts_text_put(out, screen->ascii ? " |" : " \u2502");
		for (size_t column = 0; column < g->columns; column++)
			ts_text_put(out, signs[screen->ascii][g->at[row][column]]);
		while (out->len && out->at[out->len - 1] == ' ')
			out->len--;
		ts_text_put(out, "\n");
	}
	ts_text_fill(out, ' ', LABEL);
	ts_text_put(out, screen->ascii ? " +" : " \u2514");
	for (size_t column = 0; column < g->columns; column++)
		ts_text_put(out, screen->ascii ? "-" : "\u2500");
	ts_text_put(out, "\n");
}

/* The ends of the x axis, and between them, or below where that is too narrow, what it counts. */
static void put_feet(struct ts_text *out, const struct grid *g, const struct ts_curve *curve,
	const struct ts_screen *screen)
{
	size_t start, wide, len = strlen(curve->x_label);
	size_t label = ts_shown_width(curve->x_label, len, screen->ascii);
	bool between;

	ts_text_fill(out, ' ', LABEL + 2);
	start = out->len;
	ts_text_number(out, g->x.low, curve->x_decimals);
	ts_text_put(out, " ");
	wide = out->len - start;
	between = wide + label + LABEL < g->columns;
	if (between) {
		ts_shown_add(out, curve->x_label, len, screen->ascii);
		wide += label;
	}
	if (wide + LABEL < g->columns)
		ts_text_fill(out, ' ', g->columns - LABEL - wide);
	put_label(out, g->x.high, curve->x_decimals);
	ts_text_put(out, "\n");
	if (between)
		return;
	ts_text_fill(out, ' ', LABEL + 2);
	ts_screen_wrap(out, curve->x_label, LABEL + 2, LABEL + 2, screen);
}

void ts_curve_say_mark(
	struct ts_text *out, const struct ts_curve *curve, const struct ts_curve_mark *mark)
{
	ts_text_put(out, curve->mark_lead);
	ts_text_number_short(out, mark->x, curve->x_decimals);
	ts_text_puts(out, curve->mark_unit, ": ", mark->says, NULL);
}

/* A sign and what it stands for. */
static void put_sign(
	struct ts_text *out, int sign, const char *says, const struct ts_screen *screen)
{
	ts_text_fill(out, ' ', LABEL + 2);
	ts_text_puts(out, signs[screen->ascii][sign], " ", NULL);
	ts_screen_wrap(out, says, LABEL + 4, LABEL + 4, screen);
}

static void put_key(
	struct ts_text *out, const struct ts_curve *curve, const struct ts_screen *screen)
{
	struct ts_text says;

	for (size_t i = 0; i < curve->series_count && i < SERIES_MOST; i++)
		put_sign(out, FIRST_SERIES + (int)i, curve->series[i].name, screen);
	ts_text_open(&says, &out->allocator);
	for (size_t i = 0; i < curve->mark_count; i++) {
		says.len = 0;
		ts_curve_say_mark(&says, curve, &curve->marks[i]);
		put_sign(out, UPRIGHT, ts_text_get(&says), screen);
	}
	out->failed |= says.failed;
	ts_text_drop(&says);
}

void ts_curve_write(
	struct ts_text *out, const struct ts_curve *curve, const struct ts_screen *screen)
{
	struct grid g = {.columns = screen->columns - LABEL - 4};

	if (!ts_curve_extent(curve, &g.x, &g.y))
		return;
	if (g.columns > COLUMNS_MOST)
		g.columns = COLUMNS_MOST;
	fill(&g, curve);
	ts_screen_wrap(out, curve->title, 0, 0, screen);
	ts_screen_wrap(out, curve->y_label, 0, 0, screen);
	put_rows(out, &g, curve, screen);
	put_feet(out, &g, curve, screen);
	put_key(out, curve, screen);
}
