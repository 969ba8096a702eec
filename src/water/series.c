/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One pass over the readings a parameter; sums for the line, an interval for each hour of the day.
 */
#include "water/series.h"

#include <stdlib.h>
#include <string.h>

#include "base/arena.h"
#include "base/date.h"

#define HOURS 24
#define WEEK_DAYS 7.0
#define YEAR_DAYS 365.25
#define DRIFT_READINGS_LEAST 3

/* Usual swing and the doubt of one reading together (estimates from memory). */
#define PH_NO_TREND 0.5
#define HARDNESS_NO_TREND_DH 1.5

struct interval {
	double low, high;
	size_t count;
};

static void widen(struct interval *i, double value)
{
	i->low = i->count ? fmin(i->low, value) : value;
	i->high = i->count ? fmax(i->high, value) : value;
	i->count++;
}

static double spread(const struct interval *i)
{
	return i->count > 1 ? i->high - i->low : (double)NAN;
}

static const struct ts_measure *measure_of(const struct ts_reading *r, enum ts_parameter p)
{
	return p == TS_GH ? &r->gh_dh : p == TS_KH ? &r->kh_dh : &r->ph;
}

/* "HH:MM" as minutes of the day; -1: none. */
static int minutes_of(const char *time)
{
	return time ? ts_clock_read(time) : -1;
}

/* As the nearest hour, 0..23; -1: none. */
static int hour_of(const char *time)
{
	int minutes = minutes_of(time);

	return minutes < 0 ? -1 : (minutes + 30) / 60 % HOURS;
}

/* Sums of a least squares line, x being days from the first reading that has a date. */
struct line {
	bool begun;
	long first;
	double n, x, y, xx, xy, low, high;
};

static void line_add(struct line *l, long day, double value)
{
	double x;

	if (!l->begun)
		*l = (struct line){.begun = true, .first = day};
	x = (double)(day - l->first);
	l->low = fmin(l->low, x);
	l->high = fmax(l->high, x);
	l->n += 1;
	l->x += x;
	l->y += value;
	l->xx += x * x;
	l->xy += x * value;
}

static double slope(const struct line *l)
{
	double below = l->n * l->xx - l->x * l->x;

	if (l->n < DRIFT_READINGS_LEAST || l->high - l->low < WEEK_DAYS || !(below > 0))
		return (double)NAN;
	return (l->n * l->xy - l->x * l->y) / below;
}

/* Work of one pass. */
struct pass {
	struct interval all, hours[HOURS], day;
	struct line line;
	bool has_day;
	long now;
	double day_swing;
};

static void take(struct pass *w, const struct ts_reading *r, double value)
{
	int hour = hour_of(r->time);
	long day;

	widen(&w->all, value);
	if (hour >= 0)
		widen(&w->hours[hour], value);
	if (!r->date || !ts_date_read(r->date, &day))
		return;
	line_add(&w->line, day, value);
	if (!w->has_day || day != w->now)
		w->day = (struct interval){0};
	w->has_day = true;
	w->now = day;
	widen(&w->day, value);
	w->day_swing = fmax(w->day_swing, spread(&w->day));
}

void ts_series_make(
	const struct ts_water *water, enum ts_parameter parameter, struct ts_series_facts *ret)
{
	struct pass w = {.day_swing = (double)NAN};
	double noise = parameter == TS_PH ? PH_NO_TREND : HARDNESS_NO_TREND_DH;
	double same_hour = (double)NAN, per_day;

	for (size_t i = 0; i < water->reading_count; i++) {
		const struct ts_measure *m = measure_of(&water->readings[i], parameter);

		if (m->kind != TS_MEASURE_NONE && isfinite(m->value))
			take(&w, &water->readings[i], m->value);
	}
	for (int i = 0; i < HOURS; i++)
		same_hour = fmax(same_hour, spread(&w.hours[i]));
	per_day = slope(&w.line);
	*ret = (struct ts_series_facts){.readings = w.all.count,
		.days = w.line.begun ? w.line.high - w.line.low : (double)NAN,
		.low = w.all.count ? w.all.low : (double)NAN,
		.high = w.all.count ? w.all.high : (double)NAN,
		.spread = spread(&w.all),
		.same_hour_spread = same_hour,
		.day_swing = w.day_swing,
		.drift_per_week = WEEK_DAYS * per_day,
		.trend = fabs(per_day) * (w.line.high - w.line.low) > noise,
		.varies = spread(&w.all) > noise};
}

