/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The readings that count are gathered, the newest of too many; then the course is cut out of them.
 */
#include "water/course.h"

#include <math.h>
#include <string.h>

#include "base/date.h"

#define MOST 128
#define WEEK_DAYS 7
#define REST_DAYS 14
#define REST_READINGS 3
#define REST_STEPS 3
/* So long it has to have stood before what follows is a course of its own, days. */
#define STOOD_DAYS 28
#define NITRATE_SHARE (1.0 / 3)

struct point {
	long day;
	double value;
};

struct points {
	struct point at[MOST];
	size_t count;
};

/* What swing and doubt make, and one step of a kit. */
struct scale {
	double noise, step;
};

static struct scale scale_of(enum ts_now_value value, double level)
{
	switch (value) {
	case TS_NOW_PH:
		return (struct scale){0.5, 0.2};
	case TS_NOW_NO3:
		return (struct scale){fmax(15, NITRATE_SHARE * level), fmax(10, level / 6)};
	default:
		return (struct scale){1.5, 1};
	}
}

static void gather(const struct ts_reading *readings, size_t count, enum ts_now_value value,
	struct points *ret)
{
	ret->count = 0;
	for (size_t i = 0; i < count; i++) {
		struct point p = {0, ts_reading_value(&readings[i], value)};

		if (isnan(p.value) || !readings[i].date || !ts_date_read(readings[i].date, &p.day))
			continue;
		if (ret->count == MOST)
			memmove(ret->at, ret->at + 1, --ret->count * sizeof *ret->at);
		ret->at[ret->count++] = p;
	}
}

static void drop_first(struct points *all, size_t first)
{
	all->count -= first;
	memmove(all->at, all->at + first, all->count * sizeof *all->at);
}

/* From the last reading before a new supply on; whether there is one. */
static bool cut_before(struct points *all, long since)
{
	size_t first = 0;

	while (first + 1 < all->count && all->at[first + 1].day <= since)
		first++;
	drop_first(all, first);
	return since != TS_COURSE_FROM_FIRST;
}

/* Where the run of readings begins that ends with the last and spreads no more than a step. */
static size_t run_at_end(const struct points *all, double step)
{
	size_t first = all->count;
	double low = (double)INFINITY, high = -(double)INFINITY;

	while (first) {
		double value = all->at[first - 1].value;

		low = fmin(low, value);
		high = fmax(high, value);
		if (high - low > step)
			break;
		first--;
	}
	return first;
}

/* It stands, and moved by three steps in as long before: from there on it is at rest. */
static bool cut_to_rest(struct points *all, const struct scale *scale, struct ts_course *ret)
{
	size_t first = run_at_end(all, scale->step), earlier = first;
	long length = all->at[all->count - 1].day - all->at[first < all->count ? first : 0].day;

	if (!first || all->count - first < REST_READINGS || length < REST_DAYS)
		return false;
	while (earlier && all->at[first].day - all->at[earlier - 1].day <= length)
		earlier--;
	if (fabs(all->at[earlier].value - all->at[first].value) < REST_STEPS * scale->step)
		return false;
	/* What slides on more slowly is not at rest. */
	if (all->at[earlier].value > all->at[first].value &&
		all->at[all->count - 1].value < all->at[first].value)
		return false;
	ret->rests = true;
	ret->moved_from = all->at[0].day;
	ret->moved_first = all->at[0].value;
	drop_first(all, first);
	return true;
}

/* It stood for weeks, and left that level: the last reading on it is the first of the course. */
static void cut_to_leave(struct points *all, const struct scale *scale)
{
	double low = (double)INFINITY, high = -(double)INFINITY;
	size_t last = 0;

	for (size_t i = 0; i < all->count; i++) {
		low = fmin(low, all->at[i].value);
		high = fmax(high, all->at[i].value);
		if (high - low >= scale->step)
			break;
		last = i;
	}
	if (all->count - last >= REST_READINGS &&
		all->at[last].day - all->at[0].day >= STOOD_DAYS &&
		all->at[all->count - 1].day - all->at[last].day >= REST_DAYS)
		drop_first(all, last);
}

static double slope(const struct points *all, size_t least)
{
	double n = 0, x = 0, y = 0, xx = 0, xy = 0, below;

	for (size_t i = 0; i < all->count; i++) {
		double day = (double)(all->at[i].day - all->at[0].day);

		n++;
		x += day;
		y += all->at[i].value;
		xx += day * day;
		xy += day * all->at[i].value;
	}
	below = n * xx - x * x;
	if (all->count < least || !(below > 0) ||
		all->at[all->count - 1].day - all->at[0].day < WEEK_DAYS)
		return (double)NAN;
	return (n * xy - x * y) / below;
}

void ts_course_make(const struct ts_reading *readings, size_t count, enum ts_now_value value,
	long since, struct ts_course *ret)
{
	struct points all;
	struct scale scale;
	bool new_water;
	double a_day;

	*ret = (struct ts_course){.first = (double)NAN,
		.last = (double)NAN,
		.low = (double)NAN,
		.high = (double)NAN,
		.a_week = (double)NAN,
		.moved_first = (double)NAN};
	gather(readings, count, value, &all);
	if (!all.count)
		return;
	new_water = cut_before(&all, since);
	scale = scale_of(value, (all.at[0].value + all.at[all.count - 1].value) / 2);
	if (!cut_to_rest(&all, &scale, ret))
		cut_to_leave(&all, &scale);
	a_day = slope(&all, new_water ? 2 : REST_READINGS);
	ret->readings = all.count;
	ret->from = all.at[0].day;
	ret->to = all.at[all.count - 1].day;
	ret->first = all.at[0].value;
	ret->last = all.at[all.count - 1].value;
	for (size_t i = 0; i < all.count; i++) {
		ret->low = fmin(ret->low, all.at[i].value);
		ret->high = fmax(ret->high, all.at[i].value);
	}
	ret->a_week = WEEK_DAYS * a_day;
	ret->moves = fabs(a_day) * (double)(ret->to - ret->from) > scale.noise;
}
