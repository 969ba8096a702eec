/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of two species that no fight keeps apart: what water and which habits they cannot
 * share, and young of both. Where neither is to blame, `a` is the one named first. The table that
 * calls them is rules.c.
 */
#include "stock/rules.h"

#include <string.h>

/* Who is named first where both are alike to blame. */
bool ts_rule_first(const struct ts_species *a, const struct ts_species *b)
{
	int by_name = strcmp(a->species, b->species);

	return by_name ? by_name < 0 : strcmp(a->form ? a->form : "", b->form ? b->form : "") < 0;
}

bool ts_rule_same_genus(const struct ts_species *a, const struct ts_species *b)
{
	size_t len = strcspn(a->species, " ");

	return strncmp(a->species, b->species, len) == 0 && b->species[len] == ' ';
}

/* Narrow as two ranges share them; NAN where a record says nothing. */
static double shared(const struct ts_range *a, const struct ts_range *b)
{
	if (isnan(a->low) || isnan(b->low))
		return (double)NAN;
	return fmin(a->high, b->high) - fmax(a->low, b->low);
}

/* Is all of the tank's temperature inside this range? */
static bool inside(const struct ts_measure *tank, const struct ts_range *range)
{
	return tank->low >= range->low && tank->high <= range->high;
}

/* No further beyond it than the limit itself is known. */
static bool nearly(
	const struct ts_measure *tank, const struct ts_range *range, const struct ts_scene *scene)
{
	double doubt = scene->practice[TS_P_DOUBT_TEMP_PRACTICE];
	double middle = tank->kind == TS_MEASURE_VALUE ? tank->value : (double)NAN;
	double low = isnan(middle) ? tank->low : middle, high = isnan(middle) ? tank->high : middle;

	return low >= range->low - doubt && high <= range->high + doubt;
}

/* Fish of cold water and of warm are kept apart by habit, though one degree may do for both. */
static bool of_cold_water(const struct ts_species *a, const struct ts_species *b)
{
	return a->kind == TS_ANIMAL_FISH && b->kind == TS_ANIMAL_FISH &&
	       (a->home_water == TS_HOME_COOL) != (b->home_water == TS_HOME_COOL);
}

/*
 * The temperature at which the tank runs decides, where both live at it: what either would like
 * better is told of it alone, unless their comforts do not meet at all. Else the two ranges decide.
 */
bool ts_rule_temperature_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_envelope *x = &a->species->water.usual.temp_c;
	const struct ts_envelope *y = &b->species->water.usual.temp_c;
	const struct ts_measure *tank = &scene->tank->temp_c;
	double tolerated = shared(&x->tolerated, &y->tolerated);
	double comfortable = shared(&x->preferred, &y->preferred);
	bool ends = tolerated < scene->practice[TS_P_SHARED_TEMP_LEAST];

	if (x->tolerated.high > y->tolerated.high ||
		(x->tolerated.high == y->tolerated.high && !ts_rule_first(a->species, b->species)))
		return false;
	r->ours = ends ? x->tolerated.high : x->preferred.high;
	r->its = ends ? y->tolerated.low : y->preferred.low;
	r->severity = ends ? TS_CONFLICT : TS_CONCERN;
	if (tank->kind != TS_MEASURE_NONE && inside(tank, &x->tolerated) &&
		inside(tank, &y->tolerated) && !of_cold_water(a->species, b->species)) {
		if (nearly(tank, &x->preferred, scene) && nearly(tank, &y->preferred, scene))
			r->severity = TS_NOTE;
		return comfortable < 0 &&
		       (!inside(tank, &x->preferred) || !inside(tank, &y->preferred));
	}
	if (of_cold_water(a->species, b->species) &&
		comfortable < scene->practice[TS_P_SHARED_TEMP] &&
		y->preferred.low >= scene->practice[TS_P_TROPICAL])
		r->severity = TS_CONFLICT;
	r->word = !ends;
	return ends || comfortable < scene->practice[TS_P_SHARED_TEMP];
}

bool ts_rule_gh_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_envelope *x = &a->species->water.usual.gh_dh;
	const struct ts_envelope *y = &b->species->water.usual.gh_dh;
	double width = shared(&x->tolerated, &y->tolerated);
	bool soft = fmin(x->tolerated.high, y->tolerated.high) < 6;
	bool apart = shared(&x->preferred, &y->preferred) < 0;

	if (x->tolerated.high > y->tolerated.high ||
		(x->tolerated.high == y->tolerated.high && !ts_rule_first(a->species, b->species)))
		return false;
	r->severity = width <= 0 ? TS_CONFLICT : TS_CONCERN;
	/* Both can live in it and neither likes it: said with what each likes. */
	r->ours = r->severity == TS_CONCERN && apart ? x->preferred.high : x->tolerated.high;
	r->its = r->severity == TS_CONCERN && apart ? y->preferred.low : y->tolerated.low;
	r->word = r->severity == TS_CONCERN && apart;
	return apart || width < scene->practice[soft ? TS_P_SHARED_GH_SOFT : TS_P_SHARED_GH];
}

/* pH is the result of the minerals: only what no slack bridges is harm. */
bool ts_rule_ph_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_range *x = &a->species->water.usual.ph.tolerated;
	const struct ts_range *y = &b->species->water.usual.ph.tolerated;

	r->ours = x->high;
	r->its = y->low;
	r->severity = y->low - x->high > scene->practice[TS_P_PH_SLACK] ? TS_CONFLICT : TS_CONCERN;
	return x->high < y->low;
}

