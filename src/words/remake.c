/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Tables of sentences, and the few that put numbers together.
 */
#include "words/remake.h"

#include <math.h>

#include "words/sentence.h"

const char *const ts_remake_verdict_words[TS_REMAKE_VERDICT__COUNT + 1] = {"leave", "remake",
	"remake-by-stages", "test-first", "make-safe-first", "not-with-these-residents",
	"unreachable", "unsoftened-first", "remake-the-new-water"};

/* clang-format off */
const struct ts_caution ts_cautions[] = {
	{TS_CAUTION_CHANGES, "Unplug the heater before drawing water, never suck a hose with your mouth, and keep change water within 2 C of the tank."},
	{TS_CAUTION_CALCIUM_CHLORIDE, "Calcium chloride heats as it dissolves: goggles and gloves, little by little into much water."},
	{TS_CAUTION_SALTS, "Dissolve salts in the new water, never in the tank, and let it stand aired for an hour. Take pure salts whose content is declared, and keep them from children."},
	{TS_CAUTION_LARGE, "Water is heavy: ask a builder about the floor under so large a tank."},
	{TS_CAUTION_REHOMING, "Animals that must go need another keeper. Never release one; local law first."},
	{TS_CAUTION_PLUMBING, "Pipes, softeners and fixed water treatment are work for licensed people."},
	{TS_CAUTION_NEWCOMERS, "Wet hands and cuts: wear gloves, wash afterwards. Animals that sting or bite: ask before you buy. A vet decides about animals that suffer."},
	{TS_CAUTION_DRINKING, "Nitrate above 50 mg/L, nitrite, lead, copper or germs in a supply are a drinking-water matter: ask the health authority."},
};
/* clang-format on */

const size_t ts_caution_count = sizeof ts_cautions / sizeof *ts_cautions;

const char *ts_treatment(int disinfectant)
{
	switch (disinfectant) {
	case TS_DISINFECTANT_NONE:
		return "No treatment against chlorine is needed, since the supply adds none; ask "
		       "again when they flush the mains.";
	case TS_DISINFECTANT_CHLORINE:
		return "Treat all new water against chlorine before anything else.";
	case TS_DISINFECTANT_CHLORAMINE:
		return "Treat all new water against chloramine before anything else; standing does "
		       "not remove it.";
	default:
		return "Treat all new water against chlorine and chloramine before anything else: "
		       "what the supplier adds is not known, and standing does not remove "
		       "chloramine.";
	}
}

void ts_say_amount(struct ts_text *text, double amount, const char *unit)
{
	ts_text_number_short(text, amount, amount < 9.95 ? 1 : 0);
	ts_text_puts(text, " ", unit, NULL);
}

static enum ts_remake_verdict verdict_of_stages(const struct ts_stages *stages)
{
	switch (stages->refusal) {
	case TS_STAGES_TEST_FIRST:
		/* Nothing in the tank changes. */
		return stages->count ? TS_VERDICT_TEST_FIRST : TS_VERDICT_NEW_WATER;
	case TS_STAGES_AMMONIA:
	case TS_STAGES_AMMONIA_ON_WAY:
		return TS_VERDICT_SAFE_FIRST;
	case TS_STAGES_RESIDENT:
		return TS_VERDICT_RESIDENTS;
	default:
		return TS_VERDICT_UNREACHABLE;
	}
}

enum ts_remake_verdict ts_remake_verdict_of(
	const struct ts_remake *remake, enum ts_status status, bool inhabited)
{
	if (status == TS_OK)
		return remake->stages.count    ? TS_VERDICT_STAGES
		       : !remake->recipe.count ? TS_VERDICT_LEAVE
		       : inhabited             ? TS_VERDICT_NEW_WATER
					       : TS_VERDICT_REMAKE;
	switch (remake->refusal) {
	case TS_REMAKE_SOFTENED:
		return TS_VERDICT_UNSOFTENED;
	case TS_REMAKE_NO_GH:
	case TS_REMAKE_NO_KH:
		return TS_VERDICT_TEST_FIRST;
	case TS_REMAKE_STAGES:
		return verdict_of_stages(&remake->stages);
	default:
		return TS_VERDICT_UNREACHABLE;
	}
}

static const char *stage_refusal(enum ts_stages_refusal refusal)
{
	switch (refusal) {
	case TS_STAGES_RESIDENT:
		return "Not with the animals in the tank: two groups that cannot share one water.";
	case TS_STAGES_FLOOR:
		return "Not with these animals: KH would fall below the buffer floor of 1.1.";
	case TS_STAGES_TEST_FIRST:
		return "Test ammonia and nitrite in the tank first, today.";
	case TS_STAGES_AMMONIA:
		return "Make the tank safe first: the water is not changed over ammonia or "
		       "nitrite.";
	case TS_STAGES_AMMONIA_ON_WAY:
		return "Bring ammonia to nil first: on the way the rising pH would turn it into "
		       "poison.";
	default:
		return "Not by stages: it is too far for the animals in the tank.";
	}
}

static const char *limit_says(enum ts_recipe_limit limit)
{
	switch (limit) {
	case TS_LIMIT_SODIUM:
		return "No recipe: it would need more sodium than these animals bear.";
	case TS_LIMIT_POTASSIUM:
		return "No recipe: it would need more potassium than these animals bear.";
	case TS_LIMIT_CHLORIDE:
		return "No recipe: it would need more chloride than these animals bear.";
	case TS_LIMIT_CA_MG:
		return "No recipe: calcium and magnesium would be out of proportion (2:1 to 5:1); "
		       "have a salt of the other at hand.";
	default:
		return "No recipe: what is at hand cannot make this water.";
	}
}

