/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Rules and load, asked the way the search needs them.
 */
#include "stock/judge.h"

#include "model/practice.h"
#include "stock/rules.h"
#include "stock/waters.h"

/* Of what a check begins to complain of: just less. */
#define FULL 0.98

/* Who lives in a tank that is nearly enough may stay; nobody is proposed for it. */
static enum ts_severity weight(const struct ts_ruling *r)
{
	return ts_rule_of_room(r->rule) && r->severity < TS_CONCERN ? TS_CONCERN : r->severity;
}

/* What rulings come to: see ts_judge(). */
static bool sum_up(const struct ts_wish *wish, bool conditions, const struct ts_rulings *rulings,
	unsigned *ret_points, struct ts_ruling *ret_ruling)
{
	const struct ts_ruling *gravest = NULL;

	for (size_t i = 0; i < rulings->count; i++) {
		const struct ts_ruling *r = &rulings->at[i];

		if (!gravest || weight(r) > weight(gravest) ||
			(weight(r) == weight(gravest) && r->rule == TS_RULE_TANK_LENGTH))
			gravest = r;
	}
	*ret_points = ts_rules_cost(rulings, wish->practice).points;
	if (!gravest || weight(gravest) < (conditions ? TS_CONFLICT : TS_QUESTION))
		return true;
	if (ret_ruling)
		*ret_ruling = *gravest;
	return false;
}

bool ts_judge(const struct ts_wish *wish, bool conditions, const struct ts_group *a,
	const struct ts_group *b, unsigned *ret_points, struct ts_ruling *ret_ruling)
{
	struct ts_rulings rulings;

	if (b)
		return ts_judge_pair(
			wish, conditions, a, b, TS_NUMBERS_TOO, ret_points, ret_ruling);
	rulings.count = 0;
	ts_rules_alone(a, wish->tank, wish->practice, &rulings);
	return sum_up(wish, conditions, &rulings, ret_points, ret_ruling);
}

bool ts_judge_pair(const struct ts_wish *wish, bool conditions, const struct ts_group *a,
	const struct ts_group *b, enum ts_numbers numbers, unsigned *ret_points,
	struct ts_ruling *ret_ruling)
{
	struct ts_rulings rulings; /* as large as a page: not cleared for every pair */

	rulings.count = 0;
	ts_rules_of_two(a, b, wish->tank, wish->practice, numbers != TS_NUMBERS_ALONE,
		numbers != TS_NUMBERS_LEFT_OUT, &rulings);
	return sum_up(wish, conditions, &rulings, ret_points, ret_ruling);
}

bool ts_judge_asks_numbers(const struct ts_group *a, const struct ts_group *b)
{
	return ts_rules_ask_numbers(a->species) || ts_rules_ask_numbers(b->species);
}

double ts_judge_temperature(const struct ts_wish *wish)
{
	const struct ts_span *t = &wish->profile->at[TS_TEMPERATURE];

	if (!t->given)
		return (double)NAN;
	return t->exposure ? (t->low + t->high) / 2 : t->value; /* no doubt moves it */
}

double ts_judge_nitrogen_mg_day(const struct ts_wish *wish, const struct ts_group *group)
{
	return ts_group_nitrogen_mg_day(
		group, wish->tank, ts_judge_temperature(wish), wish->practice);
}

/* Water changed, per cent and days, as the tank file says or as usual. */
static struct ts_every change_of(const struct ts_wish *wish)
{
	const double *p = wish->practice->value;

	if (wish->tank->water_change.days > 0)
		return wish->tank->water_change;
	return (struct ts_every){p[TS_P_CHANGE_PERCENT], p[TS_P_CHANGE_DAYS]};
}

/* Days after which all of the water was poured in anew, in effect. */
static double renewal_days(const struct ts_wish *wish)
{
	struct ts_every change = change_of(wish);

	return change.days * 100 / change.amount;
}

