/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who is not proposed with whom, though no rule forbids it and a check may be content: what a
 * keeper who knows them would not put together. Common practice, no source.
 */
#include "stock/compose.h"

#include <string.h>

#include "model/practice.h"
#include "stock/rules.h"

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

/* Fish of Malawi, Tanganyika and Victoria, the catfish among them; snails go with everybody. */
static bool of_rift_lake(const struct ts_species *s)
{
	return s->kind == TS_ANIMAL_FISH &&
	       (s->home_water == TS_HOME_MALAWI || s->home_water == TS_HOME_TANGANYIKA ||
		       s->home_water == TS_HOME_VICTORIA);
}

/* Whether `a` has eaten before `b`, which looks at its food first, has begun. */
static bool eats_first(const struct ts_species *a, const struct ts_species *b)
{
	return a->habits & TS_HABIT_QUICK_EATER &&
	       (b->habits & TS_HABIT_SLOW_EATER || (labyrinth(b) && b->to_others != TS_INJURES));
}

static bool both_are(const struct ts_wish *w, unsigned role, const struct ts_species *a,
	const struct ts_species *b)
{
	return w->theme != TS_THEME_LAKE && ts_compose_role(a, w->theme) == role &&
	       ts_compose_role(b, w->theme) == role;
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
	if (w->theme != TS_THEME_LAKE && of_rift_lake(a) != of_rift_lake(b))
		return "animals of the rift lakes are kept among their own";
	if (eats_first(a, b) || eats_first(b, a))
		return "the one has eaten before the other has begun";
	if (both_are(w, TS_ROLE_BOTTOM, a, b))
		return "one group at the bottom is enough";
	if (both_are(w, TS_ROLE_CENTRE, a, b))
		return "one kind to look at is enough";
	if (owns_floor(w, a, b) || owns_floor(w, b, a))
		return "the one takes the whole floor for its brood";
	if (slips_in(w, a, b) || slips_in(w, b, a))
		return "the one is slim enough for the other to swallow it some day";
	return NULL;
}
