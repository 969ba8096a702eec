/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The bands of a species, as its record or the kind of its home water gives them.
 */
#include "match/bands.h"

#include <float.h>
#include <stddef.h>
#include <string.h>

#include "base/number.h"
#include "model/practice.h"

const char ts_by_kind_of_water[] = "by kind of water";

/*
 * KH by home water: farmed and display, then wild or breeding; 0 in `excludes_below`: never;
 * `asks_above`, and `strict_asks_above` of those that are wild or are to breed: from there it is no
 * yes, 0: never. Too much buffer alone harms no other: GH decides for them.
 */
struct home_kh {
	struct ts_range tolerated, preferred, strict_tolerated, strict_preferred;
	double excludes_below, asks_above, strict_asks_above;
	double gh_answers_from; /* GH from which an unread KH asks nothing; 0: KH decides */
};

/* Estimates from memory of common practice; docs/methods.md says so. One row a home water. */
/* clang-format off */
static const struct home_kh home_kh[TS_HOME__COUNT] = {
	[TS_HOME_BLACK] = {{0, 8}, {0, 4}, {0, 3}, {0, 1.5}, 0, 0, 3, 0},
	[TS_HOME_CLEAR_SOFT] = {{0, 10}, {1, 6}, {0, 5}, {0, 3}, 0, 0, 5, 0},
	[TS_HOME_MIXED] = {{1, 12}, {2, 8}, {0.5, 8}, {1, 5}, 0, 0, 0, 0},
	[TS_HOME_MIDDLE] = {{2, 16}, {3, 10}, {2, 12}, {3, 8}, 0, 0, 0, 0},
	[TS_HOME_HARD] = {{4, 20}, {6, 14}, {5, 18}, {8, 14}, 3, 0, 0, 8},
	[TS_HOME_MALAWI] = {{4, 20}, {6, 14}, {5, 16}, {6, 12}, 3.5, 0, 0, 0},
	[TS_HOME_TANGANYIKA] = {{6, 25}, {8, 18}, {8, 22}, {12, 18}, 5, 0, 0, 0},
	[TS_HOME_VICTORIA] = {{2.5, 16}, {4, 10}, {2, 14}, {2.5, 10}, 2, 0, 0, 0},
	[TS_HOME_COOL] = {{2, 20}, {4, 14}, {3, 18}, {5, 12}, 0, 0, 0, 0},
	[TS_HOME_BEE_SHRIMP] = {{0, 4}, {0, 2}, {0, 4}, {0, 2}, 0, 5, 5, 0},
	[TS_HOME_NEOCARIDINA] = {{1, 14}, {2, 8}, {1, 14}, {2, 8}, 0, 0, 0, 0},
	[TS_HOME_SULAWESI] = {{3, 9}, {4, 8}, {3, 9}, {4, 8}, 0, 0, 0, 0},
	[TS_HOME_SNAIL] = {{2, 20}, {5, 14}, {2, 20}, {5, 14}, 0, 0, 0, 0},
	[TS_HOME_BRACKISH] = {{4, 20}, {6, 14}, {5, 18}, {8, 14}, 0, 0, 0, 0},
};
/* clang-format on */

/* Where the envelope of each parameter stands. */
static const size_t envelope_at[TS_PARAMETER__COUNT] = {
	[TS_GH] = offsetof(struct ts_envelopes, gh_dh),
	[TS_KH] = offsetof(struct ts_envelopes, kh_dh),
	[TS_PH] = offsetof(struct ts_envelopes, ph),
	[TS_TEMPERATURE] = offsetof(struct ts_envelopes, temp_c),
	[TS_SALINITY] = offsetof(struct ts_envelopes, salinity_g_l),
};

static const struct ts_envelope *envelope_in(const struct ts_envelopes *e, enum ts_parameter p)
{
	return (const void *)((const char *)e + envelope_at[p]);
}

static bool has(const struct ts_envelope *e)
{
	return !isnan(e->tolerated.low);
}

/* An open end is as far as any fresh water goes, so that curves have finite corners. */
static struct ts_range closed(struct ts_range r)
{
	return (struct ts_range){r.low > -DBL_MAX ? r.low : 0, r.high < DBL_MAX ? r.high : 100};
}

static void take_band(struct ts_parameter_fit *f, const struct ts_envelope *e, const char *variant)
{
	f->tolerated = closed(e->tolerated);
	f->preferred = isnan(e->preferred.low) ? e->preferred : closed(e->preferred);
	f->source[0] = e->source.count ? e->source.items[0] : "memory";
	f->source[1] = e->source.count > 1 ? e->source.items[1] : f->source[0];
	f->variant = variant;
}

