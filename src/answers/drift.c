/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The gravest thing first: ammonia, a buffer that is gone, then the first limit that the routine
 * reaches, whatever it is of; what the log shows stands before what was modelled.
 */
#include "answers/drift_work.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "care/advice.h"
#include "care/jump.h"
#include "care/plan_state.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "stock/band.h"
#include "words/advice.h"
#include "words/care.h"
#include "words/rulings.h"
#include "words/sentence.h"

/* The one large change that is looked at, of the water. */
#define LARGE_CHANGE 0.5
/* How much more often than now a change is tried. */
#define OFTEN_MOST 4
/* More of the water than this nobody is advised to change at a time. */
#define SHARE_MOST 0.5
/* Less free ammonia than this is not worth a word. */
#define NH3_SHOWN_MG_L 0.0005
/* Rounds of buffer.warn within which a buffer that goes comes first. */
#define SOON 2
/* GH that moves so far in the days followed is said, though it meets no limit, dH. */
#define GH_MOVES_DH 2.0
#define GH_SHOWN_DH 1.5
/* The last drop and all readings together are told apart from so much on, dH. */
#define KH_APART_DH 0.15
/* It stands, within so much of where it settles. */
#define HALF_DH 0.5

/* clang-format off */
const struct ts_drift_moves_row ts_drift_moves_rows[TS_MOVES__COUNT] = {
	[TS_MOVES_GH] = {"gh", "GH", "", TS_NOW_GH, 1},
	[TS_MOVES_KH] = {"kh", "KH", "", TS_NOW_KH, 1},
	[TS_MOVES_NO3] = {"no3", "nitrate", " mg/L", TS_NOW_NO3, 0},
	[TS_MOVES_PH] = {"ph", "pH", "", TS_NOW_PH, 1},
	[TS_MOVES_CONDUCTIVITY] = {"conductivity", "conductivity", " uS/cm", TS_NOW_CONDUCTIVITY, 0},
};
/* clang-format on */

