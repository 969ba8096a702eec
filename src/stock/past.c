/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One pass over the events for each thing that is asked of them.
 */
#include "stock/past.h"

#include <math.h>
#include <stdlib.h>

#include "base/date.h"

/* An addition that lies so near to the day of a line of the stock is that line. */
#define SAME_DAYS 3
/* A tank that was stocked later was not without waste before: feed and plants rot. */
#define WASTE_LEAST 0.05
#define TOP_UP_DAYS 14
#define HOURS 24.0

static bool day_of(const struct ts_past_case *c, const struct ts_tank_event *e, long *ret)
{
	return e->date && ts_date_read(e->date, ret) && (c->today < 0 || *ret <= c->today);
}

static double share_of(const struct ts_past_case *c, const struct ts_tank_event *e)
{
	double share = e->share_percent / 100;

	if (!(share > 0) && c->net_l > 0)
		share = e->litres / c->net_l;
	return fmin(share, 1);
}

/* Changed, without a word of how much: as always. */
static double usual_share(const struct ts_tank *tank, const struct ts_practice *practice)
{
	const struct ts_every *said =
		tank->change_said.days > 0 ? &tank->change_said : &tank->water_change;

	return (said->days > 0 ? said->amount : practice->value[TS_P_CHANGE_PERCENT]) / 100;
}

/* Kept in order; of too many the oldest goes. */
static void add_change(struct ts_past *past, const struct ts_past_change *one)
{
	size_t at;

	if (past->change_count == TS_PAST_MOST) {
		for (size_t i = 1; i < TS_PAST_MOST; i++)
			past->changes[i - 1] = past->changes[i];
		past->change_count--;
	}
	for (at = past->change_count; at; at--) {
		const struct ts_past_change *before = &past->changes[at - 1];

		if (before->day < one->day ||
			(before->day == one->day && before->minutes <= one->minutes))
			break;
		past->changes[at] = *before;
	}
	past->changes[at] = *one;
	past->change_count++;
}

static void take_change(const struct ts_past_case *c, const struct ts_practice *practice,
	const struct ts_tank_event *e, long day, struct ts_past *ret)
{
	struct ts_past_change one = {day, e->time ? ts_clock_read(e->time) : -1, share_of(c, e),
		e->with == TS_TOP_UP_PURE};

	if (!(one.share > 0))
		one.share = usual_share(c->tank, practice);
	add_change(ret, &one);
}

static void add_step(struct ts_past *past, long day, double share)
{
	if (past->step_count < TS_PAST_MOST && share != 0)
		past->steps[past->step_count++] = (struct ts_past_step){day, share};
}

static bool line_since(const struct ts_past_case *c, size_t i, long *ret)
{
	return c->stock[i].since && ts_date_read(c->stock[i].since, ret);
}

/* Whether a line of the stock came on about this day. */
static bool is_a_line(const struct ts_past_case *c, long day)
{
	long since;

	for (size_t i = 0; i < c->stock_count; i++) {
		if (line_since(c, i, &since) && labs(since - day) <= SAME_DAYS)
			return true;
	}
	return false;
}

/* The lines of the stock, and what one animal of them makes on the average, as shares of all. */
static double take_stock(const struct ts_past_case *c, struct ts_past *ret)
{
	double all = 0, animals = 0;
	long since;

	for (size_t i = 0; c->waste && i < c->stock_count; i++) {
		/* Who is only planned makes no waste yet. */
		if (!c->stock[i].since)
			continue;
		all += c->waste[i];
		animals += c->stock[i].count;
	}
	if (!(all > 0))
		return 0;
	for (size_t i = 0; i < c->stock_count; i++) {
		if (line_since(c, i, &since))
			add_step(ret, since, c->waste[i] / all);
	}
	return 1 / animals;
}

