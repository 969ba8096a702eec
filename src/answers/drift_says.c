/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The sentences of drift: what decides, by the gravest thing first; the figures that it rests on;
 * what keeps the water.
 */
#include "answers/drift_work.h"

#include <string.h>

#include "base/arena.h"
#include "base/date.h"
#include "base/number.h"
#include "care/advice.h"
#include "care/plan_state.h"
#include "words/advice.h"
#include "words/rulings.h"
#include "words/sentence.h"

/* Rounds of buffer.warn within which a buffer that goes comes first. */
#define SOON 2
/* GH that moves so far in the days followed is said, though it meets no limit, dH. */
#define GH_MOVES_DH 2.0
#define GH_SHOWN_DH 1.5
/* The last drop and all readings together are told apart from so much on, dH. */
#define KH_APART_DH 0.15
/* It stands, within so much of where it settles. */
#define HALF_DH 0.5

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
	drift_put(w, early, 0);
	if (isnan(late)) {
		ts_text_put(&w->text, " or more");
	} else {
		ts_text_put(&w->text, " to ");
		drift_put(w, late, 0);
	}
	ts_text_put(&w->text, " by the doubt of readings, feed and plants)");
}

static bool active_soil(const struct drift_work *w)
{
	return w->kh_known && isnan(w->today.ph) && w->today.kh_dh >= drift_bound(w, TS_P_KH_FLOOR);
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

	return day <= SOON * drift_bound(w, TS_P_BUFFER_WARN) ||
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
	drift_put(w, w->today.gh_dh, 1);
	ts_text_put(&w->text, " now, ");
	drift_put(w, to, 1);
	ts_text_put(&w->text, w->waters->settles.no_end ? " in a year" : " where it settles");
	return drift_take(w);
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
	return drift_take(w);
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

	if (now->tan_mg_l >= drift_bound(w, TS_P_TAN_DANGER))
		return "Ammonia stands in this tank: make it safe before anything else";
	if (active_soil(w))
		return "Active soil takes the buffer for as long as it lasts: KH says nothing here";
	if (w->kh_known && w->kh_read < drift_bound(w, TS_P_KH_FLOOR))
		return "The buffer is gone already: steady the water before anything else";
	if (buffer_first(w)) {
		ts_text_put(&w->text, "The buffer lasts ");
		drift_put(w, w->ret->buffer_gone_day, 0);
		ts_text_put(&w->text, " days");
		put_doubt(w);
		return drift_take(w);
	}
	return isnan(w->ret->buffer_gone_day) &&
			       most_ammonia(w->ret) >= drift_bound(w, TS_P_TAN_DANGER)
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
	drift_put(w, moves ? to : now, moves ? 0 : row->decimals);
	ts_text_put(&w->text, w->unfit_above ? ", and that is more than the "
					     : ", and that is "
					       "less than the ");
	drift_put(w, w->unfit_at, row->decimals);
	ts_text_put(&w->text, " that ");
	ts_say_animals(&w->text, w->unfit);
	ts_text_put(&w->text, " bear");
	return drift_take(w);
}

const char *drift_judge(struct drift_work *w)
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
		return drift_take(w);
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
	drift_put(w, band->low, decimals);
	ts_text_put(&w->text, " to ");
	drift_put(w, band->high, decimals);
	ts_text_put(&w->text, ")");
}

/* "KH 8 now, 7.4 (7 to 7.6) after 28 days, settles at 7.1; " */
static void put_course(struct drift_work *w, const char *label, const char *unit, double now,
	double then, const struct ts_range *band, double steady, int decimals)
{
	if (isnan(now))
		return;
	ts_text_puts(&w->text, label, " ", NULL);
	drift_put(w, now, decimals);
	ts_text_puts(&w->text, unit, " now, ", NULL);
	drift_put(w, then, decimals);
	put_band(w, band, decimals);
	ts_text_put(&w->text, " after ");
	drift_put(w, (double)(w->ret->day_count - 1), 0);
	ts_text_put(&w->text, " days");
	if (!isnan(steady)) {
		ts_text_put(&w->text, ", settles at ");
		drift_put(w, steady, decimals);
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
	drift_put(w, t->change_days, 1);
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
			(double)(w->asking->today - day) < drift_bound(w, TS_P_SETTLED_DAYS))
			return false;
	}
	return w->waters->log.from[TS_NOW_NO3].reading && !w->waters->log.from[TS_NOW_NO3].old &&
	       isnan(w->waters->load.measured_no3_rise_mg_l_week);
}

const char *drift_because(struct drift_work *w)
{
	const struct ts_drift_result *r = w->ret;
	const struct ts_drift_day_result *now = &r->days[0], *then = &r->days[r->day_count - 1];
	const struct ts_range none = {(double)NAN, (double)NAN};

	put_measured(w);
	if (most_ammonia(r) >= drift_bound(w, TS_P_TAN_DANGER))
		put_course(w, "ammonia", " mg/L", now->tan_mg_l, then->tan_mg_l, &none, (double)NAN,
			2);
	if (fabs(then->gh_dh - now->gh_dh) >= GH_SHOWN_DH || gh_goes(w))
		put_course(w, "GH", "", now->gh_dh, then->gh_dh, &then->gh_band,
			r->steady.gh_dh.before_change, 1);
	if (fabs(w->kh_read - now->kh_dh) >= KH_APART_DH) {
		ts_text_put(&w->text, "KH ");
		drift_put(w, w->kh_read, 1);
		ts_text_put(&w->text, " read, by the whole log ");
		drift_put(w, now->kh_dh, 1);
		ts_text_put(&w->text, "; ");
	}
	put_course(w, "KH", "", now->kh_dh, then->kh_dh, &then->kh_band,
		r->steady.kh_dh.before_change, 1);
	if (read_and_settled(w)) {
		ts_text_put(&w->text, "nitrate ");
		drift_put(w, now->no3_mg_l, 0);
		ts_text_put(&w->text, " mg/L, as read; ");
	} else {
		put_course(w, "nitrate", " mg/L", now->no3_mg_l, then->no3_mg_l, &then->no3_band,
			r->steady.no3_mg_l.before_change, 0);
	}
	put_routine(w);
	return drift_take(w);
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
	return drift_take(w);
}

void drift_remedies(struct drift_work *w)
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
		drift_put(w, c->every_days, 1);
		ts_text_put(&w->text, " days: that keeps ");
		if (w->kh_known) {
			ts_text_put(&w->text, "KH at ");
			drift_put(w, c->kh_low_dh, 1);
			ts_text_put(&w->text, " or more and ");
		}
		ts_text_put(&w->text, "nitrate at ");
		drift_put(w, c->no3_high_mg_l, 0);
		ts_text_put(&w->text, " mg/L or less. Go there by small steps.");
		ts_asking_note(w->asking, list, drift_take(w));
	} else {
		ts_text_put(
			&w->text, "Half of the water four times as often would not keep KH at ");
		drift_put(w, drift_bound(w, TS_P_KH_ACT), 1);
		ts_text_put(&w->text, " and nitrate below ");
		drift_put(w, w->no3_most, 0);
		ts_text_put(&w->text, " mg/L: feed less, keep less, or look at the new water.");
		ts_asking_note(w->asking, list, drift_take(w));
	}
}
