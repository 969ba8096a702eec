/* SPDX-License-Identifier: Apache-2.0 */
/*
 * First everything is matched, then said: the same match stands in a cell, in what is worst of an
 * animal, and in the headline.
 */
#include "answers/why_waters.h"

#include <string.h>

#include "answers/why.h"
#include "stock/misfit.h"
#include "water/series.h"
#include "words/animal.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"
#include "words/waterline.h"

/* Names that the headline lists. */
#define NAMED_MOST 3

/* One of several waters, and the parts of the year that its readings tell apart. */
struct water {
	const char *label;
	const struct ts_water *asked;
	struct ts_profile profile;
	const char **seasons;
	size_t season_count;
	struct ts_profile *of_season;
};

/* Where an animal fares worst: the water by all its readings, in it the part of the year. */
struct worst {
	size_t water;
	const char *season; /* NULL: the water has none */
	struct ts_match match;
	const struct ts_profile *profile; /* behind the match */
};

struct work {
	const struct ts_asking *asking;
	const struct ts_why_waters_question *q;
	struct water *waters;
	struct ts_match *cells; /* by species, then by water */
	struct worst *worst;
	struct ts_text text;
	struct ts_why_waters_result *out;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void count(struct work *w, size_t n)
{
	ts_text_number(&w->text, (double)n, 0);
}

static const struct ts_match *cell(const struct work *w, size_t species, size_t water)
{
	return &w->cells[species * w->q->water_count + water];
}

/* How many waters suit a species or are tolerated by it. */
static size_t homes(const struct work *w, size_t species)
{
	size_t found = 0;

	for (size_t i = 0; i < w->q->water_count; i++)
		found += cell(w, species, i)->verdict <= TS_TOLERATES;
	return found;
}

static const char *name_of_file(const char *file)
{
	const char *slash = strrchr(file, '/');

	return slash ? slash + 1 : file;
}

/* What a water is called: its name, or its file where another has the same name. */
static void label(struct work *w)
{
	for (size_t i = 0; i < w->q->water_count; i++) {
		const char *name = w->q->waters[i].water->name;

		w->waters[i].label = name ? name : name_of_file(w->q->waters[i].file);
		for (size_t n = 0; name && n < w->q->water_count; n++) {
			const char *other = w->q->waters[n].water->name;

			if (n != i && other && strcmp(other, name) == 0)
				w->waters[i].label = w->q->waters[i].file;
		}
	}
}

/* The profile of all readings, and that of each part of the year from copies of its readings. */
static void open_water(struct work *w, size_t i)
{
	struct ts_arena *arena = w->asking->arena;
	struct water *one = &w->waters[i];
	const struct ts_water *water = one->asked = w->q->waters[i].water;

	ts_profile_make(water, w->q->keeping, w->asking->practice, w->asking->today, &one->profile);
	one->seasons = ts_arena_array(arena, TS_SEASONS_MOST, sizeof *one->seasons);
	one->season_count = one->seasons ? ts_water_seasons(water, one->seasons) : 0;
	one->of_season = ts_arena_array(arena, one->season_count, sizeof *one->of_season);
	for (size_t n = 0; one->of_season && n < one->season_count; n++) {
		struct ts_reading *copies =
			ts_arena_array(arena, water->reading_count, sizeof *copies);
		struct ts_water part = *water;

		if (!copies)
			return;
		memcpy(copies, water->readings, water->reading_count * sizeof *copies);
		part.readings = copies;
		ts_water_take_season(&part, one->seasons[n]);
		ts_profile_make(&part, w->q->keeping, w->asking->practice, w->asking->today,
			&one->of_season[n]);
	}
}

static int by_miss(const struct ts_match *a, const struct ts_match *b, int parameter)
{
	double miss_a = fabs(a->at[parameter].outside_by),
	       miss_b = fabs(b->at[parameter].outside_by);

	return miss_a < miss_b ? -1 : miss_a > miss_b;
}

/* Below 0: the first fares better than the second. */
static int compare(const struct ts_match *a, const struct ts_match *b)
{
	double fit_a = isnan(a->order) ? -1 : a->order, fit_b = isnan(b->order) ? -1 : b->order;

	if (a->verdict != b->verdict)
		return a->verdict < b->verdict ? -1 : 1;
	if (fit_a != fit_b)
		return fit_a > fit_b ? -1 : 1;
	return a->limiting >= 0 && a->limiting == b->limiting ? by_miss(a, b, a->limiting) : 0;
}

/* The worst part of the year, where it is as bad as all readings together. */
static void find_season(struct work *w, const struct ts_species *species, struct worst *worst)
{
	const struct water *in = &w->waters[worst->water];
	struct ts_match match, found = {0};
	size_t at = in->season_count;

	for (size_t i = 0; i < in->season_count; i++) {
		ts_misfit_match(
			species, &in->of_season[i], w->q->keeping, w->asking->practice, &match);
		if (at < in->season_count && compare(&match, &found) <= 0)
			continue;
		found = match;
		at = i;
	}
	if (at == in->season_count || found.verdict < worst->match.verdict)
		return;
	worst->season = in->seasons[at];
	worst->match = found;
	worst->profile = &in->of_season[at];
}

static void match_all(struct work *w)
{
	for (size_t i = 0; i < w->q->species_count; i++) {
		struct worst *worst = &w->worst[i];

		for (size_t n = 0; n < w->q->water_count; n++) {
			ts_misfit_match(w->q->species[i], &w->waters[n].profile, w->q->keeping,
				w->asking->practice, &w->cells[i * w->q->water_count + n]);
			if (n && compare(cell(w, i, n), cell(w, i, worst->water)) > 0)
				worst->water = n;
		}
		worst->match = *cell(w, i, worst->water);
		worst->profile = &w->waters[worst->water].profile;
		find_season(w, w->q->species[i], worst);
	}
}

/* What people call it; with all its names where another here is called the same. */
static const char *called(struct work *w, size_t species)
{
	const struct ts_species *const *all = w->q->species;

	ts_say_animal(&w->text, all[species]);
	for (size_t i = 0; i < w->q->species_count; i++) {
		struct ts_text other;
		bool same;

		ts_text_open(&other, &w->asking->arena->allocator);
		ts_say_animal(&other, all[i]);
		same = all[i] != all[species] &&
		       strcmp(ts_text_get(&other), ts_text_get(&w->text)) == 0;
		w->asking->arena->failed |= other.failed;
		ts_text_drop(&other);
		if (!same)
			continue;
		ts_text_clear(&w->text);
		ts_say_name(&w->text, all[species]);
		break;
	}
	return keep(w);
}

/* "tolerates: GH 6 too high": a cell is short, the full sentence stands in the list. */
static const char *in_short(struct work *w, const struct ts_match *m, const struct ts_profile *p)
{
	const struct ts_parameter_fit *f = m->limiting < 0 ? NULL : &m->at[m->limiting];
	double miss = !f ? 0 : isnan(f->preferred.low) ? f->outside_by : f->uncomfortable_by;
	bool warm = m->limiting == TS_TEMPERATURE;

	ts_text_put(&w->text, ts_verdict_words[m->verdict]);
	if (m->verdict == TS_SUITS)
		return keep(w);
	if (!isnan(m->copper_borne_mg_l)) {
		ts_text_put(&w->text, ": copper");
	} else if (p->poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE)) {
		ts_text_put(&w->text, ": ammonia, nitrite");
	} else if (m->verdict == TS_UNSURE && !isnan(m->oxygen_borne_mg_l)) {
		ts_text_put(&w->text, ": oxygen");
	} else if (p->unusual & TS_UNUSUAL__NOBODY_YET) {
		ts_text_puts(&w->text, ": ", ts_nobody_yet_word(p), NULL);
	} else if (!isnan(m->nitrate_borne_mg_l)) {
		ts_text_put(&w->text, ": nitrate");
	} else if (m->gh_missing) {
		ts_text_put(&w->text, ": GH not given");
	} else if (m->kh_missing) {
		ts_text_put(&w->text, ": KH not given");
	} else if (f && f->known && miss != 0) {
		ts_text_puts(&w->text, ": ", warm ? "" : ts_parameter_rows[m->limiting].label,
			warm ? "" : " ", NULL);
		ts_text_number_short(&w->text, fabs(miss), ts_parameter_rows[m->limiting].decimals);
		ts_text_puts(&w->text, warm ? " C" : "", miss > 0 ? " too high" : " too low", NULL);
	}
	return keep(w);
}

