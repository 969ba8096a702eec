/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who goes in the place of one that is not to be bought: a fish that is sold everywhere, that the
 * rules have nothing against beside the rest, and that the water suits where it is known. And,
 * where the water suits none of a list, which fish are for this water.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "stock/mending.h"
#include "stock/rules.h"
#include "words/rulings.h"

/* How many of the fish for a water are named. */
#define NAMED 3
#define LOOKED_AT 12

void ts_check_put_bought(struct ts_check_work *w, const struct ts_species *species)
{
	const struct ts_plan_group *g = ts_check_group_of(&w->check, species);

	(g && ts_group_count(&g->group) == 1 ? ts_say_animal : ts_say_animals)(&w->text, species);
}

static bool planned(const struct ts_check *c, const struct ts_species *species)
{
	for (size_t i = 0; i < c->group_count; i++) {
		if (species && c->groups[i].group.species == species)
			return c->groups[i].planned > 0;
	}
	return false;
}

static bool in_plan(const struct ts_check *c, const struct ts_species *species)
{
	for (size_t i = 0; i < c->group_count; i++) {
		if (strcmp(c->groups[i].group.species->species, species->species) == 0)
			return true;
	}
	return false;
}

static bool faultless(const struct ts_rulings *all)
{
	for (size_t i = 0; i < all->count; i++) {
		if (all->at[i].severity >= TS_CONCERN || ts_rule_of_room(all->at[i].rule))
			return false;
	}
	return true;
}

/* Of the same place in the tank, and a shoal in the place of a shoal. */
static bool alike(const struct ts_species *a, const struct ts_species *b)
{
	return b->swims == a->swims && (b->group.least >= 5) == (a->group.least >= 5);
}

/* Who wanted the one may want the other: of its family, or alike and about as long; both of cool
 * water, or neither. */
static bool may_replace(const struct ts_species *gone, const struct ts_species *s)
{
	double longer = s->adult_length_cm / gone->adult_length_cm;

	/* Who eats algae goes for one that does. */
	if ((s->hunts == TS_HUNTS_GRAZER) != (gone->hunts == TS_HUNTS_GRAZER))
		return false;
	if ((s->home_water == TS_HOME_COOL) != (gone->home_water == TS_HOME_COOL))
		return false;
	return strcmp(s->family, gone->family) == 0 ||
	       (alike(gone, s) && longer >= 0.5 && longer <= 1.5);
}

/* What is bought lives in what the tank settles at. */
static const struct ts_profile *water_of(const struct ts_check_work *w)
{
	const struct ts_waters *waters = w->check.waters;

	return waters->log.read && waters->settled_known ? &waters->settled : &w->check.profile;
}

static bool suits(const struct ts_check_work *w, const struct ts_species *s, double *ret_distance)
{
	struct ts_keeping keeping = {.temperature = w->question->plan->tank.temp_c};
	struct ts_match match;

	*ret_distance = 0;
	if (!w->check.water_known)
		return true;
	ts_match_species(s, water_of(w), &keeping, w->asking->practice, &match);
	*ret_distance = isnan(match.distance) ? 0 : match.distance;
	return match.verdict == TS_SUITS;
}

/* Who is in the tank when all is done: not who is told not to be bought for the water. */
static bool stays(const struct ts_plan_group *g, const struct ts_species *gone)
{
	bool lives = g->planned < ts_group_count(&g->group);

	return g->group.species != gone && (lives || g->way == TS_WAY_NONE);
}

static bool fits(
	const struct ts_check_work *w, const struct ts_species *gone, const struct ts_species *s)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	struct ts_group group = {.species = s, .either = (unsigned)ceil(s->group.comfortable)};
	struct ts_rulings all = {.count = 0};

	ts_rules_alone(&group, tank, w->asking->practice, &all);
	for (size_t i = 0; i < w->check.group_count && faultless(&all); i++) {
		/* Beside those as well that the water is not for: they may be bought all the same.
		 */
		if (w->check.groups[i].group.species == gone)
			continue;
		all.count = 0;
		ts_rules_together(
			&group, &w->check.groups[i].group, tank, w->asking->practice, &all);
	}
	return faultless(&all);
}

