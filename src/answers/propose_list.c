/* SPDX-License-Identifier: Apache-2.0 */
/*
 * One list told: why this one, its animals, the water that all share, what they make of it, what is
 * bought first.
 */
#include "answers/propose_list.h"

#include <string.h>

#include "model/practice.h"
#include "stock/compose.h"
#include "stock/rules.h"
#include "words/rulings.h"
#include "words/sentence.h"

/* A cichlid of this length at the most is a dwarf. */
#define DWARF_CM 10
/* In the order of the word lists of model/shapes.c. */
enum { BOTTOM_ANY, BOTTOM_SMOOTH, BOTTOM_SAND };

static const char *keep(struct ts_proposing *w)
{
	return ts_asking_keep(w->asking, &w->text);
}

static void number(struct ts_text *text, double value, int decimals)
{
	ts_text_number_short(text, value, decimals);
}

static bool all_males(const struct ts_group *l)
{
	return l->males && !l->females && !l->either;
}

/*
 * Whose sexes can be told in a shop: livebearers, labyrinth fish and the dwarf cichlids by colour
 * and fins; common practice, no source. The others grow up together.
 */
static bool sexes_are_told(const struct ts_species *s)
{
	static const char *const families[] = {"Poeciliidae", "Goodeidae", "Osphronemidae",
		"Nothobranchiidae", "Aplocheilidae", "Eleotridae"};

	for (size_t i = 0; i < sizeof families / sizeof *families; i++) {
		if (strcmp(s->family, families[i]) == 0)
			return true;
	}
	return strcmp(s->family, "Cichlidae") == 0 && s->adult_length_cm <= DWARF_CM &&
	       !s->lakes_apart;
}

static void put_sexes(struct ts_text *text, const struct ts_group *l)
{
	if (all_males(l)) {
		ts_text_put(text, ", all males");
		return;
	}
	if (l->males && l->females && !sexes_are_told(l->species)) {
		ts_text_put(text, l->males == 1 && l->females == 1 ? ", a settled pair"
								   : ", more females than males");
		return;
	}
	if (l->males || l->females) {
		ts_text_put(text, ": ");
		number(text, l->males, 0);
		ts_text_put(text, l->males == 1 ? " male" : " males");
	}
	if (l->females) {
		ts_text_put(text, ", ");
		number(text, l->females, 0);
		ts_text_put(text, l->females == 1 ? " female" : " females");
	}
}

void ts_propose_say_company(struct ts_text *text, const struct ts_company *line)
{
	const struct ts_species *s = line->candidacy->match.species;
	const char *common = ts_answer_common(s);

	number(text, ts_group_count(&line->group), 0);
	ts_text_puts(text, " ", common ? common : s->species, common ? " (" : "",
		common ? s->species : "", s->form ? ", " : "", s->form ? s->form : "",
		common ? ")" : "", NULL);
	put_sexes(text, &line->group);
	if (line->there) {
		ts_text_put(text, "; ");
		number(text, line->there, 0);
		ts_text_put(text, " of them there already");
	}
}

void ts_propose_say_limiting(struct ts_text *text, const struct ts_community *c)
{
	const struct ts_match *m = &c->lines[c->limiting].candidacy->match;

	if (m->limiting < 0) {
		ts_text_put(text, "all of them are comfortable in your water");
		return;
	}
	ts_say_animal(text, m->species);
	ts_text_put(text, ": ");
	ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
}

static unsigned role_of(const struct ts_proposing *w, const struct ts_company *line)
{
	const struct ts_species *s = line->candidacy->match.species;

	return s == w->wish.centre ? TS_ROLE_CENTRE : ts_compose_role(s, w->wish.theme);
}

static const char *role_word(unsigned role)
{
	switch (role) {
	case TS_ROLE_CENTRE:
		return "centre";
	case TS_ROLE_SHOAL:
		return "shoal";
	case TS_ROLE_BOTTOM:
		return "bottom";
	case TS_ROLE_TOP:
		return "top";
	default:
		return NULL;
	}
}