static const char *deciding(struct work *w, const struct ts_match *m, const struct ts_profile *p)
{
	ts_why_deciding(&w->text, m, p);
	return keep(w);
}

static const char *limiting(const struct ts_match *m)
{
	return m->limiting < 0 ? NULL : ts_parameter_rows[m->limiting].key;
}

/* "soft tap, summer: excluded; GH 3, comfortable from 8: 5 too soft" */
static void put_worst(struct work *w, size_t species)
{
	const struct worst *worst = &w->worst[species];

	ts_text_puts(&w->text, w->waters[worst->water].label, worst->season ? ", " : "",
		worst->season ? worst->season : "", ": ", ts_verdict_words[worst->match.verdict],
		NULL);
	if (worst->match.verdict == TS_SUITS)
		return;
	ts_text_put(&w->text, "; ");
	ts_why_deciding(&w->text, &worst->match, worst->profile);
}

static void fill_cell(struct work *w, size_t species, size_t water)
{
	const struct ts_species *s = w->q->species[species];
	const struct ts_profile *p = &w->waters[water].profile;
	const struct ts_match *m = cell(w, species, water);
	const struct worst *worst = &w->worst[species];
	struct ts_why_cell_result row = {.species = s->species,
		.id = ts_answer_id(w->asking->arena, s->file),
		.common = ts_answer_common(s),
		.water = w->waters[water].label,
		.verdict = ts_verdict_words[m->verdict],
		.fit = m->fit,
		.limiting = limiting(m),
		.says = deciding(w, m, p),
		.in_short = in_short(w, m, p),
		.worst = worst->water == water,
		.worst_season = worst->water == water ? worst->season : NULL};

	row.parameters = ts_answer_parameters(w->asking->arena, m, p, &row.parameter_count);
	w->out->cells[w->out->cell_count++] = row;
}