struct choice {
	const struct ts_species *species;
	double worth;
};

/* What speaks for an animal in the place of `gone`; NULL: of any place. Common practice, no source.
 */
enum {
	WORTH_EVERYWHERE = 300,
	WORTH_ALIKE = 200,
	WORTH_SHOAL = 300,
	WORTH_HOME = 100,
	WORTH_FAMILY = 400
};

/* The line stays in the plan in which a replacement is tried. */
static bool line_stays(
	const struct ts_check_work *w, const struct ts_species *gone, const struct ts_species *line)
{
	for (size_t i = 0; i < w->check.group_count; i++) {
		if (w->check.groups[i].group.species == line)
			return stays(&w->check.groups[i], gone);
	}
	return true;
}

/* Nothing is held against `s` (NULL: against anybody), nor between any two of them. */
static bool sound(const struct ts_check *c, const struct ts_species *s)
{
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];

		if (r->severity >= TS_CONCERN && (!s || r->subject == s || r->other))
			return false;
	}
	return c->verdict != TS_PLAN_UNSOUND;
}

/*
 * The whole plan judged again with `s` in the place of `gone`: nobody is named to be refused.
 * `all`: with everybody else in it, or else with those alone that stay; `s` NULL: with nobody.
 * False: nobody is left, or no memory.
 */
static bool judge_again(struct ts_check_work *w, const struct ts_species *gone,
	const struct ts_species *s, bool all, struct ts_arena *scratch, struct ts_check *ret)
{
	const struct ts_check_question *q = w->question;
	struct ts_plan plan = *q->plan;
	struct ts_stock_line *stock =
		ts_arena_array(scratch, q->plan->stock_count + 1, sizeof *stock);
	const struct ts_species **species =
		ts_arena_array(scratch, q->plan->stock_count + 1, sizeof *species);

	if (!stock || !species)
		return false;
	plan.stock = stock;
	plan.stock_count = 0;
	for (size_t i = 0; i < q->plan->stock_count; i++) {
		if (q->species[i] &&
			(all ? q->species[i] == gone : !line_stays(w, gone, q->species[i])))
			continue;
		species[plan.stock_count] = q->species[i];
		stock[plan.stock_count++] = q->plan->stock[i];
	}
	if (s) {
		species[plan.stock_count] = s;
		stock[plan.stock_count++] = (struct ts_stock_line){.species = s->species,
			.count = ceil(s->group.comfortable),
			.sex = TS_SEX_UNKNOWN,
			.origin = TS_ORIGIN_UNKNOWN};
	}
	return plan.stock_count && ts_check_plan(&plan, species, w->asking->today,
					   w->asking->practice, scratch, ret) == TS_OK;
}

static bool passes(struct ts_check_work *w, const struct ts_species *gone,
	const struct ts_species *s, bool all)
{
	struct ts_arena scratch;
	struct ts_check after;
	bool pass;

	ts_arena_open(&scratch, &w->asking->arena->allocator);
	pass = judge_again(w, gone, s, all, &scratch, &after) && sound(&after, s);
	w->asking->arena->failed |= scratch.failed;
	ts_arena_drop(&scratch);
	return pass;
}

const struct ts_species *ts_check_no_room_without(
	struct ts_check_work *w, const struct ts_species *gone)
{
	const struct ts_species *found = NULL;
	struct ts_arena scratch;
	struct ts_check after;

	if (w->check.group_count < 2)
		return NULL;
	ts_arena_open(&scratch, &w->asking->arena->allocator);
	if (judge_again(w, gone, NULL, true, &scratch, &after)) {
		for (size_t i = 0; i < after.count && !found; i++) {
			const struct ts_ruling *r = &after.rulings[i];

			if (r->severity == TS_CONFLICT && ts_rule_of_room(r->rule))
				found = r->subject ? r->subject : ts_check_takes_most(w, gone);
		}
	}
	w->asking->arena->failed |= scratch.failed;
	ts_arena_drop(&scratch);
	return found;
}

