/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The points of composing. The search (search.c) knows nothing of this: it sees integers.
 */
#include "stock/compose.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "model/practice.h"
#include "stock/candidates.h"
#include "stock/judge.h"
#include "stock/rules.h"

/* A labyrinth fish of this length at the most is shy of restless company. */
#define SHY_CM 6
/* Livebearers of this length pull at the tails of small ones. */
#define ROUGH_CM 8

static bool of_family(const struct ts_species *s, const char *const *families)
{
	for (; *families; families++) {
		if (strcmp(s->family, *families) == 0)
			return true;
	}
	return false;
}

/* Cichlids and gobies of the bottom are looked at; catfish and loaches live there. */
static bool shown_at_the_bottom(const struct ts_species *s)
{
	static const char *const families[] = {"Cichlidae", "Gobiidae", "Eleotridae", NULL};

	return s->territory.floor_m2 > 0 && of_family(s, families);
}

/* Kept in tanks of their own, by those who breed them. */
static bool killifish(const struct ts_species *s)
{
	static const char *const families[] = {
		"Nothobranchiidae", "Aplocheilidae", "Rivulidae", "Procatopodidae", NULL};

	return of_family(s, families);
}

static bool livebearer(const struct ts_species *s)
{
	return s->group.sexes == TS_SEXES_TWO_FEMALES;
}

bool ts_compose_of_the_bottom(const struct ts_species *s)
{
	return s->swims == TS_SWIMS_BOTTOM || strcmp(s->family, "Callichthyidae") == 0;
}

bool ts_compose_grazer(const struct ts_species *s)
{
	return s->kind == TS_ANIMAL_FISH && ts_compose_of_the_bottom(s) && s->group.least < 3 &&
	       s->hunts == TS_HUNTS_GRAZER;
}

unsigned ts_compose_role(const struct ts_species *s, enum ts_theme theme)
{
	bool few = s->group.least < 5 || s->group.pair;
	bool bottom = ts_compose_of_the_bottom(s);

	if (theme == TS_THEME_SHRIMPS && s->kind == TS_ANIMAL_SHRIMP)
		return TS_ROLE_SHOAL;
	if (s->kind != TS_ANIMAL_FISH)
		return 0;
	if (livebearer(s)) /* large ones are what one looks at */
		return s->adult_length_cm >= ROUGH_CM ? TS_ROLE_CENTRE : TS_ROLE_SHOAL;
	if (s->group.sexes == TS_SEXES_ALONE && s->to_own_kind == TS_INJURES)
		return 0; /* kept for itself */
	if (bottom && !(few && shown_at_the_bottom(s)))
		return s->group.least >= 3 || ts_compose_grazer(s) ? TS_ROLE_BOTTOM : 0;
	if (few) /* what hides by day is nothing to look at */
		return s->habits & TS_HABIT_NOCTURNAL ? 0 : TS_ROLE_CENTRE;
	return s->swims == TS_SWIMS_TOP ? TS_ROLE_TOP : TS_ROLE_SHOAL;
}

bool ts_compose_extra(const struct ts_species *s, enum ts_theme theme)
{
	return s->kind != TS_ANIMAL_FISH &&
	       !(theme == TS_THEME_SHRIMPS && s->kind == TS_ANIMAL_SHRIMP);
}

const char *ts_compose_asks(const struct ts_species *s, bool aged)
{
	if (s->kind == TS_ANIMAL_CRAB || s->kind == TS_ANIMAL_CRAYFISH)
		return "crabs and crayfish are kept for themselves";
	if (killifish(s))
		return "killifish are kept in tanks of their own";
	if (s->feeding == TS_FED_LIVE)
		return "it wants living food";
	if (s->kind == TS_ANIMAL_FISH && ts_is_delicate(s) && s->sold != TS_SOLD_EVERYWHERE)
		return "it takes change badly, and few shops have it";
	if (s->kind == TS_ANIMAL_FISH &&
		(s->feeding == TS_FED_DRIFT || s->feeding == TS_FED_SHELLS ||
			s->habits & TS_HABIT_SPECIALIST))
		return "it takes only special food";
	if (!aged && (s->habits & TS_HABIT_OLD_TANK || s->feeding == TS_FED_GROWTH) &&
		!ts_compose_later(s, aged))
		return "it lives off what grows in a tank that has run for eight weeks or more";
	if (s->kind == TS_ANIMAL_FISH && s->to_others == TS_INJURES &&
		s->others_when != TS_WHEN_BREEDING)
		return "it injures others";
	if (s->cautions & 1u << TS_CAUTION_BITES)
		return "it bites";
	return NULL;
}

