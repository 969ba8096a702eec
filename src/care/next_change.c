/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A value is reckoned on from its last reading day by day, through the changes that were noted, or
 * by the routine where none ever was; from today on without any change, until it meets its limit.
 */
#include "care/next_change.h"

#include <math.h>

#include "base/date.h"

/* Between 10 and 15 per cent: what every answer means by a small change. */
#define SMALL_SHARE 0.125
/* New water so much better than the limit mends something: nitrate as a share of it, KH in dH. */
#define NITRATE_MENDS 0.8
#define KH_MENDS_DH 1.0
#define DAYS_OF_WEEK 7

struct work {
	const struct ts_next_change_case *asked;
	const double *practice;
	double net_l;
	struct ts_next_change *ret;
};

static bool has_routine(const struct ts_tank *t)
{
	return t->water_change.days > 0 && t->water_change.amount > 0;
}

static bool is_change(const struct ts_tank_event *e, long *ret_day)
{
	return e->what == TS_HAPPENED_CHANGED && e->date && ts_date_read(e->date, ret_day);
}

static double usual_share(const struct work *w)
{
	const struct ts_tank *t = &w->asked->plan->tank;

	return (has_routine(t) ? t->water_change.amount : w->practice[TS_P_CHANGE_MOST]) / 100;
}

/* The part of the water that an event changed. */
static double share_of(const struct work *w, const struct ts_tank_event *e)
{
	double share = e->share_percent > 0            ? e->share_percent / 100
		       : e->litres > 0 && w->net_l > 0 ? e->litres / w->net_l
						       : usual_share(w);

	return fmin(share, 1);
}

/* What is changed on a day that has been: as noted, or by the routine where nothing ever was. */
static double changed_on(const struct work *w, long day, long from)
{
	const struct ts_tank *t = &w->asked->plan->tank;
	double left = 1;
	long on;

	if (!w->ret->noted) {
		long days = lround(fmax(t->water_change.days, 1));

		return has_routine(t) && (day - from) % days == 0 ? usual_share(w) : 0;
	}
	for (size_t i = 0; i < t->event_count; i++) {
		if (is_change(&t->events[i], &on) && on == day)
			left *= 1 - share_of(w, &t->events[i]);
	}
	return 1 - left;
}

/* One value on its way. */
struct course {
	enum ts_now_value value;
	double a_day, poured, limit;
	bool above;
};

/* Its figure of today; NAN: never read in the tank, too long ago, or nobody knows what moves it. */
static double now_of(const struct work *w, const struct course *c)
{
	const struct ts_now_from *from = &w->asked->waters->log.from[c->value];
	double value = ts_now_figure(&w->asked->waters->log, c->value);

	if (!from->dated || from->old || w->ret->stale || isnan(value) || isnan(c->a_day))
		return (double)NAN;
	/* On its own day it was read before the change; today's by the routine is what is asked. */
	for (long day = from->day; day <= w->asked->today; day++) {
		bool counts = w->ret->noted || (day > from->day && day < w->asked->today);
		double share = counts ? changed_on(w, day, from->day) : 0;

		value = value * (1 - share) + (share > 0 ? share * c->poured : 0);
		value = fmax(0, value + (day < w->asked->today ? c->a_day : 0));
	}
	return value;
}

/* The day on which it meets its limit, where nothing is changed; false: not within sight. */
static bool meets(const struct work *w, const struct course *c, double now, long *ret)
{
	double left = c->above ? c->limit - now : now - c->limit;
	double pace = c->above ? c->a_day : -c->a_day;

	if (isnan(now) || isnan(c->limit))
		return false;
	if (left > 0 && !(pace > 0 && left / pace <= TS_CHANGE_AHEAD_DAYS))
		return false;
	*ret = w->asked->today + (left > 0 ? (long)floor(left / pace) : 0);
	return true;
}

static double poured_of(const struct ts_waters *waters, enum ts_parameter parameter)
{
	return waters->poured.at[parameter].given ? waters->poured.at[parameter].value
						  : (double)NAN;
}

static struct course nitrate_of(const struct work *w)
{
	const struct ts_waters *waters = w->asked->waters;
	double poured = fmax(waters->poured.poisons.no3_mg_l, 0), limit = w->asked->no3_most;

