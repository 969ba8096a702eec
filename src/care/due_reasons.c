/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of reasons and its conditions.
 */
#include <math.h>

#include "base/date.h"
#include "care/due_look.h"
#include "stock/waters.h"
#include "water/course.h"
#include "water/series.h"

#define BIT(what) (1u << TS_DUE_##what)
#define MINERALS (BIT(GH) | BIT(KH) | BIT(PH))
#define POISONS (BIT(AMMONIA) | BIT(NITRITE))
#define BUFFER (BIT(KH) | BIT(PH))
#define ALL (MINERALS | POISONS | BIT(NITRATE))

/* clang-format off */
const struct ts_due_row ts_due_rows[TS_DUE_REASON__COUNT] = {
	[TS_DUE_DISTRESS] = {"distress", TS_DUE_TANK, ALL, TS_P_DUE_DISTRESS, "animals show signs of distress or died unexplained"},
	[TS_DUE_GASPING] = {"gasping", TS_DUE_TANK, BIT(OXYGEN), TS_P_DUE_DISTRESS, "animals gasp, or all of them suffer at once, as where oxygen is short; it is least at dawn"},
	[TS_DUE_OXYGEN_SHORT] = {"oxygen-short", TS_DUE_TANK, BIT(OXYGEN), TS_P_DUE_OXYGEN, "oxygen {figure} mg/L, short under {other}; it is least at dawn"},
	[TS_DUE_FOUND] = {"found", TS_DUE_TANK, POISONS, TS_P_DUE_FOUND, "{what} {figure} mg/L was found, and it must read nil"},
	[TS_DUE_UNEXPECTED] = {"unexpected", TS_DUE_TANK, BIT(GH) | BIT(KH) | BIT(NITRATE), TS_P_DUE_UNEXPECTED, "{what} {figure} was not to be expected: by the log before it {other} or so"},
	[TS_DUE_REMAKE_AMMONIA] = {"remake-ammonia", TS_DUE_TANK, POISONS, TS_P_TAN_AGE, "the water is being re-made, and over ammonia a rising pH kills"},
	[TS_DUE_REMAKE] = {"remake", TS_DUE_TANK, MINERALS, TS_P_STAGE_DAYS, "the water is being re-made, and each stage starts from a test"},
	[TS_DUE_CYCLING] = {"cycling", TS_DUE_TANK, POISONS, TS_P_DUE_CYCLING, "the filter is new, or not known to be mature"},
	[TS_DUE_NEWCOMERS] = {"newcomers", TS_DUE_TANK, POISONS, TS_P_DUE_NEWCOMERS, "animals came {figure} days ago"},
	[TS_DUE_CYCLING_BUFFER] = {"cycling-buffer", TS_DUE_TANK, BUFFER | BIT(NITRATE), TS_P_DUE_CYCLING_BUFFER, "a maturing filter uses up the buffer and makes nitrate"},
	[TS_DUE_KH_ACT] = {"kh-act", TS_DUE_TANK, BUFFER | BIT(AMMONIA), TS_P_DUE_KH_ACT, "KH {figure}, nearly gone under {other}"},
	[TS_DUE_BUFFER] = {"buffer", TS_DUE_TANK, BUFFER, TS_P_DUE_BUFFER_SHARE, "at this feeding and change of water the buffer may be gone by {gone}"},
	[TS_DUE_KH_SHORT] = {"kh-short", TS_DUE_TANK, BUFFER, TS_P_DUE_KH_SHORT, "KH {figure}, short under {other}"},
	[TS_DUE_SOIL] = {"soil", TS_DUE_TANK, BUFFER, TS_P_DUE_SOIL, "active soil or peat takes up the buffer"},
	[TS_DUE_CO2] = {"co2", TS_DUE_TANK, BUFFER, TS_P_DUE_CO2, "CO2 is injected, and only pH and KH together tell how much"},
	[TS_DUE_MENDING] = {"mending", TS_DUE_TANK, BIT(GH) | BIT(KH), TS_P_DUE_TREND, "the water is being brought to where they live well"},
	[TS_DUE_TREND] = {"trend", TS_DUE_TANK, MINERALS, TS_P_DUE_TREND, "{what} moves by {figure} a week"},
	[TS_DUE_NITRATE_HIGH] = {"nitrate-high", TS_DUE_TANK, BIT(NITRATE), TS_P_DUE_NITRATE_HIGH, "nitrate {figure} mg/L, a concern above {other}"},
	[TS_DUE_WIDE] = {"wide", TS_DUE_TANK, MINERALS, TS_P_DUE_WIDE, "the last reading only says {figure} to {other}; use drops or a meter"},
	[TS_DUE_SEASON] = {"season", TS_DUE_SUPPLY, MINERALS, TS_P_DUE_SUPPLY_SEASON, "the supply changes, by its own readings"},
	[TS_DUE_MINERALS] = {"minerals", TS_DUE_TANK, MINERALS, TS_P_DUE_MINERALS, "a tank drifts unseen"},
	[TS_DUE_NITRATE_USUAL] = {"nitrate", TS_DUE_TANK, BIT(NITRATE), TS_P_DUE_NITRATE, "nitrate shows whether feed and water changes are in step"},
	[TS_DUE_AMMONIA_USUAL] = {"ammonia", TS_DUE_TANK, POISONS, TS_P_DUE_AMMONIA, "a settled filter is looked at now and then"},
	[TS_DUE_SUPPLY_WIDE] = {"supply-wide", TS_DUE_SUPPLY, MINERALS, TS_P_DUE_WIDE, "the last reading only says {figure} to {other}; use drops or a meter"},
	[TS_DUE_SUPPLY_USUAL] = {"supply", TS_DUE_SUPPLY, MINERALS, TS_P_DUE_SUPPLY, "a supply changes with the season and its source"},
};
/* clang-format on */

