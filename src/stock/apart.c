/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who is not proposed with whom, though no rule forbids it and a check may be content: what a
 * keeper who knows them would not put together. Common practice, no source.
 */
#include "stock/compose.h"

#include <string.h>

#include "model/practice.h"
#include "stock/rules.h"

/* A fish so many times as long as a shrimp takes its young. */
#define YOUNG_TAKEN 1.3
/* A breeding pair on the bottom leaves others room from here on; common practice, no source. */
#define FLOOR_FOR_TWO_CM 150
static bool labyrinth(const struct ts_species *s)
{
	static const char *const families[] = {
		"Osphronemidae", "Anabantidae", "Helostomatidae", NULL};

	for (size_t i = 0; families[i]; i++) {
		if (strcmp(s->family, families[i]) == 0)
			return true;
	}
	return false;
}

/* Whether one of the texts is this species, or its genus. */
static bool names(const struct ts_texts *list, const struct ts_species *s)
{
	for (size_t i = 0; i < list->count; i++) {
		size_t len = strlen(list->items[i]);

		if (strncmp(list->items[i], s->species, len) == 0 &&
			(s->species[len] == ' ' || !s->species[len]))
			return true;
	}
	return false;
}

/*
 * The depth of body, as a share of its own length, below which such a fish is food to it some day.
 * What is long as an eel does not go into a small mouth, however slim it is.
 */
static double swallows(
	const struct ts_wish *w, const struct ts_species *s, const struct ts_species *prey)
{
	const double *p = w->practice->value;

	if (s->hunts == TS_HUNTS_FISH)
		return p[TS_P_PROPOSE_SLENDER];
	if (s->hunts != TS_HUNTS_INVERTEBRATES ||
		(s->gape == TS_GAPE_NIBBLER && prey->body == TS_BODY_EEL))
		return 0;
	return p[s->gape == TS_GAPE_NIBBLER ? TS_P_PROPOSE_SLENDER_NIBBLER : TS_P_PROPOSE_SLENDER];
}

/* One slim enough that a mouth takes it some day, whatever the rule for grown ones says. */
static bool slips_in(
	const struct ts_wish *w, const struct ts_species *by, const struct ts_species *s)
{
	double deep_cm = s->adult_length_cm * w->practice->value[TS_P_DEPTH_FUSIFORM + s->body];

	return by->kind == TS_ANIMAL_FISH && s->kind == TS_ANIMAL_FISH &&
	       deep_cm < swallows(w, by, s) * by->adult_length_cm;
}

/*
 * What is bought as a settled pair is grown, and takes what goes into its mouth at the length at
 * which shops sell it, deep bodies too: young ones are not deep yet.
 */
static bool swallows_as_sold(
	const struct ts_wish *w, const struct ts_species *by, const struct ts_species *s)
{
	const double *p = w->practice->value;
	double sold_cm = fmin(p[TS_P_PREY_SOLD] * s->adult_length_cm, p[TS_P_PREY_SOLD_MOST]);

	return by->group.pair && by->hunts == TS_HUNTS_FISH && s->kind == TS_ANIMAL_FISH &&
	       sold_cm < p[TS_P_PREY_NIBBLER + by->gape] * by->adult_length_cm;
}

bool ts_compose_of_rift_lake(const struct ts_species *s)
{
	return s->kind == TS_ANIMAL_FISH &&
	       (s->home_water == TS_HOME_MALAWI || s->home_water == TS_HOME_TANGANYIKA ||
		       s->home_water == TS_HOME_VICTORIA);
}

/* Whether `a` has eaten before `b`, which looks at its food first, has begun. */
static bool eats_first(
	const struct ts_wish *w, const struct ts_species *a, const struct ts_species *b)
{
	bool quick = a->habits & TS_HABIT_QUICK_EATER || a->needs.activity == TS_PACE_FAST;

	/* One that looks long at frozen food, or picks at fine food, gets none beside a lively one
	 * of its layers. */
	if (a->needs.activity == TS_PACE_ACTIVE && a->swims != TS_SWIMS_BOTTOM &&
		((b->feeding == TS_FED_FROZEN &&
			 (b->habits & TS_HABIT_SLOW_EATER || labyrinth(b))) ||
			(b->feeding == TS_FED_FINE && b->swims != TS_SWIMS_BOTTOM &&
				a->adult_length_cm >= w->practice->value[TS_P_PROPOSE_SLOWER] *
							      b->adult_length_cm)))
		return true;
	return quick &&
	       (b->habits & TS_HABIT_SLOW_EATER || (labyrinth(b) && b->to_others != TS_INJURES));
}

/* Rushing fish pull at the tails of small ones whose fins trail. */
static bool tugs(const struct ts_species *a, const struct ts_species *b)
{
	return a->needs.activity == TS_PACE_FAST && b->fins &&
	       b->adult_length_cm < 2 * a->adult_length_cm;
}

