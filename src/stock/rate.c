/* SPDX-License-Identifier: Apache-2.0 */
/*
 * dC/dt = g + known - r (C - poured) with r = -ln(1 - f) / n: a share f changed every n days,
 * spread evenly. C is then linear in the first level and in g, and the two are fitted by least
 * squares.
 */
#include "stock/rate.h"

#include "base/date.h"

/* Doubt of one reading, half an interval: nitrate of kits, of laboratories; least, mg/L. */
#define NO3_KIT 0.3
#define NO3_LABORATORY 0.05
#define NO3_LEAST 5.0
/* Of hardness, dH: half a drop; of a strip half the way between two blocks. */
#define DROP_DH 0.5
#define STRIP 0.3
#define STRIP_LEAST_DH 2.0
/* Hardness of laboratories and works. */
#define HARDNESS_LABORATORY 0.03
#define HARDNESS_UTILITY 0.15
/* A half interval in standard deviations of an even distribution. */
#define HALF_TO_DEVIATION 0.57735
/* Deviations that the rate is given with to either side. */
#define DEVIATIONS 2.0
/* Fits, each with the doubt of the levels that the one before found. */
#define PASSES 4
#define SHARE_MOST 0.999

/* The form in which a reading tells the value. */
static const struct ts_measure *form_of(const struct ts_reading *r, enum ts_now_value value)
{
	const struct ts_measure *first = value == TS_NOW_GH   ? &r->gh_dh
					 : value == TS_NOW_KH ? &r->kh_dh
							      : &r->no3_mg_l;
	const struct ts_measure *other = value == TS_NOW_GH   ? &r->ca_mg_l
					 : value == TS_NOW_KH ? &r->alkalinity_meq_l
							      : &r->no3_n_mg_l;

	return first->kind != TS_MEASURE_NONE ? first : other;
}

/* One reading that counts. */
struct point {
	double day, value;
};

static double deviation_of(const struct ts_reading *r, enum ts_now_value value, double figure)
{
	double half = DROP_DH;

	if (value == TS_NOW_NO3)
		half = fmax(NO3_LEAST,
			figure * (r->method == TS_METHOD_LABORATORY ? NO3_LABORATORY : NO3_KIT));
	else if (r->method == TS_METHOD_STRIP)
		half = fmax(STRIP_LEAST_DH, figure * STRIP);
	else if (r->method == TS_METHOD_LABORATORY)
		half = fmax(figure * HARDNESS_LABORATORY, DROP_DH / 2);
	else if (r->method == TS_METHOD_UTILITY_REPORT)
		half = fmax(figure * HARDNESS_UTILITY, DROP_DH);
	return half * HALF_TO_DEVIATION;
}

/* "<5" is no figure to draw a line through. */
static bool point_of(const struct ts_rate_case *c, const struct ts_reading *r,
	enum ts_now_value value, struct point *ret)
{
	enum ts_measure_kind kind = form_of(r, value)->kind;
	double figure = ts_reading_value(r, value);
	long day;

	if ((kind != TS_MEASURE_VALUE && kind != TS_MEASURE_DOUBT) || isnan(figure) ||
		ts_reading_is_ahead(r, c->today) || !r->date || !ts_date_read(r->date, &day))
		return false;
	*ret = (struct point){(double)day, figure};
	return true;
}

/* Newest and oldest day of those that count: all of the window, or else the last two. */
static bool window_of(const struct ts_rate_case *c, enum ts_now_value value, double length,
	double *ret_from, double *ret_to)
{
	double newest = -(double)INFINITY, before = -(double)INFINITY;
	double oldest = (double)INFINITY;
	struct point p;

	for (size_t i = 0; i < c->count; i++) {
		if (!point_of(c, &c->readings[i], value, &p))
			continue;
		if (p.day > newest) {
			before = newest;
			newest = p.day;
		} else if (p.day < newest) {
			before = fmax(before, p.day);
		}
	}
	for (size_t i = 0; i < c->count; i++) {
		if (point_of(c, &c->readings[i], value, &p) && p.day >= newest - length)
			oldest = fmin(oldest, p.day);
	}
	*ret_to = newest;
	*ret_from = oldest < newest ? oldest : before;
	return isfinite(before);
}

