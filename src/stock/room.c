/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Room by the rules of check (rules_alone.c), not by rules of its own.
 */
#include "stock/room.h"

#include "model/practice.h"
#include "stock/levels.h"
#include "stock/rules.h"

enum ts_room ts_room_for(const struct ts_species *species, const struct ts_tank *tank,
	const struct ts_practice *practice, struct ts_ruling *ret)
{
	struct ts_level levels[TS_LEVELS_MOST];
	struct ts_rulings all = {.count = 0};
	const struct ts_ruling *gravest = NULL;
	double most;

	ts_levels(species, levels);
	ts_rules_alone(&levels[0].group, tank, practice, &all);
	for (size_t i = 0; i < all.count; i++) {
		const struct ts_ruling *r = &all.at[i];

		if (ts_rule_of_room(r->rule) && (!gravest || r->severity > gravest->severity ||
							(r->severity == gravest->severity &&
								r->rule == TS_RULE_TANK_LENGTH)))
			gravest = r;
	}
	if (gravest) {
		*ret = *gravest;
		return TS_ROOM_BY_RULE;
	}
	most = ts_nitrogen_for_no3(tank, practice->value[TS_P_NITRATE_CONCERN], practice);
	if (ts_group_nitrogen_mg_day(&levels[0].group, tank, (double)NAN, practice) > most)
		return TS_ROOM_BY_WASTE;
	return TS_ROOM_ENOUGH;
}

/* Boxes as they are sold, cm: common practice, no source. Between them the sides go straight. */
static const struct usual {
	double litres, length_cm, width_cm, height_cm;
} usual[] = {{1, 12, 9, 9}, {12, 30, 20, 20}, {25, 40, 25, 25}, {30, 40, 25, 30}, {54, 60, 30, 30},
	{63, 60, 30, 35}, {112, 80, 35, 40}, {180, 100, 40, 45}, {200, 100, 40, 50},
	{240, 120, 40, 50}, {300, 120, 50, 50}, {450, 150, 50, 60}, {720, 200, 60, 60},
	{1200, 250, 70, 70}, {100000, 2500, 700, 60}};
#define USUAL (sizeof usual / sizeof *usual)

static double between(double a, double b, double share)
{
	return floor(a + (b - a) * share + 0.5);
}

double ts_room_usual_litres(double length_cm)
{
	size_t i = 1;
	double share, side;

	while (i + 1 < USUAL && usual[i].length_cm < length_cm)
		i++;
	side = usual[i].length_cm - usual[i - 1].length_cm;
	share = side > 0 ? fmin(fmax((length_cm - usual[i - 1].length_cm) / side, 0), 1) : 1;
	return usual[i - 1].litres + (usual[i].litres - usual[i - 1].litres) * share;
}

void ts_room_usual_sides(double litres, struct ts_tank *tank)
{
	size_t i = 1;
	double share;

	while (i + 1 < USUAL && usual[i].litres < litres)
		i++;
	share = (litres - usual[i - 1].litres) / (usual[i].litres - usual[i - 1].litres);
	share = fmin(fmax(share, 0), 1);
	tank->length_cm = between(usual[i - 1].length_cm, usual[i].length_cm, share);
	tank->width_cm = between(usual[i - 1].width_cm, usual[i].width_cm, share);
	tank->height_cm = between(usual[i - 1].height_cm, usual[i].height_cm, share);
}
