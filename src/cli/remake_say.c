/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The answer of remake: a result for programs, and the same as a document. What needs no work
 * stands before what does.
 */
#include "chem/ions.h"
#include "cli/remake.h"

#include <math.h>

#include "answers/cautions.h"
#include "show/stages.h"
#include "words/advice.h"
#include "words/animal.h"
#include "words/sentence.h"
#include "words/unusual.h"

#define LARGE_L 200.0
/* Potassium is listed from here on. */
#define K_SHOWN_MG_L 0.5
/* Litres of waste for each litre of water from reverse osmosis (common practice, no source). */
#define WASTE_TIMES 3.0
/* Weight of a tank with its stand for each litre, kg (common practice, no source). */
#define KG_PER_L 1.3

struct work {
	struct session *s;
	struct remake_call *c;
	struct ts_text text;
	struct ts_remake_result r;
};

static const char *take(struct work *w)
{
	return care_take(w->s, &w->text);
}

/* Below this KH the buffer calls for care. */
static double kh_act(const struct work *w)
{
	struct ts_practice own;

	ts_practice_defaults(&own);
	return w->s->practice ? w->s->practice->value[TS_P_KH_ACT] : own.value[TS_P_KH_ACT];
}

/* No recipe is shown before the tank is tested or safe: it would be used. */
static bool has_recipe(const struct remake_call *c)
{
	if (c->danger.row || c->verdict == TS_VERDICT_TEST_FIRST ||
		c->verdict == TS_VERDICT_SAFE_FIRST)
		return false;
	return c->remake.refusal == TS_REMAKE_FINE || c->remake.refusal == TS_REMAKE_STAGES;
}

static struct ts_recipe_line line_of(
	struct work *w, const char *key, const char *says, double per_100_l, const char *unit)
{
	double change_l = w->c->volume_l * w->c->change_percent / 100;

	return (struct ts_recipe_line){
		key, says, per_100_l * w->c->volume_l / 100, per_100_l * change_l / 100, unit};
}

static void fill_recipe(struct work *w)
{
	const struct ts_recipe *recipe = &w->c->remake.recipe;
	struct ts_recipe_line *lines =
		ts_arena_array(w->s->arena, recipe->count + 2, sizeof *lines);
	size_t n = 0;

	if (!lines || !recipe->count)
		return;
	lines[n++] = line_of(
		w, "supply", "your own water, treated", 100 * (1 - recipe->mineral_free), "L");
	for (size_t i = 0; i < recipe->count; i++) {
		const struct ts_ingredient *row = &ts_ingredients[recipe->parts[i].ingredient];

		lines[n++] = row->formula ? line_of(w, row->key, row->says,
						    recipe->parts[i].grams_per_100_l, "g")
					  : line_of(w, row->key, row->says,
						    100 * recipe->mineral_free, "L");
	}
	w->r.recipe = lines;
	w->r.recipe_count = n;
}

static void fill_water(struct work *w)
{
	const struct ts_recipe *recipe = &w->c->remake.recipe;
	const struct ts_solution *s = &recipe->water;
	struct ts_made_water *made = ts_arena_take(w->s->arena, sizeof *made);

	if (!made)
		return;
	*made = (struct ts_made_water){recipe->gh_dh, recipe->kh_dh, recipe->ph_low, recipe->ph,
		recipe->ph_high, recipe->ec_us_cm, s->ca_mmol_l * TS_WEIGHT_CA,
		s->mg_mmol_l * TS_WEIGHT_MG, s->na_mmol_l * TS_WEIGHT_NA, s->k_mmol_l * TS_WEIGHT_K,
		s->cl_mmol_l * TS_WEIGHT_CL, s->so4_mmol_l * TS_MASS_SO4};
	if (w->c->remake.gh_unknown || w->c->remake.kh_unknown)
		made->ca_mg_l = made->mg_mg_l = made->na_mg_l = made->k_mg_l = made->cl_mg_l =
			made->so4_mg_l = (double)NAN;
	w->r.result = made;
}

