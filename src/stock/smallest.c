/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The smallest tank that holds some animals: every answer that names one asks here. It is found by
 * trying tanks with the rules themselves, so that both say the same: a wider one before a longer
 * one, never more than three times as long as wide.
 */
#include "stock/smallest.h"

#include "stock/rules.h"

/* Lengths of usual tanks, cm: common practice, no source. */
static const double lengths_cm[] = {20, 25, 30, 40, 45, 50, 60, 70, 80, 90, 100, 120, 140, 150, 160,
	180, 200, 220, 250, 300, 350, 400, 500, 600, 1000};
#define LENGTHS (sizeof lengths_cm / sizeof *lengths_cm)
/* Small ones are half as wide and high as long, larger ones two fifths, to this: common practice.
 */
#define SMALL_SIDE_CM 30
#define USUAL_SIDE_CM 50
#define LONGEST_BY_WIDTH 3

static double to_five(double cm)
{
	return ceil(cm / 5 - 1e-9) * 5;
}

static double usual_side(double length_cm)
{
	return to_five(
		fmax(fmin(length_cm / 2, SMALL_SIDE_CM), fmin(length_cm * 2 / 5, USUAL_SIDE_CM)));
}

/* What is not given, or could be done more of, is taken at its best: waste asks for no room then.
 */
static void take_good_routine(struct ts_tank *tank, const double *practice)
{
	struct ts_every good = {practice[TS_P_CHANGE_GOOD], practice[TS_P_CHANGE_DAYS]};
	const struct ts_every *given = &tank->water_change;

	if (!(given->days > 0) || given->amount / given->days < good.amount / good.days)
		tank->water_change = good;
	tank->volume_l = 0;
}

/* Narrowest that the bodies and the length allow; high enough for the bodies. */
static void set_sides(const struct ts_group *groups, size_t count, double length_cm,
	const struct ts_practice *practice, struct ts_tank *tank)
{
	tank->length_cm = length_cm;
	tank->width_cm = to_five(fmax(usual_side(length_cm), length_cm / LONGEST_BY_WIDTH));
	tank->height_cm = usual_side(length_cm);
	for (size_t i = 0; i < count; i++) {
		const struct ts_species *s = groups[i].species;

		tank->width_cm =
			fmax(tank->width_cm, to_five(ts_rule_width_cm(s, practice->value)));
		tank->height_cm =
			fmax(tank->height_cm, to_five(ts_rule_height_cm(s, practice->value)));
	}
}

/* Room that is only nearly enough counts too: it is the smallest that would do. */
static unsigned grave(const struct ts_rulings *all)
{
	unsigned sum = 0;

	for (size_t i = 0; i < all->count; i++) {
		/* Young want homes of their own, not a larger tank. */
		if (all->at[i].rule == TS_RULE_YOUNG)
			continue;
		if (all->at[i].severity >= TS_CONCERN)
			sum += all->at[i].severity;
		else if (ts_rule_of_room(all->at[i].rule))
			sum++;
	}
	return sum;
}

/* What the rules and the load have against the animals in this tank, summed. */
static unsigned against(const struct ts_group *groups, size_t count, bool sensitive,
	const struct ts_tank *tank, const struct ts_practice *practice)
{
	struct ts_load_case asked = {.groups = groups,
		.count = count,
		.tank = tank,
		.temp_c = (double)NAN,
		.kh_dh = (double)NAN,
		.kh_new_dh = (double)NAN,
		.no3_new_mg_l = (double)NAN};
	double limit =
		practice->value[sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN];
	struct ts_floor_sum floors = {0};
	unsigned sum = 0;
	struct ts_load load;

	for (size_t i = 0; i < count; i++) {
		struct ts_rulings all; /* large: what is beyond its count is not cleared */

		all.count = 0;
		ts_floor_add(&floors, &groups[i], practice);
		ts_rules_alone(&groups[i], tank, practice, &all);
		sum += grave(&all);
		for (size_t j = 0; j < i; j++) {
			all.count = 0;
			ts_rules_together(&groups[j], &groups[i], tank, practice, &all);
			sum += grave(&all);
		}
	}
	sum += ts_floor_total_m2(&floors) > ts_tank_floor_m2(tank) ? TS_CONFLICT : 0;
	sum += ts_rule_crowding(groups, count, tank, practice) > practice->value[TS_P_CROWDED_NOTE]
		       ? TS_CONFLICT
		       : 0;
	if (ts_load_of(&asked, practice, &load) == TS_OK && load.no3_steady_mg_l.low >= limit)
		sum += TS_CONFLICT;
	return sum;
}

void ts_smallest_tank(const struct ts_group *groups, size_t count, bool sensitive,
	const struct ts_tank *like, const struct ts_practice *practice,
	struct ts_smallest_tank *ret)
{
	struct ts_tank tank = *like;
	unsigned least;

	*ret = (struct ts_smallest_tank){0};
	if (!count)
		return;
	take_good_routine(&tank, practice->value);
	set_sides(groups, count, lengths_cm[LENGTHS - 1], practice, &tank);
	least = against(groups, count, sensitive, &tank, practice); /* what no room mends */
	for (size_t i = 0; i + 1 < LENGTHS; i++) {
		double widest;

		set_sides(groups, count, lengths_cm[i], practice, &tank);
		widest = fmax(tank.width_cm, to_five(lengths_cm[i] / 2));
		if (tank.width_cm > tank.length_cm)
			continue;
		for (; tank.width_cm <= widest; tank.width_cm += 10) {
			if (against(groups, count, sensitive, &tank, practice) > least)
				continue;
			*ret = (struct ts_smallest_tank){tank.length_cm, tank.width_cm,
				tank.height_cm,
				tank.length_cm * tank.width_cm * tank.height_cm / 1000};
			return;
		}
	}
}