bool ts_compose_later(const struct ts_species *s, bool aged)
{
	return !aged && (s->kind == TS_ANIMAL_SNAIL || s->kind == TS_ANIMAL_SHRIMP) &&
	       s->feeding == TS_FED_GROWTH && !(s->habits & TS_HABIT_OLD_TANK);
}

static bool of_lake(const struct ts_species *s)
{
	return s->lakes_apart == TS_LAKES_OWN;
}

/* Whether 20 C, a room, is comfortable. */
static bool of_cool_water(const struct ts_species *s)
{
	const struct ts_range *r = &s->water.usual.temp_c.preferred;

	return r->low <= 19 && r->high >= 20;
}

bool ts_compose_of_theme(const struct ts_species *s, const struct ts_wish *w)
{
	if (w->small_only && s->adult_length_cm > w->practice->value[TS_P_PROPOSE_SMALL])
		return false;
	switch (w->theme) {
	case TS_THEME_LAKE:
		return of_lake(s) || ts_compose_of_rift_lake(s);
	case TS_THEME_BLACKWATER:
		return s->home_water == TS_HOME_BLACK || s->kind != TS_ANIMAL_FISH;
	case TS_THEME_COOL:
		return of_cool_water(s);
	case TS_THEME_SHRIMPS:
		return s->kind == TS_ANIMAL_SHRIMP || s->kind == TS_ANIMAL_SNAIL;
	default:
		return true;
	}
}

/* Whether pH is all that is beyond its comfort: it follows from the rest, and decides nothing. */
static bool by_ph_alone(const struct ts_match *m)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (p != TS_PH && m->at[p].known && m->at[p].verdict != TS_SUITS)
			return false;
	}
	return m->verdict == TS_TOLERATES && m->limiting == TS_PH;
}

static bool comfortable(const struct ts_match *m)
{
	return m->verdict == TS_SUITS || by_ph_alone(m);
}

/* A heater is turned down, a room is not cooled: the warm end alone. */
static bool spares_warmth(const struct ts_match *m, const struct ts_wish *w)
{
	const struct ts_span *at = &w->profile->at[TS_TEMPERATURE];
	double end = m->species->water.usual.temp_c.preferred.high;

	return !at->given || !(end - at->high < w->practice->value[TS_P_PROPOSE_WARM_LEAST]);
}

/* Water softer than this is mended for everybody: the low end of nobody who lives in it. */
#define SOFT_DH 1

bool ts_compose_spares_gh(
	const struct ts_match *m, const struct ts_profile *profile, double room_dh)
{
	const struct ts_span *at = &profile->at[TS_GH];
	const struct ts_range *likes = &m->species->water.usual.gh_dh.preferred;

	double soft = at->exposure ? at->low : at->value;
	bool of_salt = m->at[TS_GH].verdict == TS_SUITS && at->value > likes->high;

	return !at->given || !((likes->high - at->high < room_dh && !of_salt) ||
				     (likes->low > SOFT_DH && soft - likes->low < room_dh));
}

bool ts_compose_at_home(const struct ts_match *m, const struct ts_wish *w)
{
	return comfortable(m) && spares_warmth(m, w) &&
	       (w->reach > TS_REACH_SPARE || ts_compose_spares_gh(m, w->profile,
						     w->practice->value[TS_P_PROPOSE_ROOM_GH]));
}

/* From this length on, in units of propose.groups.from, the bottom has room for more. */
#define FLOOR_FOR_MORE 2

/* At the bottom of a shorter tank the least of a group will do, but not of dwarfs. */
#define FLOOR_DWARF_CM 3

bool ts_compose_of_the_rocks(const struct ts_species *s)
{
	return s->home_water == TS_HOME_MALAWI && s->group.sexes == TS_SEXES_HAREM &&
	       s->territory.per == TS_PER_GROUP;
}

