/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The past is followed from the first day on which KH, GH or nitrate were read, with the feed and
 * plants of the plan alone, through the changes that were noted (by the routine, where none was).
 * What comes is drift's own table.
 */
#include "answers/log_model.h"

#include <string.h>

#include "answers/drift.h"
#include "base/date.h"
#include "match/bands.h"
#include "stock/rules.h"
#include "stock/waters.h"

/* Longer than that nobody follows a model, days. */
#define FOLLOWED_MOST 800
#define STEP_DAYS 7
#define RUNS 3

static const struct {
	const char *name, *unit;
	enum ts_now_value value;
	int parameter; /* enum ts_parameter; -1: nitrate */
	size_t offset; /* in a line */
} values[] = {
	{"KH", "dH", TS_NOW_KH, TS_KH, offsetof(struct ts_log_line, kh_dh)},
	{"GH", "dH", TS_NOW_GH, TS_GH, offsetof(struct ts_log_line, gh_dh)},
	{"pH", "", TS_NOW_PH, TS_PH, offsetof(struct ts_log_line, ph)},
	{"NO3", "mg/L", TS_NOW_NO3, -1, offsetof(struct ts_log_line, no3_mg_l)},
	{"temperature", "C", TS_NOW_TEMPERATURE, TS_TEMPERATURE,
		offsetof(struct ts_log_line, temp_c)},
};
#define VALUES (sizeof values / sizeof *values)

struct work {
	const struct ts_asking *asking;
	const struct ts_log_question *question;
	struct ts_log_result *r;
	struct ts_group *groups;
	long first; /* the day from which the model is followed */
	bool noted; /* changes are: the routine is not assumed */
	struct ts_drift_day *runs[RUNS];
	size_t days;
};

static double value_at(const struct ts_log_line *line, size_t value)
{
	double ret;

	memcpy(&ret, (const char *)line + values[value].offset, sizeof ret);
	return ret;
}

/* What all who live there like; where nothing is shared, no band. */
static struct ts_range liked(
	const struct work *w, int parameter, struct ts_range *ret_borne, bool *ret_by_kind)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_range r = {-(double)INFINITY, (double)INFINITY};
	struct ts_profile none = {0};

	for (size_t i = 0; w->question->species && i < plan->stock_count; i++) {
		const struct ts_keeping keeping = {.wild = plan->stock[i].origin == TS_ORIGIN_WILD};
		struct ts_match m = {0};
		const struct ts_range *band = &m.at[parameter].preferred;

		ts_match_species(w->question->species[i], &none, &keeping, w->asking->practice, &m);
		if (isnan(band->low))
			band = &m.at[parameter].tolerated;
		if (isnan(band->low))
			continue;
		*ret_by_kind |= m.at[parameter].source[0] == ts_by_kind_of_water;
		r.low = fmax(r.low, band->low);
		r.high = fmin(r.high, band->high);
		ret_borne->low = fmax(ret_borne->low, m.at[parameter].tolerated.low);
		ret_borne->high = fmin(ret_borne->high, m.at[parameter].tolerated.high);
	}
	if (r.low > r.high || (isinf(r.low) && isinf(r.high)))
		return (struct ts_range){(double)NAN, (double)NAN};
	return r;
}

static struct ts_range bears_nitrate(const struct work *w)
{
	const struct ts_plan *plan = w->question->plan;
	bool sensitive = false;

	for (size_t i = 0; w->question->species && i < plan->stock_count; i++)
		sensitive |= w->question->species[i]->habits & TS_HABIT_NITRATE_SENSITIVE ||
			     plan->stock[i].origin == TS_ORIGIN_WILD;
	return (struct ts_range){0,
		w->asking->practice
			->value[sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN]};
}

