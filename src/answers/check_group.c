/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A name of many animals, "mbuna", "pleco": which of them it is has to be asked, but what holds for
 * all that are usually sold is said at once: how long they grow, which water all of them like, and
 * what of the water that was read is right for none.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "words/names.h"
#include "words/rulings.h"
#include "words/sentence.h"

static void put_grown(struct ts_check_work *w, const struct ts_candidates *c)
{
	double least = INFINITY, most = 0;

	for (size_t i = 0; i < c->count; i++) {
		least = fmin(least, c->items[i].species->adult_length_cm);
		most = fmax(most, c->items[i].species->adult_length_cm);
	}
	ts_text_number_short(&w->text, least, 0);
	if (most > least) {
		ts_text_put(&w->text, " to ");
		ts_text_number_short(&w->text, most, 0);
	}
	ts_text_put(&w->text, " cm long when grown");
}

/* Above (1), below (-1) what any of them bears by what was read; 0: right for some. */
static int beyond_all(const struct ts_check_work *w, const struct ts_match *all, size_t count,
	enum ts_parameter p)
{
	int side = 0;

	for (size_t i = 0; i < count; i++) {
		const struct ts_parameter_fit *f = &all[i].at[p];
		int here = f->uncomfortable_by > 0 ? 1 : -1;

		if (ts_misfit_at(&all[i], &w->check.profile, p) < TS_MISFIT_OFF ||
			(side && here != side))
			return 0;
		side = here;
	}
	return side;
}

/* "GH 8 to 20 (yours is 4: too soft for all)". */
static bool put_liked(struct ts_check_work *w, const struct ts_match *all, size_t count,
	enum ts_parameter p, bool first)
{
	const struct ts_parameter_row *row = &ts_parameter_rows[p];
	struct ts_range both = {-INFINITY, INFINITY};
	int side = beyond_all(w, all, count, p);

	for (size_t i = 0; i < count; i++) {
		const struct ts_parameter_fit *f = &all[i].at[p];
		const struct ts_range *r = isnan(f->preferred.low) ? &f->tolerated : &f->preferred;

		both.low = fmax(both.low, r->low);
		both.high = fmin(both.high, r->high);
	}
	if (!(both.low <= both.high) || !isfinite(both.high))
		return false;
	ts_text_puts(&w->text, first ? "All of them like " : ", ",
		p == TS_TEMPERATURE ? "" : row->label, p == TS_TEMPERATURE ? "" : " ", NULL);
	ts_say_range(&w->text, &both, row->decimals);
	ts_text_put(&w->text, p == TS_TEMPERATURE ? " C" : "");
	if (w->check.profile.at[p].given) {
		ts_text_put(&w->text, " (yours is ");
		ts_text_number_short(&w->text, w->check.profile.at[p].value, row->decimals);
		ts_text_puts(&w->text, side ? ": " : "",
			!side      ? ""
			: side > 0 ? row->above
				   : row->below,
			side ? " for all" : "", ")", NULL);
	}
	return true;
}

static void put_shared(struct ts_check_work *w, const struct ts_candidates *c)
{
	static const enum ts_parameter asked[] = {TS_GH, TS_KH, TS_TEMPERATURE};
	struct ts_keeping keeping = {.temperature = w->question->plan->tank.temp_c};
	struct ts_match *all = ts_arena_array(w->asking->arena, c->count + 1, sizeof *all);
	bool any = false;

	for (size_t i = 0; all && i < c->count; i++)
		ts_match_species(c->items[i].species, &w->check.profile, &keeping,
			w->asking->practice, &all[i]);
	for (size_t i = 0; all && i < sizeof asked / sizeof *asked; i++)
		any |= put_liked(w, all, c->count, asked[i], !any);
	ts_text_put(&w->text, any ? "." : "No one water is for all of them.");
}

