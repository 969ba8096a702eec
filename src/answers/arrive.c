/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Whether the tank's water suits them is the first line: nobody is led by stages into a water that
 * does not. Then the way, which is the care room's (care/arrive.h).
 */
#include "answers/arrive.h"

#include "answers/cautions.h"
#include "care/arrive.h"
#include "water/analysis.h"
#include "water/mend.h"
#include "words/arrive.h"
#include "words/mend.h"
#include "words/remake.h"
#include "words/rulings.h"
#include "words/sentence.h"

/* More pure water than this in 100 L is another water, and no mending. */
#define PURE_MOST_L 75.0

struct work {
	const struct ts_asking *asking;
	const struct ts_arrive_question *question;
	struct ts_profile tank, shop;
	struct ts_solution shop_solution, tank_solution;
	struct ts_arrive_wish wish;
	struct ts_arrival a;
	struct ts_match worst; /* of the animals; species NULL: none was named */
	struct ts_text text;
	struct ts_arrive_result r;
};

static const char *keep(struct work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void note(struct work *w, const char *says)
{
	ts_asking_note(w->asking, &w->r.notes, says);
}

static double value_of(const struct ts_profile *p, enum ts_parameter parameter)
{
	return p->at[parameter].given ? p->at[parameter].value : (double)NAN;
}

static double last_ec(const struct ts_water *water)
{
	for (size_t i = water->reading_count; i > 0; i--) {
		if (water->readings[i - 1].conductivity_us_cm.kind != TS_MEASURE_NONE)
			return water->readings[i - 1].conductivity_us_cm.value;
	}
	return (double)NAN;
}

static bool take_animals(struct work *w)
{
	const struct ts_arrive_question *q = w->question;
	struct ts_resident *animals =
		ts_arena_array(w->asking->arena, q->animal_count + 1, sizeof *animals);

	if (!animals)
		return false;
	for (size_t i = 0; i < q->animal_count; i++) {
		struct ts_match m;

		animals[i] = (struct ts_resident){q->animals[i], q->keeping.wild, false};
		ts_match_species(q->animals[i], &w->tank, &q->keeping, w->asking->practice, &m);
		if (!w->worst.species || m.verdict > w->worst.verdict)
			w->worst = m;
	}
	w->wish.animals = animals;
	w->wish.animal_count = q->animal_count;
	return true;
}

static bool take_waters(struct work *w)
{
	const struct ts_arrive_question *q = w->question;
	struct ts_keeping none = {0};
	unsigned assumed;

	ts_profile_make(q->tank, &q->keeping, w->asking->practice, w->asking->today, &w->tank);
	ts_profile_make(q->shop, &none, w->asking->practice, w->asking->today, &w->shop);
	w->wish.temp_c = value_of(&w->tank, TS_TEMPERATURE);
	if (isnan(w->wish.temp_c))
		w->wish.temp_c = TS_TANK_TEMPERATURE_C;
	if (w->shop.at[TS_GH].given && ts_solution_from_profile(&w->shop, w->wish.temp_c,
					       &w->shop_solution, &assumed) == TS_OK)
		w->wish.shop = &w->shop_solution;
	if (w->tank.at[TS_GH].given && ts_solution_from_profile(&w->tank, w->wish.temp_c,
					       &w->tank_solution, &assumed) == TS_OK)
		w->wish.tank = &w->tank_solution;
	w->wish.shop_gh_dh = value_of(&w->shop, TS_GH);
	w->wish.tank_gh_dh = value_of(&w->tank, TS_GH);
	w->wish.shop_ec_us_cm = last_ec(q->shop);
	w->wish.tank_ec_us_cm = last_ec(q->tank);
	w->wish.hours = q->hours;
	w->wish.bag_tan_mg_l = w->shop.poisons.tan_mg_l;
	w->wish.bag_ph = w->shop.poisons.tan_mg_l > 0 ? w->shop.ph_read : (double)NAN;
	return take_animals(w);
}

/* Minerals that miss what the animal likes. */
static bool missed_by_minerals(const struct ts_match *m)
{
	return (m->at[TS_GH].known && m->at[TS_GH].uncomfortable_by != 0) ||
	       (m->at[TS_KH].known && m->at[TS_KH].uncomfortable_by != 0);
}

static double into(double now, const struct ts_parameter_fit *fit)
{
	const struct ts_range *likes =
		isnan(fit->preferred.low) ? &fit->tolerated : &fit->preferred;

	return isnan(likes->low) ? (double)NAN : fmin(fmax(now, likes->low), likes->high);
}

static bool likes_gh(const struct ts_match *m, double gh)
{
	const struct ts_range *likes = isnan(m->at[TS_GH].preferred.low) ? &m->at[TS_GH].tolerated
									 : &m->at[TS_GH].preferred;

	return gh >= likes->low && gh <= likes->high;
}

/* Thinned for KH alone where that does for GH too; of pure water where it would be most of it. */
static bool find_mend(const struct work *w, struct ts_mend *ret, bool *ret_bare)
{
	const struct ts_match *m = &w->worst;
	double kh = value_of(&w->tank, TS_KH);
	struct ts_mend_wish wish = {
		w->wish.tank_gh_dh, kh, (double)NAN, into(kh, &m->at[TS_KH]), w->wish.temp_c};

	*ret_bare = false;
	if (ts_mend_find(&wish, ret) && likes_gh(m, ret->gh_dh) && ret->pure_l <= PURE_MOST_L)
		return true;
	wish.gh_wish_dh = into(w->wish.tank_gh_dh, &m->at[TS_GH]);
	if (!ts_mend_find(&wish, ret))
		return false;
	*ret_bare = ret->pure_l > PURE_MOST_L;
	if (!*ret_bare)
		return true;
	wish = (struct ts_mend_wish){
		0, 0, into(0, &m->at[TS_GH]), into(0, &m->at[TS_KH]), w->wish.temp_c};
	return ts_mend_find(&wish, ret);
}

/* How the tank's water is made such that it suits the animal. */
static void say_keeps(struct work *w)
{
	struct ts_mend mend;
	bool bare;

	if (!missed_by_minerals(&w->worst) || !find_mend(w, &mend, &bare))
		return;
	ts_text_put(
		&w->text, w->worst.verdict == TS_EXCLUDED
				  ? "To keep them the tank needs another water, before they come. "
				  : "Better make the tank's water theirs before they come. ");
	ts_text_put(&w->text, bare ? "Make it of water from reverse osmosis or clean rain. " : "");
	ts_say_mend(&w->text, &mend);
	ts_text_put(&w->text, " Then ask again with that GH and KH.");
	w->r.keeps = keep(w);
}

static bool alike(const struct ts_species *a, const struct ts_species *b)
{
	return a->kind == b->kind && a->swims == b->swims && b->sold == TS_SOLD_EVERYWHERE &&
	       ts_match_advised_unasked(b);
}

static double unlike(const struct ts_species *a, const struct ts_species *b)
{
	return fabs(log(b->adult_length_cm / a->adult_length_cm));
}

/* Another that every shop has, of its kind and size, and that likes the water as it is. */
static void say_instead(struct work *w)
{
	const struct ts_species *gone = w->worst.species, *best = NULL;
	enum ts_verdict liked = TS_TOLERATES;

	for (size_t i = 0; i < w->asking->species_count; i++) {
		const struct ts_species *s = w->asking->species[i];
		struct ts_match m;

		if (!alike(gone, s))
			continue;
		ts_match_species(s, &w->tank, &w->question->keeping, w->asking->practice, &m);
		if (m.verdict > TS_TOLERATES || m.verdict > liked ||
			(best && m.verdict == liked && unlike(gone, s) >= unlike(gone, best)))
			continue;
		best = s;
		liked = m.verdict;
	}
	if (!best)
		return;
	ts_text_put(&w->text, "In your water as it is, and of like size: ");
	ts_say_animals(&w->text, best);
	ts_text_put(&w->text, ".");
	w->r.instead = keep(w);
}

/* The figure by which the water misses the animal, in the house sentence. */
static void put_miss(struct work *w)
{
	const struct ts_match *m = &w->worst;

	if (m->limiting >= 0)
		ts_say_parameter(&w->text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else
		ts_text_put(&w->text, "too little is known of it");
}

static void say_refusal(struct work *w)
{
	ts_text_put(&w->text, "Do not take them home to this water, which does not suit ");
	ts_say_animals(&w->text, w->worst.species);
	ts_text_put(&w->text, ": ");
	put_miss(w);
	ts_text_put(&w->text, ".");
	w->r.says = keep(w);
	say_keeps(w);
	say_instead(w);
	w->r.meanwhile =
		"If they are here already: a quarantine tank filled to the shop's water, treated, "
		"until the tank's own water suits them; give them back where that is not wanted.";
}

/* What the water is to them, before the way. */
static void put_fit(struct work *w)
{
	bool by_ph = w->worst.verdict == TS_TOLERATES && w->worst.limiting == TS_PH;

	/* A pH by itself decides nothing. */
	if (w->worst.verdict == TS_SUITS || by_ph) {
		ts_text_put(&w->text,
			by_ph ? "They can live in this water. " : "This water suits them. ");
		return;
	}
	ts_text_put(
		&w->text, w->worst.verdict == TS_TOLERATES
				  ? "They can live in this water, not at their best ("
				  : "Do not buy them for this water, which they may not bear (");
	put_miss(w);
	ts_text_put(&w->text, w->worst.verdict == TS_TOLERATES
				      ? "). "
				      : "). If they are here already, this is the way. ");
}

static void say_way(struct work *w)
{
	if (w->worst.species)
		put_fit(w);
	ts_say_arrival(&w->text, &w->wish, &w->a);
	w->r.says = keep(w);
	ts_say_arrival_because(&w->text, &w->wish, &w->a);
	w->r.because = keep(w);
	if (w->worst.species && w->worst.verdict == TS_UNSURE)
		say_keeps(w);
}

static void fill_stages(struct work *w)
{
	w->r.stages_say = "Each change replaces quarantine water by your tank's own water; the "
			  "figures are those after it.";
	w->r.stages = ts_arena_array(w->asking->arena, w->a.count + 1, sizeof *w->r.stages);
	for (size_t i = 0; w->r.stages && i < w->a.count; i++) {
		const struct ts_arrive_stage *g = &w->a.stages[i];
		const char *then = "watch them";

		if (g->change >= 1) {
			then = "match the temperature";
		} else if (g->portions > 1) {
			ts_text_put(&w->text, "in ");
			ts_text_number_short(&w->text, g->portions, 0);
			ts_text_put(&w->text, " portions over 2 days");
			then = keep(w);
		}
		w->r.stages[i] = (struct ts_stage_line){g->day, (double)NAN, 100 * g->change,
			g->gh_dh, g->kh_dh, (double)NAN, g->ec_us_cm, (double)NAN, false, false,
			then};
		w->r.stage_count++;
	}
}

static void fill_steps(struct work *w)
{
	w->r.steps = ts_arena_array(w->asking->arena, ts_arrive_step_count + 1, sizeof *w->r.steps);
	if (!w->r.steps)
		return;
	w->r.steps[w->r.step_count++] =
		(struct ts_arrive_line){"first", ts_treatment(w->question->tank->disinfectant)};
	for (size_t i = 0; i < ts_arrive_step_count; i++) {
		if (ts_arrive_steps[i].ways >> w->a.way & 1)
			w->r.steps[w->r.step_count++] = (struct ts_arrive_line){
				ts_arrive_steps[i].when, ts_arrive_steps[i].says};
	}
}

static void fill_figures(struct work *w)
{
	w->r.shop_gh_dh = w->wish.shop_gh_dh;
	w->r.tank_gh_dh = w->wish.tank_gh_dh;
	w->r.shop_ec_us_cm = w->wish.shop_ec_us_cm;
	w->r.tank_ec_us_cm = w->wish.tank_ec_us_cm;
	w->r.gh_apart_percent = w->a.gh_apart_percent;
	w->r.ec_apart_percent = w->a.ec_apart_percent;
	w->r.bag_ammonia_mg_l = w->a.bag_tan_mg_l;
	w->r.bag_ammonia_assumed = w->a.tan_assumed;
	w->r.nh3_bag_mg_l = w->a.nh3_bag_mg_l;
	w->r.nh3_aired_mg_l = w->a.nh3_aired_mg_l;
	w->r.start_gh_dh = w->a.start_gh_dh;
	w->r.start_kh_dh = w->a.start_kh_dh;
	w->r.start_ec_us_cm = w->a.start_ec_us_cm;
}

/* "Fill the quarantine tank to GH 8, KH 5, 360 uS/cm at first." */
static void note_start(struct work *w)
{
	if (w->a.way != TS_ARRIVE_HALFWAY || isnan(w->a.start_gh_dh))
		return;
	ts_text_put(&w->text, "Half way is here GH ");
	ts_text_number_short(&w->text, w->a.start_gh_dh, 1);
	ts_text_put(&w->text, ", KH ");
	ts_text_number_short(&w->text, w->a.start_kh_dh, 1);
	if (!isnan(w->a.start_ec_us_cm)) {
		ts_text_put(&w->text, ", ");
		ts_text_number_short(&w->text, w->a.start_ec_us_cm, 0);
		ts_text_put(&w->text, " uS/cm");
	}
	ts_text_put(&w->text, ".");
	note(w, keep(w));
}

static void fill_notes(struct work *w)
{
	if (w->a.unknown_hours)
		note(w, "How long they are under way was not said (--hours): taken as long.");
	if (w->a.way == TS_ARRIVE_QUARANTINE && !w->a.count && !w->a.unknown_gap)
		note(w, "Measure GH, KH and conductivity of the bag and of the tank: then the "
			"stages can be reckoned. Until then lower or raise conductivity by 15 % "
			"every 2 days.");
	note_start(w);
	if (w->a.too_far)
		note(w, "It is too far for stages: ask for animals kept in water like yours.");
}

enum ts_status ts_answer_arrive(const struct ts_asking *asking,
	const struct ts_arrive_question *question, struct ts_arrive_result *ret)
{
	struct work *w = ts_arena_take(asking->arena, sizeof *w);

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct work){.asking = asking, .question = question};
	if (!take_waters(w))
		return TS_NO_MEMORY;
	ts_text_open(&w->text, &asking->arena->allocator);
	ts_arrive_plan(&w->wish, asking->practice, &w->a);
	w->r.passes = w->a.way < TS_ARRIVE_QUARANTINE;
	if (w->worst.species) {
		w->r.passes &= w->worst.verdict <= TS_TOLERATES;
		w->r.fit = ts_verdict_words[w->worst.verdict];
		w->r.species = w->worst.species->species;
	}
	if (w->worst.species && w->worst.verdict == TS_EXCLUDED) {
		w->r.passes = false;
		w->a = (struct ts_arrival){.way = TS_ARRIVE_QUARANTINE,
			.gh_apart_percent = w->a.gh_apart_percent,
			.ec_apart_percent = w->a.ec_apart_percent,
			.bag_tan_mg_l = w->a.bag_tan_mg_l,
			.tan_assumed = w->a.tan_assumed,
			.nh3_bag_mg_l = w->a.nh3_bag_mg_l,
			.nh3_aired_mg_l = w->a.nh3_aired_mg_l,
			.start_gh_dh = (double)NAN,
			.start_kh_dh = (double)NAN,
			.start_ec_us_cm = (double)NAN};
		say_refusal(w);
	} else {
		say_way(w);
		fill_notes(w);
	}
	w->r.way = ts_arrive_way_words[w->a.way];
	fill_figures(w);
	fill_steps(w);
	fill_stages(w);
	ts_answer_cautions(asking, TS_CAUTION_NEWCOMERS | TS_CAUTION_CHANGES, &w->r.cautions);
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w->r;
	return TS_OK;
}
