/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A day adds waste w(d) n, a stone s, acid a, evaporation e c; a change takes a share f and pours
 * in c: C <- (1 - f) C + f c. All of it is linear in what is not known, so that each reading is a
 * row of factors. Where the days of the changes are not known the share is spread evenly over them.
 */
#include "stock/fit.h"

#include <limits.h>
#include <math.h>
#include <string.h>

#include "base/squares.h"
#include "chem/hardness.h"
#include "chem/nitrogen.h"
#include "stock/fit_points.h"

/* Doubt of nitrate at the least, half an interval, mg/L (common practice, no source). */
#define NO3_LEAST 5.0
/* A half interval in standard deviations of an even distribution. */
#define HALF_TO_DEVIATION 0.57735
/* Deviations that a rate is given with to either side. */
#define DEVIATIONS 2.0
/* Fits, each with the doubt of the levels that the one before found. */
#define PASSES 4
#define SHARE_MOST 0.999
/* So little is known of nitrate's rise before it was read, mg/L a day. */
#define LOAD_OPEN 20.0
/* Nothing is surer than this, so that the rows can be solved. */
#define DEVIATION_LEAST 1e-6
/* What was expected of a reading is told from so many before it, over so many days. */
#define BEFORE_LEAST 3
#define BEFORE_DAYS 28

enum unknown { LOAD, STONE, ACID, EVAPORATION, START, COMMON = START + 3, POURED = COMMON + 3 };
#define UNKNOWNS (POURED + 3)
_Static_assert(UNKNOWNS <= TS_SQUARES_MOST, "unknowns");

/* The state of one value: known + factors times the unknowns. */
struct course {
	double known, factors[UNKNOWNS];
};

struct work {
	const struct ts_fit_case *asked;
	const struct ts_practice *practice;
	struct ts_fit_points of[TS_FIT__COUNT];
	long cut; /* readings of this day and later are not fitted */
	bool solved;
	struct ts_squares squares;
	struct ts_squares_solution solution;
	/* What is taken of each unknown before any reading. */
	struct {
		bool any;
		double value, deviation;
	} belief[UNKNOWNS];
	double widen; /* of the deviations, where readings scatter more than their methods make */
	/* Where a walk ended. */
	struct course last;
	const struct ts_fit_point *newest;
};

static bool by_log(const struct work *w, long day)
{
	const struct ts_past *past = w->asked->past;

	return past && past->by_log && day >= past->changes[0].day;
}

/* What a day takes of the level where the routine is known and its days are not. */
static double loss_of(const struct work *w, const struct ts_fit_points *all, long day)
{
	const struct ts_fit_case *c = w->asked;
	double days = (double)(all->at[all->count - 1].day - all->at[0].day);

	/* Up to one round of changes none is taken to lie between. */
	if (by_log(w, day) || !(c->change_share > 0) || days <= c->change_days)
		return 0;
	return -log(1 - fmin(c->change_share, SHARE_MOST)) / c->change_days;
}

static bool changed_between(const struct work *w, const struct ts_fit_points *all)
{
	const struct ts_past *past = w->asked->past;
	long from = all->at[0].day, to = all->at[all->count - 1].day;

	for (size_t i = 0; past && i < past->change_count; i++) {
		if (past->changes[i].day >= from && past->changes[i].day < to)
			return true;
	}
	return loss_of(w, all, from) > 0 || loss_of(w, all, to) > 0;
}

static void take_points(struct work *w, enum ts_fit_what what)
{
	struct ts_fit_points *all = &w->of[what];

	ts_fit_points_take(w->asked, what, w->practice, all);
	if (all->count < 2 || all->at[0].day == all->at[all->count - 1].day)
		return;
	all->usable = !isnan(w->asked->poured[what].value) || !changed_between(w, all);
}

/* dKH that a mg/L of nitrate out of feed takes. */
static double kh_per_no3(void)
{
	double meq = -ts_chem_nitrogen_alk_meq(TS_RELEASE, 1) -
		     ts_chem_nitrogen_alk_meq(TS_NITRITATION, 1) -
		     ts_chem_nitrogen_alk_meq(TS_NITRATATION, 1);

	return ts_chem_dkh_from_meq_l(meq) * TS_WEIGHT_N / TS_MASS_NO3;
}

