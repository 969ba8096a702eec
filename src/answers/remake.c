/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The order of the answer: make safe what is in danger; whether wish and residents live together;
 * whether the tank is there already; what to test first; then the recipe and its way. Nothing needs
 * an animal to go that a recipe mends, and no tank with stock is called empty.
 */
#include "answers/remake_work.h"

#include "base/date.h"
#include "chem/ions.h"
#include "words/advice.h"
#include "words/rulings.h"
#include "words/sentence.h"
#include "words/unusual.h"

/* Of the water, where nothing is said. */
#define CHANGE_PERCENT 25.0
/* Litres that a recipe is for where the tank's are not known. */
#define LITRES 100.0

const char *ts_remake_keep(struct ts_remake_work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

bool ts_remake_has_recipe(const struct ts_remake_work *w)
{
	if (w->danger.row || w->verdict == TS_VERDICT_SAFE_FIRST)
		return false;
	return w->remake.refusal == TS_REMAKE_FINE || w->remake.refusal == TS_REMAKE_STAGES;
}

static double age_days(const struct ts_remake_work *w, const char *date)
{
	long day;

	return date && ts_date_read(date, &day) && day <= w->asking->today
		       ? (double)(w->asking->today - day)
		       : 0;
}

/* The tank as it is now; one that was never read is taken as the water at hand. */
static void take_tank(struct ts_remake_work *w)
{
	const struct ts_water *own = w->question->water;

	ts_waters_now(w->question->plan, w->asking->today, w->asking->practice, &w->waters);
	ts_plan_state_make(w->question->plan, &w->waters, w->asking->today, &w->state);
	if (!w->waters.never_read) {
		const struct ts_now_from *tan = &w->waters.log.from[TS_NOW_TAN];

		w->wish.tank = &w->waters.now;
		w->wish.reading_age_days = tan->reading && !tan->dated ? 0 : tan->age_days;
		return;
	}
	w->wish.tank = &w->profile;
	w->wish.reading_age_days = own->reading_count
					   ? age_days(w, own->readings[own->reading_count - 1].date)
					   : (double)NAN;
}

static void take_amounts(struct ts_remake_work *w)
{
	const struct ts_remake_question *q = w->question;
	double from_plan = q->plan->tank.water_change.amount;

	w->volume_l = isnan(q->volume_l) ? ts_tank_net_l(&q->plan->tank, w->asking->practice)
					 : q->volume_l;
	w->volume_known = !isnan(w->volume_l);
	if (!w->volume_known)
		w->volume_l = LITRES;
	w->change_percent = !isnan(q->change_percent) ? q->change_percent
			    : from_plan > 0           ? from_plan
						      : CHANGE_PERCENT;
}

/* Chlorine read in a supply that may hold chloramine leaves ammonium once it is treated. */
static void take_chloramine(struct ts_remake_work *w)
{
	int d = w->question->water->disinfectant;

	if (d != TS_DISINFECTANT_NONE && d != TS_DISINFECTANT_CHLORINE)
		w->wish.chloramine_mg_l = w->profile.poisons.chlorine_mg_l;
}

static void put_question(struct ts_remake_work *w)
{
	const struct ts_remake_question *q = w->question;
	struct ts_keeping keeping = q->keeping;

	if (keeping.temperature.kind == TS_MEASURE_NONE)
		keeping.temperature = q->plan->tank.temp_c;
	ts_profile_make(q->water, &keeping, w->asking->practice, w->asking->today, &w->profile);
	w->wish = (struct ts_remake_wish){.water = &w->profile,
		.temp_c = (double)NAN,
		.wanted = q->wanted,
		.wanted_count = q->wanted_count,
		.keeping = keeping,
		.gh_dh = q->gh_dh,
		.kh_dh = q->kh_dh,
		.have = q->have,
		.residents = q->residents,
		.resident_count = q->resident_count};
	if (w->profile.at[TS_TEMPERATURE].given)
		w->wish.temp_c = w->profile.at[TS_TEMPERATURE].value;
	take_tank(w);
	take_amounts(w);
	take_chloramine(w);
}

/* A sign of distress or a danger in the plan goes before any re-making. */
static bool danger_first(struct ts_remake_work *w)
{
	struct ts_advice all[TS_ADVICE_MOST];

	if (!w->question->has_plan || !w->wish.resident_count)
		return false;
	ts_advise(&w->state.state, w->asking->practice, all);
	if (all[0].row->group != 2 && all[0].row->group != 3)
		return false;
	w->danger = all[0];
	return true;
}

/* A wished animal and one that lives there, which no water brings together. */
static bool find_apart(struct ts_remake_work *w)
{
	for (size_t i = 0; i < w->wish.wanted_count; i++) {
		for (size_t k = 0; k < w->wish.resident_count; k++) {
			struct ts_group a = {.species = w->wish.wanted[i],
				.either = (unsigned)ceil(w->wish.wanted[i]->group.least)};
			struct ts_group b = {.species = w->wish.residents[k].species,
				.either =
					(unsigned)ceil(w->wish.residents[k].species->group.least)};
			struct ts_rulings all = {.count = 0};

			if (a.species == b.species)
				continue;
			ts_rules_together(
				&a, &b, &w->question->plan->tank, w->asking->practice, &all);
			for (size_t n = 0; n < all.count; n++) {
				if (all.at[n].severity < TS_CONFLICT)
					continue;
				w->apart = all.at[n];
				return true;
			}
		}
	}
	return false;
}

/* Whether those who live there want none of it, where minerals were wished outright. */
static bool find_unneeded(const struct ts_remake_work *w)
{
	bool all = w->wish.resident_count > 0 && !w->wish.wanted_count;

	for (size_t i = 0; all && i < w->wish.resident_count; i++) {
		struct ts_keeping k = {.wild = w->wish.residents[i].wild};
		struct ts_match m;

		ts_match_species(
			w->wish.residents[i].species, w->wish.tank, &k, w->asking->practice, &m);
		all = m.at[TS_GH].known && m.at[TS_GH].uncomfortable_by == 0 && m.at[TS_KH].known &&
		      m.at[TS_KH].uncomfortable_by == 0;
	}
	return all && w->remake.recipe.count > 0;
}

static struct ts_recipe_line line_of(struct ts_remake_work *w, const char *key, const char *says,
	double per_100_l, const char *unit)
{
	double change_l = w->volume_l * w->change_percent / 100;

	return (struct ts_recipe_line){
		key, says, per_100_l * w->volume_l / 100, per_100_l * change_l / 100, unit};
}

static void fill_recipe(struct ts_remake_work *w)
{
	const struct ts_recipe *recipe = &w->remake.recipe;
	struct ts_recipe_line *lines =
		ts_arena_array(w->asking->arena, recipe->count + 2, sizeof *lines);
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

static void fill_water(struct ts_remake_work *w)
{
	const struct ts_recipe *recipe = &w->remake.recipe;
	const struct ts_solution *s = &recipe->water;
	struct ts_made_water *made = ts_arena_take(w->asking->arena, sizeof *made);

	if (!made)
		return;
	*made = (struct ts_made_water){recipe->gh_dh, recipe->kh_dh, recipe->ph_low, recipe->ph,
		recipe->ph_high, recipe->ec_us_cm, s->ca_mmol_l * TS_WEIGHT_CA,
		s->mg_mmol_l * TS_WEIGHT_MG, s->na_mmol_l * TS_WEIGHT_NA, s->k_mmol_l * TS_WEIGHT_K,
		s->cl_mmol_l * TS_WEIGHT_CL, s->so4_mmol_l * TS_MASS_SO4, (double)NAN};
	if (w->remake.gh_unknown || w->remake.kh_unknown)
		made->ca_mg_l = made->mg_mg_l = made->na_mg_l = made->k_mg_l = made->cl_mg_l =
			made->so4_mg_l = (double)NAN;
	made->ca_to_mg = made->mg_mg_l > 0 ? made->ca_mg_l / made->mg_mg_l : (double)NAN;
	w->r.result = made;
}

static struct ts_stage_line stage_line(const struct ts_remake_work *w, const struct ts_stage *g)
{
	struct ts_stage_line line = {.day = g->day,
		.change_l = w->volume_known ? g->change * w->volume_l : (double)NAN,
		.change_percent = 100 * g->change,
		.gh_dh = g->after.gh_dh,
		.kh_dh = g->after.kh_dh,
		.ph = g->after.ph,
		.conductivity_us_cm = g->after.ec_us_cm,
		.nh3_mg_l = g->after.nh3_mg_l,
		.stop = g->stop,
		.raises_ph = g->raises_ph,
		.test = g->stop        ? "stop: test all, 7 days"
			: g->raises_ph ? "ammonia nil first"
				       : "watch them"};

	/* What was not read stays not known. */
	if (w->remake.gh_unknown)
		line.gh_dh = line.conductivity_us_cm = (double)NAN;
	if (w->remake.kh_unknown)
		line.kh_dh = line.ph = line.nh3_mg_l = line.conductivity_us_cm = (double)NAN;
	return line;
}

static void fill_stages(struct ts_remake_work *w)
{
	const struct ts_stages *stages = &w->remake.stages;

	if (w->are_apart || !stages->count ||
		(w->verdict != TS_VERDICT_STAGES && w->verdict != TS_VERDICT_TEST_FIRST))
		return;
	w->r.stages_say = "Each stage is the greatest change that is safe for the most delicate of "
			  "them; the figures are those after it.";
	w->r.stages = ts_arena_array(w->asking->arena, stages->count, sizeof *w->r.stages);
	for (size_t i = 0; w->r.stages && i < stages->count; i++)
		w->r.stages[w->r.stage_count++] = stage_line(w, &stages->stages[i]);
}

static void fill_stages_none(struct ts_remake_work *w)
{
	if (w->verdict == TS_VERDICT_NEW_WATER)
		w->r.stages_none = "No stages: the tank is there already, and only what is poured "
				   "in is made so.";
	else if (w->verdict == TS_VERDICT_REMAKE && w->question->plan->stock_count > 0)
		w->r.stages_none =
			"No stages: none of the plan's animals has a `since`, so nobody is taken "
			"to live there yet; do it before any animal is bought. Those that live "
			"there are named too (--with), and the tank's own readings go into the "
			"plan.";
	else if (w->verdict == TS_VERDICT_REMAKE)
		w->r.stages_none = "No stages: the tank is taken to be empty; do it before any "
				   "animal is bought. Animals in it are named too (--with).";
}

static void fill_verdict(struct ts_remake_work *w)
{
	w->r.verdict = ts_remake_verdict_words[w->verdict];
	if (w->danger.row) {
		ts_say_advice_whole(&w->text, &w->danger, NULL);
		w->r.says = ts_remake_keep(w);
		ts_say_advice_because(&w->text, &w->danger, NULL);
		w->r.because = ts_remake_keep(w);
		return;
	}
	ts_remake_say_what(w);
	w->r.says = ts_remake_keep(w);
	ts_remake_say_because_of(w);
	w->r.because = ts_remake_keep(w);
}

static enum ts_status compute(struct ts_remake_work *w)
{
	enum ts_status status;

	put_question(w);
	status = ts_remake_plan(&w->wish, w->asking->practice, &w->remake);
	if (status == TS_BAD_INPUT)
		return status;
	w->verdict = ts_remake_verdict_of(&w->remake, status, w->wish.resident_count > 0);
	if (danger_first(w)) {
		w->verdict = TS_VERDICT_SAFE_FIRST;
		status = TS_NO;
	} else if (find_apart(w)) {
		w->are_apart = true;
		w->verdict = TS_VERDICT_RESIDENTS;
		status = TS_NO;
	}
	w->unneeded = !w->danger.row && find_unneeded(w);
	return status;
}

enum ts_status ts_answer_remake(const struct ts_asking *asking,
	const struct ts_remake_question *question, struct ts_remake_result *ret)
{
	struct ts_remake_work *w = ts_arena_take(asking->arena, sizeof *w);
	enum ts_status status;

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct ts_remake_work){.asking = asking, .question = question};
	status = compute(w);
	if (status == TS_BAD_INPUT)
		return status;
	ts_text_open(&w->text, &asking->arena->allocator);
	w->r.status = status;
	w->r.asks_alone = w->danger.row;
	w->r.volume_l = w->volume_l;
	w->r.volume_known = w->volume_known;
	w->r.change_percent = w->change_percent;
	w->r.treatment = ts_treatment(question->water->disinfectant);
	w->r.bare = w->profile.unusual & TS_UNUSUAL_BARE ? ts_bare_says : NULL;
	w->r.as_it_is = w->profile.at[TS_GH].given &&
			(w->wish.wanted_count || !w->wish.resident_count) &&
			w->verdict != TS_VERDICT_NEW_WATER;
	ts_remake_as_it_is(w);
	if (ts_remake_has_recipe(w)) {
		fill_recipe(w);
		fill_water(w);
	}
	fill_verdict(w);
	fill_stages(w);
	fill_stages_none(w);
	ts_remake_notes(w);
	w->r.remake = w->remake;
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w->r;
	return TS_OK;
}
