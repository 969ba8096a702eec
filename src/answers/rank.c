/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The ranking: every animal is matched, asked for room and home, sorted, and told in lists.
 */
#include "answers/rank.h"

#include <math.h>
#include <string.h>

#include "answers/noted.h"
#include "answers/thin.h"
#include "model/practice.h"
#include "stock/misfit.h"
#include "stock/room.h"
#include "stock/rules.h"
#include "words/first.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* Animals of a sentence. */
#define NAMED_MOST 5
#define NAMED_FIRST 4

struct work {
	const struct ts_asking *asking;
	const struct ts_rank_question *q;
	const char *sea;            /* what was assumed of the salt; NULL: nothing */
	struct ts_profile *profile; /* that of the question, with the GH of sea salt */
	struct ts_rank_result *out;
	struct ts_match *matches;
	const struct ts_match **turned; /* the matches in the order of the rows */
	size_t count;
	const struct ts_species **ranked; /* whose the rows are */
	bool told;                        /* what comes first of the water leads */
	struct ts_text text;              /* scratch */
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void count(struct ts_text *text, size_t n)
{
	ts_text_number_short(text, (double)n, 0);
}

bool ts_rank_alike(const struct ts_species *a, const struct ts_species *b)
{
	double size = b->adult_length_cm / a->adult_length_cm;

	return a->kind == b->kind && a->swims == b->swims &&
	       (a->group.least >= 5) == (b->group.least >= 5) && size >= 0.6 && size <= 1.7;
}

static bool asked(const struct work *w, const struct ts_species *s)
{
	return !w->q->like || s == w->q->like || ts_rank_alike(w->q->like, s);
}

/* Whether it asks for an aged tank or for special food: for later, and for those who know. */
static bool asks_much(const struct ts_species *s)
{
	return s->habits & (TS_HABIT_OLD_TANK | TS_HABIT_SPECIALIST) || s->needs.land;
}

unsigned ts_rank_turn(const struct ts_species *s)
{
	return (s->sold > TS_SOLD_OFTEN) * 4u + asks_much(s) * 2u + (s->kind != TS_ANIMAL_FISH);
}

#define TURNS 8u

/* Sorts by turn within each verdict, which leaves the order within a turn as it is. */
static void take_turns(const struct ts_match *m, size_t count, const struct ts_match **ret)
{
	size_t at[TS_VERDICT__COUNT * TURNS + 1] = {0};

	for (size_t i = 0; i < count; i++)
		at[m[i].verdict * TURNS + ts_rank_turn(m[i].species) + 1]++;
	for (size_t n = 1; n < sizeof at / sizeof *at; n++)
		at[n] += at[n - 1];
	for (size_t i = 0; i < count; i++)
		ret[at[m[i].verdict * TURNS + ts_rank_turn(m[i].species)]++] = &m[i];
}

static void match_all(struct work *w)
{
	for (size_t i = 0; i < w->asking->species_count; i++) {
		const struct ts_species *s = w->asking->species[i];

		if (asked(w, s))
			ts_misfit_match(s, w->profile, w->q->keeping, w->asking->practice,
				&w->matches[w->count++]);
	}
	ts_match_sort(w->matches, w->count);
	take_turns(w->matches, w->count, w->turned);
}

static const char *no_room(struct work *w, const struct ts_species *s)
{
	return w->q->tank ? ts_answer_no_room(w->asking, s, w->q->tank) : NULL;
}

/* Where a match stands, found before any row is made, so that each list has just its room. */
struct placed {
	const char *no_home, *no_room;
};

static struct placed look_at(struct work *w, const struct ts_match *m)
{
	struct placed p = {ts_answer_no_home(w->asking, m->species), NULL};

	if (m->verdict != TS_EXCLUDED && !p.no_home)
		p.no_room = no_room(w, m->species);
	return p;
}

static struct ts_match_result *rows(struct work *w, size_t *io_count)
{
	size_t count = *io_count;