static double poured_of(const struct work *w, enum ts_fit_what what)
{
	double value = w->asked->poured[what].value;

	return isnan(value) ? 0 : value;
}

/* A day's work, of which a steady loss has taken its part by the evening. */
static void live(const struct work *w, enum ts_fit_what what, const struct ts_fit_points *all,
	long day, struct course *c)
{
	const struct ts_fit_case *asked = w->asked;
	double loss = loss_of(w, all, day), left = exp(-loss);
	double gained = loss > 0 ? (1 - left) / loss : 1;
	double waste = asked->past ? ts_past_waste(asked->past, day) : 1;

	c->known *= left;
	for (size_t i = 0; i < UNKNOWNS; i++)
		c->factors[i] *= left;
	c->known += (1 - left) * poured_of(w, what);
	c->factors[POURED + what] += 1 - left;
	if (what == TS_FIT_NO3)
		c->factors[LOAD] += gained * waste;
	else
		c->factors[STONE] += gained;
	if (what == TS_FIT_KH) {
		c->factors[ACID] += gained;
		c->factors[LOAD] -= gained * waste * kh_per_no3();
	}
	if (!asked->pure_top_up)
		c->factors[EVAPORATION] += gained * poured_of(w, what);
}

static void pour(const struct work *w, enum ts_fit_what what, const struct ts_past_change *change,
	struct course *c)
{
	double left = 1 - change->share;

	c->known *= left;
	for (size_t i = 0; i < UNKNOWNS; i++)
		c->factors[i] *= left;
	if (change->pure)
		return;
	c->known += change->share * poured_of(w, what);
	c->factors[POURED + what] += change->share;
}

static double level_of(const struct work *w, const struct course *c)
{
	return c->known + ts_squares_value(&w->solution, c->factors, UNKNOWNS);
}

/* A figure has the doubt of the level that it should have had: low readings are no surer ones. */
static double half_of(const struct ts_fit_point *p, double level)
{
	return isnan(p->half) ? fmax(NO3_LEAST, p->share * fmax(level, 0)) : p->half;
}

/* How far a reading may lie from the even course by the day of a change that is not known. */
static double saw_of(
	const struct work *w, enum ts_fit_what what, const struct ts_fit_point *p, double level)
{
	if (!(loss_of(w, &w->of[what], p->day) > 0))
		return 0;
	return w->asked->change_share * fabs(level - poured_of(w, what)) / 2 * HALF_TO_DEVIATION;
}

/* The reading's own deviation, and that which it has in common with others of its kit. */
static void doubt_of(const struct work *w, enum ts_fit_what what, const struct ts_fit_point *p,
	double level, double *ret_own, double *ret_common)
{
	double common = w->practice->value[TS_P_KIT_COMMON];
	double whole = half_of(p, level) * HALF_TO_DEVIATION, saw = saw_of(w, what, p, level);

	*ret_common = whole * sqrt(common);
	*ret_own = sqrt(whole * whole * (1 - common) + saw * saw);
}

static void row(
	struct work *w, enum ts_fit_what what, const struct ts_fit_point *p, const struct course *c)
{
	struct course one = *c;
	double own, common;

	if (p->day >= w->cut)
		return;
	doubt_of(w, what, p, w->solved ? level_of(w, c) : p->value, &own, &common);
	one.factors[COMMON + what] = common;
	ts_squares_add(&w->squares, one.factors, p->value - one.known, own);
}

/* Whether a reading of the day of a change was taken before it; of no hour, it was. */
static bool before_change(const struct ts_fit_point *p, const struct ts_past_change *change)
{
	return p->minutes < 0 || change->minutes < 0 || p->minutes <= change->minutes;
}

/* What a walk gives each reading to. */
typedef void (*seen)(struct work *w, enum ts_fit_what what, const struct ts_fit_point *p,
	const struct course *c);

/* From the first reading of a value to its last, each as the course stands on its day. */
static void walk(struct work *w, enum ts_fit_what what, seen each)
{
	const struct ts_past *past = w->asked->past;
	const struct ts_fit_points *all = &w->of[what];
	struct course c = {0};
	size_t next = 0, change = 0, changes = past ? past->change_count : 0;

	c.factors[START + what] = 1;
	while (change < changes && past->changes[change].day < all->at[0].day)
		change++;
	for (long day = all->at[0].day; next < all->count; day++) {
		if (day > all->at[0].day)
			live(w, what, all, day, &c);
		for (; change < changes && past->changes[change].day == day; change++) {
			while (next < all->count && all->at[next].day == day &&
				before_change(&all->at[next], &past->changes[change]))
				each(w, what, &all->at[next++], &c);
			pour(w, what, &past->changes[change], &c);
		}
		while (next < all->count && all->at[next].day == day)
			each(w, what, &all->at[next++], &c);
	}
}

