/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of two species in one tank. Each asks whether `a` suffers from `b`; where neither is to
 * blame, `a` is the one named first. The table that calls them is rules.c.
 */
#include "stock/rules.h"

#include <string.h>

/* How many times as long a relative may be to be a rival: estimate from memory. */
#define RIVAL_SIZES 1.8

static double depth_share(const struct ts_species *s, const double *practice)
{
	return practice[TS_P_DEPTH_FUSIFORM + s->body];
}

/*
 * The length of a slender fish of the same depth: what counts before a mouth. Who is no predator
 * takes in passing what is small, and leaves what is long; erect spines make any prey deeper.
 */
static double slender_cm(
	const struct ts_species *s, double length_cm, const struct ts_species *by, const double *p)
{
	double depth = depth_share(s, p);

	if (s->kind != TS_ANIMAL_FISH)
		return length_cm;
	if (by->gape < TS_GAPE_PREDATOR)
		depth = fmax(depth, p[TS_P_DEPTH_FUSIFORM]);
	if (s->habits & TS_HABIT_SPINY && by->gape < TS_GAPE_ENGULFER)
		depth *= p[TS_P_PREY_SPINY];
	return length_cm * depth / p[TS_P_DEPTH_FUSIFORM];
}

/* An eel-like hunter has a small head for its length. */
static double mouth_cm(const struct ts_species *s, const double *p)
{
	double share = s->body == TS_BODY_EEL ? p[TS_P_PREY_BY_EEL] : 1;

	return share * s->adult_length_cm * p[TS_P_PREY_NIBBLER + s->gape];
}

static double sold_cm(const struct ts_group *a, const double *practice)
{
	if (a->size_cm > 0)
		return fmin(a->size_cm, a->species->adult_length_cm);
	return fmin(practice[TS_P_PREY_SOLD] * a->species->adult_length_cm,
		practice[TS_P_PREY_SOLD_MOST]);
}

/* Who swallows whom, whatever the mouth: grown fish only those that hunt fish. */
static bool hunts(const struct ts_species *b, const struct ts_species *prey)
{
	return b->hunts >= (prey->kind == TS_ANIMAL_FISH ? TS_HUNTS_FISH : TS_HUNTS_INVERTEBRATES);
}

/*
 * Grown prey that fits is harmed; that nearly fits, or fits a predator as it is sold: a concern,
 * since it may be bought grown. Others are young themselves when both are sold: a note.
 */
bool ts_rule_eaten(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	const double *p = scene->practice;
	double grown = slender_cm(a->species, a->species->adult_length_cm, b->species, p);
	double sold = slender_cm(a->species, sold_cm(a, p), b->species, p);
	double mouth = mouth_cm(b->species, p);

	if (a->species->kind == TS_ANIMAL_SNAIL || b->species->kind == TS_ANIMAL_SNAIL ||
		!hunts(b->species, a->species) || mouth < sold * p[TS_P_PREY_CONCERN])
		return false;
	r->ours = sold_cm(a, p);
	r->its = mouth / slender_cm(a->species, 1, b->species, p);
	if (mouth >= sold && mouth >= grown * p[TS_P_PREY_CONCERN])
		r->severity = TS_CONFLICT;
	else if (mouth < grown * p[TS_P_PREY_TIGHT] &&
		 (b->species->gape < TS_GAPE_PREDATOR ||
			 a->species->lakes_apart == TS_LAKES_BY_CUSTOM))
		r->severity = TS_NOTE;
	return true;
}

/* At night even what only nearly fits is taken in its sleep. */
bool ts_rule_night_hunter(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const double *p = scene->practice;

	r->ours = slender_cm(a->species, a->species->adult_length_cm, b->species, p);
	r->its = mouth_cm(b->species, p);
	r->severity = TS_CONFLICT;
	return a->species->kind != TS_ANIMAL_SNAIL && hunts(b->species, a->species) &&
	       b->species->habits & TS_HABIT_NOCTURNAL &&
	       !(a->species->habits & TS_HABIT_NOCTURNAL) && b->species->gape >= TS_GAPE_WIDE &&
	       r->its >= r->ours * p[TS_P_PREY_CONCERN] * p[TS_P_PREY_CONCERN] && r->its < r->ours;
}

/* Times the shrimp's length from which some take grown ones: common practice, no source. */
#define TAKES_GROWN 1.5

/*
 * Small fish that eat shrimps take the young ones only; larger ones are a gamble; who cracks snails
 * cracks grown shrimps.
 */
bool ts_rule_shrimps_eaten(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	r->ours = a->species->adult_length_cm;
	r->its = b->species->adult_length_cm;
	r->word = r->its >= TAKES_GROWN * r->ours;
	r->severity = r->its >= 3 * r->ours || b->species->preys_on & TS_PREYS_SNAILS ? TS_CONFLICT
		      : r->word                                                       ? TS_CONCERN
										      : TS_NOTE;
	return a->species->kind == TS_ANIMAL_SHRIMP && b->species->preys_on & TS_PREYS_SHRIMPS;
}

