/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Four questions about one tank's log: drift, check, due and log agree to the digit about the tank
 * as it is, what was learned, where it settles and when its limits are reached. Random tanks with
 * random logs: readings and events of any order and doubt, some without a day, animals that came
 * and are planned; a case that fails prints its seed and number.
 */
#include <setjmp.h>
#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include <tapshoal/catalogue.h>

#include "../given.h"
#include "../random.h"
#include "../shipped.h"
#include "answers/check.h"
#include "answers/drift.h"
#include "answers/due.h"
#include "answers/log.h"
#include "base/date.h"
#include "care/happened.h"

#define LINES 3
#define READINGS 16
#define EVENTS 24
#define DAYS 28
#define AGO 300

struct scene {
	const struct ts_species *species[LINES];
	struct ts_stock_line stock[LINES];
	struct ts_reading tap, readings[READINGS];
	struct ts_tank_event events[EVENTS];
	char dates[READINGS + EVENTS + LINES][TS_DATE_ROOM];
	size_t date_count;
	struct ts_plan plan;
	long today;
};

struct answers {
	struct ts_drift_result drift;
	struct ts_check_result check;
	struct ts_due_result due;
	struct ts_log_result log;
};

static const char *any_day(struct random *r, struct scene *s)
{
	char *date = s->dates[s->date_count++];

	ts_date_write(date, s->today - (long)any_below(r, AGO));
	return date;
}

static struct ts_measure maybe(
	struct random *r, unsigned percent, double low, double high, double step)
{
	struct ts_measure m = {.kind = TS_MEASURE_NONE};

	if (!any_percent(r, percent))
		return m;
	m = value(any_in(r, low, high, step));
	if (any_percent(r, 5))
		m = (struct ts_measure){m.value, 0, m.value, TS_MEASURE_BELOW};
	else if (any_percent(r, 5))
		m = (struct ts_measure){
			m.value, fmax(m.value - step, 0), m.value + step, TS_MEASURE_DOUBT};
	return m;
}

static void any_log(struct random *r, struct scene *s)
{
	struct ts_tank *t = &s->plan.tank;

	t->readings = s->readings;
	t->reading_count = any_below(r, READINGS);
	for (size_t i = 0; i < t->reading_count; i++)
		s->readings[i] =
			(struct ts_reading){.date = any_percent(r, 95) ? any_day(r, s) : NULL,
				.method = (int)any_below(r, TS_METHOD_UTILITY_REPORT),
				.gh_dh = maybe(r, 70, 4, 12, 0.5),
				.kh_dh = maybe(r, 80, 2, 9, 0.5),
				.no3_mg_l = maybe(r, 80, 0, 80, 5),
				.ph = maybe(r, 30, 6.8, 8, 0.1)};
	t->events = s->events;
	t->event_count = any_below(r, EVENTS);
	for (size_t i = 0; i < t->event_count; i++)
		s->events[i] = (struct ts_tank_event){.date = any_day(r, s),
			.what = any_percent(r, 60) ? TS_HAPPENED_CHANGED
						   : (int)any_below(r, TS_HAPPENED_NEW_WATER + 1),
			.litres = any_in(r, 0, 40, 5),
			.with = (int)any_below(r, 3),
			.count = any_below(r, 4),
			.lasted_h = any_percent(r, 20) ? 24 * any_below(r, 14) : 0};
}

static void any_scene(struct random *r, struct scene *s)
{
	struct ts_tank *t = &s->plan.tank;

	memset(s, 0, sizeof *s);
	ts_date_read("2026-11-30", &s->today);
	s->tap = (struct ts_reading){.gh_dh = maybe(r, 95, 3, 14, 0.5),
		.kh_dh = maybe(r, 95, 2, 11, 0.5),
		.no3_mg_l = maybe(r, 60, 0, 30, 5)};
	s->plan.water =
		(struct ts_water){.kind = TS_WATER_TAP, .readings = &s->tap, .reading_count = 1};
	t->volume_l = any_in(r, 40, 300, 20);
	t->temp_c = value(any_in(r, 22, 27, 0.5));
	t->filter = TS_FILTER_MATURE;
	t->cover = (int)any_below(r, 3);
	t->plants = (int)any_below(r, 4);
	t->top_up = (int)any_below(r, 3);
	t->feeding.word = (int)any_below(r, 4);
	if (any_percent(r, 80))
		t->water_change = (struct ts_every){any_in(r, 0, 50, 5), 7 + any_below(r, 8)};
	s->plan.stock = s->stock;
	s->plan.stock_count = 1 + any_below(r, LINES);
	for (size_t i = 0; i < s->plan.stock_count; i++) {
		s->species[i] = catalogue.items[any_below(r, (unsigned)catalogue.count)];
		s->stock[i] = (struct ts_stock_line){.species = s->species[i]->species,
			.count = 1 + any_below(r, 8),
			.since = any_percent(r, 60)   ? any_day(r, s)
				 : any_percent(r, 60) ? ""
						      : NULL};
	}
	any_log(r, s);
	ts_happened_take(&s->plan, s->today, NULL);
}