static const char *take(struct drift_work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void put(struct drift_work *w, double value, int decimals)
{
	ts_text_number_short(&w->text, value, decimals);
}

static double bound(const struct drift_work *w, enum ts_practice_id id)
{
	return w->asking->practice->value[id];
}

static struct ts_range pair(const double values[2])
{
	return (struct ts_range){values[0], values[1]};
}

static double kh_or_unknown(const struct drift_work *w, double kh)
{
	return w->kh_known ? kh : (double)NAN;
}

static double gh_or_unknown(const struct drift_work *w, double gh)
{
	return w->gh_known ? gh : (double)NAN;
}

static void say_doubtful(struct drift_work *w)
{
	struct ts_text text;

	ts_text_open(&text, &w->asking->arena->allocator);
	ts_text_put(&text, "Ammonia marked doubtful: below pH ");
	ts_text_number_short(&text, w->asking->practice->value[TS_P_FILTER_FULL_PH], 1);
	ts_text_put(&text, " filter bacteria work slowly or stop; only a test says which.");
	w->ret->doubtful_says = ts_asking_keep(w->asking, &text);
	ts_text_drop(&text);
}

static struct ts_range band(bool known, const struct ts_estimate *e)
{
	const struct ts_range none = {(double)NAN, (double)NAN};

	return known ? (struct ts_range){e->low, e->high} : none;
}

static enum ts_status fill_days(struct drift_work *w)
{
	struct ts_drift_result *r = w->ret;
	struct ts_drift_tank tank;
	bool doubtful = false;
	size_t count = w->question->days + 1;
	struct ts_drift_day *days = ts_arena_array(w->asking->arena, count, sizeof *days);
	struct ts_drift_band *bands = ts_arena_array(w->asking->arena, count, sizeof *bands);
	enum ts_status status;

	r->days = ts_arena_array(w->asking->arena, count, sizeof *r->days);
	if (!days || !bands || !r->days)
		return TS_NO_MEMORY;
	/* As all readings together have the tank, its filter as it is. */
	ts_waters_run(w->waters, 0, &tank);
	tank.filter_share = w->waters->drift.tank.filter_share;
	w->kh_read = ts_chem_dkh_from_meq_l(w->waters->drift.tank.water.alk_meq_l);
	status = ts_drift_run(&tank, w->asking->practice, w->question->days, days, NULL);
	if (status == TS_OK)
		status = ts_waters_bands(w->waters, w->question->days, w->asking->practice, bands);
	if (status != TS_OK)
		return status;
	w->today = days[0];
	for (size_t i = 0; i < count; i++) {
		const struct ts_drift_day *d = &days[i];

		r->days[i] = (struct ts_drift_day_result){d->day, kh_or_unknown(w, d->kh_dh),
			gh_or_unknown(w, d->gh_dh), kh_or_unknown(w, d->ph),
			kh_or_unknown(w, d->ph_low), kh_or_unknown(w, d->ph_high), d->tan_mg_l,
			d->no3_mg_l, d->conductivity_us_cm, d->filter_doubtful, d->change_due,
			band(w->kh_known, &bands[i].kh_dh), band(w->gh_known, &bands[i].gh_dh),
			band(true, &bands[i].no3_mg_l)};
		doubtful |= d->filter_doubtful;
	}
	r->day_count = count;
	if (doubtful)
		say_doubtful(w);
	return TS_OK;
}

static struct ts_drift_steady_result steady_result(
	const struct drift_work *w, const struct ts_drift_steady *s)
{
	return (struct ts_drift_steady_result){
		{kh_or_unknown(w, s->kh_dh.before_change), kh_or_unknown(w, s->kh_dh.after_change)},
		{gh_or_unknown(w, s->gh_dh.before_change), gh_or_unknown(w, s->gh_dh.after_change)},
		{s->no3_mg_l.before_change, s->no3_mg_l.after_change}};
}

/* As check has it: a matured filter, and all waste counted as nitrate. */
static enum ts_status fill_steady(struct drift_work *w)
{
	struct ts_drift_steady settled, formula;
	struct ts_drift_tank tank;
	enum ts_status status;

	ts_waters_run(w->waters, 0, &tank);
	status = ts_drift_settle(&tank, w->asking->practice, &settled);
	if (status != TS_OK)
		return status;
	ts_drift_steady(&tank, &formula);
	if (!isnan(settled.gh_dh.before_change))
		settled.no3_mg_l = formula.no3_mg_l;
	w->ret->steady = steady_result(w, &settled);
	w->ret->steady_closed_form = steady_result(w, &formula);
	return TS_OK;
}

/* The routine's own days first; where half of the water would not do, twice, four times as often.
 */
static enum ts_status fill_smallest(struct drift_work *w)
{
	const struct ts_drift_bounds bounds = {
		w->kh_known ? bound(w, TS_P_KH_ACT) : 0, w->no3_most};
	struct ts_drift_tank now, tank;
	enum ts_status status = TS_NO;
	double share;

	ts_waters_run(w->waters, 0, &now);
	tank = now;
	if (!(tank.change_days > 0))
		return TS_OK;
	for (int often = 1; status == TS_NO && often <= OFTEN_MOST; often *= 2) {
		tank.change_days = fmax(1, now.change_days / often);
		status = ts_drift_smallest_change(&tank, &bounds, w->asking->practice, &share);
		if (status == TS_OK && share > SHARE_MOST)
			status = TS_NO;
	}
	if (status != TS_OK)
		return status == TS_NO ? TS_OK : status;
	w->ret->smallest_safe_change =
		ts_arena_take(w->asking->arena, sizeof *w->ret->smallest_safe_change);
	if (!w->ret->smallest_safe_change)
		return TS_NO_MEMORY;
	*w->ret->smallest_safe_change = (struct ts_drift_change_result){100 * share,
		tank.change_days, kh_or_unknown(w, bounds.kh_low_dh), bounds.no3_high_mg_l};
	return TS_OK;
}

static void put_pair(struct drift_work *w, const char *label, const struct ts_range *values,
	int decimals, const char *unit)
{
	if (isnan(values->low) || isnan(values->high))
		return;
	ts_text_puts(&w->text, label, " ", NULL);
	ts_text_number(&w->text, values->low, decimals);
	ts_text_put(&w->text, " to ");
	ts_text_number(&w->text, values->high, decimals);
	ts_text_put(&w->text, unit);
}

/* What the animals would feel of a large change today; ammonia says stop. */
static const char *jump_says(struct drift_work *w, const struct ts_drift_jump_result *j)
{
	double limit = bound(w, TS_P_NH3_CONFLICT);

	ts_text_put(&w->text, "Half of the water changed at once, today, would take ");
	put_pair(w, "GH", &j->gh_dh, 1, ", ");
	put_pair(w, "KH", &j->kh_dh, 1, ", ");
	put_pair(w, "pH", &j->ph, 1, ", ");
	put_pair(w, "conductivity", &j->conductivity_us_cm, 0, " uS/cm");
	if (j->nh3_n_mg_l.high >= NH3_SHOWN_MG_L)
		put_pair(w, ", free ammonia", &j->nh3_n_mg_l, 4, " mg/L");
	if (j->nh3_n_mg_l.high > limit && j->nh3_n_mg_l.high > j->nh3_n_mg_l.low) {
		ts_text_put(&w->text, ". Free ammonia harms from ");
		put(w, limit, 2);
		ts_text_put(&w->text, ": do not, but go by small changes until ammonia reads nil.");
	} else if (j->safe_step) {
		ts_text_put(&w->text, ". Ordinary animals bear that step.");
	} else {
		ts_text_put(&w->text, ". That is more than animals used to the old water bear at "
				      "once: several small changes reach the same in a fortnight.");
	}
	return take(w);
}

static enum ts_status fill_jump(struct drift_work *w)
{
	const struct ts_plan_drift *p = &w->waters->drift;
	struct ts_drift_jump_result *r = &w->ret->large_change;
	struct ts_drift_jump jump;
	enum ts_status status =
		ts_drift_jump(&p->tank, LARGE_CHANGE, p->tan_known, w->asking->practice, &jump);

	if (status != TS_OK)
		return status;
	*r = (struct ts_drift_jump_result){100 * jump.share, pair(jump.gh_dh), pair(jump.kh_dh),
		pair(jump.ph), pair(jump.conductivity_us_cm), pair(jump.no3_mg_l),
		pair(jump.nh3_n_mg_l), jump.safe_step, NULL};
	if (!w->kh_known)
		r->kh_dh = r->ph = r->nh3_n_mg_l = (struct ts_range){(double)NAN, (double)NAN};
	if (!w->gh_known)
		r->gh_dh = (struct ts_range){(double)NAN, (double)NAN};
	r->says = jump_says(w, r);
	return TS_OK;
}

static bool one_sided(const struct ts_measure *m)
{
	return m->kind == TS_MEASURE_BELOW || m->kind == TS_MEASURE_ABOVE;
}

/* "<14", ">8": what is followed from there may as well start somewhere else. */
static void ask_one_sided(struct drift_work *w, const struct ts_reading *r, const char *whose)
{
	const struct {
		const struct ts_measure *measure;
		const char *name;
	} all[] = {{&r->gh_dh, "GH"}, {&r->kh_dh, "KH"}, {&r->no3_mg_l, "nitrate"},
		{&r->no3_n_mg_l, "nitrate"}};

	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		if (!one_sided(all[i].measure))
			continue;
		ts_text_puts(&w->text, "Measure ", all[i].name, " of ", whose,
			" with drops: it is known from one side only, and all of this starts from "
			"it.",
			NULL);
		ts_asking_note(w->asking, &w->ret->asks, take(w));
	}
}

