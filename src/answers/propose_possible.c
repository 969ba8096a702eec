/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What would make it possible to keep an animal that was asked for: the smallest change that really
 * does, found by asking again with the tank changed.
 */
#include "answers/propose.h"

#include "stock/judge.h"
#include "stock/levels.h"
#include "words/rulings.h"

/* As far as homes go; common practice, no source. */
#define LONGEST_CM 300
#define STEP_CM 10
#define MOST_PERCENT 80

/* Whether the tank would hold its least group, grown, with nobody else. */
static bool alone_in(
	const struct ts_wish *wish, const struct ts_tank *tank, const struct ts_species *species)
{
	struct ts_wish changed = *wish;
	struct ts_level levels[TS_LEVELS_MOST];
	unsigned points;
	double load;

	changed.tank = tank;
	changed.full_load = true;
	ts_levels(species, levels);
	load = ts_judge_nitrogen_mg_day(&changed, &levels[0].group);
	return ts_judge(&changed, false, &levels[0].group, NULL, &points, NULL) &&
	       load <= ts_judge_nitrogen_most_mg_day(&changed, false);
}

/* The same tank, longer, its width and height with it where they are too small as well. */
static struct ts_tank longer(const struct ts_tank *tank, double length_cm)
{
	struct ts_tank t = *tank;
	double grown = length_cm / (tank->length_cm > 0 ? tank->length_cm : length_cm);

	t.length_cm = length_cm;
	t.width_cm = ceil(tank->width_cm * grown);
	t.height_cm = fmax(tank->height_cm, fmin(ceil(tank->height_cm * grown), 60));
	t.volume_l = 0;
	return t;
}

static bool by_length(
	struct ts_text *text, const struct ts_wish *wish, const struct ts_species *species)
{
	double from = floor(wish->tank->length_cm / STEP_CM) * STEP_CM + STEP_CM;

	if (!(wish->tank->length_cm > 0))
		return false;
	for (double cm = from; cm <= LONGEST_CM; cm += STEP_CM) {
		struct ts_tank t = longer(wish->tank, cm);

		if (!alone_in(wish, &t, species))
			continue;
		ts_text_put(text, "Possible in a tank of ");
		ts_text_number_short(text, t.length_cm, 0);
		ts_text_put(text, " x ");
		ts_text_number_short(text, t.width_cm, 0);
		ts_text_put(text, " x ");
		ts_text_number_short(text, t.height_cm, 0);
		ts_text_put(text, " cm");
		return true;
	}
	return false;
}

static bool by_lid(struct ts_text *text, const struct ts_wish *wish, const struct ts_species *s)
{
	struct ts_tank t = *wish->tank;

	t.cover = TS_COVER_YES;
	if (wish->tank->cover == TS_COVER_YES || !alone_in(wish, &t, s))
		return false;
	ts_text_put(text, "Possible with a tight lid (--lid)");
	return true;
}

/* More water changed each week. */
static bool by_change(struct ts_text *text, const struct ts_wish *wish, const struct ts_species *s)
{
	double litres = ts_tank_net_l(wish->tank, wish->practice);

	for (double percent = 5; percent <= MOST_PERCENT; percent += 5) {
		struct ts_tank t = *wish->tank;

		t.water_change = (struct ts_every){percent, 7};
		if (!alone_in(wish, &t, s))
			continue;
		ts_text_put(text, "Possible with ");
		ts_text_number_short(text, litres * percent / 100, 0);
		ts_text_put(text, " L of the water changed every week");
		return true;
	}
	return false;
}

/* Whether a list holds all that is asked for in this tank. */
static bool list_in(const struct ts_wish *wish, const struct ts_tank *tank, struct ts_arena *arena)
{
	struct ts_wish changed = *wish;
	struct ts_proposal p;

	changed.tank = tank;
	changed.lists = 1;
	return ts_propose(&changed, arena, &p) && p.count;
}

/* All are candidates, and no list holds them together: floor or waste. */
static bool together(struct ts_text *text, const struct ts_wish *wish, struct ts_arena *arena)
{
	double litres = ts_tank_net_l(wish->tank, wish->practice);

	for (double percent = 40; percent <= MOST_PERCENT; percent += 10) {
		struct ts_tank t = *wish->tank;

		t.water_change = (struct ts_every){percent, 7};
		if (!list_in(wish, &t, arena))
			continue;
		ts_text_put(text, "Possible with ");
		ts_text_number_short(text, litres * percent / 100, 0);
		ts_text_put(text, " L of the water changed every week");
		return true;
	}
	for (double cm = wish->tank->length_cm + 2 * STEP_CM; cm <= LONGEST_CM; cm += 2 * STEP_CM) {
		struct ts_tank t = longer(wish->tank, cm);

		if (!list_in(wish, &t, arena))
			continue;
		ts_text_put(text, "Possible in a tank ");
		ts_text_number_short(text, cm, 0);
		ts_text_put(text, " cm long");
		return true;
	}
	return false;
}

const char *ts_answer_possible(const struct ts_asking *asking, const struct ts_wish *wish,
	const struct ts_proposal *p, const struct ts_candidacy *c)
{
	const struct ts_species *s = c->match.species;
	struct ts_text text;
	const char *said = NULL;
	bool found = false;

	(void)p;
	ts_text_open(&text, &asking->arena->allocator);
	switch (c->left_out) {
	case TS_LEFT_BY_ROOM:
		found = by_lid(&text, wish, s) || by_length(&text, wish, s);
		break;
	case TS_LEFT_BY_LOAD:
	case TS_LEFT_BY_NITRATE:
		found = by_change(&text, wish, s) || by_length(&text, wish, s);
		break;
	case TS_LEFT_BY_RESIDENT:
		if (c->asks)
			break;
		ts_say_remedy(&text, &c->ruling, false);
		found = text.len > 0;
		break;
	case TS_LEFT_BY_WATER:
		ts_text_puts(&text, "For other water ask: tapshoal remake --for \"", s->species,
			"\"", NULL);
		found = true;
		break;
	case TS_CANDIDATE:
		found = together(&text, wish, asking->arena);
		break;
	default:
		break;
	}
	if (found)
		said = ts_asking_keep(asking, &text);
	ts_text_drop(&text);
	return said;
}
