/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Remake's way without work: what was wished for as far as it bears the water as it is, then whom
 * that water suits. Nobody is sent to an animal that may not be named unasked, nor to one that
 * needs a larger tank; near the wish in size comes first.
 */
#include <math.h>
#include <stdlib.h>

#include "cli/remake.h"
#include "words/animal.h"
#include "words/names.h"

#define SHOWN_MOST 5

struct other {
	const struct ts_match *match;
	double unlike; /* of the sizes, log of the ratio */
	size_t place;  /* by fit */
};

static void add_name(struct session *s, struct ts_texts *list, const struct ts_species *species)
{
	struct ts_text text;

	ts_text_open(&text, &s->arena->allocator);
	ts_say_name(&text, species);
	care_note(s, list, care_take(s, &text));
	ts_text_drop(&text);
}

static int compare_others(const void *a, const void *b)
{
	const struct other *x = a, *y = b;

	if (x->match->verdict != y->match->verdict)
		return x->match->verdict < y->match->verdict ? -1 : 1;
	if (x->unlike != y->unlike)
		return x->unlike < y->unlike ? -1 : 1;
	return x->place < y->place ? -1 : 1;
}

static bool is_wished(const struct remake_call *c, const struct ts_species *species)
{
	for (size_t i = 0; i < c->wish.wanted_count; i++) {
		if (c->wish.wanted[i] == species)
			return true;
	}
	return false;
}

static bool worth_naming(const struct remake_call *c, const struct ts_match *m)
{
	return m->verdict <= TS_TOLERATES && ts_match_advised_unasked(m->species) &&
	       !is_wished(c, m->species) &&
	       !(c->volume_known && ts_match_tank_volume_l(m->species) > c->volume_l);
}

static double unlike(const struct remake_call *c, const struct ts_species *species)
{
	return c->wish.wanted_count
		       ? fabs(log(species->adult_length_cm / c->wish.wanted[0]->adult_length_cm))
		       : 0;
}

static void name_others(struct session *s, const struct remake_call *c, const struct ts_match *m,
	size_t count, struct ts_texts *ret)
{
	struct other *others = ts_arena_array(s->arena, count, sizeof *others);
	size_t n = 0;

	if (!others)
		return;
	for (size_t i = 0; i < count; i++) {
		if (worth_naming(c, &m[i]))
			others[n++] = (struct other){&m[i], unlike(c, m[i].species), i};
	}
	if (n)
		qsort(others, n, sizeof *others, compare_others);
	for (size_t i = 0; i < n && i < SHOWN_MOST; i++)
		add_name(s, ret, others[i].match->species);
}

void remake_as_it_is(struct session *s, const struct remake_call *c, struct ts_texts *ret_wished,
	struct ts_texts *ret_others)
{
	const struct ts_catalogue *all = s->catalogue;
	struct ts_match *m = ts_arena_array(s->arena, all->count, sizeof *m);

	if (!m)
		return;
	for (size_t i = 0; i < all->count; i++) {
		ts_match_species(
			all->items[i], &c->answer.profile, &c->wish.keeping, s->practice, &m[i]);
		if (m[i].verdict <= TS_TOLERATES && is_wished(c, m[i].species))
			add_name(s, ret_wished, m[i].species);
	}
	ts_match_sort(m, all->count);
	name_others(s, c, m, all->count, ret_others);
}
