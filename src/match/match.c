/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One species against one profile: its parameters one by one (parameter.c), then the whole:
 * verdict, fit, what decides, and how the species are sorted.
 */
#include <tapshoal/match.h>

#include <float.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "match/bands.h"
#include "match/order.h"
#include "match/parameter.h"
#include "match/suitability.h"
#include "model/practice.h"

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
			       ts_band_doubt((enum ts_parameter)p_only, "memory", practice);
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

/* From here on an upper end says that there is none (match/bands.c closes open ones so). */
#define NO_LIMIT 100

/* Too little oxygen: airing mends it, so it excludes nobody, and lets nobody in either. */
static bool starved(
	struct ts_match *m, const struct ts_poisons *poisons, const struct ts_practice *practice)
{
	double borne;

	m->oxygen_borne_mg_l = (double)NAN;
	if (isnan(poisons->oxygen_mg_l))
		return false;
	borne = ts_match_oxygen_borne_mg_l(m->species, practice);
	if (poisons->oxygen_mg_l < borne)
		m->oxygen_borne_mg_l = borne;
	return poisons->oxygen_mg_l < borne;
}

/* A poison never betters a verdict: the worse of the two counts. */
static void count_poisons(
	struct ts_match *m, const struct ts_poisons *poisons, const struct ts_practice *practice)
{
	enum ts_verdict copper = copper_verdict(m, poisons, practice->value);
	bool filter = poisons->found & (TS_POISON_AMMONIA | TS_POISON_NITRITE);
	bool little_oxygen = starved(m, poisons, practice);

	m->nitrate_borne_mg_l = poisons->no3_mg_l >= practice->value[TS_P_NITRATE_CONFLICT]
					? practice->value[TS_P_NITRATE_CONFLICT]
					: (double)NAN;
	if (copper > m->verdict)
		m->verdict = copper;
	if ((filter || little_oxygen || !isnan(m->nitrate_borne_mg_l)) && m->verdict < TS_UNSURE)
		m->verdict = TS_UNSURE;
}

/* pH by itself takes no comfort away; pH that was read and KH together, to the same side, do. */
static bool reaction_off(const struct ts_match *m, const struct ts_profile *profile)
{
	const struct ts_parameter_fit *ph = &m->at[TS_PH], *kh = &m->at[TS_KH];

	return ph->known && profile->at[TS_PH].from != TS_FROM_RESULT &&
	       (kh->assumed ? ph->uncomfortable_by != 0
			    : kh->known && ph->uncomfortable_by * kh->uncomfortable_by > 0);
}

static enum ts_verdict whole_verdict(
	const struct ts_match *m, const struct ts_profile *profile, const double *practice)
{
	enum ts_verdict worst = TS_SUITS;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];

		/* What is assumed asks where it decides, and takes no comfort away. */
		if ((f->known || (f->assumed && f->verdict > TS_TOLERATES)) && f->verdict > worst)
			worst = f->verdict;
	}
	/* Other minerals change neither warmth nor salt. */
	if (profile->unusual & TS_UNUSUAL__NOBODY_YET)
		return (m->at[TS_TEMPERATURE].known &&
			       m->at[TS_TEMPERATURE].verdict == TS_EXCLUDED) ||
				       m->at[TS_SALINITY].verdict == TS_EXCLUDED
			       ? TS_EXCLUDED
			       : TS_UNSURE;
	if (worst == TS_SUITS && reaction_off(m, profile))
		worst = TS_TOLERATES;
	if (worst == TS_EXCLUDED)
		return lone_memory(m, practice) ? TS_UNSURE : TS_EXCLUDED;
	return m->gh_missing ? TS_UNSURE : worst;
}

/*
 * Axes of the fit: temperature, minerals, reaction (the lesser of KH and pH). `by_doubt`: by the
 * means over doubts, else by their worse ends.
 */
static double fit_of(const struct ts_match *m, bool by_doubt, const double *practice)
{
	const struct ts_parameter_fit *at = m->at;
	double suitability[3] = {1, 1, 1}, weight[3] = {0, 0, 0}, limited[3];
	double each[TS_PARAMETER__COUNT];
	size_t limits = 0;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++)
		each[p] = by_doubt ? at[p].order : at[p].suitability;
	if (at[TS_TEMPERATURE].known) {
		weight[0] = practice[TS_P_WEIGHT_TEMP];
		limited[limits++] = suitability[0] = each[TS_TEMPERATURE];
	}
	if (at[TS_GH].known) {
		weight[1] = practice[TS_P_WEIGHT_MINERALS];
		limited[limits++] = suitability[1] = each[TS_GH];
	}
	if (at[TS_KH].known) {
		weight[2] = practice[TS_P_WEIGHT_KH];
		if (at[TS_KH].source[0] == ts_by_kind_of_water)
			weight[2] *= practice[TS_P_WEIGHT_HOME_KH];
		else
			limited[limits++] = each[TS_KH];
		suitability[2] = each[TS_KH];
	}
	if (at[TS_PH].known) {
		weight[2] += practice[TS_P_WEIGHT_PH];
		suitability[2] = ts_min(suitability[2], each[TS_PH]);
	}
	return limits ? ts_fit_combine(suitability, weight, 3, limited, limits,
				practice[TS_P_LIMIT_FULL], practice[TS_P_LIMIT_SPAN])
		      : (double)NAN;
}

/* What was not read never makes a fit better: without GH, KH or temperature there is none. */
static void whole_fit(struct ts_match *m, const struct ts_profile *profile, const double *practice)
{
	bool whole = true;

	for (int p = TS_GH; p <= TS_TEMPERATURE; p++)
		whole &= profile->at[p].given || isnan(m->at[p].tolerated.low);
	m->order = fit_of(m, true, practice);
	m->fit = whole ? fit_of(m, false, practice) : (double)NAN;
}

