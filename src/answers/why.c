/* SPDX-License-Identifier: Apache-2.0 */
/*
 * In the order of the question: the verdict, the number that decides, the water, company, room,
 * cautions, sources. What stands before every word about a water (water/first.h) stands before a
 * verdict on it, too.
 */
#include "answers/why.h"

#include <math.h>

#include "answers/noted.h"
#include "answers/thin.h"
#include "answers/why_change.h"
#include "match/bands.h"
#include "model/shape.h"
#include "stock/misfit.h"
#include "water/first.h"
#include "words/animal.h"
#include "words/first.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

#define FACTS_MOST 14

struct work {
	const struct ts_asking *asking;
	const struct ts_why_question *q;
	struct ts_text text;
	struct ts_why_result *out;
	int unsettled; /* what would settle an "unsure": enum ts_parameter; -1: nothing is open */
	bool told;     /* what comes first of the water stands in some animal's first lines */
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

/* What lies beside its comfortable range though nothing limits it, as a pH; -1: nothing. */
static int beside_range(const struct ts_match *m)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		if (m->at[p].known && m->at[p].uncomfortable_by != 0)
			return p;
	}
	return -1;
}

void ts_why_deciding(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	const char *nobody_yet = ts_nobody_yet_says(profile);
	const bool excluded = m->verdict == TS_EXCLUDED && m->limiting >= 0;

	if (nobody_yet)
		ts_text_puts(text, "No animal before this water is put right: ", nobody_yet, NULL);
	else if (!isnan(m->copper_borne_mg_l))
		ts_say_copper(text, m, profile);
	else if (profile->poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE))
		ts_text_put(text, "Ammonia or nitrite stands in the water: see below");
	else if (!isnan(m->oxygen_borne_mg_l) && m->verdict == TS_UNSURE)
		ts_say_little_oxygen(text, m, profile);
	else if (!isnan(m->nitrate_borne_mg_l) && m->verdict == TS_UNSURE)
		ts_say_much_nitrate(text, m, profile);
	else if (m->gh_missing && !excluded)
		ts_text_put(text, "GH is not given, and it decides most");
	else if (m->kh_missing && m->verdict == TS_UNSURE)
		ts_text_put(
			text, "KH is not given, and by GH alone it may be beyond what it bears");
	else if (m->limiting >= 0)
		ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else if (beside_range(m) >= 0)
		ts_say_parameter(text, (enum ts_parameter)beside_range(m), &m->at[beside_range(m)]);
	else
		ts_text_put(text, "Everything that was measured lies in its comfortable range");
}

/* "GH 8 to 24, KH 6 to 14 and 22 to 26 C": what it is comfortable in. */
static void put_needs(struct work *w, const struct ts_match *m, bool temperature)
{
	static const enum ts_parameter order[] = {TS_GH, TS_KH, TS_TEMPERATURE, TS_SALINITY};
	bool any = false;

	for (size_t i = 0; i < sizeof order / sizeof *order; i++) {
		const struct ts_parameter_fit *f = &m->at[order[i]];
		const struct ts_range *r = isnan(f->preferred.low) ? &f->tolerated : &f->preferred;
		bool warm = order[i] == TS_TEMPERATURE;

		if (isnan(r->low) || (warm && !temperature))
			continue;
		if (order[i] == TS_SALINITY && !(r->low > 0))
			continue;
		ts_text_puts(&w->text, any ? ", " : "",
			warm ? "" : ts_parameter_rows[order[i]].label, warm ? "" : " ", NULL);
		ts_say_range(&w->text, r, 1);
		if (*ts_parameter_rows[order[i]].unit && order[i] >= TS_TEMPERATURE)
			ts_text_puts(&w->text, " ", ts_parameter_rows[order[i]].unit, NULL);
		any = true;
	}
}

/* Adds why it has no room, and that the length was reckoned, where it was; NULL: it has. */
static void put_no_room(struct work *w, const char *no_room)
{
	if (!no_room)
		return;
	ts_text_put(&w->text, no_room);
	if (w->q->assumed_litres > 0) {
		ts_text_put(&w->text, ", as ");
		ts_text_number_short(&w->text, w->q->assumed_litres, 0);
		ts_text_put(&w->text, " litres usually have: measure it");
	}
	ts_text_put(&w->text, ". ");
	ts_text_capital(&w->text, 0);
}

