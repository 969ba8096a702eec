/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Each species found, in a line of what it needs and one of what it lives in.
 */
#include "answers/find.h"

#include <string.h>

#include "base/arena.h"
#include "model/shape.h"
#include "words/animal.h"
#include "words/names.h"
#include "words/sentence.h"

struct work {
	const struct ts_asking *asking;
	const struct ts_find_question *q;
	struct ts_find_result *out;
	struct ts_text text; /* scratch */
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

/* Who is called so goes before whose name only holds it, then what every shop has. */
static bool after(const struct ts_find_hit *a, const struct ts_find_hit *b)
{
	return a->far > b->far || (a->far == b->far && a->species->sold > b->species->sold);
}

/* Equals stay in the order of the catalogue; without a pattern all do. */
static struct ts_find_hit *in_order(const struct work *w)
{
	size_t count = w->q->hit_count;
	struct ts_find_hit *hits =
		ts_arena_array(w->asking->arena, count ? count : 1, sizeof *hits);

	for (size_t i = 0; hits && i < count; i++) {
		struct ts_find_hit one = w->q->hits[i];
		size_t at = i;

		for (; w->q->pattern && at > 0 && after(&hits[at - 1], &one); at--)
			hits[at] = hits[at - 1];
		hits[at] = one;
	}
	return hits;
}

#define BANDS 5

static struct ts_texts cautions_of(struct ts_arena *arena, const struct ts_species *s)
{
	struct ts_texts texts = {ts_arena_array(arena, 32, sizeof *texts.items), 0};

	for (unsigned i = 0; texts.items && ts_words_cautions[i]; i++) {
		if (s->cautions & 1u << i)
			texts.items[texts.count++] = ts_words_cautions[i];
	}
	return texts;
}

/* The record's own values, without the bands that follow from the kind of water. */
static struct ts_find_band_result *bands_of(struct ts_arena *arena, const struct ts_species *s)
{
	const struct ts_envelopes *e = &s->water.usual;
	const struct ts_envelope *const of[BANDS] = {
		&e->gh_dh, &e->kh_dh, &e->ph, &e->temp_c, &e->salinity_g_l};
	static const int parameter[BANDS] = {TS_GH, TS_KH, TS_PH, TS_TEMPERATURE, TS_SALINITY};
	struct ts_find_band_result *bands = ts_arena_array(arena, BANDS, sizeof *bands);