static void take_event(const struct ts_past_case *c, const struct ts_practice *practice,
	const struct ts_tank_event *e, double each, struct ts_past *ret)
{
	long day;

	if (!day_of(c, e, &day))
		return;
	switch (e->what) {
	case TS_HAPPENED_CHANGED:
		take_change(c, practice, e, day, ret);
		break;
	case TS_HAPPENED_ADDED:
		if (!is_a_line(c, day))
			add_step(ret, day, each * e->count);
		break;
	case TS_HAPPENED_DIED:
		add_step(ret, day, -each * fmax(e->count, 1));
		break;
	case TS_HAPPENED_MOVED:
		add_step(ret, day, -each * e->count);
		break;
	case TS_HAPPENED_AWAY:
		if (e->lasted_h > 0 && ret->pause_count < TS_PAST_MOST)
			ret->pauses[ret->pause_count++] =
				(struct ts_past_pause){day, day + (long)floor(e->lasted_h / HOURS)};
		break;
	default:
		break;
	}
}

void ts_past_make(
	const struct ts_past_case *c, const struct ts_practice *practice, struct ts_past *ret)
{
	double each;

	*ret = (struct ts_past){.fed_in_pause = practice->value[TS_P_FEED_PAUSE]};
	each = take_stock(c, ret);
	for (size_t i = 0; i < c->tank->event_count; i++)
		take_event(c, practice, &c->tank->events[i], each, ret);
	ret->by_log = ret->change_count > 1;
	ret->new_water_day = ts_past_new_water(c->tank, c->today);
	ret->new_water = ret->new_water_day != TS_COURSE_FROM_FIRST;
}

double ts_past_waste(const struct ts_past *past, long day)
{
	double waste = 1;

	for (size_t i = 0; i < past->step_count; i++) {
		if (past->steps[i].day > day)
			waste -= past->steps[i].share;
	}
	waste = fmax(waste, WASTE_LEAST);
	for (size_t i = 0; i < past->pause_count; i++) {
		if (past->pauses[i].from < day && day <= past->pauses[i].to)
			return waste * past->fed_in_pause;
	}
	return waste;
}

/* The newest weeks alone, days; and how much less or more has to be changed in them. */
#define NEWEST_DAYS 28
#define NEWEST_OTHER 0.5

/* What the changes of so many days up to today amount to; their count. */
static double routine_of(const struct ts_past *past, long today, double length,
	const struct ts_practice *practice, struct ts_every *ret)
{
	double share = 0, count = 0;
	long first = 0, last = 0;

	for (size_t i = 0; i < past->change_count; i++) {
		const struct ts_past_change *c = &past->changes[i];

		if ((double)(today - c->day) > length)
			continue;
		first = count > 0 ? first : c->day;
		last = c->day;
		share += c->share;
		count++;
	}
	*ret = (struct ts_every){0, practice->value[TS_P_CHANGE_DAYS]};
	if (!(count > 0))
		return 0;
	ret->amount = 100 * share / count;
	ret->days = length;
	/* From one to the next, and it is as long as that since the last. */
	if (count > 1)
		ret->days = fmax(
			fmax((double)(last - first) / (count - 1), (double)(today - first) / count),
			1);
	return count;
}

bool ts_past_routine(const struct ts_past *past, long today, const struct ts_practice *practice,
	struct ts_every *ret)
{
	double length = practice->value[TS_P_ROUTINE_DAYS], all, newest;
	struct ts_every now;

	if (!past->by_log || today < 0 || (double)(today - past->changes[0].day) < length / 2)
		return false;
	routine_of(past, today, length, practice, ret);
	if (routine_of(past, today, NEWEST_DAYS, practice, &now) < 2)
		return true;
	all = ret->amount / ret->days;
	newest = now.amount / now.days;
	if (newest < NEWEST_OTHER * all || NEWEST_OTHER * newest > all)
		*ret = now;
	return true;
}

/* So much more or less at a time, or sooner, is another routine. */
#define SAME_SHARE 1.25
#define SAME_GAP 0.6