bool ts_check_rest_is_sound(struct ts_check_work *w, const struct ts_species *gone)
{
	return w->check.group_count > 1 && passes(w, gone, NULL, true);
}

static double worth(const struct ts_species *gone, const struct ts_species *s, double distance)
{
	double sum = WORTH_EVERYWHERE * (s->sold == TS_SOLD_EVERYWHERE) + fmin(distance, 99);

	if (!gone)
		return sum;
	/* Nobody who wants a few lively ones is helped with one that lives alone. */
	return sum + WORTH_ALIKE * alike(gone, s) +
	       WORTH_FAMILY * (strcmp(s->family, gone->family) == 0) +
	       WORTH_HOME * (s->home_water == gone->home_water) +
	       WORTH_SHOAL * ((s->group.least >= 3) == (gone->group.least >= 3));
}

/* Puts it in its place among the best. */
static void insert(struct choice *best, size_t *io_count, size_t most, struct choice one)
{
	size_t at = *io_count;

	while (at && best[at - 1].worth < one.worth)
		at--;
	if (at >= most)
		return;
	if (*io_count < most)
		++*io_count;
	memmove(&best[at + 1], &best[at], (*io_count - at - 1) * sizeof *best);
	best[at] = one;
}

/* A fish for a fish, a shrimp for a shrimp. */
static size_t choose(const struct ts_check_work *w, int kind, const struct ts_species *gone,
	int sold, size_t most, struct choice *ret)
{
	size_t count = 0;

	for (size_t i = 0; i < w->asking->species_count; i++) {
		const struct ts_species *s = w->asking->species[i];
		struct choice one = {s, 0};
		double distance;

		if (s->kind != kind || s->form || s->sold > sold || !ts_match_advised_unasked(s) ||
			in_plan(&w->check, s) || (gone && !may_replace(gone, s)) ||
			!suits(w, s, &distance))
			continue;
		one.worth = worth(gone, s, distance);
		if ((count < most || one.worth > ret[count - 1].worth) && fits(w, gone, s))
			insert(ret, &count, most, one);
	}
	return count;
}

static bool same_genus(const struct choice *chosen, size_t count, const struct ts_species *s)
{
	for (size_t i = 0; i < count; i++) {
		if (ts_rule_same_genus(chosen[i].species, s))
			return true;
	}
	return false;
}

/* What is sold everywhere goes before what is not; of these, first of every genus one. */
static size_t mixed(const struct choice *from, size_t count, struct choice *ret)
{
	size_t kept = 0;

	for (int pass = 0; pass < 4; pass++) {
		for (size_t i = 0; i < count && kept < NAMED; i++) {
			bool everywhere = from[i].species->sold == TS_SOLD_EVERYWHERE;
			bool taken = false;

			for (size_t k = 0; k < kept; k++)
				taken |= ret[k].species == from[i].species;
			if (!taken && everywhere == (pass < 2) &&
				(pass % 2 || !same_genus(ret, kept, from[i].species)))
				ret[kept++] = from[i];
		}
	}
	return kept;
}

static bool has_no_room(const struct ts_check_work *w, const struct ts_species *s)
{
	for (size_t i = 0; i < w->check.count; i++) {
		const struct ts_ruling *r = &w->check.rulings[i];

		if (r->subject == s && r->severity >= TS_CONCERN && ts_rule_of_room(r->rule))
			return true;
	}
	return false;
}

/* "Instead of the neon tetras, take 10 lemon tetras, which like this water."; `kept` NULL: nobody.
 */
static bool put_instead(
	struct ts_check_work *w, const struct ts_species *kept, const struct ts_species *gone)
{
	struct choice all[LOOKED_AT] = {0}, best;
	size_t count;
	bool rest;
	size_t at = 0;

