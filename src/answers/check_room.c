/* SPDX-License-Identifier: Apache-2.0 */
/*
 * What is said where the room of the tank decides: a plain no with the smallest tank that would do,
 * and what would do in this one. All figures are those of stock/smallest.c.
 */
#include "answers/check_parts.h"

#include <string.h>

#include "base/arena.h"
#include "stock/levels.h"
#include "stock/mending.h"
#include "stock/room.h"
#include "stock/rules.h"
#include "words/rulings.h"

static bool sensitive(const struct ts_group *g)
{
	return g->species->habits & TS_HABIT_NITRATE_SENSITIVE;
}

/* "150 x 70 cm (525 L)"; its height where that is more than such tanks have. */
static void put_tank(struct ts_text *text, const struct ts_smallest_tank *t, bool high)
{
	ts_text_number_short(text, t->length_cm, 0);
	ts_text_put(text, " x ");
	ts_text_number_short(text, t->width_cm, 0);
	if (high) {
		ts_text_put(text, " x ");
		ts_text_number_short(text, t->height_cm, 0);
	}
	ts_text_put(text, " cm (");
	ts_text_number_short(text, t->volume_l, 0);
	ts_text_put(text, " L)");
}

/* "; yours is 100 x 40", or what is known of it. */
static void put_yours(struct ts_text *text, const struct ts_tank *t, bool high)
{
	if (!(t->length_cm > 0)) {
		ts_text_put(text, "; yours holds ");
		ts_text_number_short(text, t->volume_l, 0);
		ts_text_put(text, " L");
		return;
	}
	ts_text_put(text, "; yours is ");
	ts_text_number_short(text, t->length_cm, 0);
	if (t->width_cm > 0) {
		ts_text_put(text, " x ");
		ts_text_number_short(text, t->width_cm, 0);
	}
	if (high && t->height_cm > 0) {
		ts_text_put(text, " x ");
		ts_text_number_short(text, t->height_cm, 0);
	}
}

static void put_animals(struct ts_text *text, const struct ts_group *g)
{
	double count = ts_group_count(g);

	ts_text_number_short(text, count, 0);
	ts_text_put(text, " ");
	(count > 1 ? ts_say_animals : ts_say_animal)(text, g->species);
}

/* Smaller than the smallest in one side or in litres: else the figure would answer nothing. */
static bool short_of(const struct ts_tank *t, const struct ts_smallest_tank *s, bool high)
{
	if (!(t->length_cm > 0))
		return t->volume_l < s->volume_l;
	return t->length_cm < s->length_cm || t->width_cm < s->width_cm ||
	       (high && t->height_cm < s->height_cm);
}

/* "Not for a home tank: iridescent sharks grow to 90 cm and need a tank 720 cm long." */
static void put_no_home(struct ts_check_work *w, const struct ts_plan_group *g)
{
	ts_text_put(&w->text, "Not for a home tank: ");
	ts_say_animals(&w->text, g->group.species);
	ts_text_put(&w->text, " grow to ");
	ts_text_number_short(&w->text, g->group.species->adult_length_cm, 0);
	ts_text_put(&w->text, " cm and need a tank ");
	ts_text_number_short(&w->text, ts_match_tank_length_cm(g->group.species), 0);
	ts_text_put(&w->text, " cm long.");
	w->out->of_room = true;
	w->room_said = true;
}

/* Of all together: the one that alone takes as large a tank; NULL: it takes all of them. */
static const struct ts_plan_group *who_takes_it(const struct ts_check_work *w)
{
	const struct ts_smallest_tank *all = &w->check.smallest;

	if (w->check.group_count == 1)
		return &w->check.groups[0];
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_group *g = &w->check.groups[i].group;
		struct ts_smallest_tank own;

		ts_smallest_tank(
			g, 1, sensitive(g), &w->question->plan->tank, w->asking->practice, &own);
		if (own.length_cm == all->length_cm && own.width_cm == all->width_cm)
			return &w->check.groups[i];
	}
	return NULL;
}

/* Whose room a fault is of. */
static const struct ts_plan_group *of_whom(const struct ts_check_work *w, const struct ts_ruling *r)
{
	return r->subject ? ts_check_group_of(&w->check, r->subject) : who_takes_it(w);
}

