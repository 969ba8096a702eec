/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What stands beside the recipe: lime and peat, the ends of the supply, weight and waste, the
 * routine afterwards, the two groups, cautions.
 */
#include "answers/remake_work.h"

#include "answers/cautions.h"
#include "words/animal.h"
#include "words/sentence.h"

#define LARGE_L 200.0
/* Litres of waste for each litre of water from reverse osmosis (common practice, no source). */
#define WASTE_TIMES 3.0
/* Weight of a tank with its stand for each litre, kg (common practice, no source). */
#define KG_PER_L 1.3

static void note(struct ts_remake_work *w, const char *says)
{
	ts_asking_note(w->asking, &w->r.notes, says);
}

/* Lime in the filter that gets as far as is wished stands beside the grams, not among the notes. */
static void fill_lime(struct ts_remake_work *w)
{
	const struct ts_remake *r = &w->remake;

	if (!r->lime_helps)
		return;
	if (r->aragonite.kh_tank_dh < r->kh_dh.low - 1e-9) {
		ts_say_lime(&w->text, r);
		note(w, ts_remake_keep(w));
		return;
	}
	ts_text_put(&w->text, "Or without weighing: a bag of crushed coral (aragonite) in the "
			      "filter takes KH to ");
	ts_text_number(&w->text, r->aragonite.kh_tank_dh, 1);
	ts_text_put(&w->text, ", limestone to ");
	ts_text_number(&w->text, r->limestone.kh_tank_dh, 1);
	ts_text_put(&w->text, ", by itself in weeks; read KH every week, and take some out when "
			      "it is enough.");
	w->r.slow = ts_remake_keep(w);
}

static void note_ph_of_wished(struct ts_remake_work *w)
{
	struct ts_profile after;

	ts_remade_profile(&w->remake.recipe.water, w->asking->practice, &after);
	for (size_t i = 0; i < w->wish.wanted_count; i++) {
		struct ts_match m;

		ts_match_species(
			w->wish.wanted[i], &after, &w->wish.keeping, w->asking->practice, &m);
		if (!m.at[TS_PH].known || fabs(m.at[TS_PH].uncomfortable_by) < 0.1)
			continue;
		ts_say_name(&w->text, m.species);
		ts_text_put(&w->text, " in a tank of it: ");
		ts_say_parameter(&w->text, TS_PH, &m.at[TS_PH]);
		ts_text_put(&w->text, ".");
		note(w, ts_remake_keep(w));
	}
}

static void fill_notes(struct ts_remake_work *w)
{
	const struct ts_remake *r = &w->remake;

	if (!ts_remake_has_recipe(w))
		return;
	if (!r->comfortable)
		note(w, "What they prefer cannot be had from this water; this is what they "
			"tolerate.");
	fill_lime(w);
	/* Who only lives there asks for no other pH than the one that follows from KH. */
	if (w->wish.keeping.breeding) {
		note_ph_of_wished(w);
		ts_say_peat(&w->text, r);
		note(w, ts_remake_keep(w));
	}
	ts_say_ends(&w->text, r);
	note(w, ts_remake_keep(w));
	if (r->recipe.count && r->recipe.kh_dh <= w->asking->practice->value[TS_P_KH_ACT] + 0.05)
		note(w, "KH is at the floor: keep the load light, and test KH, pH and ammonia "
			"twice a week.");
}

/* What this tank weighs, and what its pure water costs in waste. */
static void note_amounts(struct ts_remake_work *w)
{
	double pure_l = w->remake.recipe.mineral_free * w->volume_l * w->change_percent / 100;

	if (w->volume_known && w->volume_l >= LARGE_L) {
		ts_text_put(&w->text, "This tank of ");
		ts_say_amount(&w->text, w->volume_l, "L weighs about ");
		ts_text_number_short(&w->text, 10 * round(KG_PER_L * w->volume_l / 10), 0);
		ts_text_put(&w->text, " kg with its stand.");
		note(w, ts_remake_keep(w));
	}
	if (!(pure_l >= 1) || !ts_remake_has_recipe(w))
		return;
	ts_say_amount(&w->text, pure_l,
		"L of water without minerals go into each change; by "
		"reverse osmosis they leave about ");
	ts_say_amount(&w->text, WASTE_TIMES * pure_l, "L of waste water, good for flowers.");
	note(w, ts_remake_keep(w));
}

