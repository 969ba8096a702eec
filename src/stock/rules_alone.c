/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The rules of one species in a tank: room, number, sexes, what the tank offers. The table that
 * calls them is rules.c.
 */
#include "stock/growth.h"
#include "stock/room.h"
#include "stock/rules.h"

#include <string.h>

/* Females to a male below which the males wear them, or each other, out; of those of whom one male
 * is the rule more. Advised are two to three. Common practice, no source. */
#define FEMALES_LEAST 1.5
#define FEMALES_TO_ONE 3.0

static bool unknown(double value)
{
	return !(value > 0);
}

/* All cautions are said; these harm people, or stand on a list that forbids the animal. */
bool ts_rule_caution(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	static const unsigned grave = 1u << TS_CAUTION_VENOMOUS | 1u << TS_CAUTION_ELECTRIC;

	(void)scene;
	(void)b;
	r->severity =
		a->species->cautions & grave || a->species->listed.count ? TS_CONCERN : TS_NOTE;
	return a->species->cautions;
}

bool ts_rule_cover(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	bool said = scene->tank->cover != TS_COVER_UNKNOWN;

	(void)b;
	r->severity = said ? TS_CONCERN : TS_QUESTION;
	r->rests = said ? TS_RESTS_READ : TS_RESTS_NOT_KNOWN;
	return a->species->needs.cover && scene->tank->cover != TS_COVER_YES;
}

bool ts_rule_eats_plants(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)b;
	r->severity = scene->tank->plants == TS_PLANTS_DENSE ? TS_CONCERN : TS_NOTE;
	return a->species->habits & TS_HABIT_EATS_PLANTS && scene->tank->plants >= TS_PLANTS_SOME;
}

/* Two that may be a pair, of a species that lives in pairs as well. */
static bool settled_pair(const struct ts_group *a)
{
	return a->species->group.pair && ts_group_count(a) == 2 && a->males < 2 && a->females < 2;
}

/*
 * One of a kind that lives in pairs or by few lives well enough alone; of a shoal, and of what is
 * shy without its own, not.
 */
static bool lone_and_well(const struct ts_group *a)
{
	const struct ts_species *s = a->species;

	return ts_group_count(a) == 1 &&
	       (s->group.least <= 2 ||
		       (s->group.pair && !(s->habits & TS_HABIT_NITRATE_SENSITIVE)));
}

/* Nippers and those that injure their own kind turn on the few; a lone animal has nobody. */
bool ts_rule_few(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	double count = ts_group_count(a), least = a->species->group.least;
	bool rough = a->species->to_own_kind == TS_INJURES && count > 1;

	(void)b;
	if (count >= least || settled_pair(a))
		return false;
	r->ours = count;
	r->its = least;
	r->change = least - count;
	r->severity = rough && count < least / 2 ? TS_CONFLICT
		      : count >= least * scene->practice[TS_P_FEW_NEARLY] || lone_and_well(a)
			      ? TS_NOTE
			      : TS_CONCERN;
	return true;
}

bool ts_rule_flow(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	int has = scene->tank->flow, wants = a->species->needs.flow;

	(void)b;
	if (has == TS_FLOW_UNKNOWN || wants == TS_NEEDS_ANY || has == wants)
		return false;
	r->word = wants;
	r->severity = has - wants == 1 || wants - has == 1 ? TS_NOTE : TS_CONCERN;
	return true;
}

bool ts_rule_light(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	int has = scene->tank->light, wants = a->species->needs.light;

	(void)b;
	r->severity = TS_NOTE;
	r->word = wants;
	return has != TS_LIGHT_ANY && wants != TS_NEEDS_ANY_LIGHT && has != wants;
}

bool ts_rule_old_tank(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)b;
	/* Bought last, it is no harm: the answer says so where nothing is said of the filter. */
	r->severity = scene->tank->filter == TS_FILTER_NEW ? TS_CONFLICT : TS_NOTE;
	return a->species->habits & TS_HABIT_OLD_TANK;
}