/* " The same goes for the common pleco.": of one size on a screen that of the first is said. */
static void put_too_large_as_well(struct ts_check_work *w, const struct ts_plan_group *first)
{
	size_t count = 0, said = 0;

	for (int pass = 0; pass < 2; pass++) {
		for (size_t i = 0; i < w->check.group_count; i++) {
			const struct ts_plan_group *g = &w->check.groups[i];

			if (g == first || !g->planned || !ts_check_too_large(w, &g->group))
				continue;
			if (!pass) {
				count++;
				continue;
			}
			ts_check_put_alike(w, g->group.species, said++, count);
		}
	}
	ts_text_put(&w->text, count ? "." : "");
}

bool ts_check_says_room(struct ts_check_work *w, const struct ts_ruling *r, const char *before)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	const struct ts_plan_group *g = of_whom(w, r);
	struct ts_smallest_tank smallest = w->check.smallest;
	bool high = r->rule == TS_RULE_TANK_HEIGHT;

	if (g && ts_check_no_home(r) && !before) {
		put_no_home(w, g);
		return true;
	}
	/* Litres alone leave it open: measure the tank. */
	if (r->rule == TS_RULE_TANK_UNMEASURED ? r->severity < TS_CONFLICT
					       : !ts_rule_of_room(r->rule))
		return false;
	if (r->rule == TS_RULE_CROWDED)
		return false;
	if (g)
		ts_smallest_tank(
			&g->group, 1, sensitive(&g->group), tank, w->asking->practice, &smallest);
	if (!(smallest.length_cm > 0) || !short_of(tank, &smallest, high))
		return false;
	ts_text_put(&w->text, before                       ? before
			      : r->severity == TS_CONFLICT ? "Not in this tank: "
							   : "Better in a larger tank: ");
	if (g)
		put_animals(&w->text, &g->group);
	else
		ts_text_put(&w->text, "these together");
	ts_text_put(&w->text, g && ts_group_count(&g->group) == 1 ? " needs " : " need ");
	put_tank(&w->text, &smallest, high);
	put_yours(&w->text, tank, high);
	ts_text_put(&w->text, ".");
	if (g && g->planned && r->severity == TS_CONFLICT && !before)
		put_too_large_as_well(w, g);
	w->out->of_room = true;
	w->said_tank = smallest;
	w->room_said = smallest.length_cm == w->check.smallest.length_cm &&
		       smallest.width_cm == w->check.smallest.width_cm;
	return true;
}

/* The tank with the sides that it has, or usually has. */
static struct ts_tank with_sides(const struct ts_check_work *w)
{
	struct ts_tank tank = w->question->plan->tank;

	if (!(tank.length_cm > 0) && tank.volume_l > 0)
		ts_room_usual_sides(tank.volume_l, &tank);
	return tank;
}

/* Far short of the smallest, and no near miss. */
static bool far_short_of(const struct ts_check_work *w, const struct ts_smallest_tank *s)
{
	const struct ts_tank tank = with_sides(w);
	double enough = w->asking->practice->value[TS_P_ROOM_CONFLICT];
	struct ts_smallest_tank least = {
		s->length_cm * enough, s->width_cm * enough, s->height_cm * enough, 0};

	return tank.length_cm > 0 && short_of(&tank, &least, false);
}

/* The same of litres, where no sides were given. */
static bool too_few_litres(const struct ts_check_work *w, const struct ts_smallest_tank *s)
{
	const struct ts_tank *tank = &w->question->plan->tank;

	return !(tank->length_cm > 0) &&
	       tank->volume_l < w->asking->practice->value[TS_P_ROOM_CONFLICT] * s->volume_l;
}

/* Nothing of the room is short for so many, nor would their own tank be larger. */
static bool roomy(const struct ts_check_work *w, const struct ts_group *group)
{
	struct ts_rulings all = {.count = 0};
	struct ts_smallest_tank own;

	ts_smallest_tank(
		group, 1, sensitive(group), &w->question->plan->tank, w->asking->practice, &own);
	if (own.length_cm > 0 && (far_short_of(w, &own) || too_few_litres(w, &own)))
		return false;
	ts_rules_alone(group, &w->question->plan->tank, w->asking->practice, &all);
	for (size_t i = 0; i < all.count; i++) {
		if (ts_rule_of_room(all.at[i].rule) || all.at[i].severity >= TS_CONCERN)
			return false;
	}
	return true;
}

