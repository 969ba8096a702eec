/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The doubt of each method as a table, and the one rule that tells doubt from change.
 */
#include "water/spans.h"

#include "model/practice.h"

#define METHODS 6

/* Half-widths of pH by method, index enum ts_method; estimates from memory. */
static const double ph_doubt[METHODS] = {0.3, 0.5, 0.3, 0.1, 0.2, 0.2};

/* How far below and above a hardness figure the value may lie. n drops of 1 dH: more than n - 1. */
static void hardness_doubt(double value, int method, double *ret_below, double *ret_above)
{
	switch (method) {
	case TS_METHOD_STRIP: /* between neighbouring blocks; their usual distance, from memory */
		*ret_below = *ret_above = fmax(2, value * 0.3);
		break;
	case TS_METHOD_LABORATORY:
		*ret_below = *ret_above = value * 0.03;
		break;
	case TS_METHOD_UTILITY_REPORT:
		*ret_below = *ret_above = value * 0.15;
		break;
	default:
		*ret_below = 1;
		*ret_above = 0;
		break;
	}
}

static void doubt_of(
	enum ts_parameter p, double value, int method, double *ret_below, double *ret_above)
{
	*ret_below = *ret_above = 0;
	if (p == TS_PH)
		*ret_below = *ret_above = ph_doubt[method];
	else if (p == TS_TEMPERATURE)
		*ret_below = *ret_above = 0.5;
	else if (p != TS_SALINITY)
		hardness_doubt(value, method, ret_below, ret_above);
}

/*
 * A range that was measured keeps the doubt of its method at both ends, where that is said; that of
 * a utility is of analyses, whose doubt is a laboratory's. That of a strip lies between blocks
 * already, and a tank's temperature is what its keeper says of it.
 */
static void widen_range(struct ts_span *s, enum ts_parameter p, int method)
{
	double below, above, unused;

	if (p == TS_TEMPERATURE || p == TS_SALINITY || method == TS_METHOD_STRIP ||
		method == TS_METHOD_UNKNOWN || !(s->high > s->low))
		return;
	if (method == TS_METHOD_UTILITY_REPORT)
		method = TS_METHOD_LABORATORY;
	doubt_of(p, s->low, method, &below, &unused);
	doubt_of(p, s->high, method, &unused, &above);
	s->low = fmax(0, s->low - below);
	s->high += above;
}

struct ts_span ts_span_read(const struct ts_measure *m, enum ts_parameter p, int method,
	const struct ts_practice *practice)
{
	struct ts_span s = {.given = m->kind != TS_MEASURE_NONE,
		.exposure = m->kind == TS_MEASURE_RANGE && method != TS_METHOD_STRIP,
		.value = m->value,
		.low = m->low,
		.high = m->high,
		.age_days = (double)NAN};
	double below, above;

	if (!s.given)
		return s;
	if (m->kind == TS_MEASURE_RANGE && isfinite(s.low) && isfinite(s.high))
		widen_range(&s, p, method);
	if (!isfinite(s.high))
		s.high = p == TS_PH ? 14 : fmax(practice->value[TS_P_GH_OPEN_END], s.value);
	if (!isfinite(s.low))
		s.low = 0;
	/* The last block of a pH card: the figure, and not half of it. */
	if (m->kind == TS_MEASURE_BELOW)
		s.value = p == TS_PH ? s.high : (s.low + s.high) / 2;
	if (m->kind != TS_MEASURE_VALUE)
		return s;
	doubt_of(p, s.value, method, &below, &above);
	s.low = p == TS_TEMPERATURE ? s.value - below : fmax(0, s.value - below);
	s.high = s.value + above;
	return s;
}

void ts_spread_open(struct ts_spread *spread)
{
	*spread = (struct ts_spread){.span = {.age_days = (double)NAN},
		.last_low = -(double)INFINITY,
		.first_high = (double)INFINITY};
}

void ts_spread_add(struct ts_spread *spread, const struct ts_span *one)
{
	struct ts_span *s = &spread->span;

	if (!one->given)
		return;
	spread->last_low = fmax(spread->last_low, one->low);
	spread->first_high = fmin(spread->first_high, one->high);
	if (!s->given) {
		*s = *one;
		return;
	}
	if (one->value != s->value || one->low != s->low || one->high != s->high) {
		s->low = fmin(s->low, one->low);
		s->high = fmax(s->high, one->high);
		s->value = (s->low + s->high) / 2;
	}
	s->exposure |= one->exposure || spread->last_low > spread->first_high;
	s->from = one->from < s->from ? one->from : s->from;
	s->age_days = fmin(s->age_days, one->age_days); /* the newest; NAN gives way */
}