/* What was read of one value. */
static bool take_value(struct work *w, size_t v)
{
	struct ts_log_value *one = &w->r->values[w->r->value_count];
	bool lives = w->question->plan && w->question->species && w->question->plan->stock_count;
	struct ts_range borne = {-(double)INFINITY, (double)INFINITY};

	*one = (struct ts_log_value){.name = values[v].name,
		.unit = values[v].unit,
		.first = (double)NAN,
		.last = (double)NAN,
		.expected = {(double)NAN, (double)NAN},
		.expected_now = (double)NAN,
		.comes = (double)NAN,
		.likes = {(double)NAN, (double)NAN}};
	for (size_t i = 0; i < w->r->line_count; i++) {
		double value = value_at(&w->r->lines[i], v);

		if (isnan(value))
			continue;
		one->first = isnan(one->first) ? value : one->first;
		one->last = value;
		one->readings++;
	}
	if (!one->readings)
		return false;
	if (lives)
		one->likes = values[v].parameter < 0
				     ? bears_nitrate(w)
				     : liked(w, values[v].parameter, &borne, &one->by_kind);
	if (values[v].parameter < 0)
		borne = one->likes;
	one->borne = one->last >= borne.low && one->last <= borne.high;
	one->outside = lives && (one->last < one->likes.low || one->last > one->likes.high);
	w->r->value_count++;
	return true;
}

/* The first day on which something that moves was read, and not too long ago; after another supply
 * began the last before that. */
static bool find_first(struct work *w)
{
	const struct ts_plan *plan = w->question->plan;
	long day, since = ts_past_new_water(&plan->tank, w->asking->today);
	bool found = false;

	for (size_t i = 0; i < plan->tank.reading_count; i++) {
		const struct ts_reading *r = &plan->tank.readings[i];

		if (!r->date || !ts_date_read(r->date, &day) ||
			w->asking->today - day > FOLLOWED_MOST || day >= w->asking->today)
			continue;
		if (isnan(ts_reading_value(r, TS_NOW_KH)) &&
			isnan(ts_reading_value(r, TS_NOW_GH)) &&
			isnan(ts_reading_value(r, TS_NOW_NO3)))
			continue;
		if (found && day > since)
			break;
		w->first = day;
		found = true;
		if (since == TS_COURSE_FROM_FIRST)
			break;
	}
	return found;
}

/* The plan as it was on that day: what was read until then, and nothing since. */
static void plan_of_then(const struct work *w, struct ts_plan *ret)
{
	long day;

	*ret = *w->question->plan;
	ret->tank.reading_count = 0;
	for (size_t i = 0; i < w->question->plan->tank.reading_count; i++) {
		const char *date = w->question->plan->tank.readings[i].date;

		if (date && ts_date_read(date, &day) && day > w->first)
			break;
		ret->tank.reading_count++;
	}
	ret->tank.event_count = 0;
}

static bool change_noted(const struct ts_tank_event *e, long *ret_day)
{
	return e->what == TS_HAPPENED_CHANGED && e->date && ts_date_read(e->date, ret_day);
}

/* The share of the water that was changed on a day. */
static double changed_on(const struct work *w, long on, double net_l, double usual)
{
	const struct ts_tank *t = &w->question->plan->tank;
	double left = 1;
	long day;

	for (size_t i = 0; i < t->event_count; i++) {
		const struct ts_tank_event *e = &t->events[i];

		if (change_noted(e, &day) && day == on)
			left *= 1 - fmin(1, e->share_percent > 0         ? e->share_percent / 100
					    : e->litres > 0 && net_l > 0 ? e->litres / net_l
									 : usual);
	}
	return 1 - left;
}

static void follow(struct work *w, const struct ts_waters *waters, int run)
{
	double net_l = ts_tank_net_l(&w->question->plan->tank, w->asking->practice), usual;
	struct ts_drift_tank tank;
	struct ts_drift d;

	ts_waters_run(waters, run, &tank);
	usual = tank.change_share;
	if (w->noted)
		tank.change_share = 0;
	if (ts_drift_open(&tank, w->asking->practice, &d) != TS_OK)
		return;
	for (size_t n = 0; n < w->days; n++) {
		double share = w->noted ? changed_on(w, w->first + (long)n, net_l, usual) : 0;

		if (n)
			ts_drift_live(&d);
		ts_drift_read(&d, false, &w->runs[run][n]);
		if (share > 0)
			ts_drift_pour(&d.tank, share);
		else if (n)
			ts_drift_change(&d);
	}
}