static void fill_stages(struct work *w)
{
	const struct ts_stages *stages = &w->c->remake.stages;

	if (w->c->remake.refusal != TS_REMAKE_FINE || !stages->count)
		return;
	w->r.stages = ts_arena_array(w->s->arena, stages->count, sizeof *w->r.stages);
	for (size_t i = 0; w->r.stages && i < stages->count; i++) {
		const struct ts_stage *g = &stages->stages[i];

		w->r.stages[i] = (struct ts_stage_line){g->day,
			w->c->volume_known ? g->change * w->c->volume_l : (double)NAN,
			100 * g->change, g->after.gh_dh, g->after.kh_dh, g->after.ph,
			g->after.ec_us_cm, g->after.nh3_mg_l, g->stop,
			g->stop        ? "stop: test all, 7 days"
			: g->raises_ph ? "ammonia nil first"
				       : "watch them"};
		w->r.stage_count++;
	}
}

static void say_what(struct work *w)
{
	switch (w->c->verdict) {
	case TS_VERDICT_LEAVE:
		ts_text_put(&w->text, "Leave the water as it is: it is what you wish.");
		return;
	case TS_VERDICT_STAGES:
		ts_text_put(&w->text, "Re-make the water in ");
		ts_text_number_short(&w->text, (double)w->c->remake.stages.count, 0);
		ts_text_put(&w->text, w->c->remake.stages.count == 1 ? " stage" : " stages");
		if (w->c->remake.stages.count > 1) {
			ts_text_put(&w->text, " over ");
			ts_text_number_short(&w->text, w->c->remake.stages.last_day, 0);
			ts_text_put(&w->text, " days");
		}
		ts_text_put(&w->text, ", each change with the same recipe.");
		return;
	case TS_VERDICT_REMAKE:
		ts_text_put(&w->text, "Re-make it at once: ");
		for (size_t i = 1; i < w->r.recipe_count; i++) {
			ts_text_put(&w->text, i > 1 ? ", " : "");
			ts_say_amount(&w->text, w->r.recipe[i].amount, w->r.recipe[i].unit);
			ts_text_puts(&w->text, " of ", w->r.recipe[i].says, NULL);
		}
		ts_text_put(&w->text, " for ");
		ts_say_amount(&w->text, w->c->volume_l, "L");
		ts_text_put(&w->text, ".");
		return;
	default:
		ts_say_refusal(&w->text, &w->c->remake);
		return;
	}
}

/* The resident that the new water does not suit, in the house sentence. */
static void say_resident(struct work *w)
{
	const struct ts_stages *stages = &w->c->remake.stages;
	const struct ts_resident *one = &w->c->wish.residents[stages->resident];
	struct ts_keeping k = {.wild = one->wild};
	struct ts_profile after;
	struct ts_match m;

	ts_remade_profile(&w->c->remake.recipe.water, w->s->practice, &after);
	ts_match_species(one->species, &after, &k, w->s->practice, &m);
	ts_text_put(&w->text, one->species->common.en.count ? one->species->common.en.items[0]
							    : one->species->species);
	ts_text_put(&w->text, " in the new water: ");
	ts_say_parameter(&w->text, (enum ts_parameter)stages->parameter, &m.at[stages->parameter]);
	ts_text_put(&w->text, ".");
}

