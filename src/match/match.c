/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One species against one profile: the band that counts for each parameter, its suitability and
 * verdict, then the whole. The arithmetic is next door in suitability.c, the intervals in
 * profile.c.
 */
#include <tapshoal/match.h>

#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "match/suitability.h"
#include "model/practice.h"

static const char by_kind_of_water[] = "by kind of water";

/* KH by home water: farmed and display, then wild or breeding; 0 in `excludes` = never. */
struct home_kh {
	struct ts_range tolerated, preferred, strict_tolerated, strict_preferred;
	double excludes_below;
};

/* Estimates from memory of common practice; docs/methods.md says so. One row a home water. */
/* clang-format off */
static const struct home_kh home_kh[TS_HOME__COUNT] = {
	[TS_HOME_BLACK] = {{0, 8}, {0, 4}, {0, 3}, {0, 1.5}, 0},
	[TS_HOME_CLEAR_SOFT] = {{0, 10}, {1, 6}, {0, 5}, {0, 3}, 0},
	[TS_HOME_MIXED] = {{1, 12}, {2, 8}, {0.5, 8}, {1, 5}, 0},
	[TS_HOME_MIDDLE] = {{2, 16}, {3, 10}, {2, 12}, {3, 8}, 0},
	[TS_HOME_HARD] = {{4, 20}, {6, 14}, {5, 18}, {8, 14}, 3},
	[TS_HOME_MALAWI] = {{4, 20}, {6, 14}, {5, 16}, {6, 12}, 3.5},
	[TS_HOME_TANGANYIKA] = {{6, 25}, {8, 18}, {8, 22}, {12, 18}, 5},
	[TS_HOME_VICTORIA] = {{3, 16}, {4, 10}, {3, 14}, {4, 10}, 2},
	[TS_HOME_COOL] = {{2, 20}, {4, 14}, {3, 18}, {5, 12}, 0},
	[TS_HOME_BEE_SHRIMP] = {{0, 4}, {0, 2}, {0, 4}, {0, 2}, 0},
	[TS_HOME_NEOCARIDINA] = {{1, 14}, {2, 8}, {1, 14}, {2, 8}, 0},
	[TS_HOME_SULAWESI] = {{3, 9}, {4, 8}, {3, 9}, {4, 8}, 0},
	[TS_HOME_SNAIL] = {{2, 20}, {5, 14}, {2, 20}, {5, 14}, 0},
	[TS_HOME_BRACKISH] = {{4, 20}, {6, 14}, {5, 18}, {8, 14}, 0},
};
/* clang-format on */

static const struct ts_envelope *envelope_in(const struct ts_envelopes *e, enum ts_parameter p)
{
	switch (p) {
	case TS_GH:
		return &e->gh_dh;
	case TS_KH:
		return &e->kh_dh;
	case TS_PH:
		return &e->ph;
	case TS_TEMPERATURE:
		return &e->temp_c;
	default:
		return &e->salinity_g_l;
	}
}

static bool has(const struct ts_envelope *e)
{
	return !isnan(e->tolerated.low);
}

/* An open end is as far as any fresh water goes, so that curves have finite corners. */
static struct ts_range closed(struct ts_range r)
{
	if (!isfinite(r.low))
		r.low = 0;
	if (!isfinite(r.high))
		r.high = 100;
	return r;
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
	f->source[0] = f->source[1] = by_kind_of_water;
	f->variant = strict ? (k->breeding ? "breeding" : "wild") : NULL;
}

/* The band that counts: breeding before wild before usual; KH by home water where none is given. */
static void choose_band(struct ts_parameter_fit *f, const struct ts_species *s, enum ts_parameter p,
	const struct ts_keeping *k, const double *practice)
{
	const struct ts_envelope *usual = envelope_in(&s->water.usual, p);
	const struct ts_envelope *wild = envelope_in(&s->water.wild, p);
	const struct ts_envelope *breeding = envelope_in(&s->water.breeding, p);

	f->tolerated = f->preferred = (struct ts_range){(double)NAN, (double)NAN};
	if (k->breeding && has(breeding))
		take_band(f, breeding, "breeding");
	else if (k->wild && has(wild))
		take_band(f, wild, "wild");
	else if (has(usual))
		take_band(f, usual, NULL);
	else if (p == TS_KH)
		take_home_kh(f, s, k);
	else if (p == TS_SALINITY)
		take_band(f,
			&(struct ts_envelope){.tolerated = {0, practice[TS_P_SALT_FRESH]},
				.preferred = {0, practice[TS_P_SALT_FRESH]}},
			NULL);
}