/* Males, counting those of unknown sex as males where the worst would be so. */
static double males_at_most(const struct ts_group *a)
{
	return (double)a->males + a->either;
}

bool ts_rule_own_kind(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	double count = ts_group_count(a);
	bool alone = a->species->group.sexes == TS_SEXES_ALONE;

	(void)scene;
	(void)b;
	if (!alone || count < 2 || a->species->to_own_kind == TS_IGNORES)
		return false;
	r->ours = count;
	r->its = 1;
	r->change = count - 1;
	r->severity = a->species->to_own_kind == TS_INJURES && males_at_most(a) > 0 ? TS_CONFLICT
										    : TS_CONCERN;
	return true;
}

/* Two of them take all for their brood, and the others have nowhere to go. */
static bool grow_into_pairs(const struct ts_species *s)
{
	if (s->group.sexes == TS_SEXES_PAIR)
		return s->to_own_kind != TS_IGNORES;
	return s->group.sexes == TS_SEXES_ANY && s->group.least == 2 &&
	       s->to_own_kind == TS_INJURES && s->own_kind_when == TS_WHEN_BREEDING;
}

bool ts_rule_pair_forms(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	double count = ts_group_count(a), floor_m2 = scene->floor_m2;

	(void)b;
	if (!grow_into_pairs(a->species) || count < 3)
		return false;
	r->ours = count;
	r->its = 2;
	r->change = count - 2;
	/* Where each pair has its ground, the others have one as well. */
	if (a->species->territory.per == TS_PER_PAIR &&
		floor_m2 >= a->species->territory.floor_m2 * ceil(count / 2))
		r->severity = TS_NOTE;
	return true;
}

static bool too_many_males(const struct ts_group *a, double most, struct ts_ruling *r)
{
	r->ours = a->males;
	r->its = most;
	r->change = a->females + a->either;
	return a->males > most;
}

static double males_borne(const struct ts_group *a)
{
	bool one = a->species->group.sexes == TS_SEXES_ONE_MALE;

	return fmax(1, floor(a->females / (one ? FEMALES_TO_ONE : FEMALES_LEAST)));
}

bool ts_rule_sexes(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	(void)scene;
	(void)b;
	switch (a->species->group.sexes) {
	case TS_SEXES_TWO_FEMALES: /* males alone, or two females to each */
		if ((a->males && !a->females && !a->either) || settled_pair(a))
			return false;
		return too_many_males(a, floor((a->females + a->either) / FEMALES_LEAST), r);
	case TS_SEXES_PAIR: /* males without females have nobody to pair with, and fight */
		if (a->females || a->either || a->species->to_own_kind == TS_IGNORES)
			return false;
		r->severity = TS_CONFLICT;
		return too_many_males(a, 1, r);
	case TS_SEXES_HAREM:
	case TS_SEXES_ONE_MALE:
		r->severity = a->species->to_own_kind == TS_INJURES &&
					      a->species->group.sexes == TS_SEXES_ONE_MALE
				      ? TS_CONFLICT
				      : TS_CONCERN;
		if (a->species->group.least >=
			10) /* crowded mbuna: several males divide the blows */
			return false;
		return too_many_males(a, males_borne(a), r);
	default:
		return false;
	}
}

bool ts_rule_specialist(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	(void)b;
	r->severity = TS_NOTE;
	return a->species->habits & TS_HABIT_SPECIALIST;
}

bool ts_rule_tank_height(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const double *p = scene->practice;

	(void)b;
	r->ours = scene->taken.height_cm;
	r->word = unknown(scene->tank->height_cm);
	r->its = ts_rule_height_cm(a->species, p);
	if (unknown(r->ours) || r->ours >= r->its)
		return false;
	r->severity = ts_rule_short_of(r->ours, r->its, p);
	return true;
}

bool ts_rule_tank_length(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)b;
	r->ours = scene->tank->length_cm;
	r->its = ts_match_tank_length_cm(a->species);
	if (unknown(r->ours) || r->ours >= r->its)
		return false;
	r->severity = ts_rule_short_of(r->ours, r->its, scene->practice);
	return true;
}

