/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What half a year makes of the animals of a tank: how many, how long, and whether it bears them.
 */
#include "answers/what_if_work.h"

#include <math.h>
#include <string.h>

#include "stock/growth.h"
#include "stock/room.h"
#include "stock/rules.h"
#include "words/rulings.h"

#define MONTHS 6.0
#define HOURS_OF_MONTH 730.0

static double nitrate_limit(const struct ts_what_if_work *w)
{
	const struct ts_plan *plan = w->question->plan;
	bool sensitive = false;

	for (size_t i = 0; i < plan->stock_count; i++)
		sensitive |= w->question->species[i]->habits & TS_HABIT_NITRATE_SENSITIVE ||
			     plan->stock[i].origin == TS_ORIGIN_WILD;
	return w->asking->practice
		->value[sensitive ? TS_P_NITRATE_CONCERN_SENSITIVE : TS_P_NITRATE_CONCERN];
}

static void put_count(struct ts_text *text, double count)
{
	ts_text_number(text, count, 0);
}

/* "12 guppies: about 108 in six months (36 to 204), if a fifth of the young grow up" */
static void say_numbers(
	struct ts_what_if_work *w, const struct ts_group *g, const struct ts_growth *grown)
{
	struct ts_estimate none = {
		MONTHS * HOURS_OF_MONTH, MONTHS * HOURS_OF_MONTH, MONTHS * HOURS_OF_MONTH};

	put_count(&w->text, grown->now);
	ts_text_put(&w->text, " ");
	ts_say_animals(&w->text, g->species);
	ts_text_put(&w->text, ": about ");
	put_count(&w->text, grown->then.value);
	ts_text_put(&w->text, " in six months (");
	put_count(&w->text, grown->then.low);
	ts_text_put(&w->text, " to ");
	put_count(&w->text, grown->then.high);
	ts_text_put(&w->text, ", by how many of the young others leave)");
	ts_what_if_add(w, "numbers", &none, grown->then.value);
}

/* "angelfish: 5 cm now, 10 in six months, grown (15 cm) in about 15 months" */
static void say_sizes(
	struct ts_what_if_work *w, const struct ts_group *g, const struct ts_growth *grown)
{
	struct ts_estimate hours = {grown->grown_months * HOURS_OF_MONTH,
		grown->grown_months * HOURS_OF_MONTH, grown->grown_months * HOURS_OF_MONTH};

	ts_say_animals(&w->text, g->species);
	ts_text_capital(&w->text, 0);
	ts_text_put(&w->text, ": ");
	ts_text_number_short(&w->text, grown->size_cm, 1);
	ts_text_put(&w->text, " cm now, about ");
	ts_text_number_short(&w->text, grown->size_then_cm, 0);
	ts_text_put(&w->text, " in six months, grown (");
	ts_text_number_short(&w->text, g->species->adult_length_cm, 0);
	ts_text_put(&w->text, " cm) in about ");
	ts_text_number_short(&w->text, ceil(grown->grown_months), 0);
	ts_text_put(&w->text, " months");
	w->small = true;
	ts_what_if_add(w, "sizes", &hours, grown->size_then_cm);
}

/* Who is too large for the tank, grown: the rule that check uses. */
static void say_room(struct ts_what_if_work *w, const struct ts_group *g)
{
	struct ts_estimate none = {(double)INFINITY, (double)INFINITY, (double)INFINITY};
	struct ts_ruling r;
	const char *unit;

	if (ts_room_for(g->species, &w->tank, w->asking->practice, &r) != TS_ROOM_BY_RULE)
		return;
	unit = strncmp(ts_rule_rows[r.rule].parameter, "tank", 4) == 0 ? " cm" : "";
	w->outgrows = g->species;
	ts_say_animals(&w->text, g->species);
	ts_text_capital(&w->text, 0);
	ts_text_puts(&w->text, " outgrow it: ", ts_rule_rows[r.rule].parameter, " ", NULL);
	ts_text_number_short(&w->text, r.ours, 1);
	ts_text_put(&w->text, unit);
	ts_text_put(&w->text, ", grown they need ");
	ts_text_number_short(&w->text, r.its, 1);
	ts_text_put(&w->text, unit);
	ts_what_if_add(w, "room", &none, r.its);
}