bool ts_compose_of_the_shells(const struct ts_species *s)
{
	return s->home_water == TS_HOME_TANGANYIKA && s->swims == TS_SWIMS_BOTTOM &&
	       s->territory.per == TS_PER_GROUP && s->needs.bottom == TS_BOTTOM_SAND;
}

/* A dozen is lost on the floor of a large tank. */
#define ROCKS_LARGE_M2 0.9

static bool too_few_for_the_rocks(const struct ts_wish *w, const struct ts_group *g)
{
	double least = w->practice->value[TS_P_PROPOSE_MBUNA];

	if (ts_tank_floor_m2(w->tank) > ROCKS_LARGE_M2 - 0.001)
		least *= 1.5;
	return ts_compose_of_the_rocks(g->species) && ts_group_count(g) < least;
}

/* Young that nobody asked for come of both sexes, and fill the tank in half a year. */
static bool breeds_unasked(const struct ts_group *g)
{
	const struct ts_species *s = g->species;

	return s->kind == TS_ANIMAL_FISH && s->young_month > 0 && g->females + g->either > 0;
}

/* A shoal too small to be seen in so long a tank. */
static bool speck(const struct ts_wish *w, const struct ts_species *s, unsigned role)
{
	return role & (TS_ROLE_SHOAL | TS_ROLE_TOP) && !w->small_only &&
	       w->theme == TS_THEME_NONE && w->reach < TS_REACH_HOME &&
	       w->tank->length_cm > w->practice->value[TS_P_PROPOSE_SPECK] * s->adult_length_cm;
}

/* Too small to be what one looks at in so long a tank. */
static bool slight(const struct ts_wish *w, const struct ts_species *s, unsigned role)
{
	const double *p = w->practice->value;

	return w->scale && role == TS_ROLE_CENTRE &&
	       w->tank->length_cm > p[TS_P_PROPOSE_CENTRE_LEAST] * s->adult_length_cm;
}

bool ts_compose_offers(const struct ts_wish *w, const struct ts_level *level, bool must)
{
	const double *p = w->practice->value;
	const struct ts_species *s = level->group.species;
	unsigned role = ts_compose_role(s, w->theme);
	double cm = w->tank->length_cm, from = p[TS_P_PROPOSE_GROUPS_FROM];

	if (level->rivals && cm < p[TS_P_PROPOSE_RIVALS] * s->adult_length_cm)
		return false;
	if (must)
		return true;
	if (!role && s->kind == TS_ANIMAL_FISH && ts_compose_of_the_bottom(s) &&
		w->theme == TS_THEME_NONE)
		return false; /* beside the group that lives there */
	if (role == TS_ROLE_CENTRE && !of_lake(s) &&
		ts_group_count(&level->group) > fmax(p[TS_P_PROPOSE_CENTRE_MOST], s->group.least))
		return false;
	if (w->groups && role == TS_ROLE_BOTTOM && ts_compose_grazer(s))
		return false; /* in the place of a group that is at home */
	if (breeds_unasked(&level->group) || speck(w, s, role) || slight(w, s, role) ||
		too_few_for_the_rocks(w, &level->group))
		return false;
	if (level->crowd && !(s->young_month > 0) && cm < p[TS_P_PROPOSE_LARGE])
		return false;
	if (!level->comfortable && s->group.least >= 5)
		return cm < (role == TS_ROLE_BOTTOM && s->adult_length_cm > FLOOR_DWARF_CM
					    ? FLOOR_FOR_MORE
					    : 1) *
				    from;
	/* A pair to look at, and one snail, are enough for a small tank. */
	if (cm < p[TS_P_PROPOSE_FEW_BELOW] &&
		(role == TS_ROLE_CENTRE || s->kind == TS_ANIMAL_SNAIL))
		return ts_group_count(&level->group) <= s->group.least;
	return true;
}

/*
 * What the water suits has its points by the room to its limits, what pH alone keeps from it as at
 * the limit; what it does not quite suit has less than any of them, by its fit.
 */