/* No water was given: its needs are the answer. */
static void say_needs(
	struct work *w, const struct ts_match *m, const char *no_room, struct ts_why_animal *ret)
{
	ts_say_animal(&w->text, m->species);
	ts_text_put(&w->text, " likes ");
	put_needs(w, m, true);
	if (w->q->tank)
		ts_text_put(&w->text, no_room ? ", and there is no room for it in your tank"
					      : "; your tank is large enough for it");
	ret->headline = keep(w);
	put_no_room(w, no_room);
	ts_text_put(&w->text, "Whether your water suits it: measure GH and KH, and give them "
			      "(--GH 14 --KH 9).");
	ret->decides = keep(w);
}

/* What is to be read, or put right, before this can be answered. */
static void say_first(struct work *w, const struct ts_match *m, struct ts_why_animal *ret)
{
	const struct ts_profile *p = w->q->profile;

	ts_say_name(&w->text, m->species);
	ts_text_puts(
		&w->text, ": ", ts_water_first(p) >= TS_FIRST_MINERALS ? "" : "unsure; ", NULL);
	ts_say_first(&w->text, p);
	ret->headline = keep(w);
	if (ts_water_first(p) >= TS_FIRST_MINERALS) {
		ts_text_put(&w->text, "It likes ");
		put_needs(w, m, false);
		ts_text_put(&w->text, ". ");
	}
	ts_say_first_because(&w->text, p);
	ret->decides = keep(w);
	w->told = true;
}

/* The minerals are right and pH is not what is liked: they decide, and pH is left alone. */
static bool minerals_decide(const struct ts_match *m, const struct ts_profile *p)
{
	const struct ts_parameter_fit *ph = &m->at[TS_PH];
	bool by_ph = m->verdict == TS_TOLERATES && m->limiting == TS_PH &&
		     (!m->at[TS_KH].known || m->at[TS_KH].uncomfortable_by == 0);
	/* What a tank of this KH runs at is shown as its result. */
	bool result =
		m->verdict == TS_SUITS && p->ph_computed && ph->known && ph->uncomfortable_by != 0;

	return (by_ph || result) && m->at[TS_GH].known && m->at[TS_GH].uncomfortable_by == 0 &&
	       !ts_nobody_yet_says(p);
}

/* No yes, and no no: which figure, read again, settles it. */
static void note_unsettled(struct work *w, const struct ts_match *m)
{
	if (m->verdict == TS_UNSURE && m->limiting >= 0 && !m->gh_missing && !m->kh_missing &&
		isnan(m->copper_borne_mg_l))
		w->unsettled = m->limiting;
}

static void say_verdict(
	struct work *w, const struct ts_match *m, const char *no_room, struct ts_why_animal *ret)
{
	static const char *const says[TS_VERDICT__COUNT] = {"this water suits it",
		"it can live in this water, not at its best", "unsure", "not in this water"};
	bool lives = m->verdict <= TS_TOLERATES, last;

	ts_say_name(&w->text, m->species);
	ts_text_puts(&w->text, ": ", says[m->verdict], NULL);
	if (m->verdict == TS_UNSURE && m->limiting >= 0 && !m->gh_missing && !m->kh_missing)
		ts_text_puts(&w->text, ", read ", ts_parameter_rows[m->limiting].label,
			" more closely", NULL);
	if (m->own_temperature && lives) {
		const struct ts_parameter_fit *f = &m->at[TS_TEMPERATURE];

		ts_text_put(&w->text, ", at its own temperature");
		if (!isnan(f->tolerated.low)) {
			ts_text_put(&w->text, " (");
			ts_say_range(&w->text,
				isnan(f->preferred.low) ? &f->tolerated : &f->preferred, 1);
			ts_text_put(&w->text, " C)");
		}
	}
	if (lives && m->species->cautions & 1u << TS_CAUTION_NO_HOME_SUITS)
		ts_text_put(&w->text, ", a home does not");
	else if (no_room)
		ts_text_puts(&w->text, lives ? ", but" : ", and",
			" there is no room for it in your tank", NULL);
	if (lives && w->q->profile->poisons.found & TS_POISON_CHLORINE)
		ts_text_put(&w->text, ", once every drop is treated for chlorine");
	ret->headline = keep(w);
	/* What was measured goes before a length that was only reckoned. */
	last = no_room && !lives && w->q->assumed_litres > 0;
	if (!last)
		put_no_room(w, no_room);
	note_unsettled(w, m);
	if (!no_room && minerals_decide(m, w->q->profile)) {
		ts_text_put(&w->text, "GH is what it likes, and that decides. ");
		ts_say_parameter(&w->text, TS_PH, &m->at[TS_PH]);
		ts_text_put(&w->text, "; leave the pH alone");
	} else if (lives || !ts_why_not(&w->text, m, w->q->profile)) {
		ts_why_deciding(&w->text, m, w->q->profile);
	}
	if (!w->q->profile->at[TS_GH].given && m->limiting == TS_GH) {
		ts_text_put(&w->text, ". ");
		ts_say_gh_bound(&w->text, w->q->profile);
		w->told = true;
	}
	if (last) {
		ts_text_put(&w->text, ". ");
		put_no_room(w, no_room);
	}
	ret->decides = keep(w);
}

