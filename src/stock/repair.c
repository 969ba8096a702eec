/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What mends a fault: the plan is judged again with each change of the ladder, and the first change
 * after which the fault is gone and no other has come is the remedy. The repair is these remedies
 * one after the other until no conflict is left.
 */
#include "stock/mending.h"

#include "base/arena.h"

/* Faults that are mended by a deed of their own: nothing of the plan is tried. */
static enum ts_remedy_kind of_its_own(const struct ts_mending *w, const struct ts_ruling *r)
{
	switch (r->rule) {
	case TS_RULE_AMMONIA:
	case TS_RULE_NITRITE:
		return w->check->living_groups ? TS_REMEDY_MAKE_SAFE : TS_REMEDY_WAIT;
	case TS_RULE_CHLORINE:
	case TS_RULE_OXYGEN:
	case TS_RULE_NITRATE:
		return TS_REMEDY_MAKE_SAFE;
	case TS_RULE_DISTRESS:
		return TS_REMEDY_MEASURE;
	case TS_RULE_FILTER:
	case TS_RULE_NEWCOMERS:
	case TS_RULE_OLD_TANK:
	case TS_RULE_YOUNG:
		return TS_REMEDY_WAIT;
	case TS_RULE_WATER_UNSURE:
		return TS_REMEDY_MEASURE;
	default:
		return r->severity == TS_QUESTION ? TS_REMEDY_MEASURE : TS_REMEDY_NONE;
	}
}

/* Heat, a poison, waste and a small buffer are mended where they live: nobody moves for them. */
static bool passes_by(const struct ts_mending *w, const struct ts_ruling *fault)
{
	switch (fault->rule) {
	case TS_RULE_NITRATE:
	case TS_RULE_NITRATE_LOAD:
	case TS_RULE_BUFFER:
		return w->check->living_groups > 0;
	case TS_RULE_WATER:
		return fault->match &&
		       (!isnan(fault->match->copper_borne_mg_l) || fault->word == TS_TEMPERATURE);
	default:
		return false;
	}
}

/* Tries one kind of change after another until one mends; true: the remedy is `*ret`. */
static bool climb_from(const struct ts_mending *w, const struct ts_ruling *fault,
	enum ts_remedy_kind from, enum ts_remedy_kind to, struct ts_remedy *ret)
{
	for (size_t k = 0; k < ts_ladder_count && !w->arena->failed; k++) {
		for (unsigned attempt = 0; ts_ladder[k].kind >= from && ts_ladder[k].kind < to;
			attempt++) {
			struct ts_remedy remedy = {.kind = ts_ladder[k].kind, .attempt = attempt};
			struct ts_arena scratch;
			struct ts_draft d;
			bool more, mends = false;

			ts_arena_open(&scratch, &w->arena->allocator);
			more = ts_draft_open(w, &scratch, &d) &&
			       ts_ladder[k].make(w, fault, attempt, &d, &remedy);
			if (more && !(ts_ladder[k].kind >= TS_REMEDY_NUMBER && !remedy.from))
				mends = ts_draft_try(w, &d, fault, &remedy.clears);
			w->arena->failed |= scratch.failed;
			ts_arena_drop(&scratch);
			if (mends) {
				remedy.mends = true;
				*ret = remedy;
				return true;
			}
			if (!more || w->arena->failed)
				break;
		}
	}
	return false;
}

static enum ts_misfit_way way_of(const struct ts_check *c, const struct ts_ruling *fault)
{
	const struct ts_plan_group *g =
		fault->rule == TS_RULE_WATER ? ts_check_group_of(c, fault->subject) : NULL;

	return g ? g->way : TS_WAY_NONE;
}

static void climb(const struct ts_mending *w, struct ts_ruling *fault)
{
	enum ts_misfit_way way = way_of(w->check, fault);
	/* Nobody is sent away for what does no harm, nor for water that is mended. */
	bool stays = way == TS_WAY_KEEP || fault->severity < TS_CONFLICT || passes_by(w, fault);
	/* Beside others that suit nobody makes other water for one. */
	enum ts_remedy_kind from = way == TS_WAY_LEAVE ? TS_REMEDY_LEAVE_OUT : TS_REMEDY_ROUTINE;

	(void)climb_from(
		w, fault, from, stays ? TS_REMEDY_OTHER_HOME : TS_REMEDY__COUNT, &fault->remedy);
}

/* The water in which those that are off would be well too: said beside what suits as it is. */
static void find_recipe(const struct ts_mending *w)
{
	struct ts_check *c = w->check;

	for (size_t i = 0; i < c->count && c->recipe.kind == TS_REMEDY_NONE; i++) {
		enum ts_misfit_way way = way_of(c, &c->rulings[i]);

		if (way != TS_WAY_NONE && way != TS_WAY_KEEP)
			(void)climb_from(
				w, &c->rulings[i], TS_REMEDY_MINERALS, TS_REMEDY_TANK, &c->recipe);
	}
}

