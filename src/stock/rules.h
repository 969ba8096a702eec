/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What the rules share: the scene in which they judge, and the functions that rules.c's table
 * calls. Rules of one species stand in rules_alone.c, of two in
 * rules_pair.c (behaviour) and rules_apart.c (water and habit).
 */
#ifndef TS_STOCK_RULES_H
#define TS_STOCK_RULES_H

#include <tapshoal/stock.h>

#include "model/practice.h"

/* Words of a species record by index (model/shapes.c), for those that the rules ask about. */
enum { TS_BODY_FUSIFORM, TS_BODY_EEL, TS_BODY_ELONGATED, TS_BODY_DEEP };
enum { TS_GAPE_NIBBLER, TS_GAPE_ORDINARY, TS_GAPE_WIDE, TS_GAPE_PREDATOR, TS_GAPE_ENGULFER };
enum { TS_IGNORES, TS_CHASES, TS_INJURES };
enum { TS_ALWAYS, TS_WHEN_BREEDING, TS_WHEN_CRAMPED };
enum { TS_HUNTS_GRAZER, TS_HUNTS_PLANKTON, TS_HUNTS_FRY, TS_HUNTS_INVERTEBRATES, TS_HUNTS_FISH };
enum {
	TS_TEMPER_ALL = 1 << 0,
	TS_TEMPER_LOOK_ALIKES = 1 << 1,
	TS_TEMPER_SMALLER = 1 << 2,
	TS_TEMPER_SLOW = 1 << 3,
	TS_TEMPER_BOTTOM = 1 << 4
};
enum {
	TS_FED_DRY,
	TS_FED_FINE,
	TS_FED_FROZEN,
	TS_FED_LIVE,
	TS_FED_MEATY,
	TS_FED_GREENS,
	TS_FED_GROWTH,
	TS_FED_WOOD,
	TS_FED_SINKING,
	TS_FED_SURFACE,
	TS_FED_SHELLS,
	TS_FED_DRIFT
};
enum { TS_BOTTOM_ANY, TS_BOTTOM_SMOOTH, TS_BOTTOM_SAND };
enum { TS_LAKES_NO, TS_LAKES_OWN, TS_LAKES_BY_CUSTOM };
enum { TS_NIPS_NO, TS_NIPS_SOMETIMES, TS_NIPS_YES };
enum { TS_SWIMS_BOTTOM, TS_SWIMS_MIDDLE, TS_SWIMS_TOP, TS_SWIMS_EVERYWHERE };
enum { TS_PER_ANIMAL, TS_PER_MALE, TS_PER_PAIR, TS_PER_GROUP };
enum { TS_PACE_ORDINARY, TS_PACE_SITS, TS_PACE_ACTIVE, TS_PACE_FAST };
enum { TS_NEEDS_ANY, TS_NEEDS_STILL, TS_NEEDS_GENTLE, TS_NEEDS_BRISK };
enum { TS_NEEDS_ANY_LIGHT, TS_NEEDS_SHADE, TS_NEEDS_BRIGHT };
enum {
	TS_SEXES_ANY,
	TS_SEXES_PAIR,
	TS_SEXES_HAREM,
	TS_SEXES_ONE_MALE,
	TS_SEXES_TWO_FEMALES,
	TS_SEXES_ALONE,
	TS_SEXES_MORE_FEMALES /* no rule, but what is bought: two to a male */
};
enum { TS_PREYS_SHRIMPS = 1, TS_PREYS_SNAILS = 2, TS_PREYS_FRY = 4 };
enum {
	TS_HABIT_NOCTURNAL = 1 << 0,
	TS_HABIT_DIGS = 1 << 1,
	TS_HABIT_EATS_PLANTS = 1 << 2,
	TS_HABIT_SLOW_EATER = 1 << 3,
	TS_HABIT_QUICK_EATER = 1 << 4,
	TS_HABIT_SPECIALIST = 1 << 5,
	TS_HABIT_OLD_TANK = 1 << 6,
	TS_HABIT_BREATHES_AIR = 1 << 7,
	TS_HABIT_SPINY = 1 << 8,
	TS_HABIT_NITRATE_SENSITIVE = 1 << 9
};

