/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The lists told: headline, why nothing is bought now, what was asked for and cannot be, each list
 * (propose_list.c), whom nobody was asked about.
 */
#include "answers/propose_list.h"

#include <string.h>

#include "answers/noted.h"
#include "answers/thin.h"
#include "stock/candidates.h"
#include "stock/check.h"
#include "stock/judge.h"
#include "stock/waters.h"
#include "words/first.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* Whether a ruling forbids newcomers now, whoever they are. */
static bool holds_back(const struct ts_ruling *r)
{
	switch (r->rule) {
	case TS_RULE_FILTER:
	case TS_RULE_NEWCOMERS:
		return true;
	case TS_RULE_AMMONIA:
	case TS_RULE_NITRITE:
	case TS_RULE_CHLORINE:
		return r->severity >= TS_CONCERN;
	default:
		return false;
	}
}

static const char *keep(struct ts_proposing *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void number(struct ts_proposing *w, double value, int decimals)
{
	ts_text_number_short(&w->text, value, decimals);
}

/*
 * What a check says of the tank with one more animal in it: the water that animals meet there, and
 * what forbids newcomers now.
 */
static bool look_at_tank(struct ts_proposing *w)
{
	const struct ts_species *any = w->question->wish.catalogue->items[0];
	struct ts_stock_line newcomer = {.species = any->species, .count = 1};
	struct ts_plan plan = *w->question->plan;
	struct ts_check check;
	struct ts_propose_result *r = w->out;

	plan.stock = &newcomer;
	plan.stock_count = 1;
	if (ts_check_faults(&plan, &any, w->asking->today, w->asking->practice, NULL,
		    w->asking->arena, &check) != TS_OK)
		return false;
	w->profile = *w->question->profile;
	if (plan.tank.reading_count)
		w->profile = check.profile;
	r->held_by_filter_alone = true;
	for (size_t i = 0; i < check.count; i++) {
		bool of_filter;

		if (check.rulings[i].rule == TS_RULE_FILTER_UNKNOWN)
			w->filter_young = w->filter_unknown = true;
		if (!holds_back(&check.rulings[i]))
			continue;
		of_filter = check.rulings[i].rule == TS_RULE_FILTER;
		w->filter_young |= of_filter;
		r->held_by_filter_alone &= of_filter;
		ts_say_ruling(&w->text, &check.rulings[i]);
		ts_text_put(&w->text, ": ");
		ts_say_remedy(&w->text, &check.rulings[i], false);
		ts_text_put(&w->text, ".");
		ts_asking_note(w->asking, &r->held, keep(w));
	}
	return true;
}

/* Nitrate and KH of what is poured in, and the nitrate of the tank now. */
static void wish_water(struct ts_proposing *w)
{
	const struct ts_plan *plan = w->question->plan;
	const struct ts_water *poured =
		plan->change_water.reading_count ? &plan->change_water : &plan->water;
	struct ts_keeping keeping = {0};
	struct ts_profile new_water;

	ts_profile_make(poured, &keeping, w->asking->practice, w->asking->today, &new_water);
	w->wish.no3_new_mg_l = fmax(new_water.poisons.no3_mg_l, 0);
	w->wish.no3_now_mg_l = fmax(w->profile.poisons.no3_mg_l, 0);
	if (new_water.at[TS_KH].given)
		w->wish.kh_new_dh = new_water.at[TS_KH].value;
}

static void put_name(struct ts_text *text, const struct ts_species *s)
{
	const char *common = ts_answer_common(s);

	ts_text_puts(text, common ? common : s->species, common ? " (" : "",
		common ? s->species : "", common ? ")" : "", NULL);
}

static void say_hardness(struct ts_text *text, const struct ts_profile *profile)
{
	static const enum ts_parameter of[] = {TS_GH, TS_KH};
	bool any = false;

	for (size_t i = 0; i < sizeof of / sizeof *of; i++) {
		if (!profile->at[of[i]].given)
			continue;
		ts_text_puts(text, any ? ", " : "", ts_parameter_rows[of[i]].label, " ", NULL);
		ts_text_number_short(text, profile->at[of[i]].value, 1);
		any = true;
	}
}

/* A water was named, and the tank has readings of its own that say something else: which counts? */
static void two_waters(struct ts_proposing *w)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_waters *waters = ts_arena_take(w->asking->arena, sizeof *waters);
	bool differ = false;

	if (!waters || !plan->tank.reading_count)
		return;
	ts_waters_now(plan, w->asking->today, w->asking->practice, waters);
	for (int p = TS_GH; p <= TS_KH; p++) {
		const struct ts_span *tank = &waters->now.at[p],
				     *named = &w->question->profile->at[p];

		differ |= tank->given && named->given && !(waters->as_poured & 1u << p) &&
			  (tank->low > named->high || named->low > tank->high);
	}
	if (!differ)
		return;
	ts_text_put(&w->text, "The tank reads ");
	say_hardness(&w->text, &waters->now);
	ts_text_put(&w->text, "; the water that you named, ");
	say_hardness(&w->text, w->question->profile);
	ts_text_put(&w->text, ". The list is for ");
	say_hardness(&w->text, &w->profile);
	ts_text_put(&w->text, ", which newcomers would meet in the tank.");
	ts_asking_note(w->asking, &w->out->notes, keep(w));
}