/* False: nothing follows, since the readings cannot stand together. */
static bool ask(struct scene *s, struct ts_arena *arena, struct answers *ret)
{
	const struct ts_asking asking = {arena, table(), s->today,
		(const struct ts_species *const *)catalogue.items, catalogue.count};
	const struct ts_drift_question drift = {&s->plan, s->species, DAYS};
	const struct ts_check_question check = {.plan = &s->plan, .species = s->species};
	const struct ts_due_question due = {
		.plan = &s->plan, .has_tank = true, .has_supply = true, .species = s->species};
	const struct ts_log_question log = {.readings = s->readings,
		.reading_count = s->plan.tank.reading_count,
		.events = s->events,
		.event_count = s->plan.tank.event_count,
		.plan = &s->plan,
		.species = s->species};
	const char *refusal;

	if (ts_drift_answer(&asking, &drift, &ret->drift, &refusal) != TS_OK)
		return false;
	assert_int_equal(ts_answer_check(&check, &asking, &ret->check), TS_OK);
	assert_int_equal(ts_answer_due(&asking, &due, 0, &ret->due), TS_OK);
	assert_int_equal(ts_answer_log(&asking, &log, &ret->log), TS_OK);
	return true;
}

static bool same(double a, double b)
{
	return (isnan(a) && isnan(b)) || a == b || fabs(a - b) <= 1e-9 * fmax(1, fabs(b));
}

static bool same_texts(const struct ts_texts *a, const struct ts_texts *b)
{
	if (a->count != b->count)
		return false;
	for (size_t i = 0; i < a->count; i++) {
		if (strcmp(a->items[i], b->items[i]) != 0)
			return false;
	}
	return true;
}

static bool same_learned(const struct ts_learned *a, const struct ts_learned *b)
{
	if (a->line_count != b->line_count || a->expected_count != b->expected_count)
		return false;
	for (size_t i = 0; i < a->line_count; i++) {
		if (!same(a->lines[i].value, b->lines[i].value) ||
			!same(a->lines[i].low, b->lines[i].low) ||
			!same(a->lines[i].high, b->lines[i].high) ||
			strcmp(a->lines[i].says, b->lines[i].says) != 0)
			return false;
	}
	for (size_t i = 0; i < a->expected_count; i++) {
		if (strcmp(a->expected[i].says, b->expected[i].says) != 0)
			return false;
	}
	return same_texts(&a->alarms, &b->alarms) && same_texts(&a->thin, &b->thin) &&
	       !a->routine_says == !b->routine_says;
}

static void all_have_learned_the_same(struct random *r, const struct answers *a)
{
	const struct ts_learned *l = &a->drift.learned;

	CLAIM(r, same_learned(l, &a->check.learned));
	CLAIM(r, same_learned(l, &a->due.learned));
	CLAIM(r, same_learned(l, &a->log.learned));
	for (size_t i = 0; i < l->line_count; i++) {
		CLAIM(r, l->lines[i].low <= l->lines[i].value);
		CLAIM(r, l->lines[i].value <= l->lines[i].high);
		CLAIM(r, l->lines[i].readings >= 2 && l->lines[i].days > 0);
		CLAIM(r, !strstr(l->lines[i].says, "nan") && !strstr(l->lines[i].says, "inf "));
	}
	for (size_t i = 0; i < l->expected_count; i++)
		CLAIM(r, l->expected[i].outside ==
				 (l->expected[i].read < l->expected[i].low ||
					 l->expected[i].read > l->expected[i].high));
}

/* Days to the floor, and where nitrate settles. */
static void drift_is_as_check(struct random *r, const struct answers *a)
{
	const struct ts_check_load *load = a->check.load;
	const struct ts_drift_result *d = &a->drift;

	CLAIM(r, load != NULL);
	if (load->buffer_days > 0 && isfinite(load->buffer_days))
		CLAIM(r, same(d->buffer_gone_day, load->buffer_days));
	else
		CLAIM(r, isnan(d->buffer_gone_day));
	if (isfinite(load->buffer_range.low))
		CLAIM(r, same(d->buffer_gone_day_early, load->buffer_range.low));
	CLAIM(r, isnan(d->nitrogen_measured_mg_day) == isnan(load->measured_no3_rise));
	if (!isnan(d->steady.no3_mg_l.before_change))
		CLAIM(r, same(d->steady.no3_mg_l.before_change, load->no3_steady_mg_l));
	CLAIM(r, same(d->change_percent, load->change_percent));
	CLAIM(r, same(d->change_every_days, load->change_days));
}

