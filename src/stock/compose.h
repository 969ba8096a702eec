/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What makes a list one that a keeper would recommend: who fills which role in this tank, what an
 * animal asks of its keeper, what two of them are to each other. Common practice, no source; every
 * figure is a row propose.* of the practice table; docs/methods.md, "Proposing".
 */
#ifndef TS_STOCK_COMPOSE_H
#define TS_STOCK_COMPOSE_H

#include "stock/propose.h"

/* The role that a species may fill, enum ts_role; 0: none. */
unsigned ts_compose_role(const struct ts_species *species, enum ts_theme theme);

/* The smallest armoured catfish hover, and rest on the bottom all the same. */
bool ts_compose_of_the_bottom(const struct ts_species *species);

/* One that keeps to itself and cleans stones and wood: better than nothing on a bare bottom. */
bool ts_compose_grazer(const struct ts_species *species);

/* Fish of Malawi, Tanganyika and Victoria, the catfish among them; snails go with everybody. */
bool ts_compose_of_rift_lake(const struct ts_species *species);

/* A snail, a shrimp: beside a community, never a part of it, unless shrimps are the theme. */
bool ts_compose_extra(const struct ts_species *species, enum ts_theme theme);

/*
 * What an animal asks that nobody who did not name it would give; NULL: nothing of the kind.
 * `aged`: the tank has run for eight weeks. Snails and shrimps that graze come later then.
 */
const char *ts_compose_asks(const struct ts_species *species, bool aged);

/* A snail or shrimp that grazes: proposed for the time when something has grown, eight weeks on. */
bool ts_compose_later(const struct ts_species *species, bool aged);

/* Whether the animal belongs to what is asked for: theme, and small ones only. */
bool ts_compose_of_theme(const struct ts_species *species, const struct ts_wish *wish);

/*
 * Whether the water is what it likes, with room to spare for a warm day. pH is left aside: it
 * follows from the rest and decides nothing.
 */
bool ts_compose_at_home(const struct ts_match *match, const struct ts_wish *wish);

/* Cichlids of the rocks of Malawi, a group of which divides its blows. */
bool ts_compose_of_the_rocks(const struct ts_species *species);

/* Cichlids of the floor of Tanganyika, a group of which lives in empty snail shells. */
bool ts_compose_of_the_shells(const struct ts_species *species);

/* Whether the GH, as it is read, lies at least so far inside what the animal likes. */
bool ts_compose_spares_gh(
	const struct ts_match *match, const struct ts_profile *profile, double room_dh);

/*
 * Whether such a number is offered in this tank: large males among themselves want room, shoals in
 * a tank with room are comfortable ones, few look well in a small one. What is asked for is free of
 * the latter.
 */
bool ts_compose_offers(const struct ts_wish *wish, const struct ts_level *level, bool must);

/* How well the water serves it, 0..1000: verdict first, then the distance to its nearest limit. */
int ts_compose_served(const struct ts_match *match, const double *practice);

/* Points for one level, 0 being the list without it. */
double ts_compose_value(
	const struct ts_wish *wish, const struct ts_match *match, const struct ts_level *level);

/*
 * Why two kinds are not proposed together unless both are asked for, though no rule forbids it:
 * they cross, are two labyrinth fish, two kinds of snail; NULL: they may be.
 */
const char *ts_compose_apart(
	const struct ts_wish *wish, const struct ts_species *a, const struct ts_species *b);

/*
 * Two kinds of livebearers of which one has females: the males of the other press them, or both
 * fill the tank with young.
 */
bool ts_compose_press(const struct ts_group *a, const struct ts_group *b);

/* Points that two of a list cost it beyond the rules: unlike homes or currents, too much alike. */
double ts_compose_friction(
	const struct ts_wish *wish, const struct ts_species *a, const struct ts_species *b);

#endif