	return (struct course){TS_NOW_NO3,
		waters->load_known ? waters->load.no3_rise_mg_l_week.value / DAYS_OF_WEEK
				   : (double)NAN,
		isnan(poured) ? 0 : poured, poured > NITRATE_MENDS * limit ? (double)NAN : limit,
		true};
}

/* What was measured counts; beside lime or soil in the bed nothing else tells. */
static struct course buffer_of(const struct work *w)
{
	const struct ts_waters *waters = w->asked->waters;
	int bed = w->asked->plan->tank.substrate;
	bool inert = bed != TS_SUBSTRATE_ACTIVE && bed != TS_SUBSTRATE_PEAT &&
		     bed != TS_SUBSTRATE_LIMESTONE && bed != TS_SUBSTRATE_ARAGONITE;
	double poured = poured_of(waters, TS_KH), limit = w->asked->kh_least;
	double a_day = waters->kh_rate.readings ? waters->kh_rate.a_day
		       : inert && waters->load_known
			       ? -waters->load.kh_used_dh_week.value / DAYS_OF_WEEK
			       : (double)NAN;

	return (struct course){TS_NOW_KH, isnan(poured) ? (double)NAN : a_day, poured,
		poured >= limit + KH_MENDS_DH ? limit : (double)NAN, false};
}

/* A limit that is met before the day that stands. */
static void look(struct work *w, const struct course *c, enum ts_change_reason reason, double now)
{
	long day;

	if (!w->asked->lives || !meets(w, c, now, &day))
		return;
	/* One change works before the next. */
	if (w->ret->noted && day < w->ret->last + lround(w->practice[TS_P_STAGE_DAYS]))
		day = w->ret->last + lround(w->practice[TS_P_STAGE_DAYS]);
	if (w->ret->reason != TS_CHANGE_NOTHING && day >= w->ret->day)
		return;
	w->ret->reason = reason;
	w->ret->day = day;
	w->ret->a_day = c->a_day;
	w->ret->limit = c->limit;
}

static void take_amount(struct work *w)
{
	bool ordered = w->ret->reason == TS_CHANGE_ORDERED;

	w->ret->small = w->asked->small && w->ret->reason != TS_CHANGE_ROUTINE;
	w->ret->share = w->ret->small ? SMALL_SHARE
			: ordered     ? w->practice[TS_P_CHANGE_MOST] / 100
				      : usual_share(w);
	w->ret->litres = w->net_l > 0 ? w->ret->share * w->net_l : (double)NAN;
}

void ts_next_change_make(const struct ts_next_change_case *asked,
	const struct ts_practice *practice, struct ts_next_change *ret)
{
	struct ts_practice own;
	struct work w = {asked, NULL, (double)NAN, ret};
	struct course nitrate, buffer;
	struct ts_past_last last;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	w.practice = practice->value;
	w.net_l = ts_tank_net_l(&asked->plan->tank, practice);
	*ret = (struct ts_next_change){.every_days = (double)NAN,
		.litres = (double)NAN,
		.a_day = (double)NAN,
		.limit = (double)NAN};
	ts_past_last_change(&asked->plan->tank, asked->today, &last);
	ret->noted = last.noted;
	ret->last = last.last;
	ret->stale = last.stale;
	nitrate = nitrate_of(&w);
	buffer = buffer_of(&w);
	ret->no3_now = now_of(&w, &nitrate);
	ret->kh_now = now_of(&w, &buffer);
	if (!isnan(asked->ordered_days)) {
		ret->reason = TS_CHANGE_ORDERED;
		ret->every_days = asked->ordered_days;
		ret->day = ret->noted ? ret->last + lround(asked->ordered_days) : asked->today;
		ret->day = ret->day < asked->today ? asked->today : ret->day;
		take_amount(&w);
		return;
	}
	if (has_routine(&asked->plan->tank)) {
		ret->reason = TS_CHANGE_ROUTINE;
		ret->every_days = asked->plan->tank.water_change.days;
		ret->day = last.next;
		ret->by_reading = last.by_reading;
	}
	look(&w, &nitrate, TS_CHANGE_NITRATE, ret->no3_now);
	look(&w, &buffer, TS_CHANGE_BUFFER, ret->kh_now);
	if (ret->reason != TS_CHANGE_NOTHING)
		take_amount(&w);
}