int ts_compose_served(const struct ts_match *m, const double *p)
{
	double spare = p[TS_P_PROPOSE_SPARE], points = p[TS_P_PROPOSE_SPARE_POINTS], far = 0;

	if (by_ph_alone(m))
		return (int)floor(
			1000 - points -
			fmin(p[TS_P_PROPOSE_PH] * fabs(m->at[TS_PH].uncomfortable_by), points) +
			0.5);
	if (m->verdict != TS_SUITS)
		return (int)floor((1000 - points) * m->order + 0.5);
	if (!isnan(m->distance))
		far = fmin(fmax(m->distance, 0), spare) / spare;
	else
		far = 1;
	return (int)floor(1000 - points * (1 - far) + 0.5);
}

/* 1 where length over adult length lies within, falling by doublings beyond; -2 at the least. */
static double size_suits(double ratio, double low, double high)
{
	double off = ratio < low ? low / ratio : ratio > high ? ratio / high : 1;

	return fmax(1 - 2 * ts_log2(off), -2);
}

/* What the size is worth in its role, points: adult lengths that go into the tank's length. */
static double size_points(const struct ts_wish *w, const struct ts_species *s, unsigned role)
{
	const double *p = w->practice->value;
	double ratio = w->tank->length_cm / s->adult_length_cm;
	double low = p[TS_P_PROPOSE_SHOAL_LARGE], high = p[TS_P_PROPOSE_SHOAL_SMALL];

	if (!(ratio > 0))
		return 0;
	if (role == TS_ROLE_CENTRE) {
		low = p[TS_P_PROPOSE_CENTRE_LARGE];
		high = p[TS_P_PROPOSE_CENTRE_SMALL];
	} else if (role == TS_ROLE_BOTTOM || of_lake(s)) {
		low = p[TS_P_PROPOSE_BOTTOM_LARGE];
	}
	return p[TS_P_PROPOSE_SIZE] * size_suits(ratio, low, high);
}

static double sold_points(const struct ts_species *s, const double *p)
{
	switch (s->sold) {
	case TS_SOLD_EVERYWHERE:
		return p[TS_P_PROPOSE_EVERYWHERE];
	case TS_SOLD_OFTEN:
		return p[TS_P_PROPOSE_OFTEN];
	case TS_SOLD_SELDOM:
		return -p[TS_P_PROPOSE_SELDOM];
	default:
		return -p[TS_P_PROPOSE_RARELY];
	}
}

/* What it asks of its keeper, and of its company. */
static double trouble(const struct ts_species *s, const double *p)
{
	double points = 0;

	points += ts_is_delicate(s) ? p[TS_P_PROPOSE_DELICATE] : 0;
	points -= ts_is_hardy(s) ? p[TS_P_PROPOSE_HARDY] : 0;
	points += s->habits & TS_HABIT_NOCTURNAL ? p[TS_P_PROPOSE_HIDES] : 0;
	points += s->habits & (TS_HABIT_SPECIALIST | TS_HABIT_NITRATE_SENSITIVE)
			  ? p[TS_P_PROPOSE_DELICATE] / 2
			  : 0;
	points +=
		s->feeding == TS_FED_FROZEN || s->feeding == TS_FED_MEATY ? p[TS_P_PROPOSE_FED] : 0;
	points += s->to_own_kind == TS_INJURES  ? p[TS_P_PROPOSE_ROUGH]
		  : s->to_own_kind == TS_CHASES ? p[TS_P_PROPOSE_ROUGH] / 4
						: 0;
	points += s->to_others == TS_INJURES  ? 2 * p[TS_P_PROPOSE_ROUGH]
		  : s->to_others == TS_CHASES ? p[TS_P_PROPOSE_ROUGH] / 4
					      : 0;
	points += s->nips == TS_NIPS_YES         ? p[TS_P_PROPOSE_ROUGH]
		  : s->nips == TS_NIPS_SOMETIMES ? p[TS_P_PROPOSE_ROUGH] / 2
						 : 0;
	points += s->cautions & 1u << TS_CAUTION_OFTEN_SICK ? p[TS_P_PROPOSE_SICK] : 0;
	points += ts_compose_grazer(s) ? p[TS_P_PROPOSE_GRAZER] : 0;
	points += s->cautions & 1u << TS_CAUTION_SHORT_LIVED ? p[TS_P_PROPOSE_FED] : 0;
	return points;
}