/* What is left of the first level after so many days, and what a gain of 1 a day has added. */
static void course(double days, double loss_a_day, double *ret_left, double *ret_gained)
{
	*ret_left = exp(-loss_a_day * days);
	*ret_gained = loss_a_day > 0 ? (1 - *ret_left) / loss_a_day : days;
}

/* How far a figure lies from the even course by the day of the change that is not known. */
static double saw_of(const struct ts_rate_case *c, double value)
{
	return c->change_share * fabs(value - c->poured) / 2 * HALF_TO_DEVIATION;
}

/* Sums of the normal equations. */
struct sums {
	double aa, ab, bb, ay, by;
};

/* A fit: what lies between the readings, and the line through them. */
struct fit {
	double from, loss, poured; /* a day; poured 0 where nothing is changed */
	double start, gain;        /* at first the level as read; NAN */
};

/* A figure has the doubt of the level that it should have had: low readings are no surer ones. */
static void add_point(const struct ts_rate_case *c, const struct fit *f, enum ts_now_value value,
	const struct ts_reading *r, const struct point *p, struct sums *sums)
{
	double left, gained, y, level, deviation, weight;

	course(p->day - f->from, f->loss, &left, &gained);
	y = p->value - (1 - left) * f->poured;
	level = isnan(f->gain) ? p->value
			       : f->start * left + f->gain * gained + (1 - left) * f->poured;
	deviation = deviation_of(r, value, fmax(level, 0));
	weight = 1 /
		 (deviation * deviation + (f->loss > 0 ? saw_of(c, level) * saw_of(c, level) : 0));
	sums->aa += weight * left * left;
	sums->ab += weight * left * gained;
	sums->bb += weight * gained * gained;
	sums->ay += weight * left * y;
	sums->by += weight * gained * y;
}

static bool solve(const struct sums *s, struct fit *f, double *ret_deviation)
{
	double det = s->aa * s->bb - s->ab * s->ab;

	if (!(det > 1e-12 * s->aa * s->bb))
		return false;
	f->start = (s->bb * s->ay - s->ab * s->by) / det;
	f->gain = (s->aa * s->by - s->ab * s->ay) / det;
	*ret_deviation = sqrt(s->aa / det);
	return true;
}

bool ts_rate_of(const struct ts_rate_case *c, enum ts_now_value value,
	const struct ts_practice *practice, struct ts_rate *ret)
{
	struct ts_rate rate = {0};
	struct fit fit = {.gain = (double)NAN};
	double to, deviation = 0;

	if (!window_of(c, value, practice->value[TS_P_RATE_DAYS], &fit.from, &to))
		return false;
	rate.days = to - fit.from;
	if (c->change_share > 0 && rate.days > c->change_days) {
		fit.loss = -log(1 - fmin(c->change_share, SHARE_MOST)) / c->change_days;
		fit.poured = c->poured;
	}
	if (isnan(fit.poured))
		return false;
	for (int pass = 0; pass < PASSES; pass++) {
		struct sums sums = {0};

		rate.readings = 0;
		for (size_t i = 0; i < c->count; i++) {
			struct point p;

			if (!point_of(c, &c->readings[i], value, &p) || p.day < fit.from)
				continue;
			add_point(c, &fit, value, &c->readings[i], &p, &sums);
			rate.first = p.day == fit.from ? p.value : rate.first;
			rate.last = p.day == to ? p.value : rate.last;
			rate.readings++;
		}
		if (!solve(&sums, &fit, &deviation))
			return false;
	}
	rate.a_day = fit.gain - c->known_a_day;
	rate.low = rate.a_day - DEVIATIONS * deviation;
	rate.high = rate.a_day + DEVIATIONS * deviation;
	*ret = rate;
	return true;
}