	*io_count = 0;
	return ts_arena_array(w->asking->arena, count ? count : 1, sizeof(struct ts_match_result));
}

static size_t *list_of(struct ts_rank_result *r, const struct ts_match *m, const struct placed *p)
{
	return m->verdict == TS_EXCLUDED ? &r->excluded_count
	       : p->no_home              ? &r->no_home_count
	       : p->no_room              ? &r->too_large_count
					 : &r->ranked_count;
}

static void open_lists(struct work *w, struct placed *ret)
{
	struct ts_rank_result *r = w->out;

	for (size_t i = 0; i < w->count; i++) {
		ret[i] = look_at(w, w->turned[i]);
		++*list_of(r, w->turned[i], &ret[i]);
		r->near_miss_count += ts_match_near_miss(w->turned[i]) >= 0;
	}
	w->ranked = ts_arena_array(
		w->asking->arena, r->ranked_count ? r->ranked_count : 1, sizeof *w->ranked);
	r->ranked = rows(w, &r->ranked_count);
	r->too_large = rows(w, &r->too_large_count);
	r->no_home = rows(w, &r->no_home_count);
	r->excluded = rows(w, &r->excluded_count);
	r->near_misses = rows(w, &r->near_miss_count);
}

/* Puts the row of a match into its list. */
static void place(struct work *w, const struct ts_match *m, const struct placed *p)
{
	struct ts_rank_result *r = w->out;
	struct ts_match_result row;

	ts_answer_match(w->asking, m, w->profile, &row);
	row.no_home = p->no_home;
	row.no_room = p->no_room;
	if (m->verdict == TS_EXCLUDED) {
		r->excluded[r->excluded_count++] = row;
	} else if (row.no_home) {
		r->no_home[r->no_home_count++] = row;
	} else if (row.no_room) {
		r->too_large[r->too_large_count++] = row;
	} else {
		r->suits += m->verdict == TS_SUITS;
		r->tolerates += m->verdict == TS_TOLERATES;
		r->unsure += m->verdict == TS_UNSURE;
		w->ranked[r->ranked_count] = m->species;
		r->ranked[r->ranked_count++] = row;
	}
	if (ts_match_near_miss(m) >= 0)
		r->near_misses[r->near_miss_count++] = row;
}

static void place_all(struct work *w)
{
	struct ts_arena *arena = w->asking->arena;
	struct placed *placed = ts_arena_array(arena, w->count ? w->count : 1, sizeof *placed);

	if (placed)
		open_lists(w, placed);
	for (size_t i = 0; i < w->count && !arena->failed; i++)
		place(w, w->turned[i], &placed[i]);
}

/* How many each parameter excludes, most first. */
static void count_excluded(struct work *w)
{
	struct ts_rank_result *r = w->out;

	for (int p = 0; p <= TS_PARAMETER__COUNT; p++) {
		struct ts_rank_excluded_result row = {.name = "copper", .label = "copper"};
		size_t at = r->excluded_by_count;

		if (p < TS_PARAMETER__COUNT)
			row = (struct ts_rank_excluded_result){
				ts_parameter_rows[p].key, ts_parameter_rows[p].label, 0, NULL};
		for (size_t i = 0; i < w->count; i++)
			row.species += w->turned[i]->verdict == TS_EXCLUDED &&
				       (p < TS_PARAMETER__COUNT ? w->turned[i]->limiting == p
								: w->turned[i]->limiting < 0);
		if (!row.species)
			continue;
		ts_text_puts(&w->text, row.label, " excludes ", NULL);
		count(&w->text, row.species);
		row.says = keep(w);
		for (; at && r->excluded_by[at - 1].species < row.species; at--)
			r->excluded_by[at] = r->excluded_by[at - 1];
		r->excluded_by[at] = row;
		r->excluded_by_count++;
	}
}

/* "a tank of 60 litres", "your tank". */
static void put_tank(struct work *w)
{
	if (w->q->assumed_litres > 0) {
		ts_text_put(&w->text, "a tank of ");
		ts_text_number_short(&w->text, w->q->assumed_litres, 0);
		ts_text_put(&w->text, " litres");
	} else {
		ts_text_put(&w->text, "your tank");
	}
}

void ts_rank_not_now(struct ts_text *text, const struct ts_profile *p, bool none)
{
	unsigned found = p->poisons.found;

	if (found & (TS_POISON_AMMONIA | TS_POISON_NITRITE))
		ts_text_put(text, "Not now: ammonia or nitrite stands in this water, and no "
				  "animal goes into it.");
	else if (found & TS_POISON_NO_OXYGEN && none)
		ts_text_put(text, "Not now: this water holds too little oxygen; air it, and "
				  "read it again before any animal goes into it.");
	else if (none)
		ts_say_first_sentence(text, p);
}

/* Kinds that the warmth of the tank excludes, whatever its water. */
static size_t by_warmth(const struct work *w)
{
	for (size_t i = 0; i < w->out->excluded_by_count; i++) {
		if (strcmp(w->out->excluded_by[i].name, ts_parameter_rows[TS_TEMPERATURE].key) == 0)
			return w->out->excluded_by[i].species;
	}
	return 0;
}

/* No reading of the water would leave anybody: the warmth does not. */
static bool too_warm_or_cold(const struct work *w)
{
	const struct ts_rank_result *r = w->out;

	return ts_answer_is_thin(w->q->profile) && r->asked_count > 1 &&
	       !(r->suits + r->tolerates + r->unsure) && by_warmth(w) * 2 > r->asked_count;
}

static void put_warmth(struct work *w)
{
	const struct ts_span *t = &w->profile->at[TS_TEMPERATURE];

	ts_text_number_short(&w->text, t->exposure ? t->low : t->value, 1);
	if (t->exposure) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, t->high, 1);
	}
	ts_text_put(&w->text, " C");
}