void ts_say_refusal(struct ts_text *text, const struct ts_remake *r)
{
	switch (r->refusal) {
	case TS_REMAKE_SOFTENED:
		ts_text_put(text, "Take the unsoftened cold line and test that: softened water is "
				  "not soft.");
		return;
	case TS_REMAKE_NO_GH:
		ts_text_put(text, "Test GH first, with drops.");
		return;
	case TS_REMAKE_NO_KH:
		ts_text_put(text, "Test KH first, with drops.");
		return;
	case TS_REMAKE_NO_SHARED:
		ts_text_put(text, "The animals you wish share no water: part them.");
		return;
	case TS_REMAKE_UNREACHABLE:
		ts_text_put(text, limit_says(r->limit));
		return;
	default:
		ts_text_put(text, stage_refusal(r->stages.refusal));
		return;
	}
}

static void say_one(struct ts_text *text, const char *label, double now,
	const struct ts_range *band, double becomes, bool known)
{
	ts_text_puts(text, label, " ", NULL);
	ts_text_number_short(text, now, 1);
	ts_text_put(text, ", wished ");
	if (band->low == band->high)
		ts_text_number_short(text, band->low, 1);
	else
		ts_say_range(text, band, 1);
	if (known && fabs(becomes - now) >= 0.05) {
		ts_text_put(text, ": becomes ");
		ts_text_number_short(text, becomes, 1);
	}
}

void ts_say_remake_because(struct ts_text *text, const struct ts_remake *r)
{
	bool known = r->refusal == TS_REMAKE_FINE || r->refusal == TS_REMAKE_STAGES;

	switch (r->refusal) {
	case TS_REMAKE_SOFTENED:
		ts_text_put(text, "GH is nearly nil and sodium has taken its place: GH ");
		ts_text_number_short(text, r->base_gh_dh, 1);
		ts_text_put(text, ", KH ");
		ts_text_number_short(text, r->base_kh_dh, 1);
		ts_text_put(text, ".");
		return;
	case TS_REMAKE_NO_GH:
	case TS_REMAKE_NO_KH:
		ts_text_put(text, "It is not known, and no gram can be reckoned without it.");
		return;
	case TS_REMAKE_NO_SHARED:
		ts_text_puts(text, ts_parameter_rows[r->parameter].label, ": one needs ", NULL);
		ts_text_number_short(text, r->parameter == TS_GH ? r->gh_dh.low : r->kh_dh.low, 1);
		ts_text_put(text, " or more, another bears ");
		ts_text_number_short(
			text, r->parameter == TS_GH ? r->gh_dh.high : r->kh_dh.high, 1);
		ts_text_put(text, " or less.");
		return;
	default:
		break;
	}
	if (!r->gh_unknown)
		say_one(text, "GH", r->base_gh_dh, &r->gh_dh, r->recipe.gh_dh, known);
	ts_text_put(text, r->gh_unknown || r->kh_unknown ? "" : "; ");
	if (!r->kh_unknown)
		say_one(text, "KH", r->base_kh_dh, &r->kh_dh, r->recipe.kh_dh, known);
	ts_text_put(text, r->gh_unknown    ? ". GH is not known, and this does not change it."
			  : !r->kh_unknown ? "."
			  : r->recipe.mineral_free > 0
				  ? ". KH is not known, and falls with it: test it too."
				  : ". KH is not known, and this does not change it.");
}

static void say_reach(struct ts_text *text, const char *name, const struct ts_lime_reach *reach)
{
	ts_text_put(text, name);
	ts_text_number(text, reach->kh_air_dh, 1);
	ts_text_put(text, " in well aired water, ");
	ts_text_number(text, reach->kh_tank_dh, 1);
	ts_text_put(text, " in a usual tank");
}

void ts_say_lime(struct ts_text *text, const struct ts_remake *r)
{
	if (!r->lime_helps)
		return;
	say_reach(text, "By itself, in weeks, limestone takes this water to KH ", &r->limestone);
	say_reach(text, " and stops; aragonite to ", &r->aragonite);
	ts_text_put(text, r->aragonite.kh_tank_dh >= r->kh_dh.low - 1e-9
				  ? ": aragonite in the filter may do for KH."
				  : ": neither reaches what is wished.");
}

void ts_say_peat(struct ts_text *text, const struct ts_remake *r)
{
	if (!r->peat)
		return;
	if (r->recipe.kh_dh > 4) {
		ts_text_put(text,
			"The pH stays above what they are comfortable in. Peat and leaves "
			"do next to nothing at this KH; do not chase it.");
		return;
	}
	ts_text_put(text,
		"The pH stays above what they are comfortable in: peat or leaves may take "
		"0.2 to 1 off it at this KH, and nobody can reckon how much (estimate from "
		"memory). Add a little, test pH and KH twice a week.");
}

void ts_say_ends(struct ts_text *text, const struct ts_remake *r)
{
	if (!r->has_ends)
		return;
	ts_text_put(text, "Your supply moves: the same recipe gives GH ");
	ts_text_number_short(text, r->other_end[0].gh_dh, 1);
	ts_text_put(text, ", KH ");
	ts_text_number_short(text, r->other_end[0].kh_dh, 1);
	ts_text_put(text, " at its soft end and GH ");
	ts_text_number_short(text, r->other_end[1].gh_dh, 1);
	ts_text_put(text, ", KH ");
	ts_text_number_short(text, r->other_end[1].kh_dh, 1);
	ts_text_put(text, " at its hard end. Test the supply before each batch and ask again.");
}
