/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Random instances of the integer model: the same numbers on every machine for the same seed, so
 * that a failing instance has a name. Shared by the tests, the outside solvers and the benchmark.
 */
#ifndef TS_TESTS_RANDOM_MODEL_H
#define TS_TESTS_RANDOM_MODEL_H

#include "stock/model.h"

struct random_shape {
	size_t groups, genera, levels_most;
	int species_most, conflict_percent, friction_percent;
	int64_t weight_most, floor_most;
	bool coarse; /* few different figures: many ties */
	unsigned musts;
};

/* xorshift64*, Vigna 2016, ACM TOMS 42(4):30. */
static inline unsigned random_below(uint64_t *seed, unsigned n)
{
	*seed ^= *seed >> 12;
	*seed ^= *seed << 25;
	*seed ^= *seed >> 27;
	return (unsigned)((*seed * UINT64_C(0x2545F4914F6CDD1D)) >> 33) % n;
}

static inline bool random_percent(uint64_t *seed, int percent)
{
	return (int)random_below(seed, 100) < percent;
}

static inline void random_item(
	struct ts_model_item *item, uint64_t *seed, unsigned step, unsigned level, bool delicate)
{
	item->value = item->fit - 400 + (level ? 200 : 0) - (delicate ? 150 : 0);
	item->weight = (int)((1 + random_below(seed, 400 / step)) * step * (level + 1) / 2);
	item->floor = random_percent(seed, 20) ? (int)(100 * (1 + random_below(seed, 12))) : 0;
}

/* All levels of two groups conflict; sometimes a single pair of levels does. */
static inline void random_pairs(struct ts_model *m, uint64_t *seed, const struct random_shape *s)
{
	bool apart[64][64];

	for (size_t a = 0; a < 64; a++)
		for (size_t b = 0; b < 64; b++)
			apart[a][b] = random_percent(seed, s->conflict_percent);
	for (size_t i = 0; i < m->count; i++) {
		for (size_t j = 0; j < i; j++) {
			unsigned g = m->items[i].group, h = m->items[j].group;

			if (g == h)
				continue;
			if (apart[g % 64][(h * 7 + g / 64) % 64] || random_percent(seed, 1))
				ts_model_conflict(m, i, j);
			else if (random_percent(seed, s->friction_percent))
				ts_model_friction(m, i, j, 100 * (1 + random_below(seed, 3)));
		}
	}
}

static inline bool random_model(
	struct ts_model *m, struct ts_arena *arena, uint64_t seed, const struct random_shape *s)
{
	unsigned step = s->coarse ? 100 : 1;
	size_t levels[1024], count = 0;

	seed = seed * UINT64_C(0x9E3779B97F4A7C15) + 1;
	for (size_t g = 0; g < s->groups; g++)
		count += levels[g] = 1 + random_below(&seed, (unsigned)s->levels_most);
	if (!ts_model_open(m, arena, count, s->groups, s->genera))
		return false;
	m->species_most = s->species_most;
	m->extras_most = (int)(seed % 3);
	/* Every third wants two, or three, kinds, every fifth a role; some then have no list. */
	if (s->species_most > 1 && seed / 3 % 3 == 0)
		m->species_least = s->species_most > 3 ? 3 : 2;
	if (seed / 9 % 5 == 0)
		m->roles_must = 1u << seed / 45 % TS_ROLE__COUNT;
	m->weight_most = s->weight_most;
	m->floor_most = s->floor_most;
	m->fit_points = 2;
	for (int r = 0; r < TS_ROLE__COUNT; r++)
		m->role_points[r] = 100 * (TS_ROLE__COUNT - r);
	for (size_t g = 0, i = 0; g < s->groups; g++) {
		unsigned genus = random_below(&seed, (unsigned)s->genera);
		unsigned role =
			random_percent(&seed, 20) ? 0 : 1u << random_below(&seed, TS_ROLE__COUNT);
		int fit = (int)(random_percent(&seed, 30)
					? 1000
					: 1 + random_below(&seed, 1000 / step) * step);
		bool delicate = random_percent(&seed, 20);
		bool extra = !role && random_percent(&seed, 40);

		for (unsigned l = 0; l < levels[g]; l++, i++) {
			m->items[i] = (struct ts_model_item){.group = (unsigned)g,
				.genus = genus,
				.fit = fit,
				.role = role,
				.extra = extra};
			random_item(&m->items[i], &seed, step, l, delicate);
		}
		m->familiar[genus] |= random_percent(&seed, 20);
	}
	for (unsigned k = 0; k < s->musts; k++)
		m->must[random_below(&seed, (unsigned)s->groups)] = true;
	random_pairs(m, &seed, s);
	return true;
}

#endif