/* "None of 590 kinds lives at 0 to 25 C all year, whatever the water." */
static const char *warmth_headline(struct work *w)
{
	ts_text_put(&w->text, "None of ");
	count(&w->text, w->out->asked_count);
	ts_text_put(&w->text, " kinds lives at ");
	put_warmth(w);
	ts_text_puts(&w->text, w->profile->at[TS_TEMPERATURE].exposure ? " all year" : "",
		", whatever the water.", NULL);
	return keep(w);
}

/* How far the warmth is from what it bears, of those that can be had; INFINITY: of no matter. */
static double far(const struct ts_match *m)
{
	const struct ts_parameter_fit *f = &m->at[TS_TEMPERATURE];

	return m->limiting == TS_TEMPERATURE && f->known && !ts_rank_turn(m->species) &&
			       m->species->sold == TS_SOLD_EVERYWHERE
		       ? fabs(f->outside_by)
		       : (double)INFINITY;
}

/* "Nearest come: common goldfish (4 to 28 C)"; where it freezes, animals come in. */
static const char *warmth_deciding(struct work *w)
{
	const struct ts_match *best[NAMED_MOST];
	size_t named = 0;

	for (; named < NAMED_MOST; named++) {
		best[named] = NULL;
		for (size_t i = 0; i < w->count; i++) {
			const struct ts_match *m = w->turned[i];
			bool there = false;

			for (size_t k = 0; k < named; k++)
				there |= best[k] == m;
			if (!there && isfinite(far(m)) &&
				!ts_answer_no_home(w->asking, m->species) &&
				(!best[named] || far(m) < far(best[named])))
				best[named] = m;
		}
		if (!best[named])
			break;
	}
	if (!named)
		return NULL;
	for (size_t i = 0; i < named; i++) {
		const struct ts_range *t = &best[i]->at[TS_TEMPERATURE].tolerated;

		ts_text_put(&w->text, !i ? "Nearest come " : ", ");
		ts_say_animals(&w->text, best[i]->species);
		ts_text_put(&w->text, " (");
		ts_text_number_short(&w->text, t->low, 1);
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, t->high, 1);
		ts_text_put(&w->text, " C)");
	}
	ts_text_puts(&w->text,
		w->profile->at[TS_TEMPERATURE].exposure      ? ": outdoors in the months that stay "
							       "within that, and indoors for the rest."
		: best[0]->at[TS_TEMPERATURE].outside_by > 0 ? ": cooler water first."
							     : ": warmer water first.",
		NULL);
	return keep(w);
}

/* What forbids every list, whatever it holds; false: nothing does. */
static bool say_not_now(struct work *w)
{
	const unsigned now = TS_POISON_AMMONIA | TS_POISON_NITRITE | TS_POISON_NO_OXYGEN;

	ts_rank_not_now(&w->text, w->q->profile, w->out->suits + w->out->tolerates == 0);
	w->told = w->text.len && !(w->q->profile->poisons.found & now);
	return w->text.len > 0;
}

/* One that a first line may stand for: of company, peaceful, and unlike those before it. */
static bool stands_for_all(
	const struct ts_species *s, const struct ts_species *const *before, size_t count)
{
	size_t genus = strcspn(s->species, " ") + 1;

	if (s->kind != TS_ANIMAL_FISH || s->group.least < 3 || s->nips || ts_rank_turn(s))
		return false;
	for (size_t i = 0; i < count; i++) {
		if (strncmp(before[i]->species, s->species, genus) == 0)
			return false;
	}
	return true;
}