/* How many of them the tank bears by nitrate, the others as they are; NAN: not known. */
static double borne(const struct ts_what_if_work *w, size_t which)
{
	const struct ts_plan *plan = w->question->plan;
	const struct ts_bearing wanted = {nitrate_limit(w), 0};
	struct ts_group one = w->groups[which];
	double others = 0, each, all;

	for (size_t i = 0; i < plan->stock_count; i++) {
		if (i != which)
			others += ts_group_nitrogen_mg_day(
				&w->groups[i], &plan->tank, w->temp_c, w->asking->practice);
	}
	one.males = one.females = 0;
	one.either = 1;
	each = ts_group_nitrogen_mg_day(&one, &plan->tank, w->temp_c, w->asking->practice);
	all = ts_waters_bears_mg_day(
		plan, w->asking->today, &wanted, others + 10000 * each, w->asking->practice);
	return floor(fmax(0, all - others) / each);
}

/* What the routine makes of them all then. */
static void say_load(struct ts_what_if_work *w, const struct ts_growth *grown)
{
	const struct ts_plan *plan = w->question->plan;
	struct ts_estimate none = {(double)INFINITY, (double)INFINITY, (double)INFINITY};
	struct ts_group *then =
		ts_arena_array(w->asking->arena, plan->stock_count + 1, sizeof *then);
	struct ts_waters *waters = ts_arena_take(w->asking->arena, sizeof *waters);

	if (!then || !waters)
		return;
	for (size_t i = 0; i < plan->stock_count; i++)
		then[i] = (struct ts_group){
			.species = w->groups[i].species, .either = (unsigned)grown[i].then.value};
	ts_waters_make(
		&(struct ts_waters_case){plan, then, plan->stock_count, w->asking->today, NULL},
		w->asking->practice, waters);
	if (!waters->settled_known || !w->waters->settled_known)
		return;
	w->no3_then = waters->settles.no3_mg_l.value;
	ts_text_put(&w->text, plan->tank.water_change.days > 0
				      ? "By your routine nitrate comes to rest at "
				      : "By the usual change of water nitrate comes to rest at ");
	ts_text_number_short(&w->text, w->waters->settles.no3_mg_l.value, 0);
	ts_text_put(&w->text, " mg/L with those of now, grown, and at ");
	ts_text_number_short(&w->text, w->no3_then, 0);
	ts_text_put(&w->text, " with those of then; comfortable to ");
	ts_text_number_short(&w->text, nitrate_limit(w), 0);
	ts_what_if_add(w, "load", &none, w->no3_then);
}

/* Others take young, and those that are small for good. */
static bool hunted(const struct ts_what_if_work *w, size_t which)
{
	for (size_t i = 0; i < w->question->plan->stock_count; i++) {
		const struct ts_species *s = w->groups[i].species;

		if (i != which && s->kind == TS_ANIMAL_FISH && s->hunts != TS_HUNTS_GRAZER &&
			s->adult_length_cm > 2 * w->groups[which].species->adult_length_cm)
			return true;
	}
	return false;
}

void ts_what_if_grow(struct ts_what_if_work *w)
{
	size_t count = w->question->plan->stock_count;
	struct ts_growth *grown = ts_arena_array(w->asking->arena, count + 1, sizeof *grown);
	struct ts_what_if_line *lines =
		ts_arena_array(w->asking->arena, 3 * count + 2, sizeof *lines);
	bool breeds = false;

	if (!grown || !lines)
		return;
	w->r.lasts = lines;
	for (size_t i = 0; i < count; i++) {
		const struct ts_group *g = &w->groups[i];

		ts_growth_of(g, MONTHS, w->asking->practice, &grown[i]);
		if (hunted(w, i))
			grown[i].then.low = 0;
		if (grown[i].breeds)
			say_numbers(w, g, &grown[i]);
		if (grown[i].breeds && (!w->breeds || grown[i].then.value > w->young_then)) {
			w->breeds = g->species;
			w->young_then = grown[i].then.value;
			w->young_borne = borne(w, i);
		}
		if (grown[i].grown_months > 0)
			say_sizes(w, g, &grown[i]);
		say_room(w, g);
		breeds |= grown[i].breeds;
	}
	if (w->small)
		ts_asking_note(w->asking, &w->r.notes,
			"How fast they grow is an estimate: feed, warmth and room decide.");
	if (breeds && w->waters->load_known)
		say_load(w, grown);
}
