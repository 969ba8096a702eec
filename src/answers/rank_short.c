/* SPDX-License-Identifier: Apache-2.0 */
/*
 * No sentence is made of an animal here, and no match is kept: of each the verdict and its place in
 * the order are noted, and the few that are named are sorted.
 */
#include "answers/rank_short.h"

#include <stdlib.h>
#include <string.h>

#include "base/number.h"
#include "match/order.h"
#include "stock/misfit.h"
#include "water/contents.h"
#include "words/first.h"
#include "words/sentence.h"
#include "words/unusual.h"

#define POISONS_MOST 8 /* bits of TS_POISON__ALL and more */

struct ts_rank_short_animal {
	const struct ts_species *species;
	const char *id;
	bool no_home, no_room;
};

/* One that is to be named. */
struct place {
	const struct ts_rank_short_animal *animal;
	enum ts_verdict verdict;
	unsigned turn;
	double distance;
};

bool ts_rank_short_open(const struct ts_asking *asking, const struct ts_rank_question *q,
	struct ts_rank_short_call *ret)
{
	struct ts_rank_short_animal *animals =
		ts_arena_array(asking->arena, asking->species_count, sizeof *animals);

	*ret = (struct ts_rank_short_call){.practice = asking->practice, .animals = animals};
	for (size_t i = 0; animals && i < asking->species_count; i++) {
		const struct ts_species *s = asking->species[i];

		if (q->like && s != q->like && !ts_rank_alike(q->like, s))
			continue;
		animals[ret->count++] = (struct ts_rank_short_animal){.species = s,
			.id = ts_answer_id(asking->arena, s->file),
			.no_home = ts_answer_no_home(asking, s) != NULL,
			.no_room = q->tank && ts_answer_no_room(asking, s, q->tank)};
	}
	return !asking->arena->failed;
}

static int compare(const void *a, const void *b)
{
	const struct place *x = a, *y = b;

	if (x->verdict != y->verdict)
		return x->verdict < y->verdict ? -1 : 1;
	if (x->turn != y->turn)
		return x->turn < y->turn ? -1 : 1;
	return ts_match_compare(x->animal->species, x->distance, y->animal->species, y->distance);
}

static void take_figures(const struct ts_profile *p, struct ts_water_short_result *ret)
{
	double *const figures[] = {[TS_GH] = &ret->gh_dh,
		[TS_KH] = &ret->kh_dh,
		[TS_PH] = &ret->ph,
		[TS_TEMPERATURE] = &ret->temp_c,
		[TS_SALINITY] = &ret->salinity_g_l};

	for (int i = 0; i < TS_PARAMETER__COUNT; i++)
		*figures[i] = p->at[i].given ? p->at[i].value : (double)NAN;
	ret->ph_tank = p->ph_tank;
}

static const char *kept(struct ts_arena *arena, struct ts_text *text)
{
	const char *copy = text->len ? ts_arena_text(arena, ts_text_get(text), text->len) : NULL;

	arena->failed |= text->failed;
	ts_text_clear(text);
	return copy;
}

struct ts_water_short_result *ts_answer_water_short(
	struct ts_arena *arena, const struct ts_profile *p)
{
	struct ts_water_short_result *r = ts_arena_take(arena, sizeof *r);
	struct ts_text text;

	if (!r)
		return NULL;
	take_figures(p, r);
	if (!p->poisons.found)
		return r;
	r->poisons.items = ts_arena_array(arena, POISONS_MOST, sizeof *r->poisons.items);
	ts_text_open(&text, &arena->allocator);
	for (unsigned bit = 1; r->poisons.items && bit <= TS_POISON__ALL; bit <<= 1) {
		if (!(p->poisons.found & bit))
			continue;
		ts_say_poison(&text, bit, &p->poisons);
		r->poisons.items[r->poisons.count++] = kept(arena, &text);
	}
	ts_text_drop(&text);
	return r;
}

/* Sorts those that are named and hands their ids out. */
static void name(struct place *places, size_t count, const struct ts_rank_short_call *call,
	struct ts_arena *arena, struct ts_rank_short_result *io)
{
	if (count > 1)
		qsort(places, count, sizeof *places, compare);
	for (size_t i = 0; i < count; i++) {
		struct ts_texts *ids = &io->ids[places[i].verdict];

		if (ids->count == call->ids_most)
			continue;
		if (!ids->items)
			ids->items = ts_arena_array(arena,
				count < call->ids_most ? count : call->ids_most,
				sizeof *ids->items);
		if (ids->items)
			ids->items[ids->count++] = places[i].animal->id;
	}
}

bool ts_answer_rank_short(const struct ts_rank_short_call *call, const struct ts_profile *read,
	const struct ts_keeping *keeping, struct ts_arena *arena, struct ts_rank_short_result *io)
{
	struct place *places = ts_arena_array(arena, call->count ? call->count : 1, sizeof *places);
	struct ts_profile profile = *read;
	struct ts_text text;
	struct ts_match m;
	size_t named = 0;

	io->asked = call->count;
	io->water = ts_answer_water_short(arena, read);
	if (arena->failed)
		return false;
	ts_contents_sea_gh(&profile, call->practice->value[TS_P_SALT_FRESH]);
	for (size_t i = 0; i < call->count; i++) {
		const struct ts_rank_short_animal *a = &call->animals[i];

		ts_misfit_match(a->species, &profile, keeping, call->practice, &m);
		if (m.verdict != TS_EXCLUDED && (a->no_home || a->no_room)) {
			io->no_home += a->no_home;
			io->too_large += !a->no_home;
			continue;
		}
		io->of[m.verdict]++;
		if (m.verdict == TS_EXCLUDED)
			(*(m.limiting < 0 ? &io->excluded_by.copper
					  : &io->excluded_by.at[m.limiting]))++;
		if (call->lists >> m.verdict & 1)
			places[named++] = (struct place){
				a, m.verdict, ts_rank_turn(a->species), ts_match_distance_key(&m)};
	}
	name(places, named, call, arena, io);
	ts_text_open(&text, &arena->allocator);
	ts_rank_not_now(&text, read, io->of[TS_SUITS] + io->of[TS_TOLERATES] == 0);
	io->water->first = kept(arena, &text);
	ts_text_drop(&text);
	return !arena->failed;
}