/* Litres of the inside box; NAN: not known. */
double ts_rule_box_l(const struct ts_tank *tank, const struct ts_practice *practice);

/* Where the groups meet. */
struct ts_scene {
	const struct ts_tank *tank;
	double floor_m2; /* NAN = not known */
	double box_l;    /* of the inside box, as tanks are sold; NAN = not known */
	/*
	 * Its sides: as measured, else those that a tank of so many litres usually has
	 * (stock/room.h). NAN: no litres either; the floor INFINITY.
	 */
	struct {
		double length_cm, width_cm, height_cm, floor_m2;
	} taken;
	const double *practice;
};

/*
 * One rule: does it hold for `a` (who suffers) because of `b` (NULL in rules of one species)? Then
 * true, with severity and numbers in `*r`, whose members are set already: severity to a concern,
 * numbers to NAN.
 */
typedef bool ts_rule(const struct ts_scene *scene, const struct ts_group *a,
	const struct ts_group *b, struct ts_ruling *r);

ts_rule ts_rule_caution, ts_rule_cover, ts_rule_eats_plants, ts_rule_few, ts_rule_flow,
	ts_rule_forms_cross, ts_rule_land, ts_rule_light, ts_rule_old_tank, ts_rule_own_kind,
	ts_rule_pair_forms, ts_rule_sand, ts_rule_sexes, ts_rule_specialist, ts_rule_tank_height,
	ts_rule_tank_length, ts_rule_tank_unmeasured, ts_rule_tank_width, ts_rule_territory,
	ts_rule_unsettled, ts_rule_young;
ts_rule ts_rule_attacked, ts_rule_chased, ts_rule_crosses, ts_rule_eaten, ts_rule_electric,
	ts_rule_fin_nipper, ts_rule_flow_apart, ts_rule_gh_apart, ts_rule_labyrinth,
	ts_rule_lake_apart, ts_rule_light_apart, ts_rule_night_hunter, ts_rule_outcompeted,
	ts_rule_ph_apart, ts_rule_rivals, ts_rule_salt_apart, ts_rule_shrimps_eaten,
	ts_rule_snails_eaten, ts_rule_temperature_apart;

/*
 * ts_rules_together() of some of the rules: those whose answer hangs on how many there are, the
 * others, or both.
 */
void ts_rules_of_two(const struct ts_group *a, const struct ts_group *b, const struct ts_tank *tank,
	const struct ts_practice *practice, bool without_numbers, bool with_numbers,
	struct ts_rulings *ret);

/* Whether the number of these animals could decide a rule of two. */
bool ts_rules_ask_numbers(const struct ts_species *species);

/* Floor that a group defends, m2: its own figure, or by rule of thumb; 0 = none. */
double ts_rule_floor_m2(const struct ts_group *group, const double *practice);

/* Width and height that the body of a grown one needs, cm; 0 = no animal that swims. */
double ts_rule_width_cm(const struct ts_species *species, const double *practice);
double ts_rule_height_cm(const struct ts_species *species, const double *practice);

/* Is the rule about the room of the tank, which a larger one mends? */
bool ts_rule_of_room(enum ts_rule_id rule);

/* Litres as the tank is sold: of its sides, else as they were given. */
double ts_rule_sold_l(const struct ts_tank *tank, const struct ts_practice *practice);

/*
 * Litres that the grown fish of all groups want, by litres of the tank as sold: a centimetre of
 * small fish to the litre, more of large ones. NAN: the tank is not known.
 */
double ts_rule_crowding(const struct ts_group *groups, size_t count, const struct ts_tank *tank,
	const struct ts_practice *practice);

/* Severity of having `ours` where `its` is needed: nearly enough is a note, less is none at all. */
enum ts_severity ts_rule_short_of(double ours, double its, const double *practice);

/* Who is named first where both are alike to blame: by name, then form. */
bool ts_rule_first(const struct ts_species *a, const struct ts_species *b);

bool ts_rule_same_genus(const struct ts_species *a, const struct ts_species *b);

/* Does the record name the other among those it crosses with, by its genus or its own name? */
bool ts_rule_names(const struct ts_species *s, const struct ts_species *other);

#endif