	for (size_t i = 0; bands && i < BANDS; i++)
		bands[i] = (struct ts_find_band_result){ts_parameter_rows[parameter[i]].key,
			ts_parameter_rows[parameter[i]].unit, of[i]->tolerated, of[i]->preferred,
			of[i]->source.count ? of[i]->source.items[0] : NULL,
			of[i]->source.count > 1 ? of[i]->source.items[1] : NULL};
	return bands;
}

static void put_band(
	struct ts_text *text, const char *label, const struct ts_range *r, const char *unit)
{
	if (isnan(r->low))
		return;
	ts_text_puts(text, text->len ? ", " : "", label, *label ? " " : "", NULL);
	ts_say_range(text, r, 1);
	ts_text_puts(text, *unit ? " " : "", unit, NULL);
}

/* "Agassiz's cory (Brochis agassizii): grows to 6 cm; grown it needs 80 cm of length; wants
 * company: 6 at least, better 10; mostly wild-caught". */
static const char *says(struct work *w, const struct ts_species *s)
{
	const struct ts_texts know = ts_answer_to_know(w->asking->arena, s);

	ts_say_name(&w->text, s);
	ts_text_put(&w->text, ": ");
	ts_say_room_of(&w->text, s);
	ts_text_put(&w->text, "; ");
	ts_say_company(&w->text, s);
	for (size_t i = 0; i < know.count; i++)
		ts_text_puts(&w->text, i ? ", " : "; ", know.items[i], NULL);
	return keep(w);
}

static const char *lives_in(struct work *w, const struct ts_species *s)
{
	const struct ts_envelopes *water = &s->water.usual;

	put_band(&w->text, "GH", &water->gh_dh.tolerated, "");
	put_band(&w->text, "KH", &water->kh_dh.tolerated, "");
	put_band(&w->text, "pH", &water->ph.tolerated, "");
	put_band(&w->text, "", &water->temp_c.tolerated, "C");
	ts_text_puts(
		&w->text, "; ", ts_words_home_water_said[s->home_water], "; ", s->family, NULL);
	return keep(w);
}

/* The name that holds the pattern, where it stands nowhere else. */
static const char *also(struct work *w, const struct ts_find_hit *hit)
{
	const struct ts_species *s = hit->species;

	if (!hit->name || strcmp(hit->name, s->species) == 0 || strcmp(hit->name, s->family) == 0 ||
		(s->common.en.count && strcmp(hit->name, s->common.en.items[0]) == 0))
		return NULL;
	ts_text_puts(&w->text, "also called ", hit->name, NULL);
	return keep(w);
}

static struct ts_find_species_result row(struct work *w, const struct ts_find_hit *hit)
{
	struct ts_arena *arena = w->asking->arena;
	const struct ts_species *s = hit->species;
	struct ts_find_species_result r = {.species = s->species,
		.form = s->form,
		.id = ts_answer_id(arena, s->file),
		.common = ts_answer_common(s),
		.matched = hit->name,
		.family = s->family,
		.home_water = ts_words_home_water[s->home_water],
		.sold = ts_words_sold[s->sold],
		.swims = ts_words_swims[s->swims],
		.file = s->file,
		.adult_length_cm = s->adult_length_cm,
		.group_least = s->group.least,
		.group_comfortable = s->group.comfortable,
		.tank_length_cm = ts_match_tank_length_cm(s),
		.says = says(w, s),
		.lives_in = lives_in(w, s),
		.also = also(w, hit),
		.cautions = cautions_of(arena, s),
		.bands = bands_of(arena, s),
		.band_count = BANDS};
	struct ts_match match;

	ts_match_species(s, w->q->profile, w->q->keeping, w->asking->practice, &match);
	r.parameters = ts_answer_parameters(arena, &match, w->q->profile, &r.parameter_count);
	return r;
}

static void headline(struct work *w)
{
	if (w->q->hit_count)
		ts_text_number(&w->text, (double)w->q->hit_count, 0);
	else
		ts_text_put(&w->text, "None");
	ts_text_put(&w->text, " of ");
	ts_text_number(&w->text, (double)w->q->catalogue->count, 0);
	ts_text_put(&w->text, " species");
	w->out->headline = keep(w);
	if (!w->q->unknown)
		return;
	ts_say_candidates(&w->text, w->q->pattern, w->q->candidates);
	w->out->unknown_says = keep(w);
}

static void did_you_mean(struct work *w)
{
	struct ts_texts *texts = &w->out->did_you_mean;

	texts->items = ts_arena_array(w->asking->arena, TS_CANDIDATES_MOST, sizeof *texts->items);
	for (size_t i = 0; texts->items && i < w->q->candidates->count; i++)
		texts->items[texts->count++] = w->q->candidates->items[i].species->species;
}

bool ts_answer_find(const struct ts_asking *asking, const struct ts_find_question *q,
	struct ts_find_result *ret)
{
	struct ts_find_result r = q->counts;
	struct work w = {.asking = asking, .q = q, .out = &r};
	struct ts_find_hit *hits = in_order(&w);

	r.pattern = q->pattern;
	r.species_count = q->catalogue->count;
	r.overlays_say = q->overlays_say;
	r.found = ts_arena_array(asking->arena, q->hit_count ? q->hit_count : 1, sizeof *r.found);
	if (asking->arena->failed)
		return false;
	ts_text_open(&w.text, &asking->arena->allocator);
	headline(&w);
	for (size_t i = 0; i < q->hit_count; i++)
		r.found[r.found_count++] = row(&w, &hits[i]);
	did_you_mean(&w);
	asking->arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	*ret = r;
	return !asking->arena->failed;
}