/* A condition that is met before anybody is bought: what it would harm is not there yet. */
static bool eases(const struct ts_mending *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *g = ts_check_group_of(w->check, r->subject);
	bool planned = g ? g->planned == ts_group_count(&g->group) : !w->check->living_groups;

	if (!planned || !r->remedy.clears || r->remedy.test_ammonia_first)
		return false;
	return r->remedy.kind == TS_REMEDY_ROUTINE ||
	       (r->remedy.kind == TS_REMEDY_MINERALS &&
		       (way_of(w->check, r) == TS_WAY_MINERALS || r->rule == TS_RULE_BUFFER));
}

/* Makes the change of a remedy for good. */
static bool apply(const struct ts_mending *w, const struct ts_ruling *fault, struct ts_draft *d)
{
	struct ts_remedy same = {0};

	for (size_t k = 0; k < ts_ladder_count; k++) {
		if (ts_ladder[k].kind != fault->remedy.kind)
			continue;
		if (!ts_draft_open(w, w->arena, d) ||
			!ts_ladder[k].make(w, fault, fault->remedy.attempt, d, &same))
			return false;
		ts_draft_pour(d);
		return true;
	}
	return false;
}

/* The first conflict that some remedy mends; NULL: none. */
static struct ts_ruling *first_mended(const struct ts_mending *w)
{
	struct ts_check *c = w->check;

	for (size_t i = 0; i < c->count && c->rulings[i].severity >= TS_CONFLICT; i++) {
		struct ts_ruling *r = &c->rulings[i];

		if (of_its_own(w, r) != TS_REMEDY_NONE)
			continue;
		if (r->remedy.kind == TS_REMEDY_NONE)
			climb(w, r);
		if (r->remedy.mends)
			return r;
	}
	return NULL;
}

/* What a later step makes needless: a number, or a larger tank, for one who goes in the end. */
static bool needless(const struct ts_ruling *step, const struct ts_ruling *later)
{
	const struct ts_species *goes = later->remedy.species;

	if (later->remedy.kind <= TS_REMEDY_NUMBER)
		return false;
	if (step->remedy.kind == TS_REMEDY_NUMBER)
		return step->remedy.species == goes;
	return step->remedy.kind == TS_REMEDY_TANK &&
	       (step->subject == goes || step->other == goes);
}

static size_t pruned(struct ts_ruling *steps, size_t count)
{
	size_t kept = 0;

	for (size_t i = 0; i < count; i++) {
		bool goes = false;

		for (size_t k = i + 1; k < count; k++)
			goes |= needless(&steps[i], &steps[k]);
		if (!goes)
			steps[kept++] = steps[i];
	}
	return kept;
}

/* Remedy after remedy, the plan judged again after each, until no conflict is left. */
static void repair(const struct ts_mending *from, struct ts_check *check)
{
	size_t most = check->group_count + 4;
	struct ts_ruling *steps = ts_arena_array(from->arena, most, sizeof *steps);
	struct ts_draft *drafts = ts_arena_array(from->arena, most, sizeof *drafts);
	struct ts_check now = *check;
	struct ts_mending w = *from;
	struct ts_ruling *fault;

	w.check = &now;
	check->repair = steps;
	while (steps && drafts && check->repair_count < most && (fault = first_mended(&w))) {
		struct ts_draft *d = &drafts[check->repair_count];

		steps[check->repair_count] = *fault;
		if (!apply(&w, fault, d) || ts_check_faults(&d->plan, d->species, w.today,
						    w.practice, &now, w.arena, &now) != TS_OK)
			return;
		check->repair_count++;
		w.plan = &d->plan;
		ts_check_shared_water(&now);
		ts_check_smallest_tank(w.plan, w.practice, &now, &now.smallest);
	}
	check->repair_mends = now.verdict != TS_PLAN_UNSOUND;
	check->repair_count = pruned(steps, check->repair_count);
}

void ts_check_remedies(const struct ts_plan *plan, long today, const struct ts_practice *practice,
	struct ts_arena *arena, struct ts_check *check)
{
	struct ts_mending w = {.practice = practice,
		.plan = plan,
		.arena = arena,
		.check = check,
		.today = today,
		.sick = ts_plan_unwell(plan) ||
			check->profile.poisons.found &
				(unsigned)(TS_POISON_AMMONIA | TS_POISON_NITRITE)};

	for (size_t i = 0; i < check->count && !arena->failed; i++) {
		struct ts_ruling *r = &check->rulings[i];

		r->remedy.kind = of_its_own(&w, r);
		if (r->severity < TS_CONCERN || r->remedy.kind != TS_REMEDY_NONE)
			continue;
		if (check->group_count <= TS_REMEDIES_TRIED)
			climb(&w, r);
		else if (r->subject)
			r->remedy = (struct ts_remedy){.kind = TS_REMEDY_LEAVE_OUT};
		if (r->severity == TS_CONFLICT && eases(&w, r))
			r->severity = TS_CONCERN;
	}
	find_recipe(&w);
	ts_check_sort(check);
	check->repair_mends = check->verdict != TS_PLAN_UNSOUND;
	if (!check->repair_mends && check->group_count <= TS_REMEDIES_TRIED)
		repair(&w, check);
}
