/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One headline a question, the steps that hold, and whom to call.
 */
#include "answers/what_if_work.h"

#include <math.h>
#include <string.h>

#include "answers/cautions.h"
#include "stock/room.h"
#include "words/remake.h"
#include "words/rulings.h"

/* What lasts, at the most: one line each. */
#define LASTS_MOST 6
#define HOURS_OF_DAY 24
/* Who is so small beside its kind is not grown. */
#define YOUNG_SHARE 0.6

static bool is(const struct ts_what_if_work *w, enum ts_what_if what)
{
	return w->question->row == &ts_what_if_rows[what];
}

static const char *keep(struct ts_what_if_work *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

/* One sex alone bears no young. */
static void take_sexes(struct ts_what_if_work *w)
{
	const struct ts_plan *plan = w->question->plan;

	for (size_t i = 0; i < plan->stock_count; i++) {
		struct ts_group *g = &w->groups[i];
		unsigned count = g->either;

		if (plan->stock[i].sex == TS_SEX_MALE)
			*g = (struct ts_group){g->species, count, 0, 0, g->size_cm, 0};
		else if (plan->stock[i].sex == TS_SEX_FEMALE)
			*g = (struct ts_group){g->species, 0, count, 0, g->size_cm, 0};
	}
}

/* The tank, its sides usual ones where only the litres are known, and all that lives in it. */
static bool take_tank(struct ts_what_if_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	size_t count = plan->stock_count;

	w->waters = ts_arena_take(w->asking->arena, sizeof *w->waters);
	w->groups = ts_arena_array(w->asking->arena, count + 1, sizeof *w->groups);
	if (!w->waters || !w->groups)
		return false;
	for (size_t i = 0; i < count; i++)
		w->groups[i] = (struct ts_group){.species = w->question->species[i],
			.either = (unsigned)fmax(1, plan->stock[i].count),
			.size_cm = plan->stock[i].size_cm};
	take_sexes(w);
	ts_waters_make(&(struct ts_waters_case){plan, w->groups, count, w->asking->today,
			       w->question->species},
		w->asking->practice, w->waters);
	w->tank = plan->tank;
	w->net_l = ts_tank_net_l(&plan->tank, w->asking->practice);
	if (w->net_l > 0 &&
		!(w->tank.length_cm > 0 && w->tank.width_cm > 0 && w->tank.height_cm > 0)) {
		ts_room_usual_sides(w->net_l / w->asking->practice->value[TS_P_TANK_NET], &w->tank);
		ts_asking_note(w->asking, &w->r.notes,
			"Its sides are taken as those that a tank of so many litres usually has.");
	}
	if (w->question->unknown)
		ts_asking_note(w->asking, &w->r.notes,
			ts_arena_join(w->asking->arena,
				"Not reckoned, and so neither oxygen nor ammonia, which hang on "
				"all "
				"of them: ",
				w->question->unknown, NULL));
	w->temp_c = w->waters->now.at[TS_TEMPERATURE].given
			    ? w->waters->now.at[TS_TEMPERATURE].value
			    : 25;
	if (!w->waters->now.at[TS_TEMPERATURE].given)
		ts_asking_note(
			w->asking, &w->r.notes, "How warm the tank is is not said: taken as 25 C.");
	return true;
}

static enum ts_status reckon(struct ts_what_if_work *w)
{
	static void (*const each[])(struct ts_what_if_work *) = {ts_what_if_oxygen,
		ts_what_if_warmth, ts_what_if_cooling, ts_what_if_ammonia, ts_what_if_away,
		ts_what_if_carried, ts_what_if_grow};
	unsigned wanted = w->question->row->reckons;

	w->r.lasts = ts_arena_array(w->asking->arena, LASTS_MOST + 1, sizeof *w->r.lasts);
	if (!w->r.lasts)
		return TS_NO_MEMORY;
	if (!w->question->plan->stock_count || !(w->net_l > 0)) {
		ts_asking_note(w->asking, &w->r.notes,
			"Which animals in how many litres is not said: with a plan, or \"10 neon "
			"tetra\" --volume 100L, it says how long this tank lasts.");
	} else {
		/* Who is not known breathes and fouls all the same. */
		if (w->question->unknown)
			wanted &= ~(unsigned)(TS_LASTS_OXYGEN | TS_LASTS_AMMONIA);
		for (size_t i = 0; i < sizeof each / sizeof *each; i++) {
			if (wanted & 1u << i)
				each[i](w);
		}
	}
	return wanted & TS_LASTS_OTHER_WATER ? ts_what_if_other_water(w) : TS_OK;
}

/* Nobody waits longer, whatever was reckoned: the figures are estimates. */
#define ACT_MOST_H 6.0

/* Half of the worst: before that something is to be done. */
static double act_h(double worst_h)
{
	return fmin(worst_h / 2, ACT_MOST_H);
}

/* Reckoned, and not left without an answer. */
static bool reckoned(const struct ts_estimate *e)
{
	return !isnan(e->low);
}

static bool has_young(const struct ts_what_if_work *w)
{
	for (size_t i = 0; i < w->question->plan->stock_count; i++) {
		const struct ts_group *g = &w->groups[i];

		if (g->size_cm > 0 && g->size_cm < YOUNG_SHARE * g->species->adult_length_cm)
			return true;
	}
	return false;
}

static bool holds(const struct ts_what_if_work *w, enum ts_what_if_holds what)
{
	const double *p = w->asking->practice->value;
	bool stays = reckoned(&w->oxygen_h) && !isfinite(w->oxygen_h.low);

	switch (what) {
	case TS_HOLDS_OXYGEN_ENDS:
		return !stays;
	case TS_HOLDS_OXYGEN_STAYS:
		return stays;
	case TS_HOLDS_COOLS:
		return !reckoned(&w->cools_h) || isfinite(w->cools_h.low);
	case TS_HOLDS_YOUNG:
		return has_young(w) && w->away_days > p[TS_P_AWAY_SHORT];
	case TS_HOLDS_AWAY_LONG:
		return w->away_days > p[TS_P_AWAY_LONG];
	case TS_HOLDS_FAR:
		return w->far;
	case TS_HOLDS_OVER:
		return w->far && w->r.stage_count > 0;
	case TS_HOLDS_NEAR:
		return !w->far;
	case TS_HOLDS_BREEDS:
		return w->breeds;
	case TS_HOLDS_BEARS:
		return w->breeds && w->breeds->kind == TS_ANIMAL_FISH;
	case TS_HOLDS_SHRIMPS:
		return w->breeds && w->breeds->kind != TS_ANIMAL_FISH;
	case TS_HOLDS_OUTGROWS:
		return w->outgrows;
	case TS_HOLDS_STAYS:
		return !w->breeds && !w->outgrows;
	case TS_HOLDS_LONG_WAY:
		return w->hours > p[TS_P_FILTER_RINSE];
	default:
		return true;
	}
}

/* A figure of a sentence; what was not reckoned is said without one. */
static void put_named(struct ts_what_if_work *w, const char *name, size_t len)
{
	const double *p = w->asking->practice->value;

	if (strncmp(name, "act", len) == 0) {
		ts_what_if_hours(&w->text, reckoned(&w->oxygen_h) ? act_h(w->oxygen_h.low) : 1);
	} else if (strncmp(name, "cool_act", len) == 0) {
		if (reckoned(&w->cools_h))
			ts_what_if_hours(&w->text, act_h(w->cools_h.low));
		else
			ts_text_put(&w->text, "the hour");
	} else if (strncmp(name, "stopped", len) == 0) {
		ts_what_if_hours(&w->text, p[TS_P_FILTER_STOPPED]);
	} else if (strncmp(name, "rinse", len) == 0) {
		ts_what_if_hours(&w->text, p[TS_P_FILTER_RINSE]);
	} else if (strncmp(name, "evaporates", len) == 0) {
		if (w->evaporates_l > 0)
			ts_say_amount(&w->text, w->evaporates_l, "L");
		else
			ts_text_put(&w->text, "some of it");
	} else if (strncmp(name, "daily", len) == 0) {
		if (w->ammonia.change_percent > 0) {
			ts_say_amount(&w->text,
				fmax(10, w->ammonia.change_percent) / 100 * w->net_l, "L");
			ts_text_put(&w->text, " (");
			ts_text_number_short(&w->text, fmax(10, w->ammonia.change_percent), 0);
			ts_text_put(&w->text, " %)");
		} else {
			ts_text_put(&w->text, "a quarter");
		}
	} else if (strncmp(name, "recipe", len) == 0) {
		ts_text_put(&w->text, w->recipe ? w->recipe : "its GH and KH tell how");
	}
}

static const char *filled(struct ts_what_if_work *w, const char *template)
{
	while (*template) {
		size_t plain = strcspn(template, "{"), name;

		ts_text_add(&w->text, template, plain);
		template += plain;
		if (!*template)
			break;
		name = strcspn(++template, "}");
		put_named(w, template, name);
		template += name + (template[name] == '}');
		/* A sentence that ends with its figure's own full stop has one. */
		if (*template == '.' && w->text.len &&
			ts_text_get(&w->text)[w->text.len - 1] == '.')
			template ++;
	}
	return keep(w);
}

static void fill_steps(struct ts_what_if_work *w)
{
	unsigned of = 1u << (w->question->row - ts_what_if_rows);

	w->r.steps =
		ts_arena_array(w->asking->arena, ts_what_if_step_count + 1, sizeof *w->r.steps);
	for (size_t i = 0; w->r.steps && i < ts_what_if_step_count; i++) {
		const struct ts_what_if_step *s = &ts_what_if_steps[i];
		const char *when;

		if (!(s->of & of) || !holds(w, s->holds))
			continue;
		when = filled(w, s->when);
		w->r.steps[w->r.step_count++] =
			(struct ts_what_if_deed){when, filled(w, s->says), s->card};
	}
}

static void head_oxygen(struct ts_what_if_work *w)
{
	if (!reckoned(&w->oxygen_h)) {
		ts_text_put(&w->text,
			"Oxygen first: move the water within the hour, and feed nothing.");
	} else if (isfinite(w->oxygen_h.low)) {
		ts_text_put(&w->text, "Move the water within ");
		ts_what_if_hours(&w->text, act_h(w->oxygen_h.low));
		ts_text_put(&w->text, ", and feed nothing: the oxygen lasts ");
		ts_what_if_hours(&w->text, w->oxygen_h.low);
		ts_text_put(&w->text, " at the least.");
	} else {
		ts_text_put(&w->text,
			"No haste for oxygen: the still surface lets in what they take. "
			"Feed nothing.");
	}
}

static void head_warmth(struct ts_what_if_work *w)
{
	if (!reckoned(&w->cools_h)) {
		ts_text_put(&w->text,
			"Pull its plug, read a second thermometer, and keep the room warm.");
	} else if (!isfinite(w->cools_h.low)) {
		ts_text_put(
			&w->text, "No haste: the room keeps them warmer than the least they bear.");
	} else {
		ts_text_put(&w->text, "It is too cold for ");
		ts_say_animals(&w->text, w->coldest);
		ts_text_put(&w->text, " in ");
		ts_what_if_hours(&w->text, w->cools_h.low);
		ts_text_put(&w->text, " at the soonest: a heater, or warm bottles, before.");
	}
}

static void put_days_away(struct ts_what_if_work *w)
{
	ts_text_number_short(&w->text, w->away_days, 0);
	ts_text_put(&w->text, w->away_days == 1 ? " day " : " days ");
}

static void head_away(struct ts_what_if_work *w)
{
	const double *p = w->asking->practice->value;

	if (w->away_days <= p[TS_P_AWAY_SHORT]) {
		ts_text_put(&w->text, "Go: for ");
		put_days_away(w);
		ts_text_put(&w->text,
			"a tank that runs needs nothing, and grown, healthy fish no feed.");
	} else if (w->away_days <= p[TS_P_AWAY_LONG]) {
		ts_text_put(&w->text, "Change water three days before you go; for ");
		put_days_away(w);
		ts_text_put(&w->text, "grown, healthy fish need no feed.");
	} else {
		ts_text_put(&w->text, "For ");
		put_days_away(w);
		ts_text_put(&w->text, "somebody must look in every second day.");
	}
}

static void head_water(struct ts_what_if_work *w)
{
	if (w->refuses) {
		ts_text_puts(&w->text, "The water there does not suit ", w->refuses,
			": make it like theirs at every change, for good, or find them another "
			"home.",
			NULL);
	} else if (!w->waters_known) {
		ts_text_put(&w->text, "Read GH and KH of both waters first: whether they are near "
				      "decides the way.");
	} else if (!w->far) {
		ts_text_put(&w->text,
			is(w, TS_IF_NEW_SUPPLY)
				? "Go on as ever: the new water is near enough."
				: "They may go into the water there on the same day: it is "
				  "near enough.");
	} else {
		ts_text_put(&w->text, "Not into the bare water at once: make it like theirs first");
		if (w->r.stage_count) {
			ts_text_put(&w->text, ", then go over to it in ");
			ts_text_number_short(&w->text, (double)w->r.stage_count, 0);
			ts_text_put(&w->text, w->r.stage_count == 1 ? " change" : " changes in ");
			if (w->r.stage_count > 1) {
				ts_text_number_short(&w->text,
					(double)(w->r.stages[w->r.stage_count - 1].day -
						 w->r.stages[0].day),
					0);
				ts_text_put(&w->text, " days");
			}
		}
		ts_text_put(&w->text, ".");
	}
}

/* More than the tank bears by nitrate; of none that it bears the others are the cause. */
static bool too_many(const struct ts_what_if_work *w)
{
	return w->breeds && w->young_then > w->young_borne && w->young_borne >= 1;
}

static void head_growth(struct ts_what_if_work *w)
{
	bool fish = w->breeds && w->breeds->kind == TS_ANIMAL_FISH;

	if (w->outgrows && !too_many(w)) {
		ts_say_animals(&w->text, w->outgrows);
		ts_text_capital(&w->text, 0);
		ts_text_put(
			&w->text, " grow out of this tank: look for a larger one, or a home, now.");
	} else if (too_many(w)) {
		ts_text_put(&w->text, "About ");
		ts_text_number(&w->text, w->young_then, 0);
		ts_text_put(&w->text, " ");
		ts_say_animals(&w->text, w->breeds);
		ts_text_put(&w->text, " in half a year, and by its nitrate this tank bears about ");
		ts_text_number(&w->text, w->young_borne, 0);
		ts_text_put(&w->text, fish ? ": homes for the young, or males alone, before."
					   : ": homes for some of them, before.");
	} else if (w->breeds) {
		ts_text_put(&w->text, "About ");
		ts_text_number(&w->text, w->young_then, 0);
		ts_text_put(&w->text, " ");
		ts_say_animals(&w->text, w->breeds);
		ts_text_put(&w->text, " in half a year: think of homes for the young.");
	} else {
		ts_text_put(&w->text, "Nothing grows out of this tank in half a year.");
	}
}

static void fill_head(struct ts_what_if_work *w)
{
	if (is(w, TS_IF_POWER_CUT) || is(w, TS_IF_FILTER))
		head_oxygen(w);
	else if (is(w, TS_IF_HEATER_OFF))
		head_warmth(w);
	else if (is(w, TS_IF_HEATER_STUCK))
		ts_text_put(&w->text,
			"Pull the heater's plug and move the water, now; let it come down "
			"by 1 C an hour at most.");
	else if (is(w, TS_IF_HALF_YEAR))
		head_growth(w);
	else if (is(w, TS_IF_HOLIDAY))
		head_away(w);
	else
		head_water(w);
	w->r.says = keep(w);
	w->r.because = w->r.lasts_count
			       ? ts_arena_join(w->asking->arena, w->r.lasts[0].says, ".", NULL)
			       : "";
	/* Of a water the two figures decide, of a tank that is outgrown its length. */
	for (size_t i = 0; i < w->r.lasts_count; i++) {
		if (strcmp(w->r.lasts[i].what, "other-water") == 0 ||
			(strcmp(w->r.lasts[i].what, "room") == 0 && !too_many(w)))
			w->r.because =
				ts_arena_join(w->asking->arena, w->r.lasts[i].says, ".", NULL);
	}
}

/* More old water than that nobody carries, as a share of the tank. */
#define CARRIED_MOST 0.5

static void note_old_water(struct ts_what_if_work *w)
{
	bool moves = w->question->row->reckons & TS_LASTS_CARRIED;

	if (!moves || !(w->r.old_water_l > 0) || w->r.old_water_l > CARRIED_MOST * w->net_l) {
		w->r.old_water_l = (double)NAN;
		return;
	}
	ts_text_put(&w->text, "Without salts it takes ");
	ts_say_amount(&w->text, w->r.old_water_l, "L of the old water");
	ts_text_put(&w->text, " in canisters for the first fill (a litre weighs a kilogram).");
	ts_asking_note(w->asking, &w->r.notes, keep(w));
}

static void list_questions(struct ts_what_if_work *w)
{
	for (size_t i = 0; i < TS_IF__COUNT; i++) {
		ts_asking_note(w->asking, &w->r.ids, ts_what_if_rows[i].id);
		ts_asking_note(w->asking, &w->r.questions, ts_what_if_rows[i].asks);
	}
}

static enum ts_status answer(struct ts_what_if_work *w)
{
	const struct ts_what_if_row *row = w->question->row;
	bool water = row->reckons & TS_LASTS_OTHER_WATER;
	enum ts_status status;

	w->r.id = row->id;
	w->r.asks = row->asks;
	if (!take_tank(w))
		return TS_NO_MEMORY;
	status = reckon(w);
	if (status)
		return status;
	fill_head(w);
	fill_steps(w);
	note_old_water(w);
	ts_asking_note(w->asking, &w->r.call, row->expert);
	ts_asking_note(w->asking, &w->r.call, ts_what_if_vet);
	if (row->reckons &
		(TS_LASTS_OXYGEN | TS_LASTS_WARMTH | TS_LASTS_AMMONIA | TS_LASTS_COOLING))
		ts_asking_note(w->asking, &w->r.notes,
			"The hours are estimates with a wide doubt, from published figures for "
			"fish "
			"and lakes that were not checked again; what to do is common practice.");
	else
		ts_asking_note(w->asking, &w->r.notes, "What to do is common practice.");
	if (water)
		ts_answer_cautions(w->asking, TS_CAUTION_CHANGES, &w->r.cautions);
	return TS_OK;
}

enum ts_status ts_answer_what_if(const struct ts_asking *asking,
	const struct ts_what_if_question *question, struct ts_what_if_result *ret)
{
	struct ts_what_if_work *w = ts_arena_take(asking->arena, sizeof *w);
	const double no = (double)NAN;
	enum ts_status status = TS_OK;

	if (!w)
		return TS_NO_MEMORY;
	*w = (struct ts_what_if_work){.asking = asking,
		.question = question,
		.oxygen_h = {no, no, no},
		.cools_h = {no, no, no},
		.young_borne = no,
		.no3_then = no,
		.kh_then = no};
	w->r.carry_l = w->r.old_water_l = no;
	ts_text_open(&w->text, &asking->arena->allocator);
	list_questions(w);
	if (question->row)
		status = answer(w);
	asking->arena->failed |= w->text.failed;
	ts_text_drop(&w->text);
	if (status || asking->arena->failed)
		return TS_NO_MEMORY;
	*ret = w->r;
	return TS_OK;
}
