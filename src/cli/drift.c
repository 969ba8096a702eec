/* SPDX-License-Identifier: Apache-2.0 */
/*
 * drift: the tank of a plan over the coming days under its feeding and water changes, where it
 * settles, and the smallest change of water that keeps it. The simulation is care/drift.c.
 */
#include "cli/drift.h"

#include <math.h>
#include <tapshoal/stock.h>

#include "base/arena.h"
#include "care/jump.h"
#include "chem/ions.h"
#include "stock/waters.h"
#include "words/care.h"
#include "words/names.h"

#define DAYS_DEFAULT 28
#define DAYS_MOST 3650
/* The one large change that is looked at, of the water. */
#define LARGE_CHANGE 0.5
/* How much more often than now a change is tried. */
#define OFTEN_MOST 4
/* More of the water than this nobody is advised to change at a time. */
#define SHARE_MOST 0.5

static struct ts_range pair(const double values[2])
{
	return (struct ts_range){values[0], values[1]};
}

static struct ts_drift_day_result day_result(const struct ts_drift_day *d)
{
	return (struct ts_drift_day_result){d->day, d->kh_dh, d->gh_dh, d->ph, d->ph_low,
		d->ph_high, d->tan_mg_l, d->no3_mg_l, d->conductivity_us_cm, d->filter_doubtful,
		d->change_due};
}

static struct ts_drift_steady_result steady_result(const struct ts_drift_steady *s)
{
	return (struct ts_drift_steady_result){{s->kh_dh.before_change, s->kh_dh.after_change},
		{s->gh_dh.before_change, s->gh_dh.after_change},
		{s->no3_mg_l.before_change, s->no3_mg_l.after_change}};
}

static enum ts_status fill_days(
	struct session *s, const struct ts_waters *w, struct ts_drift_result *r)
{
	size_t count = (s->options->days ? s->options->days : DAYS_DEFAULT) + 1;
	struct ts_drift_day *days = ts_arena_array(s->arena, count, sizeof *days);
	unsigned gone;
	enum ts_status status;

	r->days = ts_arena_array(s->arena, count, sizeof *r->days);
	if (!days || !r->days)
		return TS_NO_MEMORY;
	status = ts_drift_run(&w->drift.tank, s->practice, (unsigned)count - 1, days, &gone);
	if (status != TS_OK)
		return status;
	for (size_t i = 0; i < count; i++)
		r->days[i] = day_result(&days[i]);
	r->day_count = count;
	r->buffer_gone_day = gone ? gone : (double)NAN;
	return TS_OK;
}

static enum ts_status fill_steady(
	struct session *s, const struct ts_waters *w, struct ts_drift_result *r)
{
	struct ts_drift_steady settled, formula;
	enum ts_status status = ts_drift_settle(&w->drift.tank, s->practice, &settled);

	if (status != TS_OK)
		return status;
	ts_drift_steady(&w->drift.tank, &formula);
	r->steady = steady_result(&settled);
	r->steady_closed_form = steady_result(&formula);
	return TS_OK;
}

/* The routine's own days first; where half of the water would not do, twice, four times as often.
 */
static enum ts_status fill_smallest(
	struct session *s, const struct ts_waters *w, struct ts_drift_result *r)
{
	const struct ts_drift_bounds bounds = {
		s->practice->value[TS_P_KH_ACT], s->practice->value[TS_P_NITRATE_CONCERN]};
	struct ts_drift_tank tank = w->drift.tank;
	enum ts_status status = TS_NO;
	double share;

	for (int often = 1; status == TS_NO && often <= OFTEN_MOST; often *= 2) {
		tank.change_days = fmax(1, w->drift.tank.change_days / often);
		status = ts_drift_smallest_change(&tank, &bounds, s->practice, &share);
		if (status == TS_OK && share > SHARE_MOST)
			status = TS_NO;
	}
	if (status != TS_OK)
		return status == TS_NO ? TS_OK : status;
	r->smallest_safe_change = ts_arena_take(s->arena, sizeof *r->smallest_safe_change);
	if (!r->smallest_safe_change)
		return TS_NO_MEMORY;
	*r->smallest_safe_change = (struct ts_drift_change_result){
		100 * share, tank.change_days, bounds.kh_low_dh, bounds.no3_high_mg_l};
	return TS_OK;
}