long ts_past_since(const struct ts_past *past, const struct ts_every *routine)
{
	size_t i = past->change_count;
	long since;

	if (!i)
		return TS_COURSE_FROM_FIRST;
	since = past->changes[i - 1].day;
	while (i--) {
		const struct ts_past_change *c = &past->changes[i];

		if (100 * c->share > SAME_SHARE * routine->amount ||
			SAME_SHARE * 100 * c->share < routine->amount ||
			(since > c->day && (double)(since - c->day) < SAME_GAP * routine->days))
			break;
		since = c->day;
	}
	return since;
}

bool ts_past_evaporation(
	const struct ts_past_case *c, const struct ts_practice *practice, struct ts_every *ret)
{
	double length = practice->value[TS_P_RATE_DAYS], share = 0, of_first = 0;
	long first = 0, last = 0, day;
	size_t count = 0;

	for (size_t i = 0; i < c->tank->event_count; i++) {
		const struct ts_tank_event *e = &c->tank->events[i];

		if (e->what != TS_HAPPENED_TOPPED_UP || !(share_of(c, e) > 0) ||
			!day_of(c, e, &day) || (c->today >= 0 && (double)(c->today - day) > length))
			continue;
		share += share_of(c, e);
		if (!count || day < first)
			of_first = share_of(c, e);
		first = !count || day < first ? day : first;
		last = !count || day > last ? day : last;
		count++;
	}
	/* The first one replaces what evaporated before it. */
	if (count < 2 || last - first < TOP_UP_DAYS)
		return false;
	*ret = (struct ts_every){100 * (share - of_first), (double)(last - first)};
	return true;
}

/* So many rounds without a word: either nobody changed water, or nobody wrote it down. */
#define ROUNDS_MISSING 4

/* The newest day on which anything was read; false: none is dated. */
static bool newest_reading(const struct ts_tank *t, long today, long *ret)
{
	bool any = false;
	long day;

	for (size_t i = 0; i < t->reading_count; i++) {
		const char *date = t->readings[i].date;

		if (!date || !ts_date_read(date, &day) || day > today || (any && day < *ret))
			continue;
		any = true;
		*ret = day;
	}
	return any;
}

void ts_past_last_change(const struct ts_tank *t, long today, struct ts_past_last *ret)
{
	bool routine = t->water_change.days > 0 && t->water_change.amount > 0;
	long days = lround(fmax(t->water_change.days, 1)), day;

	*ret = (struct ts_past_last){.next = today};
	for (size_t i = 0; i < t->event_count; i++) {
		const struct ts_tank_event *e = &t->events[i];

		if (e->what != TS_HAPPENED_CHANGED || !e->date || !ts_date_read(e->date, &day) ||
			day > today || (ret->noted && day < ret->last))
			continue;
		ret->noted = true;
		ret->last = day;
	}
	ret->stale = ret->noted && routine && today - ret->last > ROUNDS_MISSING * days;
	if (ret->stale)
		return;
	ret->by_reading = !ret->noted && newest_reading(t, today, &day);
	/* Where no change was ever noted none is called overdue. */
	if (ret->noted)
		ret->next = ret->last + days;
	else if (ret->by_reading)
		ret->next = day + days * ((today - day + days - 1) / days);
}

long ts_past_new_water(const struct ts_tank *tank, long today)
{
	long newest = TS_COURSE_FROM_FIRST, day;

	for (size_t i = 0; i < tank->event_count; i++) {
		const struct ts_tank_event *e = &tank->events[i];

		if (e->what == TS_HAPPENED_NEW_WATER && e->date && ts_date_read(e->date, &day) &&
			(today < 0 || day <= today) && day > newest)
			newest = day;
	}
	return newest;
}

bool ts_past_moved(const struct ts_tank *tank, long today)
{
	long since = ts_past_new_water(tank, today);

	return today >= 0 && since != TS_COURSE_FROM_FIRST && today - since < TS_PAST_ANOTHER_DAYS;
}