/*
 * Of the first `number` ranked the `named` that the first line names; those first in rank go first.
 * Told apart by their rows: an animal that was asked for twice has two.
 */
static void choose_first(
	const struct work *w, size_t number, size_t named, const struct ts_species **ret)
{
	size_t count = 0, rows[NAMED_FIRST];

	for (size_t i = 0; i < number && count < named; i++) {
		if (!stands_for_all(w->ranked[i], ret, count))
			continue;
		rows[count] = i;
		ret[count++] = w->ranked[i];
	}
	for (size_t i = 0; i < number && count < named; i++) {
		bool there = false;

		for (size_t k = 0; k < count; k++)
			there |= rows[k] == i;
		if (there)
			continue;
		rows[count] = i;
		ret[count++] = w->ranked[i];
	}
}

/* "Guppies, platies, mollies and 20 more of 590 kinds", "Guppies, 1 of 590 kinds,". */
static void put_first(struct work *w, size_t number)
{
	size_t named = number < NAMED_FIRST ? number : NAMED_FIRST, at = w->text.len;
	const struct ts_species *first[NAMED_FIRST];

	choose_first(w, number, named, first);
	for (size_t i = 0; i < named; i++) {
		ts_text_put(&w->text, !i ? "" : i + 1 == number ? " and " : ", ");
		ts_say_animals(&w->text, first[i]);
	}
	ts_text_capital(&w->text, at);
	ts_text_put(&w->text, number > named ? " and " : ", ");
	count(&w->text, number - (number > named ? named : 0));
	ts_text_put(&w->text, number > named ? " more of " : " of ");
	count(&w->text, w->out->asked_count);
	ts_text_puts(&w->text, w->out->asked_count == 1 ? " kind" : " kinds",
		number > named ? "" : ",", NULL);
}

static const char *headline(struct work *w)
{
	const struct ts_rank_result *r = w->out;
	size_t number;
	bool one;

	if (too_warm_or_cold(w))
		return warmth_headline(w);
	if (say_not_now(w))
		return keep(w);
	if (!r->suits && !r->tolerates && r->unsure) {
		ts_text_put(&w->text, "Unsure: nothing can be called suitable yet, ");
		count(&w->text, r->unsure);
		ts_text_put(&w->text, r->unsure == 1 ? " kind waits on a measurement."
						     : " kinds wait on a measurement.");
		return keep(w);
	}
	/* What can be had goes first; that nobody is at its best comes behind it. */
	number = r->suits ? r->suits : r->tolerates;
	one = !number;
	if (number) {
		put_first(w, number);
	} else {
		ts_text_put(&w->text, "None of ");
		count(&w->text, r->asked_count);
		ts_text_put(&w->text, r->asked_count == 1 ? " kind" : " kinds");
	}
	ts_text_puts(&w->text,
		!r->suits && number ? " can live in this water"
		: one               ? " suits this water"
				    : " suit this water",
		!r->fits_asked ? ""
		: one          ? " and fits "
			       : " and fit ",
		NULL);
	if (r->fits_asked)
		put_tank(w);
	if (!w->profile->at[TS_TEMPERATURE].given)
		ts_text_put(&w->text,
			one ? ", at its own temperature" : ", each at its own temperature");
	if (r->suits && r->tolerates) {
		ts_text_put(&w->text, "; ");
		count(&w->text, r->tolerates);
		ts_text_put(&w->text, " more can live in it, not at their best");
	} else if (r->tolerates) {
		ts_text_put(&w->text, one ? ", not at its best" : "; none is at its best");
	}
	ts_text_put(&w->text, ".");
	return keep(w);
}

/* Named in a message. */
#define CHOICES 3