static void lead(
	struct work *w, const struct ts_match *m, const char *no_room, struct ts_why_animal *ret)
{
	unsigned poisons = w->q->profile->poisons.found;
	bool poison = poisons & (TS_POISON_AMMONIA | TS_POISON_NITRITE | TS_POISON_NO_OXYGEN) ||
		      !isnan(m->copper_borne_mg_l);

	if (!w->q->water_given)
		say_needs(w, m, no_room, ret);
	else if (m->verdict == TS_UNSURE && !poison &&
		 ts_water_first(w->q->profile) != TS_FIRST_NOTHING)
		say_first(w, m, ret);
	else
		say_verdict(w, m, no_room, ret);
}

/*
 * What was read lies beyond a band that excludes nobody: of the KH that its kind of water has, or
 * of a pH, which follows from the minerals. "Tolerated" would contradict the verdict.
 */
static bool is_guide(const struct ts_parameter_fit *f, int p)
{
	bool coarse = p == TS_PH || f->source[0] == ts_by_kind_of_water;

	return coarse && f->known && f->verdict <= TS_TOLERATES &&
	       (f->reading < f->tolerated.low || f->reading > f->tolerated.high);
}

static void put_tolerated(struct work *w, const struct ts_parameter_fit *f, int p)
{
	if (!is_guide(f, p)) {
		ts_text_put(&w->text, "tolerated ");
		ts_say_range(&w->text, &f->tolerated, 1);
		ts_text_puts(&w->text, " (", f->source[0], f->variant ? ", " : "",
			f->variant ? f->variant : "", ")", NULL);
		return;
	}
	ts_text_put(&w->text, "usual ");
	ts_say_range(&w->text, &f->tolerated, 1);
	ts_text_put(&w->text, p == TS_PH ? "; pH follows from the KH, and does not decide"
					 : " in its kind of water; KH alone excludes nobody");
}

static void fill_water(struct work *w, const struct ts_match *m, struct ts_why_animal *ret)
{
	ret->water = ts_arena_array(w->asking->arena, TS_PARAMETER__COUNT, sizeof *ret->water);
	for (int p = 0; ret->water && p < TS_PARAMETER__COUNT; p++) {
		const struct ts_parameter_fit *f = &m->at[p];
		struct ts_why_parameter row = {.name = ts_parameter_rows[p].key, .parameter = p};

		if (p == TS_SALINITY && f->uncomfortable_by == 0)
			continue;
		ts_say_parameter(&w->text, (enum ts_parameter)p, f);
		row.says = keep(w);
		put_tolerated(w, f, p);
		row.tolerated_says = keep(w);
		ret->water[ret->water_count++] = row;
	}
}

/* What stands in the scratch text is the fact; an empty one is none. */
static void fact(struct work *w, struct ts_why_animal *ret, const char *label)
{
	if (!w->text.len || ret->fact_count == FACTS_MOST)
		return;
	ret->facts[ret->fact_count++] = (struct ts_why_fact){label, keep(w)};
}

static void company_and_habits(
	struct work *w, const struct ts_species *s, struct ts_why_animal *ret)
{
	ts_text_put(&w->text, ts_words_home_water_said[s->home_water]);
	fact(w, ret, "Comes from");
	ts_say_company(&w->text, s);
	fact(w, ret, "Company");
	ts_say_temper(&w->text, s);
	fact(w, ret, "Temper");
	ts_say_hunts(&w->text, s);
	fact(w, ret, "Eats");
	ts_say_feeding(&w->text, s);
	fact(w, ret, "Food");
	ts_say_lives(&w->text, s);
	fact(w, ret, "Lives");
	ts_say_room_of(&w->text, s);
	fact(w, ret, "Room");
}

