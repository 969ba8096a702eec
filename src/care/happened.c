/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Only what lies within its days counts, and nothing that is dated after today.
 */
#include "care/happened.h"

#include <math.h>

#include "base/date.h"
#include <tapshoal/stock.h>

#include "stock/past.h"

static bool within(const struct ts_tank_event *e, int what, long today, long days)
{
	long day;

	return e->what == what && e->date && ts_date_read(e->date, &day) && day <= today &&
	       today - day <= days;
}

/* Where both tell nearly the same, the file's own words stand. */
#define ROUTINE_SAME 0.25

static double a_day(const struct ts_every *e)
{
	return e->days > 0 ? e->amount / e->days : 0;
}

static bool alike(const struct ts_every *a, const struct ts_every *b)
{
	return a->days > 0 && fabs(a_day(a) - a_day(b)) <= ROUTINE_SAME * a_day(a);
}

/* What the log's newest topping up was done with, where it says so. */
static int topped_with(const struct ts_tank *tank, long today)
{
	int with = TS_TOP_UP_UNKNOWN;
	long newest = 0, day;

	for (size_t i = 0; i < tank->event_count; i++) {
		const struct ts_tank_event *e = &tank->events[i];

		if (e->what != TS_HAPPENED_TOPPED_UP || !e->with || !e->date ||
			!ts_date_read(e->date, &day) || day > today || day < newest)
			continue;
		newest = day;
		with = e->with;
	}
	return with;
}

void ts_happened_routine(struct ts_tank *tank, long today, const struct ts_practice *practice)
{
	struct ts_practice own;
	struct ts_past past;
	struct ts_past_case asked = {.tank = tank, .today = today};
	struct ts_every done;

	if (!tank->event_count || today < 0 || tank->change_said.days > 0)
		return;
	ts_practice_defaults(&own);
	practice = practice ? practice : &own;
	asked.net_l = ts_tank_net_l(tank, practice);
	ts_past_make(&asked, practice, &past);
	if (ts_past_routine(&past, today, practice, &done) && !alike(&tank->water_change, &done)) {
		tank->change_said = tank->water_change;
		tank->water_change = done;
	}
	if (!(tank->evaporation.days > 0) && ts_past_evaporation(&asked, practice, &done))
		tank->evaporation = done;
	if (!tank->top_up)
		tank->top_up = topped_with(tank, today);
}

void ts_happened_take(struct ts_plan *plan, long today, const struct ts_practice *practice)
{
	const struct ts_tank *tank = &plan->tank;
	double deaths = 0, lately = 0, stopped_h = 0;

	for (size_t i = 0; i < tank->event_count; i++) {
		const struct ts_tank_event *e = &tank->events[i];

		if (within(e, TS_HAPPENED_DIED, today, TS_HAPPENED_DEATHS_DAYS))
			deaths += e->count > 0 ? e->count : 1;
		if (within(e, TS_HAPPENED_DIED, today, TS_HAPPENED_DEATH_DAYS))
			lately++;
		if (within(e, TS_HAPPENED_POWER_CUT, today, TS_HAPPENED_POWER_DAYS) &&
			e->lasted_h > stopped_h)
			stopped_h = e->lasted_h;
	}
	ts_happened_routine(&plan->tank, today, practice);
	/* One death, and none since: an animal that was old, or ill by itself. */
	if (deaths < 2 && !(lately > 0))
		deaths = 0;
	if (deaths > 0 && plan->deaths.kind == TS_MEASURE_NONE)
		plan->deaths = (struct ts_measure){
			.kind = TS_MEASURE_VALUE, .value = deaths, .low = deaths, .high = deaths};
	if (stopped_h > 0 && !(tank->filter_stopped_h > 0))
		plan->tank.filter_stopped_h = stopped_h;
}