static char lower(char c)
{
	return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

static bool same_word(const char *a, const char *b)
{
	for (; lower(*a) == lower(*b); a++, b++) {
		if (!*a)
			return true;
	}
	return false;
}

static bool in_season(const struct ts_reading *r, const char *season, bool dated, long day)
{
	double apart;
	long of;

	if (!dated)
		return r->season && same_word(r->season, season);
	if (!r->date || !ts_date_read(r->date, &of))
		return false;
	apart = fmod(fabs((double)(of - day)), YEAR_DAYS);
	return fmin(apart, YEAR_DAYS - apart) <= TS_SEASON_DAYS;
}

size_t ts_water_take_season(struct ts_water *water, const char *season)
{
	long day = 0;
	bool dated = ts_date_read(season, &day);
	size_t kept = 0;

	for (size_t i = 0; i < water->reading_count; i++)
		kept += in_season(&water->readings[i], season, dated, day);
	if (!kept)
		return 0;
	kept = 0;
	for (size_t i = 0; i < water->reading_count; i++) {
		if (in_season(&water->readings[i], season, dated, day))
			water->readings[kept++] = water->readings[i];
	}
	water->reading_count = kept;
	return kept;
}

/* A reading that one of the seasons found so far takes in already. */
static bool is_taken(const struct ts_reading *r, const char *const *seasons, size_t count)
{
	long day = 0;

	for (size_t i = 0; i < count; i++) {
		bool dated = ts_date_read(seasons[i], &day);

		if (dated == !r->season && in_season(r, seasons[i], dated, day))
			return true;
	}
	return false;
}

size_t ts_water_seasons(const struct ts_water *water, const char *ret[TS_SEASONS_MOST])
{
	size_t count = 0;
	long day;

	for (size_t i = 0; i < water->reading_count && count < TS_SEASONS_MOST; i++) {
		const struct ts_reading *r = &water->readings[i];
		const char *name = r->season                                ? r->season
				   : r->date && ts_date_read(r->date, &day) ? r->date
									    : NULL;

		if (name && !is_taken(r, ret, count))
			ret[count++] = name;
	}
	return count > 1 ? count : 0;
}

/* When a reading was taken, and where it stood. */
struct taken {
	long day;
	int minutes;
	size_t place;
};

static int compare_taken(const void *a, const void *b)
{
	const struct taken *x = a, *y = b;

	if (x->day != y->day)
		return x->day < y->day ? -1 : 1;
	if (x->minutes != y->minutes)
		return x->minutes < y->minutes ? -1 : 1;
	return x->place < y->place ? -1 : 1;
}

/* A day on which one reading has no hour keeps the order of the file. */
static void forget_hours(struct taken *taken, size_t count)
{
	for (size_t i = 0, end; i < count; i = end) {
		bool all = true;

		for (end = i; end < count && taken[end].day == taken[i].day; end++)
			all &= taken[end].minutes >= 0;
		for (size_t k = i; k < end && !all; k++)
			taken[k].minutes = 0;
	}
}

void ts_readings_by_date(struct ts_reading **readings, size_t count, struct ts_arena *arena)
{
	struct taken *taken = ts_arena_array(arena, count, sizeof *taken);
	struct ts_reading *sorted;
	size_t dated = 0;
	bool ordered = true;

	for (size_t i = 0; taken && i < count; i++) {
		struct taken one = {0, minutes_of((*readings)[i].time), i};

		if (!(*readings)[i].date || !ts_date_read((*readings)[i].date, &one.day))
			continue;
		ordered &= !dated || compare_taken(&taken[dated - 1], &one) < 0;
		taken[dated++] = one;
	}
	if (!taken || ordered)
		return;
	qsort(taken, dated, sizeof *taken, compare_taken);
	forget_hours(taken, dated);
	qsort(taken, dated, sizeof *taken, compare_taken);
	sorted = ts_arena_array(arena, count, sizeof *sorted);
	if (!sorted)
		return;
	memcpy(sorted, *readings, count * sizeof *sorted);
	for (size_t i = 0, next = 0; i < count; i++) {
		long day;

		if ((*readings)[i].date && ts_date_read((*readings)[i].date, &day))
			sorted[i] = (*readings)[taken[next++].place];
	}
	*readings = sorted;
}