static void fill_verdict(struct work *w)
{
	const struct ts_remake *r = &w->c->remake;

	w->r.verdict = ts_remake_verdict_words[w->c->verdict];
	if (w->c->danger.row) {
		ts_say_advice_whole(&w->text, &w->c->danger, NULL);
		w->r.says = take(w);
		ts_say_advice_because(&w->text, &w->c->danger, NULL);
		w->r.because = take(w);
		return;
	}
	say_what(w);
	w->r.says = take(w);
	if (w->c->verdict == TS_VERDICT_RESIDENTS)
		say_resident(w);
	else if (w->c->verdict == TS_VERDICT_TEST_FIRST && r->refusal == TS_REMAKE_STAGES)
		ts_text_put(&w->text, "They are not known, or older than 3 days; over ammonia, a "
				      "rising pH kills.");
	else if (w->c->verdict == TS_VERDICT_SAFE_FIRST) {
		ts_text_put(&w->text, "Ammonia ");
		ts_text_number_short(&w->text, w->c->wish.tank->poisons.tan_mg_l, 2);
		ts_text_put(&w->text, " mg/L N, nitrite ");
		ts_text_number_short(&w->text, w->c->wish.tank->poisons.no2_mg_l, 2);
		ts_text_put(&w->text, " mg/L; both must read nil.");
	} else
		ts_say_remake_because(&w->text, r);
	w->r.because = take(w);
}

static void note_ph_of_wished(struct work *w)
{
	struct ts_profile after;

	ts_remade_profile(&w->c->remake.recipe.water, w->s->practice, &after);
	for (size_t i = 0; i < w->c->wish.wanted_count; i++) {
		struct ts_match m;

		ts_match_species(
			w->c->wish.wanted[i], &after, &w->c->wish.keeping, w->s->practice, &m);
		if (!m.at[TS_PH].known || fabs(m.at[TS_PH].uncomfortable_by) < 0.1)
			continue;
		ts_say_name(&w->text, m.species);
		ts_text_put(&w->text, " in a tank of it: ");
		ts_say_parameter(&w->text, TS_PH, &m.at[TS_PH]);
		ts_text_put(&w->text, ".");
		care_note(w->s, &w->r.notes, take(w));
	}
}

static void fill_notes(struct work *w)
{
	const struct ts_remake *r = &w->c->remake;

	if (!has_recipe(w->c))
		return;
	if (!r->comfortable)
		care_note(w->s, &w->r.notes,
			"What they prefer cannot be had from this water; this is what they "
			"tolerate.");
	ts_say_lime(&w->text, r);
	care_note(w->s, &w->r.notes, take(w));
	note_ph_of_wished(w);
	ts_say_peat(&w->text, r);
	care_note(w->s, &w->r.notes, take(w));
	ts_say_ends(&w->text, r);
	care_note(w->s, &w->r.notes, take(w));
	if (r->recipe.count && r->recipe.kh_dh <= kh_act(w) + 0.05)
		care_note(w->s, &w->r.notes,
			"KH is at the floor: keep the load light, and test KH, pH and ammonia "
			"twice a week.");
}

static void fill_routine(struct work *w)
{
	if (!has_recipe(w->c))
		return;
	if (!w->c->remake.recipe.count) {
		w->r.routine = "Change water as before; top up what evaporates with water without "
			       "minerals, since changes take minerals out and topping up does not.";
		return;
	}
	ts_text_put(&w->text, "At every later change of ");
	ts_say_amount(&w->text, w->c->volume_l * w->c->change_percent / 100, "L");
	ts_text_put(&w->text,
		" the same recipe again, into the new water and not into the tank. Top "
		"up what evaporates with water without minerals alone: it leaves the "
		"minerals behind. Test GH and KH of each batch.");
	w->r.routine = take(w);
}

static bool fits_now(struct work *w, const struct ts_resident *one)
{
	struct ts_keeping k = w->c->wish.keeping;
	struct ts_match m;

	k.wild = one->wild;
	k.breeding = false;
	ts_match_species(one->species, &w->c->answer.profile, &k, w->s->practice, &m);
	return m.verdict <= TS_TOLERATES;
}

