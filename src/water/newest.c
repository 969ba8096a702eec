/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a later reading has superseded, figure by figure. A tank's own log is read as a course of
 * time elsewhere (now.c, series.c) and is left alone here.
 */
#include "water/newest.h"

#include <stddef.h>
#include <string.h>

#include "base/date.h"
#include "model/shape.h"

#define AT(member) offsetof(struct ts_reading, member)

/* Figures that stand for one thing: a later one of the others supersedes it as well. */
static const size_t kin[][2] = {
	{AT(gh_dh), AT(mg_mg_l)},
	{AT(ca_mg_l), AT(gh_dh)},
	{AT(mg_mg_l), AT(gh_dh)},
	{AT(kh_dh), AT(alkalinity_meq_l)},
	{AT(alkalinity_meq_l), AT(kh_dh)},
	{AT(no3_mg_l), AT(no3_n_mg_l)},
	{AT(no3_n_mg_l), AT(no3_mg_l)},
	{AT(no2_mg_l), AT(no2_n_mg_l)},
	{AT(no2_n_mg_l), AT(no2_mg_l)},
};

static bool has(const struct ts_reading *r, size_t at)
{
	return ((const struct ts_measure *)(const void *)((const char *)r + at))->kind !=
	       TS_MEASURE_NONE;
}

static bool holds(const struct ts_reading *r, size_t at)
{
	bool found = has(r, at);

	for (size_t i = 0; i < sizeof kin / sizeof *kin; i++)
		found |= kin[i][0] == at && has(r, kin[i][1]);
	return found;
}

/* Another part of the year, as both say: that is no change of the supply. */
static bool other_season(const struct ts_reading *a, const struct ts_reading *b)
{
	return a->season && b->season && strcmp(a->season, b->season) != 0;
}

static bool superseded(const struct ts_water *w, const struct ts_reading *r, long day, size_t at)
{
	for (size_t i = 0; i < w->reading_count; i++) {
		const struct ts_reading *later = &w->readings[i];
		long of;

		if (later->date && strcmp(later->date, r->date) > 0 && holds(later, at) &&
			!other_season(later, r) && ts_date_read(later->date, &of) &&
			of - day > TS_NEWEST_DAYS)
			return true;
	}
	return false;
}

const struct ts_reading *ts_reading_counted(
	const struct ts_water *w, size_t i, struct ts_reading *scratch)
{
	const struct ts_reading *r = &w->readings[i];
	const struct ts_shape *shape = &ts_shape_reading;
	bool later = false;
	long day;

	if (w->kind == TS_WATER_TANK || !r->date || !ts_date_read(r->date, &day))
		return r;
	for (size_t k = 0; k < w->reading_count && !later; k++) {
		long of;

		later = w->readings[k].date && strcmp(w->readings[k].date, r->date) > 0 &&
			ts_date_read(w->readings[k].date, &of) && of - day > TS_NEWEST_DAYS;
	}
	if (!later)
		return r;
	*scratch = *r;
	for (size_t f = 0; f < shape->count; f++) {
		const struct ts_field *field = &shape->fields[f];

		if (field->kind == TS_MEASURE && superseded(w, r, day, field->offset))
			((struct ts_measure *)(void *)((char *)scratch + field->offset))->kind =
				TS_MEASURE_NONE;
	}
	return scratch;
}