/* Litres below which one kind of fish is company enough: common practice, no source. */
#define ONE_KIND_L 45

/* "The betta alone is fine in it.": what a small tank does hold. */
static bool say_rest(struct ts_check_work *w, const struct ts_plan_group *gone)
{
	const struct ts_plan_group *rest;

	if (!gone || !gone->planned || w->check.group_count != 2 ||
		!(ts_rule_sold_l(&w->question->plan->tank, w->asking->practice) < ONE_KIND_L) ||
		!ts_check_rest_is_sound(w, gone->group.species))
		return false;
	rest = &w->check.groups[gone == &w->check.groups[0]];
	if (ts_group_count(&rest->group) > 1)
		ts_text_put(&w->text, "The ");
	else
		ts_text_put(&w->text, "A ");
	ts_check_put_bought(w, rest->group.species);
	ts_text_put(&w->text, ts_group_count(&rest->group) > 1 ? " alone are fine in it."
							       : " alone is fine in it.");
	w->out->instead_says = ts_asking_keep(w->asking, &w->text);
	w->rest_said = true;
	return true;
}

/*
 * Somebody that lives in too little room: how soon, and what keeps it alive until then. A bowl, or
 * a tank without a filter, fouls within days whatever is changed once a week.
 */
static const char *home_in_time(const struct ts_check_work *w, const struct ts_plan_group *g)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	const bool bowl = ts_rule_sold_l(tank, w->asking->practice) < ONE_KIND_L ||
			  tank->filter == TS_FILTER_NONE;

	if (!ts_check_far_too_small(w, &g->group))
		return "a larger tank in time, or another home";
	if (bowl)
		return "See to such a tank, or another home, within days or a few weeks; until "
		       "then "
		       "a filter or an air stone that runs day and night, a quarter of the water "
		       "every second day for treated water of the same warmth, little food, and "
		       "ammonia tested";
	return "See to such a tank, or another home, now; small ones may stay some months, with "
	       "half the water changed every week until then";
}

const char *ts_check_room_instead(struct ts_check_work *w, const struct ts_ruling *r)
{
	const struct ts_plan_group *g = of_whom(w, r);
	struct ts_level levels[TS_LEVELS_MOST];
	size_t count = g ? ts_levels(g->group.species, levels) : 0;

	while (count--) {
		if (levels[count].crowd ||
			ts_group_count(&levels[count].group) >= ts_group_count(&g->group) ||
			!roomy(w, &levels[count].group))
			continue;
		ts_text_put(&w->text, "room for ");
		put_animals(&w->text, &levels[count].group);
		if (ts_group_count(&levels[count].group) == 2 &&
			g->group.species->to_own_kind != TS_IGNORES)
			ts_text_put(&w->text, " (a male and a female)");
		ts_text_put(&w->text, ", not for more");
		return ts_asking_keep(w->asking, &w->text);
	}
	/* Fewer would not do: the others, or another animal, and of the water where that is not its
	 * own either. */
	if (say_rest(w, g))
		w->out->repair_said = true;
	else if (g && g->planned && g->way != TS_WAY_NONE &&
		 ts_check_name_for_water(w, g->group.species->kind))
		w->out->repair_said = true;
	else
		ts_check_instead(w, r);
	if (g && !g->planned)
		return home_in_time(w, g);
	if (!g)
		return "one kind fewer, or such a tank";
	ts_text_put(&w->text, "do not buy the ");
	ts_check_put_bought(w, g->group.species);
	ts_text_put(&w->text, ts_check_no_home(r) ? "" : " for this tank");
	return ts_asking_keep(w->asking, &w->text);
}

/* Of the litres that they need the tank holds less: no matter of time any more. */
#define FAR_TOO_FEW 0.25

bool ts_check_far_too_small(const struct ts_check_work *w, const struct ts_group *group)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	struct ts_smallest_tank own;
	double litres = ts_rule_sold_l(tank, w->asking->practice);

	ts_smallest_tank(group, 1, sensitive(group), tank, w->asking->practice, &own);
	return litres > 0 && own.volume_l > 0 && litres < FAR_TOO_FEW * own.volume_l;
}

bool ts_check_too_large(const struct ts_check_work *w, const struct ts_group *group)
{
	struct ts_smallest_tank own;

	ts_smallest_tank(
		group, 1, sensitive(group), &w->question->plan->tank, w->asking->practice, &own);
	return own.length_cm > 0 && far_short_of(w, &own);
}

