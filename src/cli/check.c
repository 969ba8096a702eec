/* SPDX-License-Identifier: Apache-2.0 */
/*
 * check: what is wrong with a plan or a tank. The verdict and the number that decides, what harms
 * first, the smallest repair, then the load. The judging is stock/check.c.
 */
#include "cli/check.h"

#include <string.h>

#include "base/arena.h"
#include "care/plan_state.h"
#include "words/advice.h"
#include "words/care.h"
#include "words/rulings.h"
#include "words/sentence.h"

/* Findings of one gravity that a screen shows. */
#define SHOWN_MOST 30

static enum ts_status look_up(struct session *s, struct check_answer *a)
{
	size_t count = a->plan.stock_count;

	a->species = ts_arena_array(s->arena, count + 1, sizeof *a->species);
	a->candidates = ts_arena_array(s->arena, count + 1, sizeof *a->candidates);
	if (!a->species || !a->candidates)
		return TS_NO_MEMORY;
	for (size_t i = 0; i < count; i++)
		a->species[i] = session_species(s, a->plan.stock[i].species, &a->candidates[i]);
	return TS_OK;
}

/* A danger or a sign of distress goes before anything about the list. */
static bool in_distress(const struct check_answer *a)
{
	return a->advice_count && (a->advice[0].row->group == 2 || a->advice[0].row->group == 3);
}

/* What lives in the tank already, against the tank's own water; then what to do about it. */
static enum ts_status advise(struct session *s, struct check_answer *a)
{
	struct ts_plan_state *state = ts_arena_take(s->arena, sizeof *state);
	struct ts_match *residents =
		ts_arena_array(s->arena, a->plan.stock_count + 1, sizeof *residents);
	struct ts_keeping keeping = {.temperature = a->plan.tank.temp_c};
	size_t count = 0;

	if (!state || !residents)
		return TS_NO_MEMORY;
	ts_plan_state_make(&a->plan, a->check.waters, s->today, state);
	for (size_t i = 0; i < a->plan.stock_count; i++) {
		if (!a->species[i] || !ts_in_tank(&a->plan.stock[i]))
			continue;
		keeping.wild = a->plan.stock[i].origin == TS_ORIGIN_WILD;
		ts_match_species(a->species[i], &a->check.waters->now, &keeping, s->practice,
			&residents[count++]);
	}
	if (!count)
		return TS_OK;
	ts_plan_state_residents(state, residents, count);
	a->residents = residents;
	a->advice_count = ts_advise(&state->state, s->practice, a->advice);
	/* No list is sound in a tank that is in danger, nor known to be beside unexplained signs.
	 */
	if (in_distress(a) && a->check.verdict <= TS_PLAN_SOUND_IF)
		a->check.verdict =
			a->advice[0].row->group == 2 ? TS_PLAN_UNSOUND : TS_PLAN_CANNOT_SAY;
	return TS_OK;
}

/* Danger, distress, and a tank far from its change water: all three bound what may be changed. */
bool check_advised(const struct check_answer *a)
{
	return a->advice_count && (in_distress(a) || a->advice[0].row->group == 5);
}

/* So does every advice where nothing new is planned: then the water is the question. */
static bool advice_first(const struct check_answer *a)
{
	for (size_t i = 0; i < a->plan.stock_count; i++) {
		if (!ts_in_tank(&a->plan.stock[i]))
			return in_distress(a);
	}
	return a->advice_count > 0;
}

static void say_advice(struct ts_document *doc, struct ts_text *text, const struct check_answer *a)
{
	for (size_t i = advice_first(a); i < a->advice_count; i++) {
		const struct ts_advice *advice = &a->advice[i];
		struct ts_node *entry;

		if (i == advice_first(a))
			ts_doc_heading(
				doc, 0, i ? "Also about the water" : "What to do about the water");
		ts_text_puts(text, ts_urgency_words[advice->row->urgency], ": ", NULL);
		ts_say_advice(text, advice, a->residents);
		entry = ts_doc_entry(doc, ts_doc_take(doc, text));
		ts_say_advice_because(text, advice, a->residents);
		ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
	}
}

static bool stands_in_the_way(const struct ts_ruling *r)
{
	return r->rule == TS_RULE_UNKNOWN_SPECIES || r->rule == TS_RULE_WATER_UNKNOWN ||
	       r->rule == TS_RULE_WATER_UNSURE || r->rule == TS_RULE_EMPTY ||
	       r->rule == TS_RULE_DISTRESS;
}

/* The finding that decides; NULL: none does. */
static const struct ts_ruling *deciding(const struct ts_check *c)
{
	for (size_t i = 0; i < c->count; i++) {
		if (c->rulings[i].severity == TS_NOTE)
			return NULL;
		if (c->verdict != TS_PLAN_CANNOT_SAY || stands_in_the_way(&c->rulings[i]))
			return &c->rulings[i];
	}
	return NULL;
}