/* What would do without the condition of the list; nothing where nothing was found. */
static void without_condition(struct ts_proposing *w, const char *possible)
{
	if (possible)
		ts_text_puts(&w->text, "Without that condition: p", possible + 1, ".", NULL);
}

/* Two that were asked for and do not go together are told once. */
static bool told_of_other(const struct ts_proposing *w, const struct ts_candidacy *c)
{
	const struct ts_candidacy *before = w->p.species;

	for (; c->left_out == TS_LEFT_BY_RESIDENT && before < c; before++) {
		if (before->match.species == c->other && before->must &&
			before->left_out == TS_LEFT_BY_RESIDENT &&
			before->other == c->match.species)
			return true;
	}
	return false;
}

static void musts(struct ts_proposing *w)
{
	struct ts_propose_result *r = w->out;

	for (size_t i = 0; i < w->p.species_count; i++) {
		const struct ts_candidacy *c = &w->p.species[i];
		struct ts_propose_must_result row = {.species = c->match.species->species};

		if (!c->must || (c->left_out == TS_CANDIDATE && w->p.count && !w->p.conditions) ||
			told_of_other(w, c))
			continue;
		row.possible = ts_answer_possible(w->asking, &w->wish, c);
		if (c->left_out == TS_CANDIDATE && w->p.count) {
			without_condition(w, row.possible);
			row.possible = NULL;
		} else {
			put_name(&w->text, c->match.species);
			ts_text_put(&w->text, ": ");
			if (c->left_out == TS_CANDIDATE)
				ts_text_put(&w->text, "it could live here, but no list holds all "
						      "that is asked for");
			else
				ts_propose_say_left_out(w, c);
			ts_text_put(&w->text, ".");
		}
		if (!w->text.len)
			continue;
		row.says = keep(w);
		r->musts[r->must_count++] = row;
	}
}

/* Nothing can be chosen before something of the water is read or put right; false: it can. */
static bool first_of_water(struct ts_proposing *w)
{
	const unsigned poisons = TS_POISON_AMMONIA | TS_POISON_NITRITE | TS_POISON_NO_OXYGEN;
	const struct ts_profile *p = &w->read;
	struct ts_propose_result *r = w->out;

	if (ts_water_first(p) == TS_FIRST_NOTHING || p->poisons.found & poisons)
		return false;
	ts_say_first_sentence(&w->text, p);
	r->headline = keep(w);
	ts_say_first_because(&w->text, p);
	r->deciding = w->text.len ? keep(w) : NULL;
	return true;
}

/* "Until then only such as bear every usual tap water (...): 10 cherry barb in the middle; ..." */
static const char *until_then(struct ts_proposing *w)
{
	ts_say_first_because(&w->text, &w->read);
	ts_text_puts(&w->text, w->text.len ? " " : "", "Until then only such as bear ", NULL);
	ts_answer_say_usual_taps(&w->text, &w->read, w->asking->practice);
	ts_text_puts(&w->text, ": ", w->out->communities[0].why, NULL);
	return keep(w);
}