static void fill_routine(struct ts_remake_work *w)
{
	if (!ts_remake_has_recipe(w))
		return;
	if (!w->remake.recipe.count) {
		w->r.routine = "Change water as before; top up what evaporates with water without "
			       "minerals, since changes take minerals out and topping up does not.";
		return;
	}
	ts_text_put(&w->text, "At every later change of ");
	ts_say_amount(&w->text, w->volume_l * w->change_percent / 100, "L");
	ts_text_put(&w->text,
		" the same recipe again, into the new water and not into the tank. Top "
		"up what evaporates with water without minerals alone: it leaves the "
		"minerals behind. Test GH and KH of each batch.");
	w->r.routine = ts_remake_keep(w);
}

static bool fits_now(const struct ts_remake_work *w, const struct ts_resident *one)
{
	struct ts_keeping k = w->wish.keeping;
	struct ts_match m;

	k.wild = one->wild;
	k.breeding = false;
	ts_match_species(one->species, &w->profile, &k, w->asking->practice, &m);
	return m.verdict <= TS_TOLERATES;
}

/* Who lives there, and who is wished; without a wish there is no second group. */
static void fill_groups(struct ts_remake_work *w)
{
	struct ts_group_line *g;
	size_t fit = 0;

	if (w->verdict != TS_VERDICT_RESIDENTS || !w->wish.wanted_count)
		return;
	g = ts_arena_array(w->asking->arena, 2, sizeof *g);
	if (!g)
		return;
	g[0].name = "A";
	for (size_t i = 0; i < w->wish.resident_count; i++) {
		fit += fits_now(w, &w->wish.residents[i]);
		ts_asking_note(w->asking, &g[0].species, w->wish.residents[i].species->species);
	}
	g[0].says = fit == w->wish.resident_count
			    ? "They keep this tank and this water as it is: no work."
			    : "They keep this tank until another keeper is found; not all of them "
			      "suit this water as it is.";
	g[1].name = "B";
	for (size_t i = 0; i < w->wish.wanted_count; i++)
		ts_asking_note(w->asking, &g[1].species, w->wish.wanted[i]->species);
	g[1].says =
		"A second tank, filled at once by the recipe below before any animal is bought; "
		"or this tank, once the others are rehomed.";
	w->r.groups = g;
	w->r.group_count = 2;
}

static void fill_cautions(struct ts_remake_work *w)
{
	const struct ts_recipe *recipe = &w->remake.recipe;
	unsigned when = 0, poisons = w->profile.poisons.found;

	for (size_t i = 0; ts_remake_has_recipe(w) && i < recipe->count; i++) {
		when |= recipe->parts[i].ingredient == TS_CALCIUM_CHLORIDE
				? TS_CAUTION_CALCIUM_CHLORIDE
				: 0u;
		when |= ts_ingredients[recipe->parts[i].ingredient].formula ? TS_CAUTION_SALTS
									    : TS_CAUTION_PLUMBING;
	}
	when |= w->r.stage_count ? TS_CAUTION_CHANGES : 0u;
	when |= w->r.group_count ? TS_CAUTION_REHOMING : 0u;
	when |= w->verdict == TS_VERDICT_UNSOFTENED ? TS_CAUTION_PLUMBING : 0u;
	when |= w->volume_known && w->volume_l >= LARGE_L ? TS_CAUTION_LARGE : 0u;
	when |= poisons & (TS_POISON_NITRATE | TS_POISON_COPPER) ? TS_CAUTION_DRINKING : 0u;
	ts_answer_cautions(w->asking, when, &w->r.cautions);
}

void ts_remake_notes(struct ts_remake_work *w)
{
	fill_notes(w);
	note_amounts(w);
	fill_routine(w);
	fill_groups(w);
	fill_cautions(w);
}