static enum ts_status fill_jump(
	struct session *s, const struct ts_waters *w, struct ts_drift_result *r)
{
	struct ts_drift_jump jump;
	enum ts_status status =
		ts_drift_jump(&w->drift.tank, LARGE_CHANGE, w->drift.tan_known, s->practice, &jump);

	if (status == TS_OK)
		r->large_change = (struct ts_drift_jump_result){100 * jump.share, pair(jump.gh_dh),
			pair(jump.kh_dh), pair(jump.ph), pair(jump.conductivity_us_cm),
			pair(jump.no3_mg_l), pair(jump.nh3_n_mg_l), jump.safe_step};
	return status;
}

static void fill_assumed(struct session *s, unsigned assumed, struct ts_drift_result *r)
{
	size_t count = 0;

	for (unsigned i = 0; ts_drift_assumed_words[i]; i++)
		count += assumed >> i & 1;
	r->assumed.items = ts_arena_array(s->arena, count, sizeof *r->assumed.items);
	for (unsigned i = 0; r->assumed.items && ts_drift_assumed_words[i]; i++) {
		if (assumed >> i & 1)
			r->assumed.items[r->assumed.count++] = ts_drift_assumed_words[i];
	}
}

static enum ts_status fill(struct session *s, const struct ts_waters *w, struct ts_drift_result *r)
{
	enum ts_status status = fill_days(s, w, r);

	if (status == TS_OK)
		status = fill_steady(s, w, r);
	if (status == TS_OK && w->drift.tank.change_days > 0)
		status = fill_smallest(s, w, r);
	if (status == TS_OK)
		status = fill_jump(s, w, r);
	fill_assumed(s, w->drift.assumed, r);
	return status;
}

/* The animals of the plan as the load knows them; an unknown name is not passed over. */
static enum ts_status fill_groups(
	struct session *s, const struct ts_plan *plan, struct ts_group *groups)
{
	bool ok = true;

	for (size_t i = 0; i < plan->stock_count; i++) {
		struct ts_candidates candidates;

		groups[i] = (struct ts_group){
			.species = session_species(s, plan->stock[i].species, &candidates),
			.either = (unsigned)plan->stock[i].count};
		if (groups[i].species)
			continue;
		ts_text_put(s->error, s->error->len ? "\n" : "");
		ts_say_candidates(s->error, plan->stock[i].species, &candidates);
		ok = false;
	}
	return ok ? TS_OK : TS_BAD_INPUT;
}

/* The three waters of the plan, with its animals; the session's error says what is missing. */
static enum ts_status make_waters(
	struct session *s, const struct ts_plan *plan, long day, struct ts_waters *ret)
{
	struct ts_group *groups = ts_arena_array(s->arena, plan->stock_count + 1, sizeof *groups);
	const struct ts_waters_case asked = {plan, groups, plan->stock_count, day};
	enum ts_status status;

	if (!groups)
		return TS_NO_MEMORY;
	status = fill_groups(s, plan, groups);
	if (status != TS_OK)
		return status;
	ts_waters_make(&asked, s->practice, ret);
	if (!ret->load_known)
		ts_text_put(s->error, "the tank's size is not given; write its length, width and "
				      "height, or its volume");
	else if (!ret->drift_known)
		ts_text_put(s->error, "a figure of the plan lies outside what fresh water and a "
				      "tank can be; is a unit wrong?");
	else if (ret->drift.assumed & TS_DRIFT_NO_KH)
		ts_text_put(s->error, "drift needs the KH of the water that is poured in; measure "
				      "it with a drop kit and write it into the plan's water");
	return s->error->len ? TS_BAD_INPUT : TS_OK;
}

