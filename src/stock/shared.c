/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a plan can be told though its water or its tank is not given: the water that all its animals
 * share, and the smallest tank that holds them. The tank is found by trying usual ones with the
 * rules themselves, so that both say the same.
 */
#include "base/arena.h"
#include "stock/check.h"
#include "stock/rules.h"

static void meet(struct ts_range *all, const struct ts_range *own)
{
	if (isnan(own->low))
		return;
	if (isnan(all->low)) {
		*all = *own;
		return;
	}
	all->low = fmax(all->low, own->low);
	all->high = fmin(all->high, own->high);
}

enum who { ALL, WHO_STAY, WHO_LIVE_THERE };

static bool counts(const struct ts_plan_group *g, enum who who)
{
	return who == ALL ||
	       (who == WHO_STAY ? g->way != TS_WAY_LEAVE : g->planned < ts_group_count(&g->group));
}

static void share(const struct ts_check *c, enum who who, struct ts_shared_water *ret)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		struct ts_range tolerated = {(double)NAN, (double)NAN}, comfortable = tolerated;

		for (size_t i = 0; i < c->group_count; i++) {
			const struct ts_parameter_fit *f = &c->groups[i].match.at[p];

			if (!counts(&c->groups[i], who))
				continue;
			meet(&tolerated, &f->tolerated);
			meet(&comfortable, isnan(f->preferred.low) ? &f->tolerated : &f->preferred);
		}
		ret->comfortable[p] = !(comfortable.low > comfortable.high);
		ret->at[p] = ret->comfortable[p] ? comfortable : tolerated;
	}
}

void ts_check_shared_water(struct ts_check *io)
{
	share(io, ALL, &io->shared_all);
	share(io, WHO_STAY, &io->shared);
	share(io, WHO_LIVE_THERE, &io->shared_there);
}

/* Lengths of usual tanks, cm; half as wide and high as long, 50 cm at most: common practice. */
static const double lengths_cm[] = {20, 25, 30, 40, 45, 50, 60, 70, 80, 90, 100, 120, 140, 150, 160,
	180, 200, 220, 250, 300, 400, 500, 1000};
#define LENGTHS (sizeof lengths_cm / sizeof *lengths_cm)

static double to_five(double cm)
{
	return ceil(cm / 5 - 1e-9) * 5;
}

/* Wide and high enough for the bodies; what more is asked the rules say. */
static void set_sides(struct ts_tank *tank, double length_cm, const struct ts_check *c,
	const struct ts_practice *practice)
{
	const double *p = practice->value;

	/* What is not given is taken at its best, as everywhere. */
	if (!(tank->water_change.days > 0))
		tank->water_change = (struct ts_every){
			practice->value[TS_P_CHANGE_GOOD], practice->value[TS_P_CHANGE_DAYS]};
	tank->volume_l = 0;
	tank->length_cm = length_cm;
	tank->width_cm = tank->height_cm = to_five(fmin(length_cm / 2, 50));
	for (size_t i = 0; i < c->group_count; i++) {
		const struct ts_species *s = c->groups[i].group.species;
		double wide = p[s->body == TS_BODY_EEL ? TS_P_ROOM_WIDTH_EEL : TS_P_ROOM_WIDTH];
		double high = p[TS_P_ROOM_HEIGHT] * p[TS_P_DEPTH_FUSIFORM + s->body];

		tank->width_cm = fmax(tank->width_cm, to_five(wide * s->adult_length_cm));
		if (s->kind == TS_ANIMAL_FISH)
			tank->height_cm = fmax(tank->height_cm, to_five(high * s->adult_length_cm));
	}
}

static unsigned grave(const struct ts_rulings *all)
{
	unsigned sum = 0;

	for (size_t i = 0; i < all->count; i++) {
		if (all->at[i].severity >= TS_CONCERN)
			sum += all->at[i].severity;
	}
	return sum;
}

/* What the rules and the load have against the animals in this tank, summed. */
static unsigned against(
	const struct ts_tank *tank, const struct ts_practice *practice, const struct ts_check *c)
{
	struct ts_group groups[TS_REMEDIES_TRIED];
	struct ts_load_case asked = {.groups = groups,
		.count = c->group_count,
		.tank = tank,
		.temp_c = (double)NAN,
		.kh_dh = (double)NAN,
		.kh_new_dh = (double)NAN,
		.no3_new_mg_l = (double)NAN};
	double limit = practice->value[c->nitrate_sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE
							    : TS_P_NITRATE_CONCERN];
	struct ts_floor_sum floors = {0};
	unsigned sum = 0;
	struct ts_load load;

	for (size_t i = 0; i < c->group_count; i++) {
		struct ts_rulings all = {.count = 0};

		groups[i] = c->groups[i].group;
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
	if (ts_load_of(&asked, practice, &load) == TS_OK && load.no3_steady_mg_l.value >= limit)
		sum += TS_CONFLICT;
	return sum;
}

void ts_check_smallest_tank(const struct ts_plan *plan, const struct ts_practice *practice,
	const struct ts_check *c, struct ts_smallest_tank *ret)
{
	struct ts_tank tank = plan->tank;
	unsigned least;

	*ret = (struct ts_smallest_tank){0};
	if (!c->group_count || c->group_count > TS_REMEDIES_TRIED)
		return;
	set_sides(&tank, lengths_cm[LENGTHS - 1], c, practice);
	least = against(&tank, practice, c); /* what no room mends */
	for (size_t i = 0; i + 1 < LENGTHS; i++) {
		set_sides(&tank, lengths_cm[i], c, practice);
		if (tank.width_cm > tank.length_cm || against(&tank, practice, c) > least)
			continue;
		*ret = (struct ts_smallest_tank){tank.length_cm, tank.width_cm, tank.height_cm,
			tank.length_cm * tank.width_cm * tank.height_cm / 1000};
		return;
	}
}
