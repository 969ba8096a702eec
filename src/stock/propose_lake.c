/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The list of the fish of a rift lake, which are kept among their own, behind those of a community.
 */
#include "stock/propose_work.h"

#include <string.h>

#include "base/arena.h"
#include "stock/compose.h"

/* Whether two lists are of the same fish. */
static bool same_fish(const struct ts_community *a, const struct ts_community *b)
{
	for (size_t i = 0; i < a->count; i++) {
		const struct ts_species *s = a->lines[i].group.species;
		bool there = s->kind != TS_ANIMAL_FISH;

		for (size_t j = 0; j < b->count; j++)
			there |= b->lines[j].group.species == s;
		if (!there)
			return false;
	}
	return true;
}

/* Lists of lake fish that are looked through, and cichlids that are a group. */
#define LAKE_LISTS 5
#define LAKE_GROUP 6

/* A group of cichlids of a lake, with nobody from elsewhere. */
static bool of_a_lake(const struct ts_community *c)
{
	bool group = false;

	for (size_t i = 0; i < c->count; i++) {
		const struct ts_group *g = &c->lines[i].group;

		if (g->species->kind == TS_ANIMAL_FISH && !ts_compose_of_rift_lake(g->species))
			return false;
		group |= strcmp(g->species->family, "Cichlidae") == 0 &&
			 ts_group_count(g) >= LAKE_GROUP;
	}
	return group;
}

bool ts_proposer_add_lake(
	const struct ts_wish *wish, struct ts_arena *arena, struct ts_proposal *io)
{
	const struct ts_arena before = *arena;
	struct ts_wish lake = *wish;
	struct ts_proposal p;

	if (!io->count || io->count >= wish->lists || io->conditions || io->change_percent > 0 ||
		wish->theme != TS_THEME_NONE || wish->with_count || wish->resident_count ||
		wish->reach > TS_REACH_HOME || wish->small_only)
		return true;
	lake.theme = TS_THEME_LAKE;
	lake.lists = LAKE_LISTS;
	if (!ts_proposer_attempt(&lake, false, arena, &p))
		return false;
	for (size_t l = 0; l < p.count; l++) {
		bool known = false;

		for (size_t i = 0; i < io->count; i++)
			known |= same_fish(&p.lists[l], &io->lists[i]);
		if (known || !of_a_lake(&p.lists[l]))
			continue;
		p.lists[l].equal = false;
		io->lists[io->count++] = p.lists[l];
		return true;
	}
	ts_arena_back(arena, &before);
	return true;
}