bool ts_due_is_danger(enum ts_due_reason reason)
{
	return reason == TS_DUE_DISTRESS || reason == TS_DUE_GASPING ||
	       reason == TS_DUE_OXYGEN_SHORT || reason == TS_DUE_FOUND;
}

static bool last_value(const struct ts_due_look *l, double *ret)
{
	return l->last && ts_due_value(l->last, l->what, ret);
}

/* Days from a date of the file to today; NAN: no date, or it lies ahead. */
static double days_since(const char *date, long today)
{
	long day;

	return date && ts_date_read(date, &day) && day <= today ? (double)(today - day)
								: (double)NAN;
}

static bool quote(struct ts_due_look *l, double figure, double other, int decimals)
{
	l->item->figure = figure;
	l->item->other = other;
	l->item->decimals = decimals;
	l->item->of = l->what;
	return true;
}

static bool in_distress(const struct ts_due_look *l)
{
	const struct ts_plan *p = l->plan;

	return ts_plan_unwell(p);
}

/* What lack of oxygen looks like; warmth alone asks for a moving surface and for no test. */
static bool is_gasping(const struct ts_due_look *l)
{
	const struct ts_plan *p = l->plan;

	for (size_t i = 0; i < p->sign_count; i++) {
		if (p->signs[i].sign == TS_SIGN_GASPING || p->signs[i].breadth == TS_BREADTH_ALL)
			return true;
	}
	return false;
}

static bool is_short_of_oxygen(struct ts_due_look *l)
{
	double value, least = l->practice[TS_P_OXYGEN_CONCERN];

	return last_value(l, &value) && value < least && quote(l, value, least, 1);
}

/* A value of the tank other than the one looked at; false: it was never read. */
static bool beside(const struct ts_due_look *l, enum ts_due_what what, double *ret)
{
	struct ts_due_look other = *l;
	struct ts_due_item scratch = {0};

	other.what = what;
	other.item = &scratch;
	ts_due_find_last(&other);
	return last_value(&other, ret);
}

/* Where one of the two was found, the other is on its way. */
static bool was_found(struct ts_due_look *l)
{
	static const struct {
		enum ts_due_what what;
		enum ts_practice_id limit;
	} poisons[] = {{TS_DUE_AMMONIA, TS_P_TAN_DANGER}, {TS_DUE_NITRITE, TS_P_NITRITE_DANGER}};

	for (size_t i = 0; i < 2; i++) {
		double value, limit = l->practice[poisons[i].limit];

		if (!beside(l, poisons[i].what, &value) || value < limit)
			continue;
		quote(l, value, limit, 2);
		l->item->of = poisons[i].what;
		return true;
	}
	return false;
}

