/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Where an animal is eaten or bitten by one that is planned as well, the cause need not go: another
 * shoal, or another fish of the same level, may do in its place. It is one that is sold, that the
 * rules have nothing against beside the rest, and that the water suits where it is known.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "stock/rules.h"
#include "words/rulings.h"

static bool planned(const struct ts_check *c, const struct ts_species *species)
{
	for (size_t i = 0; i < c->group_count; i++) {
		if (c->groups[i].group.species == species)
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
		if (all->at[i].severity >= TS_CONCERN)
			return false;
	}
	return true;
}

/* Of the same place in the tank, and a shoal in the place of a shoal. */
static bool alike(const struct ts_species *a, const struct ts_species *b)
{
	return b->kind == TS_ANIMAL_FISH && b->swims == a->swims &&
	       (b->group.least >= 5) == (a->group.least >= 5) && b->sold <= TS_SOLD_OFTEN &&
	       ts_match_advised_unasked(b);
}

static bool suits(const struct ts_check_work *w, const struct ts_species *s)
{
	struct ts_keeping keeping = {.temperature = w->question->plan->tank.temp_c};
	struct ts_match match;

	if (!w->check.water_known)
		return true;
	ts_match_species(s, &w->check.profile, &keeping, w->asking->practice, &match);
	return match.verdict <= TS_TOLERATES && match.limiting < 0;
}

static bool fits(
	const struct ts_check_work *w, const struct ts_species *gone, const struct ts_species *s)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	struct ts_group group = {.species = s, .either = (unsigned)ceil(s->group.comfortable)};
	struct ts_rulings all = {.count = 0};

	ts_rules_alone(&group, tank, w->asking->practice, &all);
	for (size_t i = 0; i < w->check.group_count && faultless(&all); i++) {
		const struct ts_group *other = &w->check.groups[i].group;

		if (other->species == gone)
			continue;
		all.count = 0;
		ts_rules_together(&group, other, tank, w->asking->practice, &all);
	}
	return faultless(&all);
}

/* Of one home before others, then what is sold most, then by name (the catalogue's order). */
static int worth(const struct ts_species *gone, const struct ts_species *s)
{
	return 2 * (s->home_water == gone->home_water) + (s->sold == TS_SOLD_EVERYWHERE);
}

void ts_check_instead(struct ts_check_work *w, const struct ts_ruling *fault)
{
	const struct ts_species *gone = fault->subject, *best = NULL;

	if ((fault->rule != TS_RULE_EATEN && fault->rule != TS_RULE_FIN_NIPPER) ||
		fault->remedy.kind != TS_REMEDY_LEAVE_OUT || !planned(&w->check, gone) ||
		!planned(&w->check, fault->other))
		return;
	for (size_t i = 0; i < w->asking->species_count; i++) {
		const struct ts_species *s = w->asking->species[i];

		if ((best && worth(gone, s) <= worth(gone, best)) || !alike(gone, s) ||
			in_plan(&w->check, s) || !suits(w, s) || !fits(w, gone, s))
			continue;
		best = s;
	}
	if (!best)
		return;
	w->out->instead_species = best->species;
	w->out->instead_count = ceil(best->group.comfortable);
	ts_text_put(&w->text, "Or, instead of the ");
	ts_say_animals(&w->text, gone);
	ts_text_put(&w->text, ", take ");
	ts_text_number_short(&w->text, w->out->instead_count, 0);
	ts_text_put(&w->text, " ");
	ts_say_animals(&w->text, best);
	ts_text_put(&w->text, ".");
	w->out->instead_says = ts_asking_keep(w->asking, &w->text);
}