/* Where those of a role live, in words; one kind, several. */
struct place {
	unsigned role;
	bool later;
	const char *behind;
};
static const struct place places[] = {{TS_ROLE_SHOAL, false, " in the middle"},
	{TS_ROLE_BOTTOM, false, " below"}, {TS_ROLE_TOP, false, " under the surface"},
	{TS_ROLE_CENTRE, false, " to look at"}, {0, false, " beside them"},
	{0, true, " after eight weeks"}};

#define PLACES (sizeof places / sizeof *places)
#define CENTRE_PLACE 3

/* In which order they are told: what the list is to be built around goes first. */
static const struct place *place_at(const struct ts_proposing *w, size_t at)
{
	if (!w->wish.centre || at > CENTRE_PLACE)
		return &places[at];
	return &places[at ? at - 1 : CENTRE_PLACE];
}

static bool stands_in(
	const struct ts_proposing *w, const struct ts_company *line, const struct place *place)
{
	return role_of(w, line) == place->role && (place->role || line->later == place->later);
}

/* What of the GH is at or next to the end of what it likes: it never leads, and it is said. */
static bool at_its_end(const struct ts_proposing *w, const struct ts_company *line)
{
	return w->profile.at[TS_GH].given &&
	       !ts_compose_spares_gh(&line->candidacy->match, &w->profile,
		       w->asking->practice->value[TS_P_PROPOSE_ROOM_GH]);
}

void ts_propose_put_kind(struct ts_proposing *w, const struct ts_company *line)
{
	const struct ts_species *s = line->candidacy->match.species;

	if (all_males(&line->group))
		ts_text_put(&w->text, "male ");
	if (ts_group_count(&line->group) > 1)
		ts_say_animals(&w->text, s);
	else
		ts_say_animal(&w->text, s);
}

/* "20 glowlight tetras and 10 neon tetras": those of one place; returns how many kinds. */
static size_t put_place(
	struct ts_proposing *w, const struct ts_community *c, const struct place *place)
{
	size_t kinds = 0, put = 0;

	for (size_t i = 0; i < c->count; i++)
		kinds += stands_in(w, &c->lines[i], place);
	for (size_t k = 0; k < 2 * c->count; k++) {
		const struct ts_company *line = &c->lines[k % c->count];

		if (!stands_in(w, line, place) || at_its_end(w, line) != (k >= c->count))
			continue;
		ts_text_put(&w->text, !put ? "" : put + 1 == kinds ? " and " : ", ");
		number(&w->text, ts_group_count(&line->group), 0);
		ts_text_put(&w->text, " ");
		ts_propose_put_kind(w, line);
		put++;
	}
	return kinds;
}

/* Where the water lies beyond what all like, both stand there. */
static void put_yours(struct ts_proposing *w, const struct ts_shared *gh)
{
	double yours = w->profile.at[TS_GH].value;

	if (yours <= gh->range.high && yours >= gh->range.low)
		return;
	ts_text_put(&w->text, " (yours is ");
	number(&w->text, yours, 1);
	ts_text_put(&w->text, ")");
}

static void put_warmth(struct ts_proposing *w, const struct ts_shared *warm)
{
	if (!warm->known || !(warm->range.high > warm->range.low))
		return;
	ts_text_put(&w->text, ", ");
	number(&w->text, warm->range.low, 1);
	ts_text_put(&w->text, " to ");
	number(&w->text, warm->range.high, 1);
	ts_text_put(&w->text, " C");
}

static bool of_a_lake(const struct ts_community *c)
{
	for (size_t i = 0; i < c->count; i++) {
		if (c->lines[i].group.species->kind == TS_ANIMAL_FISH &&
			!ts_compose_of_rift_lake(c->lines[i].group.species))
			return false;
	}
	return c->count && c->lines[0].group.species->kind == TS_ANIMAL_FISH;
}

static bool among_stones(const struct ts_community *c)
{
	for (size_t i = 0; i < c->count; i++) {
		if (!ts_compose_of_the_rocks(c->lines[i].group.species))
			return false;
	}
	return c->count > 0;
}