static double limit_doubt(enum ts_parameter p, const char *grade, const double *practice)
{
	int row = strcmp(grade, "memory") == 0                                      ? 2
		  : strcmp(grade, "practice") == 0 || strcmp(grade, "derived") == 0 ? 1
										    : 0;

	switch (p) {
	case TS_PH:
		return practice[TS_P_DOUBT_PH_PUBLISHED + row];
	case TS_TEMPERATURE:
		return practice[TS_P_DOUBT_TEMP_PUBLISHED + row];
	case TS_SALINITY:
		return practice[TS_P_DOUBT_SALINITY];
	default:
		return practice[TS_P_DOUBT_GH_PUBLISHED + row];
	}
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

/* How far beyond tolerated a pH is still no reason to exclude. */
static struct ts_range ph_slack(const struct ts_species *s, const struct ts_range *tolerated,
	const struct ts_keeping *k, const double *practice)
{
	double slack = practice[TS_P_PH_SLACK];
	bool black = s->home_water == TS_HOME_BLACK;
	double bottom = practice[black ? TS_P_PH_FLOOR_BLACK : TS_P_PH_FLOOR];
	struct ts_range r = *tolerated;

	if (k->breeding || (k->wild && black))
		slack /= 2;
	if (!calcareous(s))
		r.low = fmin(r.low, fmax(r.low - slack, bottom));
	r.high = fmax(r.high, fmin(r.high + slack, practice[TS_P_PH_CEILING]));
	return r;
}

static struct ts_curve curve_of(const struct ts_parameter_fit *f, const struct ts_range *slack)
{
	const struct ts_range *t = &f->tolerated, *c = &f->preferred;
	bool no_comfort = isnan(c->low);
	double best = no_comfort ? 0.5 : 1;
	double low = no_comfort ? t->low : c->low, high = no_comfort ? t->high : c->high;

	if (slack) {
		return (struct ts_curve){{{slack->low, 0.25}, {t->low, 0.5}, {low, best},
						 {high, best}, {t->high, 0.5}, {slack->high, 0.25}},
			6};
	}
	return (struct ts_curve){{{t->low, 0}, {low, best}, {high, best}, {t->high, 0}}, 4};
}

static double beyond(double value, const struct ts_range *r)
{
	if (value < r->low)
		return value - r->low;
	return value > r->high ? value - r->high : 0;
}

static double share_outside(const struct ts_span *s, const struct ts_range *r)
{
	double inside = fmin(s->high, r->high) - fmax(s->low, r->low);

	if (!(s->high > s->low))
		return beyond(s->value, r) != 0;
	return 1 - fmax(0, inside) / (s->high - s->low);
}

/* The end of an exposure that suits least; of two alike the one farther beyond the limits. */
static double worst_end(const struct ts_span *s, const struct ts_curve *curve,
	const struct ts_range *limits, const struct ts_range *tolerated)
{
	double better = ts_curve_at(curve, s->low) - ts_curve_at(curve, s->high);

	if (better == 0)
		better = fabs(beyond(s->high, limits)) - fabs(beyond(s->low, limits));
	if (better == 0)
		better = fabs(beyond(s->high, tolerated)) - fabs(beyond(s->low, tolerated));
	return better < 0 ? s->low : s->high;
}

/*
 * KH by kind of water is no animal's own figure: inside its tolerated band it holds no `suits`
 * back, outside it never excludes, but for the animals of lakes and hard water on the low side.
 */
static enum ts_verdict home_kh_verdict(
	const struct ts_species *s, const struct ts_span *kh, const struct ts_parameter_fit *f)
{
	double below = home_kh[s->home_water].excludes_below;
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

static enum ts_verdict band_verdict(const struct ts_parameter_fit *f, enum ts_parameter p,
	const struct ts_range *limits, const struct ts_span *s, const double *practice)
{
	double miss = fabs(beyond(f->reading, limits));
	double doubt = limit_doubt(p, f->source[0], practice);
	double share = s->exposure ? miss > 0 : share_outside(s, limits);

	if ((s->exposure ? share : share_beyond(s, limits)) >= practice[TS_P_SHARE_EXCLUDES] &&
		miss > doubt)
		return TS_EXCLUDED;
	if (share > practice[TS_P_SHARE_UNSURE])
		return TS_UNSURE;
	/* A figure outside is no yes, however wide its doubt; a kit's counts up to the drop. */
	if (miss > 0 && !s->exposure && s->value < s->high)
		return TS_UNSURE;
	if (beyond(s->exposure ? s->low : f->reading, &f->preferred) == 0 &&
		beyond(s->exposure ? s->high : f->reading, &f->preferred) == 0 &&
		!isnan(f->preferred.low))
		return TS_SUITS;
	return TS_TOLERATES;
}

static void fit_parameter(struct ts_parameter_fit *f, const struct ts_species *species,
	enum ts_parameter p, const struct ts_profile *profile, const struct ts_keeping *k,
	const double *practice)
{
	const struct ts_span *s = &profile->at[p];
	struct ts_range slack;
	struct ts_curve curve;

	choose_band(f, species, p, k, practice);
	f->reading = f->suitability = (double)NAN;
	f->known = s->given && !isnan(f->tolerated.low);
	f->verdict = TS_TOLERATES;
	if (!f->known)
		return;
	slack = p == TS_PH ? ph_slack(species, &f->tolerated, k, practice) : f->tolerated;
	curve = curve_of(f, p == TS_PH ? &slack : NULL);
	f->reading = s->exposure ? worst_end(s, &curve, &slack, &f->tolerated) : s->value;
	f->suitability = s->exposure
				 ? fmin(ts_curve_at(&curve, s->low), ts_curve_at(&curve, s->high))
				 : fmin(ts_curve_mean(&curve, s->low, s->high), 1);
	if (p == TS_PH && beyond(f->reading, &slack) != 0)
		f->suitability = fmin(f->suitability, 0.25);
	f->outside_by = beyond(f->reading, &f->tolerated);
	f->uncomfortable_by =
		isnan(f->preferred.low) ? f->outside_by : beyond(f->reading, &f->preferred);
	f->share = s->exposure ? f->outside_by != 0 : share_outside(s, &f->tolerated);
	f->verdict = band_verdict(f, p, &slack, s, practice);
	if (f->source[0] == by_kind_of_water && f->verdict != TS_SUITS)
		f->verdict = home_kh_verdict(species, s, f);
}

/* A lone limit from memory excludes only when it is missed by twice its doubt. */
static bool lone_memory(const struct ts_match *m, const double *practice)
{
	const struct ts_parameter_fit *only = NULL;
	int p_only = 0;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (!m->at[p].known || m->at[p].verdict != TS_EXCLUDED)
			continue;
		if (only)
			return false;
		only = &m->at[p];
		p_only = p;
	}
	return only && strcmp(only->source[0], "memory") == 0 &&
	       fabs(only->outside_by) <
		       practice[TS_P_MEMORY_MISS] *
			       limit_doubt((enum ts_parameter)p_only, "memory", practice);
}

/* Copper: invertebrates from less than fish; a reading that cannot rule it out is no yes. */
static enum ts_verdict copper_verdict(
	struct ts_match *m, const struct ts_poisons *poisons, const double *practice)
{
	bool fish = m->species->kind == 0;
	double borne = practice[fish ? TS_P_COPPER_FISH : TS_P_COPPER_INVERTEBRATES];

	m->copper_borne_mg_l = (double)NAN;
	if (isnan(poisons->copper_mg_l) || poisons->copper_mg_l < borne)
		return TS_SUITS;
	m->copper_borne_mg_l = borne;
	return !fish && poisons->copper_low_mg_l >= borne ? TS_EXCLUDED : TS_UNSURE;
}

double ts_match_oxygen_borne_mg_l(
	const struct ts_species *species, const struct ts_practice *practice)
{
	static const char *const labyrinth[] = {"Anabantidae", "Helostomatidae", "Osphronemidae"};
	double borne = practice->value[TS_P_OXYGEN_CONCERN];

	for (size_t i = 0; species->family && i < sizeof labyrinth / sizeof *labyrinth; i++) {
		if (strcmp(species->family, labyrinth[i]) == 0)
			borne -= practice->value[TS_P_OXYGEN_LABYRINTH];
	}
	return borne;
}

/* Too little oxygen: airing mends it, so it excludes nobody, and lets nobody in either. */
static bool starved(
	struct ts_match *m, const struct ts_poisons *poisons, const struct ts_practice *practice)
{
	double borne = ts_match_oxygen_borne_mg_l(m->species, practice);

	m->oxygen_borne_mg_l = poisons->oxygen_mg_l < borne ? borne : (double)NAN;
	return poisons->oxygen_mg_l < borne;
}

/* A poison never betters a verdict: the worse of the two counts. */
static void count_poisons(
	struct ts_match *m, const struct ts_poisons *poisons, const struct ts_practice *practice)
{
	enum ts_verdict copper = copper_verdict(m, poisons, practice->value);
	bool filter = poisons->found & (TS_POISON_AMMONIA | TS_POISON_NITRITE);
	bool little_oxygen = starved(m, poisons, practice);

	if (copper > m->verdict)
		m->verdict = copper;
	if ((filter || little_oxygen) && m->verdict < TS_UNSURE)
		m->verdict = TS_UNSURE;
}

static enum ts_verdict whole_verdict(
	const struct ts_match *m, const struct ts_profile *profile, const double *practice)
{
	enum ts_verdict worst = TS_SUITS;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (m->at[p].known && m->at[p].verdict > worst)
			worst = m->at[p].verdict;
	}
	if (profile->unusual & TS_UNUSUAL_SOFTENED)
		return TS_UNSURE;
	if (worst == TS_EXCLUDED)
		return lone_memory(m, practice) ? TS_UNSURE : TS_EXCLUDED;
	if (m->gh_missing)
		return TS_UNSURE;
	if (!m->at[TS_TEMPERATURE].known && worst == TS_SUITS)
		return TS_TOLERATES;
	return worst;
}