static void fill_groups(struct work *w)
{
	struct ts_group_line *g;
	size_t fit = 0;

	if (w->c->verdict != TS_VERDICT_RESIDENTS)
		return;
	g = ts_arena_array(w->s->arena, 2, sizeof *g);
	if (!g)
		return;
	g[0].name = "A";
	for (size_t i = 0; i < w->c->wish.resident_count; i++) {
		fit += fits_now(w, &w->c->wish.residents[i]);
		care_note(w->s, &g[0].species, w->c->wish.residents[i].species->species);
	}
	g[0].says = fit == w->c->wish.resident_count
			    ? "They keep this tank and this water as it is: no work."
			    : "They keep this tank until another keeper is found; not all of them "
			      "suit this water as it is.";
	g[1].name = "B";
	for (size_t i = 0; i < w->c->wish.wanted_count; i++)
		care_note(w->s, &g[1].species, w->c->wish.wanted[i]->species);
	g[1].says =
		"A second tank, filled at once by the recipe below before any animal is bought; "
		"or this tank, once the others are rehomed.";
	w->r.groups = g;
	w->r.group_count = 2;
}

static void fill_cautions(struct work *w)
{
	const struct ts_recipe *recipe = &w->c->remake.recipe;
	struct ts_asking asking = care_asking(w->s);
	unsigned when = 0, poisons = w->c->answer.profile.poisons.found;

	for (size_t i = 0; has_recipe(w->c) && i < recipe->count; i++) {
		when |= recipe->parts[i].ingredient == TS_CALCIUM_CHLORIDE
				? TS_CAUTION_CALCIUM_CHLORIDE
				: 0u;
		when |= ts_ingredients[recipe->parts[i].ingredient].formula ? TS_CAUTION_SALTS
									    : TS_CAUTION_PLUMBING;
	}
	when |= w->r.stage_count ? TS_CAUTION_CHANGES : 0u;
	when |= w->c->verdict == TS_VERDICT_RESIDENTS ? TS_CAUTION_REHOMING : 0u;
	when |= w->c->verdict == TS_VERDICT_UNSOFTENED ? TS_CAUTION_PLUMBING : 0u;
	when |= w->c->volume_known && w->c->volume_l >= LARGE_L ? TS_CAUTION_LARGE : 0u;
	when |= poisons & (TS_POISON_NITRATE | TS_POISON_COPPER) ? TS_CAUTION_DRINKING : 0u;
	ts_answer_cautions(&asking, when, &w->r.cautions);
}

/* What this tank weighs, and what its pure water costs in waste. */
static void note_amounts(struct work *w)
{
	const struct ts_recipe *recipe = &w->c->remake.recipe;
	double pure_l = recipe->mineral_free * w->c->volume_l * w->c->change_percent / 100;

	if (w->c->volume_known && w->c->volume_l >= LARGE_L) {
		ts_text_put(&w->text, "This tank of ");
		ts_say_amount(&w->text, w->c->volume_l, "L weighs about ");
		ts_text_number_short(&w->text, 10 * round(KG_PER_L * w->c->volume_l / 10), 0);
		ts_text_put(&w->text, " kg with its stand.");
		care_note(w->s, &w->r.notes, take(w));
	}
	if (!(pure_l >= 1) || !has_recipe(w->c))
		return;
	ts_say_amount(&w->text, pure_l,
		"L of water without minerals go into each change; by "
		"reverse osmosis they leave about ");
	ts_say_amount(&w->text, WASTE_TIMES * pure_l, "L of waste water, good for flowers.");
	care_note(w->s, &w->r.notes, take(w));
}

/* Whether those who live there, or are wished, want any of it. */
static void note_needed(struct work *w)
{
	bool all = w->c->wish.resident_count > 0 && w->s->options->to;

	for (size_t i = 0; all && i < w->c->wish.resident_count; i++) {
		struct ts_keeping k = {.wild = w->c->wish.residents[i].wild};
		struct ts_match m;

		ts_match_species(
			w->c->wish.residents[i].species, w->c->wish.tank, &k, w->s->practice, &m);
		all = m.at[TS_GH].known && m.at[TS_GH].uncomfortable_by == 0 && m.at[TS_KH].known &&
		      m.at[TS_KH].uncomfortable_by == 0;
	}
	if (all && w->c->remake.recipe.count)
		care_note(w->s, &w->r.notes,
			"Does anybody need it? Those who live there like GH and KH as they are.");
}