/* "Say 6 guppies (GH 8..24, 22..26 C), 6 platies (...) or 10 ...": what a friend would write. */
static const char *choices(struct work *w)
{
	const struct ts_rank_result *r = w->out;
	size_t named = r->suits < CHOICES ? r->suits : CHOICES;
	const struct ts_species *first[NAMED_FIRST];

	if (!named || w->told || r->asked_count < CHOICES)
		return NULL;
	choose_first(w, r->suits, named, first);
	for (size_t i = 0; i < named; i++) {
		const struct ts_species *s = first[i];
		double many = s->group.comfortable;
		struct ts_match m;

		ts_match_species(s, w->profile, w->q->keeping, w->asking->practice, &m);
		ts_text_put(&w->text, !i ? "Say " : i + 1 == named ? " or " : ", ");
		ts_text_number_short(&w->text, many, 0);
		ts_text_put(&w->text, " ");
		(many > 1 ? ts_say_animals : ts_say_animal)(&w->text, s);
		ts_text_put(&w->text, " (GH ");
		ts_say_range(&w->text, &m.at[TS_GH].preferred, 1);
		ts_text_put(&w->text, ", ");
		ts_say_range(&w->text, &m.at[TS_TEMPERATURE].preferred, 1);
		ts_text_put(&w->text, " C)");
	}
	ts_text_put(&w->text, ": of ");
	count(&w->text, r->suits);
	ts_text_puts(&w->text, r->suits == 1 ? " kind that suits" : " kinds that suit",
		" this water", NULL);
	if (r->fits_asked) {
		ts_text_put(&w->text, r->suits == 1 ? " and fits " : " and fit ");
		put_tank(w);
	}
	ts_text_put(&w->text, "; tapshoal check says which go together.");
	return keep(w);
}

/* Whether it lives in any usual tap water, is sold in shops, and asks nothing special. */
static bool bears_usual_taps(
	const struct work *w, const struct ts_profile *usual, const struct ts_species *s)
{
	struct ts_match m;

	if (ts_rank_turn(s) || s->nips || s->to_own_kind == TS_INJURES ||
		!ts_match_advised_unasked(s))
		return false;
	ts_misfit_match(s, usual, w->q->keeping, w->asking->practice, &m);
	return m.verdict <= TS_TOLERATES;
}

/* Whom nobody has to wait with until GH was read; nothing where there is none. */
static void until_then(struct work *w)
{
	struct ts_profile usual = *w->profile;
	const struct ts_species *named[NAMED_MOST];
	size_t found = 0;

	ts_answer_usual_taps(&usual, w->asking->practice);
	for (size_t i = 0; i < w->count && found < NAMED_MOST; i++) {
		const struct ts_species *s = w->turned[i]->species;

		if (bears_usual_taps(w, &usual, s) && !ts_answer_no_home(w->asking, s) &&
			!no_room(w, s))
			named[found++] = s;
	}
	if (!found)
		return;
	ts_text_puts(&w->text, w->text.len ? " " : "", "Until then only such as bear ", NULL);
	ts_answer_say_usual_taps(&w->text, w->profile, w->asking->practice);
	for (size_t i = 0; i < found; i++) {
		ts_text_put(&w->text, !i ? ": " : ", ");
		ts_say_animal(&w->text, named[i]);
	}
	ts_text_put(&w->text, ".");
}

/* The parameter that excludes most; of a water that says nothing sure, nothing. */
static const char *deciding(struct work *w)
{
	const struct ts_profile *p = w->q->profile;
	size_t first = 0;

	if (too_warm_or_cold(w))
		return warmth_deciding(w);
	if (w->told) {
		ts_say_first_because(&w->text, p);
		if (by_warmth(w) * 2 > w->out->asked_count) {
			ts_text_put(&w->text, w->text.len ? " " : "");
			put_warmth(w);
			ts_text_put(&w->text, " excludes ");
			count(&w->text, by_warmth(w));
			ts_text_put(&w->text, ", whatever the water.");
		}
		if (ts_answer_is_thin(p))
			until_then(w);
		return w->text.len ? keep(w) : NULL;
	}
	if (w->sea)
		return "Salt decides: few animals live in brackish water.";
	if (p->unusual & TS_UNUSUAL__NOBODY_YET || !p->at[TS_GH].given ||
		p->poisons.found & (TS_POISON_AMMONIA | TS_POISON_NITRITE | TS_POISON_NO_OXYGEN) ||
		!w->out->excluded_by_count)
		return NULL;
	/* Animals that need salt are no matter of a fresh water's minerals. */
	if (strcmp(w->out->excluded_by[first].name, ts_parameter_rows[TS_SALINITY].key) == 0 &&
		!(p->unusual & TS_UNUSUAL_SALTY) && ++first == w->out->excluded_by_count)
		return NULL;
	ts_text_puts(
		&w->text, w->out->excluded_by[first].label, " decides most: it excludes ", NULL);
	count(&w->text, w->out->excluded_by[first].species);
	ts_text_put(&w->text, ".");
	return keep(w);
}