bool ts_check_more_fit(struct ts_check_work *w, const struct ts_species *species, double more)
{
	struct ts_group groups[TS_REMEDIES_TRIED];
	const struct ts_tank tank = with_sides(w);
	struct ts_smallest_tank smallest;

	if (!(tank.length_cm > 0))
		return true;
	if (!(more > 0) || w->check.group_count > TS_REMEDIES_TRIED)
		return false;
	for (size_t i = 0; i < w->check.group_count; i++) {
		groups[i] = w->check.groups[i].group;
		if (groups[i].species == species)
			groups[i].either += (unsigned)more;
	}
	ts_smallest_tank(groups, w->check.group_count, w->check.nitrate_sensitive, &tank,
		w->asking->practice, &smallest);
	return smallest.length_cm > 0 && !short_of(&tank, &smallest, false);
}

static const char *too_small(
	struct ts_check_work *w, const struct ts_plan_group *g, const struct ts_smallest_tank *need)
{
	w->said_tank = *need;
	ts_text_put(&w->text, "too small a tank: ");
	put_animals(&w->text, &g->group);
	ts_text_put(&w->text, ts_group_count(&g->group) == 1 ? " needs " : " need ");
	put_tank(&w->text, need, false);
	put_yours(&w->text, &w->question->plan->tank, false);
	return ts_asking_keep(w->asking, &w->text);
}

const struct ts_species *ts_check_takes_most(
	const struct ts_check_work *w, const struct ts_species *gone)
{
	const struct ts_species *most = NULL;
	double litres = 0;

	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_group *g = &w->check.groups[i].group;
		struct ts_smallest_tank own;

		ts_smallest_tank(
			g, 1, sensitive(g), &w->question->plan->tank, w->asking->practice, &own);
		if (g->species == gone || !(own.volume_l > litres))
			continue;
		litres = own.volume_l;
		most = g->species;
	}
	return most;
}

const char *ts_check_too_small_for(struct ts_check_work *w, const struct ts_species *species)
{
	const struct ts_plan_group *g = ts_check_group_of(&w->check, species);
	struct ts_smallest_tank own;

	if (!g)
		return NULL;
	ts_smallest_tank(&g->group, 1, sensitive(&g->group), &w->question->plan->tank,
		w->asking->practice, &own);
	return own.length_cm > 0 && short_of(&w->question->plan->tank, &own, false)
		       ? too_small(w, g, &own)
		       : NULL;
}

const char *ts_check_too_small(struct ts_check_work *w)
{
	const struct ts_plan_group *worst = NULL;
	struct ts_smallest_tank need = {0};

	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_plan_group *g = &w->check.groups[i];
		bool stays = !ts_check_goes(w, g->group.species);
		bool before = worst && !ts_check_goes(w, worst->group.species);
		struct ts_smallest_tank own;

		ts_smallest_tank(&g->group, 1, sensitive(&g->group), &w->question->plan->tank,
			w->asking->practice, &own);
		if (!(own.length_cm > 0) || !far_short_of(w, &own) || (before && !stays) ||
			(before == stays && worst && own.volume_l <= need.volume_l))
			continue;
		worst = g;
		need = own;
	}
	return worst ? too_small(w, worst, &need) : NULL;
}

static bool room_asked(const struct ts_check_work *w)
{
	for (size_t i = 0; i < w->entry_count; i++) {
		const struct ts_ruling *r = w->entries[i].ruling;

		if (r && (r->rule == TS_RULE_TANK_UNKNOWN ||
				 (r->severity >= TS_CONCERN && r->remedy.kind == TS_REMEDY_TANK &&
					 r->remedy.length_cm > 0)))
			return true;
	}
	return false;
}

/* The longest tank that one of them wants, cm. */
static double wanted_cm(const struct ts_check_work *w)
{
	double most = 0;

	for (size_t i = 0; i < w->check.group_count; i++)
		most = fmax(most, ts_match_tank_length_cm(w->check.groups[i].group.species));
	return most;
}

/* Tanks of so many litres may be as short as twice their width and height. */
#define SHORTEST_BY_SIDE 2