/* Weight of one parameter in the fit. */
static double weight_of(const struct ts_parameter_fit *f, int p, const double *practice)
{
	switch (p) {
	case TS_TEMPERATURE:
		return practice[TS_P_WEIGHT_TEMP];
	case TS_KH:
		return practice[TS_P_WEIGHT_KH] *
		       (f->source[0] == ts_by_kind_of_water ? practice[TS_P_WEIGHT_HOME_KH] : 1);
	case TS_PH:
		return practice[TS_P_WEIGHT_PH];
	default:
		return practice[TS_P_WEIGHT_MINERALS];
	}
}

/* What decides: the worst verdict first, then the largest weighted loss. */
static int limiting(
	const struct ts_match *m, const struct ts_profile *profile, const double *practice)
{
	int best = -1;
	double most = 0;

	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];
		double loss;

		if (!f->known || f->uncomfortable_by == 0 || (p == TS_PH && f->verdict == TS_SUITS))
			continue;
		loss = weight_of(f, p, practice) * (1 - f->suitability);
		/* pH is the result: where minerals decide as well, they are named. */
		if (p == TS_PH &&
			(f->verdict == TS_EXCLUDED || profile->at[TS_PH].from == TS_FROM_RESULT))
			loss = 0;
		if (best < 0 || f->verdict > m->at[best].verdict ||
			(f->verdict == m->at[best].verdict && loss > most)) {
			best = p;
			most = loss;
		}
	}
	return best;
}

/*
 * Half of what a reading is doubted by; where it is exact, or is a range that is lived through,
 * half of what a published limit is.
 */
static double doubt_of(const struct ts_span *s, int p, const double *practice)
{
	double least = ts_band_doubt((enum ts_parameter)p, "", practice);

	return s->exposure ? least : ts_max((s->high - s->low) / 2, least);
}

/*
 * The nearest limit. pH is the result of the minerals, KH by kind of water no figure of the
 * animal's own: neither counts. An end at nothing, or where no fresh water goes, is no limit,
 * nor is too hard what salt makes so.
 */
static void nearest_limit(
	struct ts_match *m, const struct ts_profile *profile, const double *practice)
{
	static const enum ts_parameter counted[] = {TS_GH, TS_KH, TS_TEMPERATURE};

	m->distance = (double)NAN;
	m->nearest = -1;
	for (size_t i = 0; i < sizeof counted / sizeof *counted; i++) {
		int p = (int)counted[i];
		const struct ts_parameter_fit *f = &m->at[p];
		const struct ts_span *s = &profile->at[p];
		bool of_salt = p == TS_GH && f->known &&
			       ts_parameter_gh(m->species, profile, f, practice).high < s->high;
		bool comfort = m->verdict == TS_SUITS && !isnan(f->preferred.low);
		const struct ts_range *r = comfort ? &f->preferred : &f->tolerated;
		double low = s->exposure ? s->low : s->value,
		       high = s->exposure ? s->high : s->value;
		double room = DBL_MAX;

		if (!f->known || f->source[0] == ts_by_kind_of_water)
			continue;
		if (r->low > 0)
			room = low - r->low;
		if (r->high < NO_LIMIT && !of_salt)
			room = ts_min(room, r->high - high);
		if (room == DBL_MAX)
			continue;
		room /= doubt_of(s, p, practice);
		if (m->nearest < 0 || room < m->distance) {
			m->distance = room;
			m->nearest = p;
		}
	}
}

/* No yes for want of KH: by what KH may be, or the pH that would follow from it. */
static bool waits(const struct ts_parameter_fit *f)
{
	return f->verdict == TS_UNSURE && (f->assumed || f->perhaps);
}

void ts_match_species(const struct ts_species *species, const struct ts_profile *profile,
	const struct ts_keeping *keeping, const struct ts_practice *practice, struct ts_match *ret)
{
	struct ts_practice own;

	if (!practice) {
		ts_practice_defaults(&own);
		practice = &own;
	}
	ret->species = species;
	ts_bands_choose(species, keeping, practice->value, ret->at);
	ts_parameters_meet(species, profile, keeping, practice->value, ret->at);
	ret->gh_missing = !profile->at[TS_GH].given;
	ret->kh_missing =
		profile->kh_assumed.given && (waits(&ret->at[TS_KH]) || waits(&ret->at[TS_PH]));
	ret->own_temperature = !profile->at[TS_TEMPERATURE].given;
	ret->verdict = whole_verdict(ret, profile, practice->value);
	count_poisons(ret, &profile->poisons, practice);
	whole_fit(ret, profile, practice->value);
	ret->limiting = limiting(ret, profile, practice->value);
	nearest_limit(ret, profile, practice->value);
}

double ts_match_distance_key(const struct ts_match *m)
{
	return isnan(m->distance) ? -DBL_MAX : ts_number_quantised(m->distance);
}

int ts_match_compare(const struct ts_species *a, double distance_a, const struct ts_species *b,
	double distance_b)
{
	int by_name;

	if (a->sold != b->sold)
		return a->sold < b->sold ? -1 : 1;
	if (distance_a != distance_b)
		return distance_a > distance_b ? -1 : 1;
	by_name = strcmp(a->species, b->species);
	return by_name ? by_name : strcmp(a->form ? a->form : "", b->form ? b->form : "");
}

static int compare_matches(const void *a, const void *b)
{
	const struct ts_match *x = a, *y = b;

	if (x->verdict != y->verdict)
		return x->verdict < y->verdict ? -1 : 1;
	return ts_match_compare(
		x->species, ts_match_distance_key(x), y->species, ts_match_distance_key(y));
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
