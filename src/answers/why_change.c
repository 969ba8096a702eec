/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Why not, and what would change it: every parameter that the water misses, warmth first, in the
 * house sentence; then the nearest water, or warmth, in which the animal would live.
 */
#include "answers/why_change.h"

#include <math.h>

#include "water/mend.h"
#include "words/mend.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* Shares of pure water in steps, L of 100; more of it than this is another water altogether. */
#define STEP_L 5.0
#define PURE_MOST_L 95.0

enum ts_misfit ts_why_misfit(const struct ts_match *m, const struct ts_profile *profile)
{
	int at;

	return ts_misfit_of(m, profile, &at);
}

/* Beyond what is liked so far that it is no question of a reading. */
static bool misses(const struct ts_match *m, const struct ts_profile *profile, enum ts_parameter p,
	enum ts_misfit least)
{
	return m->at[p].known && m->at[p].uncomfortable_by != 0 &&
	       ts_misfit_at(m, profile, p) >= least;
}

bool ts_why_not(struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	static const enum ts_parameter order[] = {TS_TEMPERATURE, TS_SALINITY, TS_GH, TS_KH, TS_PH};
	enum ts_misfit least = ts_why_misfit(m, profile);
	bool any = false;

	if (!isnan(m->copper_borne_mg_l) || profile->unusual & TS_UNUSUAL__NOBODY_YET ||
		least < TS_MISFIT_OPEN)
		return false;
	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		enum ts_parameter p = order[i];

		if (!misses(m, profile, p, least) || (p == TS_PH && any))
			continue;
		ts_text_put(text, any ? "; " : "");
		ts_say_parameter(text, p, &m->at[p]);
		any = true;
	}
	return any;
}

/* Inside what is liked, a degree from its end: what check's recipe comes to. */
static double target(const struct ts_parameter_fit *f, const struct ts_span *s)
{
	const struct ts_range *r = isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
	double inside = fmin(1, (r->high - r->low) / 2);

	if (!s->given || isnan(r->low))
		return (double)NAN;
	if (s->value < r->low)
		return ceil(r->low + inside);
	return s->value > r->high ? floor(r->high - inside) : s->value;
}

static double share_left(double target_dh, const struct ts_span *s)
{
	return s->given && s->value > 0 && !isnan(target_dh) ? target_dh / s->value : 1;
}

static bool say_minerals(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	const struct ts_span *gh = &profile->at[TS_GH], *kh = &profile->at[TS_KH];
	double gh_to = target(&m->at[TS_GH], gh), kh_to = target(&m->at[TS_KH], kh);
	double left = fmin(fmin(share_left(gh_to, gh), share_left(kh_to, kh)), 1);
	struct ts_mend mend;

	left = floor(left * 100 / STEP_L) * STEP_L / 100;
	if (100 * (1 - left) > PURE_MOST_L)
		return false;
	/* What is thinned for the harder of the two is taken as it comes, unless it is too little.
	 */
	if (left < 1) {
		gh_to = fmin(gh_to, fmax(gh->value * left, m->at[TS_GH].preferred.low));
		kh_to = fmin(kh_to, fmax(kh->value * left, m->at[TS_KH].preferred.low));
	}
	if (!ts_mend_find(
		    &(struct ts_mend_wish){gh->given ? gh->value : (double)NAN,
			    kh->given ? kh->value : (double)NAN, gh_to, kh_to,
			    profile->at[TS_TEMPERATURE].given ? profile->at[TS_TEMPERATURE].value
							      : (double)NAN},
		    &mend))
		return false;
	ts_say_mend(text, &mend);
	return true;
}

bool ts_why_change(struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	enum ts_misfit least = ts_why_misfit(m, profile);
	const struct ts_parameter_fit *t = &m->at[TS_TEMPERATURE];
	const struct ts_range *r = isnan(t->preferred.low) ? &t->tolerated : &t->preferred;
	bool warmth = misses(m, profile, TS_TEMPERATURE, least);
	bool minerals = misses(m, profile, TS_GH, least) || misses(m, profile, TS_KH, least);
	bool said;

	if (least < TS_MISFIT_OPEN || profile->unusual & TS_UNUSUAL__NOBODY_YET ||
		!isnan(m->copper_borne_mg_l) || misses(m, profile, TS_SALINITY, least))
		return false;
	if (warmth) {
		ts_text_put(text, "The tank at ");
		ts_say_range(text, r, 1);
		ts_text_put(text, minerals ? " C; and other water. " : " C.");
	}
	said = minerals && say_minerals(text, m, profile);
	if (said) {
		ts_text_put(text, " The whole way, and whether it is worth it: tapshoal remake "
				  "--for \"");
		ts_say_animal(text, m->species);
		ts_text_put(text, "\".");
	}
	return warmth || said;
}