static void believe(struct work *w, size_t unknown, double value, double deviation)
{
	double factors[UNKNOWNS] = {0};

	deviation = fmax(deviation, DEVIATION_LEAST);
	factors[unknown] = 1;
	ts_squares_add(&w->squares, factors, value, deviation);
	w->belief[unknown].any = true;
	w->belief[unknown].value = value;
	w->belief[unknown].deviation = deviation;
}

/* What is known before any reading: little, and enough to keep what cannot be told apart apart. */
static void believe_all(struct work *w)
{
	const struct ts_fit_case *c = w->asked;
	const double *p = w->practice->value;
	bool modelled = !w->of[TS_FIT_NO3].usable && c->modelled_a_day > 0;

	believe(w, LOAD, modelled ? c->modelled_a_day : 0,
		modelled ? c->modelled_deviation : LOAD_OPEN);
	believe(w, STONE, 0, p[c->bed_works ? TS_P_LEARN_BED : TS_P_LEARN_STONE]);
	believe(w, ACID, 0, p[c->bed_works ? TS_P_LEARN_BED : TS_P_LEARN_ACID]);
	believe(w, EVAPORATION, c->evaporated_share, c->evaporated_deviation);
	for (size_t i = 0; i < TS_FIT__COUNT; i++) {
		believe(w, COMMON + i, 0, 1);
		believe(w, POURED + i, 0, c->poured[i].deviation);
		if (!w->of[i].usable)
			believe(w, START + i, 0, 1);
	}
}

static size_t fitted(const struct work *w, enum ts_fit_what what)
{
	size_t count = 0;

	for (size_t i = 0; w->of[what].usable && i < w->of[what].count; i++)
		count += w->of[what].at[i].day < w->cut;
	return count;
}

/* Squares that the readings leave, without what the solution strays from what was believed. */
static double scatter(const struct work *w)
{
	double rest = w->solution.rest;

	for (size_t i = 0; i < UNKNOWNS; i++) {
		double off = (w->solution.x[i] - w->belief[i].value) / w->belief[i].deviation;

		rest -= w->belief[i].any ? off * off : 0;
	}
	return rest;
}

/* Each value has a level and a rate of its own; what is over may scatter. */
static double widened(const struct work *w)
{
	double free = 0;

	for (int i = 0; i < TS_FIT__COUNT; i++) {
		size_t count = fitted(w, (enum ts_fit_what)i);

		free += count > 2 ? (double)(count - 2) : 0;
	}
	return free >= 3 ? sqrt(fmax(1, scatter(w) / free)) : 1;
}

static bool solve(struct work *w, long cut)
{
	w->cut = cut;
	w->solved = false;
	for (int pass = 0; pass < PASSES; pass++) {
		ts_squares_open(&w->squares, UNKNOWNS);
		memset(w->belief, 0, sizeof w->belief);
		believe_all(w);
		for (int i = 0; i < TS_FIT__COUNT; i++) {
			if (fitted(w, (enum ts_fit_what)i))
				walk(w, (enum ts_fit_what)i, row);
			else if (w->of[i].usable)
				believe(w, START + (size_t)i, 0, 1);
		}
		if (!ts_squares_solve(&w->squares, &w->solution))
			return false;
		w->solved = true;
	}
	w->widen = widened(w);
	return true;
}

static double deviation_of(const struct work *w, const double *factors)
{
	return w->widen * ts_squares_deviation(&w->solution, factors, UNKNOWNS);
}

static struct ts_estimate estimate(const struct work *w, const double *factors)
{
	double value = ts_squares_value(&w->solution, factors, UNKNOWNS);
	double doubt = DEVIATIONS * deviation_of(w, factors);

	return (struct ts_estimate){value - doubt, value, value + doubt};
}