bool ts_rule_snails_eaten(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	r->severity = TS_CONFLICT;
	return a->species->kind == TS_ANIMAL_SNAIL && b->species->preys_on & TS_PREYS_SNAILS;
}

bool ts_rule_electric(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	(void)a;
	r->severity = TS_CONFLICT;
	return b->species->cautions & 1u << TS_CAUTION_ELECTRIC;
}

/* Too few nippers nip twice as much: one step graver. */
bool ts_rule_fin_nipper(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	bool few = ts_group_count(b) < b->species->group.least;
	int step = b->species->nips - 1 + (few ? 1 : 0);

	(void)scene;
	if (b->species->nips == TS_NIPS_NO || a->species->kind != TS_ANIMAL_FISH)
		return false;
	if (!a->species->fins) /* short fins: only a troop of too few is a worry */
		step -= 2;
	r->ours = ts_group_count(b);
	r->its = b->species->group.least;
	r->severity = step >= 1 ? TS_CONFLICT : TS_CONCERN;
	return step >= 0;
}

static bool both_rough(const struct ts_species *a, const struct ts_species *b)
{
	return a->to_others != TS_IGNORES && a->home_water == b->home_water &&
	       a->adult_length_cm >= 0.6 * b->adult_length_cm;
}

/* Crowded cichlids of one lake live on one floor, each as rough as the other. */
static bool crowd(const struct ts_species *a, const struct ts_species *b)
{
	return both_rough(a, b) && b->lakes_apart == TS_LAKES_OWN &&
	       b->territory.per == TS_PER_GROUP;
}

/* Floors of the troublemaker's territory that this tank has; where it has none, by its length. */
static double floors(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	double own = ts_rule_floor_m2(b, scene->practice);
	double side_m = scene->practice[TS_P_FLOOR_PAIR] * b->species->adult_length_cm / 100;

	if (!(own > 0))
		own = side_m * side_m;
	r->ours = scene->taken.floor_m2;
	r->its = own * (crowd(a->species, b->species) ? 1 : scene->practice[TS_P_FLOOR_OTHERS]);
	return scene->taken.floor_m2 / r->its;
}

/* Is `a` one of those whom `b` is rough to? */
static bool minds(const struct ts_species *b, const struct ts_species *a)
{
	unsigned temper = b->temper;
	bool like = strcmp(a->family, b->family) == 0 && a->body == b->body;
	bool slow = a->fins || a->habits & TS_HABIT_SLOW_EATER;

	if (!temper || temper & TS_TEMPER_ALL)
		return true;
	return (temper & TS_TEMPER_LOOK_ALIKES && like) ||
	       (temper & TS_TEMPER_SMALLER && a->adult_length_cm < 0.75 * b->adult_length_cm) ||
	       (temper & TS_TEMPER_SLOW && slow) ||
	       (temper & TS_TEMPER_BOTTOM && a->swims == TS_SWIMS_BOTTOM);
}

/* Does the breeder's ground reach this animal? */
static bool same_level(const struct ts_species *a, const struct ts_species *b)
{
	return a->swims == b->swims || a->swims == TS_SWIMS_EVERYWHERE ||
	       b->swims == TS_SWIMS_EVERYWHERE;
}

/* Some clear the whole tank for their brood, from the bottom to the surface. */
static bool reaches(const struct ts_species *b, const struct ts_species *a)
{
	return b->temper & TS_TEMPER_ALL || same_level(a, b);
}

/* Is `a` somebody whom `b`, which meets others so, would bother? A snail is not. */
static bool bothers(int how, const struct ts_group *a, const struct ts_group *b)
{
	return b->species->to_others == how && a->species->kind != TS_ANIMAL_SNAIL &&
	       minds(b->species, a->species);
}

bool ts_rule_attacked(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	bool roomy;

	if (!bothers(TS_INJURES, a, b))
		return false;
	roomy = floors(scene, a, b, r) >= 1;
	switch (b->species->others_when) {
	case TS_ALWAYS:
		r->severity =
			both_rough(a->species, b->species) && roomy ? TS_CONCERN : TS_CONFLICT;
		return true;
	case TS_WHEN_BREEDING:
		r->severity = roomy || !reaches(b->species, a->species) ? TS_CONCERN : TS_CONFLICT;
		return true;
	default:
		r->severity = both_rough(a->species, b->species) ? TS_CONCERN : TS_CONFLICT;
		return !roomy;
	}
}

/* Who lives at another level, is half as long again or in armour is told to leave, and unharmed. */
static bool untroubled(const struct ts_species *a, const struct ts_species *b)
{
	if (a->adult_length_cm >= 1.5 * b->adult_length_cm && !(b->temper & TS_TEMPER_SLOW))
		return true;
	if (b->temper & TS_TEMPER_BOTTOM && a->swims == TS_SWIMS_BOTTOM)
		return false;
	return !reaches(b, a) || (a->habits & TS_HABIT_SPINY && a->swims == TS_SWIMS_BOTTOM &&
					 b->swims != TS_SWIMS_BOTTOM);
}