static double lived_days(const struct ts_plan *p, long today, bool newest)
{
	double days = (double)NAN;

	for (size_t i = 0; i < p->stock_count; i++) {
		double here = days_since(p->stock[i].since, today);

		days = newest ? fmin(days, here) : fmax(days, here);
	}
	return days;
}

/* New by its own word; else young or never tested, and no animal has proved it. */
static bool is_cycling(const struct ts_due_look *l)
{
	double value;
	const struct ts_tank *t = &l->plan->tank;
	double settled = l->practice[TS_P_SETTLED_DAYS];

	if (t->filter != TS_FILTER_UNKNOWN)
		return t->filter == TS_FILTER_NEW;
	if (lived_days(l->plan, l->c->today, false) >= settled)
		return false;
	if (!t->running_since)
		return !beside(l, TS_DUE_AMMONIA, &value) || !beside(l, TS_DUE_NITRITE, &value);
	return !(days_since(t->running_since, l->c->today) >= settled);
}

static bool has_newcomers(struct ts_due_look *l)
{
	double days = lived_days(l->plan, l->c->today, true);

	return days < l->practice[TS_P_PROPOSE_PURCHASE_DAYS] && quote(l, days, (double)NAN, 0);
}

/* Whether the tank's last KH lies below a row of practice. */
static bool kh_below(struct ts_due_look *l, enum ts_practice_id id)
{
	double value;

	return beside(l, TS_DUE_KH, &value) && value < l->practice[id] &&
	       quote(l, value, l->practice[id], 1);
}

/* The whole time until the buffer is gone is known: a share of it is waited. */
static bool buffer_goes(struct ts_due_look *l)
{
	if (isnan(l->c->buffer_days))
		return false;
	l->item->every_days = fmax(l->c->followed ? l->practice[TS_P_DUE_KH_SHORT] : 1,
		floor(l->c->buffer_days * l->practice[TS_P_DUE_BUFFER_SHARE]));
	return quote(l, l->c->buffer_days, (double)NAN, 0);
}

static struct ts_series_facts series_of(const struct ts_due_look *l, enum ts_parameter p)
{
	struct ts_series_facts facts;
	struct ts_water water = {.readings = l->readings, .reading_count = l->count};

	ts_series_make(&water, p, &facts);
	return facts;
}

static enum ts_parameter parameter_of(enum ts_due_what what)
{
	return what == TS_DUE_GH ? TS_GH : what == TS_DUE_KH ? TS_KH : TS_PH;
}

static struct ts_course course_of(const struct ts_due_look *l, enum ts_due_what what)
{
	static const enum ts_now_value values[] = {[TS_DUE_GH] = TS_NOW_GH,
		[TS_DUE_KH] = TS_NOW_KH,
		[TS_DUE_PH] = TS_NOW_PH,
		[TS_DUE_NITRATE] = TS_NOW_NO3};
	struct ts_course course;

	ts_course_make(l->readings, l->count, values[what],
		ts_past_new_water(&l->plan->tank, l->c->today), &course);
	return course;
}

static bool is_moving(struct ts_due_look *l)
{
	struct ts_course course = course_of(l, l->what);

	return course.moves && quote(l, course.a_week, (double)NAN, 2);
}

/* So many readings over so long at one level, days: a value that is watched enough. */
#define STANDS_READINGS 3
#define STANDS_DAYS 28
#define STANDS_AGE 56

static bool stands(const struct ts_due_look *l, const struct ts_course *c)
{
	return !c->moves && c->readings >= STANDS_READINGS && c->to - c->from >= STANDS_DAYS &&
	       l->c->today - c->to <= STANDS_AGE;
}

/* Little buffer that a log shows to stand is read like any other value. */
static bool kh_stands(const struct ts_due_look *l)
{
	struct ts_course kh = course_of(l, TS_DUE_KH), ph = course_of(l, TS_DUE_PH);

	return stands(l, &kh) && !ph.moves;
}

/* Nitrate that a log shows to stand is read as seldom as what it stands for. */
static bool nitrate_as_usual(struct ts_due_look *l)
{
	struct ts_course no3 = course_of(l, TS_DUE_NITRATE);

	if (stands(l, &no3))
		l->item->every_days = l->practice[TS_P_DUE_MINERALS];
	return true;
}