static void fill_species(struct work *w, size_t i)
{
	const struct ts_species *s = w->q->species[i];
	const struct worst *worst = &w->worst[i];
	struct ts_why_species_result row = {.species = s->species,
		.id = ts_answer_id(w->asking->arena, s->file),
		.common = ts_answer_common(s),
		.called = called(w, i),
		.waters = homes(w, i),
		.worst = {w->waters[worst->water].label, worst->season,
			ts_verdict_words[worst->match.verdict], limiting(&worst->match),
			deciding(w, &worst->match, worst->profile), NULL}};

	ts_say_name(&w->text, s);
	row.named = keep(w);
	put_worst(w, i);
	row.worst.in_a_line = keep(w);
	w->out->species[w->out->species_count++] = row;
}

/* What stands in a water before any animal does, and what makes it unlike others. */
static void note_water(struct work *w, const struct water *one, struct ts_texts *list)
{
	const struct ts_profile *p = &one->profile;

	for (unsigned bit = 1; bit <= TS_POISON__ALL; bit <<= 1) {
		if (!(p->poisons.found & bit))
			continue;
		ts_text_puts(&w->text, one->label, ": ", NULL);
		ts_say_poison(&w->text, bit, &p->poisons);
		ts_asking_note(w->asking, list, keep(w));
	}
	for (unsigned bit = 1; bit <= TS_UNUSUAL__ALL; bit <<= 1) {
		if (!(p->unusual & bit))
			continue;
		ts_text_puts(&w->text, one->label, ": ", NULL);
		ts_say_unusual(&w->text, bit, p);
		ts_asking_note(w->asking, list, keep(w));
	}
}

static void fill_water(struct work *w, size_t i)
{
	const struct water *one = &w->waters[i];
	struct ts_why_water_result row = {.name = one->label,
		.file = w->q->waters[i].file,
		.seasons = {one->seasons, one->season_count},
		.water = ts_arena_take(w->asking->arena, sizeof *row.water)};

	if (row.water)
		*row.water = ts_answer_water(
			w->asking->arena, one->asked->name, (double)NAN, &one->profile);
	ts_say_water_line(&w->text, &one->profile);
	row.says = keep(w);
	note_water(w, one, &row.notes);
	w->out->waters[w->out->water_count++] = row;
}