/* "The buffer lasts 41 days, the water is changed every 7." */
static void put_buffer(struct ts_text *text, const struct ts_load *l)
{
	if (isnan(l->buffer_days.value)) {
		ts_text_put(text, "KH is not given");
		return;
	}
	if (isinf(l->buffer_days.value) || l->buffer_days.value > 365)
		ts_text_put(text, "lasts more than a year");
	else
		ts_text_puts(text, "lasts ", NULL);
	if (l->buffer_days.value <= 365) {
		ts_text_number(text, l->buffer_days.value, 0);
		ts_text_put(text, " days");
	}
	ts_text_put(text, ", the water is changed every ");
	ts_text_number_short(text, l->change_days, 1);
	ts_text_put(text, l->change_known ? " days" : " days (taken, not given)");
}

static void say_verdict(struct ts_document *doc, struct ts_text *text, const struct check_answer *a)
{
	static const char *const says[TS_PLAN_VERDICT__COUNT] = {
		"sound", "sound, on conditions", "unsound", "cannot be said"};
	const struct ts_check *c = &a->check;
	const struct ts_ruling *first = deciding(c);
	const char *verdict;

	if (advice_first(a)) {
		ts_say_advice(text, &a->advice[0], a->residents);
		verdict = ts_doc_take(doc, text);
		ts_say_advice_because(text, &a->advice[0], a->residents);
		ts_doc_verdict(doc, verdict, ts_doc_take(doc, text));
	}
	ts_text_puts(text, a->plan.name ? a->plan.name : a->file, ": ", says[c->verdict], NULL);
	verdict = ts_doc_take(doc, text);
	if (first) {
		check_say(text, a, first);
	} else if (c->load_known) {
		ts_text_put(text, "Nitrate settles at about ");
		ts_text_number(text, c->load.no3_steady_mg_l.value, 0);
		ts_text_put(text, " mg/L; the buffer ");
		put_buffer(text, &c->load);
	}
	ts_doc_verdict(doc, verdict, ts_doc_take(doc, text));
}

static void say_findings(struct ts_document *doc, struct ts_text *text,
	const struct check_answer *a, enum ts_severity severity, const char *heading)
{
	const struct ts_check *c = &a->check;
	size_t shown = 0, all = 0;

	for (size_t i = 0; i < c->count; i++) {
		const struct ts_ruling *r = &c->rulings[i];
		struct ts_node *entry;

		if (r->severity != severity)
			continue;
		if (!all)
			ts_doc_heading(doc, 0, heading);
		if (++all > SHOWN_MOST)
			continue;
		shown++;
		check_say(text, a, r);
		entry = ts_doc_entry(doc, ts_doc_take(doc, text));
		ts_say_change(text, r, check_advised(a));
		if (text->len && (severity != TS_NOTE || r->rule == TS_RULE_KH_UNKNOWN ||
					 r->rule == TS_RULE_WARM_OXYGEN))
			ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
		else
			ts_doc_take(doc, text);
	}
	if (all == shown)
		return;
	ts_text_put(text, "and ");
	ts_text_number(text, (double)(all - shown), 0);
	ts_text_put(text, " more; -f json has them all");
	ts_doc_paragraph(doc, ts_doc_take(doc, text));
}

static void say_repair(struct ts_document *doc, struct ts_text *text, const struct ts_check *c)
{
	struct ts_node *steps;

	if (c->verdict != TS_PLAN_UNSOUND)
		return;
	ts_doc_heading(doc, 0, "The smallest repair of the list");
	if (!c->repair_count) {
		ts_doc_paragraph(doc,
			"No change of the list mends this: the water and the tank come first.");
		return;
	}
	steps = ts_doc_steps(doc);
	for (size_t i = 0; i < c->repair_count; i++) {
		const char *number;

		ts_text_number(text, (double)i + 1, 0);
		number = ts_doc_take(doc, text);
		check_say_step(text, &c->repair[i]);
		ts_doc_line(doc, steps, number, ts_doc_take(doc, text), NULL);
	}
	if (!c->repair_proven)
		ts_doc_paragraph(doc, "Found step by step; a smaller one may exist.");
}

/* The house sentence of what decides for an animal. */
static void say_limit(struct ts_document *doc, struct ts_node *entry, struct ts_text *text,
	const struct ts_match *m)
{
	struct ts_line *line;

	if (m->limiting < 0)
		return;
	ts_say_parameter(text, (enum ts_parameter)m->limiting, &m->at[m->limiting]);
	line = ts_doc_line(doc, entry, ts_doc_take(doc, text), NULL);
	if (line)
		line->hue = say_hue(m->limiting);
}

/* Who lives or is to live there, each against the water: a page draws what a list would only say.
 */