/* Waste by what of it is aimed at, and how full it looks; the limit is the model's. */
static double load_points(const struct ts_wish *w, const struct ts_level *level)
{
	const double *p = w->practice->value;
	double aim = ts_nitrogen_for_no3(w->tank, p[TS_P_NITRATE_AIM], w->practice);
	double load = ts_judge_nitrogen_mg_day(w, &level->group);

	double litres = ts_tank_net_l(w->tank, w->practice);
	double cm = ts_group_count(&level->group) * level->group.species->adult_length_cm;

	return (aim > 0 ? p[TS_P_PROPOSE_LOAD] * load / aim : 0) +
	       (litres > 0 ? p[TS_P_PROPOSE_CROWD] * cm / litres : 0);
}

/* What a shoal is worth beyond its comfortable number, less where it is lost in a large tank. */
static double shoal_points(const struct ts_wish *w, const struct ts_level *level, unsigned role)
{
	const double *p = w->practice->value;
	const struct ts_species *s = level->group.species;
	double litres = ts_tank_net_l(w->tank, w->practice), count = ts_group_count(&level->group);
	double times = count / s->group.comfortable, points = 0;

	if (role && level->comfortable && s->group.comfortable >= 5)
		points = p[TS_P_PROPOSE_LARGER] * (role == TS_ROLE_BOTTOM ? 0.5 : 1) *
			 ts_log2(fmax(times, 1));
	if (role & (TS_ROLE_SHOAL | TS_ROLE_TOP))
		points -= p[TS_P_PROPOSE_LOST] *
			  ts_log2(fmax(litres / (p[TS_P_PROPOSE_LOST_LITRES] * s->adult_length_cm *
							count),
				  1));
	return points;
}

/* A summer is warmer than the heater. */
static bool nearly_too_warm(const struct ts_wish *w, const struct ts_species *s)
{
	return s->water.usual.temp_c.preferred.high - ts_judge_temperature(w) < 1;
}

/* Whoever else lives there is driven about while the pair breeds. */
static bool takes_the_floor(const struct ts_wish *w, const struct ts_level *level)
{
	return level->group.species->territory.per == TS_PER_PAIR &&
	       ts_group_floor_m2(&level->group, w->practice) > ts_tank_floor_m2(w->tank) / 2;
}

double ts_compose_value(
	const struct ts_wish *w, const struct ts_match *m, const struct ts_level *level)
{
	const struct ts_species *s = m->species;
	const double *p = w->practice->value;
	unsigned role = ts_compose_role(s, w->theme);
	double points;
	points = -p[ts_compose_extra(s, w->theme) ? TS_P_PROPOSE_EXTRA : TS_P_PROPOSE_ENTRY];
	points += sold_points(s, p) - trouble(s, p);
	points += role ? size_points(w, s, role) : 0;
	points -= comfortable(m) ? 0 : p[TS_P_PROPOSE_TOLERATES];
	points -= breeds_unasked(&level->group) ? p[TS_P_PROPOSE_YOUNG] : 0;
	if (level->comfortable)
		points += p[TS_P_PROPOSE_COMFORTABLE];
	points -= nearly_too_warm(w, s) ? p[TS_P_PROPOSE_WARM] : 0;
	points -= takes_the_floor(w, level) ? p[TS_P_PROPOSE_GROUND] : 0;
	return points + shoal_points(w, level, role) - load_points(w, level);
}

/* Home waters along the hardness that they bring: neighbours get on. */
static double home_of(const struct ts_species *s)
{
	static const double of[TS_HOME__COUNT] = {[TS_HOME_BLACK] = 0,
		[TS_HOME_CLEAR_SOFT] = 0.5,
		[TS_HOME_MIXED] = 1,
		[TS_HOME_MIDDLE] = 2,
		[TS_HOME_HARD] = 3,
		[TS_HOME_MALAWI] = 4,
		[TS_HOME_TANGANYIKA] = 4,
		[TS_HOME_VICTORIA] = 4,
		[TS_HOME_COOL] = 2,
		[TS_HOME_BEE_SHRIMP] = 0.5,
		[TS_HOME_NEOCARIDINA] = 1.5,
		[TS_HOME_SULAWESI] = 2,
		[TS_HOME_SNAIL] = 2,
		[TS_HOME_BRACKISH] = 4};

	return of[s->home_water];
}

