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

/* The same tank with other sides; none is made smaller. */
static struct ts_tank with_sides(
	const struct ts_tank *tank, double length_cm, double width_cm, double height_cm)
{
	struct ts_tank t = *tank;

	t.length_cm = length_cm;
	t.width_cm = fmax(tank->width_cm, width_cm);
	t.height_cm = fmax(tank->height_cm, height_cm);
	t.volume_l = 0;
	return t;
}

/* As it is, then from 25 cm on. */
static double width_at(int step)
{
	return step ? 25 + (step - 1) * STEP_CM / 2.0 : 0;
}

/* The shortest, then the narrowest, then the lowest that does; none is wider than half its length.
 */
static bool smallest_for(const struct ts_wish *wish, const struct ts_species *species,
	double length_cm, struct ts_tank *ret)
{
	static const double heights_cm[] = {0, 40, 50, 60, 70};

	for (int step = 0; width_at(step) <= length_cm / 2; step++) {
		const double wide = width_at(step);

		for (size_t h = 0; h < sizeof heights_cm / sizeof *heights_cm; h++) {
			*ret = with_sides(wish->tank, length_cm, wide, heights_cm[h]);
			if (alone_in(wish, ret, species))
				return true;
		}
	}
	return false;
}

static void put_sides(struct ts_text *text, const struct ts_tank *t)
{
	const double sides[] = {t->length_cm, t->width_cm, t->height_cm};

	for (size_t i = 0; i < 3; i++) {
		ts_text_put(text, i ? " x " : "");
		ts_text_number_short(text, sides[i], 0);
	}
	ts_text_put(text, " cm");
}

static bool by_sides(
	struct ts_text *text, const struct ts_wish *wish, const struct ts_species *species)
{
	if (!(wish->tank->length_cm > 0) || wish->tank->length_cm > LONGEST_CM)
		return false;
	for (int cm = (int)ceil(wish->tank->length_cm / STEP_CM) * STEP_CM; cm <= LONGEST_CM;
		cm += STEP_CM) {
		struct ts_tank t;

		if (!smallest_for(wish, species, cm, &t))
			continue;
		ts_text_put(text, "Possible in a tank of ");
		put_sides(text, &t);
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

	for (int percent = 5; percent <= MOST_PERCENT; percent += 5) {
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
	return ts_propose(&changed, arena, &p) && p.count && !p.conditions;
}

/* All are candidates, and no list holds them together: floor or waste. */
static bool together(struct ts_text *text, const struct ts_wish *wish, struct ts_arena *arena)
{
	double litres = ts_tank_net_l(wish->tank, wish->practice);

	for (int percent = 40; percent <= MOST_PERCENT; percent += 10) {
		struct ts_tank t = *wish->tank;

		t.water_change = (struct ts_every){percent, 7};
		if (!list_in(wish, &t, arena))
			continue;
		ts_text_put(text, "Possible with ");
		ts_text_number_short(text, litres * percent / 100, 0);
		ts_text_put(text, " L of the water changed every week");
		return true;
	}
	for (int step = 1; wish->tank->length_cm + 2 * STEP_CM * step <= LONGEST_CM; step++) {
		const double cm = wish->tank->length_cm + 2 * STEP_CM * step;
		struct ts_tank t = with_sides(wish->tank, cm, cm / 3, 50);

		if (!list_in(wish, &t, arena))
			continue;
		ts_text_put(text, "Possible in a tank of ");
		put_sides(text, &t);
		return true;
	}
	return false;
}

/* "Possible at 28 to 30 C", where the warmth alone keeps it out. */
static bool by_warmth(struct ts_text *text, const struct ts_match *m)
{
	const struct ts_range *likes = &m->at[TS_TEMPERATURE].preferred;

	if (m->limiting != TS_TEMPERATURE || isnan(likes->low))
		return false;
	ts_text_put(text, "Possible at ");
	ts_text_number_short(text, likes->low, 1);
	ts_text_put(text, " to ");
	ts_text_number_short(text, likes->high, 1);
	ts_text_put(text, " C");
	return true;
}

/* Eaten, and grown it still is. */
static bool never_outgrows(const struct ts_ruling *r)
{
	return r->rule == TS_RULE_EATEN && !(r->subject->adult_length_cm > r->its);
}

const char *ts_answer_possible(
	const struct ts_asking *asking, const struct ts_wish *wish, const struct ts_candidacy *c)
{
	const struct ts_species *s = c->match.species;
	struct ts_text text;
	const char *said = NULL;
	bool found = false;

	ts_text_open(&text, &asking->arena->allocator);
	switch (c->left_out) {
	case TS_LEFT_BY_ROOM:
		found = by_lid(&text, wish, s) || by_sides(&text, wish, s);
		break;
	case TS_LEFT_BY_LOAD:
	case TS_LEFT_BY_NITRATE:
		found = by_change(&text, wish, s) || by_sides(&text, wish, s);
		break;
	case TS_LEFT_BY_RESIDENT:
		if (c->asks || never_outgrows(&c->ruling))
			break;
		ts_say_remedy(&text, &c->ruling, false);
		ts_text_capital(&text, 0);
		found = text.len > 0;
		break;
	case TS_LEFT_UNSURE:
		found = by_warmth(&text, &c->match);
		break;
	case TS_LEFT_BY_WATER:
		found = by_warmth(&text, &c->match);
		if (found)
			break;
		ts_text_puts(&text, "For other water ask: tapshoal remake --for \"", s->species,
			"\"", NULL);
		found = true;
		break;
	case TS_CANDIDATE:
		if (!alone_in(wish, wish->tank, s))
			found = by_lid(&text, wish, s) || by_sides(&text, wish, s);
		else
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