/* The supply is one water: where one value changes, all are looked at. */
static bool supply_varies(const struct ts_due_look *l)
{
	return series_of(l, TS_GH).varies || series_of(l, TS_KH).varies ||
	       series_of(l, TS_PH).varies;
}

/* The doubt of the last reading; a range that is lived through is none. */
static bool is_wide(struct ts_due_look *l)
{
	const struct ts_keeping keeping = {0};
	struct ts_reading one;
	struct ts_water water = {.readings = &one, .reading_count = 1};
	struct ts_profile profile;
	struct ts_span span;

	if (!l->last)
		return false;
	one = *l->last;
	ts_profile_make(&water, &keeping, l->all, -1, &profile);
	span = profile.at[parameter_of(l->what)];
	if (l->what == TS_DUE_PH)
		span = (struct ts_span){true, false, profile.ph_read, profile.ph_read_low,
			profile.ph_read_high, profile.at[TS_PH].from, (double)NAN};
	return !span.exposure &&
	       span.high - span.low > l->practice[l->what == TS_DUE_PH ? TS_P_DUE_WIDE_PH
								       : TS_P_DUE_WIDE_HARDNESS] &&
	       quote(l, span.low, span.high, 1);
}

static bool nitrate_is_high(struct ts_due_look *l)
{
	double value, limit = l->practice[TS_P_NITRATE_CONCERN];

	return last_value(l, &value) && value > limit && quote(l, value, limit, 0);
}

static bool takes_buffer(const struct ts_due_look *l)
{
	int substrate = l->plan->tank.substrate;

	return substrate == TS_SUBSTRATE_ACTIVE || substrate == TS_SUBSTRATE_PEAT;
}

/* Read far from what the log before it let expect; its nearer end is quoted. */
static bool is_unexpected(struct ts_due_look *l)
{
	enum ts_fit_what what = l->what == TS_DUE_GH   ? TS_FIT_GH
				: l->what == TS_DUE_KH ? TS_FIT_KH
						       : TS_FIT_NO3;
	const struct ts_fit_expected *e = l->c->expected ? &l->c->expected[what] : NULL;

	return e && e->outside &&
	       quote(l, e->read, e->read > e->high ? e->high : e->low, what == TS_FIT_NO3 ? 0 : 1);
}

bool ts_due_holds(struct ts_due_look *l, enum ts_due_reason reason)
{
	quote(l, (double)NAN, (double)NAN, 0);
	switch (reason) {
	case TS_DUE_DISTRESS:
		return in_distress(l);
	case TS_DUE_GASPING:
		return is_gasping(l);
	case TS_DUE_OXYGEN_SHORT:
		return is_short_of_oxygen(l);
	case TS_DUE_FOUND:
		return was_found(l);
	case TS_DUE_UNEXPECTED:
		return is_unexpected(l);
	case TS_DUE_REMAKE_AMMONIA:
	case TS_DUE_REMAKE:
		return l->c->remaking;
	case TS_DUE_CYCLING:
	case TS_DUE_CYCLING_BUFFER:
		return is_cycling(l);
	case TS_DUE_NEWCOMERS:
		return has_newcomers(l);
	case TS_DUE_KH_ACT:
		return kh_below(l, TS_P_KH_ACT);
	case TS_DUE_BUFFER:
		return buffer_goes(l);
	case TS_DUE_KH_SHORT:
		return !kh_stands(l) && kh_below(l, TS_P_KH_WARN);
	case TS_DUE_SOIL:
		return takes_buffer(l);
	case TS_DUE_CO2:
		return l->plan->tank.co2 == TS_CO2_INJECTED;
	case TS_DUE_MENDING:
		return l->c->mending;
	case TS_DUE_TREND:
		return is_moving(l);
	case TS_DUE_NITRATE_HIGH:
		return nitrate_is_high(l);
	case TS_DUE_WIDE:
	case TS_DUE_SUPPLY_WIDE:
		return is_wide(l);
	case TS_DUE_SEASON:
		return supply_varies(l);
	case TS_DUE_NITRATE_USUAL:
		return nitrate_as_usual(l);
	default:
		return true; /* the usual */
	}
}
