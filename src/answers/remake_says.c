/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The first two lines of remake: what to do, and the number that decides.
 */
#include "answers/remake_work.h"

#include "words/rulings.h"
#include "words/sentence.h"

/* "118 L of reverse osmosis ... and 3 g of Epsom salt": of the first fill, or of each change. */
static void put_parts(struct ts_remake_work *w, bool change)
{
	for (size_t i = 1; i < w->r.recipe_count; i++) {
		const struct ts_recipe_line *l = &w->r.recipe[i];

		ts_text_put(&w->text, i > 1 ? ", " : "");
		ts_say_amount(&w->text, change ? l->amount_change : l->amount, l->unit);
		ts_text_puts(&w->text, " of ", l->says, NULL);
	}
	ts_text_put(&w->text, change ? " in the " : " for ");
	ts_say_amount(&w->text, w->volume_l * (change ? w->change_percent / 100 : 1), "L");
	ts_text_put(&w->text, change ? " of each change." : ".");
}

/* "3 g of sodium bicarbonate": in each 100 L of new water. */
static void put_in_100_l(struct ts_remake_work *w)
{
	const struct ts_recipe *recipe = &w->remake.recipe;

	for (size_t i = 0; i < recipe->count; i++) {
		const struct ts_recipe_part *part = &recipe->parts[i];
		const struct ts_ingredient *row = &ts_ingredients[part->ingredient];

		ts_text_put(&w->text, i ? ", " : ": in each 100 L of it ");
		ts_say_amount(&w->text,
			row->formula ? part->grams_per_100_l : 100 * recipe->mineral_free,
			row->formula ? "g" : "L");
		ts_text_puts(&w->text, " of ", row->says, NULL);
	}
	ts_text_put(&w->text, ".");
}

static void put_stages(struct ts_remake_work *w)
{
	const struct ts_stages *s = &w->remake.stages;

	ts_text_number_short(&w->text, (double)s->count, 0);
	ts_text_put(&w->text, s->count == 1 ? " stage" : " stages");
	if (s->count > 1) {
		ts_text_put(&w->text, " over ");
		ts_text_number_short(&w->text, s->last_day, 0);
		ts_text_put(&w->text, " days");
	}
	ts_text_put(&w->text, ", by new water made for it");
	put_in_100_l(w);
}

/* Of the two that do not live together the one that lives there. */
static const struct ts_species *apart_resident(const struct ts_remake_work *w)
{
	for (size_t i = 0; i < w->wish.resident_count; i++) {
		if (w->wish.residents[i].species == w->apart.subject)
			return w->apart.subject;
	}
	return w->apart.other;
}

static void put_apart(struct ts_remake_work *w)
{
	ts_text_put(&w->text, "First the ");
	ts_say_animals(&w->text, apart_resident(w));
	ts_text_put(&w->text, " out, then re-make the empty tank: ");
	ts_say_ruling(&w->text, &w->apart);
	ts_text_put(&w->text, ".");
}

/* Over ammonia a rising pH kills; where it does not rise, one test is enough. */
static void put_test_first(struct ts_remake_work *w)
{
	const struct ts_stages *s = &w->remake.stages;
	bool first = s->raises_ph || !s->count;

	if (first && w->unneeded)
		ts_text_put(&w->text, "test ammonia and nitrite first, today.");
	else if (first)
		ts_say_refusal(&w->text, &w->remake);
	if (!s->count)
		return;
	ts_text_put(&w->text, first         ? " Then re-make the water in "
			      : w->unneeded ? "in "
					    : "Re-make the water in ");
	put_stages(w);
	if (!first)
		ts_text_put(&w->text, " Test ammonia and nitrite once before the first.");
}

void ts_remake_say_what(struct ts_remake_work *w)
{
	if (w->are_apart) {
		put_apart(w);
		return;
	}
	if (w->unneeded)
		ts_text_put(&w->text, "Nobody needs it: those who live there like GH and KH as "
				      "they are. ");
	if (w->unneeded && w->verdict != TS_VERDICT_RESIDENTS)
		ts_text_put(&w->text, "If you want it all the same: ");
	switch (w->verdict) {
	case TS_VERDICT_LEAVE:
		ts_text_put(&w->text, "Leave the water as it is: it is what you wish.");
		return;
	case TS_VERDICT_STAGES:
		ts_text_put(&w->text, w->unneeded ? "in " : "Re-make the water in ");
		put_stages(w);
		return;
	case TS_VERDICT_NEW_WATER:
		ts_text_put(&w->text, w->unneeded ? ""
						  : "The tank is as wished: make only the new "
						    "water so, ");
		put_parts(w, true);
		return;
	case TS_VERDICT_REMAKE:
		ts_text_put(&w->text, w->unneeded ? "" : "All at once, while nobody lives there: ");
		put_parts(w, false);
		return;
	case TS_VERDICT_TEST_FIRST:
		put_test_first(w);
		return;
	default:
		if (w->verdict == TS_VERDICT_RESIDENTS && !w->wish.wanted_count)
			ts_text_put(&w->text, "Not with the animals in the tank: the new water "
					      "does not suit them.");
		else
			ts_say_refusal(&w->text, &w->remake);
		return;
	}
}

/* The resident that the new water does not suit, in the house sentence. */
static void put_resident(struct ts_remake_work *w)
{
	const struct ts_stages *stages = &w->remake.stages;
	const struct ts_resident *one = &w->wish.residents[stages->resident];
	struct ts_keeping k = {.wild = one->wild};
	struct ts_profile after;
	struct ts_match m;

	ts_remade_profile(&w->remake.recipe.water, w->asking->practice, &after);
	ts_match_species(one->species, &after, &k, w->asking->practice, &m);
	ts_text_put(&w->text, one->species->common.en.count ? one->species->common.en.items[0]
							    : one->species->species);
	ts_text_put(&w->text, " in the new water: ");
	ts_say_parameter(&w->text, (enum ts_parameter)stages->parameter, &m.at[stages->parameter]);
	ts_text_put(&w->text, ".");
}

void ts_remake_say_because_of(struct ts_remake_work *w)
{
	const struct ts_remake *r = &w->remake;

	if (w->verdict == TS_VERDICT_RESIDENTS && !w->are_apart) {
		put_resident(w);
	} else if (w->verdict == TS_VERDICT_TEST_FIRST && r->stages.raises_ph) {
		ts_text_put(&w->text, "They are not known, or older than 3 days; over ammonia, a "
				      "rising pH kills. ");
		ts_say_remake_because(&w->text, r);
	} else if (w->verdict == TS_VERDICT_SAFE_FIRST) {
		ts_text_put(&w->text, "Ammonia ");
		ts_text_number_short(&w->text, w->wish.tank->poisons.tan_mg_l, 2);
		ts_text_put(&w->text, " mg/L N, nitrite ");
		ts_text_number_short(&w->text, w->wish.tank->poisons.no2_mg_l, 2);
		ts_text_put(&w->text, " mg/L; both must read nil.");
	} else {
		ts_say_remake_because(&w->text, r);
	}
}