static void notes(struct work *w)
{
	const struct ts_profile *p = w->q->profile;
	struct ts_texts *notes = &w->out->notes;

	ts_answer_note_water(
		w->asking, p, w->told ? ts_first_tells(p, ts_water_first(p)) : 0, notes);
	ts_asking_note(w->asking, notes, w->sea);
	if (ts_answer_is_thin(p) && !too_warm_or_cold(w))
		ts_asking_note(w->asking, notes, ts_thin_how);
	ts_asking_note(w->asking, notes, w->q->overlays_say);
	if (too_warm_or_cold(w))
		return;
	ts_text_puts(&w->text, "Measure next: ", ts_next_to_measure(p), NULL);
	ts_asking_note(w->asking, &w->out->measure, keep(w));
}

static const char *tank_says(struct work *w)
{
	const struct ts_tank *t = w->q->tank;

	if (!t)
		return NULL;
	if (t->length_cm > 0 && t->width_cm > 0) {
		ts_text_number_short(&w->text, t->length_cm, 0);
		ts_text_put(&w->text, " x ");
		ts_text_number_short(&w->text, t->width_cm, 0);
		if (t->height_cm > 0) {
			ts_text_put(&w->text, " x ");
			ts_text_number_short(&w->text, t->height_cm, 0);
		}
		ts_text_put(&w->text, " cm");
	} else {
		ts_text_put(&w->text, "its sides are not known");
	}
	if (w->q->assumed_litres > 0)
		ts_text_put(&w->text,
			", assumed: usual for so many litres; its sides say it better (--size)");
	return keep(w);
}

/* Where the comforts of all lie, whatever this water is: how many at each degree of hardness. */
static void count_by_gh(struct work *w, struct ts_rank_result *io)
{
	io->by_gh = ts_arena_array(w->asking->arena, TS_RANK_GH_MOST + 1, sizeof *io->by_gh);
	for (size_t n = 0; io->by_gh && n <= TS_RANK_GH_MOST; n++) {
		struct ts_rank_at_gh *row = &io->by_gh[io->by_gh_count++];

		row->gh_dh = (double)n;
		for (size_t i = 0; i < w->count; i++) {
			const struct ts_range *liked = &w->matches[i].at[TS_GH].preferred;

			row->comfortable += liked->low <= row->gh_dh && row->gh_dh <= liked->high;
		}
	}
}

bool ts_answer_rank(const struct ts_asking *asking, const struct ts_rank_question *q,
	struct ts_rank_result *ret)
{
	struct ts_arena *arena = asking->arena;
	size_t room = asking->species_count ? asking->species_count : 1;
	struct ts_rank_result r = {
		.water = ts_answer_water(arena, q->water_name, q->kept_age_days, q->profile),
		.water_says = q->water_says,
		.animals_say = q->animals_say,
		.order = "First what fits the tank, most shops sell and asks little; fish before "
			 "shrimps and snails; then who is furthest from a limit.",
		.closing = "The water is one question; room and company are another. Local law and "
			   "a vet come before any list. Never release an animal.",
		.catalogue_count = q->catalogue_count,
		.excluded_by =
			ts_arena_array(arena, TS_PARAMETER__COUNT + 1, sizeof *r.excluded_by),
		.fits_asked = q->tank != NULL,
	};
	struct work w = {.asking = asking,
		.q = q,
		.out = &r,
		.matches = ts_arena_array(arena, room, sizeof *w.matches),
		.turned = ts_arena_array(arena, room, sizeof *w.turned),
		.profile = ts_arena_take(arena, sizeof *w.profile)};

	if (arena->failed)
		return false;
	*w.profile = *q->profile;
	w.sea = ts_answer_sea_gh(asking, w.profile);
	r.profile = w.profile;
	if (!q->tank)
		r.order = "First what most shops sell and asks little; fish before shrimps and "
			  "snails; then "
			  "who is furthest from a limit.";
	ts_text_open(&w.text, &arena->allocator);
	match_all(&w);
	r.asked_count = w.count;
	place_all(&w);
	if (arena->failed) {
		ts_text_drop(&w.text);
		return false;
	}
	count_excluded(&w);
	count_by_gh(&w, &r);
	r.headline = headline(&w);
	r.deciding = deciding(&w);
	r.choices = choices(&w);
	r.tank_says = tank_says(&w);
	notes(&w);
	arena->failed |= w.text.failed;
	ts_text_drop(&w.text);
	*ret = r;
	return !arena->failed;
}