static void fill_now(struct drift_work *w)
{
	const struct ts_water *poured = &w->question->plan->water;
	const double values[TS_MOVES__COUNT] = {gh_or_unknown(w, w->today.gh_dh),
		kh_or_unknown(w, w->kh_read), w->today.no3_mg_l, kh_or_unknown(w, w->today.ph),
		w->today.conductivity_us_cm};
	struct ts_drift_result *r = w->ret;

	r->now = ts_arena_array(w->asking->arena, TS_MOVES__COUNT, sizeof *r->now);
	for (int i = 0; r->now && i < TS_MOVES__COUNT; i++) {
		const struct ts_drift_moves_row *row = &ts_drift_moves_rows[i];
		const struct ts_now_from *from = &w->waters->log.from[row->value];

		r->now[r->now_count++] = (struct ts_drift_now_result){
			row->key, values[i], from->age_days, from->reading != NULL};
		/* pH and conductivity follow from the rest. */
		if (!from->old || i >= TS_MOVES_FITTED)
			continue;
		ts_text_puts(&w->text, "Read ", row->label,
			" of the tank again: the last reading is ", NULL);
		put(w, from->age_days, 0);
		ts_text_put(&w->text, " days old, and all of this starts from it.");
		ts_asking_note(w->asking, &r->asks, take(w));
	}
	ask_one_sided(w, &w->waters->log.reading, "the tank");
	if (poured->reading_count)
		ask_one_sided(w, &poured->readings[poured->reading_count - 1],
			"the water that is poured in");
	if (w->waters->drift.assumed & (TS_DRIFT_GH_OF_TANK | TS_DRIFT_NO_GH))
		ts_asking_note(w->asking, &r->asks,
			w->gh_known ? "Measure the GH of the water that is poured in: it was not "
				      "read, and is taken as the tank's."
				    : "Measure the GH of the tank and of the water that is poured "
				      "in: without them nothing is said of it.");
	if (!w->kh_known)
		ts_asking_note(w->asking, &r->asks,
			"Measure the KH of the water that is poured in, with drops: without it "
			"nothing is said of the buffer and of pH.");
	if (w->waters->strange)
		ts_asking_note(w->asking, &r->asks,
			"The log moves otherwise than this supply and these changes can: is the "
			"supply new, or is more or less changed? It was left out.");
}