bool ts_rule_salt_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	struct ts_range fresh = {0, scene->practice[TS_P_SALT_FRESH]};
	const struct ts_range *x = &a->species->water.usual.salinity_g_l.tolerated;
	const struct ts_range *y = &b->species->water.usual.salinity_g_l.tolerated;

	if (isnan(x->low))
		x = &fresh;
	if (isnan(y->low))
		y = &fresh;
	r->ours = x->high;
	r->its = y->low;
	r->severity = TS_CONFLICT;
	return x->high < y->low;
}

bool ts_rule_flow_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	(void)r;
	return a->species->needs.flow == TS_NEEDS_STILL && b->species->needs.flow == TS_NEEDS_BRISK;
}

bool ts_rule_light_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	r->severity = TS_NOTE;
	return a->species->needs.light == TS_NEEDS_SHADE &&
	       b->species->needs.light == TS_NEEDS_BRIGHT;
}

static bool of_family(const struct ts_species *s, const char *const *families)
{
	while (*families && strcmp(s->family, *families) != 0)
		families++;
	return *families;
}

bool ts_rule_names(const struct ts_species *s, const struct ts_species *other)
{
	size_t genus = strcspn(other->species, " ");

	for (size_t i = 0; i < s->crosses_with.count; i++) {
		const char *name = s->crosses_with.items[i];

		if (strcmp(name, other->species) == 0 ||
			(strlen(name) == genus && strncmp(name, other->species, genus) == 0))
			return true;
	}
	return false;
}

/* Can one be a male and the other a female? Of unknown sex there are both from three on. */
static bool both_sexes(const struct ts_group *a, const struct ts_group *b, unsigned either)
{
	bool a_male = a->males || a->either >= either, a_female = a->females || a->either >= either;
	bool b_male = b->males || b->either >= either, b_female = b->females || b->either >= either;

	return (a_male && b_female) || (a_female && b_male);
}

/* What spawns every day of its life. */
static bool rainbowfish(const struct ts_species *s)
{
	static const char *const families[] = {
		"Melanotaeniidae", "Bedotiidae", "Pseudomugilidae", NULL};

	return of_family(s, families);
}

/* What breeds in company without being asked: its mongrels will be there. */
static bool breeds_there(const struct ts_species *s)
{
	return rainbowfish(s) || s->young_month > 0 || s->kind == TS_ANIMAL_SHRIMP ||
	       s->cautions & 1u << TS_CAUTION_BREEDS_UNASKED || s->lakes_apart == TS_LAKES_OWN;
}

/* Times as long from which two livebearers are told apart at a glance: common practice, no source.
 */
#define TOLD_APART 1.6

static bool alike_long(const struct ts_species *x, const struct ts_species *y)
{
	return fmax(x->adult_length_cm, y->adult_length_cm) <
	       TOLD_APART * fmin(x->adult_length_cm, y->adult_length_cm);
}

bool ts_rule_crosses(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_species *x = a->species, *y = b->species;
	bool breeds = breeds_there(x) && breeds_there(y);

	(void)scene;
	if (!ts_rule_first(x, y) || (!ts_rule_names(x, y) && !ts_rule_names(y, x)) ||
		!both_sexes(a, b, 1))
		return false;
	r->severity = both_sexes(a, b, breeds ? 3 : 1000) ? TS_CONCERN : TS_NOTE;
	if (rainbowfish(x) && !ts_rule_same_genus(x, y)) /* few of whose young live */
		r->severity = TS_NOTE;
	/* Of two that nobody takes for each other the mongrels are seen, and nobody is harmed. */
	if (x->young_month > 0 && y->young_month > 0 && !alike_long(x, y))
		r->severity = TS_NOTE;
	return true;
}

/* Home of a lake's animal; by custom some others are kept there. */
bool ts_rule_lake_apart(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_species *x = a->species, *y = b->species;
	bool rough = x->to_others != TS_IGNORES || y->to_others != TS_IGNORES;

	(void)scene;
	if (x->lakes_apart != TS_LAKES_OWN || y->lakes_apart == TS_LAKES_BY_CUSTOM ||
		y->kind == TS_ANIMAL_SNAIL || x->home_water == y->home_water)
		return false;
	if (y->lakes_apart == TS_LAKES_OWN && !ts_rule_first(x, y))
		return false;
	r->severity = rough ? TS_CONFLICT : TS_CONCERN;
	return true;
}

static bool labyrinth(const struct ts_species *s)
{
	static const char *const families[] = {
		"Osphronemidae", "Helostomatidae", "Anabantidae", NULL};

	return of_family(s, families);
}

/* Each holds a corner of the surface; a lone male fights all of them, in any room. */
bool ts_rule_labyrinth(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_species *x = a->species, *y = b->species;
	bool lone = x->group.sexes == TS_SEXES_ALONE || y->group.sexes == TS_SEXES_ALONE;

	if (!ts_rule_first(x, y) || !labyrinth(x) || !labyrinth(y))
		return false;
	r->ours = scene->box_l;
	r->its = scene->practice[TS_P_LABYRINTH_ROOM];
	r->severity = lone ? TS_CONFLICT : r->ours < r->its ? TS_CONCERN : TS_NOTE;
	return lone || !(r->ours >= r->its);
}
