/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The table of reasons and its conditions. A condition looks at one value at a time, so that what
 * moves is tested sooner than what stands still.
 */
#include "care/due.h"

#include <math.h>

#include "base/date.h"
#include "care/plan_state.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "match/series.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)
#define NO3_PER_N (TS_MASS_NO3 / TS_WEIGHT_N)

#define BIT(what) (1u << TS_DUE_##what)
#define MINERALS (BIT(GH) | BIT(KH) | BIT(PH))
#define POISONS (BIT(AMMONIA) | BIT(NITRITE))
#define BUFFER (BIT(KH) | BIT(PH))
#define ALL (MINERALS | POISONS | BIT(NITRATE))

/* clang-format off */
const struct ts_due_row ts_due_rows[TS_DUE_REASON__COUNT] = {
	[TS_DUE_DISTRESS] = {"distress", TS_DUE_TANK, ALL, TS_P_DUE_DISTRESS, "animals show signs of distress or died unexplained"},
	[TS_DUE_FOUND] = {"found", TS_DUE_TANK, POISONS, TS_P_DUE_FOUND, "{what} {figure} mg/L was found, and it must read nil"},
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

/* What is known of one place, and the value of it that is looked at. */
struct look {
	const struct ts_due_case *c;
	const double *practice;
	const struct ts_practice *all;
	struct ts_reading *readings; /* lent, read alone */
	size_t count;
	enum ts_due_what what;
	const struct ts_reading *last; /* the newest with this value; NULL: none */
	struct ts_due_item *item;
};

bool ts_due_is_danger(enum ts_due_reason reason)
{
	return reason == TS_DUE_DISTRESS || reason == TS_DUE_FOUND;
}

static bool day_of(const struct ts_reading *r, long *ret)
{
	return r->date && ts_date_read(r->date, ret);
}

bool ts_due_newest(const struct ts_reading *readings, size_t count, long *ret)
{
	bool any = false;
	long day;

	for (size_t i = 0; i < count; i++) {
		if (!day_of(&readings[i], &day) || (any && day < *ret))
			continue;
		*ret = day;
		any = true;
	}
	return any;
}

size_t ts_due_leave_ahead(struct ts_reading *readings, size_t *io_count, long today)
{
	size_t kept = 0, all = *io_count;
	long day;

	for (size_t i = 0; i < all; i++) {
		if (!day_of(&readings[i], &day) || day <= today)
			readings[kept++] = readings[i];
	}
	*io_count = kept;
	return all - kept;
}

/* One form of a value, or another of the same, turned into the first one's unit. */
static bool take(
	const struct ts_measure *m, const struct ts_measure *other, double factor, double *ret)
{
	if (m->kind != TS_MEASURE_NONE)
		*ret = m->value;
	else if (other && other->kind != TS_MEASURE_NONE)
		*ret = factor * other->value;
	else
		return false;
	return true;
}

/* A value in the unit that people read it in; false: not in this reading. */
static bool value_of(const struct ts_reading *r, enum ts_due_what what, double *ret)
{
	switch (what) {
	case TS_DUE_GH:
		*ret = ts_chem_dh_from_mmol_l(
			r->ca_mg_l.value / TS_WEIGHT_CA + r->mg_mg_l.value / TS_WEIGHT_MG);
		return take(&r->gh_dh, NULL, 1, ret) ||
		       (r->ca_mg_l.kind != TS_MEASURE_NONE && r->mg_mg_l.kind != TS_MEASURE_NONE);
	case TS_DUE_KH:
		return take(&r->kh_dh, &r->alkalinity_meq_l, ts_chem_dkh_from_meq_l(1), ret);
	case TS_DUE_PH:
		return take(&r->ph, NULL, 1, ret);
	case TS_DUE_AMMONIA:
		return take(&r->tan_mg_l, NULL, 1, ret);
	case TS_DUE_NITRITE:
		return take(&r->no2_mg_l, &r->no2_n_mg_l, NO2_PER_N, ret);
	default:
		return take(&r->no3_mg_l, &r->no3_n_mg_l, NO3_PER_N, ret);
	}
}

/* The newest reading with this value: by date, of those without one the last written. */
static void find_last(struct look *l)
{
	double value;
	long day;

	l->last = NULL;
	l->item->dated = false;
	for (size_t i = 0; i < l->count; i++) {
		bool dated = day_of(&l->readings[i], &day);

		if (!value_of(&l->readings[i], l->what, &value) || (l->item->dated && !dated) ||
			(l->item->dated && day < l->item->last))
			continue;
		l->last = &l->readings[i];
		l->item->dated = dated;
		l->item->last = dated ? day : l->c->today;
	}
	l->item->read = l->last != NULL;
}

static bool last_value(const struct look *l, double *ret)
{
	return l->last && value_of(l->last, l->what, ret);
}

/* Days from a date of the file to today; NAN: no date, or it lies ahead. */
static double days_since(const char *date, long today)
{
	long day;

	return date && ts_date_read(date, &day) && day <= today ? (double)(today - day)
								: (double)NAN;
}

static bool quote(struct look *l, double figure, double other, int decimals)
{
	l->item->figure = figure;
	l->item->other = other;
	l->item->decimals = decimals;
	l->item->of = l->what;
	return true;
}

static bool in_distress(const struct look *l)
{
	const struct ts_plan *p = l->c->plan;

	return p->sign_count || (p->deaths.kind != TS_MEASURE_NONE && p->deaths.value > 0);
}

/* A value of the tank other than the one looked at; false: it was never read. */
static bool beside(const struct look *l, enum ts_due_what what, double *ret)
{
	struct look other = *l;
	struct ts_due_item scratch = {0};

	other.what = what;
	other.item = &scratch;
	find_last(&other);
	return last_value(&other, ret);
}

/* Where one of the two was found, the other is on its way. */
static bool was_found(struct look *l)
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
static bool is_cycling(const struct look *l)
{
	double value;
	const struct ts_tank *t = &l->c->plan->tank;
	double settled = l->practice[TS_P_SETTLED_DAYS];

	if (t->filter != TS_FILTER_UNKNOWN)
		return t->filter == TS_FILTER_NEW;
	if (lived_days(l->c->plan, l->c->today, false) >= settled)
		return false;
	if (!t->running_since)
		return !beside(l, TS_DUE_AMMONIA, &value) || !beside(l, TS_DUE_NITRITE, &value);
	return !(days_since(t->running_since, l->c->today) >= settled);
}

static bool has_newcomers(struct look *l)
{
	double days = lived_days(l->c->plan, l->c->today, true);

	return days < l->practice[TS_P_PROPOSE_PURCHASE_DAYS] && quote(l, days, (double)NAN, 0);
}

/* Whether the tank's last KH lies below a row of practice. */
static bool kh_below(struct look *l, enum ts_practice_id id)
{
	double value;

	return beside(l, TS_DUE_KH, &value) && value < l->practice[id] &&
	       quote(l, value, l->practice[id], 1);
}

/* The whole time until the buffer is gone is known: a share of it is waited. */
static bool buffer_goes(struct look *l)
{
	if (isnan(l->c->buffer_days))
		return false;
	l->item->every_days =
		fmax(1, floor(l->c->buffer_days * l->practice[TS_P_DUE_BUFFER_SHARE]));
	return quote(l, l->c->buffer_days, (double)NAN, 0);
}

static struct ts_series_facts series_of(const struct look *l, enum ts_parameter p)
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

static bool is_moving(struct look *l)
{
	struct ts_series_facts facts = series_of(l, parameter_of(l->what));

	return facts.trend && quote(l, facts.drift_per_week, (double)NAN, 2);
}

/* The supply is one water: where one value changes, all are looked at. */
static bool supply_varies(const struct look *l)
{
	return series_of(l, TS_GH).varies || series_of(l, TS_KH).varies ||
	       series_of(l, TS_PH).varies;
}

/* The doubt of the last reading; a range that is lived through is none. */
static bool is_wide(struct look *l)
{
	const struct ts_keeping keeping = {0};
	struct ts_reading one;
	struct ts_water water = {.readings = &one, .reading_count = 1};
	struct ts_profile profile;
	struct ts_span span;

	if (!l->last)
		return false;
	one = *l->last;
	ts_profile_make(&water, &keeping, l->all, &profile);
	span = profile.at[parameter_of(l->what)];
	if (l->what == TS_DUE_PH)
		span = (struct ts_span){
			true, false, profile.ph_read, profile.ph_read_low, profile.ph_read_high};
	return !span.exposure &&
	       span.high - span.low > l->practice[l->what == TS_DUE_PH ? TS_P_DUE_WIDE_PH
								       : TS_P_DUE_WIDE_HARDNESS] &&
	       quote(l, span.low, span.high, 1);
}

static bool nitrate_is_high(struct look *l)
{
	double value, limit = l->practice[TS_P_NITRATE_CONCERN];

	return last_value(l, &value) && value > limit && quote(l, value, limit, 0);
}

static bool takes_buffer(const struct look *l)
{
	int substrate = l->c->plan->tank.substrate;

	return substrate == TS_SUBSTRATE_ACTIVE || substrate == TS_SUBSTRATE_PEAT;
}

/* Whether a reason holds for the value looked at; fills in what it quotes. */
static bool holds(struct look *l, enum ts_due_reason reason)
{
	switch (reason) {
	case TS_DUE_DISTRESS:
		return in_distress(l);
	case TS_DUE_FOUND:
		return was_found(l);
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
		return kh_below(l, TS_P_KH_WARN);
	case TS_DUE_SOIL:
		return takes_buffer(l);
	case TS_DUE_CO2:
		return l->c->plan->tank.co2 == TS_CO2_INJECTED;
	case TS_DUE_TREND:
		return is_moving(l);
	case TS_DUE_NITRATE_HIGH:
		return nitrate_is_high(l);
	case TS_DUE_WIDE:
	case TS_DUE_SUPPLY_WIDE:
		return is_wide(l);
	case TS_DUE_SEASON:
		return supply_varies(l);
	default:
		return true; /* the usual */
	}
}

/* When a value that nobody can date is wanted: now, or once a tank is filled. */
static long first_day(const struct look *l)
{
	long day;

	if (l->item->where == TS_DUE_TANK && l->c->plan->tank.running_since &&
		ts_date_read(l->c->plan->tank.running_since, &day) && day > l->c->today)
		return day;
	return l->c->today;
}

/* The reason that asks soonest for one value; of several the most pressing. */
static bool soonest(struct look *l, struct ts_due_item *ret)
{
	bool any = false;

	for (int i = 0; i < TS_DUE_REASON__COUNT; i++) {
		const struct ts_due_row *row = &ts_due_rows[i];

		if (row->where != l->item->where || !(row->what & 1u << l->what))
			continue;
		l->item->reason = (enum ts_due_reason)i;
		l->item->every_days = l->practice[row->every];
		quote(l, (double)NAN, (double)NAN, 0);
		if (!holds(l, l->item->reason))
			continue;
		l->item->day =
			l->item->dated ? l->item->last + (long)l->item->every_days : first_day(l);
		if (!any || l->item->day < ret->day)
			*ret = *l->item;
		any = true;
	}
	return any;
}

static bool same(double a, double b)
{
	return a == b || (isnan(a) && isnan(b));
}

/* Values that are due together for one reason are one test. */
static void add(struct ts_due *due, const struct ts_due_item *item)
{
	for (size_t i = 0; i < due->count; i++) {
		struct ts_due_item *old = &due->items[i];

		if (old->where != item->where || old->reason != item->reason ||
			old->day != item->day || old->read != item->read ||
			old->dated != item->dated || old->last != item->last ||
			!same(old->figure, item->figure) || !same(old->other, item->other))
			continue;
		old->what |= item->what;
		return;
	}
	due->items[due->count++] = *item;
}

/* The pH of water without minerals means nothing. */
static bool is_asked(const struct ts_due_case *c, enum ts_due_where where, int what)
{
	return !(where == TS_DUE_SUPPLY && what == TS_DUE_PH &&
		 c->supply->kind == TS_WATER_REVERSE_OSMOSIS);
}

static void look_at(const struct ts_due_case *c, const struct ts_practice *practice,
	enum ts_due_where where, struct ts_reading *readings, size_t count, struct ts_due *ret)
{
	for (int what = 0; what < TS_DUE_WHAT__COUNT; what++) {
		struct ts_due_item item = {.where = where, .what = 1u << what}, best;
		struct look look = {c, practice->value, practice, readings, count,
			(enum ts_due_what)what, NULL, &item};

		if (!is_asked(c, where, what))
			continue;
		find_last(&look);
		if (soonest(&look, &best))
			add(ret, &best);
	}
}

/* Order of two items: below 0, `a` first. */
static long before(const struct ts_due_item *a, const struct ts_due_item *b, long today)
{
	int ranks[2];
	const struct ts_due_item *items[] = {a, b};

	for (int i = 0; i < 2; i++)
		ranks[i] = items[i]->day > today                ? 3
			   : ts_due_is_danger(items[i]->reason) ? 0
			   : items[i]->day < today              ? 1
								: 2;
	if (ranks[0] != ranks[1])
		return ranks[0] - ranks[1];
	return a->day != b->day ? a->day - b->day : (long)a->reason - (long)b->reason;
}

static void sort(struct ts_due *due, long today)
{
	for (size_t i = 1; i < due->count; i++) {
		struct ts_due_item item = due->items[i];
		size_t at = i;

		for (; at && before(&item, &due->items[at - 1], today) < 0; at--)
			due->items[at] = due->items[at - 1];
		due->items[at] = item;
	}
}

void ts_due_make(
	const struct ts_due_case *c, const struct ts_practice *practice, struct ts_due *ret)
{
	struct ts_practice own;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	*ret = (struct ts_due){0};
	if (c->plan)
		look_at(c, practice, TS_DUE_TANK, c->plan->tank.readings,
			c->plan->tank.reading_count, ret);
	if (c->supply)
		look_at(c, practice, TS_DUE_SUPPLY, c->supply->readings, c->supply->reading_count,
			ret);
	sort(ret, c->today);
}