/* "KH fell from 8 to 4 in 84 days", "KH stood at 8 for 84 days" */
static const char *measured_says(
	struct drift_work *w, const struct ts_drift_moves_row *row, const struct ts_course *course)
{
	ts_text_puts(&w->text, row->label,
		!course->moves       ? " stood at "
		: course->a_week > 0 ? " rose from "
				     : " fell from ",
		NULL);
	put(w, course->moves ? course->first : course->low, row->decimals);
	if (course->moves || course->high > course->low) {
		ts_text_put(&w->text, " to ");
		put(w, course->moves ? course->last : course->high, row->decimals);
	}
	ts_text_puts(&w->text, row->unit, course->moves ? " in " : " for ", NULL);
	put(w, (double)(course->to - course->from), 0);
	ts_text_put(&w->text, " days");
	return take(w);
}

/* The rate by all that the log holds, and the course that the value is on now. */
static void fill_measured(struct drift_work *w)
{
	const struct ts_rate *rates[] = {
		&w->waters->gh_rate, &w->waters->kh_rate, &w->waters->no3_rate};
	const struct ts_tank *tank = &w->question->plan->tank;
	struct ts_drift_result *r = w->ret;

	r->measured = ts_arena_array(w->asking->arena, TS_MOVES_FITTED, sizeof *r->measured);
	for (int i = 0; r->measured && i < TS_MOVES_FITTED; i++) {
		const struct ts_drift_moves_row *row = &ts_drift_moves_rows[i];
		const struct ts_rate *rate = rates[i];
		struct ts_course course;

		ts_course_make(tank->readings, tank->reading_count, row->value,
			ts_past_new_water(tank, w->asking->today), &course);
		if (!rate->readings || !course.readings)
			continue;
		r->measured[r->measured_count++] = (struct ts_drift_measured_result){row->key,
			(double)rate->readings, (double)(course.to - course.from), course.first,
			course.last, {7 * rate->low, 7 * rate->high},
			measured_says(w, row, &course), course.moves};
	}
}

static void fill_assumed(struct drift_work *w)
{
	for (unsigned i = 0; ts_drift_assumed_words[i]; i++) {
		if (w->waters->drift.assumed >> i & 1)
			ts_asking_note(w->asking, &w->ret->assumed, ts_drift_assumed_words[i]);
	}
}

static void fill_head(struct drift_work *w)
{
	const struct ts_load *l = &w->waters->load;
	const struct ts_drift_tank *t = &w->waters->drift.tank;
	const struct ts_estimate *gone = &w->waters->settles.buffer_days;
	struct ts_drift_result *r = w->ret;
	double before = l->nitrogen_mg_day.value / l->net_l / TS_WEIGHT_N;

	r->name = w->question->plan->name;
	r->volume_l = l->net_l;
	r->nitrogen_mg_day = l->nitrogen_mg_day.value;
	r->plant_share =
		before > 0 ? fmin(fmax(1 - ts_net_nitrogen_mmol_l(l->modelled_no3_rise_mg_l_week) /
							  before,
					  0),
				     1)
			   : 0;
	r->nitrogen_measured_mg_day =
		ts_net_nitrogen_mmol_l(l->measured_no3_rise_mg_l_week) * l->net_l * TS_WEIGHT_N;
	r->measured_differs = l->differs;
	r->change_percent = 100 * t->change_share;
	r->change_every_days = t->change_days;
	r->buffer_gone_day = isfinite(gone->value) && gone->value > 0 ? gone->value : (double)NAN;
	r->buffer_gone_day_early = isfinite(gone->low) ? gone->low : (double)NAN;
	r->buffer_gone_day_late = isfinite(gone->high) ? gone->high : (double)NAN;
	r->caution = ts_caution_drift;
	if (w->kh_known && w->kh_read >= bound(w, TS_P_KH_FLOOR))
		r->gone_says = ts_learned_gone(w->asking, w->waters);
}

static double most_ammonia(const struct ts_drift_result *r)
{
	double most = 0;

	for (size_t i = 0; i < r->day_count; i++)
		most = fmax(most, r->days[i].tan_mg_l);
	return most;
}