/* Due tells a day of the calendar, and counts it from the day of the reading. */
static double age_of(const struct ts_drift_result *d, const char *parameter)
{
	for (size_t i = 0; i < d->now_count; i++) {
		if (strcmp(d->now[i].parameter, parameter) == 0)
			return isnan(d->now[i].age_days) ? 0 : d->now[i].age_days;
	}
	return 0;
}

/* Days are those of the course; what is mild never stands before what is not. */
static void limits_hold(struct random *r, const struct answers *a)
{
	const struct ts_drift_result *d = &a->drift;

	for (size_t i = 0; i < d->limit_count; i++) {
		const struct ts_drift_limit_result *l = &d->limits[i];

		CLAIM(r, l->early <= l->day && (isnan(l->late) || l->day <= l->late));
		CLAIM(r, !i || (d->limits[i - 1].mild == l->mild ? d->limits[i - 1].day <= l->day
								 : l->mild));
	}
	for (size_t i = 0; i < a->due.alarm_count; i++) {
		const struct ts_due_alarm_line *alarm = &a->due.alarms[i];
		bool found = false;

		for (size_t k = 0; k < d->limit_count; k++)
			found |= !d->limits[k].mild &&
				 strcmp(d->limits[k].parameter, alarm->parameter) == 0 &&
				 d->limits[k].day == alarm->in_days + age_of(d, alarm->parameter);
		CLAIM(r, found);
	}
}

static bool inside(double value, const struct ts_range *band)
{
	/* A pH that was solved between moves the filter of a lost buffer by a millionth. */
	return isnan(value) || (band->low <= value + 1e-5 && value <= band->high + 1e-5);
}

static void bands_hold_the_course(struct random *r, const struct answers *a)
{
	for (size_t i = 0; i < a->drift.day_count; i++) {
		const struct ts_drift_day_result *d = &a->drift.days[i];

		/* A filter on the edge tips at another day by the last digits of its pH. */
		if (d->filter_doubtful)
			return;
		CLAIM(r, inside(d->kh_dh, &d->kh_band));
		CLAIM(r, inside(d->gh_dh, &d->gh_band));
		CLAIM(r, inside(d->no3_mg_l, &d->no3_band));
	}
}

/* The newest dated reading of a value, of one day the one that stands last; NAN: none. */
static double newest(const struct scene *s, enum ts_now_value value)
{
	double found = (double)NAN;
	long best = -1, day;

	for (size_t i = 0; i < s->plan.tank.reading_count; i++) {
		const struct ts_reading *one = &s->readings[i];
		double figure = ts_reading_value(one, value);

		if (isnan(figure) || !one->date || !ts_date_read(one->date, &day) || day < best)
			continue;
		best = day;
		found = figure;
	}
	return found;
}

static bool all_dated(const struct scene *s)
{
	for (size_t i = 0; i < s->plan.tank.reading_count; i++) {
		if (!s->readings[i].date)
			return false;
	}
	return true;
}

static void starts_from_the_log(struct random *r, const struct scene *s, const struct answers *a)
{
	for (size_t i = 0; all_dated(s) && i < a->drift.now_count; i++) {
		const struct ts_drift_now_result *now = &a->drift.now[i];
		double read = strcmp(now->parameter, "kh") == 0    ? newest(s, TS_NOW_KH)
			      : strcmp(now->parameter, "gh") == 0  ? newest(s, TS_NOW_GH)
			      : strcmp(now->parameter, "no3") == 0 ? newest(s, TS_NOW_NO3)
								   : (double)NAN;

		/* "<5" starts from the middle of what it may be. */
		if (!isnan(read) && !isnan(now->value))
			CLAIM(r, now->read && now->value <= read + 1e-6);
	}
}

static void test_four_answers__say_one_thing_of_one_log(void **state)
{
	struct random r;
	unsigned cases = random_open(&r, 5, 100), asked = 0, learned = 0;

	(void)state;
	for (unsigned i = 0; i < cases; i++) {
		struct ts_arena arena;
		struct answers a = {0};
		struct scene s;

		random_case(&r, i);
		ts_arena_open(&arena, NULL);
		any_scene(&r, &s);
		if (ask(&s, &arena, &a)) {
			asked++;
			learned += a.drift.learned.line_count > 0;
			all_have_learned_the_same(&r, &a);
			drift_is_as_check(&r, &a);
			limits_hold(&r, &a);
			bands_hold_the_course(&r, &a);
			starts_from_the_log(&r, &s, &a);
		}
		assert_false(arena.failed);
		ts_arena_drop(&arena);
	}
	printf("# %u of %u logs answered, %u of them teach something\n", asked, cases, learned);
	assert_true(asked > cases / 2 && learned > cases / 4);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(test_four_answers__say_one_thing_of_one_log),
	};

	return cmocka_run_group_tests(tests, shipped_open, shipped_close);
}
