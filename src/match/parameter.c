/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The band of each parameter meets the interval of the water: comfortable as a whole, tolerated as
 * a whole, or partly beyond; most species of a catalogue need no more than the comparisons that
 * tell. The arithmetic is next door in suitability.c, the intervals in profile.c, the bands in
 * bands.c.
 */
#include "match/parameter.h"

#include "base/number.h"
#include "match/bands.h"
#include "match/suitability.h"
#include "model/practice.h"

/* Suitability where comfort is not known, and at the ends of tolerated and of the slack of a pH. */
#define AT_UNKNOWN 0.5
#define AT_TOLERATED_PH 0.5
#define AT_SLACK 0.25

/* The line of suitability of a parameter; `slack` NULL: it ends with what is tolerated. */
static void curve_of(const struct ts_parameter_fit *f, enum ts_parameter p,
	const struct ts_range *slack, struct ts_curve *ret)
{
	const struct ts_range *t = &f->tolerated, *c = isnan(f->preferred.low) ? t : &f->preferred;
	double best = c == t ? AT_UNKNOWN : 1, least = p == TS_PH ? AT_TOLERATED_PH : 0;
	size_t n = 0;

	if (slack)
		ret->at[n++] = (struct ts_corner){slack->low, AT_SLACK};
	ret->at[n++] = (struct ts_corner){t->low, least};
	ret->at[n++] = (struct ts_corner){c->low, best};
	ret->at[n++] = (struct ts_corner){c->high, best};
	ret->at[n++] = (struct ts_corner){t->high, least};
	if (slack)
		ret->at[n++] = (struct ts_corner){slack->high, AT_SLACK};
	ret->count = n;
}

/* Signed: negative below; 0 inside, and where there is no range. */
static double beyond(double value, const struct ts_range *r)
{
	return ts_min(value - r->low, 0) + ts_max(value - r->high, 0);
}

static bool holds(const struct ts_range *r, double low, double high)
{
	return r->low <= low && high <= r->high;
}

static double share_outside(const struct ts_span *s, const struct ts_range *r)
{
	double inside = ts_min(s->high, r->high) - ts_max(s->low, r->low);

	if (!(s->high > s->low))
		return beyond(s->value, r) != 0;
	return 1 - ts_max(0, inside) / (s->high - s->low);
}

/*
 * How surely a figure beyond a limit is beyond it: its doubt, as far as it reaches back towards the
 * limit and as far again. What lies beyond the other limit too makes nothing surer.
 */
static double share_beyond(const struct ts_span *s, const struct ts_range *r)
{
	double miss = fabs(beyond(s->value, r));
	double reach = s->value < r->low ? s->high - s->value : s->value - s->low;

	return reach <= miss ? 1 : (reach + miss) / (2 * reach);
}

/* The animal lives all of it: the end that suits least; of two alike the one farther beyond. */
static void suit_exposure(struct ts_parameter_fit *f, const struct ts_span *s,
	const struct ts_curve *curve, const struct ts_range *limits)
{
	const struct ts_range *t = &f->tolerated;
	double low = ts_curve_at(curve, s->low), high = ts_curve_at(curve, s->high);
	double better = low - high;

	if (better == 0)
		better = fabs(beyond(s->high, limits)) - fabs(beyond(s->low, limits));
	if (better == 0)
		better = fabs(beyond(s->high, t)) - fabs(beyond(s->low, t));
	f->reading = better < 0 ? s->low : s->high;
	f->suitability = ts_min(low, high);
}

/* The reading that counts, and its suitability: of doubt the mean over the interval. */
static void suit(struct ts_parameter_fit *f, const struct ts_span *s, const struct ts_curve *curve,
	const struct ts_range *limits)
{
	if (s->exposure) {
		suit_exposure(f, s, curve, limits);
		return;
	}
	f->reading = s->value;
	f->suitability = ts_min(ts_curve_mean(curve, s->low, s->high), 1);
}

static enum ts_verdict comfort_verdict(const struct ts_parameter_fit *f, const struct ts_span *s)
{
	double low = s->exposure ? s->low : f->reading, high = s->exposure ? s->high : f->reading;

	return holds(&f->preferred, low, high) ? TS_SUITS : TS_TOLERATES;
}