/* " (12 to 31 by the doubt of readings, feed and plants)" */
static void put_doubt(struct drift_work *w)
{
	double early = w->ret->buffer_gone_day_early, late = w->ret->buffer_gone_day_late;

	if (early == w->ret->buffer_gone_day && late == early)
		return;
	ts_text_put(&w->text, " (");
	put(w, early, 0);
	if (isnan(late)) {
		ts_text_put(&w->text, " or more");
	} else {
		ts_text_put(&w->text, " to ");
		put(w, late, 0);
	}
	ts_text_put(&w->text, " by the doubt of readings, feed and plants)");
}

static bool active_soil(const struct drift_work *w)
{
	return w->kh_known && isnan(w->today.ph) && w->today.kh_dh >= bound(w, TS_P_KH_FLOOR);
}

/* The first limit that is no mild one; NULL: none is passed. */
static const struct ts_drift_limit_result *first_of(const struct drift_work *w)
{
	return w->ret->limit_count && !w->ret->limits[0].mild ? &w->ret->limits[0] : NULL;
}

/* A buffer that goes so soon stands before what only gathers. */
static bool buffer_first(const struct drift_work *w)
{
	double day = w->ret->buffer_gone_day;

	return day <= SOON * bound(w, TS_P_BUFFER_WARN) ||
	       (!isnan(day) && (!first_of(w) || first_of(w)->day >= day));
}

/* Whether GH is known to go far: by the log, by a routine that is given, or by none at all. */
static bool gh_goes(const struct drift_work *w)
{
	const struct ts_plan_drift *p = &w->waters->drift;
	bool known = w->waters->gh_rate.readings || !(p->tank.change_share > 0) ||
		     !(p->assumed & (TS_DRIFT_TOP_UP_SUPPLY | TS_DRIFT_COVER_OPEN |
					    TS_DRIFT_CHANGE_USUAL)) ||
		     fabs(w->waters->settles.gh_dh.low - w->today.gh_dh) > GH_MOVES_DH;

	return w->gh_known && known &&
	       fabs(w->waters->settles.gh_dh.value - w->today.gh_dh) > GH_MOVES_DH;
}

/* Whether the readings themselves show it. */
static bool gh_gathers(const struct drift_work *w)
{
	const struct ts_rate *rate = &w->waters->gh_rate;

	return rate->readings && (rate->low > 0 || rate->last - rate->first >= GH_MOVES_DH);
}

static const char *gh_moves(struct drift_work *w)
{
	double to = w->waters->settles.gh_dh.value;

	ts_text_put(&w->text, to > w->today.gh_dh ? "GH rises: " : "GH falls: ");
	put(w, w->today.gh_dh, 1);
	ts_text_put(&w->text, " now, ");
	put(w, to, 1);
	ts_text_put(&w->text, w->waters->settles.no_end ? " in a year" : " where it settles");
	return take(w);
}

/* Beyond at the waste that is expected; whether at the least as well decides between does and may.
 */
static const char *first_limit(struct drift_work *w)
{
	const struct ts_drift_limit_result *first = first_of(w);
	/* What was read is so, whatever the courses do. */
	bool surely = !isnan(first->late) || first->day == 0;

	ts_text_puts(&w->text, "This routine ", surely ? "does not keep" : "may not keep",
		" the water: ", first->says, NULL);
	if (!surely)
		ts_text_put(&w->text, ", as far as what is not given can be guessed");
	return take(w);
}

/* What is guessed to pass a limit, and less than what is changed now would keep from it. */
static bool enough_is_changed(const struct drift_work *w)
{
	const struct ts_drift_change_result *c = w->ret->smallest_safe_change;
	const struct ts_drift_tank *t = &w->waters->drift.tank;

	return c && first_of(w) && isnan(first_of(w)->late) && t->change_share > 0 &&
	       c->share_percent / c->every_days <= 100 * t->change_share / t->change_days;
}

/* What stands before all else: ammonia, and the buffer; NULL: nothing of it. */
static const char *grave(struct drift_work *w)
{
	const struct ts_drift_day *now = &w->today;

	if (now->tan_mg_l >= bound(w, TS_P_TAN_DANGER))
		return "Ammonia stands in this tank: make it safe before anything else";
	if (active_soil(w))
		return "Active soil takes the buffer for as long as it lasts: KH says nothing here";
	if (w->kh_known && w->kh_read < bound(w, TS_P_KH_FLOOR))
		return "The buffer is gone already: steady the water before anything else";
	if (buffer_first(w)) {
		ts_text_put(&w->text, "The buffer lasts ");
		put(w, w->ret->buffer_gone_day, 0);
		ts_text_put(&w->text, " days");
		put_doubt(w);
		return take(w);
	}
	return isnan(w->ret->buffer_gone_day) && most_ammonia(w->ret) >= bound(w, TS_P_TAN_DANGER)
		       ? "Ammonia builds up: the filter cannot clear this feed yet"
		       : NULL;
}