static void say_animals(struct ts_document *doc, struct ts_text *text, const struct ts_check *c)
{
	if (!c->group_count || !c->water_known)
		return;
	ts_doc_medium(doc, TS_ON_PAGES);
	ts_doc_heading(doc, 0, "The animals in this water");
	for (size_t i = 0; i < c->group_count; i++) {
		const struct ts_plan_group *g = &c->groups[i];
		struct ts_node *entry;

		ts_text_number_short(text, ts_group_count(&g->group), 0);
		ts_text_put(text, " ");
		say_name(text, g->group.species);
		ts_text_put(text, g->planned ? ": planned, " : ": there, ");
		say_room(text, g->group.species);
		entry = ts_doc_entry(doc, ts_doc_take(doc, text));
		say_limit(doc, entry, text, &g->match);
		say_bars(doc, entry, &g->match, &c->profile);
	}
	ts_doc_medium(doc, TS_EVERYWHERE);
}

static void put_estimate(
	struct ts_text *text, const struct ts_estimate *e, int decimals, const char *unit)
{
	ts_text_put(text, "about ");
	ts_text_number_short(text, e->value, decimals);
	ts_text_puts(text, " ", unit, " (", NULL);
	ts_text_number_short(text, e->low, decimals);
	ts_text_put(text, "..");
	ts_text_number_short(text, e->high, decimals);
	ts_text_put(text, ")");
}

static void fact(
	struct ts_document *doc, struct ts_node *facts, struct ts_text *text, const char *label)
{
	ts_doc_line(doc, facts, label, ts_doc_take(doc, text), NULL);
}

static void say_load(struct ts_document *doc, struct ts_text *text, const struct ts_check *c)
{
	const struct ts_load *l = &c->load;
	struct ts_node *facts;

	if (!c->load_known || !c->group_count)
		return;
	ts_doc_heading(doc, 0, "What the animals make of the water");
	facts = ts_doc_facts(doc, 1);
	ts_text_number_short(text, l->net_l, 0);
	ts_text_put(text, " L");
	fact(doc, facts, text, "water");
	put_estimate(text, &l->feed_g_day, 2, "g a day, dry");
	fact(doc, facts, text, "feed");
	put_estimate(text, &l->nitrogen_mg_day, 0, "mg a day");
	fact(doc, facts, text, "nitrogen");
	put_estimate(text, &l->no3_rise_mg_l_week, 1, "mg/L a week");
	if (!isnan(l->measured_no3_rise_mg_l_week)) {
		ts_text_put(text, ", as measured; computed ");
		ts_text_number_short(text, l->modelled_no3_rise_mg_l_week, 1);
		ts_text_put(text, l->differs ? ": doubt the computed one" : "");
	}
	fact(doc, facts, text, "nitrate rises");
	if (isfinite(l->no3_steady_mg_l.high))
		put_estimate(text, &l->no3_steady_mg_l, 0, "mg/L before a change");
	else
		ts_text_put(text, "no end: no water is changed");
	fact(doc, facts, text, "and settles at");
	put_estimate(text, &l->kh_used_dh_week, 2, "dH a week");
	fact(doc, facts, text, "KH used");
	put_buffer(text, l);
	fact(doc, facts, text, "the buffer");
	if (!l->feeding_known || !l->plants_known)
		ts_doc_paragraph(doc, "The range is wide because feeding or plants are not given.");
}

static void show(struct session *s, const struct check_answer *a)
{
	struct ts_document doc;
	struct ts_text text;

	ts_doc_open(&doc, s->arena, "A plan checked");
	doc.drawn = s->options->format == FORMAT_HTML;
	ts_text_open(&text, &s->arena->allocator);
	say_sheet(&doc, a->plan.water.name, &a->check.profile);
	say_verdict(&doc, &text, a);
	say_findings(&doc, &text, a, TS_CONFLICT, "What harms");
	say_advice(&doc, &text, a);
	say_repair(&doc, &text, &a->check);
	say_findings(&doc, &text, a, TS_CONCERN,
		a->check.verdict == TS_PLAN_SOUND_IF ? "Sound only if" : "Open, or not right yet");
	say_animals(&doc, &text, &a->check);
	say_load(&doc, &text, &a->check);
	say_findings(&doc, &text, a, TS_NOTE, "To know");
	s->arena->failed |= text.failed;
	ts_text_drop(&text);
	ts_doc_see(&doc, ts_guide_alone);
	session_write(s, &doc);
}

enum ts_status command_check(struct session *s)
{
	const struct options *o = s->options;
	struct check_answer a = {0};
	enum ts_status status;

	if (o->argument_count != 1) {
		ts_text_put(s->error, "check needs one plan file, for example plan.yaml");
		return TS_BAD_INPUT;
	}
	a.file = o->arguments[0];
	status = file_plan(s, a.file, &a.plan);
	if (!status)
		status = answer_catalogue(s);
	if (!status)
		status = look_up(s, &a);
	if (!status)
		status = ts_check_plan(
			&a.plan, a.species, s->today, s->practice, s->arena, &a.check);
	if (!status)
		status = advise(s, &a);
	if (status)
		return status;
	if (o->format == FORMAT_JSON)
		check_json(s, &a);
	else
		show(s, &a);
	return a.check.verdict <= TS_PLAN_SOUND_IF ? TS_OK : TS_NO;
}