/* Why nobody is left: the room for those whom the water suits, else the water; NULL: neither. */
static const char *nobody_because(struct ts_proposing *w)
{
	const struct ts_proposal *p = &w->p;
	size_t without = p->of[TS_LEFT_BY_ROOM] + p->of[TS_LEFT_BY_LOAD];

	if (!without && !p->of[TS_LEFT_BY_WATER])
		return NULL;
	number(w, (double)(without ? without : p->of[TS_LEFT_BY_WATER]), 0);
	ts_text_puts(&w->text, " of ", NULL);
	number(w, (double)p->species_count, 0);
	ts_text_put(&w->text, without ? " kinds could live in this water, and want a larger tank."
				      : " kinds cannot live in this water.");
	return keep(w);
}

static void headline(struct ts_proposing *w)
{
	const struct ts_proposal *p = &w->p;
	struct ts_propose_result *r = w->out;

	if ((!p->candidates || r->thin) && first_of_water(w)) {
		if (r->thin && p->count)
			r->deciding = until_then(w);
		return;
	}
	if (r->held.count && p->count)
		r->headline = w->filter_young && r->held_by_filter_alone
				      ? "Not yet: the filter comes first, these animals later."
				      : "Not yet: buy no animal now.";
	else if (!p->count && !p->candidates && p->of[TS_LEFT_UNSURE])
		r->headline = "Unsure: nothing can be proposed from what is known.";
	else if (!p->count)
		r->headline = r->must_count ? "No list holds what you ask for."
					    : "Nothing can be proposed.";
	else if (!p->lists[0].proven)
		r->headline = "These go together; whether a better list exists was not proven.";
	else if (p->conditions)
		r->headline = "These go together on conditions only; none do without.";
	else
		r->headline = "These go together in this water and this tank.";
	if (p->count && !r->held.count)
		r->deciding = r->communities[0].why;
	else if (!p->count && !r->must_count)
		r->deciding = nobody_because(w);
}

static void tank(struct ts_proposing *w)
{
	const struct ts_tank *t = &w->question->plan->tank;
	struct ts_propose_result *r = w->out;

	if (t->length_cm > 0 && t->width_cm > 0) {
		number(w, t->length_cm, 0);
		ts_text_put(&w->text, " x ");
		number(w, t->width_cm, 0);
		if (t->height_cm > 0) {
			ts_text_put(&w->text, " x ");
			number(w, t->height_cm, 0);
		}
		ts_text_put(&w->text, " cm");
		if (w->question->assumed_litres > 0)
			ts_text_put(&w->text, " (assumed)");
		ts_text_put(&w->text, ", ");
	} else {
		ts_text_put(&w->text, "its floor is not known; ");
	}
	if (r->volume_l > 0) {
		number(w, r->volume_l, 0);
		ts_text_put(&w->text, " L of water, at most ");
	} else {
		ts_text_put(&w->text, "its litres are not known, at most ");
	}
	number(w, (double)r->species_most, 0);
	ts_text_put(&w->text, " main species");
	r->tank_says = keep(w);
	number(w, (double)r->candidates, 0);
	ts_text_put(&w->text, " of ");
	number(w, (double)r->species_count, 0);
	ts_text_put(&w->text, " species: at home here, sold, and with room in this tank");
	r->chosen_says = keep(w);
}

static void why(struct ts_proposing *w)
{
	const struct ts_species *s = w->question->why;
	const struct ts_candidacy *c = NULL;
	struct ts_community best;

	for (size_t i = 0; s && i < w->p.species_count; i++) {
		if (w->p.species[i].match.species == s)
			c = &w->p.species[i];
	}
	if (!c || !ts_propose_with(&w->wish, &w->p, c, w->asking->arena, &best))
		return;
	put_name(&w->text, s);
	w->out->why_heading = keep(w);
	if (c->left_out != TS_CANDIDATE) {
		const char *possible = ts_answer_possible(w->asking, &w->wish, c);

		ts_text_put(&w->text, "In no list: ");
		ts_propose_say_left_out(w, c);
		ts_text_puts(&w->text, ".", possible ? " " : "", possible ? possible : "",
			possible ? "." : "", NULL);
	} else if (!best.count) {
		ts_text_put(&w->text, "It fits water and tank, but no list holds it together with "
				      "what is asked for.");
	} else {
		ts_text_put(&w->text, "It could live here; others together do as well or better. "
				      "The best list that holds it: ");
		for (size_t i = 0; i < best.count; i++) {
			ts_text_put(&w->text, i ? "; " : "");
			ts_propose_say_company(&w->text, &best.lines[i]);
		}
		ts_text_put(&w->text, ". What decides there: ");
		ts_propose_say_limiting(&w->text, &best);
		ts_text_put(&w->text, ".");
	}
	w->out->why_says = keep(w);
}

