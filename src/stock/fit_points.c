/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Readings of one value out of a log that may stand in any order.
 */
#include "stock/fit_points.h"

#include <math.h>
#include <string.h>

#include "base/date.h"
#include "water/spans.h"

/* Doubt of nitrate, half an interval as a share, by method (common practice, no source). */
static const double no3_doubt[] = {0.3, 0.3, 0.3, 0.3, 0.05, 0.05};
/* A figure of hardness is no surer than this, half an interval, dH. */
#define HARDNESS_LEAST_DH 0.25

const enum ts_now_value ts_fit_values[TS_FIT__COUNT] = {TS_NOW_GH, TS_NOW_KH, TS_NOW_NO3};

static double doubt_half(const struct ts_measure *m, enum ts_fit_what what, int method,
	const struct ts_practice *practice)
{
	struct ts_span span;

	if (m->kind == TS_MEASURE_DOUBT && m->high > m->low)
		return (m->high - m->low) / 2;
	if (what == TS_FIT_NO3)
		return (double)NAN;
	span = ts_span_read(m, what == TS_FIT_GH ? TS_GH : TS_KH, method, practice);
	return fmax((span.high - span.low) / 2, HARDNESS_LEAST_DH);
}

/* The form in which a reading tells the value. */
static const struct ts_measure *form_of(const struct ts_reading *r, enum ts_fit_what what)
{
	const struct ts_measure *forms[TS_FIT__COUNT][2] = {
		[TS_FIT_GH] = {&r->gh_dh, &r->ca_mg_l},
		[TS_FIT_KH] = {&r->kh_dh, &r->alkalinity_meq_l},
		[TS_FIT_NO3] = {&r->no3_mg_l, &r->no3_n_mg_l},
	};

	return forms[what][forms[what][0]->kind == TS_MEASURE_NONE];
}

/* "<5" is no figure to draw a line through. */
static bool point_of(const struct ts_fit_case *c, const struct ts_reading *r, enum ts_fit_what what,
	const struct ts_practice *practice, struct ts_fit_point *ret)
{
	const struct ts_measure *m = form_of(r, what);
	double figure = ts_reading_value(r, ts_fit_values[what]);
	struct ts_measure whole = *m;

	if ((m->kind != TS_MEASURE_VALUE && m->kind != TS_MEASURE_DOUBT) || isnan(figure) ||
		ts_reading_is_ahead(r, c->today) || !r->date || !ts_date_read(r->date, &ret->day))
		return false;
	/* A doubt is told in the unit that was read. */
	if (m->value > 0) {
		whole.low *= figure / m->value;
		whole.high *= figure / m->value;
	}
	whole.value = figure;
	ret->minutes = r->time ? ts_clock_read(r->time) : -1;
	ret->value = figure;
	ret->half = doubt_half(&whole, what, r->method, practice);
	ret->share = no3_doubt[r->method];
	return true;
}

static bool earlier(const struct ts_fit_point *a, const struct ts_fit_point *b)
{
	return a->day != b->day ? a->day < b->day : a->minutes < b->minutes;
}

/* In the order of their days; of too many the oldest goes. */
static void add_point(struct ts_fit_points *all, const struct ts_fit_point *one)
{
	size_t at;

	if (all->count == TS_FIT_POINTS_MOST) {
		if (earlier(one, &all->at[0]))
			return;
		memmove(all->at, all->at + 1, --all->count * sizeof *all->at);
	}
	for (at = all->count; at && earlier(one, &all->at[at - 1]); at--)
		all->at[at] = all->at[at - 1];
	all->at[at] = *one;
	all->count++;
}

static void drop_first(struct ts_fit_points *all, size_t first)
{
	all->count -= first;
	memmove(all->at, all->at + first, all->count * sizeof *all->at);
}

/* All of the window, or else the last two days. */
static void keep_window(struct ts_fit_points *all, double length)
{
	long newest = all->count ? all->at[all->count - 1].day : 0, from = newest;
	size_t first = 0;

	for (size_t i = all->count; i-- > 0;) {
		const struct ts_fit_point *p = &all->at[i];

		if ((double)(newest - p->day) > length && from < newest)
			break;
		from = p->day;
	}
	while (first < all->count && all->at[first].day < from)
		first++;
	drop_first(all, first);
}

/* Another supply began: what lay before it tells nothing, but for the level it began from. */
static void keep_since(struct ts_fit_points *all, long day)
{
	size_t first = 0;

	while (first + 1 < all->count && all->at[first + 1].day <= day)
		first++;
	drop_first(all, first);
}

void ts_fit_points_take(const struct ts_fit_case *c, enum ts_fit_what what,
	const struct ts_practice *practice, struct ts_fit_points *ret)
{
	struct ts_fit_point p;

	ret->count = 0;
	for (size_t i = 0; i < c->count; i++) {
		if (point_of(c, &c->readings[i], what, practice, &p))
			add_point(ret, &p);
	}
	if (c->past && c->past->new_water)
		keep_since(ret, c->past->new_water_day);
	keep_window(ret, practice->value[TS_P_RATE_DAYS]);
}