/* Another supply made it what it is: that it stands is no good news for who does not bear it. */
static const char *keeps(struct drift_work *w)
{
	const struct ts_drift_moves_row *row = &ts_drift_moves_rows[w->unfit_what];
	bool gh = w->unfit_what == TS_MOVES_GH;
	double now = gh ? w->today.gh_dh : w->today.kh_dh;
	double to = gh ? w->waters->settles.gh_dh.value : w->waters->settles.kh_dh.value;
	bool moves = fabs(to - now) >= HALF_DH;

	w->ret->keeps = true;
	if (!w->unfit || !ts_past_moved(&w->question->plan->tank, w->asking->today))
		return "This routine keeps the water";
	ts_text_puts(&w->text,
		moves ? "This routine takes the water to " : "This routine keeps the water at ",
		row->label, " ", NULL);
	put(w, moves ? to : now, moves ? 0 : row->decimals);
	ts_text_put(&w->text, w->unfit_above ? ", and that is more than the "
					     : ", and that is "
					       "less than the ");
	put(w, w->unfit_at, row->decimals);
	ts_text_put(&w->text, " that ");
	ts_say_animals(&w->text, w->unfit);
	ts_text_put(&w->text, " bear");
	return take(w);
}

static const char *judge(struct drift_work *w)
{
	const char *first = grave(w);

	w->ret->grave = first != NULL;
	if (first)
		return first;
	/* Minerals that are seen to gather are the cause, whatever else is passed already. */
	if (gh_goes(w) && gh_gathers(w) && w->waters->settles.gh_dh.value > w->today.gh_dh)
		return gh_moves(w);
	if (enough_is_changed(w)) {
		w->ret->keeps = true;
		ts_text_puts(&w->text, "This routine keeps the water where it settles, though ",
			first_of(w)->says, NULL);
		return take(w);
	}
	if (first_of(w))
		return first_limit(w);
	if (gh_goes(w))
		return gh_moves(w);
	return keeps(w);
}

/* " (7 to 7.6)": of the last day, where its ends are not one figure. */
static void put_band(struct drift_work *w, const struct ts_range *band, int decimals)
{
	if (!(band->high - band->low >= ts_power(10, -decimals)))
		return;
	ts_text_put(&w->text, " (");
	put(w, band->low, decimals);
	ts_text_put(&w->text, " to ");
	put(w, band->high, decimals);
	ts_text_put(&w->text, ")");
}

/* "KH 8 now, 7.4 (7 to 7.6) after 28 days, settles at 7.1; " */
static void put_course(struct drift_work *w, const char *label, const char *unit, double now,
	double then, const struct ts_range *band, double steady, int decimals)
{
	if (isnan(now))
		return;
	ts_text_puts(&w->text, label, " ", NULL);
	put(w, now, decimals);
	ts_text_puts(&w->text, unit, " now, ", NULL);
	put(w, then, decimals);
	put_band(w, band, decimals);
	ts_text_put(&w->text, " after ");
	put(w, (double)(w->ret->day_count - 1), 0);
	ts_text_put(&w->text, " days");
	if (!isnan(steady)) {
		ts_text_put(&w->text, ", settles at ");
		put(w, steady, decimals);
	}
	ts_text_put(&w->text, "; ");
}

static void put_measured(struct drift_work *w)
{
	const char *before = "Measured: ";

	for (size_t i = 0; i < w->ret->measured_count; i++) {
		const struct ts_drift_measured_result *m = &w->ret->measured[i];

		if (!m->moves)
			continue;
		ts_text_puts(&w->text, before, m->says, NULL);
		before = ", ";
	}
	ts_text_put(&w->text, *before == ',' ? ". " : "");
}

static void put_routine(struct drift_work *w)
{
	const struct ts_drift_tank *t = &w->waters->drift.tank;

	if (!(t->change_share > 0)) {
		ts_text_put(&w->text, "no water is changed");
		return;
	}
	ts_text_put(&w->text, "you change ");
	ts_say_part_of(&w->text, 100 * t->change_share, w->waters->load.net_l);
	ts_text_put(&w->text, " every ");
	put(w, t->change_days, 1);
	ts_text_put(&w->text, " days");
	if (ts_drift_change_due(t, 0))
		ts_text_put(&w->text, ", and today");
}