/* Whether all of a place are at the end of what they like: those at home lead, extras end. */
static bool put_off(
	const struct ts_proposing *w, const struct ts_community *c, const struct place *place)
{
	for (size_t i = 0; i < c->count && place->role; i++) {
		if (stands_in(w, &c->lines[i], place) && !at_its_end(w, &c->lines[i]))
			return false;
	}
	return true;
}

static bool of_shrimps(const struct ts_community *c)
{
	for (size_t i = 0; i < c->count; i++) {
		if (c->lines[i].group.species->kind != TS_ANIMAL_SHRIMP)
			return false;
	}
	return c->count > 0;
}

/* Where those of a place are, in words; who lives alone is beside nobody. */
static const char *where(
	const struct ts_proposing *w, const struct ts_community *c, const struct place *place)
{
	if (w->wish.theme == TS_THEME_SHRIMPS || of_shrimps(c))
		return " all over the tank";
	if (among_stones(c))
		return " among stones";
	return c->count == 1 && !place->role && !place->later ? " alone" : place->behind;
}

/* "20 glowlight tetras in the middle, 6 bronze corys below, 4 honey gouramis to look at; ..." */
static const char *why(struct ts_proposing *w, const struct ts_community *c)
{
	const struct ts_shared *gh = &c->shared[TS_GH];
	bool any = false;

	for (size_t i = 0; i < 2 * PLACES; i++) {
		const struct place *place = place_at(w, i % PLACES);
		size_t before = w->text.len;

		if (put_off(w, c, place) != (i >= PLACES))
			continue;
		ts_text_put(&w->text, any ? ", " : "");
		if (!put_place(w, c, place)) {
			w->text.len = before;
			continue;
		}
		ts_text_put(&w->text, where(w, c, place));
		any = true;
	}
	if (of_a_lake(c))
		ts_text_put(&w->text, ", fish of a rift lake, which are kept among their own");
	/* Of any usual tap the ends are said already. */
	if (gh->known && isfinite(gh->range.high) && !w->out->thin) {
		ts_text_put(&w->text, c->count == 1     ? "; at home at GH "
				      : gh->comfortable ? "; all like GH "
							: "; all can live at GH ");
		number(&w->text, fmax(gh->range.low, 0), 0);
		ts_text_put(&w->text, " to ");
		number(&w->text, gh->range.high, 0);
		put_yours(w, gh);
		put_warmth(w, &c->shared[TS_TEMPERATURE]);
	}
	ts_text_put(&w->text, ".");
	return keep(w);
}

/* "; likes GH 8 to 24, and yours is 24: at its end". */
static void put_end(struct ts_proposing *w, const struct ts_company *line)
{
	const struct ts_range *gh = &line->candidacy->match.species->water.usual.gh_dh.preferred;
	const struct ts_span *yours = &w->profile.at[TS_GH];

	if (!at_its_end(w, line) || w->out->thin || yours->value < gh->low ||
		yours->value > gh->high)
		return;
	ts_text_put(&w->text, "; likes GH ");
	number(&w->text, gh->low, 0);
	ts_text_put(&w->text, " to ");
	number(&w->text, gh->high, 0);
	ts_text_put(&w->text, ": yours, ");
	number(&w->text, yours->value, 1);
	ts_text_put(&w->text, ", leaves hardly any room");
}

