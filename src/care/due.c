/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The newest reading of each value, the day on which it is due, and the order of all. The reasons
 * stand next door in due_reasons.c.
 */
#include <math.h>

#include "base/date.h"
#include "care/due_look.h"
#include "chem/hardness.h"
#include "chem/ions.h"
#include "chem/oxygen.h"

#define NO2_PER_N (TS_MASS_NO2 / TS_WEIGHT_N)
#define NO3_PER_N (TS_MASS_NO3 / TS_WEIGHT_N)

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

/* In mg/L, from percent at its temperature, else 25 C. */
static bool take_oxygen(const struct ts_reading *r, double *ret)
{
	static const struct ts_measure none = {0};
	double temp_c = r->temp_c.kind != TS_MEASURE_NONE ? r->temp_c.value : 25, full;

	if (take(&r->oxygen_mg_l, NULL, 1, ret))
		return true;
	if (ts_chem_oxygen_saturation_mg_l(temp_c, 0, &full) != TS_OK)
		return false;
	return take(&none, &r->oxygen_percent, full / 100, ret);
}

bool ts_due_value(const struct ts_reading *r, enum ts_due_what what, double *ret)
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
	case TS_DUE_OXYGEN:
		return take_oxygen(r, ret);
	default:
		return take(&r->no3_mg_l, &r->no3_n_mg_l, NO3_PER_N, ret);
	}
}

void ts_due_find_last(struct ts_due_look *l)
{
	double value;
	long day;

	l->last = NULL;
	l->item->dated = false;
	for (size_t i = 0; i < l->count; i++) {
		bool dated = day_of(&l->readings[i], &day);

		if (!ts_due_value(&l->readings[i], l->what, &value) || (l->item->dated && !dated) ||
			(l->item->dated && day < l->item->last))
			continue;
		l->last = &l->readings[i];
		l->item->dated = dated;
		l->item->last = dated ? day : l->c->today;
	}
	l->item->read = l->last != NULL;
}

/* When a value that nobody can date is wanted: now, or once a tank is filled. */
static long first_day(const struct ts_due_look *l)
{
	long day;

	if (l->item->where == TS_DUE_TANK && l->plan->tank.running_since &&
		ts_date_read(l->plan->tank.running_since, &day) && day > l->c->today)
		return day;
	return l->c->today;
}

/* The reason that asks soonest for one value; of several the most pressing. */
static bool soonest(struct ts_due_look *l, struct ts_due_item *ret)
{
	bool any = false;

	for (int i = 0; i < TS_DUE_REASON__COUNT; i++) {
		const struct ts_due_row *row = &ts_due_rows[i];

		if (row->where != l->item->where || !(row->what & 1u << l->what))
			continue;
		l->item->reason = (enum ts_due_reason)i;
		l->item->every_days = l->practice[row->every];
		if (!ts_due_holds(l, l->item->reason))
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
	static const struct ts_plan nothing = {0};
	const struct ts_plan *plan = c->plan ? c->plan : &nothing;

	for (int what = 0; what < TS_DUE_WHAT__COUNT; what++) {
		struct ts_due_item item = {.where = where, .what = 1u << what}, best;
		struct ts_due_look look = {c, plan, practice->value, practice, readings, count,
			(enum ts_due_what)what, NULL, &item};

		if (!is_asked(c, where, what))
			continue;
		ts_due_find_last(&look);
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

double ts_due_buffer_days(const struct ts_waters *waters, const struct ts_practice *practice)
{
	double days = waters->settled_known ? waters->settles.buffer_days.low : (double)NAN;
	struct ts_practice own;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	return days <= practice->value[TS_P_DUE_BUFFER_AHEAD] ? days : (double)NAN;
}