static void fill_facts(struct work *w, const struct ts_species *s, struct ts_why_animal *ret)
{
	ret->facts = ts_arena_array(w->asking->arena, FACTS_MOST, sizeof *ret->facts);
	if (!ret->facts)
		return;
	company_and_habits(w, s, ret);
	ts_say_cautions(
		&w->text, s, (TS_CAUTIONS_ALL | TS_CAUTIONS_TANK) & ~TS_CAUTIONS_SECOND_LINE);
	fact(w, ret, "To know");
	for (size_t i = 0; i < s->listed.count; i++)
		ts_text_puts(&w->text, i ? ", " : "", s->listed.items[i], NULL);
	if (s->listed.count)
		ts_text_put(&w->text, ": ask your authority before anything else");
	fact(w, ret, "Listed under");
	ts_text_put(&w->text, s->disputed);
	fact(w, ret, "Disputed");
	for (size_t i = 0; i < s->sources.count; i++)
		ts_text_puts(&w->text, i ? ", " : "", s->sources.items[i], NULL);
	ts_text_put(&w->text, s->sources.count ? "; the rest common practice or memory, as marked"
					       : "no publication; common practice or memory");
	fact(w, ret, "Sources");
}

static void answer_one(struct work *w, size_t i)
{
	const struct ts_species *s = w->q->species[i];
	struct ts_why_result *r = w->out;
	struct ts_match_result *row = &r->matches[i];
	struct ts_why_animal *a = &r->animals[i];
	struct ts_match m;

	ts_misfit_match(s, w->q->profile, w->q->keeping, w->asking->practice, &m);
	ts_answer_match(w->asking, &m, w->q->profile, row);
	row->no_home = ts_answer_no_home(w->asking, s);
	row->no_room = w->q->tank ? ts_answer_no_room(w->asking, s, w->q->tank) : NULL;
	*a = (struct ts_why_animal){.species = s->species, .match = row};
	lead(w, &m, row->no_room, a);
	ts_say_cautions(&w->text, s, TS_CAUTIONS_SECOND_LINE);
	a->caution = w->text.len ? keep(w) : NULL;
	if (w->q->water_given && m.verdict > TS_TOLERATES &&
		ts_why_change(&w->text, &m, w->q->profile))
		a->change = keep(w);
	fill_water(w, &m, a);
	fill_facts(w, s, a);
	r->suits |= m.verdict <= TS_TOLERATES && w->q->water_given;
	r->ph_alone |= m.limiting == TS_PH;
	if (m.verdict == TS_EXCLUDED)
		r->excluded[r->excluded_count++] = *row;
	else
		r->ranked[r->ranked_count++] = *row;
	if (ts_match_near_miss(&m) >= 0)
		r->near_misses[r->near_miss_count++] = *row;
}

enum ts_status ts_answer_why(const struct ts_asking *asking, const struct ts_why_question *asked,
	struct ts_why_result *ret)
{
	struct ts_arena *arena = asking->arena;
	struct ts_why_question with = *asked, *q = &with;
	struct ts_profile *profile = ts_arena_take(arena, sizeof *profile);
	const char *sea;
	struct ts_why_result r = {
		.water = ts_answer_water(arena, q->water_name, q->kept_age_days, q->profile),
		.animals = ts_arena_array(arena, q->count, sizeof *r.animals),
		.animal_count = q->count,
		.matches = ts_arena_array(arena, q->count, sizeof *r.matches),
		.ranked = ts_arena_array(arena, q->count, sizeof *r.ranked),
		.excluded = ts_arena_array(arena, q->count, sizeof *r.excluded),
		.near_misses = ts_arena_array(arena, q->count, sizeof *r.near_misses),
		.water_says = q->water_says,
		.animals_say = q->animals_say,
		.profile = q->profile};
	struct work w = {.asking = asking, .q = q, .out = &r, .unsettled = -1};

	if (arena->failed)
		return TS_NO_MEMORY;
	*profile = *asked->profile;
	sea = ts_answer_sea_gh(asking, profile);
	with.profile = profile;
	ts_text_open(&w.text, &arena->allocator);
	for (size_t i = 0; i < q->count; i++)
		answer_one(&w, i);
	ts_asking_note(asking, &r.notes, q->overlays_say);
	if (q->water_given) {
		ts_answer_note_water(asking, asked->profile,
			w.told ? ts_first_tells(q->profile, ts_water_first(q->profile)) : 0,
			&r.notes);
		ts_asking_note(asking, &r.notes, sea);
		if (w.unsettled >= 0 && ts_say_again(&w.text, q->profile, w.unsettled))
			r.water.next_to_measure = keep(&w);
		ts_text_puts(&w.text, "Measure next: ", r.water.next_to_measure, NULL);
		r.measure = keep(&w);
	}
	arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	if (arena->failed)
		return TS_NO_MEMORY;
	*ret = r;
	return TS_OK;
}