/* Whether somebody that is asked for, or there already, bears nitrate badly: so does the list. */
static bool sensitive_list(const struct ts_wish *wish)
{
	for (size_t i = 0; i < wish->with_count; i++) {
		if (wish->with[i]->habits & TS_HABIT_NITRATE_SENSITIVE)
			return true;
	}
	for (size_t i = 0; i < wish->resident_count; i++) {
		if (wish->residents[i].species->habits & TS_HABIT_NITRATE_SENSITIVE)
			return true;
	}
	return wish->keeping->wild;
}

/* The nitrate above the new water's own that a list may settle at before its share is taken. */
static double no3_room(const struct ts_wish *wish)
{
	const double *p = wish->practice->value;
	double room =
		p[sensitive_list(wish) ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN] -
		wish->no3_new_mg_l;

	if (wish->no3_rise_mg_l_week > 0)
		room = fmin(room, wish->no3_rise_mg_l_week / 7 * renewal_days(wish));
	return fmax(room, 0);
}

bool ts_judge_hardly_any_kh(const struct ts_wish *wish)
{
	const struct ts_span *kh = &wish->profile->at[TS_KH];

	return kh->given && kh->value < wish->practice->value[TS_P_KH_ACT];
}

/* Closed form: nitrate at its limit, buffer by days and by what a change brings. */
static double closed_most(const struct ts_wish *wish, double days)
{
	const struct ts_practice *practice = wish->practice;
	const struct ts_span *kh = &wish->profile->at[TS_KH];
	double most = ts_nitrogen_for_no3(wish->tank, no3_room(wish), practice);
	double kh_new = wish->kh_new_dh > 0 ? wish->kh_new_dh : kh->value;

	if (!kh->given || !(days > 0))
		return most;
	most = fmin(most, ts_nitrogen_for_buffer(wish->tank, kh->value, days, practice));
	return fmin(most, ts_nitrogen_for_buffer(wish->tank, kh_new, renewal_days(wish), practice));
}

/* As a check sees it, where the tank settles; NAN: nobody can say. */
static double settled_most(const struct ts_wish *wish, double days)
{
	const struct ts_bearing wanted = {wish->no3_new_mg_l + no3_room(wish), days};
	double most = ts_nitrogen_for_no3(wish->tank, no3_room(wish), wish->practice);
	struct ts_plan plan;

	if (!wish->plan || !(most > 0))
		return (double)NAN;
	plan = *wish->plan;
	plan.tank = *wish->tank;
	return ts_waters_bears_mg_day(&plan, wish->today, &wanted, 2 * most, wish->practice);
}

double ts_judge_nitrogen_most_mg_day(const struct ts_wish *wish, bool conditions)
{
	const double *p = wish->practice->value;
	bool black = !conditions && ts_judge_hardly_any_kh(wish);
	double days = black ? 0 : fmax(p[TS_P_BUFFER_WARN], wish->buffer_days);
	double most = settled_most(wish, days);

	if (isnan(most))
		most = closed_most(wish, days);
	most *= wish->full_load ? FULL : p[TS_P_LOAD_SHARE];
	/* What hardly any buffer is there for has a light load. */
	return black ? fmin(most,
			       ts_nitrogen_for_no3(wish->tank, p[TS_P_NITRATE_AIM], wish->practice))
		     : most;
}

enum ts_left_out ts_judge_load(
	const struct ts_wish *wish, bool conditions, const struct ts_species *species)
{
	const double *p = wish->practice->value;
	bool sensitive = species->habits & TS_HABIT_NITRATE_SENSITIVE || wish->keeping->wild;
	double share = wish->full_load ? FULL : p[TS_P_LOAD_SHARE];
	double settled = wish->no3_new_mg_l + share * no3_room(wish);
	double limit = p[sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN];

	if (conditions)
		limit = p[sensitive ? TS_P_NITRATE_CONFLICT_SENSITIVE : TS_P_NITRATE_CONFLICT];
	if (fmax(settled, wish->no3_now_mg_l) >= limit)
		return TS_LEFT_BY_NITRATE;
	if (!conditions && ts_judge_hardly_any_kh(wish) && species->home_water != TS_HOME_BLACK)
		return TS_LEFT_BY_BUFFER;
	return TS_CANDIDATE;
}
