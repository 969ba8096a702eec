/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Asks the simulation: the days, where they settle, the least change that keeps, one large change;
 * what the log shows stands before what was modelled.
 */
#include "answers/drift_work.h"

#include <string.h>

#include "base/arena.h"
#include "base/number.h"
#include "care/jump.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "stock/band.h"
#include "words/care.h"

/* The one large change that is looked at, of the water. */
#define LARGE_CHANGE 0.5
/* How much more often than now a change is tried. */
#define OFTEN_MOST 4
/* More of the water than this nobody is advised to change at a time. */
#define SHARE_MOST 0.5
/* Less free ammonia than this is not worth a word. */
#define NH3_SHOWN_MG_L 0.0005

/* clang-format off */
const struct ts_drift_moves_row ts_drift_moves_rows[TS_MOVES__COUNT] = {
	[TS_MOVES_GH] = {"gh", "GH", "", TS_NOW_GH, 1},
	[TS_MOVES_KH] = {"kh", "KH", "", TS_NOW_KH, 1},
	[TS_MOVES_NO3] = {"no3", "nitrate", " mg/L", TS_NOW_NO3, 0},
	[TS_MOVES_PH] = {"ph", "pH", "", TS_NOW_PH, 1},
	[TS_MOVES_CONDUCTIVITY] = {"conductivity", "conductivity", " uS/cm", TS_NOW_CONDUCTIVITY, 0},
};
/* clang-format on */

const char *drift_take(struct drift_work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

void drift_put(struct drift_work *w, double value, int decimals)
{
	ts_text_number_short(&w->text, value, decimals);
}

double drift_bound(const struct drift_work *w, enum ts_practice_id id)
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
		w->kh_known ? drift_bound(w, TS_P_KH_ACT) : 0, w->no3_most};
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
	double limit = drift_bound(w, TS_P_NH3_CONFLICT);

	ts_text_put(&w->text, "Half of the water changed at once, today, would take ");
	put_pair(w, "GH", &j->gh_dh, 1, ", ");
	put_pair(w, "KH", &j->kh_dh, 1, ", ");
	put_pair(w, "pH", &j->ph, 1, ", ");
	put_pair(w, "conductivity", &j->conductivity_us_cm, 0, " uS/cm");
	if (j->nh3_n_mg_l.high >= NH3_SHOWN_MG_L)
		put_pair(w, ", free ammonia", &j->nh3_n_mg_l, 4, " mg/L");
	if (j->nh3_n_mg_l.high > limit && j->nh3_n_mg_l.high > j->nh3_n_mg_l.low) {
		ts_text_put(&w->text, ". Free ammonia harms from ");
		drift_put(w, limit, 2);
		ts_text_put(&w->text, ": do not, but go by small changes until ammonia reads nil.");
	} else if (j->safe_step) {
		ts_text_put(&w->text, ". Ordinary animals bear that step.");
	} else {
		ts_text_put(&w->text, ". That is more than animals used to the old water bear at "
				      "once: several small changes reach the same in a fortnight.");
	}
	return drift_take(w);
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
		ts_asking_note(w->asking, &w->ret->asks, drift_take(w));
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
		drift_put(w, from->age_days, 0);
		ts_text_put(&w->text, " days old, and all of this starts from it.");
		ts_asking_note(w->asking, &r->asks, drift_take(w));
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
	drift_put(w, course->moves ? course->first : course->low, row->decimals);
	if (course->moves || course->high > course->low) {
		ts_text_put(&w->text, " to ");
		drift_put(w, course->moves ? course->last : course->high, row->decimals);
	}
	ts_text_puts(&w->text, row->unit, course->moves ? " in " : " for ", NULL);
	drift_put(w, (double)(course->to - course->from), 0);
	ts_text_put(&w->text, " days");
	return drift_take(w);
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
	if (w->kh_known && w->kh_read >= drift_bound(w, TS_P_KH_FLOOR))
		r->gone_says = ts_learned_gone(w->asking, w->waters);
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
	drift_remedies(w);
	w->ret->says = drift_judge(w);
	w->ret->because = drift_because(w);
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