const char *ts_check_sides_taken(struct ts_check_work *w)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	double wanted = wanted_cm(w);
	struct ts_tank usual;
	bool nearly;

	if (tank->length_cm > 0 || !(tank->volume_l > 0) ||
		wanted <= SHORTEST_BY_SIDE * cbrt(tank->volume_l * 1000 / SHORTEST_BY_SIDE))
		return NULL;
	ts_room_usual_sides(tank->volume_l, &usual);
	nearly = usual.length_cm < wanted;
	ts_text_put(&w->text, nearly ? "The tank is taken as " : "If the tank is ");
	ts_text_number_short(&w->text, nearly ? usual.length_cm : wanted, 0);
	ts_text_put(&w->text, nearly ? " cm long, as " : " cm long: measure it. ");
	ts_text_number_short(&w->text, tank->volume_l, 0);
	ts_text_put(
		&w->text, nearly ? " litres usually are, nearly the " : " litres are taken as ");
	ts_text_number_short(&w->text, nearly ? wanted : usual.length_cm, 0);
	ts_text_put(&w->text, nearly ? " cm that they want: measure it." : " x ");
	if (!nearly) {
		ts_text_number_short(&w->text, usual.width_cm, 0);
		ts_text_put(&w->text, " cm, as such tanks usually are.");
	}
	return ts_asking_keep(w->asking, &w->text);
}

/* "The smallest tank that would do: 80 x 35 cm, 35 cm high, 98 litres."; what it is for is in the
 * text. */
static void put_smallest(struct ts_check_work *w, const struct ts_smallest_tank *t)
{
	const double figures[] = {t->length_cm, t->width_cm, t->height_cm, t->volume_l};
	static const char *const before[] = {": ", " x ", " cm, ", " cm high, "};

	if (!w->text.len)
		ts_text_put(&w->text, "The smallest tank that would do");
	for (size_t i = 0; i < 4; i++) {
		ts_text_put(&w->text, before[i]);
		ts_text_number_short(&w->text, figures[i], 0);
	}
	ts_text_put(&w->text, " litres.");
	w->out->room_says = ts_asking_keep(w->asking, &w->text);
}

/* The first line's own deed is a tank. */
static bool tank_said(const struct ts_check_work *w)
{
	const struct ts_check_judgement *first = w->out->first;

	return first && first->remedy && first->remedy->length_cm > 0;
}

/* No tank was given, and some are not to be bought: the tank of the others, who are named. */
static void put_room_of_rest(struct ts_check_work *w)
{
	const struct ts_tank *tank = &w->question->plan->tank;
	struct ts_group rest[TS_REMEDIES_TRIED];
	struct ts_smallest_tank smallest;
	bool tender = false;
	size_t count = 0, said = 0;

	if (tank->length_cm > 0 || tank->volume_l > 0 || w->check.group_count > TS_REMEDIES_TRIED)
		return;
	for (size_t i = 0; i < w->check.group_count; i++) {
		const struct ts_group *g = &w->check.groups[i].group;

		if (ts_check_goes(w, g->species))
			continue;
		tender |= sensitive(g);
		rest[count++] = *g;
	}
	if (!count || count == w->check.group_count)
		return;
	ts_smallest_tank(rest, count, tender, tank, w->asking->practice, &smallest);
	if (!(smallest.length_cm > 0))
		return;
	for (; said < count; said++) {
		ts_text_put(&w->text, !said               ? "The smallest tank for the "
				      : said + 1 == count ? " and the "
							  : ", the ");
		ts_check_put_bought(w, rest[said].species);
	}
	put_smallest(w, &smallest);
}

void ts_check_room(struct ts_check_work *w)
{
	const struct ts_smallest_tank *t = &w->check.smallest;
	struct ts_check_tank *out;

	if (strcmp(w->out->kind, ts_check_kind_words[TS_CHECK_IF]) == 0)
		w->out->room_says = ts_check_sides_taken(w);

	if (!w->check.group_count || !(t->length_cm > 0))
		return;
	out = w->out->smallest_tank = ts_arena_take(w->asking->arena, sizeof *out);
	if (!out)
		return;
	*out = (struct ts_check_tank){t->length_cm, t->width_cm, t->height_cm, t->volume_l};
	if (w->room_said || !room_asked(w) || tank_said(w))
		return;
	/* Of a no the reasons say it, where a larger tank would mend anything. */
	if (strcmp(w->out->kind, ts_check_kind_words[TS_CHECK_NO]) == 0) {
		put_room_of_rest(w);
		return;
	}
	put_smallest(w, t);
}