static void take_home_kh(
	struct ts_parameter_fit *f, const struct ts_species *s, const struct ts_keeping *k)
{
	const struct home_kh *row = &home_kh[s->home_water];
	bool strict = k->wild || k->breeding;

	f->tolerated = strict ? row->strict_tolerated : row->tolerated;
	f->preferred = strict ? row->strict_preferred : row->preferred;
	f->source[0] = f->source[1] = ts_by_kind_of_water;
	f->variant = strict ? (k->breeding ? "breeding" : "wild") : NULL;
}

static void take_fresh(struct ts_parameter_fit *f, const double *practice)
{
	const struct ts_range fresh = {0, practice[TS_P_SALT_FRESH]};

	take_band(f, &(struct ts_envelope){.tolerated = fresh, .preferred = fresh}, NULL);
}

static void take_none(struct ts_parameter_fit *f)
{
	f->tolerated = f->preferred = (struct ts_range){(double)NAN, (double)NAN};
	f->source[0] = f->source[1] = f->variant = NULL;
}

static void choose(const struct ts_species *s, enum ts_parameter p, const struct ts_keeping *k,
	const double *practice, struct ts_parameter_fit *ret)
{
	const struct ts_envelope *usual = envelope_in(&s->water.usual, p);
	const struct ts_envelope *wild = envelope_in(&s->water.wild, p);
	const struct ts_envelope *breeding = envelope_in(&s->water.breeding, p);

	if (k->breeding && has(breeding))
		take_band(ret, breeding, "breeding");
	else if (k->wild && has(wild))
		take_band(ret, wild, "wild");
	else if (has(usual))
		take_band(ret, usual, NULL);
	else if (p == TS_KH)
		take_home_kh(ret, s, k);
	else if (p == TS_SALINITY)
		take_fresh(ret, practice);
	else
		take_none(ret);
}

void ts_bands_choose(const struct ts_species *species, const struct ts_keeping *keeping,
	const double *practice, struct ts_parameter_fit ret[TS_PARAMETER__COUNT])
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		choose(species, (enum ts_parameter)p, keeping, practice, &ret[p]);
}

double ts_band_doubt(enum ts_parameter p, const char *source, const double *practice)
{
	/* Three rows each, by grade: published, from practice or derived, from memory. */
	static const int first[TS_PARAMETER__COUNT] = {
		[TS_GH] = TS_P_DOUBT_GH_PUBLISHED,
		[TS_KH] = TS_P_DOUBT_GH_PUBLISHED,
		[TS_PH] = TS_P_DOUBT_PH_PUBLISHED,
		[TS_TEMPERATURE] = TS_P_DOUBT_TEMP_PUBLISHED,
	};
	int grade = 0;

	if (p == TS_SALINITY)
		return practice[TS_P_DOUBT_SALINITY];
	if (strcmp(source, "memory") == 0)
		grade = 2;
	else if (strcmp(source, "practice") == 0 || strcmp(source, "derived") == 0)
		grade = 1;
	return practice[first[p] + grade];
}

/* Animals of calcareous waters: low pH means that the minerals are missing, so no slack there. */
static bool calcareous(const struct ts_species *s)
{
	switch (s->home_water) {
	case TS_HOME_HARD:
	case TS_HOME_MALAWI:
	case TS_HOME_TANGANYIKA:
	case TS_HOME_VICTORIA:
	case TS_HOME_SULAWESI:
	case TS_HOME_SNAIL:
		return true;
	default:
		return false;
	}
}

struct ts_range ts_band_ph_slack(const struct ts_species *s, const struct ts_range *tolerated,
	const struct ts_keeping *k, const double *practice)
{
	double slack = practice[TS_P_PH_SLACK];
	bool black = s->home_water == TS_HOME_BLACK;
	double bottom = practice[black ? TS_P_PH_FLOOR_BLACK : TS_P_PH_FLOOR];
	struct ts_range r = *tolerated;

	if (k->breeding || (k->wild && black))
		slack /= 2;
	if (!calcareous(s))
		r.low = ts_min(r.low, ts_max(r.low - slack, bottom));
	r.high = ts_max(r.high, ts_min(r.high + slack, practice[TS_P_PH_CEILING]));
	return r;
}

double ts_band_kh_ceiling(const struct ts_species *s, const struct ts_keeping *k)
{
	const struct home_kh *row = &home_kh[s->home_water];

	return k->wild || k->breeding ? row->strict_asks_above : row->asks_above;
}

double ts_band_gh_answers_from(const struct ts_species *s)
{
	return home_kh[s->home_water].gh_answers_from;
}

double ts_band_kh_floor(const struct ts_species *s)
{
	return home_kh[s->home_water].excludes_below;
}