static void list(struct work *w, const struct ts_texts *texts, const char *end)
{
	for (size_t i = 0; i < texts->count; i++)
		ts_text_puts(&w->text, i ? ", " : "", texts->items[i], NULL);
	ts_text_put(&w->text, end);
}

static void put_recipe(struct work *w, struct ts_document *doc)
{
	struct ts_node *table;
	const char *first, *change;

	ts_doc_heading(doc, 0, "THE RECIPE");
	ts_doc_paragraph(doc, ts_treatment(w->c->answer.water.disinfectant));
	ts_text_put(&w->text, w->c->volume_known ? "first fill, " : "for ");
	ts_say_amount(&w->text, w->c->volume_l, "L");
	first = take(w);
	ts_text_put(&w->text, "each change, ");
	ts_say_amount(&w->text, w->c->volume_l * w->c->change_percent / 100, "L");
	change = take(w);
	table = ts_doc_table(doc);
	ts_doc_line(doc, table, "what", first, change, "which is", NULL);
	for (size_t i = 0; i < w->r.recipe_count; i++) {
		const struct ts_recipe_line *l = &w->r.recipe[i];
		const char *amount;

		ts_say_amount(&w->text, l->amount, l->unit);
		amount = take(w);
		ts_say_amount(&w->text, l->amount_change, l->unit);
		ts_doc_line(doc, table, l->ingredient, amount, take(w), l->says, NULL);
	}
}

static const char *figure(struct work *w, double value, int decimals, const char *unit)
{
	ts_text_number_short(&w->text, value, decimals);
	ts_text_put(&w->text, unit);
	return take(w);
}

static void put_water(struct work *w, struct ts_document *doc)
{
	const struct ts_made_water *m = w->r.result;
	struct ts_node *facts;

	ts_doc_heading(doc, 0, "THE WATER IT MAKES");
	facts = ts_doc_facts(doc, 1);
	if (!isnan(m->gh_dh))
		ts_doc_line(doc, facts, "GH", figure(w, m->gh_dh, 1, " dH"), NULL);
	if (!isnan(m->kh_dh))
		ts_doc_line(doc, facts, "KH", figure(w, m->kh_dh, 1, " dH"), NULL);
	if (isnan(m->kh_dh)) {
		ts_doc_line(doc, facts, "pH", "not known: test KH", NULL);
	} else if (isnan(m->ph)) {
		ts_doc_line(doc, facts, "pH", "does not follow from so little KH: test", NULL);
	} else {
		ts_text_put(&w->text, "about ");
		ts_text_number(&w->text, m->ph, 1);
		ts_text_put(&w->text, " (");
		ts_text_number(&w->text, m->ph_low, 1);
		ts_text_put(&w->text, "..");
		ts_text_number(&w->text, m->ph_high, 1);
		ts_text_put(&w->text, "), follows from KH and CO2");
		ts_doc_line(doc, facts, "pH", take(w), NULL);
	}
	if (isnan(m->na_mg_l))
		return;
	ts_doc_line(doc, facts, "conductivity",
		figure(w, m->conductivity_us_cm, 0, " uS/cm, computed"), NULL);
	if (m->mg_mg_l > 0)
		ts_doc_line(doc, facts, "Ca to Mg", figure(w, m->ca_mg_l / m->mg_mg_l, 1, " : 1"),
			NULL);
	ts_doc_line(doc, facts, "sodium", figure(w, m->na_mg_l, 0, " mg/L"), NULL);
	if (m->k_mg_l >= K_SHOWN_MG_L)
		ts_doc_line(doc, facts, "potassium", figure(w, m->k_mg_l, 0, " mg/L"), NULL);
	ts_doc_line(doc, facts, "chloride", figure(w, m->cl_mg_l, 0, " mg/L"), NULL);
}

