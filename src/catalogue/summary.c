/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Counting a catalogue. A group is the folder in which a record stands.
 */
#include "catalogue/summary.h"

#include <string.h>

#include "base/arena.h"

const char *const ts_grade_words[TS_GRADE__COUNT] = {"published", "practice", "derived", "memory"};

enum ts_grade ts_grade_of(const char *source)
{
	for (int g = TS_GRADE_PRACTICE; g < TS_GRADE__COUNT; g++) {
		if (strcmp(source, ts_grade_words[g]) == 0)
			return (enum ts_grade)g;
	}
	return TS_GRADE_PUBLISHED;
}

static void count_values(const struct ts_envelopes *e, struct ts_summary *ret)
{
	const struct ts_envelope *const all[] = {
		&e->ph, &e->gh_dh, &e->kh_dh, &e->temp_c, &e->salinity_g_l};

	for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
		for (size_t j = 0; j < all[i]->source.count; j++)
			ret->values[ts_grade_of(all[i]->source.items[j])]++;
	}
}

static bool published(const struct ts_envelope *e)
{
	return e->source.count && ts_grade_of(e->source.items[0]) == TS_GRADE_PUBLISHED;
}

/* The folder's name: "livebearers" of ".../livebearers/poecilia-reticulata.yaml". */
static size_t group_of(const char *file, const char **ret)
{
	const char *slash = strrchr(file, '/'), *start = slash ? slash : file;

	while (start > file && start[-1] != '/')
		start--;
	*ret = slash ? start : "";
	return slash ? (size_t)(slash - start) : 0;
}

static void count_group(
	const struct ts_species *s, struct ts_arena *arena, size_t *room, struct ts_summary *ret)
{
	const char *name;
	size_t len = group_of(s->file, &name), at = 0;
	struct ts_tally *moved;
	char *copy;

	for (; at < ret->group_count; at++) {
		const struct ts_tally *t = &ret->groups[at];
		int order = strncmp(t->name, name, len);

		if (order == 0 && !t->name[len]) {
			ret->groups[at].count++;
			return;
		}
		if (order >= 0)
			break;
	}
	copy = ts_arena_text(arena, name, len);
	moved = ts_arena_grow(arena, ret->groups, ret->group_count, room, sizeof *moved);
	if (!copy || !moved)
		return;
	ret->groups = moved;
	memmove(moved + at + 1, moved + at, (ret->group_count - at) * sizeof *moved);
	moved[at] = (struct ts_tally){copy, 1};
	ret->group_count++;
}

void ts_summarise(const struct ts_species *const *species, size_t count, struct ts_arena *arena,
	struct ts_summary *ret)
{
	size_t room = 0;

	*ret = (struct ts_summary){.species = count};
	for (size_t i = 0; i < count; i++) {
		const struct ts_species *s = species[i];
		bool fish = s->kind == 0;

		count_group(s, arena, &room, ret);
		ret->home_water[s->home_water]++;
		count_values(&s->water.usual, ret);
		ret->fish += fish;
		ret->fish_ph_published += fish && published(&s->water.usual.ph);
		ret->fish_gh_published += fish && published(&s->water.usual.gh_dh);
		ret->fish_temp_published += fish && published(&s->water.usual.temp_c);
	}
}