/* Axes of the fit: temperature, minerals, reaction (the lesser of KH and pH). */
static void whole_fit(struct ts_match *m, const double *practice)
{
	const struct ts_parameter_fit *at = m->at;
	double suitability[3] = {1, 1, 1}, weight[3] = {0, 0, 0}, limited[3];
	size_t limits = 0;

	if (at[TS_TEMPERATURE].known) {
		weight[0] = practice[TS_P_WEIGHT_TEMP];
		limited[limits++] = suitability[0] = at[TS_TEMPERATURE].suitability;
	}
	if (at[TS_GH].known) {
		weight[1] = practice[TS_P_WEIGHT_MINERALS];
		limited[limits++] = suitability[1] = at[TS_GH].suitability;
	}
	if (at[TS_KH].known) {
		weight[2] = practice[TS_P_WEIGHT_KH];
		if (at[TS_KH].source[0] == by_kind_of_water)
			weight[2] *= practice[TS_P_WEIGHT_HOME_KH];
		else
			limited[limits++] = at[TS_KH].suitability;
		suitability[2] = at[TS_KH].suitability;
	}
	if (at[TS_PH].known) {
		weight[2] += practice[TS_P_WEIGHT_PH];
		suitability[2] = fmin(suitability[2], at[TS_PH].suitability);
	}
	m->fit = limits ? ts_fit_combine(suitability, weight, 3, limited, limits,
				  practice[TS_P_LIMIT_FULL], practice[TS_P_LIMIT_SPAN])
			: (double)NAN;
}