static void put_without_work(struct work *w, struct ts_document *doc)
{
	ts_doc_heading(doc, 0, "WITHOUT ANY WORK");
	if (w->c->answer.profile.unusual & TS_UNUSUAL_BARE)
		ts_doc_caution(doc, ts_bare_says);
	if (w->r.wished_as_it_is.count) {
		ts_text_put(&w->text,
			"As far as the water goes, these of your wishes can live in it "
			"as it is: ");
		list(w, &w->r.wished_as_it_is,
			". tapshoal why says where it falls short of their best, and what room "
			"they need.");
		ts_doc_paragraph(doc, take(w));
	}
	if (w->r.suits_as_it_is.count) {
		ts_text_put(&w->text, "Your water as it is suits or is tolerated by: ");
		list(w, &w->r.suits_as_it_is, ". tapshoal rank lists them all.");
	} else {
		ts_text_put(&w->text, "No other animal fit for such a tank is known to suit the "
				      "water as it is; tapshoal rank lists them all.");
	}
	ts_doc_paragraph(doc, take(w));
}

static void put_groups(struct work *w, struct ts_document *doc)
{
	ts_doc_heading(doc, 0, "TWO GROUPS");
	for (size_t i = 0; i < w->r.group_count; i++) {
		const struct ts_group_line *g = &w->r.groups[i];

		ts_text_puts(&w->text, g->name, ": ", NULL);
		list(w, &g->species, ". ");
		ts_text_put(&w->text, g->says);
		ts_doc_paragraph(doc, take(w));
	}
}

static void put_document(struct work *w)
{
	struct ts_document doc;

	ts_doc_open(&doc, w->s->arena, "Another water");
	doc.drawn = w->s->options->format == FORMAT_HTML;
	ts_doc_verdict(&doc, w->r.says, w->r.because);
	if (w->c->danger.row) {
		session_write(w->s, &doc);
		return;
	}
	if (w->c->answer.profile.at[TS_GH].given)
		put_without_work(w, &doc);
	if (w->r.group_count)
		put_groups(w, &doc);
	if (w->r.recipe_count)
		put_recipe(w, &doc);
	if (w->r.recipe_count)
		put_water(w, &doc);
	for (size_t i = 0; i < w->r.notes.count; i++)
		ts_doc_paragraph(&doc, w->r.notes.items[i]);
	if (w->r.stage_count) {
		ts_doc_heading(&doc, 0, "STAGES FOR THE ANIMALS THERE NOW");
		ts_doc_paragraph(&doc,
			"Each stage is the greatest change that is safe for the most "
			"delicate of them; the figures are those after it.");
		ts_show_stages(&doc, w->r.stages, w->r.stage_count, true);
	} else if (w->c->verdict == TS_VERDICT_REMAKE) {
		ts_doc_paragraph(&doc, "No stages: the tank is taken to be empty; do it before any "
				       "animal is bought. Animals in it go behind --with.");
	}
	if (w->r.routine) {
		ts_doc_heading(&doc, 0, "AFTERWARDS");
		ts_doc_paragraph(&doc, w->r.routine);
	}
	for (size_t i = 0; i < w->r.cautions.count; i++)
		ts_doc_caution(&doc, w->r.cautions.items[i]);
	session_write(w->s, &doc);
}

void remake_say(struct session *s, struct remake_call *c)
{
	struct work w = {.s = s, .c = c};

	ts_text_open(&w.text, &s->arena->allocator);
	w.r.volume_l = c->volume_l;
	w.r.change_percent = c->change_percent;
	remake_as_it_is(s, c, &w.r.wished_as_it_is, &w.r.suits_as_it_is);
	if (has_recipe(c)) {
		fill_recipe(&w);
		fill_water(&w);
	}
	fill_verdict(&w);
	if (!c->danger.row)
		fill_stages(&w);
	note_needed(&w);
	fill_notes(&w);
	note_amounts(&w);
	fill_routine(&w);
	fill_groups(&w);
	fill_cautions(&w);
	if (s->options->format == FORMAT_JSON)
		session_json(s, "remake", &ts_result_remake, &w.r);
	else if (!s->arena->failed)
		put_document(&w);
	ts_text_drop(&w.text);
}
