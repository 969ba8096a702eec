/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Who is there, and who goes with whom: lines become groups, and the rules of one and of two, room
 * and the number of kinds are asked of them.
 */
#include "stock/judging.h"
#include "stock/room.h"

#include <string.h>

#include "base/arena.h"

static void add_all(struct ts_judging *w, const struct ts_rulings *all)
{
	for (size_t i = 0; i < all->count; i++) {
		struct ts_ruling *r;

		if (all->at[i].rule == TS_RULE_TANK_UNMEASURED &&
			all->at[i].severity == TS_QUESTION)
			continue;
		r = ts_judging_say(w, all->at[i].rule, TS_NOTE, 0, 0);

		if (r)
			*r = all->at[i];
	}
}

/* Lines of one species become one group. */
static struct ts_plan_group *group_of(struct ts_judging *w, const struct ts_species *species)
{
	struct ts_check *c = w->out;

	for (size_t i = 0; i < c->group_count; i++) {
		if (c->groups[i].group.species == species)
			return &c->groups[i];
	}
	c->groups[c->group_count].group.species = species;
	return &c->groups[c->group_count++];
}

/* Is this the first line that calls its species so? Colour forms have names of their own. */
static bool another_name(
	const struct ts_judging *w, const struct ts_species *const *species, size_t line)
{
	for (size_t i = 0; i < line; i++) {
		const char *name = w->plan->stock[i].species;

		if (species[i] == species[line] && name && w->plan->stock[line].species &&
			strcmp(name, w->plan->stock[line].species) == 0)
			return false;
	}
	return true;
}

static void add_line(
	struct ts_judging *w, const struct ts_stock_line *line, const struct ts_species *s)
{
	struct ts_plan_group *g = group_of(w, s);
	unsigned count = (unsigned)line->count;
	struct ts_ruling *r;

	if (!count) {
		count = s->group.least < 1 ? 1 : (unsigned)ceil(s->group.least);
		r = ts_judging_say(w, TS_RULE_COUNT_ASSUMED, TS_NOTE, count, (double)NAN);
		if (r)
			r->subject = s;
	}

	if (line->sex == TS_SEX_MALE)
		g->group.males += count;
	else if (line->sex == TS_SEX_FEMALE)
		g->group.females += count;
	else if (line->sex == TS_SEX_UNKNOWN)
		g->group.either += count;
	if (line->sex == TS_SEX_PAIRS) {
		g->group.males += count / 2;
		g->group.females += count / 2;
		g->group.either += count % 2;
	}
	g->planned += line->since ? 0 : count;
	g->wild |= line->origin == TS_ORIGIN_WILD;
	if (line->size_cm > 0)
		g->group.size_cm = g->group.size_cm > 0 ? fmin(g->group.size_cm, line->size_cm)
							: line->size_cm;
}

void ts_judge_groups(struct ts_judging *w, const struct ts_species *const *species)
{
	const struct ts_plan *p = w->plan;

	w->out->groups = ts_arena_array(w->arena, p->stock_count, sizeof *w->out->groups);
	if (!w->out->groups && p->stock_count)
		return;
	for (size_t i = 0; i < p->stock_count; i++) {
		struct ts_ruling *r;

		if (species[i]) {
			add_line(w, &p->stock[i], species[i]);
			group_of(w, species[i])->group.forms += another_name(w, species, i);
			continue;
		}
		r = ts_judging_say(
			w, TS_RULE_UNKNOWN_SPECIES, TS_QUESTION, (double)NAN, (double)NAN);
		if (r)
			r->name = p->stock[i].species;
		w->cannot = true;
	}
	if (!p->stock_count)
		ts_judging_say(w, TS_RULE_EMPTY, TS_QUESTION, (double)NAN, (double)NAN);
	for (size_t i = 0; i < w->out->group_count; i++) {
		const struct ts_plan_group *g = &w->out->groups[i];

		w->out->planned_groups += g->planned > 0;
		w->out->living_groups += ts_group_count(&g->group) > g->planned;
	}
}

static void check_floor(struct ts_judging *w)
{
	double have = ts_tank_floor_m2(&w->plan->tank), want;
	struct ts_floor_sum sum = {0};
	size_t owners = 0;

	for (size_t i = 0; i < w->out->group_count; i++) {
		const struct ts_group *group = &w->out->groups[i].group;

		ts_floor_add(&sum, group, w->practice);
		owners += ts_group_floor_m2(group, w->practice) > 0;
	}
	want = ts_floor_total_m2(&sum);
	if (owners > 1 && want > have)
		ts_judging_say(w, TS_RULE_FLOOR, ts_rule_short_of(have, want, w->practice->value),
			have, want);
}

/* So many that every keeper would object, however often the water is changed. */
static void check_crowding(struct ts_judging *w)
{
	const struct ts_tank *tank = &w->plan->tank;
	const double *p = w->practice->value;
	double box_l = ts_rule_sold_l(tank, w->practice);
	double times = 0;

	for (size_t i = 0; i < w->out->group_count; i++)
		times += ts_rule_crowding(&w->out->groups[i].group, 1, tank, w->practice);
	if (times > p[TS_P_CROWDED_NOTE])
		ts_judging_say(w, TS_RULE_CROWDED, times > p[TS_P_CROWDED] ? TS_CONFLICT : TS_NOTE,
			box_l, times * box_l);
}