/* Nitrate that was read where the same animals have lived for long stands where it settles: no
 * model of their waste is put beside it. */
static bool read_and_settled(const struct drift_work *w)
{
	const struct ts_plan *plan = w->question->plan;

	for (size_t i = 0; i < plan->stock_count; i++) {
		const char *since = plan->stock[i].since;
		long day;

		if (!since || w->asking->today < 0 || !ts_date_read(since, &day) ||
			(double)(w->asking->today - day) < bound(w, TS_P_SETTLED_DAYS))
			return false;
	}
	return w->waters->log.from[TS_NOW_NO3].reading && !w->waters->log.from[TS_NOW_NO3].old &&
	       isnan(w->waters->load.measured_no3_rise_mg_l_week);
}

static const char *because(struct drift_work *w)
{
	const struct ts_drift_result *r = w->ret;
	const struct ts_drift_day_result *now = &r->days[0], *then = &r->days[r->day_count - 1];
	const struct ts_range none = {(double)NAN, (double)NAN};

	put_measured(w);
	if (most_ammonia(r) >= bound(w, TS_P_TAN_DANGER))
		put_course(w, "ammonia", " mg/L", now->tan_mg_l, then->tan_mg_l, &none, (double)NAN,
			2);
	if (fabs(then->gh_dh - now->gh_dh) >= GH_SHOWN_DH || gh_goes(w))
		put_course(w, "GH", "", now->gh_dh, then->gh_dh, &then->gh_band,
			r->steady.gh_dh.before_change, 1);
	if (fabs(w->kh_read - now->kh_dh) >= KH_APART_DH) {
		ts_text_put(&w->text, "KH ");
		put(w, w->kh_read, 1);
		ts_text_put(&w->text, " read, by the whole log ");
		put(w, now->kh_dh, 1);
		ts_text_put(&w->text, "; ");
	}
	put_course(w, "KH", "", now->kh_dh, then->kh_dh, &then->kh_band,
		r->steady.kh_dh.before_change, 1);
	if (read_and_settled(w)) {
		ts_text_put(&w->text, "nitrate ");
		put(w, now->no3_mg_l, 0);
		ts_text_put(&w->text, " mg/L, as read; ");
	} else {
		put_course(w, "nitrate", " mg/L", now->no3_mg_l, then->no3_mg_l, &then->no3_band,
			r->steady.no3_mg_l.before_change, 0);
	}
	put_routine(w);
	return take(w);
}

/* Whether minerals gather because only water evaporates. */
static bool piles_up(const struct drift_work *w)
{
	const struct ts_plan_drift *p = &w->waters->drift;
	bool topped = !(p->assumed & TS_DRIFT_TOP_UP_SUPPLY) || !(p->tank.change_share > 0);

	return topped && !p->tank.pure_top_up && p->tank.bed == TS_BED_INERT && w->gh_known &&
	       w->waters->settles.gh_dh.value > w->today.gh_dh + GH_MOVES_DH;
}

/* What check advises of the same tank, where that is to be done now: no tank has two routines. */
static const char *advised(struct drift_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_plan_state *state = ts_arena_take(w->asking->arena, sizeof *state);
	struct ts_match *residents =
		ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *residents);
	struct ts_advice *all = ts_arena_array(w->asking->arena, TS_ADVICE_MOST, sizeof *all);
	size_t count = 0, first = 0;

	if (!state || !residents || !all)
		return NULL;
	ts_plan_state_make(plan, w->waters, w->asking->today, state);
	for (size_t i = 0; i < plan->stock_count; i++) {
		struct ts_keeping keeping = {.temperature = plan->tank.temp_c,
			.wild = plan->stock[i].origin == TS_ORIGIN_WILD};

		if (ts_in_tank(&plan->stock[i]))
			ts_match_species(w->question->species[i], &w->waters->now, &keeping,
				w->asking->practice, &residents[count++]);
	}
	if (!count)
		return NULL;
	ts_plan_state_residents(state, residents, count);
	count = ts_advise(&state->state, w->asking->practice, all);
	while (first < count && all[first].row->group == 1)
		first++; /* drift asks for itself */
	if (first == count || all[first].row->group < 5 || all[first].row->group > 6 ||
		all[first].row->urgency == TS_AT_LEISURE)
		return NULL;
	ts_say_advice(&w->text, &all[first], residents);
	return take(w);
}