/* What is not told by size, sexes or lid: how a pair is had, and what lies on the floor. */
static void put_keeping(struct ts_proposing *w, const struct ts_group *g)
{
	const struct ts_species *s = g->species;

	if (g->males == 1 && g->females == 1 && !sexes_are_told(s))
		ts_text_put(&w->text, "; buy two that are a pair already: young ones raised "
				      "together end as a pair and its victims");
	if (ts_compose_of_the_rocks(s))
		ts_text_put(&w->text, "; hides among piled stones");
	if (ts_compose_of_the_shells(s))
		ts_text_put(&w->text, "; lives in empty snail shells, one or two for each");
	if (s->feeding == TS_FED_WOOD)
		ts_text_put(&w->text, "; wants wood to rasp, greens and a cave");
	if (s->feeding == TS_FED_GREENS)
		ts_text_put(&w->text, "; wants greens every day");
	if (s->feeding == TS_FED_FROZEN)
		ts_text_put(&w->text, s->swims == TS_SWIMS_BOTTOM && s->territory.per == TS_PER_PAIR
					      ? "; wants frozen food and a cave"
					      : "; wants frozen food");
	if (s->needs.bottom)
		ts_text_put(&w->text,
			s->needs.bottom == BOTTOM_SAND ? "; on sand" : "; on sand or fine gravel");
}

static struct ts_propose_line_result line_of(struct ts_proposing *w, const struct ts_company *line)
{
	const struct ts_match *m = &line->candidacy->match;
	const struct ts_species *s = m->species;
	struct ts_texts know = ts_answer_to_know(w->asking->arena, s);
	struct ts_propose_line_result r = {.species = s->species,
		.id = ts_answer_id(w->asking->arena, s->file),
		.common = ts_answer_common(s),
		.role = role_word(role_of(w, line)),
		.count = ts_group_count(&line->group),
		.males = line->group.males,
		.females = line->group.females,
		.there = line->there,
		.later = line->later,
		.fit = m->fit};

	ts_propose_say_company(&w->text, line);
	r.says = keep(w);
	ts_text_put(&w->text, "grows to ");
	number(&w->text, s->adult_length_cm, 1);
	ts_text_put(&w->text, " cm; grown it needs ");
	number(&w->text, ts_match_tank_length_cm(s), 0);
	ts_text_put(&w->text, " cm of length");
	for (size_t i = 0, said = 0; i < know.count; i++) {
		bool none = all_males(&line->group) ||
			    (ts_group_count(&line->group) == 1 && s->kind == TS_ANIMAL_FISH);

		if (strcmp(know.items[i], ts_to_know_breeds) == 0 && none)
			continue;
		ts_text_puts(&w->text, said++ ? ", " : "; ", know.items[i], NULL);
	}
	put_end(w, line);
	put_keeping(w, &line->group);
	if (line->later)
		ts_text_put(&w->text, "; when the tank has run for eight weeks");
	r.needs = keep(w);
	r.parameters = ts_answer_parameters(w->asking->arena, m, &w->profile, &r.parameter_count);
	return r;
}

static void put_ends(struct ts_text *text, const struct ts_shared *s)
{
	if (s->low_by && s->low_by == s->high_by) {
		ts_text_put(text, ", both ends set by ");
		ts_say_animal(text, s->low_by);
		return;
	}
	if (s->low_by) {
		ts_text_put(text, ", the low end set by ");
		ts_say_animal(text, s->low_by);
	}
	if (s->high_by) {
		ts_text_put(text, ", the high end by ");
		ts_say_animal(text, s->high_by);
	}
}

/* NULL where nobody's band is known, or where memory ran out. */
static const struct ts_propose_shared_result *shared_of(
	struct ts_proposing *w, const struct ts_community *c, int p)
{
	const struct ts_shared *s = &c->shared[p];
	struct ts_propose_shared_result *r =
		s->known ? ts_arena_take(w->asking->arena, sizeof *r) : NULL;

	if (!r)
		return NULL;
	*r = (struct ts_propose_shared_result){.unit = ts_parameter_rows[p].unit,
		.low = s->range.low,
		.high = s->range.high,
		.low_set_by = s->low_by ? s->low_by->species : NULL,
		.high_set_by = s->high_by ? s->high_by->species : NULL,
		.comfortable = s->comfortable,
		.label = ts_parameter_rows[p].label};
	ts_say_range(&w->text, &s->range, ts_parameter_rows[p].decimals);
	if (*ts_parameter_rows[p].unit)
		ts_text_puts(&w->text, " ", ts_parameter_rows[p].unit, NULL);
	put_ends(&w->text, s);
	ts_text_put(
		&w->text, s->comfortable ? "" : " (tolerated by all, preferred by none together)");
	r->says = keep(w);
	return r;
}