static double of_day(const struct ts_drift_day *d, enum ts_now_value value)
{
	return value == TS_NOW_KH    ? d->kh_dh
	       : value == TS_NOW_GH  ? d->gh_dh
	       : value == TS_NOW_NO3 ? d->no3_mg_l
				     : (double)NAN;
}

/* What a value of the first day has to be read for: without it nothing of it is expected. */
static bool was_read_then(const struct work *w, enum ts_now_value value)
{
	struct ts_plan then;

	plan_of_then(w, &then);
	for (size_t i = 0; i < then.tank.reading_count; i++) {
		if (!isnan(ts_reading_value(&then.tank.readings[i], value)))
			return true;
	}
	return false;
}

/* Of the newest reading: by the readings before it, as learned.h has it for every answer. */
static bool by_log(const struct work *w, size_t v, struct ts_log_value *one)
{
	static const char *const keys[TS_NOW__COUNT] = {
		[TS_NOW_GH] = "gh", [TS_NOW_KH] = "kh", [TS_NOW_NO3] = "no3"};
	const char *key = keys[values[v].value];

	for (size_t i = 0; key && i < w->r->learned.expected_count; i++) {
		const struct ts_learned_expected *e = &w->r->learned.expected[i];

		if (strcmp(e->parameter, key) != 0)
			continue;
		one->expected = (struct ts_range){e->low, e->high};
		one->expected_now = (e->low + e->high) / 2;
		return true;
	}
	return false;
}

/* Half the interval of the newest reading: the model's band is of the water, and not of a kit. */
static double kit_of(const struct ts_waters *waters, enum ts_now_value value)
{
	for (int i = 0; i < TS_FIT__COUNT; i++) {
		if (ts_fit_values[i] == value)
			return waters->fit.level[i].half;
	}
	return 0;
}

static void take_expected(struct work *w, const struct ts_waters *waters)
{
	for (size_t i = 0; i < w->r->value_count; i++) {
		struct ts_log_value *one = &w->r->values[i];
		double a, b, c, kit;
		size_t v = 0;

		while (strcmp(values[v].name, one->name) != 0)
			v++;
		if (by_log(w, v, one) || !was_read_then(w, values[v].value))
			continue;
		if (isnan(of_day(&w->runs[0][0], values[v].value)))
			continue;
		a = of_day(&w->runs[0][w->days - 1], values[v].value);
		b = of_day(&w->runs[1][w->days - 1], values[v].value);
		c = of_day(&w->runs[2][w->days - 1], values[v].value);
		kit = kit_of(waters, values[v].value);
		one->expected_now = a;
		one->expected = (struct ts_range){
			fmax(fmin(a, fmin(b, c)) - kit, 0), fmax(a, fmax(b, c)) + kit};
	}
}

static void add_point(
	struct work *w, long day, bool comes, double kh_dh, double gh_dh, double no3_mg_l)
{
	w->r->points[w->r->point_count++] =
		(struct ts_log_point){.date = ts_asking_day(w->asking, day),
			.comes = comes,
			.kh_dh = kh_dh,
			.gh_dh = gh_dh,
			.no3_mg_l = no3_mg_l,
			.day = day};
}

/* A point a week, and the last. */
static void put_past(struct work *w)
{
	bool kh = was_read_then(w, TS_NOW_KH), gh = was_read_then(w, TS_NOW_GH);
	bool no3 = was_read_then(w, TS_NOW_NO3);
	const double no = (double)NAN;

	for (size_t n = 0; n < w->days; n++) {
		const struct ts_drift_day *d = &w->runs[0][n];

		if (n % STEP_DAYS == 0 || n + 1 == w->days)
			add_point(w, w->first + (long)n, false, kh ? d->kh_dh : no,
				gh ? d->gh_dh : no, no3 ? d->no3_mg_l : no);
	}
}