/* `limits`: what excludes, `share` of the interval lies outside. */
static enum ts_verdict limit_verdict(const struct ts_parameter_fit *f, enum ts_parameter p,
	const struct ts_range *limits, double share, const struct ts_span *s,
	const double *practice)
{
	double miss = fabs(beyond(f->reading, limits));

	if (miss > 0 &&
		(s->exposure ? 1 : share_beyond(s, limits)) >= practice[TS_P_SHARE_EXCLUDES] &&
		miss > ts_band_doubt(p, f->source[0], practice))
		return TS_EXCLUDED;
	if (share > practice[TS_P_SHARE_UNSURE])
		return TS_UNSURE;
	/* A figure outside is no yes, however wide its doubt; a kit's counts up to the drop. */
	if (miss > 0 && !s->exposure && s->value < s->high)
		return TS_UNSURE;
	return comfort_verdict(f, s);
}

static void meet_comfortable(struct ts_parameter_fit *f, const struct ts_span *s)
{
	f->reading = s->exposure ? s->high : s->value;
	f->suitability = 1;
	f->outside_by = f->uncomfortable_by = f->share = 0;
	f->verdict = TS_SUITS;
}

/* All of it is tolerated; not all of it is comfortable, or nobody knows what would be. */
static void meet_tolerated(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s)
{
	struct ts_curve curve;

	curve_of(f, p, NULL, &curve);
	suit(f, s, &curve, &f->tolerated);
	f->outside_by = f->share = 0;
	f->uncomfortable_by = beyond(f->reading, &f->preferred);
	f->verdict = comfort_verdict(f, s);
}

/* Part of it is beyond what is tolerated; a pH excludes only beyond its slack. */
static void meet_beyond(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s,
	const struct ts_range *slack, const double *practice)
{
	const struct ts_range *limits = slack ? slack : &f->tolerated;
	struct ts_curve curve;
	double share;

	curve_of(f, p, slack, &curve);
	suit(f, s, &curve, limits);
	if (slack && beyond(f->reading, slack) != 0)
		f->suitability = ts_min(f->suitability, AT_SLACK);
	f->outside_by = beyond(f->reading, &f->tolerated);
	f->uncomfortable_by =
		isnan(f->preferred.low) ? f->outside_by : beyond(f->reading, &f->preferred);
	f->share = s->exposure ? f->outside_by != 0 : share_outside(s, &f->tolerated);
	share = !slack        ? f->share
		: s->exposure ? beyond(f->reading, slack) != 0
			      : share_outside(s, slack);
	f->verdict = limit_verdict(f, p, limits, share, s, practice);
}

static void not_known(struct ts_parameter_fit *f)
{
	f->reading = f->suitability = (double)NAN;
	f->outside_by = f->uncomfortable_by = f->share = 0;
	f->verdict = TS_TOLERATES;
}

/*
 * KH by kind of water is no animal's own figure: inside its tolerated band it holds no `suits`
 * back, outside it never excludes, but for the animals of lakes and hard water on the low side.
 */
static enum ts_verdict home_kh_verdict(
	const struct ts_species *s, const struct ts_span *kh, const struct ts_parameter_fit *f)
{
	double below = ts_band_kh_floor(s);
	double value = kh->exposure ? kh->low : f->reading;
	bool inside = f->outside_by == 0, sure = f->verdict == TS_TOLERATES;
	struct ts_range rest = {below, INFINITY};

	if (inside && (below <= 0 || sure))
		return TS_SUITS;
	if (below <= 0)
		return TS_TOLERATES;
	if (value < below && (kh->exposure || share_outside(kh, &rest) >= 0.9))
		return TS_EXCLUDED;
	return value < below ? TS_UNSURE : TS_TOLERATES;
}

static void meet(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s,
	const struct ts_species *species, const struct ts_keeping *keeping, const double *practice)
{
	struct ts_range slack;

	f->known = s->given && !isnan(f->tolerated.low);
	if (!f->known) {
		not_known(f);
		return;
	}
	if (holds(&f->tolerated, s->low, s->high)) {
		if (holds(&f->preferred, s->low, s->high))
			meet_comfortable(f, s);
		else
			meet_tolerated(f, p, s);
	} else if (p == TS_PH) {
		slack = ts_band_ph_slack(species, &f->tolerated, keeping, practice);
		meet_beyond(f, p, s, &slack, practice);
	} else {
		meet_beyond(f, p, s, NULL, practice);
	}
	if (f->source[0] == ts_by_kind_of_water && f->verdict != TS_SUITS)
		f->verdict = home_kh_verdict(species, s, f);
}

void ts_parameters_meet(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const double *practice,
	struct ts_parameter_fit io[TS_PARAMETER__COUNT])
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		meet(&io[p], (enum ts_parameter)p, &profile->at[p], species, keeping, practice);
}
