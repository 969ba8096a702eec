/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The integer model and what a list is worth by its definition. The search in search.c is another
 * way to the same number; tests hold the two together.
 */
#include "stock/model.h"

#include "base/arena.h"

bool ts_model_open(struct ts_model *ret, struct ts_arena *arena, size_t count, size_t group_count,
	size_t genus_count)
{
	struct ts_model m = {.count = count,
		.words = count / 64 + 1,
		.group_count = group_count,
		.genus_count = genus_count,
		.species_least = 1,
		.species_most = 1};
	size_t bits = 0, pairs = 0;

	if (!ts_size_product(count, m.words, &bits) || !ts_size_product(count, count, &pairs)) {
		arena->failed = true;
		return false;
	}
	m.items = ts_arena_array(arena, count, sizeof *m.items);
	m.conflicts = ts_arena_array(arena, bits, sizeof *m.conflicts);
	m.frictions = ts_arena_array(arena, pairs, sizeof *m.frictions);
	m.must = ts_arena_array(arena, group_count, sizeof *m.must);
	m.familiar = ts_arena_array(arena, genus_count, sizeof *m.familiar);
	if (arena->failed)
		return false;
	*ret = m;
	return true;
}

void ts_model_conflict(struct ts_model *model, size_t i, size_t j)
{
	model->conflicts[i * model->words + j / 64] |= (uint64_t)1 << (j % 64);
	model->conflicts[j * model->words + i / 64] |= (uint64_t)1 << (i % 64);
}

bool ts_model_conflicts(const struct ts_model *model, size_t i, size_t j)
{
	return model->conflicts[i * model->words + j / 64] >> (j % 64) & 1;
}

void ts_model_friction(struct ts_model *model, size_t i, size_t j, unsigned points)
{
	model->frictions[i * model->count + j] = (uint16_t)points;
	model->frictions[j * model->count + i] = (uint16_t)points;
}

unsigned ts_model_friction_of(const struct ts_model *model, size_t i, size_t j)
{
	return model->frictions[i * model->count + j];
}

/* Whether every must is there, something besides extras and not too many of either, and the
 * familiar genera do not outnumber the new ones. */
static bool composed(const struct ts_model *m, const size_t *chosen, size_t count)
{
	size_t musts = 0, met = 0, mains = 0, familiar = 0, fresh = 0;

	for (size_t g = 0; g < m->group_count; g++)
		musts += m->must[g];
	for (size_t i = 0; i < count; i++) {
		const struct ts_model_item *item = &m->items[chosen[i]];

		met += m->must[item->group];
		mains += !item->extra;
		if (m->must[item->group] || item->extra)
			continue;
		if (m->familiar[item->genus])
			familiar++;
		else
			fresh++;
	}
	return met == musts && mains >= (size_t)m->species_least &&
	       mains <= (size_t)m->species_most && count - mains <= (size_t)m->extras_most &&
	       familiar <= fresh;
}

bool ts_model_points(const struct ts_model *m, const size_t *chosen, size_t count, int64_t *ret)
{
	int64_t points = 0, weight = 0, floor = 0;
	int fit = 1000;
	unsigned roles = 0;

	if (!composed(m, chosen, count))
		return false;
	for (size_t i = 0; i < count; i++) {
		const struct ts_model_item *item = &m->items[chosen[i]];

		points += item->value;
		weight += item->weight;
		floor += item->floor;
		roles |= item->role;
		fit = item->fit < fit ? item->fit : fit;
		for (size_t j = 0; j < i; j++) {
			if (ts_model_conflicts(m, chosen[i], chosen[j]) ||
				item->group == m->items[chosen[j]].group)
				return false;
			points -= ts_model_friction_of(m, chosen[i], chosen[j]);
		}
	}
	if (weight > m->weight_most || floor > m->floor_most || m->roles_must & ~roles)
		return false;
	for (int r = 0; r < TS_ROLE__COUNT; r++)
		points += roles >> r & 1 ? m->role_points[r] : 0;
	*ret = points + (int64_t)m->fit_points * fit;
	return true;
}

/* Whether nothing is lost by leaving out `j`, since `i` of the same group does all that it does. */
static bool dominates(const struct ts_model *m, size_t i, size_t j)
{
	const struct ts_model_item *a = &m->items[i], *b = &m->items[j];

	if (a->value < b->value || a->fit < b->fit || a->weight > b->weight ||
		a->floor > b->floor || b->role & ~a->role || a->extra != b->extra ||
		(a->value == b->value && a->weight == b->weight && i > j))
		return false;
	for (size_t k = 0; k < m->count; k++) {
		if (m->items[k].group != a->group &&
			(m->frictions[i * m->count + k] > m->frictions[j * m->count + k] ||
				(ts_model_conflicts(m, i, k) && !ts_model_conflicts(m, j, k))))
			return false;
	}
	return true;
}

bool ts_model_matters(const struct ts_model *m, size_t j)
{
	unsigned group = m->items[j].group;

	for (size_t i = j; i-- > 0 && m->items[i].group == group;) {
		if (dominates(m, i, j))
			return false;
	}
	for (size_t i = j + 1; i < m->count && m->items[i].group == group; i++) {
		if (dominates(m, i, j))
			return false;
	}
	return true;
}

void ts_model_remember(struct ts_model *model, const size_t *chosen, size_t count)
{
	for (size_t i = 0; i < count; i++) {
		const struct ts_model_item *item = &model->items[chosen[i]];

		if (!model->must[item->group] && !item->extra)
			model->familiar[item->genus] = true;
	}
}
