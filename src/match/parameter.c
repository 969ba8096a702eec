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
#include "water/contents.h"
#include "water/follows.h"

/*
 * Suitability where comfort is not known, at the ends of what is tolerated (beyond it is 0, for
 * what is tolerated never), and at the ends of the slack of a pH.
 */
#define AT_UNKNOWN 0.5
#define AT_TOLERATED 0.1
#define AT_TOLERATED_PH 0.5
#define AT_SLACK 0.25

/* The line of suitability of a parameter; `slack` NULL: it ends with what is tolerated. */
static void curve_of(const struct ts_parameter_fit *f, enum ts_parameter p,
	const struct ts_range *slack, struct ts_curve *ret)
{
	const struct ts_range *t = &f->tolerated, *c = isnan(f->preferred.low) ? t : &f->preferred;
	const struct ts_range *end = slack ? slack : t;
	double best = c == t ? AT_UNKNOWN : 1, least = p == TS_PH ? AT_TOLERATED_PH : AT_TOLERATED;
	double beyond = p == TS_PH ? AT_SLACK : 0;
	size_t n = 0;

	ret->at[n++] = (struct ts_corner){end->low, beyond};
	ret->at[n++] = (struct ts_corner){t->low, least};
	ret->at[n++] = (struct ts_corner){c->low, best};
	ret->at[n++] = (struct ts_corner){c->high, best};
	ret->at[n++] = (struct ts_corner){t->high, least};
	ret->at[n++] = (struct ts_corner){end->high, beyond};
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

/* The end of the interval that suits least; of two alike the one farther beyond. */
static double worse_end(const struct ts_parameter_fit *f, const struct ts_span *s,
	const struct ts_curve *curve, const struct ts_range *limits)
{
	const struct ts_range *t = &f->tolerated;
	double better = ts_curve_at(curve, s->low) - ts_curve_at(curve, s->high);

	if (better == 0)
		better = fabs(beyond(s->high, limits)) - fabs(beyond(s->low, limits));
	if (better == 0)
		better = fabs(beyond(s->high, t)) - fabs(beyond(s->low, t));
	return better < 0 ? s->low : s->high;
}

/*
 * The reading that counts: of an exposure the worse end, of doubt what was read, unless that is
 * comfortable and an end is beyond the limits. How far outside is told by the worse end. The
 * suitability is that of the worse end: no doubt makes it better; for the order among equals the
 * mean over the doubt.
 */
static void suit(struct ts_parameter_fit *f, const struct ts_span *s, const struct ts_curve *curve,
	const struct ts_range *limits)
{
	const struct ts_range *comfort = isnan(f->preferred.low) ? limits : &f->preferred;
	double worse = worse_end(f, s, curve, limits);
	bool reaches = !s->exposure && s->from != TS_FROM_RESULT && beyond(s->value, limits) == 0 &&
		       beyond(worse, limits) != 0;

	f->suitability = ts_min(ts_curve_at(curve, s->low), ts_curve_at(curve, s->high));
	f->order = s->exposure ? f->suitability : ts_min(ts_curve_mean(curve, s->low, s->high), 1);
	f->perhaps = reaches && beyond(s->value, comfort) == 0;
	f->reading = s->exposure || f->perhaps ? worse : s->value;
	f->outside_by = beyond(reaches ? worse : f->reading, &f->tolerated);
}

/*
 * Inside the limits: comfortable or not. A pH is the result of the minerals and by itself takes no
 * comfort away; only beyond what is tolerated it does.
 */
static enum ts_verdict comfort_verdict(
	const struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s)
{
	const struct ts_range *comfort = p == TS_PH ? &f->tolerated : &f->preferred;
	double low = s->exposure ? s->low : s->value, high = s->exposure ? s->high : s->value;

	return s->from == TS_FROM_RESULT || holds(comfort, low, high) ? TS_SUITS : TS_TOLERATES;
}

/*
 * A pH that follows from KH: by its middle, which no doubt of KH moves, so that a wider doubt never
 * makes it better.
 */
static enum ts_verdict result_verdict(const struct ts_span *s, const struct ts_range *limits)
{
	struct ts_span middle = *s;

	middle.low = middle.high = s->value;
	return ts_span_follows(&middle, limits, TS_FOLLOWS_CONFLICT) == TS_FOLLOWS_NOTHING
		       ? TS_SUITS
		       : TS_TOLERATES;
}

/*
 * `limits`: what excludes. All of the interval beyond, and by more than the limit's own doubt:
 * excluded; a limit inside the interval: no yes. A water whose salt was not read is fresh.
 */
static enum ts_verdict limit_verdict(const struct ts_parameter_fit *f, enum ts_parameter p,
	const struct ts_range *limits, const struct ts_span *s, const double *practice)
{
	struct ts_span read = *s;

	if (s->from == TS_FROM_RESULT)
		return result_verdict(s, limits);
	if (ts_beyond_of(s->low, s->high, limits) == TS_BEYOND_NOT)
		return comfort_verdict(f, p, s);
	/* A pH that was read within them does not decide by its doubt alone. */
	if (p == TS_PH && s->from > TS_FROM_COMPUTED && !s->exposure &&
		beyond(s->value, limits) == 0)
		return TS_TOLERATES;
	/* Fresh water, and a tank that is as what is poured into it, count as read. */
	if (s->from == TS_FROM_ASSUMED)
		read.from = TS_FROM_COMPUTED;
	return ts_span_follows(&read, limits, TS_FOLLOWS_CONFLICT) == TS_FOLLOWS_CONFLICT &&
			       fabs(beyond(f->reading, limits)) >
				       ts_band_doubt(p, f->source[0], practice)
		       ? TS_EXCLUDED
		       : TS_UNSURE;
}

static void meet_comfortable(struct ts_parameter_fit *f, const struct ts_span *s)
{
	f->reading = s->exposure ? s->high : s->value;
	f->suitability = f->order = 1;
	f->outside_by = f->uncomfortable_by = f->share = 0;
	f->verdict = TS_SUITS;
}

/* All of it is tolerated; not all of it is comfortable, or nobody knows what would be. */
static void meet_tolerated(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s)
{
	struct ts_curve curve;

	curve_of(f, p, NULL, &curve);
	suit(f, s, &curve, &f->tolerated);
	f->share = 0;
	f->uncomfortable_by = beyond(f->reading, &f->preferred);
	f->verdict = comfort_verdict(f, p, s);
}

/* Part of it is beyond what is tolerated; a pH excludes only beyond its slack. */
static void meet_beyond(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s,
	const struct ts_range *slack, const double *practice)
{
	const struct ts_range *limits = slack ? slack : &f->tolerated;
	struct ts_curve curve;

	curve_of(f, p, slack, &curve);
	suit(f, s, &curve, limits);
	f->uncomfortable_by =
		isnan(f->preferred.low) ? f->outside_by : beyond(f->reading, &f->preferred);
	f->share = s->exposure ? f->outside_by != 0 : share_outside(s, &f->tolerated);
	f->verdict = limit_verdict(f, p, limits, s, practice);
}

static void not_known(struct ts_parameter_fit *f)
{
	f->reading = f->suitability = f->order = (double)NAN;
	f->outside_by = f->uncomfortable_by = f->share = 0;
	f->perhaps = f->read = false;
	f->verdict = TS_TOLERATES;
}

/*
 * KH by kind of water is no animal's own figure: inside its tolerated band it holds no `suits`
 * back, outside it never excludes, but for the animals of lakes and hard water on the low side. Too
 * much of it keeps a yes from bee shrimps, and from animals of soft water that are wild or to
 * breed.
 */
static enum ts_verdict home_kh_verdict(const struct ts_species *s, const struct ts_keeping *keeping,
	const struct ts_span *kh, struct ts_parameter_fit *f)
{
	double floor = ts_band_kh_floor(s), ceiling = ts_band_kh_ceiling(s, keeping);
	bool whole = floor > 0 || kh->exposure || kh->from == TS_FROM_ASSUMED;
	const struct ts_range rest = {floor, (double)INFINITY};
	struct ts_span read = *kh;

	f->suitability = ts_max(f->suitability, AT_TOLERATED);
	f->order = ts_max(f->order, AT_TOLERATED);
	if (ceiling > 0 && kh->high > ceiling)
		return TS_UNSURE;
	if (floor <= 0 || ts_beyond_of(kh->low, kh->high, &rest) == TS_BEYOND_NOT)
		return holds(&f->tolerated, whole ? kh->low : kh->value,
			       whole ? kh->high : kh->value)
			       ? TS_SUITS
			       : TS_TOLERATES;
	if (kh->from == TS_FROM_ASSUMED)
		read.from = TS_FROM_COMPUTED;
	return ts_span_follows(&read, &rest, TS_FOLLOWS_CONFLICT) == TS_FOLLOWS_CONFLICT
		       ? TS_EXCLUDED
		       : TS_UNSURE;
}

static void meet(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s,
	const struct ts_species *species, const struct ts_keeping *keeping, const double *practice)
{
	struct ts_range slack;

	f->perhaps = false;
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
		f->verdict = home_kh_verdict(species, keeping, s, f);
	f->read = s->from > TS_FROM_COMPUTED && f->reading == s->value;
}

/* Not read, but bounded by what was: as good as what it may be, and without a figure of its own. */
static void meet_assumed(struct ts_parameter_fit *f, enum ts_parameter p, const struct ts_span *s,
	const struct ts_species *species, const struct ts_keeping *keeping, const double *practice)
{
	struct ts_parameter_fit may = *f;

	meet(&may, p, s, species, keeping, practice);
	f->verdict = may.verdict < TS_UNSURE ? may.verdict : TS_UNSURE;
	f->assumed = true;
}

/*
 * GH was not read, but conductivity or solids leave so little room for it that it lies beyond as a
 * whole: that excludes. A yes never follows from them.
 */
static void meet_bound(struct ts_parameter_fit *f, const struct ts_span *bound,
	const struct ts_species *species, const struct ts_keeping *keeping, const double *practice)
{
	struct ts_parameter_fit may = *f;
	struct ts_span most = *bound;

	most.value = most.high;
	meet(&may, TS_GH, &most, species, keeping, practice);
	if (may.verdict != TS_EXCLUDED)
		return;
	*f = may;
	f->known = true;
}

/* Livebearers at GH 12: that is theirs, and KH is to be tested, too. */
static bool gh_answers(const struct ts_species *species, const struct ts_span *gh)
{
	double from = ts_band_gh_answers_from(species);

	return from > 0 && gh->given && (gh->exposure ? gh->low : gh->value) >= from;
}

/* Of what is more than it likes, that which the salt did not bring. */
static double without_salt(double gh_dh, double of_salt_dh, double most_dh)
{
	return gh_dh > most_dh ? ts_max(most_dh, gh_dh - of_salt_dh) : gh_dh;
}

static bool says_its_salt(const struct ts_species *s)
{
	return !isnan(s->water.usual.salinity_g_l.tolerated.low);
}

struct ts_span ts_parameter_gh(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_parameter_fit *f, const double *practice)
{
	double most = isnan(f->preferred.low) ? f->tolerated.high : f->preferred.high;
	struct ts_span salt = {.given = false}, s = profile->at[TS_GH];

	/* A GH that sea salt makes is enough of it, and never too much. */
	if (s.from == TS_FROM_ASSUMED && !s.exposure) {
		salt = s;
		salt.low = salt.high = s.high;
	} else if (says_its_salt(species)) {
		salt = ts_contents_gh_of_salt(profile, practice[TS_P_SALT_FRESH]);
	}
	if (!salt.given)
		return s;
	s.low = without_salt(s.low, salt.high, most);
	s.value = without_salt(s.value, salt.value, most);
	s.high = without_salt(s.high, salt.low, most);
	return s;
}

void ts_parameters_meet(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const double *practice,
	struct ts_parameter_fit io[TS_PARAMETER__COUNT])
{
	const struct ts_span *const assumed[TS_PARAMETER__COUNT] = {
		[TS_KH] = &profile->kh_assumed, [TS_PH] = &profile->ph_assumed};

	for (int i = 0; i < TS_PARAMETER__COUNT; i++) {
		enum ts_parameter p = (enum ts_parameter)i;
		struct ts_parameter_fit *f = &io[p];
		const struct ts_span *s = &profile->at[p];
		bool band = !isnan(f->tolerated.low);

		f->known = s->given && band;
		f->assumed = false;
		if (f->known) {
			struct ts_span own = *s;

			if (p == TS_GH)
				own = ts_parameter_gh(species, profile, f, practice);
			meet(f, p, &own, species, keeping, practice);
			continue;
		}
		not_known(f);
		if (band && p == TS_GH && profile->gh_bound.given)
			meet_bound(f, &profile->gh_bound, species, keeping, practice);
		if (band && assumed[p] && assumed[p]->given &&
			!(p == TS_KH && gh_answers(species, &profile->at[TS_GH])))
			meet_assumed(f, p, assumed[p], species, keeping, practice);
	}
}