/*
 * Length not given: the tank is as long as such tanks usually are, which decides like a measured
 * one. Without litres nothing is known.
 */
bool ts_rule_tank_unmeasured(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)b;
	if (!unknown(scene->tank->length_cm) && !unknown(scene->taken.width_cm))
		return false;
	r->rests = TS_RESTS_NOT_KNOWN;
	r->severity = TS_QUESTION;
	r->its = ts_match_tank_length_cm(a->species);
	if (!unknown(scene->tank->length_cm) || unknown(scene->taken.length_cm))
		return true;
	r->rests = TS_RESTS_ASSUMED;
	r->ours = scene->taken.length_cm;
	r->severity = ts_rule_short_of(r->ours, r->its, scene->practice);
	return r->ours < r->its;
}

bool ts_rule_tank_width(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const double *p = scene->practice;

	(void)b;
	r->ours = scene->taken.width_cm;
	r->word = unknown(scene->tank->width_cm);
	r->its = ts_rule_width_cm(a->species, p);
	if (unknown(r->ours) || r->ours >= r->its)
		return false;
	r->severity = ts_rule_short_of(r->ours, r->its, p);
	return true;
}

bool ts_rule_territory(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)b;
	r->ours = scene->taken.floor_m2;
	r->word = isnan(scene->floor_m2);
	r->its = ts_rule_floor_m2(a, scene->practice);
	if (r->ours >= r->its)
		return false;
	r->severity = ts_rule_short_of(r->ours, r->its, scene->practice);
	if (a->species->to_own_kind != TS_INJURES && r->severity == TS_CONFLICT)
		r->severity = TS_CONCERN;
	return true;
}

bool ts_rule_unsettled(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	(void)scene;
	(void)b;
	r->severity = TS_NOTE;
	r->ours = ts_group_count(a);
	r->its = a->species->group.comfortable;
	r->change = r->its - r->ours;
	return r->ours >= a->species->group.least && r->ours < r->its && !settled_pair(a);
}

/* Colour forms of one animal, named apart in the plan. */
bool ts_rule_forms_cross(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r)
{
	const struct ts_texts *names = &a->species->crosses_with;
	size_t genus = strcspn(a->species->species, " ");
	bool own = false;

	(void)scene;
	(void)b;
	for (size_t i = 0; i < names->count; i++)
		own |= strcmp(names->items[i], a->species->species) == 0 ||
		       (strlen(names->items[i]) == genus &&
			       strncmp(names->items[i], a->species->species, genus) == 0);
	r->severity = TS_NOTE;
	r->ours = a->forms;
	return own && a->forms > 1 && a->species->kind == TS_ANIMAL_SHRIMP;
}

bool ts_rule_land(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	(void)b;
	r->severity = TS_CONFLICT;
	return a->species->needs.land && scene->tank->water_level != TS_WATER_LEVEL_HALF;
}

/* Smooth ground for barbels; sand for what digs in it or sifts it. */
bool ts_rule_sand(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	int has = scene->tank->substrate, wants = a->species->needs.bottom;

	(void)b;
	r->word = wants;
	if (has != TS_SUBSTRATE_COARSE_GRAVEL)
		r->severity = TS_NOTE;
	if (wants == TS_BOTTOM_SAND && (has == TS_SUBSTRATE_GRAVEL || has == TS_SUBSTRATE_BARE))
		return true;
	return wants != TS_BOTTOM_ANY && has == TS_SUBSTRATE_COARSE_GRAVEL;
}

/* What the females will have borne in half a year and others have left, beside those there now. */
bool ts_rule_young(const struct ts_scene *scene, const struct ts_group *a, const struct ts_group *b,
	struct ts_ruling *r)
{
	double count = ts_group_count(a), born = ts_growth_born_month(a);

	(void)b;
	if (!(born > 0))
		return false;
	r->ours = count;
	r->its = count + round(born * 6 * scene->practice[TS_P_YOUNG_REARED]);
	r->severity = TS_NOTE;
	return true;
}