/* A full shoal of swimmers, where there is room, is chased and not caught. */
static bool outswims(const struct ts_group *a, bool roomy)
{
	return roomy && a->species->needs.activity >= TS_PACE_ACTIVE &&
	       ts_group_count(a) >= a->species->group.least;
}

/* A small fish among many chasers finds no rest. */
static bool hunted_down(const struct ts_group *a, const struct ts_group *b, const double *practice)
{
	return ts_group_count(b) >= practice[TS_P_CHASERS] &&
	       a->species->adult_length_cm < b->species->adult_length_cm / 2;
}

/* A large rough one beside a slow eater, which it keeps from the food and out of the light: times
 * its length, common practice, no source. */
#define BULLY 1.3

static bool bullies(const struct ts_species *b, const struct ts_species *a)
{
	return b->to_others == TS_CHASES && b->others_when == TS_ALWAYS &&
	       b->temper & (TS_TEMPER_ALL | TS_TEMPER_SLOW) && a->habits & TS_HABIT_SLOW_EATER &&
	       b->adult_length_cm >= BULLY * a->adult_length_cm;
}

/* Share of the room for peace in which a few chasers leave corners: common practice, no source. */
#define CORNERS 0.6

/* One or a few chase, and the others have somewhere to go. */
static bool leaves_corners(
	const struct ts_group *b, const struct ts_ruling *r, const double *practice)
{
	return ts_group_count(b) < practice[TS_P_CHASERS] / 2 && r->ours >= CORNERS * r->its;
}

bool ts_rule_chased(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	bool roomy;

	if (!bothers(TS_CHASES, a, b))
		return false;
	roomy = floors(scene, a, b, r) >= 1;
	switch (b->species->others_when) {
	case TS_ALWAYS:
		r->severity =
			(both_rough(a->species, b->species) && roomy) ||
					untroubled(a->species, b->species)
				? TS_NOTE
			: hunted_down(a, b, scene->practice) || bullies(b->species, a->species)
				? TS_CONFLICT
			: outswims(a, roomy) || leaves_corners(b, r, scene->practice) ? TS_NOTE
										      : TS_CONCERN;
		return !roomy || !crowd(a->species, b->species);
	case TS_WHEN_BREEDING: /* for some weeks, and nobody is hurt */
		r->severity = TS_NOTE;
		return !roomy && same_level(a->species, b->species);
	default:
		if (untroubled(a->species, b->species) || leaves_corners(b, r, scene->practice))
			r->severity = TS_NOTE;
		return !roomy;
	}
}

bool ts_rule_outcompeted(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	(void)r;
	/* What grows on stones is left to those who graze it. */
	return a->species->habits & (TS_HABIT_SLOW_EATER | TS_HABIT_SPECIALIST) &&
	       a->species->hunts != TS_HUNTS_GRAZER && b->species->kind == TS_ANIMAL_FISH &&
	       b->species->habits & TS_HABIT_QUICK_EATER;
}

/* A lone male that fights his own kind takes relatives of his family for them. */
static bool lone_males(const struct ts_species *a, const struct ts_species *b)
{
	return strcmp(a->family, b->family) == 0 &&
	       (a->group.sexes == TS_SEXES_ALONE || b->group.sexes == TS_SEXES_ALONE) &&
	       a->territory.floor_m2 > 0 && b->territory.floor_m2 > 0;
}

/* Relatives of another size live another life. */
static bool alike_in_size(const struct ts_species *a, const struct ts_species *b)
{
	double small = fmin(a->adult_length_cm, b->adult_length_cm);

	return fmax(a->adult_length_cm, b->adult_length_cm) < RIVAL_SIZES * small;
}

bool ts_rule_rivals(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_species *x = a->species, *y = b->species;
	double own = ts_rule_floor_m2(a, scene->practice) + ts_rule_floor_m2(b, scene->practice);
	bool injures = x->to_own_kind == TS_INJURES || y->to_own_kind == TS_INJURES;

	if (!ts_rule_first(x, y) || x->to_own_kind == TS_IGNORES || y->to_own_kind == TS_IGNORES ||
		!(own > 0) || !alike_in_size(x, y) ||
		(!ts_rule_same_genus(x, y) && !lone_males(x, y)))
		return false;
	r->ours = scene->taken.floor_m2;
	r->its = own;
	if (x->group.sexes == TS_SEXES_ALONE && y->group.sexes == TS_SEXES_ALONE)
		own *= scene->practice[TS_P_FLOOR_OTHERS];
	r->severity = injures && !(scene->taken.floor_m2 >= own) ? TS_CONFLICT : TS_CONCERN;
	return injures || !(scene->taken.floor_m2 >= own);
}
