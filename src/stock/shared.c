/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What a plan can be told though its water or its tank is not given: the water that all its animals
 * share, and the smallest tank that holds them.
 */
#include "stock/check.h"

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

void ts_check_smallest_tank(const struct ts_plan *plan, const struct ts_practice *practice,
	const struct ts_check *c, struct ts_smallest_tank *ret)
{
	struct ts_group groups[TS_REMEDIES_TRIED];

	*ret = (struct ts_smallest_tank){0};
	if (c->group_count > TS_REMEDIES_TRIED)
		return;
	for (size_t i = 0; i < c->group_count; i++)
		groups[i] = c->groups[i].group;
	ts_smallest_tank(groups, c->group_count, c->nitrate_sensitive, &plan->tank, practice, ret);
}