/* Weight of one parameter in the fit. */
static double weight_of(const struct ts_parameter_fit *f, int p, const double *practice)
{
	switch (p) {
	case TS_TEMPERATURE:
		return practice[TS_P_WEIGHT_TEMP];
	case TS_KH:
		return practice[TS_P_WEIGHT_KH] *
		       (f->source[0] == by_kind_of_water ? practice[TS_P_WEIGHT_HOME_KH] : 1);
	case TS_PH:
		return practice[TS_P_WEIGHT_PH];
	default:
		return practice[TS_P_WEIGHT_MINERALS];
	}
}

/* What decides: the worst verdict first, then the largest weighted loss. */
static int limiting(const struct ts_match *m, const double *practice)
{
	int best = -1;
	double most = 0;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];
		double loss;

		if (!f->known || f->uncomfortable_by == 0)
			continue;
		loss = weight_of(f, p, practice) * (1 - f->suitability);
		/* pH is the result: where minerals exclude as well, they are named. */
		if (p == TS_PH && f->verdict == TS_EXCLUDED)
			loss = 0;
		if (best < 0 || f->verdict > m->at[best].verdict ||
			(f->verdict == m->at[best].verdict && loss > most)) {
			best = p;
			most = loss;
		}
	}
	return best;
}

void ts_match_species(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const struct ts_practice *practice, struct ts_match *ret)
{
	struct ts_practice own;
	struct ts_match m = {.species = species, .gh_missing = !profile->at[TS_GH].given};

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		fit_parameter(
			&m.at[p], species, (enum ts_parameter)p, profile, keeping, practice->value);
	m.verdict = whole_verdict(&m, profile, practice->value);
	count_poisons(&m, &profile->poisons, practice);
	whole_fit(&m, practice->value);
	m.limiting = limiting(&m, practice->value);
	*ret = m;
}