static bool fill(struct ts_proposing *w)
{
	struct ts_arena *arena = w->asking->arena;
	struct ts_propose_result *r = w->out;
	const struct ts_proposal *p = &w->p;

	r->candidates = p->candidates;
	r->species_count = p->species_count;
	r->species_most = p->species_most;
	r->conditions = p->conditions;
	r->mature = !w->filter_young;
	r->volume_l = ts_tank_net_l(&w->question->plan->tank, w->asking->practice);
	r->floor_m2 = p->floor_m2;
	r->communities = ts_arena_array(arena, p->count + 1, sizeof *r->communities);
	r->waiting = ts_arena_array(arena, TS_PARAMETER__COUNT, sizeof *r->waiting);
	r->left_out = ts_arena_array(arena, p->species_count + 1, sizeof *r->left_out);
	r->musts = ts_arena_array(arena, p->species_count + 1, sizeof *r->musts);
	if (arena->failed)
		return false;
	for (size_t i = 0; i < p->count; i++)
		ts_propose_list(w, i, &r->communities[r->community_count++]);
	musts(w);
	headline(w);
	two_waters(w);
	tank(w);
	ts_propose_notes(w);
	why(w);
	if (!r->thin && !ts_nobody_yet_says(&w->profile))
		ts_propose_waiting(w);
	if (r->thin)
		ts_asking_note(w->asking, &r->notes, ts_thin_how);
	ts_propose_left_out(w);
	ts_asking_note(w->asking, &r->notes, w->question->overlays_say);
	ts_answer_note_water(w->asking, &w->read, 0, &r->water_notes);
	ts_asking_note(w->asking, &r->closing,
		"Quarantine newcomers for 28 days where you can. Local law and a vet come before "
		"any list. Never release an animal.");
	return !arena->failed;
}

bool ts_answer_propose(const struct ts_asking *asking, const struct ts_propose_question *q,
	struct ts_propose_result *ret)
{
	struct ts_proposing *w = ts_arena_take(asking->arena, sizeof *w);
	struct ts_propose_result r = {.water_says = q->water_says, .animals_say = q->animals_say};
	bool fine;

	if (!w)
		return false;
	w->asking = asking;
	w->question = q;
	w->out = &r;
	w->wish = q->wish;
	ts_text_open(&w->text, &asking->arena->allocator);
	fine = look_at_tank(w);
	if (fine) {
		w->read = w->profile;
		ts_asking_note(asking, &r.notes, ts_answer_sea_gh(asking, &w->profile));
		r.thin = ts_answer_is_thin(&w->profile);
		if (r.thin)
			ts_answer_usual_taps(&w->profile, asking->practice);
		w->wish.profile = &w->profile;
		w->wish.keeping = q->keeping;
		/* Most tanks are sold with one; a list that needs it says so. */
		w->tank = q->plan->tank;
		if (w->tank.cover == TS_COVER_UNKNOWN)
			w->tank.cover = TS_COVER_YES;
		w->wish.tank = &w->tank;
		w->wish.practice = asking->practice;
		w->wish.plan = q->plan;
		w->wish.today = asking->today;
		wish_water(w);
		fine = ts_propose(&w->wish, asking->arena, &w->p) && fill(w);
	}
	asking->arena->failed |= w->text.failed || !fine;
	ts_text_drop(&w->text);
	r.proposal = &w->p;
	*ret = r;
	return !asking->arena->failed;
}
