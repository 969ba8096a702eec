/* SPDX-License-Identifier: Apache-2.0 */
/*
 * propose for people: verdict, deciding number, the lists, what to buy first, who waits for what.
 */
#include "cli/propose.h"

#include <string.h>

#include "words/rulings.h"
#include "words/sentence.h"

static void number(struct ts_text *text, double value, int decimals)
{
	ts_text_number_short(text, value, decimals);
}

void propose_say_company(struct ts_text *text, const struct ts_company *line)
{
	const struct ts_group *l = &line->group;

	number(text, ts_group_count(l), 0);
	ts_text_put(text, " ");
	say_name(text, line->candidacy->match.species);
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
	if (line->there) {
		ts_text_put(text, "; ");
		number(text, line->there, 0);
		ts_text_put(text, " of them there already");
	}
}

void propose_say_shared(struct ts_text *text, int parameter, const struct ts_shared *s)
{
	ts_say_range(text, &s->range, ts_parameter_rows[parameter].decimals);
	if (*ts_parameter_rows[parameter].unit)
		ts_text_puts(text, " ", ts_parameter_rows[parameter].unit, NULL);
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

void propose_say_limiting(struct ts_text *text, const struct ts_community *c)
{
	const struct ts_match *m = &c->lines[c->limiting].candidacy->match;

	if (m->limiting < 0) {
		ts_text_put(text, "every animal is inside its comfortable range");
		return;
	}
	ts_say_animal(text, m->species);
	ts_text_put(text, ": ");
	ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
}

static void say_unsure(
	struct ts_text *text, const struct ts_match *m, const struct ts_profile *profile)
{
	if (m->gh_missing) {
		ts_text_put(text, "unsure: it waits for GH");
		return;
	}
	ts_text_put(text, "unsure: ");
	if (!isnan(m->oxygen_borne_mg_l))
		ts_say_little_oxygen(text, m, profile);
	else if (m->limiting >= 0)
		ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else
		ts_text_put(text, "a reading is missing");
}

static void say_by_water(
	struct ts_text *text, const struct propose_answer *a, const struct ts_match *m)
{
	ts_text_put(text, "the water excludes it: ");
	if (m->limiting >= 0)
		ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	else
		ts_say_copper(text, m, &a->answer.profile);
}

void propose_say_left_out(
	struct ts_text *text, const struct propose_answer *a, const struct ts_candidacy *c)
{
	switch (c->left_out) {
	case TS_LEFT_BY_WATER:
		say_by_water(text, a, &c->match);
		break;
	case TS_LEFT_UNSURE:
		say_unsure(text, &c->match, &a->answer.profile);
		break;
	case TS_LEFT_BY_WISH:
		ts_text_put(text, "you asked for lists without it");
		break;
	case TS_LEFT_NOT_HARDY:
		ts_text_put(text, "it takes change badly, and --hardy was asked");
		break;
	case TS_LEFT_BY_CAUTION:
		ts_text_put(text, "not proposed unasked: ");
		say_cautions(text, c->match.species);
		ts_text_put(text, "; --with asks for it");
		break;
	case TS_LEFT_BY_ROOM:
		ts_text_put(text, "not in this tank: ");
		ts_say_ruling(text, &c->ruling);
		break;
	case TS_LEFT_BY_NITRATE:
		ts_text_put(text, "more nitrate than it bears, now or with a full list");
		break;
	case TS_LEFT_BY_BUFFER:
		ts_text_put(text, "so little KH is for animals of black water only");
		break;
	case TS_LEFT_BY_LOAD:
		ts_text_put(text, "its smallest group alone makes more waste than this tank bears");
		break;
	case TS_LEFT_BY_RESIDENT:
		ts_text_put(text, "not with ");
		ts_say_animal(text, c->other);
		ts_text_put(text, ": ");
		ts_say_ruling(text, &c->ruling);
		break;
	default:
		ts_text_put(text, "it could be in a list");
		break;
	}
}

static void verdict(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a)
{
	const struct ts_proposal *p = &a->proposal;
	const char *first;

	if (a->held_count && p->count)
		ts_text_put(text, "Not yet: buy no animal now.");
	else if (!p->count && !p->candidates && p->of[TS_LEFT_UNSURE])
		ts_text_put(text, "Unsure: nothing can be proposed from what is known.");
	else if (!p->count)
		ts_text_put(text, "Nothing can be proposed.");
	else if (!p->lists[0].proven)
		ts_text_put(
			text, "These go together; whether a better list exists was not proven.");
	else if (p->conditions)
		ts_text_put(text, "These go together on conditions only; none do without.");
	else
		ts_text_put(text, "These go together in this water and this tank.");
	first = ts_doc_take(doc, text);
	if (p->count && !a->held_count) {
		ts_text_put(text, "What decides: ");
		propose_say_limiting(text, &p->lists[0]);
		ts_text_put(text, ".");
	}
	ts_doc_verdict(doc, first, ts_doc_take(doc, text));
}

/* Why nothing is bought now. */
static void held(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a)
{
	for (size_t i = 0; i < a->held_count; i++) {
		ts_say_ruling(text, &a->held[i]);
		ts_text_put(text, ": ");
		ts_say_remedy(text, &a->held[i], false);
		ts_text_put(text, ".");
		ts_doc_paragraph(doc, ts_doc_take(doc, text));
	}
}

/* Those asked for that cannot be had, each with its reason. */
static void musts(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a)
{
	for (size_t i = 0; i < a->proposal.species_count; i++) {
		const struct ts_candidacy *c = &a->proposal.species[i];

		if (!c->must || c->left_out == TS_CANDIDATE)
			continue;
		say_name(text, c->match.species);
		ts_text_put(text, ": ");
		propose_say_left_out(text, a, c);
		ts_text_put(text, ".");
		ts_doc_paragraph(doc, ts_doc_take(doc, text));
	}
}

static void tank(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a)
{
	const struct ts_proposal *p = &a->proposal;
	struct ts_node *facts = ts_doc_facts(doc, 0);

	number(text, ts_tank_net_l(&a->plan.tank, a->wish.practice), 0);
	if (isnan(p->floor_m2)) {
		ts_text_put(text, " L of water, its floor is not known; at most ");
	} else {
		ts_text_put(text, " L of water, floor ");
		number(text, p->floor_m2, 2);
		ts_text_put(text, " m2; at most ");
	}
	number(text, (double)p->species_most, 0);
	ts_text_put(text, " species and ");
	number(text, p->nitrogen_most_mg_day, 0);
	ts_text_put(text, " mg of nitrogen a day");
	ts_doc_line(doc, facts, "Tank", ts_doc_take(doc, text), NULL);
	number(text, (double)p->candidates, 0);
	ts_text_put(text, " of ");
	number(text, (double)p->species_count, 0);
	ts_text_put(text, " species could live here");
	ts_doc_line(doc, facts, "Chosen from", ts_doc_take(doc, text), NULL);
}

static void shared_water(
	struct ts_document *doc, struct ts_text *text, const struct ts_community *c)
{
	struct ts_node *facts = ts_doc_facts(doc, 1);

	for (int p = 0; p < TS_SALINITY; p++) {
		if (!c->shared[p].known)
			continue;
		propose_say_shared(text, p, &c->shared[p]);
		if (!c->shared[p].comfortable)
			ts_text_put(text, " (tolerated by all, preferred by none together)");
		ts_doc_line(doc, facts, ts_parameter_rows[p].label, ts_doc_take(doc, text), NULL);
	}
	propose_say_limiting(text, c);
	ts_doc_line(doc, facts, "decides", ts_doc_take(doc, text), NULL);
	ts_text_put(text, "nitrate rises ");
	number(text, c->load.no3_rise_mg_l_week.value, 0);
	ts_text_put(text, " mg/L a week and ");
	if (isfinite(c->load.no3_steady_mg_l.value)) {
		ts_text_put(text, "settles at ");
		number(text, c->load.no3_steady_mg_l.value, 0);
		ts_text_put(text, " mg/L before a change");
	} else {
		ts_text_put(text, "has no end: no water is changed");
	}
	ts_doc_line(doc, facts, "waste", ts_doc_take(doc, text), NULL);
	if (isnan(c->load.buffer_days.value))
		ts_text_put(text, "not known without KH");
	else
		number(text, c->load.buffer_days.value, 0);
	if (!isnan(c->load.buffer_days.value))
		ts_text_put(text, " days without a change");
	ts_doc_line(doc, facts, "buffer lasts", ts_doc_take(doc, text), NULL);
}

/* Adds "10 neon tetra", as many as are still to be bought. */
static void to_buy(struct ts_text *text, const struct ts_company *line)
{
	number(text, ts_group_count(&line->group) - line->there, 0);
	ts_text_put(text, " ");
	ts_say_animal(text, line->candidacy->match.species);
}

static double nitrogen(const struct propose_answer *a, const struct ts_company *line)
{
	return ts_group_nitrogen_mg_day(&line->group, &a->plan.tank, (double)NAN, &a->practice);
}

/*
 * In which of three purchases a line comes where the filter is young: each brings about a third of
 * the waste. Where it is mature, every line is a purchase of its own.
 */
static size_t purchase_of(
	const struct propose_answer *a, const struct ts_community *c, size_t place)
{
	double before = 0, all = 0;

	if (!a->filter_young)
		return place;
	for (size_t i = 0; i < c->order_count; i++) {
		double own = nitrogen(a, &c->lines[c->order[i]]);

		all += own;
		before += i < place ? own : i == place ? own / 2 : 0;
	}
	return (size_t)fmin(3 * before / all, 2);
}

static void purchases(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a,
	const struct ts_community *c)
{
	double days = a->practice.value[TS_P_PROPOSE_PURCHASE_DAYS];
	struct ts_node *steps = ts_doc_steps(doc);

	for (size_t i = 0, step = 0; i < c->order_count; step++) {
		size_t purchase = purchase_of(a, c, i);
		const char *day;

		ts_text_put(text, "day ");
		number(text, days * (double)step, 0);
		day = ts_doc_take(doc, text);
		for (size_t n = 0; i < c->order_count && purchase_of(a, c, i) == purchase; i++) {
			ts_text_put(text, n++ ? ", " : "");
			to_buy(text, &c->lines[c->order[i]]);
		}
		ts_text_put(text, step ? "; only if ammonia and nitrite are still nil"
				       : "; only when ammonia and nitrite are nil");
		ts_doc_line(doc, steps, day, ts_doc_take(doc, text), NULL);
	}
}

/* On what condition a list works that no list works without. */
static void conditions(struct ts_document *doc, struct ts_text *text,
	const struct propose_answer *a, const struct ts_community *c)
{
	ts_doc_heading(doc, 1, "It works on these conditions");
	for (size_t i = 0; i < c->count; i++) {
		for (size_t j = 0; j <= i; j++) {
			struct ts_rulings r = {.count = 0};

			if (i == j)
				ts_rules_alone(&c->lines[i].group, &a->plan.tank, &a->practice, &r);
			else
				ts_rules_together(&c->lines[i].group, &c->lines[j].group,
					&a->plan.tank, &a->practice, &r);
			for (size_t k = 0; k < r.count; k++) {
				if (r.at[k].severity < TS_CONCERN)
					continue;
				ts_say_ruling(text, &r.at[k]);
				ts_text_put(text, "; ");
				ts_say_remedy(text, &r.at[k], false);
				ts_doc_paragraph(doc, ts_doc_take(doc, text));
			}
		}
	}
}

static void list(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a,
	const struct ts_community *c, size_t place)
{
	ts_text_put(text, "LIST ");
	number(text, (double)place, 0);
	if (place > 1 && c->equal)
		ts_text_put(text, ", as good as the first");
	if (!c->proven)
		ts_text_put(text, ", not proven to be the best");
	ts_doc_heading(doc, 0, ts_doc_take(doc, text));
	for (size_t i = 0; i < c->count; i++) {
		struct ts_node *entry;

		propose_say_company(text, &c->lines[i]);
		entry = ts_doc_entry(doc, ts_doc_take(doc, text));
		say_room(text, c->lines[i].candidacy->match.species);
		ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
		say_bars(doc, entry, &c->lines[i].candidacy->match, &a->answer.profile);
	}
	shared_water(doc, text, c);
	if (a->proposal.conditions)
		conditions(doc, text, a, c);
	ts_doc_heading(doc, 1,
		a->filter_young ? "Later, in thirds"
		: a->held_count ? "Later, what to buy first"
				: "What to buy first");
	purchases(doc, text, a, c);
}

/* The days before any animal: common practice, no source. */
static void maturing(struct ts_document *doc)
{
	struct ts_node *steps;

	ts_doc_heading(doc, 0, "FIRST THE FILTER");
	steps = ts_doc_steps(doc);
	ts_doc_line(doc, steps, "now",
		"run the filter without animals and feed it with ammonia, a little each day", NULL);
	ts_doc_line(doc, steps, "weekly", "test ammonia and nitrite; both rise, then fall", NULL);
	ts_doc_line(doc, steps, "mature",
		"when both stay nil for 7 days while the planned feed is cleared; usually 4-8 "
		"weeks",
		NULL);
	ts_doc_line(doc, steps, "then",
		"buy a third of the animals, test, wait 14 days, test, buy the next third", NULL);
	ts_doc_paragraph(
		doc, "Once that is so, write filter: mature into the tank file (-t FILE).");
}

static void why(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a)
{
	say_name(text, a->why->match.species);
	ts_doc_heading(doc, 0, ts_doc_take(doc, text));
	if (a->why->left_out != TS_CANDIDATE) {
		ts_text_put(text, "In no list: ");
		propose_say_left_out(text, a, a->why);
		ts_text_put(text, ".");
		ts_doc_paragraph(doc, ts_doc_take(doc, text));
		return;
	}
	if (!a->why_best.count) {
		ts_doc_paragraph(doc, "It fits water and tank, but no list holds it together with "
				      "what is asked for.");
		return;
	}
	ts_text_put(text, "It could live here; others together do as well or better. The best list "
			  "that holds it: ");
	for (size_t i = 0; i < a->why_best.count; i++) {
		ts_text_put(text, i ? "; " : "");
		propose_say_company(text, &a->why_best.lines[i]);
	}
	ts_text_put(text, ". What decides there: ");
	propose_say_limiting(text, &a->why_best);
	ts_text_put(text, ".");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void waiting(struct ts_document *doc, struct ts_text *text, const struct propose_answer *a)
{
	for (int p = 0; p < TS_PARAMETER__COUNT; p++) {
		size_t n = a->proposal.waits[p];
		bool given = a->answer.profile.at[p].given;

		if (!n)
			continue;
		number(text, (double)n, 0);
		ts_text_puts(text, n == 1 ? " species waits for " : " species wait for ",
			given ? "a surer " : "", ts_parameter_rows[p].label,
			given ? ": the reading is too near their limit, or the limit is in doubt."
			      : ", which is not measured.",
			NULL);
		ts_doc_paragraph(doc, ts_doc_take(doc, text));
	}
}

void propose_document(struct session *s, const struct propose_answer *a)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "Animals that go together");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_text_open(&text, &s->arena->allocator);
	say_sheet(&doc, a->answer.water.name, &a->answer.profile);
	verdict(&doc, &text, a);
	held(&doc, &text, a);
	musts(&doc, &text, a);
	say_water(&doc, &a->answer, s->options);
	tank(&doc, &text, a);
	if (a->why)
		why(&doc, &text, a);
	if (a->filter_young)
		maturing(&doc);
	for (size_t i = 0; i < a->proposal.count; i++)
		list(&doc, &text, a, &a->proposal.lists[i], i + 1);
	if (a->proposal.exhausted && a->proposal.count)
		ts_doc_paragraph(&doc, "No further list of mostly other genera exists.");
	waiting(&doc, &text, a);
	ts_doc_paragraph(&doc,
		"Quarantine newcomers for 28 days where you can. Local law and a vet "
		"come before any list. Never release an animal.");
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	session_write(s, &doc);
}