static void fill_remedies(struct drift_work *w)
{
	const char *same = active_soil(w) ? NULL : advised(w);

	const struct ts_drift_change_result *c = w->ret->smallest_safe_change;
	struct ts_texts *list = &w->ret->remedies;
	bool limited = first_of(w) && !active_soil(w) && !enough_is_changed(w);

	if (same)
		ts_asking_note(w->asking, list, same);
	if (same && strstr(same, "pure water"))
		return;
	if (piles_up(w))
		ts_asking_note(w->asking, list,
			"Top up with water without minerals (reverse osmosis, clean rain): what "
			"evaporates leaves its minerals behind.");
	if (!(w->waters->drift.tank.change_share > 0) && (limited || piles_up(w)))
		ts_asking_note(w->asking, list,
			"Begin to change water, a tenth at a time twice a week: an old tank bears "
			"no large change.");
	if (same || !limited || w->ret->learned.back_says ||
		w->waters->drift.tank.change_share <= 0)
		return;
	if (c) {
		ts_text_put(&w->text, "Change ");
		ts_say_part_of(&w->text, ceil(c->share_percent), w->waters->load.net_l);
		ts_text_put(&w->text, " every ");
		put(w, c->every_days, 1);
		ts_text_put(&w->text, " days: that keeps ");
		if (w->kh_known) {
			ts_text_put(&w->text, "KH at ");
			put(w, c->kh_low_dh, 1);
			ts_text_put(&w->text, " or more and ");
		}
		ts_text_put(&w->text, "nitrate at ");
		put(w, c->no3_high_mg_l, 0);
		ts_text_put(&w->text, " mg/L or less. Go there by small steps.");
		ts_asking_note(w->asking, list, take(w));
	} else {
		ts_text_put(
			&w->text, "Half of the water four times as often would not keep KH at ");
		put(w, bound(w, TS_P_KH_ACT), 1);
		ts_text_put(&w->text, " and nitrate below ");
		put(w, w->no3_most, 0);
		ts_text_put(&w->text, " mg/L: feed less, keep less, or look at the new water.");
		ts_asking_note(w->asking, list, take(w));
	}
}

static enum ts_status answer(struct drift_work *w)
{
	enum ts_status status = fill_days(w);

	fill_head(w);
	if (status == TS_OK)
		status = drift_limits(w);
	if (status == TS_OK)
		status = fill_steady(w);
	if (status == TS_OK)
		status = fill_smallest(w);
	if (status == TS_OK)
		status = fill_jump(w);
	if (status != TS_OK)
		return status;
	fill_now(w);
	fill_measured(w);
	ts_learned_make(w->asking, w->question->plan, w->waters, &w->ret->learned);
	fill_assumed(w);
	fill_remedies(w);
	w->ret->says = judge(w);
	w->ret->because = because(w);
	return w->asking->arena->failed ? TS_NO_MEMORY : TS_OK;
}

static const char cannot_stand[] =
	"the readings cannot stand together in one water, so that nothing follows from them; "
	"tapshoal water says what is odd";

static enum ts_status make_waters(struct drift_work *w, const char **ret_refusal)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_group *groups =
		ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *groups);
	struct ts_waters *waters = ts_arena_take(w->asking->arena, sizeof *waters);
	const struct ts_waters_case asked = {
		plan, groups, plan->stock_count, w->asking->today, w->question->species};

	if (!groups || !waters)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < plan->stock_count; i++)
		groups[i] = (struct ts_group){.species = w->question->species[i],
			.either = (unsigned)plan->stock[i].count};
	ts_waters_make(&asked, w->asking->practice, waters);
	w->waters = waters;
	w->kh_known = !(waters->drift.assumed & TS_DRIFT_NO_KH);
	w->gh_known = !(waters->drift.assumed & TS_DRIFT_NO_GH);
	if (!waters->load_known) {
		*ret_refusal = "the tank's size is not given; write its length, width and height, "
			       "or its volume";
		return TS_BAD_INPUT;
	}
	if (waters->settled_known)
		return TS_OK;
	*ret_refusal = cannot_stand;
	return TS_BAD_INPUT;
}

enum ts_status ts_drift_answer(const struct ts_asking *asking,
	const struct ts_drift_question *question, struct ts_drift_result *ret,
	const char **ret_refusal)
{
	struct ts_drift_result r = {0};
	struct drift_work w = {.asking = asking, .question = question, .ret = &r};
	enum ts_status status;

	*ret_refusal = NULL;
	ts_text_open(&w.text, &asking->arena->allocator);
	status = make_waters(&w, ret_refusal);
	if (status == TS_OK)
		status = answer(&w);
	if (status == TS_BAD_INPUT && !*ret_refusal)
		*ret_refusal = cannot_stand;
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (status == TS_OK)
		*ret = r;
	return status;
}