/* Whether `a` troubles what `b` is. */
static bool troubles(const struct ts_species *a, const struct ts_species *b)
{
	bool alike = strcmp(a->family, b->family) == 0 && a->swims == b->swims;

	return (a->temper & TS_TEMPER_ALL && a->to_others != TS_IGNORES) ||
	       (a->temper & TS_TEMPER_LOOK_ALIKES && alike) ||
	       (a->temper & TS_TEMPER_SMALLER && b->adult_length_cm < a->adult_length_cm / 3) ||
	       (a->temper & TS_TEMPER_SLOW && (b->fins || b->habits & TS_HABIT_SLOW_EATER)) ||
	       (a->temper & TS_TEMPER_BOTTOM && ts_compose_of_the_bottom(b));
}

/* How much it rushes about: sitters and calm ones, active ones, fast ones. */
static double tempo(const struct ts_species *s)
{
	static const double of[] = {0, 0, 1, 2}; /* ordinary sitter active fast */

	return of[s->needs.activity] + (s->habits & TS_HABIT_QUICK_EATER ? 0.5 : 0);
}

/* Restless ones on the floor leave small shy fish above them no peace. */
static bool unrest(const struct ts_species *a, const struct ts_species *b)
{
	return ts_compose_of_the_bottom(a) && tempo(a) >= 1 && b->needs.flow && tempo(b) == 0 &&
	       strcmp(b->family, "Osphronemidae") == 0 && b->adult_length_cm <= SHY_CM;
}

static bool bears_young(const struct ts_species *s)
{
	return strcmp(s->family, "Poeciliidae") == 0;
}

static bool rough_on_fins(const struct ts_species *a, const struct ts_species *b)
{
	return bears_young(a) && a->adult_length_cm >= ROUGH_CM && b->fins;
}

bool ts_compose_press(const struct ts_group *a, const struct ts_group *b)
{
	return bears_young(a->species) && bears_young(b->species) && (a->females || b->females);
}

/* Of two layers, so that the tempo of one is no trouble to the other. */
static bool layered(const struct ts_species *a, const struct ts_species *b)
{
	return (a->swims == TS_SWIMS_BOTTOM) != (b->swims == TS_SWIMS_BOTTOM);
}

double ts_compose_friction(
	const struct ts_wish *w, const struct ts_species *a, const struct ts_species *b)
{
	const double *p = w->practice->value;
	double home = fabs(home_of(a) - home_of(b)), size = a->adult_length_cm / b->adult_length_cm;
	unsigned role = ts_compose_role(a, w->theme);
	double points = 0;

	points += p[TS_P_PROPOSE_HOME] * (home > 0.5 ? home - 0.5 : 0);
	points += p[TS_P_PROPOSE_TEMPER] *
		  (troubles(a, b) + troubles(b, a) + unrest(a, b) + unrest(b, a));
	points += p[TS_P_PROPOSE_TEMPER] * (rough_on_fins(a, b) + rough_on_fins(b, a));
	if (a->needs.flow && b->needs.flow)
		points += p[TS_P_PROPOSE_FLOW] * abs(a->needs.flow - b->needs.flow);
	if (!layered(a, b))
		points += p[TS_P_PROPOSE_FLOW] * fabs(tempo(a) - tempo(b));
	/* One below the surface and one below that are of one genus: they swim as one, and may
	 * cross. */
	if (ts_rule_same_genus(a, b) &&
		(role | ts_compose_role(b, w->theme)) == (TS_ROLE_SHOAL | TS_ROLE_TOP))
		points += 4 * p[TS_P_PROPOSE_ALIKE];
	if (!role || role != ts_compose_role(b, w->theme))
		return points;
	if (size > 0.7 && size < 1.4)
		points += p[TS_P_PROPOSE_ALIKE];
	if (ts_rule_same_genus(a, b))
		points += p[TS_P_PROPOSE_ALIKE];
	/* A second kind at the centre, or at the bottom, looks for the place of the first. */
	if (role == TS_ROLE_CENTRE || role == TS_ROLE_BOTTOM)
		points += p[TS_P_PROPOSE_ALIKE] * (strcmp(a->family, b->family) == 0 ? 3 : 1);
	return points;
}
