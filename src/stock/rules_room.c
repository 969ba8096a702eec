/* SPDX-License-Identifier: Apache-2.0 */
/*
 * How much room animals want: floors, sides, litres. The rules of room (rules_alone.c, check.c) and
 * the smallest tank (smallest.c) both ask here.
 */
#include "stock/rules.h"

bool ts_rule_of_room(enum ts_rule_id rule)
{
	switch (rule) {
	case TS_RULE_CROWDED:
	case TS_RULE_FLOOR:
	case TS_RULE_LITRES:
	case TS_RULE_TANK_HEIGHT:
	case TS_RULE_TANK_LENGTH:
	case TS_RULE_TANK_WIDTH:
	case TS_RULE_TERRITORY:
		return true;
	default:
		return false;
	}
}

enum ts_severity ts_rule_short_of(double ours, double its, const double *practice)
{
	return ours < its * practice[TS_P_ROOM_CONFLICT] ? TS_CONFLICT : TS_NOTE;
}

double ts_rule_width_cm(const struct ts_species *s, const double *practice)
{
	bool eel = s->body == TS_BODY_EEL;

	return practice[eel ? TS_P_ROOM_WIDTH_EEL : TS_P_ROOM_WIDTH] * s->adult_length_cm;
}

double ts_rule_height_cm(const struct ts_species *s, const double *practice)
{
	double deep_cm = practice[TS_P_DEPTH_FUSIFORM + s->body] * s->adult_length_cm;

	if (s->needs.tank_height_cm > 0)
		return s->needs.tank_height_cm;
	return s->kind == TS_ANIMAL_FISH ? practice[TS_P_ROOM_HEIGHT] * deep_cm : 0;
}

/* Litres of one grown fish: its centimetres, and of a large one by its length as well. */
static double litres_wanted(const struct ts_species *s, const double *practice)
{
	double cm = s->adult_length_cm;

	if (s->kind != TS_ANIMAL_FISH)
		return 0;
	if (s->body == TS_BODY_EEL)
		cm /= 2;
	return practice[TS_P_CROWDED_LITRES] * cm * fmax(1, cm / practice[TS_P_CROWDED_SMALL]);
}

double ts_rule_sold_l(const struct ts_tank *t, const struct ts_practice *practice)
{
	bool sides = t->length_cm > 0 && t->width_cm > 0 && t->height_cm > 0;

	return !sides && t->volume_l > 0 ? t->volume_l : ts_rule_box_l(t, practice);
}

double ts_rule_crowding(const struct ts_group *groups, size_t count, const struct ts_tank *tank,
	const struct ts_practice *practice)
{
	double wanted_l = 0;

	for (size_t i = 0; i < count; i++)
		wanted_l += ts_group_count(&groups[i]) *
			    litres_wanted(groups[i].species, practice->value);
	return wanted_l / ts_rule_sold_l(tank, practice);
}

/* A male and those who go with him, where nobody said who is what: common practice, no source. */
static double to_a_male(const struct ts_species *s)
{
	switch (s->group.sexes) {
	case TS_SEXES_HAREM:
	case TS_SEXES_ONE_MALE:
		return 4;
	case TS_SEXES_TWO_FEMALES:
	case TS_SEXES_MORE_FEMALES:
		return 3;
	default:
		return 2;
	}
}

/* How many territories the group holds; whoever might be a male is counted as one. */
static double territories(const struct ts_group *a)
{
	switch (a->species->territory.per) {
	case TS_PER_ANIMAL:
		return ts_group_count(a);
	case TS_PER_MALE: /* of unknown sex: a half, a third, a harem's share; one at the least */
		return a->males + ceil(a->either / to_a_male(a->species));
	case TS_PER_PAIR:
		return ceil(ts_group_count(a) / 2.0);
	default:
		return 1;
	}
}

/* A pair never wants more than a least tank has that is so many times as long as wide. */
#define LONG_TANK 3

double ts_rule_floor_m2(const struct ts_group *a, const double *practice)
{
	const struct ts_species *s = a->species;
	double side_m, length_m, least = fmax(s->group.least, 1);
	double apart = s->territory.floor_m2 * territories(a);

	if (s->territory.group_m2 > 0) /* in company the blows are divided */
		return fmin(apart, s->territory.group_m2 * fmax(ts_group_count(a) / least, 1));
	if (s->territory.per == TS_PER_PAIR && s->to_own_kind != TS_INJURES && apart > 0)
		return s->territory.floor_m2 *
		       (1 + practice[TS_P_FLOOR_MORE] * (territories(a) - 1));
	if (s->territory.floor_m2 > 0)
		return apart;
	if (s->to_others != TS_INJURES && s->to_own_kind != TS_INJURES)
		return 0;
	if (s->group.least >= 5) /* a shoal or a crowd holds no floor of its own */
		return 0;
	side_m = practice[TS_P_FLOOR_PAIR] * s->adult_length_cm / 100;
	length_m = ts_match_tank_length_cm(s) / 100;
	return fmin(side_m * side_m, length_m * length_m / LONG_TANK) *
	       ceil(ts_group_count(a) / 2.0);
}
