/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Remake's way without work: what was wished for as far as it bears the water as it is, then whom
 * that water suits. Nobody is sent to an animal that may not be named unasked, nor to one that
 * needs a larger tank; near the wish in size comes first.
 */
#include <math.h>
#include <stdlib.h>

#include "answers/remake_work.h"
#include "base/arena.h"
#include "stock/misfit.h"
#include "words/animal.h"

#define SHOWN_MOST 5

struct other {
	const struct ts_match *match;
	double unlike; /* of the sizes, log of the ratio */
	size_t place;  /* by fit */
};

static void add_name(
	struct ts_remake_work *w, struct ts_texts *list, const struct ts_species *species)
{
	ts_say_name(&w->text, species);
	ts_asking_note(w->asking, list, ts_remake_keep(w));
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

static bool is_wished(const struct ts_remake_work *w, const struct ts_species *species)
{
	for (size_t i = 0; i < w->wish.wanted_count; i++) {
		if (w->wish.wanted[i] == species)
			return true;
	}
	return false;
}

static bool worth_naming(const struct ts_remake_work *w, const struct ts_match *m)
{
	return m->verdict <= TS_TOLERATES && ts_match_advised_unasked(m->species) &&
	       !is_wished(w, m->species) &&
	       !(w->volume_known && ts_match_tank_volume_l(m->species) > w->volume_l);
}

static double unlike(const struct ts_remake_work *w, const struct ts_species *species)
{
	return w->wish.wanted_count
		       ? fabs(log(species->adult_length_cm / w->wish.wanted[0]->adult_length_cm))
		       : 0;
}

static void name_others(struct ts_remake_work *w, const struct ts_match *m, size_t count)
{
	struct other *others = ts_arena_array(w->asking->arena, count, sizeof *others);
	size_t n = 0;

	if (!others)
		return;
	for (size_t i = 0; i < count; i++) {
		if (worth_naming(w, &m[i]))
			others[n++] = (struct other){&m[i], unlike(w, m[i].species), i};
	}
	if (n)
		qsort(others, n, sizeof *others, compare_others);
	for (size_t i = 0; i < n && i < SHOWN_MOST; i++)
		add_name(w, &w->r.suits_as_it_is, others[i].match->species);
}

/* One more sentence: what leads it, the names, what ends it. */
static void note_names(
	struct ts_remake_work *w, const char *lead, const struct ts_texts *names, const char *end)
{
	ts_text_put(&w->text, lead);
	for (size_t i = 0; i < names->count; i++)
		ts_text_puts(&w->text, i ? ", " : "", names->items[i], NULL);
	ts_text_put(&w->text, end);
	ts_asking_note(w->asking, &w->r.as_it_is_says, ts_remake_keep(w));
}

static void say_as_it_is(struct ts_remake_work *w)
{
	if (w->r.wished_as_it_is.count)
		note_names(w,
			"As far as the water goes, these of your wishes can live in it as it is: ",
			&w->r.wished_as_it_is,
			". tapshoal why says where it falls short of their best, and what room "
			"they need.");
	if (w->r.suits_as_it_is.count)
		note_names(w,
			"These suit your water as it is, or can live in it: ", &w->r.suits_as_it_is,
			". tapshoal rank lists them all.");
	else
		note_names(w,
			"No other animal fit for such a tank is known to suit the water as it is; "
			"tapshoal rank lists them all.",
			&(struct ts_texts){0}, "");
}

void ts_remake_as_it_is(struct ts_remake_work *w)
{
	size_t count = w->asking->species_count;
	struct ts_match *m = ts_arena_array(w->asking->arena, count + 1, sizeof *m);

	if (!m)
		return;
	for (size_t i = 0; i < count; i++) {
		ts_misfit_match(w->asking->species[i], &w->profile, &w->wish.keeping,
			w->asking->practice, &m[i]);
		if (m[i].verdict <= TS_TOLERATES && is_wished(w, m[i].species))
			add_name(w, &w->r.wished_as_it_is, m[i].species);
	}
	ts_match_sort(m, count);
	name_others(w, m, count);
	say_as_it_is(w);
}