	/* Who has no room here is not kept either. */
	if (kept && has_no_room(w, kept))
		return false;
	count = choose(w, gone->kind, gone, TS_SOLD_EVERYWHERE, LOOKED_AT, all);
	rest = count && ts_check_rest_is_sound(w, gone);
	while (at < count && !passes(w, gone, all[at].species, rest))
		at++;
	if (at == count)
		return false;
	best = all[at];
	w->out->instead_species = best.species->species;
	w->out->instead_count = ceil(best.species->group.comfortable);
	ts_text_put(&w->text, kept ? "Or keep the " : "Instead of the ");
	if (kept) {
		ts_say_animals(&w->text, kept);
		ts_text_put(&w->text, ", and instead of the ");
	}
	ts_check_put_bought(w, gone);
	ts_text_put(&w->text, kept ? " take " : ", take ");
	ts_text_number_short(&w->text, w->out->instead_count, 0);
	ts_text_put(&w->text, " ");
	(w->out->instead_count == 1 ? ts_say_animal : ts_say_animals)(&w->text, best.species);
	if (w->check.water_known)
		ts_text_put(&w->text, w->out->instead_count == 1 ? ", which likes this water"
								 : ", which like this water");
	else
		ts_text_put(&w->text, ", if your water suits: test GH");
	ts_text_put(&w->text, ".");
	w->out->instead_says = ts_asking_keep(w->asking, &w->text);
	return true;
}

bool ts_check_name_instead(struct ts_check_work *w, const struct ts_species *gone)
{
	return put_instead(w, NULL, gone);
}

/*
 * Whom a mouth threatens may be changed for larger ones: that is another way, behind an "or". Who
 * bites fins is changed itself.
 */
void ts_check_instead(struct ts_check_work *w, const struct ts_ruling *fault)
{
	const struct ts_species *goes = fault->remedy.species;

	if (fault->subject && planned(&w->check, fault->subject) &&
		(ts_rule_of_room(fault->rule) || fault->rule == TS_RULE_TANK_UNMEASURED)) {
		(void)ts_check_name_instead(w, fault->subject);
		return;
	}
	if (!goes || fault->remedy.kind != TS_REMEDY_LEAVE_OUT ||
		!planned(&w->check, fault->subject) || !planned(&w->check, fault->other))
		return;
	if (goes == fault->subject || fault->rule == TS_RULE_FIN_NIPPER) {
		(void)ts_check_name_instead(w, goes);
	} else if (fault->rule == TS_RULE_EATEN && goes == fault->other) {
		(void)put_instead(w, goes, fault->subject);
	}
}

bool ts_check_name_for_water(struct ts_check_work *w, int kind)
{
	struct choice all[LOOKED_AT] = {0}, best[NAMED] = {0};
	size_t count, kept = 0;

	/* For some waters little is sold everywhere. */
	for (int sold = TS_SOLD_EVERYWHERE; sold <= TS_SOLD_OFTEN && !kept; sold++) {
		count = choose(w, kind, NULL, sold, LOOKED_AT, all);
		for (size_t i = 0; i < count; i++) {
			if (passes(w, NULL, all[i].species, false))
				all[kept++] = all[i];
		}
	}
	count = mixed(all, kept, best);
	if (!count)
		return false;
	ts_text_put(&w->text, kind == TS_ANIMAL_FISH ? "Fish for this water as it is: "
						     : "For this water as it is: ");
	for (size_t i = 0; i < count; i++) {
		ts_text_put(&w->text, !i ? "" : i + 1 == count ? " or " : ", ");
		ts_say_animals(&w->text, best[i].species);
	}
	ts_text_put(&w->text, "; tapshoal rank lists them all.");
	w->out->instead_species = best[0].species->species;
	w->out->instead_count = ceil(best[0].species->group.comfortable);
	w->out->instead_says = ts_asking_keep(w->asking, &w->text);
	return true;
}