static int compare_matches(const void *a, const void *b)
{
	const struct ts_match *x = a, *y = b;
	double fit_x = isnan(x->fit) ? -1 : ts_number_quantised(x->fit);
	double fit_y = isnan(y->fit) ? -1 : ts_number_quantised(y->fit);
	bool advised_x = ts_match_advised_unasked(x->species);
	int by_name;

	if (x->verdict != y->verdict)
		return x->verdict < y->verdict ? -1 : 1;
	if (fit_x != fit_y)
		return fit_x > fit_y ? -1 : 1;
	if (advised_x != ts_match_advised_unasked(y->species))
		return advised_x ? -1 : 1;
	by_name = strcmp(x->species->species, y->species->species);
	return by_name ? by_name
		       : strcmp(x->species->form ? x->species->form : "",
				 y->species->form ? y->species->form : "");
}

void ts_match_sort(struct ts_match *matches, size_t count)
{
	if (count > 1)
		qsort(matches, count, sizeof *matches, compare_matches);
}

int ts_match_near_miss(const struct ts_match *m)
{
	static const double near_by[TS_PARAMETER__COUNT] = {
		[TS_GH] = 4, [TS_KH] = 3, [TS_PH] = 0.7, [TS_TEMPERATURE] = 2.5, [TS_SALINITY] = 1};
	int only = -1;

	if (m->verdict != TS_EXCLUDED)
		return -1;
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (!m->at[p].known || m->at[p].verdict != TS_EXCLUDED)
			continue;
		if (only >= 0)
			return -1;
		only = p;
	}
	return only >= 0 && fabs(m->at[only].outside_by) <= near_by[only] ? only : -1;
}

double ts_match_tank_length_cm(const struct ts_species *species)
{
	static const double factor[] = {6, 4, 8, 12}; /* ordinary sitter active fast */
	double length = species->adult_length_cm;
	double tank = length * factor[species->needs.activity];

	if (species->needs.tank_length_cm > 0)
		return species->needs.tank_length_cm;
	if (species->group.least >= 5)
		tank = fmax(tank, length > 4 ? 80 : length >= 2.5 ? 60 : 45);
	return ceil(tank / 5) * 5;
}

double ts_match_tank_volume_l(const struct ts_species *species)
{
	double length = ts_match_tank_length_cm(species);
	double width = fmax(fmin(length / 2, 50), 2 * species->adult_length_cm);
	double height = fmin(length / 2, 50);

	return ceil(length * width * height / 1000 / 5) * 5;
}