/*
 * Whose young, and whatever is half grown, the other takes; adults hold on among plants only. What
 * only grazes or picks at growth lets them be, and so does what is hardly larger.
 */
static bool takes_young(const struct ts_species *a, const struct ts_species *b)
{
	return b->kind == TS_ANIMAL_SHRIMP && a->kind == TS_ANIMAL_FISH &&
	       a->hunts != TS_HUNTS_GRAZER && a->adult_length_cm > YOUNG_TAKEN * b->adult_length_cm;
}

/* Fish of different lakes: water and temper of each are its own. */
static bool of_two_lakes(const struct ts_species *a, const struct ts_species *b)
{
	return ts_compose_of_rift_lake(a) && ts_compose_of_rift_lake(b) &&
	       a->home_water != b->home_water;
}

/* Rough grazers of the rocks beside cichlids of the open water of the same lake. */
static bool of_rocks_and_open_water(const struct ts_species *a, const struct ts_species *b)
{
	return a->home_water == TS_HOME_MALAWI && b->home_water == TS_HOME_MALAWI &&
	       a->kind == TS_ANIMAL_FISH && b->kind == TS_ANIMAL_FISH &&
	       ts_compose_of_the_rocks(a) != ts_compose_of_the_rocks(b);
}

/* One that is kept for itself is looked at, and wants no other that is. */
static bool for_itself(
	const struct ts_wish *w, const struct ts_species *a, const struct ts_species *b)
{
	return a->group.sexes == TS_SEXES_ALONE && a->to_own_kind == TS_INJURES &&
	       ts_compose_role(b, w->theme) == TS_ROLE_CENTRE;
}

static bool both_are(const struct ts_wish *w, unsigned role, const struct ts_species *a,
	const struct ts_species *b)
{
	return w->theme != TS_THEME_LAKE && ts_compose_role(a, w->theme) == role &&
	       ts_compose_role(b, w->theme) == role;
}

/* Two shoals of a short tank leave neither the room to be one. */
static bool one_shoal(
	const struct ts_wish *w, const struct ts_species *a, const struct ts_species *b)
{
	return w->theme != TS_THEME_SHRIMPS && both_are(w, TS_ROLE_SHOAL, a, b) &&
	       w->tank->length_cm < w->practice->value[TS_P_PROPOSE_FEW_BELOW];
}

/* Who breeds in a cave owns the floor of a short tank. */
static bool owns_floor(
	const struct ts_wish *w, const struct ts_species *a, const struct ts_species *b)
{
	return w->tank->length_cm < FLOOR_FOR_TWO_CM && w->theme != TS_THEME_LAKE &&
	       a->temper & TS_TEMPER_BOTTOM && a->territory.floor_m2 > 0 &&
	       ts_compose_of_the_bottom(b);
}

const char *ts_compose_apart(
	const struct ts_wish *w, const struct ts_species *a, const struct ts_species *b)
{
	if (names(&a->crosses_with, b) || names(&b->crosses_with, a))
		return "they cross, and the young are mongrels";
	if (labyrinth(a) && labyrinth(b))
		return "two kinds of labyrinth fish take each other for rivals";
	if (a->kind != TS_ANIMAL_FISH && b->kind != TS_ANIMAL_FISH &&
		(a->kind == TS_ANIMAL_SNAIL) == (b->kind == TS_ANIMAL_SNAIL))
		return "one kind of snail and one of shrimp is enough";
	if (w->theme != TS_THEME_LAKE && ts_compose_of_rift_lake(a) != ts_compose_of_rift_lake(b))
		return "animals of the rift lakes are kept among their own";
	if (of_two_lakes(a, b))
		return "they are of different lakes";
	if (of_rocks_and_open_water(a, b))
		return "cichlids of the rocks press those of open water";
	if (takes_young(a, b) || takes_young(b, a))
		return "of shrimps the young, and whatever is half grown, would be eaten";
	if (tugs(a, b) || tugs(b, a))
		return "the one rushes about and pulls at trailing fins";
	if (eats_first(w, a, b) || eats_first(w, b, a))
		return "the one has eaten before the other has begun";
	if (both_are(w, TS_ROLE_BOTTOM, a, b))
		return "one group at the bottom is enough";
	if (both_are(w, TS_ROLE_CENTRE, a, b) || for_itself(w, a, b) || for_itself(w, b, a))
		return "one kind to look at is enough";
	if (owns_floor(w, a, b) || owns_floor(w, b, a))
		return "the one takes the whole floor for its brood";
	if (one_shoal(w, a, b))
		return "one shoal is enough in so short a tank";
	if (swallows_as_sold(w, a, b) || swallows_as_sold(w, b, a))
		return "the one is sold small enough for a grown pair of the other to swallow it";
	if (slips_in(w, a, b) || slips_in(w, b, a))
		return "the one is slim enough for the other to swallow it some day";
	return NULL;
}
