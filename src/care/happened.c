/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Only what lies within its days counts, and nothing that is dated after today.
 */
#include "care/happened.h"

#include "base/date.h"

static bool within(const struct ts_tank_event *e, int what, long today, long days)
{
	long day;

	return e->what == what && e->date && ts_date_read(e->date, &day) && day <= today &&
	       today - day <= days;
}

void ts_happened_take(struct ts_plan *plan, long today)
{
	const struct ts_tank *tank = &plan->tank;
	double deaths = 0, stopped_h = 0;

	for (size_t i = 0; i < tank->event_count; i++) {
		const struct ts_tank_event *e = &tank->events[i];

		if (within(e, TS_HAPPENED_DIED, today, TS_HAPPENED_DEATHS_DAYS))
			deaths += e->count > 0 ? e->count : 1;
		if (within(e, TS_HAPPENED_POWER_CUT, today, TS_HAPPENED_POWER_DAYS) &&
			e->lasted_h > stopped_h)
			stopped_h = e->lasted_h;
	}
	if (deaths > 0 && plan->deaths.kind == TS_MEASURE_NONE)
		plan->deaths = (struct ts_measure){
			.kind = TS_MEASURE_VALUE, .value = deaths, .low = deaths, .high = deaths};
	if (stopped_h > 0 && !(tank->filter_stopped_h > 0))
		plan->tank.filter_stopped_h = stopped_h;
}
