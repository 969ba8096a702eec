/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A plan that is changed to see what it mends: it is judged again, and the fault must be gone and
 * no other have come.
 */
#include "stock/mending.h"

#include "base/arena.h"

#define LINES_A_GROUP 6

void ts_draft_add(struct ts_draft *d, const struct ts_plan_group *g, double count, int sex,
	bool living, const struct ts_stock_line *like)
{
	if (!(count > 0))
		return;
	d->species[d->plan.stock_count] = g->group.species;
	d->stock[d->plan.stock_count++] = (struct ts_stock_line){.species = like->species,
		.count = count,
		.sex = sex,
		.since = living ? like->since : NULL,
		.origin = g->wild ? TS_ORIGIN_WILD : TS_ORIGIN_UNKNOWN,
		.size_cm = g->group.size_cm};
}

/* The line of the plan that names the species, one in the tank before one that is planned. */
const struct ts_stock_line *ts_draft_line_of(
	const struct ts_mending *w, const struct ts_plan_group *g)
{
	static const struct ts_stock_line none = {.species = "", .since = ""};
	const struct ts_stock_line *found = NULL;

	for (size_t i = 0; i < w->plan->stock_count; i++) {
		if (w->check->of_line[i] == g->group.species &&
			(!found || (!found->since && w->plan->stock[i].since)))
			found = &w->plan->stock[i];
	}
	return found ? found : &none;
}

bool ts_draft_open(const struct ts_mending *w, struct ts_arena *arena, struct ts_draft *d)
{
	size_t groups = w->check->group_count, most = groups * LINES_A_GROUP + 1;

	*d = (struct ts_draft){.plan = *w->plan};
	d->stock = ts_arena_array(arena, most, sizeof *d->stock);
	d->species = ts_arena_array(arena, most, sizeof *d->species);
	if (!d->stock || !d->species)
		return false;
	d->plan.stock = d->stock;
	d->plan.stock_count = 0;
	for (size_t i = 0; i < groups; i++) {
		const struct ts_plan_group *g = &w->check->groups[i];
		const struct ts_stock_line *like = ts_draft_line_of(w, g);
		double planned = g->planned;
		double all[] = {g->group.males, g->group.females, g->group.either};
		static const int sexes[] = {TS_SEX_MALE, TS_SEX_FEMALE, TS_SEX_UNKNOWN};

		for (size_t k = 0; k < 3; k++) {
			double bought = fmin(planned, all[k]);

			planned -= bought;
			ts_draft_add(d, g, all[k] - bought, sexes[k], true, like);
			ts_draft_add(d, g, bought, sexes[k], false, like);
		}
	}
	return true;
}

void ts_draft_drop(struct ts_draft *d, const struct ts_species *species)
{
	size_t kept = 0;

	for (size_t i = 0; i < d->plan.stock_count; i++) {
		if (d->species[i] == species)
			continue;
		d->stock[kept] = d->stock[i];
		d->species[kept++] = d->species[i];
	}
	d->plan.stock_count = kept;
}

const struct ts_plan_group *ts_check_group_of(
	const struct ts_check *c, const struct ts_species *species)
{
	for (size_t i = 0; species && i < c->group_count; i++) {
		if (c->groups[i].group.species == species)
			return &c->groups[i];
	}
	return NULL;
}

/* Whether it is sure or not, it is the same fault. */
static enum ts_rule_id kind_of(const struct ts_ruling *r)
{
	return r->rule == TS_RULE_WATER_UNSURE ? TS_RULE_WATER : r->rule;
}

static const struct ts_ruling *find(const struct ts_check *c, const struct ts_ruling *like)
{
	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];

		if (kind_of(r) == kind_of(like) && r->subject == like->subject &&
			r->other == like->other)
			return r;
	}
	return NULL;
}

/* Does a check after the change have a fault that was not there, or was lighter? */
static bool worse(const struct ts_check *before, const struct ts_check *after)
{
	for (size_t i = 0; i < after->count; i++) {
		const struct ts_ruling *r = &after->rulings[i], *old;

		if (r->severity < TS_CONCERN)
			break;
		if (r->rule == TS_RULE_UNTESTED)
			continue;
		old = find(before, r);
		if (!old || old->severity < r->severity)
			return true;
	}
	return false;
}

static bool gone(const struct ts_check *after, const struct ts_ruling *fault)
{
	const struct ts_ruling *left = find(after, fault);

	if (kind_of(fault) == TS_RULE_WATER) {
		const struct ts_plan_group *g = ts_check_group_of(after, fault->subject);

		/* What was not read is still not known: the parameter that was off decides. */
		return !g ||
		       (fault->word >= 0 && isnan(fault->match->copper_borne_mg_l)
				       ? ts_misfit_at(&g->match, &after->profile,
						 (enum ts_parameter)fault->word) < TS_MISFIT_OPEN
				       : g->misfit < TS_MISFIT_OPEN);
	}
	return !left || left->severity < TS_CONCERN;
}

/* The water of the draft is what its remedy made it. */
void ts_draft_pour(struct ts_draft *d)
{
	if (!d->water_mended)
		return;
	d->plan.water.readings = &d->mended;
	d->plan.water.reading_count = 1;
	d->plan.tank.readings = NULL;
	d->plan.tank.reading_count = d->plan.change_water.reading_count = 0;
}

/* Judges the draft: is the fault gone, and no other there? */
bool ts_draft_try(const struct ts_mending *w, struct ts_draft *d, const struct ts_ruling *fault,
	bool *ret_clears)
{
	struct ts_check after;
	struct ts_arena scratch;
	bool mends = false;

	ts_draft_pour(d);
	ts_arena_open(&scratch, &w->arena->allocator);
	if (ts_check_faults(&d->plan, d->species, w->today, w->practice, w->check, &scratch,
		    &after) == TS_OK) {
		mends = gone(&after, fault) && !worse(w->check, &after);
		*ret_clears = mends && after.verdict != TS_PLAN_UNSOUND;
	} else {
		w->arena->failed = true;
	}
	ts_arena_drop(&scratch);
	return mends;
}