static void load(
	struct ts_proposing *w, const struct ts_community *c, struct ts_propose_load_result *ret)
{
	*ret = (struct ts_propose_load_result){.nitrogen_mg_day = c->nitrogen_mg_day,
		.nitrogen_most_mg_day = w->p.nitrogen_most_mg_day,
		.no3_rise_mg_l_week = c->load.no3_rise_mg_l_week.value,
		.no3_steady_mg_l = c->load.no3_steady_mg_l.value,
		.kh_used_dh_week = c->load.kh_used_dh_week.value,
		.buffer_days = c->load.buffer_days.value};
	ts_text_put(&w->text, "nitrate rises ");
	number(&w->text, ret->no3_rise_mg_l_week, 0);
	ts_text_put(&w->text, " mg/L a week and ");
	if (isfinite(ret->no3_steady_mg_l)) {
		ts_text_put(&w->text, "settles at ");
		number(&w->text, ret->no3_steady_mg_l, 0);
		ts_text_put(&w->text, " mg/L before a change");
	} else {
		ts_text_put(&w->text, "has no end: no water is changed");
	}
	ret->waste_says = keep(w);
	if (isnan(ret->buffer_days)) {
		ts_text_put(&w->text, "not known without KH");
	} else if (!(ret->buffer_days > 0)) {
		ts_text_put(&w->text, "there is next to none: see above");
	} else {
		number(&w->text, ret->buffer_days, 0);
		ts_text_put(&w->text, " days without a change");
	}
	ret->buffer_says = keep(w);
}

static const char *heading(struct ts_proposing *w, const struct ts_community *c, size_t place)
{
	ts_text_put(&w->text, "List ");
	number(&w->text, (double)place + 1, 0);
	if (place && c->equal)
		ts_text_put(&w->text, ", as good as the first");
	if (!c->proven)
		ts_text_put(&w->text, ", not proven to be the best");
	return keep(w);
}

void ts_propose_list(struct ts_proposing *w, size_t place, struct ts_propose_community_result *r)
{
	const struct ts_community *c = &w->p.lists[place];
	const struct ts_match *worst = &c->lines[c->limiting].candidacy->match;

	*r = (struct ts_propose_community_result){.place = place + 1,
		.objective = (double)c->points,
		.gap = (double)(c->at_most - c->points),
		.proven = c->proven,
		.equal_to_first = c->equal,
		.heading = heading(w, c, place),
		.stock = ts_arena_array(w->asking->arena, c->count, sizeof *r->stock)};
	r->why = why(w, c);
	for (int first = 1; r->stock && first >= 0; first--) {
		for (size_t i = 0; i < c->count; i++) {
			bool centre = c->lines[i].group.species == w->wish.centre;

			if (centre == first)
				r->stock[r->stock_count++] = line_of(w, &c->lines[i]);
		}
	}
	r->shared = (struct ts_propose_shared_water_result){shared_of(w, c, TS_GH),
		shared_of(w, c, TS_KH), shared_of(w, c, TS_PH), shared_of(w, c, TS_TEMPERATURE),
		shared_of(w, c, TS_SALINITY)};
	load(w, c, &r->load);
	for (size_t i = 0; i < c->order_count; i++)
		ts_asking_note(w->asking, &r->order,
			c->lines[c->order[i]].candidacy->match.species->species);
	if (w->out->thin)
		ts_text_put(&w->text, "not known before GH was read");
	else
		ts_propose_say_limiting(&w->text, c);
	r->limiting = (struct ts_propose_limiting_result){
		worst->limiting < 0 ? NULL : worst->species->species,
		worst->limiting < 0 ? NULL : ts_parameter_rows[worst->limiting].key, keep(w)};
	if (w->p.conditions)
		ts_propose_conditions(w, c, &r->conditions);
	ts_propose_purchases(w, c, r);
}