/* When the buffer goes at the least and at the most that the animals may make of the water. */
static void fill_doubt(const struct ts_waters *w, struct ts_drift_result *r)
{
	const struct ts_estimate *days = &w->settles.buffer_days;

	r->buffer_gone_day_early = isfinite(days->low) ? days->low : (double)NAN;
	r->buffer_gone_day_late = isfinite(days->high) ? days->high : (double)NAN;
}

enum ts_status drift_buffer_days(struct session *s, const struct ts_plan *plan, double *ret)
{
	struct ts_waters *w = ts_arena_take(s->arena, sizeof *w);
	enum ts_status status = w ? make_waters(s, plan, s->today, w) : TS_NO_MEMORY;

	if (status == TS_OK)
		*ret = isfinite(w->settles.buffer_days.low) ? w->settles.buffer_days.low
							    : (double)NAN;
	return status;
}

/* Share of the nitrogen that plants take. */
static double plant_share(const struct ts_load *l)
{
	double before = l->nitrogen_mg_day.value / l->net_l / TS_WEIGHT_N;
	double left = ts_net_nitrogen_mmol_l(l->modelled_no3_rise_mg_l_week);

	return before > 0 ? fmin(fmax(1 - left / before, 0), 1) : 0;
}

static void fill_head(
	const struct ts_plan *plan, const struct ts_waters *w, struct ts_drift_result *r)
{
	const struct ts_load *l = &w->load;

	r->name = plan->name;
	r->volume_l = l->net_l;
	r->nitrogen_mg_day = l->nitrogen_mg_day.value;
	r->plant_share = plant_share(l);
	r->nitrogen_measured_mg_day =
		ts_net_nitrogen_mmol_l(l->measured_no3_rise_mg_l_week) * l->net_l * TS_WEIGHT_N;
	r->measured_differs = l->differs;
	r->change_percent = 100 * w->drift.tank.change_share;
	r->change_every_days = w->drift.tank.change_days;
	r->caution = ts_caution_drift;
}

/* Catalogue, plan and waters of the call. */
static enum ts_status open_plan(struct session *s, struct ts_plan *plan, struct ts_waters *ret)
{
	const struct options *o = s->options;
	enum ts_status status;

	if (o->argument_count != 1 || o->days > DAYS_MOST) {
		ts_text_put(s->error, o->days > DAYS_MOST ? "--days takes 1 to 3650"
							  : "drift needs one plan; for example "
							    "tapshoal drift plan.yaml --days 28");
		return TS_BAD_INPUT;
	}
	status = file_plan(s, o->arguments[0], plan);
	if (status == TS_OK)
		status = answer_catalogue(s);
	if (o->top_up)
		plan->tank.top_up = o->top_up;
	return status == TS_OK ? make_waters(s, plan, s->today, ret) : status;
}

/* Chemistry refuses readings without a word; who asked gets one. */
static enum ts_status with_reason(struct session *s, enum ts_status status)
{
	if (status == TS_BAD_INPUT && !s->error->len && !s->findings->errors)
		ts_text_put(s->error, "the readings cannot stand together in one water, so that "
				      "nothing follows from them; tapshoal water says what is odd");
	return status;
}

enum ts_status command_drift(struct session *s)
{
	struct ts_plan plan;
	struct ts_waters *w = ts_arena_take(s->arena, sizeof *w);
	struct ts_drift_result r = {0};
	enum ts_status status = w ? open_plan(s, &plan, w) : TS_NO_MEMORY;

	if (status != TS_OK)
		return with_reason(s, status);
	fill_head(&plan, w, &r);
	status = fill(s, w, &r);
	if (status != TS_OK)
		return with_reason(s, status);
	fill_doubt(w, &r);
	if (s->options->format == FORMAT_JSON)
		session_json(s, "drift", &ts_result_drift, &r);
	else
		drift_write(s, &r);
	return TS_OK;
}