static void check_species_count(struct ts_judging *w)
{
	double net_l = ts_tank_net_l(&w->plan->tank, w->practice), fish = 0;
	enum ts_practice_id row = net_l < 60    ? TS_P_SPECIES_60
				  : net_l < 120 ? TS_P_SPECIES_120
				  : net_l > 250 ? TS_P_SPECIES_MORE
						: TS_P_SPECIES_250;

	for (size_t i = 0; i < w->out->group_count; i++)
		fish += w->out->groups[i].group.species->kind == TS_ANIMAL_FISH;
	if (net_l > 0 && fish > w->practice->value[row])
		ts_judging_say(w, TS_RULE_MANY_SPECIES, TS_NOTE, fish, w->practice->value[row]);
}

/* The tank is one: what is not given of it is said once, and not of every animal. */
static void check_sides(struct ts_judging *w)
{
	const struct ts_tank *t = &w->plan->tank;
	struct ts_tank usual;

	if (!w->out->group_count || (t->length_cm > 0 && t->width_cm > 0))
		return;
	if (t->length_cm > 0 || !(t->volume_l > 0)) {
		ts_judging_say(w, TS_RULE_TANK_UNKNOWN, TS_QUESTION, (double)NAN, (double)NAN);
	} else {
		ts_room_usual_sides(t->volume_l, &usual);
		ts_judging_say(w, TS_RULE_SIDES_ASSUMED, TS_NOTE, usual.length_cm, usual.width_cm);
	}
}

/*
 * What years together without a loss disprove, and after how many days: water at once, a temper
 * when all have grown up. Common practice, no source.
 */
static const struct {
	enum ts_rule_id rule;
	double days;
} disproved[] = {
	{TS_RULE_ATTACKED, 365},
	{TS_RULE_CHASED, 182},
	{TS_RULE_EATEN, 365},
	{TS_RULE_FIN_NIPPER, 182},
	{TS_RULE_FLOW_APART, 182},
	{TS_RULE_LABYRINTH, 182},
	{TS_RULE_LAKE_APART, 365},
	{TS_RULE_LIGHT_APART, 182},
	{TS_RULE_NIGHT_HUNTER, 365},
	{TS_RULE_OUTCOMPETED, 182},
	{TS_RULE_RIVALS, 365},
	{TS_RULE_SHRIMPS_EATEN, 365},
	{TS_RULE_SNAILS_EATEN, 182},
};

static void ease(struct ts_ruling *r, double days, double settled)
{
	enum ts_rule_topic topic = ts_rule_rows[r->rule].topic;

	if (days >= settled && r->severity == TS_CONCERN &&
		(topic == TS_TOPIC_WATER || topic == TS_TOPIC_TEMPERATURE))
		r->severity = TS_NOTE;
	for (size_t i = 0; i < sizeof disproved / sizeof *disproved; i++) {
		if (disproved[i].rule == r->rule && days >= disproved[i].days)
			r->severity = TS_NOTE;
	}
}

/* Who have lived together well prove that they can. */
static void ease_all(const struct ts_judging *w, const struct ts_plan_group *a,
	const struct ts_plan_group *b, struct ts_rulings *all)
{
	double days = fmin(ts_lived_well_days(w, a), ts_lived_well_days(w, b));

	for (size_t i = 0; i < all->count; i++)
		ease(&all->at[i], days, w->practice->value[TS_P_SETTLED_DAYS]);
}

/* That there are few of those who live there is to be known, and no fault of the tank. */
static void ease_few(struct ts_rulings *all)
{
	for (size_t i = 0; i < all->count; i++) {
		if (all->at[i].rule == TS_RULE_FEW && all->at[i].severity <= TS_CONCERN)
			all->at[i].severity = TS_NOTE;
	}
}

static void check_company(struct ts_judging *w)
{
	const struct ts_check *c = w->out;

	for (size_t i = 0; i < c->group_count; i++) {
		struct ts_rulings all; /* large: what is beyond its count is not cleared */

		all.count = 0;
		ts_rules_alone(&c->groups[i].group, &w->plan->tank, w->practice, &all);
		if (!c->groups[i].planned)
			ease_few(&all);
		add_all(w, &all);
		for (size_t j = i + 1; j < c->group_count && !w->arena->failed; j++) {
			all.count = 0;
			ts_rules_together(&c->groups[i].group, &c->groups[j].group, &w->plan->tank,
				w->practice, &all);
			ease_all(w, &c->groups[i], &c->groups[j], &all);
			add_all(w, &all);
		}
	}
}

void ts_judge_company(struct ts_judging *w)
{
	check_sides(w);
	check_floor(w);
	check_crowding(w);
	check_species_count(w);
	check_company(w);
}