static enum ts_status follow_past(struct work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_plan *then = ts_arena_take(w->asking->arena, sizeof *then);
	struct ts_waters *waters = ts_arena_take(w->asking->arena, sizeof *waters);
	long day;

	if (!then || !waters)
		return TS_NO_MEMORY;
	if (!find_first(w))
		return TS_OK;
	w->days = (size_t)(w->asking->today - w->first) + 1;
	for (int run = 0; run < RUNS; run++) {
		w->runs[run] = ts_arena_array(w->asking->arena, w->days, sizeof *w->runs[run]);
		if (!w->runs[run])
			return TS_NO_MEMORY;
	}
	for (size_t i = 0; i < plan->tank.event_count; i++)
		w->noted |= change_noted(&plan->tank.events[i], &day);
	plan_of_then(w, then);
	ts_waters_make(&(struct ts_waters_case){then, w->groups, plan->stock_count, w->first,
			       w->question->species},
		w->asking->practice, waters);
	if (!waters->drift_known || !waters->load_known)
		return TS_OK;
	for (int run = 0; run < RUNS; run++)
		follow(w, waters, run);
	take_expected(w, waters);
	put_past(w);
	return TS_OK;
}

static double comes_to(const struct ts_drift_day_result *d, const char *name)
{
	return strcmp(name, "KH") == 0    ? d->kh_dh
	       : strcmp(name, "GH") == 0  ? d->gh_dh
	       : strcmp(name, "NO3") == 0 ? d->no3_mg_l
	       : strcmp(name, "pH") == 0  ? d->ph
					  : (double)NAN;
}

/* From today on as drift has it. */
static enum ts_status follow_future(struct work *w)
{
	const struct ts_drift_question asked = {
		w->question->plan, w->question->species, TS_LOG_AHEAD_DAYS};
	struct ts_drift_result *d = ts_arena_take(w->asking->arena, sizeof *d);
	const char *refusal;
	enum ts_status status;

	if (!d)
		return TS_NO_MEMORY;
	*d = (struct ts_drift_result){0};
	status = ts_drift_answer(w->asking, &asked, d, &refusal);
	if (status == TS_BAD_INPUT)
		return TS_OK; /* nothing follows, and drift says why */
	if (status || !d->day_count)
		return status;
	for (size_t i = 0; i < w->r->value_count; i++)
		w->r->values[i].comes = comes_to(&d->days[d->day_count - 1], w->r->values[i].name);
	for (size_t n = 0; n < d->day_count; n++) {
		if (n % STEP_DAYS == 0 || n + 1 == d->day_count)
			add_point(w, w->asking->today + (long)n, true, d->days[n].kh_dh,
				d->days[n].gh_dh, d->days[n].no3_mg_l);
	}
	w->r->comes_says = d->says;
	w->r->comes_keeps = d->keeps;
	w->r->comes_grave = d->grave;
	w->r->gone_says = d->gone_says;
	return TS_OK;
}

enum ts_status ts_log_model_fill(const struct ts_asking *asking,
	const struct ts_log_question *question, struct ts_log_result *io)
{
	struct work *w = ts_arena_take(asking->arena, sizeof *w);
	const struct ts_plan *plan = question->plan;
	enum ts_status status;

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct work){.asking = asking, .question = question, .r = io};
	io->values = ts_arena_array(asking->arena, VALUES, sizeof *io->values);
	io->points = ts_arena_array(asking->arena,
		(FOLLOWED_MOST + TS_LOG_AHEAD_DAYS) / STEP_DAYS + 4, sizeof *io->points);
	w->groups =
		ts_arena_array(asking->arena, plan ? plan->stock_count + 1 : 1, sizeof *w->groups);
	if (!io->values || !io->points || !w->groups)
		return TS_NO_MEMORY;
	for (size_t v = 0; v < VALUES; v++)
		take_value(w, v);
	if (!plan || !question->species || !plan->stock_count || asking->today < 0)
		return TS_OK;
	for (size_t i = 0; i < plan->stock_count; i++)
		w->groups[i] = (struct ts_group){.species = question->species[i],
			.either = (unsigned)fmax(1, plan->stock[i].count)};
	status = follow_past(w);
	return status ? status : follow_future(w);
}