static void put_homeless(struct work *w, size_t homeless)
{
	size_t named = 0;

	for (size_t i = 0; i < w->q->species_count && homeless <= NAMED_MOST; i++) {
		if (!w->out->species[i].waters)
			ts_text_puts(
				&w->text, named++ ? ", " : "", w->out->species[i].called, NULL);
	}
	if (homeless > NAMED_MOST) {
		count(w, homeless);
		ts_text_put(&w->text, " species");
	}
}

static void lead(struct work *w)
{
	size_t species = w->q->species_count, homeless = 0, hardest = 0;

	for (size_t i = 0; i < species; i++) {
		homeless += !w->out->species[i].waters;
		if (compare(&w->worst[i].match, &w->worst[hardest].match) > 0)
			hardest = i;
	}
	w->out->all_have_one = homeless == 0;
	if (species == 1) {
		ts_text_puts(&w->text, w->out->species[0].called, ": ", NULL);
		count(w, w->out->species[0].waters);
		ts_text_put(&w->text, " of ");
		count(w, w->q->water_count);
		ts_text_put(&w->text, " waters will do");
	} else if (homeless == 0) {
		ts_text_put(&w->text, "Each of the ");
		count(w, species);
		ts_text_put(&w->text, " species has a water here that will do");
	} else if (homeless == species) {
		ts_text_put(&w->text, "None of these waters will do for any of the ");
		count(w, species);
		ts_text_put(&w->text, " species");
	} else {
		ts_text_put(&w->text, "No water here will do for ");
		put_homeless(w, homeless);
	}
	w->out->headline = keep(w);
	ts_text_puts(&w->text, "Worst of all: ", w->out->species[hardest].called, " in ", NULL);
	put_worst(w, hardest);
	w->out->decides = keep(w);
}

static void say_all(struct work *w)
{
	struct ts_texts *notes = &w->out->notes;

	for (size_t i = 0; i < w->q->water_count; i++)
		fill_water(w, i);
	for (size_t i = 0; i < w->q->species_count; i++)
		fill_species(w, i);
	for (size_t i = 0; i < w->q->species_count * w->q->water_count; i++)
		fill_cell(w, i / w->q->water_count, i % w->q->water_count);
	lead(w);
	ts_asking_note(w->asking, notes, w->q->overlays_say);
	for (size_t i = 0; i < w->q->water_count; i++) {
		for (size_t n = 0; n < w->out->waters[i].notes.count; n++)
			ts_asking_note(w->asking, notes, w->out->waters[i].notes.items[n]);
	}
	if (!w->waters[0].profile.at[TS_TEMPERATURE].given)
		ts_asking_note(w->asking, notes, ts_own_temperature_says);
}

enum ts_status ts_answer_why_waters(const struct ts_asking *asking,
	const struct ts_why_waters_question *q, struct ts_why_waters_result *ret)
{
	struct ts_arena *arena = asking->arena;
	size_t cells = q->species_count * q->water_count;
	struct ts_why_waters_result r = {
		.waters = ts_arena_array(arena, q->water_count, sizeof *r.waters),
		.species = ts_arena_array(arena, q->species_count, sizeof *r.species),
		.cells = ts_arena_array(arena, cells, sizeof *r.cells),
		.animals_say = q->animals_say,
		.closing = "One species in full: tapshoal why SPECIES -w FILE."};
	struct work w = {.asking = asking,
		.q = q,
		.waters = ts_arena_array(arena, q->water_count, sizeof *w.waters),
		.cells = ts_arena_array(arena, cells, sizeof *w.cells),
		.worst = ts_arena_array(arena, q->species_count, sizeof *w.worst),
		.out = &r};

	if (arena->failed)
		return TS_NO_MEMORY;
	ts_text_open(&w.text, &arena->allocator);
	label(&w);
	for (size_t i = 0; i < q->water_count; i++)
		open_water(&w, i);
	if (!arena->failed) {
		match_all(&w);
		say_all(&w);
	}
	arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = r;
	return TS_OK;
}