static void take_rate(const struct work *w, enum ts_fit_what what, struct ts_rate *ret)
{
	const struct ts_fit_points *all = &w->of[what];
	double factors[UNKNOWNS] = {0};
	struct ts_estimate e;

	factors[LOAD] = what == TS_FIT_NO3 ? 1 : what == TS_FIT_KH ? -kh_per_no3() : 0;
	factors[STONE] = what == TS_FIT_NO3 ? 0 : 1;
	factors[ACID] = what == TS_FIT_KH ? 1 : 0;
	e = estimate(w, factors);
	*ret = (struct ts_rate){.readings = all->count,
		.days = (double)(all->at[all->count - 1].day - all->at[0].day),
		.first = all->at[0].value,
		.last = all->at[all->count - 1].value,
		.a_day = e.value,
		.low = e.low,
		.high = e.high};
}

static void remember(
	struct work *w, enum ts_fit_what what, const struct ts_fit_point *p, const struct course *c)
{
	(void)what;
	w->newest = p;
	w->last = *c;
}

/* Of a value of which nothing follows, the last reading by itself. */
static void take_last(const struct work *w, enum ts_fit_what what, struct ts_fit_level *ret)
{
	const struct ts_fit_points *all = &w->of[what];
	const struct ts_fit_point *p;

	if (!all->count)
		return;
	p = &all->at[all->count - 1];
	*ret = (struct ts_fit_level){
		true, p->value, half_of(p, p->value) * HALF_TO_DEVIATION, half_of(p, p->value), 0};
	for (size_t i = 0; i < all->count; i++)
		ret->days += !i || all->at[i].day != all->at[i - 1].day;
}

static void take_level(struct work *w, enum ts_fit_what what, struct ts_fit_level *ret)
{
	walk(w, what, remember);
	ret->value = fmax(level_of(w, &w->last), 0);
	ret->deviation = deviation_of(w, w->last.factors);
}

/* The newest reading by all those of the days before it. */
static void take_expected(struct work *w, enum ts_fit_what what, struct ts_fit_expected *ret)
{
	const struct ts_fit_points *all = &w->of[what];
	long newest = all->at[all->count - 1].day;
	double level, doubt, saw;
	size_t before = 0;

	while (before < all->count && all->at[before].day < newest)
		before++;
	if (before < BEFORE_LEAST || all->at[before - 1].day - all->at[0].day < BEFORE_DAYS ||
		!solve(w, newest))
		return;
	walk(w, what, remember);
	level = level_of(w, &w->last);
	saw = saw_of(w, what, w->newest, level);
	doubt = deviation_of(w, w->last.factors);
	doubt = w->practice->value[TS_P_EXPECTED_WIDTH] * sqrt(doubt * doubt + saw * saw) +
		half_of(w->newest, level);
	*ret = (struct ts_fit_expected){true, newest, w->newest->value, fmax(level - doubt, 0),
		level + doubt, fabs(w->newest->value - level) > doubt};
}

void ts_fit_make(
	const struct ts_fit_case *asked, const struct ts_practice *practice, struct ts_fit *ret)
{
	static const double stone[UNKNOWNS] = {[STONE] = 1}, lost[UNKNOWNS] = {[EVAPORATION] = 1};
	struct work w = {.asked = asked, .practice = practice};
	bool any = false;

	*ret = (struct ts_fit){0};
	for (int i = 0; i < TS_FIT__COUNT; i++) {
		take_points(&w, (enum ts_fit_what)i);
		any |= w.of[i].usable;
	}
	for (int i = 0; i < TS_FIT__COUNT; i++)
		take_last(&w, (enum ts_fit_what)i, &ret->level[i]);
	if (!any || !solve(&w, LONG_MAX))
		return;
	ret->stone_dh_day = estimate(&w, stone);
	ret->evaporated_share = estimate(&w, lost);
	for (int i = 0; i < TS_FIT__COUNT; i++) {
		if (!w.of[i].usable)
			continue;
		take_rate(&w, (enum ts_fit_what)i, &ret->rate[i]);
		take_level(&w, (enum ts_fit_what)i, &ret->level[i]);
		ret->readings += ret->rate[i].readings;
	}
	for (int i = 0; i < TS_FIT__COUNT; i++) {
		if (w.of[i].usable)
			take_expected(&w, (enum ts_fit_what)i, &ret->expected[i]);
	}
}