/* A name that only sounds like the group's is no animal known; what the group threatens holds. */
static void put_question(struct ts_check_work *w, const char *name, const struct ts_candidates *c)
{
	size_t all = c->all > c->count ? c->all : c->count;

	if (c->by_word) {
		ts_text_puts(&w->text, "No ", name, " is in the catalogue. Others of its kind are ",
			NULL);
	} else if (all == 1) {
		ts_text_puts(&w->text, "Which ", name, "? The one that is known here is ", NULL);
	} else {
		ts_text_puts(&w->text, "Which ", name, "? The name is of ", NULL);
		ts_text_number(&w->text, (double)all, 0);
		ts_text_put(&w->text, " kinds, ");
	}
	put_grown(w, c);
	if (ts_group_warns(c)) {
		ts_text_put(&w->text, ". Each of them: ");
		ts_say_group_warning(&w->text, c);
	}
	ts_text_put(&w->text, ".");
}

/* Whether this one harms the group, or is harmed by it, whatever the room. */
static bool at_odds(
	const struct ts_check_work *w, const struct ts_species *one, const struct ts_group *with)
{
	const struct ts_group group = {.species = one, .either = (unsigned)ceil(one->group.least)};
	struct ts_rulings all = {.count = 0};

	ts_rules_together(&group, with, &w->question->plan->tank, w->asking->practice, &all);
	for (size_t i = 0; i < all.count; i++) {
		if (all.at[i].severity == TS_CONFLICT || all.at[i].rule == TS_RULE_LAKE_APART)
			return true;
	}
	return false;
}

/* "Not together: none of them lives with neon tetras, whichever it is." False: they may. */
static bool put_company(struct ts_check_work *w, const struct ts_candidates *c)
{
	bool any = false;

	for (size_t k = 0; k < w->check.group_count; k++) {
		bool none = c->count > 0;

		for (size_t i = 0; i < c->count && none; i++)
			none = at_odds(w, c->items[i].species, &w->check.groups[k].group);
		if (!none)
			continue;
		ts_text_puts(&w->text,
			any ? " nor with " : "Not together: none of them lives with ", NULL);
		ts_say_animals(&w->text, w->check.groups[k].group.species);
		any = true;
	}
	if (any)
		ts_text_put(&w->text, ", whichever it is. ");
	return any;
}

/* Some would do and some not: that is the answer, and no list. */
static bool lead_with_those_apart(struct ts_check_work *w, const char *name, size_t entry)
{
	struct ts_texts *members = &w->out->members;
	const char *before;

	ts_text_puts(&w->text, "Which ", name, "? ", NULL);
	before = ts_asking_keep(w->asking, &w->text);
	for (size_t i = 0; i < members->count; i++) {
		if (strncmp(members->items[i], before, strlen(before)) != 0)
			continue;
		ts_text_put(&w->text, members->items[i]);
		ts_check_finish(w, TS_CHECK_QUESTION, entry, NULL);
		for (members->count--; i < members->count; i++)
			members->items[i] = members->items[i + 1];
		return true;
	}
	return false;
}

bool ts_check_lead_with_group(struct ts_check_work *w, size_t entry)
{
	const struct ts_plan *plan = w->question->plan;
	const char *name = w->entries[entry].ruling->name, *shared;
	const struct ts_candidates *c = NULL;
	bool apart;

	for (size_t i = 0; i < plan->stock_count && !c; i++) {
		if (plan->stock[i].species == name && !w->question->species[i])
			c = &w->question->candidates[i];
	}
	if (c && lead_with_those_apart(w, name, entry))
		return true;
	if (!c || !c->count || (c->how != TS_NAME_GROUP && c->how != TS_NAME_SHARED))
		return false;
	put_shared(w, c);
	shared = ts_asking_keep(w->asking, &w->text);
	apart = put_company(w, c);
	put_question(w, name, c);
	ts_check_finish(w, apart ? TS_CHECK_NO : TS_CHECK_QUESTION, entry, NULL);
	ts_say_members(&w->text, name, c);
	w->out->decides = shared;
	w->out->water_too = ts_asking_keep(w->asking, &w->text);
	return true;
}
